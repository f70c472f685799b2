"""Certified means, deviations and autocorrelations of NIST, and a two-sample test, against what compares our groups.

Data: NIST Statistical Reference Datasets, univariate summary statistics (public domain), read in a copy of its files.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from analysis.compare.variance import one_way
from analysis.trace.averaging import autocorrelation

STRD = "NIST StRD univariate ({})"

MICHELSO = """
85 74 90 107 93 85 95 98 98 88 100 98 93 65 76 81 100 100 96 96 96 94 96 94 88 80 85 88 90 84 83 79 81 88 88 83 80 79
76 80 88 88 88 86 72 72 62 86 97 95 88 91 85 87 84 84 85 84 84 84 89 81 81 82 80 77 76 74 75 76 91 92 89 86 88 72 84
85 85 78 89 84 78 81 76 81 79 81 82 85 87 87 81 74 81 94 95 80 81 87
"""
MAVRO = """
80 70 80 90 80 70 50 40 50 50 70 80 80 90 90 110 100 60 40 30 30 50 50 60 50 40 30 40 50 40 50 60 50 60 90 100 100 110
120 130 140 150 170 160 160 160 170 160 150 140
"""
LOTTERY = """
162 671 933 414 788 730 817 33 536 875 670 236 473 167 877 980 316 950 456 92 517 557 956 954 104 178 794 278 147 773
437 435 502 610 582 780 689 562 964 791 28 97 848 281 858 538 660 972 671 613 867 448 738 966 139 636 847 659 754 243
122 455 195 968 793 59 730 361 574 522 97 762 431 158 429 414 22 629 788 999 187 215 810 782 47 34 108 986 25 644 829
630 315 567 919 331 207 412 242 607 668 944 749 168 864 442 533 805 372 63 458 777 416 340 436 140 919 350 510 572 905
900 85 389 473 758 444 169 625 692 140 897 672 288 312 860 724 226 884 508 976 741 476 417 831 15 318 432 241 114 799
955 833 358 935 146 630 830 440 642 356 373 271 715 367 393 190 669 8 861 108 795 269 590 326 866 64 523 862 840 219
382 998 4 628 305 747 247 34 747 729 645 856 974 24 568 24 694 608 480 410 729 947 293 53 930 223 203 677 227 62 455
387 318 562 242 428 968
"""


def _read(text: str, level: float = 0.0, step: float = 1.0) -> np.ndarray:
    return np.round(level + step * np.array(text.split(), float), 10)


SETS = {
    "Michelso": _read(MICHELSO, 299.0, 0.01),
    "Mavro": _read(MAVRO, 2.001, 1e-5),
    "Lottery": _read(LOTTERY),
}


@pytest.mark.parametrize(
    ("name", "count", "mean", "sd", "r1"),
    [
        pytest.param(
            "Michelso", 100, 299.8524, 0.0790105478190518, 0.535199668621283,
            marks=pytest.mark.published(STRD.format("Michelso"), rows=("7.3",), status="READ-S"),
        ),
        pytest.param(
            "Mavro", 50, 2.001856, 0.000429123454003053, 0.937989183438248,
            marks=pytest.mark.published(STRD.format("Mavro"), rows=("7.4",), status="READ-S"),
        ),
        pytest.param(
            "Lottery", 218, 518.958715596330, 291.699727470969, -0.120948622967393,
            marks=pytest.mark.published(STRD.format("Lottery"), rows=("7.5",), status="READ-S"),
        ),
    ],
)  # fmt: skip
def test_certified_summaries(name, count, mean, sd, r1):
    """The scatter within two groups of the same values is that of one; the lags are those of a trace's noise."""
    values = SETS[name]
    assert len(values) == count
    alike = one_way([values, values])
    assert alike.mean == pytest.approx(mean, rel=1e-13)
    assert alike.s_within == pytest.approx(sd, rel=1e-10)
    assert alike.s_between == 0.0
    assert autocorrelation(values)[1] == pytest.approx(r1, rel=1e-9)


def _with(count: int, mean: float, sd: float) -> np.ndarray:
    """Give values of just this mean and standard deviation."""
    shape = np.arange(count) - (count - 1) / 2
    return mean + sd * shape / math.sqrt((shape**2).sum() / (count - 1))


@pytest.mark.published(
    "NIST/SEMATECH e-Handbook 1.3.5.3 (two samples, equal variances; via an open-source test suite)",
    rows=("7.20",),
    status="READ-S",
)
def test_two_samples_of_equal_variance():
    """Of two groups the analysis of variance is the pooled test: F is the square of T, its p that of both sides."""
    found = one_way([_with(249, 20.14458, 6.41470), _with(79, 30.48101, 6.10771)])
    assert math.sqrt(found.f) == pytest.approx(12.62059, abs=5e-5)
    assert found.df_within == 326
    assert found.p / 2 == pytest.approx(2.637e-30, rel=2e-3)
