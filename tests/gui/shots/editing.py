"""The editors of the job card and their dialogs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog

from gui.models.practice import PracticeLink, fill_card, scenario_for_practice

if TYPE_CHECKING:
    from tests.gui.shots.studio import Studio


def editor(name: str) -> Callable[[Studio], None]:
    def show(studio: Studio) -> None:
        fill_card(studio.tester.card, PracticeLink(scenario_for_practice()))
        studio.tester.card.put(practice=False)
        studio.page.open_row(name)
        part = studio.page.editor(name)
        if hasattr(part, "load"):
            part.load()
        studio.settle()

    return show


def job_open(studio: Studio) -> None:
    """The job's sheet with its folds open and two photographs."""
    from logger.header import Photo

    editor("Job")(studio)
    photos = tuple(Photo(file=f"photo-{name}-1a2b3c4d.jpg", sha256="ab" * 32) for name in ("tag", "hold"))
    studio.tester.card.put(photos=photos)
    part = studio.page.editor("Job")
    part.load()
    for fold in part.folds.values():
        fold.open()
    studio.settle()
    bar = part.area.verticalScrollBar()
    bar.setValue(bar.maximum())
    studio.settle()


def asked(name: str) -> Callable[[Studio], None]:
    def show(studio: Studio) -> None:
        from logger.decoder.description import read_description

        editor("Transducer")(studio)
        studio.tester.card.put(description=read_description(name), address="/dev/ttyUSB0")
        studio.page.act()
        studio.settle()

    return show


def learning(page: int) -> Callable[[Studio], None]:
    """The dialog that learns a transducer: where it is, loads as they come, what was found."""

    def show(studio: Studio) -> None:
        from concurrent.futures import Future

        from gui.models.learning import look_at
        from gui.pages.learn_dialog import LearnDialog
        from logger.learn.hear import Heard
        from tests.gui.test_learn import chunks, levers, lines

        editor("Transducer")(studio)
        studio.page.editor("Transducer").learn()
        dialog = next(part for part in studio.page.findChildren(LearnDialog) if part.isVisible())
        heard = chunks(lines(levers(-1.0)))
        if page == 1:
            dialog.heard.chunks, dialog._listening = heard.chunks[:110], Future()
            dialog.show_step(1)
            dialog._show_so_far(look_at(Heard(heard.chunks[:110])))
        elif page == 2:
            dialog.show_found(look_at(heard))
        studio.settle()

    return show


def weighing(steps: int, gain: float = 1.004, *, settling: bool = False) -> Callable[[Studio], None]:
    """The dead-weight check after some of its five steps; -1: what hangs is being typed."""

    def show(studio: Studio) -> None:
        from gui.pages.weigh_dialog import WeighDialog
        from tests.gui.test_weigh import FACTS, Rig, gauge, type_in

        editor("Transducer")(studio)
        studio.tester.card.put(description=gauge(), address="/dev/ttyUSB0")
        studio.page.editor("Transducer").weigh()
        dialog = next(part for part in studio.page.findChildren(WeighDialog) if part.isVisible())
        dialog.what.which.set_key("real")
        type_in(dialog, mass1="10 kg", mass2="20 kg", arm="500 mm", latitude="47.2°", height="410 m", mass_error="5 g")
        if steps >= 0:
            studio.stream.simulated = False
            dialog.begin(studio.stream, FACTS)
            dialog._timer.stop()
            rig = Rig(dialog.weighing, gain)
            for step in range(steps):
                rig.hold(dialog.weighing.plan.torque_nm(step))
            if settling:
                rig.hold(dialog.weighing.plan.torque_nm(steps), 1.2)
            dialog.look()
        studio.settle()

    return show


def calibrating(studio: Studio, *, done: bool = False) -> None:
    """Two loads on a bare amplifier: the second one is to be hung, or both are measured."""
    import numpy as np

    weighing(-1)(studio)
    dialog = next(part for part in studio.page.findChildren(QDialog) if part.isVisible())
    dialog.what.which.set_key("calibrate")
    dialog.what.which.changed.emit()
    studio.stream.simulated = False
    dialog.begin(studio.stream, studio.tester.card.facts)
    dialog._timer.stop()
    time_s = np.arange(400) / 100.0
    for counts in (8_388_000.0, 8_486_112.0) if done else (8_388_000.0,):
        dialog.weighing.insist()
        dialog.weighing.feed(time_s[:1], np.full(1, counts))
        dialog.weighing.feed(time_s[1:], np.full(399, counts))
    dialog.look()
    studio.settle()


AXLE_SEEN = {
    "found": {"brakes": "free", "both-up": "same", "one-held": "even", "in-gear": "much", "slack": "little"},
    "nothing": {"brakes": "free", "both-up": "opposite", "one-held": "free", "in-gear": "free", "slack": "untried"},
}


def axle_turns(studio: Studio) -> None:
    from gui.pages.editors.axle import TURNS

    editor("Axle")(studio)
    part = studio.page.editor("Axle")
    part.show_part(TURNS)
    part.entry.count(propshaft="18 5/8", left="10", right="0")
    studio.settle()


