"""The documents on which an answer rests, as the rows name them."""

from ... import materials
from ...loads.methods import standard_of
from ...units.frozen import ByValue
from ..examination import Examination


class Cited(ByValue, frozen=True):
    """Where relations and values come from, each as its row says it.

    ``edition`` is the standard of the wind, ``values`` those of checks and of the ground,
    ``materials`` those of what it is made of.
    """

    edition: str
    values: tuple[str, ...]
    materials: tuple[str, ...]


def cited_by(found: Examination) -> Cited:
    """Return where relations and values of an answer come from."""
    ground, method = found.standing.ground, found.site.method
    rubbing = dict.fromkeys(patch.contact for patch in found.structure.patches)
    named = [part.material for part in found.design.parts if part.material is not None]
    return Cited(
        edition=standard_of(method).document(method),
        values=(
            *(check.source for check in (*found.checks, *(found.free or ()))),
            *(rating.source for rating in ground.ratings.values()),
            *(ground.friction[contact].source for contact in rubbing),
        ),
        materials=tuple(materials.find_material(name).source for name in named),
    )
