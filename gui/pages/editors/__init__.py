"""Where the parts of a job card are filled in: job, axle, fixture, limit, transducer, or a dial reading instead."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from gui.pages.editors.base import Editor
    from gui.shared import Shared
    from gui.tester import Tester


def build_editor(name: str, shared: Shared, tester: Tester) -> Editor:
    """Build the editor of a part of the job card; its module is loaded with it."""
    if name == "Job":
        from gui.pages.editors.job import JobEditor

        return JobEditor(tester)
    if name == "Axle":
        from gui.pages.editors.axle import AxleEditor

        return AxleEditor(shared, tester.card)
    if name == "Fixture":
        from gui.pages.editors.fixture import FixtureEditor

        return FixtureEditor(shared, tester.card, lambda: tester.worker)
    if name == "Limit":
        from gui.pages.editors.limit import LimitEditor

        return LimitEditor(shared, tester.card)
    if name == "Transducer":
        from gui.pages.editors.transducer import TransducerEditor

        return TransducerEditor(shared, tester)
    from gui.pages.editors.dial import DialEditor

    return DialEditor(shared, tester)
