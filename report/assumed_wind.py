"""What was assumed of the wind, and of how it meets the shapes."""

from collections.abc import Iterator

from ..checks.examination import Examination
from ..checks.limits import COEFFICIENT_BAND
from ..design.model import Part
from ..design.shapes.bodies import Cone, Shell, Solid
from ..design.shapes.flat import Frame, Plate
from ..design.shapes.member import Member
from ..design.shapes.plans import Regular
from ..design.shapes.roofs import Dome
from ..design.shapes.rotor import Rotor
from ..loads.asce7.standard import ASCE7
from ..loads.gust.standard import AT_PIECE
from ..loads.methods import air_density, method_of
from .amounts import LB_FT3
from .given import given_parts
from .remark import Remark, joined

_TABLED_SIDES = (0, 4, 6, 8)


def wind_assumptions(examination: Examination) -> Iterator[Remark]:
    """Return what was assumed of air, surroundings, gusts and shelter."""
    site, exposed = examination.site, examination.exposed
    code = site.method in ASCE7.names
    if site.terrain is not None:
        yield from _by_en1991(examination)
    elif site.elevation is None:
        rho = air_density(site)
        yield Remark(
            f"Air is taken as at sea level, {rho:.3f} kg/m3 ({rho / LB_FT3:.4f} lb/ft3): 5,000 ft "
            "(1,500 m) up the same wind pushes about a sixth less.",
            "air of sea level",
        )
    if site.exposure is None and site.terrain is None:
        yield Remark(
            "No surroundings are given: a forecast gust is taken to reach it over open ground.",
            "open ground around",
        )
    if site.topographic is None and site.terrain is None and site.method != AT_PIECE:
        yield Remark(
            "No hill, ridge or bluff is taken to speed the wind up, since 'topographic' is not "
            "given.",
            "no hill",
        )
    if code and site.wind_kind is None:
        yield Remark("The wind is taken as an ultimate speed of the code's map.", "ultimate wind")
    if code:
        yield from _gust_effect(examination)
    if exposed.suction.acts:
        figures = method_of(site, examination.structure.height).tops.document
        yield Remark(
            "Wind is taken to lift closed tops as well, where that is worse, and to lift or press "
            f"roofs and boards that it blows beneath ({figures}).",
            "wind lifts tops",
        )
    if exposed.gives_shelter:
        yield Remark(
            "What stands clear behind another part is counted as sheltered (ISO 4302).",
            "shelter behind parts counted",
        )
    elif exposed.counts_twice:
        yield Remark(
            "Parts that stand behind one another with a clear gap each take their full wind: no "
            "shelter is counted beyond a tenth of the width of the one in front.",
            "no shelter between parts",
        )
    yield Remark(
        f"The range takes wind coefficients {100 * COEFFICIENT_BAND:.0f} % off either way: a "
        "judgement.",
        f"range {100 * COEFFICIENT_BAND:.0f} % by judgement",
    )


def shape_assumptions(examination: Examination) -> Iterator[Remark]:
    """Return what was assumed of surfaces, of unusual numbers of sides, and of wheels."""
    for part, given in zip(examination.design.parts, given_parts(examination.design), strict=True):
        sides = _sides(part)
        if sides == 0 and part.surface is None:
            yield Remark(
                f"The round surface of {part.name} is taken as rough; smooth takes less wind.",
                f"{part.name} rough",
            )
        if sides is not None and sides not in _TABLED_SIDES:
            like = {3: "a square's face", 5: "a square's face", 7: "a hexagon"}.get(
                sides, "an octagon"
            )
            yield Remark(
                f"No coefficient is published for the {sides} sides of {part.name}: it takes that "
                f"of {like}.",
                f"{part.name}: wind as on {like}",
            )
        if isinstance(part.shape, Rotor):
            yield from _wheel(part, part.shape, "spins" in given)


def _sides(part: Part) -> int | None:
    match part.shape:
        case Shell(sides) | Solid(sides) | Cone(sides):
            return sides
        case Plate(Regular(sides)) | Frame(Regular(sides)):
            return sides
        case Dome():
            return 0
        case Member() as member if member.is_round:
            return 0
        case _:
            return None


def _wheel(part: Part, wheel: Rotor, said: bool) -> Iterator[Remark]:
    if wheel.spins and not said:
        yield Remark(
            f"{part.name} is taken to spin, since the file does not say that it is locked: "
            "spinning it takes more wind.",
            f"{part.name} spins",
        )
    if wheel.spins:
        yield Remark(
            f"A spinning {part.name} is taken to push as a whole disc does, 1.2 times the wind's "
            "pressure on it, whatever its blades.",
            f"{part.name} pushes as a disc",
        )


def _by_en1991(examination: Examination) -> Iterator[Remark]:
    site = examination.site
    yield Remark(
        f"Air of {air_density(site):.2f} kg/m3, and what the file does not say of a National Annex "
        "is as EN 1991-1-4 recommends: your country's annex counts before that.",
        "recommended values of EN 1991-1-4",
    )
    if site.orography is None:
        yield Remark(
            "No hill is taken to speed the wind up, since 'orography' is not given.",
            "no hill",
        )
    yield Remark(
        "c_s c_d is 1, as for what is lower than 15 m; between two faces of a rectangle the force "
        "goes by the squares of sine and cosine: a judgement.",
        "forces between faces",
    )


def _gust_effect(examination: Examination) -> Iterator[Remark]:
    low, high = examination.wind.gust_factor.min(), examination.wind.gust_factor.max()
    said = f"{low:.2f}" if f"{low:.2f}" == f"{high:.2f}" else f"{low:.2f} to {high:.2f}"
    yield Remark(
        f"The gust effect factor is the computed one, {said} (ASCE/SEI 7 26.11.4), since a gust "
        "takes in a small piece whole; 0.85 is permitted.",
        f"gust effect factor {said}",
    )
    named = dict(zip(examination.exposed.kinds, examination.wind.directionality, strict=True))
    listed = joined(f"{value:.2f} ({kind})" for kind, value in named.items() if kind != "none")
    yield Remark(
        f"Directionality Kd by each part's own kind, 1.00 where the code names none: {listed}.",
        f"Kd {listed}",
    )
