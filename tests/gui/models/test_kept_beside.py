"""What the models of the window put on the job card and beside a recording, held against what was kept of it."""

from __future__ import annotations

from pathlib import Path

import msgspec

from analysis.verdict.job import Job
from gui.models import (
    build_entry,
    details,
    dial_entry,
    job,
    sheet,
    signing,
    step_words,
    undoing,
)
from gui.models.caught import CaughtPull
from gui.models.display import Display
from gui.models.flow import Stand, Step
from gui.models.job import JobCard
from gui.models.run import TestRun
from gui.models.zeroing import ZeroValue
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.errors import HeldwheelError
from logger.header import (
    Axle,
    Conditions,
    Decision,
    Header,
    JobFacts,
    Lever,
    Sidecar,
    TransducerFacts,
)
from logger.header import Test as Kind
from logger.recordings.sidecar import change_sidecar, read_sidecar
from logger.version import VERSION
from tests.analysis.halves import RATIO
from tests.gui.models.stopped import NOW, full_card, stop_clock
from tests.gui.models.test_kept_run import CARDS, HUB, MINIMUM
from tests.gui.models.test_steps import pull
from tests.kept import everything, kept, tried


def test_kept_card():
    answers = []
    levers = [
        Lever(fixture="one stud", length_mm=450, studs=n, stud_circle_mm=c, angle_deg=a)
        for n in (None, 5)
        for c in (None, 114.3)
        for a in (None, 30.0)
    ]
    levers += [HUB, Lever(fixture="cross-bar", length_mm=600), Lever(fixture="force at radius", radius_mm=300.0)]
    answers.append([job.lever_words(one, Display().length) for one in levers])
    answers.append([job.type_words(one) for one in ("", "open", "x y", job.PACKS)])
    force = Description(
        name="f", measures="force", transducer=TransducerFacts(unit="N"), lines=LineFormat(template="{torque}")
    )
    second = Description(
        name="s", transducer=TransducerFacts(unit="N·m", identity="its own"), lines=LineFormat(template="{torque}")
    )
    for more in (
        {},
        {"lever": HUB},
        {"lever": Lever(fixture="one stud")},
        {"lever": Lever(fixture="force at radius", radius_mm=300.0)},
        {"lever": Lever(fixture="force at radius", radius_mm=300.0), "description": force},
        {"description": force},
        {"limit": MINIMUM, "lever": HUB},
        {"limit": RATIO},
        {"second": second},
        {"second": second, "second_address": "B"},
        {"second": second, "practice": True},
        {"axle": Axle(type="open"), "limit": MINIMUM},
        {"address": "A", "description": full_card().description},
    ):
        card = JobCard()
        card.put(**more)
        card.swap({**card.parts()})
        answers.append(
            [card.generation, card.lever_factor, card.second_device, card.second_facts, card.device, card.unit]
            + [
                tried(getattr(card, one))
                for one in ("fixture", "bounds", "calibration", "scale", "limit_nm", "conflict")
            ]
            + [card.as_read(10.0), card.setup()[1], tried(card.type_conflict), card.range_advice(), card.facts]
            + [card.copy().parts() == card.parts(), card.practice, card.with_drag, card.lever_faulty]
        )
    texts = ("", " ", "a  b", "yes", "no", "20", "68 °F", "2026-05-14", "14.5.", "z" * 405)
    for kind in sheet.EntryKind:
        entry = sheet.Entry("job", "x", "X", kind=kind)
        answers.append([tried(sheet.read, entry, text) for text in texts])
    full = full_card()
    for _, entries in sheet.GROUPS:
        answers.append([sheet.filled(entries, full), [sheet.shown(one, full) for one in entries]])
    kept("models-beside", "card", answers)


def test_kept_details(tmp_path, monkeypatch):
    stop_clock(monkeypatch, details)
    path, answers = tmp_path / "a.csv", []
    path.write_text("x", "utf-8")
    before = full_card()
    for more, reason in (
        ({}, "why"),
        ({"lever": None}, " "),
        ({"lever": None, "axle": Axle(tag="R2")}, " read wrong "),
        ({"limit": None, "conditions": Conditions(fluid="y"), "job": JobFacts(vehicle="green")}, "once more"),
    ):
        after = before.copy()
        after.put(**more)
        answers.append([tried(details.keep_details, path, before, after, reason, "A."), read_sidecar(path)])
    for header in (None, Header(), Header(axle=Axle(tag="1"), decision=Decision(rule="guarded"))):
        answers.append(details.card_of(header).parts())
    kept("models-beside", "details", answers)


def test_kept_dial_job(tmp_path, monkeypatch):
    stop_clock(monkeypatch, dial_entry)
    card, answers = JobCard(), []
    draft = dial_entry.DialDraft(reading="46", marks="1", error_percent="4 %", full_scale="100")
    for more, by in (
        ({}, "A."),
        ({"lever": HUB}, "A."),
        ({"dial": (draft,)}, " "),
        ({"dial": (draft,)}, " A. "),
        ({"dial": (draft, msgspec.structs.replace(draft, reading="47", at=NOW.replace(hour=8)))}, "A."),
        ({"dial": (msgspec.structs.replace(draft, unit="lbf·ft", at=NOW.replace(hour=9)), draft)}, "A."),
    ):
        card.put(**more)
        made = tried(dial_entry.file_job, card, ("brakes off",), by, tmp_path / "d" / "e")
        if isinstance(made, Path):
            text = made.read_text("utf-8").partition("\n# closed")[0].replace(VERSION, "0")
            made = [made.name, text.splitlines(), read_sidecar(made)]
        answers.append(made)
    for lever in (HUB, Lever(fixture="force at radius", radius_mm=300.0)):
        card.put(lever=lever)
        answers += [
            dial_entry.check(msgspec.structs.replace(draft, **one), card)
            for one in ({}, {"reading": ""}, {"reading": "46 lbf·ft"}, {"reading": "5 kg"}, {"marks": "x"})
        ]
    kept("models-beside", "dial", answers)


