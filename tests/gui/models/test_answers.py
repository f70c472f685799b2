"""What the Compare page says, without a window: figures, tables, files."""

import csv
import json
import math
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest

from analysis.compare import planner
from analysis.compare.comparisons import Effect, Interval
from analysis.compare.runs import LEFT_OUT, Quantity, Run, Setting
from gui.models import batching, comparing, ordering, own_scatter, planning
from gui.models.comparing import Common, ComparisonAsked
from gui.models.display import Display
from gui.models.sheets import (
    QuantityScale,
    Sheet,
    Written,
    copied,
    left_out_sheet,
    p_words,
    plain_number,
    significant,
    whole_number,
    write,
)
from logger.errors import FileError, InputError, QuantityError

COMMON = Common()


def run(name: str, value: float, **tags: str | float) -> Run:
    setting = Setting("car, other side held, neutral")
    values = {Quantity.BREAKAWAY: (value,), Quantity.RATIO: (value / 40,)}
    return Run(name, tags, setting, values, 1, (f"{name}, pull at 3.0 s: never slipped",))


def scale(quantity: Quantity = Quantity.BREAKAWAY, unit: str = "N·m", *, comma: bool = False) -> QuantityScale:
    return QuantityScale(quantity, Display(unit, comma=comma))


def test_figures_in_the_unit_on_screen() -> None:
    assert scale(unit="lbf·ft").words(1.3558179483314004) == "1.00 lbf·ft"
    assert scale(unit="lbf·ft").title == "Breakaway (lbf·ft)"
    assert scale(Quantity.SLOPE, "lbf·ft").unit == "lbf·ft per rad/s"
    assert scale(Quantity.RATIO, "lbf·ft", comma=True).words(1.35) == "1,350"
    assert scale().signed(2.0) == "+2.00"
    assert scale().signed(-2.0) == "−2.00"
    assert scale().signed(0.001) == "0.00"  # no sign for what is shown as nothing
    assert scale().rate(0.01234) == "+0.0123"
    assert scale().rate(-67.744) == "−67.7"
    assert scale().span(-1, 2, signed=True) == "−1.00 to +2.00"
    assert scale().span(-math.inf, math.inf) == "–"
    assert scale().asked(60.0) == "60 N·m"
    assert scale().number(math.nan) == "–"


def test_what_is_typed() -> None:
    assert scale(unit="lbf·ft").typed("10") == pytest.approx(13.558179483314004)
    assert scale(unit="lbf·ft").typed("10 N·m") == 10
    assert scale(Quantity.RATIO, "lbf·ft").typed("0,05") == 0.05
    assert scale(Quantity.SLOPE, "lbf·ft").typed("1") == pytest.approx(1.3558179483314004)
    assert scale().typed("  ") is None
    assert whole_number("7") == 7
    for text in ("-1", "1.5", "x"):
        with pytest.raises(QuantityError):
            whole_number(text)
    for text in ("ten", "nan", "inf"):
        with pytest.raises(QuantityError):
            plain_number(text)


def test_significant_digits_and_p() -> None:
    assert significant(Display(comma=True), 0.26712) == "0,267"
    assert significant(Display(), -1234.4) == "−1234"
    assert significant(Display(), -1234.4e9) == "−1.23e+12"
    assert significant(Display(), 999.6) == "1000"
    assert significant(Display(), 0.0) == "0"
    assert significant(Display(), 140.0) == "140"
    assert significant(Display(), math.inf) == "–"
    assert p_words(Display(), 3e-6) == "< 0.0001"
    assert p_words(Display(comma=True), 0.034) == "0,034"


def test_a_difference_is_said_by_sign_and_word() -> None:
    def effect(low: float, value: float, high: float) -> Effect:
        return Effect("B", "A", Interval(value, low, high), None, 0.01, 3.0, 3, 3, "Welch t")

    said = [comparing.says(effect(*d)) for d in ((1, 2, 3), (-3, -2, -1), (-1, 1, 3), (0, 1, 2))]
    assert said == ["▲ higher", "▼ lower", "– no difference shown", "– no difference shown"]


def test_tags_to_choose_from() -> None:
    runs = [
        run("a", 1.0, fluid="B", shim=0.1, file="a", cycles=3.0, mixed="3"),
        run("b", 2.0, fluid="C", shim=0.2, file="b", cycles=3.0, mixed="three"),
        run("c", 3.0, shim="0.3", file="c"),
    ]
    tags = comparing.tags_of(runs)
    assert tags.groups == ("fluid", "mixed", "shim")
    assert tags.numbers == ("shim",)  # one number only is no trend, words are no numbers
    assert tags.all == ("cycles", "fluid", "mixed", "shim")
    assert comparing.groups_in(runs, "fluid") == ["B", "C"]


