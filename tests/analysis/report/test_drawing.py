"""The drawing: nothing that could be seen is lost, ticks are round, SVG is plain."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.report.drawing import Box, DrawnPull, Polyline, Ring, Text, decimate, ticks, to_svg, trace_drawing


def trace(n=20_000):
    t = np.linspace(0, 100, n)
    return t, 10 * np.sin(t) + np.random.default_rng(1).normal(0, 0.1, n)


def test_decimate_keeps_every_extreme():
    t, y = trace()
    y[7777] = 99.0
    y[12345] = -77.0
    few_t, few_y = decimate(t, y, 300)
    assert len(few_t) <= 600
    assert (few_y.max(), few_y.min()) == (99.0, -77.0)
    assert few_t[few_y.argmax()] == t[7777]
    assert np.all(np.diff(few_t) > 0)


@given(st.lists(st.floats(-1e6, 1e6), max_size=300), st.integers(2, 40))
def test_decimate_any(values, columns):
    y = np.array(values)
    t = np.arange(len(y), dtype=float)
    few_t, few_y = decimate(t, y, columns)
    assert len(few_t) == len(few_y) <= max(2 * columns, 0)
    if len(y):
        assert (few_y.min(), few_y.max()) == (y.min(), y.max())


def test_decimate_leaves_out_what_is_not_there():
    t, y = decimate(np.arange(5.0), np.array([1, np.nan, 2, np.nan, 3.0]), 100)
    assert t.tolist() == [0, 2, 4]
    assert y.tolist() == [1, 2, 3]


@given(st.floats(-1e4, 1e4), st.floats(1e-3, 1e4), st.integers(2, 10))
def test_ticks(low, span, about):
    found = ticks(low, low + span, about)
    assert all(low - 1e-6 * span <= value <= low + span * (1 + 1e-6) for value in found)
    assert len(found) <= 2 * about + 2


def test_marks_and_limits_are_drawn():
    t, y = trace()
    pulls = [DrawnPull(1, 10, 20, True, (12, 9.0), True, (13, 18, 8.0)), DrawnPull(2, 30, 40, False, (31, 8.5), False)]
    shapes = trace_drawing(t, y, "N·m", pulls=pulls, limit=(7.0, 9.5)).shapes
    assert len([s for s in shapes if isinstance(s, Ring)]) == 2
    texts = [s.text for s in shapes if isinstance(s, Text)]
    assert texts.count("B") == 1  # the other began to slip without a peak
    assert {"1", "2 ✗", "dashed: at least 7 N·m, at most 9.5 N·m"} <= set(texts)
    assert len([s for s in shapes if isinstance(s, Box)]) == 1
    assert len([s for s in shapes if isinstance(s, Polyline) and s.dashed]) == 2


def test_everything_lies_inside():
    t, y = trace()
    pulls = [DrawnPull(1, 10, 20, True, (12, -30.0), True, (13, 18, -8.0))]
    drawing = trace_drawing(t, y, "lbf·ft", pulls=pulls, limit=(20.0, None))
    for shape in drawing.shapes:
        points = shape.points if isinstance(shape, Polyline) else [(shape.x, shape.y)]
        for x, height in points:
            assert -1 <= x <= drawing.width + 1
            assert -1 <= height <= drawing.height + 1


@pytest.mark.parametrize(
    ("t", "y"), [(np.empty(0), np.empty(0)), (np.zeros(1), np.ones(1)), (np.arange(3.0), np.full(3, np.nan))]
)
def test_hopeless_traces_draw(t, y):
    drawing = trace_drawing(t, y, "N·m", limit=(5.0, None))
    ET.fromstring(to_svg(drawing))


def test_svg_is_well_formed_and_escaped():
    t, y = trace()
    text = to_svg(trace_drawing(t, y, "<N&m>"))
    root = ET.fromstring(text)
    assert root.tag.endswith("svg")
    assert {element.tag.split("}")[1] for element in root.iter()} <= {
        "svg",
        "polyline",
        "rect",
        "circle",
        "text",
    }
    assert "<N&m>" not in text
