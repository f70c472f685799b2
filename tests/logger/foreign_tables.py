"""One trace, written in the many ways of programs and people: each way with what a reader must make of it.

The trace is a pull as any gauge shows it; every table is written from it here, so what must come back is known.
"""

from __future__ import annotations

import datetime
import io
import json
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

RATE_HZ = 100.0
N = 400
TIME_S = np.arange(N) / RATE_HZ
TORQUE_NM = np.round(
    np.interp(TIME_S, [0, 0.5, 1.5, 1.7, 3.2, 3.4, 4.0], [0, 0, 41.2, 33.4, 33.1, 0.1, 0]) + 0.07 * np.sin(91 * TIME_S),
    3,
)
ANGLE_DEG = np.round(np.interp(TIME_S, [0, 1.5, 3.2, 4.0], [0, 2, 95, 95]), 2)
LBF_FT = 1.3558179483314004
START = datetime.datetime(2026, 5, 1, 10, 0, 0)  # noqa: DTZ001
MAY_31 = START.replace(day=31, hour=23, minute=59, second=58)
LATE = START.replace(hour=23, minute=59, second=58)
NOON = START.replace(hour=11, minute=59, second=58)


@dataclass
class Kind:
    """A way of writing: the file's bytes, and what is asked of a reader."""

    name: str
    make: Callable[[], str | bytes]
    ending: str = "csv"
    unit: str = "N·m"
    torque: np.ndarray = field(default_factory=lambda: TORQUE_NM)
    time_s: np.ndarray = field(default_factory=lambda: TIME_S)
    time_off: float = 0.0006
    asks: tuple[str, ...] = ()
    answers: dict[str, object] = field(default_factory=dict)
    refused: str = ""
    told: str = ""

    @property
    def data(self) -> bytes:
        """The file."""
        made = self.make()
        return made if isinstance(made, bytes) else made.encode()


KINDS: list[Kind] = []


def kind(name: str, **more: object) -> Callable[[Callable[[], str | bytes]], Callable[[], str | bytes]]:
    def note(make: Callable[[], str | bytes]) -> Callable[[], str | bytes]:
        KINDS.append(Kind(name, make, **more))  # type: ignore[arg-type]
        return make

    return note


def rows(separator: str = ",", comma: bool = False, time=None, torque=None, more=None, end: str = "\n") -> str:
    """Write the rows of the table."""
    out = []
    for i in range(N):
        t = f"{TIME_S[i]:.3f}" if time is None else time(i)
        y = f"{TORQUE_NM[i]:.3f}" if torque is None else torque(i)
        cells = [t, y, *(more(i) if more else ())]
        if comma:
            cells = [c.replace(".", ",") for c in cells]
        out.append(separator.join(cells))
    return end.join(out) + end


def clock(i: int, mark: str = ".", digits: int = 3, start: datetime.datetime = START) -> str:
    now = start + datetime.timedelta(seconds=float(TIME_S[i]))
    return f"{now:%H:%M:%S}{mark}{now.microsecond // 10 ** (6 - digits):0{digits}d}"


# --- encodings, line ends ---------------------------------------------------------------------------------------------

HEAD = "time_s,torque_Nm\n"
kind("plain")(lambda: HEAD + rows())
kind("UTF-16 little-endian with its mark")(lambda: (HEAD + rows()).encode("utf-16"))
kind("UTF-16 big-endian with its mark")(lambda: b"\xfe\xff" + (HEAD + rows()).encode("utf-16-be"))
kind("UTF-16 without its mark")(lambda: (HEAD + rows()).encode("utf-16-le"))
kind("UTF-8 with its mark")(lambda: b"\xef\xbb\xbf" + (HEAD + rows()).encode())
kind("Windows-1252 headings")(
    lambda: ("Zeit [s];Drehmoment [N·m];Winkel [°]\n" + rows(";", more=lambda i: ("0.5",))).encode("cp1252")
)
kind("line ends of old machines")(lambda: (HEAD + rows()).replace("\n", "\r"))
kind("line ends of Windows")(lambda: (HEAD + rows()).replace("\n", "\r\n"))
kind("padded with zero bytes")(lambda: (HEAD + rows()).encode() + b"\x00" * 512)
kind("last line cut short", told="cut short", torque=TORQUE_NM, time_s=TIME_S)(lambda: HEAD + rows() + "4.00,0.")
kind("packed with gzip", ending="csv.gz")(lambda: __import__("gzip").compress((HEAD + rows()).encode()))

