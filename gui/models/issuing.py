"""What the shop puts on every report: name, address, who authorises, paper."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from analysis.report.material import Issue, PageKind, PaperSize

if TYPE_CHECKING:
    from gui.models.settings import Choices

PAPERS = ((str(PaperSize.A4), "A4, 210 × 297 mm"), (str(PaperSize.LETTER), "Letter, 8.5 × 11 inches"))


def issue_of(choices: Choices, reader: str, unit: str) -> Issue:
    r"""Give the issue of a report that is written now.

    >>> from gui.models.settings import Choices
    >>> issue_of(Choices(address="Old Quarry Road 3 / Hillfoot"), "customer", "N·m").address
    'Old Quarry Road 3\nHillfoot'
    """
    return Issue(
        datetime.now().astimezone().replace(microsecond=0),
        PageKind(reader),
        unit,
        choices.shop.strip(),
        "\n".join(line.strip() for line in choices.address.split("/")),
        authorised=choices.authorised.strip(),
        paper=PaperSize(choices.paper),
        lengths=choices.lengths,
        language=choices.language,
    )
