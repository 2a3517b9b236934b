"""The result as a JSON Schema: SI units in the keys, every number finite or null.

Keys may be added to a result, and none of those here is renamed or taken away within a format.
"""

from typing import Any

from ..checks.verdict import Word
from .design_schema import SCHEMA_DRAFT
from .result import RESULT_FORMAT

_Schema = dict[str, Any]

_TEXT: _Schema = {"type": "string"}
_NUMBER: _Schema = {"type": "number"}
_WHOLE: _Schema = {"type": "integer"}
_FLAG: _Schema = {"type": "boolean"}
_MAYBE_TEXT: _Schema = {"type": ["string", "null"]}
_MAYBE_NUMBER: _Schema = {"type": ["number", "null"]}


def result_schema() -> _Schema:
    """Return the schema of what ``check --format json`` prints of one design."""
    whole = _object(
        format={"const": RESULT_FORMAT},
        name=_TEXT,
        file=_TEXT,
        fingerprint={"type": "string", "pattern": "^[0-9a-f]{12}$"},
        verdict=_object(
            word={"enum": [str(word) for word in Word]},
            why=_TEXT,
            mend=_list(_TEXT),
            unfastened=_list(_TEXT),
            not_looked_at=_list(_TEXT),
        ),
        look_again=_list(_object(part=_TEXT, key=_MAYBE_TEXT, found=_TEXT, hint=_TEXT)),
        geometry=_geometry(),
        wind=_wind(),
        checks=_list(_check()),
        members=_list(_member()),
        seams=_list(_seams()),
        free_standing=_or_null(_object(overturning=_check(), sliding=_check())),
        joints=_list(_joint()),
        needs_anchors=_FLAG,
        limits=_limits(),
        equilibrium_error=_NUMBER,
        **{key: _list(_TEXT) for key in ("assumptions", "cautions", "not_checked")},
        unverified=_list(_TEXT),
    )
    whole["properties"]["explained"] = _list(_explained())  # with --explain alone
    return {"$schema": SCHEMA_DRAFT, "title": f"Yardfast result, format {RESULT_FORMAT}", **whole}


def _explained() -> _Schema:
    """Return what ``check --explain NAME`` adds: a check's relation, inputs and number."""
    item = {
        "type": "object",
        "properties": {
            "words": _TEXT,
            "formula": _TEXT,
            "values": {"type": "object", "additionalProperties": _TEXT},
            "source": _TEXT,
            "head": _list(_TEXT),
            "rows": _list(_list(_TEXT)),
        },
        "required": ["words"],
    }
    given = _object(
        what=_TEXT,
        value=_TEXT,
        **{"from": _TEXT},
        line={"type": ["integer", "null"]},
        source=_MAYBE_TEXT,
        confidence=_MAYBE_TEXT,
    )
    return _object(
        name=_TEXT,
        relation=_list(_object(title=_TEXT, steps=_list(item))),
        source=_TEXT,
        inputs=_list(given),
        demand=_NUMBER,
        capacity=_NUMBER,
        unit=_TEXT,
        utilization=_MAYBE_NUMBER,
        passes=_FLAG,
        notes=_list(_TEXT),
    )


def _object(**properties: _Schema) -> _Schema:
    return {"type": "object", "properties": properties, "required": list(properties)}


def _list(items: _Schema) -> _Schema:
    return {"type": "array", "items": items}


def _or_null(schema: _Schema) -> _Schema:
    return {"anyOf": [schema, {"type": "null"}]}


def _point() -> _Schema:
    return {"type": "array", "items": _NUMBER, "minItems": 3, "maxItems": 3}


def _geometry() -> _Schema:
    part = _object(name=_TEXT, mass_kg=_NUMBER, center_of_mass_m=_point(), volume_m3=_NUMBER)
    corner = {"type": "array", "items": _NUMBER, "minItems": 2, "maxItems": 2}
    masses = dict.fromkeys(("mass_kg", "weight_N", "mass_light_kg", "mass_heavy_kg"), _NUMBER)
    return _object(
        **masses,
        center_of_mass_m=_point(),
        height_m=_NUMBER,
        footprint_m={**_list(corner), "minItems": 3},
        parts=_list(part),
    )