# --- above and below the table ----------------------------------------------------------------------------------------

ABOVE = "Bench protocol\nOperator: A\nDate;2026-05-01\nSerial no.: 4711\n\n"
kind("lines of metadata")(lambda: ABOVE + HEAD + rows())
kind("metadata with figures")(lambda: "Capacity,200\nSerial,4711\nOffset,0.02\n\nTime (s),Torque (Nm)\n" + rows())
kind("metadata as comments")(lambda: "# operator: A\n# rate: 100 Hz\n" + HEAD + rows())
kind("heading in a comment")(lambda: "# time_s, torque_Nm\n" + rows(", "))
kind("comments of another kind")(lambda: "% made by a script\n" + HEAD + rows())
kind("a row of units")(lambda: "Time,Torque\ns,Nm\n" + rows())
kind("a row of units in brackets", unit="lbf·ft", torque=np.round(TORQUE_NM / LBF_FT, 3))(
    lambda: (
        "Time;Torque;Angle\n[s];[lbf·ft];[°]\n"
        + rows(";", torque=lambda i: f"{TORQUE_NM[i] / LBF_FT:.3f}", more=lambda i: (f"{ANGLE_DEG[i]}",))
    )
)
kind("metadata, headings and a row of units", time_off=0.0006)(
    lambda: ABOVE + "Time;Torque\nms;N.m\n" + rows(";", time=lambda i: f"{TIME_S[i] * 1000:.0f}")
)
kind("sep= in the first line")(lambda: "sep=;\n" + HEAD.replace(",", ";") + rows(";"))
kind("summary rows at the end", told="excluded")(lambda: HEAD + rows() + "\nMax,41.253\nMean,20.5\nOK,\n")
kind("a summary in words at the end", told="excluded")(lambda: HEAD + rows() + "End of record\nResult: PASS\n")
kind("the heading once more in the middle", told="excluded")(
    lambda: HEAD + "".join((HEAD if i == 200 else "") + f"{TIME_S[i]:.3f},{TORQUE_NM[i]:.3f}\n" for i in range(N))
)
kind("separators at the ends of lines")(lambda: "time_s,torque_Nm,\n" + rows(",", more=lambda i: ("",)))
kind("an unnamed first column of numbers")(
    lambda: ",time_s,torque_Nm\n" + "".join(f"{i},{TIME_S[i]:.3f},{TORQUE_NM[i]:.3f}\n" for i in range(N))
)
kind("all in quotes")(
    lambda: '"Time (s)","Torque (Nm)"\n' + rows('","').replace("\n", '"\n"').rstrip('"').join(['"', ""])
)
kind("blank lines between")(lambda: HEAD + rows(end="\n\n"))

# --- separators -------------------------------------------------------------------------------------------------------

kind("tabs")(lambda: "Time [s]\tTorque [Nm]\n" + rows("\t"))
kind("semicolons")(lambda: "Time [s];Torque [Nm]\n" + rows(";"))
kind("bars")(lambda: "Time [s]|Torque [Nm]\n" + rows("|"))
kind("a table drawn with bars")(
    lambda: (
        "| Time [s] | Torque [Nm] |\n|---|---|\n"
        + "".join(f"| {TIME_S[i]:.3f} | {TORQUE_NM[i]:.3f} |\n" for i in range(N))
    )
)
kind("blanks, set right")(
    lambda: "   Time [s]   Torque [Nm]\n" + "".join(f"{TIME_S[i]:11.3f}{TORQUE_NM[i]:14.3f}\n" for i in range(N))
)
kind("single blanks", ending="txt")(lambda: "time_s torque_Nm\n" + rows(" "))

# --- headings ---------------------------------------------------------------------------------------------------------

