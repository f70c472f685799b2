"""Subscribers of one stream: the one that fails is excluded, all others get every block and the ending."""

from __future__ import annotations

import numpy as np
import pytest

from logger.samples import Block, Ending, EndReason
from logger.stream.audience import Audience, SubscriberFailedError
from tests.logger.scripted import Kept

BLOCK = Block(np.array([0.0]), {"torque": np.array([1.5])})


class Sore(Kept):
    def on_end(self, ending):
        super().on_end(ending)
        raise OSError("no space left")


def audience(*subscribers):
    made = Audience()
    for subscriber in subscribers:
        made.add(subscriber)
    return made


def test_one_that_fails_gets_no_more_and_the_others_get_all():
    first, bad, last = Kept(), Kept(fail_at=0), Kept()
    listening = audience(first, bad, last)
    with pytest.raises(SubscriberFailedError, match="has had enough") as caught:
        listening.deliver(BLOCK)
    listening.deliver(BLOCK)
    assert first.torque == last.torque == [1.5, 1.5]
    assert caught.value.ending.reason is EndReason.FAILED
    assert caught.value.ending.error is caught.value.error


def test_everybody_learns_the_ending_also_who_failed():
    bad, good = Kept(fail_at=0), Kept()
    listening = audience(bad, good)
    with pytest.raises(SubscriberFailedError):
        listening.deliver(BLOCK)
    ending = listening.end(Ending(EndReason.STOPPED, "stopped"))
    assert bad.ending == good.ending == ending == Ending(EndReason.STOPPED, "stopped")


def test_one_that_fails_at_the_end_is_told_to_those_after_it():
    before, after = Kept(), Kept()
    ending = audience(before, Sore(), after, Sore()).end(Ending(EndReason.STOPPED))
    assert before.ending.reason is EndReason.STOPPED
    assert after.ending == ending
    assert ending.reason is EndReason.FAILED
    assert ending.text == "no space left"
