"""A certificate that is out of date: nobody can miss it, and nobody is stopped."""

from datetime import UTC, date, datetime, timedelta

import msgspec
import pytest
from PySide6.QtCore import Qt

from analysis.pipeline import read_file
from analysis.report.gather import material_of
from analysis.report.material import Issue, PageKind
from analysis.report.write import content_of, write_report
from analysis.verdict.adequacy import certificate_advice
from gui.models.flow import Step
from gui.models.job import JobCard
from gui.pages.result_card import ResultCard
from logger.decoder.description import read_description
from logger.header import Lever, TransducerFacts
from logger.instruments.register import RegisteredTransducer, change_register, put
from tests.gui.hand import Hand

GONE = date(2026, 4, 30)
LEVER = Lever(fixture="hub centre", name="plate")


def described(**facts):
    description = read_description("plain-text")
    own = msgspec.structs.replace(description.transducer, serial="T-7", **facts)
    return msgspec.structs.replace(description, transducer=own)


def test_the_words_say_when_and_how_long_ago() -> None:
    facts = TransducerFacts(certificate_due=GONE)
    assert certificate_advice(facts, date(2026, 5, 1)) == (
        "CERTIFICATE EXPIRED on 2026-04-30, one day before this test: have the transducer calibrated",
    )
    assert "31 days before" in certificate_advice(facts, date(2026, 5, 31))[0]
    assert certificate_advice(facts, GONE) == ()


def test_card_value_notice_and_signature_say_it_and_the_test_goes_on(hand: Hand) -> None:
    hand.to_pulls()
    card = hand.window.tester.card
    own = msgspec.structs.replace(card.description.transducer, certificate_due=GONE)
    card.put(description=msgspec.structs.replace(card.description, transducer=own))
    hand.pull()
    row = hand.page.card_panel.rows["Transducer"]
    assert "CERTIFICATE EXPIRED" in row.accessibleName()
    assert row._alarm
    assert hand.page.pulls._expired.isVisible()
    assert "CERTIFICATE EXPIRED" in hand.page.pulls._expired.text()
    assert hand.run.value.state, "it is judged all the same"
    hand.key(Qt.Key.Key_S)  # enough, although fewer pulls than wanted
    hand.space()
    hand.stream.idle(2.5)
    hand.tick()
    assert hand.run.flow.now is Step.SIGN
    assert hand.page.sign._expired.isVisible()
    card.put(
        description=msgspec.structs.replace(
            card.description,
            transducer=msgspec.structs.replace(
                own, certificate_due=datetime.now().astimezone().date() + timedelta(days=40)
            ),
        )
    )
    hand.tick()
    assert not row._alarm
    assert not hand.page.pulls._expired.isVisible()


def test_starting_a_test_says_it_in_a_notice_that_stays(hand: Hand) -> None:
    hand.window.tester.card.put(description=described(certificate_due=GONE), address="/dev/ttyS9", lever=LEVER)
    hand.page.act()
    hand.tick()
    assert hand.run.flow.now is Step.SAFETY, "the test has begun"
    assert "CERTIFICATE EXPIRED on 2026-04-30" in hand.page.notice.text.text()
    hand.key(Qt.Key.Key_X)
    assert not hand.page.notice.isVisible()


def test_the_register_knows_the_due_date_and_the_lock(home) -> None:
    """What only the register knows counts in the window, too."""
    home.mkdir()
    kept = TransducerFacts(serial="T-7", certificate="C-12", certificate_due=GONE, gain=1.004, capacity_nm=9.0)
    change_register(lambda found: put(found, RegisteredTransducer(facts=kept, locked="dropped on the floor")))
    card = JobCard()
    card.put(description=described(capacity_nm=200.0))
    assert card.facts.certificate == "C-12"
    assert card.facts.gain == 1.004
    assert card.facts.capacity_nm == 200.0, "what the description says stands"
    assert "CERTIFICATE EXPIRED" in card.device_advice()
    assert "dropped on the floor" in card.device_advice()
    header = card.header("pulls", started=None, zero=None, simulated=False)
    assert header.transducer.certificate_due == GONE
    assert card.description.transducer.certificate == "", "a saved description does not take the register's facts along"
    (home / "instruments.toml").write_text("instruments = 3", encoding="utf-8")
    card.put(description=described())
    assert "instruments" in card.device_advice()


@pytest.mark.parametrize("kind", list(PageKind))
@pytest.mark.parametrize("due", [GONE, None])
def test_the_report_frames_it_above_the_result(tmp_path, kind: PageKind, due: date | None) -> None:
    from tests.gui.test_ratio import recording

    path = recording(tmp_path, "neutral", 12.0)
    reading = read_file(path)
    facts = msgspec.structs.replace(reading.header.transducer, certificate_due=due)
    started = datetime(2026, 5, 31, 9, tzinfo=UTC)
    head = msgspec.structs.replace(reading.header, transducer=facts, started=started)
    from dataclasses import replace

    content = content_of(material_of(replace(reading, header=head)), Issue(started, kind))
    html, pdf = tmp_path / "page.html", tmp_path / "page.pdf"
    write_report(content, html)
    write_report(content, pdf)
    text = html.read_text(encoding="utf-8")
    shown = text.partition("<body>")[2]
    assert ("CERTIFICATE EXPIRED on 2026-04-30, 31 days" in shown) == (due is not None)
    if due is not None:
        assert shown.index("CERTIFICATE EXPIRED") < shown.index('class="result')
        assert content.alerts == certificate_advice(facts, started.date())
    assert pdf.read_bytes().startswith(b"%PDF")


def test_review_says_it_over_the_value(hand: Hand, tmp_path) -> None:
    from dataclasses import replace

    from tests.gui.test_ratio import recording

    reading = read_file(recording(tmp_path, "neutral", 12.0))
    facts = msgspec.structs.replace(reading.header.transducer, certificate_due=GONE)
    head = msgspec.structs.replace(reading.header, transducer=facts, started=datetime(2026, 5, 31, 9, tzinfo=UTC))
    card = ResultCard(hand.window._shared)
    card.show_readings([reading])
    assert not card._expired.isVisibleTo(card)
    card.show_readings([replace(reading, header=head)])
    assert card._expired.isVisibleTo(card)
    assert "31 days" in card._expired.text()
