"""The strength of posts, boards, blades and panels, worked a second way; and what is not judged."""

from math import tan

import numpy as np
import pytest
from designs import design
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast import references
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.members.blades import thrust_reach
from yardfast.checks.members.member_check import MemberStrength
from yardfast.checks.members.metal_strength import metal_stress
from yardfast.checks.timber.nds import adjustments
from yardfast.checks.timber.nds.member_strength import adjusted_design_values, sheet_bending
from yardfast.design.faults import DesignError
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.member import Member as Stick
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.rotor import Rotor
from yardfast.design.shapes.weight import Weight
from yardfast.loads.given import GivenLoad
from yardfast.materials import lumber, metal, sheets
from yardfast.units.frozen import replace

INCH = 0.0254
PSI = 6894.757293168
FOUR = 3.5 * INCH
PLYWOOD = "softwood plywood"
BASE = Part("foot", Plate(Rectangle(1.2, 1.2), 0.05), material="concrete")


def post(height=1.5, name="post", on="foot", at=(0.0, 0.0, 0.0), **more):
    given_ = {"material": "southern pine", **more}
    return Part(name, Box(FOUR, FOUR, height), Place(on=on, at=at), **given_)


def judged(*parts, turn=0.0, **site):
    found = examine(design(*parts, turn=turn, **site))
    return {one.name: one for one in found.members.judged}, {
        one.name: one.why for one in found.members.not_judged
    }


def test_post_alone_by_hand():
    """Even wind on the post: its force at mid-height, over S F'_b with F_b 650 psi of stud grade.

    NDS Supplement 2018 Table 4B (memory): southern pine stud 2x4 650 psi, size factor in it; wet
    below 1,150 psi takes no C_M; C_D 1.6.
    """
    height, gust = 1.5, 20.0
    parts = (BASE, post(height))
    found = examine(design(*parts, wind=gust))
    one = found.members.judged[0]
    i = [body.part for body in found.structure.bodies].index(1)
    q = 0.5 * 1.226 * gust**2
    cf = found.exposed.coefficient[i]
    wind = np.radians(found.wind.azimuths)
    across = FOUR * (np.abs(np.sin(wind)) + np.abs(np.cos(wind)))
    M = q * cf * across * height * height / 2.0
    share = np.abs(np.sin(wind)) + np.abs(np.cos(wind))
    S = FOUR**3 / 6.0
    # pressed by its own weight, heavy: K_e 2.1, F_c 850 psi wet 0.8, E_min 470,000 psi wet 0.9
    fc = found.structure.part_mass[2, 1] * 9.80665 / FOUR**2
    fce = 0.822 * 0.47e6 * 0.9 * PSI / (2.1 * height / FOUR) ** 2
    r = fce / (850.0 * 0.8 * 1.6 * PSI)
    stable = (1.0 + r) / 1.6 - (((1.0 + r) / 1.6) ** 2 - r / 0.8) ** 0.5
    squeezed = (fc / (850.0 * 0.8 * 1.6 * PSI * stable)) ** 2
    use = squeezed + (M * share / S / (650.0 * 1.6 * PSI)).max() / (1.0 - fc / fce)
    assert one.check.name == "member: post"
    assert one.check.unit == "N*m"
    assert one.check.utilization == pytest.approx(use, rel=1e-3)
    assert one.governs == "bending"
    # an even load bends a cantilever's tip by w L^4/(8 E I), wet E; the slab on paving tilts by no
    # more than on a tenth of 3e9 Pa/m at its four corners
    EI = 1.3e6 * 0.9 * PSI * FOUR**4 / 12.0
    at = int(np.argmax(M * share))
    even = M[at] * 2.0 * height**2 / (8.0 * EI)
    tilts = M[at] * np.sqrt(2.0) * height / (0.1 * 3.0e9 * 1.2**2 * 0.6**2)
    assert even * (1.0 - 1e-3) <= one.deflection <= (even + tilts) * (1.0 + 1e-3)
    # at its foot: nothing along it but its weight, the wind's shear and its moment
    assert one.at == pytest.approx(0.0, abs=1e-9)
    weighs = found.structure.part_mass[2, 1] * 9.80665
    assert one.forces[0] == pytest.approx(-weighs, rel=1e-6)
    assert np.hypot(*one.forces[4:]) == pytest.approx(one.check.demand, rel=1e-9)
    assert np.hypot(*one.forces[1:3]) * height / 2.0 == pytest.approx(one.check.demand, rel=1e-6)
    # nothing of it hangs on a stiffness
    assert one.check.envelope[0] == pytest.approx(one.check.envelope[1], rel=1e-9)