def test_single_fills_have_values_and_no_difference() -> None:
    runs = [run("a", 40.0, side="left", fill="1"), run("b", 44.0, side="right", fill="2")]
    found = comparing.compare_groups(runs, COMMON, ComparisonAsked("side")).comparison
    assert found is not None
    assert comparing.headline(found, scale()).startswith("No difference can be stated")
    sheets = comparing.group_sheets(found, scale(), ["bad.csv: no torque"])
    assert [sheet.name for sheet in sheets] == ["Groups", "Notes (6)", "Excluded (3)"]
    assert [row[6] for row in sheets[0].rows] == ["one fill only"] * 2
    assert "a single fill" in comparing.warnings_of(found)[0]
    assert sheets[2].rows[0] == ("File", "bad.csv", "no torque")
    assert sheets[2].rows[1] == ("Pull", "a, pull at 3.0 s", "never slipped")


def test_nothing_left_out_is_no_table() -> None:
    assert left_out_sheet(["2 recordings without a tag 'fill'"]) is None


def test_each_axle_is_judged_by_itself() -> None:
    cycles = np.arange(0.0, 30.0, 2.0)
    steady = [run(f"a{n:02.0f}", 46.0 + 0.01 * math.cos(9 * n), vehicle="car 7", cycles=n) for n in cycles]
    moving = [run(f"b{n:02.0f}", 60.0 - 0.5 * n, vehicle="car 8", cycles=n) for n in cycles]
    few = [run("c", 40.0, vehicle="car 9", cycles=0.0), run("d", 41.0, vehicle="car 9", cycles=2.0)]
    answer = ordering.settle([*steady, *moving, *few, run("e", 1.0)], COMMON, "cycles")
    assert [(of.axle, of.now.state.value) for of in answer.axles] == [("car 7", "settled"), ("car 8", "still moving")]
    assert any("car 9: 2 cycles are too few" in line for line in answer.problems)
    first = answer.axles[0]
    assert first.since == 9  # ten values are the fewest that a pack is called settled by
    assert ordering.run_in_headline(first, scale()).startswith("Settled since cycle 18.\n")
    assert ordering.run_in_sheets(first, answer, scale())[-1].rows == (("Recording", "e", "it has no tag 'cycles'"),)
    with pytest.raises(InputError, match="too few"):
        ordering.settle(few, COMMON, "cycles")


def test_a_chart_needs_good_jobs_and_like_tests() -> None:
    runs = [run(f"{n}", 50.0 + (n % 3) - 9.0 * max(0, n - 6), date=f"2026-05-{n + 1:02}") for n in range(9)]
    (of,) = ordering.watch_axles(runs, COMMON, 5).axles
    assert of.chart.alarms == (7, 8)
    assert ordering.watch_headline(of, scale()).startswith("A change is shown: below its band since 2026-05-08")
    bench = Run("x", {"date": "2026-06-01"}, Setting("bench"), {Quantity.BREAKAWAY: (1.0,)}, 1)
    with pytest.raises(InputError, match="cannot stand on one chart"):
        ordering.watch_axles([*runs, bench], COMMON, 5)


def test_a_plan_without_groups_or_with_a_scatter_unknown() -> None:
    wish = planning.Wish("difference", 2.0, 1.0, "", 0.8, (), 1)
    planned = planning.plan([], COMMON, wish)
    assert planned.order == ()
    assert planning.order_sheet(planned) is None
    assert planned.per_group == 7  # twice the scatter, within blocks: 6 and 7 by the noncentral t
    assert dict(planned.curve)[7.0] >= 0.8 > dict(planned.curve)[6.0]
    with pytest.raises(InputError, match="two fills or more"):
        planning.scatter_in([run("a", 1.0, oil="x"), run("b", 2.0, oil="y")], COMMON, "oil")


def test_files_hold_plain_figures_and_no_formulas(tmp_path: Path) -> None:
    written = Written((("name", "value"), ("=1+1", -2.5), ("none", math.nan)), {"schema": "x"}, True)
    rows = list(csv.reader(Path(write(written, str(tmp_path / "a.csv"))).read_text("utf-8").splitlines()))
    assert rows == [["name", "value", "simulated"], ["'=1+1", "-2.5", "yes"], ["none", "", "yes"]]
    assert json.loads(Path(write(written, str(tmp_path / "a.json"))).read_text("utf-8")) == {"schema": "x"}
    with pytest.raises(FileError):
        write(written, str(tmp_path / "no" / "a.csv"))
    sheet = Sheet("s", ("a", "b"), (("=1", "−2.5"), ("x", "+1.0")))
    assert copied(sheet, simulated=False) == "a\tb\n'=1\t-2.5\nx\t+1.0"
    assert copied(sheet, simulated=True).splitlines()[0].startswith("SIMULATED DATA")


