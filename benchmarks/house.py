"""How heavy the house is: lines by room, names twice, what asks for a shape, circles, full folders.

    python benchmarks/house.py [--list twice|shapes|circles|sentences]

Printed, not enforced. A name is public where a module defines it at its top without an underscore;
``TYPE_CHECKING`` is no name of ours, and what the table of commands calls in each of their modules
is a face, told beside.
A place asks what shape a body has where it holds ``isinstance`` of a class of ``design/shapes``, or
matches one: a match counts once, however many cases it has. It is complete where no case takes all
others, so that the type checker names what a new shape needs; what asks for one of the few forms
(``design/shapes/forms.py``) is told beside. Modules are in a circle
where each leads to the other by imports.
A function takes the whole to make a sentence where a parameter is all that was found of a piece,
or what holds that in a field, and where what it returns is text alone; those that return the lines
of a screen are told beside.
"""

import argparse
import ast
import re
import sys
from collections import Counter, defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import TypeGuard

ROOT = Path(__file__).resolve().parent.parent
ROOMS = (
    *("units", "references", "materials", "design", "loads", "statics", "checks"),
    *("report", "page", "cli"),
)
FULL = 20
"""Files beyond which a folder is hard to find one's way in."""

LONG = 300


def main() -> None:
    """Print the counts, and what is asked for one by one."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument(
        "--list", choices=("twice", "shapes", "circles", "sentences"), action="append"
    )
    asked: list[str] = parser.parse_args().list or []
    trees = {path: ast.parse(path.read_text(encoding="utf-8")) for path in files()}
    for name, told in (
        ("lines", lines_by_room(trees)),
        ("twice", twice(trees)),
        ("shapes", dispatch(trees)),
        ("circles", circles(trees)),
        ("folders", folders(trees)),
        ("sentences", sentences(trees)),
    ):
        rows = list(told)
        print(rows[0])
        if name in asked or name in ("lines", "folders"):
            print("\n".join(f"  {row}" for row in rows[1:]))


def files() -> list[Path]:
    """Return the modules of all rooms."""
    return sorted(path for room in ROOMS for path in (ROOT / room).rglob("*.py"))


def _name(path: Path) -> str:
    return str(path.relative_to(ROOT))


def lines_by_room(trees: dict[Path, ast.Module]) -> Iterator[str]:
    """Yield how many lines and files each room has, with its longest file."""
    lines = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in trees}
    yield f"product: {sum(lines.values())} lines in {len(lines)} files"
    for room in ROOMS:
        own = {path: n for path, n in lines.items() if path.relative_to(ROOT).parts[0] == room}
        longest = max(own, key=lambda path: own[path])
        long = sum(n > LONG for n in own.values())
        yield (
            f"{room:<11}{sum(own.values()):>6} lines {len(own):>4} files, {long} of more than "
            f"{LONG} lines, longest {_name(longest)} ({own[longest]})"
        )
    tests = [
        len(p.read_text(encoding="utf-8").splitlines()) for p in (ROOT / "tests").rglob("*.py")
    ]
    yield f"{'tests':<11}{sum(tests):>6} lines {len(tests):>4} files"


def twice(trees: dict[Path, ast.Module]) -> Iterator[str]:
    """Yield the public names that stand in two modules or more, and where."""
    places: dict[str, list[str]] = defaultdict(list)
    for path, tree in trees.items():
        for name in dict.fromkeys(_defined(tree)):
            places[name].append(_name(path))
    several = {name: where for name, where in places.items() if len(where) > 1}
    faces = {name for name, where in several.items() if name == "run" and _commands(where)}
    found = {name: where for name, where in several.items() if name not in faces}
    yield (
        f"public names in two modules or more: {len(found)} of {len(places)}; "
        f"faces of several modules: {len(faces)}"
    )
    for name, where in sorted(found.items()):
        yield f"{name}: {', '.join(where)}"


def _commands(where: list[str]) -> bool:
    return all(Path(each).parent == Path("cli/commands") for each in where)


def _defined(tree: ast.Module) -> Iterator[str]:
    for node in tree.body:
        match node:
            case ast.FunctionDef(name=name) | ast.ClassDef(name=name):
                yield from () if name.startswith("_") else (name,)
            case ast.Assign(targets=[ast.Name(id="TYPE_CHECKING")]):
                pass
            case ast.Assign(targets=targets):
                names = [one for target in targets for one in ast.walk(target)]
                yield from (
                    one.id
                    for one in names
                    if isinstance(one, ast.Name) and not one.id.startswith("_")
                )
            case ast.AnnAssign(target=ast.Name(id=name)):
                yield from () if name.startswith("_") else (name,)
            case _:
                pass


def _shapes(trees: dict[Path, ast.Module]) -> set[str]:
    """Return the classes of ``design/shapes`` that say what a body is: each answers ``hulls``."""
    return {
        node.name
        for path, tree in trees.items()
        if path.parent == ROOT / "design" / "shapes"
        for node in tree.body
        if isinstance(node, ast.ClassDef)
        and node.name != "Shape"
        and any(isinstance(one, ast.FunctionDef) and one.name == "hulls" for one in node.body)
    }


def dispatch(trees: dict[Path, ast.Module]) -> Iterator[str]:
    """Yield the places that ask what shape a body has: file, line, how."""
    shapes, forms = _shapes(trees), _forms(trees)
    found = list(_asked(trees, shapes))
    by_form = list(_asked(trees, forms))
    in_files = len({where for where, _, _ in found})
    ends = sum(how == "match, complete" for _, _, how in found)
    yield (
        f"places that ask what shape a body has: {len(found)} in {in_files} files, "
        f"{ends} complete; which form: {len(by_form)}"
    )
    counts = Counter(where for where, _, _ in found)
    for where, count in counts.most_common():
        rows = sorted((line, how) for file, line, how in found if file == where)
        yield f"{where} {count}: {', '.join(f'{line} {how}' for line, how in rows)}"


def _forms(trees: dict[Path, ast.Module]) -> set[str]:
    """Return the classes of the module of forms, where there is one."""
    module = trees.get(ROOT / "design" / "shapes" / "forms.py")
    return (
        {node.name for node in module.body if isinstance(node, ast.ClassDef)} if module else set()
    )


def _asked(trees: dict[Path, ast.Module], kinds: set[str]) -> Iterator[tuple[str, int, str]]:
    for path, tree in trees.items():
        own = _imported_shapes(tree, kinds)
        for node in ast.walk(tree):
            how = _asks(node, own)
            if how:
                yield _name(path), getattr(node, "lineno", 0), how


def _imported_shapes(tree: ast.Module, shapes: set[str]) -> set[str]:
    """Return the names under which a module knows the shapes, and tuples of them."""
    own: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and "shapes" in (node.module or ""):
            own |= {each.asname or each.name for each in node.names if each.name in shapes}
    for node in tree.body:
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Tuple):
            inside = [one.id for one in ast.walk(node.value) if isinstance(one, ast.Name)]
            if any(one in own for one in inside):
                own |= {one.id for one in node.targets if isinstance(one, ast.Name)}
    return own


def _asks(node: ast.AST, own: set[str]) -> str:
    match node:
        case ast.Call(func=ast.Name(id="isinstance"), args=[_, kinds]):
            named = {one.id for one in ast.walk(kinds) if isinstance(one, ast.Name)}
            return "isinstance" if named & own else ""
        case ast.Match(cases=cases):
            classes = {
                one.cls.id
                for case in cases
                for one in ast.walk(case.pattern)
                if isinstance(one, ast.MatchClass) and isinstance(one.cls, ast.Name)
            }
            if not classes & own:
                return ""
            takes_all = any(
                isinstance(case.pattern, ast.MatchAs) and case.pattern.pattern is None
                for case in cases
            )
            return "match" if takes_all else "match, complete"
        case _:
            return ""


def circles(trees: dict[Path, ast.Module]) -> Iterator[str]:
    """Yield what leads back to itself by imports: rooms, folders within rooms, modules."""
    edges: dict[str, set[str]] = {}
    for path, tree in trees.items():
        edges[_name(path)] = {_name(to) for to in _imports(path, tree) if to in trees} - {
            _name(path)
        }
    folders: dict[str, set[str]] = defaultdict(set)
    for of, to in edges.items():
        here = str(Path(of).parent)
        folders[here] |= {str(Path(each).parent) for each in to} - {here}
    modules, parts = _knots(edges), _knots(folders)
    yield (
        f"circles: {len(modules)} of modules ({sum(map(len, modules))} in them), "
        f"{len(parts)} of folders ({sum(map(len, parts))} in them)"
    )
    for knot in (*parts, *modules):
        yield ", ".join(sorted(knot))


def _imports(path: Path, tree: ast.Module) -> Iterator[Path]:
    """Yield the modules that a module imports when it is imported itself."""
    waiting: list[ast.stmt] = list(tree.body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.If) and isinstance(node.test, ast.Name):
            continue  # what only the type checker reads
        if isinstance(node, ast.ImportFrom) and node.level:
            base = path.parent
            for _ in range(node.level - 1):
                base = base.parent
            base = base.joinpath(*(node.module or "").split(".")) if node.module else base
            for each in node.names:
                inner = base / f"{each.name}.py"
                yield inner if inner.exists() else base.with_suffix(".py")
                if not inner.exists() and (base / "__init__.py").exists():
                    yield base / "__init__.py"


def _knots(edges: dict[str, set[str]]) -> list[set[str]]:
    """Return the groups of which each leads to each other (Tarjan's strongly connected ones)."""
    index: dict[str, int] = {}
    low: dict[str, int] = {}
    stack: list[str] = []
    found: list[set[str]] = []

    def visit(of: str) -> None:
        index[of] = low[of] = len(index)
        stack.append(of)
        for to in edges.get(of, ()):
            if to not in index:
                visit(to)
                low[of] = min(low[of], low[to])
            elif to in stack:
                low[of] = min(low[of], index[to])
        if low[of] == index[of]:
            at = stack.index(of)
            knot = set(stack[at:])
            del stack[at:]
            if len(knot) > 1:
                found.append(knot)

    sys.setrecursionlimit(10_000)
    for of in edges:
        if of not in index:
            visit(of)
    return found


def folders(trees: dict[Path, ast.Module]) -> Iterator[str]:
    """Yield how many files each folder has, the fullest first, those that are too full."""
    counts = Counter(str(path.parent.relative_to(ROOT)) for path in trees)
    full = [(folder, count) for folder, count in counts.most_common() if count > FULL]
    yield f"folders: {len(counts)}, of more than {FULL} files {len(full)}"
    yield from (f"{folder:<22}{count:>4} files" for folder, count in full)


WHOLE = ("Examination", "AsOne", "Kept")
"""Classes that are all that was found of a piece."""

TEXT, LINES = "str", "Line"
_HOLDS_TEXT = {TEXT, LINES, "list", "tuple", "dict", "Mapping", "Sequence", "Iterator", "None"}


def sentences(trees: dict[Path, ast.Module]) -> Iterator[str]:
    """Yield the functions that take all that was found of a piece and return text alone."""
    said = {path: t for path, t in trees.items() if _name(path).startswith(("report", "cli"))}
    named = {
        each.id: _words(node.value)
        for tree in said.values()
        for node in tree.body
        if isinstance(node, ast.Assign)
        for each in node.targets
        if isinstance(each, ast.Name)
    }
    holders = {*WHOLE, *(one.name for tree in trees.values() for one in tree.body if _holds(one))}
    found = {TEXT: list[str](), LINES: list[str]()}
    for path, tree in said.items():
        for node in ast.walk(tree):
            if isinstance(node, ast.FunctionDef) and node.returns is not None:
                returns = _words(node.returns)
                returns = named.get(next(iter(returns)), returns) if len(returns) == 1 else returns
                takes = {one for arg in _arguments(node) for one in _words(arg.annotation)}
                if takes & holders and returns <= _HOLDS_TEXT and returns & {TEXT, LINES}:
                    what = LINES if LINES in returns else TEXT
                    found[what].append(f"{_name(path)} {node.name}")
    yield (
        f"functions that take the whole of a piece to make a sentence: {len(found[TEXT])}; "
        f"to make a screen: {len(found[LINES])}"
    )
    yield from (*found[TEXT], *found[LINES])


def _arguments(node: ast.FunctionDef) -> list[ast.arg]:
    return [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]


def _words(annotation: ast.AST | None) -> set[str]:
    return set() if annotation is None else set(re.findall(r"\w+", ast.unparse(annotation)))


def _holds(node: ast.stmt) -> TypeGuard[ast.ClassDef]:
    """Return whether a class has a field that is all that was found of a piece."""
    return isinstance(node, ast.ClassDef) and any(
        isinstance(one, ast.AnnAssign) and bool(_words(one.annotation) & {*WHOLE})
        for one in node.body
    )


if __name__ == "__main__":
    main()
