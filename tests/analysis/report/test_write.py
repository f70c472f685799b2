"""The report: what stands on it, that it is safe, and that the same work gives the same page."""

from __future__ import annotations

import re
from datetime import datetime
from html.parser import HTMLParser

import msgspec
import pytest
from fpdf import FPDF
from hypothesis import given
from hypothesis import strategies as st

from analysis.cautions import cautions_of
from analysis.limits import Rule, State, bounds_from, decide
from analysis.report import words
from analysis.report.material import JobLine, Kind
from analysis.report.write import content_of, render, write_report
from logger.errors import FileError, InputError
from logger.header import Axle, Job, Zero
from tests.analysis.sample import LIMIT, header, issue, material


class Reader(HTMLParser):
    """Collects text, elements and attributes."""

    def __init__(self):
        super().__init__()
        self.texts, self.tags, self.attributes = [], [], []
        self._quiet = 0

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.attributes += attrs
        self._quiet += tag in ("style", "script")

    def handle_endtag(self, tag):
        self._quiet -= tag in ("style", "script")

    def handle_data(self, data):
        if not self._quiet:
            self.texts.append(data)


def read_html(content):
    reader = Reader()
    reader.feed(render(content, "html").decode("utf-8"))
    return reader


def text_of(content):
    return " ".join(" ".join(read_html(content).texts).split())


def texts_of_pdf(content, monkeypatch):
    """Give every text that the PDF is drawn from, with the sizes of its type, and its sheets."""
    drawn, written = [], []
    for name in ("cell", "multi_cell", "text"):
        old = getattr(FPDF, name)

        def noted(self, *args, _old=old, **kwargs):
            if not kwargs.get("dry_run"):
                text = str(args[2]) if len(args) > 2 else str(kwargs.get("text", ""))
                drawn.append((self, text, self.font_size_pt))
            return _old(self, *args, **kwargs)

        monkeypatch.setattr(FPDF, name, noted)
    output = FPDF.output
    monkeypatch.setattr(FPDF, "output", lambda self, *args: (written.append(self), output(self, *args))[1])
    data = render(content, "pdf")
    monkeypatch.undo()
    texts = [(text, size) for pdf, text, size in drawn if pdf in written and text.strip()]
    return texts, len(re.findall(rb"/Type /Page\b(?!s)", data))


def words_of_pdf(content, monkeypatch):
    """Give all that the PDF says as one text."""
    texts, _ = texts_of_pdf(content, monkeypatch)
    return " ".join(" ".join(text for text, _ in texts).split())


# Fields that a test report must carry (ISO/IEC 17025:2017, 7.8.2.1, in own words) and those of the trade's sheet.
EXPECTED = [
    words.TITLE,
    "Hillfoot Workshop",
    "Old Quarry Road 3",
    "the club",
    "club car 7",
    "2026-05-16 10:42",  # performed
    "issued 2026-05-17 18:00",
    "revision 1",
    "operator A",
    "55.3 ±",
    "N·m",
    "within",
    "at least 50 N·m",
    "invented manual, 4-12",
    "three-way",
    "2.5 %",  # the level of risk considered
    "probability of conformity",
    "the other side held",
    "21 °C",
    "1 of 4 pulls not used",
    "jerked",
    "ab" * 32,
    "It does not declare".lower(),
    "not to be copied in part",
    "of nothing else",
    "tested by",
    "SIMULATED DATA",
]


@pytest.mark.parametrize("kind", Kind)
def test_what_a_page_must_carry(kind, monkeypatch):
    content = content_of(material(), issue(kind))
    html = text_of(content).lower()
    pdf = words_of_pdf(content, monkeypatch).lower()
    for text in [*EXPECTED, f"end of {content.identity}"]:
        assert text.lower() in html, text
        assert text.lower() in pdf, text


