"""Colours: contrast of everything that is read, and results that stay apart for every eye."""

import itertools

import numpy as np
import pytest

from gui.theme import (
    DARK,
    LIGHT,
    SCALES,
    TARGET_PX,
    Palette,
    blend,
    sheet,
)
from tests.gui.contrast import contrast

PALETTES = [LIGHT, DARK]

TEXT_CONTRAST = 4.5  # WCAG 2.1, 1.4.3
TEXT_COLOURS = ("text", "muted", "accent", "within", "outside", "close", "invalid")
SURFACES = ("ground", "surface", "raised")

STATES = ("within", "outside", "close", "invalid")
# Viénot, Brettel and Mollon (1999), "Digital video colourmaps for checking the legibility of displays by dichromats":
# the two matrices in linear RGB, from memory.
DICHROMATS = {
    "protanope": np.array([[0.11238, 0.88762, 0.0], [0.11238, 0.88762, 0.0], [0.00401, -0.00401, 1.0]]),
    "deuteranope": np.array([[0.29275, 0.70725, 0.0], [0.29275, 0.70725, 0.0], [-0.02234, 0.02234, 1.0]]),
    "everyone": np.eye(3),
}


def linear(colour: str) -> np.ndarray:
    parts = np.array([int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)])
    return np.where(parts <= 0.04045, parts / 12.92, ((parts + 0.055) / 1.055) ** 2.4)


def lab(rgb_linear: np.ndarray) -> np.ndarray:
    """CIE 1976 L*a*b* from linear sRGB, D65 (IEC 61966-2-1, CIE 15)."""
    to_xyz = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
    xyz = to_xyz @ np.clip(rgb_linear, 0, 1) / np.array([0.9505, 1.0, 1.089])
    f = np.where(xyz > (6 / 29) ** 3, np.cbrt(xyz), xyz / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def test_contrast_of_black_and_white_and_of_equals() -> None:
    # WCAG 2.1: 21:1 is the greatest, 1:1 the least.
    assert contrast("#000000", "#ffffff") == 21.0
    assert contrast("#777777", "#777777") == 1.0


@pytest.mark.parametrize("palette", PALETTES, ids=lambda p: p.name)
def test_every_text_on_every_surface(palette: Palette) -> None:
    tint = blend(palette.accent, palette.surface, 0.16)
    backs = [getattr(palette, s) for s in SURFACES] + [tint, palette.band]
    low = [
        (text, back, contrast(getattr(palette, text), back))
        for text, back in itertools.product(TEXT_COLOURS, backs)
        if contrast(getattr(palette, text), back) < TEXT_CONTRAST
    ]
    assert low == []
    assert contrast(palette.on_accent, palette.accent) >= TEXT_CONTRAST


@pytest.mark.parametrize("palette", PALETTES, ids=lambda p: p.name)
def test_outlines_of_what_can_be_pressed(palette: Palette) -> None:
    # WCAG 2.1, 1.4.11: 3:1 for the parts that identify a control.
    assert min(contrast(palette.edge, getattr(palette, s)) for s in SURFACES) >= 3.0
    assert min(contrast(palette.accent, getattr(palette, s)) for s in SURFACES) >= 3.0
    assert contrast(palette.trace, palette.band) >= 4.5


@pytest.mark.parametrize("eye", DICHROMATS)
@pytest.mark.parametrize("palette", PALETTES, ids=lambda p: p.name)
def test_results_stay_apart_for_every_eye(palette: Palette, eye: str) -> None:
    # A CIE 1976 colour difference of 10 is seen at a glance (common practice, no source).
    states = {name: lab(DICHROMATS[eye] @ linear(getattr(palette, name))) for name in STATES}
    for one, other in itertools.combinations(states, 2):
        assert np.linalg.norm(states[one] - states[other]) > 10, (one, other)


@pytest.mark.parametrize("scale", SCALES)
def test_sheet_has_no_hole_and_keeps_targets(scale: float) -> None:
    text = sheet(DARK, scale)
    assert "{" in text
    assert "{{" not in text
    assert f"min-height: {TARGET_PX}px" in text
    assert f"font-size: {round(15 * scale)}px" in text
