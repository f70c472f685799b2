r"""List, show and copy the descriptions that come with the program; check one; say what each key means.

    heldwheel-log describe                            list them
    heldwheel-log describe show counted-text          print one
    heldwheel-log describe copy counted-text my.toml  begin your own from it
    heldwheel-log describe check my.toml              is it right, and what does it say? (also one sent to you)
    heldwheel-log describe keys                       every key: what it may hold, and what it means
    heldwheel-log describe keys lines                 the keys of one table, and an example

A description is one TOML file: to share it, send the file. Whatever it would have sent to a device is shown, and asked
about, before the first byte goes out.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from logger.edges.door import Exit

if TYPE_CHECKING:
    import argparse

    from logger.decoder.description import Description


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("what", nargs="?", default="list", choices=["list", "show", "copy", "check", "keys"])
    parser.add_argument("name", nargs="?", default="", help="a shipped description, a file, or a table of keys")
    parser.add_argument("to", nargs="?", default="", help="copy: the new file")
    parser.add_argument("--markdown", action="store_true", help="keys: the whole reference as a page")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    return {"list": _list, "show": _show, "copy": _copy, "check": _check, "keys": _keys}[args.what](args)


def _list(_args: argparse.Namespace) -> int:
    from logger.decoder.description import read_description, shipped
    from logger.edges.console import note, table

    rows = []
    for name in shipped():
        description = read_description(name)
        rows.append((name, description.link, layout_of(description), description.name))
    table(("name", "link", "layout", "what it is"), rows, title="Descriptions that come with the program")
    note("They are invented examples: copy the nearest, then compare with the transducer's own display.")
    return Exit.OK


def layout_of(description: Description) -> str:
    """Give the table that says how the readings are laid out."""
    from logger.decoder.description import LAYOUTS

    return next((kind for kind in LAYOUTS if getattr(description, kind) is not None), "by the standards")


def _text(name: str) -> str:
    from logger.decoder.description import read_description, shipped
    from logger.errors import InputError

    if not name:
        raise InputError("say which one; 'heldwheel-log describe' lists them")
    read_description(name)
    path = Path(name)
    return (path if path.exists() else shipped()[path.name]).read_text(encoding="utf-8-sig")


def _show(args: argparse.Namespace) -> int:
    from logger.edges.console import harmless, say

    say(harmless(_text(args.name)))
    return Exit.OK


def _copy(args: argparse.Namespace) -> int:
    from logger.edges.console import say
    from logger.errors import FileError, InputError

    if not args.to:
        raise InputError("say where to: heldwheel-log describe copy NAME FILE")
    text = _text(args.name)
    try:
        with Path(args.to).open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError as error:
        raise InputError(f"{args.to}: exists already; choose another name") from error
    except OSError as error:
        raise FileError(f"{args.to}: cannot be written: {error.strerror or error}") from error
    say(f"{args.to} is written; change it, then: heldwheel-log describe check {args.to}")
    return Exit.OK


def _check(args: argparse.Namespace) -> int:
    from logger.decoder.description import read_description
    from logger.edges.console import clean, say
    from logger.errors import InputError
    from logger.links.build import asks

    if not args.name:
        raise InputError("say which file")
    description = read_description(args.name)
    say(f"{args.name}: {clean(description.name)}")
    say(f"  measures   {description.measures}, in {description.unit}")
    say(f"  link       {description.link}; laid out as {layout_of(description)}")
    say(f"  sends      {clean(asks(description)) or 'nothing by itself'}")
    for name, command in description.commands.items():
        say(f"  command    {clean(name)}: {clean(command.does or command.send)} (only with --send, after you confirm)")
    if description.notes:
        say(f"  notes      {clean(description.notes)}")
    return Exit.OK


def _keys(args: argparse.Namespace) -> int:
    from logger.decoder.description_keys import EXAMPLES, example, markdown, tables
    from logger.edges.console import note, say, table
    from logger.errors import InputError

    if args.markdown:
        say(markdown())
        return Exit.OK
    wanted = args.name.strip("[]")
    found = [one for one in tables() if not wanted or one.name.strip("[]").split(".")[0] == wanted]
    if not found:
        names = sorted({one.name.strip("[]").split(".")[0] for one in tables()} - {"(the file)"})
        raise InputError(f"there is no table '{args.name}'; there are: {', '.join(names)}")
    for one in found:
        title = one.name if one.name.startswith("(") else f"[{one.name}]"
        rows = [(key.name, key.holds, key.default or "must be given", key.about) for key in one.keys]
        say(f"{title}  {one.about}")
        table(("key", "holds", "if not given", "meaning"), rows)
    if wanted in EXAMPLES:
        say(example(wanted))
    else:
        note(f"Examples: heldwheel-log describe keys {' | '.join(EXAMPLES)}")
    return Exit.OK
