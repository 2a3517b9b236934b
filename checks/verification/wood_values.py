"""Wood and fasteners as books print them: each value from printed inputs, in the printed unit."""

from collections.abc import Callable, Mapping

from ... import references
from ...materials import fasteners
from ...units import INCH, POUND_FORCE, PSI
from ..seams.shear_flow import shear_flow
from ..timber.nds.dowel_bearing import dowel_bearing
from ..timber.nds.lateral import main_bearing_length, single_shear
from ..timber.nds.withdrawal import pull_through, reference_withdrawal


def _withdrawal(kind: str, D_in: float, G: float) -> float:
    """Return lbf for each inch that holds."""
    return float(reference_withdrawal(kind, D_in * INCH, G)) * INCH / POUND_FORCE


def _withdrawal_metric(kind: str, D_in: float, G: float) -> float:
    """Return N/m of a fastener sold by the inch."""
    return float(reference_withdrawal(kind, D_in * INCH, G))


def _whole_nail(wire_in: float, length_in: float, G: float) -> float:
    return _withdrawal("smooth nail", wire_in, G) * length_in


def _mean_coefficient(D_in: float, G: float) -> float:
    """Return the coefficient of the mean pull, of which the allowable is a fifth."""
    return 5.0 * _withdrawal("smooth nail", D_in, G) / (G**2.5 * D_in)


def _stainless_less(G: float, D_in: float) -> float:
    """Return by how many per cent a stainless nail holds less than a bright one."""
    share = _withdrawal("stainless nail", D_in, G) / _withdrawal("smooth nail", D_in, G)
    return 100.0 * (1.0 - share)


def _pull_through(head_in: float, thickness_in: float, G: float) -> float:
    return float(pull_through(head_in * INCH, thickness_in * INCH, G)) / POUND_FORCE


def _bearing(G: float) -> float:
    """Return psi under a fastener thinner than 1/4 in."""
    return float(dowel_bearing(G, 0.131 * INCH)) / PSI


def _driven_nail(D_in: float, side_in: float, G: float, Fyb_psi: float) -> float:
    """Return lbf sideways of a nail that goes 10 D into the main piece."""
    D = D_in * INCH
    Fe = dowel_bearing(G, D)
    limits = single_shear(
        D, side_in * INCH, main_bearing_length(10.0 * D, 2.0 * D), Fe, Fe, Fyb_psi * PSI
    )
    return float(limits.value) / POUND_FORCE


def _mode(nail: str, side_in: float, into_in: float, G: float, mode: str) -> float:
    """Return lbf of one yield mode of a nail ``into_in`` the main piece, half of its tip off."""
    found = fasteners.find_fastener(nail)
    Fe = dowel_bearing(G, found.diameter)
    limits = single_shear(
        found.diameter,
        side_in * INCH,
        main_bearing_length(into_in * INCH, 2.0 * found.diameter),
        Fe,
        Fe,
        found.need("bending_yield"),
    )
    return float(limits.modes[mode]) / POUND_FORCE


def _nailed_beam(nail_N: float, pitch_mm: float, Q_mm3: float, I_mm4: float) -> float:
    """Return kN of a load of which V = 2P/3, with a row of nails in each of two seams."""
    return 1.5 * nail_N / pitch_mm / float(shear_flow(1.0, Q_mm3, I_mm4)) / 1000.0


def _gravity(species: str) -> float:
    table = references.table("wood/nds_assigned_specific_gravity")
    return float(table.one("species_combination", species)["G_oven_dry"])


def _lumber(nominal: str, side: str) -> float:
    return float(references.table("wood/lumber_sizes").one("nominal", nominal)[f"{side}_in"])


WOOD_VALUES: Mapping[str, Callable[..., float]] = {
    "withdrawal": _withdrawal,
    "withdrawal, metric": _withdrawal_metric,
    "withdrawal of a whole nail": _whole_nail,
    "coefficient of the mean withdrawal": _mean_coefficient,
    "stainless nails hold less": _stainless_less,
    "head pull-through": _pull_through,
    "dowel bearing": _bearing,
    "lateral": _driven_nail,
    "lateral by mode": _mode,
    "nailed box beam": _nailed_beam,
    "assigned specific gravity": _gravity,
    "dressed lumber": _lumber,
}
"""By the name that a row of ``verified/wood`` bears."""
