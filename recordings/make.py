"""Make the example recordings: a season of a club hill-climb car, three fluids, one rebuild. All of it is simulated.

``python recordings/make.py`` writes the recordings anew beside this file, with levers, limits, sidecars and
``expected.json``: the exact truth of every pull, from the virtual transducer, and what the comparisons should find.
Everything random comes from the seeds below.
"""

from __future__ import annotations

import json
import sys
import zlib
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta, timezone
from pathlib import Path
from typing import Any

import msgspec
import numpy as np

from logger.decoder.build import build_decoder
from logger.edges.toml_file import write_toml
from logger.header import Axle, Conditions, Header, JobFacts, Lever, Limit, Sidecar, Test, TransducerFacts, Zero
from logger.recordings.recording import RecordingWriter
from logger.recordings.sidecar import change_sidecar
from logger.samples import Block, Ending, EndReason
from logger.virtual import scenarios as v
from logger.virtual.device import VirtualDevice
from logger.virtual.hand import HandPull
from logger.virtual.physics import LeverOff, Scenario, SimulatedRun, simulate

HERE = Path(__file__).parent
SUMMER = timezone(timedelta(hours=1))
RATE_HZ = 100.0
LENGTH_MM, CIRCLE_MM = 450.0, 114.3

LEVER = Lever(
    fixture="one stud",
    name="club lever",
    length_mm=LENGTH_MM,
    length_mm_u=2.0,
    stud_circle_mm=CIRCLE_MM,
    stud_circle_mm_u=0.5,
    studs=5,
    angle_deg=0.0,
    angle_deg_u=3.0,
    weight_kg=1.2,
    centroid_mm=200.0,
)
BREAKAWAY_LIMIT = Limit(
    name="club build sheet, breakaway",
    quantity="breakaway",
    kind="min",
    unit="N·m",
    lower=40.0,
    source="build sheet of the invented club in this example; no specification of any axle",
    page="1",
    condition="used plates, reference fluid",
    place="car",
    held="other side",
)
ROTATING_LIMIT = Limit(
    name="club build sheet, rotating",
    quantity="rotating mean",
    kind="min",
    unit="lbf·ft",
    lower=40.0,
    source="build sheet of the invented club in this example; no specification of any axle",
    page="2",
    place="car",
    held="other side",
)

FLUIDS: dict[str, dict[str, Any]] = {
    # Static over sliding friction, and how the fluid behaves with speed.
    "reference": {"ratio": 1.35, "changes": {}},
    "additive B": {"ratio": 1.12, "changes": {}},
    "smooth C": {"ratio": 0.97, "changes": {"stribeck_rad_s": 0.08, "ageing_nm": 0.0, "viscous_nms": 1.5}},
}
MODIFIER = {"reference": ("", 0.0), "additive B": ("additive B", 4.0), "smooth C": ("additive C", 6.0)}

SHIM_BASE_NM, SHIM_NM_MM = 32.0, 60.0
"""Sliding torque of the packs without shims, and per millimetre of shim: what the shim trend should find again."""

RUN_IN_SHARE, RUN_IN_CYCLES = 0.22, 15.0
FLUID_LEVEL_NM = 44.0
SPEEDS = ((0.3, 1.8), (0.7, 1.8))
"""Two speeds in each pull of the fluids, in rad/s for seconds: friction against speed can be seen."""


@dataclass(frozen=True, slots=True)
class Take:
    """One recording to be made."""

    name: str
    when: datetime
    scenario: Scenario
    test: Test
    conditions: Conditions
    job: JobFacts
    shim_mm: float | None = None
    limit: Limit | None = None
    notes: dict[str, Any] = field(default_factory=dict)


def _day(month: int, day: int, hour: int = 10) -> datetime:
    return datetime(2026, month, day, hour, 0, tzinfo=SUMMER)


def _scenario(
    name: str,
    level_nm: float,
    *,
    ratio: float = 1.22,
    pulls: int = 3,
    angle: bool = False,
    turn_rad_s: tuple[tuple[float, float], ...] = ((0.5, 3.4),),
    **changes: Any,
) -> Scenario:
    """Give a test of packs that slide at ``level_nm``.

    A conditioning pull that is not recorded, lever off for the zero, then pulls on one stud.
    """
    packs = (v.pack(level_nm, ratio, seed=3, **changes), v.pack(level_nm, ratio, seed=4, **changes))
    axle = v.axle(*packs, driven_nm=2.0, other_nm=2.0, case_nm=6.0, ratio=43 / 11)
    sensor = v.SensorModel(rate_hz=RATE_HZ, bandwidth_hz=40.0, capacity_nm=150.0, resolution_nm=0.05, noise_nm=0.04)
    conditioning = HandPull(dwell_s=1.0, ramp_nm_s=20.0, turn_rad_s=((0.5, 2.0),))
    actions = (conditioning, *v.pulls(pulls, dwell_s=2.5, ramp_nm_s=20.0, turn_rad_s=turn_rad_s))
    return Scenario(
        name, "invented", axle, actions, v.LeverModel(stud_radius_m=CIRCLE_MM / 2e3), sensor, 0.5 if angle else None
    )


