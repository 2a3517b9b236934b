"""Joints and fastened seams as a program reads them: SI, the unit named beside each value."""

from ..record import (
    A_FLAG,
    ObjectOf,
    a_number,
    maybe_number,
    maybe_text,
    one_value,
    text,
    true_or_false,
    whole_number,
)

_HOLDS = ObjectOf(
    tension_N=a_number("tension"),
    shear_N=maybe_number("shear"),
    withdrawal_N=a_number("holds.out"),
    head_pull_through_N=maybe_number("holds.head"),
    lateral_N=a_number("holds.sideways"),
    mode=maybe_text("holds.mode"),
)

JOINT_OBJECT = ObjectOf(
    name=text("row.name"),
    of=text("row.of"),
    to=text("row.to"),
    fastener=text("row.fastener.name"),
    count=whole_number("row.count"),
    places=whole_number("spots"),
    spacing_m=maybe_number("spacing"),
    head_in=text("fasteners.head_in"),
    into=text("fasteners.driven.into"),
    through_m=a_number("fasteners.driven.through"),
    penetration_m=a_number("holds.penetration"),
    **_HOLDS,
    mean_withdrawal_N=maybe_number("holds.mean_out"),
    glue_counted=one_value(A_FLAG, lambda _: False),
    load=maybe_text("check.load"),
)
"""One joint: its fasteners, what they are asked and what each holds."""

SEAM_OBJECT = ObjectOf(
    fastener=text("row.fastener.name"),
    spacing_m=maybe_number("row.spacing"),
    cleat=maybe_text("row.cleat"),
    into=text("driven.into"),
    through_m=a_number("driven.through"),
    penetration_m=a_number("holds.penetration"),
    **_HOLDS,
    passes=true_or_false("check.passes"),
    utilization=maybe_number("check.utilization"),
)
"""How seams are fastened, what each fastener is asked and what it holds."""
