"""Groups of recordings as the Compare page shows them; the reading and the statistics run in the worker."""

from __future__ import annotations

import contextlib
import math
import statistics
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from analysis.compare.runs import LEFT_OUT, Quantity, Run, text_of
from gui.models.sheets import QuantityScale, Sheet, Written, left_out_sheet, notes_sheet, p_words, sheets

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.comparisons import Effect, Equivalence
    from analysis.compare.groups import Comparison

# Facts that are one per recording group nothing; tags that are common to group by come first.
NEVER_BY = ("file", "started", "sha256")
MOST_GROUPS = 20


@dataclass(frozen=True, slots=True)
class Common:
    """What every question asks about: the quantity, and the tag that names the fill or build."""

    quantity: str = "breakaway"
    unit: str = "fill"


@dataclass(frozen=True, slots=True)
class ComparisonAsked:
    """What is compared with what."""

    # by, control, block: tags, and the group that others are compared with; empty for the first one, no block
    by: str = ""
    control: str = ""
    block: str = ""
    all_pairs: bool = False  # every group against every other
    margin: float | None = None  # difference that counts as no change, SI
    anyway: str = ""  # reason for comparing what should not be compared


@dataclass(frozen=True, slots=True)
class Groups:
    """A comparison, or why it is refused."""

    comparison: Comparison | None = None
    refusals: tuple[str, ...] = ()


def find_recordings(folder: Path, search: str) -> list[tuple[str, str]]:
    """Give the recordings that a search finds, in order of name, and what changes with each or its sheets."""
    from gui.models.archive import find_tests
    from logger.recordings.axles import sheets_of

    sheets = _state_of(*sheets_of(folder))
    return [(path, f"{path} {_file_state(path)} {sheets}") for path in sorted(find_tests(folder, search))]


def _file_state(path: str) -> str:
    from logger.recordings.sidecar import sidecar_path

    return _state_of(Path(path), Path(sidecar_path(path)))


def _state_of(*files: Path) -> str:
    """Give what changes when one of these files does."""
    said = []
    for file in files:
        with contextlib.suppress(OSError):
            facts = file.stat()
            said += [facts.st_size, facts.st_mtime_ns]
    return str(said)


def read_runs(paths: Sequence[str]) -> list[Run | str]:
    """Read some recordings, in their order; one that cannot be read is a text that says why."""
    from analysis.pipeline import read_files
    from analysis.rows.summary import run_of

    return [
        run_of(reading) if reading.ok else f"{Path(reading.file).name}: {'; '.join(reading.problems)}"
        for reading in read_files(list(paths))
    ]


def compare_groups(runs: Sequence[Run], common: Common, question: ComparisonAsked) -> Groups:
    """Compare.

    Raises:
        InputError: Fewer than two groups; the text says what to do.
    """
    from analysis.compare.comparability import NotComparableError
    from analysis.compare.groups import compare

    try:
        found = compare(
            runs,
            Quantity(common.quantity),
            by=question.by,
            control=question.control or None,
            unit=common.unit,
            block=question.block,
            against="all pairs" if question.all_pairs else "control",
            margin=question.margin,
            anyway=question.anyway,
        )
    except NotComparableError as refused:
        return Groups(refusals=refused.refusals)
    return Groups(found)


@dataclass(frozen=True, slots=True)
class Tags:
    """The tags of some recordings, by what they are good for."""

    groups: tuple[str, ...] = ()  # those that divide them into two to twenty groups, the fewest first
    numbers: tuple[str, ...] = ()  # those that hold two or more different numbers and no words: what a trend can follow
    all: tuple[str, ...] = ()  # every tag that may name a fill, a block, an operator


def tags_of(runs: Sequence[Run]) -> Tags:
    """Look through the tags of recordings."""
    values: dict[str, set[str]] = {}
    for run in runs:
        for tag, value in run.tags.items():
            if tag not in NEVER_BY and (text := text_of(value)):
                values.setdefault(tag, set()).add(text)
    groups = [tag for tag, seen in values.items() if 2 <= len(seen) <= MOST_GROUPS]
    numbers = [tag for tag, seen in values.items() if len(seen) > 1 and all(map(_number, seen))]
    return Tags(
        tuple(sorted(groups, key=lambda tag: (len(values[tag]), tag))), tuple(sorted(numbers)), tuple(sorted(values))
    )


def _number(text: str) -> bool:
    try:
        return math.isfinite(float(text))
    except ValueError:
        return False


def groups_in(runs: Sequence[Run], by: str) -> list[str]:
    """Give the groups that a tag makes, in order of appearance."""
    return [name for name in dict.fromkeys(text_of(run.tags.get(by)) for run in runs) if name]


# ---------------------------------------------------------------------- in words


def says(effect: Effect) -> str:
    """Say what a difference shows: by sign and word."""
    if not effect.shown:
        return "– no difference shown"
    return "▲ higher" if effect.difference.value > 0 else "▼ lower"


def headline(found: Comparison, scale: QuantityScale) -> str:
    """Give the answer in one or two sentences: effect and interval first."""
    if not found.effects:
        return "No difference can be stated: a comparison needs two fills or more in a group and in its control."
    if len(found.effects) > 2:
        shown = sum(says(effect)[0] != "–" for effect in found.effects)
        return f"A difference is shown in {shown} of {len(found.effects)} pairs."
    lines = []
    for effect in found.effects:
        d = effect.difference
        size = f"{scale.signed(d.value)} {scale.unit}".strip()
        word = "no difference shown" if says(effect)[0] == "–" else says(effect)[2:]
        lines.append(
            f"{effect.treated} against {effect.control}: {size} "
            f"(95 %: {scale.span(d.low, d.high, signed=True)}), {word}."
        )
    return "\n".join(lines)


