"""Names that play tricks, texts that become code, files that never end: the short forms of the torture."""

import ast
import asyncio
import random
import string
from datetime import UTC, datetime
from pathlib import Path

import pytest

from analysis.pipeline import read_file
from analysis.report.gather import material_of
from analysis.report.material import Issue, PageKind
from analysis.report.pdf import to_pdf
from analysis.report.write import content_of
from gui.models.library import Shelf
from logger.decoder.description import Description, SerialSettings
from logger.edges.confirm import confirm_sending
from logger.edges.console import clean
from logger.edges.door import run_door
from logger.edges.small_file import file_stem
from logger.edges.toml_file import parse_toml
from logger.errors import DescriptionError, InputError, LinkError
from logger.header import Lever
from logger.links.ports import local_port
from logger.links.serial_port import SerialLink
from tests.faults import volume
from tests.faults.tally import Campaign
from tests.faults.targets_reports import EVIL, evil_recording

ROOT = Path(__file__).parents[2]
TRICKY = ["=cmd", "a,b", "x\\n# closed samples=0", "counter", "late", "time_s", "", "9a", "a b", "<b>", "a" * 41, "é"]


@pytest.mark.parametrize("campaign", volume.CAMPAIGNS, ids=lambda campaign: campaign.name)
def test_too_much_of_everything_is_borne(campaign: Campaign) -> None:
    tally = campaign.tally(campaign.short)
    assert not tally.failed, "\n".join(tally.failures)


@pytest.mark.parametrize("name", TRICKY)
@pytest.mark.parametrize("layout", ["notification", "registers"])
def test_no_column_of_a_description_has_a_tricky_name(name: str, layout: str) -> None:
    field = f'{{name = "torque", type = "s16"}}, {{name = "{name}", type = "s16", at = 2, address = 4}}'
    if layout == "notification":
        text = f"[notification]\nfields = [{field.replace(', address = 4', '')}]\n"
    else:
        text = f"[modbus]\nregisters = [{field.replace(', at = 2', '').replace('}, {', ', address = 1}, {', 1)}]\n"
    with pytest.raises(DescriptionError, match=r"column|name"):
        parse_toml(f'name = "x"\nlink = "ble"\n{text}', Description, "x.toml")


NETWORK = [
    "socket://10.0.0.1:7000", "rfc2217://h:1", "loop://", "spy:///dev/ttyUSB0", "hwgrep://.*", "alt://x", "cp2110://",
    "https://x", "", "a\x00b", "x" * 300,
]  # fmt: skip


@pytest.mark.parametrize("port", NETWORK)
@pytest.mark.parametrize("system", ["posix", "nt"])
def test_ports_are_no_network_addresses(port: str, system: str) -> None:
    with pytest.raises(InputError):
        local_port(port, system=system)


@pytest.mark.parametrize("port", ["\\\\server\\pipe\\x", "//server/x", "COM0", "COM1\\..\\x", "-rf", "\\\\.\\pipe\\x"])
def test_a_port_on_windows_is_a_com_port(port: str) -> None:
    with pytest.raises(InputError):
        local_port(port, system="nt")


@pytest.mark.parametrize(
    "port", ["/etc/passwd", "/dev/../etc/passwd", "/dev/null", "-rf", "/", "/dev/zero", "//server/x"]
)
def test_what_is_no_terminal_is_not_opened_as_a_port(port: str) -> None:
    with pytest.raises(LinkError):
        asyncio.run(SerialLink(port, SerialSettings()).open())


