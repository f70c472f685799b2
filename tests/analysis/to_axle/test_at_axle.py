"""From the sensor to the axle: zero and hand-off, the lever's weight, the budget against Monte Carlo and statics."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.to_axle.at_axle import (
    AT_HANDOFF,
    CALIBRATION,
    NOT_SENSED,
    PART_OF_TURN,
    SECOND_ORDER,
    SLOWEST_RAD_S,
    WAVES,
    Instrument,
    Level,
    TracedTorque,
    at_axle,
    instrument_from,
    level_from,
    trials_model,
    waves_left,
)
from analysis.to_axle.fixtures import fixture_from
from analysis.to_axle.lever import STANDARD_GRAVITY
from analysis.uncertainty.budget import Input
from analysis.uncertainty.montecarlo import disagreement, monte_carlo
from analysis.verdict.limits import State, bounds_from, decide
from logger.errors import InputError
from logger.header import Lever, Limit, TransducerFacts, Zero

ONE_STUD = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=0)
PLAIN = Instrument(0.0)
ZERO = Level(0.0, 0.0, True, "true zero")


@pytest.mark.parametrize("direction", [1, -1])
def test_axle_counts_from_the_true_zero(direction):
    """A lever that hung on the sensor with +6 N·m at hand-off: clockwise pulls gain it, the others lose it."""
    reading = TracedTorque("breakaway", 24.0, 0.1, direction, handoff_nm=6.2)
    budget = at_axle(reading, fixture_from(ONE_STUD), PLAIN, Level(0.2, 0.05, True, "lever off"))
    factor = 1 + 57.15 / 450
    assert budget.value == pytest.approx(factor * (24.0 + direction * 6.0))
    assert budget.row("true zero").sensitivity == pytest.approx(-direction * factor)


def test_without_true_zero_the_levers_weight_enters_the_interval():
    lever = Lever(fixture="hub centre", weight_kg=2.5, centroid_mm=250)
    budget = at_axle(TracedTorque("breakaway", 24.0, 0.0, handoff_nm=6.2), fixture_from(lever), PLAIN, Level())
    assert budget.value == pytest.approx(24.0)
    assert budget.u == pytest.approx(2.5 * STANDARD_GRAVITY * 0.25 / math.sqrt(2))
    assert budget.row(AT_HANDOFF).input.note == "no true zero: lever's weight at an unknown angle"


def test_without_true_zero_and_weight_a_lever_is_assumed():
    """2.5 kg per metre with its centre half-way: 2.5 N·m at 450 mm, or all of the hand-off level where that is more."""
    fixture = fixture_from(ONE_STUD)
    for handoff, half in ((0.0, 2.5 * STANDARD_GRAVITY * 0.45**2 / 2), (3.5, 3.5), (-6.0, 6.0)):
        row = at_axle(TracedTorque("breakaway", 24.0, 0.0, handoff_nm=handoff), fixture, PLAIN, Level()).row(AT_HANDOFF)
        assert row.contribution == pytest.approx(fixture.factor * half / math.sqrt(2))
        assert row.input.note == f"no true zero, lever's weight not stated: assumed within ± {half:.2g} N·m"


def test_a_balanced_bar_needs_no_weight():
    budget = at_axle(TracedTorque("breakaway", 24.0, 0.0), fixture_from(Lever(fixture="couple")), PLAIN, Level())
    assert budget.u == 0


def test_a_lever_of_unknown_weight_is_not_sensed_either():
    """With a true zero the part of the weight that the sensor misses on a stud is still unknown: r W (1 - d/L)."""
    row = at_axle(TracedTorque("breakaway", 24.0, 0.0), fixture_from(ONE_STUD), PLAIN, ZERO).row(NOT_SENSED)
    assert row.contribution == pytest.approx(0.05715 * 2.5 * 0.45 * STANDARD_GRAVITY * 0.5 / math.sqrt(2))


@pytest.mark.parametrize("zero", [3.5, 0.0])
def test_weight_at_hand_off_that_nobody_knows_decides_nothing(zero):
    """60 N·m, 3.5 N·m at hand-off, at least 61.5: 63.5 if that is the lever's weight, 60 if it is the zero's.

    With the true zero known each is decided; without it neither is.
    """
    reading = TracedTorque("breakaway", 60.0, 0.3, handoff_nm=3.5, u_method_nm=0.27)
    bounds = bounds_from(Limit(quantity="breakaway", kind="min", unit="N·m", lower=61.5, source="manual"))
    instrument, fixture = Instrument(0.002), fixture_from(Lever(fixture="in-line"))

    def state(level):
        budget = at_axle(reading, fixture, instrument, level)
        return decide(budget.value, budget.u, bounds, dof=budget.dof).state

    assert state(Level()) is State.TOO_CLOSE
    assert state(Level(zero, 0.05, True, "lever off")) is (State.OUTSIDE if zero else State.WITHIN)


def test_waves_are_left_open_by_less_than_two_turns():
    """A mean over any part of a wave lies within the stated half-width of the level, and reaches it."""
    for turned in np.linspace(0.3, 4 * math.pi, 9):
        starts = np.linspace(0, 4 * math.pi, 400)
        off = [WAVES * 2 * (math.cos(s / 2) - math.cos((s + turned) / 2)) / turned for s in starts]
        assert max(off) == pytest.approx(waves_left(turned), rel=1e-3, abs=1e-6)
    assert waves_left(None, 1.0) == pytest.approx(WAVES, rel=0.01)
    assert waves_left(None, 60.0) > 0.3 * WAVES, "without an angle nobody knows where whole turns ended"


@given(
    phi=st.floats(-math.pi, math.pi),
    push=st.floats(20, 200),
    direction=st.sampled_from([1, -1]),
    offset=st.floats(-3, 3),
)
def test_whole_chain_by_statics(phi, push, direction, offset):
    """Hand force and weight as vectors about stud and axle; the sensor has an offset and the lever hung at hand-off."""
    r, length, centroid, weight = 0.05715, 0.45, 0.21, 2.5 * STANDARD_GRAVITY
    along = np.array([math.cos(phi), -math.sin(phi)])
    square = direction * push * np.array([-math.sin(phi), -math.cos(phi)])

    def clockwise(point, force, about):
        arm = point - about
        return -(arm[0] * force[1] - arm[1] * force[0])

    stud, hub = r * along, np.zeros(2)
    hand, middle, down = stud + length * along, stud + centroid * along, np.array([0.0, -weight])
    hung = clockwise(middle, down, stud) + offset  # hands off, lever fitted
    shown = clockwise(hand, square, stud) + clockwise(middle, down, stud) + offset
    true = clockwise(hand, square, hub) + clockwise(middle, down, hub)
    lever = Lever(
        fixture="one stud",
        length_mm=450,
        stud_circle_mm=114.3,
        angle_deg=0,
        weight_kg=2.5,
        centroid_mm=210,
        start_angle_deg=math.degrees(phi),
    )
    reading = TracedTorque("breakaway", direction * (shown - hung), 0.0, direction, hung)
    budget = at_axle(reading, fixture_from(lever), PLAIN, Level(offset, 0.0, True, "lever off"))
    assert budget.value == pytest.approx(direction * true, rel=1e-9, abs=1e-9)


def _weighted(**keys):
    return fixture_from(
        Lever(
            fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=0, weight_kg=2.5, centroid_mm=210, **keys
        )
    )


def test_unseen_weight_over_whole_turns_is_nothing():
    most = _weighted().unsensed_most_nm
    for turn, left in ((0.0, 1.0), (math.pi, 2 / math.pi), (2 * math.pi, 0.0), (4 * math.pi, 0.0)):
        reading = TracedTorque("rotating mean", 24.0, 0.0, turn_rad=turn)
        budget = at_axle(reading, _weighted(), PLAIN, ZERO)
        assert budget.row(NOT_SENSED).contribution == pytest.approx(most * left / math.sqrt(2), abs=1e-12)


def test_unseen_weight_with_known_angle_is_corrected():
    """Lever at 9 o'clock (180°) helps an anticlockwise pull: its unseen part counts for it."""
    fixture = _weighted(start_angle_deg=180)
    r, share, weight = 0.05715, 1 - 210 / 450, 2.5 * STANDARD_GRAVITY
    budget = at_axle(TracedTorque("breakaway", 24.0, 0.0, -1), fixture, PLAIN, ZERO)
    assert budget.value == pytest.approx(fixture.factor * 24.0 + r * weight * share)
    assert budget.row(NOT_SENSED).contribution < fixture.unsensed_most_nm * 0.05


