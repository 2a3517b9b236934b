"""Joints and fastened seams as a program reads them: SI, the unit named beside each value."""

from ..record import (
    A_FLAG,
    Record,
    flag,
    maybe_number,
    maybe_text,
    number,
    text,
    value,
    whole_number,
)

_HOLDS = Record(
    tension_N=number("tension"),
    shear_N=maybe_number("shear"),
    withdrawal_N=number("holds.out"),
    head_pull_through_N=maybe_number("holds.head"),
    lateral_N=number("holds.sideways"),
    mode=maybe_text("holds.mode"),
)

JOINT = Record(
    name=text("row.name"),
    of=text("row.of"),
    to=text("row.to"),
    fastener=text("row.fastener.name"),
    count=whole_number("row.count"),
    places=whole_number("spots"),
    spacing_m=maybe_number("spacing"),
    head_in=text("fasteners.head_in"),
    into=text("fasteners.driven.into"),
    through_m=number("fasteners.driven.through"),
    penetration_m=number("holds.penetration"),
    **_HOLDS,
    mean_withdrawal_N=maybe_number("holds.mean_out"),
    glue_counted=value(A_FLAG, lambda _: False),
    load=maybe_text("check.load"),
)
"""One joint: its fasteners, what they are asked and what each holds."""

SEAM = Record(
    fastener=text("row.fastener.name"),
    spacing_m=maybe_number("row.spacing"),
    cleat=maybe_text("row.cleat"),
    into=text("driven.into"),
    through_m=number("driven.through"),
    penetration_m=number("holds.penetration"),
    **_HOLDS,
    passes=flag("check.passes"),
    utilization=maybe_number("check.utilization"),
)
"""How seams are fastened, what each fastener is asked and what it holds."""
