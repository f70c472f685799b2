"""The Compare page in the real window: it says what the command prints, and what the examples were made to show."""

from __future__ import annotations

import csv
import io
import json
import time
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PySide6.QtCore import QRect, Qt, QTimer
from PySide6.QtGui import QFontMetricsF, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from scipy.stats import t

from analysis.__main__ import COMMANDS
from analysis.compare.power import paired_power
from analysis.rows.tables import RECORDING_COLUMNS
from gui.models.batching import how_far
from gui.widgets.chart import Axes, Chart
from logger.edges.door import run_door

if TYPE_CHECKING:
    from tests.gui.hand import Hand

EXAMPLES = Path(__file__).parents[2] / "recordings"
EXPECTED = json.loads((EXAMPLES / "expected.json").read_text("utf-8"))


class Comparer:
    """A person at the Compare page, on copies of some examples."""

    def __init__(self, hand: Hand, folder: Path, capsys) -> None:
        self.hand, self.folder, self._capsys = hand, folder, capsys

    @property
    def page(self):
        return self.hand.window.pages["Compare"]

    @property
    def panel(self):
        return self.page.panel

    def bring(self, *patterns: str) -> None:
        self.folder.mkdir(parents=True, exist_ok=True)
        for pattern in patterns:
            found = sorted(EXAMPLES.glob(pattern))
            assert found, pattern
            for path in found:
                (self.folder / path.name).write_bytes(path.read_bytes())

    def open(self, answer: str, quantity: str = "breakaway") -> None:
        self.hand.window.open_page("Compare")
        self.choose(self.page.quantity, quantity)
        self.hand.press(next(b for b in self.page.answers._group.buttons() if b.text() == answer))
        self.wait()

    def wait(self) -> None:
        self.hand.qtbot.waitUntil(lambda: self.page.settled, timeout=90_000)

    def choose(self, choice, key: str) -> None:
        """Pick from a list, as a person does."""
        index = choice.box.findData(key)
        assert index >= 0, [choice.box.itemData(n) for n in range(choice.box.count())]
        choice.box.setCurrentIndex(index)
        choice.box.activated.emit(index)
        self.wait()

    def type(self, field, text: str) -> None:
        field.edit.setFocus()
        field.edit.selectAll()
        QTest.keyClick(field.edit, Qt.Key.Key_Delete)
        QTest.keyClicks(field.edit, text)
        QTest.keyClick(field.edit, Qt.Key.Key_Return)
        self.wait()

    def command(self, *words: object) -> dict:
        """Give what the command prints for the same folder."""
        name, *rest = words
        self._capsys.readouterr()
        run_door(
            "heldwheel-read", "", COMMANDS, "analysis.doors", [str(w) for w in (name, self.folder, *rest, "--json")]
        )
        return json.loads(self._capsys.readouterr().out)

    def said(self) -> dict:
        """Give what the window writes."""
        written = self.panel.written()
        assert written is not None, self.panel.teaching.text()
        return json.loads(json.dumps(written.plain))

    def table(self, name: str) -> list[list[str]]:
        """Give what a table beneath the picture shows."""
        tab = next(tab for tab in self.panel.tabs.tabs if tab.text().partition(" (")[0] == name)
        self.hand.press(tab)
        table = self.panel.tabs.table
        return [[table.text(row, place) for place in range(table.columnCount())] for row in range(table.rowCount())]


@pytest.fixture
def comparer(hand: Hand, home: Path, capsys) -> Comparer:
    return Comparer(hand, home / "recordings", capsys)


def figure(text: str) -> float:
    return float(text.split()[0].replace("−", "-").replace("+", ""))


def true_mean(files: list[str], key: str) -> float:
    return float(np.mean([np.mean([pull[key] for pull in EXPECTED["recordings"][name]]) for name in files]))


