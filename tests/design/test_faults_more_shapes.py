"""What is wrong with a stick, a cut-out, a roof or a place is said in a builder's words."""

import pytest
from sample_file import FIRST_PART_LINE, altered, faults, part_text, the_fault

ENDS = "shape='member'\nfrom=['0 in','0 in','0 in']\nto=['0 in','0 in','3 ft']"
LEVEL = ENDS.replace("'0 in','3 ft'", "'3 ft','0 in'")
CUTOUT = "shape='cutout'\nthickness='1 in'"
SQUARE = f"{CUTOUT}\npoints=[['0 in','0 in'],['9 in','0 in'],['9 in','9 in'],['0 in','9 in']]"
GABLE = "shape='gable'\nlength='4 ft'\nwidth='4 ft'\nheight='3 ft'"
DOME = "shape='dome'\nacross='2 ft'"
VAULT = "shape='vault'\nlength='2 ft'\nwidth='2 ft'"
BALL = "shape='ball'\nacross='6 in'"
BOX = "shape='box'\nlength='1 ft'\nwidth='1 ft'\nheight='1 ft'"
STEP = "step=['1 in','0 in','0 in']"


def points(*pairs: tuple[float, float]) -> str:
    return "[" + ",".join(f"['{x} in','{z} in']" for x, z in pairs) + "]"


