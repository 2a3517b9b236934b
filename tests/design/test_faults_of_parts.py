"""What is wrong with a part is said with its line, name and key, and what would be right."""

import pytest
from sample_file import FIRST_PART_LINE, HARBOUR_LIGHT, altered, faults, part_text, the_fault

SHELL = "shape='shell'\nsides=8\nbottom='16 in'\ntop='9 in'\nheight='4 ft'\nwall='3/4 in'"
BALL = "shape='ball'\nacross='6 in'"
PLATE = "shape='plate'\nsides=8\nacross='20 in'\nthickness='1 in'"
FRAME = "shape='frame'\nsides=8\nacross='3 ft'"
BOX = "shape='box'\nlength='1 ft'\nwidth='1 ft'\nheight='1 ft'"
ROTOR = "shape='rotor'\nblades=4\nspan='2 ft'\nroot='2 in'\ntip='5 in'\nthickness='1/2 in'"


def shell(key: str, value: str) -> str:
    """Return the shell's lines with one value replaced."""
    lines = [f"{key}={value}" if line.startswith(f"{key}=") else line for line in SHELL.split("\n")]
    return "\n".join(lines)


@pytest.mark.parametrize(
    ("keys", "key", "found", "expected", "hint"),
    [
        # dimensions
        (shell("height", "48"), "height", "48", "a length", "height = '48 in'"),
        (shell("height", "'48'"), "height", "48", "a length", "'48 in'"),
        (shell("height", "'48 lb'"), "height", "48 lb", "a length", "a mass"),
        (shell("height", "'1,200 mm'"), "height", "1,200 mm", "a length", "'1200 mm'"),
        (shell("height", "'-4 ft'"), "height", "-4 ft", "a length", "negative"),
        (shell("height", "''"), "height", "''", "a length", ""),
        (shell("height", "true"), "height", "true", "a length", "height = '36 in'"),
        (shell("height", "['4 ft']"), "height", "['4 ft']", "a length", "height = "),
        (shell("height", "nan"), "height", "nan", "a length", "height = '36 in'"),
        (shell("height", "1979-05-27"), "height", "1979-05-27", "a length", ""),
        (shell("height", "'0 in'"), "height", "0 in", "more than 0", ""),
        (shell("height", "'101 ft'"), "height", "101 ft", "at most 100 ft", ""),
        (shell("wall", "0.75"), "wall", "0.75", "a length", "wall = '0.75 in'"),
        (shell("top", "'0 in'"), "top", "0 in", "more than 0", "'cone'"),
        # counts
        (shell("sides", "2"), "sides", "2", "0 (round) or 3 to 60", ""),
        (shell("sides", "61"), "sides", "61", "0 (round) or 3 to 60", ""),
        (shell("sides", "-8"), "sides", "-8", "0 (round) or 3 to 60", ""),
        (shell("sides", "8.0"), "sides", "8.0", "a whole number", "sides = 8"),
        (shell("sides", "8.5"), "sides", "8.5", "a whole number", ""),
        (shell("sides", "'8'"), "sides", "8", "a whole number", "sides = 8"),
        (shell("sides", "true"), "sides", "true", "a whole number", ""),
        (shell("sides", "inf"), "sides", "inf", "a whole number", ""),
        (f"{BALL}\ncount=501\nring='3 ft'", "count", "501", "from 1 to 500", ""),
        (f"{BALL}\ncount=0\nring='3 ft'", "count", "0", "from 1 to 500", ""),
        # two measures for one size, or one that there is not
        (f"{SHELL}\nbottom_points='17 in'", "bottom_points", "17 in", "one measure", "leave out"),
        (f"{SHELL}\npanel_length='4 ft'", "panel_length", "4 ft", "either 'height'", ""),
        (
            "shape='solid'\nsides=5\nbottom_points='9 in'\ntop='1 in'\nheight='1 ft'",
            "bottom_points",
            "9 in",
            "no two points",
            "bottom_side",
        ),
        (
            "shape='solid'\nsides=0\nbottom_side='9 in'\ntop='1 in'\nheight='1 ft'",
            "bottom_side",
            "9 in",
            "the diameter",
            "bottom = ",
        ),
        (
            "shape='plate'\nsides=60\nacross_side='20 ft'\nthickness='1 in'",
            "across_side",
            "20 ft",
            "100 ft",
            "",
        ),
        # sizes against each other
        (shell("wall", "'9 in'"), "wall", "9 in", "less than 7.979 in", "'solid'"),
        (f"{BOX}\nwall='6 in'", "wall", "6 in", "less than 6 in", "leave out 'wall'"),
        (f"{BOX}\nwall='8 in'\nopen=['left']", "wall", "8 in", "less than 6 in", ""),
        (f"{BALL}\nwall='3 in'", "wall", "3 in", "less than 3 in", ""),
        (
            "shape='cone'\nsides=8\nbottom='6 in'\nheight='4 in'\nwall='2.5 in'",
            "wall",
            "2.5 in",
            "less than 2.4 in",  # 3-4-5: half of 6 in times 4/5
            "",
        ),
        (
            "shape='gable'\nlength='1 ft'\nwidth='6 in'\nheight='4 in'\nthickness='2.4 in'",
            "thickness",
            "2.4 in",
            "less than 2.4 in",  # 3-4-5
            "",
        ),
        (f"{PLATE}\nhole='20 in'", "hole", "20 in", "less than the plate's own 20 in", ""),
        (
            "shape='shell'\nsides=8\nbottom='9 in'\ntop='3 in'\nwall='1 in'\npanel_length='3 in'",
            "panel_length",
            "3 in",
            "longer than the 3 in",
            "",
        ),
        (f"{FRAME}\nwidth='18 in'\nheight='2 in'", "width", "18 in", "less than 18 in", "'plate'"),
        # mixed figures
        (f"{PLATE}\nlength='2 ft'", "length", "2 ft", "not both", "leave out"),
        (
            "shape='plate'\nlength='2 ft'\nwidth='1 ft'\nthickness='1 in'\nhole='2 in'",
            "hole",
            "2 in",
            "no hole in a rectangular plate",
            "'frame'",
        ),
        # lumber and stock
        (f"{FRAME}\nlumber='2x4'", "lumber", "2x4", "flat or on edge", "'2x4 flat'"),
        (f"{FRAME}\nlumber='2x7 flat'", "lumber", "2x7 flat", "as it is sold", "'2x"),
        (f"{FRAME}\nlumber='4x4'\nwidth='3 in'", "width", "3 in", "beside 'lumber'", ""),
        (
            "shape='solid'\nlumber='2x4'\nheight='3 ft'",
            "lumber",
            "2x4",
            "square lumber",
            "'box'",
        ),
        (
            "shape='solid'\nlumber='4x4'\nheight='3 ft'\nsides=4",
            "sides",
            "4",
            "beside 'lumber'",
            "",
        ),
        (
            "shape='box'\nlumber='4x6 flat'\nheight='3 ft'",
            "lumber",
            "4x6 flat",
            "without 'flat'",
            "'4x6'",
        ),
        (f"{SHELL}\nstock='3/4 plywood'", "wall", "3/4 in", "beside 'stock'", ""),
        (f"{BALL}\nstock='3/4 plywod'", "stock", "3/4 plywod", "as it is sold", "'3/4 plywood'?"),
        # names
        (f"{SHELL}\ncolour='red'", "colour", "colour", "a key of a shell", "does not matter"),
        (f"{BALL}\nhieght='3 in'", "hieght", "hieght", "a key of a ball: across, wall", ""),
        (f"{BALL}\nacros='3 in'", "acros", "acros", "a key of a ball", "'across'?"),
        (f"{BALL}\nsides=8", "sides", "sides", "a key of a ball", "a ball has none"),
        (f"{BALL}\nembed='1 ft'", "embed", "1 ft", "a post, a board or a body", ""),
        (f"{SHELL}\nfill='grvel'", "fill", "grvel", "one of 'sand'", "'gravel'"),
        (f"{BALL}\nsurface='shiny'", "surface", "shiny", "'smooth', 'rough'", ""),
        (f"{SHELL}\nsurface='rough'", "surface", "rough", "round ones", "sides = 0"),
        (f"{BALL}\ncontact='glass'", "contact", "glass", "'wood', 'steel'", ""),
        (f"{BALL}\nmaterial='sothern pine'", "material", "sothern pine", "", "'southern pine'?"),
        (f"{BALL}\nmaterial='plywood'", "material", "plywood", "", "'softwood plywood', or"),
        (f"{BALL}\nmaterial=5", "material", "5", "one of 'softwood plywood'", ""),
        (f"{BOX}\nwall='1 in'\nopen='top'", "open", "top", "", "open = ['top']"),
        (f"{BOX}\nwall='1 in'\nopen=['up']", "open", "up", "'top'", ""),
        (f"{BOX}\nopen=['top']", "open", "['top']", "'wall' beside it", ""),
        (
            f"{BOX}\nwall='1 in'\nopen=['top','bottom','left','right','front','back']",
            "open",
            "['top', 'bottom', 'left', 'right', 'front', 'back']",
            "one closed face",
            "",
        ),
        # weight
        (f"{BALL}\ndensity='600 kg/m^3'\nmaterial='OSB'", "density", "600 kg/m^3", "either", ""),
        (f"{BALL}\ndensity='0.5 kg/m^3'", "density", "0.5 kg/m^3", "1 to 23,000 kg/m3", ""),
        (f"{BALL}\ndensity='24000 kg/m^3'", "density", "24000 kg/m^3", "1 to 23,000 kg/m3", ""),
        (f"{BALL}\nmass='0 lb'", "mass", "0 lb", "more than 0", ""),
        (f"{BALL}\nmass='3 lbf'", "mass", "3 lbf", "a mass", "a force"),
        ("shape='weight'\nmaterial='OSB'", "mass", "no 'mass'", "a mass", "mass = '12 lb'"),
        ("shape='weight'\nmass='3 lb'\ndensity='600 kg/m^3'", "density", "600 kg/m^3", "no", ""),
        # ratios and flags
        (f"{PLATE}\nsolidity=0", "solidity", "0", "more than 0 and at most 1", ""),
        (f"{PLATE}\nsolidity=1.1", "solidity", "1.1", "more than 0 and at most 1", ""),
        (f"{PLATE}\nsolidity='40 %'", "solidity", "40 %", "a plain number", "solidity = 0.5"),
        (f"{ROTOR}\nyaws='yes'\nfacing='0 deg'", "yaws", "yes", "true or false", "yaws = true"),
        # place
        (f"{BALL}\nat=['1 in', '2 in']", "at", "['1 in', '2 in']", "three lengths", "at = ["),
        (f"{BALL}\nat='1 in'", "at", "1 in", "three lengths", ""),
        (f"{BALL}\nat=['1 in', 2, '3 in']", "at", "2", "a length", "'2 in'"),
        (f"{BALL}\nat=['1 in', '2 lb', '3 in']", "at", "2 lb", "a length", "a mass"),
        (f"{BALL}\nat=['1 in', '-101 ft', '3 in']", "at", "-101 ft", "100 ft", ""),
        (f"{BALL}\nturn='361 deg'", "turn", "361 deg", "360 degrees", ""),
        (f"{BALL}\nturn=45", "turn", "45", "an angle", "turn = '45 deg'"),
        (f"{BALL}\ncount=4", "count", "4", "'ring' beside it", "ring = "),
        (f"{BALL}\nring='2 ft'", "ring", "2 ft", "'count' beside it", "count = "),
        (f"{BALL}\nstart='5 deg'", "start", "5 deg", "'count' beside it", "count = "),
        (f"{BALL}\non='piece'", "on", "piece", "another part", ""),
        (f"{BALL}\non='deck'", "on", "deck", "the name of another part", ""),
        # wheels
        (ROTOR, "facing", "no 'facing'", "an angle", "facing = "),
        (f"{ROTOR}\nyaws=true\nfacing='0 deg'", "facing", "0 deg", "no 'facing' beside", ""),
        (ROTOR.replace("=4", "=0") + "\nyaws=true", "blades", "0", "from 1", ""),
        # shapes
        (shell("shape", "'roof'"), "shape", "roof", "'cone'", "'cone' (pointed) or 'gable'"),
        (shell("shape", "'deck'"), "shape", "deck", "'plate'", "'plate'?"),
        (shell("shape", "'Body'"), "shape", "Body", "'shell'", "'shell'"),
        (shell("shape", "'leg'"), "shape", "leg", "'solid'", "'solid' (upright) or 'member'"),
        (shell("shape", "'shel'"), "shape", "shel", "'shell'", "'shell'?"),
        (shell("shape", "'rafter'"), "shape", "rafter", "'member'", "'member'?"),
        (shell("shape", "5"), "shape", "5", "one of 'shell'", ""),
        (
            "shape='gable'\nlength='1 ft'\nwidth='1 ft'\nheight='1 ft'\nknee_width='3 in'",
            "knee_height",
            "no 'knee_height'",
            "a length with its unit between quote marks: both say where the slope breaks",
            "knee_height = '36 in'",
        ),
    ],
)
def test_one_thing_wrong_is_one_fault(keys, key, found, expected, hint) -> None:
    text = part_text(keys)
    fault = the_fault(text)
    assert (fault.file, fault.part, fault.key, fault.found) == ("piece.toml", "piece", key, found)
    assert expected in fault.expected
    assert hint in fault.hint
    stands = [row for row, line in enumerate(text.split("\n"), 1) if line.startswith(f"{key}=")]
    assert fault.line == (stands[0] if stands else FIRST_PART_LINE)


