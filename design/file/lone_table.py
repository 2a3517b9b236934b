"""A file that holds one table: its keys alone, or under the table's heading."""

from collections.abc import Mapping
from pathlib import Path
from typing import TypeVar, cast

from ..faults import DesignError
from ..reader.file_text import text_in
from ..reader.row import Row
from ..reader.scan import Spot, scan
from ..reader.schema import Reading, TableSpec
from ..reader.typed_text import shown
from .parsed import add_findings, in_order, parsed

_T = TypeVar("_T")


def read_lone_table(path: str | Path, spec: TableSpec[_T], what: str) -> _T:
    """Return what ``spec`` makes of the only table of a file; ``what`` is the kind of file.

    Raises DesignError with everything that is wrong with the file, sorted by line.
    """
    return read_lone_text(text_in(path, what), str(path), spec)


def read_lone_text(text: str, file: str, spec: TableSpec[_T]) -> _T:
    """Return the same of a text; ``file`` is its name in faults. Raises as ``read_lone_table``."""
    keys = {spec.name: frozenset(key.name for key in spec.keys)}
    reading = Reading(file, scan(text, {spec.name: False}, keys=keys))
    data = parsed(reading)
    add_findings(reading, data or {})
    if data is None:
        raise DesignError(in_order(reading.faults))
    row = Row(reading, *_keys(reading, data, spec.name), spec.keys)
    row.check_keys(spec.words, spec.later)
    found = spec.build(row)
    if reading.faults or found is None:
        raise DesignError(in_order(reading.faults))
    return found


def _keys(
    reading: Reading, data: Mapping[str, object], name: str
) -> tuple[Spot, Mapping[str, object]]:
    """Return the table's place and keys; record what stands beside its heading."""
    if name not in data:
        return Spot("", 0), data
    under = data[name]
    if not isinstance(under, dict):
        reading.fault(Spot("", 0, name), None, shown(name), f"the heading [{name}]")
        return Spot(name, 0), {}
    for key in data:
        if key != name:
            expected = f"all keys under the heading [{name}], or no heading"
            reading.fault(Spot("", 0, key), None, shown(key), expected)
    return Spot(name, 0), cast("dict[str, object]", under)
