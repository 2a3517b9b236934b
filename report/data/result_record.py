"""The result as a JSON object and as its schema: SI units in the keys, numbers finite or null.

Keys may be added to a result, and none of those here is renamed or taken away within a format.
"""

from collections.abc import Callable
from math import hypot
from operator import itemgetter
from typing import Any

from ...checks.examination import Examination
from ...checks.fasteners.fastener_sets import CLEAT
from ...checks.how_often import how_often
from ...checks.judged.judging import Check
from ...checks.members.member_check import MemberStrength
from ...checks.stated.governed import governed
from ...checks.timber.books import values_of
from ...checks.verdict import Word
from ...loads.combinations import resistance_basis
from ..fastening.fastened_record import JOINT_OBJECT, SEAM_OBJECT
from ..record import (
    MAYBE_TEXT,
    NUMBER,
    ObjectOf,
    a_number,
    array,
    inner_object,
    inner_objects,
    maybe_number,
    maybe_record,
    maybe_text,
    object_of,
    one_value,
    or_null,
    text,
    texts,
    true_or_false,
    whole_number,
)
from ..told.check_notes import notes_said
from ..wording.amounts import Amounts

RESULT_FORMAT = 1

_POINT: dict[str, Any] = {"minItems": 3, "maxItems": 3}
_CORNER = {"type": "array", "items": NUMBER, "minItems": 2, "maxItems": 2}
_ANGLE = {"type": "number", "minimum": 0, "exclusiveMaximum": 360}


_PART = ObjectOf(
    name=text(itemgetter(0)),
    mass_kg=a_number(itemgetter(1)),
    center_of_mass_m=array(itemgetter(2), **_POINT),
    volume_m3=a_number(itemgetter(3)),
)


def _parts(found: Examination) -> list[tuple[Any, ...]]:
    structure = found.structure
    mass, volume = structure.part_mass[1].tolist(), structure.part_volume.tolist()
    names = [part.name for part in found.design.parts]
    return list(zip(names, mass, structure.part_centre, volume, strict=False))


GEOMETRY = ObjectOf(
    mass_kg=a_number(lambda found: found.structure.mass("typical")),
    weight_N=a_number(lambda found: found.structure.weight("typical")),
    mass_light_kg=a_number(lambda found: found.structure.mass("light")),
    mass_heavy_kg=a_number(lambda found: found.structure.mass("heavy")),
    center_of_mass_m=array(lambda found: found.structure.centre_of_mass("typical"), **_POINT),
    height_m=a_number("structure.height"),
    footprint_m=array("structure.footprint", _CORNER, minItems=3),
    parts=inner_objects(_PART, _parts),
)

WIND_OBJECT = ObjectOf(
    directions_deg=array("wind.azimuths", _ANGLE),
    projected_area_m2=array("wind.area"),
    force_N=array("wind.force"),
    force_height_m=array("wind.force_height"),
    uplift_N=array("wind.uplift"),
    velocity_pressure_Pa=a_number("wind.pressure"),
    minimum_governs=true_or_false("minimum_governs"),
)

_ENVELOPE = ObjectOf(
    least=maybe_number(lambda check: check.envelope[0]),
    most=maybe_number(lambda check: check.envelope[1]),
    as_read=maybe_number("as_read"),
)


def check_record(found: Examination | None = None) -> ObjectOf:
    """Return how a check is told; its notes are of what was ``found``."""

    def notes(check: Check) -> tuple[str, ...]:
        return (
            ()
            if found is None
            else notes_said(governed(found, check), Amounts(found.design.units == "metric"))
        )

    return ObjectOf(
        name=text("name"),
        demand=maybe_number("demand"),
        capacity=maybe_number("capacity"),
        unit=text("unit"),
        utilization=maybe_number("utilization"),
        passes=true_or_false("passes"),
        direction_deg=maybe_number("direction_deg"),
        source=text("source"),
        envelope=maybe_record(_ENVELOPE, lambda check: check if check.envelope else None),
        notes=texts(notes),
    )


_FORCES = ObjectOf(
    at_m=maybe_number("at"),
    axial_N=maybe_number(lambda one: one.forces[0]),
    moment_1_Nm=maybe_number(lambda one: one.forces[4]),
    moment_2_Nm=maybe_number(lambda one: one.forces[5]),
    shear_N=maybe_number(lambda one: hypot(one.forces[1], one.forces[2])),
    torsion_Nm=maybe_number(lambda one: one.forces[3]),
)


