"""What is said of each piece to be sawn: its face, its edges, the saw's setting, its ends."""

from math import degrees, pi, radians

from ...design.cutting.blocks import Block
from ...design.cutting.boards import SawnBoard
from ...design.cutting.cut_pieces import FlatCut, OtherCut, StickCut, StickGroup
from ...design.cutting.panels import SawnPanel, seam_gap
from ...design.shapes.ball import Ball
from ...design.shapes.bodies import Shell, Solid
from ...design.shapes.boxes import Box
from ...design.shapes.cone import Cone
from ...design.shapes.flat import Frame
from ...design.shapes.gables import Gable
from ...design.shapes.roofs import Dome, Vault
from ..wording.amounts import Amounts
from ..wording.as_read import said_of
from ..wording.faults import clean
from ..wording.remark import counted

STEP = 0.5
"""Saws are set to the half degree."""

STEEPEST = radians(45.0)
"""How far the usual saw tilts."""

_SQUARE = radians(0.05)
_SAME = radians(0.005)


def setting(tilt: float) -> float:
    """Return the usual saw setting for a tilt, both in rad: the nearest half degree."""
    return radians(round(degrees(tilt) / STEP) * STEP)


def deg(angle: float, decimals: int = 1) -> str:
    """Return an angle in degrees without needless noughts: ``22.5 deg``, ``30 deg``."""
    text = f"{abs(degrees(angle)):.{decimals}f}"
    return f"{text.rstrip('0').rstrip('.') if '.' in text else text} deg"


def material_of(name: str | None) -> str:
    """Return a material's name, or that it has none."""
    return clean(name) if name is not None else "material not named"


def flat_head(cut: FlatCut) -> str:
    """Return what a flat piece is and how many: ``tower: 8 panels``."""
    piece = cut.piece
    name = clean(cut.part.name)
    if isinstance(piece, SawnPanel):
        if piece.face == "side":
            return f"{name}: {counted(cut.count, 'panel')}"
        word = "slopes" if piece.face == "slope" and cut.count > 1 else piece.face
        return f"{name}, {word}: {counted(cut.count, 'panel')}"
    kind = {"plate": "plate", "board": "board", "figure": "figure", "blade": "blade"}[piece.face]
    return f"{name}: {counted(cut.count, kind)}"


def face_words(piece: SawnPanel | SawnBoard, amounts: Amounts) -> str:
    """Return the outer face's sizes."""
    cut = amounts.cut
    if isinstance(piece, SawnBoard) and piece.face != "blade":
        return _board(piece, amounts)
    if piece.face.endswith("slope"):
        return f"{cut(piece.bottom)} along the ridge, {cut(piece.length)} up the slope"
    if abs(piece.bottom - piece.top) < 1.0e-6:
        wall = abs(piece.lean) < _SQUARE and piece.face != "side"
        return f"{cut(piece.bottom)} wide, {cut(piece.length)} {'high' if wall else 'long'}"
    hub, tip = ("hub", "tip") if piece.face == "blade" else ("bottom", "top")
    if piece.top <= 0.0:
        return f"{cut(piece.bottom)} at the {hub}, {cut(piece.length)} long to a point"
    return (
        f"{cut(piece.bottom)} at the {hub}, {cut(piece.top)} at the {tip}, {cut(piece.length)} long"
    )


def edge_words(panel: SawnPanel, amounts: Amounts) -> list[str]:
    """Return what is to be said of a panel's edges and ends, and its lean."""
    sides = panel.edges.left, panel.edges.right
    found: list[str] = []
    if panel.face.endswith("slope"):
        found += _slope(panel, amounts)
    elif panel.face in ("top", "bottom"):
        found += _flush(panel)
    else:
        found += _seams(panel, sides, amounts)
        found += _ends(panel, amounts)
    if abs(panel.lean) > _SQUARE and panel.face not in ("top", "bottom"):
        way = "in" if panel.lean > 0.0 else "out"
        found.append(f"leans {way} {deg(panel.lean)} from plumb")
    return found


def stick_words(cut: StickCut, amounts: Amounts) -> str:
    """Return one stick's length and the cuts at its ends."""
    stick, size = cut.stick, amounts.cut
    if stick.parallel:
        return (
            f"{size(stick.short_point)} along each edge ({size(stick.long_point)} from tip to "
            f"tip), both ends sawn {stick.cut}, {deg(stick.mitre)} from square, parallel"
        )
    if stick.mitre > _SQUARE:
        return (
            f"{size(stick.long_point)} over the long points, {size(stick.short_point)} over the "
            f"short, both ends mitred {deg(stick.mitre, 2)}"
        )
    return f"{size(stick.long_point)} long, ends square"


