"""Where a stream forks, block by block: stages and their numbers, times, angles that come along, what is closed."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from analysis.to_axle.calibration import Calibration
from gui.models.relay import Analyst, Broken, FoundPull, Relay, ScreenSamples, StageClosed
from logger.errors import FileError
from logger.samples import Block, Ending, EndReason, Event, EventKind
from tests.gui.models.test_steps import Kept, pull


def block(*time_s: float, event_s: float | None = None, **columns: list[float]) -> Block:
    """Give samples that read their time times ten, unless told otherwise."""
    times = np.array(time_s)
    events = () if event_s is None else (Event(EventKind.GAP, 0, 1, "", event_s),)
    return Block(times, {"torque": times * 10} | {k: np.array(v) for k, v in columns.items()}, events)


def shown(relay: Relay) -> list[ScreenSamples]:
    return [news for news in relay.news if isinstance(news, ScreenSamples)]


def read(relay: Relay) -> list[object]:
    """End the stream, let the analyst work in this thread, and give what it says."""
    relay.on_end(Ending(EndReason.LOST, "pulled out"))
    relay.news.clear()
    Analyst(relay).run()
    return list(relay.news)


def test_stages_are_numbered_from_one_and_one_that_never_began_keeps_its_number() -> None:
    relay = Relay(Calibration())
    assert [relay.begin(None, None) for _ in range(3)] == [1, 2, 3]
    relay.on_block(block(0.0))
    assert relay.begin(None, None) == 4
    relay.on_block(block(1.0))
    assert relay.begin(None, None) == 5


def test_a_relay_is_full_as_its_writer_is() -> None:
    relay = Relay(Calibration())
    assert relay.full is False
    for writer, full in ((Kept(), False), (SimpleNamespace(full=True, on_block=lambda _: None), True)):
        relay.begin(writer, None)
        relay.on_block(block())
        assert relay.full is full


def test_a_recording_counts_from_its_first_sample_and_the_screen_from_the_sessions_begin() -> None:
    """A block of events alone does not begin it; times are kept to a microsecond (as in the file)."""
    relay, writer, job = Relay(Calibration(), offset_s=100.0), Kept(), Kept()
    relay.begin(writer, job)
    for one in (block(), block(2.0, 2.1234567, event_s=2.0625), block(3.0)):
        relay.on_block(one)
    assert [b.time_s.tolist() for b in writer.blocks] == [[], [0.0, 0.123457], [1.0]]
    assert writer.blocks[1].events[0].time_s == 0.0625
    assert [s.time_s.tolist() for s in shown(relay)] == [[], [102.0, 102.1234567], [103.0]]
    assert shown(relay)[1].events[0].time_s == 102.0625
    found = read(relay)
    assert [times.tolist() for times in job.fed] == [[], [0.0, 0.123457], [1.0]]
    assert [(n.stage, n.start_s, n.pull) for n in found if isinstance(n, FoundPull)] == [(1, 102.0, pull(0.5))]
    assert writer.ending == Ending(EndReason.LOST, "pulled out")


@pytest.mark.parametrize(("writes", "reads"), [(True, False), (False, True), (True, True), (False, False)])
def test_a_stage_is_closed_where_anything_was_written_or_read(*, writes: bool, reads: bool) -> None:
    relay, writer = Relay(Calibration()), Kept()
    relay.begin(writer if writes else None, Kept() if reads else None)
    relay.on_block(block(0.0))
    relay.begin(None, None)
    relay.on_block(block(1.0))
    news = read(relay)
    assert [n.stage for n in news if isinstance(n, StageClosed)] == ([1] if writes or reads else [])
    assert len([n for n in news if isinstance(n, FoundPull)]) == reads
    assert writer.ending == (Ending(EndReason.STOPPED, "stage ended") if writes else None)


def test_a_stream_ends_once() -> None:
    relay, writer = Relay(Calibration()), Kept()
    relay.begin(writer, None)
    relay.on_block(block(0.0))
    relay.on_end(Ending(EndReason.FAILED, "first"))
    relay.on_end(Ending(EndReason.STOPPED, "second"))
    assert relay.ending.text == "first"
    Analyst(relay).run()
    assert writer.ending.text == "first"
    assert relay.work.empty()


def test_a_file_that_cannot_be_closed_is_told_and_the_stage_is_closed_all_the_same() -> None:
    def fails(_: Ending) -> None:
        raise FileError("the disk is full")

    relay = Relay(Calibration())
    relay.begin(SimpleNamespace(on_block=lambda _: None, on_end=fails), None)
    relay.on_block(block(0.0))
    assert read(relay) == [Broken("the disk is full"), StageClosed(1)]


def test_a_second_source_without_an_angle_leaves_the_torques_rows_alone() -> None:
    relay = Relay(Calibration(), offset_s=1.0)
    relay.on_block(block(0.0, 0.25, 0.5, source=[1.0, 2.0, 1.0], held_angle=[7.0, 8.0, 9.0]))
    (one,) = shown(relay)
    assert one.time_s.tolist() == [1.0, 1.5]
    assert one.torque_nm.tolist() == one.delivered.tolist() == [0.0, 5.0]
    assert one.angle_deg is None
    assert one.held_deg is None


def test_one_source_gives_its_angles_as_they_are() -> None:
    relay = Relay(Calibration())
    relay.on_block(block(0.0, 0.25, angle=[1.0, 2.0], held_angle=[7.0, 8.0]))
    (one,) = shown(relay)
    assert (one.angle_deg.tolist(), one.held_deg.tolist()) == ([1.0, 2.0], [7.0, 8.0])


@pytest.mark.parametrize("held", [False, True])
def test_an_angle_of_a_second_source_is_brought_to_the_torques_times(*, held: bool) -> None:
    """A straight line from 10° to 30° in a quarter of a second; what it has not reached waits until the stage ends."""
    relay, job, nan = Relay(Calibration(), offset_s=100.0), Kept(), float("nan")
    relay.begin(Kept(), job)
    columns = {"source": [1.0, 2.0, 1.0, 2.0, 1.0], "angle": [nan, 10.0, nan, 30.0, nan]}
    if held:
        columns["held_angle"] = [nan, 1.0, nan, 3.0, nan]
    relay.on_block(block(4.0, 4.0, 4.125, 4.25, 4.375, **columns))
    (one,) = shown(relay)
    assert one.time_s.tolist() == [104.0, 104.125]
    assert one.torque_nm.tolist() == [40.0, 41.25]
    assert one.angle_deg.tolist() == [10.0, 20.0]
    assert (None if one.held_deg is None else one.held_deg.tolist()) == ([1.0, 2.0] if held else None)
    relay.begin(None, None)
    relay.on_block(block(5.0, source=[1.0], angle=[nan]))
    rest = shown(relay)[1]
    assert (rest.time_s.tolist(), rest.torque_nm.tolist(), rest.delivered.tolist()) == ([104.375], [43.75], [43.75])
    assert np.isnan(rest.angle_deg).tolist() == [True]
    assert (rest.held_deg is not None) is held
    assert rest.events == ()
    assert len(shown(relay)) == 3
    read(relay)
    assert [times.tolist() for times in job.fed] == [[0.0, 0.125], [0.375]]


def test_a_stage_that_begins_at_nought_is_like_any_other() -> None:
    relay, writer, job, nan = Relay(Calibration()), Kept(), Kept(), float("nan")
    relay.begin(writer, job)
    relay.on_block(block(0.0, 0.0, 0.125, 0.25, source=[1.0, 2.0, 2.0, 1.0], angle=[nan, 5.0, 6.0, nan]))
    found = read(relay)
    assert [times.tolist() for times in job.fed] == [[0.0], [0.25]]
    assert [n.start_s for n in found if isinstance(n, FoundPull)] == [0.0]
    assert writer.blocks[0].time_s.tolist() == [0.0, 0.0, 0.125, 0.25]


def test_an_event_is_read_when_the_recording_says() -> None:
    """Also one that comes before the stage's first sample: the recording begins with it, not with its second 302."""

    class Reader(Kept):
        def feed(self, time_s, delivered, angle_deg=None, events=(), held_deg=None):
            self.times = [*getattr(self, "times", ()), *(event.time_s for event in events)]
            return ()

    for before, times in ((block(event_s=2.0), [0.0, 1.5]), (block(), [0.5]), (block(event_s=float("nan")), [0.5])):
        relay, writer, job = Relay(Calibration(), offset_s=300.0), Kept(), Reader()
        relay.begin(writer, job)
        relay.on_block(before)
        relay.on_block(block(3.0, 4.0, event_s=3.5))
        read(relay)
        written = [event.time_s for one in writer.blocks for event in one.events]
        assert [t for t in job.times if t == t] == [t for t in written if t == t] == times
