"""The whole examination of a design: structure, wind, checks, limits and remedies in one result."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from ..design.model import Design
from ..design.structure import Structure, build_structure
from ..loads.combinations import Factors, factors
from ..loads.methods import method_of
from ..loads.site import Site
from ..loads.wind import Actions, Exposed, bare, expose
from ..materials import grounds
from .anchored import check_held, hold_of, sideways_held
from .ballasted import with_ballast
from .bearing import check_bearing
from .design_wind import DesignWind, design_actions, design_wind
from .given_loads import check_given_load, given_loads
from .held import Held, held_by
from .joint_places import fastened_by, places
from .joints import JointFound, find_joints
from .judging import Check
from .limits import Limits, limits
from .loose import check_loose, loose_parts
from .overturning import check_overturning
from .people import check_push
from .remedies import Remedies, remedies
from .sliding import check_sliding
from .standing import Standing

MINIMUM = "minimum"


@dataclass(frozen=True)
class Examination:
    """Everything that was found of a design, in SI units; no text for people."""

    design: Design
    site: Site
    structure: Structure
    exposed: Exposed
    standing: Standing
    factors: Factors
    wind: DesignWind
    checks: tuple[Check, ...]
    free: tuple[Check, Check]
    held: Held
    joints: tuple[JointFound, ...]
    limits: Limits
    remedies: Remedies

    @property
    def overturning(self) -> Check:
        """Return the check against overturning without anchors."""
        return self.free[0]

    @property
    def sliding(self) -> Check:
        """Return the check against sliding without anchors."""
        return self.free[1]

    @property
    def needs_anchors(self) -> bool:
        """Return whether it tips or slides as it stands, without anchors and guys."""
        return not (self.overturning.passes and self.sliding.passes)

    @property
    def minimum_governs(self) -> bool:
        """Return whether the least wind of the standard decides a check."""
        return any(check.case == MINIMUM for check in self.checks)

    @property
    def passes(self) -> bool:
        """Return whether every check passes."""
        return all(check.passes for check in self.checks)


def examine(design: Design) -> Examination:
    """Return the examination of a design. Raises DesignError where it cannot stand at all."""
    site = design.table(Site)
    design = with_ballast(design)
    structure = build_structure(design)
    surfaces = [part.surface for part in design.parts]
    each = bare(structure, surfaces)
    exposed = expose(structure, surfaces, site.sheltering, each=each)
    method = method_of(site, structure.height)
    wind, actions = design_wind(exposed, method)
    standing = Standing(structure, grounds.find(site.ground), site.slope or 0.0)
    used = factors(site)
    held = held_by(design, structure, standing.ground)
    free = check_overturning(standing, actions, used), check_sliding(standing, actions, used)
    checks = [
        *(_held_checks(held, standing, actions, used) if held else free),
        check_bearing(standing, actions, used, hold_of(held, standing, used) if held else None),
        *(check_held(held, standing, actions, used) if held else ()),
    ]
    pushed = check_push(standing, used, site.people)
    checks += [pushed] if pushed else []
    fastened = fastened_by(structure)
    loose = loose_parts(structure, standing.ground, standing.slope, fastened)
    its_own = [one.exposed(structure, site.sheltering, each) for one in loose]
    its_actions = [design_actions(alone, method) for alone in its_own]
    checks += check_loose(loose, its_actions, used)
    checks += [check_given_load(standing, load, used, site) for load in given_loads(design)]

    def blow(some: NDArray[np.bool_]) -> Actions:
        return design_actions(expose(structure, surfaces, site.sheltering, some, each), method)

    joints = find_joints(
        structure, fastened, places(structure, site.basis), blow, used, standing.slope
    )
    checks += [one.check for one in joints]
    return Examination(
        design=design,
        site=site,
        structure=structure,
        exposed=exposed,
        standing=standing,
        factors=used,
        wind=wind,
        checks=tuple(checks),
        free=free,
        held=held,
        joints=joints,
        limits=limits(standing, exposed, site, tuple(zip(loose, its_own, strict=True))),
        remedies=remedies(standing, actions, used, slides=not free[1].passes),
    )


def _held_checks(
    held: Held, standing: Standing, actions: Actions, used: Factors
) -> tuple[Check, Check]:
    """Return overturning and sliding with what holds the piece down."""
    return (
        check_overturning(standing, actions, used, hold_of(held, standing, used)),
        check_sliding(standing, actions, used, sideways_held(held, used)),
    )
