"""Random and spoilt design files through every command: python benchmarks/hostile.py [COUNT]

    --seed N    where to begin; each number is one file, the same in every run
    --jobs N    processes, all cores unless said
    --spoilt    each file with scraps typed into it: mostly for the reader
    --level L   what each case is: ``commands`` (all of them on one file), ``reader`` (a file
                changed in its structure, read alone), ``quantities`` or ``drawings`` (a text)
    --minutes M stop after so many, at the last block of cases that was done

Wrong is: an exception, a warning, NaN or infinity in the JSON, a number on the screen as no
person writes it, more than 2 s of processor time or 500 MiB for one command, an exit status other
than 0, 1 or 2, or 2 without a word. Prints how many cases there were and, for each place in the
code, one seed and command to see it again with.
"""

import argparse
import io
import json
import math
import os
import random
import re
import resource
import signal
import sys
import tempfile
import time
import traceback
import warnings
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from contextlib import redirect_stderr, redirect_stdout
from itertools import repeat
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests" / "support"))

sys.path.insert(0, str(Path(__file__).parent))

import hostile_texts  # noqa: E402 - needs the path
from any_design import any_design  # noqa: E402

COMMANDS = (
    "check FILE",
    "check FILE --all --engineer",
    "check FILE --format json",
    "size FILE --format json",
    "draw FILE --text",
    "label FILE",
    "cuts FILE --format json",
    "compare FILE --format json",
)
DRAWN = (
    "draw FILE -o OUT.svg",
    "sheet FILE -o OUT.pdf --draft",
    "sheet FILE -o OUT.pdf --full --draft",
)
SECONDS, SLOWEST, MEBIBYTES = 2.0, 20, 500
BLOCK, ROUND = 200, 20
"""Texts alone are tried so many at a time, and so many times that before the clock is asked."""
SCRAPS = (
    "'",
    "[",
    "]]",
    "\0",
    "nan",
    "-0.0",
    "1e999",
    "'0 in'",
    "½",
    "= ",
    "\n",
    "\u202e",
    "[[part]]\n",
)


_ODD = re.compile(r"(?<![\w.])(-0(\.0+)?(?![\d./])|-?inf|nan|-?\d+(\.\d+)?e[+-]\d+)(?![\w])")
"""Numbers as no person writes them."""


class TooSlowError(BaseException):
    """One command took longer than anybody waits."""


def text_of(seed: int, spoilt: bool) -> str:
    """Return the file of a number."""
    text = any_design(seed)
    draw = random.Random(-seed - 1)
    for _ in range(draw.choice((1, 1, 2, 3)) if spoilt else 0):
        at = draw.randrange(len(text))
        text = text[:at] + draw.choice(SCRAPS) + text[at + draw.choice((0, 0, 1, 5)) :]
    return text


def tried(case: tuple[int, bool]) -> tuple[int, Counter[str], dict[str, str]]:
    """Return how many commands were run on one file, what came of it, and one example of each."""
    from yardfast.cli import main

    seed, spoilt = case
    found: Counter[str] = Counter()
    seen: dict[str, str] = {}
    commands = COMMANDS[:3] if spoilt else (*COMMANDS, *(DRAWN if seed % 10 == 0 else ()))
    with tempfile.TemporaryDirectory() as folder:
        os.chdir(folder)
        Path("piece.toml").write_text(text_of(seed, spoilt), encoding="utf-8", errors="replace")
        for command in commands:
            words = command.replace("FILE", "piece.toml").replace("OUT", f"out{len(found)}").split()
            for wrong in _wrong(main, words):
                found[wrong] += 1
                seen.setdefault(wrong, f"seed {seed}: {command}")
        os.chdir("/")
    return len(commands), found, seen


def one_alone(level: str, seed: int) -> list[str]:
    """Return what is wrong with how one text is read, without any command."""
    start = time.process_time()
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            told = LEVELS[level](seed)
    except Exception as error:
        return [_internal(error)]
    spent = time.process_time() - start
    return [*told, *([f"more than {SECONDS:.0f} s"] if spent > SECONDS else [])]


def _quantity(seed: int) -> list[str]:
    from yardfast.units import UnitError, read_dimension

    text, kind, signed = hostile_texts.quantity(seed)
    try:
        value = read_dimension(text, kind, signed=signed).value
    except UnitError as error:
        return [] if str(error).isprintable() else ["a message that is not to be printed"]
    wrong = [] if math.isfinite(value) else ["a quantity that is not finite"]
    return [*wrong, *(["a negative one unasked"] if value < 0.0 and not signed else [])]


def _drawing(seed: int) -> list[str]:
    from yardfast.checks.inputs import read_text
    from yardfast.design.faults import DesignError

    Path("outline.svg").write_text(hostile_texts.drawing(seed), encoding="utf-8", errors="replace")
    return _read_through(lambda: read_text(_FIGURE, "piece.toml"), DesignError)


def _file(seed: int) -> list[str]:
    from yardfast.checks.inputs import read_text
    from yardfast.design.faults import DesignError

    text = hostile_texts.changed(seed)
    return _read_through(lambda: read_text(text, "piece.toml"), DesignError)


