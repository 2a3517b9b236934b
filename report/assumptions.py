"""What was assumed where the design is silent: each default that affected the answer."""

import re
from collections.abc import Iterator
from dataclasses import replace
from math import cos, radians, sin, sqrt

import numpy as np

from .. import materials
from ..checks.examination import Examination
from ..checks.limits import COEFFICIENT_BAND
from ..design.model import Part
from ..design.shapes.bodies import Cone, Shell, Solid
from ..design.shapes.flat import Frame, Plate
from ..design.shapes.plans import Regular
from ..design.shapes.rotor import Rotor
from ..loads.methods import air_density
from .amounts import LB_FT3, Amounts
from .given import given_parts
from .remark import Remark, joined

_TABLED_SIDES = (0, 4, 6, 8)
_LUMBER = re.compile(r"^(.*) is ([\d /]+) in (?:wide and|by) ([\d /]+) in(?: high)?$")
_SHEET = re.compile(r"^(.*) is ([\d /.]+ in) thick$")
_STEEPEST_TOLD = radians(1.0)


def assumptions(examination: Examination) -> tuple[Remark, ...]:
    """Return every default that affected the answer, each true of this design."""
    amounts = Amounts(examination.design.units == "metric")
    return (
        *_weights(examination, amounts),
        *_sizes(examination),
        *_ground(examination, amounts),
        *_level(examination, amounts),
        *_friction(examination),
        *_held_together(examination),
        *_wind(examination),
        *_shapes(examination),
        *_basis(examination),
    )


def plain_source(source: str) -> str:
    """Return a source without its keys to the list of sources."""
    return re.sub(r"\s*(?:as quoted in )?\[R\d+\]", "", source).strip()


def first_source(source: str) -> str:
    """Return the first of several sources."""
    return plain_source(source).split("; ")[0]


def _weights(examination: Examination, amounts: Amounts) -> Iterator[Remark]:
    design = examination.design
    used = dict.fromkeys(
        p.material for p in design.parts if p.material and p.mass is None and p.density is None
    )
    if design.weighed is not None and used:
        names = joined(used)
        yield Remark(
            f"What is of {names} is scaled to the {amounts.mass(design.weighed)} that a scale "
            "showed, all alike.",
            f"{names} scaled to the scale",
        )
        return
    for name in used:
        of = materials.find(name)
        typical, light, heavy = of.typical, of.light, of.heavy
        band = (
            ""
            if light == heavy
            else f" ({amounts.bare_density(light)} to {amounts.bare_density(heavy)})"
        )
        yield Remark(
            f"{name[0].upper()}{name[1:]} weighs {amounts.density(typical)}{band}: "
            f"{of.stands_for} ({first_source(of.source)}).",
            f"{name} {amounts.density(typical)}",
        )


def _sizes(examination: Examination) -> Iterator[Remark]:
    for note in examination.design.notes:
        size = note.partition(": ")[2] or note
        size = _LUMBER.sub(r"\1 \2 x \3 in", size)
        yield Remark(f"Read as: {note}.", _SHEET.sub(r"\1 \2", size))


def _ground(examination: Examination, amounts: Amounts) -> Iterator[Remark]:
    ground = examination.standing.ground
    yield Remark(
        f"Ground '{ground.name}' means {ground.description}; you can tell it: {ground.field_cue}.",
        "",
    )
    bears = ground.ratings["allowable pressure"]
    yield Remark(
        f"{ground.name[0].upper()}{ground.name[1:]} is taken to bear "
        f"{amounts.pressure(bears.value)} ({plain_source(bears.source)}).",
        f"{ground.name} bears {amounts.pressure(bears.value)}",
    )
    gives = ground.ratings.get("yield pressure")
    if gives is not None:
        yield Remark(
            f"{ground.name[0].upper()}{ground.name[1:]} gives way under an edge at "
            f"{amounts.pressure(gives.value)} ({plain_source(gives.source)}), so it turns about a "
            "line a little inside its edge.",
            f"gives way at {amounts.pressure(gives.value)}",
        )
    yield Remark("Its foot is taken to bear on the ground all round.", "even")


