"""The look as Qt sees it: colours, fonts and the style sheet, changed for the whole window at once."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

from gui.theme import PALETTES, SCALES, blend, sheet


class Look(QObject):
    """Palette and text scale in use; widgets that paint themselves listen to ``changed``."""

    changed = Signal()

    def __init__(self, palette: str = "dark", scale: float = 1.0) -> None:
        super().__init__()
        self.palette = PALETTES.get(palette, PALETTES["dark"])
        self.scale = scale if scale in SCALES else 1.0
        self._family = QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont).family()

    def colour(self, name: str, alpha: float = 1.0) -> QColor:
        """Give a colour of the palette by its name."""
        colour = QColor(getattr(self.palette, name))
        colour.setAlphaF(alpha)
        return colour

    def mixed(self, over: str, under: str, share: float) -> QColor:
        """Give a mix of two colours of the palette."""
        return QColor(blend(getattr(self.palette, over), getattr(self.palette, under), share))

    def font(self, px: float, *, bold: bool = False, scaled: bool = True) -> QFont:
        """Give the window's font with figures of equal width, ``px`` high at text scale 1."""
        font = QFont(self._family)
        font.setPixelSize(max(8, round(px * (self.scale if scaled else 1.0))))
        font.setWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
        font.setFeature(QFont.Tag("tnum"), 1)
        return font

    def _palette(self) -> QPalette:
        """Give the colours for what no style sheet reaches: the file dialog where the desktop has none."""
        made, roles = QPalette(), QPalette.ColorRole
        named = {
            roles.Window: "ground", roles.WindowText: "text", roles.Base: "surface", roles.AlternateBase: "raised",
            roles.Text: "text", roles.Button: "raised", roles.ButtonText: "text", roles.PlaceholderText: "muted",
            roles.ToolTipBase: "raised", roles.ToolTipText: "text", roles.Highlight: "accent",
            roles.HighlightedText: "on_accent", roles.Link: "accent", roles.BrightText: "text",
        }  # fmt: skip
        for role, name in named.items():
            made.setColor(role, self.colour(name))
        for role in (roles.WindowText, roles.Text, roles.ButtonText):
            made.setColor(QPalette.ColorGroup.Disabled, role, self.colour("muted"))
        return made

    def use(self, *, palette: str | None = None, scale: float | None = None) -> None:
        """Change palette or scale and tell every widget."""
        self.palette = PALETTES[palette] if palette else self.palette
        self.scale = scale if scale else self.scale
        self.apply()

    def apply(self) -> None:
        """Put the style sheet on the application."""
        app = QGuiApplication.instance()
        if isinstance(app, QApplication):
            app.setPalette(self._palette())
            app.setFont(self.font(15))
            app.setStyleSheet(sheet(self.palette, self.scale))
        self.changed.emit()
