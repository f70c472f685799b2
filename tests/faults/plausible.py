"""Wrong but plausible: numbers that look like a test and are not. Which of them are noticed, and which cannot be.

A fault is *noticed* if the program says something about the spoilt recording that it does not say about the sound one:
an event, a problem, a reason against a pull, a result that is no longer within or outside. ``NOTICED`` must be in every
case, ``UNDETECTABLE`` cannot be from the data alone; the campaign fails if the first kind slips through, if one of
the second kind is noticed every time (then it is not what it is said to be), or if what is said to show it does not.
"""

from __future__ import annotations

import re
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import msgspec
import numpy as np

from analysis.pipeline import read_file
from analysis.to_axle.drag import factor_two
from logger.decoder.build import build_decoder
from logger.decoder.description import Description
from logger.edges.toml_file import parse_toml
from logger.header import Header, Lever, Limit, Test, TransducerFacts
from logger.instruments.weigh import Compliance, DeadWeight, check_point
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Column, Ending, EndReason
from logger.virtual.physics import simulate
from logger.virtual.scenarios import scenario
from tests.faults.tally import Campaign, Tally

RATE_HZ = 500.0
CAPACITY_NM = 200.0
ENOUGH = 4  # recordings from which "never noticed" and "always noticed" can be told apart


@dataclass(frozen=True, slots=True)
class Bench:
    """A recording about to be made: what the device sends, and what is written on the card."""

    counter: np.ndarray
    torque_nm: np.ndarray
    header: Header
    with_counter: bool = True


@cache
def sound(seed: int) -> Bench:
    """Give a sound recording of two pulls; simulated."""
    run = simulate(scenario("healthy"), seed)
    time_s = np.arange(0, run.time_s[-1], 1 / RATE_HZ)
    torque = np.interp(time_s, run.time_s, run.torque_nm)
    peak = float(np.abs(torque).max())
    turned = "clockwise" if torque.max() == peak else "counter-clockwise"
    header = Header(
        simulated=True,
        time_from="device counter",
        test=Test(place="car", held="other side", gear="neutral", direction=turned),
        lever=Lever(fixture="hub centre"),
        limit=Limit(quantity="breakaway", kind="min", unit="N·m", lower=round(0.6 * peak, 1), source="invented",
                    place="car", held="other side", gear="neutral"),
        transducer=TransducerFacts(unit="N·m", sign="signed", capacity_nm=CAPACITY_NM, rate_hz=RATE_HZ),
    )  # fmt: skip
    return Bench(np.arange(len(torque)), np.round(torque, 2), header)


def _description(capacity_nm: float | None) -> Description:
    capacity = "" if capacity_nm is None else f"capacity_nm = {capacity_nm}\n"
    text = f'name = "x"\n[transducer]\nunit = "N·m"\nrate_hz = {RATE_HZ}\n{capacity}'
    text += '[lines]\ntemplate = "{counter},{torque}"\n'
    return parse_toml(text, Description, "x")


def words(bench: Bench, folder: str) -> set[str]:
    """Record what the device sends, read it, and give all that is said about it, without the figures."""
    description = _description(bench.header.transducer.capacity_nm)
    decoder = build_decoder(description)
    path = Path(folder) / "a.csv"
    path.unlink(missing_ok=True)
    columns = (Column("torque", "N·m"), *((Column("counter", ""),) if bench.with_counter else ()))
    writer = RecordingWriter(path, bench.header, columns)
    said = set()
    for start in range(0, len(bench.counter), 50):
        part = slice(start, start + 50)
        text = b"".join(
            b"%d,%s\r\n" % (n, b"OL" if np.isnan(t) else b"%.2f" % t)
            for n, t in zip(bench.counter[part].tolist(), bench.torque_nm[part].tolist(), strict=True)
        )
        decoded = decoder.feed(text)
        assert decoded.counter is not None
        counter = decoded.counter.astype(float)
        block = {"torque": decoded.columns["torque"], "counter": counter}
        writer.on_block(Block(counter / RATE_HZ, {c.name: block[c.name] for c in columns}, decoded.events))
        said |= {f"event: {event.kind}: {event.text}" for event in decoded.events}
    writer.on_end(Ending(EndReason.STOPPED))
    reading = read_file(path)
    said |= {f"problem: {problem}" for problem in reading.problems}
    pulls = [p.pull for p in reading.pulls]
    said |= {f"pull: {reason.code}" for pull in pulls for reason in pull.reasons}
    said |= {f"excluded: {pull.left_out > 0}" for pull in pulls}
    if reading.result is not None and reading.result.state == "not valid":
        said.add(f"result: {reading.result.words}")
    said |= {f"pulls with a value: {sum(p.breakaway is not None for p in pulls)}"}
    return {re.sub(r"[-+0-9.,:]+", "#", line) if not line.startswith("pulls") else line for line in said}


# --- faults ---------------------------------------------------------------------------------------------------------