def test_strength_goes_with_the_square_of_the_gust():
    slow, fast = (
        judged(BASE, post(mass=1.0e-6), wind=wind)[0]["post"].check for wind in (12.0, 24.0)
    )
    # a square bent corner on: what it turns over sideways adds a few parts in a million
    assert fast.utilization == pytest.approx(4.0 * slow.utilization, rel=1e-4)


@settings(max_examples=8, deadline=None)
@given(st.integers(1, 71).map(lambda step: np.radians(5.0 * step)))
def test_turning_the_whole_changes_no_strength(turn):
    """By whole steps of the winds that are tried, so that the same winds blow on it."""
    board = Part(
        "board", Panel(0.8, 0.5, 0.018), Place(on="foot", at=(0.0, -0.054, 0.9)), material="OSB"
    )
    parts = (BASE, post(at=(-0.3, 0.0, 0.0)), post(name="other", at=(0.3, 0.0, 0.0)), board)
    here, there = (judged(*parts, turn=angle)[0] for angle in (0.0, turn))
    assert set(here) == set(there) == {"post", "other", "board"}
    for name, one in here.items():
        assert there[name].check.utilization == pytest.approx(one.check.utilization, rel=1e-6)


def test_weight_to_one_side_bends_a_post_too():
    heavy = Part("arm", Weight(), Place(on="post", at=(0.5, 0.0, 0.0)), mass=20.0)
    calm, arm = (judged(BASE, post(), *more, wind=0.01)[0]["post"] for more in ((), (heavy,)))
    assert arm.governs == "bending"
    assert arm.check.demand == pytest.approx(0.5 * 20.0 * 9.80665, rel=1e-6)
    # bent by next to nothing, by its own weight it is pressed
    assert calm.governs == "pressing"
    assert calm.check.unit == "N"


def test_a_wall_that_stands_free_beside_a_post_changes_nothing():
    """Both stand on the same slab, so that nothing more is taken to hold the post to the wall."""
    wall = Part("wall", Shell(4, 0.6, 0.6, 0.5, 0.02), Place(on="foot"), material="redwood")
    inside = post(at=(0.3 - 0.02 - FOUR / 2.0, 0.0, 0.0))
    alone = judged(BASE, inside)[0]["post"]
    beside = judged(BASE, inside, wall)[0]["post"]
    assert beside.check.utilization == pytest.approx(alone.check.utilization, rel=1e-9)


@pytest.mark.parametrize(
    ("changed", "why"),
    [
        ({"material": "red maple"}, "no values"),
        ({"material": None, "density": 600.0}, "no material"),
        ({"shape": Box(0.02, 0.02, 1.0)}, "no values"),
        ({"shape": Solid(0, FOUR, FOUR, 1.5)}, "no values"),
        (
            {"material": "steel", "shape": Stick((0, 0, 0), (0, 0, 2), across=0.1, wall=0.0005)},
            "thin wall",
        ),
    ],
    ids=["no graded species", "no material", "too thin to be graded", "round", "foil"],
)
def test_what_has_no_published_strength_is_not_judged_and_is_listed(changed, why):
    found, not_judged = judged(BASE, replace(post(), **changed))
    assert "post" not in found
    assert not_judged == {"post": why}


