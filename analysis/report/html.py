"""A report as one HTML page: everything inside, no script that runs, nothing loaded from elsewhere."""

from __future__ import annotations

from functools import cache, partial
from importlib.resources import files
from typing import TYPE_CHECKING

from analysis.report.content import blocks
from analysis.report.drawing import to_svg
from analysis.report.spoken import said
from analysis.report.words import SIMULATED

if TYPE_CHECKING:
    from collections.abc import Sequence

    from jinja2 import Template
    from markupsafe import Markup

    from analysis.report.content import Content

RECORD_OPENS, RECORD_CLOSES = '<script type="application/json" id="heldwheel-report">', "</script>"
"""Between them stands the machine-readable part; a browser takes it for data and runs nothing."""


def to_html(content: Content) -> str:
    """Write a report as HTML. Every text is escaped; the drawing is the only markup that is inserted."""
    from markupsafe import Markup

    # In a script element only "<" could end it early; JSON has it nowhere outside strings.
    record = Markup(content.record.replace("&", "\\u0026").replace("<", "\\u003c").replace(">", "\\u003e"))
    drawn = Markup(to_svg(content.drawing))
    page = _template().render(
        c=content,
        svg=drawn,
        record=record,
        fields=_fields,
        blocks=blocks(content.sections),
        simulated=SIMULATED,
        say=partial(said, language=content.language),
    )
    return page + "\n"


@cache
def _template() -> Template:
    from jinja2 import Environment, StrictUndefined

    environment = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    return environment.from_string(files("analysis.report.templates").joinpath("report.html").read_text("utf-8"))


def _fields(fields: Sequence[tuple[str, str]]) -> Markup:
    """Write labels and values as a description list."""
    from markupsafe import Markup

    pairs = Markup("").join(Markup("<dt>{}</dt><dd>{}</dd>").format(label, value) for label, value in fields)
    return Markup("<dl>{}</dl>").format(pairs)
