"""What the window asks a transducer, and its stream over a session that a test leads, held against what was kept."""

from __future__ import annotations

import asyncio
from types import SimpleNamespace

import msgspec
import numpy as np

from gui.models import (
    asking,
    calibrating,
    practice,
    radio,
    stream,
)
from gui.models.weighing import Hanging, plan_of
from logger.decoder.description import Description, Poll, read_description, shipped
from logger.decoder.layouts import Packet, PlacedNumber
from logger.decoder.template import LineFormat
from logger.errors import HeldwheelError, InputError
from logger.header import (
    Header,
    Lever,
    TransducerFacts,
)
from logger.instruments import measure
from logger.links import ble
from logger.samples import Block, Column, Ending, EndReason
from tests.gui.models.stopped import NOW, full_card, stop_clock
from tests.kept import kept, tried


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
    kept("models-links", "questions", answers)


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
    kept("models-links", "calibrated", answers)


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
    kept("models-links", "introductions", [answers, asked])


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
    kept("models-links", "stream", answers)


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
    kept("models-links", "practice", answers)
