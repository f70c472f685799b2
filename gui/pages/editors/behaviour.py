"""Which type of differential: one thing to try at a time, and what the answers fit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from analysis.cautions import BEFORE_TURNING
from analysis.identify.axle_type import QUESTIONS
from analysis.identify.functions import functions_of
from gui.models.axle_entry import SHORT, answered, finding, next_question, plain, ruled_out
from gui.pages.card_panel import CardRow
from gui.theme import TARGET_PX
from gui.translation import tr
from gui.widgets.fitting import Beside
from gui.widgets.parts import button, column, label, line, restyle

if TYPE_CHECKING:
    from analysis.identify.axle_type import Type, TypeReading
    from gui.models.axle_entry import AxleEntry
    from gui.shared import Shared

FOUND = "Found"
TRIED = "What such a unit is tried for instead, after the maker's manual:"
NARROWED_MOST = 4  # types that get a button of their own
SAFE = f"{BEFORE_TURNING} Both driven wheels raised."


class AnswerButton(QPushButton):
    """An answer to press, its words wrapped."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.setCheckable(True)
        self.setAutoDefault(False)
        self.setAccessibleName(tr(text))
        self._words = label(f"{text[0].upper()}{text[1:]}", wrap=True)
        self._words.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._inside = line(self, margin=4)
        self._inside.setContentsMargins(14, 6, 14, 6)
        self._inside.addWidget(self._words, 1)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def heightForWidth(self, width: int) -> int:  # noqa: N802 - Qt's name
        """Give the height of the wrapped words, never less than a target."""
        return max(TARGET_PX + 4, self._inside.heightForWidth(width))

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give a usual width and its height."""
        return QSize(300, self.heightForWidth(max(200, self.width())))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give the smallest width that is still read well."""
        return QSize(200, TARGET_PX + 4)


