"""A piece where it stands, with what acts on it: all that is so whatever holds it down."""

from functools import cached_property

from ..design.faults import DesignError
from ..design.model import Design
from ..design.structure import Structure, build_structure
from ..loads.actions import Actions
from ..loads.combinations import Factors, factors, factors_of_parts, resistance_basis
from ..loads.exposed import Bare, Exposed, bare, expose, with_weights
from ..loads.methods import Method, method_of
from ..loads.wind.site import Site
from ..materials import grounds
from ..statics.contacts.graph import Graph, graph_of, laden
from ..statics.contacts.holds_down import holding_nothing
from ..statics.contacts.look_again import LookAgain, look_again
from ..statics.contacts.unsupported import unsupported
from ..units.frozen import ByIdentity
from .acting.borne import Borne, borne_loads
from .acting.design_wind import DesignWind, design_actions, design_wind, wind_on_bodies
from .acting.load_cases import LoadCases, load_cases
from .acting.local_wind import LocalWind, local_wind
from .acting.people_loads import people_loads
from .acting.point_loads import PointLoads, point_loads
from .anchoring.ballasted import with_ballast
from .fasteners.fastener_sets import JointPlace
from .fasteners.joint_faults import check_fastened
from .loose import Loose, loose_parts
from .members.member_check import MemberStrength, NotJudged
from .plates.all_members import check_plates
from .seams.held_together import as_fastened, seams_judged
from .stability.standing import Standing

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..loads.given import GivenLoad
    from .seams.seam_check import SeamFastened, SeamFound


class Situation(ByIdentity, frozen=True):
    """A piece where it stands and the wind on it: ``actions`` (Q, D, C), ``each`` body's alone.

    Each is found once, however many ways of holding the piece down are then looked at; what is
    asked of its parts only once it is asked for.
    """

    design: Design
    site: Site
    structure: Structure
    graph: Graph
    method: Method
    each: Bare
    exposed: Exposed
    wind: DesignWind
    actions: Actions
    standing: Standing
    factors: Factors
    before: "Situation | None" = None
    """The same with fewer weights on it, where such a one was looked at before."""

    @cached_property
    def loose(self) -> tuple[Loose, ...]:
        """Return what only stands on it. DesignError where one rests on a line or a point."""
        return loose_parts(self.graph, self.standing.ground, self.standing.slope)

    @cached_property
    def loose_exposed(self) -> tuple[Exposed, ...]:
        """Return what each loose part with all on it offers the wind alone."""
        sheltering = self.site.sheltering
        return tuple(one.exposed(self.structure, sheltering, self.each) for one in self.loose)

    @cached_property
    def loose_actions(self) -> tuple[Actions, ...]:
        """Return the actions (Q, D, C) on each loose part."""
        return tuple(design_actions(alone, self.method) for alone in self.loose_exposed)

    @cached_property
    def loads(self) -> tuple[Borne, ...]:
        """Return the loads that the design names, each with the body that takes it."""
        return borne_loads(self.graph)

    @cached_property
    def look_again(self) -> tuple[LookAgain, ...]:
        """Return what was read without fault but is hardly meant."""
        return look_again(self.graph)

    @cached_property
    def people(self) -> "list[tuple[int, GivenLoad, float]]":
        """Return what people may do: bodies by index, loads, how much longer than wind."""
        return people_loads(self.structure, self.site.people, self.basis)

    @property
    def basis(self) -> str:
        """Return the basis of resistances."""
        return resistance_basis(self.site)

    @cached_property
    def factors_of_parts(self) -> Factors:
        """Return the load factors for joints and parts."""
        return factors_of_parts(self.site)

    @property
    def paved(self) -> bool:
        """Return whether it stands on a slab."""
        return not self.standing.ground.stakes_possible

    @cached_property
    def fastened(self) -> "tuple[tuple[JointPlace, ...], tuple[SeamFastened, ...]]":
        """Return joints and seams as the file fastens them. DesignError: what is wrong of them."""
        if self.before is not None:
            return self.before.fastened
        return as_fastened(self.structure, self.basis)

    @cached_property
    def points(self) -> PointLoads:
        """Return the loads that act at points."""
        return point_loads(self.loads, self.people)

    @cached_property
    def cases(self) -> LoadCases:
        """Return all load cases of its parts."""
        wind, names = wind_on_bodies(self.exposed, self.method)
        return load_cases(
            self.structure,
            wind,
            self.exposed.azimuths,
            names,
            self.factors_of_parts,
            self.basis,
            self.points,
            self.standing.slope,
        )

    @cached_property
    def local(self) -> LocalWind:
        """Return the pressures on single parts and panels."""
        return local_wind(self.structure, self.exposed, self.method)

    @cached_property
    def plates(self) -> tuple[MemberStrength | NotJudged, ...]:
        """Return the strength of what wind presses by itself: boards, walls, roofs, blades."""
        return tuple(one for one in self._each_plate if one is not None)

    @cached_property
    def _each_plate(self) -> tuple[MemberStrength | NotJudged | None, ...]:
        """Return that of each body (bodies,), None where none is to be told."""
        before = () if self.before is None else self.before._each_plate
        return check_plates(
            self.structure,
            self.local,
            self.factors_of_parts,
            self.basis,
            self.loads,
            dict(enumerate(before)),
        )

    @cached_property
    def seams(self) -> "tuple[SeamFound, ...]":
        """Return the seams of which the file says how they are fastened, judged."""
        if self.before is not None:
            return self.before.seams
        return seams_judged(
            self.structure,
            self.fastened[1],
            self.exposed,
            self.local,
            self.method,
            self.factors_of_parts,
            self.basis,
        )


def situation_of(design: Design) -> Situation:
    """Return a design where it stands. DesignError where it cannot stand at all."""
    design = with_ballast(design)
    structure = build_structure(design)
    graph = _that_holds(graph_of(structure))
    method = method_of(design.table(Site), structure.height)
    return _where(graph, method, bare(structure, _surfaces(design), method))


def weighted(at: Situation, design: Design) -> Situation:
    """Return a situation with a design that has weights more than that one's, last of its parts.

    DesignError where it cannot stand so.
    """
    structure = build_structure(design)
    graph = _that_holds(laden(at.graph, structure))
    each = with_weights(at.each, structure, _surfaces(design), at.method)
    return _where(graph, at.method, each, at)


def _surfaces(design: Design) -> list[str | None]:
    return [part.surface for part in design.parts]


def _that_holds(graph: Graph) -> Graph:
    """Return what meets what. DesignError: parts that float or fall off, what holds nothing."""
    if faults := (*unsupported(graph), *holding_nothing(graph.structure)):
        raise DesignError(faults)
    return graph


def _where(graph: Graph, method: Method, each: Bare, before: Situation | None = None) -> Situation:
    structure = graph.structure
    site = structure.design.table(Site)
    exposed = expose(structure, each, site.sheltering)
    wind, actions = design_wind(exposed, method)
    if before is None:
        check_fastened(structure)
        standing = Standing(structure, grounds.find_ground(site.ground), site.slope or 0.0)
    else:
        standing = before.standing.laden(structure)
    return Situation(
        structure.design,
        site,
        structure,
        graph,
        method,
        each,
        exposed,
        wind,
        actions,
        standing,
        factors(site),
        before,
    )
