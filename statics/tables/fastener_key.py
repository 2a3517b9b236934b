"""Keys that tables of joints and seams have in common: the fastener, its crown, a wood inside."""

from ... import materials
from ...design.reader.near_names import quoted_names
from ...design.reader.row import Row
from ...materials import fasteners
from ...materials.fastener import Fastener

_LONGEST = 0.6
"""Length (m) beyond which nothing is a nail, screw, bolt or staple: judgement."""

FASTENER_HINT = "fastener = '8d common nail' or '#8 wood screw 2 in'"

CROWN_ACROSS, _CROWN_ALONG = "across the grain", "along the grain"
CROWNS = (CROWN_ACROSS, _CROWN_ALONG)
"""How a staple's crown lies to the grain of the piece that is under it."""

CROWN_WORDS = {
    **dict.fromkeys(("across", "square to the grain", "crosswise"), "'across the grain'"),
    **dict.fromkeys(("along", "with the grain", "lengthwise"), "'along the grain'"),
}

WOOD_WORDS = {
    **dict.fromkeys(("pine", "2x2", "2x4", "lumber", "wood"), "'spruce-pine-fir'?"),
    "spf": "'spruce-pine-fir'",
    "cedar": "'western redcedar' or 'northern white cedar'?",
    **dict.fromkeys(("red cedar", "western red cedar"), "'western redcedar'"),
    "oak": "'white oak' or 'red oak'?",
}


def read_fastener(row: Row) -> Fastener | None:
    """Return the fastener that is named, or None with its fault recorded."""
    text = row.text("fastener")
    if text is None:
        return None
    example = "'8d common nail' or '#8 wood screw 2 in'"
    try:
        found = fasteners.find_fastener(text)
    except KeyError as unknown:
        said = str(unknown.args[0])
        _, _, hint = said.partition("; ")
        named = hint or said.partition(": ")[2]
        row.refuse(
            "fastener", f"a nail, screw, bolt or staple by its trade name, such as {example}", named
        )
        return None
    except ValueError as wrong:
        said = str(wrong).partition(": ")[2] or str(wrong)
        row.refuse("fastener", f"a size that it is made in, such as {example}", said)
        return None
    if found.kind == "staple" and found.bending_yield is None:
        row.refuse(
            "fastener",
            f"a gauge whose steel is published: {quoted_names(_staples(), text)}",
            "what thinner staples carry sideways is the maker's to say",
        )
        return None
    if found.length is None:
        row.refuse("fastener", "its length with it", f"'{text} 2 in'")
        return None
    if found.length > _LONGEST:
        row.refuse("fastener", "at most 24 in (610 mm) long")
        return None
    return found


def check_crown(row: Row, found: Fastener) -> None:
    """Record a crown of what has none."""
    if row.text("crown") is not None and found.kind != "staple":
        row.refuse("crown", f"no 'crown' with {found.kind}s: staples only have one")


def woods() -> list[str]:
    """Return the woods of which blocks and cleats may be: those with a value for fasteners."""
    return [
        each.name
        for each in materials.all_materials()
        if each.kind == "wood" and each.specific_gravity is not None
    ]


def _staples() -> list[str]:
    found = fasteners.all_fasteners()
    return [one.name for one in found if one.kind == "staple" and one.bending_yield is not None]
