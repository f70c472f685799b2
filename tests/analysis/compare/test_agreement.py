"""Two measurements of one thing, judged by their combined interval."""

from __future__ import annotations

import math

import numpy as np
import pytest

from analysis.compare.agreement import Agreement, agreement
from logger.errors import InputError


def test_e_n_number():
    """ISO 13528, 9.7 (from memory): E_n = (x - X) / √(U_x² + U_X²), satisfactory while |E_n| ≤ 1."""
    found = agreement((100.0, 3.0), (104.0, 4.0))
    assert found.difference == 4.0
    assert found.u95 == 5.0
    assert found.e_n == pytest.approx(0.8)
    assert found.agrees
    assert agreement((100.0, 3.0), (105.0, 4.0)).agrees  # the bound itself agrees
    assert not agreement((100.0, 3.0), (94.9, 4.0)).agrees
    assert agreement((100.0, 3.0), (94.9, 4.0)).e_n == pytest.approx(-1.02)


def test_two_that_measure_the_same_agree_in_95_of_100():
    """The property that the number is made for: U is 95 % of each, so it is of their difference."""
    rng = np.random.default_rng(7)
    u = np.array([1.0, 2.5])
    pairs = rng.normal(60.0, u / 1.959964, (4000, 2))
    agreed = np.mean([agreement((a, u[0]), (b, u[1])).agrees for a, b in pairs])
    assert 0.94 < agreed < 0.96


@pytest.mark.parametrize("bad", [((1.0, 0.0), (1.0, 0.0)), ((float("nan"), 1.0), (1.0, 1.0)), ((1.0, -1.0), (1, 1))])
def test_what_cannot_be_judged_is_refused(bad):
    with pytest.raises(InputError):
        agreement(*bad)


def test_one_without_an_interval_is_compared_by_that_of_the_other():
    found = agreement((100.0, 0.0), (100.75, 0.5))
    assert (found.u95, found.e_n, found.agrees) == (0.5, 1.5, False)
    assert agreement((100.0, 0.5), (100.75, 0.0)).u95 == 0.5
    assert "a difference is shown" in found.words("N·m")
    assert "no difference is shown" in agreement((100.0, 1.0), (100.0, 1.0)).words("N·m")


def test_without_any_interval_a_difference_is_beyond_it():
    assert (Agreement(1.0, 0.0).e_n, Agreement(-1.0, 0.0).e_n) == (math.inf, -math.inf)


@pytest.mark.parametrize(
    "bad", [((math.inf, 1.0), (1.0, 1.0)), ((1.0, 1.0), (1.0, -0.5)), ((1.0, 1.0), (1.0, math.nan))]
)
def test_each_figure_of_both_is_looked_at(bad):
    with pytest.raises(InputError, match="finite"):
        agreement(*bad)
