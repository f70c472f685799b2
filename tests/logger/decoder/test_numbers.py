"""Numbers on the air and on the wire, against the published values of the formats."""

import struct

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.decoder.crc import _CRC, CHECK_BYTES, FEW_ROWS, _table, check, checks
from logger.decoder.floats import WIDTH, NumberType, numbers, scaled
from logger.decoder.standard import INDUSTRIAL_MEASUREMENT_SERVICE, UNITS, presentation_format, uuid

REVENG = {
    "crc-16/modbus": 0x4B37, "crc-16/usb": 0xB4C8, "crc-16/kermit": 0x2189, "crc-16/ccitt-false": 0x29B1,
    "crc-16/xmodem": 0x31C3, "crc-16/arc": 0xBB3D, "crc-16/dnp": 0xEA82, "crc-8/smbus": 0xF4, "crc-8/maxim": 0xA1,
    "crc-32": 0xCBF43926, "crc-32c": 0xE3069283,
}  # fmt: skip


def one(data, kind, order="little"):
    return float(numbers(np.frombuffer(data, np.uint8), kind, order))


@pytest.mark.published("RevEng CRC catalogue, check values", rows=("10.11",), status="READ-S")
@pytest.mark.parametrize("name", REVENG)
def test_crc_check_value(name):
    assert check(b"123456789", name) == REVENG[name]


@pytest.mark.published("RevEng CRC catalogue, MODBUS parameters", rows=("10.12",), status="READ-S")
@given(st.binary(min_size=1, max_size=40))
def test_modbus_parameters_bit_by_bit(data):
    """Polynomial 8005 reflected (A001), start FFFF, no final xor: a second algorithm, one bit at a time."""
    value = 0xFFFF
    for byte in data:
        value ^= byte
        for _ in range(8):
            value = (value >> 1) ^ 0xA001 if value & 1 else value >> 1
    assert check(data, "crc-16/modbus") == value


@given(st.lists(st.binary(min_size=8, max_size=8), min_size=1, max_size=20), st.sampled_from(sorted(CHECK_BYTES)))
def test_rows_are_checked_as_one_by_one(rows, name):
    matrix = np.frombuffer(b"".join(rows), np.uint8).reshape(len(rows), 8)
    assert checks(matrix, name).tolist() == [check(row, name) for row in rows]


@pytest.mark.parametrize("name", _CRC)
def test_remainders_are_of_every_byte_and_linear(name):
    """Division over GF(2): the remainder of a sum is the sum of the remainders, and each byte has its own."""
    crc = _CRC[name]
    table = _table(crc).tolist()
    assert len(table) == len(set(table)) == 256
    assert max(table) < 1 << crc.width == 1 << 8 * CHECK_BYTES[name]
    assert all(table[a ^ b] == table[a] ^ table[b] for a in (1, 2, 3, 0x80, 0xFF) for b in range(256))


@pytest.mark.parametrize("name", sorted(CHECK_BYTES))
@pytest.mark.parametrize("count", [1, FEW_ROWS, FEW_ROWS + 1, 40])
def test_few_rows_and_many_have_the_same_checks(name, count):
    rows = np.arange(5 * count, dtype=np.uint8).reshape(count, 5) * np.uint8(37) + np.uint8(200)
    assert checks(rows, name).tolist() == [check(row.tobytes(), name) for row in rows]


@pytest.mark.parametrize(("name", "value"), [("xor-8", 0x02), ("sum-8", 0x00), ("lrc-8", 0x00), ("sum-16", 0x0200)])
def test_plain_sums_by_hand(name, value):
    """FE + FF + 03 are 200, its low byte 00, so is its two's complement; FE ^ FF ^ 03 is 02."""
    assert check(b"\xfe\xff\x03", name) == value
    assert check(b"\x01", name) == (0xFF if name == "lrc-8" else 1)