def test_groups_say_what_the_command_says_and_what_is_true(comparer: Comparer) -> None:
    comparer.bring("04-fluid-*")
    comparer.open("Groups")
    assert "Choose the tag" in comparer.panel.headline.text()
    comparer.choose(comparer.panel.by, "fluid")
    comparer.choose(comparer.panel.control, "reference")
    comparer.type(comparer.panel.margin, "4 N·m")
    assert comparer.said() == comparer.command("groups", "--by", "fluid", "--control", "reference", "--margin", "4")
    rows = comparer.table("Differences")
    true = {
        fluid: true_mean([f"04-fluid-{fluid}-fill-{n}.csv" for n in (1, 2, 3, 4)], "breakaway_axle_nm")
        for fluid in ("reference", "additive-B", "smooth-C")
    }
    for row in rows:
        low, high = (figure(text) for text in row[3].split(" to "))
        assert row[1] == "reference"
        assert low < true[row[0].replace(" ", "-")] - true["reference"] < high
        assert row[5] == "▼ lower"
        assert row[8].startswith("not shown (90 %: −")
        assert row[7] == "Dunnett, jointly 95 %"
    assert "(95\u00a0%: −" in comparer.panel.headline.text()
    groups = comparer.table("Groups")
    assert [row[:4] for row in groups] == [[name, "4", "4", "12"] for name in ("reference", "additive B", "smooth C")]
    assert comparer.panel.picture.isVisible()


def test_pairs_blocks_quantities_and_units(comparer: Comparer) -> None:
    comparer.bring("04-fluid-*")
    comparer.open("Groups")
    comparer.choose(comparer.panel.by, "fluid")
    comparer.hand.press(comparer.panel.pairs)
    comparer.wait()
    assert [row[7] for row in comparer.table("Differences")] == ["Tukey, jointly 95 %"] * 3
    assert comparer.said() == comparer.command("groups", "--by", "fluid", "--all-pairs")
    comparer.hand.press(comparer.panel.pairs)
    comparer.choose(comparer.panel.block, "day")
    assert comparer.table("Differences")[0][7].startswith("paired t within 4 blocks")
    comparer.choose(comparer.panel.block, "")
    for quantity in ("rotating", "breakaway ÷ rotating", "chatter index", "torque-speed slope"):
        comparer.choose(comparer.page.quantity, quantity)
        if comparer.panel.answer is not None:
            assert comparer.said() == comparer.command("groups", "--by", "fluid", "--quantity", quantity)
        else:  # no stick-slip in any of them: nothing to compare with, and both say so
            assert quantity == "chatter index"
            assert "no scatter" in comparer.panel.teaching.text()
    assert comparer.panel.picture.axes().y_words == "Torque-speed slope (N·m per rad/s)"
    before = figure(comparer.table("Differences")[1][2])
    comparer.hand.window.set_unit("lbf·ft")
    assert before / figure(comparer.table("Differences")[1][2]) == pytest.approx(1.355818, rel=0.02)


def test_a_bootstrap_interval_where_there_are_fills_enough(comparer: Comparer) -> None:
    comparer.bring("05-event-*", "03-run-in-0*")
    comparer.open("Groups", "rotating")
    comparer.choose(comparer.panel.by, "fluid")
    assert comparer.said()["bootstrap"]
    assert comparer.said() == comparer.command("groups", "--by", "fluid", "--quantity", "rotating")
    table = comparer.panel.tabs.table
    rows = comparer.table("Differences")
    heads = [table.horizontalHeaderItem(place).text() for place in range(table.columnCount())]
    assert " to " in rows[0][heads.index("Bootstrap 95 %")]
    assert rows[0][heads.index("Method")] == "Welch t"


def test_unlike_tests_are_refused_and_a_reason_lets_them_pass(comparer: Comparer) -> None:
    comparer.bring("04-fluid-reference-fill-[12]*", "04-fluid-smooth-C-fill-[12]*")
    for name in ("04-fluid-smooth-C-fill-1", "04-fluid-smooth-C-fill-2"):
        (comparer.folder / f"{name}.sidecar.toml").write_text('[test]\nheld = "case"\nplace = "bench"\n', "utf-8")
    comparer.open("Groups")
    panel = comparer.panel
    assert not panel.reason.isVisible()
    comparer.choose(panel.by, "fluid")
    assert "cannot be compared: different test kinds" in panel._why.text()
    assert panel.reason.isVisible()
    assert not panel.picture.isVisible()
    comparer.hand.press(panel.anyway)  # without a reason it stays refused
    comparer.wait()
    assert panel.found is None
    panel.reason.edit.setFocus()
    QTest.keyClicks(panel.reason.edit, "to see it")
    comparer.hand.press(panel.anyway)
    comparer.wait()
    assert panel.picture.isVisible()
    assert "reason given: to see it" in panel.warning.text()
    assert comparer.said() == comparer.command("groups", "--by", "fluid", "--anyway", "to see it")
    panel.reason.edit.clear()
    comparer.hand.press(panel.anyway)
    comparer.wait()
    assert panel.found is None
    comparer.choose(panel.by, "fill")
    assert not panel.reason.text


