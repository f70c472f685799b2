"""The rule that decides near a limit: chosen in the window, named beside the result, kept for the report."""

from pathlib import Path

import msgspec
import pytest

from analysis.pipeline import Asked, read_file
from analysis.report.spoken import said
from analysis.report.words import PLAIN_STATES, plain_state, risk_words, rule_words
from analysis.verdict.limits import Guard, Rule, State, bounds_from, decide, decided_by
from gui.models.flow import Step
from gui.models.signing import write_signature
from gui.models.state import LinkState
from gui.pages.editors.limit import GUARD_WORDS, RULE_WORDS
from logger.edges.toml_file import write_toml
from logger.header import Decision, Limit, Sidecar
from logger.recordings.sidecar import change_sidecar, merged, read_sidecar
from tests.gui.hand import Hand
from tests.gui.test_ratio import recording

LIMIT = Limit(quantity="breakaway", kind="min", unit="N·m", lower=20.0, source="club rules")


def choose(hand: Hand, rule: Rule, guard: Guard = Guard.U95) -> str:
    """Pick rule and guard band as a hand does, and give what is said about them."""
    hand.page.open_row("Limit")
    editor = hand.page.editor("Limit")
    editor.rule.set_key(str(rule))
    editor.guard.set_key(str(guard))
    editor.rule.box.activated.emit(0)
    hand.tick()
    said = editor.risk.text()
    hand.page.close_editor()
    return said


def test_records_and_rules_have_the_same_names() -> None:
    hints = {f.name: f.type for f in msgspec.structs.fields(Decision)}
    assert set(hints["rule"].__args__) == {str(rule) for rule in Rule} == {str(key) for key in RULE_WORDS}
    assert set(hints["guard"].__args__) == {str(guard) for guard in Guard} == {str(key) for key in GUARD_WORDS}
    assert decided_by(None) == (Rule.THREE_WAY, Guard.U95)
    simple = Decision(rule="simple")
    assert decided_by(simple) == (Rule.SIMPLE, Guard.U95)
    assert decided_by(simple, Rule.REJECTION) == (Rule.REJECTION, Guard.U95)


@pytest.mark.parametrize(
    ("rule", "guard", "risk"),
    [
        # ILAC-G8:09/2019: simple acceptance up to 50 % at the limit; guard band U: below 2.5 % for the side it guards.
        (Rule.THREE_WAY, Guard.U95, "below 2.5 %"),
        (Rule.THREE_WAY, Guard.ONE_SIDED, "below 5 %"),
        (Rule.SIMPLE, Guard.U95, "up to half of all decisions are wrong"),
        (Rule.ACCEPTANCE, Guard.U95, "risk of a wrong within below 2.5 %; but what conforms by less"),
        (Rule.REJECTION, Guard.ONE_SIDED, "risk of a wrong outside below 5 %; but what fails by less"),
    ],
)
def test_each_rule_says_what_it_risks(hand: Hand, rule: Rule, guard: Guard, risk: str) -> None:
    hand.window.tester.card.put(limit=LIMIT)
    said = choose(hand, rule, guard)
    assert risk in said
    assert risk in risk_words(rule, guard)
    assert hand.window.tester.card.decision == Decision(rule=str(rule), guard=str(guard))
    assert str(rule) in hand.page.card_panel.rows["Limit"].accessibleName()
    assert hand.page.editor("Limit").guard.isVisibleTo(hand.page.editor("Limit")) == (rule is not Rule.SIMPLE)


@pytest.mark.parametrize(
    ("rule", "state"),
    [
        (Rule.THREE_WAY, "too close to call"),
        (Rule.SIMPLE, "within"),
        (Rule.ACCEPTANCE, "outside"),
        (Rule.REJECTION, "within"),
    ],
)
def test_the_same_pulls_by_each_rule(hand: Hand, rule: Rule, state: str) -> None:
    """A value a little above its limit: ILAC-G8:09/2019, figures of the four rules."""
    hand.to_pulls()
    for _ in range(3):
        hand.pull()
    card = hand.window.tester.card
    value = hand.run.value.value
    card.put(limit=msgspec.structs.replace(card.limit, unit="N·m", lower=value.nm - 0.2 * value.u95_nm))
    choose(hand, rule)
    assert hand.run.value.state == state
    assert hand.run.value.rule.startswith(str(rule))
    shown = hand.page.pulls._rule.text()
    assert str(rule) in shown
    assert ("guard band w = U\u00a0(95\u00a0%)" in shown) == (rule is not Rule.SIMPLE)


