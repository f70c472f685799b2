"""What the window is told while a stream runs, and what stands behind practice, held against what was kept."""

from __future__ import annotations

import msgspec
import numpy as np
import pytest

from analysis.pipeline import read_file
from analysis.to_axle.calibration import Calibration, calibration_of
from analysis.verdict.job import Job
from gui.models import library, marks, practice, settings, undoing
from gui.models.calibrating import Calibrating
from gui.models.caught import CaughtPull, PullList, pack_means
from gui.models.job import JobCard
from gui.models.relay import Analyst, Relay
from gui.models.weighing import Hanging, plan_of
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.errors import InputError
from logger.header import Header, Lever, Test, TransducerFacts
from logger.samples import Block, Ending, EndReason, Event, EventKind
from tests.analysis.made import Shape, trace
from tests.gui.models.test_kept import SEASON
from tests.kept import everything, kept, tried
from tests.steps import steps


class Written:
    """Keeps what a recording is given."""

    def __init__(self) -> None:
        self.blocks: list[Block] = []
        self.ended = 0

    def on_block(self, block: Block) -> None:
        self.blocks.append(block)

    def on_end(self, ending: Ending) -> None:
        self.ended += 1


@pytest.mark.parametrize("sources", ["one", "with angle", "two", "two and held"])
@pytest.mark.parametrize("offset_s", [0.0, 100.0])
def test_kept_relay(sources, offset_s):
    t, y = trace(Shape(turning_s=1.5), Shape(turning_s=1.5), rate_hz=50.0, noise_nm=0.02)
    relay = Relay(calibration_of(TransducerFacts(sign="reversed"), "lbf·in") if offset_s else Calibration(), offset_s)
    writers, answers = [Written(), Written()], []
    with steps("gui.models.relay") as said:
        for n in range(0, len(t), 40):
            if n in (40, 400):
                answers.append(relay.begin(writers[n // 400], Job(Header(), "lbf·in" if offset_s else "N·m")))
            part = slice(n, n + 40)
            columns = {"torque": np.round(y[part], 3)}
            if sources != "one":
                columns["angle"] = t[part] * 20
            if sources.startswith("two"):
                columns["source"] = np.where(np.arange(n, n + len(t[part])) % 3 == 0, 2.0, 1.0)
                columns["angle"] = np.where(columns["source"] == 2, columns["angle"], np.nan)
                columns["torque"] = np.where(columns["source"] == 1, columns["torque"], np.nan)
            if sources.endswith("held"):
                columns["held_angle"] = columns["angle"] / 9
            relay.on_block(
                Block(t[part], columns, (Event(EventKind.NOTE, 3, 0, "x", float(t[n])),) if n % 120 == 0 else ())
            )
        answers.append(relay.full)
        relay.on_end(Ending(EndReason.STOPPED, "done"))
        relay.on_end(Ending(EndReason.LOST, "again"))
        Analyst(relay).run()
        for one in relay.news:
            names = [name for name in type(one).__slots__ if name != "job"]
            answers.append([type(one).__name__, *(getattr(one, name) for name in names)])
        answers += [
            [len(w.blocks), w.ended, [b.time_s for b in w.blocks], [b.events for b in w.blocks[:3]]] for w in writers
        ]
    kept("models-stream", f"relay {sources} {offset_s}", [answers, said])


def test_kept_practice():
    with steps("gui.models.practice") as said:
        link = practice.PracticeLink(practice.scenario_for_practice(), speed=2.0)
        card = JobCard()
        practice.fill_card(card, link)
        answers = [
            link.name,
            practice.scenario_for_practice(),
            practice.free_of(practice.scenario_for_practice()).axle.held,
            {name: part for name, part in card.parts().items() if name != "description"},
        ]
        link._hung = 0.0, 0.0, 0
        for n, hang in enumerate((0.0, 49.0, 49.0, 10.0, 0.0)):
            link._count = 900 * n
            link.hang(hang)
            answers.append([link._hung, link._weight(np.arange(900 * n - 3, 900 * n + 700, 50))])
        link._prepare(0.5)
        answers.append([link._count, link._end_s, len(link._pieces), [at for at, _ in list(link._pieces)[:5]]])
        link._simulate(practice.HandWish())
        link._simulate(practice.HandWish(drag=True))
        answers.append([[len(one.time_s), one.angle_deg is None, one.scenario.axle.held] for one in link._ready])
        link._prepare(40.0)
        answers.append([link._count, link._end_s, link._pull_ends_s, len(link._pieces), list(link._pieces)[-1][0]])
    kept("models-stream", "practice", [everything(answers), sorted(said)])  # what is simulated is not kept


def test_kept_marks():
    answers = []
    for name in ("01-arrival-left", "06-clumsy-hand", "06-chatter"):
        reading = read_file(SEASON / f"{name}.csv")
        answers += [marks.marks_of(reading, factor) for factor in (1.0, 0.7375621)]
        job = Job(Header(lever=Lever(fixture="hub centre")))
        for read in (*reading.pulls[:3], None):
            caught = CaughtPull(3, 100.0, reading.pulls[0].pull if read is None else read.pull, job, read)
            answers.append(marks.mark_of(caught, 0.7375621))
    kept("models-stream", "marks", answers)


def test_kept_calibrations():
    description = Description(name="raw", transducer=TransducerFacts(unit="N·m"), lines=LineFormat(template="{torque}"))
    answers = []
    with steps("gui.models.calibrating", "gui.models.weighing") as said:
        for masses, levels in (
            (("10 kg",), (100.0, 10_900.0)),
            (("10 kg", "5 kg"), (-50.0, -9000.0)),
            (("10 kg",), (5.0, 5.0)),
        ):
            plan, _ = plan_of(Hanging(masses, arm="500 mm"), description.transducer)
            of = Calibrating(plan, description)
            t = 0.0
            for level in levels:
                of.insist()
                for n in range(60):
                    time_s = t + np.arange(5) / 20
                    found = of.feed(
                        time_s, level + (20.0 * np.exp(-n / 3) if n < 12 else 0.3 * (np.arange(5) % 2)) + np.zeros(5)
                    )
                    t += 0.25
                    if n % 8 == 0 or found:
                        answers.append([of.step, of.share, of.moving, of.now_nm, of.done])
                    if found:
                        break
            answers += [tried(lambda o=of: o.made), len(of.rows)]
    kept("models-stream", "calibrations", [answers, said])


def test_kept_library_and_settings(tmp_path):
    with steps("gui.models.library") as said:
        shelf = library.Library(tmp_path).fixtures
        answers = [sorted(name for name in vars(library.Library) if not name.startswith("_"))]
        if shelf is not None:
            for name in ("b", "a", "A/b", "", "b"):
                answers.append(tried(lambda n=name: shelf.save(Lever(fixture="hub centre", name=n)).name))
            answers += [list(shelf.entries()), shelf.can_undo() if callable(shelf.can_undo) else shelf.can_undo]
            for name in ("a", "none"):
                tried(shelf.remove, name)
                answers.append(
                    [list(shelf.entries()), shelf.can_undo() if callable(shelf.can_undo) else shelf.can_undo]
                )
            tried(shelf.undo)
            answers.append(list(shelf.entries()))
            tried(shelf.send_out, "b", tmp_path / "out.lever.toml")
            answers.append(
                [
                    (tmp_path / "out.lever.toml").exists(),
                    tried(lambda: shelf.bring_in(tmp_path / "out.lever.toml").name),
                    list(shelf.entries()),
                ]
            )
    answers.append(sorted(name for name in vars(settings) if name.isupper()))
    kept("models-stream", "library", [answers, said])


def test_kept_names_and_undoing(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "old.csv").write_text("x", "utf-8")
    undo, path = undoing.Undo(), "old.csv"
    answers = []
    for name in ("new", "new", "a/b", "", "con", ".x", "y" * 120, "y" * 121, "last"):
        try:
            path, step = undoing.rename(path, name)
            undo.steps.append(step)
        except InputError as error:
            answers.append(error)
        answers.append([path, undo.words, len(undo.steps)])
    undo.steps.append(undoing.to_bin(path))
    answers.append([undo.words, sorted(one.name for one in tmp_path.rglob("*.csv"))])
    while undo.steps:
        answers.append([undo.words, undo.take_back()])
    answers.append([undo.words, undo.take_back()])
    kept("models-stream", "undoing", answers)


def test_kept_means_of_the_packs():
    card = JobCard()
    card.put(lever=Lever(fixture="hub centre", weight_kg=1.0, centroid_mm=200.0))
    held, free = PullList(card), PullList(card)
    answers = [pack_means(held, free)]
    for listed, level, signs, how in ((held, 40.0, (1, -1, 1, -1), "other side"), (free, 8.0, (1, 1, -1), "none")):
        t, y = trace(
            *[Shape(breakaway_nm=1.1 * level, rotating_nm=level)] * len(signs), rate_hz=50.0, noise_nm=0.02, signs=signs
        )
        head = msgspec.structs.replace(card.judged_by("pulls"), test=Test(held=how, side="left"))
        job = Job(head)
        for one in (*job.feed(t, np.round(y, 3)), *job.finish()):
            listed.add(0.0, one, job)
            answers.append(everything(listed.value))
    answers += [pack_means(held, free), pack_means(free, held), pack_means(held, held)]
    kept("models-stream", "packs", answers)
