"""Run by ``test_path`` on a real X server: from the first start to a signed page, by mouse and keys. Prints JSON.

First start, a practice, then a real job: a transducer on a pseudo-terminal, fixture and limit typed in, the checks
ticked, zero, three pulls, zero again, signature, page.
"""

from __future__ import annotations

import json
import os
import sys
from pathlib import Path

from PySide6.QtWidgets import QApplication

from gui.__main__ import build
from gui.models.flow import Step
from gui.models.practice import HandWish, PracticeLink, scenario_for_practice
from gui.models.state import LinkState
from gui.pages.checks_panel import CheckRow
from logger.edges.toml_file import write_toml
from logger.virtual.port import VirtualPort
from tests.gui.test_links import endless
from tests.gui.x_hand import XHand

FAST = 8.0  # seconds of test per second


def main(scale: float) -> None:
    home = Path(os.environ["HELDWHEEL_HOME"])
    device = PracticeLink(scenario_for_practice())
    own = home / "transducers" / "shop-gauge.toml"
    own.parent.mkdir(parents=True)
    write_toml(own, device.description)
    app = QApplication([])
    window = build("dark")
    window._shared.sounds.on = False
    window.tester.practice_speed = FAST
    hand = XHand()
    window.show()
    if scale != 1.0:
        window.set_scale(scale)
    window.activateWindow()
    hand.settle(0.5)
    screen = window.screen().geometry()
    assert screen.contains(window.frameGeometry()), f"first size {window.size()} on {screen.size()}"
    page, run, card = window.pages["Test"], lambda: window.tester.run, window.tester.card
    practise(hand, page, run)
    hand.click(page.foot.stop)
    hand.until(lambda: run().flow.now is None, "back from the practice")
    assert (card.limit, card.lever, card.description) == (None, None, None), "nothing of the practice stays"
    with VirtualPort(endless(device), link=home / "port", speed=FAST) as port:
        fill_in(hand, page, port.path)
        a_job(hand, page, run, device)
        said = signed(hand, page, window)
    said |= {"clicks": hand.clicks, "keys": hand.presses, "size": [window.width(), window.height()]}
    window.grab().save(str(home / "end.png"))
    window.close()
    app.processEvents()
    print(json.dumps(said))


def practise(hand: XHand, page, run) -> None:
    hand.click(page.welcome.first)
    hand.until(lambda: run().link is LinkState.LIVE, "the virtual transducer")
    hand.key(" ")
    hand.key(" ")
    hand.until(lambda: run().flow.now is Step.ZERO, "the zero of the practice")
    hand.key(" ")
    hand.until(lambda: len(run().pulls.counting) >= 1, "a pull of the practice")


def typed(hand: XHand, field, text: str) -> None:
    hand.click(field.edit)
    hand.type(text)
    assert field.text == text, (field.text, text)


def fill_in(hand: XHand, page, port: str) -> None:
    card = page._tester.card
    rows = page.card_panel.rows
    hand.click(rows["Transducer"])
    editor = page.editor("Transducer")
    hand.click(editor.shelf.list.box)
    hand.key("down")
    hand.key("\n")
    hand.until(lambda: card.description is not None, "the saved transducer")
    typed(hand, editor.address, port)
    hand.click(rows["Job"])
    typed(hand, page.editor("Job").texts["job", "vehicle"], "club car 7")
    hand.click(rows["Fixture"])
    editor = page.editor("Fixture")
    for key, text in (("stud_circle_mm", "114.3 mm"), ("length_mm", "450 mm"), ("angle_deg", "0")):
        typed(hand, editor.fields[key], text)
    hand.click(rows["Limit"])
    editor = page.editor("Limit")
    for key, text in (("lower", "20"), ("source", "club rules"), ("page", "p. 3")):
        typed(hand, editor.typed[key], text)
    hand.click(editor.done)
    assert card.limit is not None
    assert card.lever is not None
    assert card.missing() == ()


def a_job(hand: XHand, page, run, device: PracticeLink) -> None:
    hand.click(page.foot.main)
    hand.until(lambda: run().link is LinkState.LIVE, "the transducer on its port")
    for place, row in enumerate(page.checks.findChildren(CheckRow)):
        if place % 2:
            hand.click(row.box)
        else:
            page.foot.main.setFocus()
            hand.key(" ")
        hand.until(lambda place=place: run().checks[place].ticked, f"check {place + 1}")
    hand.click(page.foot.main)
    hand.until(lambda: run().flow.now is Step.ZERO, "the zero")
    hand.key(" ")
    hand.until(lambda: run().flow.now is Step.PULLS, "the pulls")
    run().card.dwell_s = 1.0
    wanted = run().card.pulls_wanted
    for number in range(1, 4):
        device.ask(HandWish())
        hand.until(lambda number=number: len(run().pulls.counting) >= number, f"pull {number}")
        hand.key(" ")  # a bump on the space bar ends nothing
        assert run().flow.now is Step.PULLS
    assert wanted > 3
    hand.until(lambda: page.foot.skip.isVisible(), "that the lever is off")
    hand.click(page.foot.skip)
    hand.until(lambda: run().flow.now is Step.ZERO_AGAIN, "the second zero")
    hand.click(page.foot.main)
    hand.until(lambda: run().flow.now is Step.SIGN, "the signature")


def signed(hand: XHand, page, window) -> dict[str, object]:
    run = window.tester.run
    hand.until(lambda: window.tester.recording_words() == "Not recording", "that the recording is closed")
    hand.click(page.sign.name.edit)
    hand.type("Robin")
    hand.click(page.foot.main)
    hand.until(lambda: run.flow.finished, "the end")
    hand.click(page.sign.report)
    hand.until(lambda: page.sign.written.path is not None, "the page")
    recording = window.tester.bridge.recording
    return {
        "platform": QApplication.platformName(),
        "by": run.signed_by,
        "pulls": len(run.pulls.counting),
        "state": run.value.state,
        "recording": str(recording),
        "page": str(page.sign.written.path),
    }


if __name__ == "__main__":
    main(float(sys.argv[1]))