def _level(examination: Examination, amounts: Amounts) -> Iterator[Remark]:
    """Say what one degree costs where no slope is given."""
    standing, limits = examination.standing, examination.limits
    if examination.site.slope is not None:
        return
    costs: list[str] = []
    if limits.forecast_tipping:
        weight = np.full(len(standing.normals), standing.structure.weight("typical"))
        pivot = standing.pivot(weight)
        level = standing.hold("typical", pivot)[limits.tipping_line]
        sloped = replace(standing, slope=_STEEPEST_TOLD).hold("typical", pivot)
        share = max(float(sloped.min() / level), 0.0) if level > 0.0 else 0.0
        less = limits.forecast_tipping * sqrt(min(share, 1.0))
        costs.append(
            f"tipping from about {amounts.bare_gust(limits.forecast_tipping)} down to "
            f"{amounts.gust(less)}"
        )
    if limits.forecast_sliding:
        mu = min(
            standing.ground.friction[p.contact].coefficient for p in standing.structure.patches
        )
        share = max(cos(_STEEPEST_TOLD) - sin(_STEEPEST_TOLD) / mu, 0.0)
        less = limits.forecast_sliding * sqrt(share)
        costs.append(
            f"sliding from about {amounts.bare_gust(limits.forecast_sliding)} down to "
            f"{amounts.gust(less)}"
        )
    if costs:
        yield Remark(
            "The ground is taken as level, since no slope is given: one degree of slope brings "
            f"{joined(costs)}.",
            "level",
        )
    else:
        yield Remark("The ground is taken as level, since no slope is given.", "level")


def _friction(examination: Examination) -> Iterator[Remark]:
    standing, design = examination.standing, examination.design
    kinds = dict.fromkeys(patch.contact for patch in standing.structure.patches)
    for kind in kinds:
        row = standing.ground.friction[kind]
        note = f"; {plain_source(row.note)}" if row.note else ""
        yield Remark(
            f"Friction of {kind} on {standing.ground.name} is taken as {row.coefficient:.2f}: "
            f"{plain_source(row.source)}{note}.",
            f"friction of {kind} {row.coefficient:.2f}",
        )
    for i in dict.fromkeys(patch.part for patch in standing.structure.patches):
        part = design.parts[i]
        if part.contact is None and part.material is None:
            yield Remark(
                f"What {part.name} rubs on the ground with is not said: taken as wood.",
                f"{part.name} rubs as wood",
            )


def _held_together(examination: Examination) -> Iterator[Remark]:
    if len(examination.design.parts) > 1:
        yield Remark(
            "All parts are taken as held together, so that it tips and slides as one piece.",
            "held together",
        )


def _wind(examination: Examination) -> Iterator[Remark]:
    site, exposed = examination.site, examination.exposed
    code = site.method.startswith("ASCE")
    if site.elevation is None:
        rho = air_density(site)
        yield Remark(
            f"Air is taken as at sea level, {rho:.3f} kg/m3 ({rho / LB_FT3:.4f} lb/ft3): 5,000 ft "
            "(1,500 m) up the same wind pushes about a sixth less.",
            "air of sea level",
        )
    if site.exposure is None:
        yield Remark(
            "No surroundings are given: a forecast gust is taken to reach it over open ground.",
            "open ground around",
        )
    if site.topographic is None and site.method != "gust":
        yield Remark(
            "No hill, ridge or bluff is taken to speed the wind up, since 'topographic' is not "
            "given.",
            "no hill",
        )
    if code and site.wind_kind is None:
        yield Remark("The wind is taken as an ultimate speed of the code's map.", "ultimate wind")
    if code:
        yield from _gust_effect(examination)
    if exposed.suction.area.any():
        yield Remark(
            "Wind is taken to lift closed tops, roofs and decks as well, where that is worse: the "
            "coefficients are a judgement after ASCE/SEI 7.",
            "wind lifts tops",
        )
    apart = len(set(examination.structure.stack)) > 1
    copies = any(part.place.count > 1 for part in examination.design.parts)
    if site.sheltering:
        yield Remark(
            "What stands clear behind another part is counted as sheltered (ISO 4302).",
            "shelter behind parts counted",
        )
    elif apart or copies:
        yield Remark(
            "Parts that stand apart, and copies of a ring, each take their full wind: no shelter "
            "behind one another is counted.",
            "no shelter between parts",
        )
    yield Remark(
        f"The range takes wind coefficients {100 * COEFFICIENT_BAND:.0f} % off either way: a "
        "judgement.",
        f"range {100 * COEFFICIENT_BAND:.0f} % by judgement",
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


def _shapes(examination: Examination) -> Iterator[Remark]:
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
            f"A spinning {part.name} is taken to push as a whole disc can at most (momentum "
            "theory), whatever its blades.",
            f"{part.name} pushes as a disc",
        )


def _basis(examination: Examination) -> Iterator[Remark]:
    site, used = examination.site, examination.factors
    if site.basis == "service" and not site.safety_given:
        yield Remark(
            f"Half again to spare is asked against tipping and sliding (factor of safety "
            f"{site.safety:g}): {plain_source(used.source)}.",
            "half again to spare",
        )
    elif not site.basis_given and site.basis != "service":
        yield Remark(
            f"Judged on the {site.basis} basis, since none is named: {plain_source(used.source)}.",
            f"{site.basis} basis",
        )
