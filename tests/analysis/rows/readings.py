"""Readings put together by hand: values at the axle, without a recording behind them."""

from __future__ import annotations

from analysis.uncertainty.budget import Budget, BudgetRow, Input
from analysis.verdict.recorded import RecordingReading
from analysis.verdict.repeats import JobValue
from analysis.verdict.scatter import Prior
from logger.header import Header


def budget(quantity: str, nm: float, u_nm: float = 0.0) -> Budget:
    """Give a torque that rests on one input."""
    return Budget(quantity, nm, "N·m", (BudgetRow(Input("reading", nm, u_nm), 1.0),))


def value(quantity: str, nm: float, u_nm: float = 0.0, direction: int = 1) -> JobValue:
    """Give a job's value of one pull."""
    return JobValue(budget(quantity, nm, u_nm), (nm,), Prior.of(quantity), u_nm, direction=direction)


def reading(*job: JobValue, header: Header | None = None, **more: object) -> RecordingReading:
    """Give a recording's reading with these values."""
    return RecordingReading("made.csv", True, header=Header() if header is None else header, job=job, **more)
