"""The report: what stands on it, that it is safe, and that the same work gives the same page."""

from __future__ import annotations

import json
import re
from datetime import UTC, date, datetime

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.cautions import cautions_of
from analysis.report import words
from analysis.report.material import DragPart, JobLine, PackLine, PageKind
from analysis.report.write import content_of, render, write_report
from analysis.verdict.limits import Rule, State, bounds_from, decide
from logger.errors import FileError, InputError
from logger.header import Axle, Conditions, Header, JobFacts, Photo, Test, TransducerFacts, Zero
from tests.analysis.report.reading import read_html, text_of, texts_of_pdf, words_of_pdf
from tests.analysis.sample import LIMIT, filled, header, issue, material

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
    "invented manual, p. 4-12",
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


@pytest.mark.parametrize("kind", PageKind)
def test_what_a_page_must_carry(kind, monkeypatch):
    content = content_of(material(), issue(kind))
    html = text_of(content).lower()
    pdf = words_of_pdf(content, monkeypatch).lower()
    for text in [*EXPECTED, f"end of {content.identity}"]:
        assert text.lower() in html, text
        assert text.lower() in pdf, text


def test_engineer_sees_everything(monkeypatch):
    content = content_of(material(), issue(PageKind.ENGINEER))
    expected = [
        *("calibration", "certificate", "ν", "1.1270 × torque at the sensor", "seen by the witness", "EXPIRED"),
        *(
            "48.90 ± 0.50",
            "55.11 ± 0.90",
            "1.19",
            "Zero 0.10 N·m",
            "authorised by",
            *cautions_of(*words.FULL, *words.LIMITS),
        ),
    ]
    html = text_of(content)
    pdf = words_of_pdf(content, monkeypatch)
    for text in expected:
        assert text in html
        assert text in pdf


def test_zero_taken_again_is_shown():
    head = header(zero=Zero(value_nm=0.1, after_nm=-0.15, how="lever off"))
    text = text_of(content_of(material(head=head), issue(PageKind.ENGINEER)))
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


def test_what_the_wheels_did_stands_beside_the_type():
    axle = Axle(type="cone", seen={"brakes": "free", "both-up": "same", "slack": "untried", "of my own": "words"})
    text = text_of(content_of(material(head=header(axle=axle)), issue()))
    assert "brakes: both brakes are free; both wheels up: it turns the same way" in text
    assert "of my own" not in text


def test_measured_data_carry_no_simulated_mark():
    head = header(simulated=False)
    for form in ("html", "pdf"):
        page = render(content_of(material(head=head), issue()), form)
        assert b"SIMULATED" not in page
    assert b"SIMULATED" in render(content_of(material(), issue()), "html")


# The fields of the trade's sheet, in own words; what is not filled leaves no label behind.
FILLED = Header(
    started=datetime(2026, 5, 16, 10, 42, tzinfo=UTC),
    job=JobFacts(
        number="2026-017", customer="the club", vehicle="club car 7", odometer="53,214 miles",
        received=date(2026, 5, 14), operator="operator A", witness="operator B", site="the barn in Quarry Road",
        notes="chatters in slow turns",
    ),
    axle=Axle(
        type="clutch plate", ratio=3.909, teeth="43/11", friction_material="sintered", pack_build="2 x 6 plates",
        shim_mm=0.3, last_service="oil in 2025-11", as_received="dry, no leaks",
    ),
    test=Test(
        place="car", held="other side", gear="neutral", side="left", dwell_s=15, conditioning_turns=5, speed_rpm=4,
        held_how="strap to the floor", support="two stands under the tube", deviations="one side only",
    ),
    conditions=Conditions(
        oil_temperature_c=21, oil_temperature_at="at the drain plug", fluid="reference", fluid_amount="1.1 l",
        fluid_age="6 months", fluid_appearance="no glitter", modifier="additive B", modifier_percent=4,
        wheel_fitted=True, tyre="205/55 R16, 2.2 bar", brakes_free=True, pads_fitted=False, parking_brake="on",
        propshaft_fitted=True, condition="used", distance_km=4000,
    ),
    transducer=TransducerFacts(
        name="gauge", serial="7", firmware="2.1", capacity_nm=200, accuracy_percent_of_reading=0.5,
        weight_check="49.1 for 49.03 N·m", certificate="C-1", certificate_date=date(2025, 9, 1),
        certificate_due=date(2026, 9, 1), filter_delay_s=0.004,
    ),
)  # fmt: skip
SHEET = [
    *("53,214 miles", "2026-05-14", "2026-05-16 10:42", "2026-05-17", "the barn in Quarry Road", "operator B"),
    *("teeth 43/11", "sintered", "oil in 2025-11", "dry, no leaks", "strap to the floor", "two stands under the tube"),
    *("21 °C, at the drain plug", "reference, 1.1 l, 6 months, no glitter", "205/55 R16, 2.2 bar", "pads out"),
    *("PARKING BRAKE ON", "propshaft fitted", "aimed at 4 turns", "Turned 5 times", "used, 4000 km"),
    *("Deviations from the method: one side only", "authorised by operator C", "tested by operator A"),
]
OF_ENGINEER = [
    "firmware 2.1",
    "49.1 for 49.03 N·m",
    "C-1 of 2025-09-01, due 2026-09-01",
    "filter delay 4 ms",
    "chatters",
]


@pytest.mark.parametrize("kind", PageKind)
def test_what_is_filled_in_is_on_the_page(kind, monkeypatch):
    content = content_of(material(head=FILLED), issue(kind, authorised="operator C"))
    html, pdf = text_of(content), words_of_pdf(content, monkeypatch)
    for text in SHEET + (OF_ENGINEER if kind is PageKind.ENGINEER else []):
        assert text in html
        assert text in pdf
    bare = text_of(content_of(material(head=Header()), issue(kind)))
    for label in ("odometer", "received", "done at", "as received", "tyre", "held by", "stands on", "checked"):
        assert f" {label} " not in bare


