"""Tables from elsewhere: a rate as it is typed, the name of a copy, how much of a long one is drawn."""

from __future__ import annotations

from pathlib import Path

import pytest

from gui.models.importing import POINTS, TablePreview, copy_name, look, rate_of
from logger.errors import HeldwheelError
from logger.header import Table


@pytest.mark.parametrize(("text", "rate"), [("", None), (" ", None), ("500", 500.0), ("1,5 Hz", 1.5), ("20HZ", 20.0)])
def test_a_rate_as_it_is_typed(text: str, rate: float | None) -> None:
    assert rate_of(text) == rate


def test_what_is_no_rate_is_told() -> None:
    with pytest.raises(HeldwheelError):
        rate_of("fast")


@pytest.mark.parametrize(
    ("name", "copy"),
    [
        ("a.csv", "imported-a.csv"), ("A.JSON", "imported-a.jsonl"), ("a", "imported-a.csv"),
        ("a.XLSX", "imported-a.xlsx"),
    ],
)  # fmt: skip
def test_the_name_of_a_copy(name: str, copy: str) -> None:
    assert copy_name(Path(name)) == copy


@pytest.mark.parametrize("samples", [POINTS - 1, 2 * POINTS - 1, 2 * POINTS])
def test_a_long_table_is_drawn_in_even_steps_from_its_first_row(tmp_path: Path, samples: int) -> None:
    path = tmp_path / "a.csv"
    path.write_text("time_s,torque_Nm\n" + "".join(f"{n / 100:.2f},{n}\n" for n in range(samples)), "utf-8")
    found = look(str(path), Table())
    step = max(1, samples // POINTS)
    assert found.ready
    assert found.samples == samples
    assert found.torque.tolist() == [float(n) for n in range(0, samples, step)]
    assert found.time_s[:2].tolist() == pytest.approx([0.0, step / 100])
    assert (found.names, found.rows[0]) == (("time_s", "torque_Nm"), ("0.00", "0"))


def test_a_preview_of_nothing() -> None:
    assert (TablePreview().ready, TablePreview().is_force, TablePreview().samples) == (False, False, 0)