def test_what_is_left_out_is_counted_and_mixed_builds_are_named(comparer: Comparer) -> None:
    comparer.bring("04-fluid-*", "05-event-*", "06-clumsy-hand.csv")
    (comparer.folder / "broken.csv").write_text("no torque\n1\n", "utf-8")
    comparer.open("Groups")
    comparer.choose(comparer.panel.by, "modifier")
    assert "could not be read" in comparer.page.state.text()
    assert "different shims (mm) within additive B: 0.3, 0.4" in comparer.panel.warning.text()
    rows = comparer.table("Excluded")
    kinds = [row[0] for row in rows]
    assert kinds.count("File") == 1
    assert kinds.count("Recording") == 5  # four reference fills and the clumsy hand have no modifier
    assert kinds.count("Pull") > 0
    assert any(row[1] == "04-fluid-reference-fill-1.csv" and "no tag 'modifier'" in row[2] for row in rows)
    assert any(tab.text() == f"Excluded ({len(rows)})" for tab in comparer.panel.tabs.tabs)


def test_marks_in_a_tag_are_shown_and_not_obeyed(comparer: Comparer) -> None:
    comparer.bring("04-fluid-reference-fill-[12]*", "04-fluid-smooth-C-fill-[12]*")
    hostile = "<h1>=1+1</h1>"
    for fill in (1, 2):
        side = comparer.folder / f"04-fluid-smooth-C-fill-{fill}.sidecar.toml"
        side.write_text(f'[tags]\noil = "{hostile}"\n', "utf-8")
        (comparer.folder / f"04-fluid-reference-fill-{fill}.sidecar.toml").write_text('[tags]\noil = "A"\n', "utf-8")
    comparer.open("Groups")
    comparer.choose(comparer.panel.by, "oil")
    rows = comparer.table("Groups")
    place = next(at for at, row in enumerate(rows) if row[0] == hostile)
    assert comparer.panel.tabs.table.item(place, 0).toolTip() == "<p>&lt;h1&gt;=1+1&lt;/h1&gt;</p>"
    assert comparer.panel.headline.textFormat() is Qt.TextFormat.PlainText


def test_which_shim_gives_the_wanted_torque(comparer: Comparer) -> None:
    comparer.bring("02-build-*")
    comparer.open("Trend", "rotating")
    comparer.choose(comparer.panel.against, "shim_mm")
    assert "a trend is shown" in comparer.panel.headline.text()
    comparer.type(comparer.panel.wanted, "58 N·m")
    comparer.type(comparer.panel.at, "0.35")
    said = comparer.said()
    assert said == comparer.command(
        "trend", "--against", "shim_mm", "--quantity", "rotating", "--for", "58N·m", "--at", "0.35"
    )
    # The truth, from the simulation's own torques: a second algorithm on other data.
    files = [f"02-build-shim-{n}.csv" for n in (10, 20, 30, 40, 50)]
    slope, intercept = np.polyfit([0.1, 0.2, 0.3, 0.4, 0.5], [true_mean([f], "rotating_axle_nm") for f in files], 1)
    low, high = said["inverse"]["interval"]
    assert low < (58 - intercept) / slope < high
    assert said["slope"][1] < EXPECTED["shim"]["nm_per_mm"] * 1.02 < said["slope"][2] * 1.02
    assert f"shim {said['inverse']['x']:.3g} mm" in comparer.panel.headline.text()
    axes = comparer.panel.picture.axes()
    assert axes.x[0] < said["inverse"]["x"] < axes.x[1]
    comparer.hand.window.set_unit("lbf·ft")  # a figure typed without a unit is meant in the one on screen
    comparer.type(comparer.panel.wanted, "43")
    assert comparer.said()["inverse"]["y"] == pytest.approx(43 * 1.3558179483314004)
    assert comparer.panel.headline.text().startswith("For 43 lbf·ft: ")
    comparer.hand.window.set_unit("N·m")  # the torque that is wanted stays the same torque
    comparer.wait()
    assert comparer.said()["inverse"]["y"] == pytest.approx(43 * 1.3558179483314004, abs=0.05)
    comparer.type(comparer.panel.wanted, "58 furlong")
    assert "furlong" in comparer.panel.wanted.edit.accessibleDescription()


