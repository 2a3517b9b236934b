"""Joints as a program reads them: SI, the unit named beside each value."""

from collections.abc import Mapping
from math import isfinite
from typing import Any

from ...checks.examination import Examination
from ...checks.joints.joint_check import JointFound
from ...checks.joints.joint_sizing import JointRemedy
from ...checks.sizing.better_fastened import sized


def joint_object(joint: JointFound) -> Mapping[str, Any]:
    """Return one joint: its fasteners, what they are asked and what each holds."""
    holds, row = joint.holds, joint.row
    return {
        "name": row.name,
        "of": row.of,
        "to": row.to,
        "fastener": row.fastener.name,
        "count": row.count,
        "places": joint.spots,
        "spacing_m": joint.spacing,
        "head_in": joint.fasteners.head_in,
        "into": joint.fasteners.driven.into,
        "through_m": joint.fasteners.driven.through,
        "penetration_m": holds.penetration,
        "tension_N": joint.tension,
        "shear_N": _finite(joint.shear),
        "withdrawal_N": holds.out,
        "head_pull_through_N": _finite(holds.head),
        "lateral_N": holds.sideways,
        "mode": holds.mode or None,
        "mean_withdrawal_N": holds.mean_out,
        "glue_counted": False,
        "load": joint.check.load or None,
    }


def sized_joint_object(examination: Examination, joint: JointFound) -> Mapping[str, Any]:
    """Return one joint with what would make it hold."""
    sizing = sized(examination, joint)
    return {
        **joint_object(joint),
        "passes": joint.check.passes,
        "utilization": joint.check.utilization,
        "remedies": [_remedy(remedy) for remedy in sizing.remedies],
        "reason": None if sizing.why is None else sizing.why.value,
    }


def _remedy(remedy: JointRemedy) -> Mapping[str, Any]:
    before = remedy.before
    return {
        "kind": remedy.kind,
        "fastener": remedy.fastener.name,
        "count": remedy.count,
        "spacing_m": remedy.found.spacing,
        "utilization": remedy.found.check.utilization,
        "next_smaller_passes": None if before is None else before.check.passes,
    }


def _finite(value: float) -> float | None:
    return value if isfinite(value) else None