for _name, _head in {
    "German": "Zeit (s);Drehmoment (Nm)",
    "German, as a quotient": "t / s;M / N·m",
    "German, in words": "Zeit in s;Drehmoment in Nm",
    "French": "Temps (s);Couple (N.m)",
    "Spanish": "Tiempo [s];Par [N·m]",
    "Italian": "Tempo [s];Coppia [Nm]",
    "Elapsed Time": "Elapsed Time (s);Torque (Nm)",
    "timestamp": "timestamp_s;torque_nm",
    "upper case": "TIME(S);TORQUE(NM)",
    "channels": "Zeit [s];Kanal 1 [Nm]",
    "unit after a comma": "Time, s;Torque, Nm",
}.items():
    kind(f"headings: {_name}")(lambda head=_head: head + "\n" + rows(";"))
kind("heading: daN·m", unit="daN·m", torque=np.round(TORQUE_NM / 10, 4))(
    lambda: "Temps (s);Couple (daN·m)\n" + rows(";", torque=lambda i: f"{TORQUE_NM[i] / 10:.4f}")
)
kind("heading: in-lb", unit="lbf·in", torque=np.round(TORQUE_NM * 12 / LBF_FT, 2))(
    lambda: "Time (sec),Torque (in-lb)\n" + rows(torque=lambda i: f"{TORQUE_NM[i] * 12 / LBF_FT:.2f}")
)
kind("no heading", asks=("unit",), answers={"unit": "Nm"})(lambda: rows())
kind("no heading, three columns", asks=("torque", "unit"), answers={"unit": "Nm", "torque": "column 2"})(
    lambda: rows(more=lambda i: (f"{20 + i / 1000:.2f}",))
)
kind("headings without units", asks=("unit",), answers={"unit": "Nm"}, told="read as seconds")(
    lambda: "Time,Torque\n" + rows()
)
kind(
    "headings that say nothing",
    asks=("torque", "unit", "rate_hz"),
    answers={"unit": "Nm", "torque": "B", "time": "A", "time_unit": "s"},
)(lambda: "A,B,C\n" + rows(more=lambda i: ("1.5",)))
kind("unit above the table")(lambda: "Unit: Nm\nTime (s),Value\n" + rows())
kind("a column of units", unit="N·m")(lambda: "Time (s),Torque,Unit\n" + rows(more=lambda i: ("Nm",)))
kind("units in the cells")(
    lambda: "Time,Torque\n" + rows(torque=lambda i: f"{TORQUE_NM[i]:.3f} Nm", time=lambda i: f"{TIME_S[i]:.3f}")
)
kind("units of time in the cells")(lambda: "Time,Torque (Nm)\n" + rows(time=lambda i: f"{TIME_S[i] * 1000:.0f} ms"))
kind("units in the cells that change", told="changes its unit")(
    lambda: (
        "Time (s),Torque\n"
        + rows(
            torque=lambda i: f"{TORQUE_NM[i]:.3f} Nm" if abs(TORQUE_NM[i]) >= 1 else f"{TORQUE_NM[i] * 1000:.0f} mNm"
        )
    )
)
kind("peak beside the torque")(
    lambda: "Time (s),Torque (Nm),Peak torque (Nm)\n" + rows(more=lambda i: (f"{TORQUE_NM[: i + 1].max():.3f}",))
)
kind("peak before the torque")(
    lambda: (
        "Time (s);Spitzenwert (Nm);Istwert (Nm)\n"
        + "".join(f"{TIME_S[i]:.3f};{TORQUE_NM[: i + 1].max():.3f};{TORQUE_NM[i]:.3f}\n" for i in range(N))
    )
)
kind("two torques", asks=("torque",), answers={"torque": "Torque B (Nm)"})(
    lambda: (
        "Time (s),Torque A (Nm),Torque B (Nm)\n"
        + "".join(f"{TIME_S[i]:.3f},{TORQUE_NM[i] / 2:.3f},{TORQUE_NM[i]:.3f}\n" for i in range(N))
    )
)
kind("two columns of one name", asks=("torque",), answers={"torque": "column 3"})(
    lambda: (
        "Time (s),Torque (Nm),Torque (Nm)\n"
        + "".join(f"{TIME_S[i]:.3f},{TORQUE_NM[i] / 2:.3f},{TORQUE_NM[i]:.3f}\n" for i in range(N))
    )
)
kind("the same in two units", unit="N·m")(
    lambda: "Time (s),Torque (Nm),Torque (lbf·ft)\n" + rows(more=lambda i: (f"{TORQUE_NM[i] / LBF_FT:.3f}",))
)
kind("temperature, speed and status beside it")(
    lambda: (
        "Time (s),Temp (°C),Speed (rpm),Torque (Nm),Status\n"
        + "".join(f"{TIME_S[i]:.3f},21.5,{i % 7},{TORQUE_NM[i]:.3f},OK\n" for i in range(N))
    )
)
kind(
    "direction beside torques without a sign",
    torque=np.where(TIME_S < 2, np.abs(TORQUE_NM), -np.abs(TORQUE_NM)),
    told="sign",
)(
    lambda: (
        "Time (s),Torque (Nm),Direction\n"
        + rows(torque=lambda i: f"{abs(TORQUE_NM[i]):.3f}", more=lambda i: ("CW" if TIME_S[i] < 2 else "CCW",))
    )
)

