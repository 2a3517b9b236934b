"""The cut list for people: pieces, what to buy, weight, what to take care of; 80 columns."""

from ... import materials
from ...checks.stated.hardware import Hardware
from ...design.cutting.boards import SawnBoard
from ...design.cutting.cut_list import CutList
from ...design.cutting.cut_pieces import Extra, FlatCut, SheetGroup, StickGroup
from ...design.cutting.panels import SawnPanel
from ...design.given import given_parts
from ...design.model import Design
from ...design.structure import WEIGHINGS
from ...units import FOOT
from ..fastening.cut_words import (
    deg,
    edge_words,
    face_words,
    flat_head,
    material_of,
    other_words,
    section_words,
    stick_words,
)
from ..fastening.hardware_words import hardware_rows
from ..wording.amounts import Amounts
from ..wording.faults import clean
from ..wording.lines import LINE_WIDTH, Line, wrapped
from ..wording.remark import counted, joined

_BUY = 34


def cut_lines(cuts: CutList, hardware: Hardware) -> list[Line]:
    """Return the whole list for one design: what is sawn, what is bought, what fastens it."""
    amounts = Amounts(cuts.design.units == "metric")
    unit = "mm" if amounts.metric else "1/16 in"
    found = [
        *wrapped(f"{clean(cuts.design.name)}: cut list{_for(cuts)}", rest="  ", mood="title"),
        *wrapped(
            f"Finished sizes to the nearest {unit}, angles from a square cut. A panel's sizes are "
            "those of its outer face.",
        ),
    ]
    for group in cuts.flats:
        found += [Line(""), *_flats(group, cuts.design, amounts)]
    for sticks in cuts.sticks:
        found += [Line(""), *_sticks(sticks, amounts)]
    if cuts.others:
        found += [Line(""), Line("Not sawn from sheets or lumber", "title")]
        for other in cuts.others:
            stuff = f" ({material_of(other.part.material)})" if other.part.material else ""
            text = f"{clean(other.part.name)}: {other_words(other, amounts)}{stuff}"
            found += wrapped(text, "  ", "    ")
    found += [Line(""), *_to_buy(cuts, hardware, amounts), Line(""), *_weight(cuts, amounts)]
    return [*found, *_care(cuts, amounts), *_left_out(cuts, hardware), *_next(cuts)]


def _for(cuts: CutList) -> str:
    """Return for how many pieces it is, where it is for several."""
    return "" if cuts.pieces == 1 else f", for {counted(cuts.pieces, 'piece')}"


def _flats(group: SheetGroup, design: Design, amounts: Amounts) -> list[Line]:
    head = f"{amounts.thickness(group.thickness)} {material_of(group.material)}"
    given = {part.name: keys for part, keys in zip(design.parts, given_parts(design), strict=True)}
    stock = {str(given[cut.part.name].get("stock", "")) for cut in group.cuts} - {""}
    if stock:
        head += f" (sold as {clean(joined(sorted(stock), 'or'))})"
    found = wrapped(head, rest="  ", mood="title")
    for cut in group.cuts:
        found += wrapped(f"{flat_head(cut)}, {face_words(cut.piece, amounts)}", "  ", "    ")
        if isinstance(cut.piece, SawnPanel):
            for words in edge_words(cut.piece, amounts):
                found += wrapped(words, "      ", "        ")
        if cut.seams:
            found += wrapped(_too_large(cut, group, amounts), "      ", "        ")
        elif cut.turned:
            found += wrapped("fits the sheet only with its length across the grain", " " * 6)
    return found


def _too_large(cut: FlatCut, group: SheetGroup, amounts: Amounts) -> str:
    """Return that a piece is larger than the sheet, with the seam or the sheet that would do."""
    bottom, top, length = cut.blank()
    sheet = group.size.name if group.size is not None else "any"
    along = f"{cut.along} lengths of {amounts.cut(length / cut.along)}" if cut.along > 1 else ""
    wide = max(bottom, top) / cut.across
    across = f"{cut.across} widths of {amounts.cut(wide)}" if cut.across > 1 else ""
    pieces = joined([text for text in (along, across) if text])
    said = f"larger than a {sheet} sheet: join it of {pieces}, the seam backed by a strip"
    return f"{said}, or buy a {cut.whole_on.name} sheet" if cut.whole_on is not None else said


