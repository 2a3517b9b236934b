"""What a remedy changes in a design: the foot, the weight laid low, the heights; nothing else."""

from pathlib import Path

import numpy as np
import pytest
from designs import design, post, tower

from yardfast.checks.anchoring.ground_parts import ground_parts
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.checks.sizing.laid_weight import with_weight
from yardfast.checks.sizing.remedy import RemedyReason
from yardfast.checks.sizing.ways import remedy_of
from yardfast.checks.tied import Way
from yardfast.design.faults import DesignError
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Frame, Plate
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.weight import Weight
from yardfast.design.structure import build_structure
from yardfast.loads.given import GivenLoad
from yardfast.report.screens.first_screen import first_screen
from yardfast.units.frozen import replace

EXAMPLES = Path(__file__).resolve().parents[3] / "examples"
STEEL = 2500.0
"""A density in kg/m3 at which a foot's own weight counts."""


def test_a_post_without_foot_gets_a_plywood_plate_beneath_all():
    swing = GivenLoad("swing", 10.0, (0.0, 0.0, 0.9), (1.0, 0.0, 0.0))
    piece = design(*post(4, 0.3, 1.0), wind=26.0)
    piece = replace(piece, tables={**piece.tables, GivenLoad: (swing,)})
    before, remedy = remedy_of(piece, "base width")
    assert (
        remedy.reason is RemedyReason.BENDS
    )  # so wide a sheet bends: it is tried, and not offered
    assert not remedy.feasible
    assert remedy.part is None
    plate = remedy.found.design.parts[-1]
    assert plate.name == "wider foot"
    assert plate.shape.plan == Rectangle(remedy.utmost, remedy.utmost)
    # The decimal label of the performance category of 3/4 plywood is 0.703 in (PS 1, PS 2).
    assert plate.shape.thickness == pytest.approx(0.703 * 0.0254, abs=0.0005 * 0.0254)
    raised = remedy.found.structure.height - before.structure.height
    assert raised == pytest.approx(plate.shape.thickness)
    assert remedy.found.design.several(GivenLoad)[0].at[2] == pytest.approx(
        0.9 + plate.shape.thickness
    )


def test_two_feet_apart_get_one_plate_that_reaches_beneath_both():
    sill = Box(0.1, 0.6, 0.05)
    board = Box(1.1, 0.05, 0.8)
    piece = design(
        Part("sills", sill, Place(count=2, ring=1.0), density=STEEL),
        Part("board", board, Place(on="sills"), density=800.0),
        wind=18.0,
    )
    remedy = remedy_of(piece, "base width")[1]
    plan = remedy.found.design.parts[-1].shape.plan
    assert plan.length >= 1.1 - 1.0e-9
    assert plan.width == pytest.approx(remedy.value or remedy.utmost)


def test_a_frame_gets_a_plate_beneath_since_a_wider_one_carries_nothing_in_its_hole():
    """A body 0.3 m wide falls through a ring of 0.09 m boards from 0.48 m across on: geometry."""
    foot = Part("foot", Frame(Regular(6, 0.4), 0.09, 0.04), density=STEEL)
    body = Part("body", Shell(6, 0.3, 0.2, 0.6, 0.02), Place(on="foot"), density=STEEL)
    before, remedy = remedy_of(design(foot, body, wind=36.0), "base width")
    assert remedy.part is None
    plate = remedy.found.design.parts[-1].shape
    assert isinstance(plate, Plate)
    assert plate.plan.width == pytest.approx(remedy.value or remedy.utmost)
    assert remedy.found.design.parts[0].shape == foot.shape
    assert remedy.found.structure.mass("light") > before.structure.mass("light")
    wide = replace(foot, shape=replace(foot.shape, plan=Regular(6, 0.5)))
    with pytest.raises(DesignError) as wrong:
        examine(design(wide, body))
    (fault,) = wrong.value.faults
    assert (fault.part, fault.key) == ("body", "on")


