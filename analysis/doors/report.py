"""Write the page that someone can sign, as HTML or PDF; or verify one.

    heldwheel-read report hill-07.csv --limit rear.limit.toml --out hill-07.pdf
    heldwheel-read report hill-07.csv --kind engineer --workshop "Hillfoot Workshop" --out hill-07.html
    heldwheel-read report hill-07.csv --both-free hill-07-free.csv --kind engineer --out hill-07.pdf
    heldwheel-read report hill-07-gear.csv --neutral hill-07-neutral.csv --limit "ratio >= 2.5" --source "club rules"
    heldwheel-read report hill-07.csv --language de --out hill-07.pdf
    heldwheel-read report hill-07.csv --confirmed-by hill-07-again.csv --kind engineer --out hill-07.pdf
    heldwheel-read report --verify hill-07.pdf --against hill-07.csv

An engineer's page shows the build that was in the axle, from <tag>.axle.toml beside the recording or --build-sheet, and
with --confirmed-by a second test, once that is signed: both results, their difference, whether they agree.
With --both-free, the drag baseline, the page shows the torque as read and the pack mean; a recording that names its
baseline needs no option. With --neutral, the half in neutral of a ratio limit, the page is of in gear ÷ neutral.
What the recording lacks (odometer, dates, site, photos ...) comes from its sidecar.

Verifying does the work again from the raw recording with the settings that the report carries, and compares hashes,
figures, result and page. It says apart what it computed from the recording and what is its issuer's word: customer,
dates, limit, lever, settings. Exit codes of --verify: 0 it holds, 1 it does not, 3 its figures hold but its page was
set by another version of the program and was not checked, 2 the report itself cannot be read.

    heldwheel-read report --new-key shop.key
    heldwheel-read report hill-07.csv --out hill-07.pdf --sign shop.key
    heldwheel-read report --verify hill-07.pdf --key shop.key.pub

A signature beside the page shows that whoever holds the private key issued exactly these bytes; not when, and not
that what they say is true. Keep the private key to yourself, and give the
fingerprint of the public one in person.

    heldwheel-read report hill-07.csv --out hill-07.pdf --stamp-request
    heldwheel-read report --verify hill-07.pdf --authority authority.pem

hill-07.pdf.tsq is a request for a time-stamp (RFC 3161). Send it to an authority of your choice; this program sends
nothing. Keep its reply beside the page as hill-07.pdf.tsr. It shows that these bytes existed at that time, by the word
of that authority; not who wrote them, when the wheel was turned, or that what they say is true.
"""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from analysis.doors.asking import add_reading_options, asked_of, keep_answers
from analysis.language.translator import LANGUAGES
from logger.edges.door import Exit

if TYPE_CHECKING:
    from collections.abc import Mapping

    from analysis.report.material import Material


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("recording", nargs="?", metavar="RECORDING", help="the recording")
    parser.add_argument("--out", metavar="PAGE", action="append", help="name.html or name.pdf; may be repeated")
    parser.add_argument("--kind", choices=("customer", "engineer"), default="customer", help="simple or full page")
    parser.add_argument("--paper", choices=("A4", "letter"), default="A4", help="what it is printed on (default A4)")
    parser.add_argument("--language", choices=tuple(LANGUAGES), default="en", help="of the page (default en)")
    parser.add_argument("--unit", help="torque unit of the page (default: the limit's, or the recording's)")
    parser.add_argument("--workshop", default="", help="workshop's name instead of the recording's")
    parser.add_argument("--address", default="", metavar="LINES", help="its address; '/' begins a new line")
    parser.add_argument("--remarks", default="", help="your own words on the page")
    parser.add_argument("--authorised", default="", metavar="NAME", help="who authorises the report")
    parser.add_argument("--both-free", metavar="FILE", help="the drag baseline: both wheels free, one turned")
    parser.add_argument("--build-sheet", metavar="FILE", help="the axle's sheet, if not beside RECORDING by its tag")
    parser.add_argument(
        "--confirmed-by", metavar="FILE", help="a signed second test, by another operator or transducer"
    )
    parser.add_argument(
        "--neutral", metavar="FILE", help="RECORDING is in gear, FILE in neutral: a page of their ratio"
    )
    parser.add_argument(
        "--revision", type=int, help="of this report (default 1, and one more for each decision since it was signed)"
    )
    parser.add_argument("--issued", metavar="TIME", help="time of issue, 2026-05-17T18:00+02:00 (default: now)")
    parser.add_argument("--verify", metavar="PAGE", help="verify this report instead of writing one")
    parser.add_argument(
        "--against", metavar="RECORDING", help="the recording for --verify, if not beside the page by its own name"
    )
    parser.add_argument("--sign", metavar="KEY", help="sign the page with this private key (Ed25519, PEM)")
    parser.add_argument(
        "--key", metavar="PUBLIC", help="for --verify: the workshop's public key, which must have signed"
    )
    parser.add_argument("--stamp-request", action="store_true", help="write PAGE.tsq: a request for a time-stamp")
    parser.add_argument(
        "--authority", metavar="PEM", help="for --verify: certificate of the authority, which must have replied"
    )
    parser.add_argument("--new-key", metavar="FILE", help="make a private key in FILE and its public key in FILE.pub")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.errors import InputError

    if args.new_key:
        return _new_key(args.new_key)
    if args.verify:
        return _verify(args)
    if not args.recording:
        raise InputError("say which recording: heldwheel-read report RECORDING --out page.pdf")
    return _write(args)