def _read_through(read, refused) -> list[str]:
    try:
        read()
    except refused as error:
        lines = [fault.line or 0 for fault in error.faults]
        said = "".join(
            f"{one.found}{one.expected}{one.hint}{one.part}{one.key}" for one in error.faults
        )
        return [
            *(["no fault told"] if not error.faults else []),
            *(["faults out of order"] if lines != sorted(lines) else []),
            *(["a fault that is not to be printed"] if not said.isprintable() else []),
            *(
                ["a fault of a screen's length"]
                if any(len(f.found) > 60 for f in error.faults)
                else []
            ),
        ]
    return []


LEVELS = {"quantities": _quantity, "drawings": _drawing, "reader": _file}
_FIGURE = """[design]
name = 'figure'
units = 'metric'
[site]
method = 'forecast'
wind = '20 m/s'
exposure = 'C'
ground = 'sand'
[[part]]
name = 'figure'
shape = 'cutout'
outline = 'outline.svg'
height = '800 mm'
thickness = '18 mm'
material = 'softwood plywood'
"""


def block(level: str, seeds: range) -> tuple[int, Counter[str], dict[str, str]]:
    """Try so many texts alone, one after the other."""
    found: Counter[str] = Counter()
    seen: dict[str, str] = {}
    before = _memory()
    with tempfile.TemporaryDirectory() as folder:
        os.chdir(folder)
        for seed in seeds:
            for wrong in one_alone(level, seed):
                found[wrong] += 1
                seen.setdefault(wrong, f"seed {seed}: {level}")
        os.chdir("/")
    if _memory() - before > MEBIBYTES:
        found[f"more than {MEBIBYTES} MiB"] += 1
        seen.setdefault(f"more than {MEBIBYTES} MiB", f"seeds {seeds}: {level}")
    return len(seeds), found, seen


def _wrong(main, words: list[str]) -> list[str]:
    out, err, start, before = io.StringIO(), io.StringIO(), time.process_time(), _memory()
    wrong: list[str] = []
    signal.signal(signal.SIGPROF, _stop)
    signal.setitimer(signal.ITIMER_PROF, SLOWEST)
    try:
        with redirect_stdout(out), redirect_stderr(err), warnings.catch_warnings():
            warnings.simplefilter("error")
            status = main(words)
        if status not in (0, 1, 2) or (status == 2 and not err.getvalue()):
            wrong.append(f"status {status} without a word")
        if "--format" in words and status != 2:
            json.loads(out.getvalue(), parse_constant=_no_number)
        elif odd := _ODD.search(out.getvalue() + err.getvalue()):
            wrong.append(f"{odd[0]!r} on the screen: {words[0]}")
    except TooSlowError:
        wrong.append(f"stopped after {SLOWEST} s: {words[0]}")
    except Exception as error:
        wrong.append(_internal(error))
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0.0)
    spent = time.process_time() - start
    if spent > SECONDS and not wrong:
        wrong.append(f"more than {SECONDS:.0f} s: {words[0]}")
    if _memory() - before > MEBIBYTES:
        wrong.append(f"more than {MEBIBYTES} MiB: {words[0]}")
    return wrong


def _internal(error: Exception) -> str:
    places = traceback.extract_tb(error.__traceback__)
    own = [one for one in places if one.filename.startswith(str(ROOT)) and one.name != "one_alone"]
    own = [one for one in own if Path(one.filename).parent.name != "benchmarks"] or places
    place = f"{Path(own[-1].filename).name}:{own[-1].lineno} {own[-1].name}"
    return f"{type(error).__name__} at {place}: {str(error)[:80]}"


def _stop(signum: int, frame: object) -> None:
    raise TooSlowError


def _no_number(name: str) -> None:
    raise ValueError(f"{name} in the JSON")


def _memory() -> float:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0


def main() -> None:
    """Try them, side by side."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("count", nargs="?", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    parser.add_argument("--spoilt", action="store_true")
    parser.add_argument("--level", choices=("commands", *LEVELS), default="commands")
    parser.add_argument("--minutes", type=float, default=math.inf)
    typed = parser.parse_args()
    os.environ["YARDFAST_DEBUG"] = "1"
    start, cases, runs, total, examples = (
        time.perf_counter(),
        0,
        0,
        Counter[str](),
        dict[str, str](),
    )
    size = 1 if typed.level == "commands" else BLOCK
    seeds = range(typed.seed, typed.seed + typed.count)
    with ProcessPoolExecutor(typed.jobs) as pool:
        for at in range(0, typed.count, size * ROUND):
            some = [
                seeds[k : k + size] for k in range(at, at + size * ROUND, size) if k < typed.count
            ]
            if typed.level == "commands":
                ended = pool.map(tried, [(one[0], typed.spoilt) for one in some])
            else:
                ended = pool.map(block, repeat(typed.level), some)
            for each, (ran, found, seen) in zip(some, ended, strict=True):
                cases += len(each)
                runs += ran
                total += found
                for what in seen.keys() - examples.keys():
                    print(f"        {what}: {seen[what]}", file=sys.stderr, flush=True)
                examples = seen | examples
            if time.perf_counter() - start > 60.0 * typed.minutes:
                break
    spent = time.perf_counter() - start
    what = "files" if typed.level == "commands" else typed.level
    print(f"{cases:,} {what} from seed {typed.seed}, {runs:,} runs, {spent:.0f} s")
    for what, count in total.most_common():
        print(f"{count:6d}  {what}\n        {examples[what]}")
    if not total:
        print("        nothing wrong")


if __name__ == "__main__":
    main()
