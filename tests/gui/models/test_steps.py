"""Zero, coach, steps, caught pulls, the relay between stream, disk and screen: each by itself."""

import threading
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.cautions import CAUTIONS
from analysis.to_axle.calibration import Calibration, calibration_of
from analysis.trace.gates import LAY_STILL
from analysis.trace.results import Breakaway, Pull, Rotating
from analysis.verdict.job import Job
from gui.models.caught import PullList
from gui.models.checks import checks_for, holding_checks
from gui.models.coach import Coach, Hint
from gui.models.display import UNITS, Display
from gui.models.flow import Flow, Stand, Step
from gui.models.job import JobCard
from gui.models.library import Library
from gui.models.relay import Analyst, Broken, FoundPull, Relay, ScreenSamples, StageClosed
from gui.models.settings import Settings
from gui.models.zeroing import QUIET_S, Zeroing, ZeroState
from logger.edges.toml_file import write_toml
from logger.errors import FileError, InputError
from logger.header import Conditions, Lever, Limit, Test, TransducerFacts
from logger.samples import Block, Ending, EndReason

RNG = np.random.default_rng(11)


@given(offset=st.floats(-30, 30), rate=st.sampled_from([8.0, 80.0, 1000.0]), step=st.integers(1, 400))
def test_zero_is_the_mean_of_a_quiet_stretch(offset: float, rate: float, step: int) -> None:
    rng = np.random.default_rng(2)
    time_s = np.arange(0, 4, 1 / rate)
    torque = offset + rng.normal(0, 0.03, len(time_s))
    zeroing = Zeroing()
    for at in range(0, len(time_s), step):
        zeroing.feed(time_s[at : at + step], torque[at : at + step])
    assert zeroing.state is ZeroState.TAKEN
    assert zeroing.taken.value_nm == pytest.approx(offset, abs=0.05)
    assert zeroing.taken.at_s >= QUIET_S * 0.9


def test_zero_is_not_taken_while_the_lever_swings_and_afterwards_without_the_swing() -> None:
    time_s = np.arange(0, 8, 0.001)
    torque = np.where(time_s < 4, 3.0 * np.sin(2 * np.pi * 0.7 * time_s), 0.4) + RNG.normal(0, 0.02, len(time_s))
    zeroing = Zeroing()
    for at in range(0, len(time_s), 20):
        if zeroing.feed(time_s[at : at + 20], torque[at : at + 20]):
            break
    assert zeroing.taken.at_s > 4 + QUIET_S * 0.9
    assert zeroing.taken.value_nm == pytest.approx(0.4, abs=0.02)


def test_zero_of_nothing_but_missing_values_is_never_taken() -> None:
    zeroing = Zeroing()
    assert zeroing.feed(np.arange(0, 5, 0.01), np.full(500, np.nan)) is None


def feed(coach: Coach, torque: np.ndarray, *, rest: float | None = None, dwell: float = 0.0) -> list[Hint]:
    time_s = np.arange(len(torque)) / 200
    seen = []
    for end in range(10, len(torque), 5):
        hint = coach.feed(time_s[max(0, end - 200) : end], torque[max(0, end - 200) : end], rest, dwell)
        if not seen or seen[-1] is not hint:
            seen.append(hint)
    return seen


def test_coach_of_a_good_pull() -> None:
    ramp, steady = np.linspace(0, 40, 500), np.full(1800, 36.0)
    seen = feed(Coach(100.0, 30.0), np.concatenate([np.zeros(300), ramp, steady]))
    assert seen == [Hint.READY, Hint.LOADING, Hint.KEEP_TURNING, Hint.RELEASE], (
        "the torque fell from its peak: it turns"
    )


def test_coach_of_a_jerk() -> None:
    seen = feed(Coach(200.0, 30.0), np.concatenate([np.zeros(300), np.linspace(0, 60, 60), np.full(300, 60.0)]))
    assert Hint.SLOWER in seen


def test_coach_near_and_at_capacity() -> None:
    seen = feed(Coach(50.0, 30.0), np.concatenate([np.zeros(100), np.linspace(0, 52, 1500)]))
    assert seen.index(Hint.CAPACITY) < seen.index(Hint.STOP)


def test_coach_lets_it_rest() -> None:
    assert feed(Coach(), np.zeros(200), rest=3.0, dwell=15.0) == [Hint.LET_REST]


