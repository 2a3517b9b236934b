"""Labels for a person at a terminal: each text on one line of its own, to be copied whole."""

from collections.abc import Sequence

from ..wording.faults import clean
from ..wording.lines import Line, wrapped
from .label import LONG, SHORT, Label, Refusal, printed_length


def label_lines(labels: Sequence[Label]) -> list[Line]:
    """Return both texts of each design, with how many characters they take."""
    found: list[Line] = []
    for each in labels:
        if found:
            found += [Line(""), Line("")]
        if len(labels) > 1:
            design = each.listing.design
            found += [Line(f"{design.name}   ({clean(design.file)})", "title"), Line("")]
        found += _text("Short", each.short, SHORT, each.draft)
        found.append(Line(""))
        found += _text("Long", each.long, LONG, each.draft)
    return found


def refusal_lines(refusal: Refusal) -> list[str]:
    """Return why a design has no text."""
    design = refusal.design
    missing = f", {refusal.missing} is missing" if refusal.missing else ""
    said = f"{clean(design.file)}: no text for a listing{missing}. "
    return [line.text for line in wrapped(said + refusal.reason, rest="  ")]


def left_out_lines(label: Label) -> list[str]:
    """Return what of the seller's own words found no room in the long text."""
    if not label.left_out:
        return []
    what = " and ".join(label.left_out)
    said = (
        f"{clean(label.listing.design.file)}: no room in the long text for {what}: what a "
        f"buyer has to know comes first. Shorten {'it' if len(label.left_out) == 1 else 'them'}."
    )
    return [line.text for line in wrapped(said, rest="  ")]


def _text(title: str, text: str, most: int, draft: bool) -> list[Line]:
    long = "a draft" if draft else f"{printed_length(text)} of {most} characters"
    return [Line(f"{title}, {long}", "title"), Line(text)]
