"""How dead load and wind are combined on each basis of judgement."""

from .. import references
from ..units.frozen import ByValue
from .wind.site import Site

SAFETY_DEFAULT = 1.5
"""The factor of safety on service loads unless a design says another (IBC 1807.2.3)."""

FACTORED = "strength"
"""The level at which factored loads are compared with resistances (LRFD); all others are ASD."""

MOST_OF_ULTIMATE = 0.9
"""Of an ultimate strength, on any basis."""


class Factors(ByValue, frozen=True):
    """Factors of one basis: dead load that helps and that hurts, wind, and soil strength.

    ``soil`` multiplies an allowable (ultimate over its factor) value. ``alone`` is on dead load
    without any wind, ``live`` on a load that the design names; ``friction`` multiplies friction on
    the ground. ``companions`` are the factors on wind and on such loads where both act at once.
    """

    helping: float
    hurting: float
    wind: float
    soil: float
    source: str
    alone: float = 1.0
    live: float = 1.0
    friction: float = 1.0
    companions: tuple[tuple[float, float], ...] = ()

    def soil_on(self, factor: float) -> float:
        """Return ``soil`` for what is held with its own ``factor``: at most 0.9 of its ultimate.

        Weight over a factor of 1.5 would else come out above it (ASCE/SEI 7 2.3.1: 0.9 D).
        """
        return min(self.soil, MOST_OF_ULTIMATE * factor)

    @property
    def sets(self) -> tuple[float, float]:
        """Return the dead-load factors that are tried, each for all dead load at a time."""
        return self.helping, self.hurting


NDS, EN1995 = "NDS", "EN 1995"

TIMBER = (NDS, EN1995)
"""The books of timber: what ``[site] timber`` may be."""

_AND = ", "

EQUILIBRIUM, STRENGTH = "EQU", "STR"
"""The two limit states of EN 1990: what stands as a rigid body, and what may break."""


def factors(site: Site) -> Factors:
    """Return the factors of the site's basis; on service loads helping weight is over ``safety``.

    Allowable: 0.6 D + 0.6 W and D + 0.6 W (ASCE/SEI 7 2.4.1). Strength: 0.9 D + W and 1.2 D + W
    (2.3.1). Service: a factor of safety of 1.5 on actual loads (IBC 1807.2.3, by analogy). EQU:
    0.9 G + 1.5 Q and 1.1 G + 1.5 Q, friction over 1.25 (EN 1990 Table A1.2(A)).
    """
    return _of(site.basis, site.safety)


def factors_of_parts(site: Site) -> Factors:
    """Return the factors for joints and members: of EN 1990 those of STR, else the basis's own.

    STR: 1.0 G + 1.5 Q and 1.35 G + 1.5 Q (EN 1990 Table A1.2(B)).
    """
    return _of(STRENGTH if site.basis == EQUILIBRIUM else site.basis, site.safety)


def resistance_basis(site: Site) -> str:
    """Return the basis on which wood and fasteners resist, by the book of timber of the site.

    It is called as the site's own, "strength" against EN 1990; by another book than NDS with that
    name before it. ``level_of`` and ``timber_of`` take it apart.
    """
    level = "strength" if site.basis == EQUILIBRIUM else site.basis
    return level if site.timber == NDS else f"{site.timber}{_AND}{level}"


def level_of(basis: str) -> str:
    """Return "allowable", "strength" or "service": how high loads are that a basis resists."""
    return basis.rsplit(_AND, 1)[-1]


def timber_of(basis: str) -> str:
    """Return the book of timber by which a basis resists, such as "NDS" or "EN 1995"."""
    return basis.rsplit(_AND, 1)[0] if _AND in basis else NDS


def _of(basis: str, safety: float) -> Factors:
    row = references.table("combinations").one("basis", basis)
    helping = 1.0 / safety if basis == "service" else float(row["dead_helping"])
    return Factors(
        helping,
        float(row["dead_hurting"]),
        float(row["wind"]),
        float(row["soil"]),
        row["source"],
        float(row["dead_alone"]),
        float(row["live"]),
        float(row["friction"]),
        tuple(
            (float(one["wind"]), float(one["live"]))
            for one in references.table("companions").where("basis", basis)
        ),
    )
