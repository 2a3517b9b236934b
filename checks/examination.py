"""The whole examination of a design: structure, wind, checks, limits and remedies in one result."""

from collections.abc import Sequence
from functools import cached_property

from ..design.model import Design
from ..loads.combinations import Factors
from ..statics.contacts.graph import Graph
from ..statics.contacts.look_again import LookAgain
from ..statics.footings import HoldDown
from ..statics.one_thread import in_one_thread
from ..units.frozen import ByIdentity
from .acting.design_wind import design_wind
from .acting.given_loads import check_given_loads
from .acting.internal_forces import InternalForces, internal_forces
from .acting.load_cases import MINIMUM, LoadCases
from .acting.point_loads import PointLoads
from .anchoring.added_weight import Added, added_weight
from .anchoring.anchor_choice import AnchorChoice, AnchorSearch, Loaded, search_anchors
from .anchoring.held import Held, held_by
from .as_one import AsOne, as_one
from .fasteners.spacing import SpacingFound
from .fasteners.ties import fastened
from .joints.joint_check import JointFound
from .judged.judging import Check, Kind
from .loose import check_loose
from .members.member_check import Members
from .plates.all_members import worst_of_each
from .seams.held_together import rooms_judged
from .situation import Situation, situation_of
from .stability.remedies import NOTHING_TO_HOLD, Remedies, remedies
from .strength import Strength, strength_of, worse_of

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .anchoring.guy_choice import GuyChoice
    from .joints.joint_sizing import JointSizing
    from .seams.seam_check import SeamFound
    from .seams.seam_demands import Seams
    from .sizing.thicker import Thicker
    from .verdict import Verdict


_BY_WIND = (Kind.OVERTURNING, Kind.SLIDING, Kind.EMBEDMENT, Kind.PULL_OUT)


class Examination(AsOne, frozen=True):
    """Everything that was found of a design, in SI units; no text for people.

    ``free`` are overturning and sliding without anchors, None where ``posts`` in the ground carry
    it. ``look_again`` is what was read without fault but is hardly meant. ``equilibrium_error`` is
    the greatest imbalance of any body in any load case that was solved, over that case's load.
    ``ways`` are what was found of its joints and sticks by each way in which it may stand.
    """

    members: Members
    joints: tuple[JointFound, ...]
    spacings: tuple[SpacingFound, ...]
    look_again: tuple[LookAgain, ...] = ()
    ways: tuple[Strength, ...] = ()
    equilibrium_error: float = 0.0

    @property
    def fastened_seams(self) -> "tuple[SeamFound, ...]":
        """Return the seams of which the file says how they are fastened, judged."""
        return self.at.seams

    @cached_property
    def remedies(self) -> Remedies:
        """Return a first estimate of what would hold it."""
        if self.free is None:
            return NOTHING_TO_HOLD
        slides = not self.free[1].passes
        return remedies(self.standing, self.actions, self.factors, slides=slides)

    @property
    def loaded(self) -> Loaded:
        """Return what has to be held, for choosing what holds it."""
        return Loaded(self.design, self.standing, self.actions, self.factors)

    @cached_property
    def anchors(self) -> AnchorChoice | None:
        """Return the fewest and plainest anchors that hold it; None where none do."""
        return self.anchor_search.choice

    @cached_property
    def anchor_search(self) -> AnchorSearch:
        """Return the anchors that hold it, or what fails with any."""
        return search_anchors(self.loaded)

    @cached_property
    def guys(self) -> "GuyChoice | None":
        """Return guys that hold it; None where none of the lines and anchors do."""
        from .anchoring.guy_choice import choose_guys  # noqa: PLC0415 - most pieces are anchored at the foot

        return choose_guys(self.loaded)

    @cached_property
    def added(self) -> Added | None:
        """Return the weight that was added to keep it down; None where none was."""
        return added_weight(self.design)

    @cached_property
    def without_added(self) -> "Examination | None":
        """Return what is found of it without that weight; None where none was added."""
        return None if self.added is None else examine(self.added.without)

    @property
    def minimum_governs(self) -> bool:
        """Return whether the least wind of the standard decides a check."""
        return any(check.case == MINIMUM for check in self.checks)

    @cached_property
    def seams(self) -> "tuple[Seams, ...]":
        """Return what the seams of many-sided bodies carry; worked out when asked for."""
        from .seams.seam_demands import seams_of  # noqa: PLC0415 - told to engineers and programs only

        at = self.at
        return seams_of(
            at.structure,
            at.exposed,
            at.local,
            lambda offered: design_wind(offered, at.method)[1],
            at.factors_of_parts,
            at.basis,
        )

    @cached_property
    def sizings(self) -> "dict[str, JointSizing]":
        """Return what would make joints hold, by name, as far as it was asked for."""
        return {}

    @cached_property
    def thickened(self) -> "dict[str, Thicker | None]":
        """Return thicker stuff of which parts hold, by name, as far as it was asked for."""
        return {}

    @cached_property
    def as_built(self) -> "dict[tuple[str, int], Examination | None]":
        """Return what was found of it changed so that it would be held, by way and steps."""
        return {}

    @cached_property
    def verdict(self) -> "Verdict":
        """Return the verdict: one word, why, what to do untied and tied, what to mend."""
        from .verdict import verdict_of  # noqa: PLC0415 - figures alone do without

        return verdict_of(self)

    @property
    def passes(self) -> bool:
        """Return whether every check passes."""
        return all(check.passes for check in self.checks)


