"""A day of recording in accelerated time: what a second costs at its end, beside what it cost at its beginning.

``make torture`` records the whole day (86.4 million samples) and checks each; here an hour shows the figures.
"""

from __future__ import annotations

from tests.faults.soak import soaked

SECONDS = 3_600


def run() -> list[dict[str, object]]:
    """Give the rows for ``make bench``."""
    tally = soaked(SECONDS, 1_000)
    figures = tally.figures
    return [
        {
            "name": "an hour at 1 kHz: cost of a second in units of making its lines, last tenth beside first",
            "ours": f"{figures['last over first tenth']:.2f} x",
            "reference": "1 x",
            "ratio": figures["last over first tenth"],
            "target": "<= 1.25",
        },
        {
            "name": "... memory grown from the first tenth on",
            "ours": f"{figures['grown MB']:.1f} MB",
            "reference": f"{SECONDS * 1000 * 32 / 1e6:.0f} MB of samples",
            "ratio": figures["grown MB"],
            "target": "<= 30",
        },
        {
            "name": "... samples missing, twice or wrong",
            "ours": tally.failed,
            "reference": f"{tally.counts['samples']} samples",
            "ratio": float(tally.failed),
            "target": "= 0",
        },
        {
            "name": "... percent of one core, decoding, dating and writing, of real time",
            "ours": f"{figures['ms of CPU a second'] / 10:.3f} %",
            "reference": "100 %",
            "ratio": figures["ms of CPU a second"] / 10,
            "target": "<= 2",
        },
    ]
