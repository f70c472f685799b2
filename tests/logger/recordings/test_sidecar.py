"""What stands beside a recording: written over what stands there, laid over its header."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from logger.errors import InputError
from logger.header import Axle, Correction, Header, JobFacts, Lever, Sidecar, Table, Zero
from logger.recordings.sidecar import (
    add_correction,
    change_sidecar,
    keep_table,
    merged,
    read_sidecar,
    revision_of,
    sidecar_path,
)

DAY = datetime(2026, 5, 14, tzinfo=UTC)
LATER = datetime(2026, 5, 15, tzinfo=UTC)


def test_a_change_is_made_to_what_stands_there(tmp_path: Path):
    trace = tmp_path / "a.csv"
    assert read_sidecar(trace) is None
    change_sidecar(trace, lambda found: Sidecar(tags={**found.tags, "a": "1"}))
    change_sidecar(trace, lambda found: Sidecar(tags={**found.tags, "b": "2"}))
    assert read_sidecar(trace) == Sidecar(tags={"a": "1", "b": "2"})
    with pytest.raises(InputError, match="needs a reason"):
        add_correction(trace, Correction(at=DAY, reason="  "))
    assert add_correction(trace, Correction(at=DAY, reason="slipped")).corrections[0].reason == "slipped"


def test_how_a_table_is_read_is_kept_where_it_changed(tmp_path: Path):
    trace = tmp_path / "a.csv"
    assert keep_table(trace, Table()) is None
    assert not sidecar_path(trace).exists()
    assert keep_table(trace, Table(time="t")) == sidecar_path(trace)
    assert keep_table(trace, Table(time="t")) is None
    assert keep_table(trace, Table(torque="m")) == sidecar_path(trace)
    assert read_sidecar(trace) == Sidecar(table=Table(time="t", torque="m"))


def test_the_start_is_the_recordings_own_where_it_has_one():
    assert merged(Header(started=DAY), Sidecar(started=LATER)).started == DAY
    assert merged(Header(started=DAY), Sidecar()).started == DAY
    assert merged(Header(), Sidecar(started=LATER)).started == LATER
    assert merged(Header(), Sidecar()).started is None


def test_key_by_key_but_a_lever_whole():
    lever = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3)
    header = Header(job=JobFacts(customer="a", number="1"), axle=Axle(ratio=3.9), lever=lever)
    other = Lever(fixture="hub centre")
    over = merged(header, Sidecar(job=JobFacts(number="2"), axle=Axle(tag="7"), lever=other, zero=Zero(value_nm=0.1)))
    assert over.job == JobFacts(customer="a", number="2")
    assert over.axle == Axle(ratio=3.9, tag="7")
    assert (over.lever, over.zero.value_nm) == (other, 0.1)
    assert merged(Header(), Sidecar(lever=other)).lever == other


def test_decisions_after_the_signature_are_revisions():
    """Two at the same moment are one; one at the very moment of signing is part of what was signed."""
    made = tuple(Correction(at=at, reason="r") for at in (DAY, LATER, LATER))
    assert revision_of(Sidecar(corrections=made)) == 1
    assert revision_of(Sidecar(signed=DAY, corrections=made)) == 2
    assert revision_of(Sidecar(signed=LATER, corrections=made)) == 1
