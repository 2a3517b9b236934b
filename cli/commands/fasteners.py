"""``yardfast fasteners``: nails, screws and bolts with their sizes, and what each holds."""

from argparse import Namespace

from ... import materials, units
from ...checks.timber.nds.fastener_values import FastenerValue, assigned_gravity, value_of
from ...checks.timber.nds.fastener_values import fastener_listing as listing
from ...design.reader.near_names import meant, quoted_names
from ...materials import fasteners
from ...report.fastening import fastener_listing
from ...report.wording.faults import LONGEST_FOUND, clean
from .. import screen
from ..refused import RefusedError

_FOUND = 0


def run(arguments: Namespace) -> int:
    """List fasteners, all or those named; return 0. Refuses a name or size that is not known."""
    side = _side(arguments.side)
    gravity = None if arguments.wood is None else _gravity(arguments.wood)
    found = _named(arguments.name, arguments.wood, gravity, side)
    if arguments.format == "json":
        screen.show_json(fastener_listing.fastener_objects(found, arguments.wood, gravity, side))
    else:
        screen.show(fastener_listing.fastener_lines(found, arguments.wood, gravity, side))
    return _FOUND


def _named(
    name: str | None, wood: str | None, gravity: float | None, side: float
) -> list[FastenerValue]:
    """Return the fasteners whose trade names hold every word of ``name``; all without one.

    What no trade name holds is read as builders' words, as in a design: with a length, say.
    """
    everything = listing(wood, side)
    if name is None:
        return everything
    words = name.casefold().split()
    found = [one for one in everything if set(words) <= set(one.fastener.name.casefold().split())]
    if found or not words:
        return found or everything
    try:
        pulled = None if wood is None else materials.find_material(wood).withdrawal_gravity
        return [value_of(fasteners.find_fastener(name), gravity, side, pulled)]
    except (KeyError, ValueError) as wrong:
        raise RefusedError(clean(str(wrong.args[0]), 300), "") from None


def _gravity(wood: str) -> float:
    try:
        return assigned_gravity(wood)
    except ValueError as wrong:
        raise RefusedError(str(wrong), "") from None
    except KeyError:
        names = [one.name for one in materials.all_materials() if one.specific_gravity is not None]
        near = meant(wood, names)
        hint = f"did you mean {near}" if near else f"there are: {quoted_names(names, wood)}"
        shown = clean(wood, LONGEST_FOUND)
        raise RefusedError(f"--wood: there is no wood '{shown}': {hint}", "") from None


def _side(text: str) -> float:
    try:
        found = units.to_si(text, "length")
    except units.UnitError as wrong:
        raise RefusedError(f"--side: {clean(str(wrong), 300)}", "") from None
    if not 0.0 < found <= units.FOOT:
        shown = clean(text, LONGEST_FOUND)
        raise RefusedError(f"--side: found '{shown}', expected above 0 and at most 1 ft", "")
    return found
