"""Transducer descriptions: read, checked, with every fault told; the shipped examples."""

from __future__ import annotations

import pytest

from logger.decoder.description import Description, command_bytes, read_description, shipped
from logger.edges.toml_file import format_toml, parse_toml
from logger.errors import DescriptionError, HeldwheelError, InputError

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


def test_exactly_one_layout():
    with pytest.raises(DescriptionError, match="exactly one of lines, frame, notification, modbus"):
        parse_toml('name = "nothing"', Description, "x")


def test_a_decimal_comma_needs_another_separator():
    text = 'name = "x"\n[lines]\ntemplate = "{torque},{angle}"\ndecimal = ","\n'
    with pytest.raises(DescriptionError, match="followed by ',', which could be part of it"):
        parse_toml(text, Description, "x")


@pytest.mark.parametrize(
    ("text", "data"),
    [(r"ZERO\r\n", b"ZERO\r\n"), ("hex: 02 53 03", b"\x02S\x03"), (r"\x02\\\t", b"\x02\\\t")],
)
def test_commands(text, data):
    assert command_bytes(text) == data


@pytest.mark.parametrize("text", ["", r"\x", r"\xZZ", "\\", "é", "hex: 0", "hex:", "x" * 300])
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
