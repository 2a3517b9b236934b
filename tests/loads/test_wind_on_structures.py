"""Wind on whole structures: what is counted once, what is counted in full, and where it acts.

Expected values are worked from the coefficients of ASCE/SEI 7 Fig. 29.4-1 (from memory: square's
face 1.3 at h/D 1, diagonal 1.0), from the suctions of wind/local_pressure.csv (judgement) and
from the strips of Fig. 27.3-1: above h/L 1, 1.3 to h/2 from the windward edge and 0.7 beyond.
"""

from math import cos, pi, radians, tan

import numpy as np
import pytest
from designs import design, wind_alone

from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.rotor import Rotor

Q = 0.613 * 20.0**2
FOOT = Part("foot", Plate(Rectangle(3.0, 3.0), 1e-6), density=7850.0)


def wind_on(*parts, **site):
    return wind_alone(design(*parts, **site))[0]


def at(wind, azimuth, values):
    return float(values[int(np.argmin(np.abs(wind.azimuths - azimuth)))])


def block(name="block", size=0.5, **kwargs):
    return Part(
        name, Box(size, size, size, **kwargs.pop("box", {})), Place(**kwargs), density=500.0
    )


def test_block_takes_face_and_diagonal_as_printed():
    wind = wind_on(block())
    assert at(wind, 0, wind.force) == pytest.approx(Q * 1.3 * 0.25)
    assert at(wind, 45, wind.force) == pytest.approx(Q * 1.0 * 0.25 * np.sqrt(2))
    assert at(wind, 0, wind.force_height) == pytest.approx(0.25)


def test_between_face_and_diagonal_the_force_follows_the_sine_squared():
    wind = wind_on(block())
    face, diagonal = 1.3 * 0.25, np.sqrt(2) * 0.25
    expected = face + (diagonal - face) * np.sin(radians(90 * 15 / 45)) ** 2
    assert at(wind, 15, wind.force) == pytest.approx(Q * expected)


def test_overlap_within_a_stack_counts_once_and_goes_to_the_greater_coefficient():
    """A box 0.2 wide within one 0.5 wide: h/D 2.5 gives 1.325 on its 0.06 m2, 1.3 on the rest."""
    outer = Part("outer", Shell(4, 0.5, 0.5, 0.5, 0.02), Place(on="foot"), density=500.0)
    inner = Part("inner", Box(0.2, 0.2, 0.3), Place(on="foot"), density=500.0)
    wind = wind_on(FOOT, outer, inner)
    expected = 1.3 * (0.25 - 0.06) + 1.325 * 0.06
    assert at(wind, 0, wind.force) == pytest.approx(Q * expected, rel=1e-4)
    assert at(wind, 0, wind.area) == pytest.approx(0.25, rel=1e-4)


def test_copies_of_a_ring_each_take_their_own_full_wind():
    one = wind_on(block())
    two = wind_on(block(count=2, ring=2.0))
    assert at(two, 90, two.force) == pytest.approx(2 * at(one, 90, one.force))
    assert at(two, 90, two.area) == pytest.approx(at(one, 90, one.area))  # the silhouette: once


def test_shelter_is_credited_only_when_asked_and_only_behind():
    """ISO 4302 (memory): solid front, clear gap of 3 widths: between 0.20 and 0.45."""
    pair = block(count=2, ring=2.0)
    plain, sheltered = wind_on(pair), wind_on(pair, sheltering=True)
    each = Q * 1.3 * 0.25
    assert at(sheltered, 90, sheltered.force) == pytest.approx(each * (1 + (0.20 + 0.45) / 2))
    assert at(sheltered, 0, sheltered.force) == pytest.approx(at(plain, 0, plain.force))


def test_lattice_shows_and_takes_wind_by_its_solidity():
    """Open sign, solidity 0.4: 1.6 x 0.4 on the gross area (Fig. 29.4-2, memory)."""
    lattice = Part("lattice", Panel(1.2, 1.0, 0.02, 0.4), Place(at=(0, 0, 0.5)), density=500.0)
    wind = wind_on(FOOT, lattice)
    assert at(wind, 0, wind.area) == pytest.approx(0.4 * 1.2, rel=1e-4)
    assert at(wind, 0, wind.force) == pytest.approx(Q * 1.6 * 0.4 * 1.2, rel=1e-4)


