"""One-way analysis of variance against certified data."""

from __future__ import annotations

import re
from importlib.resources import files

import numpy as np
import pytest

from analysis.compare.variance import one_way
from logger.errors import InputError


def nist_anova(name):
    """Read an official NIST StRD file as shipped in scipy: its groups and its certified values."""
    text = files("scipy.stats").joinpath("tests", "data", "nist_anova", f"{name}.dat").read_text()
    lines = text.splitlines()
    first = int(re.search(r"Data\s+\(lines\s+(\d+)", text).group(1)) - 1
    values = np.array([line.split() for line in lines[first:] if line.strip()], dtype=float)
    between = re.search(r"Between\s+\S+\s+(\d+)\s+(\S+)\s+(\S+)\s+(\S+)", text)
    within = re.search(r"Within\s+\S+\s+(\d+)\s+(\S+)\s+(\S+)", text)
    r2 = float(re.search(r"Certified R-Squared\s+(\S+)", text).group(1))
    s = float(re.search(r"Standard Deviation\s+(\S+)", text).group(1))
    groups = [values[values[:, 0] == g, 1] for g in np.unique(values[:, 0])]
    return groups, float(between[2]), float(within[2]), float(between[4]), r2, s


# Digits that must agree: the certified sums of squares of the stiffest sets (a common level of 1e12) keep fewer in
# double precision, because the values themselves are rounded to it.
@pytest.mark.parametrize(
    ("name", "rel"),
    [
        pytest.param("SiRstv", 1e-12, marks=pytest.mark.published("NIST StRD SiRstv", rows=("7.8",), status="READ-P")),
        pytest.param("AtmWtAg", 1e-8, marks=pytest.mark.published("NIST StRD AtmWtAg", rows=("7.9",), status="READ-P")),
        *[
            pytest.param(
                f"SmLs0{i}",
                {0: 1e-12, 1: 1e-8, 2: 1e-2}[(i - 1) // 3],
                marks=pytest.mark.published("NIST StRD SmLs01-09", rows=("7.10",), status="READ-P"),
            )
            for i in range(1, 10)
        ],
    ],
)
def test_certified(name, rel):
    groups, ss_between, ss_within, f, r2, s = nist_anova(name)
    found = one_way(groups)
    assert found.ss_between == pytest.approx(ss_between, rel=rel)
    assert found.ss_within == pytest.approx(ss_within, rel=rel)
    assert found.f == pytest.approx(f, rel=2 * rel)
    assert found.r2 == pytest.approx(r2, rel=2 * rel)
    assert found.s_within == pytest.approx(s, rel=rel)


@pytest.mark.published("NIST/SEMATECH e-Handbook 7.4.2 (one-way ANOVA; data from memory)", rows=("7.22",), status="MEM")
def test_handbook():
    # The outputs were read; the fifteen data are from memory and reproduce them.
    found = one_way([[6.9, 5.4, 5.8, 4.6, 4.0], [8.3, 6.8, 7.8, 9.2, 6.5], [8.0, 10.5, 8.1, 6.9, 9.3]])
    assert found.ss_between == pytest.approx(27.897, abs=5e-4)
    assert found.df_between == 2
    assert found.ss_between / 2 == pytest.approx(13.949, abs=1e-3)
    assert found.f == pytest.approx(9.59, abs=5e-3)


def from_summary(means, sds, sizes):
    rng = np.random.default_rng(0)
    groups = []
    for mean, sd, n in zip(means, sds, sizes, strict=True):
        x = rng.normal(size=n)
        groups.append(mean + sd * (x - x.mean()) / x.std(ddof=1))
    return groups


@pytest.mark.published(
    "JCGM 100 H.5 (ten days of five readings, via an open-source test suite)", rows=("3.13",), status="READ-S"
)
def test_gum_h5():
    micro = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41]
    sds = [60e-6, 77e-6, 111e-6, 101e-6, 67e-6, 93e-6, 80e-6, 73e-6, 88e-6, 86e-6]
    found = one_way(from_summary([10 + m * 1e-6 for m in micro], sds, [5] * 10))
    assert found.mean == pytest.approx(10.000097, abs=5e-7)
    assert found.s_within == pytest.approx(85e-6, abs=0.5e-6)
    assert found.f == pytest.approx(2.25, abs=0.02)
    of_means = np.sqrt(found.ss_between / found.df_between / 5)
    assert of_means == pytest.approx(57e-6, abs=0.5e-6)


@pytest.mark.published("textbook tables 7-4 and 7-5 (via an open-source test suite)", rows=("7.29",), status="READ-S")
def test_unequal_sizes_from_summary():
    found = one_way(from_summary([9.2, 10.7, 13.5], [2.9, 2.8, 4.7], [16, 22, 18]))
    assert found.ss_between == pytest.approx(164.7, abs=0.1)
    assert found.ss_between / 2 == pytest.approx(82.3, abs=0.1)
    assert found.ss_within / found.df_within == pytest.approx(12.5, abs=0.1)
    assert found.f == pytest.approx(6.612, abs=0.1)
    assert found.p == pytest.approx(0.003, abs=1e-3)


