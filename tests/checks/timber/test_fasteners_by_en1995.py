"""One fastener by EN 1995-1-1, each answer worked by hand or by equations held to printed answers.

Clauses of EN 1995-1-1:2004 as open programs and courses print them. Southern pine is C18 by its
density, 320 kg/m3, and of stud grade C14, f_c,90,k 2.0 N/mm2 (EN 338:2016; EN 1912, memory).
"""

from math import pi

import numpy as np
import pytest

from yardfast.checks.timber.books import book_of, titled
from yardfast.checks.timber.en1995.lateral import embedment_strength, johansen, under_plate
from yardfast.checks.timber.en1995.members import turning_stress
from yardfast.checks.timber.en1995.stuff import Wood, find_class
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners
from yardfast.units.frozen import replace

BASIS = "EN 1995, service"
INCH, MM, MPA = 0.0254, 1.0e-3, 1.0e6
PINE = joint_material_of("southern pine")
C18 = Wood("solid", find_class("C18").density, hardwood=False)
MADE = Driven(PINE, PINE, 3.5 * INCH, room=3.5 * INCH, into="side grain", washer=INCH)


def capacity(name, driven):
    return book_of(BASIS).capacity(fasteners.find_fastener(name), driven, BASIS)


@pytest.mark.parametrize(("depth", "holds"), [(8.0, True), (7.99, False)])
def test_a_smooth_nail_reaches_eight_diameters_into_the_wood(depth, holds):
    """8.3.1.2 (1): t_2 at least 8 d; just that is enough, whatever rounding makes of it."""
    nail = fasteners.find_fastener("nail 3.1 mm x 80 mm")
    through = nail.need("length") - depth * nail.diameter
    found = capacity(nail.name, replace(MADE, through=through, washer=None))
    assert ("too short" not in found.reasons) is holds
    assert (found.sideways > 0.0) is holds


@pytest.mark.parametrize(("room", "long"), [(3.5, True), (4.5, True), (4.6, False)])
def test_a_bolt_has_to_be_as_long_as_what_it_goes_through(room, long):
    """8 in long: 3.5 and 4.5 in leave it all, 4.6 in no thread for a nut."""
    found = capacity("1/2 bolt 8 in", replace(MADE, room=room * INCH))
    assert ("too short for a nut" not in found.reasons) is long
    assert (found.sideways > 0.0) is long


def test_what_a_washer_bears_by_hand():
    """8.5.2 (2): 3 f_c,90,k on the ring between the washer, 2 in, and a hole 1 mm wider than the
    bolt (10.4.3): 3 x 2.0 x pi/4 (50.8^2 - 13.7^2) = 11,277 N; k_mod/gamma_M 0.7/1.3, over 1.5."""
    found = capacity("1/2 bolt 8 in", replace(MADE, washer=2.0 * INCH))
    ring = pi / 4.0 * (50.8**2 - 13.7**2)
    assert found.out == pytest.approx(3.0 * 2.0 * ring * 0.7 / 1.3 / 1.5, rel=1e-9)
    assert 3.0 * 2.0 * ring == pytest.approx(11277, abs=0.5)


def test_a_bolt_alone_is_pushed_across_the_grain():
    """8.5.1: f_h,90 = 0.082 (1 - 0.01 d) rho_k / (1.35 + 0.015 d), d 12.7: 14.86 N/mm2; M_y,Rk of
    f_u,k 400 N/mm2; a rope of a quarter at most (8.2.2 (2))."""
    found = capacity("1/2 bolt 8 in", replace(MADE, washer=2.0 * INCH))
    d = 12.7
    held = 0.082 * (1.0 - 0.01 * d) * 320.0 / (1.35 + 0.015 * d)
    assert held == pytest.approx(14.87, abs=0.005)
    moment = yield_moment_of_bolt(d)
    modes = johansen(d * MM, 3.5 * INCH, 3.5 * INCH, held * MPA, held * MPA, moment)
    pull = 3.0 * 2.0 * pi / 4.0 * (50.8**2 - 13.7**2)
    each = {
        mode: value if mode in ("Im", "Is") else value + min(0.25 * value, pull / 4.0)
        for mode, value in modes.items()
    }
    assert found.sideways / found.factor_sideways == pytest.approx(min(each.values()), rel=1e-9)
    assert found.mode == min(each, key=each.get)


def yield_moment_of_bolt(d):
    """0.3 f_u,k d^2.6 (Eq. 8.30), f_u,k 400 N/mm2 of class 4.6 (EN ISO 898-1), in N m."""
    return 0.3 * 400.0 * d**2.6 * MM


