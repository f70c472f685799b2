"""Compare groups of recordings by any tag: effect and interval first, then p.

The unit of experiment is a fill (or build), not a pull: pulls are taken together to runs, runs to fills, and the
statistics see one value per fill. Exclusions follow the rules stated beforehand and are counted.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import TYPE_CHECKING, Literal

from analysis.compare import comparability, comparisons
from analysis.compare.runs import ExperimentalUnit, Quantity, Run, text_of, units_of
from analysis.compare.variance import OneWay, one_way
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.compare.comparability import Comparability
    from analysis.compare.comparisons import Effect, Equivalence, Interval

Against = Literal["control", "all pairs"]


@dataclass(frozen=True, slots=True)
class Group:
    """One group."""

    name: str  # the tag's value
    units: tuple[ExperimentalUnit, ...]  # its fills
    # mean, sd: over the fills; ``sd`` NaN for a single fill
    mean: float
    sd: float
    # low, high: 95 % interval of the mean; NaN for a single fill
    low: float
    high: float

    @property
    def values(self) -> list[float]:
        """One value per fill."""
        return [unit.value for unit in self.units]

    @property
    def runs(self) -> int:
        """Recordings."""
        return sum(unit.runs for unit in self.units)

    @property
    def pulls(self) -> int:
        """Pulls used."""
        return sum(unit.pulls for unit in self.units)


@dataclass(frozen=True, slots=True)
class Comparison:
    """What a comparison says."""

    quantity: Quantity  # what was compared
    groups: tuple[Group, ...]  # in the order of first appearance, the control first
    effects: tuple[Effect, ...]  # each group against the control, or all pairs
    bootstrap: Mapping[str, Interval]  # by treated group, where there are enough fills
    equivalences: Mapping[str, Equivalence]  # by treated group, where a margin was stated
    # between_sd, within_sd: scatter from fill to fill and from run to run within a fill; NaN where not known
    between_sd: float
    within_sd: float
    overall_p: float  # p value of "no group differs" (one-way analysis of variance) for more than two groups; else NaN
    comparability: Comparability  # what speaks against comparing
    excluded: tuple[str, ...]  # every pull and recording excluded, with its reason
    remarks: tuple[str, ...]  # what a reader must know
    simulated: bool  # whether any recording is simulated

    def to_json(self) -> dict[str, object]:
        """Give the comparison as plain values (schema ``heldwheel groups 1``)."""
        return {
            "schema": "heldwheel groups 1",
            "quantity": self.quantity.value,
            "unit": self.quantity.unit,
            "simulated": self.simulated,
            "groups": [
                {
                    "name": g.name,
                    "fills": [
                        {"name": u.name, "value": u.value, "runs": u.runs, "pulls": u.pulls, "block": u.block or None}
                        for u in g.units
                    ],
                    "mean": g.mean,
                    "sd": _finite(g.sd),
                    "interval": [_finite(g.low), _finite(g.high)],
                }
                for g in self.groups
            ],
            "effects": [_effect_json(e) for e in self.effects],
            "bootstrap": {name: [i.low, i.high] for name, i in self.bootstrap.items()},
            "equivalence": {
                name: {
                    "margin": e.margin,
                    "interval_90": [e.difference.low, e.difference.high],
                    "p": e.p,
                    "equivalent": e.equivalent,
                }
                for name, e in self.equivalences.items()
            },
            "sd_between_fills": _finite(self.between_sd),
            "sd_within_fills": _finite(self.within_sd),
            "overall_p": _finite(self.overall_p),
            "refusals": list(self.comparability.refusals),
            "warnings": [*self.comparability.warnings, *self.comparability.unknown],
            "excluded": list(self.excluded),
            "remarks": list(self.remarks),
        }


def _finite(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _effect_json(effect: Effect) -> dict[str, object]:
    ratio = effect.ratio
    return {
        "treated": effect.treated,
        "control": effect.control,
        "difference": effect.difference.value,
        "interval": [effect.difference.low, effect.difference.high],
        "ratio": ratio and ratio.value,
        "ratio_interval": ratio and [ratio.low, ratio.high],
        "p": effect.p,
        "df": effect.df,
        "fills": [effect.n_treated, effect.n_control],
        "method": effect.method,
    }


def compare(
    runs: Sequence[Run],
    quantity: Quantity,
    *,
    by: str,
    control: str | None = None,
    unit: str = "fill",
    block: str = "",
    against: Against = "control",
    margin: float | None = None,
    anyway: str = "",
) -> Comparison:
    """Compare groups of recordings.

    Args:
        runs: The recordings.
        quantity: What is compared.
        by: Tag that names the group.
        control: Group that the others are compared with; the first one if not given.
        unit, block: Tags that name the fill, and the block (day, operator) for a comparison within blocks.
        against: Dunnett's or Tukey's procedure where there are more than two groups.
        margin: Difference that counts as no change, stated beforehand.
        anyway: Reason for comparing what the comparability check refuses.

    Raises:
        InputError: Fewer than two groups, or an unknown control.
        NotComparableError: A refused comparison without a reason.
    """
    units, remarks = units_of(runs, quantity, by=by, unit=unit, block=block)
    groups = _groups(units, control)
    if len(groups) < 2:
        tags = sorted({tag for run in runs for tag in run.tags})
        raise InputError(
            f"tag '{by}' gives {len(groups)} group; two are needed. Tags found: {', '.join(tags) or 'none'}"
        )
    checked = _checked(runs, groups, (by, unit, block))
    if checked.refusals and not anyway.strip():
        raise comparability.NotComparableError(checked.refusals)
    if checked.refusals:
        remarks.insert(0, f"compared although {'; '.join(checked.refusals)}; reason given: {anyway.strip()}")
    effects = _effects(groups, against, block, remarks)
    bootstrap = {} if block else _bootstrap(groups, effects, remarks)
    equivalences = {} if margin is None else _equivalences(groups, margin, block, remarks)
    fills, of_runs = _scatter([g.values for g in groups]), _scatter([u.of_runs for g in groups for u in g.units])
    return Comparison(
        quantity,
        tuple(groups),
        tuple(effects),
        bootstrap,
        equivalences,
        fills.s_within if fills else math.nan,
        of_runs.s_within if of_runs else math.nan,
        fills.p if fills and len(groups) > 2 else math.nan,
        checked,
        tuple(line for run in runs for line in run.excluded),
        tuple(remarks),
        any(run.simulated for run in runs),
    )


def _checked(runs: Sequence[Run], groups: Sequence[Group], known: tuple[str, str, str]) -> comparability.Comparability:
    """Whether the groups may be compared, and what differs within them."""
    members = _runs_by_group(runs, known[0], [group.name for group in groups])
    checked = comparability.check(members, known=known)
    return replace(checked, warnings=(*checked.warnings, *comparability.mixed(members, known=known)))


def _groups(units: Sequence[ExperimentalUnit], control: str | None) -> list[Group]:
    names = list(dict.fromkeys(unit.group for unit in units))
    if control is not None and control not in names:
        raise InputError(f"there is no group '{control}' to compare with; there are: {', '.join(names) or 'none'}")
    if control is not None:
        names.sort(key=lambda name: name != control)
    return [_group(name, tuple(unit for unit in units if unit.group == name)) for name in names]


def _group(name: str, units: tuple[ExperimentalUnit, ...]) -> Group:
    import numpy as np
    from scipy.special import stdtrit

    values = np.array([unit.value for unit in units])
    n = len(values)
    # Shift first: the digits of a small scatter on a large level are kept.
    mean = float(values[0] + (values - values[0]).mean())
    if n < 2:
        return Group(name, units, mean, math.nan, math.nan, math.nan)
    sd = float(np.sqrt(((values - mean) ** 2).sum() / (n - 1)))
    half = float(stdtrit(n - 1, 0.975)) * sd / math.sqrt(n)
    return Group(name, units, mean, sd, mean - half, mean + half)


def _runs_by_group(runs: Sequence[Run], by: str, names: Sequence[str]) -> dict[str, list[Run]]:
    return {name: [run for run in runs if text_of(run.tags.get(by)) == name] for name in names}


def _effects(groups: Sequence[Group], against: Against, block: str, remarks: list[str]) -> list[Effect]:
    few = [g.name for g in groups if len(g.units) < 2]
    if few:
        remarks.append(
            f"{', '.join(few)}: a single fill, so nothing can be said about the scatter from fill to fill; "
            "values are shown, no interval is stated. A plan says how many fills are needed."
        )
    without_control = against == "control" and groups[0].name in few
    groups = [g for g in groups if g.name not in few]
    if without_control or len(groups) < 2:
        return []
    if block:
        return _within_blocks(groups, against, remarks)
    if len(groups) == 2:
        return [comparisons.welch(groups[1].values, groups[0].values, names=(groups[1].name, groups[0].name))]
    if against == "all pairs":
        return comparisons.tukey({g.name: g.values for g in groups})
    return comparisons.dunnett({g.name: g.values for g in groups[1:]}, groups[0].values, control_name=groups[0].name)


def _by_block(group: Group) -> dict[str, float]:
    """Give a group's value in every block: the mean over its fills there."""
    members: dict[str, list[float]] = {}
    for unit in group.units:
        if unit.block:
            members.setdefault(unit.block, []).append(unit.value)
    return {block: math.fsum(values) / len(values) for block, values in members.items()}


