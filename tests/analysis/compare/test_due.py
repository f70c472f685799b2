"""When an axle is to be tested again, and the calendar file of it."""

from __future__ import annotations

import json
import re
import shutil
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.__main__ import COMMANDS
from analysis.compare.due import EVERY, USED, Due, Urgency, amounts, calendar, due, due_of_all, schedule_words
from logger.edges.door import run_door
from logger.errors import InputError
from logger.recordings.axles import AxleFile, Build, Retest, Use, read_axle

SEASON = Path(__file__).parents[3] / "recordings"
NOW = datetime(2026, 6, 1, 12, tzinfo=UTC)


def at(month: int, day: int) -> datetime:
    return datetime(2026, month, day, 10, tzinfo=UTC)


def one(axle: AxleFile, tests: list[datetime], today: date = date(2026, 6, 1)) -> Due:
    found = due(axle, tests, today)
    assert len(found) == 1
    return found[0]


def test_without_a_schedule_nothing_is_due():
    assert due(AxleFile(tag="x", builds=(Build(built=at(1, 1)),)), [], date(2026, 6, 1)) == []


@pytest.mark.parametrize(
    ("today", "urgency"),
    [
        (date(2026, 5, 23), Urgency.LATER),
        (date(2026, 5, 24), Urgency.SOON),
        (date(2026, 5, 30), Urgency.SOON),
        (date(2026, 5, 31), Urgency.DUE),
        (date(2027, 1, 1), Urgency.DUE),
    ],
)
def test_weeks_count_from_the_last_test(today: date, urgency: Urgency):
    axle = AxleFile(tag="x", retest=Retest(every_weeks=4))
    found = one(axle, [at(5, 3), at(1, 1)], today)
    assert (found.urgency, found.on) == (urgency, date(2026, 5, 31))


@pytest.mark.parametrize(("now", "urgency"), [(1400, "later"), (1450, "soon"), (1500, "due"), (1900, "due")])
def test_kilometres_are_differences_of_the_odometer(now: float, urgency: str):
    uses = (Use(day=date(2026, 5, 3), km=1000), Use(day=date(2026, 5, 20), km=now))
    found = one(AxleFile(tag="x", retest=Retest(every_km=500), uses=uses), [at(5, 3)])
    assert found.urgency == urgency


def test_without_an_odometer_before_the_test_it_is_not_known():
    axle = AxleFile(tag="x", retest=Retest(every_km=500), uses=(Use(day=date(2026, 5, 20), km=1400),))
    found = one(axle, [at(5, 3)])
    assert found.urgency is Urgency.UNKNOWN
    assert "no odometer reading" in found.text


def test_events_count_after_the_day_of_the_test():
    uses = tuple(Use(day=date(2026, 5, day), events=1) for day in (1, 3, 9, 16))
    axle = AxleFile(tag="x", retest=Retest(every_events=2), uses=uses)
    assert one(axle, [at(5, 3)]).urgency is Urgency.DUE
    assert one(axle, [at(5, 9)]).urgency is Urgency.LATER


def test_after_a_build_the_figure_eights_come_first():
    built = AxleFile(tag="x", builds=(Build(built=at(5, 10)),), retest=Retest(every_weeks=4, figure_eights=10))
    found = one(built, [at(5, 3)])
    assert found.urgency is Urgency.SOON
    assert "10 of 10 figure-eights" in found.text
    driven = AxleFile(
        tag="x", builds=built.builds, retest=built.retest, uses=(Use(day=date(2026, 5, 11), figure_eights=10),)
    )
    assert one(driven, [at(5, 3)]).urgency is Urgency.DUE
    use = Use(day=date(2026, 5, 10), figure_eights=4)
    at_once = AxleFile(tag="x", builds=built.builds, retest=built.retest, uses=(use,))
    assert "first 6 of 10" in one(at_once, [at(5, 3)]).text  # those of the day of the build count
    assert one(driven, [at(5, 3), at(5, 12)]).text.startswith("every 4 weeks")


def test_a_part_of_a_week_counts_by_days():
    axle = AxleFile(tag="x", retest=Retest(every_weeks=1.5))
    assert one(axle, [at(5, 3)]).on == date(2026, 5, 13)  # 10.5 days, the even number of the two nearest