@pytest.mark.parametrize(
    ("keys", "missing"),
    [
        ("shape='shell'", ["sides", "bottom", "top", "height", "wall"]),
        ("shape='solid'", ["sides", "height", "bottom", "top"]),
        ("shape='box'", ["length", "width", "height"]),
        ("shape='gable'", ["length", "width", "height"]),
        ("shape='cone'", ["sides", "height", "bottom"]),
        ("shape='plate'", ["sides", "across", "thickness"]),
        ("shape='plate'\nwidth='1 ft'", ["length", "thickness"]),
        ("shape='panel'", ["width", "height", "thickness"]),
        ("shape='frame'\nlumber='4x4'", ["sides", "across"]),
        ("shape='frame'\nlength='2 ft'\nlumber='4x4'", ["breadth"]),
        ("shape='ball'", ["across"]),
        ("shape='rotor'", ["blades", "span", "root", "tip", "thickness", "facing"]),
        ("across='6 in'", ["shape"]),
    ],
)
def test_all_that_is_missing_is_named(keys: str, missing: list[str]) -> None:
    found = faults(part_text(keys))
    assert {fault.key for fault in found} == set(missing)
    assert all(fault.found == f"no '{fault.key}'" for fault in found)
    assert all(fault.line == FIRST_PART_LINE for fault in found)


