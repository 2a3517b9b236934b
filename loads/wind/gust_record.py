"""A record of peak gusts beside the design file: one to a line, in order of time."""

from pathlib import Path

from ... import units
from ...design.faults import DesignError
from ...design.reader.file_text import text_in
from ...design.reader.row import Row
from ...design.reader.typed_text import shown
from .peak_gusts import FEWEST


def read_record(row: Row) -> tuple[float, ...]:
    """Return the peaks in m/s of the file that ``gust_record`` names; empty without one.

    A line is a date or a year, a comma, and the gust with its unit; the gust alone will do. Lines
    that begin with ``#`` are left out. What is wrong is recorded, the first line of it told.
    """
    name = row.text("gust_record")
    per = row.text("gusts_recorded") or "yearly"
    if name is None:
        if row.given("gusts_recorded"):
            row.refuse("gusts_recorded", "'gust_record' beside it", "gust_record = 'gusts.csv'")
        return ()
    try:
        text = text_in(Path(row.reading.file).parent / name, "a record of gusts")
    except DesignError as wrong:
        fault = wrong.faults[0]
        row.refuse("gust_record", f"{fault.expected}: {fault.found}", fault.hint)
        return ()
    found: list[float] = []
    for number, line in enumerate(text.splitlines(), start=1):
        cell = line.rpartition(",")[2].strip()
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        try:
            speed = units.to_si(cell, "speed")
        except units.UnitError:
            if not found and not any(sign.isdigit() for sign in cell):
                continue  # a heading
            row.refuse(
                "gust_record",
                f"a gust with its unit on each line; line {number} has '{shown(cell)}'",
                "1998, 62 mph",
            )
            return ()
        found.append(speed)
    if len(found) < FEWEST[per]:
        wanted = "ten years" if per == "yearly" else "two years of days"
        row.refuse("gust_record", f"at least {wanted} of {per} peaks; there are {len(found)}", "")
        return ()
    if min(found) <= 0.0 or max(found) == min(found):
        row.refuse("gust_record", "gusts above 0 that are not all the same", "")
        return ()
    return tuple(found)
