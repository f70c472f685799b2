"""Borders of weighing, of a run's words and of files: by hand, on either side of each."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import numpy as np
import pytest

from analysis.verdict.job import Job
from gui.models import comparing, learning, ordering, undoing
from gui.models.calibrating import Calibrating
from gui.models.details import keep_details
from gui.models.flow import Step
from gui.models.importing import TablePreview
from gui.models.job import JobCard
from gui.models.loading import angle_of
from gui.models.run import TestRun
from gui.models.state import LinkState
from gui.models.stream import recording_stem
from gui.models.trending import follow
from gui.models.weighing import ANTICLOCKWISE, Doing, Hanging, Weighing, plan_of
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.errors import FileError, InputError
from logger.header import Header, JobFacts, Table, Test, TransducerFacts
from logger.samples import Chunk, Event, EventKind
from tests.gui.models.test_answers import COMMON, ComparisonAsked, run, scale
from tests.gui.models.test_steps import pull

G = 9.80665
"""Standard gravity, m/s² (ISO 80000-3)."""


TIME_S = np.arange(0, 4, 0.01)


def weighing(*masses: str, way: str = "clockwise", down: bool = True, **facts: object) -> Weighing:
    said = TransducerFacts(**({"unit": "N·m", "capacity_nm": 200.0} | facts))
    plan, wrong = plan_of(Hanging(masses, arm="500 mm", way=way, down=down), said)
    assert plan is not None, wrong
    return Weighing(plan)


def hang(of: Weighing, *levels: float) -> None:
    for level in levels:
        before = of.step
        for at in range(0, len(TIME_S), 20):
            of.insist()
            if of.feed(TIME_S[at : at + 20] + 10.0 * before, np.full(20, level)):
                break
        assert of.step == before + 1


def test_loads_go_up_and_down_again_and_each_step_has_its_change() -> None:
    """10 and 20 kg at half a metre: 49.0 and 98.1 N·m; the heaviest hangs once."""
    of = weighing("20 kg", "10 kg")
    masses = [None if load is None else load.weight.mass_kg for load in of.plan.steps]
    assert masses == [None, 10.0, 20.0, 10.0, None]
    assert of.plan.torque_nm(2) == pytest.approx(20 * G * 0.5)
    changes = [of.change_nm]
    for level in (0.3, 49.3, 98.4, 49.3, 0.3):
        hang(of, level)
        changes.append(of.change_nm)
    ten = 10 * G * 0.5
    assert changes == pytest.approx([0.0, ten, ten, -ten, -ten, 0.0])
    assert of.doing is Doing.DONE
    assert [load.weight.mass_kg for load in weighing("10 kg", "20 kg", down=False).plan.steps if load] == [10.0, 20.0]


def test_what_is_shown_counts_from_the_first_reading_with_nothing_hung() -> None:
    of = weighing("10 kg")
    hang(of, 0.5, 49.5, 0.6)
    assert [row.shown_nm for row in of.rows] == pytest.approx([0.0, 49.0, 0.1], abs=1e-9)
    assert of.drift_nm == pytest.approx(0.1)


def test_the_other_way_round_reads_negative_and_is_shown_positive() -> None:
    of = weighing("10 kg", way=ANTICLOCKWISE)
    assert of.plan.torque_nm(1) == pytest.approx(-10 * G * 0.5)
    hang(of, 0.0, -49.0)
    assert of.rows[1].shown_nm == pytest.approx(49.0)
    assert weighing("10 kg", way=ANTICLOCKWISE, sign="none").plan.torque_nm(1) > 0


def test_a_step_is_waited_for_from_its_own_first_sample_and_its_share_is_of_the_quiet() -> None:
    of = weighing("10 kg")
    of.feed(np.array([100.0, 100.1]), np.zeros(2))
    of.feed(np.array([103.0]), np.zeros(1))
    assert of.waited_s == pytest.approx(3.0)
    of = weighing("10 kg")
    hang(of, 0.0)
    assert of.doing is Doing.HANG
    assert of.share == 0.0
    of.again()
    assert of.step == 0


@pytest.mark.parametrize(("resolution", "u"), [(None, 0.0), (1.0, 1.0 / np.sqrt(12))])
def test_the_step_of_the_reading_is_in_a_point_only_where_it_is_known(resolution: float | None, u: float) -> None:
    """A rectangle of a whole step (JCGM 100, F.2.2.1) beside what weight and arm leave open."""
    of = weighing("10 kg", resolution_nm=resolution)
    hang(of, 0.0, 49.0)
    without = weighing("10 kg")
    hang(without, 0.0, 49.0)
    (point,), (plain,) = of.points, without.points
    assert point.u95_percent >= plain.u95_percent
    assert (point.u95_percent > plain.u95_percent + 0.1) is bool(u)


def test_numbers_of_a_transducer_without_calibration_are_its_own() -> None:
    """What it counts is shown as it counts: there is nothing yet that would make a torque of it."""
    description = Description(
        name="raw", transducer=TransducerFacts(unit="lbf·ft"), lines=LineFormat(template="{torque}")
    )
    plan, _ = plan_of(Hanging(("10 kg",), arm="500 mm"), description.transducer)
    assert plan is not None
    of = Calibrating(plan, description)
    of.feed(TIME_S[:10], np.full(10, 1000.0))
    assert of.now_nm == pytest.approx(1000.0)
    assert of.moving is False
    assert of.rows == ()


def a_run(pulls: int = 0) -> TestRun:
    made = TestRun(JobCard())
    made.flow.start()
    while made.flow.now is not Step.PULLS:
        made.flow.done()
    job = Job(made.card.judged_by("pulls"))
    for number in range(pulls):
        made.pulls.add(0.0, pull(10.0 * number), job)
    return made


def test_the_pull_that_is_named_is_left_out_and_comes_back() -> None:
    made = a_run(3)
    made.leave_out(2, "jerked")
    assert [p.rejected for p in made.pulls.pulls] == ["", "jerked", ""]
    made.leave_out(2)
    assert not made.pulls.pulls[1].rejected
    made.reject_last()
    assert made.pulls.pulls[2].rejected == "excluded by hand"


def test_what_the_button_says_during_pulls() -> None:
    made = a_run(1)
    made.link = LinkState.LIVE
    assert made.action().text == f"Pull 2 of {made.card.pulls_wanted}"
    assert not made.action().enabled
    enough = a_run(made.card.pulls_wanted)
    enough.link = LinkState.LIVE
    assert enough.action().text == "Enough pulls: zero again"
    enough.coach.loaded = True
    assert enough.action().text == "Finish this pull"


def test_the_rest_that_is_left() -> None:
    made = a_run()
    made.card.put(dwell_s=15.0)
    assert made.dwell_left_s is None
    made._rest_from_s = made.trace.end_s - 14.5
    assert made.dwell_left_s == pytest.approx(0.5)
    made._rest_from_s = made.trace.end_s - 15.5
    assert made.dwell_left_s is None
    made._rest_from_s = made.trace.end_s - 1.0
    made.link = LinkState.SILENT
    assert made.silent
    assert made.dwell_left_s is None


@pytest.mark.parametrize(("told", "shown"), [("12 %", "12 %"), ("", "low")])
def test_a_battery_says_how_low_or_that_it_is(told: str, shown: str) -> None:
    made = a_run()
    made._event(Event(EventKind.BATTERY, 0, 0, told, 0.0))
    assert made.battery == shown


def test_a_recordings_name_says_when_what_which_side_and_why() -> None:
    started = datetime(2026, 3, 4, 5, 6, 7).astimezone()
    test = Test(side="left", purpose="drag")
    whole = Header(started=started, job=JobFacts(vehicle="blue car", number="A 7"), test=test)
    assert recording_stem(whole).split("-")[:2] == ["20260304", "050607"]
    assert "blue" in recording_stem(whole)
    assert recording_stem(whole).endswith("left-drag")
    assert "7" in recording_stem(Header(started=started, job=JobFacts(number="A 7"), test=Test())).split("050607")[1]
    assert recording_stem(Header(started=started, test=Test())).endswith("-test")


def test_groups_are_told_with_the_whole_first_and_the_scatter_behind() -> None:
    runs = [
        run(f"{oil}{n}", 40.0 + n + 9.0 * (oil == "b"), oil=oil, fill=f"{oil}{n}") for oil in "abc" for n in range(3)
    ]
    found = comparing.compare_groups(runs, COMMON, ComparisonAsked("oil")).comparison
    assert found is not None
    (notes,) = (sheet for sheet in comparing.group_sheets(found, scale()) if sheet.name.startswith("Notes"))
    said = [row[-1][:7] for row in notes.rows]
    assert said.index("Against") == 0


def test_the_reference_level_is_named_at_its_own_jobs_alone() -> None:
    runs = [run(f"{n}", 50.0 + (n % 3), date=f"2026-05-{n + 1:02}") for n in range(9)]
    (of,) = ordering.watch_axles(runs, COMMON, 5).axles
    jobs = ordering.watch_sheets(of, scale())[0]
    assert ["reference level" in row[4] for row in jobs.rows] == [True] * 5 + [False] * 4


def test_the_band_is_drawn_from_end_to_end_in_even_steps() -> None:
    runs = [run(f"{n}", 50.0 - n + 0.1 * (n % 2), shim=float(n), fill=f"{n}") for n in range(6)]
    trend = follow(runs, COMMON, "shim")
    at = [point.x for point in trend.along]
    assert np.ptp(np.diff(at)) == pytest.approx(0.0, abs=1e-9)
    assert at[0] <= 0.0
    assert at[-1] >= 5.0


def test_the_last_whole_line_is_shown_as_it_came() -> None:
    description = Description(name="x", lines=LineFormat(template="{torque}"))
    assert learning._last_raw(description, [Chunk(0.0, b"1.0\n2.0\n")]) == "2.0"
    assert learning._last_raw(description, [Chunk(0.0, b"1.")]) in {"", "1."}
    assert learning._last_raw(description, []) == ""


@pytest.mark.parametrize(("unit", "force"), [("N", True), ("N·m", False), (None, False)])
def test_a_table_of_forces_is_known_by_its_unit(unit: str | None, force: bool) -> None:
    assert TablePreview(used=Table(unit=unit)).is_force is force


# ---------------------------------------------------------------------- files
@pytest.mark.parametrize("name", ["", " ", ".x", "a/b", "a:b", "con", "LPT1", "nul.txt", "x" * 121])
def test_names_that_no_file_can_have(tmp_path: Path, name: str) -> None:
    path = tmp_path / "old.csv"
    path.write_text("x", "utf-8")
    with pytest.raises(InputError, match="letters"):
        undoing.rename(str(path), name)
    assert path.exists()


def test_a_recording_is_renamed_and_put_away_and_comes_back(tmp_path: Path) -> None:
    path = tmp_path / "old.csv"
    path.write_text("x", "utf-8")
    new, step = undoing.rename(str(path), "x" * 120)
    assert Path(new).name == f"{'x' * 120}.csv"
    assert step.back() == str(path)
    for purpose in ("drag", "zero"):
        with pytest.raises(InputError, match="keep their names"):
            undoing.rename(str(path), "other", purpose=purpose)
    undo = undoing.Undo()
    assert (undo.words, undo.take_back()) == ("", "")
    undo.steps.append(undoing.to_bin(str(path)))
    assert not path.exists()
    path.write_text("another", "utf-8")
    with pytest.raises(FileError, match="another file of that name"):
        undo.steps[-1].back()
    path.unlink()
    assert undo.take_back() == str(path)
    assert path.read_text("utf-8") == "x"


def test_a_change_says_what_and_why(tmp_path: Path) -> None:
    recording = tmp_path / "a.csv"
    recording.write_text("x", "utf-8")
    before, after = JobCard(), JobCard()
    with pytest.raises(InputError, match="Nothing has been changed"):
        keep_details(recording, before, after, "why", "me")
    after.swap({"test": Test(side="left")})
    for reason in ("", "  "):
        with pytest.raises(InputError, match="Say why"):
            keep_details(recording, before, after, reason, "me")
    assert keep_details(recording, before, after, "typed wrong", "me") == ("kind of test",)


@pytest.mark.parametrize(("samples", "shown"), [(100, 100), (39_999, 39_999), (60_001, 20_001)])
def test_an_angle_is_drawn_at_twenty_thousand_points(tmp_path: Path, samples: int, shown: int) -> None:
    path = tmp_path / "a.csv"
    rows = "".join(f"{n / 1000:.3f},{n % 50},{n / 10:.1f}\n" for n in range(samples))
    path.write_text(f"time_s,torque_nm,angle_deg\n{rows}", "utf-8")
    path.with_suffix(".sidecar.toml").write_text("[transducer]\ngain = 1.25\n", "utf-8")
    angle, torque, time_s = angle_of(str(path))
    assert len(angle) == len(torque) == len(time_s) == shown
    assert torque[1] == pytest.approx(max(1, samples // 20_000) / 1.25)


def test_a_card_says_what_a_test_lacks() -> None:
    card = JobCard()
    assert card.pulls_wanted == 5
    assert card.missing() == ("a transducer", "a fixture")
