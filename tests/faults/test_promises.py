"""Displays, forgeries, power cuts, two of everything: the short forms of the torture."""

import os

import pytest

from tests.faults import displays, floods, forgeries, taken, together
from tests.faults.tally import Campaign

CAMPAIGNS = [displays.CAMPAIGN, floods.CAMPAIGN, together.CAMPAIGN, *forgeries.CAMPAIGNS, *taken.CAMPAIGNS]


@pytest.mark.skipif(os.name == "nt", reason="pipes, terminals and signals of POSIX")
@pytest.mark.parametrize("campaign", CAMPAIGNS, ids=lambda campaign: campaign.name)
def test_what_is_promised_is_kept(campaign: Campaign) -> None:
    tally = campaign.tally(campaign.short)
    assert tally.cases >= campaign.short
    assert not tally.failed, "\n".join(tally.failures)


def test_a_sidecar_has_the_rights_that_the_umask_gives(tmp_path) -> None:
    """It holds the customer's name."""
    from logger.header import JobFacts, Sidecar
    from logger.recordings.sidecar import change_sidecar, sidecar_path

    before = os.umask(0o077)
    try:
        change_sidecar(tmp_path / "a.csv", lambda _: Sidecar(job=JobFacts(customer="a club")))
    finally:
        os.umask(before)
    assert sidecar_path(tmp_path / "a.csv").stat().st_mode & 0o777 == 0o600
    sidecar_path(tmp_path / "a.csv").chmod(0o640)
    change_sidecar(tmp_path / "a.csv", lambda found: found)
    assert sidecar_path(tmp_path / "a.csv").stat().st_mode & 0o777 == 0o640, "a file that is there keeps its own"


def test_a_report_that_cannot_be_written_leaves_the_old_one(tmp_path, monkeypatch) -> None:
    from analysis.report.write import content_of, write_report
    from logger.errors import FileError
    from tests.analysis.sample import issue, material

    page = write_report(content_of(material(), issue()), tmp_path / "r.html")
    before = page.read_bytes()

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(FileError, match="what was there is unchanged"):
        write_report(content_of(material(), issue()), page)
    assert page.read_bytes() == before
    assert [path.name for path in tmp_path.iterdir()] == ["r.html"]


def test_a_defect_of_the_program_has_an_exit_code_of_its_own(monkeypatch, capsys) -> None:
    """1 means outside the limit: nothing else may end with it (BSD sysexits.h: 70 is an internal software error)."""
    from logger.edges import door

    def broken(_name: str) -> object:
        raise RuntimeError("a bug")

    monkeypatch.setattr(door, "import_module", broken)
    assert door.run_door("heldwheel-read", "x", {"pulls": ""}, "analysis.doors", ["pulls"]) == door.Exit.DEFECT == 70
    assert "this is a defect of the program" in capsys.readouterr().err


def test_a_counter_is_read_or_refused_however_the_bytes_are_cut() -> None:
    from logger.decoder.build import build_decoder
    from logger.decoder.description import Description
    from logger.edges.toml_file import parse_toml

    text = 'name = "x"\n[lines]\ntemplate = "{counter},{torque}"\n'
    lines = [b"%0100d,%d.5\r\n" % (number, number) for number in range(40)]
    whole, cut = (build_decoder(parse_toml(text, Description, "x")) for _ in range(2))
    at_once = len(whole.feed(b"".join(lines)).columns["torque"])
    assert at_once == sum(len(cut.feed(line).columns["torque"]) for line in lines) == 0
