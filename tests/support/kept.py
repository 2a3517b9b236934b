"""Answers and screens as they were last looked at: python tests/support/kept.py writes them anew.

They say what changed, not what is right: what is right is held by tests with a source. After a
change that is meant, write them anew and read the difference, line by line, before it is kept.
"""

import contextlib
import io
import json
import os
import shlex
import sys
from hashlib import sha256
from math import isfinite
from pathlib import Path
from tempfile import TemporaryDirectory

from any_design import any_design
from garden import EXAMPLES, LONG
from joint_designs import TOWER, joint
from once_broken import ANSWERED, REFUSED
from seam_designs import seam
from slips import FILES
from verdict_designs import ALL

from yardfast.checks import examination
from yardfast.checks.inputs import read_text
from yardfast.cli import main
from yardfast.cli.starting.pieces import PIECE_KINDS
from yardfast.design.faults import DesignError
from yardfast.report.calculation.calculation import calculation_object
from yardfast.report.data.result import Result
from yardfast.report.printed.sheet import sheet_object

ROOT = Path(__file__).resolve().parent.parent.parent
FOLDER = ROOT / "tests" / "kept"
SEEDS = (5, 99, 192, 229, 255, 260, 305, 306, 333, 423, 427, 440, 445, 449, 565, 607, 618, 634, 698)
"""Of designs at random those that are answered soon: odd shapes and tables among them."""

ENDLESS = 12
"""Of a list of more numbers than that the least, the greatest and the mean are kept."""

DIGITS = 10

MOST_KEPT = 300
"""So many characters of a line are kept whole."""

GARDEN = {file.stem: file.read_text(encoding="utf-8") for file in EXAMPLES}
_LIGHT, _LAWN = GARDEN["light-tower"], "ground   = 'firm lawn'"
_FORECAST = (
    "method   = 'forecast'            # wind is a 3-second gust as forecasts and warnings state it"
)
_GUST = "wind     = '58 mph'              # a severe-thunderstorm warning starts here"
_OPEN = "exposure = 'open'                # the meadow behind the quay"


def _site(text, *lines):
    """The light tower's file with other lines in its site."""
    for old in (_FORECAST, _GUST, _OPEN, _LAWN):
        assert old in text
        text = text.replace(f"{old}\n", "")
    return text.replace("[site]\n", "\n".join(["[site]", *lines, ""]))


MADE = {
    "nails": TOWER + joint(),
    "blocks": TOWER + joint(fastener="#8 wood screw 2 1/2 in", count=8, blocks="redwood"),
    "cleat seam": TOWER + joint() + seam(),
    "nailed seam": TOWER + seam(fastener="8d common nail", spacing="6 in", cleat=None),
    "by Eurocodes": _site(
        _LIGHT, "method = 'EN 1991-1-4'", "wind = '24 m/s'", "terrain = 'II'", "ground = 'sand'"
    ),
    "by ASCE, people": _site(
        _LIGHT,
        *("method = 'ASCE 7-22'", "wind = '115 mph'", "exposure = 'C'", "ground = 'wet lawn'"),
        *("people = 'public'", "slope = '4 deg'"),
    ),
    "stakes and weight": _LIGHT
    + "\n[[anchor]]\nname = 'stakes'\nkind = 'screw anchor 30 in'\nwhere = 'feet'\n"
    "\n[[ballast]]\nname = 'bags'\nmass = '80 lb'\non = 'foot'\n"
    "\n[[load]]\nname = 'wreath'\nforce = '20 lb'\nat = ['0 in', '0 in', '40 in']\n"
    "direction = 'down'\n",
    "spread": _LIGHT + "\n[[odds]]\nname = 'friction'\nspread = 0.3\nshape = 'normal'\n",
}