def test_a_better_grade_holds_more_and_a_tube_of_steel_too():
    stud, second = (judged(BASE, post(grade=g))[0]["post"] for g in (None, "No. 2"))
    assert (stud.stuff.grade, stud.graded) == ("stud", False)
    assert (second.stuff.grade, second.graded) == ("No. 2", True)
    assert second.check.capacity > 1.5 * stud.check.capacity
    tube = Part(
        "tube",
        Stick((0, 0, 0), (0, 0, 1.5), across=0.06, wall=0.003),
        Place(on="foot"),
        material="steel",
    )
    found = judged(BASE, replace(tube, mass=1.0e-9))[0]["tube"]
    S = np.pi / 32.0 * (0.06**4 - 0.054**4) / 0.06
    assert found.check.capacity == pytest.approx(S * 33_000 * PSI / 1.67)


def test_a_tapered_post_is_as_thin_as_its_thinner_end():
    light = post(mass=1.0e-9)  # what presses it along itself would tell them apart
    thick, thin, tapered = (
        judged(BASE, replace(light, shape=Solid(4, bottom, top, 1.5)))[0]["post"].check.capacity
        for bottom, top in ((0.1, 0.1), (0.08, 0.08), (0.1, 0.08))
    )
    assert thin < thick
    assert tapered == pytest.approx(thin, rel=1e-5)


def test_board_between_two_posts_by_hand():
    """w s^2/8 between the posts, w o^2/2 beyond them; the greater over what the sheet carries."""
    posts = Part(
        "posts",
        Box(FOUR, FOUR, 1.5),
        Place(on="foot", count=2, step=(0.9, 0.0, 0.0), at=(-0.45, 0.0, 0.0)),
        material="southern pine",
    )
    depth = (FOUR + 0.018) / 2.0
    board = Part(
        "board",
        Panel(1.2, 0.6, 0.018),
        Place(on="foot", at=(0.0, -depth, 0.8)),
        material="softwood plywood",
    )
    found = examine(design(BASE, posts, board, wind=25.0))
    one = {each.name: each for each in found.members.judged}["board"]
    i = [body.part for body in found.structure.bodies].index(2)
    p = 0.5 * 1.226 * 25.0**2 * found.exposed.coefficient[i].max() * found.exposed.case[i].max()
    assert one.role == "board between posts"
    assert one.check.demand == pytest.approx(p * 0.6 * max(0.9**2 / 8.0, 0.15**2 / 2.0), rel=1e-6)
    # 0.703 in and more: 48/24, 845 lbf-in/ft along the grain (APA D510, memory), C_D 1.6, wet 0.75
    per_metre = 845.0 * 4.4482216152605 * INCH / 0.3048
    strip = 0.5 + 0.5 * (0.6 / INCH - 8.0) / 16.0
    assert one.check.capacity == pytest.approx(per_metre * 1.6 * 0.75 * strip * 0.6, rel=1e-6)


def held_board(width, height, up, post_height, apart, material=PLYWOOD, thickness=0.018):
    """Return a board on two posts, its lower edge ``up`` above their feet."""
    posts = Part(
        "posts",
        Box(FOUR, FOUR, post_height),
        Place(on="foot", count=2, step=(apart, 0.0, 0.0), at=(-apart / 2.0, 0.0, 0.0)),
        material="southern pine",
    )
    place = Place(on="foot", at=(0.0, -(FOUR + thickness) / 2.0, up))
    return posts, Part("board", Panel(width, height, thickness), place, material=material)