def _new_key(path: str) -> int:
    from analysis.report.signature import new_key
    from logger.edges import console

    public, fingerprint = new_key(path)
    console.say(f"{path}: private key; keep it to yourself. {public}: public key, fingerprint {fingerprint}")
    return Exit.OK


def _write(args: argparse.Namespace) -> int:
    from dataclasses import replace
    from datetime import datetime

    from analysis.doors.shown import exit_for
    from analysis.report.gather import read_material
    from analysis.report.material import Issue, PageKind, PaperSize
    from analysis.report.signature import sign
    from analysis.report.time_stamp import write_request
    from analysis.report.write import content_of, write_report
    from logger.edges import console
    from logger.errors import InputError
    from logger.recordings.photos import PhotoState, photo_state
    from logger.recordings.sidecar import read_sidecar, revision_of

    asked = replace(asked_of(args), both_free=_path(args.both_free), build_sheet=_path(args.build_sheet))
    material, reading = read_material(args.recording, asked, args.neutral, args.confirmed_by)
    if args.neutral is None:
        keep_answers([reading], asked)
    bounds = reading.bounds if args.neutral is None else None
    unit = bounds.written.unit if bounds is not None and bounds.written.unit != "1" else reading.unit
    try:
        issued = (
            datetime.fromisoformat(args.issued) if args.issued else datetime.now().astimezone().replace(microsecond=0)
        )
    except ValueError:
        raise InputError(f"--issued {args.issued}: write a time such as 2026-05-17T18:00+02:00") from None
    address = "\n".join(line.strip() for line in args.address.split("/"))
    unit = args.unit or unit
    revision = args.revision
    if revision is None:
        revision = max(revision_of(read_sidecar(half.file)) for half in material.halves)
    issue = Issue(
        issued,
        PageKind(args.kind),
        unit,
        args.workshop,
        address,
        revision,
        args.remarks,
        args.authorised,
        PaperSize(args.paper),
        language=args.language,
    )
    for file, photo in ((half.file, photo) for half in material.halves for photo in half.header.photos):
        state = photo_state(file, photo)
        if state is not PhotoState.SAME:
            console.note(f"photo {console.clean(photo.file, 80)}: {state}")
    content = content_of(material, issue)
    for out in args.out or [Path(args.recording).stem + ".html"]:
        console.say(f"{content.identity}  {write_report(content, out)}")
        if args.sign:
            console.say(f"signed: {sign(out, args.sign)}")
        if args.stamp_request:
            console.say(f"request for a time-stamp: {write_request(out)}; keep the reply beside the page as .tsr")
    if material.result is not None:
        console.say(material.result.words)
    return exit_for([material.result] if material.result is not None else [])


def _path(text: str | None) -> Path | None:
    return Path(text) if text else None


def _named(near: Path, said: object) -> Path | None:
    """Give the file that a record names, in the folder of another one."""
    from logger.edges.small_file import beside

    return beside(near, str(said.get("file", ""))) if isinstance(said, dict) else None


def _verify(args: argparse.Namespace) -> int:
    from dataclasses import replace

    from analysis.pipeline import hashes_of
    from analysis.report.gather import read_material
    from analysis.report.signature import check
    from analysis.report.time_stamp import check_stamp
    from analysis.report.verify import Holds, verify
    from logger.edges import console
    from logger.errors import InputError

    page = Path(args.verify)
    given = args.against or args.recording

    def read(record: Mapping[str, Any]) -> Material:
        from analysis.rows.summary import asked_from

        recording = Path(given) if given else _named(page, record.get("recording"))
        if recording is None:
            raise InputError("its record names no recording; name it with --against")
        both_free = _path(args.both_free) or _named(recording, record.get("both_free"))
        sheet = _path(args.build_sheet) or _named(recording, record.get("build"))
        asked = replace(asked_from(record.get("asked", {})), both_free=both_free, build_sheet=sheet)
        said = record.get("recording")
        if isinstance(said, dict) and said.get("sha256") not in hashes_of(recording, asked):
            raise InputError(f"{recording} is another recording than the report was made from: its SHA-256 differs")
        neutral = args.neutral or _named(recording, record.get("neutral"))
        if neutral is None and record.get("neutral") is not None:
            raise InputError("its record names no half in neutral; name it with --neutral")
        second = args.confirmed_by or _named(recording, record.get("confirmed_by"))
        if second is None and record.get("confirmed_by") is not None:
            raise InputError("its record names no second test; name it with --confirmed-by")
        return read_material(recording, asked, neutral, second)[0]

    found = verify(page, read)
    fits, signed = check(page, args.key)
    in_time, stamped = check_stamp(page, args.authority)
    holds = found.holds if fits and in_time else Holds.NO
    console.say(f"{console.clean(found.identity, 80)}: {holds.value}")
    for line in (*found.lines, signed, *((stamped,) if stamped else ())):
        console.say(f"  {console.clean(line, 400)}")
    for heading, said in (("computed from the recording", found.computed), ("its issuer's word", found.stated)):
        if said:
            console.say(f"{heading}:")
        for label, value in said:
            console.say(f"  {console.clean(label, 60)}: {console.clean(value, 400)}")
    return {Holds.YES: Exit.OK, Holds.FIGURES: Exit.TOO_CLOSE, Holds.NO: Exit.OUTSIDE}[holds]