def test_a_batch_says_how_far_it_is_and_stops(tmp_path: Path) -> None:
    for name in ("a", "b", "c"):
        (tmp_path / f"{name}.csv").write_text("no torque\n1\n", "utf-8")
    paths = [str(tmp_path / f"{name}.csv") for name in ("a", "b", "c")]
    room, target = str(tmp_path / "room"), str(tmp_path / "t.csv")
    Path(room).mkdir()
    assert batching.how_far(room) is None
    batching.tell_to_stop(room)
    assert batching.write_table(paths, target, "recording", room) is None
    assert not Path(target).exists()
    far = batching.how_far(room)
    assert far is not None
    assert (far.total, far.bad) == (3, far.done)
    batching.clear(room)
    summary = batching.write_table(paths, target, "recording", room)
    assert summary is not None
    assert "0 rows from 0 recordings" in batching.done_words(summary)
    assert "a.csv" in batching.done_words(summary)


@pytest.mark.parametrize(("between", "said"), [(5.0, "operators differ more"), (0.0, "repeats scatter more")])
def test_a_study_says_what_scatters_more(between: float, said: str) -> None:
    rng = np.random.default_rng(3)
    runs = [
        run(
            f"{axle}{operator}{i}",
            40.0 + 5 * axle + between * operator + rng.normal(0, 0.3),
            axle=f"x{axle}",
            operator=f"o{operator}",
        )
        for axle in range(3)
        for operator in range(3)
        for i in range(3)
    ]
    answer = own_scatter.study_of(runs, COMMON, "operator", "axle")
    assert said in own_scatter.study_headline(answer, scale())
    assert (answer.study.reproducibility > answer.study.repeatability) == (between > 0)


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (1e-4, "0.0001"), (1.05e-4, "0.000105"), (9.99e-5, "9.99e−05"), (-1.05e-4, "−0.000105"),
        (9_999_999.0, "9999999"), (1e7, "1e+07"), (1.05e7, "1.05e+07"), (1000.0, "1000"), (999.4, "999"),
        (0.0, "0"), (math.nan, "–"),
    ],
)  # fmt: skip
def test_a_number_of_any_size(value: float, text: str) -> None:
    assert significant(Display(), value) == text


@pytest.mark.parametrize(
    ("p", "text"), [(9.9e-5, "< 0.0001"), (1e-4, "0.0001"), (1.05e-4, "0.00011"), (1.2e-4, "0.00012"), (0.5, "0.5")]
)
def test_a_p_value(p: float, text: str) -> None:
    assert p_words(Display(), p) == text


def test_an_answer_in_a_file_has_no_numbers_that_json_does_not_know(tmp_path: Path) -> None:
    """RFC 8259, 6: infinity and NaN are no numbers. Letters stand as they are."""
    target = str(tmp_path / "a.json")
    write(Written((), {"unit": "N·m"}, simulated=False), target)
    assert Path(target).read_text("utf-8") == '{"unit": "N·m"}'
    with pytest.raises(FileError, match="cannot be written"):
        write(Written((), {"x": math.nan}, simulated=False), target)
    assert Sheet("x", ("a", "b"), ()).words == frozenset({0})


@pytest.mark.parametrize(
    ("ratio", "text"),
    [
        ((1.005, 1.0, 1.02), "+0.5 (0.0 to +2.0)"),
        ((0.9, 0.8, 1.0), "−10.0 (−20.0 to 0.0)"),
        (None, "–"),
    ],
)
def test_a_difference_in_per_cent_has_its_sign(ratio: tuple[float, float, float] | None, text: str) -> None:
    effect = Effect("B", "A", Interval(0.2, 0.1, 0.3), Interval(*ratio) if ratio else None, 0.01, 3.0, 3, 3, "Welch t")
    assert comparing._percent(effect, scale()) == text
    assert comparing.says(effect) == "▲ higher"  # of whatever size


@pytest.mark.parametrize(("groups", "offered"), [(1, False), (2, True), (20, True), (21, False)])
def test_a_tag_groups_by_two_values_to_twenty(groups: int, *, offered: bool) -> None:
    runs = [run(f"{n}", 1.0, oil=f"oil {n % groups}") for n in range(42)]
    assert (comparing.tags_of(runs).groups == ("oil",)) is offered


