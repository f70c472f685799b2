"""Recognise the type of a differential by what its wheels do, before its torque is judged.

Without answers it lists what to try and what may be seen. With them it names every type that fits, and says whether
a held-wheel torque means anything for it (exit code 0 if it does, 4 if not).

Before a wheel is turned: engine off and key away, car on stands, wheels on the floor chocked, brakes released.

    heldwheel-read type
    heldwheel-read type --brakes free --both-up same --one-held even --in-gear much
"""

from __future__ import annotations

import argparse
import json

from logger.edges.door import Exit


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    from analysis.identify.axle_type import QUESTIONS

    for question in QUESTIONS:
        parser.add_argument(f"--{question.key}", choices=list(question.answers), help=question.text)
    parser.add_argument("--json", action="store_true", help="print the reading as JSON")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.identify.axle_type import QUESTIONS, recognise
    from analysis.identify.functions import functions_of
    from logger.edges import console

    given = {question.key: getattr(args, question.key.replace("-", "_")) for question in QUESTIONS}
    seen = {key: answer for key, answer in given.items() if answer is not None}
    if not seen and not args.json:
        _list_questions()
        return Exit.OK
    reading = recognise(seen)
    functions = functions_of(reading.candidates)
    if args.json:
        console.say(json.dumps(reading.to_json() | {"functions": list(functions)}, ensure_ascii=False))
    else:
        console.say(reading.text)
        console.say("Fits: " + (", ".join(kind.value for kind in reading.candidates) or "nothing"))
        for kind, why in reading.excluded.items():
            console.say(f"  not {kind.value} ({why})")
        for caution in reading.cautions:
            console.say(caution)
        if functions:
            console.say("What such a unit is tried for instead, after the maker's manual:")
        for text in functions:
            console.say(f"  ☐ {text}")
    return Exit.OK if reading.judged else Exit.NOT_VALID


def _list_questions() -> None:
    from analysis.identify.axle_type import QUESTIONS
    from logger.edges import console

    console.say("Engine off, both driven wheels safely raised and chocked, brakes released. Try, and answer:")
    for question in QUESTIONS:
        console.say(f"\n--{question.key}  {question.text}")
        for answer, text in question.answers.items():
            console.say(f"    {answer:<10} {text}")
