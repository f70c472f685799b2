"""A drive as a test of chatter: what is said of levels put together by hand, and which files are taken along."""

from __future__ import annotations

import json
from datetime import UTC, datetime, timedelta
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest

from analysis.road.against import Against
from analysis.road.levels import Levels, find_events
from analysis.rows import road
from analysis.rows.road import Bench, RoadTest, bench_of, event_words, lines_of, road_test, to_csv, to_json, write_road
from logger.errors import FileError
from logger.foreign.vibration import Vibration
from logger.header import Axle, Header, Sidecar

DAY = datetime(2026, 5, 14, tzinfo=UTC)


def course(loud: dict[int, float], *, kind: str = "sound", clipped: tuple[int, ...] = (), n: int = 96) -> Levels:
    """Levels of 12 s in blocks of 1/8 s, 0 dB but for some; NaN is a gap."""
    db = np.zeros(n)
    db[list(loud)] = list(loud.values())
    return Levels(kind, (50.0, 800.0), (np.arange(n) + 0.5) / 8, 1 / 8, 10 ** (db / 10), np.isin(np.arange(n), clipped))


def told(levels: Levels, **more: object) -> RoadTest:
    rest = {"before_file": "", "difference": None, "tag": "", "bench": (), "simulated": False, "problems": ()}
    return RoadTest("a.wav", levels, find_events(levels), **{**rest, **more})


LEVELS = course({8: 10.0, 9: 10.0, 40: 20.0, 41: 20.0, 42: 20.0, 43: 20.0, 80: np.nan}, clipped=(9, 70))
"""Events from 1 to 1.25 s and from 5 to 5.5 s; 95 blocks were kept, so their share is 0.75/11.875 = 6.3 %."""


def test_sentences_by_hand():
    """Mean power: (89 + 2 · 10 + 4 · 100)/95 = 5.36, that is 7.3 dB."""
    said = lines_of(told(LEVELS))
    assert said == (
        "Events that stand out: 2, 0.8 s in all, 6.3 % of 12 s.",
        "Frequency band 50 to 800 Hz; levels in dB re full-scale sine.",
        "Level of the whole 7.3 dB; quiet background 0.0 dB; an event begins at 6.0 dB.",
    )
    first, second = find_events(LEVELS).events
    assert event_words(1, first) == "Event 1: 1.0 to 1.2 s, 10.0 dB, clipped"
    assert event_words(2, second) == "Event 2: 5.0 to 5.5 s, 20.0 dB"


def test_an_acceleration_is_told_in_its_own_unit_too():
    """120 dB re 1 µm/s² are 1 m/s² (ISO 1683, from memory)."""
    said = lines_of(told(course(dict.fromkeys(range(96), 120.0), kind="acceleration")))
    assert said[3] == "In this frequency band 1 m/s² rms, the axes together."


def test_a_difference_and_the_bench_are_told():
    difference = Against(db=-2.5, u95_db=1.25, background_db=0.5, share=-0.031)
    bench = (Bench("b.csv", "2026-05-14", 0.256, True),)
    said = lines_of(told(LEVELS, before_file="x/b.wav", difference=difference, tag="43/11", bench=bench))
    assert said[3] == "Against b.wav: level −2.5 ± 1.2 dB (95 %); share of time −3.1 points."
    assert said[5:] == ("Bench, axle 43/11, 2026-05-14: chatter index 0.26.", road.NOT_ONE_SCALE)
    assert lines_of(told(LEVELS, tag="43/11"))[-1] == "No recording of axle 43/11 with a chatter index lies there."


@pytest.mark.parametrize(
    ("drive", "bench", "marked"), [(False, False, False), (True, False, True), (False, True, True)]
)
def test_what_is_simulated_is_marked(drive, bench, marked):
    found = told(LEVELS, simulated=drive, tag="1", bench=(Bench("b.csv", "2026-05-14", 0.2, bench),))
    assert to_json(found)["simulated"] is marked
    assert ("SIMULATED DATA" in to_csv(found)) is marked


def test_the_course_as_a_table():
    lines = to_csv(told(LEVELS)).splitlines()
    assert lines[0] == "# chatter by level in a frequency band, 50-800 Hz, dB re full-scale sine; no torque"
    assert lines[1] == "time_s,level_db,event,clipped"
    rows = [line.split(",") for line in lines[2:]]
    assert [n for n, row in enumerate(rows) if row[2] == "1"] == [8, 9]
    assert [n for n, row in enumerate(rows) if row[2] == "2"] == [40, 41, 42, 43]
    assert [n for n, row in enumerate(rows) if row[3] == "1"] == [9, 70]
    assert rows[8] == ["1.062", "10.00", "1", "0"]
    assert rows[80][1] == ""


def test_plain_values_of_a_drive():
    difference = Against(db=-2.5, u95_db=1.25, background_db=0.5, share=-0.031)
    said = to_json(told(LEVELS, before_file="b.wav", difference=difference), course=True)
    assert (said["heard_s"], said["clipped_s"], said["total_s"]) == (11.875, 0.25, 0.75)
    assert said["share"] == pytest.approx(0.75 / 11.875)
    assert said["level_db"] == pytest.approx(10 * np.log10(509 / 95))
    assert [event["clipped"] for event in said["events"]] == [True, False]
    assert said["against"]["share"] == -0.031
    assert said["course_db"][80] is None
    assert said["course_db"][40] == pytest.approx(20.0)
    assert said["time_s"][:2] == [0.0625, 0.1875]
    assert "course_db" not in to_json(told(LEVELS))


