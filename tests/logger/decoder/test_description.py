"""Transducer descriptions: read, checked, with every fault told; the shipped examples."""

from __future__ import annotations

import msgspec
import pytest

from logger.decoder.description import (
    Description,
    Modbus,
    as_torque,
    command_bytes,
    read_description,
    shipped,
)
from logger.decoder.layouts import Frame, Packet, PlacedNumber, Register
from logger.decoder.template import LineFormat, NumberField, template_faults
from logger.edges.toml_file import format_toml, parse_toml
from logger.errors import DescriptionError, HeldwheelError, InputError
from logger.header import TransducerFacts

GAUGE = """\
name = "bench gauge"
silence_s = 2.0

[transducer]
unit = "lbf·in"
sign = "signed"
rate_hz = 100

[serial]
baud = 115200

[lines]
template = "{status},{torque} {unit},{counter}"
terminator = "CRLF"
overload = ["OL", "----"]
counter_modulus = 65536

[lines.status]
ok = ["ST", "US"]
overload = ["OL"]

[commands.zero]
send = 'Z\\r\\n'
does = "zeroes the reading"
"""


def test_a_whole_description():
    gauge = parse_toml(GAUGE, Description, "transducer.toml")
    assert gauge.unit == "lbf·in"
    assert gauge.has_counter
    assert gauge.commands["zero"].data() == b"Z\r\n"
    assert parse_toml(format_toml(gauge), Description, "again") == gauge


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("template =", "templat =", "line 13, lines.templat: is not a key here; did you mean 'template'"),
        ('"CRLF"', '"CTRL"', "lines.terminator: 'CTRL' is not allowed"),
        ('"lbf·in"', '"lbf·furlong"', "transducer.unit: 'lbf·furlong' is no torque unit"),
        ("{torque} ", "{force} ", "template: it must have the field {torque}"),
        ("{counter}", "{torque}", "template: {torque} is there twice"),
        ("{counter}", "{counter", "a brace '{' is not closed"),
        ("{counter}", "counter}", "a brace '}' closes nothing"),
        ("{counter}", "{Counter}", "'Counter' is no field name"),
        ("{counter}", "{counter:0}", "the width must be 1 to 100"),
        ("{torque} {unit}", "{torque}5{unit}", "{torque} is followed by '5', which could be part of it"),
        ("{status},{torque}", "{status}{unit2}{torque}", "between {unit2} and {torque} nothing tells"),
        ("{torque} {unit}", "{torque}5x{unit}", "{torque} is followed by '5', which could be part of it"),
        ("[commands.zero]", "[lines.words.status2]\nok = ['A']\n[commands.zero]", "words.status2: the template has no"),
        ('ok = ["ST", "US"]', "", "status.ok: name the texts"),
        ("baud = 115200", "baud = 3", "serial.baud"),
        ("Z\\r\\n", "Z\\q", "commands.zero.send"),
        ("silence_s = 2.0", "silence_s = 0.0", "silence_s"),
        ("[lines]", "[lines.fields.speed]\nscale = 2.0\n[lines]", "fields.speed: the template has no such number"),
    ],
)
def test_faults_say_what_is_wrong(old, new, told):
    assert old in GAUGE
    with pytest.raises(DescriptionError) as caught:
        parse_toml(GAUGE.replace(old, new), Description, "transducer.toml")
    assert told in str(caught.value)


@pytest.mark.parametrize(("stop_bits", "right"), [(0, False), (1, True), (2, True), (3, False)])
def test_a_character_ends_with_one_or_two_stop_bits(stop_bits, right):
    text = GAUGE.replace("baud = 115200", f"baud = 115200\nstop_bits = {stop_bits}")
    if right:
        assert parse_toml(text, Description, "x").serial.stop_bits == stop_bits
        return
    with pytest.raises(DescriptionError, match="stop_bits"):
        parse_toml(text, Description, "x")


def test_exactly_one_layout():
    with pytest.raises(DescriptionError, match="exactly one of lines, frame, notification, modbus"):
        parse_toml('name = "nothing"', Description, "x")


def test_a_decimal_comma_needs_another_separator():
    text = 'name = "x"\n[lines]\ntemplate = "{torque},{angle}"\ndecimal = ","\n'
    with pytest.raises(DescriptionError, match="followed by ',', which could be part of it"):
        parse_toml(text, Description, "x")


@pytest.mark.parametrize(
    ("text", "data"),
    [
        (r"ZERO\r\n", b"ZERO\r\n"),
        ("hex: 02 53 03", b"\x02S\x03"),
        (r"\x02\\\t", b"\x02\\\t"),
        (r"A\x41", b"AA"),
        (r"\x411", b"A1"),
    ],
)
def test_commands(text, data):
    assert command_bytes(text) == data


@pytest.mark.parametrize("text", ["", r"\x", r"\x4", r"\x  ", r"\x 4", r"\xZZ", "\\", "é", "hex: 0", "hex:", "x" * 300])
def test_no_commands(text):
    with pytest.raises(InputError):
        command_bytes(text)


