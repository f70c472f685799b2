"""What forbids a comparison, what warns, and from where on."""

from __future__ import annotations

import pytest

from analysis.compare.comparability import along, check, mixed, ranges
from analysis.compare.runs import Run, Setting


def run(**setting: object) -> Run:
    return Run("r", {}, Setting(**setting), {}, 1)


def groups_of(key: str, *means: float):
    """Give groups of two recordings each, one less and one more than their mean."""
    return {str(i): [run(**{key: mean - 1}), run(**{key: mean + 1})] for i, mean in enumerate(means)}


@pytest.mark.parametrize(
    ("apart", "refused", "warned"), [(10.0, 0, 0), (10.5, 0, 1), (30.0, 0, 1), (30.5, 1, 0), (32.0, 1, 0)]
)
def test_oil_may_differ_by_ten_degrees_and_never_by_more_than_thirty(apart, refused, warned):
    """Means of groups, not single recordings."""
    found = check(groups_of("temperature_c", 20.0, 20.0 + apart / 2, 20.0 + apart))
    told = f"oil between 20 and {20 + apart:g} °C on average"
    assert [told in line for line in found.refusals] == [True] * refused
    assert [told in line for line in found.warnings] == [True] * warned
    assert found.allowed is not bool(refused)


@pytest.mark.parametrize(
    ("key", "low", "high", "said"),
    [
        ("speed_rad_s", 1.0, 1.5, ""),
        ("speed_rad_s", 1.0, 1.52, "speed between 1 and 1.52 rad/s on average"),
        ("speed_rad_s", 2.0, 2.8, ""),
        ("dwell_s", 10.0, 20.0, ""),
        ("dwell_s", 10.0, 20.5, "rest before the pull between 10 and 20.5 s on average"),
        ("dwell_s", 0.0, 1.0, "rest before the pull between 0 and 1 s on average"),
    ],
)
def test_speed_by_half_and_rest_by_its_double(key, low, high, said):
    found = check({"a": [run(**{key: low})], "b": [run(**{key: high})], "c": [run()]})
    assert [said in line for line in found.warnings] == ([True] if said else [])
    assert found.allowed
    assert [line.removesuffix(" on average") in said for line in ranges([run(**{key: high}), run(**{key: low})])] == (
        [True] if said else []
    )


def test_one_group_that_is_known_shows_no_difference():
    assert check({"a": [run(temperature_c=10.0)], "b": [run()]}).warnings == ()
    within = check({"a": [run(temperature_c=10.0), run(temperature_c=20.5)], "b": [run()]})
    assert within.warnings == ("oil between 10 and 20.5 °C within a",)
    assert ranges([run(temperature_c=10.0), run(temperature_c=20.0), run()]) == []
    assert ranges([run()]) == []


def test_other_tests_and_places_refuse_and_other_people_warn():
    a, b = run(test="car", operator="A", transducer="T1"), run(test="bench", at="sensor", operator="B", transducer="T1")
    found = check({"a": [a], "b": [b]})
    assert found.refusals == (
        "different test kinds: bench; car",
        "different places of the torque (axle, sensor): axle; sensor",
    )
    assert found.warnings == ("different operators: A; B; a difference between groups may be theirs as well",)
    assert check({"a": [a], "b": [b]}, known=("operator",)).warnings == ()
    both = check({"a": [a, run(test="car", operator="B", transducer="T1")], "b": [a]})
    assert both.warnings == ("different operators: A; B",)
    assert check({"a": [a, run(test="car", operator="B", transducer="T1")]}).warnings == ("different operators: A; B",)


def test_what_was_not_recorded_is_counted():
    found = check({"a": [run(dwell_s=1.0), run()], "b": [run(dwell_s=1.0, speed_rad_s=1.0)]})
    assert "rest not recorded in 1 of 3 recordings" in found.unknown
    assert "speed not recorded in 2 of 3 recordings" in found.unknown
    assert "oil temperature not recorded in 3 of 3 recordings" in found.unknown
    whole = run(test="t", temperature_c=1.0, speed_rad_s=1.0, dwell_s=1.0, fixture="f", transducer="t", operator="o")
    assert check({"a": [whole]}).unknown == ()


@pytest.mark.parametrize(("builds", "said"), [(4, "0, 1, 2, 3"), (5, "0, 1, 2, 3 …")])
def test_four_builds_are_listed(builds, said):
    runs = [Run("r", {"pack_build": i}, Setting(), {}, 1) for i in range(builds)]
    assert mixed({"B": runs}, known=()) == (f"different pack builds within B: {said}",)


@pytest.mark.parametrize(
    ("oil", "told"),
    [
        ((20.0, 21.0, 22.0, 23.0), "correlation +1.00"),
        ((23.0, 22.0, 21.0, 20.0), "correlation -1.00"),
        ((20.0, 20.0, 21.0, 21.0), "correlation +0.89"),
        ((20.0, 20.0, 20.0, 21.0), "correlation +0.77"),
        ((20.0, 22.0, 21.0, 22.5), "correlation +0.76"),  # 3.25/√(5 · 3.6875)
        ((20.0, 22.0, 21.0, 22.0), ""),  # 2.5/√(5 · 2.75) = 0.67
        ((20.0, 20.0, 20.0, 20.0), ""),
        ((20.0, 21.0, 22.0), ""),  # three agree so by chance
        ((20.0, 21.0, 22.0, None), ""),
    ],
)
def test_oil_that_goes_along_with_the_number(oil, told):
    points = [(float(i), run(temperature_c=value)) for i, value in enumerate(oil)]
    said = along(points, "cycles")
    assert [told in line for line in said] == ([True] if told else [])
    assert along(points, "temperature") == []


@pytest.mark.parametrize(
    ("people", "told"), [("AABB", True), ("ABBB", True), ("ABAB", False), ("AAAA", False), ("ABCC", True)]
)
def test_people_that_change_once_along_the_number(people, told):
    """In order of the number, in whichever order they are given."""
    points = [(float(i), run(operator=who)) for i, who in enumerate(people)]
    assert along(points[2:] + points[:2], "cycles") == (
        ["operators change once along cycles: the trend may be theirs"] if told else []
    )
