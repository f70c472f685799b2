"""Fuzz targets: what lies beside recordings or was kept by others: captures of terminals, axle files, an index."""

from __future__ import annotations

import random
import re
import shutil
from datetime import UTC, datetime
from functools import cache
from typing import TYPE_CHECKING

import msgspec
import numpy as np

from analysis.report.index import check_index, write_index
from logger.edges.small_file import hash_of
from logger.recordings.axles import Build, Retest, axle_file, builds_until, change_axle, put_build, read_axle
from logger.recordings.files import read_trace
from tests.faults.fuzz import Target
from tests.faults.mutate import mutated
from tests.faults.targets_files import folder
from tests.faults.targets_reports import report_bytes

if TYPE_CHECKING:
    from pathlib import Path

# --- captures of terminals and logs ---------------------------------------------------------------------------------


def _lines(form: str) -> bytes:
    return "".join(form.format(t=n / 100, ms=n * 10, nm=n * 1.25 - 3, deg=n / 4) for n in range(20)).encode()


_CAPTURES = [
    _lines("[09:15:{t:06.3f}] torque={nm:.2f} Nm angle={deg:.1f}\n"),
    _lines("t={t:.2f};M={nm:.2f}Nm\r\n"),
    _lines("2026-05-01 10:00:{t:06.3f} INFO gauge: {nm:+.1f} N·m (ok)\n"),
    b"gauge 7, opened\n" + _lines("{ms} ms: {nm:.2f} lbf·ft\n") + b"gauge 7, closed\n",
    _lines("{{'t': {t:.2f}, 'torque': {nm:.2f}}}\n"),
    _lines("10:00:{t:06.3f},M {nm:.1f} Nm\n").replace(b"12.0", b"OL"),
]
MARKS = ".,'\u202f\u00a0"
_FIGURE = re.compile(r"[+-]?\s?(?:\d[\d.,\u202f\u00a0' ]*|[.,]\d+)(?:[eE][+-]?\d+)?")


def _figures(text: str) -> set[float]:
    """Give every number that a figure of the text can be read as: any of its marks may be the decimal sign, or none."""
    found = set()
    for figure in ("".join(match[0].split()) for match in _FIGURE.finditer(text)):
        marks = [at for at, sign in enumerate(figure) if sign in ".,"]
        for at in (None, *marks):
            plain = "".join(
                "." if n == at else c for n, c in enumerate(figure) if n == at or c not in ".,'\u202f\u00a0"
            )
            try:
                found |= {abs(float(plain))}
            except ValueError:
                continue
    return found


def captures(rng: random.Random) -> str:
    """Lines of a terminal give torques that stand in them, or are refused."""
    data = mutated(rng, _CAPTURES, [b"Nm", b"OL", b"[", b"12:00:00", b" = ", b";", b"angle"])
    path = folder() / "capture.txt"
    path.write_bytes(data)
    trace = read_trace(path)
    assert all(problem.isprintable() for problem in trace.problems), f"control characters in {trace.problems}"
    if trace.state != "foreign":
        return "recording"
    assert len(trace.time_s) == len(trace.torque) >= 2
    assert np.isfinite(trace.time_s).all()
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return "read, by another encoding"
    standing = np.array(sorted(_figures(text)))
    for torque in np.abs(trace.torque[np.isfinite(trace.torque)]):
        assert np.isclose(standing, torque, rtol=1e-9, atol=0).any(), f"{torque} stands nowhere in the text"
    return "read"


# --- axle files -----------------------------------------------------------------------------------------------------

_AXLE = b"""schema = "heldwheel axle 1"
tag = "R-7"

[[builds]]
built = 2026-03-01T10:00:00+01:00
by = "bench 2"
spring_n = 820.0
face_outer_mm = 98.0
soak_min = 30.0
oil_l = 1.2

[[builds.left.parts]]
kind = "friction disc"
thickness_mm = 2.05

[[builds.left.parts]]
kind = "steel plate"
thickness_mm = 1.6
note = "turned round"

[[builds]]
built = 2026-04-02T08:30:00

[retest]
every_km = 5000.0
figure_eights = 12

[[uses]]
day = 2026-04-09
km = 81250.0
events = 2
"""
_AXLE_TOKENS = [
    b"[[builds]]\n", b"built = 2026-03-01T10:00:00Z\n", b"[[uses]]\n", b'kind = "shim"\n', b"nan",
    b"9999-12-31T23:59:60",    b"0001-01-01T00:00:00+23:59", b'tag = "R-8"\n', b"built = 10:00:00\n",
]  # fmt: skip


def axles(rng: random.Random) -> str:
    """An axle file is read, and a further build loses none of those that stand in it; or is refused unchanged."""
    here = folder() / "axles"
    shutil.rmtree(here, ignore_errors=True)
    here.mkdir()
    path, _ = axle_file(here, "R-7")
    data = mutated(rng, [_AXLE], _AXLE_TOKENS)
    path.write_bytes(data)
    found = read_axle(here, "R-7")
    if found is None:
        assert path.read_bytes() == data, "another axle's file was changed"
        return "another axle"
    build = Build(built=datetime(2026, 5, 1, 12, tzinfo=UTC), notes="new discs")
    changed = change_axle(here, "R-7", lambda axle: put_build(axle, build))
    assert set(map(msgspec.json.encode, changed.builds)) == set(map(msgspec.json.encode, (*found.builds, build)))
    if changed.retest == Retest():  # nothing to be written
        changed = msgspec.structs.replace(changed, retest=None)
    assert read_axle(here, "R-7") == changed, "not as written"
    times = [one.built.timestamp() for one in builds_until(changed, build.built)]
    assert times == sorted(times)
    assert times[-1] <= build.built.timestamp()
    return "read"


# --- an index of reports --------------------------------------------------------------------------------------------


@cache
def _season() -> tuple[Path, bytes]:
    here = folder() / "season"
    here.mkdir(exist_ok=True)
    for name in ("one.html", "two.html"):
        (here / name).write_bytes(report_bytes())
    write_index(here, here / "index.html", "Season", datetime(2026, 5, 1, tzinfo=UTC))
    return here, (here / "index.html").read_bytes()


def indexes(rng: random.Random) -> str:
    """An index in which anything was changed does not hold, nor one whose reports were; or it is refused."""
    here, whole = _season()
    spoilt, report = rng.random() < 0.3, here / "two.html"
    sound = report.read_bytes()
    data = whole if spoilt else mutated(rng, [whole], [hash_of(report, 10**8).encode(), b'{"file": "../../x"}', b"[]"])
    (here / "index.html").write_bytes(data)
    if spoilt:
        report.write_bytes(mutated(rng, [sound]))
    try:
        holds, said = check_index(here / "index.html")
        assert all(line.strip() and line.isprintable() for line in said)
        assert not holds or (data == whole and report.read_bytes() == sound), "what was changed holds"
    finally:
        report.write_bytes(sound)
    return "read"


TARGETS = [
    Target("captures of terminals", captures, short=500, long_s=60),
    Target("axle files", axles, short=500, long_s=60),
    Target("indexes of reports", indexes, long=20_000, short=300, long_s=60),
]