def test_a_board_taller_than_its_posts_stands_out_above_them_by_hand():
    """60 by 48 in on posts of 12 in, 48 in apart: p o^2/2 across the grain over p s^2/8 along it.

    In the wind in which strips between the posts use 0.26 if all of its height goes that way:
    (36^2/2)/225 over (48^2/8)/845, lbf-in/ft of 48/24 plywood (APA D510, memory): 2.2.
    """
    parts = held_board(60 * INCH, 48 * INCH, 0.0, 12 * INCH, 48 * INCH)
    found = examine(design(BASE, *parts, wind=20.71))
    one = {each.name: each for each in found.members.judged}["board"]
    i = [body.part for body in found.structure.bodies].index(3 - 1)
    q = 0.5 * 1.226 * 20.71**2
    p = q * found.exposed.coefficient[i].max() * found.exposed.case[i].max()
    per_metre = 4.4482216152605 * INCH / 0.3048 * 1.6 * 0.75
    assert p * (48 * INCH) ** 2 / 8.0 / (845.0 * per_metre) == pytest.approx(0.26, abs=0.005)
    assert one.role == "board beyond its posts"
    use = p * (36 * INCH) ** 2 / 2.0 / (225.0 * per_metre)
    assert one.check.utilization == pytest.approx(use, rel=1e-6)
    assert 2.0 <= use <= 2.6
    assert one.check.demand == pytest.approx(p * 60 * INCH * (36 * INCH) ** 2 / 2.0, rel=1e-6)


def test_the_height_that_posts_hold_carries_all_of_a_board():
    """0.1 m of it stands out above: the rest, 0.5 m, takes the wind on 0.6 m."""
    parts = held_board(1.2, 0.6, 0.9, 1.4, 0.9)
    found = examine(design(BASE, *parts, wind=25.0))
    one = {each.name: each for each in found.members.judged}["board"]
    i = [body.part for body in found.structure.bodies].index(2)
    p = 0.5 * 1.226 * 25.0**2 * found.exposed.coefficient[i].max() * found.exposed.case[i].max()
    assert one.check.demand == pytest.approx(p * 0.6 * 0.9**2 / 8.0, rel=1e-6)
    per_metre = 845.0 * 4.4482216152605 * INCH / 0.3048 * 1.6 * 0.75
    strip = 0.5 + 0.5 * (0.5 / INCH - 8.0) / 16.0
    assert one.check.capacity == pytest.approx(per_metre * strip * 0.5, rel=1e-6)


def test_the_grain_of_a_board_runs_along_all_of_it_not_along_what_posts_hold():
    """0.9 m wide and 1.0 m tall on posts that hold 0.3 m of it: along its height, so across."""
    one = judged(BASE, *held_board(0.9, 1.0, 0.0, 0.3, 0.8), wind=5.0)[0]["board"]
    level = 225.0 * 4.4482216152605 * INCH / 0.3048 * 1.6 * 0.75
    strip = 0.5 + 0.5 * (0.3 / INCH - 8.0) / 16.0
    assert one.role == "board between posts"
    assert one.check.capacity == pytest.approx(level * strip * 0.3, rel=1e-6)


def test_boards_laid_level_above_their_posts_hang_on_nothing():
    parts = held_board(1.5, 1.2, 0.0, 0.3, 1.2, "western redcedar", 0.0254)
    assert judged(BASE, *parts)[1]["board"] == "across grain"
    held = held_board(1.5, 0.14, 0.9, 1.0, 1.2, "western redcedar", 0.0254)
    assert judged(BASE, *held)[0]["board"].role == "board between posts"


def test_somebody_who_leans_on_a_board_between_posts_by_hand():
    """F s/4 in its middle, on 0.3 of its span or less of the height that posts hold; C_D 1.0."""
    parts = held_board(1.2, 0.6, 0.9, 1.5, 0.9)
    lean = GivenLoad("somebody", 300.0, (0.0, -0.06, 1.2), (0.0, 1.0, 0.0), "board")
    whole = design(BASE, *parts, wind=0.1)
    found = examine(replace(whole, tables={**whole.tables, GivenLoad: (lean,)}))
    one = {each.name: each for each in found.members.judged}["board"]
    assert (one.loads, one.check.load) == (("somebody",), "somebody")
    assert one.check.demand == pytest.approx(300.0 * 0.9 / 4.0 * 1.6, rel=1e-6)
    strip = 0.5 + 0.5 * (0.27 / INCH - 8.0) / 16.0
    per_metre = 845.0 * 4.4482216152605 * INCH / 0.3048 * 1.6 * 0.75
    assert one.check.capacity == pytest.approx(0.27 * per_metre * strip, rel=1e-6)