def test_engineer_sees_everything(monkeypatch):
    content = content_of(material(), issue(Kind.ENGINEER))
    expected = [
        *("calibration", "certificate", "ν", "1.1270 × torque at the sensor", "seen by the witness", "EXPIRED"),
        *("48.90 ± 0.50", "55.11 ± 0.90", "1.19", "Zero 0.10 N·m", "authorised by", *cautions_of(*words.FULL)),
    ]
    html = text_of(content)
    pdf = words_of_pdf(content, monkeypatch)
    for text in expected:
        assert text in html
        assert text in pdf


def test_zero_taken_again_is_shown():
    head = header(zero=Zero(value_nm=0.1, after_nm=-0.15, how="lever off"))
    text = text_of(content_of(material(head=head), issue(Kind.ENGINEER)))
    assert "it had moved by −0.25 N·m" in text


def test_counted_ratio_shows_its_counts():
    axle = Axle(type="clutch plate", propshaft_turns=18, left_turns=10, right_turns=0)
    text = text_of(content_of(material(head=header(axle=axle)), issue()))
    assert "2 × 18 / 10 = 3.6 (half count" in text
    assert "between 3.575 and 3.625" in text
    coarse = Axle(propshaft_turns=18, left_turns=10, right_turns=0, propshaft_error_turns=0.25)
    assert "between 3.550 and 3.650" in text_of(content_of(material(head=header(axle=coarse)), issue()))
    wrong = Axle(propshaft_turns=18, left_turns=10, right_turns=-10)
    assert "half count" not in text_of(content_of(material(head=header(axle=wrong)), issue()))


def test_customer_page_is_one_sheet(monkeypatch):
    _, sheets = texts_of_pdf(content_of(material(pulls=6), issue()), monkeypatch)
    assert sheets == 1


def test_many_pulls_flow_over_sheets_that_all_carry_the_identity(monkeypatch):
    content = content_of(material(pulls=80), issue(Kind.ENGINEER))
    texts, sheets = texts_of_pdf(content, monkeypatch)
    pdf = " ".join(text for text, _ in texts)
    assert sheets >= 3
    assert pdf.count(content.footer) == sheets
    assert len(re.findall(r"page \d+ of", pdf)) == sheets


def test_measured_data_carry_no_simulated_mark():
    head = header(simulated=False)
    for form in ("html", "pdf"):
        page = render(content_of(material(head=head), issue()), form)
        assert b"SIMULATED" not in page
    assert b"SIMULATED" in render(content_of(material(), issue()), "html")


@pytest.mark.parametrize("kind", Kind)
@pytest.mark.parametrize("form", ["html", "pdf"])
def test_same_work_same_bytes(kind, form):
    assert render(content_of(material(), issue(kind)), form) == render(content_of(material(), issue(kind)), form)


def test_identity_depends_on_recording_reading_and_issue():
    identities = {
        content_of(m, i).identity
        for m, i in (
            (material(), issue()),
            (material(sha256="cd" * 32), issue()),
            (material(pulls=5), issue()),
            (material(head=header(simulated=False)), issue()),
            (material(), issue(revision=2)),
            (material(), issue(remarks="again")),
        )
    }
    assert len(identities) == 6


HOSTILE = "<script>alert(1)</script>\"'&{{7*7}}</style>\u202e\x00\n=1+1"


def test_hostile_text_is_text():
    job = Job(number=HOSTILE, customer=HOSTILE, vehicle=HOSTILE, operator=HOSTILE, notes=HOSTILE)
    limit = msgspec.structs.replace(LIMIT, source=HOSTILE, text=HOSTILE)
    content = content_of(
        material(head=header(job=job), limit=limit, problems=(HOSTILE,), file=HOSTILE + ".csv"),
        issue(Kind.ENGINEER, shop=HOSTILE, address=HOSTILE, remarks=HOSTILE),
    )
    reader = read_html(content)
    assert reader.tags.count("script") == 1  # our own, and it is data
    assert ("type", "application/json") in reader.attributes
    assert not [name for name, _ in reader.attributes if name.startswith("on")]
    assert "<script>alert(1)</script>" in "".join(reader.texts)
    page = render(content, "html").decode("utf-8")
    assert "49" not in page.split("{{7*7}}")[0][-3:]
    assert "\u202e" not in "".join(reader.texts)
    assert "\x00" not in page
    assert len(render(content, "pdf")) > 10_000


