"""Recordings written, torn and changed, and all that a reader says of them, held against what was kept."""

from __future__ import annotations

import zlib
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import msgspec
import numpy as np
import pytest

from logger.edges.toml_file import format_toml
from logger.errors import HeldwheelError
from logger.header import (
    Axle,
    Conditions,
    Correction,
    Decision,
    Header,
    JobFacts,
    Lever,
    Limit,
    Photo,
    Sidecar,
    Test,
    TransducerFacts,
    Zero,
)
from logger.recordings.axles import AxleFile, Build, builds_until, change_axle, put_build, read_axle, same_tag
from logger.recordings.dialled import DialFile, DialReading, is_dialled, read_dialled, write_dialled
from logger.recordings.files import read_trace
from logger.recordings.heads import axle_tests, header_of, read_header
from logger.recordings.photos import photo_state, take_in
from logger.recordings.recording import RecordingWriter
from logger.recordings.recording_text import column_names, format_event, format_header, format_rows, spreadsheet_safe
from logger.recordings.second import Alongside, between, split
from logger.recordings.sidecar import add_correction, change_sidecar, merged, revision_of
from logger.recordings.stored import is_recording, read_recording
from logger.samples import Block, Column, Ending, EndReason, Event, EventKind
from tests.kept import kept
from tests.steps import steps

ROOM = "logger.recordings"
SEASON = Path(__file__).parents[3] / "recordings"
AT = datetime(2026, 5, 16, 10, 42, tzinfo=UTC)
COLUMNS = (Column("torque", "lbf·in"), Column("angle", "°"), Column("counter", ""))
HEADER = Header(
    started=AT,
    program="heldwheel 0",
    job=JobFacts(customer="a, =club", number="1,+2", tags={"event": "one"}),
    transducer=TransducerFacts(unit="lbf·in", sign="reversed"),
)


def written(path: Path, *, close: bool = True, header: Header = HEADER, columns: tuple[Column, ...] = COLUMNS) -> bytes:
    """Write five batches of three rows, with events between them."""
    writer = RecordingWriter(path, header, columns)
    writer._halt()  # batches are cut here, not by the clock
    for k in range(5):
        i = np.arange(3 * k, 3 * k + 3, dtype=float)
        values = [1.1 * i - 4, np.where(i % 4 == 3, np.nan, i / 3), i + 7, i * 0.1, i]
        events = (
            Event(EventKind.GAP, 1, 3, "3 samples lost", k * 0.3 + 0.05),
            Event(EventKind.NOTE, 3, 0, "said,=1\nof it", float("nan")),
        )
        given = {column.name: value for column, value in zip(columns, values, strict=False)}
        writer.on_block(Block(i / 10, given, events[: k % 3]))
        writer._flush()
    assert writer.saved == 15
    if close:
        writer.on_end(Ending(EndReason.STOPPED))
    return path.read_bytes()


@pytest.fixture(scope="module")
def whole(tmp_path_factory) -> bytes:
    return written(tmp_path_factory.mktemp("kept") / "a.csv")


def said_of(data: bytes) -> object:
    """Give all that a reader says of bytes; what was not read is an error."""
    try:
        found = read_recording(data, "a.csv")
    except HeldwheelError as error:
        return error
    return [getattr(found, name) for name in found.__slots__ if name != "header"] + [found.header != Header()]


def test_kept_bytes_of_a_recording(whole):
    kept("recordings", "bytes", whole)


def test_kept_readings_of_one_cut_anywhere(whole):
    with steps(ROOM) as said:
        answers = {at: said_of(whole[:at]) for at in (*range(0, 40, 13), *range(300, len(whole), 61), len(whole))}
    kept("recordings", "cut", [[answers, is_recording(whole[:5]), is_recording(b""), is_recording(b"\n ")], said])


