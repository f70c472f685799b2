"""Tables of many makes: each comes back right, is asked about by name once, or is refused with the reason."""

from __future__ import annotations

import numpy as np
import pytest

from logger.errors import FileError
from logger.foreign.choices import TableQuestionsError
from logger.header import Table
from logger.recordings.files import read_trace
from tests.logger import captured_texts  # noqa: F401 - more kinds
from tests.logger.foreign_tables import KINDS, Kind


def _is_right(kind: Kind, trace) -> None:
    assert trace.unit == kind.unit
    assert len(trace.torque) == len(kind.torque)
    assert trace.torque == pytest.approx(kind.torque, abs=1e-9, nan_ok=True)
    assert trace.time_s - trace.time_s[0] == pytest.approx(kind.time_s - kind.time_s[0], abs=kind.time_off)
    if kind.told:
        assert kind.told in "\n".join(trace.problems)
    if "overload" in kind.told:
        assert sum(event.count for event in trace.events) == np.isnan(kind.torque).sum()


@pytest.mark.parametrize("kind", KINDS, ids=[kind.name for kind in KINDS])
def test_right_asked_or_refused(tmp_path, kind):
    path = tmp_path / f"trace.{kind.ending}"
    path.write_bytes(kind.data)
    if kind.refused:
        with pytest.raises(FileError, match=kind.refused) as refused:
            read_trace(path)
        assert not isinstance(refused.value, TableQuestionsError)
        return
    if kind.asks:
        with pytest.raises(TableQuestionsError) as asked:
            read_trace(path)
        assert tuple(q.key for q in asked.value.questions) == kind.asks
        assert all(q.text for q in asked.value.questions)
    _is_right(kind, read_trace(path, Table(**kind.answers) if kind.answers else None))


def test_few_are_refused():
    """Of all kinds at most three are refused, and there are many."""
    assert len({kind.name for kind in KINDS}) == len(KINDS) >= 46
    assert sum(bool(kind.refused) for kind in KINDS) <= 3