def test_board_on_its_foot_and_boards_held_otherwise():
    board = Part("board", Panel(0.5, 0.6, 0.018), Place(on="foot"), material="OSB")
    found = judged(BASE, board)[0]["board"]
    assert found.role == "board on its foot"
    back = Part("back", Box(0.3, 0.1, 0.6), Place(on="foot", at=(0.0, 0.059, 0.0)), material="OSB")
    assert judged(BASE, board, back)[1]["board"] == "held otherwise"
    slats = replace(board, shape=Panel(0.5, 0.6, 0.018, solidity=0.5))
    assert judged(BASE, slats)[1]["board"] == "lattice"


def test_blade_by_hand():
    """A spinning wheel: q times the disc at most, a blade's share at two thirds of its length."""
    wheel = Rotor(8, 0.3, 0.06, 0.06, 0.002, facing=0.0)
    rod = Part(
        "pole", Stick((0, 0, 0), (0, 0, 1.2), across=0.04), Place(on="foot"), material="steel"
    )
    blades = Part("wheel", wheel, Place(on="pole"), material="steel")
    one = judged(BASE, rod, blades, wind=20.0)[0]["wheel"]
    q = 0.5 * 1.226 * 20.0**2
    filled = 8 * 0.06 * 0.3 / (np.pi * 0.09)
    # ASCE/SEI 7 Fig. 29.4-2, flat members, solidity 0.3 to 0.7: 1.6 on the blades, 0.81 on the
    # disc; a turning wheel takes as much as a disc, 1.2
    assert 0.3 < filled < 0.7
    assert 1.6 * filled < 1.0
    demand = 1.2 * q * np.pi * 0.09 / 8.0 * 0.2
    assert one.check.demand == pytest.approx(demand, rel=1e-9)
    assert one.check.capacity == pytest.approx(0.06 * 0.002**2 / 6.0 * 33_000 * PSI / 1.67)


def test_thrust_acts_at_the_middle_of_a_still_blade():
    """The centroid of a trapezoid, by sums of thin strips."""
    L, b, t = 0.5, 0.04, 0.15
    x = (np.arange(20_000) + 0.5) * L / 20_000
    width = b + (t - b) * x / L
    middle = (width * x).sum() / width.sum()
    assert thrust_reach(L, b, t, False) == pytest.approx(middle, rel=1e-6)
    assert thrust_reach(L, b, t, True) == pytest.approx(2.0 / 3.0 * L)
    assert thrust_reach(L, 0.1, 0.1, False) == pytest.approx(L / 2.0)


def test_wall_panel_by_hand():
    """1.3 q of suction, 0.6 q more under an open top, over the widest side of a hexagon."""
    shell = Part("body", Shell(6, 0.5, 0.3, 1.0, 0.018), Place(on="foot"), material="OSB")
    lid = Part("lid", Plate(Regular(6, 0.4), 0.02), Place(on="body"), material="OSB")
    q, side, slope = 0.5 * 1.226 * 30.0**2, 0.5 * tan(np.pi / 6.0), np.hypot(1.0, 0.1)
    shut, open_ = (
        judged(BASE, shell, *more, wind=30.0)[0]["body"].check.demand for more in ((lid,), ())
    )
    assert shut == pytest.approx(1.3 * q * slope * side**2 / 8.0, rel=1e-6)
    assert open_ == pytest.approx(1.9 * q * slope * side**2 / 8.0, rel=1e-6)


