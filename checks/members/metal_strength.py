"""What metal may carry in bending and shear."""

from ...loads.combinations import FACTORED, level_of
from ...materials.metal import Metal


def metal_stress(metal: Metal, basis: str) -> float:
    """Return the bending stress in Pa that a metal may carry: yield over Omega, or phi times yield.

    First yield of the outer fibre; the reserve beyond it is not counted. Source: AISC 360-16 F1 and
    F11; Aluminum Design Manual 2015 F.1.
    """
    factored = level_of(basis) == FACTORED
    return metal.strength * (metal.resistance if factored else 1.0 / metal.safety)


def metal_shear(metal: Metal, basis: str) -> float:
    """Return the shear stress in Pa that a metal may carry: 0.6 of the yield stress, as above.

    Source: AISC 360-16 G2.1.
    """
    return 0.6 * metal_stress(metal, basis)
