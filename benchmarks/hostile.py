"""Random and spoilt design files through every command: python benchmarks/hostile.py [COUNT]

    --seed N    where to begin; each number is one file, the same in every run
    --jobs N    processes, all cores unless said
    --spoilt    each file with scraps typed into it: mostly for the reader

Wrong is: an exception, a warning, NaN or infinity in the JSON, a number on the screen as no
person writes it, more than 2 s of processor time or 500 MiB for one command, an exit status other
than 0, 1 or 2, or 2 without a word. Prints how many cases there were and, for each place in the
code, one seed and command to see it again with.
"""

import argparse
import io
import json
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
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests" / "support"))

from any_design import any_design  # noqa: E402 - needs the path

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
        places = traceback.extract_tb(error.__traceback__)
        own = [each for each in places if str(ROOT) in each.filename] or places
        place = f"{Path(own[-1].filename).name}:{own[-1].lineno} {own[-1].name}"
        wrong.append(f"{type(error).__name__} at {place}: {str(error)[:80]}")
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0.0)
    spent = time.process_time() - start
    if spent > SECONDS and not wrong:
        wrong.append(f"more than {SECONDS:.0f} s: {words[0]}")
    if _memory() - before > MEBIBYTES:
        wrong.append(f"more than {MEBIBYTES} MiB: {words[0]}")
    return wrong


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
    typed = parser.parse_args()
    os.environ["YARDFAST_DEBUG"] = "1"
    cases = [(seed, typed.spoilt) for seed in range(typed.seed, typed.seed + typed.count)]
    start, runs, total, examples = time.perf_counter(), 0, Counter[str](), dict[str, str]()
    with ProcessPoolExecutor(typed.jobs) as pool:
        for ran, found, seen in pool.map(tried, cases, chunksize=1):
            runs += ran
            total += found
            for what in seen.keys() - examples.keys():
                print(f"        {what}: {seen[what]}", file=sys.stderr, flush=True)
            examples = seen | examples
    spent = time.perf_counter() - start
    print(f"{typed.count} files from seed {typed.seed}, {runs} commands, {spent:.0f} s")
    for what, count in total.most_common():
        print(f"{count:6d}  {what}\n        {examples[what]}")
    if not total:
        print("        nothing wrong")


if __name__ == "__main__":
    main()