def _block_remarks(groups: Sequence[Group]) -> list[str]:
    """Say what is averaged in a block, and what stands in none or in one that the others have not."""
    said = []
    for group in groups:
        blocks = [unit.block for unit in group.units if unit.block]
        again = sorted({block for block in blocks if blocks.count(block) > 1})
        if again:
            said.append(
                f"{group.name}: more than one fill in {', '.join(again)}: the mean of those stands for the block"
            )
        without = len(group.units) - len(blocks)
        if without:
            said.append(f"{group.name}: {without} fills without a block are not compared")
        elsewhere = set().union(*(_by_block(other) for other in groups if other is not group))
        alone = sorted(set(blocks) - elsewhere)
        if alone:
            said.append(f"{group.name}: {', '.join(alone)} hold no other group and are not compared")
    return said


def _within_blocks(groups: Sequence[Group], against: Against, remarks: list[str]) -> list[Effect]:
    """Compare within blocks: every group with the control, or all pairs, holding together."""
    pairs = [(g, groups[0]) for g in groups[1:]] if against == "control" else list(combinations(groups, 2))
    by_block = {g.name: _by_block(g) for g in groups}
    remarks += _block_remarks(groups)
    return [
        comparisons.paired(by_block[a.name], by_block[b.name], names=(a.name, b.name), family=len(pairs))
        for a, b in pairs
    ]


