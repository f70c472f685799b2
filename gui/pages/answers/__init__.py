"""The answers of the Compare page, one panel each: its few fields, its picture, its tables."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from gui.pages.answers.base import AnswerPanel
    from gui.shared import Shared

NAMES = ("Groups", "Trend", "Run-in", "Over time", "Plan", "Our repeatability")


def build_answer(name: str, shared: Shared) -> AnswerPanel:
    """Build the panel of an answer; its module is loaded with it."""
    if name == "Trend":
        from gui.pages.answers.trend import TrendPanel

        return TrendPanel(shared)
    if name == "Run-in":
        from gui.pages.answers.order import RunInPanel

        return RunInPanel(shared)
    if name == "Over time":
        from gui.pages.answers.order import WatchPanel

        return WatchPanel(shared)
    if name == "Plan":
        from gui.pages.answers.plan import PlanPanel

        return PlanPanel(shared)
    if name == "Our repeatability":
        from gui.pages.answers.own_scatter import ScatterPanel

        return ScatterPanel(shared)
    from gui.pages.answers.groups import GroupsPanel

    return GroupsPanel(shared)