VOLTS = 1 + 1e-9 * np.array(
    [
        *[-843582, -525762, -660144, 160754, 744245, 737791, 495481, -426400, 723728, 600710],
        *[349612, -116751, -949103, 174740, -397404, 824172, -643759, -193045, 643518, 444615],
        *[-242509, -182228, 194482, -320353, 937242, 470251, -972131, -88349, -409559, 451023],
        *[-280902, -352190, 822782, -590361, -890734, 785761, -692961, 469276, 654864, 987112],
    ]
).reshape(4, 10)


@pytest.mark.published(
    "laboratory example, four groups of ten (via an open-source test suite)", rows=("7.30",), status="READ-S"
)
def test_four_groups():
    found = one_way(VOLTS)
    assert found.f == pytest.approx(0.0850416, abs=5e-7)
    assert found.p == pytest.approx(0.96777478, abs=5e-8)
    assert found.s_between == 0  # less scatter between the groups than the values within explain
    uneven = one_way([VOLTS[0], VOLTS[1][:8], VOLTS[2][:9], VOLTS[3][:6]])
    assert uneven.f == pytest.approx(0.23239, abs=5e-6)
    assert uneven.p == pytest.approx(0.873061, abs=5e-7)


LEW = [
    *[-213, -564, -35, -15, 141, 115, -420, -360, 203, -338, -431, 194, -220, -513, 154, -125, -559, 92, -21, -579],
    *[-52, 99, -543, -175, 162, -457, -346, 204, -300, -474, 164, -107, -572, -8, 83, -541, -224, 180, -420, -374],
    *[201, -236, -531, 83, 27, -564, -112, 131, -507, -254, 199, -311, -495, 143, -46, -579, -90, 136, -472, -338],
    *[202, -287, -477, 169, -124, -568, 17, 48, -568, -135, 162, -430, -422, 172, -74, -577, -13, 92, -534, -243],
    *[194, -355, -465, 156, -81, -578, -64, 139, -449, -384, 193, -198, -538, 110, -44, -577, -6, 66, -552, -164],
    *[161, -460, -344, 205, -281, -504, 134, -28, -576, -118, 156, -437, -381, 200, -220, -540, 83, 11, -568, -160],
    *[172, -414, -408, 188, -125, -572, -32, 139, -492, -321, 205, -262, -504, 142, -83, -574, 0, 48, -571, -106],
    *[137, -501, -266, 190, -391, -406, 194, -186, -553, 83, -13, -577, -49, 103, -515, -280, 201, 300, -506, 131],
    *[-45, -578, -80, 138, -462, -361, 201, -211, -554, 32, 74, -533, -235, 187, -372, -442, 182, -147, -566, 25],
    *[68, -535, -244, 194, -351, -463, 174, -125, -570, 15, 72, -550, -190, 172, -424, -385, 198, -218, -536, 96],
]


def num_acc(level):
    """Give NumAcc2-4 of NIST StRD: the level and a tenth, then a tenth less and more in turn."""
    return [level + 0.2, *[level + 0.1, level + 0.3] * 500]


@pytest.mark.parametrize(
    ("values", "mean", "sd", "rel"),
    [
        pytest.param(
            LEW,
            -177.435,
            277.332168044316,
            1e-13,
            marks=pytest.mark.published("NIST StRD Lew", rows=("7.1",), status="READ-S"),
        ),
        *[
            pytest.param(
                values,
                mean,
                sd,
                rel,
                marks=pytest.mark.published("NIST StRD NumAcc1-4", rows=("7.7",), status="READ-S"),
            )
            # The larger the level, the more digits of the tenth are lost when the values are stored.
            for values, mean, sd, rel in (
                ([10000001, 10000003, 10000002], 10000002, 1, 1e-15),
                (num_acc(1.0), 1.2, 0.1, 1e-13),
                (num_acc(1000000.0), 1000000.2, 0.1, 1e-8),
                (num_acc(10000000.0), 10000000.2, 0.1, 1e-7),
            )
        ],
    ],
)
def test_certified_mean_and_deviation(values, mean, sd, rel):
    found = one_way([values, values])  # twice the same: the scatter within is that of one
    assert found.mean == pytest.approx(mean, rel=1e-14)
    assert found.s_within == pytest.approx(sd, rel=rel)
    assert found.ss_between == 0


def test_components_are_found_again():
    rng = np.random.default_rng(4)
    fills = rng.normal(50, 3.0, size=400)
    found = one_way([fill + rng.normal(0, 1.0, size=4) for fill in fills])
    assert found.s_within == pytest.approx(1.0, rel=0.06)
    assert found.s_between == pytest.approx(3.0, rel=0.12)


@pytest.mark.parametrize("groups", [[[1.0, 2.0]], [[1.0], [2.0]], [[1.0, float("inf")], [1.0, 2.0]], [[], [1.0, 2.0]]])
def test_raises(groups):
    with pytest.raises(InputError):
        one_way(groups)


def test_values_that_are_all_alike():
    found = one_way([[2.0, 2.0], [2.0, 2.0]])
    assert (found.r2, found.f, found.p, found.s_within, found.s_between) == (0.0, 0.0, 1.0, 0.0, 0.0)
    apart = one_way([[2.0, 2.0], [3.0, 3.0]])
    assert (apart.r2, apart.p) == (1.0, 0.0)
    assert apart.f == float("inf")