@pytest.mark.parametrize(("events", "urgency"), [(8, "later"), (9, "soon"), (10, "due")])
def test_nine_tenths_of_the_events_are_soon(events, urgency):
    axle = AxleFile(tag="x", retest=Retest(every_events=10), uses=(Use(day=date(2026, 5, 4), events=events),))
    assert one(axle, [at(5, 3)]).urgency == urgency


def test_the_last_odometer_reading_up_to_the_test_counts():
    days = ((1, 500), (3, 900), (4, 950), (20, 1400))
    uses = tuple(Use(day=date(2026, 5, day), km=km) for day, km in reversed(days))
    axle = AxleFile(tag="x", retest=Retest(every_km=1000), uses=(*uses, Use(day=date(2026, 5, 30), events=1)))
    assert "every 1000 km: 500 since" in one(axle, [at(5, 3)]).text


def test_a_test_at_the_time_of_the_build_is_one_after_it():
    axle = AxleFile(tag="x", builds=(Build(built=at(5, 3)),), retest=Retest(every_weeks=4))
    assert one(axle, [at(5, 3)]).text.startswith("every 4 weeks")
    assert one(axle, []).text == "not tested since its build of 2026-05-03"
    never = AxleFile(tag="y", retest=Retest(every_weeks=4))
    found = due_of_all([axle, never], {"x": [at(5, 3)]}, date(2026, 6, 1))
    assert [(line.tag, line.urgency) for line in found] == [("x", Urgency.DUE), ("y", Urgency.DUE)]
    assert "never tested" in found[1].text


def test_the_most_urgent_comes_first():
    plan = Retest(every_weeks=40, every_events=1, every_km=100)
    axle = AxleFile(tag="x", retest=plan, uses=(Use(day=date(2026, 5, 4), events=1),))
    said = [line.urgency for line in due(axle, [at(5, 3)], date(2026, 6, 1))]
    assert said == [Urgency.DUE, Urgency.LATER, Urgency.UNKNOWN]


@pytest.mark.parametrize(
    ("text", "keys", "read"),
    [
        ("1000000 km", USED, {"km": 1e6}),
        ("1000001 km", USED, None),
        ("10000 events", USED, {"events": 10_000}),
        ("10001 events", USED, None),
        ("1000000 km, 0.5 weeks", EVERY, {"every_km": 1e6, "every_weeks": 0.5}),
        ("1000001 km", EVERY, None),
        ("1.5 events", USED, None),
        ("1.5 km; 2 figure-eights", USED, {"km": 1.5, "figure_eights": 2}),
        ("-1 km", USED, None),
        ("km", USED, None),
        (" ", USED, None),
    ],
)
def test_amounts_as_typed(text, keys, read):
    if read is None:
        with pytest.raises(InputError):
            amounts(text, keys)
        return
    assert amounts(text, keys) == read
    assert all(
        isinstance(value, int) for key, value in amounts(text, keys).items() if key in ("events", "figure_eights")
    )


def test_a_schedule_in_words():
    assert schedule_words(None) == ""
    assert (
        schedule_words(Retest(every_km=500, every_events=2, figure_eights=10)) == "500 km, 2 events, 10 figure-eights"
    )


# ---------------------------------------------------------------------- the calendar, read by the grammar of RFC 5545
NAME = re.compile(r"([A-Z-]+)((?:;[A-Z-]+=[^;:,\"]+)*):(.*)", re.DOTALL)


def parsed(text: str) -> list[tuple[str, str, str]]:
    """Read content lines by RFC 5545, 3.1: lines end with CR LF, folded lines begin with a blank."""
    assert text.endswith("\r\n")
    raw = text.removesuffix("\r\n").split("\r\n")
    assert all(len(line.encode()) <= 75 for line in raw)
    assert not any("\n" in line or "\r" in line for line in raw)
    lines: list[str] = []
    for line in raw:
        if line.startswith(" "):
            lines[-1] += line[1:]
        else:
            lines.append(line)
    found = []
    for line in lines:
        match = NAME.fullmatch(line)
        assert match, line
        found.append((match[1], match[2], match[3]))
    return found


def unescaped(text: str) -> str:
    return re.sub(r"\\(.)", lambda m: "\n" if m[1] in "nN" else m[1], text)


