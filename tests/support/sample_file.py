"""A whole design file, and ways to alter it and to read what is wrong with it."""

from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError, Fault
from yardfast.design.model import Design, Part

HARBOUR_LIGHT = """\
[design]
name  = 'Harbour light'
units = 'imperial'

[site]
method   = 'forecast'
wind     = '58 mph'          # a severe-thunderstorm warning starts here
exposure = 'open'
ground   = 'firm lawn'

[[part]]
name     = 'foot'
shape    = 'frame'
sides    = 8
across   = '20 in'           # flat to flat
lumber   = '2x4 flat'        # 3 1/2 in wide, 1 1/2 in high
material = 'southern pine, treated'

[[part]]
name     = 'tower'
shape    = 'shell'
on       = 'foot'
sides    = 8
bottom   = '16 in'           # flat to flat, outside
top      = '9 in'
height   = '48 in'           # straight up
wall     = '3/4 in'
material = 'softwood plywood'

[[part]]
name     = 'gallery'
shape    = 'plate'
on       = 'tower'
sides    = 8
across   = '17 in'
thickness = '3/4 in'
material = 'softwood plywood'

[[part]]
name     = 'roof'
shape    = 'cone'
on       = 'gallery'
sides    = 8
bottom   = '12 in'
height   = '9 in'
wall     = '1/2 in'
material = 'softwood plywood'
"""

HEAD = """\
[design]
name = 'A piece'
units = 'imperial'
[site]
method = 'gust'
wind = '30 mph'
ground = 'paving'
"""
"""All that a file needs besides its parts."""

FIRST_PART_LINE = HEAD.count("\n") + 1
"""The line of the first ``[[part]]`` in what ``one_part`` reads."""


def altered(old: str, new: str, text: str = HARBOUR_LIGHT) -> str:
    """Return the sample with one place changed; the place must be there."""
    assert old in text
    return text.replace(old, new, 1)


def one_part(keys: str) -> Part:
    """Return the part that these lines describe, of a material unless they say otherwise."""
    (part,) = read_text(part_text(keys)).parts
    return part


def part_text(keys: str) -> str:
    """Return a whole file with one part of these lines."""
    weighs = any(word in keys for word in ("material", "density", "mass"))
    rest = "" if weighs else "material = 'OSB'\n"
    return f"{HEAD}[[part]]\nname = 'piece'\n{keys}\n{rest}"


def site(keys: str) -> str:
    """Return a whole file whose ``[site]`` holds these lines."""
    start, end = HARBOUR_LIGHT.index("method "), HARBOUR_LIGHT.index("\n[[part]]")
    return f"{HARBOUR_LIGHT[:start]}{keys}\n{HARBOUR_LIGHT[end:]}"


def faults(text: str) -> tuple[Fault, ...]:
    """Return everything that is wrong with a text; nothing if it reads."""
    try:
        read_text(text, "piece.toml")
    except DesignError as error:
        return error.faults
    return ()


def the_fault(text: str) -> Fault:
    """Return the only fault of a text."""
    (fault,) = faults(text)
    return fault


def design(text: str = HARBOUR_LIGHT) -> Design:
    """Return the design of a text that reads."""
    return read_text(text, "piece.toml")