def test_the_longer_way_of_a_foot_stays_until_the_width_passes_it():
    foot = Part("foot", Plate(Rectangle(1.4, 0.3), 0.04), density=STEEL)
    body = Part("body", Solid(4, 0.3, 0.3, 0.8), Place(on="foot"), density=600.0)
    remedy = remedy_of(design(foot, body, wind=18.0), "base width")[1]
    assert remedy.design.parts[0].shape.plan == Rectangle(max(1.4, remedy.value), remedy.value)


def test_ballast_lies_on_the_foot_in_its_middle_under_a_name_of_its_own():
    parts = tower(4, 0.4, 0.3, 0.2, 1.0)
    parts = (*parts, Part("ballast", Weight(), Place(on="foot"), mass=1.0))
    remedy = remedy_of(design(*parts, turn=0.3), "ballast")[1]
    added = remedy.design.parts[-1]
    assert added.name == "ballast 2"
    assert added.place.at == pytest.approx((0.0, 0.0, 0.04), abs=1.0e-9)


def test_heights_above_the_foot_are_scaled_alike_and_widths_stay():
    piece = design(*tower(4, 0.6, 0.3, 0.2, 1.5, density=STEEL), wind=34.0)
    remedy = remedy_of(piece, "height")[1]
    assert remedy.feasible
    was = {part.name: part.shape for part in piece.parts}
    now = {part.name: part.shape for part in remedy.design.parts}
    share = now["tower"].height / was["tower"].height
    assert share < 1.0
    assert now["roof"].height == pytest.approx(share * was["roof"].height)
    assert (now["foot"], now["deck"]) == (was["foot"], was["deck"])
    assert now["tower"].bottom == was["tower"].bottom


def test_a_weighed_piece_keeps_the_weight_of_what_is_not_changed():
    parts = (
        Part("foot", Plate(Regular(4, 0.5), 0.04), material="white oak"),
        Part("body", Solid(4, 0.2, 0.2, 1.0), Place(on="foot"), material="white oak"),
    )
    piece = replace(design(*parts), weighed=40.0)
    before, remedy = remedy_of(piece, "ballast")
    typical = before.structure.part_mass[1]
    assert remedy.found.structure.part_mass[1][:2] == pytest.approx(typical)
    assert remedy.design.weighed == pytest.approx(40.0 + remedy.value)


@pytest.mark.slow
def test_what_anchors_hold_is_no_remedy_where_a_part_fails_held_so():
    """Drawn at its four corners alone the arbor's sills bend more than on ground that holds it.

    They hold its 46 mph on the ground alone.
    """
    before, remedy = remedy_of(read(EXAMPLES / "arbor.toml"), "anchors")
    assert before.anchors is not None
    assert not remedy.feasible
    assert remedy.reason is RemedyReason.FAILS_TIED
    failed = next(check for check in remedy.found.checks if check.name == remedy.governs)
    assert not failed.passes
    assert next(check for check in before.checks if check.name == remedy.governs).passes
    # nor does any screen offer them
    tied = before.verdict.tied
    assert tied.anchors is None
    assert Way.ANCHORS not in tied.ways
    assert remedy.governs in {check.name for _, check in tied.refused}
    told = " ".join(line.text for line in first_screen(before))
    assert "screw anchors" not in told
    assert "would fail too" in told


@pytest.mark.parametrize("sides", [8, 0])
def test_weight_on_a_ring_lies_on_a_floor_screwed_to_each_side(sides):
    """As much on each side, in the middle of its lumber: plane geometry. Of a round ring at eight
    places; it ended in a fault of its own."""
    plan, wide = Regular(sides, 0.6), 0.14
    piece = design(Part("foot", Frame(plan, wide, 0.038), density=500.0))
    ground = ground_parts(build_structure(piece))
    laid = build_structure(with_weight(piece, ground, 80.0))
    bodies = [body for body in laid.bodies if laid.design.parts[body.part].name == "ballast"]
    at = np.array([body.origin for body in bodies])
    assert len(bodies) == 8
    assert np.hypot(at[:, 0], at[:, 1]) == pytest.approx((0.6 - wide) / 2.0)
    # the first lies on the middle of a side, whose outward normal points along +x
    assert at[0] == pytest.approx(((0.6 - wide) / 2.0, 0.0, 0.038))
    assert laid.mass("typical") - build_structure(piece).mass("typical") == pytest.approx(80.0)
