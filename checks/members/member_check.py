"""The check of one part's own strength, and why there is none of others."""

from ...units.frozen import ByValue
from ..judged.judging import Check
from ..timber.terms.answers import MemberMaterial


class MemberStrength(ByValue, frozen=True):
    """A part's strength: its ``check``, whose name is ``member: NAME``, and what it rests on.

    ``role`` is "post", "arm", "beam", "brace", "leg", "foot", "ring", "blade", "board between
    posts", "board beyond its posts", "board on its foot", "wall panel", "box wall", "roof slope",
    "roof panel", "lid", "deck", "cut-out" or "propped cut-out"; ``where`` which piece or place of
    it governs, ``level`` in m how high above its foot; ``governs`` "bending", "shear", "twist",
    "pressing", "pulling" or "slenderness"; ``count`` like pieces share the load.
    ``slender`` is effective length over thickness of a piece that is pressed along itself, 0 of
    others. ``deflection`` in m is how far it bends under the unfactored wind, or under what stands
    on its overhang: shown, not judged.
    ``by_grain``: turned round, the grain of a sheet's face would change whether it passes.
    ``beside`` names parts that touch it and were not counted on, ``stuff`` the published strength,
    ``graded`` tells whether the design names its grade. ``loads`` are the named loads under which
    it was judged as well. Of a stick ``at`` tells in m along it which section governs, ``forces``
    (6,) what acts there: axial force in N, pulling above 0, two shears, torque in N m, the moments
    about its first and its second side.
    """

    name: str
    check: Check
    role: str
    governs: str
    count: int
    deflection: float
    stuff: MemberMaterial
    beside: tuple[str, ...] = ()
    graded: bool = False
    slender: float = 0.0
    loads: tuple[str, ...] = ()
    where: str = ""
    level: float | None = None
    by_grain: bool = False
    at: float | None = None
    forces: tuple[float, ...] = ()


class NotJudged(ByValue, frozen=True):
    """A part whose strength was not judged, and why: one of the words below.

    "no values", "no material", "thin wall", "lattice", "held otherwise", "across grain", "curved",
    "free edges", "knee", "at points", "off middle", "load on it".
    """

    name: str
    why: str


class Members(ByValue, frozen=True):
    """All parts whose strength was judged, and those of their kind that were not."""

    judged: tuple[MemberStrength, ...]
    not_judged: tuple[NotJudged, ...]