def test_photographs_and_files_stand_with_their_hashes(monkeypatch):
    photos = tuple(Photo(file=f"p{i}.jpg", sha256=f"{i:064x}", caption=f"view {i}") for i in range(14))
    content = content_of(material(head=header(photos=photos)), issue())
    pdf = words_of_pdf(content, monkeypatch)
    for shown in (text_of(content), pdf):
        assert "p3.jpg" in shown
        assert f"{3:064x}" in shown
        assert "photo: view 3" in shown
        assert "p12.jpg" not in shown
        assert "2 more photos" in shown


def test_raw_torque_and_pack_mean_stand_side_by_side(monkeypatch):
    how = "T - T_both / 2, left wheel turned"
    lines = (
        PackLine("breakaway", "forwards", (55.3, 1.1), (9.0, 0.5), None, "withheld for a reason"),
        PackLine("rotating mean", "forwards", (46.2, 0.8), (8.0, 0.4), (42.2, 0.9), how),
        PackLine("rotating mean", "backwards", (46.4, 0.8), (8.2, 0.4), (42.3, 0.9), how),
    )
    drag = DragPart("folder/free.csv", "ef" * 32, lines, ("made at half the speed",))
    for kind in PageKind:
        content = content_of(material(drag=drag), issue(kind))
        for shown in (text_of(content), words_of_pdf(content, monkeypatch)):
            for text in (
                "46.2",
                "8.00 ± 0.40",
                "42.2",
                "withheld for a reason",
                "T − T_both / 2",
                "free.csv",
                "ef" * 32,
            ):
                assert text in shown, text
            assert shown.count("left wheel turned") == 1
            assert "Made at half the speed." in shown
            assert words.RAW_IS_COMPARED in shown
        assert content.verdict == content_of(material(), issue(kind)).verdict, "the limit is compared with raw torque"
    assert "pack mean" not in text_of(content_of(material(), issue()))


@pytest.mark.parametrize("kind", PageKind)
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
    limit = msgspec.structs.replace(LIMIT, source=HOSTILE, text=HOSTILE)
    drag = DragPart(HOSTILE, HOSTILE, (PackLine(HOSTILE, HOSTILE, (1.0, 0.1), None, None, HOSTILE),), (HOSTILE,))
    content = content_of(
        material(head=filled(HOSTILE), limit=limit, problems=(HOSTILE,), file=HOSTILE + ".csv", drag=drag),
        issue(PageKind.ENGINEER, shop=HOSTILE, address=HOSTILE, remarks=HOSTILE, authorised=HOSTILE),
    )
    reader = read_html(content)
    assert reader.tags.count("script") == 1  # our own, and it is data
    assert ("type", "application/json") in reader.attributes
    assert not [name for name, _ in reader.attributes if name.startswith("on")]
    shown = "".join(reader.texts)
    assert shown.count("<script>alert(1)</script>") > 40, "a field is not on the page"
    page = render(content, "html").decode("utf-8")
    assert "49" not in page.split("{{7*7}}")[0][-3:]
    assert "\u202e" not in shown
    assert "\x00" not in page
    assert len(render(content, "pdf")) > 10_000


@pytest.mark.parametrize("text", ['=HYPERLINK("x")' + "x" * 10_000, "\u202e\u2066 egnp.exe " * 900, "W " * 5000])
def test_long_and_reordered_text_in_every_field_stays_a_page(text, monkeypatch):
    content = content_of(material(head=filled(text)), issue(PageKind.ENGINEER, remarks=text, authorised=text))
    shown = "".join(read_html(content).texts)
    assert "\u202e" not in shown
    assert "\u2066" not in shown
    assert max(len(part) for part in read_html(content).texts) < 700
    _, sheets = texts_of_pdf(content, monkeypatch)
    assert sheets <= 6
    record = json.loads(content.record)
    assert record["issue"]["remarks"] == text  # the record keeps what was said


def test_nothing_is_loaded_from_elsewhere():
    page = render(content_of(material(), issue(PageKind.ENGINEER)), "html").decode("utf-8")
    addresses = set(re.findall(r"https?://[^\"' <]+", page))
    assert addresses <= {"http://www.w3.org/2000/svg"}
    assert "default-src 'none'" in page
    assert not re.search(r"\b(src|href)=", page)


@given(st.text(max_size=400))
def test_any_text_gives_a_page(text):
    content = content_of(material(head=header(job=JobFacts(customer=text, notes=text))), issue(remarks=text, shop=text))
    assert read_html(content).tags.count("main") == 1


@pytest.mark.parametrize("text", ["Wörkshop Łódź Ωμέγα Гараж ½ ∞", "工場 🏁 مرآب", "W" * 3000])
def test_any_script_gives_a_sheet(text):
    content = content_of(material(head=header(job=JobFacts(customer=text))), issue(shop=text, remarks=text))
    assert render(content, "pdf").startswith(b"%PDF")


@pytest.mark.parametrize("state", State)
def test_states_are_words_and_shapes(state):
    value = {State.WITHIN: 60.0, State.OUTSIDE: 40.0, State.TOO_CLOSE: 50.1, State.NOT_VALID: float("nan")}[state]
    bounds = bounds_from(LIMIT)
    if state is State.NOT_VALID:
        from analysis.verdict.limits import not_valid

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
    bare = content_of(material(limit=None, result=None, pulls=0, job=(), budget=None), issue(PageKind.ENGINEER))
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
    text = text_of(content_of(material(), issue(PageKind.ENGINEER, unit="lbf·ft")))
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