def test_unseen_weight_with_unknown_angle_is_in_the_interval_only():
    budget = at_axle(TracedTorque("breakaway", 24.0, 0.0), _weighted(), PLAIN, ZERO)
    assert budget.value == pytest.approx(_weighted().factor * 24.0)
    assert budget.row(NOT_SENSED).contribution == pytest.approx(_weighted().unsensed_most_nm / math.sqrt(2))


def test_budget_agrees_with_monte_carlo():
    """Everything at once, in line: the angles have no slope there, their second order has its own row."""
    fixture = _weighted(start_angle_deg=30)
    instrument = Instrument(0.005, 0.1, 0.05, 200.0, "stated")
    reading = TracedTorque("breakaway", 30.0, 0.3, -1, handoff_nm=1.5)
    budget = at_axle(reading, fixture, instrument, Level(0.2, 0.05, True, "lever off"))
    inputs, model = trials_model(reading, fixture, budget)
    drawn = monte_carlo(model, inputs, trials=400_000)
    assert budget.value == pytest.approx(drawn.mean, abs=0.05)
    assert budget.u == pytest.approx(drawn.u, rel=0.02)
    assert disagreement(budget, drawn) == ""
    assert budget.row(SECOND_ORDER).contribution > 0


def test_off_the_line_a_wide_angle_is_seen_by_monte_carlo():
    """At 90° with a pull anywhere within 40° the distribution is skewed: the check must not pass in silence."""
    lever = Lever(
        fixture="one stud", length_mm=150, stud_circle_mm=160, angle_deg=90, angle_deg_u=1, pull_angle_deg=35,
        pull_angle_deg_u=20,
    )  # fmt: skip
    fixture = fixture_from(lever)
    reading = TracedTorque("breakaway", 30.0, 0.1)
    budget = at_axle(reading, fixture, PLAIN, ZERO)
    inputs, model = trials_model(reading, fixture, budget)
    assert disagreement(budget, monte_carlo(model, inputs, trials=200_000)) != ""


