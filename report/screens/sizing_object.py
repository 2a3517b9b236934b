"""What it takes to hold a piece as a program reads it: SI, the unit named beside each value."""

from collections.abc import Mapping
from typing import Any

from ...checks.sizing.better_fastened import sized, sized_seam
from ...checks.sizing.mending import mending
from ...checks.sizing.size_curves import CurvePoint
from ...checks.sizing.ways import Sizing
from ...checks.sizing.why_none import why_none
from ..advice.mend_lines import mend_objects
from ..fastening.fastened_seams import sized_seam_object
from ..fastening.joint_object import sized_joint_object
from ..told.facts import facts_of
from ..told.sizing_words import why_no_remedy
from ..told.tied_words import tied_object
from ..wording.amounts import Amounts
from ..wording.faults import clean
from ..wording.fingerprint import fingerprint

SIZING_FORMAT = 1


def sizing_object(sizing: Sizing) -> Mapping[str, Any]:
    """Return the JSON object of a sizing."""
    amounts = Amounts(sizing.design.units == "metric")
    return {
        "format": SIZING_FORMAT,
        "name": clean(sizing.design.name),
        "file": clean(sizing.design.file),
        "fingerprint": fingerprint(sizing.design),
        "needs_anchors": sizing.found.needs_anchors,
        "remedies": [
            {
                "kind": remedy.kind,
                "value": remedy.value,
                "unit": remedy.unit,
                "feasible": remedy.feasible,
                "governs": remedy.governs,
                "reason": why_no_remedy(why_none(sizing.found, remedy), amounts) or None,
                **tied_object(remedy.anchors, remedy.guys),
            }
            for remedy in sizing.remedies
        ],
        "mends": mend_objects(mending(sizing.found), facts_of(sizing.found)),
        "joints": [sized_joint_object(sized(sizing.found, joint)) for joint in sizing.found.joints],
        "seams": [
            sized_seam_object(sized_seam(sizing.found, one)) for one in sizing.found.fastened_seams
        ],
        "slides_first_width_m": sizing.slides_first,
        "curve": [point_object(point) for point in sizing.curve],
    }


def point_object(point: CurvePoint) -> Mapping[str, Any]:
    """Return one point of a curve as a JSON object."""
    limits = point.limits
    return {
        "kind": point.kind,
        "value": point.value,
        "unit": point.unit,
        "present": point.present,
        "mass_kg": point.mass,
        "forecast_tipping_gust_m_s": limits.forecast_tipping,
        "forecast_sliding_gust_m_s": limits.forecast_sliding,
        "act_forecast_gust_m_s": limits.act,
        "push_N": limits.push,
    }
