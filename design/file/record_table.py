"""The ``[[record]]`` table: what was measured on the finished piece, when and by whom."""

from typing import Literal, cast

from ...units.frozen import ByValue
from ..reader.kind_words import read_quantity
from ..reader.row import Row
from ..reader.schema import Key, TableSpec

RecordKind = Literal["weight", "scale test", "stake pull test"]

_QUANTITIES: dict[RecordKind, str] = {
    "weight": "mass",
    "scale test": "force",
    "stake pull test": "force",
}
_KINDS = tuple(_QUANTITIES)


class Record(ByValue, frozen=True):
    """Something measured: ``value`` in kg for a weight, else in N; ``date`` is YYYY-MM-DD.

    A scale test is the level pull at ``height`` m at which the edge behind began to lift. Records
    change no calculation; 'weighed' and 'pull_test' do.
    """

    kind: RecordKind
    value: float
    date: str
    by: str
    height: float | None = None


def _record(row: Row) -> Record | None:
    kind = cast("RecordKind | None", row.text("kind"))
    value = None
    if kind is not None and row.text("value") is not None:
        value = read_quantity(Key("value", _QUANTITIES[kind]), row.data["value"], row)
    height, date, by = row.quantity("height"), row.text("date"), row.text("by")
    if kind == "scale test":
        row.need("height", reason=": how high above the ground the scale pulled")
    elif kind is not None and row.given("height"):
        row.refuse("height", "no 'height' beside this kind: it belongs to a scale test")
    if kind is None or value is None or date is None or by is None or row.wrong:
        return None
    return Record(kind, value, date, by, height)


RECORD = TableSpec(
    "record",
    Record,
    (
        Key("kind", "choice", required=True, choices=_KINDS),
        Key("value", "measured", required=True, hint="value = '51 lb', or '11 lbf' for a pull"),
        Key("date", "date", required=True),
        Key("by", "text", required=True, hint="by = 'J. Miller'"),
        Key("height", "length"),
    ),
    _record,
    many=True,
    words={
        "name": "'kind' says what it is; who measured stands behind 'by'",
        **dict.fromkeys(("who", "author", "tester"), "'by'"),
        **dict.fromkeys(("weight", "mass", "pull", "force", "result"), "'value'"),
    },
)