def _wind() -> _Schema:
    angle = {"type": "number", "minimum": 0, "exclusiveMaximum": 360}
    by_direction = ("projected_area_m2", "force_N", "force_height_m", "uplift_N")
    return _object(
        directions_deg=_list(angle),
        **{key: _list(_NUMBER) for key in by_direction},
        velocity_pressure_Pa=_NUMBER,
        minimum_governs=_FLAG,
    )


def _check() -> _Schema:
    return _object(
        name=_TEXT,
        demand=_MAYBE_NUMBER,
        capacity=_MAYBE_NUMBER,
        unit=_TEXT,
        utilization=_MAYBE_NUMBER,
        passes=_FLAG,
        direction_deg=_MAYBE_NUMBER,
        source=_TEXT,
        envelope=_or_null(_object(least=_MAYBE_NUMBER, most=_MAYBE_NUMBER, as_read=_MAYBE_NUMBER)),
        notes=_list(_TEXT),
    )


def _member() -> _Schema:
    return _object(
        part=_TEXT,
        role=_TEXT,
        governs=_TEXT,
        where=_MAYBE_TEXT,
        level_m=_MAYBE_NUMBER,
        load=_MAYBE_TEXT,
        count=_WHOLE,
        deflection_m=_NUMBER,
        forces=_or_null(_forces()),
        source=_TEXT,
        confidence=_TEXT,
    )


def _forces() -> _Schema:
    keys = ("at_m", "axial_N", "moment_1_Nm", "moment_2_Nm", "shear_N", "torsion_Nm")
    return _object(**dict.fromkeys(keys, _MAYBE_NUMBER))


def _fastened(**more: _Schema) -> _Schema:
    """Return what joints and fastened seams say alike."""
    return _object(
        **more,
        fastener=_TEXT,
        spacing_m=_MAYBE_NUMBER,
        into=_TEXT,
        through_m=_NUMBER,
        penetration_m=_NUMBER,
        tension_N=_NUMBER,
        shear_N=_MAYBE_NUMBER,
        withdrawal_N=_NUMBER,
        head_pull_through_N=_MAYBE_NUMBER,
        lateral_N=_NUMBER,
        mode=_MAYBE_TEXT,
    )


def _joint() -> _Schema:
    return _fastened(
        name=_TEXT,
        of=_TEXT,
        to=_TEXT,
        count=_WHOLE,
        places=_WHOLE,
        head_in=_TEXT,
        mean_withdrawal_N=_MAYBE_NUMBER,
        glue_counted=_FLAG,
        load=_MAYBE_TEXT,
    )


def _seams() -> _Schema:
    numbers = ("shear_N", "torque_N_m", "level_m", "flow_N_m", "pull_N_m", "hoop_N_m")
    fastened = _fastened(cleat=_MAYBE_TEXT, passes=_FLAG, utilization=_MAYBE_NUMBER)
    return _object(
        part=_TEXT,
        count=_WHOLE,
        **dict.fromkeys(numbers, _NUMBER),
        into=_TEXT,
        spacings=_list(_object(fastener=_TEXT, spacing_m=_MAYBE_NUMBER)),
        fastened=_or_null(fastened),
    )


def _limits() -> _Schema:
    gusts = (
        *("tipping_gust_m_s", "sliding_gust_m_s", "tipping_gust_low_m_s", "tipping_gust_high_m_s"),
        *("forecast_tipping_gust_m_s", "forecast_sliding_gust_m_s", "act_forecast_gust_m_s"),
    )
    return _object(
        **dict.fromkeys(gusts, _MAYBE_NUMBER),
        push_N=_NUMBER,
        push_height_m=_NUMBER,
        return_period_years=_MAYBE_NUMBER,
        return_period_by=_MAYBE_TEXT,
    )
