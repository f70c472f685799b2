"""The job editor at the window: first what is needed, folds by keyboard, photographs through the worker."""

import hashlib
from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.pages.editors.job import PHOTOGRAPHS
from logger.header import Photo
from tests.gui.hand import Hand


@pytest.fixture
def editor(hand: Hand):
    hand.page.open_row("Job")
    hand.tick()
    return hand.page.editor("Job")


def type_in(part, text: str) -> None:
    part.edit.setFocus()
    part.edit.selectAll()
    QTest.keyClicks(part.edit, text)


def test_what_is_needed_first_is_in_sight_and_the_rest_is_folded(editor):
    assert all(not fold.inside.isVisible() for fold in editor.folds.values())
    assert editor.texts["job", "odometer"].isVisible()
    assert not editor.texts["job", "witness"].isVisible()
    assert all("folded" in fold.head.accessibleName() for fold in editor.folds.values())


def test_a_fold_opens_by_the_keyboard_and_counts_what_is_in_it(hand: Hand, editor):
    fold = editor.folds["Dates, place and people"]
    fold.head.setFocus()
    QTest.keyClick(fold.head, Qt.Key.Key_Space)
    assert fold.inside.isVisible()
    assert "open" in fold.head.accessibleName()
    QTest.keyClick(fold.head, Qt.Key.Key_Tab)
    assert fold.inside.isAncestorOf(QApplication.focusWidget()), "Tab goes on into the body"
    type_in(editor.texts["job", "received"], "2026-05-14")
    type_in(editor.texts["job", "site"], "the barn")
    card = hand.window.tester.card
    assert card.job.received == date(2026, 5, 14)
    assert card.job.site == "the barn"
    assert "2 of 4 filled in" in fold.head.text()
    assert fold.head.height() >= 44


def test_what_cannot_be_read_says_so_and_changes_nothing(hand: Hand, editor):
    field = editor.texts["job", "received"]
    type_in(field, "2026-05-14")
    type_in(field, "last week")
    assert "2026-05-14" in field._wrong.text()
    assert hand.window.tester.card.job.received == date(2026, 5, 14)
    warm = editor.texts["conditions", "oil_temperature_c"]
    type_in(warm, "95 °F")
    assert hand.window.tester.card.conditions.oil_temperature_c == pytest.approx(35.0)


def test_an_edit_of_one_record_keeps_what_others_wrote(hand: Hand, editor):
    import msgspec

    card = hand.window.tester.card
    card.put(axle=msgspec.structs.replace(card.axle, tag="43-11"))
    type_in(editor.texts["axle", "last_service"], "2025-11")
    assert (card.axle.tag, card.axle.last_service) == ("43-11", "2025-11")
    editor.pulls.edit.setFocus()
    type_in(editor.texts["test", "support"], "stands")
    type_in(editor.pulls, "4")
    assert (card.test.support, card.pulls_wanted) == ("stands", 4)


def test_a_photograph_is_hashed_in_the_worker_named_taken_off_and_put_back(hand: Hand, editor, tmp_path):
    picture = tmp_path / "IMG_0001.JPG"
    picture.write_bytes(b"a picture")
    part, tester = editor.photos, hand.window.tester
    editor.folds[PHOTOGRAPHS].open()
    part.take(picture)
    assert part.photos == (), "the window does not wait for it"
    hand.qtbot.waitUntil(lambda: bool(part.photos), timeout=30_000)
    (photo,) = tester.card.photos
    assert photo.sha256 == hashlib.sha256(b"a picture").hexdigest()
    assert (tester.settings.recordings / photo.file).read_bytes() == b"a picture"
    type_in(part.captions[0], "the tag")
    assert tester.card.photos[0].caption == "the tag"
    assert editor.folds[PHOTOGRAPHS].head.text().endswith("1")
    part.remove(0)
    assert tester.card.photos == ()
    assert (tester.settings.recordings / photo.file).exists()
    hand.press(part.back)
    assert tester.card.photos[0].caption == "the tag"
    part.take(picture)
    hand.qtbot.waitUntil(lambda: "already" in part.message.text(), timeout=30_000)
    part.take(tmp_path / "gone.jpg")
    hand.qtbot.waitUntil(lambda: "no such file" in part.message.text(), timeout=30_000)
    assert part.message.property("role") == "wrong"


def test_the_end_of_a_test_says_which_photographs_go_with_it(hand: Hand):
    hand.to_pulls()
    for _ in range(3):
        hand.pull()
    photos = (Photo(file="a.jpg", sha256="ab" * 32, caption="the tag"), Photo(file="b.jpg", sha256="cd" * 32))
    hand.window.tester.card.put(photos=photos)
    hand.space()
    hand.space()
    hand.stream.idle(2.5)
    hand.tick()
    assert "Photographs that go with it: the tag, b.jpg." in hand.page.sign._words.text()
