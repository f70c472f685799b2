"""The page of a job whose torques were read from a dial: each reading as a ring, no trace behind it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from analysis.report.content import APART, LONGEST_NOTE, Headline, PageTable, Section, clean, own
from analysis.report.drawing import (
    BAND,
    INK,
    LIMIT,
    MUTED,
    RULE,
    WRONG,
    Box,
    Drawing,
    Polyline,
    Ring,
    Shape,
    Text,
    ticks,
)
from analysis.report.material import PageKind
from analysis.report.page import Page
from logger.edges.units import minus, torque_factor

if TYPE_CHECKING:
    from collections.abc import Iterator

    from analysis.report.material import JobLine, Material

LEFT, TOP, BELOW = 38.0, 15.0, 15.0
"""Room beside the picture for figures, above it for its title, below it for the readings' numbers; points."""

WIDEST = 60.0
"""Between two readings, points: a few stay together on a wide page."""


class DialPage(Page):
    """Turns the readings of a dial into text."""

    __slots__ = ()

    def headline(self, line: JobLine) -> Headline:
        """Give one judged torque in large figures."""
        made = super().headline(line)
        return Headline(made.label, made.value, made.remark.replace(" pull", " reading"))

    def drawing(self) -> Drawing:
        """Draw every reading with its interval, and the limit."""
        width, height = self.issue.paper.width, 86.0 if self.issue.kind is PageKind.ENGINEER else 150.0
        lines, per_unit = self.material.dial, torque_factor(self.unit)
        ends = [nm / per_unit for line in lines for nm in (line.nm - line.u95_nm, line.nm + line.u95_nm)]
        bounds = self.material.result.bounds if self.material.result is not None else None
        limits = [] if bounds is None else [b / per_unit for b in (bounds.lower, bounds.upper) if b is not None]
        low, high = min((0.0, *ends, *limits)), 1.08 * max((1e-9, *ends, *limits))
        bottom = height - BELOW

        def y(value: float) -> float:
            return round(TOP + (bottom - TOP) * (high - value) / (high - low), 2)

        shapes: list[Shape] = []
        if bounds is not None:
            top = y(high if bounds.upper is None else bounds.upper / per_unit)
            foot = y(low if bounds.lower is None else bounds.lower / per_unit)
            shapes.append(Box(LEFT, top, width - LEFT - 6, round(foot - top, 2), BAND))
        for value in ticks(low, high, 5):
            shapes.append(Polyline(((LEFT, y(value)), (width - 6, y(value))), RULE, 0.4))
            shapes.append(Text(LEFT - 4, y(value) + 2.5, minus(f"{value:g}"), anchor="end"))
        shapes += (Polyline(((LEFT, y(v)), (width - 6, y(v))), LIMIT, 0.8, dashed=True) for v in limits)
        step = min(WIDEST, (width - LEFT - 6) / (len(lines) + 1))
        for place, line in enumerate(lines, 1):
            x, colour = round(LEFT + place * step, 2), WRONG if line.left_out else INK
            upright = ((x, y((line.nm - line.u95_nm) / per_unit)), (x, y((line.nm + line.u95_nm) / per_unit)))
            shapes += [Polyline(upright, colour, 0.8), Ring(x, y(line.nm / per_unit), colour)]
            number = f"{line.number} ✗" if line.left_out else f"{line.number}"
            shapes.append(Text(x, bottom + 11, number, 7, MUTED, "middle"))
        shapes.append(Text(LEFT, TOP - 6, f"torque at the axle{APART}, {self.unit}", 7.5, INK, bold=True))
        return Drawing(width, height, tuple(shapes), f"{len(lines)} readings of a dial with their intervals")

    def legend(self) -> str:
        """Explain the drawing's marks."""
        shaded = f"{APART}; {APART}shaded: conforms" if self.material.result is not None else ""
        return f"Ring: a reading at the axle, with its interval (95 %){shaded}."

    def pulls(self) -> Iterator[Section]:
        """List the readings."""
        rows = tuple(
            (
                f"{line.number}",
                line.quantity,
                line.shown,
                line.about,
                self.torque(line.nm, line.u95_nm),
                own(line.left_out, 150),
            )
            for line in self.material.dial
        )
        heads = ("no.", "what was read", "dial", "scale", f"at the axle, {self.unit}", "remark")
        dim = tuple(place for place, line in enumerate(self.material.dial) if line.left_out)
        yield Section("Readings of the dial", table=PageTable(heads, rows, (0, 4), dim))

    def instrument(self) -> tuple[tuple[str, str], ...]:
        """Say that nothing was recorded."""
        return (("read from", "a dial, by eye; there is no trace"),)

    def corrections(self) -> Iterator[str]:
        """Say what lies between the dial and the torque at the axle."""
        m = self.material
        factor = "" if m.factor is None else f"; torque at the axle = {m.factor:.4f} × torque on the dial"
        yield clean(f"Fixture: {m.fixture}{factor}. Zero: as set on the dial.", LONGEST_NOTE)
        for correction in m.corrections:
            by = f", {own(correction.by)}" if correction.by else ""
            yield clean(f"{correction.at:%Y-%m-%d %H:%M}{by}: {own(correction.reason, LONGEST_NOTE)}", LONGEST_NOTE)

    def recording(self, half: Material) -> str:
        """Say what the file is."""
        changed = "" if half.state == "closed" else ", NOT as it was signed"
        return f"readings of a dial{changed}"
