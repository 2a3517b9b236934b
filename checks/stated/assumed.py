"""What was assumed where the design is silent, as data: each default that affected the answer."""

from collections.abc import Iterator
from enum import StrEnum

from ... import materials
from ...design.given import given_parts
from ...design.model import Part
from ...design.shapes.forms import Bars, Prism, Slab
from ...design.shapes.plans import Regular
from ...design.shapes.rotor import Rotor
from ...loads.asce7.standard import ASCE7
from ...loads.gust.standard import AT_PIECE
from ...loads.methods import air_density, method_of
from ...units import FOOT, POUND
from ..examination import Examination
from ..judged.finding import Amount, Finding, FindingSlot, Source
from ..limits import COEFFICIENT_BAND
from .assumed_parts import assumed_of_parts
from .one_degree import slides_on_a_degree, tips_on_a_degree

TABLED_SIDES = (0, 4, 6, 8)
"""Numbers of sides for which force coefficients are published."""


class Assumed(StrEnum):
    """What was assumed of weight, ground, wind and shape."""

    SCALED = "scaled to a scale's reading"
    WEIGHS = "density"
    WEIGHS_BAND = "density with its band"
    READ_AS = "read as"
    GROUND = "what the ground is"
    BEARS = "what it bears"
    GIVES_WAY = "where it gives way"
    ALL_ROUND = "foot bears all round"
    LEVEL = "level ground"
    LEVEL_COSTS = "level ground, with what a degree costs"
    TIPPING_COSTS = "what a degree costs against tipping"
    SLIDING_COSTS = "what a degree costs against sliding"
    BOTH_COST = "what a degree costs against both"
    FRICTION = "friction"
    FRICTION_NOTED = "friction, with a note"
    RUBS_AS_WOOD = "rubs as wood"
    EARTH = "earth beside posts"
    POSTS_SHARE = "posts share the wind"
    LOOSE = "all but some are held together"
    HELD_TOGETHER = "held together"
    TO_SPARE = "half again to spare"
    BASIS = "basis"
    AIR = "air at sea level"
    AIR_EN = "air by EN 1991-1-4"
    NO_OROGRAPHY = "no hill by EN 1991-1-4"
    STRUCTURAL_FACTOR = "structural factor"
    SURROUNDINGS = "open ground"
    NO_HILL = "no hill"
    ULTIMATE = "ultimate speed"
    GUST_EFFECT = "gust effect factor"
    DIRECTIONALITY = "directionality"
    LIFTED = "wind lifts"
    SHELTER = "shelter"
    NO_SHELTER = "no shelter"
    RANGE = "range of coefficients"
    ROUGH = "rough surface"
    SIDES = "unusual number of sides"
    SPINS = "taken to spin"
    DISC = "spins as a disc"


def assumed(found: Examination) -> Iterator[Finding]:
    """Yield every default that affected the answer, each true of this design."""
    yield from _weights(found)
    yield from (_of(Assumed.READ_AS, note=note) for note in found.design.notes)
    yield from _ground(found)
    yield from _level(found)
    yield from _friction(found)
    yield from _earth(found)
    yield from _held_together(found)
    before, after = assumed_of_parts(found)
    yield from before
    yield from _wind(found)
    yield from _shapes(found)
    yield from after
    yield from _basis(found)


def _of(what: Assumed, **slots: FindingSlot) -> Finding:
    return Finding(what, slots)


def _weights(found: Examination) -> Iterator[Finding]:
    design = found.design
    used = dict.fromkeys(
        p.material for p in design.parts if p.material and p.mass is None and p.density is None
    )
    if design.weighed is not None and used:
        yield _of(Assumed.SCALED, names=tuple(used), mass=Amount(design.weighed, "mass"))
        return
    for name in used:
        of = materials.find_material(name)
        yield _of(
            Assumed.WEIGHS if of.light == of.heavy else Assumed.WEIGHS_BAND,
            name=name,
            density=Amount(of.typical, "density"),
            light=Amount(of.light, "bare_density"),
            heavy=Amount(of.heavy, "bare_density"),
            means=of.stands_for,
            source=Source(of.source, first=True),
        )


def _ground(found: Examination) -> Iterator[Finding]:
    ground = found.standing.ground
    yield _of(Assumed.GROUND, name=ground.name, means=ground.description, cue=ground.field_cue)
    for what, rating in (
        (Assumed.BEARS, ground.ratings["allowable pressure"]),
        (Assumed.GIVES_WAY, ground.ratings.get("yield pressure")),
    ):
        if rating is not None:
            pressure = Amount(rating.value, "pressure")
            yield _of(what, name=ground.name, pressure=pressure, source=Source(rating.source))
    yield _of(Assumed.ALL_ROUND)


def _level(found: Examination) -> Iterator[Finding]:
    """Yield that the ground is taken as level where no slope is given, and what a degree costs."""
    if found.site.slope is not None:
        return
    limits = found.limits
    both = (
        (Assumed.TIPPING_COSTS, limits.forecast_tipping, tips_on_a_degree(found)),
        (Assumed.SLIDING_COSTS, limits.forecast_sliding, slides_on_a_degree(found)),
    )
    costs = tuple(
        _of(what, now=Amount(now, "bare_gust", "down"), then=Amount(then, "gust", "down"))
        for what, now, then in both
        if now is not None and then is not None
    )
    if len(costs) > 1:
        costs = (_of(Assumed.BOTH_COST, first=costs[:1], second=costs[1:]),)
    yield _of(Assumed.LEVEL_COSTS, costs=costs) if costs else _of(Assumed.LEVEL)


