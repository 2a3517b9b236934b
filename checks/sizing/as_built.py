"""A piece changed so that it would be held, examined as any other, and each change once."""

from collections.abc import Sequence

from ...design.faults import DesignError
from ...design.model import Design
from ...statics.tables.anchor_table import AnchorRow, GuyRow
from ...units.frozen import replace
from ..anchoring.anchor_choice import AnchorChoice, with_anchors
from ..anchoring.ground_parts import ground_parts
from ..anchoring.guy_choice import GuyChoice
from ..examination import Examination, examine_in
from ..judged.build_steps import steps_of
from ..judged.judging import Check
from ..situation import Situation, situation_of, weighted
from .laid_weight import with_weight
from .remedy import checks_needed, failing


def built(
    found: Examination,
    way: str,
    k: int,
    design: Design | None,
    at: Situation | None = None,
    tied_checks: Sequence[Check] = (),
) -> Examination | None:
    """Return what is found of a design as it is once held in a way, ``k`` steps of it.

    None where it cannot stand at all. What was found of the piece as it is keeps it. ``at`` is
    where it stands, ``tied_checks`` those of the whole held so, if they are known.
    """
    if (way, k) not in found.as_built:
        at = at or (None if design is None else situation_changed(found, design))
        found.as_built[way, k] = (
            None if at is None or design is None else _in(found, at, design, tied_checks)
        )
    return found.as_built[way, k]


def situation_changed(found: Examination, design: Design) -> Situation | None:
    """Return where a changed design stands; what stays of it is not worked out again.

    None where it cannot stand at all.
    """
    try:
        if not _only_held_otherwise(found.design, design):
            return situation_of(design)
        return weighted(found.at, design) if design.parts != found.design.parts else found.at
    except DesignError:
        return None


def _in(
    found: Examination, at: Situation, design: Design, tied_checks: Sequence[Check]
) -> Examination | None:
    """Return what is found of a changed design where it stands."""
    try:
        if not _only_held_otherwise(found.design, design):
            return examine_in(at, at.design)
        return examine_in(at, design, found, tied_checks)
    except DesignError:
        return None


def _only_held_otherwise(own: Design, design: Design) -> bool:
    """Return whether a design differs in nothing but what holds it down, weight on it included."""
    more = design.parts[len(own.parts) :]
    same = design.parts[: len(own.parts)] == own.parts and _all_else(design) == _all_else(own)
    return same and all(part.shape.is_point for part in more)


def _all_else(design: Design) -> Design:
    """Return a design without its parts, and without what holds it down."""
    return replace(without_its_own(design), parts=())


def without_its_own(design: Design) -> Design:
    """Return a design without the anchors and guys of its file."""
    return replace(design, tables={**design.tables, AnchorRow: (), GuyRow: ()})


def fails_as_held(found: Examination, what: AnchorChoice | GuyChoice | float) -> Check | None:
    """Return the worst check that fails once a piece is held in a way; None where it does then.

    ``what`` are anchors or guys, in place of its own, or so many kg low in its foot. Held so, other
    forces go through its joints and parts than where the ground holds all of it. What fails of it
    as it is, is told of it as it is. Nothing is examined where nothing can fail.
    """
    if not (found.joints or found.fastened_seams or found.members.judged):
        return None
    bare, place = found.design, ""
    if found.held:
        bare, place = without_its_own(bare), " in place"
    match what:
        case AnchorChoice():
            tied = with_anchors(bare, what.row)
            then = built(found, f"anchors{place}", 0, tied, tied_checks=what.checks)
        case GuyChoice():
            tied = what.added_to(bare)
            then = built(found, f"guys{place}", 0, tied, tied_checks=what.checks)
        case _:
            k = round(what / steps_of(bare.units).mass)
            weighted = with_weight(bare, ground_parts(found.structure), what)
            then = built(found, f"ballast{place}", k, weighted)
    wrong = () if then is None else failing(then, checks_needed(found))
    return wrong[0] if wrong else None
