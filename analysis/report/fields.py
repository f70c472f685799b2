"""What is written down about a test, as labels and values of a page; a label without a value does not appear."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date
from typing import TYPE_CHECKING

from analysis.identify.axle_type import seen_words
from analysis.identify.ratio import PROPSHAFT_ERROR_TURNS, read_ratio
from analysis.report.content import APART, clean, in_a_row, listed, own
from logger.edges.lengths import length_words
from logger.edges.units import format_torque
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.report.material import Issue
    from logger.header import Axle, Header, TransducerFacts

Fields = Iterator[tuple[str, str]]


def _filled(pairs: Iterable[tuple[str, str]]) -> Fields:
    for label, value in pairs:
        if value.strip():
            yield label, clean(value)


def counted(axle: Axle) -> str:
    """Describe a ratio that was found by counting, with its limits of error; empty where turns were not recorded."""
    turns, left, right = axle.propshaft_turns, axle.left_turns, axle.right_turns
    if turns is None or left is None or right is None:
        return ""
    off = PROPSHAFT_ERROR_TURNS if axle.propshaft_error_turns is None else axle.propshaft_error_turns
    try:
        found = read_ratio(
            turns, left, right, propshaft_error_turns=off, wheel_error_turns=axle.wheel_error_turns or 0.0
        )
    except InputError:
        return ""
    return f"{found.formula}{APART}, {APART}between {found.low:.3f} and {found.high:.3f}"


def facts(header: Header, issue: Issue) -> Fields:
    """Who, what, when, where: what identifies the item and the test (ISO/IEC 17025, 7.8.2.1)."""
    job, axle = header.job, header.axle
    when = f"{header.started:%Y-%m-%d %H:%M %z}" if header.started else "not recorded"
    ratio = f"ratio {axle.ratio:g}" if axle.ratio else ""
    teeth = f"teeth {own(axle.teeth)}" if axle.teeth.strip() else ""
    shim = "" if axle.shim_mm is None else f"shim {length_words(axle.shim_mm, issue.lengths)}"
    yield from _filled(
        (
            ("job", own(job.number)),
            ("customer", own(job.customer)),
            ("vehicle", own(job.vehicle)),
            ("odometer", own(job.odometer)),
            ("axle", listed(own(job.axle), axle.type, ratio, teeth, own(axle.tag))),
            ("type seen", seen_words(axle.seen)),
            ("ratio", counted(axle)),
            ("pack", listed(own(axle.pack_build), own(axle.friction_material), shim)),
            ("last service", own(axle.last_service)),
            ("as received", own(axle.as_received)),
            ("received", _day(job.received)),
            ("tested", when),
            ("issued", f"{issue.issued:%Y-%m-%d}"),
            ("done at", own(job.site)),
            ("operator", own(job.operator)),
            ("witness", own(job.witness)),
        )
    )


def _day(day: date | None) -> str:
    return "" if day is None else f"{day:%Y-%m-%d}"


def conditions(header: Header, *, full: bool) -> Fields:
    """Give what a comparison depends on."""
    c, test = header.conditions, header.test
    warm = "temperature not recorded" if c.oil_temperature_c is None else f"{c.oil_temperature_c:g} °C"
    oil = map(own, (c.fluid, c.fluid_amount, c.fluid_age, c.fluid_appearance))
    modifier = f"{c.modifier_percent:g} %" if c.modifier_percent else ""
    yield from _filled(
        (
            ("oil", listed(*oil, warm, own(c.oil_temperature_at))),
            ("modifier", listed(own(c.modifier), modifier)),
            ("condition", listed(c.condition or "", f"{c.distance_km:g} km" if c.distance_km is not None else "")),
            ("tyre", own(c.tyre)),
            ("held by", own(test.held_how)),
            ("stands on", own(test.support)),
            ("notes", own(header.job.notes) if full else ""),
        )
    )


def instrument(header: Header, unit: str, rate_hz: float, noise_nm: float) -> Fields:
    """Give the transducer, what its numbers are worth, and how it sampled."""
    t = header.transducer
    accuracy = [
        f"± {value:g} % of {of} (95 %)"
        for value, of in ((t.accuracy_percent_of_reading, "reading"), (t.accuracy_percent_of_full_scale, "full scale"))
        if value is not None
    ]
    delay = f"filter delay {t.filter_delay_s * 1e3:.3g} ms" if t.filter_delay_s else ""
    yield from _filled(
        (
            (
                "transducer",
                listed(own(t.name), own(t.serial), f"firmware {own(t.firmware)}" if t.firmware.strip() else ""),
            ),
            ("capacity", format_torque(t.capacity_nm, unit) if t.capacity_nm else ""),
            ("accuracy", listed(*accuracy) or "not stated"),
            ("certificate", _certificate(t, header)),
            ("checked", own(t.weight_check)),
            ("rate", listed(f"{rate_hz:.4g} samples/s", f"noise {format_torque(noise_nm, unit)}", delay)),
        )
    )


def _certificate(t: TransducerFacts, header: Header) -> str:
    if not t.certificate:
        return "none recorded"
    dated = f"of {t.certificate_date}" if t.certificate_date else ""
    due = f"due {t.certificate_due}" if t.certificate_due else ""
    if t.certificate_due and header.started and header.started.date() > t.certificate_due:
        due += " (EXPIRED at the time of the test)"
    return listed(in_a_row(*(part for part in (own(t.certificate), dated) if part)), due)