# --- times ------------------------------------------------------------------------------------------------------------

kind("milliseconds")(lambda: "Time (ms),Torque (Nm)\n" + rows(time=lambda i: f"{TIME_S[i] * 1000:.0f}"))
kind("microseconds")(lambda: "time_us,torque_Nm\n" + rows(time=lambda i: f"{TIME_S[i] * 1e6:.0f}"))
kind("minutes", time_off=0.001)(lambda: "Time [min],Torque [Nm]\n" + rows(time=lambda i: f"{TIME_S[i] / 60:.6f}"))
kind("clock times")(lambda: "Time,Torque (Nm)\n" + rows(time=clock))
kind("clock times with a comma")(
    lambda: "Uhrzeit;Drehmoment (Nm)\n" + rows(";", comma=True, time=lambda i: clock(i, ","))
)
kind("clock times over midnight")(lambda: "Time,Torque (Nm)\n" + rows(time=lambda i: clock(i, start=LATE)))
kind("clock times of twelve hours")(
    lambda: "Time,Torque (Nm)\n" + rows(time=lambda i: clock(i, start=NOON) + (" AM" if i < 200 else " PM"))
)
kind("minutes and seconds")(
    lambda: "Time,Torque (Nm)\n" + rows(time=lambda i: f"{int(TIME_S[i] // 60):02d}:{TIME_S[i] % 60:06.3f}")
)
kind("ISO times")(lambda: "timestamp,torque_Nm\n" + rows(time=lambda i: "2026-05-01T" + clock(i)))
kind("ISO times with a zone")(
    lambda: "timestamp,torque_Nm\n" + rows(time=lambda i: "2026-05-01T" + clock(i) + "+02:00")
)
kind("ISO times in UTC, a blank between")(
    lambda: "timestamp;torque_Nm\n" + rows(";", time=lambda i: "2026-05-01 " + clock(i, digits=6) + "Z")
)
kind("date and time in one, German")(
    lambda: (
        "Datum/Uhrzeit;Drehmoment [Nm]\n"
        + rows(";", comma=True, time=lambda i: "01§05§2026 ".replace("§", "/") + clock(i, ",")).replace("/", ".")
    )
)
kind("US dates")(lambda: "Date/Time,Torque (Nm)\n" + rows(time=lambda i: "5/1/2026 " + clock(i) + " AM"))
kind("US dates over midnight")(
    lambda: (
        "Date/Time,Torque (Nm)\n"
        + rows(time=lambda i: f"{LATE + datetime.timedelta(seconds=float(TIME_S[i])):%m/%d/%Y %I:%M:%S.%f %p}")
    )
)
kind("date and time columns")(
    lambda: "Date,Time,Torque (Nm)\n" + "".join(f"2026-05-01,{clock(i)},{TORQUE_NM[i]:.3f}\n" for i in range(N))
)
kind("date and time columns over midnight")(
    lambda: (
        "Datum;Uhrzeit;Drehmoment (Nm)\n"
        + "".join(
            f"{MAY_31 + datetime.timedelta(seconds=float(TIME_S[i])):%d.%m.%Y;%H:%M:%S.%f};{TORQUE_NM[i]:.3f}\n"
            for i in range(N)
        )
    )
)
kind("a spreadsheet's days", time_off=0.002)(
    lambda: "Time,Torque (Nm)\n" + rows(time=lambda i: f"{46143.4166666667 + TIME_S[i] / 86400:.10f}")
)
kind("seconds since 1970")(lambda: "timestamp,torque_Nm\n" + rows(time=lambda i: f"{1777622400 + TIME_S[i]:.3f}"))
kind("milliseconds since 1970")(
    lambda: "timestamp,torque_Nm\n" + rows(time=lambda i: f"{1777622400000 + TIME_S[i] * 1000:.0f}")
)
kind("sample numbers", asks=("rate_hz",), answers={"rate_hz": 100.0})(
    lambda: "Sample,Torque (Nm)\n" + rows(time=lambda i: str(i + 1))
)
kind("sample numbers, the rate above")(
    lambda: "Sample rate: 100 Hz\n\nSample,Torque (Nm)\n" + rows(time=lambda i: str(i))
)
kind("sample numbers named as the time", asks=("rate_hz",), answers={"rate_hz": 100.0})(
    lambda: "No.;Drehmoment [Nm]\n" + rows(";", time=lambda i: str(i + 1))
)
kind("no times, one column", asks=("rate_hz",), answers={"rate_hz": 100.0})(
    lambda: "Torque (Nm)\n" + "".join(f"{y:.3f}\n" for y in TORQUE_NM)
)
kind("no times, the interval above")(
    lambda: "Interval: 10 ms\nTorque (Nm)\n" + "".join(f"{y:.3f}\n" for y in TORQUE_NM)
)
kind("whole numbers without a unit", asks=("time_unit",), answers={"time_unit": "ms"})(
    lambda: "Time,Torque (Nm)\n" + rows(time=lambda i: f"{i * 10}")
)
kind(
    "a fraction of a day without a unit", asks=("time_unit",), answers={"time_unit": "d"}, time_off=0.002, time_s=TIME_S
)(lambda: "Time,Torque (Nm)\n" + rows(time=lambda i: f"{TIME_S[i] / 86400:.10f}"))
kind("time stamps that stand twice", time_s=np.arange(N) // 2 * 0.02)(
    lambda: HEAD + rows(time=lambda i: f"{i // 2 * 0.02:.2f}")
)
kind("the last reading first", told="from below")(
    lambda: HEAD + "".join(f"{TIME_S[i]:.3f},{TORQUE_NM[i]:.3f}\n" for i in reversed(range(N)))
)
kind("times before the trigger", time_s=TIME_S - 1)(lambda: HEAD + rows(time=lambda i: f"{TIME_S[i] - 1:.3f}"))