_SHORT = ("check --all", "check --engineer", "cuts", "label --draft", "draw --text")
_OF_ONE = {
    "light-tower": (
        *("check", "check --numbers", "check --as-read", "check --assumed", "check --cautions"),
        *("check --explain overturning", "check --explain sliding", "cuts --count 3"),
        *("cuts --stakes", "odds --inputs"),
    ),
    "heron": ("check", "cuts --stakes", "check --explain overturning"),
    "mailbox": ("check",),
    "pinwheel": ("check",),
    "three-pieces": ("check", "cuts --stakes"),
    "head-light": ("check",),
    "fingerpost": ("check",),
    "well": ("check", "cuts --stakes"),
    "signpost": ("check", "cuts --count 2"),
    "swing": ("check", "check --explain joint"),
}
_WRITES = tuple(
    f"size --write {k}.toml --remedy '{way}'"
    for k, way in enumerate(("base width", "ballast", "anchors", "guys"))
)
_LONGER = {
    "light-tower odds": ("odds --samples 2000", "compare"),
    "light-tower sweep": ("sweep --vary foot.across=18in..36in --steps 4 --csv 1.csv",),
    "light-tower size": ("size", "size --all"),
    "light-tower write": _WRITES[:2],
    "light-tower write too": _WRITES[2:],
    "pinwheel write": _WRITES,
    "heron odds": ("odds --samples 2000",),
    "mailbox odds": ("odds --samples 2000",),
    **{f"{name} size": ("size --all",) for name in ("pinwheel", "head-light", "fingerpost")},
    **{f"{name} size": ("size --all",) for name in ("three-pieces", "mailbox", "well")},
    "signpost compare": ("compare",),
}
"""What takes longer, of an example: with what it writes."""

_OF_NONE = (
    *(f"new '{kind}' --defaults{units}" for kind in PIECE_KINDS for units in ("", " --metric")),
    *("size tower --height 6ft", "size well", "size post --metric", "size wheel"),
    *("materials", "grounds", "fasteners 'southern pine' plywood", "--help"),
    *("check nowhere.toml", "mend nowhere.toml", "sweep nowhere.toml --vary a.b=1in..2in"),
)


def answer(text, file):
    """Return a design's result in lines, a path and a value each; of one refused its faults."""
    try:
        found = Result(examination.examine(read_text(text, file))).to_dict()
    except DesignError as wrong:
        return [f"fault {fault}" for fault in wrong.faults]
    del found["fingerprint"]
    return list(_leaves(found, ""))


def _leaves(value, path):
    if isinstance(value, dict):
        for key, one in value.items():
            yield from _leaves(one, f"{path}.{key}" if path else key)
    elif isinstance(value, list) and len(value) > ENDLESS and all(map(_is_number, value)):
        told = min(value), max(value), sum(value) / len(value)
        yield f"{path} = least, greatest, mean {' '.join(map(_said, told))}"
    elif isinstance(value, list) and value and all(map(_is_number, value)):
        yield f"{path} = {' '.join(map(_said, value))}"
    elif isinstance(value, list) and value:
        for k, one in enumerate(value):
            yield from _leaves(one, f"{path}.{k}")
    else:
        yield f"{path} = {_said(value)}"


def _is_number(value):
    return isinstance(value, int | float) and not isinstance(value, bool)


def _said(value):
    if isinstance(value, float):
        return f"{value:.{DIGITS}g}"
    return repr(value)


def differing(kept, now):
    """Return what of two lists of lines differs: the old line and the new one of each path."""
    old, new = (dict(line.partition(" = ")[::2] for line in lines) for lines in (kept, now))
    return [
        (path, old.get(path), new.get(path))
        for path in {**old, **new}
        if not _alike(path, old.get(path), new.get(path))
    ]


def _alike(path, old, new):
    """Return whether two values are one: numbers to a millionth, what is next to nothing to 1e-9.

    Of winds that ask alike of a piece that is alike from several sides either may be told.
    """
    if old == new:
        return True
    if old is None or new is None:
        return False
    words = old.split(), new.split()
    if len(words[0]) != len(words[1]):
        return False
    for one, other in zip(*words, strict=True):
        try:
            a, b = float(one), float(other)
        except ValueError:
            if one != other:
                return False
            continue
        if "equilibrium_error" in path:
            continue  # rounding: tests of balance hold it
        if path.endswith("direction_deg") and (a - b) % 45.0 == 0.0:
            continue
        if not (isfinite(a) and isfinite(b)) or abs(a - b) > 1e-6 * max(abs(a), abs(b)) + 1e-9:
            return False
    return True


def pieces():
    """Return each piece by its name: its text."""
    odd = {f"at random {seed}": any_design(seed) for seed in SEEDS}
    told = {f"told {name}": text for name, text in ALL.items()}
    once = {f"once {name}": text for name, text in ANSWERED.items()}
    return {**GARDEN, **MADE, **told, **once, **odd}


def wrong_files():
    """Return files in which much is wrong, by name."""
    refused = {f"refused {name}": text for name, (text, *_) in REFUSED.items()}
    return {**{file.stem: file.read_text(encoding="utf-8") for file in FILES}, **refused}


