"""The build sheet in the real window: packs clicked together, kept beside the recordings, put right, compared."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.pages.editors.axle import BUILD
from logger.recordings.axles import AxleFile, read_axle
from tests.gui.test_axle import fill, open_axle

if TYPE_CHECKING:
    from pathlib import Path

    from gui.pages.editors.build import BuildPart
    from tests.gui.hand import Hand


def open_build(hand: Hand, tag: str = "A-117") -> BuildPart:
    hand.window.tester.card.put(axle=msgspec.structs.replace(hand.window.tester.card.axle, tag=tag))
    part: BuildPart = open_axle(hand, BUILD).build
    return part


def kept(hand: Hand, tag: str = "A-117") -> AxleFile:
    found = read_axle(hand.window.tester.settings.recordings, tag)
    assert found is not None
    return found


def click(part: BuildPart, side: str, place: int) -> None:
    box = next(b for s, p, b in part.drawing.boxes() if (s, p) == (side, place))
    QTest.mouseClick(part.drawing, Qt.MouseButton.LeftButton, pos=box.center().toPoint())
    QApplication.processEvents()


def add(hand: Hand, part: BuildPart, *kinds: str) -> None:
    for kind in kinds:
        hand.press(part.adds[kind])


def test_a_pack_is_clicked_together_and_kept(hand: Hand) -> None:
    part = open_build(hand)
    add(hand, part, "friction disc", "steel plate", "shim")
    click(part, "left", 0)
    fill(part.thickness.edit, "1.98 mm")
    click(part, "left", 1)
    assert part.thickness.text == ""
    fill(part.thickness.edit, "2 mm")
    click(part, "left", 2)
    fill(part.thickness.edit, "0.3 mm")
    hand.press(part.both)
    assert "1 friction surface, stack 4.28 mm" in part.adds_up.text()
    fill(part.fields["built"].edit, "2026-05-14 16:30")
    hand.press(part.keep)
    assert part.message.text() == "Kept as the build of 2026-05-14 16:30 of axle A-117."
    build = kept(hand).builds[0]
    assert [p.kind for p in build.left.parts] == ["friction disc", "steel plate", "shim"]
    assert [p.thickness_mm for p in build.right.parts] == [1.98, 2.0, 0.3]
    assert hand.window.tester.card.axle.pack_build == "sheet of 2026-05-14 16:30"


def test_a_kept_build_is_put_right_and_what_it_was_stays(hand: Hand) -> None:
    part = open_build(hand)
    add(hand, part, "shim")
    fill(part.fields["built"].edit, "2026-05-14 16:30")
    hand.press(part.keep)
    fill(part.fields["reason"].edit, "low")
    hand.press(part.keep)
    found = kept(hand)
    assert [b.reason for b in found.builds] == ["low"]
    assert [r.build.reason for r in found.replaced] == [""]


def test_a_new_build_begins_with_the_parts_of_the_last_and_says_what_changed(hand: Hand) -> None:
    part = open_build(hand)
    add(hand, part, "friction disc", "steel plate", "shim")
    fill(part.thickness.edit, "0.3 mm")
    fill(part.fields["built"].edit, "2026-05-01 16:30")
    hand.press(part.keep)
    part.entry.open(-1)
    assert "Nothing is otherwise than in 2026-05-01 16:30." in part.changed.text()
    click(part, "left", 2)
    fill(part.thickness.edit, "0.5 mm")
    assert "left: shim at 3: 0.3 mm → 0.5 mm" in part.changed.text()
    assert "shims: 0.3 mm → 0.5 mm (+0.2 mm)" in part.changed.text()
    hand.press(part.keep)
    assert len(kept(hand).builds) == 2


def test_order_taking_out_undo_and_keys(hand: Hand) -> None:
    part = open_build(hand)
    add(hand, part, "friction disc", "steel plate")
    hand.press(part.inwards)
    assert [p.kind for p in part.entry.draft.left] == ["steel plate", "friction disc"]
    part.drawing.setFocus()
    QTest.keyClick(part.drawing, Qt.Key.Key_Delete)
    assert [p.kind for p in part.entry.draft.left] == ["friction disc"]
    hand.press(hand.page.editor("Axle").undo)
    assert [p.kind for p in part.entry.draft.left] == ["steel plate", "friction disc"]
    QTest.keyClick(part.drawing, Qt.Key.Key_Left)  # of the left pack outwards
    assert (part.entry.side, part.entry.place) == ("left", 1)
    QTest.mouseClick(part.drawing, Qt.MouseButton.LeftButton, pos=QPoint(part.drawing.width() - 20, 60))
    add(hand, part, "disc spring")
    assert [p.kind for p in part.entry.draft.right] == ["disc spring"]
    assert "right 1, disc spring" in part.drawing.accessibleName()


def test_the_modifier_is_typed_as_its_share_of_the_fill(hand: Hand) -> None:
    part = open_build(hand)
    part.entry.type_in("modifier_l", "4 %")
    assert "amount of oil" in part.entry.wrong["modifier_l"]
    part.entry.type_in("oil_l", "0.96 l")
    assert not part.entry.wrong
    assert part.entry.build.modifier_l == pytest.approx(0.04)
    assert "4 % of the fill" in part.adds_up.text()


@pytest.mark.parametrize(
    ("key", "text"),
    [
        ("built", "yesterday"),
        ("oil_l", "one"),
        ("spring_n", "0 N"),
        ("left_play", "200 mm"),
        ("pinion_nm", "-1 N·m"),
        ("modifier_l", "5"),
    ],
)
def test_what_cannot_be_used_is_marked_and_nothing_is_kept(hand: Hand, key: str, text: str) -> None:
    part = open_build(hand)
    part.entry.type_in(key, text)
    assert part.entry.wrong[key]
    hand.press(part.keep)
    assert "faults" in part.message.text()
    assert read_axle(hand.window.tester.settings.recordings, "A-117") is None


def test_faces_that_are_inside_out_are_told(hand: Hand) -> None:
    part = open_build(hand)
    part.entry.type_in("face_outer_mm", "70 mm")
    part.entry.type_in("face_inner_mm", "98 mm")
    assert part.entry.wrong["face_inner_mm"]


def test_without_a_tag_nothing_is_kept_and_a_broken_sheet_is_named(hand: Hand) -> None:
    part = open_build(hand, "")
    assert not part.keep.isEnabled()
    assert "tag" in part.message.text()
    folder: Path = hand.window.tester.settings.recordings
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "b.axle.toml").write_text("tag = 1\n", "utf-8")
    part = open_build(hand, "b")
    part.look()
    assert not part.keep.isEnabled()
    assert "b.axle.toml" in part.message.text()
    assert (folder / "b.axle.toml").read_text("utf-8") == "tag = 1\n"


def test_a_schedule_is_typed_kept_and_told_when_the_window_opens(hand: Hand, qtbot) -> None:
    from gui.models.due import due_words

    part = open_build(hand)
    fill(part.schedule.edit, "500 kilometres")
    part.schedule.edit.editingFinished.emit()
    assert part.schedule.edit.property("wrong")
    fill(part.schedule.edit, "4 weeks, 10 figure-eights")
    part.schedule.edit.editingFinished.emit()
    assert not part.schedule.edit.property("wrong")
    fill(part.use.edit, "53214 km, 1 event")
    part._note_use()
    found = kept(hand)
    assert found.retest is not None
    assert (found.retest.every_weeks, found.retest.figure_eights) == (4, 10)
    assert [(use.km, use.events) for use in found.uses] == [(53214, 1)]
    said = due_words(hand.window.tester.settings.recordings)
    assert said == "Axle A-117 is due for a test: it has a schedule and was never tested."
    hand.window._tell_due(said)
    assert hand.run.notice is not None
    assert hand.run.notice.text == said


def test_the_chart_of_the_axle_opens_from_its_tag(hand: Hand) -> None:
    part = open_build(hand)
    part.folds[-1].open()
    hand.tick()
    part.chart.click()
    page = hand.window.pages["Compare"]
    assert hand.window._stack.currentWidget() is page
    assert page.search.text == 'tag="A-117"'
    assert page.panel is page.panels["Over time"]