@pytest.mark.parametrize(
    ("keys", "key", "found", "expected", "hint"),
    [
        # members
        (f"{ENDS}\nacross='2 in'\nwidth='1 in'", "width", "1 in", "not both", "leave out width"),
        (f"{ENDS}\nlumber='2x4'", "lumber", "2x4", "lies flat or on edge", "'2x4 flat' or"),
        (f"{ENDS}\nlumber='4x4'\ndepth='3 in'", "depth", "3 in", "beside 'lumber'", ""),
        (f"{ENDS}\nlumber='4x4'\nacross='3 in'", "across", "3 in", "beside 'lumber'", ""),
        (
            ENDS.replace("3 ft", "0 in") + "\nacross='1 in'",
            "to",
            "['0 in', '0 in', '0 in']",
            "the member has no length",
            "",
        ),
        (
            ENDS.replace("'3 ft'", "'1200 in'").replace("'0 in']\nto", "'-1 in']\nto")
            + "\nacross='1 in'",
            "to",
            "1201 in from end to end",
            "at most 100 ft",
            "",
        ),
        (f"{ENDS}\nacross='1 in'\nwall='0.5 in'", "wall", "0.5 in", "less than 0.5 in", "solid"),
        (
            f"{ENDS}\nwidth='3 in'\ndepth='1 in'\nwall='1 in'",
            "wall",
            "1 in",
            "less than 0.5 in",
            "solid",
        ),
        (f"{ENDS}\nacross='1 in'\ncut='plumb'", "cut", "plumb", "stands plumb", "'level'"),
        (f"{LEVEL}\nacross='1 in'\ncut='level'", "cut", "level", "lies level", "'plumb'"),
        (f"{LEVEL}\nacross='1 in'\ncut='slanted'", "cut", "slanted", "'square', 'level'", ""),
        (f"{ENDS}\nlumber='4x4'\nsurface='rough'", "surface", "rough", "flat sides", "'across'"),
        (
            f"{ENDS}\nacross='1 in'\nlength='3 ft'",
            "length",
            "length",
            "a key of a member",
            "'from'",
        ),
        (
            "shape='member'\nfrom='0 in'\nto=['0 in','0 in','3 ft']\nacross='1 in'",
            "from",
            "0 in",
            "three lengths: right, away, up",
            "from = [",
        ),
        # cut-outs
        (f"{CUTOUT}\npoints='9 in'", "points", "9 in", "a list of points", "points = [["),
        (f"{CUTOUT}\npoints=[]", "points", "the outline: 0 points", "at least 3 corners", ""),
        (
            f"{CUTOUT}\npoints={points((0, 0), (1, 0))}",
            "points",
            "the outline: 2 points",
            "at least 3 corners",
            "",
        ),
        (
            f"{CUTOUT}\npoints={points((0, 0), (1, 1), (2, 2))}",
            "points",
            "the outline: 3 points",
            "one line",
            "",
        ),
        (
            f"{CUTOUT}\npoints=[['0 in','0 in'],['1 in',2],['0 in','3 in']]",
            "points",
            "2",
            "point 2: a length",
            "'2 in'",
        ),
        (
            f"{CUTOUT}\npoints=[['0 in','0 in'],['1 in'],['0 in','3 in']]",
            "points",
            "['1 in']",
            "point 2: two lengths: right and up",
            "",
        ),
        (
            f"{CUTOUT}\npoints=[['0 in','0 in'],['1 lb','3 in'],['0 in','3 in']]",
            "points",
            "1 lb",
            "point 2: a length",
            "a mass",
        ),
        (
            f"{CUTOUT}\npoints={points((0, 0), (9, 9), (9, 0), (0, 9))}",
            "points",
            "the outline: from point 1 to 2 and from 3 to 4",
            "neither crosses nor touches itself",
            "in order",
        ),
        (
            f"{CUTOUT}\npoints={points((0, 0), (9, 0), (9, 9), (4, 0), (0, 9))}",
            "points",
            "the outline: from point 1 to 2 and from 3 to 4",
            "neither crosses nor touches itself",
            "in order",
        ),
        (
            f"{CUTOUT}\npoints={points((0, 0), (9, 0), (9, 9), (9, 4), (0, 9))}",
            "points",
            "the outline: from point 2 to 3 and from 3 to 4",
            "neither crosses nor touches itself",
            "in order",
        ),
        (
            f"{CUTOUT}\npoints={points((0, 0), (9, 0), (9, 0), (0, 9))}",
            "points",
            "the outline: points 2 and 3",
            "two points that differ",
            "leave out",
        ),
        (
            f"{CUTOUT}\npoints={points((-1199, 0), (9, 0), (0, 9))}",
            "points",
            "1208 in wide and 9 in high",
            "at most 100 ft",
            "",
        ),
        (
            f"{CUTOUT}\npoints={points(*((k, k * k / 10000) for k in range(1100)))}"
            f"\nholes=[{points(*((k, k * k / 10000) for k in range(901)))}]",
            "points",
            "2,001 corners",
            "at most 2,000 corners",
            "fewer",
        ),
        (
            f"{SQUARE}\nholes={points((1, 1), (2, 1), (2, 2))}",
            "holes",
            "[…, …, …]",
            "a list of outlines",
            "one more pair of brackets",
        ),
        (f"{SQUARE}\nholes=['1 in']", "holes", "1 in", "hole 1: a list of points", ""),
        (
            f"{SQUARE}\nholes=[{points((1, 1), (2, 1))}]",
            "holes",
            "hole 1: 2 points",
            "at least 3 corners",
            "",
        ),
        (
            f"{SQUARE}\nholes=[{points((1, 1), (2, 2), (2, 1), (1, 2))}]",
            "holes",
            "hole 1: from point 1 to 2 and from 3 to 4",
            "neither crosses",
            "",
        ),
        (
            f"{SQUARE}\nholes=[{points((1, 1), (2, 1), (2, 12))}]",
            "holes",
            "hole 1",
            "it crosses or touches it",
            "",
        ),
        (
            f"{SQUARE}\nholes=[{points((0, 1), (2, 1), (2, 2))}]",
            "holes",
            "hole 1",
            "it crosses or touches it",
            "",
        ),
        (
            f"{SQUARE}\nholes=[{points((11, 1), (12, 1), (12, 2))}]",
            "holes",
            "hole 1",
            "it lies outside",
            "",
        ),
        (
            f"{SQUARE}\nholes=[{points((1, 1), (5, 1), (5, 5))},{points((2, 1), (3, 1), (3, 2))}]",
            "holes",
            "holes 1 and 2",
            "apart",
            "one of the two",
        ),
        (f"{SQUARE}\nheight='9 in'", "height", "9 in", "beside 'points'", "leave out"),
        (f"{CUTOUT}\noutline='none.svg'\nheight='9 in'", "outline", "none.svg", "no such file", ""),
        (f"{CUTOUT}\noutline=3\nheight='9 in'", "outline", "3", "there is no such file", ""),
        (f"{CUTOUT}\noutline='.'\nheight='9 in'", "outline", ".", "SVG drawing", "a folder"),
        (f"{CUTOUT}\noutline='no\\u0000ne'\nheight='9 in'", "outline", "no\\u0000ne", "", ""),
        (f"{SQUARE}\nwidth='9 in'", "width", "width", "a key of a cutout", "'points' state it"),
        # roofs
        (f"{DOME}\nheight='13 in'", "height", "13 in", "half of its width, 12 in", "'shell'"),
        (f"{DOME}\nheight='6 in'\nwall='6 in'", "wall", "6 in", "less than 6 in", "solid"),
        (f"{DOME}\nheight='6 in'\nsides=8", "sides", "sides", "a key of a dome", "'cone'"),
        (f"{VAULT}\nheight='11 in'", "height", "11 in", "at least half of its width, 12 in", ""),
        (f"{VAULT}\nheight='1 ft'\nwall='1 ft'", "wall", "1 ft", "less than 12 in", "solid"),
        (
            f"{GABLE}\nknee_width='4 ft'\nknee_height='1 ft'",
            "knee_width",
            "4 ft",
            "less than the roof's own width at the eaves, 48 in",
            "",
        ),
        (
            f"{GABLE}\nknee_width='1 ft'\nknee_height='3 ft'",
            "knee_height",
            "3 ft",
            "less than the roof's own height, 36 in",
            "",
        ),
        (
            # On the straight slope itself: half the width at half the height.
            f"{GABLE}\nknee_width='2 ft'\nknee_height='18 in'",
            "knee_height",
            "18 in",
            "more than 18 in",
            "leave out the knee",
        ),
        (f"{GABLE}\nknee_height='2 ft'", "knee_width", "no 'knee_width'", "slope breaks", ""),
        (
            f"{GABLE}\nknee_width='3 ft'\nknee_height='2 ft'\nthickness='2 ft'",
            "thickness",
            "2 ft",
            "where it closes up",
            "solid",
        ),
        # coverings
        (f"{BALL}\ncovering='2 lb/ft^2'", "covering", "2 lb/ft^2", "without slopes", "'plate'"),
        (f"{BOX}\ncovering='2 lb/ft^2'", "covering", "2 lb/ft^2", "a box that tapers", ""),
        (
            f"{GABLE}\ncovering='asfalt shingles'",
            "covering",
            "asfalt shingles",
            "one of 'asphalt shingles', 'wood shingles'",
            "'asphalt shingles'?",
        ),
        (f"{GABLE}\ncovering='tar paper'", "covering", "tar paper", "or a mass per area", "felt"),
        (f"{GABLE}\ncovering='2 psf'", "covering", "2 psf", "a mass per area", "lb/ft^2"),
        (f"{GABLE}\ncovering='2'", "covering", "2", "a mass per area", "'2 lb/ft^2'"),
        (f"{GABLE}\ncovering=2", "covering", "2", "or a mass per area", "'2 lb/ft^2'"),
        (f"{GABLE}\ncovering='0 lb/ft^2'", "covering", "0 lb/ft^2", "more than 0", ""),
        (f"{GABLE}\ncovering='101 lb/ft^2'", "covering", "101 lb/ft^2", "at most 100 lb/ft2", ""),
        # place
        (f"{BALL}\nunder='piece'", "under", "piece", "cannot hang under itself", ""),
        (f"{BALL}\nunder='deck'", "under", "deck", "the name of another part", ""),
        (f"{BALL}\ntilt='91 deg'", "tilt", "91 deg", "from -90 to 90 degrees", ""),
        (f"{BALL}\ntilt=9", "tilt", "9", "an angle", "tilt = '9 deg'"),
        (f"{BALL}\ncount=4", "count", "4", "or 'step' from each copy", "step = ["),
        (
            f"{BALL}\ncount=2\nstep='9 in'",
            "step",
            "9 in",
            "right, away, up",
            "['9 in', '0 in', '0 in']",
        ),
        (f"{BALL}\nat='9 in'", "at", "9 in", "right, away, up", "['0 in', '0 in', '9 in'], if you"),
        (f"{BALL}\n{STEP}", "step", "['1 in', '0 in', '0 in']", "'count' beside it", "count = "),
        (
            f"{BALL}\ncount=2\nring='1 ft'\n{STEP}",
            "step",
            "['1 in', '0 in', '0 in']",
            "either 'ring' or 'step'",
            "leave out",
        ),
        (f"{BALL}\ncount=2\n{STEP}\nstart='9 deg'", "start", "9 deg", "'ring' beside it", ""),
        (
            f"{BALL}\ncount=2\nstep=['0 in','0 in','0 in']",
            "step",
            "['0 in', '0 in', '0 in']",
            "all stand in one place",
            "step = [",
        ),
        (
            f"{BALL}\nat=['9 in','0 in','0 in']\nmirror='x'",
            "mirror",
            "x",
            "'x', 'y'",
            "mirror = ['x']",
        ),
        (
            f"{BALL}\nmirror=['y']",
            "mirror",
            "['y']",
            "copies stand in one place",
            "leave 'mirror' out",
        ),
        (f"{BALL}\nmirror=['z']", "mirror", "z", "'x', 'y'", ""),
        (f"{BALL}\nmirror=[]", "mirror", "[]", "'x', 'y', or both", "mirror = ['x']"),
        (f"{BALL}\nloose='yes'", "loose", "yes", "true or false", "loose = true"),
        (f"{BALL}\nloose=true\nhangs_at='3 ft'", "loose", "true", "beside 'hangs_at'", ""),
        (f"{BALL}\nhangs_at='-3 ft'", "hangs_at", "-3 ft", "a length", "negative"),
        (f"{BALL}\ncut='level'", "cut", "cut", "a key of a ball", "only a 'member'"),
        (f"{BALL}\ncopies=4", "copies", "copies", "a key of a ball", "'ring' or 'step'"),
        # still to come
        (f"{BALL}\njoint='nail'", "joint", "joint", "a key of a ball", "not understood yet"),
        (f"{BALL}\nguy='1 ft'", "guy", "guy", "a key of a ball", "[[guy]] is a table"),
    ],
)
def test_one_thing_wrong_is_one_fault(keys, key, found, expected, hint) -> None:
    text = part_text(keys)
    fault = the_fault(text)
    assert (fault.part, fault.key, fault.found) == ("piece", key, found)
    assert expected in fault.expected
    assert hint in fault.hint
    stands = [row for row, line in enumerate(text.split("\n"), 1) if line.startswith(f"{key}=")]
    assert fault.line == (stands[0] if stands else FIRST_PART_LINE)


