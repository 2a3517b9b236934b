"""A piece as one body: what is found of it in wind before any of its parts is judged."""

from collections.abc import Sequence
from functools import cached_property, partial

from ..design.faults import DesignError, Fault
from ..design.model import Design
from ..design.structure import Structure
from ..loads.actions import Actions
from ..loads.combinations import Factors
from ..loads.exposed import Exposed
from ..loads.wind.site import Site
from ..units.frozen import ByIdentity
from .acting.borne import Borne
from .acting.design_wind import DesignWind
from .acting.given_loads import Level
from .anchoring.anchored import check_tied, hold_of, sideways_held
from .anchoring.embedded_posts import Posts, check_ends, check_posts, check_pull_out, posts_of
from .anchoring.held import Held, held_by
from .judged.judging import Check, Kind
from .limits import Limits, limits
from .loose import Loose
from .people import check_climb, check_push, check_push_on_posts
from .situation import Situation
from .stability.bearing import check_bearing
from .stability.overturning import Hold, check_overturning
from .stability.sliding import check_sliding
from .stability.standing import Standing


class AsOne(ByIdentity, frozen=True):
    """What is found of a piece as one body, in SI units: it tells nothing of its joints and parts.

    ``checks`` are those of wind and people. ``free`` are overturning and sliding without anchors,
    None where ``posts`` in the ground carry it. ``tied`` is how what holds it down holds, upward
    and sideways.
    """

    at: Situation
    design: Design
    checks: tuple[Check, ...]
    free: tuple[Check, Check] | None
    posts: Posts | None
    held: Held
    tied: tuple[Hold, Level] | None

    @property
    def site(self) -> Site:
        """Return its place."""
        return self.at.site

    @property
    def structure(self) -> Structure:
        """Return its bodies and what they weigh."""
        return self.at.structure

    @property
    def exposed(self) -> Exposed:
        """Return what it offers the wind."""
        return self.at.exposed

    @property
    def standing(self) -> Standing:
        """Return how it stands on the ground."""
        return self.at.standing

    @property
    def factors(self) -> Factors:
        """Return the load factors for the whole."""
        return self.at.factors

    @property
    def wind(self) -> DesignWind:
        """Return the site's wind on it, unfactored."""
        return self.at.wind

    @property
    def actions(self) -> Actions:
        """Return all actions (Q, D, C) of the site's wind on it."""
        return self.at.actions

    @property
    def loose(self) -> tuple[Loose, ...]:
        """Return the parts that only stand on it."""
        return self.at.loose

    @property
    def loads(self) -> tuple[Borne, ...]:
        """Return the loads that the design names."""
        return self.at.loads

    @cached_property
    def limits(self) -> Limits:
        """Return the gusts in which it tips and slides as it stands."""
        loose = tuple(zip(self.loose, self.at.loose_exposed, strict=True))
        return limits(self.standing, self.exposed, self.site, loose, self.posts)

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
            carried = [c for c in self.checks if c.kind in (Kind.EMBEDMENT, Kind.PULL_OUT)]
            return any(not check.passes for check in carried)
        return not all(check.passes for check in self.free)


def stands_as_one(at: Situation) -> AsOne:
    """Return what is found of a piece as one body. DesignError: anchors beside posts."""
    return as_one(at, held_by(at.design, at.structure, at.standing.ground), at.design)


def as_one(
    at: Situation,
    held: Held,
    design: Design,
    before: AsOne | None = None,
    tied_checks: Sequence[Check] = (),
) -> AsOne:
    """Return what is found of a design as one body, held so. DesignError: anchors beside posts.

    ``before`` is what was found of it held otherwise, ``tied_checks`` are its checks held so where
    they are known: neither is worked out again.
    """
    posts = posts_of(at.structure, at.standing.ground)
    if posts is not None:
        if held:
            raise DesignError((_both(design),))
        return AsOne(at, design, tuple(_on_posts(at, posts)), None, posts, held, None)
    standing, actions, used = at.standing, at.actions, at.factors
    if before is not None and before.at is at and before.free is not None:
        free = before.free
    else:
        free = check_overturning(standing, actions, used), check_sliding(standing, actions, used)
    tied: tuple[Hold, Level] | None = None
    hold: Hold | None = None
    if held:
        hold = hold_of(held, standing, used)
        tied = hold, partial(sideways_held, held, used)
        checks = [*tied_checks] or check_tied(held, standing, actions, used)
    else:
        checks = [*free, check_bearing(standing, actions, used)]
    people = (
        check_push(standing, used, at.site.people, hold),
        check_climb(standing, used, at.site.people, hold),
    )
    checks += [check for check in people if check is not None]
    return AsOne(at, design, tuple(checks), free, None, held, tied)


def _on_posts(at: Situation, posts: Posts) -> list[Check]:
    structure, ground, used = at.structure, at.standing.ground, at.factors
    checks = check_posts(posts, structure, at.actions, used)
    checks.append(check_ends(posts, structure, ground, used))
    if at.actions.uplift.any():
        checks.append(check_pull_out(posts, structure, at.actions, used))
    push = check_push_on_posts(posts, structure, used, at.site.people)
    return checks if push is None else [*checks, push]


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