def screens(name):
    """Return what commands print of an example, of other pieces, wrong files, or none."""
    if name in GARDEN:
        file = f"examples/{name}.toml"
        commands = (*_SHORT, *_OF_ONE.get(name, ()))
        return "".join(_printed(_with_file(line, file)) for line in commands)
    if name in _LONGER:
        return "".join(_written(name.partition(" ")[0], _LONGER[name]))
    if name == "commands":
        return "".join(map(_printed, _OF_NONE))
    texts = (
        wrong_files() if name == "faults" else {**MADE, **{f"told {k}": v for k, v in ALL.items()}}
    )
    with TemporaryDirectory() as folder:
        for text in texts.values():
            (Path(folder) / f"{len(os.listdir(folder))}.toml").write_text(text, encoding="utf-8")
        lines = [
            f"# {of}\n{_printed(f'check {k}.toml --all', folder)}" for k, of in enumerate(texts)
        ]
    return "".join(lines)


SCREENS = ("commands", "faults", "pieces", *GARDEN, *_LONGER)
SLOW = (*LONG, "well", "heron", "pieces", *_LONGER)
"""Those whose screens take longer."""


DRAWN = ("light-tower", "head-light", "heron", "mailbox", "pinwheel", "three-pieces", "well")
_PICTURES = ("draw {file} -o 1.svg", "cuts {file} -o 2.svg", "cuts {file} --stakes -o 3.svg")


def pages(name):
    """Return what goes to an example's sheet and calculation, and its drawings, in lines."""
    text = GARDEN[name]
    with contextlib.chdir(ROOT / "examples"):
        found = examination.examine(read_text(text, f"{name}.toml"))
    paper = "a4" if found.design.units == "metric" else "letter"
    each = [sheet_object(found, paper), calculation_object(found, paper)]
    lines = [json.dumps(one, indent=1, ensure_ascii=False) for one in each]
    with TemporaryDirectory() as folder:
        for k, line in enumerate(_PICTURES, 1):
            file = ROOT / "examples" / f"{name}.toml"
            lines.append(_printed(line.format(file=f"'{file}'"), folder).partition("\n")[2])
            drawn = Path(folder) / f"{k}.svg"
            lines += [drawn.read_text(encoding="utf-8")] if drawn.exists() else []
    whole = "\n".join(lines).replace(str(ROOT), "").replace("><", ">\n<")
    whole = whole.replace(Result(found).fingerprint, "OF ALL VALUES")
    return "\n".join(map(_shortened, whole.splitlines()))


def _shortened(line):
    """Return a line as it is, or of a long one its beginning, its length and its digest."""
    if len(line) <= MOST_KEPT:
        return line
    digest = sha256(line.encode()).hexdigest()[:12]
    return f"{line[: MOST_KEPT // 3]} … {len(line)} characters, {digest}"


def _with_file(line, file):
    command, _, options = line.partition(" ")
    return f"{command} {file} {options}".rstrip()


def _written(name, lines):
    """Yield what commands print of an example, each followed by the files that it writes."""
    with TemporaryDirectory() as folder:
        (Path(folder) / f"{name}.toml").write_text(GARDEN[name], encoding="utf-8")
        known = {f"{name}.toml"}
        for line in lines:
            yield _printed(_with_file(line, f"{name}.toml"), folder)
            for new in sorted(set(os.listdir(folder)) - known):
                yield f"# {new}\n{(Path(folder) / new).read_text(encoding='utf-8')}\n"
                known.add(new)


def _printed(line, folder=ROOT):
    out = io.StringIO()
    with (
        contextlib.chdir(folder),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(out),
        _plain_window(),
    ):
        status = main(shlex.split(line))
    return f"$ yardfast {line}\n{out.getvalue()}[{status}]\n\n"


@contextlib.contextmanager
def _plain_window():
    """A window of 79 columns without colour."""
    before = dict(os.environ)
    os.environ.update(COLUMNS="79", NO_COLOR="1")
    try:
        yield
    finally:
        os.environ.clear()
        os.environ.update(before)


def rewrite():
    """Write every answer and screen anew."""
    FOLDER.mkdir(exist_ok=True)
    for name, text in pieces().items():
        lines = answer(text, f"{name}.toml")
        (FOLDER / f"{name}.answer").write_text("\n".join(lines) + "\n", encoding="utf-8")
    for name in SCREENS:
        (FOLDER / f"{name}.screens").write_text(screens(name), encoding="utf-8")
    for name in DRAWN:
        (FOLDER / f"{name}.pages").write_text(pages(name), encoding="utf-8")


if __name__ == "__main__":
    sys.exit(rewrite())