def _job(number: str, operator: str = "operator A", axle: str = "rear", **tags: str | float) -> JobFacts:
    return JobFacts(
        number=number,
        customer="the club",
        vehicle="club car 7",
        axle=axle,
        operator=operator,
        shop="Hillfoot Workshop (invented)",
        tags=tags,
    )


HELD = Test(place="car", held="other side", gear="neutral", direction="clockwise", purpose="pulls", dwell_s=15.0)


def _conditions(fluid: str, temperature_c: float = 20.0, **more: Any) -> Conditions:
    modifier, percent = MODIFIER[fluid]
    return Conditions(
        oil_temperature_c=temperature_c,
        fluid=fluid,
        modifier=modifier,
        modifier_percent=percent,
        wheel_fitted=True,
        brakes_free=True,
        condition=more.pop("condition", "run in"),
        **more,
    )


def arrival() -> Iterator[Take]:
    """April: the car arrives with worn packs; both sides are tried."""
    for side in ("left", "right"):
        test = msgspec.structs.replace(HELD, side=side)
        yield Take(
            f"01-arrival-{side}",
            _day(4, 11),
            _scenario("worn", 21.0),
            test,
            _conditions("reference", condition="used"),
            _job("2026-01", fill="as arrived"),
            limit=BREAKAWAY_LIMIT,
        )


def rebuild() -> Iterator[Take]:
    """May: new plates; five builds with different shims, to learn which shim gives which torque."""
    rng = np.random.default_rng(202605)
    for i, shim in enumerate((0.1, 0.2, 0.3, 0.4, 0.5)):
        level = (SHIM_BASE_NM + SHIM_NM_MM * shim) * (1 + rng.normal(0, 0.012))
        yield Take(
            f"02-build-shim-{round(shim * 100):02d}",
            _day(5, 2 + i),
            _scenario("build", level),
            msgspec.structs.replace(HELD, side="left"),
            _conditions("reference", condition="new"),
            _job("2026-02", fill=f"build {i + 1}"),
            shim_mm=shim,
        )


def run_in() -> Iterator[Take]:
    """May: figure-eights; the chosen build settles."""
    for cycles in (0, 4, 8, 12, 16, 20, 30, 40, 50, 60, 70, 80, 100, 120, 140):
        level = 46.0 * (1 + RUN_IN_SHARE * np.exp(-cycles / RUN_IN_CYCLES))
        yield Take(
            f"03-run-in-{cycles:03d}",
            _day(5, 16) + timedelta(minutes=6 * cycles),
            _scenario("run-in", float(level), pulls=2),
            msgspec.structs.replace(HELD, side="left"),
            _conditions("reference", 24.0, condition="new"),
            _job("2026-03", cycles=float(cycles), fill=f"after {cycles}"),
            shim_mm=0.3,
        )


def fluids() -> Iterator[Take]:
    """June: three fluids, four fills each, in randomised blocks (one block a day)."""
    rng = np.random.default_rng(202606)
    for block in range(4):
        for place, fluid in enumerate(rng.permutation(list(FLUIDS))):
            facts = FLUIDS[str(fluid)]
            level = FLUID_LEVEL_NM * (1 + rng.normal(0, 0.012))
            yield Take(
                f"04-fluid-{str(fluid).replace(' ', '-')}-fill-{block + 1}",
                _day(6, 6 + 7 * block, 9 + 2 * place),
                _scenario("fluid", level, ratio=facts["ratio"], angle=True, turn_rad_s=SPEEDS, **facts["changes"]),
                msgspec.structs.replace(HELD, side="left"),
                _conditions(str(fluid), 21.0 + block),
                _job("2026-04", fill=f"{fluid} {block + 1}", day=f"day {block + 1}"),
                shim_mm=0.3,
            )