def section_words(group: StickGroup, amounts: Amounts) -> str:
    """Return a stick's section: ``2x6 (1 1/2 by 5 1/2 in)``."""
    thick = amounts.cut(group.thick)
    if group.wide <= 0.0:
        wall = "" if group.wall is None else f", wall {amounts.thickness(group.wall)}"
        return f"{thick} {'round' if group.wall is None else 'pipe'}{wall}"
    size = f"{amounts.bare_cut(group.thick)} by {amounts.cut(group.wide)}"
    if group.wall is not None:
        return f"tube {size}, wall {amounts.thickness(group.wall)}"
    return f"{group.nominal} ({size})" if group.nominal else size


def other_words(cut: OtherCut, amounts: Amounts) -> str:
    """Return a part that is not sawn from flat stock or lumber, in words."""
    many = f"{cut.count} of " if cut.count > 1 else ""
    if cut.block is not None:
        return f"{many}{_block(cut.block, amounts)}"
    return f"{many}{_plain(cut, amounts)}"


def _seams(panel: SawnPanel, sides: tuple[float, float], amounts: Amounts) -> list[str]:
    """Return the tilt of the long edges, and what the usual setting of the saw leaves open."""
    left, right = sides
    if abs(left - right) > _SAME:
        tilt = right if abs(left - panel.bevel) <= _SAME else left
        other = "square" if abs(tilt) < _SQUARE else f"{deg(tilt, 2)}{_way(tilt)}"
        seam = f"seam edge {deg(panel.bevel, 2)} from square, in under the face"
        return [f"{seam}{_saw(panel, amounts)}", f"the edge at the open side: {other}"]
    if abs(left - panel.bevel) > _SAME:
        other = "square" if abs(left) < _SQUARE else f"{deg(left, 2)}{_way(left)}"
        return [f"side edges {other}: nothing joins them"]
    return [
        f"seam edges {deg(panel.bevel, 2)} from square, in under the face{_saw(panel, amounts)}"
    ]


def _saw(panel: SawnPanel, amounts: Amounts) -> str:
    """Return the usual setting of the saw for a panel's seams and what it leaves open."""
    usual = setting(panel.bevel)
    said = f"; saw at {deg(usual)}"
    if abs(usual - panel.bevel) < _SAME:
        return said
    gap = float(seam_gap(panel.bevel, usual, panel.thickness))
    side = "inside" if gap > 0.0 else "outside"
    return f"{said} leaves {amounts.gap(abs(gap))} open {side}"


def _ends(panel: SawnPanel, amounts: Amounts) -> list[str]:
    bottom, top = panel.edges.bottom, panel.edges.top
    if abs(bottom) < _SQUARE and abs(top) < _SQUARE:
        return ["ends square"]
    _, _, blank = panel.blank()
    if panel.top <= 0.0:
        said = f"bottom end {deg(bottom)}{_way(bottom)}"
    elif abs(bottom + top) < _SAME:
        said = f"ends {deg(bottom)} from square, parallel: the bottom{_way(bottom)}"
    else:
        said = f"bottom end {deg(bottom)}{_way(bottom)}, top {deg(top)}{_way(top)}"
    if max(abs(bottom), abs(top)) > STEEPEST + _SAME:
        said += f"; {_beyond(max(abs(bottom), abs(top)))}"
    if blank - panel.length > 0.0005:
        said += f"; start from {amounts.cut(blank)} long"
    return [said]


def _flush(panel: SawnPanel) -> list[str]:
    """Return the edges of a bottom or lid, flush with the sides around it."""
    tilts = [panel.edges.left, panel.edges.bottom]
    if max(map(abs, tilts)) < _SQUARE:
        return ["edges square"]
    said = [f"long edges {deg(tilts[0])}{_way(tilts[0])}", f"ends {deg(tilts[1])}{_way(tilts[1])}"]
    return [", ".join(said)]


def _slope(panel: SawnPanel, amounts: Amounts) -> list[str]:
    """Return the long edges of a roof's slope."""
    top, bottom = panel.edges.top, panel.edges.bottom
    above, below = {
        "slope": ("ridge edge, plumb:", "eaves, level:"),
        "upper slope": ("ridge edge, plumb:", "knee edge:"),
        "lower slope": ("knee edge:", "eaves, level:"),
    }[panel.face]
    usual = _saw(panel, amounts) if top <= STEEPEST + _SAME else f"; {_beyond(top)}"
    found = [f"{above} {deg(top, 2)}{_way(top)}{usual}"]
    steep = f"; {_beyond(bottom)}" if bottom > STEEPEST + _SAME else ""
    return [*found, f"{below} {deg(bottom)}{_way(bottom)}{steep}; ends square"]


