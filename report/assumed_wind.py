"""What was assumed of the wind, and of how it meets the shapes."""

from collections.abc import Iterator

from ..checks.examination import Examination
from ..checks.limits import COEFFICIENT_BAND
from ..design.given import given_parts
from ..design.model import Part
from ..design.shapes.forms import Bars, Prism, Slab
from ..design.shapes.plans import Regular
from ..design.shapes.rotor import Rotor
from ..loads.asce7.standard import ASCE7
from ..loads.gust.standard import AT_PIECE
from ..loads.methods import air_density, method_of
from .amounts import LB_FT3
from .remark import joined

_TABLED_SIDES = (0, 4, 6, 8)


def wind_assumptions(examination: Examination) -> Iterator[str]:
    """Return what was assumed of air, surroundings, gusts and shelter."""
    site, exposed = examination.site, examination.exposed
    code = site.method in ASCE7.names
    if site.terrain is not None:
        yield from _by_en1991(examination)
    elif site.elevation is None:
        rho = air_density(site)
        yield (
            f"Air is taken as at sea level, {rho:.3f} kg/m3 ({rho / LB_FT3:.4f} lb/ft3): 5,000 ft "
            "(1,500 m) up the same wind pushes about a sixth less."
        )
    if site.exposure is None and site.terrain is None:
        yield "No surroundings are given: a forecast gust is taken to reach it over open ground."
    if site.topographic is None and site.terrain is None and site.method != AT_PIECE:
        yield (
            "No hill, ridge or bluff is taken to speed the wind up, since 'topographic' is not "
            "given."
        )
    if code and site.wind_kind is None:
        yield "The wind is taken as an ultimate speed of the code's map."
    if code:
        yield from _gust_effect(examination)
    if exposed.suction.acts:
        figures = method_of(site, examination.structure.height).tops.document
        yield (
            "Wind is taken to lift closed tops as well, where that is worse, and to lift or press "
            f"roofs and boards that it blows beneath ({figures})."
        )
    if exposed.gives_shelter:
        yield "What stands clear behind another part is counted as sheltered (ISO 4302)."
    elif exposed.counts_twice:
        yield (
            "Parts that stand behind one another with a clear gap each take their full wind: no "
            "shelter is counted beyond a tenth of the width of the one in front."
        )
    yield (
        f"The range takes wind coefficients {100 * COEFFICIENT_BAND:.0f} % off either way: a "
        "judgement."
    )


def shape_assumptions(examination: Examination) -> Iterator[str]:
    """Return what was assumed of surfaces, of unusual numbers of sides, and of wheels."""
    for part, given in zip(examination.design.parts, given_parts(examination.design), strict=True):
        sides = _sides(part)
        if sides == 0 and part.surface is None:
            yield f"The round surface of {part.name} is taken as rough; smooth takes less wind."
        if sides is not None and sides not in _TABLED_SIDES:
            like = {3: "a square's face", 5: "a square's face", 7: "a hexagon"}.get(
                sides, "an octagon"
            )
            yield (
                f"No coefficient is published for the {sides} sides of {part.name}: it takes that "
                f"of {like}."
            )
        if (wheel := part.shape.wheel) is not None:
            yield from _wheel(part, wheel, "spins" in given)


def _sides(part: Part) -> int | None:
    match part.shape.form:
        case Prism(plan) | Slab(plan=plan) | Bars(plan=plan):
            return plan.sides if isinstance(plan, Regular) else None
        case _:
            return None


def _wheel(part: Part, wheel: Rotor, said: bool) -> Iterator[str]:
    if wheel.spins and not said:
        yield (
            f"{part.name} is taken to spin, since the file does not say that it is locked: "
            "spinning it takes more wind."
        )
    if wheel.spins:
        yield (
            f"A spinning {part.name} is taken to push as a whole disc does, 1.2 times the wind's "
            "pressure on it, whatever its blades."
        )


def _by_en1991(examination: Examination) -> Iterator[str]:
    site = examination.site
    yield (
        f"Air of {air_density(site):.2f} kg/m3, and what the file does not say of a National Annex "
        "is as EN 1991-1-4 recommends: your country's annex counts before that."
    )
    if site.orography is None:
        yield "No hill is taken to speed the wind up, since 'orography' is not given."
    yield (
        "c_s c_d is 1, as for what is lower than 15 m; between two faces of a rectangle the force "
        "goes by the squares of sine and cosine: a judgement."
    )


def _gust_effect(examination: Examination) -> Iterator[str]:
    low, high = examination.wind.gust_factor.min(), examination.wind.gust_factor.max()
    said = f"{low:.2f}" if f"{low:.2f}" == f"{high:.2f}" else f"{low:.2f} to {high:.2f}"
    yield (
        f"The gust effect factor is the computed one, {said} (ASCE/SEI 7 26.11.4), since a gust "
        "takes in a small piece whole; 0.85 is permitted."
    )
    named = dict(zip(examination.exposed.kinds, examination.wind.directionality, strict=True))
    listed = joined(f"{value:.2f} ({kind})" for kind, value in named.items() if kind != "none")
    yield f"Directionality Kd by each part's own kind, 1.00 where the code names none: {listed}."