def test_everything_but_the_trace_is_shared():
    budget = at_axle(TracedTorque("breakaway", 30.0, 0.3), _weighted(), Instrument(0.005, 0.1), Level())
    assert [row.input.name for row in budget.rows if not row.input.shared] == ["trace"]


@pytest.mark.parametrize(
    ("facts", "relative", "full_scale", "note"),
    [
        ({}, 0.04 / 3**0.5, 0.0, "not stated: assumed within ± 4 % of reading"),
        ({"accuracy_percent_of_reading": 1.0}, 0.01 / 1.96, 0.0, "± 1 % of reading"),
        ({"accuracy_percent_of_full_scale": 0.5, "capacity_nm": 200.0}, 0.0, 1.0 / 1.96, "full scale only"),
        ({"accuracy_percent_of_full_scale": 0.5}, 0.04 / 3**0.5, 0.0, "not stated"),
        ({"gain": 1.02}, 0.04 / 3**0.5, 0.0, "not stated"),
        ({"gain": 1.02, "gain_u": 0.002, "accuracy_percent_of_reading": 1.0}, 0.002 / 1.02, 0.0, "gain 1.02"),
        ({"gain": 1.02, "accuracy_percent_of_reading": 1.0}, 0.01 / 1.96, 0.0, "± 1 % of reading"),
    ],
)
def test_certificate_as_standard_uncertainties(facts, relative, full_scale, note):
    found = instrument_from(TransducerFacts(**facts))
    assert found.relative_u == pytest.approx(relative, rel=1e-4)
    assert found.full_scale_u_nm == pytest.approx(full_scale, rel=1e-4)
    assert note in found.note