def test_a_drive_is_written_whole_or_as_a_table(tmp_path):
    made = told(course({}, kind="acceleration"))
    text = Path(write_road(made, str(tmp_path / "a.JSON"))).read_text("utf-8")
    assert json.loads(text) == to_json(made, course=True)
    assert '"unit": "dB re 1 µm/s²"' in text
    assert Path(write_road(made, str(tmp_path / "a.csv"))).read_text("utf-8") == to_csv(made)


def noise(rate_hz: float = 1000.0, *, gain_db: float = 0.0, kind: str = "sound", problems: tuple[str, ...] = ()):
    """Give 21 s of noise."""
    samples = 0.01 * 10 ** (gain_db / 20) * np.random.default_rng(6).standard_normal((round(21 * rate_hz), 1))
    return Vibration(kind, rate_hz, samples, problems=problems)


@pytest.fixture
def files(monkeypatch):
    """Stand for files by their names: sounds, sidecars, and what the bench has."""
    found = SimpleNamespace(sounds={}, sidecars={}, asked=[])

    def bench(folder, tag):
        found.asked.append((folder, tag))
        return ()

    monkeypatch.setattr(road, "read_vibration", lambda name: found.sounds[name])
    monkeypatch.setattr(road, "read_sidecar", lambda name: found.sidecars.get(name))
    monkeypatch.setattr(road, "bench_of", bench)
    return found


@pytest.mark.parametrize(("gain_db", "said"), [(2.9, False), (3.1, True), (-2.9, False), (-3.1, True)])
def test_backgrounds_three_decibels_apart_are_told(files, gain_db, said):
    files.sounds = {"a.wav": noise(gain_db=gain_db), "b.wav": noise()}
    found = road_test("a.wav", "b.wav")
    assert found.difference.db == pytest.approx(gain_db, abs=1e-6)
    sign = "+" if gain_db > 0 else "−"
    words = f"the quiet backgrounds differ by {sign}{abs(gain_db)} dB: gain, place, speed or road were not the same"
    assert found.problems == ((words,) if said else ())


def test_two_drives_are_compared_in_a_band_that_both_carry(files):
    """A rate of 1000 Hz carries 450 Hz."""
    files.sounds = {"a.wav": noise(4000.0, problems=("odd",)), "b.wav": noise(1000.0, problems=("odd, too",))}
    found = road_test("a.wav", "b.wav")
    assert found.levels.band_hz == (50.0, 450.0)
    assert found.problems[:2] == ("odd", "Recording before: odd, too")
    assert road_test("a.wav").levels.band_hz == (50.0, 800.0)
    assert road_test("a.wav", band=(100.0, 200.0)).levels.band_hz == (100.0, 200.0)


def test_the_axle_is_the_one_of_the_drive_itself(files):
    files.sounds = {"f/a.wav": noise(), "b.wav": noise(), "c.wav": noise()}
    files.sidecars = {
        "f/a.wav": Sidecar(axle=Axle(tag=" 43/11 ")),
        "b.wav": Sidecar(axle=Axle(tag="X"), simulated=True),
    }
    assert (road_test("f/a.wav", "b.wav").tag, road_test("f/a.wav", tag=" own ").tag) == ("43/11", "own")
    assert (road_test("c.wav", "b.wav").tag, road_test("c.wav").simulated) == ("", False)
    assert road_test("c.wav", "b.wav").simulated
    assert road_test("b.wav", folder="bench").tag == "X"
    assert files.asked == [("f", "43/11"), ("f", "own"), ("bench", "X")]


def test_what_is_cut_is_told(files):
    loud = noise()
    loud.samples[3000:3010] = 0.5
    files.sounds = {
        "a.wav": Vibration("sound", 1000.0, loud.samples, ends=(-0.5, 0.5)),
        "b.csv": Vibration("acceleration", 1000.0, np.clip(loud.samples, -0.01, 0.01)),
    }
    assert road_test("a.wav").problems == ("clipped for 0.1 s: levels there are too low; record with less gain",)
    assert road_test("b.csv").problems[0].startswith("the largest acceleration stands several times in a row")


def test_the_three_newest_recordings_of_the_axle(monkeypatch):
    tests = [
        *[(f"{n}.csv", "43/11 ", n) for n in (1, 5, 3, 2, 4)],
        ("dial.dial.toml", "43/11", 9),
        ("other.csv", "X", 9),
        ("none.csv", "43/11", 8),
        ("bad.csv", "43/11", 7),
    ]
    listed = [
        (Path(name), Header(axle=Axle(tag=tag), simulated=n == 4), DAY + timedelta(days=n)) for name, tag, n in tests
    ]

    def read(path):
        if path.name == "bad.csv":
            raise FileError("torn")
        return path

    monkeypatch.setattr(road, "tests_in", lambda _folder: listed)
    monkeypatch.setattr(road, "read_file", read)
    monkeypatch.setattr(
        road, "recording_row", lambda path: {"chatter_index": None if path.stem == "none" else float(path.stem) / 10}
    )
    assert bench_of("x", "43/11") == (
        Bench("5.csv", "2026-05-19", 0.5, False),
        Bench("4.csv", "2026-05-18", 0.4, True),
        Bench("3.csv", "2026-05-17", 0.3, False),
    )