def test_steps_in_order_and_what_may_be_left_out() -> None:
    flow = Flow(with_drag=True)
    flow.start()
    seen = []
    while flow.running:
        seen.append(flow.now)
        flow.skip()
        if flow.now is seen[-1]:
            flow.done()
    assert seen == list(Step)
    assert [s for s in Step if flow.stands[s] is Stand.SKIPPED] == [Step.DRAG, Step.ZERO_AGAIN]
    flow.start()
    assert flow.now is Step.SAFETY
    assert Step.DRAG not in Flow().steps


def pull(start: float, torque: float = 30.0) -> Pull:
    return Pull(
        start,
        start + 5,
        1,
        0.0,
        Breakaway(start + 1, torque, 0.1, 0.2, distinct_peak=True),
        Rotating(start + 2, start + 4, torque - 4, 0.1, 0.2, torque),
    )


def test_pulls_rejected_restored_undone() -> None:
    card = JobCard(lever=Lever(fixture="couple"))
    listed, job = PullList(card), Job(card.judged_by("pulls"))
    for start in range(4):
        listed.add(0.0, pull(start), job)
    listed.reject(2, " ")
    assert listed.pulls[1].rejected == "excluded by hand"
    assert listed.value.count == 3
    listed.reject(4, "jerked")
    listed.restore(2)
    assert [c.number for c in listed.counting] == [1, 2, 3]
    assert [listed.undo(), listed.undo(), listed.undo(), listed.undo()] == [2, 4, 2, None]
    assert listed.value.count == 4
    assert not listed.can_undo


def test_a_pull_that_is_taken_back_is_replaced_not_added() -> None:
    card = JobCard(lever=Lever(fixture="couple"))
    listed, job = PullList(card), Job(card.judged_by("pulls"))
    for start in (2.0, 10.0):
        listed.add(100.0, pull(start), job)
    back = replace(pull(2.0), breakaway=None, rotating=None, reasons=(LAY_STILL,), taken_back=True)
    assert listed.add(100.0, back, job).number == 1
    assert [c.pull.taken_back for c in listed.pulls] == [True, False]
    assert listed.value.count == 1


class Kept:
    """A writer and a reader that keep what they were given."""

    def __init__(self, fail: Exception | None = None) -> None:
        self.blocks: list[Block] = []
        self.ending: Ending | None = None
        self.fed: list[np.ndarray] = []
        self.fail = fail

    def on_block(self, block: Block) -> None:
        self.blocks.append(block)

    def on_end(self, ending: Ending) -> None:
        self.ending = ending

    def feed(self, time_s, delivered, angle_deg=None, events=(), held_deg=None):
        if self.fail is not None:
            raise self.fail
        self.fed.append(time_s)
        return ()

    def finish(self):
        return (pull(0.5),)


def block(start: float, n: int = 10) -> Block:
    return Block(start + np.arange(n) / 100, {"torque": np.full(n, 12.0)})


def test_relay_gives_recording_and_reader_the_same_samples_on_their_own_time() -> None:
    relay = Relay(calibration_of(TransducerFacts(sign="reversed"), "lbf·in"), offset_s=100.0)
    analyst = Analyst(relay)
    analyst.start()
    writer, reader = Kept(), Kept()
    relay.on_block(block(0.0))
    relay.begin(writer, reader)
    relay.on_block(block(0.1))
    relay.on_block(block(0.2))
    relay.begin(None, None)
    relay.on_block(block(0.3))
    relay.on_end(Ending(EndReason.STOPPED))
    analyst.join(5)
    assert not analyst.is_alive()
    written = np.concatenate([b.time_s for b in writer.blocks])
    read = np.concatenate(reader.fed)
    np.testing.assert_allclose(written, read, atol=1e-9)
    assert written[0] == pytest.approx(0.0, abs=1e-9)
    assert len(written) == 20
    assert writer.ending is not None
    news = list(relay.news)
    samples = [n for n in news if isinstance(n, ScreenSamples)]
    assert len(samples) == 4
    assert samples[0].time_s[0] == 100.0
    # 1 lbf·in = 0.112 984 8 N·m (NIST SP 811, appendix B), turned round.
    assert samples[0].torque_nm[0] == pytest.approx(-12 * 0.1129848, rel=1e-6)
    assert [n.start_s for n in news if isinstance(n, FoundPull)] == [pytest.approx(100.1)]
    assert [n.stage for n in news if isinstance(n, StageClosed)] == [1]


