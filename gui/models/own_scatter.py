"""How good the shop's own measuring is: operators, axles and repeats by their tags, or two ways side by side."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.compare.runs import Quantity
from gui.models.sheets import QuantityScale, Sheet, Written, left_out_sheet, p_words, sheets, significant

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.repeatability import LimitsOfAgreement, Study
    from analysis.compare.runs import Run
    from gui.models.comparing import Common


@dataclass(frozen=True, slots=True)
class StudyAnswer:
    """A study of operators x axles x repeats; ``values[axle][operator]`` are its readings, SI."""

    study: Study
    axles: tuple[str, ...]
    operators: tuple[str, ...]
    values: tuple[tuple[tuple[float, ...], ...], ...]
    simulated: bool


@dataclass(frozen=True, slots=True)
class PairsAnswer:
    """Two ways of measuring on the same axles; ``a`` and ``b`` are their means per axle, SI."""

    ways: tuple[str, str]
    a: tuple[float, ...]
    b: tuple[float, ...]
    agreement: LimitsOfAgreement
    simulated: bool


def study_of(runs: Sequence[Run], common: Common, operator: str, axle: str) -> StudyAnswer:
    """Analyse a study.

    Raises:
        InputError: Cells that are not filled alike; the text lists them.
    """
    from analysis.compare.repeatability import cells, study

    quantity = Quantity(common.quantity)
    values = cells(runs, quantity, axle=axle, operator=operator)
    names = [tuple(sorted({str(run.tags.get(tag, "")) for run in runs})) for tag in (axle, operator)]
    found = study(values, unit=quantity.unit)
    nested = tuple(tuple(tuple(map(float, cell)) for cell in row) for row in values)
    return StudyAnswer(found, names[0], names[1], nested, any(run.simulated for run in runs))


def pairs_of(runs: Sequence[Run], common: Common, way: str, axle: str) -> PairsAnswer:
    """Compare two ways of measuring.

    Raises:
        InputError: Not two ways, or fewer than three axles that both have measured.
    """
    from analysis.compare.repeatability import agreement, pairs

    names, a, b = pairs(runs, Quantity(common.quantity), axle=axle, way=way)
    simulated = any(run.simulated for run in runs)
    return PairsAnswer(names, tuple(a.tolist()), tuple(b.tolist()), agreement(a, b), simulated)


# ---------------------------------------------------------------------- in words


def study_headline(answer: StudyAnswer, scale: QuantityScale) -> str:
    """Say what a workshop can do with it."""
    found = answer.study
    who = (
        "operators differ more than their repeats do"
        if found.reproducibility > found.repeatability
        else "repeats scatter more than operators differ"
    )
    return (
        f"One reading is good to ± {scale.words(found.half_width)} (95 %), whoever takes it; {who}.\n"
        f"Two readings of one axle by one operator differ by more than {scale.words(found.repeat_limit)} only once in "
        "twenty."
    )


def study_sheets(answer: StudyAnswer, scale: QuantityScale, files: Sequence[str] = ()) -> list[Sheet]:
    """Give the components, the analysis of variance, and the readings."""
    found, display = answer.study, scale.display
    parts = (
        ("Same operator, repeated", found.repeatability, "repeats"),
        ("Operator to operator", found.reproducibility, "reproducibility"),
        ("Measurement, total", found.measuring, f"{display.number(found.percent, 0)} % of the whole spread"),
        ("Axle to axle", found.axles, f"distinct levels it can tell apart: {found.levels}"),
        ("Overall", found.total, ""),
    )
    rows = tuple(
        (name, scale.number(sd), f"{display.number((sd / found.total) ** 2 * 100, 1)} %", about)
        for name, sd, about in parts
    )
    components = Sheet(
        "Components", ("Scatter", f"SD, {scale.title}", "Share of variance", "Meaning"), rows, frozenset({0, 3})
    )
    return sheets(components, _variance(found, scale), _readings(answer, scale), left_out_sheet((), (), files))


def _variance(found: Study, scale: QuantityScale) -> Sheet:
    """Give the analysis of variance; squares stay in SI, as a statistician's table has them."""
    display = scale.display
    rows = []
    for row in found.table:
        f = "–" if row.f is None else significant(display, row.f)
        p = "–" if row.p is None else p_words(display, row.p)
        rows.append((row.source, significant(display, row.ss, 4), str(row.df), significant(display, row.ms, 4), f, p))
    pooled = " (interaction pooled)" if found.pooled else ""
    unit = "" if scale.quantity.unit == "1" else f", ({scale.quantity.unit})²"
    heads = (f"Source{pooled}", f"Sum of squares{unit}", "Degrees of freedom", "Mean square", "F", "p")
    return Sheet("Variance", heads, tuple(rows))


