"""A design that is to be sized, and the changed ones that were examined on the way."""

from collections.abc import Callable

from ...design.faults import DesignError
from ...design.model import Design
from ...loads.wind.site import Site
from ...units.frozen import replace
from ..anchoring.ground_parts import GroundParts, ground_parts
from ..anchoring.held import held_by
from ..as_one import AsOne, as_one
from ..examination import Examination
from ..judged.build_steps import Steps, steps_of
from ..situation import Situation
from .as_built import built, situation_changed
from .laid_weight import with_weight
from .other_height import with_height
from .remedy import checks_needed, checks_pass, failing
from .wider_foot import Foot, present_foot, with_width


class Case:
    """A design, what was found of it, and in which steps and from which foot it is changed."""

    def __init__(self, design: Design, before: Examination) -> None:
        self.design = design
        self.before = before
        self.steps: Steps = steps_of(design.units)
        self.ground: GroundParts = ground_parts(before.structure)
        self.foot: Foot = present_foot(design, self.ground)
        self.names = checks_needed(before)
        self._whole: dict[tuple[str, int], AsOne | None] = {}

    @property
    def stands(self) -> bool:
        """Return whether it neither tips nor slides as it is."""
        return checks_pass(self.before, self.names)

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
        whole = self.whole(kind, k)
        at = None if whole is None else whole.at
        return built(self.before, kind, k, None if at is None else self.changed(kind, k), at)

    def whole(self, kind: str, k: int) -> AsOne | None:
        """Return what is found of the changed design as one body: its limits, and what it weighs.

        None where it cannot stand at all. That takes a small part of what its joints and parts do.
        """
        if (kind, k) in self.before.as_built:
            return self.before.as_built[kind, k]
        if (kind, k) not in self._whole:
            design = self.changed(kind, k)
            at = None if design is None else situation_changed(self.before, design)
            self._whole[kind, k] = None if at is None or design is None else _as_one(at, design)
        return self._whole[kind, k]

    def passes(self, kind: str, *, unbuilt: bool = False) -> Callable[[int], bool]:
        """Return whether so many steps of a kind pass: as one body first, then its parts too.

        ``unbuilt`` is what is told of one that cannot be built so.
        """
        names = self.names_for(kind)

        def does(k: int) -> bool:
            whole = self.whole(kind, k)
            if whole is not None and failing(whole, names):
                return False
            found = None if whole is None else self.tried(kind, k)
            return unbuilt if found is None else checks_pass(found, names)

        return does

    def names_for(self, kind: str) -> frozenset[str]:
        """Return the checks that a change of a kind has to pass: a heavier piece may not sink."""
        heavier = kind in ("base width", "ballast") and self.before.posts is None
        return self.names | {"bearing"} if heavier else self.names

    def known(self, kind: str) -> dict[int, AsOne]:
        """Return what was tried of a kind so far, by steps, ascending."""
        every = {**self._whole, **self.before.as_built}
        return {
            k: found
            for (of, k), found in sorted(every.items(), key=lambda one: one[0])
            if of == kind and found is not None
        }


def _as_one(at: Situation, design: Design) -> AsOne | None:
    """Return what is found of a design as one body; None where it cannot be held so."""
    try:
        return as_one(at, held_by(design, at.structure, at.standing.ground), design)
    except DesignError:
        return None


def _with_wind(design: Design, wind: float) -> Design:
    site = replace(design.table(Site), wind=wind)
    return replace(design, tables={**design.tables, Site: site})