# --- figures ----------------------------------------------------------------------------------------------------------

kind("decimal commas and semicolons")(lambda: "Zeit [s];Drehmoment [Nm]\n" + rows(";", comma=True))
kind("decimal commas and tabs")(lambda: "Zeit [s]\tDrehmoment [Nm]\n" + rows("\t", comma=True))
kind("decimal commas in quotes")(
    lambda: (
        "Zeit [s],Drehmoment [Nm]\n"
        + "".join(f'"{TIME_S[i]:.3f}","{TORQUE_NM[i]:.3f}"\n'.replace(".", ",") for i in range(N))
    )
)
kind("decimal commas without quotes", refused="decimal comma")(
    lambda: "Zeit [s],Drehmoment [Nm]\n" + rows(",", comma=True)
)
MM = np.round(TORQUE_NM * 1000, 1)
kind("thousands in quotes", unit="N·mm", torque=MM)(
    lambda: "Time (s),Torque (Nmm)\n" + "".join(f'{TIME_S[i]:.3f},"{MM[i]:,.1f}"\n' for i in range(N))
)
kind("thousands with points", unit="N·mm", torque=MM)(
    lambda: (
        "Zeit (s);Drehmoment (Nmm)\n"
        + "".join(f"{TIME_S[i]:.2f};{MM[i]:,.1f}\n".translate(str.maketrans(",.", ".,")) for i in range(N))
    )
)
kind("thousands with blanks", unit="N·mm", torque=MM)(
    lambda: (
        "Temps (s);Couple (N·mm)\n"
        + "".join(f"{TIME_S[i]:.3f};{MM[i]:,.1f}\n".replace(",", "\u00a0").replace(".", ",") for i in range(N))
    )
)
kind("thousands with apostrophes", unit="N·mm", torque=MM)(
    lambda: (
        "Zeit (s);Drehmoment (Nmm)\n" + "".join(f"{TIME_S[i]:.3f};{MM[i]:,.1f}\n".replace(",", "'") for i in range(N))
    )
)
WHOLE = np.round(TORQUE_NM * 1000)
kind("thousands or decimals", unit="N·mm", torque=WHOLE, asks=("decimal",), answers={"decimal": "comma"})(
    lambda: (
        "Zeit (ms);Drehmoment (Nmm)\n"
        + "".join(f"{round(TIME_S[i] * 1000) % 1000000};{WHOLE[i]:,.0f}\n".replace(",", ".") for i in range(N))
    )
)
kind("a plus before figures")(lambda: HEAD + rows(torque=lambda i: f"{TORQUE_NM[i]:+.3f}"))
kind("a typographic minus", torque=-TORQUE_NM)(
    lambda: HEAD + rows(torque=lambda i: f"{-TORQUE_NM[i]:.3f}".replace("-", "\u2212"))
)
kind("powers of ten", torque=np.array([float(f"{y:.4E}") for y in TORQUE_NM]))(
    lambda: HEAD + rows(torque=lambda i: f"{TORQUE_NM[i]:.4E}")
)
OVER = np.where(TORQUE_NM > 40, np.nan, TORQUE_NM)
for _word in ("OL", "+OL", "OVER", "> 40.0", "inf", "9.9E37"):
    kind(f"overloads: {_word}", torque=OVER, told="overload")(
        lambda word=_word: HEAD + rows(torque=lambda i: word if TORQUE_NM[i] > 40 else f"{TORQUE_NM[i]:.3f}")
    )
