"""What EN 1995-1-1 takes of wood and sheets: classes, densities, k_mod and gamma_M."""

from functools import cache

from .... import references, units
from ....units.frozen import ByValue

WIND_DURATION, NORMAL, PERMANENT = "short-term", "medium-term", "permanent"
"""Load durations of wind, of what people do, and of dead load (EN 1995-1-1 Table 2.2).

Wind counts as short-term, the lower of the two that the table allows it."""

MPA = 1000.0 * units.factor("kPa")
"""N/mm2 in Pa."""


class StrengthClass(ByValue, frozen=True):
    """Characteristic values in Pa of a class of EN 338, and its density rho_k in kg/m3."""

    name: str
    bending: float
    tension: float
    compression: float
    across: float
    shear: float
    stiffness: float
    least_stiffness: float
    density: float


class Wood(ByValue, frozen=True):
    """Stuff as fasteners find it: "solid", "plywood" or "OSB", rho_k in kg/m3, and whether hard."""

    stuff: str
    density: float
    hardwood: bool


@cache
def en1995_number(name: str) -> float:
    """Return a number of EN 1995-1-1 by its name in references/wood/en1995_numbers.csv."""
    return float(references.table("wood/en1995_numbers").one("number", name)["value"])


@cache
def strength_class(species: str, grade: str) -> StrengthClass | None:
    """Return the class of a species and grade as NDS has them; None where none is assigned.

    Source: EN 338 with EN 1912.
    """
    for row in references.table("wood/en1912_grades").where("species", species):
        if row["grade"] == grade:
            return find_class(row["class"])
    return None


@cache
def find_class(name: str) -> StrengthClass:
    """Return a strength class of EN 338 by its name. KeyError for another."""
    row = references.table("wood/en338_classes").one("class", name)
    columns = ("fm", "ft0", "fc0", "fc90", "fv", "E0", "E005")
    values = [float(row[f"{column}_N_mm2"]) * MPA for column in columns]
    return StrengthClass(name, *values, density=float(row["rho_k"]))


@cache
def wood_of(material: str) -> Wood | None:
    """Return a material as fasteners find it; None where no density is held."""
    rows = references.table("wood/en1995_densities").where("material", material)
    if not rows:
        return None
    row = rows[0]
    return Wood(row["stuff"], float(row["rho_k"]), row["hardwood"] == "yes")


@cache
def k_mod(stuff: str, duration: str, dry: bool) -> float | None:
    """Return k_mod of "solid", "plywood" or "OSB" in service class 2, if ``dry``, else 3.

    None where the standard does not allow it there. KeyError for another stuff or duration.
    Source: EN 1995-1-1:2004 Table 3.1.
    """
    for row in references.table("wood/en1995_kmod").where("stuff", stuff):
        if row["duration"] == duration:
            value = row["dry" if dry else "outdoors"]
            return float(value) if value else None
    raise KeyError(f"EN 1995-1-1 has no k_mod for {stuff}, {duration}")


@cache
def _over(basis: str) -> float:
    """Return what a resistance is divided by beside gamma_M, for loads as a basis factors them.

    1 where they are those of EN 1990 or of the strength level of ASCE/SEI 7; else the factor on
    wind of EN 1990, which such loads are without (judgement).
    """
    if basis in ("strength", "STR"):
        return 1.0
    return float(references.table("combinations").one("basis", "STR")["wind"])


def k_mod_ratio(load: str) -> float:
    """Return k_mod of wind over that of a "permanent" or "normal" load, of solid wood outdoors."""
    wind, other = k_mod("solid", WIND_DURATION, False), k_mod("solid", _LASTS[load], False)
    assert wind is not None
    assert other is not None
    return wind / other


_LASTS = {"normal": NORMAL, "permanent": PERMANENT}


@cache
def wind_modified(stuff: str, dry: bool) -> float | None:
    """Return k_mod of a stuff under wind, less where it holds less for long than solid wood would.

    What is asked for long is compared by ``k_mod_ratio`` of solid wood outdoors. Of OSB, and a
    little of all that stays dry, k_mod falls farther by then: so little of it counts under wind
    that neither is taken for more than Table 3.1 gives. None as ``k_mod``.
    """
    found = k_mod(stuff, WIND_DURATION, dry)
    if found is None:
        return None
    for load, lasts in _LASTS.items():
        longer = k_mod(stuff, lasts, dry)
        if longer is None:
            return None
        found = min(found, longer * k_mod_ratio(load))
    return found


def design(stuff: str, gamma: str, basis: str, dry: bool = False) -> float | None:
    """Return k_mod/gamma_M under wind, as ``wind_modified``, over ``over``; None as ``k_mod``.

    ``gamma`` is "connection", "solid" or "panel".
    """
    modified = wind_modified(stuff, dry)
    if modified is None:
        return None
    return modified / en1995_number(f"gamma_M {gamma}") / _over(basis)