def test_a_misspelt_key_is_not_called_missing_as_well() -> None:
    fault = the_fault(altered("height   = '48 in'", "hieght   = '48 in'"))
    assert (fault.key, fault.hint) == ("hieght", "'height'?")


def test_what_it_is_made_of_is_asked_for() -> None:
    fault = the_fault(altered("material = 'southern pine, treated'\n", ""))
    assert (fault.part, fault.key, fault.found) == ("foot", "material", "no 'material'")


def test_a_part_without_a_name_is_called_by_its_number() -> None:
    fault = the_fault(altered("name     = 'tower'", "").replace("'tower'", "'foot'"))
    assert (fault.part, fault.key, fault.line) == ("part 2", "name", 19)


def test_metric_designs_are_shown_metric_fixes() -> None:
    text = part_text(shell("height", "1200")).replace("'imperial'", "'metric'")
    assert "height = '1200 mm'" in the_fault(text).hint


def test_names_are_unique() -> None:
    fault = the_fault(
        altered("name     = 'gallery'", "name     = 'foot'").replace(
            "on       = 'gallery'", "on       = 'tower'"
        )
    )
    assert (fault.key, fault.found, fault.line) == ("name", "foot", 31)
    assert "line 12" in fault.expected


def test_a_part_stands_on_the_nearest_name() -> None:
    fault = the_fault(altered("on       = 'tower'", "on       = 'towr'"))
    assert (fault.part, fault.key, fault.found, fault.hint) == ("gallery", "on", "towr", "'tower'?")