def _sticks(group: StickGroup, amounts: Amounts) -> list[Line]:
    head = f"{section_words(group, amounts)}, {material_of(group.material)}"
    found = wrapped(head, rest="  ", mood="title")
    for cut in group.cuts:
        name = f"{clean(cut.part.name)}: {counted(cut.count, cut.stick.face)}"
        found += wrapped(f"{name}, {stick_words(cut, amounts)}", "  ", "    ")
    if group.lumber is not None and group.lumber.too_long:
        names = joined(clean(group.cuts[k].part.name) for k in group.lumber.too_long)
        found += wrapped(f"{names}: longer than lumber is stocked; join or order it", "      ")
    return found


def _to_buy(cuts: CutList, hardware: Hardware, amounts: Amounts) -> list[Line]:
    """Return sheets and lumber, each with what is wasted and what stays whole, and hardware."""
    found = [Line(f"To buy, with {amounts.thickness(cuts.kerf)} for each saw cut", "title")]
    for group in cuts.flats:
        found += _bought_flat(group, amounts)
    for sticks in cuts.sticks:
        found += _bought_sticks(sticks, amounts)
    for name, said, uses in hardware_rows(hardware, cuts.system, amounts):
        text = f"{said} ({uses})" if uses else said
        found += wrapped(text, _column(name), " " * _BUY)
    if len(found) == 1:
        return [Line("Nothing to buy by the sheet or the length.")]
    return found


def _bought_flat(group: SheetGroup, amounts: Amounts) -> list[Line]:
    name = f"{amounts.thickness(group.thickness)} {material_of(group.material)}"
    if group.layout is None or group.size is None:
        feet = group.area / FOOT**2
        area = f"{group.area:.2f} m2" if amounts.metric else f"{feet:.1f} sq ft"
        return wrapped(
            f"{area} of boards{_joined(group)}; waste not counted",
            _column(name),
            " " * _BUY,
        )
    used, whole = group.layout.used, group.layout.length
    said = f"{counted(group.sheets, 'sheet')} {group.size.name}"
    if whole - used > 0.1 * whole:
        which = "it" if group.sheets == 1 else "the last"
        said += f", {amounts.cut(used)} of {which} used"
    said += f" ({group.waste:.0%} waste)"
    if group.free_sheets < group.sheets:
        said += f"; {group.free_sheets} would do if the grain may run either way"
    turned = max((abs(one.off_grain) for sheet in group.layout.sheets for one in sheet), default=0)
    if turned:
        said += f"; tapered pieces lie turned {deg(turned)}, side by side"
    return wrapped(said, _column(name), " " * _BUY)


def _joined(group: SheetGroup) -> str:
    """Return how boards make up wide pieces; nothing of slats and lattices."""
    slats = all(isinstance(c.piece, SawnBoard) and c.piece.filled < 1.0 for c in group.cuts)
    return " or slats" if slats else ", glued or laid edge to edge"


def _bought_sticks(group: StickGroup, amounts: Amounts) -> list[Line]:
    section = group.nominal or section_words(group, amounts)
    name = _column(f"{section}, {material_of(group.material)}")
    if group.lumber is None:
        total = sum(cut.count * cut.stick.long_point for cut in group.cuts)
        return wrapped(f"{amounts.length(total, 'up')} in all", name, " " * _BUY)
    if not group.lumber.sticks:
        return wrapped("longer than it is stocked", name, " " * _BUY)
    lengths = sorted({stick.length for stick in group.lumber.sticks}, reverse=True)
    counts = [(sum(s.length == length for s in group.lumber.sticks), length) for length in lengths]
    said = joined(f"{count} of {_stock(length, amounts)}" for count, length in counts)
    return wrapped(f"{said}, {group.lumber.waste:.0%} waste", name, " " * _BUY)


def _column(name: str) -> str:
    """Return a name as a column, broken to a line of its own where it is long."""
    text = f"  {name}"
    return f"{text:<{_BUY - 1}} " if len(text) < _BUY else f"{text}: "


def _stock(length: float, amounts: Amounts) -> str:
    return f"{length:.1f} m" if amounts.metric else f"{length / FOOT:.0f} ft"


