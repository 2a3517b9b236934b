"""The whole examination of a design: structure, wind, checks, limits and remedies in one result."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from ..design.faults import DesignError, Fault
from ..design.model import Design
from ..design.shapes.shape import Array
from ..design.structure import Structure, build_structure
from ..loads.combinations import Factors, factors
from ..loads.methods import Method, method_of
from ..loads.site import Site
from ..loads.wind import Actions, Exposed, expose, joined, minimum_actions, wind_actions
from ..materials import grounds
from .anchor_choice import AnchorChoice, Loaded, choose_anchors
from .anchored import check_tied
from .ballasted import with_ballast
from .bearing import check_bearing
from .embedded_posts import Posts, check_ends, check_posts, posts_of
from .given_loads import check_given_load, given_loads
from .held import Held, held_by
from .judging import Check
from .limits import Limits, limits
from .loose import check_loose, loose_parts
from .overturning import check_overturning
from .people import check_push, check_push_on_posts
from .remedies import NOTHING_TO_HOLD, Remedies, remedies
from .sliding import check_sliding
from .standing import Standing

MINIMUM = "minimum"
EMBED = "embedment: "


@dataclass(frozen=True, eq=False)
class DesignWind:
    """The site's wind on the structure along the azimuths (D,): unfactored, SI units.

    ``force`` and ``uplift`` in N and ``force_height`` in m are the method's own, Case A for signs,
    the greatest for any gust up to the design's; ``area`` is the silhouette in m2, overlap once.
    ``pressure`` in Pa is at the structure's top, without directionality. ``gust_factor`` (D,) and
    ``directionality`` (bodies,) are what the method used.
    """

    azimuths: Array
    area: Array
    force: Array
    force_height: Array
    uplift: Array
    pressure: float
    gust_factor: Array
    directionality: Array


@dataclass(frozen=True, eq=False)
class Examination:
    """Everything that was found of a design, in SI units; no text for people.

    ``free`` are overturning and sliding without anchors, None where ``posts`` in the ground carry
    it.
    """

    design: Design
    site: Site
    structure: Structure
    exposed: Exposed
    standing: Standing
    factors: Factors
    wind: DesignWind
    actions: Actions
    checks: tuple[Check, ...]
    free: tuple[Check, Check] | None
    posts: Posts | None
    held: Held
    limits: Limits
    remedies: Remedies

    @property
    def loaded(self) -> Loaded:
        """Return what has to be held, for choosing what holds it."""
        return Loaded(self.design, self.standing, self.actions, self.factors)

    @cached_property
    def anchors(self) -> AnchorChoice | None:
        """Return the fewest and plainest anchors that hold it; None where none do."""
        return choose_anchors(self.loaded)

    @property
    def overturning(self) -> Check:
        """Return the check against overturning without anchors. ValueError: posts carry it."""
        return self._free()[0]

    @property
    def sliding(self) -> Check:
        """Return the check against sliding without anchors. ValueError: posts carry it."""
        return self._free()[1]

    def _free(self) -> tuple[Check, Check]:
        if self.free is None:
            raise ValueError("free: posts in the ground carry it")
        return self.free

    @property
    def needs_anchors(self) -> bool:
        """Return whether it tips or slides as it stands, or its posts in the ground give way."""
        if self.free is None:
            return any(not check.passes for check in self.checks if check.name.startswith(EMBED))
        return not all(check.passes for check in self.free)

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
    exposed = expose(structure, surfaces, site.sheltering)
    method = method_of(site, structure.height)
    wind, actions = _design_wind(exposed, method)
    standing = Standing(structure, grounds.find(site.ground), site.slope or 0.0)
    used = factors(site)
    held = held_by(design, structure, standing.ground)
    posts = posts_of(structure, standing.ground)
    if posts is not None and held:
        raise DesignError((_both(design),))
    checks: list[Check]
    free: tuple[Check, Check] | None = None
    pushed = check_push(standing, used, site.people)
    if posts is not None:
        checks = check_posts(posts, structure, actions, used)
        checks.append(check_ends(posts, structure, standing.ground, used))
        pushed = check_push_on_posts(posts, structure, used, site.people)
    else:
        free = check_overturning(standing, actions, used), check_sliding(standing, actions, used)
        if held:
            checks = check_tied(held, standing, actions, used)
        else:
            checks = [*free, check_bearing(standing, actions, used)]
    checks += [pushed] if pushed else []
    loose = loose_parts(structure, standing.ground, standing.slope)
    its_own = [one.exposed(structure, site.sheltering) for one in loose]
    its_actions = [_design_wind(alone, method)[1] for alone in its_own]
    checks += check_loose(loose, its_actions, used)
    checks += [check_given_load(standing, load, used, site, posts) for load in given_loads(design)]
    return Examination(
        design=design,
        site=site,
        structure=structure,
        exposed=exposed,
        standing=standing,
        factors=used,
        wind=wind,
        actions=actions,
        checks=tuple(checks),
        free=free,
        posts=posts,
        held=held,
        limits=limits(standing, exposed, site, tuple(zip(loose, its_own, strict=True)), posts),
        remedies=NOTHING_TO_HOLD
        if free is None
        else remedies(standing, actions, used, slides=not free[1].passes),
    )


def _both(design: Design) -> Fault:
    return Fault(
        design.file,
        None,
        "anchors and guys",
        None,
        "anchors or guys beside posts in the ground",
        "one of the two: how they share the wind is not known",
        "leave out 'embed', or the anchors and guys",
    )


def _design_wind(exposed: Exposed, method: Method) -> tuple[DesignWind, Actions]:
    """Return the site's wind for people, and all its actions (Q, D, C) for the checks.

    A round section may take more at a lower gust, so besides the design pressure each pressure
    below it at which a section switches is tried, just before the switch.
    """
    top = float(method.pressure(np.array(exposed.height)))
    ratio = method.pressure(exposed.pressure_height) / top
    switch = exposed.limit / ratio
    pressures = np.append(np.unique(switch[switch < top]), top)
    gust = method.gust(exposed.height, exposed.breadth)
    directionality = method.directionality(exposed.kinds)
    actions = wind_actions(
        exposed,
        pressures,
        ratio=ratio,
        directionality=directionality,
        gust=gust,
        above=switch < pressures[:, None],
    )
    plain = np.hypot(actions.force[..., 0, 0], actions.force[..., 0, 1])
    greatest = plain.argmax(axis=0)
    every = np.arange(len(exposed.azimuths))
    force = plain[greatest, every]
    tilting = np.hypot(actions.tilting[..., 0, 0], actions.tilting[..., 0, 1])[greatest, every]
    wind = DesignWind(
        azimuths=exposed.azimuths,
        area=exposed.silhouette.area,
        force=force,
        force_height=np.where(force > 0.0, tilting / np.where(force > 0.0, force, 1.0), 0.0),
        uplift=actions.uplift.max(axis=(0, 2)),
        pressure=top,
        gust_factor=gust,
        directionality=directionality,
    )
    if method.minimum is None:
        return wind, actions
    least = minimum_actions(exposed, method.minimum)
    return wind, joined(actions, _for_each_gust(least, len(pressures)))


def _for_each_gust(actions: Actions, count: int) -> Actions:
    """Return actions (D, C) repeated for each of ``count`` gusts."""

    def repeat(values: Array) -> Array:
        return np.repeat(values[None], count, axis=0)

    return Actions(
        actions.azimuths,
        repeat(actions.force),
        repeat(actions.tilting),
        repeat(actions.twist),
        repeat(actions.uplift),
        repeat(actions.lifting),
        actions.names,
    )
