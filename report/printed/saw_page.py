"""The page for the saw: what to tick off, stock by stock, with stops and tilts, and what to buy."""

from collections.abc import Iterator, Sequence
from math import atan, degrees, pi

from ... import __version__
from ...checks.stated.hardware import Hardware
from ...design.cutting.blanks import Laid
from ...design.cutting.boards import SawnBoard
from ...design.cutting.cut_list import CutList
from ...design.cutting.cut_pieces import FlatCut, OtherCut, SheetGroup, StickCut, StickGroup
from ...design.cutting.nesting import Layout
from ...design.cutting.panels import SawnPanel
from ...units import FOOT
from ...units.frozen import replace
from ..drawings.paper import THIN_LINE, Paper, points
from ..fastening.cut_words import (
    STEEPEST,
    deg,
    face_words,
    material_of,
    other_words,
    section_words,
    setting,
)
from ..fastening.hardware_words import hardware_rows
from ..messages import page_messages as messages
from ..wording.amounts import Amounts
from ..wording.faults import clean
from ..wording.fingerprint import fingerprint
from ..wording.remark import counted, joined
from .shop_parts import ShopPart, shop_page

_SQUARE = 0.05
_COLUMNS = (
    ("No.", 0.4),
    ("Pieces", 0.6),
    ("Part", 1.7),
    ("Stop: length", 1.2),
    ("Width", 1.5),
    ("Side edges", 1.4),
    ("Ends", 1.4),
)
_BUY = (("Buy", 1.5), ("How much", 2.4), ("For", 1.6))
_WIDE = 86.0
"""Width of a picture of a sheet in mm: two go side by side."""

_SMALL = 3.0

_TITLE = "{name}: to saw"
_FACTS = "For {count}. Finished sizes, outer faces; tilts and mitres from a square cut. {made}."
_FROM = "{stop}, from a piece {blank} long"
_TAPER = "{below} to {above}, taper {taper} a side"
_TILT = "tilt {tilt}"
_EXACT = "tilt {tilt} (exactly {exact})"
_ON_EDGE = "on edge, tilt {tilt}"
_MITRE = "mitre {mitre}"
_PARALLEL = "mitre {mitre}, parallel"
_BOTH = "{one}; {other}"
_STICKS_FROM = "From {stick}: {pieces}."
_SEEN = "{sheet} sheet{many}, the grain from left to right"
_SAW_TEST = (
    "Set tilts with a square and a test piece. For panels round a body, saw short offcuts of scrap "
    "first, as many as there are panels, and lay them in a ring."
)


def saw_page(cuts: CutList, hardware: Hardware, paper: str) -> bytes:
    """Return the page as PDF on ``paper``, "a4" or "letter"."""
    name = clean(cuts.design.name)
    made = messages.MADE_BY.format(version=__version__, fingerprint=fingerprint(cuts.design))
    facts = _FACTS.format(count=counted(cuts.pieces, "piece"), made=made)
    panels = (cut.piece for group in cuts.flats for cut in group.cuts)
    if any(isinstance(piece, SawnPanel) and piece.bevel > 0.0 for piece in panels):
        facts += f" {_SAW_TEST}"
    return shop_page(_TITLE.format(name=name), facts, list(_parts(cuts, hardware)), paper)


def _parts(cuts: CutList, hardware: Hardware) -> Iterator[ShopPart]:
    amounts = Amounts(cuts.design.units == "metric")
    number = 0
    for group in cuts.flats:
        yield _flats(group, number, amounts)
        number += len(group.cuts)
    for sticks in cuts.sticks:
        yield _sticks(sticks, number, amounts)
        number += len(sticks.cuts)
    if cuts.others:
        rows = tuple(_other(cut, number + k + 1, amounts) for k, cut in enumerate(cuts.others))
        yield ShopPart("Not from sheets or lumber", "", (*_COLUMNS[:3], ("Size", 4.0)), rows)
    bought = tuple(hardware_rows(hardware, cuts.system, amounts))
    if bought:
        yield ShopPart("Screws, nails, bolts, glue", "", _BUY, bought)


def _flats(group: SheetGroup, before: int, amounts: Amounts) -> ShopPart:
    head = f"{amounts.thickness(group.thickness)} {material_of(group.material)}"
    rows = tuple(_flat(cut, before + k + 1, amounts) for k, cut in enumerate(group.cuts))
    pictures: tuple[tuple[str, str], ...] = ()
    if group.layout is not None and group.size is not None:
        head = f"{head}: {counted(group.sheets, 'sheet')} {group.size.name}"
        pictures = tuple(_pictures(group.layout, group.size.name, before))
    return ShopPart(head, "", _COLUMNS, rows, pictures)


