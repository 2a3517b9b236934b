"""What was read without fault but is hardly meant: shown above the verdict."""

from collections.abc import Iterator

import numpy as np

from ...design.model import Part
from ...design.placing import Body
from ...design.sections import section
from ...design.shapes.hulls import corners
from ...design.structure import Structure
from ...materials import sheets
from ...materials.stock import sheet_thicknesses
from ...units.frozen import ByValue
from ..tables.anchor_table import BallastRow
from .edges_found import swings
from .fit import DENSEST, IN_BULK, LIES_DEEP, ON_END, OUT_OF_PROPORTION, SAME_SPACE
from .graph import Graph
from .unsupported import shown_length

_SECTIONS = 8
_DEEP = 0.762
"""A depth in m to begin with, 30 in: told as an example."""


class LookAgain(ByValue, frozen=True):
    """One thing to look at again: the part and its key, what was found, what may be meant."""

    part: str
    key: str
    found: str
    hint: str


def look_again(graph: Graph) -> tuple[LookAgain, ...]:
    """Return what of a design is to be looked at again, each part once for each reason."""
    found = [*_across(graph), *_solid(graph.structure), *_proportions(graph.structure)]
    found += [*_buried(graph.structure), *_in_the_same_space(graph.structure)]
    found += [*_piled(graph.structure), *_too_heavy(graph.structure), *_on_end(graph.structure)]
    return tuple(dict.fromkeys(found))


def _across(graph: Graph) -> Iterator[LookAgain]:
    """Yield parts that stand on, or hang under, what they miss by an inch or less."""
    structure = graph.structure
    for edge in graph.edges:
        if edge.apart > 0.0:
            of, to = (structure.design.parts[structure.bodies[k].part] for k in (edge.of, edge.to))
            way = "above" if of.place.on is not None else "below"
            apart = shown_length(structure, edge.apart)
            yield LookAgain(
                of.name,
                "at",
                f"{apart} {way} {to.name}, with nothing between",
                f"move it {apart} with 'at', or draw the packer as a part",
            )


def _solid(structure: Structure) -> Iterator[LookAgain]:
    """Yield parts of sheet that are solid, and thicker than any sheet is sold."""
    thickest = max(sheet_thicknesses().values())
    for part in structure.design.parts:
        if _is_sheet(part.material) and _is_solid(part):
            size = _least(part)
            if size > thickest:
                yield LookAgain(
                    part.name,
                    "material",
                    f"solid {part.material}, {shown_length(structure, size)} thick at its least",
                    "if it is hollow say how thick its wall is: stock = '1/2 plywood'",
                )


def _is_sheet(material: str | None) -> bool:
    return material is not None and any(
        sheets.find_sheet(material, thickness) is not None
        for thickness in sheet_thicknesses().values()
    )


def _is_solid(part: Part) -> bool:
    return not part.shape.cavities() and part.mass is None


def _least(part: Part) -> float:
    """Return the least size in m of the box round a part along its own axes."""
    axes = np.stack(part.shape.axes)
    ends = [corners(hull) @ axes.T for hull in part.shape.hulls()]
    return float(np.min(np.ptp(np.vstack(ends), axis=0))) if ends else 0.0


def _proportions(structure: Structure) -> Iterator[LookAgain]:
    """Yield a part that is more than ten times as large as any other."""
    largest: dict[str, float] = {}
    for i, body in enumerate(structure.bodies):
        if not swings(structure, i):
            low, high = body.extent
            name = structure.design.parts[body.part].name
            largest[name] = max(largest.get(name, 0.0), float(np.max(high - low)))
    ordered = sorted(largest, key=lambda name: -largest[name])
    if len(ordered) > 1 and largest[ordered[0]] > OUT_OF_PROPORTION * largest[ordered[1]]:
        first, second = ordered[:2]
        yield LookAgain(
            first,
            "size",
            f"{shown_length(structure, largest[first])}, more than ten times {second}, "
            "the next largest",
            "see that each size has the unit that you mean",
        )


