"""Dates as people say them, and what was measured on a piece, as what it is."""

from datetime import date

from ...design.file.record_table import Record
from ..messages import messages
from .amounts import Amounts
from .remark import cut_short

_MOST_TOLD = 3
_LONGEST_NAME = 40


def day(written: str) -> str:
    """Return a date, YYYY-MM-DD, as people say it: ``31 May 2026``."""
    on = date.fromisoformat(written)
    return f"{on.day} {messages.MONTHS[on.month - 1]} {on.year}"


def records_said(records: tuple[Record, ...], amounts: Amounts) -> list[str]:
    """Return what was measured on a piece, dated and signed; three one by one, then a count."""
    found = [_record(each, amounts) for each in records]
    more = len(found) - _MOST_TOLD
    if more <= 0:
        return found
    return [*found[:_MOST_TOLD], messages.MORE_RECORDS.format(n=more)]


def _record(record: Record, amounts: Amounts) -> str:
    weighed = record.kind == "weight"
    return messages.RECORDS[record.kind].format(
        signed=f"{day(record.date)}, {cut_short(record.by, _LONGEST_NAME)}",
        value=amounts.own_mass(record.value) if weighed else amounts.force(record.value, "down"),
        up=amounts.own_length(record.height or 0.0),
    )
