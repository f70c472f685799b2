"""The window: how long a frame takes, how soon it is there, how it bears thousands of recordings and large ones."""

from __future__ import annotations

import os
import re
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import numpy as np

FRAMES = 150
HOUR = 3_600_000  # samples: an hour at 1 kHz
ARRIVING_HZ = 4000
STARTS = 5
RECORDINGS = 5_000
LARGE_BYTES = 500_000_000
HOUR_BYTES = 59_000_000  # of such text: an hour at 1 kHz
LATE_S = 0.1  # a frame later than this is seen


def frames() -> list[dict[str, object]]:
    """A frame with an hour on screen and 4 kHz arriving, beside the bare library with two points per pixel column."""
    import pyqtgraph as pg
    from PySide6.QtWidgets import QApplication

    from analysis.to_axle.axle_scale import AxleScale
    from gui.look import Look
    from gui.models.trace import GrowingTrace
    from gui.widgets.trace_plot import TracePlot

    QApplication.instance() or QApplication([])
    rng = np.random.default_rng(1)
    time_s = np.arange(HOUR) / 1000
    shape = np.interp(time_s % 12, [0, 3, 4.5, 4.8, 9.5, 9.9, 12], [0, 0, 40, 34, 34, 0, 0])
    trace = GrowingTrace(time_s, shape + rng.normal(0, 0.1, HOUR))
    ours = TracePlot(Look(), "Time (s)")
    ours.set_limits(27.0, None)
    ours.set_view(-3600.0, 0.0, -5.0, 60.0)
    bare = pg.PlotWidget(enableMenu=False)
    bare.getPlotItem().setMouseEnabled(x=False, y=False)
    bare.setRange(xRange=(-3600.0, 0.0), yRange=(-5.0, 60.0), padding=0, disableAutoRange=True)
    curve = pg.PlotCurveItem()
    bare.addItem(curve, ignoreBounds=True)
    for widget in (ours, bare):
        widget.resize(1280, 500)
        widget.show()
    QApplication.processEvents()
    arriving = ARRIVING_HZ // 60
    more = rng.normal(0, 0.1, (FRAMES, arriving))

    def our_frame(number: int) -> None:
        start = trace.end_s
        trace.append(start + (np.arange(arriving) + 1) / ARRIVING_HZ, more[number])
        ours.draw(trace, AxleScale(0.1, 1.127).torque, newest_at_zero=True)
        ours.viewport().repaint()

    columns = max(1, round(bare.getPlotItem().getViewBox().width()))
    x = np.repeat(np.linspace(-3600, 0, columns), 2)
    y = np.empty(2 * columns)
    _, seen = trace.stretch(0, 3600, columns)
    y[:] = np.resize(seen, 2 * columns)

    def bare_frame(number: int) -> None:
        curve.setData(x, y + 0.001 * number)
        bare.viewport().repaint()

    pairs = [(_timed(our_frame, n), _timed(bare_frame, n)) for n in range(FRAMES)][10:]
    mine, other = (statistics.median(p[i] for p in pairs) for i in (0, 1))
    for widget in (ours, bare):
        widget.close()
    return [_row("frame: 1 h at 1 kHz on screen, 4 kHz arriving, beside the bare library", mine, other, "<= 1.3")]


def _timed(act, number: int) -> float:
    begun = time.perf_counter()
    act(number)
    return time.perf_counter() - begun


def _row(name: str, ours: float, reference: float, target: str) -> dict[str, object]:
    cells = {"ours": f"{ours * 1e3:.1f} ms", "reference": f"{reference * 1e3:.1f} ms"}
    return {"name": name, **cells, "ratio": round(ours / reference, 3), "target": target}