@pytest.mark.parametrize(
    ("keys", "missing"),
    [
        ("shape='member'", ["from", "to", "width", "depth"]),
        (f"{ENDS}\nwidth='2 in'", ["depth"]),
        ("shape='cutout'", ["points", "thickness"]),
        ("shape='dome'", ["across", "height"]),
        ("shape='vault'", ["length", "width", "height"]),
    ],
)
def test_all_that_is_missing_is_named(keys: str, missing: list[str]) -> None:
    found = faults(part_text(keys))
    assert {fault.key for fault in found} == set(missing)
    assert all(fault.found == f"no '{fault.key}'" for fault in found)


def test_a_drawing_needs_its_height_and_no_points() -> None:
    found = faults(part_text(f"{SQUARE}\noutline='heron.svg'\nholes=[]"))
    assert [(fault.key, fault.found) for fault in found if fault.key != "points"] == [
        ("height", "no 'height'"),
        ("holes", "[]"),
    ]


def test_every_wrong_point_is_said() -> None:
    found = faults(part_text(f"{CUTOUT}\npoints=[['1 in'], ['2 in','3 lb'], 'x', ['1 in','2 in']]"))
    assert [fault.expected.partition(":")[0] for fault in found] == [
        "point 1",
        "point 2",
        "point 3",
    ]