def _times(factor: float) -> Callable[[Bench], Bench]:
    return lambda b: replace(b, torque_nm=np.round(b.torque_nm * factor, 2))


def _header(bench: Bench, **changes: object) -> Bench:
    return replace(bench, header=msgspec.structs.replace(bench.header, **changes))


def _limited(bench: Bench, **changes: object) -> Bench:
    assert bench.header.limit is not None
    return _header(bench, limit=msgspec.structs.replace(bench.header.limit, **changes))


def _peak(bench: Bench) -> tuple[int, float]:
    at = int(np.abs(bench.torque_nm).argmax())
    return at, float(bench.torque_nm[at])


def _turning(bench: Bench) -> int:
    """Give a place in the middle of a pull's turning."""
    at, peak = _peak(bench)
    over = np.abs(bench.torque_nm) > 0.6 * abs(peak)
    end = at + int(np.argmin(over[at:]))
    return (at + end) // 2


def _clipped(share: float, capacity: bool) -> Callable[[Bench], Bench]:
    def fault(b: Bench) -> Bench:
        top = round(share * abs(_peak(b)[1]), 2)
        facts = msgspec.structs.replace(b.header.transducer, capacity_nm=top if capacity else None)
        return _header(replace(b, torque_nm=np.clip(b.torque_nm, -top, top)), transducer=facts)

    return fault


def _stuck(b: Bench) -> Bench:
    torque, at = b.torque_nm.copy(), _turning(b)
    torque[at : at + int(1.3 * RATE_HZ)] = torque[at]
    return replace(b, torque_nm=torque)


def _auto_zero(b: Bench) -> Bench:
    torque, at = b.torque_nm.copy(), _turning(b)
    torque[at:] -= torque[at]
    return replace(b, torque_nm=np.round(torque, 2))


def _overload_as_zeros(b: Bench) -> Bench:
    high = 0.85 * abs(_peak(b)[1])
    return replace(b, torque_nm=np.where(np.abs(b.torque_nm) > high, 0.0, b.torque_nm))


def _overload_as_mark(b: Bench) -> Bench:
    return replace(b, torque_nm=np.where(np.abs(b.torque_nm) > 0.9 * abs(_peak(b)[1]), np.nan, b.torque_nm))


def _lost(with_counter: bool) -> Callable[[Bench], Bench]:
    def fault(b: Bench) -> Bench:
        at, _ = _peak(b)
        keep = np.ones(len(b.counter), bool)
        keep[at - 40 : at + 10] = False
        return replace(b, counter=b.counter[keep], torque_nm=b.torque_nm[keep], with_counter=with_counter)

    return fault


def _spike(b: Bench) -> Bench:
    torque, at = b.torque_nm.copy(), _turning(b)
    torque[at] += 60.0
    return replace(b, torque_nm=torque)


def _peak_hold(b: Bench) -> Bench:
    sign = np.sign(_peak(b)[1])
    return replace(b, torque_nm=sign * np.maximum.accumulate(np.maximum(sign * b.torque_nm, 0)))


def _zero_drift(b: Bench) -> Bench:
    return replace(
        b, torque_nm=np.round(b.torque_nm + 0.15 * abs(_peak(b)[1]) * np.linspace(0, 1, len(b.torque_nm)), 2)
    )


def _unstated(b: Bench) -> Bench:
    return _header(_times(-1.0)(b), test=Test(place="car", held="other side", gear="neutral"))


def _slow_display(b: Bench) -> Bench:
    width = int(0.6 * RATE_HZ)
    smooth = np.convolve(b.torque_nm, np.ones(width) / width, mode="same")
    return replace(b, torque_nm=np.round(smooth, 2))


@dataclass(frozen=True, slots=True)
class Fault:
    """One way in which numbers are wrong but plausible.

    Where the data cannot show it, ``shown_by`` says what does, and ``shows`` does it with the same fault in the device.
    """

    name: str
    spoil: Callable[[Bench], Bench]
    shown_by: str = ""
    shows: Callable[[Fault], bool] | None = None


def _reads(fault: Fault, torque_nm: np.ndarray) -> np.ndarray:
    """Give what the device with this fault sends for a torque."""
    return fault.spoil(replace(sound(0), counter=np.arange(len(torque_nm)), torque_nm=torque_nm)).torque_nm


def _dead_weight(fault: Fault) -> bool:
    """20 kg on the lever, three times: within the certificate's 1 % without the fault, outside with it."""
    load = DeadWeight(20.0, 0.45)
    hung = np.full(3, round(load.torque_nm, 2))
    sound_one, faulty = (check_point(load, list(r), allowed=1.0).agreement for r in (hung, _reads(fault, hung)))
    return sound_one is Compliance.WITHIN and faulty is Compliance.OUTSIDE


def _second_test(fault: Fault) -> bool:
    """A test of the same axle with the member held that the card says."""
    peak = _peak(sound(0))[1]
    return bool(factor_two(abs(_peak(fault.spoil(sound(0)))[1]), abs(peak))) and not factor_two(abs(peak), abs(peak))