SHOWN = """
import sys, time
from PySide6.QtCore import QEvent, QObject
class Eye(QObject):
    def eventFilter(self, target, event):
        if event.type() == QEvent.Type.Paint:
            app.exit(0)
        return False
"""
OURS = """
from PySide6.QtWidgets import QApplication
app = QApplication([])
from gui.__main__ import build
window = build("dark")
eye = Eye()
window.pages["Test"].foot.main.installEventFilter(eye)
window.show()
app.exec()
if "-v" in sys.argv:
    tops = {n.split(".")[0] for n, m in sys.modules.items() if "site-packages" in str(getattr(m, "__file__", ""))}
    tops |= {"gui", "analysis", "logger"}
    names = sorted(n for n in sys.modules if n.split(".")[0] in tops and not n.startswith("_") and "._" not in n)
    print(",".join(names))
"""
BARE = """
import importlib
for name in NAMES:
    importlib.import_module(name)
from PySide6.QtWidgets import QApplication, QMainWindow, QPushButton
app = QApplication([])
window = QMainWindow()
press = QPushButton("x")
window.setCentralWidget(press)
eye = Eye()
press.installEventFilter(eye)
window.show()
app.exec()
"""


def first_paint() -> list[dict[str, object]]:
    """From starting the interpreter to the first paint, beside a bare window with the same imports."""
    with tempfile.TemporaryDirectory() as home:
        environment = {**os.environ, "HELDWHEEL_HOME": home}

        def start(code: str, *words: str) -> tuple[float, str]:
            begun = time.perf_counter()
            done = subprocess.run(
                [sys.executable, "-c", SHOWN + code, *words],
                env=environment,
                capture_output=True,
                text=True,
                check=True,
            )
            return time.perf_counter() - begun, done.stdout.strip()

        _, names = start(OURS, "-v")
        imported = [name for name in names.split(",") if name]
        bare = f"NAMES = {imported!r}\n{BARE}"
        start(bare)
        pairs = [(start(OURS)[0], start(bare)[0]) for _ in range(STARTS)]
    mine, other = (statistics.median(p[i] for p in pairs) for i in (0, 1))
    return [_row("first paint of the window, beside a bare one that imports the same modules", mine, other, "<= 1.5")]


def many_recordings(count: int = RECORDINGS) -> list[dict[str, object]]:
    """Thousands of recordings: the first screenful, all of them, and the longest time without an answer."""
    from PySide6.QtWidgets import QApplication

    app = QApplication.instance() or QApplication([])
    with tempfile.TemporaryDirectory() as home:
        os.environ["HELDWHEEL_HOME"] = home
        write_many(Path(home) / "recordings", count)
        from gui.__main__ import build

        window = build("dark")
        window.resize(1280, 720)
        window.show()
        window.pages["Test"].warm_up()  # what the program does a moment after its first paint
        app.processEvents()
        longest = Longest()
        window.open_page("Review")
        page = window.pages["Review"]
        while not page.all_s:
            app.processEvents()
            longest.beat()
        first, everything, found = page.first_screen_s, page.all_s, len(page.archive.entries)
        window.close()
        os.environ.pop("HELDWHEEL_HOME")
    if found != count:
        raise RuntimeError(f"{found} of {count} recordings were found")
    return [
        _bound(f"{count:,} recordings: first screenful", first, 0.3),
        _bound(f"{count:,} recordings: all listed", everything, 5.0),
        _bound(f"{count:,} recordings: longest time without an answer", longest.most_s, 0.3),
    ]


def large_file(size: int = LARGE_BYTES) -> list[dict[str, object]]:
    """Half a gigabyte of text is opened while the window goes on answering."""
    took, samples, longest = _opened(size)
    return [
        _bound(f"{size / 1e6:.0f} MB trace ({samples:,} samples) opened", took, 60.0),
        _bound(f"{size / 1e6:.0f} MB trace: longest time without an answer", longest.most_s, 0.3),
    ]


def hour_file() -> list[dict[str, object]]:
    """An hour at 1 kHz is loaded, analysed and shown: frames that came too late, counted."""
    took, samples, longest = _opened(HOUR_BYTES)
    name = f"{samples:,} samples loaded and analysed in {took:.1f} s: gaps over {LATE_S * 1e3:.0f} ms between frames"
    cells = {"ours": longest.late, "reference": f"most {longest.most_s * 1e3:.0f} ms"}
    return [{"name": name, **cells, "ratio": longest.late, "target": "= 0"}]