GONE = np.where(np.arange(N) % 50 == 7, np.nan, TORQUE_NM)
for _word in ("---", "#N/A", "", "NaN", "n/a", "-"):
    kind(f"missing: '{_word}'", torque=GONE, told="empty or dashes")(
        lambda word=_word: HEAD + rows(torque=lambda i: word if i % 50 == 7 else f"{TORQUE_NM[i]:.3f}")
    )
kind("raw counts", asks=("unit",), answers={"unit": "0.0001 N·m per count"}, torque=np.round(TORQUE_NM, 4))(
    lambda: "Time (s),Torque (counts)\n" + rows(torque=lambda i: f"{round(TORQUE_NM[i] * 1e4)}")
)
kind("mV/V", asks=("unit",), answers={"unit": "100 N·m per mV/V"}, torque=np.round(TORQUE_NM, 3))(
    lambda: "Time (s),Signal (mV/V)\n" + rows(torque=lambda i: f"{TORQUE_NM[i] / 100:.5f}")
)
kind("an unknown unit", refused="no torque unit")(lambda: "time_s,torque_furlong\n" + rows())

# --- force ------------------------------------------------------------------------------------------------------------

kind("force in newtons", unit="N", torque=np.array([float(f"{y / 0.4:.2f}") for y in TORQUE_NM]))(
    lambda: "Time (s),Force (N)\n" + rows(torque=lambda i: f"{TORQUE_NM[i] / 0.4:.2f}")
)
kind("a scale in kilograms", unit="kgf", torque=np.round(TORQUE_NM / 0.4 / 9.80665, 3))(
    lambda: "Zeit (s);Gewicht (kg)\n" + rows(";", torque=lambda i: f"{TORQUE_NM[i] / 0.4 / 9.80665:.3f}")
)
kind("a load cell in pounds", unit="lbf", torque=np.round(TORQUE_NM / 0.4 / 4.4482216, 3))(
    lambda: "Time (s),Load (lb)\n" + rows(torque=lambda i: f"{TORQUE_NM[i] / 0.4 / 4.4482216:.3f}")
)

# --- other files ------------------------------------------------------------------------------------------------------


def workbook(sheets: dict[str, list[list[object]]]) -> bytes:
    import xlsxwriter

    out = io.BytesIO()
    book = xlsxwriter.Workbook(out, {"in_memory": True, "default_date_format": "hh:mm:ss.000"})
    for name, table in sheets.items():
        sheet = book.add_worksheet(name)
        for at, row in enumerate(table):
            sheet.write_row(at, 0, row)
    book.close()
    return out.getvalue()