def member_record(basis: str = "") -> ObjectOf:
    """Return how the strength of a part is told, by the basis of resistance."""

    def known(name: str) -> Callable[[MemberStrength], str]:
        return lambda one: getattr(values_of(one.stuff, basis), name)

    return ObjectOf(
        part=text("name"),
        role=text("role"),
        governs=text("governs"),
        where=maybe_text("where"),
        level_m=maybe_number("level"),
        load=maybe_text("check.load"),
        count=whole_number("count"),
        deflection_m=a_number("deflection"),
        forces=maybe_record(_FORCES, lambda one: one if one.forces else None),
        source=text(known("source")),
        confidence=text(known("confidence")),
    )


_SPACING = ObjectOf(fastener=text("fastener"), spacing_m=maybe_number("spacing"))


def seams_record(found: Examination | None = None) -> ObjectOf:
    """Return how the seams of a body are told, with those that are ``found`` fastened."""

    def fastened(one: Any) -> Any:
        known = () if found is None else found.fastened_seams
        return next((each for each in known if each.row.part == one.part), None)

    return ObjectOf(
        part=text("part"),
        count=whole_number("count"),
        shear_N=a_number("shear"),
        torque_N_m=a_number("torque"),
        level_m=a_number("level"),
        flow_N_m=a_number("flow"),
        pull_N_m=a_number("pull"),
        hoop_N_m=a_number("hoop"),
        into=text(lambda _: CLEAT),
        spacings=inner_objects(_SPACING, "spacings"),
        fastened=maybe_record(SEAM_OBJECT, fastened),
    )


def _often(name: str) -> Callable[[Examination], Any]:
    return lambda found: None if (often := how_often(found)) is None else getattr(often.comes, name)


LIMITS = ObjectOf(
    tipping_gust_m_s=maybe_number("limits.tipping"),
    sliding_gust_m_s=maybe_number("limits.sliding"),
    tipping_gust_low_m_s=maybe_number("limits.tipping_low"),
    tipping_gust_high_m_s=maybe_number("limits.tipping_high"),
    forecast_tipping_gust_m_s=maybe_number("limits.forecast_tipping"),
    forecast_sliding_gust_m_s=maybe_number("limits.forecast_sliding"),
    act_forecast_gust_m_s=maybe_number("limits.act"),
    push_N=a_number("limits.push"),
    push_height_m=a_number("limits.push_height"),
    return_period_years=maybe_number(_often("years")),
    return_period_by=maybe_text(_often("method")),
)

VERDICT = ObjectOf(
    word=one_value({"enum": [str(word) for word in Word]}, "word"),
    why=text("why"),
    mend=texts("mend"),
    unfastened=texts("unfastened"),
    not_looked_at=texts("not_looked_at"),
)

LOOK_AGAIN = ObjectOf(
    part=text("part"), key=one_value(MAYBE_TEXT, "key"), found=text("found"), hint=text("hint")
)


def free_standing(found: Examination) -> dict[str, Any] | None:
    """Return the checks of a piece without anchors by their names; None of one on posts."""
    if found.free is None:
        return None
    told = check_record(found)
    return {check.name: told.object(check) for check in found.free}


def result_record(found: Examination | None = None) -> ObjectOf:
    """Return how a result is told; of one that was ``found`` its notes are told as well."""
    checks, basis = check_record(found), "" if found is None else resistance_basis(found.site)
    free = or_null(object_of(overturning=checks.schema, sliding=checks.schema))
    return ObjectOf(
        format=one_value({"const": RESULT_FORMAT}, lambda _: RESULT_FORMAT),
        name=text("name"),
        file=text("file"),
        fingerprint=one_value({"type": "string", "pattern": "^[0-9a-f]{12}$"}, "fingerprint"),
        verdict=inner_object(VERDICT, "verdict"),
        look_again=inner_objects(LOOK_AGAIN, "examination.look_again"),
        geometry=inner_object(GEOMETRY, "examination"),
        wind=inner_object(WIND_OBJECT, "examination"),
        checks=inner_objects(checks, "examination.checks"),
        members=inner_objects(member_record(basis), "examination.members.judged"),
        seams=inner_objects(seams_record(found), "examination.seams"),
        free_standing=one_value(free, lambda one: free_standing(one.examination)),
        joints=inner_objects(JOINT_OBJECT, "examination.joints"),
        needs_anchors=true_or_false("needs_anchors"),
        limits=inner_object(LIMITS, "examination"),
        equilibrium_error=a_number("examination.equilibrium_error"),
        assumptions=texts("assumptions"),
        cautions=texts("cautions"),
        not_checked=texts("not_checked"),
        unverified=texts("unverified"),
    )