def test_no_name_leaves_its_folder(tmp_path: Path) -> None:
    rng = random.Random(5)
    odd = [
        "../../etc/passwd",
        "..",
        ".",
        "/",
        "\\\\x\\y",
        "c:\\x",
        "con",
        "NUL",
        "aux.txt",
        "a\x00b",
        "\u202ex",
        "~root",
        "-rf",
        " ",
        "*",
    ]
    names = [*odd, *EVIL, *("".join(rng.choices(string.printable + "éß\u2028", k=9)) for _ in range(2000))]
    shelf = Shelf(tmp_path / "fixtures", Lever)
    for name in names:
        stem = file_stem(name)
        assert 0 < len(stem) <= 70
        assert not set(stem) & set('/\\:*?"<>|.\0\n\r\t~ ')
        assert not stem.startswith("-")
        assert stem.upper() not in {"CON", "PRN", "AUX", "NUL", "COM1", "LPT1"}
        if name in odd and name.strip():
            assert shelf.save(Lever(fixture="hub centre", name=name)).parent == tmp_path / "fixtures"
    assert {p.parent for p in tmp_path.rglob("*.toml")} == {tmp_path / "fixtures"}


def test_a_page_for_print_runs_nothing(tmp_path: Path) -> None:
    for number in range(4):
        path = tmp_path / "evil.csv"
        evil_recording(random.Random(number), path)
        words = EVIL[number::4]
        issue = Issue(datetime(2026, 5, 1, tzinfo=UTC), PageKind("engineer"), "N·m", words[0], words[1], 1, words[2])
        page = to_pdf(content_of(material_of(read_file(path)), issue))
        assert page.startswith(b"%PDF")
        for active in (b"/JS", b"/JavaScript", b"/Launch", b"/URI", b"/EmbeddedFile", b"/AcroForm", b"/SubmitForm"):
            assert active not in page


def test_the_terminal_is_sent_no_commands(capsys: pytest.CaptureFixture[str]) -> None:
    evil = "\x1b]0;gone\x07\x1b[2J\u202e.csv"
    assert run_door("heldwheel-read", "x", {"pulls": ""}, "analysis.doors", ["pulls", evil]) == 2
    out, err = capsys.readouterr()
    assert "gone" in out + err
    assert not set(out + err) & set("\x1b\x07\u202e")
    assert clean(evil).isprintable()


FORBIDDEN = {"pickle", "marshal", "shelve", "yaml", "xmlrpc", "socketserver", "http.server", "ftplib", "dill"}
CALLS = {"eval", "exec", "compile", "__import__", "popen", "start_server", "create_server", "start_unix_server"}


def test_no_code_from_data_and_no_network_service() -> None:
    """Nothing in the program turns data into code, or listens on the network."""
    found = []
    for path in sorted(p for room in ("logger", "analysis", "gui") for p in (ROOT / room).rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [a.name for a in node.names] if isinstance(node, ast.Import | ast.ImportFrom) else []
            names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            found += [f"{path}: {name}" for name in names if name in FORBIDDEN]
            if isinstance(node, ast.Call):
                called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
                owner = getattr(getattr(node.func, "value", None), "id", "")
                if called in CALLS and owner not in ("re", "app", "dialog"):  # a Qt loop is run by exec()
                    found.append(f"{path}:{node.lineno}: {called}")
                found += [f"{path}: shell" for k in node.keywords if k.arg == "shell"]
    assert found == []


def test_what_is_to_be_sent_cannot_be_hidden(capsys: pytest.CaptureFixture[str]) -> None:
    """The text beside a command is somebody else's: it cannot overwrite the line that shows what is sent."""
    confirm_sending("gauge\x1b[1A", b"ERASE\r", "reads the serial number\x1b[2K\rThis sends nothing\u202e", assume=True)
    told = capsys.readouterr().err
    assert "ERASE" in told
    assert not set(told) & set("\x1b\r\u202e")
    assert told.count("\n") == 1


def test_a_hostile_description_sends_nothing_by_itself() -> None:
    """A command in a description is bounded, and what it says it does is shown as text."""
    text = 'name = "x"\n[lines]\ntemplate = "{torque}"\n[commands.start]\nsend = "%s"\n'
    with pytest.raises((DescriptionError, InputError)):
        parse_toml(text % ("A" * 300), Description, "x.toml")
