"""What the models of the window write, read back, list and say of files, held against what was kept of it."""

from __future__ import annotations

import asyncio
import os
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from types import SimpleNamespace
from typing import TYPE_CHECKING

import msgspec
import numpy as np

from analysis.pipeline import read_file
from analysis.report.material import Issue, PageKind
from analysis.rows.batch import Summary
from analysis.rows.tables import BadFile
from analysis.verdict.job import Job
from gui.models import (
    asking,
    batching,
    build_entry,
    calibrating,
    details,
    dial_entry,
    dropped,
    due,
    indexing,
    issuing,
    job,
    jobs,
    library,
    loading,
    practice,
    radio,
    ratio,
    settings,
    sheet,
    signing,
    step_words,
    stream,
    turn_count,
    undoing,
)
from gui.models.caught import CaughtPull
from gui.models.display import Display
from gui.models.flow import Stand, Step
from gui.models.job import JobCard
from gui.models.run import TestRun
from gui.models.weighing import Hanging, plan_of
from gui.models.zeroing import ZeroValue
from logger.decoder.description import Description, Poll, read_description, shipped
from logger.decoder.layouts import Packet, PlacedNumber
from logger.decoder.template import LineFormat
from logger.errors import HeldwheelError, InputError
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
from logger.instruments import measure
from logger.links import ble
from logger.recordings.axles import AxleFile, Build, Retest, change_axle
from logger.recordings.sidecar import change_sidecar, read_sidecar
from logger.samples import Block, Column, Ending, EndReason
from logger.version import VERSION
from tests.analysis.halves import RATIO, recording
from tests.gui.models.test_kept_run import CARDS, HUB, MINIMUM
from tests.gui.models.test_steps import pull
from tests.kept import everything, kept, tried

if TYPE_CHECKING:
    import pytest

SEASON = Path(__file__).parents[3] / "recordings"
NOW = datetime(2026, 5, 16, 10, 42, 31, 250, tzinfo=UTC)


@dataclass(frozen=True)
class _Local:
    at: datetime

    def astimezone(self) -> datetime:
        return self.at


class Clock:
    """Stands for ``datetime`` in a module: always the same moment, a fraction of a second after the full one."""

    @staticmethod
    def now(*_: object) -> _Local:
        return _Local(NOW)

    @staticmethod
    def strptime(text: str, form: str) -> _Local:
        return _Local(datetime.strptime(text, form).replace(tzinfo=UTC))


def stop_clock(monkeypatch: pytest.MonkeyPatch, *modules: object) -> None:
    """Have modules believe that it is ``NOW``."""
    for one in modules:
        monkeypatch.setattr(one, "datetime", Clock)


def full_card() -> JobCard:
    card = JobCard()
    described = Description(name="g", transducer=TransducerFacts(unit="N·m"), lines=LineFormat(template="{torque}"))
    card.put(
        job=JobFacts(vehicle="blue car", number="7"),
        axle=Axle(tag="R1", type="clutch plate", ratio=3.9),
        test=Kind(side="left", held="other side", place="car"),
        lever=HUB,
        limit=MINIMUM,
        description=described,
        address="there",
    )
    return card


# ---------------------------------------------------------------------- jobs and choices
def test_kept_jobs(tmp_path, monkeypatch):
    stop_clock(monkeypatch, jobs)
    monkeypatch.chdir(tmp_path)
    of, answers = jobs.Jobs(Path("a/b")), []

    def listed():
        return [[one.path.name, one.saved, one.words] for one in of.recent()]

    of.save(JobCard())
    answers.append([of.path, of.folder.exists(), of.last()])
    for n, more in enumerate(({"vehicle": "red"}, {"vehicle": "", "number": "12"}, {"vehicle": "", "number": ""})):
        card = full_card()
        card.put(job=msgspec.structs.replace(card.job, **more), axle=Axle(tag="R9" if n == 2 else "R1"))
        card.put(test=Kind(side="left" if n else None), pulls_wanted=5 + n, dwell_s=3.0, with_drag=n == 1)
        of.begin()
        of.save(card)
        os.utime(of.path, (1e9 + n, 1e9 + n))
        before = of.path.read_bytes()
        of.path.write_bytes(b"gone")
        of.save(card)  # has not changed: is not written again
        same = of.path.read_bytes()
        of.path.write_bytes(before)
        card.put(address=f"there {n}")
        of.save(card)
        os.utime(of.path, (1e9 + n, 1e9 + n))
        answers.append([before, same, of.path.read_bytes(), of.path.name, of.problem, of.last()])
    of.begin()
    card.put(axle=Axle())
    of.save(card)
    os.utime(of.path, (2e9, 2e9))
    for n in range(20):
        (of.folder / f"x{n:02}.toml").write_bytes(before if n % 2 else b"= broken")
        os.utime(of.folder / f"x{n:02}.toml", (1.5e9 + n, 1.5e9 + n))
    answers.append(listed())
    answers += [tried(of.open, of.folder / name) for name in ("x01.toml", "x00.toml", "none.toml")]
    answers += [of.path.name, of.last(), jobs.JobFile(saved=NOW)]
    blocked = jobs.Jobs(of.path)
    blocked.save(card)
    answers.append([blocked.problem.partition(":")[0], blocked.path is None])
    kept("models-files", "jobs", answers)


