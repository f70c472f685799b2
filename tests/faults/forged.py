"""Recordings changed by somebody who puts every check right but cannot, or does not, write another closing line."""

from __future__ import annotations

import re
import zlib

_BATCH = re.compile(rb"# batch rows=([0-9]+) crc32=[0-9A-F]{8}\n")


def forged(data: bytes, factor: float) -> bytes:
    """Multiply every torque of a recording, with the check of every batch made anew; its closing line stays."""
    parts, start = [], 0
    for found in _BATCH.finditer(data):
        body = data[start : found.start()]
        if int(found[1]):
            body = b"\n".join(_changed(line, factor) for line in body.split(b"\n"))
        parts += [body, b"# batch rows=%s crc32=%08X\n" % (found[1], zlib.crc32(body))]
        start = found.end()
    return b"".join([*parts, data[start:]])


def _changed(line: bytes, factor: float) -> bytes:
    cells = line.split(b",")
    if line.startswith(b"#") or len(cells) < 2 or not cells[1]:
        return line
    cells[1] = b"%.6g" % (float(cells[1]) * factor)
    return b",".join(cells)
