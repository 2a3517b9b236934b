"""The cut list as a program reads it: SI, angles in degrees, the unit named in the key."""

from collections.abc import Mapping
from math import degrees
from typing import Any

from ...checks.stated.hardware import FastenerTally, Hardware
from ...design.cutting.blocks import Block
from ...design.cutting.boards import SawnBoard
from ...design.cutting.cut_list import CutList
from ...design.cutting.cut_pieces import FlatCut, OtherCut, SheetGroup, StickCut, StickGroup
from ...design.cutting.panels import SawnPanel, seam_gap
from ...materials.bought import UnitSystem
from ...materials.hardware import fastener_boxes, with_spares
from ..fastening.cut_words import setting
from ..wording.faults import clean
from ..wording.fingerprint import fingerprint

_FORMAT = 1


def cut_object(cuts: CutList, hardware: Hardware) -> Mapping[str, Any]:
    """Return the JSON object of a cut list and of what fastens it."""
    structure = cuts.structure
    volumes = cuts.volumes()
    return {
        "format": _FORMAT,
        "name": clean(cuts.design.name),
        "file": clean(cuts.design.file),
        "fingerprint": fingerprint(cuts.design),
        "kerf_m": cuts.kerf,
        "panels": [_flat(cut) for group in cuts.flats for cut in group.cuts],
        "lumber": [_stick(cut, group) for group in cuts.sticks for cut in group.cuts],
        "other_parts": [_other(other) for other in cuts.others],
        "sheets": cuts.sheets,
        "waste_fraction": cuts.waste,
        "stock": [_group(group) for group in cuts.flats],
        "lumber_stock": [_lumber(group) for group in cuts.sticks if group.lumber is not None],
        "volumes": [
            {"part": clean(part.name), "cut_m3": volumes[part.name], "design_m3": float(volume)}
            for part, volume in zip(cuts.design.parts, structure.part_volume, strict=True)
        ],
        "hardware": [_driven(one, cuts.system) for one in hardware.driven],
        "glued_m2": hardware.glued,
        "seams_and_mitres_m2": hardware.mitres,
        "pieces": cuts.pieces,
        "mass_kg": structure.mass("typical"),
    }


def _driven(one: FastenerTally, system: UnitSystem) -> Mapping[str, Any]:
    whole = fastener_boxes(one.fastener, with_spares(one.count), system)
    return {
        "fastener": one.fastener.name,
        "count": one.count,
        "with_spares": with_spares(one.count),
        "boxes": whole.number,
        "in_a_box": whole.holds,
        "box_kg": whole.weight,
        "washer_m": one.washer,
        "uses": [{"for": clean(name), "count": count} for name, count in one.uses],
    }


def _flat(cut: FlatCut) -> Mapping[str, Any]:
    piece = cut.piece
    usual = setting(piece.bevel)
    edges = piece.edges if isinstance(piece, SawnPanel) else None
    return {
        "part": clean(cut.part.name),
        "face": piece.face,
        "count": cut.count,
        "bottom_m": piece.bottom,
        "top_m": piece.top,
        "length_m": piece.length,
        "thickness_m": piece.thickness,
        "bevel_deg": degrees(piece.bevel),
        "lean_deg": degrees(piece.lean),
        "edges_deg": {
            name: degrees(getattr(edges, name)) + 0.0 if edges is not None else 0.0
            for name in ("left", "right", "bottom", "top")
        },
        "saw_setting_deg": degrees(usual),
        "seam_gap_m": abs(float(seam_gap(piece.bevel, usual, piece.thickness))),
        "blank_length_m": piece.blank()[2],
        "volume_m3": piece.volume,
        "material": clean(cut.part.material) if cut.part.material else None,
        "sides": piece.sides if isinstance(piece, SawnBoard) else None,
        "holes": len(piece.holes) if isinstance(piece, SawnBoard) else 0,
        "seams": cut.seams,
        "across_the_grain": cut.turned,
    }


def _stick(cut: StickCut, group: StickGroup) -> Mapping[str, Any]:
    stick = cut.stick
    return {
        "part": clean(cut.part.name),
        "piece": stick.face,
        "count": cut.count,
        "nominal": group.nominal,
        "thickness_m": stick.thick,
        "width_m": stick.wide or None,
        "wall_m": stick.wall,
        "long_point_m": stick.long_point,
        "short_point_m": stick.short_point,
        "mitre_deg": degrees(stick.mitre),
        "cut": stick.cut,
        "parallel": stick.parallel,
        "material": clean(cut.part.material) if cut.part.material else None,
    }


def _other(cut: OtherCut) -> Mapping[str, Any]:
    return {
        "part": clean(cut.part.name),
        "count": cut.count,
        "volume_m3": cut.volume,
        "material": clean(cut.part.material) if cut.part.material else None,
        "block": None if cut.block is None else _block(cut.block),
    }


def _block(block: Block) -> Mapping[str, Any]:
    return {
        "sides": block.sides,
        "bottom_m": block.bottom,
        "top_m": block.top,
        "length_m": block.length,
        "lean_deg": degrees(block.lean),
        "bevel_deg": degrees(block.tilt) if block.sides else None,
    }


def _group(group: SheetGroup) -> Mapping[str, Any]:
    size = group.size
    return {
        "material": clean(group.material) if group.material else None,
        "thickness_m": group.thickness,
        "area_m2": group.area,
        "sheet": None if size is None else size.name,
        "sheet_width_m": None if size is None else size.width,
        "sheet_length_m": None if size is None else size.length,
        "sheets": group.sheets,
        "least_sheets_by_area": 0 if group.layout is None else group.layout.least_sheets,
        "waste_fraction": group.waste if group.sheets else None,
        "laid_out": []
        if group.layout is None
        else [
            [
                {
                    "part": clean(group.cuts[one.blank.kind].part.name),
                    "face": group.cuts[one.blank.kind].piece.face,
                    "corners_m": one.corners().tolist(),
                }
                for one in sheet
            ]
            for sheet in group.layout.sheets
        ],
    }


def _lumber(group: StickGroup) -> Mapping[str, Any]:
    lumber = group.lumber
    assert lumber is not None
    return {
        "nominal": group.nominal,
        "thickness_m": group.thick,
        "width_m": group.wide,
        "material": clean(group.material) if group.material else None,
        "lengths_m": [stick.length for stick in lumber.sticks],
        "waste_fraction": lumber.waste if lumber.sticks else None,
        "too_long": [clean(group.cuts[kind].part.name) for kind in lumber.too_long],
    }