def test_parts_do_not_stand_in_a_circle() -> None:
    fault = the_fault(altered("name     = 'foot'", "name     = 'foot'\non = 'roof'"))
    assert (fault.part, fault.key) == ("foot", "on")
    assert "no circle" in fault.expected
    assert fault.hint == "foot on roof on gallery on tower on foot"


def test_five_hundred_parts_are_enough() -> None:
    part = "[[part]]\nname='p{}'\nshape='weight'\nmass='1 lb'\n"
    head = HARBOUR_LIGHT[: HARBOUR_LIGHT.index("[[part]]")]
    assert faults(head + "".join(part.format(k) for k in range(500))) == ()
    fault = the_fault(head + "".join(part.format(k) for k in range(501)))
    assert (fault.found, fault.expected) == ("501 parts", "at most 500 parts in a file")


@pytest.mark.parametrize(
    ("old", "new", "key", "expected", "hint"),
    [
        ("units = 'imperial'", "units = 'yards'", "units", "'imperial', 'metric'", ""),
        ("units = 'imperial'", "", "units", "'imperial', 'metric'", "units = 'imperial'"),
        ("name  = 'Harbour light'", "", "name", "text", "name = "),
        ("name  = 'Harbour light'", "name  = ''", "name", "one line of text", ""),
        ("name  = 'Harbour light'", "name  = '''a\nb'''", "name", "one line of text", ""),
        ("name  = 'Harbour light'", "name  = 7", "name", "text", "name = '7'"),
        ("units =", "format = 2\nunits =", "format", "1, the only format so far", ""),
        ("units =", "weighed = 40\nunits =", "weighed", "a mass", "weighed = '40 lb'"),
        ("units =", "wieghed = '40 lb'\nunits =", "wieghed", "one of name, units", "'weighed'?"),
        ("units =", "wind = '40 mph'\nunits =", "wind", "one of name", "[site]"),
    ],
)
def test_the_design_table_is_read_as_strictly(old, new, key, expected, hint) -> None:
    fault = the_fault(altered(old, new))
    assert (fault.part, fault.key) == (None, key)
    assert expected in fault.expected
    assert hint in fault.hint