FIGURES = [[float(t), float(y)] for t, y in zip(TIME_S, TORQUE_NM, strict=True)]
kind("a workbook", ending="xlsx")(lambda: workbook({"Data": [["Time (s)", "Torque (Nm)"], *FIGURES]}))
kind("a workbook with a title and units", ending="xlsx")(
    lambda: workbook(
        {
            "Notes": [["made in May"]],
            "Data": [["Bench"], [], ["Operator", "A"], ["Time", "Torque"], ["s", "Nm"], *FIGURES],
        }
    )
)
kind("a workbook with times of the day", ending="xlsx", time_off=0.002)(
    lambda: workbook(
        {"Data": [["Time", "Torque (Nm)"], *([START + datetime.timedelta(seconds=float(t)), y] for t, y in FIGURES)]}
    )
)
kind("a workbook with two traces", ending="xlsx", asks=("sheet",), answers={"sheet": "Second"})(
    lambda: workbook(
        {
            "First": [["Time (s)", "Torque (Nm)"], *([t, y / 2] for t, y in FIGURES)],
            "Second": [["Time (s)", "Torque (Nm)"], *FIGURES],
        }
    )
)
kind("a workbook with texts for figures", ending="xlsx")(
    lambda: workbook(
        {
            "Data": [
                ["Zeit (s)", "Drehmoment (Nm)"],
                *([f"{t:.3f}".replace(".", ","), f"{y:.3f}".replace(".", ",")] for t, y in FIGURES),
            ]
        }
    )
)


def parquet(columns: dict[str, object], units: dict[str, str] | None = None) -> bytes:
    import pyarrow as pa
    import pyarrow.parquet as pq

    table = pa.table(columns)
    if units:
        fields = [f.with_metadata({"unit": units[f.name]}) if f.name in units else f for f in table.schema]
        table = table.cast(pa.schema(fields))
    out = io.BytesIO()
    pq.write_table(table, out)
    return out.getvalue()


kind("Parquet", ending="parquet")(lambda: parquet({"time_s": TIME_S, "torque_Nm": TORQUE_NM}))
kind("Parquet with time stamps", ending="parquet")(
    lambda: parquet(
        {
            "timestamp": np.datetime64("2026-05-01T10:00:00", "ns") + (TIME_S * 1e9).round().astype("timedelta64[ns]"),
            "torque_Nm": TORQUE_NM,
        }
    )
)
kind("Parquet with units at its columns", ending="parquet")(
    lambda: parquet({"time": TIME_S, "torque": TORQUE_NM}, {"time": "s", "torque": "Nm"})
)
kind("JSON records", ending="json")(lambda: json.dumps([{"time_s": t, "torque_Nm": y} for t, y in FIGURES]))
kind("JSON columns", ending="json")(lambda: json.dumps({"time_s": TIME_S.tolist(), "torque_Nm": TORQUE_NM.tolist()}))
kind("JSON with a table inside", ending="json")(
    lambda: json.dumps({"device": "gauge", "unit": "Nm", "data": [{"t": t, "value": y} for t, y in FIGURES]})
)
kind("JSON names and rows", ending="json")(lambda: json.dumps({"columns": ["time_s", "torque_Nm"], "data": FIGURES}))
kind("JSON lines", ending="jsonl")(
    lambda: "".join(json.dumps({"ts": START.isoformat(), "t_s": t, "torque_nm": y}) + "\n" for t, y in FIGURES)
)
kind("JSON channels", ending="json")(
    lambda: json.dumps(
        {
            "channels": [
                {"name": "Time", "unit": "s", "data": TIME_S.tolist()},
                {"name": "Torque", "unit": "Nm", "data": TORQUE_NM.tolist()},
            ]
        }
    )
)
kind("rows for columns")(
    lambda: (
        "Time (s),"
        + ",".join(f"{t:.3f}" for t in TIME_S)
        + "\nTorque (Nm),"
        + ",".join(f"{y:.3f}" for y in TORQUE_NM)
        + "\n"
    )
)
