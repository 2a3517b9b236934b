"""What is said of a joint that cannot be: all faults at once, each with its way out."""

import pytest
from joint_designs import POST, TOWER, joint

from yardfast.checks.examination import examine
from yardfast.checks.fasteners.joint_faults import not_touching
from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError


def faults_of(text):
    with pytest.raises(DesignError) as raised:
        examine(read_text(text, "joint.toml"))
    return raised.value.faults


def the_fault(text):
    (fault,) = faults_of(text)
    return fault


def test_all_faults_of_a_joint_come_at_once():
    text = TOWER + joint("towr", "foot", "8d comon nail", 0)
    found = {fault.key: fault for fault in faults_of(text)}
    assert set(found) == {"of", "fastener", "count"}
    assert found["of"].hint == "'tower'?"
    assert found["fastener"].hint == "did you mean 'common'?"
    assert found["of"].line == text[: text.index("of = 'towr'")].count("\n") + 1


def test_an_empty_joint_is_told_what_it_needs():
    found = {fault.key for fault in faults_of(TOWER + "[[joint]]\nname = 'j'\n")}
    assert found == {"of", "to", "fastener", "count"}


@pytest.mark.parametrize(
    ("name", "of", "to"),
    [
        ("house to post", "house", "post"),  # as the joint is called
        ("post under house", "post", "house"),
        ("screws", "house", "post"),  # what is drawn last is fastened to what is drawn before it
        ("posthouse", "house", "post"),  # no part is called by a piece of a word
        ("screws at the post", "post", "house"),
    ],
)
def test_a_joint_is_asked_for_parts_that_there_are(name, of, to):
    box = "shape = 'box'\nlength = '9 in'\nwidth = '9 in'\nheight = '9 in'\nmass = '9 lb'\n"
    parts = f"[[part]]\nname = 'post'\n{box}[[part]]\nname = 'house'\non = 'post'\n{box}"
    site = "[site]\nmethod = 'forecast'\nwind = '58 mph'\nexposure = 'open'\nground = 'paving'\n"
    row = f"[[joint]]\nname = '{name}'\nfastener = '8d common nail'\ncount = 4\n"
    head = "[design]\nname = 'x'\nunits = 'imperial'\n"
    hints = {fault.key: fault.hint for fault in faults_of(head + site + parts + row)}
    assert hints["of"].startswith(f"of = '{of}': ")
    assert hints["to"].startswith(f"to = '{to}': ")


@pytest.mark.parametrize(
    ("more", "key", "expected", "hint"),
    [
        ({"fastener": "#8 wood screw"}, "fastener", "its length", "'#8 wood screw 2 in'"),
        ({"fastener": "#8 screw 2 in"}, "fastener", "trade name", "which screw?"),
        ({"fastener": "16 ga staple"}, "fastener", "its length", "'16 ga staple 2 in'"),
        ({"fastener": "18 ga staple 1 in"}, "fastener", "'16 ga staple', '15 ga", "maker's to say"),
        (
            {"fastener": "16 ga 1/2 in crown staple 2 in"},
            "fastener",
            "a size that it is made in",
            "its crown is made 0.4375 in wide",
        ),
        (
            {"fastener": "16 ga staple 2 in", "toe_nailed": True},
            "toe_nailed",
            "no value is published for staples driven so",
            "",
        ),
        ({"fastener": "16 ga staple 2 in", "crown": "askew"}, "crown", "'along", ""),
        ({"crown": "across the grain"}, "crown", "staples only have one", ""),
        ({"staples": 8}, "staples", "one of name, of, to", "'fastener'"),
        ({"fastener": "nail 0.131 in x 30 in"}, "fastener", "at most 24 in", ""),
        ({"fastener": "1/4 bolt 4 in"}, "washer", "washers under head and nut", "washer = '1 in'"),
        ({"nails": 8}, "nails", "one of name, of, to", "'fastener'"),
        ({"spacing": "3 in"}, "spacing", "one of name, of, to", "worked out"),
        ({"into": "endgrain"}, "into", "'end grain'", "'end grain'?"),
        ({"where": "circle"}, "where", "'ring', 'rectangle', 'each side'", ""),
        ({"head_in": "roof"}, "head_in", "'tower', 'foot'", ""),
        ({"to": "tower"}, "to", "another part", ""),
        ({"where": "ring", "length": "3 in", "width": "3 in"}, "length", "no 'length'", ""),
        ({"length": "3 in"}, "width", "both sizes", ""),
        ({"ring": "3 in"}, "ring", "where the two parts touch", "leave out 'ring'"),
        ({"count": 7, "where": "each side"}, "count", "each of the 8 sides", "count = 8"),
        ({"count": 7, "where": "rectangle"}, "count", "an even number", "count = 8"),
        ({"points": [["1 in", "0 in"]]}, "count", "as many as there are points, 1", ""),
        ({"blocks": "pine"}, "blocks", "'spruce-pine-fir'", "'spruce-pine-fir'"),
        ({"blocks": "redwood", "into": "side grain"}, "into", "no 'into' with 'blocks'", ""),
        ({"toe_nailed": True, "through": "1 in"}, "through", "no 'through'", ""),
        (
            {"toe_nailed": True, "fastener": "#8 wood screw 3 in"},
            "toe_nailed",
            "nails only",
            "",
        ),
    ],
)
def test_one_fault_and_its_way_out(more, key, expected, hint):
    found = [fault for fault in faults_of(TOWER + joint(**more)) if fault.key == key]
    assert len(found) == 1
    assert expected in found[0].expected
    assert hint in found[0].hint


def test_points_beside_the_face_are_counted():
    points = [["1 in", "0 in"], ["8.65 in", "0 in"]]
    fault = the_fault(TOWER + joint(count=None, points=points))
    assert fault.found == "1 of 2 stand where tower and foot do not touch"


def test_parts_that_do_not_touch():
    text = POST.replace("height   = '20 in'", "height   = '20 in'\nat = ['0 in', '0 in', '2 in']")
    fault = the_fault(text + joint("block", "plank"))
    assert fault.expected == "a part that touches block"
    assert "2 in apart" in fault.hint


def test_joints_that_run_in_a_circle():
    fault = the_fault(TOWER + joint() + joint("foot", "tower"))
    assert fault.expected == "a part that does not hang on this one in turn"


def test_a_loose_part_is_not_fastened():
    text = TOWER.replace("on       = 'foot'", "on       = 'foot'\nloose = true")
    assert the_fault(text + joint()).expected == "a part that is not loose"


def test_stuff_without_a_published_value():
    text = TOWER.replace("'softwood plywood'", "'acrylic'")
    fault = the_fault(text + joint())
    assert fault.found == "acrylic"
    assert "not checked" in fault.hint


def test_faults_of_several_joints_come_together():
    text = POST.replace("'southern pine'", "'granite'") + joint("block", "plank")
    assert len(faults_of(text + joint("block", "plank", name="again"))) == 2


def test_two_joints_of_one_name():
    fault = the_fault(TOWER + joint() + joint())
    assert "a name of its own" in fault.expected


@pytest.mark.parametrize(
    ("metres", "metric", "told"),
    [
        (0.0508, False, "2 in"),
        (35.8, False, "1410 in"),  # a hundred feet off: in figures, not in powers of ten
        (0.0125, True, "12 mm"),
        (30.0, True, "30000 mm"),
    ],
)
def test_how_far_parts_lie_apart_is_told_as_people_write_it(metres, metric, told):
    assert not_touching(metres, metric).startswith(f"they lie {told} apart")