def test_a_reader_that_fails_never_stops_the_recording() -> None:
    relay = Relay(Calibration())
    analyst = Analyst(relay)
    analyst.start()
    writer = Kept()
    relay.begin(writer, Kept(ZeroDivisionError("x")))
    for start in range(5):
        relay.on_block(block(float(start)))
    relay.on_end(Ending(EndReason.FINISHED))
    analyst.join(5)
    assert len(writer.blocks) == 5
    assert writer.ending.reason is EndReason.FINISHED
    assert sum(isinstance(n, Broken) for n in relay.news) == 1


def test_relay_is_changed_from_another_thread_without_loss() -> None:
    relay, writers = Relay(Calibration()), [Kept() for _ in range(20)]
    stop = threading.Event()

    def change() -> None:
        for writer in writers:
            relay.begin(writer, None)
            stop.wait(0.002)

    thread = threading.Thread(target=change)
    thread.start()
    for n in range(400):
        relay.on_block(block(n * 0.1))
    thread.join()
    relay.on_block(block(40.0))
    shown = sum(len(n.time_s) for n in relay.news if isinstance(n, ScreenSamples))
    assert shown == 4010
    assert writers[-1].blocks, "the last one got the last block"


@pytest.mark.parametrize("unit", UNITS)
def test_display_of_a_torque(unit: str) -> None:
    display = Display(unit)
    text = display.torque(40.0, 1.2)
    assert text.endswith(unit)
    value, half = (float(part) for part in text.removesuffix(unit).split("±"))
    # NIST SP 811, appendix B.
    per = {"N·m": 1.0, "lbf·ft": 1.355818, "lbf·in": 0.1129848, "kgf·m": 9.80665}[unit]
    assert value * per == pytest.approx(40.0, rel=0.01)
    assert half * per == pytest.approx(1.2, rel=0.05)


def test_display_edges() -> None:
    display = Display(comma=True)
    assert display.figure(None) == "–"
    assert display.figure(float("nan")) == "–"
    assert display.number(-0.04) == "0,0"
    assert display.number(-3.26) == "−3,3"
    assert display.figure(40.0, 0.0) == "40,0"
    assert Display("furlong").unit == "N·m"


def test_settings_are_remembered_and_survive_nonsense(tmp_path: Path) -> None:
    Settings(tmp_path).remember(unit="lbf·ft", window=(1, 2, 900, 700), seen=("x",))
    again = Settings(tmp_path)
    assert again.choices.unit == "lbf·ft"
    assert again.choices.window == (1, 2, 900, 700)
    (tmp_path / "window.toml").write_text("unit = 7\nnonsense", encoding="utf-8")
    broken = Settings(tmp_path)
    assert broken.problem
    assert broken.choices.unit == "N·m"


def test_settings_without_a_folder_to_write_to(tmp_path: Path) -> None:
    file = tmp_path / "file"
    file.write_text("", encoding="utf-8")
    settings = Settings(file / "under")
    settings.remember(unit="kgf·m")
    assert settings.choices.unit == "kgf·m"
    assert settings.problem


def test_lists_save_find_bring_in_and_send_out(tmp_path: Path) -> None:
    shelf = Library(tmp_path).fixtures
    lever = Lever(fixture="hub centre", name="Short / steel: lever")
    path = shelf.save(lever)
    assert path.name == "short-steel-lever.toml"
    assert shelf.entries() == {lever.name: lever}
    shelf.send_out(lever.name, tmp_path / "out.toml")
    other = Library(tmp_path / "other").fixtures
    assert other.bring_in(tmp_path / "out.toml") == lever
    shelf.remove(lever.name)
    assert shelf.entries() == {}


def test_names_that_shorten_to_one_file_are_two_entries(tmp_path: Path) -> None:
    shelf = Library(tmp_path).fixtures
    one = Lever(fixture="hub centre", name="Long lever / 5")
    two = Lever(fixture="one stud", name="long lever 5")
    assert shelf.save(one).name == "long-lever-5.toml"
    assert shelf.save(two).name == "long-lever-5-2.toml"
    assert shelf.entries() == {one.name: one, two.name: two}
    shelf.remove(one.name)
    assert shelf.entries() == {two.name: two}
    shelf.undo()
    assert shelf.entries() == {one.name: one, two.name: two}