def _weight(cuts: CutList, amounts: Amounts) -> list[Line]:
    """Return the weight of the pieces beside the design's, and why they are one."""
    structure = cuts.structure
    typical = WEIGHINGS.index("typical")
    whole = cuts.pieces * structure.mass("typical")
    volumes = cuts.volumes()
    sawn = sum(
        float(structure.part_mass[typical, i]) * volumes[part.name] / float(volume)
        for i, (part, volume) in enumerate(
            zip(cuts.design.parts, structure.part_volume, strict=True)
        )
        if volume > 0.0
    )
    said = f"Weight: the pieces come to {amounts.mass(sawn)}"
    if whole - sawn > 0.005 * whole:
        said += f", {amounts.mass(whole)} with what has weight and no size"
    if any(part.covering > 0.0 for part in cuts.design.parts):
        said += ", coverings included"
    beside = sum(
        cut.count * cut.stick.volume * materials.find_material(cut.part.material).typical
        for group in cuts.sticks
        for cut in group.cuts
        if isinstance(cut.part, Extra)
    )
    if beside > 0.0:
        said += f"; blocks and cleats, not counted there, {amounts.mass(beside)}"
    of = "the design" if cuts.pieces == 1 else "each"
    said += f"; {of} weighs {amounts.mass(whole / cuts.pieces)}."
    mitred = any(cut.stick.mitre and not cut.stick.parallel for g in cuts.sticks for cut in g.cuts)
    if mitred or any(isinstance(cut.piece, SawnPanel) for g in cuts.flats for cut in g.cuts):
        said += " Seams and mitres leave neither gap nor overlap: nothing is counted twice."
    return wrapped(said, rest="  ")


def _care(cuts: CutList, amounts: Amounts) -> list[Line]:
    panels = [c.piece for g in cuts.flats for c in g.cuts if isinstance(c.piece, SawnPanel)]
    said: list[str] = []
    if any(panel.bevel > 0.0 for panel in panels):
        said.append(
            "Cut test pieces of scrap first: short offcuts, as many as there are panels, laid "
            "in a ring. Open outside: more tilt; open inside: less. Trust the closed ring before "
            "the saw's scale, and check its stops with a square"
        )
    if any(cut.stick.face == "cleat" for group in cuts.sticks for cut in group.cuts):
        said.append("Saw cleats to the corner that they fill: half its angle off either face")
    said.append(
        f"Sizes are finished sizes: keep the blade on the waste side, and measure it if it does "
        f"not take {amounts.thickness(cuts.kerf)}. Measure the stock too: another thickness makes "
        "the inside smaller or larger, not the outer face"
    )
    return wrapped(f"Take care: {'. '.join(said)}.", rest="  ")


def _left_out(cuts: CutList, hardware: Hardware) -> list[Line]:
    said = "what fastens it" if not hardware.driven else "what fastens joints and seams"
    items = [f"{said}, where the file does not say", "doors and openings"]
    if any(part.covering > 0.0 for part in cuts.design.parts):
        items.append("roof covering")
    if any(group.layout is None for group in cuts.flats):
        items.append("how boards are joined to make wide panels")
    if cuts.others:
        items.append("how round or solid parts are made")
    trade = ["spares and boxes"] if hardware.driven else []
    if any(group.lumber is not None for group in cuts.sticks):
        trade.append("the lengths in which lumber is stocked")
    if cuts.system == "metric":
        trade.append("the width of a metric saw cut")
    found = wrapped(f"Not in this list: {'; '.join(items)}.", rest="  ")
    if trade:
        found += wrapped(f"Common practice, not a published table: {joined(trade)}.", rest="  ")
    return found


_NEXT = (
    ("to tick off in the shop", "yardfast cuts {file}{many} -o shop.pdf"),
    ("full-size pattern", "yardfast cuts {file} -o full-size.svg"),
    ("where stakes go", "yardfast cuts {file} --stakes"),
)


def _next(cuts: CutList) -> list[Line]:
    many = "" if cuts.pieces == 1 else f" --count {cuts.pieces}"
    shown = [each for each in _NEXT if cuts.flats or each is not _NEXT[1]]
    for file in (clean(cuts.design.file), "FILE"):
        said = [
            f"{'' if k else 'Next':6}{what:26}{do.format(file=file, many=many)}"
            for k, (what, do) in enumerate(shown)
        ]
        if file and max(map(len, said)) <= LINE_WIDTH:
            break
    return [Line(each) for each in said]