@in_one_thread
def examine(design: Design) -> Examination:
    """Return the examination of a design. Raises DesignError where it cannot stand at all."""
    at = situation_of(design)
    return examine_in(at, at.design)


@in_one_thread
def examine_in(
    at: Situation,
    design: Design,
    before: Examination | None = None,
    tied_checks: Sequence[Check] = (),
) -> Examination:
    """Return the examination of a design that stands in a situation.

    It may differ from that one's in what holds it down, and in nothing else. ``before`` is what was
    found of it held otherwise or with other weight on it, ``tied_checks`` those of the whole held
    so, where they are known: what stays the same is not judged again.
    """
    held = held_by(design, at.structure, at.standing.ground)
    whole = as_one(at, held, design, before, tied_checks)
    parts = _held_together(at, held, () if before is None else before.ways)
    loose = check_loose(at.loose, at.loose_actions, at.factors, at.loads, at.people)
    stands = all(check.passes for check in (*whole.checks, *loose) if check.kind in _BY_WIND)
    given = check_given_loads(
        at.standing, at.loads, at.factors, at.actions, whole.posts, whole.tied, stands=stands
    )
    checks = [*whole.checks, *loose, *given]
    checks += [one.check for one in (*parts.joints, *parts.rooms, *at.seams)]
    checks += [one.check for one in parts.members.judged]
    checks += [] if parts.racking is None else [parts.racking]
    return Examination(
        at=at,
        design=design,
        checks=tuple(checks),
        free=whole.free,
        posts=whole.posts,
        held=held,
        tied=whole.tied,
        members=parts.members,
        joints=parts.joints,
        spacings=parts.rooms,
        look_again=at.look_again,
        ways=parts.ways,
        equilibrium_error=parts.error,
    )


class _Parts(ByIdentity, frozen=True):
    """What was found of what holds a piece together."""

    joints: tuple[JointFound, ...]
    rooms: tuple[SpacingFound, ...]
    members: Members
    racking: Check | None
    ways: tuple[Strength, ...]
    error: float


def strength_in_ways(
    at: Situation,
    held: Held,
    cases: LoadCases,
    points: PointLoads,
    factors: Factors,
    before: tuple[Strength, ...] = (),
) -> tuple[Strength, ...]:
    """Return what is found of joints and sticks under load cases, in each way it may stand.

    ``before`` as in `examine_in`.
    """
    placed, _ = at.fastened

    def judged(way: Graph, known: Strength | None) -> Strength:
        def inside(hold_down: HoldDown | None) -> InternalForces:
            lines = () if hold_down is None else hold_down.tied
            joints = fastened(at.structure, way, placed, lines)
            return internal_forces(way, joints, cases, points, paved=at.paved, hold_down=hold_down)

        forces = inside(held.hold_down(at.structure))
        found = strength_of(forces, factors, at.basis, known)
        if forces.tied and found.lost:
            # its anchors cannot hold it in every case: the whole is told so, its parts as if held
            found = strength_of(inside(None), factors, at.basis, known)
        return found

    graphs = [way for way in (at.graph, at.graph.otherwise) if way is not None]
    known = before if len(before) == len(graphs) else [None] * len(graphs)
    return tuple(judged(*each) for each in zip(graphs, known, strict=True))


def _held_together(at: Situation, held: Held, before: tuple[Strength, ...]) -> _Parts:
    """Return what was found of a piece's joints and parts under its load cases."""
    placed, sewn = at.fastened
    ways = strength_in_ways(at, held, at.cases, at.points, at.factors_of_parts, before)
    found = worse_of(ways)
    members = worst_of_each((*at.plates, *found.sticks))
    rooms = rooms_judged(at.structure, placed, sewn, found.joints)
    return _Parts(found.joints, rooms, members, found.racking, ways, found.error)