def test_a_thin_screw_counts_by_its_root_and_a_tenth():
    """8.7.1 (3) and (5): d_ef 1.1 times the root; up to 6 mm by the rules of nails (8.3.1.1):
    f_h,k = 0.082 rho_k d^-0.3 without a lead hole; f_u,k 400 N/mm2 (judgement), a rope of all
    of it at most, a quarter of what it is drawn by (8.2.2 (2), Eq. 8.6)."""
    screw = fasteners.find_fastener("5 x 60 mm wood screw")
    made = replace(MADE, through=20.0 * MM, room=80.0 * MM, washer=None)
    found = capacity(screw.name, made)
    d = 1.1 * screw.yielding_diameter
    assert d < screw.diameter
    held = 0.082 * 320.0 * (d / MM) ** -0.3 * MPA
    assert embedment_strength(C18, d, 0.04, bolt=False) == pytest.approx(held, rel=1e-9)
    p = screw.need("length") - 20.0 * MM
    moment = 0.3 * 400.0 * (d / MM) ** 2.6 * MM
    modes = johansen(d, 20.0 * MM, p, held, held, moment)
    pull = min(found.out, found.head) / found.factor_out
    each = {
        mode: value if mode in ("Im", "Is") else value + min(value, pull / 4.0)
        for mode, value in modes.items()
    }
    assert found.sideways / found.factor_sideways == pytest.approx(min(each.values()), rel=1e-9)


@pytest.mark.parametrize(
    ("plate", "mode"), [(0.4, "IIIm"), (0.7, "IIIm"), (0.8, "IV"), (1.0, "IV")]
)
def test_the_mode_under_a_plate_is_of_the_nearer_thickness(plate, mode):
    """8.2.3 (1): thin up to d/2, thick from d; deep in the wood the bolt bends at the plate once
    in a thin one (b) and twice in a thick one (e)."""
    found = under_plate(0.012, 0.2, plate * 0.012, 20.0 * MPA, yield_moment_of_bolt(12.0))
    assert list(found) == [mode]
    thin = 1.15 * (2.0 * yield_moment_of_bolt(12.0) * 20.0 * MPA * 0.012) ** 0.5
    share = max((plate - 0.5) / 0.5, 0.0)
    thick = 2.3 * (yield_moment_of_bolt(12.0) * 20.0 * MPA * 0.012) ** 0.5
    assert found[mode] == pytest.approx((1.0 - share) * thin + share * thick, rel=1e-9)


def test_a_nail_in_end_grain_holds_a_third_sideways_and_nothing_pulled():
    """8.3.1.2 (4): a third; 8.3.2 (3): smooth nails in end grain take no pull. What is left of
    k_mod/gamma_M, 0.7/1.3 over 1.5, is told with it."""
    driven = replace(MADE, through=25.0 * MM, washer=None)
    side = capacity("nail 3.1 mm x 80 mm", driven)
    end = capacity("nail 3.1 mm x 80 mm", replace(driven, into="end grain"))
    assert side.factor_sideways == pytest.approx(0.7 / 1.3 / 1.5)
    assert end.factor_sideways == pytest.approx(0.7 / 1.3 / 1.5 / 3.0)
    assert end.out == 0.0
    rope = side.sideways / (3.0 * end.sideways)
    assert 1.0 <= rope <= 1.15 + 1e-9  # 8.2.2 (2): round nails, 15 % at most


@pytest.mark.parametrize(("between", "share"), [(True, 1.0), (False, 0.8)])
def test_the_stress_at_which_a_deep_piece_turns_by_hand(between, share):
    """6.3.3: 0.78 b^2 E_0.05 / (h l_ef), 2 h more at the pressed edge; l_ef is l where the
    moment is the same all along, 0.8 l of what stands out with a force at its end (Table 6.1,
    memory): 45 x 200 mm, 3 m, 7,400 N/mm2: 17.19 N/mm2 between supports, 20.87 standing out."""
    found = turning_stress(7400.0 * MPA, 0.045, 0.2, 3.0, between)
    assert found == pytest.approx(0.78 * 45.0**2 * 7400.0 / (200.0 * (share * 3000 + 400)) * MPA)
    assert found / MPA == pytest.approx(17.19 if between else 20.87, abs=0.01)


def test_a_stick_bent_both_ways_by_hand():
    """6.1.6, k_m 0.7 of a rectangle: 0.5 + 0.7 x 0.4 = 0.78, more than 0.7 x 0.5 + 0.4 = 0.75; of
    stresses over strengths of 5 in 10 and 8 in 20 N/mm2."""
    edge, flat = (np.array(5.0), 10.0), (np.array(8.0), 20.0)
    assert titled("EN 1995-1-1").law.bent(edge, flat, np.inf) == pytest.approx(0.78)
    assert titled("EN 1995-1-1").law.bent(flat, edge, np.inf) == pytest.approx(0.78)