def test_since_when_a_pack_has_settled(comparer: Comparer) -> None:
    comparer.bring("03-run-in-*")
    comparer.open("Run-in", "rotating")
    assert comparer.panel.count.key == "cycles"  # nothing had to be chosen
    said = comparer.said()
    assert said == comparer.command("trend", "--against", "cycles", "--run-in", "--quantity", "rotating")
    assert comparer.panel.headline.text().startswith(f"Settled since cycle {said['run_in']['since']:g}.\n")
    rows = comparer.table("In order")
    assert [float(row[0]) for row in rows] == sorted(x for x, _ in said["points"])
    states = [row[4].strip("● ") for row in rows]
    assert states[:3] == ["too few yet"] * 3
    assert "still moving" in states
    first = [float(row[0]) for row in rows].index(said["run_in"]["since"])
    assert states[first:] == ["settled"] * (len(rows) - first)
    assert states[first - 1] != "settled"
    assert rows[first][4].startswith("●")


def test_an_axle_is_watched_over_time(comparer: Comparer) -> None:
    comparer.bring("05-event-*")
    comparer.open("Over time", "rotating")
    assert comparer.panel.headline.text().startswith("The first 6 jobs fall by 14 %"), "they wear: no level to refer to"
    comparer.type(comparer.panel.baseline, "4")
    said = comparer.said()
    assert said == comparer.command("trend", "--chart", "--baseline", "4", "--quantity", "rotating")
    assert [(chart["shows"], chart["alarms"]) for chart in said["charts"]] == [("no reference level", [])]
    rows = comparer.table("Jobs")
    assert [row[4] for row in rows] == ["in band, reference level"] * 4 + ["in band"] * 2
    assert comparer.panel.headline.text().startswith("The first 4 jobs fall by 8 %")
    comparer.type(comparer.panel.baseline, "4.5")
    assert "not a whole number" in comparer.panel.baseline.edit.accessibleDescription()
    comparer.type(comparer.panel.baseline, "3")
    assert "4 or more good jobs" in comparer.panel.teaching.text()


@pytest.mark.parametrize("width", [900, 380, 200])
def test_a_legend_leaves_the_title_free(hand: Hand, width: int) -> None:
    class Plot(Chart):
        legend: tuple[str, ...] = ()

        def axes(self) -> Axes:
            return Axes((0, 1), (0, 1), "Rotating (N·m)", legend=self.legend)

        def draw(self, painter, frame) -> None: ...

        def mark(self, painter, at, place) -> None:
            self.dot(painter, at)

    hand.window.set_scale(2.0)
    plot = Plot(hand.window._shared, "Over time")
    plot.resize(width, 300)
    letters = QFontMetricsF(hand.window._shared.look.font(13))
    title = QRect(0, 0, min(width, int(letters.horizontalAdvance("Rotating (N·m)")) + 5), int(letters.height()))
    without = plot.grab().toImage()
    plot.legend = ("a job", "weighted average")
    with_it = plot.grab().toImage()
    assert with_it.copy(title) == without.copy(title)
    assert with_it != without


def test_several_axles_have_a_chart_each(comparer: Comparer) -> None:
    comparer.bring("07-study-*")
    comparer.open("Over time")
    comparer.type(comparer.panel.per, "axle")
    comparer.type(comparer.panel.baseline, "4")
    assert comparer.said() == comparer.command("trend", "--chart", "--baseline", "4", "--per", "axle")
    box = comparer.panel.axle.box
    assert [box.itemText(n) for n in range(box.count())] == ["axle 1", "axle 2", "axle 3"]
    first = comparer.table("Jobs")
    comparer.choose(comparer.panel.axle, "axle 3")
    assert comparer.table("Jobs")[0][5].startswith("07-study-3")
    assert first[0][5].startswith("07-study-1")