def _beyond(tilt: float) -> str:
    return f"over 45 deg: stand the board on edge, saw at {deg(pi / 2.0 - tilt)}"


def _way(tilt: float) -> str:
    """Return which way a cut runs: in under the outer face, or out beyond it."""
    if abs(tilt) < _SQUARE:
        return ""
    return " in under the face" if tilt > 0.0 else " out beyond the face"


def _board(board: SawnBoard, amounts: Amounts) -> str:
    size = amounts.cut
    holes = f", {counted(len(board.holes), 'hole')}" if board.holes else ""
    thin = f", {board.filled:.0%} of it there: slats or lattice" if board.filled < 1.0 else ""
    if board.sides == 0:
        inner = f", hole {size(_across(board))} across" if board.holes else ""
        return f"round, {size(board.length)} across{inner}{thin}"
    if board.sides is not None:
        flats = board.outline[:, 0].max() * 2.0
        edge = float(((board.outline[1] - board.outline[0]) ** 2).sum() ** 0.5)
        inner = f", hole {size(_across(board))} flat to flat" if board.holes else ""
        if board.sides == 4:
            return f"{size(edge)} square{inner}{thin}"
        corner = deg(pi - 2.0 * pi / board.sides, 2)
        across = f", {size(flats)} flat to flat" if board.sides % 2 == 0 else ""
        return f"{board.sides} sides of {size(edge)}{across}, corners of {corner}{inner}{thin}"
    around = "from a piece " if board.face == "figure" else ""
    return f"{around}{size(board.bottom)} wide, {size(board.length)} long{holes}{thin}"


def _across(board: SawnBoard) -> float:
    """Return a hole's width over flats: twice its first edge's distance from the middle."""
    return 2.0 * float(board.holes[0][:, 0].max())


def _block(block: Block, amounts: Amounts) -> str:
    size = amounts.cut
    if block.width is not None:
        said = f"block {size(block.bottom)} by {size(block.width)}, {size(block.length)} high"
        if abs(block.lean) < _SQUARE and abs(block.lean_ends or 0.0) < _SQUARE:
            return said
        return (
            f"{said}, its faces lean {deg(block.lean)} front and back, "
            f"{deg(block.lean_ends or 0.0)} at the ends"
        )
    top = "a point" if block.top <= 0.0 else size(block.top)
    straight = abs(block.bottom - block.top) < 1.0e-6
    widths = size(block.bottom) if straight else f"{size(block.bottom)} at the bottom, {top} above"
    said = f"{widths}, {size(block.length)} high"
    if block.sides == 0:
        return f"round block {said}"
    flats = f"block of {block.sides} sides, {said}, flat to flat"
    lean = "" if straight else f", lean {deg(block.lean, 2)}"
    if abs(block.tilt) < _SQUARE:
        return f"{flats}; faces square to each other{lean}"
    return f"{flats}; with one face on the table, saw at {deg(block.tilt, 2)} for the next{lean}"


def _plain(cut: OtherCut, amounts: Amounts) -> str:
    size = amounts.cut
    if not cut.part.shape.is_sawn:
        return f"{said_of(cut.part, amounts)}: not sawn"
    match cut.part.shape:
        case Shell(sides, bottom, top, height, wall) if sides == 0:
            ends = size(bottom) if bottom == top else f"{size(bottom)} below, {size(top)} above"
            return f"round, {ends}, {size(height)} high, wall {amounts.thickness(wall)}: not panels"
        case Shell(_, bottom, top, height) | Solid(_, bottom, top, height):
            return f"{size(bottom)} below, {size(top)} above, {size(height)} high"
        case Cone(_, bottom, height):
            return f"{size(bottom)} across, {size(height)} high to a point"
        case Ball(across):
            return f"ball {size(across)} across"
        case Dome(across, height):
            return f"{size(across)} across, {size(height)} high, round"
        case Vault(length, width, height):
            return f"half-round {size(length)} long, {size(width)} wide, {size(height)} high"
        case Gable(length, width, height):
            return f"solid roof {size(length)} by {size(width)}, {size(height)} high"
        case Box(length, width, height):
            return f"{size(length)} by {size(width)}, {size(height)} high; its walls meet inside"
        case Frame(plan, width, height):
            return f"ring {size(plan.least_width)} across, {size(width)} wide, {size(height)} high"
        case _ if cut.part.mass is not None:
            return amounts.own_mass(cut.part.mass)
        case _:
            return "as drawn"
