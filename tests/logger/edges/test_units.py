"""Units: factors against NIST SP 811, pairs printed in technical manuals, spellings, and what is refused."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.edges.units import (
    canonical_unit,
    column_unit,
    format_torque,
    parse_number,
    parse_quantity,
    parse_stud_circle,
    torque_factor,
)
from logger.errors import QuantityError


@pytest.mark.published("NIST SP 811, appendix B.8", rows=("2.1", "2.2", "2.3", "2.4", "2.5", "2.6"), status="READ-S")
@pytest.mark.parametrize(
    ("unit", "newton_metres", "tolerance"),
    [
        ("lbf·ft", 1.355818, 5e-7),
        ("lbf·in", 0.1129848, 5e-8),
        ("ozf·in", 0.007061552, 5e-10),
        ("kgf·m", 9.80665, 0),
        ("dyn·cm", 1.0e-07, 1e-22),
    ],
)
def test_torque_factors(unit, newton_metres, tolerance):
    assert abs(torque_factor(unit) - newton_metres) <= tolerance
    # 2.4: ozf·in is printed as 7.061 552 mN·m too.
    assert torque_factor("ozf·in") / torque_factor("mN·m") == pytest.approx(7.061552, abs=5e-7)


@pytest.mark.published("NIST SP 811, appendix B.8", rows=("2.7", "2.8", "2.9"), status="READ-S")
@pytest.mark.parametrize(
    ("unit", "newtons", "tolerance"), [("lbf", 4.448222, 5e-7), ("kgf", 9.80665, 0), ("ozf", 0.2780139, 5e-8)]
)
def test_force_factors(unit, newtons, tolerance):
    assert abs(parse_quantity(f"1 {unit}", "force") - newtons) <= tolerance


@pytest.mark.published(
    "TM 9-2320-273-34, TM 9-2320-363-34-2, TM 9-2320-272-24-1 table 2-2", rows=("2.13",), status="READ-P"
)
@pytest.mark.parametrize(
    ("imperial", "newton_metres", "tolerance"),
    [
        ("50 lbf·ft", 68, 0.5),
        ("20 lbf·ft", 27, 0.5),
        ("200 lbf·ft", 271, 0.5),
        ("85 lbf·ft", 115, 0.5),
        ("115 lbf·ft", 156, 0.5),
        ("5 lbf·in", 0.56, 0.005),
        ("45 lbf·in", 5.08, 0.005),
        ("10 lbf·in", 1.13, 0.005),
        ("30 lbf·in", 3.39, 0.005),
        ("400 lbf·ft", 542, 0.5),
        ("425 lbf·ft", 576, 0.5),
        # Printed as 1625 to 2035 N·m; the manual is 2 N·m off.
        ("1200 lbf·ft", 1625, 2.5),
        ("1500 lbf·ft", 2035, 2.5),
    ],
)
def test_pairs_of_technical_manuals(imperial, newton_metres, tolerance):
    assert abs(parse_quantity(imperial, "torque") - newton_metres) <= tolerance


@pytest.mark.published("NAVEDTRA 14315", rows=("2.14",), status="READ-P")
def test_twelve_inches_to_the_foot():
    assert torque_factor("lbf·in") * 12 == pytest.approx(torque_factor("lbf·ft"), rel=1e-15)


@pytest.mark.published("trade pair with a misprinted unit", rows=("2.12",), status="READ-P")
def test_a_misprinted_unit_is_two_powers_of_ten_off():
    # Printed: 7.8 N·m (0.8 kgf-cm) and 2.9 N·m (0.3 kgf-cm); the numbers are kgf·m.
    for newton_metres, number in ((7.8, 0.8), (2.9, 0.3)):
        assert abs(number * torque_factor("kgf·m") - newton_metres) < 0.05
        assert abs(number * torque_factor("kgf·cm") - newton_metres) > 0.9 * newton_metres


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("Nm", "N·m"),
        ("N.m", "N·m"),
        ("n-m", "N·m"),
        ("N•m", "N·m"),
        ("newton metres", "N·m"),
        ("ft-lb", "lbf·ft"),
        ("lb_ft", "lbf·ft"),
        ("lbf ft", "lbf·ft"),
        ("FT.LBF", "lbf·ft"),
        ("foot-pounds", "lbf·ft"),
        ("in lb", "lbf·in"),
        ("lbf_in", "lbf·in"),
        ("inch pounds", "lbf·in"),
        ("kgf-cm", "kgf·cm"),
        ("kg·m", "kgf·m"),
        ("oz-in", "ozf·in"),
        ("cNm", "cN·m"),
        ("mN·m", "mN·m"),
        ("kNm", "kN·m"),
    ],
)
def test_spellings(text, unit):
    assert canonical_unit(text) == unit
    assert canonical_unit(column_unit(unit)) == unit


@pytest.mark.parametrize("text", ["", "furlong", "MN·m", "N", "m", "lbf", "Nmm2", "N·m/s", "\x00"])
def test_no_torque_units(text):
    with pytest.raises(QuantityError, match="no torque unit"):
        torque_factor(text)


@pytest.mark.published("IEEE 488.2, 7.7.2.1, 8.7.2, 8.7.3", rows=("10.15",), status="READ-S")
@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("273", 273.0),
        ("0273", 273.0),
        ("146", 146.0),
        ("+146", 146.0),
        ("-12345", -12345.0),
        ("273.", 273.0),
        (".0273", 0.0273),
        ("12.3", 12.3),
        ("+1.2345", 1.2345),
        ("-0.123", -0.123),
        ("2.73E+2", 273.0),
        ("273.0E-2", 2.73),
        ("+1.23E+5", 123000.0),
        ("-456.789E+6", -456.789e6),
        ("+200", 200.0),
        ("-56", -56.0),
        ("+9.9E36", 9.9e36),
    ],
)
def test_number_forms(text, value):
    assert parse_number(text) == value


@pytest.mark.parametrize("text", ["", "nan", "inf", "1_000", "0x10", "1.2.3", "1,2,3", "--1", "1e999", "12a", "٣"])
def test_no_numbers(text):
    with pytest.raises(QuantityError):
        parse_number(text)


def test_a_comma_that_may_be_a_thousands_separator_is_refused():
    assert parse_number("3,25") == 3.25
    assert parse_number("0,123") == 0.123
    with pytest.raises(QuantityError, match=r"1\.234 or 1234"):
        parse_number("1,234")


@given(st.floats(-1e6, 1e6))
def test_any_number_comes_back(value):
    assert parse_number(repr(value)) == value


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("450mm", "length", 0.45),
        ("17.5in", "length", 0.4445),
        ("17,5 in", "length", 0.4445),
        ("1.5'", "length", 0.4572),
        ("90°", "angle", math.pi / 2),
        ("2 turns", "angle", 4 * math.pi),
        ("2.5 kg", "mass", 2.5),
        ("10 lb", "mass", 4.5359237),
        ("100 N", "force", 100.0),
        ("250ms", "time", 0.25),
        ("68 °F", "temperature", 20.0),
        ("293.15 K", "temperature", 20.0),
        ("-40°C", "temperature", -40.0),
    ],
)
def test_quantities(text, kind, value):
    assert parse_quantity(text, kind) == pytest.approx(value, rel=1e-12)


def test_a_quantity_without_or_with_a_wrong_unit_says_what_is_allowed():
    with pytest.raises(QuantityError, match="has no unit; write a number and one of: m, mm, cm, in"):
        parse_quantity("450", "length")
    assert parse_quantity("450", "length", "mm") == pytest.approx(0.45)
    with pytest.raises(QuantityError, match="'Nm' is no length unit"):
        parse_quantity("450 Nm", "length")
    with pytest.raises(QuantityError, match="has no number"):
        parse_quantity("mm", "length")


def test_stud_circles():
    assert parse_stud_circle("5x114.3mm") == (5, 0.1143)
    assert parse_stud_circle("4 × 4.25 in") == (4, 0.10795)
    assert parse_stud_circle("114.3mm") == (None, 0.1143)
    for wrong in ("5x114.3", "2x100mm", "x100mm", "5x0mm", "5x-100mm", "99999999999x100mm"):
        with pytest.raises(QuantityError):
            parse_stud_circle(wrong)


def test_torques_for_people():
    assert format_torque(27.4, "lbf·ft", 1.2) == "20.21 ± 0.89 lbf·ft"
    assert format_torque(27.4, "Nm") == "27.40 N·m"
    assert format_torque(0.0, "Nm") == "0.000 N·m"
    assert format_torque(27.4, "Nm", 12.0) == "27 ± 12 N·m"
    assert format_torque(27.4, "Nm", 0.0996) == "27.40 ± 0.10 N·m"
    assert format_torque(float("nan"), "Nm") == "– N·m"