def _friction(found: Examination) -> Iterator[Finding]:
    standing, design = found.standing, found.design
    for kind in dict.fromkeys(patch.contact for patch in standing.structure.patches):
        row = standing.ground.friction[kind]
        yield _of(
            Assumed.FRICTION_NOTED if row.note else Assumed.FRICTION,
            kind=kind,
            ground=standing.ground.name,
            value=f"{row.coefficient:.2f}",
            source=Source(row.source),
            note=Source(row.note),
        )
    for i in dict.fromkeys(patch.part for patch in standing.structure.patches):
        part = design.parts[i]
        if part.contact is None and part.material is None:
            yield _of(Assumed.RUBS_AS_WOOD, name=part.name)


def _earth(found: Examination) -> Iterator[Finding]:
    """Yield what the earth beside posts is taken to hold, and how it is shared among them."""
    posts = found.posts
    if posts is None:
        return
    pressure = Amount(float(posts.bearing.min()), "pressure_per_depth")
    yield _of(Assumed.EARTH, pressure=pressure, ground=found.site.ground)
    if len(posts.part) > 1:
        yield _of(Assumed.POSTS_SHARE)


def _held_together(found: Examination) -> Iterator[Finding]:
    loose = tuple(part.name for part in found.design.parts if part.loose)
    if loose:
        yield _of(Assumed.LOOSE, names=loose)
    elif len(found.design.parts) > 1:
        yield _of(Assumed.HELD_TOGETHER)


def _basis(found: Examination) -> Iterator[Finding]:
    site, source = found.site, Source(found.factors.source)
    if site.basis == "service" and not site.safety_given:
        yield _of(Assumed.TO_SPARE, safety=f"{site.safety:g}", source=source)
    elif not site.basis_given and site.basis != "service":
        yield _of(Assumed.BASIS, basis=site.basis, source=source)


def _wind(found: Examination) -> Iterator[Finding]:
    """Yield what was assumed of air, surroundings, gusts and shelter."""
    site, exposed = found.site, found.exposed
    code = site.method in ASCE7.names
    rho = air_density(site)
    if site.terrain is not None:
        yield _of(Assumed.AIR_EN, rho=f"{rho:.2f}")
        if site.orography is None:
            yield _of(Assumed.NO_OROGRAPHY)
        yield _of(Assumed.STRUCTURAL_FACTOR)
    elif site.elevation is None:
        pounds = rho / (POUND / FOOT**3)
        yield _of(Assumed.AIR, rho=f"{rho:.3f}", pounds=f"{pounds:.4f}")
    if site.exposure is None and site.terrain is None:
        yield _of(Assumed.SURROUNDINGS)
    if site.topographic is None and site.terrain is None and site.method != AT_PIECE:
        yield _of(Assumed.NO_HILL)
    if code and site.wind_kind is None:
        yield _of(Assumed.ULTIMATE)
    if code:
        yield from _gust_effect(found)
    if exposed.suction.acts:
        figures = method_of(site, found.structure.height).tops.document
        yield _of(Assumed.LIFTED, figures=figures)
    if exposed.gives_shelter:
        yield _of(Assumed.SHELTER)
    elif exposed.counts_twice:
        yield _of(Assumed.NO_SHELTER)
    yield _of(Assumed.RANGE, share=f"{100 * COEFFICIENT_BAND:.0f}")


def _gust_effect(found: Examination) -> Iterator[Finding]:
    factors = found.wind.gust_factor
    low, high = (f"{each:.2f}" for each in (factors.min(), factors.max()))
    yield _of(Assumed.GUST_EFFECT, factor=low if low == high else f"{low} to {high}")
    named = dict(zip(found.exposed.kinds, found.wind.directionality, strict=True))
    listed = tuple(f"{value:.2f} ({kind})" for kind, value in named.items() if kind != "none")
    yield _of(Assumed.DIRECTIONALITY, values=listed)


def _shapes(found: Examination) -> Iterator[Finding]:
    """Yield what was assumed of surfaces, of unusual numbers of sides, and of wheels."""
    for part, given in zip(found.design.parts, given_parts(found.design), strict=True):
        sides = _sides(part)
        if sides == 0 and part.surface is None:
            yield _of(Assumed.ROUGH, name=part.name)
        if sides is not None and sides not in TABLED_SIDES:
            yield _of(Assumed.SIDES, name=part.name, sides=sides)
        if (wheel := part.shape.wheel) is not None:
            yield from _wheel(part, wheel, "spins" in given)


def _wheel(part: Part, wheel: Rotor, said: bool) -> Iterator[Finding]:
    if wheel.spins and not said:
        yield _of(Assumed.SPINS, name=part.name)
    if wheel.spins:
        yield _of(Assumed.DISC, name=part.name)


def _sides(part: Part) -> int | None:
    match part.shape.form:
        case Prism(plan) | Slab(plan=plan) | Bars(plan=plan):
            return plan.sides if isinstance(plan, Regular) else None
        case _:
            return None