def test_climbers_make_a_lattice_a_wall():
    open_ = Part("l", Panel(1.2, 1.0, 0.02, 0.4), Place(at=(0, 0, 0.5)), density=500.0)
    grown = Part("l", Panel(1.2, 1.0, 0.02, 0.4, True), Place(at=(0, 0, 0.5)), density=500.0)
    a, b = wind_on(FOOT, open_), wind_on(FOOT, grown)
    assert at(b, 0, b.force) > 2 * at(a, 0, a.force)


def test_both_editions_of_asce_7_give_one_force():
    site = {"wind": 47.0, "exposure": "C", "basis": "allowable"}
    new, old = (wind_on(block(), method=f"ASCE {e}", **site) for e in ("7-22", "7-16"))
    assert new.force == pytest.approx(old.force)
    assert new.pressure == pytest.approx(old.pressure)


def test_minimum_of_asce_7_decides_a_slow_map_wind():
    """16 psf = 766 Pa on 0.25 m2 (29.7): 191.5 N, at strength level."""
    found = examine(design(block(), method="ASCE 7-22", wind=25.0, exposure="B", basis="strength"))
    assert found.sliding.case == "minimum"
    assert found.sliding.demand == pytest.approx(766.08 * 0.25 * np.sqrt(2), rel=1e-4)
    assert found.minimum_governs


LID = 0.5 * (1.3 * 0.25 + 0.7 * 0.15)  # 0.5 high and 0.4 along the wind

LIDS = {
    "closed box: its lid": (Part("b", Box(0.5, 0.4, 0.5, 0.02), mass=20.0), 0, LID),
    "solid box: nothing": (Part("b", Box(0.5, 0.4, 0.5), mass=20.0), 0, 0.0),
    "open-topped box: its floor": (
        Part("b", Box(0.5, 0.4, 0.5, 0.02, frozenset({"top"})), mass=20.0),
        0,
        0.6 * 0.46 * 0.36,
    ),
    "box open to the wind: lid and beneath it": (
        Part("b", Box(0.5, 0.4, 0.5, 0.02, frozenset({"front"})), mass=20.0),
        180,
        LID + 0.8 * 0.2,
    ),
    "box open away from the wind: its lid": (
        Part("b", Box(0.5, 0.4, 0.5, 0.02, frozenset({"front"})), mass=20.0),
        0,
        LID,
    ),
    "post: nothing": (Part("b", Solid(6, 0.3, 0.3, 1.0), mass=20.0), 0, 0.0),
    "steep cone: nothing": (Part("b", Cone(4, 0.3, 0.3, 0.01), mass=20.0), 0, 0.0),
    "gable at 45 degrees: 0.6 on the lee slope, nothing on the other": (
        Part("b", Gable(1.0, 0.6, 0.3), mass=20.0),
        0,
        0.6 * 0.3,
    ),
}


@pytest.mark.parametrize("name", LIDS)
def test_suction_acts_on_what_is_closed_above(name):
    part, azimuth, area = LIDS[name]
    wind = wind_on(part)
    assert at(wind, azimuth, wind.uplift) == pytest.approx(Q * area, rel=1e-6, abs=1e-9)


def test_deck_overhangs_are_pushed_up_straight_upwind_of_the_body():
    """Strips on the deck, 0.82 up and 0.6 along, and 0.8 beneath on 0.3 x 0.15 m (27.3.3)."""
    body = Part("body", Shell(4, 0.3, 0.3, 0.8, 0.02), density=500.0)
    deck = Part("deck", Plate(Rectangle(0.6, 0.6), 0.02), Place(on="body"), density=500.0)
    wind = wind_on(body, deck)
    strips = 0.6 * (1.3 * 0.41 + 0.7 * 0.19)
    assert at(wind, 0, wind.uplift) == pytest.approx(Q * (strips + 0.8 * 0.3 * 0.15))


def test_roof_on_a_deck_counts_once():
    """A pyramid at 33.7 degrees on 0.09 of the deck's 0.16 m2: 0.6 on its lee face, 1.3 on the two
    along the wind and on the deck, and 0.226 on its windward face (0.3 at 30, 0.2 at 35 degrees).
    """
    body = Part("body", Shell(4, 0.4, 0.4, 0.8, 0.02), density=500.0)
    deck = Part("deck", Plate(Regular(4, 0.4), 0.02), Place(on="body"), density=500.0)
    roof = Part("roof", Cone(4, 0.3, 0.1, 0.01), Place(on="deck"), density=500.0)
    wind = wind_on(body, deck, roof)
    windward = 0.3 - 0.1 * (np.degrees(np.arctan2(0.1, 0.15)) - 30.0) / 5.0
    expected = 1.3 * 0.07 + (windward + 0.6 + 2 * 1.3) * 0.09 / 4
    assert at(wind, 0, wind.uplift) == pytest.approx(Q * expected)


