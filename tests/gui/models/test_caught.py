"""What caught pulls say together: of what was judged, of another quantity, and with the drag taken off."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gui.models import caught
from gui.models.caught import Value, pack_means, together
from logger.errors import InputError
from logger.header import Header

if TYPE_CHECKING:
    import pytest


def value(quantity: str, nm: float) -> SimpleNamespace:
    budget = SimpleNamespace(quantity=quantity, value=nm, u95=0.5)
    return SimpleNamespace(budget=budget, values=(nm, nm), direction="", notes=("note",))


def reading(*job: SimpleNamespace, main: SimpleNamespace | None) -> SimpleNamespace:
    return SimpleNamespace(job=job, main=main, header=Header(), bounds=None, result=None, half=False)


def test_a_quantity_that_is_asked_for_is_given_and_the_others_beside_it() -> None:
    breakaway, rotating = value("breakaway", 40.0), value("rotating mean", 35.0)
    for main in (breakaway, None):
        of = reading(breakaway, rotating, main=main)
        for quantity, nm, other in (("breakaway", 40.0, "rotating mean"), ("rotating mean", 35.0, "breakaway")):
            said = together(of, quantity)
            assert (said.quantity, said.value, said.count) == (quantity, Value(nm, 0.5), 2)
            assert [name for name, *_ in said.other] == [other]
        assert together(of, "rotating maximum") is None
    assert together(reading(breakaway, rotating, main=rotating)).quantity == "rotating mean"
    assert together(reading(breakaway, main=None)) is None


def test_the_mean_of_the_packs_is_named_by_its_way_where_there_are_two(monkeypatch: pytest.MonkeyPatch) -> None:
    def mean(way: str, *, known: bool = True) -> SimpleNamespace:
        budget = SimpleNamespace(value=12.0, u95=1.0) if known else None
        return SimpleNamespace(quantity="breakaway", way=way, budget=budget, how="the drag is not known")

    def drag_of(*means: SimpleNamespace) -> SimpleNamespace:
        return SimpleNamespace(drag=SimpleNamespace(test=SimpleNamespace(means=means)))

    some = SimpleNamespace(reading=object())
    for means, said in (
        ((mean("drive"),), (("breakaway", Value(12.0, 1.0), ""),)),
        (
            (mean("drive"), mean("coast", known=False)),
            (("breakaway, drive", Value(12.0, 1.0), ""), ("breakaway, coast", None, "the drag is not known")),
        ),
    ):
        monkeypatch.setattr(caught, "with_drag", lambda *_, means=means: drag_of(*means))
        assert pack_means(some, some) == said
    monkeypatch.setattr(caught, "with_drag", lambda *_: SimpleNamespace(drag=None))
    assert pack_means(some, some) == ()
    for held, free in ((None, some), (some, None)):
        none = SimpleNamespace(reading=None)
        monkeypatch.setattr(caught, "with_drag", lambda *_: drag_of(mean("drive")))
        assert pack_means(held or none, free or none) == ()

    def refuses(*_: object) -> None:
        raise InputError("not of one axle")

    monkeypatch.setattr(caught, "with_drag", refuses)
    assert pack_means(some, some) == ()
