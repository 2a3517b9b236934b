"""Fasteners in the face of panels, under flat heads, and bolts whose threads bear.

Panels: Herzog and Yeh, World Conference on Timber Engineering 2006: plywood and OSB hold plain
nails as wood of a specific gravity of 0.40 (seen). Threads: NDS 2018 12.3.7. Printed values of
NDS are from memory, those of thread roots of FED-STD-H28 too.
"""

from math import pi, sqrt

import pytest
from printed import rows

from yardfast import references
from yardfast.checks.timber.nds.fastener_capacity import adjusted_capacity
from yardfast.checks.timber.nds.pulled_out import at_its_head, at_its_point
from yardfast.checks.timber.nds.pushed_sideways import threads_over_bearing, yields
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners
from yardfast.units.frozen import replace

INCH = 0.0254
LBF = 4.4482216152605
HALF = 0.5 + 1e-9

PANELS = ("softwood plywood", "marine plywood", "OSB", "MDO")


def driven(side, main, through, room, into="side grain", **more):
    return Driven(
        joint_material_of(side), joint_material_of(main), through * INCH, room * INCH, into, **more
    )


@pytest.mark.parametrize("panel", PANELS)
@pytest.mark.parametrize("row", [r for r in rows("nds_nail_withdrawal") if r["G"] == "0.4"])
def test_a_nail_in_a_panels_face_holds_as_in_wood_of_0_40(panel, row):
    nail = fasteners.find_fastener(f"nail {row['D_in']} in x 2 in")
    held, _ = at_its_point(nail, joint_material_of(panel), INCH)
    assert held / LBF == pytest.approx(float(row["printed_lb_per_in"]), abs=HALF)


@pytest.mark.parametrize("row", [r for r in rows("nds_wood_screw_withdrawal") if r["G"] == "0.4"])
def test_a_screw_in_a_panels_face_holds_as_in_wood_of_0_40(row):
    """Table 12.2B prints what 2844 gives: at most 1.3 lb/in below the equation."""
    screw = fasteners.find_fastener(f"#{row['size']} wood screw 2 in")
    held, _ = at_its_point(screw, joint_material_of("OSB"), INCH)
    assert -HALF <= held / LBF - float(row["printed_lb_per_in"]) <= 1.3


def test_sideways_and_at_the_head_a_panel_keeps_the_gravity_of_table_12_3_3b():
    ply = joint_material_of("softwood plywood")
    assert (ply.gravity, ply.withdrawal_gravity) == (0.42, 0.40)
    pine = joint_material_of("southern pine")
    assert pine.gravity == pine.withdrawal_gravity == 0.55


@pytest.mark.parametrize(
    ("screw", "head", "sunk"), [("#6", 0.244, 0.083), ("#8", 0.292, 0.100), ("#10", 0.340, 0.116)]
)
@pytest.mark.parametrize("thick", [0.25, 0.451, 0.703])
def test_a_flat_head_pulls_through_what_is_left_under_it(screw, head, sunk, thick):
    """Eq. 12.2-6, thickness less the head's height (ASME B18.6.3 size table, 82 degrees)."""
    one = fasteners.find_fastener(f"{screw} wood screw 2 in")
    found = at_its_head(
        one, driven("softwood plywood", "western redcedar", thick, 3.0), thick * INCH
    )
    by_hand = 690 * pi * head * 0.42**2 * min(thick - sunk, 2.5 * head)
    assert found / LBF == pytest.approx(by_hand, rel=1e-9)
    pan = fasteners.find_fastener(f"{screw} pan head wood screw 2 in")
    assert pan.countersink is None


def test_a_washer_is_not_let_in_and_counts_no_wider_than_the_widest_head_published():
    one = fasteners.find_fastener("#8 wood screw 2 in")
    way = driven("softwood plywood", "western redcedar", 0.703, 3.0, washer=0.75 * INCH)
    found = at_its_head(one, way, 0.703 * INCH)
    assert found / LBF == pytest.approx(690 * pi * 0.5 * 0.42**2 * 0.703, rel=1e-9)


