"""What the models of the window write, list and read back in folders, held against what was kept of it."""

from __future__ import annotations

import os
from pathlib import Path
from types import SimpleNamespace

import msgspec

from analysis.pipeline import read_file
from analysis.report.material import Issue, PageKind
from analysis.rows.batch import Summary
from analysis.rows.tables import BadFile
from gui.models import (
    batching,
    dropped,
    due,
    indexing,
    issuing,
    jobs,
    library,
    loading,
    ratio,
    settings,
    turn_count,
)
from gui.models.job import JobCard
from logger.header import (
    Axle,
    Sidecar,
    TransducerFacts,
)
from logger.header import Test as Kind
from logger.recordings.axles import AxleFile, Build, Retest, change_axle
from logger.recordings.sidecar import change_sidecar
from tests.analysis.halves import recording
from tests.gui.models.stopped import NOW, full_card, stop_clock
from tests.gui.models.test_kept_run import HUB, MINIMUM
from tests.kept import everything, kept, tried

SEASON = Path(__file__).parents[3] / "recordings"


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
