"""Local gravity against the published constants and formulas."""

import pytest
from scipy import constants

from logger.errors import InputError
from logger.instruments.gravity import (
    ELLIPSOIDS,
    STANDARD_GRAVITY,
    height_factor,
    legal_gravity,
    local_gravity,
    normal_gravity,
)


@pytest.mark.published("GRS 80, Somigliana", rows=("6.1",), status="READ-S")
def test_grs_80():
    assert normal_gravity(0.0, "GRS 80") == pytest.approx(9.7803267715, abs=5e-11)
    assert normal_gravity(90.0, "GRS 80") == pytest.approx(9.8321863685, abs=5e-11)


@pytest.mark.published("WGS 84, Somigliana", rows=("6.2",), status="READ-S")
def test_wgs_84():
    assert normal_gravity(90.0) == pytest.approx(9.8321849378, abs=1e-10)  # printed with the last digit one lower


@pytest.mark.published("Older WGS 84 (TR 8350.2-a, eq. 4-4)", rows=("6.3",), status="READ-S")
def test_older_wgs_84():
    assert ELLIPSOIDS["WGS 84 (1987)"].equator == 9.7803267714
    assert ELLIPSOIDS["WGS 84 (1987)"].k == 0.00193185138639
    # the same formula: it differs from GRS 80 by the rounding of the constants only
    for latitude in (0.0, 30.0, 60.0, 90.0):
        assert normal_gravity(latitude, "WGS 84 (1987)") == pytest.approx(normal_gravity(latitude, "GRS 80"), abs=1e-8)


@pytest.mark.published("Gill (1982), height factor", rows=("6.4",), status="READ-S")
def test_height_factor():
    assert height_factor(0.0) == 1.0
    assert height_factor(6_371_000.0) == 0.25
    # the free-air gradient that every textbook gives: 0.3086 mGal per metre
    assert (1.0 - height_factor(1.0)) * 9.81 == pytest.approx(3.08e-6, abs=0.01e-6)


@pytest.mark.published("Legal-metrology gravity formula", rows=("6.5",), status="READ-S")
def test_legal_formula():
    assert legal_gravity(0.0) == pytest.approx(9.780318, abs=1e-12)
    assert legal_gravity(0.0, 1000.0) == pytest.approx(9.780318 - 0.003085, abs=1e-12)
    assert legal_gravity(90.0) == pytest.approx(9.780318 * 1.0053024, abs=1e-12)
    for latitude in range(0, 91, 5):  # a second formula agrees within its 1e-5
        assert legal_gravity(latitude) == pytest.approx(normal_gravity(latitude), abs=2e-5)


@pytest.mark.published("computed: 45°, sea level", rows=("6.6",), status="CALC")
def test_45_degrees():
    assert normal_gravity(45.0, "GRS 80") == pytest.approx(9.8061992025, abs=5e-10)
    assert normal_gravity(45.0, "WGS 84") == pytest.approx(9.8061977694, abs=5e-10)
    assert legal_gravity(45.0) == pytest.approx(9.806191, abs=5e-7)


@pytest.mark.published("computed: 52.3°, 0 and 500 m", rows=("6.7",), status="CALC")
def test_52_degrees():
    assert local_gravity(52.3, 0.0, "legal") == pytest.approx(9.812731, abs=5e-7)
    assert local_gravity(52.3, 500.0, "legal") == pytest.approx(9.811188, abs=5e-7)


@pytest.mark.published("NIST SP 811, standard gravity", rows=("6.8",), status="READ-S")
def test_standard_gravity():
    assert constants.g == STANDARD_GRAVITY == 9.80665


@pytest.mark.published("computed: size of the effect", rows=("6.9",), status="CALC")
def test_size_of_the_effect():
    equator_g = 9.7803
    assert 100 * (equator_g / STANDARD_GRAVITY - 1) == pytest.approx(-0.268, abs=0.001)
    assert 100 * (normal_gravity(90.0) / STANDARD_GRAVITY - 1) == pytest.approx(0.260, abs=0.001)


def test_south_is_as_north():
    assert local_gravity(-33.0, 20.0) == local_gravity(33.0, 20.0)


@pytest.mark.parametrize(("latitude", "height"), [(91, 0), (-90.1, 0), (0, 1e4), (0, -1000), (float("nan"), 0)])
def test_not_on_earth(latitude, height):
    with pytest.raises(InputError):
        local_gravity(latitude, height)