def test_lumber_factors_are_the_printed_ones():
    """NELMA, size factors (seen): 2x4 1.5, 2x6 1.3, 4x8 1.3; NDS 4A wet service (memory)."""
    for least, wide, factor in ((1.5, 3.5, 1.5), (1.5, 5.5, 1.3), (3.5, 7.25, 1.3)):
        one = lumber.find_lumber("douglas fir", least * INCH, wide * INCH, "No. 2")
        assert one.size_factor == factor
    small = lumber.find_lumber("douglas fir", 1.5 * INCH, 3.5 * INCH, "No. 2")
    value = adjusted_design_values(small, 3.5 * INCH, 3.5 * INCH, 1.0, "allowable")
    assert value.flatwise / PSI == pytest.approx(900 * 1.5 * 0.85 * 1.6)
    assert value.shear / PSI == pytest.approx(180 * 0.97 * 1.6)
    assert value.stiffness / PSI == pytest.approx(1.6e6 * 0.9)
    by_load = adjusted_design_values(small, 3.5 * INCH, 3.5 * INCH, 1.0, "strength")
    assert by_load.flatwise / PSI == pytest.approx(900 * 1.5 * 0.85 * 2.54 * 0.85)
    assert adjustments.load_and_resistance("shear") == pytest.approx(2.16)


def test_lumber_of_sizes_and_woods_that_are_not_graded_is_not_known():
    assert lumber.find_lumber("red maple", FOUR, FOUR) is None
    assert lumber.find_lumber("steel", FOUR, FOUR) is None
    assert lumber.find_lumber("redwood", 0.5 * INCH, FOUR) is None
    assert lumber.find_lumber("western redcedar", 5.5 * INCH, 5.5 * INCH) is None
    assert lumber.find_lumber("southern pine", 5.5 * INCH, 5.5 * INCH).timber
    assert lumber.find_lumber("southern pine, treated", 0.09, 0.09).bending / PSI == pytest.approx(
        650
    )
    with pytest.raises(KeyError):
        lumber.find_lumber("unobtainium", FOUR, FOUR)


def test_sheets_and_metals_by_the_tables():
    sheet = sheets.find_sheet("softwood plywood", 0.451 * INCH)
    assert sheet.span_rating == "32/16"
    assert sheets.find_sheet("OSB", 18.0e-3).span_rating == "48/24"
    assert sheets.find_sheet("OSB", 0.2 * INCH) is None
    assert sheets.find_sheet("acrylic", 0.02) is None
    wide, narrow = sheet_bending(sheet, np.array([0.7, 0.1]), "allowable", True)
    assert narrow == pytest.approx(0.5 * wide)
    assert metal.find_metal("copper") is None
    steel = metal.find_metal("steel")
    assert metal_stress(steel, "strength") / metal_stress(steel, "allowable") == pytest.approx(
        0.9 * 1.67
    )


def test_every_species_of_the_table_is_one_that_a_material_stands_for():
    species = {row["species"] for row in references.table("wood/lumber_design_values").rows}
    known = {
        row["species_combination"]
        for row in references.table("wood/nds_assigned_specific_gravity").rows
    }
    assert species <= known


def test_result_is_named_and_counts_in_the_exit():
    weak = examine(design(BASE, post(2.4), wind=60.0))
    check = next(each for each in weak.checks if each.name == "member: post")
    assert not check.passes
    assert not weak.passes
    assert isinstance(weak.members.judged[0], MemberStrength)


def test_a_grade_is_read_and_another_word_refused_with_those_that_are_known():
    text = (
        "[design]\nname = 'x'\nunits = 'imperial'\n"
        "[site]\nmethod = 'gust'\nwind = '40 mph'\nground = 'paving'\n"
        "[[part]]\nname = 'post'\nshape = 'solid'\nlumber = '4x4'\nheight = '5 ft'\n"
        "material = 'redwood'\ngrade = '{}'\n"
    )
    assert read_text(text.format("no. 2")).parts[0].grade == "No. 2"
    with pytest.raises(DesignError) as caught:
        read_text(text.format("select"))
    (fault,) = caught.value.faults
    assert (fault.part, fault.key, fault.line) == ("post", "grade", 14)
    assert "'No. 2'" in fault.expected