def test_shipped_examples_are_valid():
    examples = shipped()
    assert len(examples) >= 4
    for name, path in examples.items():
        described = read_description(name)
        assert described == read_description(path)
        assert "invented example" in described.notes or "simulated" in described.name


def test_an_unknown_example_is_told():
    with pytest.raises(HeldwheelError, match="plain-text"):
        read_description("no-such-gauge")


def described(measures="torque", unit="", **layouts):
    return Description(name="x", measures=measures, transducer=TransducerFacts(unit=unit), **layouts)


@pytest.mark.parametrize(("measures", "unit"), [("angle", "°"), ("temperature", "°C"), ("rate", "°/s"), ("force", "N")])
def test_what_is_measured_is_called_torque_by_every_decoder(measures, unit):
    """The main field changes its name and nothing else; only a force is converted by the unit that its lines name."""
    scale, other = NumberField(scale=2.0), NumberField(unit="1/min")
    lines = LineFormat(template=f"{{speed}},{{{measures}:7}} {{unit}}", fields={measures: scale, "speed": other})
    found = as_torque(described(measures, unit, lines=lines))
    assert found.measures == "torque"
    assert found.lines.template == ("{speed},{torque:7} {unit}" if measures == "force" else "{speed},{torque:7} {skip}")
    assert found.lines.fields == {"torque": scale, "speed": other}
    assert found.transducer.unit == (unit if measures == "force" else "")
    plain = as_torque(described(measures, unit, lines=LineFormat(template=f"{{{measures}}};{{speed}}")))
    assert plain.lines.template == "{torque};{speed}"

    packet = Packet(fields=(PlacedNumber(name=measures, type="s16"), PlacedNumber(name="speed", type="u8", at=2)))
    named = as_torque(described(measures, unit, notification=packet)).notification
    assert [(field.name, field.type) for field in named.fields] == [("torque", "s16"), ("speed", "u8")]
    frame = Frame(sync="7E", packet=msgspec.structs.replace(packet, samples_at=1))
    named = as_torque(described(measures, unit, frame=frame)).frame
    assert [field.name for field in named.packet.fields] == ["torque", "speed"]
    modbus = Modbus(registers=(Register(name=measures, address=7), Register(name="speed", address=9)))
    named = as_torque(described(measures, unit, modbus=modbus)).modbus
    assert [(one.name, one.address) for one in named.registers] == [("torque", 7), ("speed", 9)]


def test_a_torque_stays_as_it_is():
    one = described(lines=LineFormat(template="{torque},{angle}"))
    assert as_torque(one) is one


@pytest.mark.parametrize(
    ("measures", "unit", "layouts", "told"),
    [
        ("force", "N", 1, None),
        ("force", "kgf", 1, None),
        ("force", "N·m", 1, "'N·m' is no unit of force"),
        ("angle", "", 1, "name the unit of what it measures"),
        ("torque", "", 1, None),
        (
            "torque",
            "",
            2,
            "exactly one of lines, .*, modbus must be given, not lines and notification",
        ),
        ("torque", "", 0, "exactly one of lines, .*, modbus must be given, not none"),
    ],
)
def test_what_contradicts_itself(measures, unit, layouts, told):
    both = {
        "lines": LineFormat(template=f"{{{measures}}}"),
        "notification": Packet(fields=(PlacedNumber(name=measures, type="s16"),)),
    }
    given = dict(list(both.items())[:layouts])
    if told is None:
        assert described(measures, unit, **given).measures == measures
    else:
        with pytest.raises(ValueError, match=told):
            described(measures, unit, **given)
    if not layouts:  # a device that follows the open standards tells it itself
        assert Description(name="x", link="ble").link == "ble"


def test_a_file_is_read_whatever_its_name_ends_in(tmp_path):
    for name in ("gauge", "gauge.toml", "gauge.txt"):
        (tmp_path / name).write_text(GAUGE, encoding="utf-8")
        assert read_description(tmp_path / name).name == "bench gauge"
    with pytest.raises(HeldwheelError, match="no description of that name"):
        read_description(tmp_path / "other")
    with pytest.raises(HeldwheelError) as caught:  # a file is meant
        read_description(tmp_path / "plain-text.toml")
    assert "of that name" not in str(caught.value)


def test_what_may_follow_a_number_depends_on_how_it_is_written():
    for form, after, fits in (
        ("decimal", "A", True),
        ("hex", "A", False),
        ("signed hex", "f", False),
        ("hex", "g", True),
    ):
        lines = LineFormat(template=f"{{torque}}{after}", fields={"torque": NumberField(form=form)})
        assert any("could be part of it" in fault for fault in template_faults(lines)) is not fits


@pytest.mark.parametrize(("length", "fits"), [(0, False), (1, True), (40, True), (41, False)])
def test_marks_and_words_are_of_one_to_forty_characters(length, fits):
    for given in ({"overload": ["x" * length]}, {"ignore": ["x" * length]}, {"status": {"stale": ["x" * length]}}):
        told = {"template": "{torque}", **given}
        if fits:
            assert msgspec.convert(told, LineFormat).template == "{torque}"
        else:
            with pytest.raises(msgspec.ValidationError, match="length"):
                msgspec.convert(told, LineFormat)