def test_a_part_stands_or_hangs() -> None:
    fault = the_fault(altered("on       = 'gallery'", "on       = 'gallery'\nunder = 'tower'"))
    assert (fault.part, fault.key) == ("roof", "under")
    assert "not both" in fault.expected


def test_what_hangs_from_a_hook_stands_on_nothing() -> None:
    fault = the_fault(altered("on       = 'gallery'", "on       = 'gallery'\nhangs_at = '9 ft'"))
    assert (fault.part, fault.key, fault.found) == ("roof", "hangs_at", "9 ft")


def test_what_hangs_does_not_stand_loose() -> None:
    fault = the_fault(altered("on       = 'gallery'", "under    = 'gallery'\nloose = true"))
    assert (fault.part, fault.key) == ("roof", "loose")


def test_standing_and_hanging_go_round_in_no_circle() -> None:
    fault = the_fault(altered("name     = 'foot'", "name     = 'foot'\nunder = 'roof'"))
    assert (fault.part, fault.key) == ("foot", "under")
    assert fault.hint == "foot under roof on gallery on tower on foot"


@pytest.mark.parametrize(
    ("old", "new"),
    [
        pytest.param("[[part]]\nname     = 'foot'", "[[ornament]]\nname = 'foot'", id="heading"),
        pytest.param("name     = 'foot'", "name     = foot", id="unquoted"),
        pytest.param("name     = 'foot'", "name     = “foot”", id="curly"),
        pytest.param("name     = 'foot'", "nane     = 'foot'", id="misspelt key"),
    ],
)
def test_a_part_that_is_named_but_not_read_is_not_called_missing_as_well(old, new) -> None:
    found = faults(altered(old, new))
    assert found
    assert not [fault for fault in found if fault.key == "on"]


def test_a_part_that_nobody_names_is_still_missing() -> None:
    text = altered("[[part]]\nname     = 'foot'", "[[ornament]]\nname = 'feet'")
    assert [fault.found for fault in faults(text) if fault.key == "on"] == ["foot"]
