"""Files as people have them, through the command and from Python: WAV in every width, tables, two drives, the bench."""

from __future__ import annotations

import contextlib
import json
from datetime import UTC, datetime

import numpy as np
import pytest
from scipy.io import wavfile

import heldwheel
from analysis.__main__ import COMMANDS
from analysis.rows.road import bench_of
from logger import header
from logger.edges.door import run_door
from logger.errors import FileError
from logger.foreign.vibration import read_vibration
from tests.analysis.drives import drive, write_wav
from tests.analysis.simulated import HUB, ZERO, run_of, write_trace

RATE = 8000
BURSTS = ((6.0, 7.0), (12.0, 13.5))


@pytest.fixture
def door(capsys):
    def run(*words):
        code = run_door("heldwheel-read", "", COMMANDS, "analysis.doors", ["chatter", *(str(w) for w in words)])
        shown = capsys.readouterr()
        return code, shown.out, shown.err

    return run


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """A drive before and one after, by 6 dB quieter bursts, and a test of the same axle on the bench."""
    made = tmp_path_factory.mktemp("drives")
    write_wav(made / "before.wav", drive(RATE, 40.0, BURSTS, 0.1), RATE)
    write_wav(made / "after.wav", drive(RATE, 40.0, BURSTS[:1], 0.05, seed=2), RATE)
    facts = {"axle": header.Axle(tag="43-11"), "started": datetime(2026, 5, 14, tzinfo=UTC), "simulated": True}
    write_trace(
        made / "bench.csv", run_of(one_stud=False, seed=2), lever=HUB, zero=ZERO, test=header.Test(held="other side"),
        **facts,
    )  # fmt: skip
    return made


def test_the_command_counts_events_and_says_what_it_is_not(door, folder) -> None:
    code, out, err = door(folder / "before.wav")
    assert code == 0
    assert out.startswith("SIMULATED DATA\nChatter by its level in a frequency band: no torque, no limit, no result.")
    assert "Events that stand out: 2, 2." in out
    assert "gear whine, tyre squeal, road noise" in err
    assert "closed ground" in err


def test_before_and_after_beside_the_bench(door, folder) -> None:
    code, out, _ = door(folder / "after.wav", "--against", folder / "before.wav", "--axle", "43-11", "--json")
    said = json.loads(out)
    assert code == 0
    assert said["schema"] == "heldwheel chatter 1"
    assert said["simulated"] is True
    assert -13 < said["against"]["difference_db"] < -5
    assert abs(said["against"]["background_db"]) < 1
    assert [b["file"] for b in said["bench"]] == ["bench.csv"]
    index = heldwheel.chatter(folder / "after.wav", axle="43-11").attrs["bench"][0]["chatter_index"]
    assert said["bench"][0]["chatter_index"] == index == bench_of(str(folder), "43-11")[0].index
    assert "result" not in said
    assert "limit" not in said


def test_written_and_from_python_are_one(door, folder, tmp_path) -> None:
    door(folder / "before.wav", "--out", tmp_path / "level.csv", "--band", "100-400Hz")
    lines = (tmp_path / "level.csv").read_text("utf-8").splitlines()
    assert lines[0].endswith("SIMULATED DATA")
    frame = heldwheel.chatter(folder / "before.wav", band=(100.0, 400.0))
    assert [float(line.split(",")[1]) for line in lines[2:]] == pytest.approx(frame.level_db.tolist(), abs=0.01)
    assert frame.attrs["band_hz"] == [100.0, 400.0]


@pytest.mark.parametrize("kind", [np.uint8, np.int16, np.int32, np.float32])
def test_a_sine_of_half_the_scale_is_minus_6_decibels_in_every_width(tmp_path, kind) -> None:
    sine = 0.5 * np.sin(2 * np.pi * 200 * np.arange(12 * RATE) / RATE)
    full = 1.0 if kind == np.float32 else 128.0 if kind == np.uint8 else -float(np.iinfo(kind).min)
    stored = (sine * full + (128.0 if kind == np.uint8 else 0.0)).astype(kind)
    wavfile.write(tmp_path / "sine.wav", RATE, np.column_stack([stored, stored]))
    assert heldwheel.chatter(tmp_path / "sine.wav").level_db.iloc[8] == pytest.approx(-6.02, abs=0.1)