def test_a_plan_with_its_order(comparer: Comparer) -> None:
    comparer.bring("04-fluid-*")
    comparer.open("Plan")
    panel = comparer.panel
    assert "type it" in panel.headline.text()
    comparer.type(panel.amount, "3")
    comparer.type(panel.scatter, "1.5")
    # In blocks, as they are drawn and compared: the paired test of twice the standard deviation needs 7.
    assert panel.answer.per_group == 7
    assert paired_power(2.0, 7, 0.05) >= 0.8 > paired_power(2.0, 6, 0.05)
    comparer.choose(panel.source, "fluid")
    assert panel.groups.text == "additive B, reference, smooth C"
    groups = comparer.command("groups", "--by", "fluid")
    assert panel.answer.sd == pytest.approx(groups["sd_between_fills"], rel=1e-12)
    comparer.type(panel.groups, "reference, additive B, smooth C")
    comparer.type(panel.amount, "1.5")
    comparer.type(panel.seed, "7")
    rows = comparer.table("Order of tests")
    made = panel.answer.plan
    names = [row[2] for row in rows]
    assert names.count("reference") == made.control
    assert names.count("additive B") == names.count("smooth C") == made.per_group
    assert len(rows) == made.total
    said = comparer.said()
    blocks, again = str(made.per_group), str(made.control - made.per_group)
    words = ["plan", "--order", "reference", "additive B", "smooth C", "--blocks", blocks, "--again", again]
    comparer._capsys.readouterr()
    run_door("heldwheel-read", "", COMMANDS, "analysis.doors", [*words, "--seed", "7", "--json"])
    assert json.loads(comparer._capsys.readouterr().out) == said["order"]
    comparer.hand.press(panel.tabs.copy_button)
    assert panel.tabs.copy_button.text() == "Copied"
    copied = QGuiApplication.clipboard().text().splitlines()
    assert copied[0].startswith("SIMULATED DATA")
    assert copied[2].split("\t") == rows[0]
    comparer.hand.press(panel.again)
    comparer.wait()
    assert panel.seed.text == ""
    comparer.choose(panel.purpose, "margin")
    comparer.type(panel.amount, "2")
    assert "no change beyond 2 N·m" in panel.headline.text()
    comparer.choose(panel.purpose, "half width")
    comparer.type(panel.amount, "0.5")
    assert "known within ± 0.5 N·m" in panel.headline.text()


def test_the_own_scatter(comparer: Comparer) -> None:
    comparer.bring("07-study-*")
    comparer.open("Our repeatability")
    said, printed = comparer.said(), comparer.command("repeatability")
    assert said == printed
    rows = comparer.table("Components")
    assert [figure(row[1]) for row in rows] == [
        pytest.approx(printed[key], abs=0.006)
        for key in ("repeatability", "reproducibility", "measuring", "axles", "total")
    ]
    good = t.ppf(0.975, printed["dof"]) * printed["measuring"]  # the t factor of what the study rests on
    assert f"± {good:.2f} N·m" in comparer.panel.headline.text()
    assert [row[0] for row in comparer.table("Variance")][:2] == ["operator", "axle"]
    assert len(comparer.table("Readings")) == 6
    comparer.choose(comparer.panel.kind, "pairs")
    assert comparer.said() == comparer.command("repeatability", "--ways", "operator")
    assert comparer.panel.headline.text().startswith("operator A reads 0.39 N·m lower than operator B")
    comparer.choose(comparer.panel.operator, "axle")
    assert "must name two ways" in comparer.panel.teaching.text()


def test_an_answer_is_written_as_csv_and_json(comparer: Comparer, tmp_path: Path) -> None:
    comparer.bring("02-build-*")
    comparer.open("Trend")
    for name in ("t.csv", "t.json"):
        comparer.page.export(str(tmp_path / name))
        comparer.hand.qtbot.waitUntil(lambda name=name: (tmp_path / name).exists(), timeout=20_000)
        comparer.hand.qtbot.waitUntil(lambda: not comparer.page.worker.busy, timeout=20_000)
    rows = list(csv.reader(io.StringIO((tmp_path / "t.csv").read_text("utf-8"))))
    assert rows[0] == ["fill", "shim_mm", "breakaway", "line", "low_95", "high_95", "simulated"]
    assert {row[-1] for row in rows[1:]} == {"yes"}
    assert [float(row[1]) for row in rows[1:]] == [0.1, 0.2, 0.3, 0.4, 0.5]
    assert json.loads((tmp_path / "t.json").read_text("utf-8")) == comparer.said()