def _opened(size: int) -> tuple[float, int, Longest]:
    """Open a trace of so many bytes in the window; give how long it took, its samples, and the beats meanwhile."""
    from PySide6.QtWidgets import QApplication

    app = QApplication.instance() or QApplication([])
    with tempfile.TemporaryDirectory() as home:
        os.environ["HELDWHEEL_HOME"] = home
        path = Path(home) / "recordings" / "large.csv"
        write_large(path, size)
        from gui.__main__ import build

        window = build("dark")
        window.show()
        window.open_page("Review")
        page = window.pages["Review"]
        while not page.all_s:
            app.processEvents()
        longest, begun = Longest(), time.perf_counter()
        page.list.table.selectRow(0)
        while not page.readings.loaded and time.perf_counter() - begun < 300:
            app.processEvents()
            longest.beat()
            time.sleep(0.002)
        took, samples = time.perf_counter() - begun, next(iter(page.readings.loaded.values())).samples
        app.processEvents()
        longest.beat()
        window.close()
        os.environ.pop("HELDWHEEL_HOME")
    return took, samples, longest


class Longest:
    """The longest time between two beats, and how many were too far apart."""

    def __init__(self) -> None:
        self._last, self.most_s, self.late = time.perf_counter(), 0.0, 0

    def beat(self) -> None:
        now = time.perf_counter()
        self.late += now - self._last > LATE_S
        self._last, self.most_s = now, max(self.most_s, now - self._last)


def _bound(name: str, seconds: float, bound: float) -> dict[str, object]:
    cells = {"ours": f"{seconds:.2f} s", "reference": f"{bound:g} s"}
    return {"name": name, **cells, "ratio": round(seconds / bound, 3), "target": "<= 1"}


def write_many(folder: Path, count: int) -> None:
    """Write many small recordings with full headers, as the writer writes them."""
    from datetime import UTC, datetime, timedelta

    import msgspec

    from gui.models.job import JobCard
    from gui.models.practice import PracticeLink, fill_card, scenario_for_practice
    from logger.header import JobFacts
    from logger.recordings.recording import RecordingWriter
    from logger.samples import Block, Column, Ending, EndReason

    folder.mkdir(parents=True)
    card = JobCard()
    fill_card(card, PracticeLink(scenario_for_practice()))
    start = datetime(2026, 1, 1, tzinfo=UTC)
    one = folder / "model.csv"
    header = card.header("pulls", started=start, zero=None, simulated=True)
    writer = RecordingWriter(one, header, (Column("torque", "N·m"),))
    writer.on_block(Block(np.arange(200) / 100, {"torque": np.round(np.sin(np.arange(200) / 9), 2)}))
    writer.on_end(Ending(EndReason.STOPPED))
    text = one.read_text(encoding="utf-8")
    one.unlink()
    for number in range(count):
        when = (start + timedelta(hours=number)).isoformat()
        job = msgspec.structs.replace(JobFacts(), vehicle=f"car {number % 97}", number=str(number))
        mine = text.replace('vehicle = "Practice car"', f'vehicle = "{job.vehicle}"')
        mine = re.sub(r"started = .*", f"started = {when}", mine, count=1)
        (folder / f"r{number:05d}.csv").write_text(mine, encoding="utf-8", newline="")


def write_large(path: Path, size: int) -> None:
    """Write a foreign trace of this size with pulls in it."""
    path.parent.mkdir(parents=True, exist_ok=True)
    rng = np.random.default_rng(2)
    period = 12_000  # samples of one pull at 1 kHz
    shape = np.interp(np.arange(period) / 1000, [0, 3, 4.5, 4.8, 9.5, 9.9, 12], [0, 0, 40, 34, 34, 0, 0])
    torque = [f",{value:.3f}\n" for value in shape + rng.normal(0, 0.05, period)]
    written, number = 0, 0
    with path.open("w", encoding="utf-8", newline="") as file:
        file.write("time_s,torque_Nm\n")
        while written < size:
            start = number * period
            written += file.write("".join([f"{(start + k) / 1000:.3f}{torque[k]}" for k in range(period)]))
            number += 1


def run() -> list[dict[str, object]]:
    """Give the rows for ``make bench``."""
    return [*frames(), *first_paint(), *many_recordings(), *hour_file(), *large_file()]