def _push(fault: Fault) -> bool:
    """A push by hand, clockwise: the needle goes the other way."""
    return bool((_reads(fault, np.full(50, 8.0)) < 0).all())


def _drag_run(fault: Fault) -> bool:
    """Both wheels free, the wheel turned: 6 N·m without the brake."""
    return float(_reads(fault, np.full(50, 6.0)).mean()) - 6.0 > 1.0


def _zeros(fault: Fault) -> bool:
    """Nothing on the transducer before and after a pull."""
    torque = np.zeros(500)
    torque[200:300] = 80.0
    sent = _reads(fault, torque)
    return abs(float(sent[-50:].mean() - sent[:50].mean())) > 1.0


NOTICED = [
    Fault("lbf·in read as N·m", _times(8.850746)),
    Fault("kgf·cm read as kgf·m", _times(100.0)),
    Fault(
        "case held, limit for the other side", lambda b: _header(b, test=Test(place="car", held="case", gear="neutral"))
    ),
    Fault(
        "in gear, limit for neutral", lambda b: _header(b, test=Test(place="car", held="other side", gear="in gear"))
    ),
    Fault("saturated, capacity known", _clipped(0.9, capacity=True)),
    Fault("saturated, capacity unknown", _clipped(0.8, capacity=False)),
    Fault("value stuck for 1.3 s under load", _stuck),
    Fault("auto-zero under load", _auto_zero),
    Fault("overload sent as zeros", _overload_as_zeros),
    Fault("overload sent as OL", _overload_as_mark),
    Fault("samples lost at the peak, counted", _lost(with_counter=True)),
    Fault("samples lost at the peak, not counted", _lost(with_counter=False)),
    Fault("one reading 60 N·m off", _spike),
    Fault("peak hold left on", _peak_hold),
    Fault("sign reversed, direction on the card", _times(-1.0)),
]
UNDETECTABLE = [
    Fault("sign reversed, no direction on the card", _unstated, "a push by hand before the first pull", _push),
    Fault(
        "N·m read as lbf·ft, far from the limit",
        _times(1.355818),
        "a dead weight on the transducer (weigh)",
        _dead_weight,
    ),
    Fault("gain 10 % low", _times(0.9), "a dead weight or a certificate", _dead_weight),
    Fault("case held, card says other side", _times(2.0), "whoever filled in the card; a second test", _second_test),
    Fault(
        "brake dragging, 3 N·m",
        lambda b: replace(b, torque_nm=b.torque_nm + 3.0 * (np.abs(b.torque_nm) > 5)),
        "a drag run",
        _drag_run,
    ),
    Fault("display averaged over 0.6 s", _slow_display, "a filter delay in the description; comparing two rates"),
    Fault(
        "zero drifts by 15 % over the recording",
        _zero_drift,
        "a zero before and after; alone it looks like the lever's weight at another angle",
        _zeros,
    ),
]


def _cases(faults: list[Fault], cases: int) -> Iterator[tuple[Fault, set[str]]]:
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(cases):
            usual = words(sound(seed), folder)
            for fault in faults:
                yield fault, words(fault.spoil(sound(seed)), folder) - usual


def noticed(cases: int) -> Tally:
    """Faults that must be noticed."""
    tally = Tally("wrong but plausible: noticed", cases * len(NOTICED))
    for fault, new in _cases(NOTICED, cases):
        tally.counts[fault.name] += bool(new)
        tally.require(bool(new), f"{fault.name}: nothing is said about it")
    tally.outcome = f"{sum(tally.counts.values())} of {tally.cases} noticed, in {len(NOTICED)} kinds"
    return tally


def undetectable(cases: int) -> Tally:
    """Faults that the data alone cannot show; how often something is said all the same."""
    tally = Tally("wrong but plausible: not detectable from the data", cases * len(UNDETECTABLE))
    for fault, new in _cases(UNDETECTABLE, cases):
        tally.counts[f"{fault.name} (shown by {fault.shown_by}), something said"] += bool(new)
    for fault in UNDETECTABLE:
        seen = tally.counts[f"{fault.name} (shown by {fault.shown_by}), something said"]
        tally.require(seen < cases or cases < ENOUGH, f"{fault.name}: noticed every time: it is detectable")
        tally.require(fault.shows is None or fault.shows(fault), f"{fault.name}: {fault.shown_by} does not show it")
    noticed = sum(tally.counts.values())
    tally.outcome = (
        f"stated as not noticeable, {len(UNDETECTABLE)} kinds; {noticed} of {tally.cases} noticed all the same"
    )
    return tally


CAMPAIGNS = [
    Campaign("wrong but plausible, noticed", noticed, 1, 8, long_s=30),
    Campaign("wrong but plausible, undetectable", undetectable, 1, 8, long_s=20),
]