def season() -> Iterator[Take]:
    """June to September: one test before each event; the packs wear."""
    for i, (month, day, km, level) in enumerate(
        (
            (6, 27, 0, 54.5),
            (7, 11, 160, 53.0),
            (7, 25, 330, 51.6),
            (8, 8, 480, 49.9),
            (8, 29, 650, 48.6),
            (9, 12, 820, 46.8),
        )
    ):
        yield Take(
            f"05-event-{i + 1}",
            _day(month, day),
            _scenario("event", level, ratio=1.10, pulls=4),
            msgspec.structs.replace(HELD, side="left"),
            _conditions("additive B", 22.0, distance_km=float(km)),
            _job("2026-05", fill=f"event {i + 1}", event=float(i + 1)),
            shim_mm=0.4,
            limit=ROTATING_LIMIT,
        )


def study() -> Iterator[Take]:
    """October: how good is the club's own measuring? Two operators, three axles, two repeats."""
    rng = np.random.default_rng(202610)
    bias = {"operator A": 1.0, "operator B": 1.012}
    for axle, level in (("axle 1", 30.0), ("axle 2", 42.0), ("axle 3", 55.0)):
        for operator, factor in bias.items():
            for repeat in (1, 2):
                yield Take(
                    f"07-study-{axle[-1]}{operator[-1].lower()}{repeat}",
                    _day(10, 3, 8 + repeat),
                    _scenario("study", level * factor * (1 + rng.normal(0, 0.006)), pulls=3),
                    msgspec.structs.replace(HELD, side="left"),
                    _conditions("additive B", 18.0),
                    _job("2026-07", operator, axle, fill=f"{axle} {operator} {repeat}"),
                )


def special() -> Iterator[Take]:
    """Give what else happens: chatter after a wrong fill, a clumsy hand, drag alone."""
    chatter = v.stick_slip()
    sensor = v.SensorModel(rate_hz=RATE_HZ, bandwidth_hz=40.0, capacity_nm=150.0, resolution_nm=0.05, noise_nm=0.04)
    common = {"lever": v.LeverModel(stud_radius_m=CIRCLE_MM / 2e3), "sensor": sensor, "angle_step_deg": None}
    yield Take(
        "06-chatter",
        _day(8, 15),
        replace(
            chatter, actions=v.pulls(2, turn_rad_s=((0.18, 5.0),), stiffness_nm_rad=450.0, damping_nms=3.0), **common
        ),
        msgspec.structs.replace(HELD, side="left"),
        _conditions("reference", 22.0),
        _job("2026-06", fill="wrong fill"),
    )
    clumsy = v.clumsy()
    yield Take(
        "06-clumsy-hand",
        _day(8, 16),
        replace(clumsy, **common),
        msgspec.structs.replace(HELD, side="left"),
        _conditions("reference", 22.0),
        _job("2026-06", fill="practice"),
        limit=BREAKAWAY_LIMIT,
    )


TAKES = (arrival, rebuild, run_in, fluids, season, study, special)


def takes() -> list[Take]:
    """Give every recording to be made, in order."""
    return [take for chapter in TAKES for take in chapter()]


def seed_of(name: str) -> int:
    """Give the seed of a recording: from its name, so that one more recording changes none of the others."""
    return zlib.crc32(name.encode("ascii"))


def make_run(take: Take) -> SimulatedRun:
    """Simulate a take and keep what is recorded: all after a conditioning pull, time counted from there."""
    run = simulate(take.scenario, seed_of(take.name))
    if not isinstance(take.scenario.actions[0], HandPull):
        return run
    start_s = run.truth[0].end_s + 1.2
    kept = run.time_s >= start_s
    return replace(
        run,
        time_s=run.time_s[kept] - start_s,
        torque_nm=run.torque_nm[kept],
        angle_deg=None if run.angle_deg is None else run.angle_deg[kept],
        counter=run.counter[kept],
        status=run.status[kept],
        zero_nm=run.zero_nm[kept],
        truth=tuple(
            replace(pull, start_s=pull.start_s - start_s, end_s=pull.end_s - start_s) for pull in run.truth[1:]
        ),
    )


