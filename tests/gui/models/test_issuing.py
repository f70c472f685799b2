"""A report in the window's language is the one that the command writes."""

from __future__ import annotations

from dataclasses import replace

from analysis.__main__ import COMMANDS
from analysis.pipeline import Asked, read_file
from analysis.report.gather import material_of
from analysis.report.write import content_of, render
from gui.models.issuing import issue_of
from gui.models.settings import Choices
from logger.edges.door import run_door
from tests.analysis.halves import recording
from tests.analysis.sample import ISSUED


def test_command_and_window_write_the_same_german_page(tmp_path):
    file = recording(tmp_path, "in gear", 40.0)
    page = tmp_path / "page.html"
    options = (
        "--language",
        "de",
        "--unit",
        "N·m",
        "--workshop",
        "Hillfoot",
        "--issued",
        str(ISSUED),
        "--out",
        str(page),
    )
    run_door("heldwheel-read", "", COMMANDS, "analysis.doors", ["report", str(file), *options, "--out", str(page)])
    ours = replace(issue_of(Choices(language="de", shop="Hillfoot"), "customer", "N·m"), issued=ISSUED)
    written = page.read_bytes()
    assert b'lang="de"' in written
    assert written == render(content_of(material_of(read_file(file, Asked()), Asked()), ours), "html")