def test_all_faults_come_at_once_in_the_order_of_the_file() -> None:
    text = (
        HARBOUR_LIGHT.replace("'58 mph'", "58 mph", 1)
        .replace("[site]", "[[site]]", 1)
        .replace("'firm lawn'", "'lawn'", 1)
        .replace("'2x4 flat'", "'2x4'", 1)
        .replace("'48 in'", "48", 1)
        .replace("'3/4 in'\nmaterial", "'9 in'\nmaterail", 1)
        .replace("across   = '17 in'", "acros    = '17 in'", 1)
        .replace("shape    = 'cone'", "shape    = 'roof'", 1)
    )
    found = faults(text)
    assert [(fault.line, fault.key) for fault in found] == [
        (5, None),
        (7, "wind"),
        (9, "ground"),
        (16, "lumber"),
        (26, "height"),
        (28, "materail"),
        (35, "acros"),
        (41, "shape"),
    ]


@pytest.mark.parametrize("key", ["height", "sides", "material", "name"])
def test_a_number_too_long_for_any_machine_is_a_fault_as_others_are(key: str) -> None:
    long = f"{key} = {'9' * 400}"
    lines = [line for line in HARBOUR_LIGHT.split("\n") if not line.startswith(f"{key} ")]
    at = next(i for i, line in enumerate(lines) if line.startswith("[[part]]"))
    text = "\n".join([*lines[: at + 1], long, *lines[at + 1 :]])
    assert key in {fault.key for fault in faults(text)}
