"""Force on a lever of known radius: the same pull as a torque, in every way that a force comes in."""

from __future__ import annotations

import math

import numpy as np
import pytest

from analysis.pipeline import Asked, read_file
from analysis.to_axle.at_axle import SECOND_ORDER, Instrument, Level, TracedTorque, at_axle
from analysis.to_axle.fixtures import fixture_from
from analysis.trace.results import Code
from logger.decoder.build import build_decoder
from logger.decoder.description import read_description
from logger.edges.door import Exit, run_door
from logger.errors import HeldwheelError, InputError
from logger.header import Header, Lever, TransducerFacts
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Ending, EndReason
from logger.virtual.port import VirtualPort
from tests.analysis.made import Shape, trace

ARM = Lever(fixture="force at radius", radius_mm=400.0, radius_mm_u=1.0, pull_angle_deg=0.0, pull_angle_deg_u=2.0)
GRAVITY = 9.80665  # m/s², standard gravity, exact (NIST SP 811)


def table(folder, name, heading, scale, digits=4):
    time_s, torque_nm = trace(Shape(), Shape(), rate_hz=100.0)
    rows = "".join(f"{t:.3f},{y * scale:.{digits}f}\n" for t, y in zip(time_s, torque_nm, strict=True))
    path = folder / f"{name}.csv"
    path.write_text(f"Time (s),{heading}\n{rows}", encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("heading", "per_newton"),
    [("Force (N)", 1.0), ("Gewicht (kg)", 1 / GRAVITY), ("Load (lbf)", 1 / 4.4482216152605), ("Kraft [kN]", 1e-3)],
)
def test_a_force_is_the_torque_over_its_radius(tmp_path, heading, per_newton):
    couple = Asked(lever=Lever(fixture="couple"))
    torque = read_file(table(tmp_path, "torque", "Torque (Nm)", 1.0), couple)
    force = read_file(table(tmp_path, "force", heading, per_newton / 0.4, digits=6), Asked(lever=ARM))
    assert len(force.pulls) == len(torque.pulls) == 2
    for one, other in zip(force.pulls, torque.pulls, strict=True):
        for quantity in ("breakaway", "rotating mean"):
            assert one.axle[quantity].value == pytest.approx(other.axle[quantity].value, rel=2e-4)
    assert force.unit == "N·m"


def test_radius_and_obliqueness_are_rows_of_the_budget(tmp_path):
    reading = read_file(table(tmp_path, "force", "Force (N)", 1 / 0.4), Asked(lever=ARM))
    budget = reading.pulls[0].axle["breakaway"]
    rows = {row.input.name: row for row in budget.rows}
    # d(F R cos delta)/dR = F cos delta: a millimetre of 400 is 0.25 %
    assert abs(rows["force radius"].contribution) == pytest.approx(budget.value * 1.0 / 400.0, rel=1e-3)
    assert "pull angle" in rows
    oblique = Lever(
        fixture="force at radius", radius_mm=400.0, radius_mm_u=1.0, pull_angle_deg=20.0, pull_angle_deg_u=2.0
    )
    slant = read_file(table(tmp_path, "force", "Force (N)", 1 / 0.4), Asked(lever=oblique)).pulls[0].axle["breakaway"]
    assert slant.value == pytest.approx(budget.value * math.cos(math.radians(20)), rel=1e-3)
    rows = {row.input.name: row for row in slant.rows}
    expected = slant.value * math.tan(math.radians(20)) * math.radians(2)
    assert abs(rows["pull angle"].contribution) == pytest.approx(expected, rel=2e-3)


def test_the_bias_of_a_pull_judged_by_eye_lies_within_its_interval():
    """A pull that nobody measured is never above F R: cos of ± 10° is 0.5 % low on average (sin a / a), 1.5 % at most.

    The value stays that of the square pull; the second-order row (JCGM 100, 5.1.2 note) must be as wide as that.
    """
    arm = Lever(fixture="force at radius", radius_mm=400.0, radius_mm_u=0.01, weight_kg=0.001, centroid_mm=1.0)
    fixture = fixture_from(arm)
    budget = at_axle(TracedTorque("breakaway", 150.0, 0.01), fixture, Instrument(0.0), Level(0.0, 0.0, True))
    a = math.radians(10)
    assert 1 - math.sin(a) / a == pytest.approx(0.0051, abs=5e-5)
    truth = budget.value * np.cos(np.linspace(-a, a, 2001))
    assert np.mean(np.abs(truth - budget.value) <= budget.u95) >= 0.94
    # u² / √2 of the value, u = 10°/√3: normal inputs; a rectangle's own spread of cos would be 0.46 %
    assert budget.row(SECOND_ORDER).contribution == pytest.approx(a * a / 3 / math.sqrt(2) * budget.value, rel=0.02)


