"""TOML read after the first look at it: its tables, and all that is wrong so far, by line."""

import re
import tomllib
from collections.abc import Mapping, Sequence
from typing import cast

from ..faults import Fault
from ..reader.mending import changed
from ..reader.schema import Reading
from ..reader.typed_text import shown
from .part_table import part_label


def parsed(reading: Reading) -> Mapping[str, object] | None:
    """Return the file's tables, or None with a fault where TOML cannot read what is left."""
    try:
        return tomllib.loads(reading.scan.text)
    except RecursionError:
        reading.faults.append(
            Fault(reading.file, None, None, None, "lists within lists", "plain values")
        )
    except ValueError as error:
        message = str(error)
        place = re.search(r"line (\d+)", message)
        rows = reading.scan.text.split("\n")
        line = int(place[1]) if place else len(rows)
        found = shown(rows[min(line, len(rows)) - 1].strip()) or "the end of the file"
        reason = re.sub(r" \(at .*\)$", "", message)
        reading.faults.append(
            Fault(
                reading.file, line, None, None, found, "key = value, as TOML has it", shown(reason)
            )
        )
    return None


def add_findings(reading: Reading, data: Mapping[str, object]) -> None:
    """Add what the first look found, each with the part that it belongs to."""
    for line, spot, problem in reading.scan.findings:
        value = data.get(spot.table)
        rows = cast("list[object]", value) if isinstance(value, list) else []
        part = None
        if 0 <= spot.number < len(rows):
            row = cast("dict[str, object]", rows[spot.number])
            part = part_label(row, spot.number, spot.table)
        reading.faults.append(
            Fault(
                reading.file,
                line,
                part,
                shown(spot.key) if spot.key else None,
                problem.found,
                problem.expected,
                problem.hint,
                changed(reading.scan.seen, problem.at, problem.write, problem.sure),
            )
        )


def in_order(faults: Sequence[Fault]) -> tuple[Fault, ...]:
    """Return faults by line, each once."""
    return tuple(sorted(dict.fromkeys(faults), key=lambda fault: fault.line or 0))