@given(st.text(min_size=1, max_size=200), st.text(max_size=300))
def test_the_calendar_keeps_what_is_said_in_lines_of_75_octets(tag: str, text: str):
    found = parsed(calendar([Due(tag, Urgency.DUE, text, date(2026, 5, 31))], NOW))
    names = [name for name, _, _ in found]
    assert names[:3] == ["BEGIN", "VERSION", "PRODID"]
    assert names[-1] == "END"
    assert {"UID", "DTSTAMP", "DTSTART"} <= set(names)  # 3.6.1: required in an event
    values = {name: (parameter, value) for name, parameter, value in found}
    assert values["DTSTART"] == (";VALUE=DATE", "20260531")
    assert values["DTEND"] == (";VALUE=DATE", "20260601")
    assert values["DTSTAMP"] == ("", "20260601T120000Z")
    wanted = "".join(c if c.isprintable() or c == "\n" else " " for c in text)
    assert unescaped(values["DESCRIPTION"][1]) == wanted


def test_a_day_that_is_the_same_keeps_its_uid():
    line = Due("x", Urgency.LATER, "every 4 weeks", date(2026, 5, 31))
    uid = [v for n, _, v in parsed(calendar([line], NOW)) if n == "UID"]
    again = [v for n, _, v in parsed(calendar([line], at(6, 9))) if n == "UID"]
    other = [v for n, _, v in parsed(calendar([Due("y", line.urgency, line.text, line.on)], NOW)) if n == "UID"]
    assert uid == again != other
    assert not [n for n, _, _ in parsed(calendar([Due("x", Urgency.DUE, "every 500 km")], NOW)) if n == "UID"]


# ---------------------------------------------------------------------- the command
def door(*words: str) -> int:
    return run_door("heldwheel-read", "", COMMANDS, "analysis.doors", words)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shutil.copy(SEASON / "05-event-1.csv", tmp_path)  # of 2026-06-27, stamped 43/11
    return tmp_path


def test_a_schedule_is_set_noted_and_asked_by_command(folder: Path, capsys):
    every = ("--every", "500 km, 4 weeks, 2 events, 10 figure-eights")
    assert door("due", str(folder), "--tag", "43/11", *every, "--today", "2026-06-28") == 0
    assert "every 4 weeks: last tested 2026-06-27, again on 2026-07-25" in capsys.readouterr().out
    for use in ("2026-06-26 1000 km", "2026-07-04 1300 km, 1 event", "2026-07-11 1600 km, 1 event"):
        door("due", str(folder), "--tag", "43/11", "--used", use)
    capsys.readouterr()
    assert door("due", str(folder), "--today", "2026-07-12", "--json", "--out", str(folder / "a.ics")) == 1
    said = {row["text"].partition(":")[0]: row["urgency"] for row in json.loads(capsys.readouterr().out)["due"]}
    assert said == {"every 500 km": "due", "every 2 events": "due", "every 4 weeks": "later"}
    assert ("DTSTART", ";VALUE=DATE", "20260725") in parsed((folder / "a.ics").read_bytes().decode())
    assert door("due", str(folder), "--tag", "43/11", "--every", "never") == 0
    kept = read_axle(folder, "43/11")
    assert kept is not None
    assert kept.retest is None
    assert len(kept.uses) == 3


@pytest.mark.parametrize(
    "words",
    [
        ("--every", "4 weeks"),
        ("--tag", "x", "--every", "4 moons"),
        ("--tag", "x", "--every", "0 km"),
        ("--tag", "x", "--every", "1.5 events"),
        ("--tag", "x", "--used", "yesterday 5 km"),
        ("--tag", "x", "--used", "2026-06-26"),
    ],
)
def test_what_is_not_understood_is_refused_and_nothing_is_written(folder: Path, words: tuple[str, ...], capsys):
    assert door("due", str(folder), *words) == 2
    assert capsys.readouterr().err
    assert not list(folder.glob("*.axle.toml"))


def test_a_calendar_says_the_words():
    made = calendar([Due("43/11", Urgency.SOON, "every 4 weeks; again\non 2026-06-01, then", date(2026, 6, 1))], NOW)
    assert "DESCRIPTION:every 4 weeks\\; again\\non 2026-06-01\\, then\r\n" in made
    assert "DTSTART;VALUE=DATE:20260601\r\nDTEND;VALUE=DATE:20260602\r\n" in made


def test_a_line_of_75_octets_is_whole_and_one_of_76_is_folded():
    for length, folds in ((75, 0), (76, 1), (149, 1), (150, 2)):
        line = Due("x", Urgency.DUE, "a" * (length - len("DESCRIPTION:")), date(2026, 6, 1))
        assert calendar([line], NOW).count("\r\n ") == folds