def _flat(cut: FlatCut, number: int, amounts: Amounts) -> tuple[str, ...]:
    """Return the row of one kind of flat piece: its stop, its width, and how the saw is set."""
    piece = cut.piece
    face = "" if piece.face in ("side", "plate", "board", "figure") else f", {piece.face}"
    head = (str(number), str(cut.count), f"{clean(cut.part.name)}{face}")
    bottom, top, length = piece.bottom, piece.top, piece.length
    stop, blank = amounts.cut(length), amounts.cut(piece.blank()[2])
    if stop != blank:
        stop = _FROM.format(stop=stop, blank=blank)
    if isinstance(piece, SawnBoard) and (piece.sides is not None or piece.face == "figure"):
        return (*head, stop, face_words(piece, amounts), "square", "")
    width = amounts.cut(bottom)
    if abs(bottom - top) > 1.0e-6:
        slant = abs(bottom - top) / 2.0 / length
        above = amounts.cut(top) if top > 0.0 else "a point"
        width = _TAPER.format(below=width, above=above, taper=deg(atan(slant)))
    edges, ends = ((0.0, 0.0), (0.0, 0.0))
    if isinstance(piece, SawnPanel):
        edges = piece.edges.left, piece.edges.right
        ends = piece.edges.bottom, piece.edges.top if piece.top > 0.0 else piece.edges.bottom
    return (*head, stop, width, _tilts(*edges), _tilts(*ends))


def _tilts(one: float, other: float) -> str:
    """Return how the blade is tilted for two opposite edges."""
    said = [_tilt(abs(tilt)) for tilt in (one, other)]
    return said[0] if said[0] == said[1] else _BOTH.format(one=said[0], other=said[1])


def _tilt(tilt: float) -> str:
    if degrees(tilt) < _SQUARE:
        return "square"
    if tilt > STEEPEST + 1.0e-4:
        return _ON_EDGE.format(tilt=deg(pi / 2.0 - tilt))
    usual = setting(tilt)
    if deg(usual, 2) == deg(tilt, 2):
        return _TILT.format(tilt=deg(usual))
    return _EXACT.format(tilt=deg(usual), exact=deg(tilt, 2))


def _sticks(group: StickGroup, before: int, amounts: Amounts) -> ShopPart:
    head = f"{section_words(group, amounts)}, {material_of(group.material)}"
    rows = tuple(_stick(cut, before + k + 1, amounts) for k, cut in enumerate(group.cuts))
    return ShopPart(head, " ".join(_lumber(group, before, amounts)), _COLUMNS, rows)


def _stick(cut: StickCut, number: int, amounts: Amounts) -> tuple[str, ...]:
    stick = cut.stick
    face = "" if stick.face == "piece" else f", {stick.face}"
    ends = "square"
    if degrees(stick.mitre) > _SQUARE:
        ends = (_PARALLEL if stick.parallel else _MITRE).format(mitre=deg(stick.mitre))
    width = amounts.cut(stick.wide) if stick.wide > 0.0 else ""
    return (
        str(number),
        str(cut.count),
        f"{clean(cut.part.name)}{face}",
        amounts.cut(stick.long_point),
        width,
        "square",
        ends,
    )


def _lumber(group: StickGroup, before: int, amounts: Amounts) -> Iterator[str]:
    """Give what is sawn from each bought length, like ones together."""
    if group.lumber is None:
        return
    alike: dict[tuple[float, tuple[tuple[int, int], ...]], int] = {}
    for stick in group.lumber.sticks:
        key = stick.length, stick.pieces
        alike[key] = alike.get(key, 0) + 1
    for (length, pieces), count in alike.items():
        each = joined(f"{many} of no. {before + kind + 1}" for kind, many in pieces)
        yield _STICKS_FROM.format(stick=_length(count, length, amounts), pieces=each)


def _length(count: int, length: float, amounts: Amounts) -> str:
    size = f"{length:.1f} m" if amounts.metric else f"{length / FOOT:.0f} ft"
    return f"{'' if count == 1 else 'each of '}{counted(count, f'{size} length')}"


def _other(cut: OtherCut, number: int, amounts: Amounts) -> tuple[str, ...]:
    return (
        str(number),
        str(cut.count),
        clean(cut.part.name),
        other_words(replace(cut, count=1), amounts),
    )


def _pictures(layout: Layout, sheet: str, before: int) -> Iterator[tuple[str, str]]:
    """Give each way in which a sheet is laid out, with how many sheets are so."""
    alike: dict[str, int] = {}
    for laid in layout.sheets:
        svg = _picture(layout, laid, before).svg(sheet)
        alike[svg] = alike.get(svg, 0) + 1
    for svg, count in alike.items():
        many = f", {count} alike" if count > 1 else ""
        yield svg, _SEEN.format(sheet=sheet, many=many)


def _picture(layout: Layout, laid: Sequence[Laid], before: int) -> Paper:
    """Return a sheet with what is sawn from it by number, its length from left to right."""
    scale = _WIDE / layout.length
    paper = Paper(_WIDE, layout.width * scale)
    paper.polygon([(0.0, 0.0), (_WIDE, 0.0), (_WIDE, paper.height), (0.0, paper.height)])
    for one in laid:
        corners = one.corners()[:, ::-1] * scale
        paper.polygon(points(corners), "#eeeeee", THIN_LINE)
        x, y = corners.mean(axis=0)
        paper.text(
            (float(x), float(y) + 0.35 * _SMALL), str(before + one.blank.kind + 1), "middle", _SMALL
        )
    return paper
