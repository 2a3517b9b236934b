"""How to prove the weight and balance by hand: a spring scale, a level pull, a helper."""

from ...checks.stated.proof import Proof
from ...checks.tied import most
from ..wording.amounts import Amounts
from ..wording.lines import Line, wrapped
from ..wording.words import side_said

_TOO_HEAVY = "Prove it: it takes more than a common scale reads to lift its edge: weigh its parts."
_PROVE = (
    "Prove it, in calm air: hook a spring scale {height} up and pull level, a helper steadying "
    "it{blocked}: {behind} should begin to lift at {pull}."
)
_BLOCKED = ", its foot blocked by a board"
_BEHIND = "the edge behind"
_OVER = "pulled over {over}, the edge behind"


def prove(proof: Proof | None, amounts: Amounts) -> list[Line]:
    """Return the pull at which its edge begins to lift, to be tried on a calm day."""
    if proof is None:
        return []
    if proof.low > most("scale pull"):
        return wrapped(_TOO_HEAVY, rest="  ")
    said = _PROVE.format(
        height=amounts.length(proof.height),
        blocked=_BLOCKED if proof.blocked else "",
        behind=_BEHIND if proof.over is None else _OVER.format(over=side_said(proof.over)),
        pull=_range(proof.low, proof.high, amounts),
    )
    return wrapped(said, rest="  ")


def _range(low: float, high: float, amounts: Amounts) -> str:
    upper, least = amounts.force(high, "up"), amounts.whole_force(low)
    if least == amounts.whole_force(high, "up"):
        return f"about {upper}"
    return f"{least:,} to {upper}" if least else f"less than 1 to {upper}"