def _readings(answer: StudyAnswer, scale: QuantityScale) -> Sheet:
    rows = [
        (axle, operator, "   ".join(scale.number(v) for v in cell), scale.number(float(np.mean(cell))))
        for axle, row in zip(answer.axles, answer.values, strict=True)
        for operator, cell in zip(answer.operators, row, strict=True)
    ]
    return Sheet("Readings", ("Axle", "Operator", "Repeats", "Mean"), tuple(rows), frozenset({0, 1}))


def pairs_headline(answer: PairsAnswer, scale: QuantityScale) -> str:
    """Say how two ways of measuring agree."""
    found = answer.agreement
    apart = f"{scale.number(abs(found.bias))} {scale.unit}".strip()
    than = "lower" if found.bias < 0 else "higher"
    mean = scale.span(found.low, found.high, signed=True)
    low, high = scale.signed(found.limit_low), scale.signed(found.limit_high)
    limits = f"{low} and {high} {scale.unit}".strip()
    return (
        f"{answer.ways[0]} reads {apart} {than} than {answer.ways[1]} (95 %: {mean}), {found.n} axles.\n"
        f"In 95 % of axles a single difference lies between {limits}."
    )


def pairs_sheets(answer: PairsAnswer, scale: QuantityScale, files: Sequence[str] = ()) -> list[Sheet]:
    """Give the figures and the pairs."""
    found = answer.agreement
    rows = (
        (
            "Mean difference",
            scale.signed(found.bias),
            scale.span(found.low, found.high, signed=True),
            "95 % interval of the mean",
        ),
        (
            "Single differences",
            scale.number(found.sd),
            scale.span(found.limit_low, found.limit_high, signed=True),
            "limits of agreement, 95 % of axles",
        ),
    )
    figures = Sheet("Figures", ("Figure", scale.title, "Interval", "Meaning"), rows, frozenset({0, 3}))
    pairs = tuple(
        (scale.number(a), scale.number(b), scale.signed(a - b)) for a, b in zip(answer.a, answer.b, strict=True)
    )
    return sheets(
        figures, Sheet("Pairs", (*answer.ways, "Difference"), pairs, frozenset()), left_out_sheet((), (), files)
    )


def study_written(answer: StudyAnswer, scale: QuantityScale) -> Written:
    """Give a study as it is written: the readings as a table, everything as JSON."""
    from dataclasses import asdict

    rows: list[tuple[str | float | None, ...]] = [("axle", "operator", "repeat", scale.quantity.value)]
    for axle, row in zip(answer.axles, answer.values, strict=True):
        for operator, cell in zip(answer.operators, row, strict=True):
            rows += [(axle, operator, float(number), value) for number, value in enumerate(cell, 1)]
    plain = {"schema": "heldwheel repeatability 1", "simulated": answer.simulated, **asdict(answer.study)}
    return Written(tuple(rows), plain, answer.simulated)


def pairs_written(answer: PairsAnswer, _scale: QuantityScale) -> Written:
    """Give two ways of measuring as they are written."""
    from dataclasses import asdict

    rows: list[tuple[str | float | None, ...]] = [answer.ways, *zip(answer.a, answer.b, strict=True)]
    plain = {
        "schema": "heldwheel repeatability 1",
        "simulated": answer.simulated,
        "ways": list(answer.ways),
        **asdict(answer.agreement),
    }
    return Written(tuple(rows), plain, answer.simulated)
