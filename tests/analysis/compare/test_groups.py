"""Comparing groups: units, comparability, exclusions, effects."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy import stats

from analysis.compare import comparisons
from analysis.compare.comparability import NotComparableError, check
from analysis.compare.comparisons import Interval, welch
from analysis.compare.groups import compare
from analysis.compare.runs import Quantity, Run, Setting, numbers_of, units_of
from analysis.compare.series import points_against
from logger.errors import InputError

ALIKE = Setting(
    test="car, other side held, neutral",
    fixture="one stud",
    temperature_c=20.0,
    speed_rad_s=0.5,
    dwell_s=15.0,
)


def run(file, fluid, fill, pulls, **rest):
    tags = {"fluid": fluid, "fill": fill, **rest.pop("tags", {})}
    setting = replace(ALIKE, **rest.pop("setting", {}))
    return Run(file, tags, setting, {Quantity.BREAKAWAY: tuple(pulls)}, len(pulls), **rest)


def season(rng, means, fills=4, runs=2, pulls=5, fill_sd=1.0, pull_sd=0.5):
    found = []
    for fluid, mean in means.items():
        for i in range(fills):
            level = mean + rng.normal(0, fill_sd)
            found += [
                run(f"{fluid}-{i}-{j}.csv", fluid, f"{fluid}{i}", level + rng.normal(0, pull_sd, pulls))
                for j in range(runs)
            ]
    return found


def test_a_fill_is_the_unit():
    rng = np.random.default_rng(1)
    runs = season(rng, {"plain": 60, "modified": 52})
    found = compare(runs, Quantity.BREAKAWAY, by="fluid", control="plain")
    (effect,) = found.effects
    assert (effect.n_treated, effect.n_control) == (4, 4)  # fills, not 40 pulls
    assert found.groups[0].pulls == 40
    by_hand = [
        [np.mean([np.median(r.values[Quantity.BREAKAWAY]) for r in runs if r.tags["fill"] == f"{fluid}{i}"])
         for i in range(4)]
        for fluid in ("modified", "plain")
    ]  # fmt: skip
    expected = welch(*by_hand)
    assert effect.difference.value == pytest.approx(expected.difference.value)
    assert effect.difference.low == pytest.approx(expected.difference.low)
    assert effect.p == pytest.approx(expected.p)
    assert effect.difference.high < -6


def test_more_pulls_do_not_buy_confidence():
    # Ten pulls or two hundred of two fills: the interval is that of two fills.
    rng = np.random.default_rng(2)
    few = season(rng, {"a": 50, "b": 50}, fills=2, pulls=5)
    many = season(np.random.default_rng(2), {"a": 50, "b": 50}, fills=2, pulls=100)
    for runs in (few, many):
        (effect,) = compare(runs, Quantity.BREAKAWAY, by="fluid").effects
        assert effect.df <= 2


def test_false_alarms_stay_at_five_percent():
    rng = np.random.default_rng(3)
    alarms = 0
    for _ in range(200):
        runs = season(rng, {"a": 50, "b": 50}, fills=4, runs=1, pulls=8, fill_sd=2.0, pull_sd=0.3)
        (effect,) = compare(runs, Quantity.BREAKAWAY, by="fluid").effects
        alarms += effect.p < 0.05
    assert alarms / 200 <= 0.10  # 5 % and three standard deviations; counted by pulls it would be most of them


def test_three_fluids_against_a_control():
    rng = np.random.default_rng(4)
    runs = season(rng, {"A": 60, "B": 54, "C": 59})
    found = compare(runs, Quantity.BREAKAWAY, by="fluid", control="C")
    assert [g.name for g in found.groups] == ["C", "A", "B"]
    assert {e.method for e in found.effects} == {"Dunnett, jointly 95 %"}
    assert found.overall_p < 0.01
    pairs = compare(runs, Quantity.BREAKAWAY, by="fluid", against="all pairs")
    assert len(pairs.effects) == 3
    assert found.between_sd == pytest.approx(1.0, abs=0.5)
    assert found.within_sd == pytest.approx(0.5 * 1.253 / np.sqrt(5), abs=0.15)


def test_blocks():
    rng = np.random.default_rng(5)
    runs = []
    for day in range(5):
        shift = rng.normal(0, 6)
        for fluid, level in (("plain", 60), ("modified", 57)):
            runs.append(run(f"{fluid}{day}", fluid, f"{fluid}{day}", [level + shift + rng.normal(0, 0.3)] * 3,
                            tags={"day": f"d{day}"}))  # fmt: skip
    (effect,) = compare(runs, Quantity.BREAKAWAY, by="fluid", control="plain", block="day").effects
    assert effect.method == "paired t within 5 blocks"
    assert effect.difference.low < -3 < effect.difference.high < -1.5
    third = [replace(r, tags={**r.tags, "fluid": "third", "fill": f"t{i}"}) for i, r in enumerate(runs[::2])]
    noisy = [replace(r, values={Quantity.BREAKAWAY: (61 + rng.normal(0, 5),)}) for r in third]
    joint = compare([*runs, *noisy], Quantity.BREAKAWAY, by="fluid", control="plain", block="day").effects
    assert [e.method for e in joint] == ["paired t within 5 blocks, jointly 95 %"] * 2
    assert joint[0].difference.high - joint[0].difference.low > effect.difference.high - effect.difference.low
    assert joint[0].p == pytest.approx(2 * effect.p)


def _in_blocks(control_again):
    """Give three days of two fluids; on some of them the control was tested twice."""
    runs = []
    for day, (plain, other) in enumerate([(60.0, 50.0), (62.0, 51.5), (58.0, 48.3)]):
        on = {"day": f"d{day}"}
        runs += [
            run(f"p{day}", "plain", f"p{day}", [plain], tags=on),
            run(f"o{day}", "other", f"o{day}", [other], tags=on),
        ]
        if day in control_again:
            runs.append(run(f"q{day}", "plain", f"q{day}", [plain + 6.0], tags=on))
    return runs


def test_no_fill_of_a_block_is_lost():
    """A control that was tested twice on a day counts with both fills: their mean stands for the day, as is said."""
    question = {"by": "fluid", "control": "plain", "block": "day", "margin": 13.0}
    found = compare(_in_blocks((0, 2)), Quantity.BREAKAWAY, **question)
    (effect,) = found.effects
    assert effect.difference.value == pytest.approx(np.mean([50 - 63.0, 51.5 - 62.0, 48.3 - 61.0]))
    assert any("more than one fill in d0, d2: the mean" in remark for remark in found.remarks)
    same = found.equivalences["other"]
    assert same.difference.value == pytest.approx(effect.difference.value), "sameness is paired as well"
    ninety = stats.ttest_rel([50, 51.5, 48.3], [63.0, 62.0, 61.0]).confidence_interval(0.90)
    assert (same.difference.low, same.difference.high) == pytest.approx(tuple(ninety))
    assert not compare(_in_blocks(()), Quantity.BREAKAWAY, **question).remarks


def test_fills_outside_of_common_blocks_are_named():
    runs = _in_blocks(())
    runs += [run("x", "other", "x", [40.0]), run("y", "other", "y", [40.0], tags={"day": "d9"})]
    found = compare(runs, Quantity.BREAKAWAY, by="fluid", control="plain", block="day")
    assert found.effects[0].difference.value == pytest.approx(np.mean([-10.0, -10.5, -9.7]))
    assert any("1 fills without a block" in remark for remark in found.remarks)
    assert any("d9 hold no other group" in remark for remark in found.remarks)


def test_transducer_operator_and_ranges_are_checked():
    by = {"a": [run("a", "a", "a", [50], setting={"transducer": "T1", "operator": "A", "temperature_c": 10.0})] * 2,
          "b": [run("b", "b", "b", [50], setting={"transducer": "T2", "operator": "A", "temperature_c": t})
                for t in (10.0, 25.0)]}  # fmt: skip
    said = check(by).warnings
    assert any(line.startswith("different transducers: T1; T2; a difference between groups may be") for line in said)
    assert "oil between 10 and 25 °C within b" in said
    assert not any("operators" in line for line in said)
    by["b"] = [run("b", "b", "b", [50], setting={"transducer": "T1", "operator": "B"})]
    assert any("different operators" in line for line in check(by).warnings)
    assert not any("different operators" in line for line in check(by, known=("operator",)).warnings)


def test_what_goes_along_with_a_trend_is_said():
    temperatures = [5.0, 15.0, 40.0, 60.0]
    runs = [
        run(f"r{i}", "x", f"f{i}", [50 + i], tags={"shim": float(i)},
            setting={"temperature_c": t, "transducer": "T1" if i < 2 else "T2"})
        for i, t in enumerate(temperatures)
    ]  # fmt: skip
    said = points_against(runs, Quantity.BREAKAWAY, "shim").warnings
    assert "oil between 5 and 60 °C within these fills" in said
    assert any(line.startswith("oil temperature goes along with shim (correlation +0.9") for line in said)
    assert "transducers change once along shim: the trend may be theirs" in said


def test_single_fills_show_values_but_no_interval():
    runs = [run("a1", "a", "a1", [50, 51]), run("b1", "b", "b1", [55, 56])]
    found = compare(runs, Quantity.BREAKAWAY, by="fluid")
    assert found.effects == ()
    assert [g.mean for g in found.groups] == [50.5, 55.5]
    assert any("single fill" in remark for remark in found.remarks)


def test_single_fill_of_the_control_is_not_replaced():
    runs = [run("c", "c", "c1", [50]), *season(np.random.default_rng(6), {"a": 50, "b": 52}, fills=2)]
    assert compare(runs, Quantity.BREAKAWAY, by="fluid", control="c").effects == ()


def test_equivalence_and_bootstrap():
    rng = np.random.default_rng(7)
    found = compare(season(rng, {"a": 50, "b": 50}, fills=10), Quantity.BREAKAWAY, by="fluid", margin=3.0)
    assert found.equivalences["b"].equivalent
    assert found.bootstrap["b"].low < found.bootstrap["b"].high


def test_recordings_without_fill_are_counted_and_said():
    runs = [run(f"{g}{i}", g, "", [50 + i]) for g in ("a", "b") for i in range(3)]
    found = compare(runs, Quantity.BREAKAWAY, by="fluid")
    assert [len(g.units) for g in found.groups] == [3, 3]
    assert any("6 recordings without a tag 'fill'" in remark for remark in found.remarks)


def test_exclusions_are_counted():
    runs = season(np.random.default_rng(8), {"a": 50, "b": 52}, fills=2)
    runs[0] = replace(runs[0], excluded=("a-0-0.csv, pull at 12.3 s: ramp too fast",))
    runs.append(run("no-fluid", "", "x", [50]))
    runs.append(run("nothing", "a", "a9", []))
    found = compare(runs, Quantity.BREAKAWAY, by="fluid")
    assert found.excluded == ("a-0-0.csv, pull at 12.3 s: ramp too fast",)
    assert any("no-fluid" in r for r in found.remarks)
    assert any("nothing" in r and "no breakaway" in r for r in found.remarks)


@pytest.mark.parametrize(
    ("changed", "what"),
    [
        ({"test": "bench, case held, neutral"}, "different test kinds"),
        ({"at": "sensor"}, "sensor"),
        ({"temperature_c": 70.0}, "two different oils"),
    ],
)
def test_unlike_groups_are_refused(changed, what):
    rng = np.random.default_rng(9)
    runs = [
        replace(r, setting=replace(r.setting, **changed)) if r.tags["fluid"] == "b" else r
        for r in season(rng, {"a": 50, "b": 52})
    ]
    with pytest.raises(InputError, match=what):
        compare(runs, Quantity.BREAKAWAY, by="fluid")
    found = compare(runs, Quantity.BREAKAWAY, by="fluid", anyway="no other data exist")
    assert "no other data exist" in found.remarks[0]


@pytest.mark.parametrize(
    ("changed", "what"),
    [
        ({"temperature_c": 34.0}, "oil between"),
        ({"speed_rad_s": 1.0}, "speed between"),
        ({"dwell_s": 60.0}, "rest"),
        ({"fixture": "hub centre"}, "fixtures"),
        ({"side": "left"}, None),
    ],
)
def test_unlike_settings_warn(changed, what):
    runs = season(np.random.default_rng(10), {"a": 50, "b": 52})
    split = {g: [r for r in runs if r.tags["fluid"] == g] for g in "ab"}
    split["b"] = [replace(r, setting=replace(r.setting, **changed)) for r in split["b"]]
    found = check(split)
    assert found.allowed
    if what is None:  # one side recorded, the other not: nothing differs that is known
        assert found.warnings == ()
    else:
        assert any(what in line for line in found.warnings)


def test_what_was_not_recorded_is_said():
    bare = Run("x", {}, Setting(), {}, 0)
    found = check({"a": [bare], "b": [bare]})
    assert any("oil temperature not recorded in 2 of 2" in line for line in found.unknown)


def test_numbers_of():
    units, _ = units_of([run("a", "x", "f", [50], tags={"shim": 0.3})], Quantity.BREAKAWAY, by="fluid")
    assert numbers_of(units, "shim") == [0.3]
    with pytest.raises(InputError, match="missing"):
        numbers_of(units, "cycles")


@pytest.mark.parametrize("arguments", [{"by": "colour"}, {"by": "fluid", "control": "z"}])
def test_raises(arguments):
    with pytest.raises(InputError):
        compare(season(np.random.default_rng(11), {"a": 50, "b": 52}), Quantity.BREAKAWAY, **arguments)


def test_json_is_plain():
    import json

    runs = season(np.random.default_rng(12), {"a": 50, "b": 52})
    text = json.dumps(compare(runs, Quantity.BREAKAWAY, by="fluid", margin=1.0).to_json(), allow_nan=False)
    assert json.loads(text)["effects"][0]["fills"] == [4, 4]


def test_interval_of_a_group_is_students():
    """Of 50, 51, 53: mean 51.33, s 1.5275, t 4.3027 with two degrees of freedom."""
    runs = [run(f"a{v}", "a", f"a{v}", [v]) for v in (50.0, 51.0, 53.0)]
    runs += [run(f"b{v}", "b", f"b{v}", [v]) for v in (60.0, 61.0)]
    group = compare(runs, Quantity.BREAKAWAY, by="fluid").groups[0]
    half = 4.302653 * 1.527525 / np.sqrt(3)
    assert (group.low, group.high) == pytest.approx((154 / 3 - half, 154 / 3 + half), rel=1e-6)


def test_scatter_is_told_as_soon_as_one_group_has_two_fills():
    single = [run("a", "a", "a1", [50.0]), run("b", "b", "b1", [60.0])]
    assert np.isnan(compare(single, Quantity.BREAKAWAY, by="fluid").between_sd)
    found = compare([*single, run("c", "b", "b2", [61.0])], Quantity.BREAKAWAY, by="fluid")
    assert found.between_sd == pytest.approx(np.sqrt(0.5))


def test_two_fills_each_are_enough_for_sameness():
    runs = [run(f"{g}{i}", g, f"{g}{i}", [50 + i]) for g in ("a", "b") for i in range(2)]
    found = compare(runs, Quantity.BREAKAWAY, by="fluid", margin=3.0)
    assert found.equivalences["b"].difference.value == 0
    assert found.bootstrap == {}
    single = compare(runs[:-1], Quantity.BREAKAWAY, by="fluid", margin=3.0)
    assert single.equivalences == {}
    assert "sameness cannot be shown with single fills" in single.remarks
    assert compare(runs, Quantity.BREAKAWAY, by="fluid").equivalences == {}
    control = compare([runs[0], *runs[2:]], Quantity.BREAKAWAY, by="fluid", margin=3.0)
    assert control.equivalences == {}


def test_all_pairs_or_a_control():
    rng = np.random.default_rng(8)
    runs = season(rng, {"a": 50, "b": 55, "c": 60}, fills=3)
    pairs = compare(runs, Quantity.BREAKAWAY, by="fluid", against="all pairs").effects
    assert [(e.treated, e.control) for e in pairs] == [("b", "a"), ("c", "a"), ("c", "b")]
    found = compare(runs, Quantity.BREAKAWAY, by="fluid", control="b").effects
    assert [(e.treated, e.control) for e in found] == [("a", "b"), ("c", "b")]
    whole = compare(runs, Quantity.BREAKAWAY, by="fluid")
    assert whole.overall_p == pytest.approx(stats.f_oneway(*(g.values for g in whole.groups)).pvalue)


# ---------------------------------------------------------------------- what the remarks say
def fills(fluid, values, **rest):
    return [run(f"{fluid}{i}", fluid, f"{fluid}{i}", [value], **rest) for i, value in enumerate(values)]


@pytest.mark.parametrize(
    ("low", "high", "otherwise"), [(0.0, 9.0, False), (1.0, 9.0, True), (-9.0, -1.0, True), (-9.0, 0.0, False)]
)
def test_a_bootstrap_that_says_otherwise_is_told(monkeypatch, low, high, otherwise):
    """Welch's interval of these holds zero; so does the bootstrap's where zero is one of its ends."""
    monkeypatch.setattr(comparisons, "bootstrap", lambda *_: Interval(0.0, low, high))
    runs = [*fills("A", (50.0, 51.0, 52.0, 53.0, 54.0)), *fills("B", (50.0, 51.5, 52.0, 53.0, 54.0))]
    found = compare(runs, Quantity.BREAKAWAY, by="fluid")
    assert any("bootstrap's interval says otherwise" in remark for remark in found.remarks) is otherwise
    apart = [*runs[:5], *fills("B", (70.0, 71.0, 72.0, 73.0, 74.0))]
    told = compare(apart, Quantity.BREAKAWAY, by="fluid").remarks
    assert any("says otherwise" in remark for remark in told) is not otherwise


def test_the_bootstrap_is_that_against_the_control(monkeypatch):
    """Of all pairs those of two treated groups have none; nor has a group of four fills."""
    monkeypatch.setattr(comparisons, "bootstrap", lambda *_: Interval(0.0, -1.0, 1.0))
    at = {"A": 50.0, "B": 50.2, "C": 80.0}
    runs = [one for name, level in at.items() for one in fills(name, level + np.arange(5.0))]
    found = compare(runs, Quantity.BREAKAWAY, by="fluid", against="all pairs")
    assert sorted(found.bootstrap) == ["B", "C"]
    assert [remark.partition(":")[0] for remark in found.remarks if "says otherwise" in remark] == ["C"]
    few = [*runs[:10], *fills("C", (80.0, 81.0, 82.0, 83.0))]
    assert sorted(compare(few, Quantity.BREAKAWAY, by="fluid").bootstrap) == ["B"]
    assert compare([*runs[:4], *runs[5:]], Quantity.BREAKAWAY, by="fluid").bootstrap == {}


def test_a_single_fill_is_shown_and_not_compared():
    runs = [*fills("A", (50.0, 51.0, 52.0)), *fills("B", (60.0,)), *fills("C", (70.0, 71.0))]
    found = compare(runs, Quantity.BREAKAWAY, by="fluid")
    assert [effect.treated for effect in found.effects] == ["C"]
    assert found.remarks[0].startswith("B: a single fill")
    alone = compare(runs, Quantity.BREAKAWAY, by="fluid", control="B")
    assert alone.effects == ()  # the control is single
    pairs = compare(runs, Quantity.BREAKAWAY, by="fluid", control="B", against="all pairs")
    assert [(effect.treated, effect.control) for effect in pairs.effects] == [("C", "A")]
    assert math.isnan(found.within_sd)
    assert not math.isnan(found.overall_p)
    assert math.isnan(compare(runs[:4], Quantity.BREAKAWAY, by="fluid").overall_p)


def test_a_reason_is_told_before_anything_else():
    runs = [*fills("A", (50.0, 51.0)), *fills("B", (60.0,), setting={"test": "bench, case held"})]
    said = compare(runs, Quantity.BREAKAWAY, by="fluid", anyway="no other").remarks
    assert said[0].startswith("compared although different test kinds")
    assert "reason given: no other" in said[0]
    assert said[1].startswith("B: a single fill")
    with pytest.raises(NotComparableError):
        compare(runs, Quantity.BREAKAWAY, by="fluid", anyway="  ")


def test_an_interval_of_three_fills_by_hand():
    """50, 51 and 52: mean 51, s = 1, t of 2 is 4.3027."""
    group = compare([*fills("A", (50.0, 51.0, 52.0)), *fills("B", (60.0,))], Quantity.BREAKAWAY, by="fluid").groups[0]
    assert (group.mean, group.sd) == (51.0, 1.0)
    assert (group.low, group.high) == (
        pytest.approx(51 - 4.3027 / 3**0.5, abs=1e-4),
        pytest.approx(51 + 4.3027 / 3**0.5, abs=1e-4),
    )
