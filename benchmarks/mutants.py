"""Mutants of the code, drawn by seed: python benchmarks/mutants.py ROOM [--count N] [--seed N]

Each mutant is one small change: a comparison turned, plus for minus, a greatest for a least, a
number off, a condition denied, a term left out. The tests of its room run on a copy of the clone;
it is killed where one fails. ROOM is a folder or file, such as checks/sliding.py; the tests are
those of the same folder under tests/, unless --tests names others. Prints the score and what
survived. A mutant that ends in a crash of the import counts as not drawn.
"""

import argparse
import ast
import random
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
_TURNED = {
    **{ast.Lt: ast.GtE, ast.LtE: ast.Gt, ast.Gt: ast.LtE, ast.GtE: ast.Lt},
    **{ast.Eq: ast.NotEq, ast.NotEq: ast.Eq, ast.Is: ast.IsNot, ast.IsNot: ast.Is},
    **{ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult},
    **{ast.And: ast.Or, ast.Or: ast.And, ast.USub: ast.UAdd},
}
_NAMES = {
    **{"max": "min", "min": "max", "maximum": "minimum", "minimum": "maximum"},
    **{"argmax": "argmin", "argmin": "argmax", "any": "all", "all": "any"},
    **{"sin": "cos", "cos": "sin", "floor": "ceil", "ceil": "floor"},
}


def changes(tree: ast.AST) -> Iterator[tuple[int, str, ast.AST, str, object]]:
    """Yield each change that can be made: line, what, node, field, and its new value."""
    for node in ast.walk(tree):
        line = getattr(node, "lineno", 0)
        if isinstance(node, ast.Compare):
            turned = [_TURNED.get(type(op), type(op))() for op in node.ops]
            if any(type(a) is not type(b) for a, b in zip(turned, node.ops, strict=True)):
                yield line, "comparison turned", node, "ops", turned
        elif isinstance(node, ast.BinOp | ast.BoolOp | ast.UnaryOp) and type(node.op) in _TURNED:
            yield line, f"{type(node.op).__name__} turned", node, "op", _TURNED[type(node.op)]()
        elif isinstance(node, ast.Attribute) and node.attr in _NAMES:
            yield line, f"{_NAMES[node.attr]} for {node.attr}", node, "attr", _NAMES[node.attr]
        elif isinstance(node, ast.Name) and node.id in _NAMES:
            yield line, f"{_NAMES[node.id]} for {node.id}", node, "id", _NAMES[node.id]
        elif isinstance(node, ast.Constant) and type(node.value) in (int, float):
            yield line, f"{node.value} off", node, "value", node.value * 1.1 + 1
        elif isinstance(node, ast.If | ast.IfExp):
            denied = ast.UnaryOp(ast.Not(), node.test)
            yield line, "condition denied", node, "test", denied


def mutants(file: Path) -> list[tuple[int, str, str]]:
    """Return every mutant of a file: line, what was done, and the whole text."""
    text = file.read_text(encoding="utf-8")
    found: list[tuple[int, str, str]] = []
    for k in range(len(list(changes(ast.parse(text))))):
        tree = ast.parse(text)
        line, what, node, field, new = list(changes(tree))[k]
        setattr(node, field, new)
        found.append((line, what, ast.unparse(ast.fix_missing_locations(tree))))
    return found


def main() -> int:
    """Draw, run, print; return 1 where fewer than the asked share is killed."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("room")
    parser.add_argument("--tests", nargs="*")
    parser.add_argument("--count", type=int, default=20)
    parser.add_argument("--seed", type=int, default=14)
    parser.add_argument("--least", type=float, default=0.0, help="share that has to be killed")
    typed = parser.parse_args()
    here = ROOT / typed.room
    files = [here] if here.is_file() else sorted(here.rglob("*.py"))
    drawn = [(file, *one) for file in files for one in mutants(file)]
    random.Random(typed.seed).shuffle(drawn)
    folder = here if here.is_dir() else here.parent
    tests = typed.tests or [str(Path("tests") / folder.relative_to(ROOT))]
    with tempfile.TemporaryDirectory() as work:
        clone = Path(work) / "clone"
        ignore = shutil.ignore_patterns(".venv", ".git", "__pycache__", "*.egg-info", ".*_cache")
        shutil.copytree(ROOT, clone, ignore=ignore)
        alive = _run(clone, Path(work), drawn[: typed.count], tests)
    killed = min(typed.count, len(drawn)) - len(alive)
    tried = max(killed + len(alive), 1)
    print(f"{typed.room}: {killed} of {tried} killed, {100 * killed / tried:.0f} %")
    print(f"seed {typed.seed}, of {len(drawn)} there are; by {' '.join(tests)}")
    for name in alive:
        print(f"  survives: {name}")
    return int(killed / tried < typed.least)


def _run(clone: Path, work: Path, drawn: list, tests: list[str]) -> list[str]:
    """Return the mutants that no test killed, by place and what was done."""
    (work / "path").mkdir()
    (work / "path" / "yardfast").symlink_to(clone)  # the clone's root is the package
    environment = {"PYTHONPATH": str(work / "path"), "OPENBLAS_NUM_THREADS": "1", "PATH": ""}
    command = [sys.executable, "-m", "pytest", "-q", "-x", "-n0", "-p", "no:cacheprovider", *tests]
    alive: list[str] = []
    for file, line, what, text in drawn:
        place = clone / file.relative_to(ROOT)
        before = place.read_text(encoding="utf-8")
        place.write_text(text, encoding="utf-8")
        ran = subprocess.run(
            command, cwd=clone, env=environment, capture_output=True, check=False, timeout=1800
        )
        place.write_text(before, encoding="utf-8")
        if ran.returncode == 0:
            alive.append(f"{file.relative_to(ROOT)}:{line} {what}")
            print(f"  survives: {alive[-1]}", file=sys.stderr, flush=True)
    return alive


if __name__ == "__main__":
    sys.exit(main())