SPOILT = {
    "row": (b"\n0.4,", b"\n0.5,"),
    "count": (b"rows=3 crc", b"rows=4 crc"),
    "no count": (b"# batch rows=3", b"# batch rows="),
    "header": (b"club", b"clud"),
    "first line": (b"# heldwheel", b"# heltwheel"),
    "columns": (b"time_s,", b"time_x,"),
    "unit": (b"torque_lbf_in", b"torque_furlong"),
    "twice": (b"angle_deg", b"counter"),
    "closing": (b"samples=15", b"samples=16"),
    "hash": (b"sha256=", b"sha256=0"),
    "behind": (b"\n# closed", b"\nx\n# closed"),
    "no toml": (b"# [job]", b"# [job"),
    "event": (b"kind=gap count=3", b"kind=gup count=3"),
    "torque": (b"torque_lbf_in", b"force_kgf"),
    "time": (b"time_s=0.35", b"time_s=..35"),
    "header with rows": (b"rows=0 crc", b"rows=3 crc"),
    "stated": (b'unit = "lbf', b'unit = "ozf'),
}


@pytest.mark.parametrize("name", SPOILT)
def test_kept_readings_of_a_changed_one(whole, name):
    before, after = SPOILT[name]
    with steps(ROOM) as said:
        answers = [
            said_of(whole.replace(before, after, 1)),
            said_of(whole.replace(before, after)),
            said_of(whole + b"\n"),
        ]
    kept("recordings", f"changed {name}", [answers, said])


def test_kept_readings_of_wide_and_much_broken_ones(whole):
    """As many columns as are read, and one more; as many broken batches as are told one by one, and one more."""
    answers = []
    for count in (62, 63, 64, 65):
        names = ",".join(["time_s", "torque_Nm", *(f"c{n}" for n in range(count - 2))])
        body = f"# heldwheel recording 1\n{names}\n".encode()
        rows = (",".join("1" for _ in range(count)) + "\n").encode()
        data = body + b"# batch rows=0 crc32=%08X\n" % zlib.crc32(body)
        answers.append(said_of(data + rows + b"# batch rows=1 crc32=%08X\n" % zlib.crc32(rows)))
    head, rest = whole.partition(b"\n0.")[::2]
    row = b"0.1,2,3,4\n"
    for count in (19, 20, 21, 22):
        bad = (row + b"# batch rows=1 crc32=00000000\n") * count
        answers.append(said_of(head + b"\n" + bad + b"0." + rest))
    kept("recordings", "wide and broken", answers)


def test_kept_traces_with_their_sidecar(tmp_path, whole):
    path = tmp_path / "a.csv"
    path.write_bytes(whole)
    answers = []
    for sidecar in (
        None,
        Sidecar(simulated=True, tags={"event": "two", "lap": "3"}),
        Sidecar(job=JobFacts(shop="us"), started=AT),
        Sidecar(
            transducer=TransducerFacts(capacity_nm=50.0), zero=Zero(value_nm=0.1, value_nm_u=0.02, how="lever off")
        ),
    ):
        if sidecar is not None:
            change_sidecar(path, lambda _, sidecar=sidecar: sidecar)
        found = read_trace(path)
        names = ("header", "time_s", "torque", "unit", "columns", "events", "state", "problems", "second", "is_force")
        answers.append([getattr(found, name) for name in (*names, "si", "torque_nm", "angle_deg", "held_deg")])
    kept("recordings", "traces", answers)


@pytest.mark.parametrize("name", ["01-arrival-left", "06-unclosed", "06-foreign-table", "05-event-3"])
def test_kept_traces_of_the_season(name):
    found = read_trace(SEASON / f"{name}.csv")
    names = ("header", "time_s", "torque", "unit", "columns", "events", "state", "problems", "second", "sha256")
    kept("recordings", name, [getattr(found, one) for one in names])


def test_kept_two_sources():
    n = 40
    time_s = np.round(np.arange(n) * 0.05, 3)
    source = np.where(np.arange(n) % 3 == 0, 2.0, 1.0)
    angle = np.where(source == 2, time_s * 30, np.nan)
    angle[12:21] = np.nan
    held = np.where(source == 2, time_s, np.nan)
    torque = np.where(source == 1, time_s * 10, np.nan)
    columns = {"time_s": time_s, "source": source, "torque": torque, "angle_deg": angle, "second_x": held, "odd": held}
    events = [Event(EventKind.NOTE, k, 0, "x", 0.1) for k in (0, 1, 7, n, n + 5)]
    with steps(ROOM) as said:
        answers = [split(columns, events), split({k: v for k, v in columns.items() if k != "source"}, events)]
        known = np.array([0.0, 0.25, 0.5, 0.751, 2.0])
        for few in (known, known[:1], known[:0], known[:2]):
            answers.append(between(np.linspace(-0.25, 2.25, 21), few, few * 2))
        for size in (1, 7, n):
            along = Alongside()
            parts = [slice(at, at + size) for at in range(0, n, size)]
            answers.append([along.feed(time_s[p], source[p], torque[p], angle[p], held[p]) for p in parts])
            answers[-1].append(along.rest())
    kept("recordings", "two sources", [answers, said])