@pytest.mark.parametrize(("under", "coefficient"), [(0.1, 0.8), (0.7, 1.2)])
def test_free_roof_is_lifted_more_where_the_space_beneath_is_blocked(under, coefficient):
    roof = Part("roof", Plate(Rectangle(0.8, 0.8), 0.02), Place(at=(0, 0, 1.0)), density=500.0)
    thing = Part("thing", Box(under, under, 0.8), density=500.0)
    wind = wind_on(thing, roof)
    assert at(wind, 0, wind.uplift) == pytest.approx(Q * coefficient * 0.64)


@pytest.mark.parametrize(("pieces", "coefficient"), [(1, 0.8), (2, 1.2)])
def test_what_blocks_the_space_beneath_a_free_roof_may_hang_high(pieces, coefficient):
    """Each fills 0.975 of the width, over 0.27 and 0.34 of the height: one leaves it clear, two
    block it.
    """
    roof = Part("roof", Plate(Rectangle(0.8, 0.8), 0.02), Place(at=(0, 0, 1.0)), density=500.0)
    low = Part("low", Box(0.78, 0.78, 0.27), density=500.0)
    high = Part("high", Box(0.78, 0.78, 0.34), Place(at=(0, 0, 0.5)), density=500.0)
    _, found = wind_alone(design(low, roof, *[high][: pieces - 1]))
    d = int(np.argmin(found.azimuths))
    assert found.suction.upward[1, d] == pytest.approx(coefficient * 0.64)


def wheel(**changes):
    sizes = {"blades": 4, "span": 0.5, "root": 0.1, "tip": 0.2, "thickness": 0.01, "facing": 0.0}
    return Part("wheel", Rotor(**{**sizes, **changes}), Place(at=(0, 0, 1.5)), density=500.0)


def test_spinning_wheel_takes_the_whole_disc_and_a_locked_one_its_blades():
    """1.2 on the disc, above the 1.17 of a flat one (Hoerner, memory).

    Locked 1.6 x solidity (Fig. 29.4-2, memory).
    """
    disc = pi * 0.25
    filled = 4 * 0.15 * 0.5 / disc
    spins, locked = wind_on(FOOT, wheel()), wind_on(FOOT, wheel(spins=False))
    assert at(spins, 0, spins.force) == pytest.approx(Q * 1.2 * disc, rel=1e-4)
    assert at(locked, 0, locked.force) == pytest.approx(Q * 1.6 * filled * disc, rel=1e-4)
    assert at(spins, 0, spins.force_height) == pytest.approx(1.5, rel=1e-4)


def test_fixed_wheel_takes_the_square_of_the_cosine_and_a_yawing_one_all():
    fixed, free = wind_on(FOOT, wheel()), wind_on(FOOT, wheel(facing=None, yaws=True))
    disc = 1.2 * pi * 0.25
    assert at(fixed, 60, fixed.force) == pytest.approx(Q * disc * cos(radians(60)) ** 2, rel=1e-3)
    assert at(fixed, 180, fixed.force) == pytest.approx(Q * disc, rel=1e-4)
    assert at(free, 60, free.force) == pytest.approx(Q * disc, rel=1e-4)


def test_board_off_its_middle_slides_sooner_for_turning():
    """Case B moves the force 0.2 B to a side: two small feet then slide before N mu."""
    feet = Part("feet", Box(0.1, 0.1, 0.5), Place(count=2, ring=1.0), density=500.0)
    board = Part("board", Panel(1.0, 0.6, 0.02), Place(at=(0, 0, 0.5)), density=500.0)
    plain = examine(design(feet, board))
    straight = plain.sliding.capacity / (plain.structure.weight("light") * plain.sliding.dead * 0.4)
    assert plain.sliding.case.startswith("B")
    assert straight < 0.95


def test_hexagon_is_wider_over_points_in_one_direction_than_in_another():
    wind = wind_on(Part("post", Solid(6, 0.3, 0.3, 1.0), density=500.0))
    assert at(wind, 90, wind.area) == pytest.approx(0.3 * 1.0 * 2 * tan(pi / 6))
