"""Chatter on the road: the level in a frequency band of a sound (WAV) or a table of acceleration from figure-eights.

    heldwheel-read chatter eights.wav
    heldwheel-read chatter after.wav --against before.wav --axle 43-11
    heldwheel-read chatter phone.csv --band 20-200Hz --out level.csv

Counts the stretches that stand out of the recording's own quiet background by 6 dB and by four standard deviations of
it, with their duration and share, and sets the chatter index of the same axle's pulls beside them (found by the tag on
their job card). This is no torque: there is no limit and no result.

The frequency band is 50 to 800 Hz for sound, 20 to 800 Hz for acceleration as far as its rate carries it (common
practice, no source). Levels are in dB re a full-scale sine, or dB re 1 µm/s².

Before and after: the same microphone at the same place, gain fixed, same ground and speed, warm oil; ten figure-eights
and a stretch without turning, 20 s and more.
"""

from __future__ import annotations

import argparse
import json

from logger.edges.door import Exit


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("file", metavar="FILE", help="WAV, or a table with a time and an acceleration (m/s², g)")
    parser.add_argument("--against", default="", metavar="FILE", help="the recording before, made alike")
    parser.add_argument("--band", default="", metavar="BAND", help="frequencies, 50-800Hz")
    parser.add_argument("--axle", default="", metavar="TAG", help="set this axle's chatter index beside it")
    parser.add_argument("--recordings", default="", metavar="FOLDER", help="where its pulls lie (beside FILE)")
    parser.add_argument("--out", metavar="FILE", help="write the level against time, .csv or .json")
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel chatter 1')")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.cautions import ROAD
    from analysis.rows.road import (
        CANNOT_TELL,
        NO_TORQUE,
        event_words,
        lines_of,
        parse_band,
        road_test,
        to_json,
        write_road,
    )
    from logger.edges import console

    test = road_test(args.file, args.against, parse_band(args.band), args.axle, args.recordings)
    if args.out:
        console.note(write_road(test, args.out))
    if args.json:
        console.say(json.dumps(to_json(test), ensure_ascii=False))
        return Exit.OK
    if test.any_simulated:
        console.say("SIMULATED DATA")
    console.say(NO_TORQUE)
    for line in lines_of(test):
        console.say(console.clean(line, 400))
    for at, event in enumerate(test.found.events, 1):
        console.say(f"  {event_words(at, event)}")
    for text in (*test.problems, *CANNOT_TELL):
        console.note(f"mind: {console.clean(text, 400)}")
    for text in ROAD:
        console.note(f"before driving: {text}")
    return Exit.OK