def test_new_recordings_and_tags_are_seen_and_others_not_read_again(comparer: Comparer) -> None:
    comparer.bring("02-build-shim-[123]0*")
    comparer.open("Trend")
    assert comparer.page.state.text() == "3 recordings"
    before = {run.file: run for run in comparer.page.runs}
    comparer.bring("02-build-shim-40*")
    (comparer.folder / "02-build-shim-10.sidecar.toml").write_text('[tags]\ncolour = "red"\n', "utf-8")
    comparer.hand.window.open_page("Test")
    comparer.hand.window.open_page("Compare")
    comparer.wait()
    after = {run.file: run for run in comparer.page.runs}
    assert len(after) == 4
    assert after["02-build-shim-10.csv"].tags["colour"] == "red"
    assert after["02-build-shim-20.csv"] is before["02-build-shim-20.csv"]


def test_a_batch_is_written_stopped_and_goes_on(comparer: Comparer, tmp_path: Path) -> None:
    comparer.bring("0[1-5]-*.csv")
    (comparer.folder / "broken.csv").write_text("no torque\n1\n", "utf-8")
    comparer.open("Groups")
    bar, target = comparer.page.batch, tmp_path / "season.csv"
    late: list[float] = []
    ticker = QTimer()
    ticker.timeout.connect(lambda: late.append(time.perf_counter()))
    ticker.start(10)
    bar.write(comparer.page.paths, str(target), "recording")
    assert bar.isVisible()
    comparer.hand.qtbot.waitUntil(lambda: how_far(bar.worker.room) is not None, timeout=60_000)
    comparer.hand.press(bar.stop_button)
    comparer.hand.qtbot.waitUntil(lambda: not bar.running, timeout=60_000)
    assert "Stopped after" in bar.text.text()
    assert not target.exists()
    assert len(late) > 5  # the window answered all the while
    done = how_far(bar.worker.room).done
    assert 0 < done < len(comparer.page.paths)
    comparer.hand.press(bar.again)
    comparer.hand.qtbot.waitUntil(lambda: not bar.running, timeout=120_000)
    assert "were read before" in bar.text.text()
    assert "Excluded: " in bar.text.text()
    assert "broken.csv" in bar.text.text()
    rows = list(csv.DictReader(io.StringIO(target.read_text("utf-8"))))
    assert list(rows[0]) == [column.name for column in RECORDING_COLUMNS]
    assert [row["file"] for row in rows] == sorted(path.name for path in comparer.folder.glob("0*.csv"))
    comparer.hand.press(bar.close_button)
    assert not bar.isVisible()


def test_everything_is_reached_by_keyboard(comparer: Comparer) -> None:
    comparer.bring("02-build-shim-[123]0*")
    comparer.open("Trend")
    comparer.page.answers._group.buttons()[0].setFocus()
    wanted = {
        comparer.page.search.edit,
        comparer.page.quantity.box,
        comparer.page.unit.box,
        comparer.panel.against.box,
        comparer.panel.wanted.edit,
        comparer.panel.at.edit,
        comparer.page.export_button,
        comparer.panel.tabs.copy_button,
        comparer.panel.tabs.table,
        comparer.panel.tabs.tabs[0],
    }
    for _ in range(40):
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        wanted.discard(QApplication.focusWidget())
    assert not wanted
    comparer.panel.tabs.tabs[0].setFocus()
    comparer.hand.key(Qt.Key.Key_Right)  # within a row of which one is on, arrows choose
    assert comparer.panel.tabs.table.accessibleName() == "Fills"
    comparer.page.answers._group.buttons()[1].setFocus()
    comparer.hand.key(Qt.Key.Key_Left)
    assert comparer.page.panel is comparer.page.panels["Groups"]
    assert all(tab.accessibleName() for tab in comparer.panel.tabs.tabs)


def test_the_page_teaches_when_there_is_nothing(comparer: Comparer) -> None:
    comparer.folder.mkdir(parents=True)
    words = {
        "Groups": "before and after",
        "Trend": "shim thickness",
        "Run-in": "figure-eights",
        "Over time": "good jobs",
        "Plan": "drawn by lot",
        "Our repeatability": "Two operators",
    }
    for answer, word in words.items():
        comparer.open(answer)
        assert word in comparer.panel.teaching.text()
        assert comparer.panel.teaching.isVisible()
        assert not comparer.panel.picture.isVisible()
    assert comparer.page.state.text() == "0 recordings"
