"""Random yard pieces for properties: towers of the common shapes, in SI."""

from hypothesis import strategies as st

from yardfast.checks.acting.design_wind import design_wind
from yardfast.design.model import Design, Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Regular
from yardfast.design.structure import build_structure
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site


def design(*parts, turn=0.0, **site):
    given = {"method": "gust", "wind": 20.0, "ground": "paving", **site}
    return Design(
        "drawn at random", "metric", tuple(parts), turn=turn, tables={Site: Site(**given)}
    )


def wind_alone(drawn):
    """Return the wind on a design and what of it is exposed: of shapes in the air, of no piece."""
    structure, site = build_structure(drawn), drawn.table(Site)
    method = method_of(site, structure.height)
    each = bare(structure, [part.surface for part in drawn.parts], method)
    exposed = expose(structure, each, site.sheltering)
    return design_wind(exposed, method)[0], exposed


def tower(sides, foot, bottom, top, height, size=1.0, density=550.0, shift=0.0):
    """A tapered tower on a plate, with a deck and a roof; ``size`` scales every length."""
    s = size
    return (
        Part("foot", Plate(Regular(sides, foot * s), 0.04 * s), density=density),
        Part(
            "tower",
            Shell(sides, bottom * s, top * s, height * s, 0.02 * s),
            Place(on="foot", at=(shift * s, 0.0, 0.0)),
            density=density,
        ),
        Part(
            "deck",
            Plate(Regular(sides, top * 1.4 * s), 0.02 * s),
            Place(on="tower"),
            density=density,
        ),
        Part("roof", Cone(sides, top * s, 0.15 * s, 0.012 * s), Place(on="deck"), density=density),
    )


def post(sides, across, height, density=600.0):
    return (Part("post", Solid(sides, across, across, height), density=density),)


SIDES = st.sampled_from([0, 3, 4, 5, 6, 7, 8, 9, 12])
TOWERS = {
    "sides": SIDES,
    "foot": st.floats(0.4, 0.9),
    "bottom": st.floats(0.25, 0.4),
    "top": st.floats(0.15, 0.25),
    "height": st.floats(0.4, 1.8),
}