def test_kept_texts_of_a_recording():
    force = (Column("torque", "kgf"), Column("angle", "°"), Column("temperature", "°C"), Column("n", ""))
    values = [1.0, -0.1, 2 / 3, np.nan, 1e-7, 123456.789, 0.1 + 0.2, np.float64(np.float32(0.1)), 1e16, 27.0]
    columns = [np.array(values), np.arange(10.0), np.full(10, np.nan)]
    times = np.array([0, 1e-7, 4.9e-7, 5.1e-7, 1.5, 2.0000005, 3, 4, 5, 6.123456789])
    events = [
        Event(EventKind.GAP, 0, 3, "a" * 700, 0.1234567),
        Event(EventKind.NOTE, 1, 0, " \x07é,=1; +2,-3 "),
        Event(EventKind.OVERLOAD, 2, 1, "", -1.0),
    ]
    answers = [
        column_names(force),
        format_rows(times, columns),
        format_rows(times[:0], [one[:0] for one in columns]),
        [format_event(one) for one in events],
        format_header(HEADER),
        format_header(Header()),
        [spreadsheet_safe(one) for one in ("a,=b", "a, b", 'a;  "-b', "a\t@", ",", "=a", "a,1")],
    ]
    kept("recordings", "texts", answers)


def test_kept_headers_laid_over():
    limit = Limit(quantity="breakaway", kind="min", unit="N·m", lower=50.0, source="invented", page="1")
    base = Header(
        job=JobFacts(customer="a", tags={"x": "1"}), axle=Axle(tag="7"), photos=(Photo(file="p", sha256="1"),)
    )
    over = [
        Sidecar(
            job=JobFacts(shop="b"),
            axle=Axle(ratio=3.9),
            photos=(Photo(file="p", sha256="1"), Photo(file="q", sha256="2")),
        ),
        Sidecar(
            limit=limit,
            lever=Lever(fixture="hub centre"),
            decision=Decision(rule="guarded"),
            conditions=Conditions(fluid="y"),
        ),
        Sidecar(test=Test(held="case"), tags={"x": "2", "y": "3"}, started=AT, simulated=True),
    ]
    later = [Correction(at=AT + timedelta(hours=k), reason="r", by="o") for k in (-1, 0, 1, 2, 2)]
    answers = [
        [merged(base, one) for one in (None, *over)],
        [merged(merged(base, over[1]), one) for one in over],
        [revision_of(Sidecar(signed=at, corrections=tuple(later))) for at in (None, AT, AT + timedelta(hours=1))],
    ]
    kept("recordings", "laid over", answers)


def test_kept_heads(tmp_path, whole):
    for name, tag, purpose, simulated in (
        ("a", "43/11", None, False),
        ("b", " 43/11 ", "pulls", True),
        ("c", "X", "drag", False),
        ("d", "x", None, True),
        ("e", "", None, False),
        ("f", "x", "pulls", True),
    ):
        started = AT + timedelta(hours=ord(name))
        header = Header(started=started, axle=Axle(tag=tag), test=Test(purpose=purpose), simulated=simulated)
        (tmp_path / f"{name}.csv").write_text(format_header(header) + "time_s,torque_Nm\n", "utf-8")
    (tmp_path / ".g.csv").write_bytes(whole)
    (tmp_path / "h.txt").write_bytes(whole)
    (tmp_path / "i.csv").write_bytes(b"# heldwheel recording 1\n# [job\n")
    answers = [axle_tests(tmp_path), read_header(tmp_path / "b.csv"), header_of(whole, "x"), header_of(b"x\n", "x")]
    for head in (b"# heldwheel recording 1\n# [job\n", b"# heldwheel recording 1\n# a = 1\n", b""):
        try:
            answers.append(header_of(head, "x.csv"))
        except HeldwheelError as error:
            answers.append(error)
    kept("recordings", "heads", answers)


