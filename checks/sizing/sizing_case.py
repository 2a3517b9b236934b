"""A design that is to be sized, and the changed ones that were examined on the way."""

from collections.abc import Callable
from dataclasses import replace

from ...design.model import Design
from ...loads.site import Site
from ..anchoring.ground_parts import GroundParts, ground_parts
from ..build_steps import Steps, steps_of
from ..examination import Examination
from .as_built import built
from .laid_weight import with_weight
from .other_height import with_height
from .remedy import holds, needed
from .wider_foot import Foot, present_foot, with_width


class Case:
    """A design, what was found of it, and in which steps and from which foot it is changed."""

    def __init__(self, design: Design, before: Examination) -> None:
        self.design = design
        self.before = before
        self.steps: Steps = steps_of(design.units)
        self.ground: GroundParts = ground_parts(before.structure)
        self.foot: Foot = present_foot(design, self.ground)
        self.names = needed(before)

    @property
    def stands(self) -> bool:
        """Return whether it neither tips nor slides as it is."""
        return holds(self.before, self.names)

    def step(self, kind: str) -> float:
        """Return the step in SI in which a kind of change is built."""
        return {
            "base width": self.steps.width,
            "ballast": self.steps.mass,
            "height": self.steps.height,
            "wind": self.steps.wind,
        }[kind]

    def changed(self, kind: str, k: int) -> Design | None:
        """Return the design changed in one way to ``k`` steps, None where it cannot be made so."""
        value = k * self.step(kind)
        match kind:
            case "base width":
                return with_width(self.design, self.ground, value)
            case "ballast":
                return with_weight(self.design, self.ground, value)
            case "height":
                return with_height(self.design, self.ground, value)
            case _:
                return _with_wind(self.design, value)

    def tried(self, kind: str, k: int) -> Examination | None:
        """Return what is found of the changed design, each looked at once."""
        if (kind, k) in self.before.as_built:
            return self.before.as_built[kind, k]
        return built(self.before, kind, k, self.changed(kind, k))

    def passes(self, kind: str) -> Callable[[int], bool]:
        """Return whether so many steps of a kind pass."""
        return lambda k: holds(self.tried(kind, k), self.names_for(kind))

    def names_for(self, kind: str) -> frozenset[str]:
        """Return the checks that a change of a kind has to pass: a heavier piece may not sink."""
        heavier = kind in ("base width", "ballast") and self.before.posts is None
        return self.names | {"bearing"} if heavier else self.names

    def known(self, kind: str) -> dict[int, Examination]:
        """Return what was tried of a kind so far, by steps, ascending."""
        return {
            k: found
            for (of, k), found in sorted(self.before.as_built.items())
            if of == kind and found is not None
        }


def _with_wind(design: Design, wind: float) -> Design:
    site = replace(design.table(Site), wind=wind)
    return replace(design, tables={**design.tables, Site: site})