def test_nothing_is_loaded_from_elsewhere():
    page = render(content_of(material(), issue(Kind.ENGINEER)), "html").decode("utf-8")
    addresses = set(re.findall(r"https?://[^\"' <]+", page))
    assert addresses <= {"http://www.w3.org/2000/svg"}
    assert "default-src 'none'" in page
    assert not re.search(r"\b(src|href)=", page)


@given(st.text(max_size=400))
def test_any_text_gives_a_page(text):
    content = content_of(material(head=header(job=Job(customer=text, notes=text))), issue(remarks=text, shop=text))
    assert read_html(content).tags.count("main") == 1


@pytest.mark.parametrize("text", ["Wörkshop Łódź Ωμέγα Гараж ½ ∞", "工場 🏁 مرآب", "W" * 3000])
def test_any_script_gives_a_sheet(text):
    content = content_of(material(head=header(job=Job(customer=text))), issue(shop=text, remarks=text))
    assert render(content, "pdf").startswith(b"%PDF")


@pytest.mark.parametrize("state", State)
def test_states_are_words_and_shapes(state):
    value = {State.WITHIN: 60.0, State.OUTSIDE: 40.0, State.TOO_CLOSE: 50.1, State.NOT_VALID: float("nan")}[state]
    bounds = bounds_from(LIMIT)
    if state is State.NOT_VALID:
        from analysis.limits import not_valid

        result = not_valid(bounds, "no valid pull")
    else:
        result = decide(value, 0.5, bounds)
    assert result.state is state
    text = text_of(content_of(material(result=result), issue()))
    assert f"{result.shape} {state}" in text
    assert words.PLAIN_STATES[state] in text


@pytest.mark.parametrize("rule", Rule)
def test_every_rule_is_explained(rule):
    result = decide(55.0, 0.5, bounds_from(LIMIT), rule=rule)
    assert words.RULES[rule] in text_of(content_of(material(result=result), issue()))


def test_without_limit_or_pulls():
    content = content_of(material(limit=None, result=None), issue())
    assert content.verdict is None
    bare = content_of(material(limit=None, result=None, pulls=0, job=(), budget=None), issue(Kind.ENGINEER))
    assert "No pull gave a value" in text_of(bare)
    assert render(bare, "pdf").startswith(b"%PDF")


def test_unknown_fixture_says_sensor():
    lines = (JobLine("breakaway", 1, 48.0, None, 3, "sensor"),)
    content = content_of(material(factor=None, job=lines, budget=None, result=None), issue())
    text = text_of(content)
    assert "at the sensor, fixture not known" in text
    assert "no interval" in text
    assert "torque at the sensor" in text


def test_unit_of_the_page():
    text = text_of(content_of(material(), issue(Kind.ENGINEER, unit="lbf·ft")))
    assert "40.8 ± " in text  # 55.3 N·m
    assert "torque at the axle, lbf·ft" in text
    assert "at least 50 N·m" in text  # the limit stays in its own words


def test_write(tmp_path):
    content = content_of(material(), issue())
    for name in ("a.html", "b.PDF"):
        assert write_report(content, tmp_path / name).stat().st_size > 10_000
    with pytest.raises(InputError, match=r"\.html or \.pdf"):
        write_report(content, tmp_path / "c.docx")
    with pytest.raises(FileError):
        write_report(content, tmp_path / "none" / "d.pdf")


@pytest.mark.parametrize("changes", [{"revision": 0}, {"issued": datetime(2026, 5, 17)}])  # noqa: DTZ001
def test_raises(changes):
    with pytest.raises(InputError):
        content_of(material(), issue(**changes))