@pytest.mark.published("IEEE 11073 FLOAT example", rows=("10.8",), status="READ-S")
def test_float_example():
    assert one(bytes.fromhex("6C0100FF"), "float") == 36.4
    assert one(bytes.fromhex("FF00016C"), "float", "big") == 36.4


@pytest.mark.published("IEEE 11073 FLOAT special values", rows=("10.9",), status="READ-S")
@pytest.mark.parametrize(
    ("code", "value"),
    [(0x007FFFFF, np.nan), (0x00800000, np.nan), (0x00800001, np.nan), (0x007FFFFE, np.inf), (0x00800002, -np.inf)],
)
def test_float_specials(code, value):
    assert np.array_equal(one(struct.pack("<I", code), "float"), value, equal_nan=True)


@pytest.mark.published("IEEE 11073 SFLOAT special values", rows=("10.10",), status="READ-S")
@pytest.mark.parametrize(
    ("code", "value"),
    [(0x07FF, np.nan), (0x0800, np.nan), (0x0801, np.nan), (0x07FE, np.inf), (0x0802, -np.inf)],
)
def test_sfloat_specials(code, value):
    assert np.array_equal(one(struct.pack("<H", code), "sfloat"), value, equal_nan=True)


@given(st.integers(-2048, 2047), st.integers(-8, 7))
def test_sfloat_exponents_are_twos_complement(mantissa, exponent):
    code = (exponent & 0xF) << 12 | (mantissa & 0xFFF)
    if code in {0x07FF, 0x0800, 0x0801, 0x07FE, 0x0802}:
        return
    assert one(struct.pack("<H", code), "sfloat") == float(f"{mantissa}e{exponent}")


@pytest.mark.parametrize(("code", "value"), [(0xF16C, 36.4), (0xF00A, 1.0)])
def test_sfloat_examples_computed_by_hand(code, value):
    assert one(struct.pack("<H", code), "sfloat") == value


STRUCT = {"u8": "B", "s8": "b", "u16": "H", "s16": "h", "u32": "I", "s32": "i", "float32": "f", "float64": "d"}


@given(st.sampled_from(sorted(STRUCT)), st.sampled_from(["little", "big"]), st.data())
def test_numbers_as_struct_unpacks_them(kind, order, data):
    wire = data.draw(st.binary(min_size=WIDTH[kind], max_size=WIDTH[kind]))
    expected = struct.unpack(("<" if order == "little" else ">") + STRUCT[kind], wire)[0]
    assert np.array_equal(one(wire, kind, order), float(expected), equal_nan=True)


@given(st.integers(-(1 << 23), (1 << 23) - 1), st.sampled_from(["little", "big"]))
def test_three_bytes(value, order):
    assert one(value.to_bytes(3, order, signed=True), "s24", order) == value
    assert one((value & 0xFFFFFF).to_bytes(3, order), "u24", order) == value & 0xFFFFFF


def test_every_type_has_a_width():
    assert set(WIDTH) == set(NumberType.__args__)


@pytest.mark.published("Bluetooth GATT: value = raw x 10^exponent", rows=("10.2",), status="READ-S")
def test_exponent():
    form = presentation_format(bytes([0x06, 0xFD, 0x41, 0x27, 1, 0, 0]))
    assert scaled(np.array([3892.0]), form.scale).tolist() == [3.892]


@pytest.mark.published("Bluetooth GATT descriptor 0x2904, layout", rows=("10.1",), status="READ-S")
def test_presentation_format_layout():
    form = presentation_format(bytes([0x0E, 0xFE, 0x41, 0x27, 0x01, 0x34, 0x12]))
    assert (form.format, form.exponent, form.unit, form.namespace, form.description) == (14, -2, 0x2741, 1, 0x1234)
    assert presentation_format(b"") is None
    assert presentation_format(bytes(8)) is None


