"""The axle as it is typed in: turns, ratio, type, and every change undone."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.identify.axle_type import QUESTIONS, Type, named
from analysis.identify.ratio import CandidateList, candidate
from gui.models.axle_entry import (
    SHORT,
    AxleDraft,
    AxleEntry,
    check_axle,
    draft_of,
    finding,
    next_question,
    plain,
    ratio_doubt,
    ruled_out,
    type_options,
)
from gui.models.job import JobCard
from gui.models.turn_count import TurnCounts, TypedTurns, check_count, own_list, own_text, turns_of
from gui.models.typed import decimal, in_eighths
from logger.edges.units import parse_number
from logger.header import Axle, Conditions

OPEN = {"brakes": "free", "both-up": "opposite", "one-held": "free", "in-gear": "free"}
PACKS = {"brakes": "free", "both-up": "same", "one-held": "even", "in-gear": "much", "slack": "little"}


@pytest.fixture
def entry() -> AxleEntry:
    return AxleEntry(JobCard())


# ---------------------------------------------------------------------- numbers with fractions
@given(st.integers(-8000, 8000))
def test_eighths_are_written_and_read_back(eighths: int) -> None:
    assert parse_number(decimal(in_eighths(eighths / 8))) == eighths / 8


@pytest.mark.parametrize("text", ["", "1/0", "18 3/8/2", "a/b", "18", "3.25 mm", "1//2"])
def test_what_is_no_fraction_stays_as_it_is(text: str) -> None:
    assert decimal(text) == text


# ---------------------------------------------------------------------- counting
@pytest.mark.parametrize(
    ("turns", "ratio", "case"),
    [
        # Common practice, no source: ten turns of one wheel, the other held, and 18 of the propshaft mean 3.60.
        (TypedTurns("18", "10", "0"), 3.6, "one wheel held"),
        (TypedTurns("37 1/4", "10", "10"), 3.725, "both wheels together"),
        (TypedTurns("18", "12", "-2"), 3.6, "one wheel turned backwards"),
        (TypedTurns("18,5", "0", "10"), 3.7, "one wheel held"),
    ],
)
def test_counts_mean_a_ratio(turns: TypedTurns, ratio: float, case: str) -> None:
    reading = check_count(turns).reading
    assert reading.ratio == pytest.approx(ratio)
    assert reading.case == case


@pytest.mark.parametrize(
    ("turns", "key", "said"),
    [
        (TypedTurns("eighteen", "10", "0"), "propshaft", "18 3/8"),
        (TypedTurns("-18", "10", "0"), "propshaft", "without a sign"),
        (TypedTurns("18", "1e9", "0"), "left", "by hand"),
        (TypedTurns("18", "10", "0", own="3.08 eleven"), "own", "ring/pinion"),
    ],
)
def test_what_cannot_be_counted_is_told_at_its_field(turns: TypedTurns, key: str, said: str) -> None:
    checked = check_count(turns)
    assert checked.reading is None
    assert said in checked.wrong[key]


def test_counts_that_give_no_ratio_are_told() -> None:
    assert check_count(TypedTurns("18", "10", "")).problem == ""  # not all there yet
    assert "against each other" in check_count(TypedTurns("18", "10", "-10")).problem
    assert "counting error" in check_count(TypedTurns("0", "10", "0")).problem


def test_coarser_counting_widens_the_interval() -> None:
    fine = check_count(TypedTurns("18", "10", "0")).reading
    coarse = check_count(TypedTurns("18", "10", "0", propshaft_error="0.5", wheel_error="0.125")).reading
    assert (fine.low, fine.high) == pytest.approx((3.575, 3.625))  # an eighth of a turn in ten: ± 0.025
    assert coarse.low < fine.low < fine.high < coarse.high


def test_a_list_of_ones_own(entry: AxleEntry) -> None:
    entry.type_in("own", "3,08; 41/11, 3.55")
    entry.type_in("own_name", "club")
    listed = own_list(entry.draft.turns)
    assert listed == CandidateList(name="club", ratios=("3,08", "41/11", "3.55"))
    assert own_list(TypedTurns(own=own_text(listed), own_name="club")) == listed
    assert own_text(CandidateList(ratios=(3.08, "41/11"))) == "3.08  41/11"
    reading = check_count(TypedTurns("18.6", "10", "0", own="3.70 3.73")).reading
    assert {n.candidate.ratio for n in reading.neighbours} == {3.70, 3.73}
    assert own_list(TypedTurns()) is None
    assert own_list(TypedTurns(own="none")) is None


def test_counting_on(entry: AxleEntry) -> None:
    for _ in range(3):
        entry.add("propshaft", 1.0)
    entry.add("propshaft", 0.125)
    entry.add("left", 0.5)
    entry.add("right", -1.0)
    turns = entry.draft.turns
    assert (turns.propshaft, turns.left, turns.right) == ("3 1/8", "1/2", "-1")
    for _ in range(9):
        entry.add("propshaft", -1.0)
    assert entry.draft.turns.propshaft == "0"  # its turns have no sign
    entry.type_in("left", "ten")
    entry.add("left", 1.0)
    assert entry.draft.turns.left == "ten"


# ---------------------------------------------------------------------- the card
def test_a_counted_ratio_is_taken_over_with_its_counts(entry: AxleEntry) -> None:
    entry.count(propshaft="18", left="10", right="0")
    assert entry._card.axle == Axle()  # not before it is taken over
    entry.take_counted()
    assert entry._card.axle == Axle(
        ratio=3.6,
        propshaft_turns=18.0,
        left_turns=10.0,
        right_turns=0.0,
        propshaft_error_turns=0.125,
        wheel_error_turns=0.0,
    )
    entry.count(propshaft="18 5/8")
    entry.take_counted(candidate("41/11"))
    assert entry._card.axle.ratio == pytest.approx(41 / 11, abs=5e-5)
    assert entry.draft.ratio == "41/11"
    assert ratio_doubt(entry.draft) == ""
    entry.type_in("ratio", "3.42")
    assert "3.700 to 3.750" in ratio_doubt(entry.draft)


def test_nothing_is_taken_from_counts_that_say_nothing(entry: AxleEntry) -> None:
    entry.count(propshaft="18", left="10", right="-10")
    entry.take_counted()
    assert entry._card.axle == Axle()


def test_every_field_is_on_the_card_at_once_and_its_faults_are_told(entry: AxleEntry) -> None:
    for key, text in (
        ("tag", " C 41 "),
        ("ratio", "3,73"),
        ("pack_build", "2 × 6"),
        ("shim", "0,3 mm"),
        ("reason", "x"),
    ):
        entry.type_in(key, text)
    axle = entry._card.axle
    assert (axle.tag, axle.ratio, axle.pack_build, axle.shim_mm) == ("C 41", 3.73, "2 × 6", 0.3)
    entry.type_in("ratio", "eleven")
    entry.type_in("shim", "3 kg")
    assert "ring/pinion" in entry.wrong["ratio"]
    assert "length" in entry.wrong["shim"]
    assert (entry._card.axle.ratio, entry._card.axle.shim_mm) == (None, None)
    entry.type_in("shim", "-1 mm")
    assert "0 to 100" in entry.wrong["shim"]


def test_a_record_is_shown_and_kept_with_what_is_not_asked_here() -> None:
    axle = Axle(
        tag="C",
        type="clutch plate",
        seen=PACKS,
        ratio=3.6,
        propshaft_turns=18.0,
        left_turns=10.0,
        right_turns=0.0,
        propshaft_error_turns=0.25,
        wheel_error_turns=0.125,
        shim_mm=0.3,
        friction_material="sintered bronze",
    )
    draft = draft_of(axle)
    assert draft.turns.propshaft == "18"
    assert check_axle(draft, axle) == (axle, {})


def test_a_card_that_something_else_has_filled_is_shown(entry: AxleEntry) -> None:
    entry.type_in("tag", "old")
    told = []
    entry.changes.listen(lambda: told.append(entry.draft.tag))
    entry._card.put(axle=Axle(tag="new"))
    assert told == ["new"]
    assert not entry.can_undo
    entry._card.put(conditions=Conditions(brakes_free=False))
    entry.type_in("tag", "newer")
    assert entry._card.conditions.brakes_free is False


# ---------------------------------------------------------------------- type
def test_what_the_wheels_did_goes_on_the_card(entry: AxleEntry) -> None:
    assert finding(entry.draft.seen) is None
    entry.take_type()
    assert entry._card.axle == Axle()
    for key, word in PACKS.items():
        entry.answer(key, word)
    assert entry._card.axle == Axle()
    entry.take_type()
    assert entry._card.axle.type == named([Type.PLATE, Type.CONE, Type.RAMP])
    assert entry._card.axle.seen == PACKS
    assert entry._card.conditions.brakes_free is True
    assert entry._card.type_conflict() is None
    entry.take_type(Type.CONE)
    assert entry._card.axle.type == "cone"


def test_a_type_without_packs_is_refused_until_there_is_a_reason(entry: AxleEntry) -> None:
    for key, word in OPEN.items():
        entry.answer(key, word)
    entry.take_type()
    assert entry._card.type_conflict().refused
    entry.type_in("reason", "bearing drag is what is wanted")
    assert not entry._card.type_conflict().refused


def test_the_next_question_is_an_open_one(entry: AxleEntry) -> None:
    keys = [question.key for question in QUESTIONS]
    assert list(SHORT) == keys
    assert next_question(entry.draft, "brakes") == "both-up"
    assert next_question(entry.draft, "slack") == "brakes"
    for key in keys:
        entry.answer(key, next(iter(QUESTIONS[keys.index(key)].answers)))
    assert next_question(entry.draft, "brakes") == ""


def test_words_of_the_window() -> None:
    assert "'One wheel held'" in plain(finding({"brakes": "free", "both-up": "same"}).text)
    found = finding({"brakes": "free", "both-up": "opposite"})
    assert ruled_out(found) == [
        "Both wheels up: it turns the other way. That rules out clutch plate, cone, ramp plate, automatic locker, "
        "welded or spool."
    ]
    assert finding({"of my own": "words"}) is None


def test_every_type_can_be_chosen_and_ones_own_stays() -> None:
    keys = [key for key, _ in type_options("")]
    assert {kind.value for kind in Type} <= set(keys)
    assert type_options("two packs, my own build")[-1] == ("two packs, my own build", "Two packs, my own build")


# ---------------------------------------------------------------------- undo
def test_typing_is_undone_by_the_field_and_the_rest_step_by_step(entry: AxleEntry) -> None:
    for text in ("C", "C4", "C41"):
        entry.type_in("tag", text)
    entry.type_in("pack_build", "2")
    entry.put(type="cone")
    entry.add("left", 1.0)
    entry.add("left", 1.0)
    steps = 0
    while entry.can_undo:
        entry.undo()
        steps += 1
    assert steps == 5
    assert entry._card.axle == Axle()
    assert entry.draft.turns == TypedTurns()
    entry.undo()  # nothing is left: nothing happens


def test_undo_takes_a_finding_back_from_the_card(entry: AxleEntry) -> None:
    entry.put(type="clutch plate")
    before = entry._card.axle, entry._card.conditions
    for key, word in OPEN.items():
        entry.answer(key, word)
    entry.take_type()
    entry.undo()
    assert (entry._card.axle, entry._card.conditions) == before
    assert entry.draft.seen == OPEN


@pytest.mark.parametrize(
    ("shim", "mm"),
    [
        ("", None),
        ("0 mm", 0.0),
        ("100 mm", 100.0),
        ("100.1 mm", None),
        ("-0.1 mm", None),
        ("1/2 in", 12.7),
        ("x", None),
    ],
)
def test_a_shim_is_nothing_to_a_hundred_millimetres_thick(shim: str, mm: float | None) -> None:
    axle, wrong = check_axle(AxleDraft(shim=shim), Axle())
    assert (axle.shim_mm, set(wrong)) == (mm, {"shim"} if shim and mm is None else set())


@pytest.mark.parametrize(
    ("key", "text", "turns"),
    [
        ("left", "", None), ("left", "1000", 1000.0), ("left", "-1000", -1000.0), ("left", "1000 1/8", None),
        ("left", "-1/8", -0.125), ("propshaft", "0", 0.0), ("propshaft", "-1/8", None), ("propshaft", "18 3/8", 18.375),
        ("propshaft", "x", None),
    ],
)  # fmt: skip
def test_a_count_is_a_thousand_turns_at_most_and_the_propshafts_has_no_sign(
    key: str, text: str, turns: float | None
) -> None:
    wrong: dict[str, str] = {}
    assert turns_of(key, text, wrong) == turns
    assert set(wrong) == ({key} if text and turns is None else set())


def test_turns_are_counted_on() -> None:
    """A wheel may be turned back beyond its mark, the propshaft only to it; what cannot be read stays."""
    of = AxleEntry(JobCard())
    for key, more, shown in (
        ("left", 1.0, "1"), ("left", -2.125, "-1 1/8"), ("propshaft", 0.5, "1/2"), ("propshaft", -1.0, "0"),
    ):  # fmt: skip
        of.add(key, more)
        assert getattr(of.draft.turns, key) == shown
    of.type_in("right", "x")
    of.add("right", 1.0)
    assert of.draft.turns.right == "x"


def test_a_ratio_on_the_card_is_doubted_where_the_count_leaves_it_out() -> None:
    """4 turns of the propshaft on one of both wheels, each to its mark: 3.9 to 4.1 and the rounding of the card."""
    taken = TurnCounts(4.0, 1.0, 1.0, 0.1, 0.0)
    for ratio, doubt in (
        ("", False),
        ("4", False),
        ("4.1003", False),
        ("3.8997", False),
        ("4.101", True),
        ("3.899", True),
    ):
        assert bool(ratio_doubt(AxleDraft(ratio=ratio, taken=taken))) is doubt
    assert ratio_doubt(AxleDraft(ratio="9")) == ""
