"""Practice: each mistake makes the error that the trade's sums say, and a recording is marked simulated."""

import os
from math import cos, radians, tan

import pytest

from logger.errors import InputError
from logger.recordings.files import read_trace
from logger.virtual.physics import simulate
from logger.virtual.practice import LEVER, MISTAKES, Dials, attempt, lever_facts, plain_reading, truth_of

DIALS = Dials(pulls=1)
GRAVITY = 9.80665


@pytest.fixture(scope="module")
def truth():
    return truth_of(simulate(attempt(DIALS, {}).scenario, 1))


def read(**mistakes):
    made = attempt(DIALS, {name.replace("_", "-"): size for name, size in mistakes.items()})
    return plain_reading(simulate(made.scenario, 1), made)


def test_truth_is_the_dialled_axle(truth):
    """45 + 8/2 + 3 N·m, a little more for what rises with speed."""
    assert truth.rotating_nm == pytest.approx(45 + 4 + 3, abs=1.5)
    assert 52 < truth.breakaway_nm < 45 * 1.2 + 7 + 2


def test_careful_reading_is_right(truth):
    careful = read()
    assert careful.breakaway_nm == pytest.approx(truth.breakaway_nm, rel=0.02)
    assert careful.rotating_nm == pytest.approx(truth.rotating_nm, rel=0.02)


def test_lever_mistakes_have_the_size_of_their_geometry(truth):
    """As read, r/L too little; off line by 60°, r/L (1 - cos 60°) too much; square and 15° oblique, r/L tan 15°."""
    share = LEVER.stud_radius_m / LEVER.length_m
    careful = read().rotating_nm
    assert read(as_read=None).rotating_nm / careful == pytest.approx(1 / (1 + share), abs=0.003)
    off = read(off_line=60.0).rotating_nm / careful
    assert off == pytest.approx((1 + share) / (1 + share * cos(radians(60))), abs=0.012)
    oblique = read(oblique=15.0).rotating_nm / truth.rotating_nm
    assert oblique == pytest.approx(1 / (1 + share * tan(radians(15))), abs=0.015)
    shorter = read(length=30.0).rotating_nm / careful
    assert shorter == pytest.approx((1 + share) / (1 + LEVER.stud_radius_m / (LEVER.length_m - 0.03)), abs=0.005)


def test_zero_mistakes_shift_by_what_was_zeroed(truth):
    weight = LEVER.mass_kg * GRAVITY * LEVER.centroid_m * cos(radians(LEVER.start_deg))
    assert read().rotating_nm - read(wrong_zero=None).rotating_nm == pytest.approx(weight * LEVER.factor, abs=0.1)
    assert read().rotating_nm - read(self_zero=10.0).rotating_nm == pytest.approx(10 * LEVER.factor, abs=0.1)


def test_brake_case_and_tyre(truth):
    careful = read().rotating_nm
    assert read(brake=6.0).rotating_nm - careful == pytest.approx(6.0, abs=0.8)
    # Case held: both packs, and the other wheel's drag instead of the driveline's half.
    assert read(case_held=None).rotating_nm - careful == pytest.approx(45 - 4 + 3, abs=3.0)
    # The tyre lets go at 25 N·m: that, the whole driveline's drag and the wheel's own.
    assert read(tyre_slips=25.0).rotating_nm == pytest.approx(25 + 8 + 3, abs=3.5)


def test_jerk_slow_converter_and_large_range(truth):
    assert read(jerk=None).breakaway_nm > 1.15 * truth.breakaway_nm
    assert read(slow_converter=10.0).breakaway_nm < 0.97 * truth.breakaway_nm
    steps = read(large_range=6.8).breakaway_nm / LEVER.factor / 6.8
    assert steps == pytest.approx(round(steps), abs=0.06)


