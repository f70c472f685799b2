"""Fuzzing guided by coverage: ``make fuzz``, or ``python -m tests.faults.guided --seconds 60 frames``.

Every target of the fuzzing by chance is driven by bytes instead: its source of chance takes them from the fuzzer, so
the fuzzer learns which choices reach new branches of ours, and the targets' own checks say what is wrong. Inputs that a
target makes by mutation may also be the fuzzer's bytes as they are. What reached something new is kept in
``tests/faults/corpus``, and played again by the tests; a finding is an input there that fails.
"""

from __future__ import annotations

import argparse
import base64
import os
import random
import re
import subprocess
import sys
import tempfile
import warnings
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from logger.errors import HeldwheelError
from tests.faults import mutate

if TYPE_CHECKING:
    from tests.faults.fuzz import Target

CORPUS = Path(__file__).parent / "corpus"
KEPT, KEPT_BYTES = 24, 500  # inputs a target, and bytes of each
CHOICES = 48  # bytes of choices ahead of an input that is taken as it is
FUZZER = (
    "-max_len=3000",
    "-timeout=60",
    "-report_slow_units=60",
    "-rss_limit_mb=3000",
    "-print_final_stats=1",
    "-verbosity=0",
)


class Chosen(random.Random):
    """A source of chance that takes its choices from bytes; when they are used up, everything is nought.

    The first byte, if odd, says that all behind the choices is the next input itself.
    """

    def __init__(self, data: bytes) -> None:
        super().__init__(0)
        whole = bool(data) and data[0] % 2 == 1
        self._choices = memoryview(data[1 : 1 + CHOICES] if whole else data[1:])
        self._raw: bytes | None = data[1 + CHOICES :] if whole else None

    def raw(self) -> bytes | None:
        """Give the input that was given as it is; once."""
        raw, self._raw = self._raw, None
        return raw

    def getrandbits(self, k: int) -> int:
        count = (k + 7) // 8
        taken, self._choices = self._choices[:count], self._choices[count:]
        return int.from_bytes(bytes(taken).ljust(count, b"\0"), "big") >> (8 * count - k)

    def random(self) -> float:
        return self.getrandbits(16) / 65536  # fine enough for odds, and short for a fuzzer


def targets() -> dict[str, Target]:
    """Give all targets by their names."""
    from tests.faults.campaigns import TARGETS

    return {target.name: target for target in TARGETS}


def played(target: Target, data: bytes) -> str:
    """Run a target on these bytes, with whatever it raises but a refusal in words."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        try:
            return target.case(Chosen(data))
        except HeldwheelError as error:
            if not str(error).strip():
                raise ValueError("an error without text") from error
            return "refused"


def file_of(target: Target) -> Path:
    """Name the file of a target's corpus."""
    return CORPUS / (re.sub(r"[^a-z0-9]+", "-", target.name.lower()).strip("-") + ".txt")


def read_corpus(target: Target) -> list[bytes]:
    """Give the saved inputs of a target."""
    path = file_of(target)
    return [base64.b64decode(line) for line in path.read_text("ascii").split()] if path.exists() else []


def write_corpus(target: Target, inputs: Iterable[bytes]) -> int:
    """Save a small corpus: short and long ones of those the fuzzer kept, and of what is there already."""
    CORPUS.mkdir(exist_ok=True)
    lines = {base64.b64encode(data).decode("ascii") for data in inputs if 0 < len(data) <= KEPT_BYTES}
    ordered = sorted(lines, key=lambda line: (len(line), line))
    kept = [ordered[n * len(ordered) // KEPT] for n in range(KEPT)] if len(ordered) > KEPT else ordered
    file_of(target).write_text("".join(f"{line}\n" for line in kept), "ascii")
    return len(kept)


def first_inputs(target: Target) -> list[bytes]:
    """Give inputs to begin with: chance, and what the target itself makes by mutation."""
    made: list[bytes] = []
    own = mutate.mutated
    modules = [m for m in sys.modules.values() if getattr(m, "mutated", None) is own and m is not mutate]

    def watched(rng: random.Random, *words: object) -> bytes:
        made.append(own(rng, *words))  # type: ignore[arg-type]
        return made[-1]

    rng = random.Random(target.name)
    for module in modules:
        module.mutated = watched  # type: ignore[attr-defined]
    try:
        for _ in range(20):
            try:
                target.case(rng)
            except HeldwheelError:
                continue
    finally:
        for module in modules:
            module.mutated = own  # type: ignore[attr-defined]
    whole = [b"\x01" + rng.randbytes(CHOICES) + data[:2000] for data in made]
    return [*whole, *(b"\x00" + rng.randbytes(n) for n in (8, 32, 128, 512))]


def fuzz_one(name: str, folder: Path, seconds: int) -> None:
    """Fuzz one target in this process; the fuzzer ends the process itself."""
    import atheris

    with atheris.instrument_imports(include=["logger", "analysis", "gui"]):
        target = targets()[name]
        for data in first_inputs(target)[-1:]:
            played(target, data)  # imports that happen late
    for number, data in enumerate([*read_corpus(target), *first_inputs(target)]):
        (folder / f"first-{number}").write_bytes(data)
    words = [f"-max_total_time={seconds}", f"-artifact_prefix={folder.parent}/found-", *FUZZER, str(folder)]
    atheris.Setup([sys.argv[0], *words], lambda data: played(target, data) and None)
    atheris.Fuzz()


def fuzz(target: Target, seconds: int, *, keep: bool) -> bool:
    """Fuzz one target in a process of its own; tell whether nothing was found."""
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made) / "corpus"
        folder.mkdir()
        words = [
            sys.executable,
            "-m",
            "tests.faults.guided",
            "--one",
            str(folder),
            "--seconds",
            str(seconds),
            target.name,
        ]
        done = subprocess.run(words, capture_output=True, text=True, check=False)
        count = re.findall(r"number_of_executed_units:\s*(\d+)", done.stderr)
        found = list(Path(made).glob("found-*"))
        inputs = [path.read_bytes() for path in folder.iterdir() if not path.name.startswith("first-")]
        kept = write_corpus(target, [*read_corpus(target), *inputs]) if keep else 0
        print(f"{target.name}: {count[0] if count else '?'} cases, {len(inputs)} reached something new, {kept} kept")
        if done.returncode or found or not count:
            print(done.stderr[-3000:])
            for path in found:
                print(f"{target.name}: FOUND {base64.b64encode(path.read_bytes()).decode('ascii')}")
            return False
    return True


def main() -> int:
    """Fuzz the targets that are named, or all."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("target", nargs="*", help="default: all")
    parser.add_argument("--seconds", type=int, default=60, help="for each (default 60)")
    parser.add_argument("--keep", action="store_true", help="save what reached something new")
    parser.add_argument("--one", help=argparse.SUPPRESS)
    args = parser.parse_args()
    if args.one:
        fuzz_one(args.target[0], Path(args.one), args.seconds)
    known = targets()
    wanted = args.target or list(known)
    if unknown := [name for name in wanted if name not in known]:
        parser.error(f"no target {unknown[0]!r}; there are: {', '.join(known)}")
    sound = [fuzz(known[name], args.seconds, keep=args.keep) for name in wanted]
    print(f"{sum(sound)} of {len(sound)} targets: nothing found")
    return 0 if all(sound) else 1


if __name__ == "__main__":
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    sys.exit(main())
