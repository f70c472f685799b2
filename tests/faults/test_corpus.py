"""Inputs that once reached something new: the fuzzer's corpus, played again without the fuzzer."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING

import pytest

from tests.faults.campaigns import TARGETS
from tests.faults.guided import CHOICES, Chosen, file_of, played, read_corpus
from tests.faults.mutate import mutated

if TYPE_CHECKING:
    from tests.faults.fuzz import Target


@pytest.mark.parametrize("target", TARGETS, ids=lambda target: target.name)
def test_what_the_fuzzer_kept_is_read_or_refused(target: Target) -> None:
    inputs = read_corpus(target)
    assert inputs, f"{file_of(target).name} is missing: python -m tests.faults.guided --keep '{target.name}'"
    for data in inputs:
        played(target, data)


def test_the_same_bytes_are_the_same_choices() -> None:
    data = random.Random(1).randbytes(400)
    first, again = Chosen(data), Chosen(data)
    choices = [(rng.randrange(1000), rng.choice("abc"), rng.random(), rng.uniform(0, 5)) for rng in (first, again)]
    assert choices[0] == choices[1]


def test_other_bytes_are_other_choices_and_none_left_are_nought() -> None:
    seen = {tuple(Chosen(bytes([0, *rest])).randrange(256) for _ in range(2)) for rest in ((1, 2), (3, 4), (5, 6))}
    assert len(seen) == 3
    assert [Chosen(b"").randrange(7), Chosen(b"\x00").choice("xyz")] == [0, "x"]


def test_an_odd_first_byte_gives_the_input_itself_once() -> None:
    rng = Chosen(b"\x01" + bytes(CHOICES) + b"27.5 N.m\r\n")
    assert mutated(rng, [b"seed"]) == b"27.5 N.m\r\n"
    assert mutated(rng, [b"seed"]) != b"27.5 N.m\r\n"