def test_kept_choices(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv(settings.FOLDER_KEY, "own")

    def told(of):
        return [
            of.choices,
            of.fresh,
            bool(of.problem),
            *(one.as_posix().split("\0") for one in (of.folder, of.recordings, of.looked_at)),
        ]

    here = settings.Settings(Path("deep/er"))
    answers = [told(settings.Settings()), told(here)]
    for more in (
        {"scale": 1.5, "comma": True},
        {"recordings": "r", "sounds": False},
        {"looked_at": "l"},
    ):
        here.remember(**more)
        answers += [told(here), told(settings.Settings(Path("deep/er")))]
    here.remember(recordings="a\0b", looked_at="")
    answers.append(told(here))
    for text in ('scale = 2.0\nunit = 3\npage = "Review"\nmaximised = true\n', "= none", "scale = nan\nshop = 'x'\n"):
        Path("window.toml").write_text(text, "utf-8")
        odd = settings.Settings(Path())
        answers.append(told(odd))
        odd.remember(page="Compare")
        answers += [told(odd), sorted(one.name for one in Path().iterdir())]
    Path("file").write_text("x", "utf-8")
    nowhere = settings.Settings(Path("file"))
    nowhere.remember(page="Compare")
    answers.append(told(nowhere)[:3])
    choices = settings.Choices(shop=" Hillfoot ", address="Road 3 / Hill\n/ ", authorised=" A. ", paper="letter")
    monkeypatch.delenv(settings.FOLDER_KEY)
    monkeypatch.setattr("platformdirs.user_config_dir", lambda name: f"conf/{name}")
    monkeypatch.setattr("platformdirs.user_documents_dir", lambda: "papers")
    answers.append([one.as_posix() for one in settings.home()])
    stop_clock(monkeypatch, issuing)
    answers += [issuing.issue_of(one, "customer", "lbf·ft") for one in (settings.Choices(), choices)]
    kept("models-files", "choices", answers)


def test_kept_lists(tmp_path):
    answers = []
    lists = library.Library(tmp_path)
    for shelf, record in (
        (lists.ratios, turn_count.own_list(turn_count.TypedTurns(own="3.9; 41/11, 4.1", own_name=" mine "))),
        (lists.transducers, full_card().description),
        (lists.limits, msgspec.structs.replace(MINIMUM, name="l")),
        (lists.fixtures, msgspec.structs.replace(HUB, name="f")),
    ):
        path = shelf.save(record)
        entries = shelf.entries()
        answers.append(
            [str(Path(str(getattr(path, "path", ""))).name), list(entries)]
            + [shelf.name_of(one) for one in (*sorted(tmp_path.rglob("*.toml")), Path("none"))]
        )
        answers.append(
            [tried(shelf.send_out, n, tmp_path / "no" / "x.toml") is None for n in ("", "none", "f", "mine")]
        )
    answers.append(sorted(str(one.relative_to(tmp_path)) for one in tmp_path.rglob("*")))
    for own in ("", " ; ", "3.9 4.1", "3.9 x", "0", "41/11;4"):
        found = turn_count.own_list(turn_count.TypedTurns(own=own, own_name="n"))
        answers.append([found, found and turn_count.own_text(found)])
    kept("models-files", "lists", answers)


# ---------------------------------------------------------------------- the card
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
    kept("models-files", "card", answers)


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
    kept("models-files", "details", answers)


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
    kept("models-files", "dial", answers)


# ---------------------------------------------------------------------- what lies in a folder
def test_kept_dropped(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for name in ("01-arrival-left", "06-unclosed"):
        (tmp_path / f"{name}.csv").write_bytes((SEASON / f"{name}.csv").read_bytes())
    for name in ("t.csv", "a.txt", "b.wav", "C.WAV", "d.json", "e.dial.toml", "f.toml"):
        (tmp_path / name).write_text("time,torque\n1,2\n", "utf-8")
    (tmp_path / "folder.wav").mkdir()
    names = sorted(one.name for one in tmp_path.iterdir())
    answers = [dropped.sorted_out(names), dropped.sorted_out(()), dropped.sorted_out(["gone.csv"])]
    for seen in ((), ("06-unclosed.csv",), (str(tmp_path / "06-unclosed.csv"),)):
        answers.append([Path(one).name for one in dropped.cut_off(tmp_path, seen)])
    kept("models-files", "dropped", answers)


def test_kept_due(tmp_path, monkeypatch):
    stop_clock(monkeypatch, due)
    built = NOW.replace(year=2025)
    answers = [due.due_words(tmp_path)]
    for n, plan in enumerate(
        (None, Retest(every_weeks=26), Retest(every_weeks=9), Retest(every_weeks=104), Retest(every_weeks=8))
    ):
        change_axle(
            tmp_path,
            f"R{n}",
            lambda axle, plan=plan: AxleFile(tag=axle.tag, builds=(Build(built=built),), retest=plan),
        )
        answers.append(due.due_words(tmp_path))
    for path in tmp_path.glob("*R2*"):
        path.write_text("= broken", "utf-8")
    answers.append(due.due_words(tmp_path))
    kept("models-files", "due", answers)


def test_kept_index(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    seen: list[str] = []
    counts = [1, 4]
    ticks = iter((10.0, 10.0, 10.05, 10.2, 10.2, 10.3, 10.41, 10.5))
    monkeypatch.setattr(indexing, "time", SimpleNamespace(monotonic=lambda: next(ticks)))
    answers = [
        indexing.how_far("."),
        [Path("index").write_text(t) and indexing.how_far(".") for t in ("1", "3 4000", "x y")],
    ]

    def make(folder, title, *, tell):
        for done in range(1, 5):
            Path("index").write_text("", "utf-8")
            tell(done, 4)
            seen.append(Path("index").read_text("utf-8"))
        return Path("i.html"), counts[0], ["a: no", "b: no", "c: no", "d: no"][: counts.pop(0)]

    monkeypatch.setattr("analysis.report.index.make_index", make)
    for begun in (20.0, 30.0):
        answers.append([indexing.write_index(".", "t", "."), Path("index").exists(), list(seen)])
        ticks = iter([begun + one for one in (0.0, 0.0, 0.1, 0.2, 0.5, 0.5, 0.9, 0.9)])
    kept("models-files", "index", answers)


def test_kept_batch_words(tmp_path):
    bad = tuple(BadFile(f"d/{n}.csv", f"d/{n}.csv: bad {n}\nmore" if n % 2 else f"odd {n}") for n in range(5))
    answers = [
        batching.done_words(Summary(Path("t.csv"), files, rows, resumed, bad[:count], 1.0))
        for files, rows, resumed, count in (
            (1, 1, 0, 0),
            (2000, 2, 0, 0),
            (9, 1234567, 3, 1),
            (9, 0, 2000, 3),
            (9, 5, 0, 4),
            (9, 5, 0, 5),
        )
    ]
    room = str(tmp_path)
    for text in ("", "1 2", "1 2 3", "a b c"):
        (tmp_path / "far").write_text(text, "utf-8")
        answers.append(batching.how_far(room))
    batching.tell_to_stop(room)
    answers.append(sorted(one.name for one in tmp_path.iterdir()))
    batching.clear(room)
    batching.clear(room)
    answers.append([sorted(one.name for one in tmp_path.iterdir()), batching.how_far(room)])
    answers += [batching.write_table(["gone.csv"], str(tmp_path / "t.csv"), "pull", room) is not None]
    batching.tell_to_stop(room)
    answers += [batching.write_table(["gone.csv"], str(tmp_path / "u.csv"), "pull", room), batching.how_far(room)]
    kept("models-files", "batch", answers)


def test_kept_loading(tmp_path):
    path = recording(tmp_path, "in gear", 30.0)
    (tmp_path / "room").mkdir()
    found = loading.load(str(path), str(tmp_path / "room"))
    trace = found.trace()
    answers = [found.samples, everything(found.scale), loading.said_of(found.reading), loading.angle_of(str(path))]
    answers += [list(trace.stretch(a, b, n)) for a, b, n in ((0.0, 9.0, 7), (1.0, 60.0, 20), (-5.0, 1e3, 100))]
    answers.append(sorted(one.name for one in Path(found.folder).iterdir()))
    rows = "".join(f"{n / 500},{n % 7},{'' if n % 3 else n / 10}\n" for n in range(3_000))
    (tmp_path / "turned.csv").write_text("time_s,torque_Nm,angle_deg\n" + rows, "utf-8")
    answers.append(loading.angle_of(str(tmp_path / "turned.csv")))
    change_sidecar(tmp_path / "turned.csv", lambda _: Sidecar(transducer=TransducerFacts(gain=2.0)))
    answers.append(loading.angle_of(str(tmp_path / "turned.csv")))
    issue = Issue(NOW, PageKind("customer"), "N·m")
    for name in ("r.json", "r.csv"):
        loading.export(str(path), str(tmp_path / name), issue)
        answers.append((tmp_path / name).read_bytes().count(b"," if name[-1] == "v" else b"{"))
    answers.append([loading.page_beside(path, "customer", form).name for form in ("pdf", "html")])
    kept("models-files", "loading", answers)


def test_kept_ratios(tmp_path):
    parts = [recording(tmp_path, gear, nm) for gear, nm in (("in gear", 30.0), ("neutral", 10.0))]
    readings = [read_file(one) for one in parts]
    bare = [read_file(recording(tmp_path / "bare", "neutral", 10.0, limit=None, simulated=None))]
    bare += [read_file(recording(tmp_path / "bare", "in gear", 18.0, limit=None, simulated=None))]
    answers = []
    for some in (readings, readings[::-1], readings[:1], [], [*readings, bare[0]], [readings[0], readings[0]], bare):
        answers.append(ratio.ratio_of(some))
    answers += [ratio.ratio_of([readings[0], bare[0]]), ratio.ratio_of([bare[1], readings[1]])]
    kept("models-files", "ratios", answers)


# ---------------------------------------------------------------------- beside a recording
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
    kept("models-files", "signature", answers)


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
    kept("models-files", "step words", answers)


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
    kept("models-files", "decisions", answers)


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
    kept("models-files", "build entry", answers)


# ---------------------------------------------------------------------- transducers
def test_kept_questions():
    names = sorted(shipped())
    answers, lines = [], full_card().description
    for name in names:
        described = read_description(name)
        for address, saved in (("", ()), ("/dev/x\n\x07" + "y" * 90, (described,))):
            answers.append(asking.question_of(described, address, saved))
    polled = msgspec.structs.replace(
        lines, name="n" * 90, notes="w " * 200, poll=Poll(request="D\\r\\n", interval_s=0.5)
    )
    agreed = asking.Agreements()
    for saved in ((), (lines,), (polled,)):
        answers.append(asking.question_of(polled, "A", saved))
    agreed.agree(asking.question_of(polled, "A"))
    answers.append([agreed.cover(one, at) for one in (polled, lines) for at in ("A", "B")])
    kept("models-files", "questions", answers)


def test_kept_calibrated(monkeypatch):
    stop_clock(monkeypatch, calibrating, measure)
    answers = []
    described = full_card().description
    for masses, levels in ((("10 kg",), (100.0, 10_900.0)), ((), (0.0, 5.0))):
        plan, _ = plan_of(Hanging(masses, arm="500 mm"), described.transducer)
        if plan is None:
            continue
        of = calibrating.Calibrating(plan, described)
        of._levels = list(levels)
        wanted = "g, calibrated 2026-05-16"
        answers.append([of.raw, of.made])
        for taken in ((), (wanted,), (wanted, f"{wanted} (2)", f"{wanted} (4)")):
            answers.append(tried(of.description, taken))
    kept("models-files", "calibrated", answers)


def test_kept_introductions(monkeypatch):
    facts = SimpleNamespace(name="G", texts={"serial": "S1"})
    bare = SimpleNamespace(name="", texts={})
    packet = Packet(fields=(PlacedNumber(name="torque", type="s16"),))
    known = Description(name="k", link="ble", notification=packet, transducer=TransducerFacts(unit="N·m", serial="own"))
    blank = msgspec.structs.replace(known, transducer=TransducerFacts(unit="N·m"))
    asked, answers = [], []
    for told in (facts, bare):

        async def meet(identity, given, told=told):
            asked.append([identity, given])
            return told, SimpleNamespace(packet=packet, uuid="2a19")

        monkeypatch.setattr(ble, "meet", meet)
        for one in (None, known, blank):
            answers.append(asyncio.run(radio.introduced("AA:BB", one)))
    kept("models-files", "introductions", [answers, asked])


# ---------------------------------------------------------------------- a stream over a session that a test leads
class Session:
    """Stands for a session: takes its subscriber, gives its columns."""

    def __init__(self, name: object) -> None:
        self.name, self.columns, self.health = name, (Column("torque", "N·m"),), "well"
        self.heard: list[object] = []
        self.stopped = 0

    def subscribe(self, one: object) -> None:
        self.heard.append(one)

    def stop(self) -> None:
        self.stopped += 1


class Acquisition:
    """Stands for the thread that all sessions share."""

    def __init__(self) -> None:
        self.over = False

    def start(self, session: object) -> object:
        self.session = session
        return SimpleNamespace(done=lambda: self.over, result=lambda timeout=None: self.ending)


def test_kept_stream_over_a_session(tmp_path, monkeypatch):
    built: list[object] = []

    def build(link, description, **more):
        built.append([link, description.name, more])
        return Session(link)

    monkeypatch.setattr("logger.stream.session.build_session", build)
    card = full_card()
    leads, answers = Acquisition(), []
    of = stream.SessionStream(leads, card, stream.Open("first", offset_s=3.0))
    answers += [built, of.health, of.saved(), tried(of.rescue, tmp_path), of.ending, of.practice]
    header = Header(started=NOW, job=card.job, test=card.test, lever=card.lever)
    for n in range(2):
        path = of.begin(header, tmp_path / "a" / "b")
        for heard in leads.session.heard:
            heard.on_block(Block(np.arange(3) / 10 + n, {"torque": np.arange(3.0)}, ()))
        of._writer._halt()
        of._writer._flush()
        answers.append([path.name, of.saved()])
        of.rest()
    (tmp_path / "file").write_text("x", "utf-8")
    try:
        of.begin(header, tmp_path / "file")
    except HeldwheelError as error:
        answers.append(type(error).__name__)
    leads.over, leads.ending = True, Ending(EndReason.STOPPED, "done")
    of.stop()
    of.wait()
    answers += [of.ending, [type(one).__name__ for one in of.news()], of.news(), leads.session.stopped]
    answers.append(sorted(one.name for one in (tmp_path / "a" / "b").iterdir()))
    force = Description(
        name="f", measures="force", transducer=TransducerFacts(unit="N"), lines=LineFormat(template="{torque}")
    )
    at = Lever(fixture="force at radius", radius_mm=300.0)
    card.put(description=force, lever=at)
    leads = Acquisition()
    leads.ending = Ending(EndReason.STOPPED, "done")
    of = stream.SessionStream(leads, card, stream.Open("first"))
    for lever in (at, Lever(fixture="force at radius", radius_mm=310.0)):
        try:
            of.begin(msgspec.structs.replace(header, lever=lever), tmp_path / "c")
            of.rest()
            answers.append("begun")
        except InputError as error:
            answers.append(error)
    leads.over = True
    of.wait()
    card.put(description=None)
    answers.append(tried(stream.SessionStream, leads, card, stream.Open("x")))
    answers.append(tried(stream.open_link, card))
    answers.append(stream.Open("x"))
    kept("models-files", "stream", answers)


def test_kept_practice_in_time(monkeypatch):
    """Pieces come when they are due, twice as fast as the clock; the pull's end frees the hand."""
    now = [100.0]
    monkeypatch.setattr(practice, "time", SimpleNamespace(monotonic=lambda: now[0]))
    link = practice.PracticeLink(practice.scenario_for_practice(), speed=2.0)
    answers = []

    async def through() -> None:
        await link.open()
        for n in range(24):
            now[0] = 100.0 + 0.4 * (n + 1)
            got = await link.read()
            answers.append([len(got), sum(len(one.data) for one in got), got[0].arrival_s, link.busy.is_set()])
            if n == 4:
                link.busy.set()
                link._simulate(practice.HandWish())
            await link.open()
        link.lost = True
        for call in (link.open, link.read):
            try:
                await call()
            except HeldwheelError as error:
                answers.append(error)

    asyncio.run(through())
    kept("models-files", "practice", answers)
