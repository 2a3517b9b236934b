"""What a material's name means: its three densities, what it rubs as, and on whose word."""

from collections.abc import Sequence
from functools import cache

import numpy as np

from .. import references, units
from ..references import TableRow
from ..references.table import weakest_confidence
from ..units.arrays import Array
from ..units.frozen import ByValue
from .moisture import WATER, basic_gravity, density_at

OUTDOORS = 0.12
"""Moisture of wood outdoors, on the average: Wood Handbook Table 13-2, most of the US."""

BAND = 0.10
"""Of a published mean, either way, where one value is published for wood: judgement."""


class Material(ByValue, frozen=True):
    """A material in SI: densities in kg/m3, typical, light and heavy.

    ``typical`` is the published mean, of wood at 12 % moisture: what a scale should show.
    ``light`` is the lowest published, ``heavy`` the highest, of wood at 19 % (treated 30 %).
    ``contact`` is the kind that it rubs on the ground as. ``specific_gravity`` is the one that NDS
    assigns for fasteners: oven-dry mass on oven-dry volume; None where there is none.
    ``withdrawal_gravity`` is the one that counts for what pulls out: of panels it is lower.
    ``confidence`` is that of the densities, the weakest of their rows.
    """

    name: str
    kind: str
    typical: float
    light: float
    heavy: float
    contact: str
    specific_gravity: float | None
    withdrawal_gravity: float | None
    stands_for: str
    source: str
    confidence: str
    notes: tuple[str, ...] = ()

    @property
    def gravity_at_12(self) -> float | None:
        """Return oven-dry mass over the volume at 12 % moisture; None of what is not of wood."""
        if self.kind not in ("wood", "panel"):
            return None
        return self.typical / (WATER * (1.0 + OUTDOORS))


@cache
def find_material(name: str) -> Material:
    """Return the material of exactly this name (of `material_names`). KeyError if none."""
    row = references.table("materials").one("name", name)
    table = references.table(row["table"])
    stands_for = row["rows"].split("|")
    rows = [table.one(table.columns[0], key) for key in stands_for]
    low, high = _published(rows)
    if row["kind"] in ("wood", "panel"):
        light, heavy, rule = _band(low, high, float(row["heavy_moisture_percent"]) / 100.0)
    else:
        light, heavy = float(low.min()), float(high.max())
        rule = "one value is published: light and heavy are the same" if light == heavy else ""
    return Material(
        name=name,
        kind=row["kind"],
        typical=float(np.mean((low + high) / 2.0)),
        light=light,
        heavy=heavy,
        contact=row["contact"],
        specific_gravity=_gravity(row["gravity_row"]),
        withdrawal_gravity=_gravity(row["withdrawal_row"]),
        stands_for=f"stands for {'; '.join(stands_for)}",
        source="; ".join(dict.fromkeys(each["source"] for each in rows)),
        confidence=weakest_confidence(each["confidence"] for each in rows),
        notes=tuple(note for note in (rule, row["note"]) if note),
    )


def material_names() -> list[str]:
    """Return every name that `find_material` knows, in the order of the table."""
    return [row["name"] for row in references.table("materials").rows]


def all_materials() -> list[Material]:
    """Return every material, to be shown as a table."""
    return [find_material(name) for name in material_names()]


def _published(rows: Sequence[TableRow]) -> tuple[Array, Array]:
    """Return the lowest and highest published density of each row in kg/m3; wood at 12 %."""
    if "G_green_basis" in rows[0]:
        rho = density_at([float(row["G_green_basis"]) for row in rows], OUTDOORS)
        return rho, rho
    if "density_low_kg_m3" in rows[0]:
        ends = ("density_low_kg_m3", "density_high_kg_m3")
        low, high = (np.array([float(row[end]) for row in rows]) for end in ends)
        return low, high
    unit = np.array([units.factor(row["unit"]) for row in rows])
    low, high = (np.array([float(row[end]) for row in rows]) * unit for end in ("low", "high"))
    return low, high


def _band(low: Array, high: Array, wet: float) -> tuple[float, float, str]:
    """Return the light density of wood, the heavy one at moisture ``wet``, and the rule."""
    light, heavy, rule = low.min(), high.max(), "light and heavy: the lowest and highest published"
    if light == heavy:
        light, heavy = (1.0 - BAND) * light, (1.0 + BAND) * heavy
        rule = f"light and heavy: the published value less and plus {BAND:.0%}"
    heavy = float(density_at(basic_gravity(heavy, OUTDOORS), wet))
    return float(light), heavy, f"{rule}; at {OUTDOORS:.0%} and {wet:.0%} moisture"


def _gravity(combination: str) -> float | None:
    if not combination:
        return None
    row = references.table("wood/nds_assigned_specific_gravity").one(
        "species_combination", combination
    )
    return float(row["G_oven_dry"])