def test_kept_signature(tmp_path, monkeypatch):
    stop_clock(monkeypatch, signing)
    answers = []
    for name in ("plain", "drag"):
        card = full_card()
        card.put(**CARDS[name])
        of = TestRun(card)
        of.signed_by = " A. "
        began = card.judged_by("pulls")
        made = Job(began)
        for n, start in enumerate((0.0, 0.0, 90.0, 90.0)):
            of.pulls.pulls.append(CaughtPull(n + 1, start, pull(5.0 + n, 40.0 + n), made))
        of.pulls.reject(2, "jerked")
        of.pulls.reject(3, "late")
        (tmp_path / "free.csv").write_text("x", "utf-8")
        for k, (header, baseline) in enumerate(
            (
                (None, None),
                (began, tmp_path / "free.csv"),
                (msgspec.structs.replace(began, limit=None, test=Kind(purpose="drag")), tmp_path / "none.csv"),
            )
        ):
            path = tmp_path / f"{name}{k}.csv"
            path.write_text("x", "utf-8")
            signing.write_signature(path, of, header, baseline)
            answers.append(read_sidecar(path))
        answers.append([step_words.step_detail(of, step, Display()) for step in Step if step in of.flow.stands])
    kept("models-beside", "signature", answers)


def test_kept_words_under_the_steps():
    answers = []
    for name in CARDS:
        card = JobCard()
        card.put(**CARDS[name])
        of = TestRun(card)
        of.start()
        for _ in range(12):
            answers.append([step_words.step_detail(of, step, Display("lbf·ft")) for step in of.flow.stands])
            for check in of.checks[:1]:
                check.ticked = True
            of.act()
        for take in (of.zeros.take, of.zeros.take_again):
            take(ZeroValue(0.4 if take == of.zeros.take else 0.7, 0.01, 1.0))
            answers.append([step_words.step_detail(of, step, Display()) for step in of.flow.stands])
        answers.append([stand is Stand.TO_COME for stand in of.flow.stands.values()])
    kept("models-beside", "step words", answers)


def test_kept_decisions_taken_back(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    path = "a.csv"
    Path(path).write_text("x", "utf-8")
    answers = [undoing.sidecar_bytes(path), undoing.decided(path, None)]
    for before, now, later in (
        (None, Sidecar(tags={"a": "1"}), None),
        (Sidecar(tags={"a": "1"}), Sidecar(tags={"a": "2"}), None),
        (Sidecar(tags={"a": "1"}), Sidecar(tags={"a": "2"}), Sidecar(tags={"a": "3"})),
        (Sidecar(), Sidecar(signed=NOW), None),
        (Sidecar(tags={"a": "1"}), Sidecar(tags={"a": "1"}), None),
    ):
        Path("a.csv.toml").unlink(missing_ok=True)
        for one in Path().glob("a.*"):
            if one.name != path:
                one.unlink()
        if before is not None:
            change_sidecar(path, lambda _, s=before: s)
        stood = undoing.sidecar_bytes(path)
        change_sidecar(path, lambda _, s=now: s)
        step = undoing.decided(path, stood)
        if later is not None:
            change_sidecar(path, lambda _, s=later: s)
        answers.append([step and [step.words, tried(step.back)], undoing.sidecar_bytes(path)])
    kept("models-beside", "decisions", answers)


def test_kept_build_entry_in_files(tmp_path, monkeypatch):
    stop_clock(monkeypatch, build_entry)
    card, display, answers = JobCard(), Display(), []
    entry = build_entry.BuildEntry(card, lambda: tmp_path / "a" / "b", display)

    def told():
        return [
            everything(entry.draft),
            entry.wrong,
            entry.place,
            entry.side,
            entry.schedule,
            entry.problem,
            entry.axle,
            card.axle.pack_build,
        ]

    for tag in ("", "43/11"):
        card.put(axle=Axle(tag=tag))
        for act in (
            entry.load,
            lambda: entry.type_in("oil_l", "1.2 l"),
            lambda: entry.type_in("modifier_l", "5 %"),
            lambda: entry.type_in("face_outer_mm", "100"),
            lambda: entry.type_in("spring_n", "x"),
            lambda: display.use(lengths="in"),
            entry.keep,
            lambda: entry.type_in("spring_n", ""),
            entry.keep,
            lambda: entry.put_schedule("26 weeks"),
            lambda: entry.put_use("3 events"),
            lambda: entry.put_schedule("x"),
            entry.load,
            lambda: entry.type_in("oil_l", ""),
            lambda: entry.type_in("modifier_l", "5 %"),
            lambda: entry.put_schedule(""),
            lambda: card.put(axle=msgspec.structs.replace(card.axle, pack_build="own words")),
            lambda: entry.type_in("modifier_l", ""),
            entry.keep,
        ):
            try:
                answers.append(act())
            except HeldwheelError as error:
                answers.append(error)
            answers.append(told())
    answers.append(sorted(str(one.relative_to(tmp_path)) for one in tmp_path.rglob("*") if one.suffix == ".toml"))
    kept("models-beside", "build entry", answers)
