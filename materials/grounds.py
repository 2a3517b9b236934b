"""What a ground's name means: friction by what touches it, pressures, strength, stakes."""

from collections.abc import Mapping
from functools import cache

from .. import references, units
from ..units.frozen import ByValue


class Friction(ByValue, frozen=True):
    """A coefficient of friction, ultimate, and on whose word.

    ``state`` is "wet" or "dry" where the source tells on hard ground, else empty.
    """

    coefficient: float
    source: str
    confidence: str
    note: str = ""
    state: str = ""


class Rating(ByValue, frozen=True):
    """A pressure or strength in Pa, and on whose word."""

    value: float
    source: str
    confidence: str
    note: str = ""


class Ground(ByValue, frozen=True):
    """A ground in SI: friction per contact kind; pressures and strength in Pa.

    ``ratings`` holds ``"allowable pressure"``, which carries its factor of safety, and where the
    ground has them ``"yield pressure"``, at which it gives way under an edge (never the unconfined
    strength), and ``"undrained strength"``. ``straight_pull`` tells whether a plain rod holds
    straight up; ``ibc_class`` is the row of IBC Table 1806.2.
    """

    name: str
    description: str
    field_cue: str
    wet: bool
    ibc_class: int | None
    friction: Mapping[str, Friction]
    ratings: Mapping[str, Rating]
    stakes_possible: bool
    straight_pull: bool
    stakes_note: str
    note: str

    @property
    def allowable_pressure(self) -> float:
        """Return the allowable bearing pressure in Pa."""
        return self.ratings["allowable pressure"].value

    @property
    def yield_pressure(self) -> float | None:
        """Return the pressure in Pa at which it gives way under an edge; None on paving."""
        return self._optional("yield pressure")

    @property
    def undrained_strength(self) -> float | None:
        """Return the undrained shear strength in Pa of clay and turf; None elsewhere."""
        return self._optional("undrained strength")

    @property
    def is_granular(self) -> bool:
        """Return whether it is sand or gravel: loose grains that hold by their own weight."""
        return self.stakes_possible and self.undrained_strength is None

    @property
    def source(self) -> str:
        """Return the source of the allowable pressure."""
        return self.ratings["allowable pressure"].source

    @property
    def confidence(self) -> str:
        """Return how well the allowable pressure is known."""
        return self.ratings["allowable pressure"].confidence

    def _optional(self, quantity: str) -> float | None:
        rating = self.ratings.get(quantity)
        return None if rating is None else rating.value


@cache
def find_ground(name: str) -> Ground:
    """Return the ground of exactly this name (of `ground_names`). KeyError where there is none."""
    row = references.table("ground/grounds").one("name", name)
    return Ground(
        name=name,
        description=row["description"],
        field_cue=row["field_cue"],
        wet=row["wet"] == "yes",
        ibc_class=int(row["ibc_class"]) if row["ibc_class"] else None,
        friction=_friction(name),
        ratings=_ratings(name),
        stakes_possible=row["stakes_possible"] == "yes",
        straight_pull=row["straight_pull"] == "yes",
        stakes_note=row["stakes_note"],
        note=row["note"],
    )


def ground_names() -> list[str]:
    """Return every name that `find_ground` knows, hard ground first."""
    return [row["name"] for row in references.table("ground/grounds").rows]


def all_grounds() -> list[Ground]:
    """Return every ground, to be shown as a table."""
    return [find_ground(name) for name in ground_names()]


def _friction(name: str) -> Mapping[str, Friction]:
    return {
        row["contact"]: Friction(
            float(row["coefficient"]),
            row["source"],
            row["confidence"],
            row["note"],
            row["state"],
        )
        for row in references.table("ground/ground_friction").where("ground", name)
    }


def _ratings(name: str) -> Mapping[str, Rating]:
    return {
        row["quantity"]: Rating(
            float(row["value"]) * units.factor(row["unit"]),
            row["source"],
            row["confidence"],
            row["note"],
        )
        for row in references.table("ground/ground_values").where("ground", name)
    }
