"""What lies on a roof's slopes: coverings by name, or by their mass per area."""

from collections.abc import Mapping
from functools import cache

from ... import units
from ...references import TableRow as Printed
from ...references import table
from ..reader.row import Row
from ..reader.schema import Key
from ..shapes.shape import Shape


@cache
def _coverings() -> Mapping[str, Printed]:
    """Return the table's rows by name; what is stated per thickness is no covering by itself."""
    rows = table("wood/roofing_and_sheet_psf").rows
    names = [row["item"].partition(" (")[0].casefold() for row in rows]
    found: dict[str, Printed] = {}
    for name, row in zip(names, rows, strict=True):
        if " per " not in name:
            found.setdefault(name, row)
    return found


def _names() -> tuple[str, ...]:
    """Return the coverings that may be named."""
    return tuple(_coverings())


COVERING_WORDS: Mapping[str, str] = {
    **dict.fromkeys(("shingles", "asphalt", "tar shingles", "roofing"), "'asphalt shingles'?"),
    **dict.fromkeys(("cedar shingles", "shakes", "cedar shakes", "wood"), "'wood shingles'?"),
    **dict.fromkeys(("copper", "tin", "flashing"), "'copper or tin'?"),
    **dict.fromkeys(
        ("metal", "steel", "corrugated", "metal roofing"), "'ribbed steel roofing, 29 gage'?"
    ),
    **dict.fromkeys(("felt", "tar paper", "roofing felt"), "'asphalt felt, 15 lb'?"),
    "slate": "'slate 3/16 in' or 'slate 1/4 in'?",
    **dict.fromkeys(
        ("moss", "thatch", "tiles", "clay tiles", "sod"),
        "its weight, such as '12 lb/ft^2': it is not among the names",
    ),
}

COVERING = Key("covering", "area density", choices=_names, words=COVERING_WORDS)


def covering(row: Row, shape: Shape | None) -> float:
    """Return what lies on a part's slopes in kg/m2, 0 without it; record what is wrong."""
    found = row.named("covering")
    if row.given("covering") and shape is not None and shape.slopes() is None:
        row.refuse(
            "covering",
            "no covering on a part without slopes: it lies on a cone, gable, dome, vault, "
            "or a box that tapers",
            "a thin 'plate' or 'panel' of its own, if it lies or hangs there",
        )
    if not isinstance(found, str):
        return found or 0.0
    printed = _coverings()[found]
    weights = [float(text) for text in printed["psf"].split("-")]
    pounds = sum(weights) / len(weights)
    weight = pounds * units.POUND / units.FOOT**2
    told = f"{weight:.3g} kg/m^2" if row.reading.metric else f"{units.plain(pounds)} lb/ft^2"
    row.note(f"covering: {found} is {told} ({printed['source']})")
    return weight
