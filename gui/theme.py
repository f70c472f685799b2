"""Colours, sizes and the style sheet: plain values, no Qt.

Conventions:
- A colour is ``#rrggbb``. Every text colour reaches a contrast of 4.5:1 (WCAG 2.1, success criterion 1.4.3) on every
  surface it may stand on; a test walks the whole palette.
- The four results differ in word and shape first; their hues (blue, vermilion, amber, grey-violet) stay apart for the
  common kinds of colour blindness.
- Sizes are in device-independent pixels at text scale 1.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

TARGET_PX = 44  # smallest side of anything to press: a gloved finger (WCAG 2.1, 2.5.5)
FAR_PX = 58  # of what is pressed again and again from beside a wheel
SCALES = (1.0, 1.25, 1.5, 1.75, 2.0)  # text sizes on offer


@dataclass(frozen=True, slots=True)
class Palette:
    """One set of colours."""

    name: str
    ground: str  # the window
    surface: str  # cards
    raised: str  # fields, buttons
    line: str  # borders and rules: decoration, no text
    edge: str  # outlines of fields and buttons: 3:1 against their surroundings (WCAG 2.1, 1.4.11)
    text: str
    muted: str  # captions
    accent: str
    on_accent: str
    within: str
    outside: str
    close: str
    invalid: str
    band: str  # the limit's allowed side on a trace
    trace: str


LIGHT = Palette(
    name="light",
    ground="#eceae4",
    surface="#f8f7f3",
    raised="#ffffff",
    line="#d5d1c7",
    edge="#7d7a72",
    text="#1b2124",
    muted="#50585d",
    accent="#0b625d",
    on_accent="#ffffff",
    within="#1450a5",
    outside="#a11d2a",
    close="#735a00",
    invalid="#5d5169",
    band="#d3e1f3",
    trace="#1b2124",
)
DARK = Palette(
    name="dark",
    ground="#14181b",
    surface="#1c2226",
    raised="#262e33",
    line="#364046",
    edge="#7b878e",
    text="#edf0f1",
    muted="#a9b4ba",
    accent="#5cc9c0",
    on_accent="#08211f",
    within="#86b9ff",
    outside="#ff9f70",
    close="#ecc54e",
    invalid="#c3b8d1",
    band="#1d3046",
    trace="#e4e9eb",
)
PALETTES = {palette.name: palette for palette in (DARK, LIGHT)}


def blend(over: str, under: str, share: float) -> str:
    """Mix two colours: ``share`` of the first, the rest of the second."""
    pairs = [(int(over[i : i + 2], 16), int(under[i : i + 2], 16)) for i in (1, 3, 5)]
    return "#" + "".join(f"{round(a * share + b * (1 - share)):02x}" for a, b in pairs)


def colours(palette: Palette) -> dict[str, str]:
    """Give a palette's colours by name."""
    return {f.name: getattr(palette, f.name) for f in fields(palette) if f.name != "name"}