def _bootstrap(groups: Sequence[Group], effects: Sequence[Effect], remarks: list[str]) -> dict[str, Interval]:
    """Give the bootstrap's intervals as a check; where they say otherwise than the effect's, that is said."""
    least = comparisons.BOOTSTRAP_MIN
    if len(groups[0].units) < least:
        return {}
    found = {g.name: comparisons.bootstrap(g.values, groups[0].values) for g in groups[1:] if len(g.units) >= least}
    for effect in effects:
        boot = found.get(effect.treated) if effect.control == groups[0].name else None
        if boot is not None and (not boot.low <= 0 <= boot.high) is not effect.shown:
            remarks.append(
                f"{effect.treated}: the bootstrap's interval says otherwise; with so few fills it is too narrow, and "
                f"the interval of {effect.method} decides"
            )
    return found


def _equivalences(groups: Sequence[Group], margin: float, block: str, remarks: list[str]) -> dict[str, Equivalence]:
    able = [g for g in groups[1:] if len(g.units) >= 2]
    if len(groups[0].units) < 2 or not able:
        remarks.append("sameness cannot be shown with single fills")
        return {}
    if not block:
        return {g.name: comparisons.equivalence(g.values, groups[0].values, margin) for g in able}
    of = _by_block(groups[0])
    return {
        g.name: comparisons.paired_equivalence(_by_block(g), of, margin, names=(g.name, groups[0].name)) for g in able
    }


def _scatter(groups: Sequence[Sequence[float]]) -> OneWay | None:
    """Analyse values in groups; None where no group holds more than one."""
    return one_way(groups) if len(groups) > 1 and any(len(values) > 1 for values in groups) else None