def difference_sheet(found: Comparison, scale: QuantityScale) -> Sheet:
    """Give the differences as a table: size and interval first, p and method last."""
    heads = ["Group", "Against", f"Difference ({scale.unit})" if scale.unit else "Difference", "95 % interval"]
    heads += ["% (95 %)", "Finding"]
    margin = next((same.margin for same in found.equivalences.values()), 0.0)
    more = [
        (bool(found.bootstrap), "Bootstrap 95 %"),
        (bool(found.equivalences), f"Same within ± {scale.asked(margin)}"),
    ]
    heads += ["p", "Method", *(head for on, head in more if on), "Fills"]
    rows = []
    for effect in found.effects:
        d = effect.difference
        row = [effect.treated, effect.control, scale.signed(d.value), scale.span(d.low, d.high, signed=True)]
        row += [_percent(effect, scale), says(effect), p_words(scale.display, effect.p), effect.method]
        if found.bootstrap:
            boot = found.bootstrap.get(effect.treated) if effect.control == found.groups[0].name else None
            row.append("–" if boot is None else scale.span(boot.low, boot.high, signed=True))
        if found.equivalences:
            same = found.equivalences.get(effect.treated) if effect.control == found.groups[0].name else None
            row.append("–" if same is None else same_words(same, scale))
        row.append(f"{effect.n_treated} and {effect.n_control}")
        rows.append(tuple(row))
    texts = {at for at, head in enumerate(heads) if head in {"Group", "Against", "Finding", "Method", more[1][1]}}
    return Sheet("Differences", tuple(heads), tuple(rows), frozenset(texts))


def _percent(effect: Effect, scale: QuantityScale) -> str:
    if effect.ratio is None:
        return "–"
    percents = [(v - 1) * 100 for v in (effect.ratio.value, effect.ratio.low, effect.ratio.high)]
    value, low, high = (("+" if v > 0 else "") + scale.display.number(v, 1) for v in percents)
    return f"{value} ({low} to {high})"


def same_words(same: Equivalence, scale: QuantityScale) -> str:
    """Say whether two groups are the same within the margin, with the interval that says so."""
    what = "yes" if same.equivalent else "not shown"
    d = same.difference
    return f"{what} (90 %: {scale.span(d.low, d.high, signed=True)})"


def group_sheet(found: Comparison, scale: QuantityScale) -> Sheet:
    """Give the groups as a table."""
    heads = ("Group", "Fills", "Recordings", "Pulls", "Median", "Mean", "95 % interval", "SD of fills")
    rows = []
    for group in found.groups:
        figures = [scale.number(v) for v in (statistics.median(group.values), group.mean)]
        span = "one fill only" if math.isnan(group.low) else scale.span(group.low, group.high)
        counts = [str(n) for n in (len(group.units), group.runs, group.pulls)]
        rows.append((group.name, *counts, *figures, span, scale.number(group.sd)))
    return Sheet("Groups", heads, tuple(rows))


def group_sheets(found: Comparison, scale: QuantityScale, files: Sequence[str] = ()) -> list[Sheet]:
    """Give everything beneath the picture."""
    notes = [f"Not recorded, so not checked: {line}" for line in found.comparability.unknown]
    if not math.isnan(found.overall_p):
        p = p_words(scale.display, found.overall_p)
        notes.insert(0, f"Against “no group differs”: p {p} (one-way analysis of variance)")
    if not math.isnan(found.between_sd):
        notes.append(f"Scatter from fill to fill: {scale.words(found.between_sd)}")
    if not math.isnan(found.within_sd):
        notes.append(f"Scatter from recording to recording of one fill: {scale.words(found.within_sd)}")
    return sheets(
        difference_sheet(found, scale) if found.effects else None,
        group_sheet(found, scale),
        notes_sheet(notes),
        left_out_sheet(found.remarks, found.excluded, files),
    )


def warnings_of(found: Comparison) -> list[str]:
    """Give what may explain a difference besides the groups, or weakens what is said of them."""
    return [*(line for line in found.remarks if LEFT_OUT not in line), *found.comparability.warnings]


def written(found: Comparison) -> Written:
    """Give a comparison as it is written: the groups as a table, everything as JSON."""
    rows: list[tuple[str | float | None, ...]] = [
        ("group", "fills", "recordings", "pulls", "median", "mean", "low_95", "high_95", "sd")
    ]
    for group in found.groups:
        counts = (float(len(group.units)), float(group.runs), float(group.pulls))
        rows.append((group.name, *counts, statistics.median(group.values), group.mean, group.low, group.high, group.sd))
    rows += [(), ("treated", "control", "difference", "low_95", "high_95", "ratio", "p", "method")]
    for effect in found.effects:
        d, ratio = effect.difference, effect.ratio
        share = None if ratio is None else ratio.value
        rows.append((effect.treated, effect.control, d.value, d.low, d.high, share, effect.p, effect.method))
    return Written(tuple(rows), found.to_json(), found.simulated)