def in_ground(height, depth, **more):
    return post(height, on=None, material="redwood", embed=depth, mass=1.0e-9, **more)


def in_sand(EI, h, d, H, soft=1.0, pieces=200):
    """Moments along the part below ground, by beam elements on lumped springs n_h z.

    Of n_h 4 MN/m3 times ``soft``; ``h`` m above ground acts H. Exact as the pieces grow many.
    """
    n, step = pieces, d / pieces
    ke = np.array(
        [
            [12, 6 * step, -12, 6 * step],
            [6 * step, 4 * step**2, -6 * step, 2 * step**2],
            [-12, -6 * step, 12, -6 * step],
            [6 * step, 2 * step**2, -6 * step, 4 * step**2],
        ]
    )
    K = np.zeros((2 * n + 2, 2 * n + 2))
    for k in range(n):
        K[2 * k : 2 * k + 4, 2 * k : 2 * k + 4] += EI / step**3 * ke
    z = np.linspace(0.0, d, n + 1)
    share = np.full(n + 1, step)
    share[[0, -1]] = step / 2.0
    soil = 4.0e6 * soft * z * share
    K[range(0, 2 * n + 2, 2), range(0, 2 * n + 2, 2)] += soil
    F = np.zeros(2 * n + 2)
    F[0], F[1] = H, -H * h  # z runs down: the moment turns the top forward
    u = np.linalg.solve(K, F)
    pushes = soil * u[::2]
    return z, np.array([H * (h + at) - (pushes * np.maximum(at - z, 0.0)).sum() for at in z])


@pytest.mark.parametrize("depth", [0.5, 0.75, 1.0])
def test_a_post_in_the_ground_is_bent_most_where_shear_is_zero_below_it(depth):
    """A beam on springs n_h z (Terzaghi 1955), solved here by elements; eight springs in the model.

    A rigid one 0.75 m deep pushed at 1.2 m: 8.5 % above the moment at the ground, 0.158 m down (by
    integration). Ten times softer and stiffer soil is tried too, the worst counts. Eight springs
    stand at the middles of eight lengths a: off by w a^2/8 at most, w the greatest load of the soil
    per m, of a rigid post A^2/4B with the A and B of that integration: 2.5, 2.9 and 3.2 N m.
    """
    push = GivenLoad("push", 200.0, (0.0, 0.0, 1.2), (1.0, 0.0, 0.0), "post")
    whole = design(in_ground(1.2 + depth, depth), wind=0.01, ground="firm lawn")
    whole = replace(whole, tables={**whole.tables, GivenLoad: (push,)})
    one = examine(whole).members.judged[0]
    z, M = in_sand(1.0e7, 1.2, 0.75, 200.0)
    assert M.max() == pytest.approx(260.43, abs=0.02)
    assert z[M.argmax()] == pytest.approx(0.1583, abs=0.75 / 200)
    EI = lumber.find_lumber("redwood", FOUR, FOUR).stiffness * 0.9 * FOUR**4 / 12.0
    by_hand = [in_sand(EI, 1.2, depth, 200.0, soft)[1].max() for soft in (0.1, 1.0, 10.0)]
    assert one.check.load == "push"
    assert one.check.demand > 200.0 * 1.2
    assert one.check.demand == pytest.approx(max(by_hand), abs=3.2)
    assert one.check.envelope[1] / one.check.envelope[0] == pytest.approx(
        max(by_hand) / min(by_hand), rel=0.01
    )