def test_without_its_lever_or_with_another_it_says_what_it_needs(tmp_path):
    path = table(tmp_path, "force", "Force (N)", 1 / 0.4)
    with pytest.raises(InputError, match='--fixture "force at radius" --radius'):
        read_file(path)
    with pytest.raises(InputError, match="a 'couple' fixture takes a torque"):
        read_file(path, Asked(lever=Lever(fixture="couple")))
    with pytest.raises(HeldwheelError, match="needs its lever"):
        _ = read_trace(path).torque_nm


SCALE = """\
name = "crane scale"
link = "serial"
measures = "force"

[transducer]
unit = "kg"
sign = "signed"
capacity_n = 1000.0
rate_hz = 100.0

[lines]
template = "ST,{force} kg"
"""


def test_a_streamed_scale_is_recorded_as_it_was_sent(tmp_path):
    description = tmp_path / "scale.toml"
    description.write_text(SCALE, encoding="utf-8")
    decoder = build_decoder(read_description(str(description)))
    time_s, torque_nm = trace(Shape(), rate_hz=100.0)
    sent = [f"{y / 0.4 / GRAVITY:+.3f}" for y in torque_nm]
    block = decoder.feed("".join(f"ST,{s} kg\r\n" for s in sent).encode())
    assert decoder.columns[0].unit == "kgf"
    assert block.columns["torque"].tolist() == [float(s) for s in sent]
    facts = TransducerFacts(unit="kgf", sign="signed", capacity_n=1000.0)
    path = tmp_path / "scale.csv"
    writer = RecordingWriter(path, Header(transducer=facts, lever=ARM, time_from="arrival"), decoder.columns)
    writer.on_block(Block(time_s, {"torque": block.columns["torque"]}, ()))
    writer.on_end(Ending(EndReason.STOPPED, "done"))
    assert "time_s,force_kgf" in path.read_text(encoding="utf-8")
    reading = read_file(path)
    assert reading.state == "closed"
    assert reading.header is not None
    assert reading.header.transducer.capacity_nm == pytest.approx(400.0)
    assert reading.pulls[0].axle["rotating mean"].value == pytest.approx(40.0 + 0.4, rel=0.02)


def test_counts_and_millivolts_with_a_stated_sensitivity(tmp_path):
    path = table(tmp_path, "cell", "Signal (mV/V)", 2.0 / 500.0 / 0.4 / GRAVITY, digits=7)
    from logger.header import Table

    asked = Asked(lever=ARM, table=Table(unit="250 kgf per mV/V"))  # 2 mV/V at 500 kg
    reading = read_file(path, asked)
    assert reading.pulls[0].axle["rotating mean"].value == pytest.approx(40.4, rel=0.02)


def test_an_overload_in_a_pull_is_no_lost_sample(tmp_path):
    time_s, torque_nm = trace(Shape(), rate_hz=100.0)
    rows = "".join(f"{t:.3f},{'OL' if y > 43 else f'{y:.3f}'}\n" for t, y in zip(time_s, torque_nm, strict=True))
    path = tmp_path / "over.csv"
    path.write_text(f"Time (s),Torque (Nm)\n{rows}", encoding="utf-8")
    pull = read_file(path, Asked(lever=Lever(fixture="couple"))).pulls[0].pull
    assert not pull.valid
    assert pull.reasons[0].code is Code.CLIPPED
    assert Code.LOST not in {reason.code for reason in pull.reasons}
    assert np.sum(torque_nm > 43) > 0
    assert f"{np.sum(torque_nm > 43)} readings beyond" in pull.reasons[0].text


def test_a_scale_on_a_port_is_recorded_by_the_command(tmp_path, capsys):
    description = tmp_path / "scale.toml"
    description.write_text(SCALE, encoding="utf-8")
    out = tmp_path / "scale.csv"
    sent = [f"{i / 8:+.3f}" for i in range(60)]
    with VirtualPort([(1.0 + i / 100, f"ST,{s} kg\r\n".encode()) for i, s in enumerate(sent)]) as port:
        words = [port.path, "--transducer", str(description), "--out", str(out), "--seconds", "1.9"]
        assert run_door("heldwheel-log", "", {"record": ""}, "logger.doors", ["record", *words]) == Exit.OK
    trace = read_trace(out)
    assert trace.unit == "kgf"
    assert trace.is_force
    assert trace.torque.tolist() == [float(s) for s in sent]
    assert "kgf" in capsys.readouterr().err