def test_a_run_in_curve_falls_to_a_third_of_its_drop_in_its_own_scale() -> None:
    """final + drop e^(-(x - first)/scale): 15, and 10 + 5/e four further on."""
    now = SimpleNamespace(decay=SimpleNamespace(final=10.0, drop=5.0, scale=4.0))
    of = SimpleNamespace(now=now, points=SimpleNamespace(x=(2.0, 3.0)))
    assert ordering.decay_curve(of, [2.0, 6.0]) == pytest.approx([15.0, 10.0 + 5.0 / math.e])
    now.decay = None
    assert ordering.decay_curve(of, [2.0]) == []


def test_what_is_left_out_of_a_run_in_is_no_warning() -> None:
    points = SimpleNamespace(remarks=(f"a{LEFT_OUT}b", "oil changed"), warnings=("one operator each",))
    answer = SimpleNamespace(problems=("too few", f"c{LEFT_OUT}d"))
    assert ordering.run_in_warnings(SimpleNamespace(points=points), answer) == [
        "oil changed", "too few", "one operator each",
    ]  # fmt: skip


def test_a_plan_is_for_so_many_candidates_and_simulated_where_its_scatter_is() -> None:
    """The planner itself is shown right in tests/analysis/compare."""
    runs = [replace(run(f"{g}{n}", 40.0 + n, oil=g, fill=f"{g}{n}"), simulated=True) for g in "ab" for n in range(3)]
    for groups in ((), ("a",), ("a", "b", "c")):
        planned = planning.plan((), COMMON, planning.Wish("difference", 4.0, 2.0, "", 0.8, groups, 1))
        assert planned.plan == planner.fills_needed(2.0, 4.0, candidates=max(1, len(groups) - 1), power=0.8)
        assert bool(planned.order) is (len(groups) > 1)
        assert planned.simulated is False
    for sd, simulated in ((2.0, False), (None, True)):
        wish = planning.Wish("half width", 1.0, sd, "oil", 0.8, (), 1)
        assert planning.plan(runs, COMMON, wish).simulated is simulated
    for word, plain in (("simulated", True), ("measured", False)):
        wish = planning.Wish("half width", 1.0, None, "oil", 0.8, (), 1)
        assert planning.plan([replace(one, simulated=plain) for one in runs], COMMON, wish).simulated is plain, word


@pytest.mark.parametrize(
    ("groups", "whole"), [(("a", "b"), True), (("a", "b", "c"), False), (("a", "b", "c", "d"), False)]
)
def test_a_plan_for_sameness_counts_the_whole_of_two_groups_alone(groups: tuple[str, ...], *, whole: bool) -> None:
    made = SimpleNamespace(control=4, per_group=4, total=8, power=0.8)
    wish = planning.Wish("margin", 4.0, 2.0, "", 0.8, groups, 1)
    planned = SimpleNamespace(wish=wish, plan=made, per_group=4, sd=2.0)
    assert (" in all" in planning.headline(planned, scale())) is whole


@pytest.mark.parametrize(("bias", "than"), [(-0.5, "lower"), (0.0, "higher"), (0.5, "higher")])
def test_which_of_two_ways_reads_higher(bias: float, than: str) -> None:
    found = SimpleNamespace(bias=bias, low=-1.0, high=1.0, limit_low=-2.0, limit_high=2.0, n=5, sd=0.5)
    said = own_scatter.pairs_headline(SimpleNamespace(agreement=found, ways=("A", "B")), scale())
    assert f" {than} than B" in said
    assert said.startswith(f"A reads {abs(bias):.2f} N·m")


@pytest.mark.parametrize(
    ("between", "said"), [(1.0, "repeats scatter more"), (0.9, "repeats"), (1.1, "operators differ")]
)
def test_a_study_says_what_scatters_more_and_shares_of_variance(between: float, said: str) -> None:
    """(1/2)² is a quarter, (2/2)² the whole."""
    found = SimpleNamespace(
        reproducibility=between, repeatability=1.0, half_width=2.0, repeat_limit=2.8, measuring=2.0, axles=0.5,
        total=2.0, percent=12.0, levels=4, table=(), pooled=False,
    )  # fmt: skip
    answer = SimpleNamespace(study=found, axles=("x",), operators=("o",), values=(((1.0, 2.0),),))
    assert said in own_scatter.study_headline(answer, scale())
    parts, _, readings = own_scatter.study_sheets(answer, scale())[:3]
    assert [row[2] for row in parts.rows][::2] == ["25.0 %", "100.0 %", "100.0 %"]
    assert readings.rows == (("x", "o", "1.00   2.00", "1.50"),)