def test_dials_refuse_what_no_axle_is():
    for wrong in (Dials(rotating_nm=-1.0), Dials(breakaway_nm=1e6), Dials(uneven=0.0), Dials(pulls=0)):
        with pytest.raises(InputError, match="must lie between"):
            wrong.scenario()
    with pytest.raises(InputError, match="no mistake 'sneeze'"):
        attempt(DIALS, {"sneeze": None})
    with pytest.raises(InputError, match="size"):
        attempt(DIALS, {"brake": float("nan")})


def test_fluids_do_what_they_say():
    smooth = simulate(Dials(fluid="smooth", pulls=1).scenario(), 1).truth[0]
    assert smooth.peak_class == "none"
    wrong = simulate(Dials(fluid="wrong", pulls=1).scenario(), 1).truth[0]
    assert wrong.stick_slip is not None


def test_lever_facts_are_what_the_owner_believes():
    facts = lever_facts(LEVER)
    assert facts.fixture == "one stud"
    assert facts.stud_circle_mm == pytest.approx(114.3)
    assert facts.angle_deg == 0.0


# --- the door ---------------------------------------------------------------------------------------------------------


def door(capsys, *words):
    from logger.__main__ import COMMANDS
    from logger.edges.door import run_door

    code = run_door("heldwheel-log", "", COMMANDS, "logger.doors", ["practise", *words])
    return code, capsys.readouterr()


def test_door_lists(capsys):
    code, out = door(capsys, "--list")
    assert code == 0
    for name in (*MISTAKES, "stick-slip", "both-free"):
        assert name in out.out


def test_door_shows_each_error_alone_and_together(capsys):
    code, out = door(capsys, "--pulls", "1", "--mistake", "brake=9", "--mistake", "as-read", "--unit", "lbf-ft")
    assert code == 0
    assert "breakaway lbf·ft" in out.out
    lines = {line.split()[0]: line for line in out.out.splitlines() if line.strip()}
    assert "+1" in lines["brake"]
    assert "-1" in lines["as-read"]
    assert "together" in lines
    assert "SIMULATED" in out.err


def test_door_writes_a_recording_marked_simulated(capsys, tmp_path):
    file = tmp_path / "try.csv"
    code, _ = door(capsys, "--pulls", "1", "--mistake", "off-line=45", "--out", str(file))
    assert code == 0
    trace = read_trace(file)
    assert trace.state == "closed"
    assert trace.header.simulated
    assert trace.header.test.purpose == "practice"
    assert trace.header.lever.angle_deg == 0.0  # what its owner believes
    assert trace.header.zero.value_nm == pytest.approx(0.0, abs=0.02)
    assert trace.torque_nm.max() > 40
    assert door(capsys, "--pulls", "1", "--out", str(file))[0] == 2  # never overwritten


def test_door_explains_bad_input(capsys):
    for words, text in (
        (("--mistake", "sneeze"), "There is no mistake"),
        (("--rotating", "45 furlong"), "torque unit"),
        (("--scenario", "healthy"), "--out FILE"),
        (("--scenario", "healthy", "--mistake", "brake"), "omit --scenario"),
        (("--scenario", "nothing", "--out", "x.csv"), "no scenario"),
        (("--rotating", "0.1N·m"), "must lie between"),
    ):
        code, out = door(capsys, *words)
        assert code == 2
        assert text in out.err
        assert "Traceback" not in out.err


@pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are a POSIX thing")
def test_door_streams_on_a_port(tmp_path):
    """Played fast, read by the real serial library; the description lies beside the link."""
    import subprocess
    import sys

    import serial

    from logger.decoder.description import read_description

    link = tmp_path / "gauge"
    words = [sys.executable, "-m", "logger", "practise", "--pulls", "1", "--port", str(link), "--speed", "40"]
    process = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
    try:
        assert process.stdout.readline().strip() == str(link)
        with serial.Serial(str(link), timeout=2) as port:
            data = port.read(2000)
        assert data.count(b"SIM,") > 50
        assert read_description(f"{link}.toml").simulated_mark == "SIM"
    finally:
        process.terminate()
        process.communicate(timeout=20)
    assert process.returncode is not None