def _buried(structure: Structure) -> Iterator[LookAgain]:
    """Yield parts that are set in the ground and placed below it as well."""
    for part in structure.design.parts:
        if part.embed > 0.0 and part.place.reference is None and part.place.at[2] < 0.0:
            yield LookAgain(
                part.name,
                "embed",
                f"{shown_length(structure, part.embed)} deep beside a place that lies "
                f"{shown_length(structure, -part.place.at[2])} below the ground already",
                "give the depth once: 'embed' alone lowers it",
            )


def _on_end(structure: Structure) -> Iterator[LookAgain]:
    """Yield the one slender body that alone stands on the ground, and not in it."""
    standing = [body for body in structure.bodies if _stands(structure, body)]
    if len(standing) != 1 or not standing[0].shape.has_foot:
        return
    (body,) = standing
    if structure.design.parts[body.part].embed > 0.0:
        return
    low, high = np.asarray(body.extent)
    across, tall = float(np.max((high - low)[:2])), float((high - low)[2])
    if tall >= ON_END * across:
        yield LookAgain(
            structure.design.parts[body.part].name,
            "embed",
            f"{shown_length(structure, tall)} high it stands on its end, "
            f"{shown_length(structure, across)} wide",
            f"if it goes into the ground say how deep: embed = '{shown_length(structure, _DEEP)}'",
        )


def _stands(structure: Structure, body: Body) -> bool:
    """Return whether a body stands on the ground or in it."""
    touching = {patch.part for patch in structure.patches}
    return body.part in touching or structure.design.parts[body.part].embed > 0.0


def _in_the_same_space(structure: Structure) -> Iterator[LookAgain]:
    """Yield parts of which much lies within another: both weigh in full, and weight holds down."""
    bodies, volume = structure.bodies, structure.body_volume
    low, high = np.array([body.extent for body in bodies]).swapaxes(0, 1)
    shared = np.maximum(np.minimum(high[:, None], high) - np.maximum(low[:, None], low), 0.0)
    lesser = np.minimum(volume[:, None], volume)
    near = np.triu((shared.prod(axis=-1) >= SAME_SPACE * lesser) & (lesser > 0.0), 1)
    for i, j in np.argwhere(near).tolist():
        if min(bodies[i].shape.solidity, bodies[j].shape.solidity) < 1.0:
            continue
        share = _shared(bodies[i], bodies[j]) / float(lesser[i, j])
        if share >= SAME_SPACE:
            less, more = (i, j) if volume[i] <= volume[j] else (j, i)
            part, other = (structure.design.parts[bodies[k].part].name for k in (less, more))
            yield LookAgain(
                part,
                "at",
                f"{share:.0%} of it fills the same space as {other}, and both are weighed",
                "move it, make one of the two hollow, or leave one out",
            )


def _shared(one: Body, other: Body) -> float:
    """Return the volume in m3 that two bodies share, by level sections between which it is even."""
    low, high = max(one.bottom, other.bottom), min(one.top, other.top)
    step = (high - low) / _SECTIONS
    levels = [low + (k + 0.5) * step for k in range(_SECTIONS)]
    common = [section(one, z).intersection(section(other, z)).area for z in levels]
    return step * float(sum(common))


def _piled(structure: Structure) -> Iterator[LookAgain]:
    """Yield ballast that would lie so deep on its part that there may be no room for it."""
    for row in structure.design.several(BallastRow):
        name = row.inside if row.on is None else row.on
        area = sum(
            body.shape.from_above().area
            for body in structure.bodies
            if structure.design.parts[body.part].name == name
        )
        deep = row.count * row.each / IN_BULK / area if area > 0.0 else 0.0
        if deep > LIES_DEEP:
            yield LookAgain(
                row.name,
                "count",
                f"it would lie some {shown_length(structure, deep)} deep on {name}",
                "see that there is room for all of it",
            )


def _too_heavy(structure: Structure) -> Iterator[LookAgain]:
    """Yield parts that weigh more than lead would."""
    mass, volume = structure.body_mass[1], structure.body_volume
    for i in np.flatnonzero((volume > 0.0) & (mass > DENSEST * volume)).tolist():
        part = structure.design.parts[structure.bodies[i].part]
        key = "mass" if part.mass is not None else "density"
        yield LookAgain(part.name, key, "it weighs more than lead would", "see that it is meant")