def axle_build(studio: Studio) -> None:
    """Two builds of which the second is being typed: a part is picked, what changed stands below."""
    import msgspec

    from gui.pages.editors.axle import BUILD
    from logger.recordings.axles import Pack, PackPart

    editor("Axle")(studio)
    studio.tester.card.put(axle=msgspec.structs.replace(studio.tester.card.axle, tag="A-117"))
    part = studio.page.editor("Axle")
    part.show_part(BUILD)
    entry = part.build.entry
    layers = [PackPart(kind=kind, thickness_mm=mm) for kind, mm in (("friction disc", 1.98), ("steel plate", 2.0))] * 4
    pack = Pack(
        parts=(*layers, PackPart(kind="disc spring", thickness_mm=1.5), PackPart(kind="shim", thickness_mm=0.3))
    )
    for key, text in {"built": "2026-05-02 16:30", "oil": "75W-90", "oil_l": "1.15 l", "spring_n": "1500 N"}.items():
        entry.type_in(key, text)
    entry.draft = replace(entry.draft, left=pack.parts, right=pack.parts)
    entry.keep()
    entry.open(-1)
    entry.type_in("reason", "low breakaway")
    entry.type_in("modifier", "modifier B")
    entry.type_in("modifier_l", "4 %")
    entry.pick("right", 9)
    entry.set_part("0.5 mm", "new")
    studio.settle()


def axle_type(seen: str) -> Callable[[Studio], None]:
    def show(studio: Studio) -> None:
        from gui.pages.editors.axle import TYPE

        editor("Axle")(studio)
        part = studio.page.editor("Axle")
        part.show_part(TYPE)
        for key, word in AXLE_SEEN[seen].items():
            part.type.answers[key][word].click()
        studio.settle()

    return show


def axle_asked(studio: Studio) -> None:
    axle_type("found")(studio)
    studio.page.editor("Axle").type.go("one-held")
    studio.settle()


def axle_refused(studio: Studio) -> None:
    axle_type("nothing")(studio)
    studio.page.editor("Axle").type.take.click()
    studio.settle()


def axle_started(studio: Studio) -> None:
    import msgspec

    studio.practise()
    studio.tester.card.put(axle=msgspec.structs.replace(studio.tester.card.axle, type="helical or worm gear"))
    studio.tester.run.start()
    studio.tick()


def stud_circle(studio: Studio) -> None:
    fill_card(studio.tester.card, PracticeLink(scenario_for_practice()))
    studio.tester.card.practice = False
    studio.page.open_row("Fixture")
    part = studio.page.editor("Fixture")
    part.fields["stud_circle_mm"].set_text("")
    part.chord.field.set_text("67.2 mm")
    part.chord.changed.emit()
    studio.settle()
    part.area.ensureWidgetVisible(part.chord)
    studio.settle()


def second(studio: Studio) -> None:
    """A sensor recorded along that has gone quiet, and where it was chosen."""
    from logger.decoder.description import read_description

    editor("Transducer")(studio)
    part = studio.page.editor("Transducer")
    studio.tester.card.put(second=read_description("encoder"), second_address="/dev/ttyUSB1")
    part.second.which.set_key("shipped:encoder")
    part.second.load()
    studio.settle()
    part.area.ensureWidgetVisible(part.second)
    studio.settle()


def ratio_limit(studio: Studio) -> None:
    from tests.gui.test_ratio import RATIO

    editor("Limit")(studio)
    studio.tester.card.put(limit=RATIO)
    studio.page.editor("Limit").load()
    studio.settle()


def dial(studio: Studio, *, filed: bool = False) -> None:
    """Some readings of a dial, the checks ticked; signed and filed."""
    from logger.header import Limit

    fill_card(studio.tester.card, PracticeLink(scenario_for_practice()))
    studio.tester.card.practice = False
    limit = Limit(quantity="breakaway", kind="min", lower=40.0, unit="N·m", source="invented club rule")
    studio.window.tester.card.put(limit=limit)
    if studio.page.open_form != "Dial":
        studio.page.open_row("Dial")
    form = studio.page.editor("Dial")
    for row in form._rows:
        row.box.click()
    form.error.set_text("4 %")
    for text in ("48", "50", "47"):
        form.reading.set_text(text)
        form._keep()
    form.name.set_text("jo")
    form.refresh()
    if filed:
        form.file()


STATES: dict[str, Callable[[Studio], None]] = {
    "job": editor("Job"),
    "job-open": job_open,
    "axle": editor("Axle"),
    "axle-turns": axle_turns,
    "axle-build": axle_build,
    "axle-asked": axle_asked,
    "axle-type": axle_type("found"),
    "axle-nothing": axle_type("nothing"),
    "axle-refused": axle_refused,
    "axle-started": axle_started,
    "fixture": editor("Fixture"),
    "stud-circle": stud_circle,
    "limit": editor("Limit"),
    "transducer": editor("Transducer"),
    "second": second,
    "limit-ratio": ratio_limit,
    "learn-where": learning(0),
    "learn-listen": learning(1),
    "learn-name": learning(2),
    "weigh-what": weighing(-1),
    "weigh-hang": weighing(2),
    "weigh-settle": weighing(2, settling=True),
    "weigh-within": weighing(5),
    "weigh-outside": weighing(5, 1.03),
    "weigh-calibrate": calibrating,
    "weigh-calibrated": lambda studio: calibrating(studio, done=True),
    "ask-modbus": asked("modbus"),
    "ask-letters": asked("letters"),
    "dial": editor("Dial"),
    "dial-readings": dial,
    "dial-filed": lambda studio: dial(studio, filed=True),
}