@pytest.mark.parametrize(("up", "lever"), [(40.0, 28.0), (20.0, 8.0)])
def test_somebody_who_pushes_a_board_above_its_posts_by_hand(up, lever):
    """60 by 48 in on posts of 12 in: F times how far above the posts it is pushed, on a strip that
    widens to both sides, so that it is twice as wide as that is high; hardly a wind. 1.6 of a
    load, and of allowable strength (as above)."""
    parts = held_board(60 * INCH, 48 * INCH, 0.0, 12 * INCH, 48 * INCH)
    push = GivenLoad("push", 500.0, (0.0, -0.06, 0.05 + up * INCH), (0.0, 1.0, 0.0), "board")
    plain = design(BASE, *parts, wind=1.0)
    found = examine(replace(plain, tables={**plain.tables, GivenLoad: (push,)}))
    one = {each.name: each for each in found.members.judged}["board"]
    assert one.role == "board beyond its posts"
    assert one.check.demand == pytest.approx(1.6 * 500.0 * lever * INCH, rel=1e-6)
    per_metre = 225.0 * 4.4482216152605 * INCH / 0.3048 * 1.6 * 0.75
    wide = min(2.0 * lever, 60.0)
    strip = 0.5 + 0.5 * min((wide - 8.0) / 16.0, 1.0)
    assert one.check.capacity == pytest.approx(per_metre * strip * wide * INCH, rel=1e-6)


@pytest.mark.parametrize("aside", [(0.0, 0.0), (0.2, -0.15), (-0.25, 0.1)])
def test_a_board_is_held_by_its_posts_wherever_they_stand(aside):
    """p s^2/8 between posts 0.9 m apart, here or aside; 0.15 m of it stands out at either end."""
    posts, board = held_board(1.2, 0.6, 0.9, 1.5, 0.9)
    x, y = aside
    put = [
        replace(one, place=replace(one.place, at=(one.place.at[0] + x, one.place.at[1] + y, z)))
        for one, z in ((posts, posts.place.at[2]), (board, board.place.at[2]))
    ]
    found = examine(design(BASE, *put, wind=25.0))
    one = {each.name: each for each in found.members.judged}["board"]
    i = [body.part for body in found.structure.bodies].index(2)
    p = 0.5 * 1.226 * 25.0**2 * found.exposed.coefficient[i].max() * found.exposed.case[i].max()
    assert one.role == "board between posts"
    assert one.check.demand == pytest.approx(p * 0.6 * max(0.9**2 / 8.0, 0.15**2 / 2.0), rel=1e-6)


def test_somebody_leans_on_what_spans_farthest_of_uneven_posts():
    """Three posts 0.6 and 0.3 m apart: on 0.3 of the longer span, 0.18 m, wherever one leans."""
    posts = [
        Part(
            f"post {k}",
            Box(FOUR, FOUR, 1.5),
            Place(on="foot", at=(x, 0.0, 0.0)),
            material="southern pine",
        )
        for k, x in enumerate((-0.45, 0.15, 0.45))
    ]
    place = Place(on="foot", at=(0.0, -(FOUR + 0.018) / 2.0, 0.9))
    board = Part("board", Panel(1.0, 0.6, 0.018), place, material=PLYWOOD)
    lean = GivenLoad("somebody", 600.0, (-0.15, -0.06, 1.2), (0.0, 1.0, 0.0), "board")
    whole = design(BASE, *posts, board, wind=0.1)
    found = examine(replace(whole, tables={**whole.tables, GivenLoad: (lean,)}))
    one = {each.name: each for each in found.members.judged}["board"]
    per_metre = 845.0 * 4.4482216152605 * INCH / 0.3048 * 1.6 * 0.75
    assert one.loads == ("somebody",)
    assert one.check.capacity == pytest.approx(0.18 * per_metre * 0.5, rel=1e-6)


def test_a_lattice_board_and_one_that_leans_are_not_judged_as_boards():
    lattice = Part("board", Panel(0.5, 0.6, 0.018, 0.5), Place(on="foot"), material=PLYWOOD)
    assert judged(BASE, lattice)[1]["board"] == "lattice"
    solid = replace(lattice, shape=Panel(0.5, 0.6, 0.018))
    assert "board" in judged(BASE, solid)[0]