def header_of(take: Take, run: SimulatedRun) -> Header:
    """Give what is known at the start of a recording; the true zero is read while the lever is off."""
    off = [action for action in take.scenario.actions if isinstance(action, LeverOff)]
    zero = None
    if off:
        unloaded = run.torque_nm[(run.time_s > 0.3) & (run.time_s < 1.3)]
        u = max(float(unloaded.std(ddof=1)) / len(unloaded) ** 0.5, 0.05 / 12**0.5)
        zero = Zero(at=take.when, value_nm=round(float(unloaded.mean()), 4), value_nm_u=round(u, 4), how="lever off")
    return Header(
        started=take.when,
        program="recordings/make.py",
        simulated=True,
        time_from="device counter",
        job=take.job,
        axle=Axle(type="clutch plate", ratio=round(43 / 11, 3), tag="43/11", shim_mm=take.shim_mm),
        test=take.test,
        conditions=take.conditions,
        lever=LEVER,
        limit=take.limit,
        transducer=msgspec.structs.replace(VirtualDevice(run).description.transducer, accuracy_percent_of_reading=1.0),
        zero=zero,
    )


def record(take: Take, run: SimulatedRun, path: Path) -> None:
    """Send a run through the bytes of the virtual transducer and the ordinary decoder into a recording."""
    device = VirtualDevice(run)
    decoder = build_decoder(device.description)
    decoded = decoder.feed(*[data for _, data in device])
    counter = decoded.counter if decoded.counter is not None else np.arange(len(decoded))
    time_s = (counter - counter[0]) / RATE_HZ
    events = tuple(event.at(float(time_s[min(event.index, len(time_s) - 1)])) for event in decoded.events)
    columns = [column for column in decoder.columns if column.name in ("torque", "angle")]
    writer = RecordingWriter(path, header_of(take, run), columns)
    writer.on_block(Block(time_s, {column.name: decoded.columns[column.name] for column in columns}, events))
    writer.on_end(Ending(EndReason.FINISHED))


def truth_of(run: SimulatedRun) -> list[dict[str, Any]]:
    """Give the exact truth of every pull."""

    def rounded(value: float | None) -> float | None:
        return None if value is None or value != value else round(float(value), 3)

    return [
        {
            "start_s": rounded(pull.start_s),
            "kind": pull.kind,
            "breakaway_axle_nm": rounded(pull.breakaway_axle_nm),
            "rotating_axle_nm": rounded(pull.plateau_axle_nm),
            "peak": pull.peak_class,
            "stick_slip": pull.stick_slip is not None,
            "flags": list(pull.flags),
        }
        for pull in run.truth
    ]


def unclosed(source: Path, path: Path) -> None:
    """Leave a recording as a killed program leaves it: without its closing line, its last row torn."""
    lines = source.read_text("utf-8").splitlines(keepends=True)
    path.write_text("".join(lines[:-1]) + "31.99", encoding="utf-8", newline="")


def foreign(source: Path, path: Path) -> None:
    """Write the samples of a recording as somebody else's table in lbf·ft, with a sidecar for what it lacks."""
    rows = [line for line in source.read_text("utf-8").splitlines() if not line.startswith("#")][1:]
    pairs = [row.split(",")[:2] for row in rows]
    text = "time_s,torque_lbf_ft\n" + "".join(f"{t},{float(torque) / 1.3558179483314004:.3f}\n" for t, torque in pairs)
    path.write_text(text, encoding="utf-8", newline="")
    change_sidecar(
        path,
        lambda _: Sidecar(
            simulated=True,
            job=_job("2026-06", fill="as arrived"),
            test=msgspec.structs.replace(HELD, side="left"),
            conditions=_conditions("reference", condition="used"),
            lever=LEVER,
            transducer=TransducerFacts(capacity_nm=150.0, accuracy_percent_of_reading=1.0),
            zero=Zero(value_nm=0.0, value_nm_u=0.05, how="lever off"),
        ),
    )


def main(folder: Path = HERE) -> None:
    """Make everything anew in a folder."""
    for old in [*folder.glob("0*.csv"), *folder.glob("0*.sidecar.toml")]:
        old.unlink()
    expected: dict[str, Any] = {"origin": "simulated", "recordings": {}}
    for take in takes():
        run = make_run(take)
        record(take, run, folder / f"{take.name}.csv")
        expected["recordings"][f"{take.name}.csv"] = truth_of(run)
    unclosed(folder / "05-event-2.csv", folder / "06-unclosed.csv")
    foreign(folder / "01-arrival-left.csv", folder / "06-foreign-table.csv")
    expected["shim"] = {"nm_per_mm": SHIM_NM_MM}
    (folder / "expected.json").write_text(json.dumps(expected, indent=1) + "\n", encoding="utf-8", newline="")
    write_toml(folder / "club.lever.toml", LEVER)
    write_toml(folder / "club-breakaway.limit.toml", BREAKAWAY_LIMIT)
    write_toml(folder / "club-rotating.limit.toml", ROTATING_LIMIT)


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else HERE)
