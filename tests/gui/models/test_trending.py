"""A quantity against a number: the slope in words and in the unit on screen, what is drawn, what is warned of."""

from __future__ import annotations

from dataclasses import replace

import pytest

from analysis.compare.runs import LEFT_OUT, Quantity
from gui.models.display import Display
from gui.models.sheets import QuantityScale
from gui.models.trending import follow, slope_words, trend_sheets, warnings_of
from tests.gui.models.test_answers import COMMON, run, scale

RUNS = [run(f"{n}", 50.0 - n + 0.1 * (n % 2), shim_mm=10.0 + n, fill=f"{n}") for n in range(6)]


def test_what_is_drawn_goes_a_twentieth_beyond_the_fills() -> None:
    """Fills from 10 to 15; what is asked is drawn as far as half their range beyond."""
    for asked, first, last in ((None, 9.75, 15.25), (17.5, 9.75, 17.75), (18.0, 9.75, 15.25), (7.5, 7.25, 15.25)):
        at = [point.x for point in follow(RUNS, COMMON, "shim_mm", at=asked).along]
        assert (at[0], at[-1]) == pytest.approx((first, last))


@pytest.mark.parametrize(
    ("span", "shown"),
    [((-2.0, -1.0), True), ((1.0, 2.0), True), ((0.0, 2.0), False), ((-1.0, 0.0), False), ((-1.0, 1.0), False)],
)
def test_a_trend_is_shown_where_its_interval_leaves_nought_out(span: tuple[float, float], *, shown: bool) -> None:
    trend = replace(follow(RUNS, COMMON, "shim_mm"), slope=span)
    assert ("a trend is shown" in slope_words(trend, scale())) is shown


def test_a_slope_per_inch_is_that_per_millimetre_times_25_4() -> None:
    trend = replace(follow(RUNS, COMMON, "shim_mm"), slope=(-2.0, -1.0))
    inches = QuantityScale(Quantity.BREAKAWAY, Display(lengths="in"))
    assert "−2 to −1" in slope_words(trend, scale())
    assert "−50.8 to −25.4" in slope_words(trend, inches)
    row = trend_sheets(trend, inches)[0].rows[0]
    assert row[0] == "Change per 1 in of shim"
    assert row[2] == "−50.8 to −25.4"


def test_what_is_asked_of_a_line_says_for_what_it_holds() -> None:
    trend = follow(RUNS, COMMON, "shim_mm", wanted=48.0)
    row = trend_sheets(trend, scale())[0].rows[2]
    assert row[0] == "shim for 48 N·m"
    assert row[3] == (trend.wanted.text or "one further fill")
    assert (
        trend_sheets(replace(trend, wanted=replace(trend.wanted, text="")), scale())[0].rows[2][3] == "one further fill"
    )
    named = replace(trend, wanted=replace(trend.wanted, text="two roots"))
    assert trend_sheets(named, scale())[0].rows[2][3] == "two roots"


def test_what_is_left_out_is_no_warning() -> None:
    trend = follow(RUNS, COMMON, "shim_mm")
    points = replace(trend.points, remarks=(f"a{LEFT_OUT}b", "oil changed"), warnings=("one operator each",))
    assert warnings_of(replace(trend, points=points)) == ["oil changed", "one operator each"]
