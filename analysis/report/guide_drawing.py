"""The drawings of the guide: wheel held, lever, zero, ramp, keep turning. Drawn here, not to scale.

Offers ``guide_drawing``: five panels beside one another, as shapes that HTML, PDF and the window show alike.
"""

from __future__ import annotations

import math
from functools import reduce

from analysis.report.drawing import ACCENT, BAND, INK, MUTED, STEADY, Box, Drawing, Polyline, Ring, Shape, Text, beside
from analysis.report.spoken import drawn

WIDE, HIGH, GAP = 98.0, 112.0, 8.0
"""One panel and the gap between two, points: five stand on a sheet."""

Point = tuple[float, float]


def guide_drawing(language: str = "en") -> Drawing:
    """Give all five panels in the order of the test, their words in a language."""
    panels = (_held(), _lever(), _zero(), _ramp(), _turning())
    about = "; ".join(panel.about for panel in panels)
    return drawn(reduce(lambda left, right: beside(left, right, GAP, about), panels), language)


def _panel(number: int, title: str, about: str, shapes: list[Shape]) -> Drawing:
    head = Text(0, 9, f"{number}  {title}", 8.5, INK, bold=True)
    return Drawing(WIDE, HIGH, (head, *shapes), about)


def _arc(x: float, y: float, radius: float, start: float = 0.0, end: float = 360.0) -> tuple[Point, ...]:
    """Give points of an arc, degrees anticlockwise from the right."""
    steps = max(2, int(abs(end - start) / 8))
    turned = (math.radians(start + (end - start) * i / steps) for i in range(steps + 1))
    return tuple((round(x + radius * math.cos(a), 2), round(y - radius * math.sin(a), 2)) for a in turned)


def _arrow(points: tuple[Point, ...], colour: str = ACCENT, width: float = 1.6) -> list[Shape]:
    """Draw a line with a head at its end."""
    (x0, y0), (x, y) = points[-2], points[-1]
    along = math.atan2(y - y0, x - x0)
    barbs = [(x - 6 * math.cos(along + turn), y - 6 * math.sin(along + turn)) for turn in (0.5, -0.5)]
    head = (barbs[0], (x, y), barbs[1])
    return [
        Polyline(points, colour, width),
        Polyline(tuple((round(a, 2), round(b, 2)) for a, b in head), colour, width),
    ]


def _tyre(x: float, y: float, wide: float, high: float) -> list[Shape]:
    """Draw a tyre seen from behind."""
    return [
        Box(x, y, wide, high, BAND),
        Polyline(((x, y), (x + wide, y), (x + wide, y + high), (x, y + high), (x, y)), INK),
    ]


def _wheel(x: float, y: float, radius: float) -> list[Shape]:
    """Draw a wheel from outside: tyre, hub and five studs, one of them straight up."""
    shapes: list[Shape] = [Polyline(_arc(x, y, radius), INK, 1.2), Polyline(_arc(x, y, 3), INK)]
    studs = (_arc(x, y, radius * 0.45, 90 + 72 * i, 91 + 72 * i)[0] for i in range(5))
    return shapes + [Polyline(_arc(*stud, 2.2), INK) for stud in studs]


def _held() -> Drawing:
    floor, axle = 96.0, 62.0
    shapes: list[Shape] = [
        Polyline(((0, floor), (WIDE, floor)), INK, 1.2),
        *_tyre(4, 46, 14, 50),
        *_tyre(80, 36, 14, 50),
    ]
    shapes += [Polyline(((18, axle + 8), (80, axle)), INK, 2.4), Polyline(_arc(49, axle + 4, 8), INK, 1.2)]
    shapes += [Polyline(((62, axle + 3), (55, floor), (69, floor), (62, axle + 3)), MUTED, 1.4)]  # the stand
    shapes += [Polyline(((2, 44), (11, 40), (20, 44), (22, floor)), ACCENT, 2.0)]  # the strap over the tyre
    shapes += [Text(0, 30, "held: floor, strap", 7), Text(WIDE, 30, "raised", 7, anchor="end")]
    shapes += [Text(62, 107, "stand", 7, anchor="middle"), Text(4, 107, "not by hand", 7)]
    return _panel(
        1, "Hold one wheel", "one wheel is held by the floor and a strap, the other is raised on a stand", shapes
    )


def _lever() -> Drawing:
    x, y, radius = 46.0, 78.0, 28.0
    stud, hand = (x, y - 0.45 * radius), (x, 22.0)
    shapes = [
        *_wheel(x, y, radius),
        Polyline(((x, y), stud), MUTED, 0.8, dashed=True),
        Polyline((stud, hand), INK, 3.0),
    ]
    shapes += _arrow((hand, (hand[0] + 26, hand[1])))
    shapes += [
        Text(x + 5, 46, "lever", 7),
        Text(x + 30, 33, "pull square", 7, anchor="middle"),
        Text(x - 8, 72, "r", 7.5),
    ]
    return _panel(
        2, "Lever in line", "the lever points outward, in line with wheel centre and stud; the pull is square", shapes
    )


def _zero() -> Drawing:
    x, y, radius = 46.0, 44.0, 24.0
    stud = (x, y + 0.45 * radius)
    shapes = [*_wheel(x, y, radius), Polyline((stud, (x, 98)), INK, 3.0), Text(x + 8, 84, "hangs free", 7)]
    shapes += [Text(x + 8, 98, "0", 13, ACCENT, bold=True), Text(0, 110, "hands off; again at the end", 7)]
    return _panel(3, "Zero", "the lever hangs free, nobody touches it, the zero is taken", shapes)


def _ramp() -> Drawing:
    low, left = 92.0, 8.0
    trace = ((left, low), (left + 12, low), (left + 36, 34), (left + 41, 46), (left + 88, 47))
    shapes: list[Shape] = [Polyline(((left, 20), (left, low), (WIDE, low)), MUTED, 0.8), Polyline(trace, INK, 1.4)]
    shapes += [Ring(left + 36, 34), Text(left + 36, 28, "B", 8, INK, "middle", bold=True)]
    shapes += [
        Polyline(((left + 46, 47), (left + 86, 47)), STEADY, 3.0),
        Text(left + 66, 43, "R", 8, STEADY, "middle", bold=True),
    ]
    shapes += [Text(left + 24, 103, "2 to 3 s", 7, anchor="middle"), Text(WIDE, 103, "time", 7, anchor="end")]
    return _panel(
        4, "Load smoothly", "torque rises smoothly in two to three seconds to B, the breakaway, then stays at R", shapes
    )


def _turning() -> Drawing:
    x, y, radius = 46.0, 58.0, 26.0
    shapes = [*_wheel(x, y, radius), *_arrow(_arc(x, y, radius + 8, 200, -120))]
    shapes += [Text(0, 102, "two turns, slowly", 7), Text(0, 111, "nothing moves: stop", 7, INK, bold=True)]
    return _panel(5, "Keep turning", "keep turning slowly for two turns while the wheel moves; otherwise stop", shapes)
