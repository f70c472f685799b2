"""What is written down about a test: every key survives a file, none is written unfilled, older files still read."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any, Literal, get_args, get_origin, get_type_hints

import msgspec
import pytest

from logger.edges.toml_file import format_toml, parse_toml
from logger.errors import DescriptionError
from logger.header import Axle, Conditions, Header, JobFacts, Photo, RecordingSource, Sidecar, Test, TransducerFacts

TABLES = {"job": JobFacts, "axle": Axle, "test": Test, "conditions": Conditions, "transducer": TransducerFacts}


def _value(kind: Any) -> Any:
    """Give some value that a key of this type may hold."""
    if get_origin(kind) is dict:
        return {"fill": _value(get_args(kind)[1])}
    plain = next((option for option in get_args(kind) if option is not type(None)), kind)
    if get_origin(plain) is Literal:
        return get_args(plain)[0]
    return {str: "ä, “b” = 1", float: 1.5, bool: False, date: date(2026, 5, 16)}.get(plain, plain)


@pytest.mark.parametrize("table", TABLES)
@pytest.mark.parametrize("record", [Header, Sidecar])
def test_every_key_survives_a_file(table, record):
    keys = {name: _value(kind) for name, kind in get_type_hints(TABLES[table]).items()}
    whole = record(**{table: TABLES[table](**keys)})
    assert parse_toml(format_toml(whole), record, "x") == whole


@pytest.mark.parametrize("record", [Header, Sidecar])
def test_photos_and_baseline_survive_a_file(record):
    whole = record(
        photos=(Photo(file="a.jpg", sha256="ab" * 32, caption="the tag"), Photo(file="b.jpg", sha256="cd" * 32)),
        both_free=RecordingSource(file="drag.csv", sha256="ef" * 32),
    )
    text = format_toml(whole)
    assert text.count("[[photos]]") == 2
    assert parse_toml(text, record, "x") == whole


def test_what_is_not_known_is_not_written():
    assert format_toml(Header()) == ""
    assert format_toml(Header(job=JobFacts(odometer="53,214 miles"))).strip() == '[job]\nodometer = "53,214 miles"'


def test_an_older_header_still_reads():
    old = '[job]\nnumber = "7"\n\n[test]\nplace = "car"\nheld = "other side"\n\n[conditions]\nbrakes_free = true\n'
    header = parse_toml(old, Header, "x")
    assert header.photos == ()
    assert header.both_free is None
    assert header.job.odometer == ""


def test_faults_name_the_photo():
    with pytest.raises(DescriptionError, match=r"photos\[1\]\.sha256.*missing"):
        parse_toml('[[photos]]\nfile = "a.jpg"\n', Sidecar, "x")
    with pytest.raises(DescriptionError, match=r"parking_brake.*'on', 'off'"):
        parse_toml('[conditions]\nparking_brake = "half"\n', Sidecar, "x")


def test_the_example_in_the_readme_reads_and_names_every_key_of_the_sheet():
    text = (Path(__file__).parents[2] / "README.md").read_text("utf-8")
    example = text.split("```toml\n")[1].split("```")[0]
    sidecar = parse_toml(example, Sidecar, "README.md")
    assert sidecar.photos[0].caption == "the axle's tag"
    assert sidecar.both_free is not None
    elsewhere = {"axle", "tags", "purpose", "direction", "start_angle_deg"}  # of the trace, or said by another key
    for name in ("job", "test", "conditions"):
        record = getattr(sidecar, name)
        unsaid = {
            field.name for field in msgspec.structs.fields(record) if getattr(record, field.name) in ("", None, {})
        }
        assert unsaid <= elsewhere
