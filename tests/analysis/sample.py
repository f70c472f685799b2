"""A made-up reading with everything a report can show, without any file."""

from __future__ import annotations

from datetime import UTC, date, datetime
from typing import Any, get_type_hints

import msgspec
import numpy as np

from analysis.report.material import Figure, Issue, JobLine, Material, PageKind, PullLine
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from analysis.verdict.limits import bounds_from, decide
from logger.header import Axle, Conditions, Correction, Header, JobFacts, Limit, Photo, Test, TransducerFacts

ISSUED = datetime(2026, 5, 17, 18, 0, tzinfo=UTC)
FACTOR = 1.127

LIMIT = Limit(
    quantity="breakaway", kind="min", unit="N·m", lower=50.0, source="invented manual", page="4-12", condition="used"
)


def header(**changes: Any) -> Header:
    """Give a filled header."""
    base = Header(
        started=datetime(2026, 5, 16, 10, 42, tzinfo=UTC),
        simulated=True,
        job=JobFacts(
            number="2026-017",
            customer="the club",
            vehicle="club car 7",
            axle="rear",
            operator="operator A",
            shop="Hillfoot",
        ),
        axle=Axle(type="clutch plate", ratio=3.909, pack_build="2 x 6 plates", shim_mm=0.3),
        test=Test(place="car", held="other side", gear="neutral", side="left", dwell_s=15),
        conditions=Conditions(oil_temperature_c=21, fluid="reference", wheel_fitted=False, brakes_free=True),
        transducer=TransducerFacts(
            name="gauge", serial="7", capacity_nm=200, certificate="C-1", certificate_due=date(2026, 1, 1)
        ),
    )
    return msgspec.structs.replace(base, **changes)


def filled(text: str, base: Header | None = None) -> Header:
    """Give a header with this text in every field that holds one, whatever the records hold today."""

    def fill(record: Any) -> Any:
        hints = get_type_hints(type(record))
        changes: dict[str, Any] = {name: text for name, kind in hints.items() if kind is str}
        for name in hints:
            if isinstance(value := getattr(record, name), msgspec.Struct):
                changes[name] = fill(value)
        return msgspec.structs.replace(record, **changes)

    whole: Header = fill(base or header())
    return msgspec.structs.replace(whole, photos=(Photo(file=text, sha256=text, caption=text),) * 3)


def pull(number: int, breakaway_nm: float, *, reasons: tuple[str, ...] = (), left_out: str = "") -> PullLine:
    """Give one pull of ten seconds."""
    start = 12.0 * number
    peak = Figure(start + 2.2, start + 2.2, breakaway_nm, 0.5, breakaway_nm * FACTOR, 0.9)
    level = Figure(start + 3, start + 8, 41.0, 0.2, 41.0 * FACTOR, 0.7)
    return PullLine(number, start, start + 9, 1, peak, level, True, 0.03, reasons, left_out)


def material(*, pulls: int = 4, limit: Limit | None = LIMIT, head: Header | None = None, **changes: Any) -> Material:
    """Give the material of a report; the last pull but one is not valid."""
    lines = tuple(
        pull(i + 1, 48.9 + 0.3 * i, reasons=("ramp too fast: jerked",) if i == pulls - 2 else ()) for i in range(pulls)
    )
    time_s = np.arange(0, 12.0 * (pulls + 1) + 12, 0.05)
    torque = np.where((time_s % 12 > 1) & (time_s % 12 < 9) & (time_s > 12), 45.0, 0.0)
    rows = (
        BudgetRow(Input("calibration", 1.0, 0.005, "1", shared=True, note="certificate"), 55.0),
        BudgetRow(Input("repeats", 0.0, 0.55, "N·m", 3, note="median of 3 pulls"), 1.0),
    )
    budget = Budget("breakaway", 55.3, "N·m", rows)
    result = None if limit is None else decide(budget.value, budget.u, bounds_from(limit), dof=budget.dof)
    known: dict[str, Any] = {
        "file": "folder/left.csv",
        "sha256": "ab" * 32,
        "state": "closed",
        "header": head or header(),
        "time_s": time_s,
        "torque_nm": torque,
        "factor": FACTOR,
        "fixture": "one stud, length 450 mm",
        "rate_hz": 20.0,
        "zero_nm": 0.1,
        "noise_nm": 0.03,
        "zero_from": "true zero (lever off)",
        "pulls": lines,
        "job": (
            JobLine("breakaway", 1, 55.3, budget.u95, pulls - 1),
            JobLine("rotating mean", 1, 46.2, 0.8, pulls - 1),
        ),
        "result": result,
        "budget": budget,
        "corrections": (Correction(at=ISSUED, reason="seen by the witness", by="operator B"),),
        "problems": ("zero drifted by 0.08 N·m",),
    }
    return Material(**(known | changes))


def issue(kind: PageKind = PageKind.CUSTOMER, **changes: Any) -> Issue:
    """Give an issue."""
    known: dict[str, Any] = {
        "issued": ISSUED,
        "kind": kind,
        "shop": "Hillfoot Workshop",
        "address": "Old Quarry Road 3",
    }
    return Issue(**(known | changes))
