"""Menus on the right mouse button and the menu key: what can be done with the thing under the pointer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QMenu

from gui.translation import tr

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from PySide6.QtCore import QPoint
    from PySide6.QtWidgets import QWidget

    Item = tuple[str, Callable[[], object]]


def menu_of(parent: QWidget, items: Sequence[Item | None], *, lasting: bool = False) -> QMenu:
    """Give a menu; None is a line between two parts. One that is ``lasting`` can be opened again."""
    menu = QMenu(parent)
    menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, not lasting)
    for item in items:
        if item is None:
            menu.addSeparator()
        else:
            menu.addAction(tr(item[0]), item[1])
    return menu


def offer_menu(widget: QWidget, items: Callable[[], Sequence[Item | None]]) -> None:
    """Open a menu on a widget's right button and menu key; what is in it is asked for each time."""

    def open_at(place: QPoint) -> None:
        menu_of(widget, items()).popup(widget.mapToGlobal(place))

    widget.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
    widget.customContextMenuRequested.connect(open_at)


def picture_items(widget: QWidget) -> list[Item | None]:
    """Give what can be done with a picture as it is seen, its mark of simulated data included."""
    return [("Copy picture", lambda: copy_picture(widget)), ("Save picture …", lambda: ask_picture(widget))]


def offer_picture(widget: QWidget) -> None:
    """Let a picture be copied and saved."""
    offer_menu(widget, lambda: picture_items(widget))


def copy_picture(widget: QWidget) -> None:
    """Put a picture on the clipboard."""
    QGuiApplication.clipboard().setPixmap(widget.grab())


def ask_picture(widget: QWidget) -> None:
    """Ask for a file name, and save the picture there."""
    name = widget.accessibleName().lower().replace(" ", "-") or "picture"
    target, _ = QFileDialog.getSaveFileName(widget, tr("Save picture …"), f"{name}.png", "PNG (*.png)")
    if target:
        widget.grab().save(target)