_SHEET = """
* {{ font-size: {base}px; color: {text}; outline: none; }}
QMainWindow, QDialog, QWidget#page {{ background: {ground}; }}
QScrollArea, QScrollArea > QWidget > QWidget#scrolled {{ background: transparent; }}
QWidget#bar {{ background: {surface}; border-bottom: 1px solid {line}; }}
QWidget#foot {{ background: {surface}; border-top: 1px solid {line}; }}
QFrame#card, QWidget#card {{ background: {surface}; border: 1px solid {line}; border-radius: 8px; }}
QFrame#notice {{ background: {raised}; border: 2px solid {edge}; border-radius: 8px; }}
QFrame#rule {{ background: {line}; border: none; max-height: 1px; min-height: 1px; }}
QLabel {{ background: transparent; }}
QLabel[role="caption"] {{ color: {muted}; font-size: {small}px; }}
QLabel[role="title"] {{ font-size: {title}px; font-weight: 600; }}
QLabel[role="head"] {{ font-size: {head}px; font-weight: 600; }}
QLabel[role="practice"] {{ color: {close}; font-size: {head}px; font-weight: 600; }}
QLabel[role="next"] {{ font-weight: 600; }}
QLabel[role="warn"] {{ color: {close}; }}
QLabel[role="simulated"] {{ color: {close}; border: 2px solid {close}; border-radius: 6px; padding: 2px 10px;
    font-weight: 600; }}
QLabel[role="wrong"] {{ color: {outside}; }}
QLabel[role="wronghead"] {{ color: {outside}; font-size: {head}px; }}
QLabel[role="wrongmark"] {{ color: {outside}; font-size: {title}px; }}
QPushButton, QToolButton {{ background: {raised}; border: 1px solid {edge}; border-radius: 6px;
    padding: 0 14px; min-height: {press}px; }}
QPushButton::menu-indicator {{ image: none; width: 0; }}
QPushButton:hover, QToolButton:hover {{ border-color: {accent}; }}
QPushButton:pressed, QToolButton:pressed {{ background: {line}; }}
QPushButton:focus, QToolButton:focus, QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus, QListView:focus,
    QTableView:focus, QCheckBox:focus, QRadioButton:focus {{ border: 2px solid {accent}; }}
QPushButton:disabled, QToolButton:disabled {{ color: {muted}; border-color: {line}; background: {surface}; }}
QPushButton:checked, QToolButton:checked {{ background: {tint}; border: 2px solid {accent}; }}
QPushButton[role="main"] {{ background: {accent}; color: {on_accent}; border: 2px solid {accent}; font-weight: 600;
    font-size: {head}px; }}
QPushButton[role="main"]:focus {{ border-color: {text}; }}
QPushButton[role="wait"] {{ background: {raised}; color: {muted}; border: 2px solid {line}; font-weight: 600;
    font-size: {head}px; }}
QPushButton[role="wait"]:focus {{ border-color: {edge}; }}
QPushButton[role="second"] {{ border: 2px solid {edge}; font-weight: 600; font-size: {head}px; }}
QPushButton[role="second"]:focus {{ border-color: {accent}; }}
QPushButton[role="count"] {{ min-height: {far}px; padding: 0 8px; font-size: {head}px; font-weight: 600; }}
QPushButton[role="page"] {{ background: transparent; border: none; border-bottom: 3px solid transparent;
    border-radius: 0; padding: 0 16px; font-size: {head}px; color: {muted}; }}
QPushButton[role="page"]:checked {{ border-bottom: 3px solid {accent}; color: {text}; background: transparent; }}
QPushButton[role="page"]:focus {{ background: {tint}; }}
QPushButton[role="left"] {{ border-top-right-radius: 0; border-bottom-right-radius: 0; }}
QPushButton[role="middle"] {{ border-radius: 0; border-left: none; }}
QPushButton[role="right"] {{ border-top-left-radius: 0; border-bottom-left-radius: 0; border-left: none; }}
QPushButton[role="row"] {{ background: transparent; border: 1px solid transparent; text-align: left;
    padding: 4px 10px; }}
QPushButton[role="row"]:hover {{ background: {raised}; }}
QPushButton[role="row"]:checked {{ background: {tint}; border: 2px solid {accent}; }}
QPushButton[role="row"]:focus {{ border: 2px solid {accent}; }}
QPushButton[role="fold"] {{ text-align: left; font-weight: 600; }}
QPushButton[role="fold"]:checked {{ background: {raised}; border: 1px solid {edge}; }}
QPushButton[role="fold"]:focus {{ border: 2px solid {accent}; }}
QLineEdit, QComboBox, QPlainTextEdit, QDoubleSpinBox, QSpinBox {{ background: {raised}; border: 1px solid {edge};
    border-radius: 6px; padding: 0 10px; min-height: {press}px; selection-background-color: {accent};
    selection-color: {on_accent}; }}
QLineEdit[wrong="true"], QComboBox[wrong="true"] {{ border: 2px solid {outside}; }}
QLineEdit:disabled, QComboBox:disabled {{ color: {muted}; background: {surface}; border-color: {line}; }}
QComboBox::drop-down {{ border: none; width: 30px; }}
QComboBox::down-arrow {{ image: none; width: 0; height: 0; }}
QComboBox QAbstractItemView {{ background: {raised}; border: 1px solid {edge}; selection-background-color: {tint};
    selection-color: {text}; }}
QComboBox QAbstractItemView::item {{ min-height: {press}px; padding: 0 10px; }}
QCheckBox, QRadioButton {{ min-height: {press}px; spacing: 12px; border: 2px solid transparent; border-radius: 6px;
    padding: 0 6px; background: transparent; }}
QCheckBox::indicator, QRadioButton::indicator {{ width: 22px; height: 22px; border: 2px solid {edge};
    background: {raised}; }}
QCheckBox::indicator {{ border-radius: 5px; }}
QRadioButton::indicator {{ border-radius: 13px; }}
QCheckBox::indicator:checked, QRadioButton::indicator:checked {{ background: {accent}; border: 6px solid {raised};
    width: 14px; height: 14px; }}
QFileDialog QSidebar, QFileDialog QTreeView, QFileDialog QListView {{ background: {surface}; color: {text};
    border: 1px solid {line}; selection-background-color: {tint}; selection-color: {text}; }}
QTableView, QListView, QPlainTextEdit {{ background: {surface}; border: 1px solid {line}; border-radius: 8px;
    alternate-background-color: {ground}; gridline-color: {line}; selection-background-color: {tint};
    selection-color: {text}; }}
QTableView::item, QListView::item {{ padding: 0 8px; border: none; }}
QTableView::item:selected, QListView::item:selected {{ background: {tint}; color: {text}; }}
QHeaderView {{ background: {surface}; border: none; }}
QHeaderView::section {{ background: {surface}; color: {muted}; border: none; border-bottom: 1px solid {line};
    padding: 0 8px; min-height: {press}px; font-size: {small}px; }}
QTableCornerButton::section {{ background: {surface}; border: none; }}
QScrollBar:vertical {{ background: transparent; width: 14px; margin: 2px; }}
QScrollBar:horizontal {{ background: transparent; height: 14px; margin: 2px; }}
QScrollBar::handle {{ background: {edge}; border-radius: 5px; min-height: {press}px; min-width: {press}px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QSplitter::handle:horizontal {{ background: {ground}; }}
QSplitter::handle:vertical {{ background: {surface}; border-top: 2px solid {line}; }}
QToolTip {{ background: {raised}; color: {text}; border: 1px solid {edge}; padding: 6px; }}
QProgressBar {{ background: {raised}; border: 1px solid {line}; border-radius: 6px; min-height: 12px; max-height: 12px;
    text-align: center; }}
QProgressBar::chunk {{ background: {accent}; border-radius: 5px; }}
QMenu {{ background: {raised}; border: 1px solid {edge}; padding: 6px; }}
QMenu::item {{ min-height: {press}px; padding: 8px 26px 8px 14px; border-radius: 6px; }}
QMenu::item:selected {{ background: {tint}; }}
"""


def sheet(palette: Palette, scale: float = 1.0) -> str:
    """Give the style sheet for a palette and a text scale.

    Args:
        palette: The colours.
        scale: Text scale, 1 to 2.
    """
    sizes = {"base": 15, "small": 13, "head": 17, "title": 24}
    scaled = {name: round(px * scale) for name, px in sizes.items()}
    tint = blend(palette.accent, palette.surface, 0.16)
    return _SHEET.format(**colours(palette), **scaled, tint=tint, press=TARGET_PX, far=FAR_PX)
