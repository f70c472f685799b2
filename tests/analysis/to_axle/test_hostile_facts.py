"""Whatever numbers a sidecar holds, a recording is read to finite figures or refused in words: never a traceback."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from datetime import UTC, datetime

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from analysis.pipeline import Asked, reading_of
from analysis.verdict.recorded import to_json
from logger import header
from logger.doors.lever_limit import limit_in_words
from logger.errors import HeldwheelError
from logger.recordings.files import read_trace
from tests.analysis.simulated import run_of, write_trace

ANY = st.one_of(
    st.none(),
    st.floats(allow_nan=True, allow_infinity=True),
    st.sampled_from([0.0, -1.0, 1e-300, 1e300, 0.5, 1.0, 30.0, 114.3, 450.0, math.nan, math.inf]),
)
LEVERS = st.builds(
    header.Lever,
    fixture=st.sampled_from(
        ["one stud", "cross-bar", "hub centre", "couple", "force at radius", "cord", "dead weight", "held side"]
    ),
    studs=st.one_of(st.none(), st.integers(-5, 10**9)),
    chord_apart=st.one_of(st.none(), st.integers(-5, 10**9)),
    **{
        name: ANY for name in header.Lever.__struct_fields__ if name.endswith(("_mm", "_mm_u", "_deg", "_deg_u", "_kg"))
    },
)
LIMITS = st.builds(
    header.Limit,
    quantity=st.sampled_from(["breakaway", "rotating mean", "rotating maximum"]),
    kind=st.sampled_from(["min", "max", "band", "ratio min"]),
    unit=st.sampled_from(["N·m", "lbf·ft", "", "stone", "1"]),
    source=st.sampled_from(["", "manual"]),
    lower=ANY,
    upper=ANY,
)
NUMBERS = (
    "capacity_nm",
    "resolution_nm",
    "accuracy_percent_of_reading",
    "accuracy_percent_of_full_scale",
    "gain",
    "gain_u",
    "filter_delay_s",
    "filter_delay_s_u",
)
FACTS = st.builds(header.TransducerFacts, **dict.fromkeys(NUMBERS, ANY))
ZEROS = st.builds(
    header.Zero, value_nm=ANY, value_nm_u=ANY, after_nm=ANY, how=st.sampled_from(["lever off", "unknown"])
)
CORRECTIONS = st.builds(
    header.Correction,
    at=st.just(datetime(2026, 5, 3, tzinfo=UTC)),
    reason=st.just("seen"),
    exclude=st.booleans(),
    **dict.fromkeys(("pull_start_s", "start_s", "end_s", "breakaway_s", "rotating_start_s", "rotating_end_s"), ANY),
)


@pytest.fixture(scope="module")
def trace(tmp_path_factory):
    """One pull."""
    run = run_of(one_stud=False, seed=2)
    first = run.time_s < run.truth[0].end_s + 2.0
    run = replace(run, time_s=run.time_s[first], torque_nm=run.torque_nm[first])
    return read_trace(write_trace(tmp_path_factory.mktemp("hostile") / "a.csv", run))


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=400)
@given(
    lever=st.one_of(st.none(), LEVERS),
    limit=st.one_of(st.none(), LIMITS),
    facts=FACTS,
    zero=st.one_of(st.none(), ZEROS),
    corrections=st.lists(CORRECTIONS, max_size=3),
)
def test_any_facts(trace, lever, limit, facts, zero, corrections):
    _read(trace, lever, limit, facts, zero, tuple(corrections))


GOOD_FACTS = header.TransducerFacts(capacity_nm=200.0, accuracy_percent_of_reading=0.5)
GOOD_LEVER = header.Lever(
    fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=0, weight_kg=2, centroid_mm=200
)
GOOD_LIMIT = header.Limit(quantity="breakaway", kind="min", unit="N·m", lower=30.0, source="manual")


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=400)
@given(zero=ZEROS, start_s=ANY, end_s=ANY, breakaway_s=ANY)
def test_any_zero_and_correction_on_a_good_test(trace, zero, start_s, end_s, breakaway_s):
    """With everything else in order the figures are judged: none may be lost on the way."""
    correction = header.Correction(
        at=datetime(2026, 5, 3, tzinfo=UTC),
        reason="seen",
        pull_start_s=3.5,
        rotating_start_s=start_s,
        rotating_end_s=end_s,
        breakaway_s=breakaway_s,
    )
    _read(trace, GOOD_LEVER, GOOD_LIMIT, GOOD_FACTS, zero, (correction,))


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=40)
@given(lever=LEVERS)
def test_any_lever_on_a_good_test(trace, lever):
    _read(trace, lever, GOOD_LIMIT, GOOD_FACTS, None, ())


def _read(trace, lever, limit, facts, zero, corrections):
    facts_of = msgspec.structs.replace(trace.header, lever=lever, limit=limit, transducer=facts, zero=zero)
    given_trace = replace(trace, header=facts_of, sidecar=header.Sidecar(corrections=corrections))
    try:
        reading = reading_of(given_trace, Asked())
    except HeldwheelError:
        return
    json.dumps(to_json([reading], budgets=True), allow_nan=False)


@given(
    st.one_of(
        st.text(max_size=300),
        st.from_regex(r"(breakaway|ratio|rotating mean) ?(>=|<=|) ?[0-9.,]{0,9}(\.\.|to)?[0-9., ]{0,9}(N·m|lbf)?"),
    )
)
def test_any_words_for_a_limit(text):
    try:
        limit = limit_in_words(text, source="manual")
    except HeldwheelError:
        return
    assert limit.lower is not None or limit.upper is not None
