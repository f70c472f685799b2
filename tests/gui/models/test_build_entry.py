"""The build of an axle as it is filled in: figures at their borders, parts that are put in, moved and taken out."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING

import msgspec
import pytest

from gui.models import build_entry
from gui.models.build_entry import BuildEntry, check_build, draft_of
from gui.models.display import Display
from gui.models.job import JobCard
from logger.header import Axle
from logger.recordings.axles import MOST_PARTS, Build, read_axle

if TYPE_CHECKING:
    from pathlib import Path

BUILT = datetime(2026, 5, 14, 16, 30, 12, tzinfo=UTC).astimezone()


@pytest.fixture
def entry(tmp_path: Path) -> BuildEntry:
    card = JobCard()
    card.put(axle=Axle(tag="A1"))
    made = BuildEntry(card, lambda: tmp_path, Display())
    made.load()
    return made


def typed(**texts: str) -> tuple[Build, dict[str, str]]:
    before = Build(built=BUILT)
    draft = draft_of(before)
    return check_build(replace(draft, texts=draft.texts | texts), before)


def kinds(of: BuildEntry) -> str:
    """Give the parts of the picked side by their thickness in tenths."""
    return " ".join(f"{10 * part.thickness_mm:.0f}" if part.thickness_mm else "-" for part in of.parts)


def filled(of: BuildEntry, *thickness: float) -> BuildEntry:
    for mm in thickness:
        of.add("shim")
        of.pick(of.side, len(of.parts) - 1)
        of.set_part(f"{mm} mm", "")
    return of


@pytest.mark.parametrize(
    ("key", "text", "value"),
    [
        ("spring_n", "0 N", None), ("spring_n", "0.001 N", 0.001), ("spring_n", "1000000 N", 1e6),
        ("spring_n", "1000001 N", None), ("spring_n", "-1 N", None), ("spring_n", "many", None),
        ("oil_l", "0 l", 0.0), ("oil_l", "1.2345678912 l", 1.234567891), ("oil_l", "1200 ml", 1.2),
        ("soak_min", "90 s", 1.5), ("pinion_nm", "2.5", 2.5), ("pinion_nm", "0", 0.0),
        ("face_outer_mm", "0 mm", None), ("face_inner_mm", "0 mm", None), ("face_outer_mm", "10 cm", 100.0),
        ("left_play", "0 mm", 0.0), ("left_play", "100 mm", 100.0), ("right_play", "100.5 mm", None),
        ("right_play", "-0.1 mm", None),
    ],
)  # fmt: skip
def test_a_figure_is_taken_within_its_borders(key: str, text: str, value: float | None) -> None:
    """Springs and faces are more than nothing; a play is 100 mm at most."""
    build, wrong = typed(**{key: text})
    got = getattr(build, key.removesuffix("_play")).end_play_mm if key.endswith("_play") else getattr(build, key)
    assert got == value
    assert set(wrong) == (set() if value is not None else {key})


@pytest.mark.parametrize(("inner", "fits"), [("80 mm", True), ("100 mm", False), ("101 mm", False)])
def test_a_face_is_narrower_inside(inner: str, *, fits: bool) -> None:
    assert set(typed(face_outer_mm="100 mm", face_inner_mm=inner)[1]) == (set() if fits else {"face_inner_mm"})


def test_a_share_of_modifier_is_of_the_whole_fill() -> None:
    """20 % of a fill whose other 80 % are 1.2 l are 0.3 l."""
    for oil in ("1.2 l", "1200 ml"):
        for share in ("20%", "20 %"):
            assert typed(oil_l=oil, modifier_l=share)[0].modifier_l == pytest.approx(0.3)
    assert "amount of oil" in typed(modifier_l="5 %")[1]["modifier_l"]


def test_the_seconds_of_a_time_stand_until_another_minute_is_typed() -> None:
    assert typed()[0].built == BUILT
    shown = (BUILT + timedelta(minutes=1)).strftime(build_entry.FORM)
    assert typed(built=shown)[0].built == (BUILT + timedelta(minutes=1)).replace(second=0)
    assert typed(built="yesterday")[1].keys() == {"built"}


def test_only_lengths_follow_their_unit(entry: BuildEntry) -> None:
    """17.72 in are 450 mm; what cannot be used stays as it is typed."""
    for key, text in (("face_outer_mm", "100 mm"), ("left_play", "0.5 mm"), ("oil_l", "1200 ml"), ("spring_n", "x")):
        entry.type_in(key, text)
    entry._display.use(lengths="in")
    texts = entry.draft.texts
    assert texts["face_outer_mm"].endswith("in")
    assert texts["left_play"].endswith("in")
    assert (texts["oil_l"], texts["spring_n"]) == ("1200 ml", "x")
    assert entry.build.face_outer_mm == pytest.approx(100.0, abs=0.2)


def test_parts_are_put_in_moved_and_taken_out(entry: BuildEntry) -> None:
    assert (entry.side, entry.place, entry.picked) == ("left", -1, None)
    filled(entry, 0.1, 0.2, 0.3)
    assert (kinds(entry), entry.place) == ("1 2 3", 2)
    entry.pick("left", 0)
    entry.add("shim")  # behind the picked one, as thick as the last of its kind
    assert (kinds(entry), entry.place) == ("1 3 2 3", 1)
    entry.add("disc spring")
    assert (kinds(entry), entry.place) == ("1 3 - 2 3", 2)
    entry.remove()
    assert (kinds(entry), entry.place) == ("1 3 2 3", 2)
    entry.move(-1)
    assert (kinds(entry), entry.place) == ("1 2 3 3", 1)
    entry.move(1)
    entry.move(1)
    entry.move(1)  # there is nobody behind the last
    assert (kinds(entry), entry.place) == ("1 3 3 2", 3)
    entry.remove()
    assert (kinds(entry), entry.place) == ("1 3 3", 2)
    entry.pick("left", 0)
    entry.move(-1)
    assert kinds(entry) == "1 3 3"
    entry.remove()
    assert (kinds(entry), entry.place) == ("3 3", 0)


def test_a_part_is_picked_within_its_side(entry: BuildEntry) -> None:
    filled(entry, 0.1, 0.2)
    entry.pick("left", 9)
    assert (entry.place, entry.picked.thickness_mm) == (1, 0.2)
    entry.pick("left", 1)
    assert entry.place == 1
    entry.pick("right", 0)
    assert (entry.place, entry.picked) == (-1, None)
    entry.remove()
    entry.set_part("5 mm", "")
    assert entry.parts == ()
    entry.place = len(entry.parts)
    assert entry.picked is None


def test_the_middle_part_is_changed_alone(entry: BuildEntry) -> None:
    filled(entry, 0.1, 0.2, 0.3)
    entry.pick("left", 1)
    entry.set_part("1 mm", " worn ")
    assert (kinds(entry), entry.picked.note) == ("1 10 3", "worn")
    entry.type_in("spring_n", "x")
    for text, wrong in (("0 mm", {"thickness", "spring_n"}), ("thick", {"thickness", "spring_n"})):
        entry.set_part(text, "")
        assert (kinds(entry), set(entry.wrong)) == ("1 10 3", wrong)
    entry.set_part("", "")
    assert (kinds(entry), set(entry.wrong)) == ("1 - 3", {"spring_n"})


def test_undo_keeps_a_part_picked_that_is_there(entry: BuildEntry) -> None:
    filled(entry, 0.1)
    entry.add("shim")
    assert (kinds(entry), entry.place) == ("1 1", 1)
    entry.undo()
    assert (kinds(entry), entry.place) == ("1", 0)
    entry.same_on_both()
    assert entry.draft.right == entry.draft.left


def test_a_pack_has_so_many_parts_and_no_more(entry: BuildEntry) -> None:
    for _ in range(MOST_PARTS + 2):
        entry.add("shim")
    assert len(entry.parts) == MOST_PARTS


def test_builds_are_kept_opened_and_compared_with_the_one_before(entry: BuildEntry, tmp_path: Path) -> None:
    assert (entry.names, entry.number, entry.since, entry.schedule) == ([], -1, ("", ()), "")
    assert (BuildEntry(entry._card, lambda: tmp_path, Display()).place, entry.build.built.second) == (-1, 0)
    for day, spring in (("01", "100 N"), ("02", "200 N"), ("03", "300 N")):
        entry.open(-1)
        for key, text in (("built", f"2026-05-{day} 12:00"), ("spring_n", spring), ("notes", f"note {day}")):
            entry.type_in(key, text)
        entry.keep()
        assert entry.number == int(day) - 1
    assert len(entry.names) == 3
    assert [b.spring_n for b in read_axle(tmp_path, "A1").builds] == [100.0, 200.0, 300.0]
    before, changed = entry.since
    assert before == entry.names[1]
    assert any("200" in line and "300" in line for line in changed)
    entry.open(0)
    assert (entry.number, entry.build.spring_n, entry.build.notes, entry.since) == (0, 100.0, "note 01", ("", ()))
    entry.open(2)
    assert (entry.number, entry.build.spring_n) == (2, 300.0)
    for number in (3, -1):  # a new one: the parts and figures of the last, not its words
        entry.open(number)
        assert (entry.number, entry.build.spring_n, entry.build.notes) == (-1, 300.0, "")
    # At the time of a build that is kept: the one before that, not itself.
    entry.type_in("built", "2026-05-03 12:00")
    assert entry.since[0] == entry.names[1]
    entry.load()
    assert (entry.number, entry.build.spring_n) == (2, 300.0)
    assert (entry.side, entry.place) == ("left", -1)
    entry.axle = None  # its file is gone
    assert (entry.number, entry.names) == (-1, [])


@pytest.mark.parametrize(
    ("stood", "stands"), [("", "sheet of "), ("sheet of old", "sheet of "), ("own words", "own words")]
)
def test_what_the_card_says_of_a_build_is_renewed_unless_it_is_in_own_words(
    entry: BuildEntry, stood: str, stands: str
) -> None:
    entry._card.put(axle=msgspec.structs.replace(entry._card.axle, pack_build=stood))
    entry.type_in("spring_n", "100 N")
    entry.keep()
    said = entry._card.axle.pack_build
    assert said.startswith(stands)
    assert said != "sheet of old"