def test_a_table_of_a_telephone(door, tmp_path) -> None:
    """Unequal steps, a gap, an absolute column beside its axes: its level is that of the axes (formula of a sine)."""
    generator = np.random.default_rng(1)
    t = np.cumsum(np.full(6000, 0.005) + 0.0002 * generator.standard_normal(6000))
    x = 0.05 * generator.standard_normal(6000)
    x[(t > 10) & (t < 12)] += 2 * np.sin(2 * np.pi * 40 * t[(t > 10) & (t < 12)])
    kept = (t < 20) | (t > 21)
    rows = "\n".join(f"{a:.5f},{b:.4f},0.0,{abs(b):.4f}" for a, b in zip(t[kept], x[kept], strict=True))
    heads = "Time (s),Acceleration x (m/s^2),Acceleration y (m/s^2),Absolute acceleration (m/s^2)"
    (tmp_path / "phone.csv").write_text(f"{heads}\n{rows}\n")
    read = read_vibration(tmp_path / "phone.csv")
    assert read.rate_hz == pytest.approx(200, rel=0.01)
    assert read.samples.shape[1] == 2
    code, out, _ = door(tmp_path / "phone.csv", "--json")
    said = json.loads(out)
    assert code == 0
    assert [e["level_db"] for e in said["events"]] == [pytest.approx(20 * np.log10(2 / np.sqrt(2) / 1e-6), abs=0.6)]
    assert said["problems"] == ["gaps of 1.0 s in all have no level"]
    assert "rms" in door(tmp_path / "phone.csv")[1]


@pytest.mark.parametrize(
    ("name", "data", "says"),
    [
        ("a.wav", b"RIFF\x00\x00\x00\x00WAVE", "WAV"),
        ("a.wav", b"\x00\x00\x00\x20ftypM4A ", "save the recording as WAV"),
        ("a.m4a", b"\x00\x00\x00\x20ftypM4A ", "packed sound"),
        ("a.csv", b"time [s],torque [N.m]\n0,1\n1,2\n2,3\n", "no column of acceleration"),
        ("a.csv", b"x [g]\n0\n1\n2\n", "no column of time"),
    ],
)
def test_what_is_neither_says_the_fix(tmp_path, name, data, says) -> None:
    (tmp_path / name).write_bytes(data)
    with pytest.raises(FileError, match=says):
        read_vibration(tmp_path / name)


def test_a_wav_cut_off_or_spoilt_ends_in_words(tmp_path) -> None:
    whole = write_wav(tmp_path / "a.wav", drive(RATE, 12.0, (), 0.0), RATE, simulated=False)
    data = (tmp_path / "a.wav").read_bytes()
    generator = np.random.default_rng(2)
    for at in range(60):
        spoilt = bytearray(data[: len(data) // 2] if at % 2 else data[:400])
        spoilt[int(generator.integers(0, 44))] = int(generator.integers(0, 256))
        (tmp_path / "b.wav").write_bytes(spoilt)
        with contextlib.suppress(FileError):
            assert read_vibration(tmp_path / "b.wav").samples.size
    assert read_vibration(whole).samples.shape == (12 * RATE, 1)


@pytest.mark.parametrize("channels", [1, 2])
def test_a_sound_that_ended_before_it_began_is_refused_in_words(tmp_path, channels) -> None:
    empty = tmp_path / "empty.wav"
    wavfile.write(empty, 44_100, np.empty((0, channels) if channels > 1 else 0, np.int16))
    with pytest.raises(FileError, match="holds no sound: 0 samples"):
        read_vibration(empty)
