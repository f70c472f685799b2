"""The notebook runs as it is kept; its figures may move a little when the analysis improves."""

from __future__ import annotations

import re
import warnings
from pathlib import Path

import nbformat
import numpy as np
import pytest
from nbclient import NotebookClient

import heldwheel
from logger.errors import HeldwheelError, InputError

ROOT = Path(__file__).resolve().parents[2]
NOTEBOOK = ROOT / "recordings" / "notebook.ipynb"
NUMBER = re.compile(r"[-+]?\d+(?:\.\d+)?")


def close(want: str, got: str) -> bool:
    """Whether the words are the same and the numbers lie within 4 % or 0.5 of those kept."""
    if NUMBER.sub("#", " ".join(want.split())) != NUMBER.sub("#", " ".join(got.split())):
        return False
    pairs = zip(NUMBER.findall(want), NUMBER.findall(got), strict=True)
    return all(abs(float(a) - float(b)) <= max(0.04 * abs(float(a)), 0.5) for a, b in pairs)


def shown(cell: nbformat.NotebookNode) -> str:
    """Give what a cell says, as text."""
    return "".join(
        output.text if output.output_type == "stream" else output.data.get("text/plain", "") for output in cell.outputs
    )


@pytest.mark.filterwarnings("ignore")
def test_the_notebook_says_again_what_it_keeps() -> None:
    kept = nbformat.read(NOTEBOOK, as_version=4)
    run = nbformat.read(NOTEBOOK, as_version=4)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        NotebookClient(
            run, timeout=100, kernel_name="python3", resources={"metadata": {"path": NOTEBOOK.parent}}
        ).execute()
    pairs = [(a, b) for a, b in zip(kept.cells, run.cells, strict=True) if a.cell_type == "code"]
    assert len(pairs) >= 8
    for before, now in pairs:
        assert shown(before), before.source
        assert close(shown(before), shown(now)), f"{before.source}\n\nkept:\n{shown(before)}\n\nnow:\n{shown(now)}"


def test_the_comparison_can_fail() -> None:
    assert close("57.1 ± 1.0\n", "57.9 ± 1.1\n")
    assert not close("57.1 ± 1.0\n", "61.9 ± 1.1\n")
    assert not close("within\n", "outside\n")


# --- a recording as one frame -----------------------------------------------------------------------------------------


def test_a_recording_is_one_frame_with_units_and_events() -> None:
    frame = heldwheel.read(ROOT / "recordings" / "05-event-1.csv")
    assert frame.index.name == "time_s"
    assert set(frame.attrs["units"]) == {"time_s", *frame.columns}
    assert frame.attrs["units"]["torque_nm"] == "N·m"
    assert frame.attrs["simulated"] is True
    assert frame.attrs["state"] == "closed"
    assert any(event["kind"] == "simulated" for event in frame.attrs["events"]) or frame.attrs["header"]["simulated"]
    # The same rows as a reader of plain text gives.
    import pandas as pd

    plain = pd.read_csv(ROOT / "recordings" / "05-event-1.csv", comment="#")
    assert np.array_equal(plain.iloc[:, 1], frame["torque"])


def test_a_table_of_others_is_one_frame_too(tmp_path: Path) -> None:
    path = tmp_path / "scale.csv"
    path.write_text("Sample;Wert\n" + "".join(f"{n};{n},5\n" for n in range(9)), encoding="utf-8")
    with pytest.raises(HeldwheelError, match="--torque-unit"):
        heldwheel.read(path)
    frame = heldwheel.read(path, torque="Wert", unit="kg", rate_hz=10.0)
    assert frame.index[1] == 0.1
    assert frame.attrs["units"]["force"] == "kgf"
    assert frame["force_n"].iloc[0] == pytest.approx(0.5 * 9.80665)
    with pytest.raises(InputError, match="there are: sheet, time"):
        heldwheel.read(path, column="Wert")
