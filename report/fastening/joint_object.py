"""Joints as a program reads them: SI, the unit named beside each value."""

from collections.abc import Mapping
from typing import Any

from ...checks.joints.joint_sizing import JointRemedy, JointSizing
from .fastened_record import JOINT_OBJECT


def sized_joint_object(sizing: JointSizing) -> Mapping[str, Any]:
    """Return one joint with what would make it hold."""
    joint = sizing.joint
    return {
        **JOINT_OBJECT.object(joint),
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