@pytest.mark.published("Bluetooth assigned numbers: format types", rows=("10.3",), status="READ-P")
def test_format_codes():
    expected = {
        0x04: "u8", 0x06: "u16", 0x07: "u24", 0x08: "u32", 0x0C: "s8", 0x0E: "s16", 0x0F: "s24", 0x10: "s32",
        0x14: "float32", 0x15: "float64", 0x16: "sfloat", 0x17: "float",
        0x01: None, 0x0A: None, 0x12: None, 0x19: None, 0x1A: None, 0x1B: None, 0x1C: None,
    }  # fmt: skip
    for code, kind in expected.items():
        form = presentation_format(bytes([code, 0xFE, 0x41, 0x27, 1, 0, 0]))
        assert form.type == kind
        # the exponent holds for integers of eight bits and more only
        assert form.scale == (0.01 if kind and kind[0] in "us" and kind != "sfloat" else 1.0)


@pytest.mark.published("Bluetooth assigned numbers: units", rows=("10.4",), status="READ-P")
def test_unit_codes():
    known = {0x2700: "1", 0x2703: "s", 0x2723: "N", 0x2741: "N·m", 0x2743: "rad/s", 0x272F: "°C", 0x2763: "°",
             0x27A8: "1/min", 0x27AD: "%"}  # fmt: skip
    assert known == UNITS
    assert presentation_format(bytes([0x10, 0, 0xA2, 0x27, 1, 0, 0])).unit_name == "0x27A2"


def test_uuid():
    assert uuid(0x2904) == "00002904-0000-1000-8000-00805f9b34fb"


@given(st.integers(-(1 << 31), (1 << 31) - 1), st.integers(0, 6))
def test_decimal_scales_round_once(raw, places):
    assert scaled(np.array([float(raw)]), 10.0**-places)[0] == float(f"{raw}e-{places}")


@pytest.mark.parametrize(
    ("raw", "scale", "offset", "value"),
    [
        (10.0, 1.0, 0.0, 10.0),
        (10.0, 1.0, 0.25, 10.25),
        (10.0, 1.1, 0.0, 11.0),
        (10.0, 2.0, -1.0, 19.0),
        (10.0, -1.0, 0.0, -10.0),
        (2700.0, -0.01, 0.5, -26.5),
        (3.0, 0.75, 0.0, 2.25),
        (8.0, 1e-13, 0.0, 8.0 * 1e-13),
        (5.0, 0.0, 7.0, 7.0),
        # how near to a whole number the inverse must be: 1e-12
        (1.0, 0.01 * (1 + 0.95e-12), 0.0, 0.01),
        (1.0, 0.01 * (1 + 1.05e-12), 0.0, 0.01 * (1 + 1.05e-12)),
    ],
)
def test_scales_by_hand(raw, scale, offset, value):
    assert scaled(np.array([raw]), scale, offset).tolist() == [value]


@pytest.mark.parametrize("places", range(13))
def test_powers_of_ten_give_the_nearest_float(places):
    """Down to the smallest scale that is taken; Python reads decimals to the nearest float."""
    raw = np.arange(1, 200)
    assert scaled(raw.astype(float), float(f"1e-{places}")).tolist() == [float(f"{n}e-{places}") for n in raw]


@pytest.mark.published("Bluetooth assigned numbers: services", rows=("10.6",), status="READ-P")
def test_the_industrial_measurement_service():
    assert INDUSTRIAL_MEASUREMENT_SERVICE == 0x185A


def test_a_signalling_nan_from_a_device_sets_off_no_alarm():
    """IEEE 754: reckoning with a signalling NaN raises the invalid flag, which numpy would warn of (an error here)."""
    for data, kind in ((struct.pack("<I", 0x7FA00000), "float32"), (struct.pack("<Q", 0x7FF4000000000000), "float64")):
        value = numbers(np.frombuffer(data, np.uint8)[None], kind)
        assert np.isnan(scaled(scaled(value, 0.3, 1.0), 0.35)).all()
        assert np.isnan(value * 2.0 + 1.0).all()
