"""The trace of ``foreign_tables`` as terminals and logs keep it, and with headings and times of further kinds."""

from __future__ import annotations

import datetime
import json

import numpy as np

from tests.logger.foreign_tables import ANGLE_DEG, START, TIME_S, TORQUE_NM, N, kind

ROWS = list(zip(TIME_S.tolist(), TORQUE_NM.tolist(), ANGLE_DEG.tolist(), strict=True))
AT = [START + datetime.timedelta(seconds=t) for t, _, _ in ROWS]


def clock(at: datetime.datetime) -> str:
    return f"{at:%H:%M:%S}.{at.microsecond // 1000:03d}"


def lines(form: str) -> str:
    """Write every reading by one form."""
    return "".join(
        form.format(t=t, y=y, a=a, clock=clock(at), day=f"{at:%Y-%m-%d}") + "\n"
        for (t, y, a), at in zip(ROWS, AT, strict=True)
    )


kind("a terminal's stamps in brackets", ending="txt")(lambda: lines("[{clock}] {y:+08.3f} Nm"))
kind("a program's log", ending="log")(lambda: lines("{day} {clock} INFO torque={y:.3f} Nm angle={a:.2f} deg"))
kind("pairs of name and value", ending="txt")(lambda: lines("t={t:.3f};M={y:.3f}Nm"))
kind("time and colon", ending="txt")(lambda: lines("{t:.3f}: {y:.3f} N.m"))
kind("names and colons without a time", ending="txt", asks=("rate_hz",), answers={"rate_hz": 100.0})(
    lambda: lines("Torque: {y:.3f} Nm, Angle: {a:.2f} deg")
)
kind("lines between that say something else", ending="txt", told="lines that are not like the others")(
    lambda: lines("[{clock}] torque {y:.3f} Nm") + "[10:00:04.100] link closed by peer\n"
)
kind("a part of the second in a column of its own")(
    lambda: (
        "Date,Time,ms,Torque Nm\n"
        + "".join(
            f"{at:%d/%m/%Y},{at:%H:%M:%S},{at.microsecond // 1000},{row[1]:.3f}\n"
            for row, at in zip(ROWS, AT, strict=True)
        )
    )
)
kind("steps of time", told="is read as the time since the row before", time_off=0.0006)(
    lambda: "n,dt_ms,torque_Nm\n" + "".join(f"{n},10,{y:.3f}\n" for n, (_, y, _) in enumerate(ROWS))
)
kind("a unit in every cell")(lambda: "Time,Value\n" + lines("{t:.2f} s,{y:.3f} Nm"))
kind("headings without blanks")(lambda: "timeSec,torqueNm,angleDeg\n" + lines("{t:.3f},{y:.3f},{a:.2f}"))
kind("set and actual torque")(lambda: "Time (s),Set Torque (Nm),Actual Torque (Nm)\n" + lines("{t:.3f},60,{y:.3f}"))
kind("JSON lines with value and unit apart", ending="jsonl")(
    lambda: "".join(json.dumps({"t_s": t, "torque": {"value": y, "unit": "Nm"}}) + "\n" for t, y, _ in ROWS)
)

_LOST = (np.arange(N) >= 150) & (np.arange(N) < 160)
kind(
    "an overload among a terminal's lines",
    ending="txt",
    torque=np.where(_LOST, np.nan, TORQUE_NM),
    told="overload",
)(
    lambda: "".join(
        f"[{clock(at)}] {'OL' if lost else f'{y:.3f}'} Nm\n"
        for (_, y, _), at, lost in zip(ROWS, AT, _LOST.tolist(), strict=True)
    )
)