def test_kept_axle_files(tmp_path):
    builds = [Build(built=AT + timedelta(days=k), notes=str(k)) for k in (0, 2, 5)]
    answers = []
    for one in (builds[1], builds[0], builds[2], builds[0]):
        try:
            answers.append(change_axle(tmp_path, " Rear 1", lambda axle, one=one: put_build(axle, one)))
        except HeldwheelError as error:
            answers.append(error)
    found = read_axle(tmp_path, "rear 1")
    assert found is not None
    for build, instead in (
        (builds[0], AT),
        (msgspec.structs.replace(builds[1], notes="x"), AT),
        (builds[1], AT + timedelta(days=1)),
    ):
        try:
            changed = put_build(found, build, instead_of=instead)
            answers.append([changed.builds, [one.build for one in changed.replaced]])
        except HeldwheelError as error:
            answers.append(error)
    mixed = AxleFile(tag="t", builds=tuple(builds[::-1]))
    answers.append([builds_until(mixed, AT + timedelta(days=k)) for k in (-1, 0, 1, 2, 9)])
    answers.append([same_tag(a, b) for a, b in (("A ", "a"), ("a b", "ab"), ("ß", "SS"))])
    change_axle(tmp_path, "Rear:1", lambda axle: axle)
    answers.append(sorted(path.name for path in tmp_path.glob("*.toml")))
    for tag in ("", "REAR 1", "rear:1", "other"):
        try:
            answers.append(read_axle(tmp_path, tag))
        except HeldwheelError as error:
            answers.append(error)
    for n in range(1, 99):  # tags of one file name, up to the last
        text = format_toml(AxleFile(tag=f"many{'?' * n}"))
        (tmp_path / f"many{'' if n == 1 else f'-{n}'}.axle.toml").write_text(text, "utf-8")
    for tag in ("many" + "?" * 98, "many!", "many!!"):
        try:
            answers.append([change_axle(tmp_path, tag, lambda axle: axle).tag, len(list(tmp_path.glob("many*")))])
        except HeldwheelError as error:
            answers.append(str(error).rpartition(":")[2])
    kept("recordings", "axles", answers)


def test_kept_dial_files(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    path = Path("a.dial.toml")
    readings = tuple(DialReading(shown=50.0 + k, at=AT) for k in range(3))
    write_dialled(path, DialFile(header=Header(started=AT), readings=readings, checks=("brakes",), signed=AT))
    data = path.read_bytes()
    answers = [data, [is_dialled(one) for one in ("a.dial.toml", "A.DIAL.TOML", "a.toml", "dial.toml.csv")]]
    for one in (data, data.replace(b"51", b"52"), data.rpartition(b"#")[0], data + b"\n", b"\xff", b"x = 1"):
        path.write_bytes(one)
        try:
            answers.append(read_dialled(path))
        except HeldwheelError as error:
            answers.append(error)
    try:
        write_dialled(path, DialFile(header=Header(), readings=readings, signed=AT))
    except HeldwheelError as error:
        answers.append(error)
    kept("recordings", "dial", answers)


def test_kept_photos_and_corrections(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    Path("A b(1).JPG").write_bytes(b"picture" * 50)
    Path("x.txt").write_bytes(b"no")
    long = "a" * 38 + "b" * 9 + ".png"
    Path(long).write_bytes(b"other")
    answers = []
    for name, caption in (
        ("A b(1).JPG", " two \n words "),
        ("A b(1).JPG", ""),
        ("x.txt", ""),
        ("gone.png", ""),
        (long, ""),
    ):
        try:
            answers.append(take_in(Path(name), Path("there"), caption))
        except HeldwheelError as error:
            answers.append(error)
    photo = answers[0]
    for change in ({}, {"sha256": photo.sha256.upper()}, {"sha256": "0"}, {"file": "none.jpg"}, {"file": "../x.txt"}):
        answers.append(photo_state(Path("there/a.csv"), msgspec.structs.replace(photo, **change)))
    for reason in ("seen", " "):
        try:
            answers.append(add_correction(Path("a.csv"), Correction(at=AT, reason=reason, by="b")))
        except HeldwheelError as error:
            answers.append(error)
    answers.append(date(2026, 1, 1))
    kept("recordings", "photos", answers)