class TypePart(QWidget):
    """Questions on the left, the one that is asked on the right; emits ``taken`` once a type is put on the card."""

    taken = Signal()

    def __init__(self, shared: Shared, entry: AxleEntry) -> None:
        super().__init__()
        self._entry = entry
        self.at = QUESTIONS[0].key
        self.rows = {key: CardRow(shared.look, words, "Ask this again") for key, words in SHORT.items()}
        self.rows[FOUND] = CardRow(shared.look, "What it is", "What the answers fit")
        self.question = label("", "head", wrap=True)
        self.safe = label(SAFE, "caption", wrap=True)
        self.answers = {
            question.key: {word: AnswerButton(text) for word, text in question.answers.items()}
            for question in QUESTIONS
        }
        self.found = label("", "title", wrap=True)
        self.meaning = label("", "head", wrap=True)
        self.cautions = label("", "warn", wrap=True)
        self.excluded = label("", "caption", wrap=True)
        self.take = button("Put it on the card", lambda: self._take(None), role="main")
        self.known = label("If a tag or the parts list tells which:", wrap=True)
        self.narrow = [button("") for _ in range(NARROWED_MOST)]
        self._lay_out()
        for key, row in self.rows.items():
            row.clicked.connect(lambda _on=False, key=key: self.go(key))
        for key, made in self.answers.items():
            for word, press in made.items():
                press.clicked.connect(lambda _on=False, key=key, word=word: self._answer(key, word))
        for place, one in enumerate(self.narrow):
            one.clicked.connect(lambda _on=False, n=place: self._take(n))

    def _lay_out(self) -> None:
        asked, asking = QWidget(), QWidget()
        left = column(asked, gap=2)
        for row in self.rows.values():
            left.addWidget(row)
        left.addStretch(1)
        right = column(asking, gap=8)
        right.addWidget(self.question)
        right.addWidget(self.safe)
        for made in self.answers.values():
            for press in made.values():
                right.addWidget(press)
        for part in (self.found, self.meaning, self.cautions):
            right.addWidget(part)
        foot = line(gap=10)
        foot.addWidget(self.take)
        foot.addStretch(1)
        right.addLayout(foot)
        right.addWidget(self.known)
        narrow = line(gap=10)
        for one in self.narrow:
            narrow.addWidget(one)
        narrow.addStretch(1)
        right.addLayout(narrow)
        right.addWidget(self.excluded)
        right.addStretch(1)
        column(self).addWidget(Beside([(asked, 2), (asking, 3)]))

    # ------------------------------------------------------------------ doing
    def go(self, key: str) -> None:
        """Ask another question, or show what was found."""
        self.at = key
        self.refresh()
        self.focus()

    def focus(self) -> None:
        """Give the keyboard to what is done next."""
        if self.at == FOUND:
            (self.take if self.take.isVisible() else self.rows[FOUND]).setFocus()
            return
        given = self._entry.draft.seen.get(self.at)
        made = self.answers[self.at]
        (made[given] if given in made else next(iter(made.values()))).setFocus()

    def _answer(self, key: str, word: str) -> None:
        self._entry.answer(key, word)
        given = key in self._entry.draft.seen
        self.go((next_question(self._entry.draft, key) or FOUND) if given else key)

    def _take(self, place: int | None) -> None:
        found = finding(self._entry.draft.seen)
        if found is None:
            return
        kind: Type | None = None if place is None else found.candidates[place]
        self._entry.take_type(kind)
        self.taken.emit()

    # ------------------------------------------------------------------ showing
    def refresh(self) -> None:
        """Show the answers, the question that is asked, and what fits."""
        draft = self._entry.draft
        found = finding(draft.seen)
        for key, row in self.rows.items():
            row.setChecked(key == self.at)
            if key != FOUND:
                said = answered(draft, key)
                row.show_lines(f"{said[0].upper()}{said[1:]}" if said else "Not tried yet", there=bool(said))
        self._found_row(found)
        asked = next((question for question in QUESTIONS if question.key == self.at), None)
        self.question.setVisible(asked is not None)
        self.safe.setVisible(asked is not None)
        self.question.setText(asked.text if asked else "")
        for key, made in self.answers.items():
            for word, press in made.items():
                press.setVisible(key == self.at)
                press.setChecked(draft.seen.get(key) == word)
        self._show_found(found)

    def _found_row(self, found: TypeReading | None) -> None:
        row = self.rows[FOUND]
        if found is None:
            row.show_lines("Answer first", there=False)
        else:
            row.show_lines(names(found), "" if found.judged else "Not judged", there=found.judged)

    def _show_found(self, found: TypeReading | None) -> None:
        here = self.at == FOUND
        narrowed = found.candidates if found is not None and 1 < len(found.candidates) <= NARROWED_MOST else ()
        for part in (self.found, self.meaning):
            part.setVisible(here)
        self.take.setVisible(here and found is not None and bool(found.candidates))
        self.known.setVisible(here and bool(narrowed))
        for place, press in enumerate(self.narrow):
            press.setVisible(here and place < len(narrowed))
            if place < len(narrowed):
                press.setText(narrowed[place].value.capitalize())
                press.setAccessibleName(tr(f"Put {narrowed[place].value} on the card"))
        self.found.setText("Nothing tried yet" if found is None else names(found))
        self.meaning.setText("Answer what you can try; each answer rules types out." if found is None else "")
        if found is not None:
            self.meaning.setText(plain(found.text))
        restyle(self.meaning, "wronghead" if found is not None and not found.judged else "head")
        cautions = (*found.cautions, *_functions(found)) if found is not None else ()
        out = ruled_out(found) if found is not None else []
        for part, lines in ((self.cautions, cautions), (self.excluded, out)):
            part.setText("\n".join(lines))
            part.setVisible(here and bool(lines))


def _functions(found: TypeReading) -> tuple[str, ...]:
    """Give what a unit is tried for whose torque says nothing about it."""
    functions = functions_of(found.candidates)
    return (TRIED, *functions) if functions else ()


def names(found: TypeReading) -> str:
    """Give what fits in a few words."""
    kinds = [kind.value for kind in found.candidates]
    if not kinds:
        return "Nothing fits"
    if len(kinds) > NARROWED_MOST:
        return f"{len(kinds)} types fit"
    text = ", ".join(kinds[:-1]) + (" or " if len(kinds) > 1 else "") + kinds[-1]
    return f"{text[0].upper()}{text[1:]}"