def test_what_is_replaced_or_removed_comes_back(tmp_path: Path) -> None:
    shelf = Library(tmp_path).fixtures
    first = Lever(fixture="hub centre", name="club lever")
    versions = [first, *(Lever(fixture="one stud", name="club lever", length_mm=float(n)) for n in (400, 500))]
    assert not shelf.can_undo
    for version in versions:
        shelf.save(version)
        shelf.save(version)  # the same again is nothing to take back
        assert shelf.entries() == {"club lever": version}
    shelf.remove("club lever")
    assert shelf.entries() == {}
    for version in reversed(versions):
        shelf.undo()
        assert shelf.entries() == {"club lever": version}
    shelf.undo()
    assert shelf.entries() == {}
    assert not shelf.can_undo
    shelf.undo()


def test_somebody_elses_entry_of_the_same_name_does_not_replace_mine(tmp_path: Path) -> None:
    shelf = Library(tmp_path / "mine").fixtures
    mine = Lever(fixture="hub centre", name="club lever")
    shelf.save(mine)
    theirs = Lever(fixture="one stud", name="club lever", length_mm=500.0)
    write_toml(tmp_path / "theirs.toml", theirs)
    for _ in range(2):  # brought in twice, it is there once
        assert shelf.bring_in(tmp_path / "theirs.toml").name == "club lever (2)"
    assert shelf.entries()["club lever"] == mine
    assert shelf.entries()["club lever (2)"].length_mm == 500.0
    # A file put there by hand that says the same name hides nothing either.
    write_toml(tmp_path / "mine" / "fixtures" / "zz.toml", theirs)
    assert shelf.entries()["club lever (zz.toml)"] == theirs
    shelf.remove("club lever (zz.toml)")
    assert shelf.entries()["club lever"] == mine


def test_lists_say_what_is_wrong(tmp_path: Path) -> None:
    library = Library(tmp_path)
    with pytest.raises(InputError, match="name"):
        library.limits.save(Limit(quantity="breakaway", kind="min", unit="N·m", source="x"))
    (tmp_path / "limits").mkdir()
    (tmp_path / "limits" / "bad.toml").write_text('quantity = "braekaway"', encoding="utf-8")
    assert library.limits.entries() == {}
    assert any("braekaway" in problem for problem in library.limits.problems)
    with pytest.raises(FileError):
        library.limits.send_out("nobody", tmp_path / "x.toml")


def test_coach_says_keep_turning_only_while_something_turns() -> None:
    held = np.concatenate([np.zeros(300), np.linspace(0, 40, 500), np.full(900, 40.0)])  # it never gives way
    seen = feed(Coach(100.0, 30.0), held)
    assert Hint.KEEP_TURNING not in seen
    assert Hint.IF_IT_TURNS in seen
    stands, turns = Coach(100.0, 30.0, turned_deg=0.2), Coach(100.0, 30.0, turned_deg=12.0)
    assert Hint.NOTHING_TURNS in feed(stands, held)
    assert Hint.RELEASE not in feed(Coach(100.0, 30.0, turned_deg=0.2), held)
    assert Hint.KEEP_TURNING in feed(turns, held)


HELD = ("other side", "case", "none")
KINDS = [Test(place=p, held=h, gear=g) for p in ("car", "bench") for h in HELD for g in ("neutral", "in gear")]


@pytest.mark.parametrize("kind", KINDS, ids=lambda k: f"{k.place}-{k.held}-{k.gear}")
def test_checks_are_true_for_the_kind_of_test(kind: Test) -> None:
    keys = {check.key for check in checks_for(kind)}
    assert ("chocks" in keys) == ("stands" in keys) == (kind.place == "car")
    assert ("neutral" in keys) == (kind.place == "car" and kind.gear == "neutral")
    assert ("in-gear" in keys) == (kind.place == "car" and kind.gear == "in gear")
    assert len(keys & {"held", "shaft-held", "case-held", "both-free"}) == 1
    assert {"measures-only", "clear", "rating", "stop"} <= keys


def test_what_is_not_stated_is_the_usual_test_and_every_gate_is_asked_somewhere() -> None:
    gates = {caution.key for caution in CAUTIONS if caution.gate}
    usual = Test(place="car", held="other side", gear="neutral")
    assert checks_for(Test()) == checks_for(usual)
    off = Conditions(propshaft_fitted=False)
    assert set().union(*({check.key for check in checks_for(kind, off)} for kind in KINDS)) == gates


def test_with_a_drag_first_the_wheel_is_held_afterwards() -> None:
    kind = Test(place="car", held="other side", gear="neutral")
    before = {check.key for check in checks_for(kind, drag_first=True)}
    assert "both-free" in before
    assert "held" not in before
    assert [check.key for check in holding_checks(kind)] == ["held"]