@pytest.mark.parametrize("zero", [None, Zero(), Zero(value_nm=0.3), Zero(how="lever off")])
def test_no_true_zero(zero):
    assert not level_from(zero).known


def test_true_zero_has_the_gain_divided_out():
    level = level_from(Zero(value_nm=0.51, value_nm_u=0.102, how="lever hanging"), gain=1.02)
    assert (level.zero_nm, level.u_nm, level.known) == (pytest.approx(0.5), pytest.approx(0.1), True)
    assert level.words == "true zero (lever hanging)"
    assert level_from(Zero(value_nm=0.5, how="lever off"), resolution_nm=0.1).u_nm == pytest.approx(0.1 / math.sqrt(12))


def test_zero_taken_again_is_known_to_lie_between():
    level = level_from(Zero(value_nm=0.2, value_nm_u=0.01, after_nm=0.8, how="lever off"))
    assert level.zero_nm == pytest.approx(0.5)
    assert level.u_nm == pytest.approx(math.hypot(0.01, 0.3 / math.sqrt(3)))
    assert level.moved_nm == pytest.approx(0.6)
    assert level.words.endswith("before and after")


@pytest.mark.parametrize("direction", [1, -1])
def test_the_equation_behind_a_budget_by_hand(direction):
    """k c [(trace · part + acceleration + method) + d (full scale + weight + hand-off - zero)] + d unseen + more."""
    fixture = _weighted(start_angle_deg=30)
    reading = TracedTorque(
        "breakaway", 30.0, 0.3, direction, handoff_nm=1.5, acceleration_nm=0.4, u_method_nm=0.2, waves=0.01
    )
    for level in (Level(0.2, 0.05, True, "lever off"), Level()):
        budget = at_axle(reading, fixture, Instrument(0.005, 0.1), level).plus(Input("repeatability", 0.0, 0.5))
        inputs, model = trials_model(reading, fixture, budget)
        x = {i.name: i.value for i in inputs}
        assert model(x) == pytest.approx(budget.value)
        moved = {"trace": 2.0, "acceleration": 0.3, "way of reading": 0.2, "full-scale accuracy": 0.1}
        moved |= {"true zero": -0.4} if level.known else {AT_HANDOFF: 0.6}
        shown = 32.0 * 1.01 + 0.3 + 0.2 + direction * 0.1
        shown += direction * (1.5 - (0.2 - 0.4)) if level.known else direction * 0.6
        x |= {name: x[name] + step for name, step in moved.items()}
        x |= {CALIBRATION: 1.02, PART_OF_TURN: 1.01, NOT_SENSED: 0.7, "repeatability": 0.25}
        assert model(x) == pytest.approx(fixture.factor * 1.02 * shown + direction * 0.7 + 0.25)
        for row in budget.rows:  # to first order the model is the budget
            if row.input.name in fixture.values or row.input.name == SECOND_ORDER:
                continue
            at, h = {i.name: i.value for i in inputs}, 1e-3
            up, down = (model({**at, row.input.name: at[row.input.name] + step}) for step in (h, -h))
            assert row.sensitivity == pytest.approx((up - down) / (2 * h), rel=1e-3, abs=1e-6), row.input.name