def test_heads_below_those_published_count_nothing_and_say_so():
    brad = fasteners.find_fastener("16 ga finish nail 2 in")
    holds = adjusted_capacity(
        brad, driven("softwood plywood", "southern pine", 0.5, 3.0), "service"
    )
    assert holds.head == 0.0
    assert "small head" in holds.reasons


def test_a_head_let_in_as_deep_as_the_sheet_is_thick_holds_nothing():
    screw = fasteners.find_fastener("#14 wood screw 2 in")
    holds = adjusted_capacity(
        screw, driven("softwood plywood", "southern pine", 0.15, 3.0), "service"
    )
    assert holds.head == 0.0
    assert "nothing left under the head" in holds.reasons


ROOTS = {
    **{"1/4": 0.1887, "5/16": 0.2443, "3/8": 0.2983, "7/16": 0.3499, "1/2": 0.4056},
    **{"5/8": 0.5135, "3/4": 0.6273, "7/8": 0.7387, "1": 0.8466},
}


@pytest.mark.parametrize(("size", "root"), ROOTS.items())
def test_bolt_roots_are_the_minor_diameters_of_unc_threads(size, root):
    row = references.table("wood/bolts_geometry").one("size", size)
    assert float(row["root_dia_in"]) == pytest.approx(root, abs=0.00005 + 1e-9)


@pytest.mark.parametrize(
    ("length", "share"),
    [(6.0, 0.25 / 3.5), (5.5, 0.75 / 3.5), (5.25, 1.0 / 3.5), (5.0, 1.25 / 3.5)],
)
def test_threads_reach_into_the_main_piece_as_the_bolts_length_says(length, share):
    """1/2 in bolt: thread 1 1/4 in to 6 in long (ASME B18.2.1); 1 1/2 and 3 1/2 in pieces."""
    bolt = fasteners.find_fastener(f"1/2 bolt {length} in")
    assert threads_over_bearing(bolt, 1.5 * INCH, 3.5 * INCH) == pytest.approx(share)


def across_both(d):
    """NDS Table 12.3.1A, all modes across the grain, G 0.55, 1 1/2 on 3 1/2 in; Fe by nominal D."""
    fe = 50 * round(6100 * 0.55**1.45 / sqrt(0.5) / 50)
    ls, lm, fyb, k = 1.5, 3.5, 45000, 1.25
    rt = lm / ls
    k1 = (sqrt(1 + 2 * (1 + rt + rt**2) + rt**2) - (1 + rt)) / 2
    k2 = -1 + sqrt(4 + 2 * fyb * 3 * d**2 / (3 * fe * lm**2))
    k3 = -1 + sqrt(4 + 2 * fyb * 3 * d**2 / (3 * fe * ls**2))
    return min(
        d * lm * fe / (4 * k),
        d * ls * fe / (4 * k),
        k1 * d * ls * fe / (3.6 * k),
        k2 * d * lm * fe / (3 * 3.2 * k),
        k3 * d * ls * fe / (3 * 3.2 * k),
        d**2 / (3.2 * k) * sqrt(2 * fe * fyb / (3 * 2)),
    )


def sideways(length, **changed):
    bolt = replace(fasteners.find_fastener(f"1/2 bolt {length} in"), **changed)
    way = driven("southern pine", "southern pine", 1.5, 3.5)
    return float(yields(bolt, way, way.through, way.room).value) / LBF


def test_a_bolt_bears_on_its_shank_up_to_a_quarter_of_thread_and_on_its_root_beyond():
    """Table 12A prints 360 lbf for D; at the root 28 % less."""
    assert sideways(6.0) == pytest.approx(360.0, abs=5.0)
    assert sideways(5.5) == pytest.approx(across_both(0.5), rel=1e-9)
    assert sideways(5.25) == pytest.approx(across_both(0.4056), rel=1e-9)


def test_a_bolt_with_threads_of_unknown_length_bears_on_its_root():
    assert sideways(6.0, thread_length=None) == pytest.approx(across_both(0.4056), rel=1e-9)