@pytest.mark.parametrize("rule", [Rule.ACCEPTANCE, Rule.SIMPLE])
def test_the_rule_reaches_the_recording_and_its_report(qtbot, home, tmp_path, rule: Rule) -> None:
    """A practice job on real files: the window, the file read again, and the report name one rule."""
    from analysis.report.gather import material_of
    from analysis.report.material import Issue, PageKind
    from analysis.report.write import content_of, write_report

    hand = Hand(qtbot, fake=False, speed=12.0)
    hand.page.practise()
    until = hand.qtbot.waitUntil
    until(lambda: hand.run.link is LinkState.LIVE, timeout=20_000)
    choose(hand, rule, Guard.ONE_SIDED)
    while hand.run.flow.now is Step.SAFETY:
        hand.page.act()
    hand.page.act()
    until(lambda: len(hand.run.pulls.counting) >= 2, timeout=40_000)
    state, named = hand.run.value.state, hand.run.value.rule
    path = hand.window.tester.bridge.recording
    hand.page.end()
    hand.window.tester.close()
    reading = read_file(path)
    assert reading.header.decision == Decision(rule=str(rule), guard="1.645 u")
    assert reading.result is not None
    assert (reading.result.rule, reading.result.guard) == (rule, Guard.ONE_SIDED)
    assert str(reading.result.state) == state
    # What is stated on the command line wins over what the recording says.
    assert read_file(path, Asked(rule=Rule.THREE_WAY)).result.rule is Rule.THREE_WAY
    issue = Issue(hand.window.tester.bridge.header.started, PageKind.ENGINEER)
    page = tmp_path / "report.html"
    write_report(content_of(material_of(reading, Asked()), issue), page)
    text = page.read_text(encoding="utf-8")
    assert said(rule_words(reading.result), "en") in text
    assert named.startswith(str(rule))
    hand.close()


def test_a_rule_changed_in_the_middle_is_written_beside_the_recording(hand: Hand, tmp_path) -> None:
    hand.to_pulls()
    hand.pull()
    began = hand.stream.begun[-1]
    assert began.decision == Decision(rule="three-way")
    choose(hand, Rule.REJECTION)
    hand.run.signed_by = "Robin"
    recording = tmp_path / "pulls.csv"
    write_signature(recording, hand.run, began)
    sidecar = read_sidecar(recording)
    assert sidecar.decision == Decision(rule="guarded rejection")
    assert (sidecar.limit, sidecar.lever) == (None, None), "only what was changed is written"
    assert merged(began, sidecar).decision == sidecar.decision
    both = tmp_path / "both.toml"
    write_toml(both, Sidecar(decision=Decision(rule="simple")))
    assert "[decision]" in both.read_text(encoding="utf-8")


def test_plain_words_say_no_more_than_the_rule_allows() -> None:
    bounds = bounds_from(LIMIT)
    near = {rule: decide(20.1, 0.5, bounds, rule=rule) for rule in Rule}
    assert near[Rule.ACCEPTANCE].state is State.OUTSIDE
    assert "was not shown to lie within" in plain_state(near[Rule.ACCEPTANCE])
    assert "was not shown to lie outside" in plain_state(near[Rule.REJECTION])
    assert "not considered" in plain_state(near[Rule.SIMPLE])
    assert plain_state(near[Rule.THREE_WAY]) == PLAIN_STATES[State.TOO_CLOSE]
    for rule in (Rule.ACCEPTANCE, Rule.REJECTION):
        assert "uncertainty included" not in plain_state(near[rule])


def test_a_rule_that_is_set_later_is_told(tmp_path) -> None:
    """Not of somebody else's trace, whose sidecar is the only place for it."""
    foreign = recording(tmp_path, "neutral", 12.0, decision=Decision(rule="simple"))
    assert not any("decision rule" in text for text in read_file(foreign).problems)
    own = tmp_path / "own.csv"
    own.write_bytes((Path(__file__).parents[2] / "recordings" / "05-event-1.csv").read_bytes())
    change_sidecar(own, lambda _: Sidecar(limit=LIMIT, decision=Decision(rule="guarded rejection")))
    after = read_file(own)
    assert after.result.rule is Rule.REJECTION
    assert any("was set after the recording had begun" in text for text in after.problems)
    assert not any("was set after" in text for text in read_file(own, Asked(rule=Rule.SIMPLE)).problems)
