"""Texts to try Yardfast with, each by its number: quantities, drawings, and files spoilt in form.

A file is drawn (``any_design``) and then changed as its structure goes: keys lost, doubled, moved
to other tables, values of other kinds, numbers far too large or small, names that lead in circles.
"""

import sys
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests" / "support"))

from any_design import any_design  # noqa: E402 - needs the path

from yardfast.units.kinds import UNIT_KINDS  # noqa: E402

NUMBERS = (
    *("0", "-0", "1", "-1", "1/2", "½", "1 1/2", "5 7/8", "1½", "1/0", "1e5", "1e400", "-1e400"),
    *(
        "1e-400",
        "0.1",
        ".5",
        "5.",
        "1,000",
        "1,5",
        "1.000,5",
        "nan",
        "inf",
        "0x10",
        "٣",
        "Ⅷ",
        "1_0",
    ),
    *("", " ", "--1", "+1", "1 2 3", "9" * 400, "0." + "0" * 300 + "1", "1/3/4", "³", "10^3"),
)
UNITS = (
    *("", "in", "ft", "mm", "cm", "m", "km", "mi", "lb", "lbf", "kg", "N", "kN", "mph", "m/s"),
    *("km/h", "deg", "rad", "%", "psf", "psi", "Pa", "kPa", "kg/m^3", "lb/ft^3", "in^2", "'", '"'),
    *("′", "″", "inch", "inches", "foot", "feet", "grade", "knots", "kn", "N*m", "ft lb", "in/ft"),
    *("in in", "m^99", "1/m", "m/", "/", "mm mm mm", "µm", "µm", "years", "C", "°", "lb/in", "oz"),
)
VALUES = (
    *("true", "0", "-1", "3.7", "1e308", "nan", "inf", "''", "'x'", "[]", "{}", "[[]]", "[1, 'a']"),
    *("1979-05-27", "07:32:00", "{ a = 1 }", "9999999999999999999", "'0 in'", "'-5 mm'", "'1e9 m'"),
    *("'1e-9 mm'", "['1 mm', '2 mm']", "['1 mm', '2 mm', '3 mm', '4 mm']", "'part 0'", "'ground'"),
    *('"""\n"""', "'\u202e'", '"\\u0000"', '"\\u001b[31m"', "'" + "a" * 300 + "'", "0o17", "-0.0"),
    *("'=HYPERLINK(1)'", "'<b>'", "'../../x'", "100000", "'12 furlongs'", "'8d common'", "5000"),
)
NAMES = (
    "part 0",
    "part 1",
    "part 9",
    "Part 1",
    "",
    "drawn",
    "ground",
    "j",
    "a.b",
    "site",
    "x" * 200,
)


def quantity(number: int) -> tuple[str, str, bool]:
    """Return a text of a quantity, what kind it should be of, and whether it may be negative."""
    draw = Random(number)
    parts = []
    for _ in range(draw.choice((1, 1, 1, 2, 2, 3))):
        space = draw.choice(("", " ", " ", "  ", "\t", "\u00a0", "-", " - ", "x"))
        parts.append(f"{draw.choice(NUMBERS)}{space}{draw.choice(UNITS)}")
    text = draw.choice((" ", "", " ", " - ", ", ", " and ")).join(parts)
    if draw.random() < 0.1:
        at = draw.randrange(len(text) + 1)
        text = text[:at] + chr(draw.choice((0, 9, 34, 39, 0x202E, 0x1F600, 0x200B))) + text[at:]
    return text, draw.choice(tuple(UNIT_KINDS)), draw.random() < 0.5


def drawing(number: int) -> str:
    """Return an SVG with a path, whole or spoilt, in places with other elements and transforms."""
    draw = Random(number)
    path = "M0 0"
    for _ in range(draw.randrange(1, 14)):
        letter = draw.choice("MLHVCSQTAZmlhvcsqtazX")
        count = {"H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}.get(
            letter.upper(), 2
        )
        count += draw.choice((0, 0, 0, 0, 1, -1))
        numbers = (draw.choice((draw.uniform(-50, 90), 0, 1, 1e9, -0.0)) for _ in range(count))
        path += letter + " ".join(f"{each:.5g}" for each in numbers)
    more = draw.choice(
        (
            *("", "", "", "<rect width='5' height='9'/>", "<circle r='1e400'/>", "<g><g/></g>"),
            *("<use href='#a'/>", "<image href='file:///etc/passwd'/>", "<script>1</script>"),
            *("<style>@import url(x)</style>", "<polygon points='0,0 1,1'/>", "<text>a</text>"),
        )
    )
    moved = draw.choice(("", "", "transform='scale(0)'", "transform='rotate(33) scale(-1,2)'"))
    svg = (
        f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 90 90'>"
        f"<path id='a' {moved} d='{path}'/>{more}</svg>"
    )
    if draw.random() < 0.2:
        at = draw.randrange(len(svg))
        svg = svg[:at] + draw.choice(("<", "&x;", "\0", "'", "]]>", "")) + svg[at + 1 :]
    return svg


def changed(number: int) -> str:
    """Return a drawn file with one to four changes to its structure."""
    draw = Random(-number - 1)
    blocks = [block.splitlines() for block in any_design(number).split("\n[") if block]
    blocks = [blocks[0], *(["[" + block[0], *block[1:]] for block in blocks[1:])]
    for _ in range(draw.choice((1, 1, 2, 4))):
        blocks = _change(blocks, draw)
    return "\n".join("\n".join(block) for block in blocks) + "\n"


def _change(blocks: list[list[str]], draw: Random) -> list[list[str]]:
    at = draw.randrange(len(blocks))
    block = blocks[at]
    keys = [k for k, line in enumerate(block) if "=" in line]
    if not keys:
        return blocks
    k = draw.choice(keys)
    key, _, value = block[k].partition(" = ")
    other = draw.choice(draw.choice(blocks))
    new: list[str] | None = None
    match draw.randrange(14):
        case 0:
            new = []
        case 1:
            new = [block[k], block[k]]
        case 2:
            new = [f"{key} = {draw.choice(VALUES)}"]
        case 3:
            new = [f"{key[:-1]} = {value}"]
        case 4:
            new = [f"{key} = {other.partition(' = ')[2] or '0'}"]
        case 5:
            new = [f"{key} = '{draw.choice(NAMES)}'"]
        case 6:
            new = [block[k], other]
        case 7:
            new = [f"{key}.{key} = {value}"]
        case 8:
            new = [f"{key} = [{value}, {value}]"]
        case 9:
            number = f"'{draw.choice(NUMBERS)} {draw.choice(UNITS)}'".replace("''", "'")
            new = [f"{key} = {number}"]
        case 10:
            return [*blocks, list(block)]
        case 11:
            return blocks[:at] + blocks[at + 1 :] or blocks
        case 12:
            draw.shuffle(blocks)
            return blocks
        case _:
            new = [
                f"{draw.choice(('on', 'under', 'count', 'at', 'tilt', 'ring', 'mass'))} = {value}"
            ]
    return [*blocks[:at], [*block[:k], *new, *block[k + 1 :]], *blocks[at + 1 :]]