@pytest.mark.parametrize("direction", [1, -1])
@pytest.mark.parametrize("turn", [0.0, 1.2])
def test_the_unseen_weight_at_a_known_angle(direction, turn):
    """Its middle lies at start + d · turned; over a turn w of the wheel it averages by sin(w/2)/(w/2); ± 15°."""
    fixture = _weighted(start_angle_deg=30)
    reading = TracedTorque("rotating mean", 24.0, 0.0, direction, turn_rad=turn, since_handoff_rad=0.8)
    row = at_axle(reading, fixture, PLAIN, ZERO).row(NOT_SENSED)
    angle, part = math.radians(30) + direction * 0.8, math.sin(turn / 2) / (turn / 2) if turn else 1.0
    assert row.input.value == pytest.approx(fixture.unsensed_nm(angle) * part)
    spread = max(abs(fixture.unsensed_nm(angle + s * math.radians(15)) - fixture.unsensed_nm(angle)) for s in (-1, 1))
    assert row.input.u == pytest.approx(spread * part / math.sqrt(3))
    budget = at_axle(reading, fixture, PLAIN, ZERO)
    assert budget.value == pytest.approx(fixture.factor * 24.0 + direction * row.input.value)


@pytest.mark.parametrize(
    ("key", "good", "bad"),
    [
        ("gain", 1e-6, 0.9e-6), ("gain", 1e6, 1.05e6), ("capacity_nm", 0.0, -0.1), ("capacity_nm", 1e6, 1.05e6),
        ("resolution_nm", 0.0, -0.1), ("gain_u", 0.0, -0.1), ("accuracy_percent_of_reading", 100.0, 100.1),
        ("accuracy_percent_of_reading", 0.0, -0.1), ("accuracy_percent_of_full_scale", 100.0, 100.1),
    ],
)  # fmt: skip
def test_figures_that_no_transducer_has(key, good, bad):
    instrument_from(TransducerFacts(**{key: good}))
    with pytest.raises(InputError, match=f"transducer.{key} is"):
        instrument_from(TransducerFacts(**{key: bad}))


@pytest.mark.parametrize(("key", "good", "bad"), [("value_nm", -1e6, -1.05e6), ("value_nm_u", 0.0, -0.1)])
def test_figures_that_no_zero_has(key, good, bad):
    zero = {"value_nm": 0.0, "how": "lever off"}
    level_from(Zero(**(zero | {key: good})))
    with pytest.raises(InputError, match=f"zero.{key} is"):
        level_from(Zero(**(zero | {key: bad})))


@pytest.mark.parametrize("turned", [0.0, 0.1, math.pi, 2 * math.pi, 3 * math.pi, 5 * math.pi])
def test_what_waves_leave_open_by_integration(turned):
    """The mean of a wave of 2 % over two turns, centred on its crest, over what was turned."""
    phase = np.linspace(-turned / 2, turned / 2, 20_001) if turned else np.zeros(3)
    assert waves_left(turned) == pytest.approx(0.02 * abs(np.cos(phase / 2).mean()), abs=2e-6)


def test_waves_where_no_angle_is_known():
    """At least as far as the slowest hand turns: beyond half a turn nobody knows where whole turns ended."""
    x = 0.4 * SLOWEST_RAD_S / 4
    assert waves_left(None, 0.4) == pytest.approx(0.02 * math.sin(x) / x)
    seconds = 3 * math.pi / SLOWEST_RAD_S
    assert waves_left(None, seconds) == pytest.approx(0.02 / (3 * math.pi / 4))
    assert waves_left(None, 0.0) == 0.02


@pytest.mark.parametrize("facts", [{}, {"accuracy_percent_of_reading": 1.0}])
def test_step_and_capacity_go_along(facts):
    found = instrument_from(TransducerFacts(resolution_nm=0.5, capacity_nm=200.0, **facts))
    assert (found.resolution_nm, found.capacity_nm) == (0.5, 200.0)
    assert instrument_from(TransducerFacts(**facts)).resolution_nm == 0.0
    assert found.assumed is not bool(facts)
