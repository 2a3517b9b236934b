"""What was read without fault but is hardly meant: shown above the verdict."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from ..design.model import Part
from ..design.shapes.shape import corners
from ..design.structure import Structure
from ..materials import sheets
from ..materials.stock import sheet_thicknesses
from .fit import OUT_OF_PROPORTION
from .graph import Graph, swings
from .unsupported import length


@dataclass(frozen=True)
class LookAgain:
    """One thing to look at again: the part and its key, what was found, what may be meant."""

    part: str
    key: str
    found: str
    hint: str


def look_again(graph: Graph) -> tuple[LookAgain, ...]:
    """Return what of a design is to be looked at again, each part once for each reason."""
    found = [*_across(graph), *_solid(graph.structure), *_proportions(graph.structure)]
    found += _buried(graph.structure)
    return tuple(dict.fromkeys(found))


def _across(graph: Graph) -> Iterator[LookAgain]:
    """Yield parts that stand on, or hang under, what they miss by an inch or less."""
    structure = graph.structure
    for edge in graph.edges:
        if edge.apart > 0.0:
            of, to = (structure.design.parts[structure.bodies[k].part] for k in (edge.of, edge.to))
            way = "above" if of.place.on is not None else "below"
            apart = length(structure, edge.apart)
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
                    f"solid {part.material}, {length(structure, size)} thick at its least",
                    "if it is hollow say how thick its wall is: stock = '1/2 plywood'",
                )


def _is_sheet(material: str | None) -> bool:
    return material is not None and any(
        sheets.find(material, thickness) is not None for thickness in sheet_thicknesses().values()
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
            f"{length(structure, largest[first])}, more than ten times {second}, the next largest",
            "see that each size has the unit that you mean",
        )


def _buried(structure: Structure) -> Iterator[LookAgain]:
    """Yield parts that are set in the ground and placed below it as well."""
    for part in structure.design.parts:
        if part.embed > 0.0 and part.place.reference is None and part.place.at[2] < 0.0:
            yield LookAgain(
                part.name,
                "embed",
                f"{length(structure, part.embed)} deep beside a place that lies "
                f"{length(structure, -part.place.at[2])} below the ground already",
                "give the depth once: 'embed' alone lowers it",
            )
