"""The result as a JSON Schema: SI units in the keys, every number finite or null.

Keys may be added to a result, and none of those here is renamed or taken away within a format.
"""

from ...checks.verdict import Word
from .design_schema import SCHEMA_DRAFT
from .result import RESULT_FORMAT
from .schema_kinds import (
    A_FLAG,
    A_TEXT,
    A_WHOLE_NUMBER,
    MAYBE_NUMBER,
    MAYBE_TEXT,
    NUMBER,
    Schema,
    list_of,
    object_of,
    or_null,
)


def result_schema() -> Schema:
    """Return the schema of what ``check --format json`` prints of one design."""
    whole = object_of(
        format={"const": RESULT_FORMAT},
        name=A_TEXT,
        file=A_TEXT,
        fingerprint={"type": "string", "pattern": "^[0-9a-f]{12}$"},
        verdict=object_of(
            word={"enum": [str(word) for word in Word]},
            why=A_TEXT,
            mend=list_of(A_TEXT),
            unfastened=list_of(A_TEXT),
            not_looked_at=list_of(A_TEXT),
        ),
        look_again=list_of(object_of(part=A_TEXT, key=MAYBE_TEXT, found=A_TEXT, hint=A_TEXT)),
        geometry=_geometry(),
        wind=_wind(),
        checks=list_of(_check()),
        members=list_of(_member()),
        seams=list_of(_seams()),
        free_standing=or_null(object_of(overturning=_check(), sliding=_check())),
        joints=list_of(_joint()),
        needs_anchors=A_FLAG,
        limits=_limits(),
        equilibrium_error=NUMBER,
        **{key: list_of(A_TEXT) for key in ("assumptions", "cautions", "not_checked")},
        unverified=list_of(A_TEXT),
    )
    whole["properties"]["explained"] = list_of(_explained())  # with --explain alone
    return {"$schema": SCHEMA_DRAFT, "title": f"Yardfast result, format {RESULT_FORMAT}", **whole}


def _explained() -> Schema:
    """Return what ``check --explain NAME`` adds: a check's relation, inputs and number."""
    item = {
        "type": "object",
        "properties": {
            "words": A_TEXT,
            "formula": A_TEXT,
            "values": {"type": "object", "additionalProperties": A_TEXT},
            "source": A_TEXT,
            "head": list_of(A_TEXT),
            "rows": list_of(list_of(A_TEXT)),
        },
        "required": ["words"],
    }
    given = object_of(
        what=A_TEXT,
        value=A_TEXT,
        **{"from": A_TEXT},
        line={"type": ["integer", "null"]},
        source=MAYBE_TEXT,
        confidence=MAYBE_TEXT,
    )
    return object_of(
        name=A_TEXT,
        relation=list_of(object_of(title=A_TEXT, steps=list_of(item))),
        source=A_TEXT,
        inputs=list_of(given),
        demand=NUMBER,
        capacity=NUMBER,
        unit=A_TEXT,
        utilization=MAYBE_NUMBER,
        passes=A_FLAG,
        notes=list_of(A_TEXT),
    )


def _point() -> Schema:
    return {"type": "array", "items": NUMBER, "minItems": 3, "maxItems": 3}


def _geometry() -> Schema:
    part = object_of(name=A_TEXT, mass_kg=NUMBER, center_of_mass_m=_point(), volume_m3=NUMBER)
    corner = {"type": "array", "items": NUMBER, "minItems": 2, "maxItems": 2}
    masses = dict.fromkeys(("mass_kg", "weight_N", "mass_light_kg", "mass_heavy_kg"), NUMBER)
    return object_of(
        **masses,
        center_of_mass_m=_point(),
        height_m=NUMBER,
        footprint_m={**list_of(corner), "minItems": 3},
        parts=list_of(part),
    )


def _wind() -> Schema:
    angle = {"type": "number", "minimum": 0, "exclusiveMaximum": 360}
    by_direction = ("projected_area_m2", "force_N", "force_height_m", "uplift_N")
    return object_of(
        directions_deg=list_of(angle),
        **{key: list_of(NUMBER) for key in by_direction},
        velocity_pressure_Pa=NUMBER,
        minimum_governs=A_FLAG,
    )


def _check() -> Schema:
    return object_of(
        name=A_TEXT,
        demand=MAYBE_NUMBER,
        capacity=MAYBE_NUMBER,
        unit=A_TEXT,
        utilization=MAYBE_NUMBER,
        passes=A_FLAG,
        direction_deg=MAYBE_NUMBER,
        source=A_TEXT,
        envelope=or_null(object_of(least=MAYBE_NUMBER, most=MAYBE_NUMBER, as_read=MAYBE_NUMBER)),
        notes=list_of(A_TEXT),
    )


def _member() -> Schema:
    return object_of(
        part=A_TEXT,
        role=A_TEXT,
        governs=A_TEXT,
        where=MAYBE_TEXT,
        level_m=MAYBE_NUMBER,
        load=MAYBE_TEXT,
        count=A_WHOLE_NUMBER,
        deflection_m=NUMBER,
        forces=or_null(_forces()),
        source=A_TEXT,
        confidence=A_TEXT,
    )


def _forces() -> Schema:
    keys = ("at_m", "axial_N", "moment_1_Nm", "moment_2_Nm", "shear_N", "torsion_Nm")
    return object_of(**dict.fromkeys(keys, MAYBE_NUMBER))


def _fastened(**more: Schema) -> Schema:
    """Return what joints and fastened seams say alike."""
    return object_of(
        **more,
        fastener=A_TEXT,
        spacing_m=MAYBE_NUMBER,
        into=A_TEXT,
        through_m=NUMBER,
        penetration_m=NUMBER,
        tension_N=NUMBER,
        shear_N=MAYBE_NUMBER,
        withdrawal_N=NUMBER,
        head_pull_through_N=MAYBE_NUMBER,
        lateral_N=NUMBER,
        mode=MAYBE_TEXT,
    )


def _joint() -> Schema:
    return _fastened(
        name=A_TEXT,
        of=A_TEXT,
        to=A_TEXT,
        count=A_WHOLE_NUMBER,
        places=A_WHOLE_NUMBER,
        head_in=A_TEXT,
        mean_withdrawal_N=MAYBE_NUMBER,
        glue_counted=A_FLAG,
        load=MAYBE_TEXT,
    )


def _seams() -> Schema:
    numbers = ("shear_N", "torque_N_m", "level_m", "flow_N_m", "pull_N_m", "hoop_N_m")
    fastened = _fastened(cleat=MAYBE_TEXT, passes=A_FLAG, utilization=MAYBE_NUMBER)
    return object_of(
        part=A_TEXT,
        count=A_WHOLE_NUMBER,
        **dict.fromkeys(numbers, NUMBER),
        into=A_TEXT,
        spacings=list_of(object_of(fastener=A_TEXT, spacing_m=MAYBE_NUMBER)),
        fastened=or_null(fastened),
    )


def _limits() -> Schema:
    gusts = (
        *("tipping_gust_m_s", "sliding_gust_m_s", "tipping_gust_low_m_s", "tipping_gust_high_m_s"),
        *("forecast_tipping_gust_m_s", "forecast_sliding_gust_m_s", "act_forecast_gust_m_s"),
    )
    return object_of(
        **dict.fromkeys(gusts, MAYBE_NUMBER),
        push_N=NUMBER,
        push_height_m=NUMBER,
        return_period_years=MAYBE_NUMBER,
        return_period_by=MAYBE_TEXT,
    )
