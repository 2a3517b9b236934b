"""The strength of parts whose load is plain from the drawing: posts, blades, boards, plates."""

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

import numpy as np

from ...design.shapes.bodies import Shell
from ...design.shapes.boxes import Box
from ...design.shapes.cone import Cone
from ...design.shapes.cutout import Cutout
from ...design.shapes.flat import Panel, Plate
from ...design.shapes.gables import Gable
from ...design.shapes.roofs import Dome, Vault
from ...design.shapes.rotor import Rotor
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...units.arrays import Mask
from ...units.frozen import replace
from ..acting.borne import Borne
from ..acting.local_wind import LocalWind
from ..members.member_check import Members, MemberStrength, NotJudged
from ..members.uprights import touching_bodies
from .boards import check_board, check_shell
from .flat_plates import stands_at

NOTHING_FOUND: Mapping[int, MemberStrength | NotJudged | None] = MappingProxyType({})
"""Nothing was found of any body before."""


def check_plates(
    structure: Structure,
    local: LocalWind,
    factors: Factors,
    basis: str,
    loads: Sequence[Borne] = (),
    before: Mapping[int, MemberStrength | NotJudged | None] = NOTHING_FOUND,
) -> tuple[MemberStrength | NotJudged | None, ...]:
    """Return the strength (bodies,) of boards, plates, walls, roofs, blades by the wind on each.

    None for what is none of these. ``basis`` is the site's, ``loads`` those that the design names.
    ``before`` is what was found of the same bodies, by index, where all that came since are
    weights: it stays of those on which none of them lies.
    """
    more = [k for k in range(len(structure.bodies)) if before and k not in before]
    settled = [i for i in before if not any(_may_lie_on(structure, k, i) for k in more)]
    boards = [
        i
        for i, body in enumerate(structure.bodies)
        if body.shape.is_standing_board and i not in settled
    ]
    near = touching_bodies(structure) if boards else np.zeros((0, 0), dtype=bool)
    return tuple(
        before[i]
        if i in settled
        else _as_graded(structure, i, _check_body(structure, i, near, local, factors, basis, loads))
        for i in range(len(structure.bodies))
    )


def _may_lie_on(structure: Structure, k: int, i: int) -> bool:
    """Return whether a weight, a body by index, may lie on another, or on what stands on it."""
    weight = structure.bodies[k]
    placed = structure.design.parts[weight.part].place.reference is not None
    return placed or stands_at(weight, structure.bodies[i].top)


def _check_body(
    structure: Structure,
    i: int,
    near: Mask,
    local: LocalWind,
    factors: Factors,
    basis: str,
    loads: Sequence[Borne],
) -> MemberStrength | NotJudged | None:
    """Return the strength of one body that is no post; None where none is to be told."""
    given = (structure, i, local, factors, basis)
    # what judges a shape is imported where a design has that shape: most have few
    match structure.bodies[i].shape:
        case Rotor():
            from ..members.blades import check_blades  # noqa: PLC0415

            return check_blades(*given)
        case Shell() as shell:
            return check_shell(shell, *given)
        case Panel():
            return check_board(structure, i, near[i], local, factors, basis, loads)
        case Box(wall=float()):
            from .walls import check_box  # noqa: PLC0415

            return check_box(*given)
        case Gable() as roof:
            from .slopes import check_gable  # noqa: PLC0415

            return check_gable(roof, *given)
        case Cone() as roof:
            from .slopes import check_cone  # noqa: PLC0415

            return check_cone(roof, *given)
        case Plate():
            from .decks import check_plate  # noqa: PLC0415

            return check_plate(*given, loads)
        case Cutout() as board:
            from .cutouts import check_cutout  # noqa: PLC0415

            return check_cutout(board, structure, i, near[i], local, factors, basis)
        case Dome(wall=float()) | Vault(wall=float()):
            return NotJudged(structure.design.parts[structure.bodies[i].part].name, "curved")
        case _:
            return None


def _as_graded(
    structure: Structure, i: int, one: MemberStrength | NotJudged | None
) -> MemberStrength | NotJudged | None:
    """Return what was found with the word whether the design names the grade of its boards."""
    named = structure.design.parts[structure.bodies[i].part].grade is not None
    return replace(one, graded=True) if named and isinstance(one, MemberStrength) else one


def worst_of_each(found: Iterable[MemberStrength | NotJudged]) -> Members:
    """Return what was found of every part, and which of these kinds are not judged.

    Of like copies the worst one is told.
    """
    judged: dict[str, MemberStrength] = {}
    others: dict[str, NotJudged] = {}
    for one in found:
        if isinstance(one, NotJudged):
            others.setdefault(one.name, one)
        elif one.name not in judged:
            judged[one.name] = one
        else:
            other = judged[one.name]
            loads = tuple(dict.fromkeys((*other.loads, *one.loads)))
            worse = one if one.check.rank > other.check.rank else other
            judged[one.name] = replace(worse, loads=loads)
    return Members(tuple(judged.values()), tuple(others.values()))
