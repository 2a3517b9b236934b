"""Materials and grounds as tables and as JSON, each value with its source."""

import re
from collections.abc import Iterator
from typing import Any

from ... import materials
from ...materials import grounds
from ...materials.grounds import Ground
from ...materials.material import Material
from ..wording.amounts import LB_FT3, Amounts
from ..wording.lines import Line, wrapped

_COMPARES = re.compile(r"\b(?:dis)?agrees?\b|\bdoubtful\b", re.IGNORECASE)
_COPY = re.compile(r" \(page copy [^)]*\)|^(?:read in|a) .*public.*|^read in .*")


def material_lines() -> list[Line]:
    """Return every material: density in both systems, what it stands for, source."""
    row = "{:<24}{:>7}{:>14}{:>8}{:>14}  {}"
    found = [
        Line(row.format("material", "lb/ft3", "light-heavy", "kg/m3", "light-heavy", "rubs as")),
    ]
    for one in materials.all_materials():
        imperial = [f"{value / LB_FT3:.1f}" for value in (one.typical, one.light, one.heavy)]
        metric = [f"{value:.0f}" for value in (one.typical, one.light, one.heavy)]
        cells = [imperial[0], f"{imperial[1]}-{imperial[2]}", metric[0], f"{metric[1]}-{metric[2]}"]
        found.append(Line(row.format(one.name, *cells, one.contact), "title"))
        found += wrapped(
            f"{one.stands_for}. {_published(one.source)} ({one.confidence}).", "    ", "    "
        )
    return found


def ground_lines() -> list[Line]:
    """Return every ground: what it is, how to tell it, what it bears, friction, stakes, source."""
    imperial, metric = Amounts(False), Amounts(True)
    found: list[Line] = []
    for one in grounds.all_grounds():
        found.append(Line(one.name, "title"))
        found += wrapped(f"{one.description}; you can tell it: {one.field_cue}.", "  ", "    ")
        for name, rating in one.ratings.items():
            value = f"{imperial.pressure(rating.value)} ({metric.pressure(rating.value)})"
            found += wrapped(
                f"{name} {value}: {_word(rating.source, rating.confidence)}", "  ", "    "
            )
        for kind, row in one.friction.items():
            said = f"friction of {kind} {row.coefficient:.2f}: {_word(row.source, row.confidence)}"
            found += wrapped(said, "  ", "    ")
        found += wrapped(f"stakes: {one.stakes_note or 'yes'}", "  ", "    ")
        if one.note:
            found += wrapped(f"mind: {one.note}", "  ", "    ")
    return found


def material_objects() -> list[dict[str, Any]]:
    """Return every material as a JSON object, SI units."""
    return [_material(one) for one in materials.all_materials()]


def ground_objects() -> list[dict[str, Any]]:
    """Return every ground as a JSON object, SI units."""
    return [_ground(one) for one in grounds.all_grounds()]


def _word(source: str, confidence: str) -> str:
    return source if source.startswith(confidence) else f"{source} ({confidence})"


def _published(source: str) -> str:
    """Return where values are from, without the notes of how other copies of them compare."""
    said = [_COPY.sub("", piece) for piece in source.split("; ")]
    return "; ".join(dict.fromkeys(piece for piece in said if _is_source(piece))) or source


def _is_source(piece: str) -> bool:
    """Return whether a piece of a source names one; a note's rest has half a pair of brackets."""
    return not _COMPARES.search(piece) and piece.count("(") == piece.count(")")


def _material(one: Material) -> dict[str, Any]:
    return {
        "name": one.name,
        "kind": one.kind,
        "density_kg_m3": one.typical,
        "density_light_kg_m3": one.light,
        "density_heavy_kg_m3": one.heavy,
        "contact": one.contact,
        "specific_gravity": one.specific_gravity,
        "stands_for": one.stands_for,
        "source": one.source,
        "confidence": one.confidence,
        "notes": list(one.notes),
    }


def _ground(one: Ground) -> dict[str, Any]:
    return {
        "name": one.name,
        "description": one.description,
        "field_cue": one.field_cue,
        "wet": one.wet,
        "stakes_possible": one.stakes_possible,
        "straight_pull": one.straight_pull,
        "stakes_note": one.stakes_note,
        "source": one.source,
        "confidence": one.confidence,
        "friction": dict(_frictions(one)),
        "ratings": {
            name: {
                "value_Pa": rating.value,
                "source": rating.source,
                "confidence": rating.confidence,
                "note": rating.note,
            }
            for name, rating in one.ratings.items()
        },
        "note": one.note,
    }


def _frictions(one: Ground) -> Iterator[tuple[str, dict[str, Any]]]:
    for kind, row in one.friction.items():
        yield (
            kind,
            {
                "coefficient": row.coefficient,
                "source": row.source,
                "confidence": row.confidence,
                "note": row.note,
            },
        )
