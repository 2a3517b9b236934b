"""What would make a joint hold: checked forward by the same check, the next smaller failing."""

from pathlib import Path

import pytest
from joint_designs import POST, TOWER, joint

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read, read_text
from yardfast.checks.joints.joint_sizing import Why, grows_by, size_joint
from yardfast.checks.joints.larger_fasteners import lag_screws, larger, screws
from yardfast.checks.timber.books import titled
from yardfast.materials import fasteners
from yardfast.statics.tables.joint_table import JointRow

NAILS = POST.replace("46 mph", "70 mph")

EXAMPLES = Path(__file__).parents[3] / "examples"


def sized(text):
    found = examine(read_text(text))
    return size_joint(found.structure, found.joints[0], found.factors, found.site.basis)


def check_with(fastener, count):
    return examine(read_text(NAILS + joint("block", "plank", fastener, count))).joints[0].check


@pytest.fixture(scope="module")
def remedies():
    return {one.kind: one for one in sized(NAILS + joint("block", "plank", count=4)).remedies}


def test_there_are_more_larger_and_screws(remedies):
    assert set(remedies) == {"more", "larger", "screws"}
    assert remedies["more"].count > 4
    assert remedies["larger"].fastener.length > 2.5 * 0.0254
    assert remedies["screws"].fastener.kind == "wood screw"


@pytest.mark.parametrize("kind", ["more", "larger", "screws"])
def test_each_holds_when_it_is_written_into_the_file(remedies, kind):
    remedy = remedies[kind]
    check = check_with(remedy.fastener.name, remedy.count)
    assert check.passes
    assert check.utilization == pytest.approx(remedy.found.check.utilization, rel=1e-9)


def test_a_metric_file_gets_metric_screws():
    text = NAILS.replace("'imperial'", "'metric'") + joint("block", "plank", count=4)
    ways = {one.kind: one for one in sized(text).remedies}
    assert ways["screws"].fastener.name.endswith(" mm wood screw")


@pytest.mark.parametrize("metric", [False, True])
def test_ladders_of_fasteners_rise_in_the_units_of_the_file(metric):
    unit = " mm" if metric else " in"
    for ladder in (screws(metric), lag_screws(metric)):
        tried = list(ladder)
        assert len(tried) > 20
        assert all(unit in one.name for one in tried)
        sizes = [(one.diameter, one.length) for one in tried]
        assert sizes == sorted(sizes)
    for name in ("M10 bolt 150 mm", "3/8 bolt 6 in"):
        now = fasteners.find_fastener(name)
        thicker = list(larger(now, metric))
        assert thicker
        assert all(one.diameter > now.diameter and unit in one.name for one in thicker)
        assert all(-1e-6 <= one.length - now.length < 0.01 for one in thicker)


def test_the_next_smaller_number_fails(remedies):
    check = check_with("8d common nail", remedies["more"].count - 2)
    assert not check.passes
    assert remedies["more"].before.check.utilization == pytest.approx(check.utilization, rel=1e-9)


@pytest.mark.parametrize("kind", ["larger", "screws"])
def test_the_next_smaller_fastener_fails(remedies, kind):
    """Beside a remedy stands how far the one before it in the ladder is used, written so."""
    ladder = larger(fasteners.find_fastener("8d common nail"), metric=False)
    names = [one.name for one in (ladder if kind == "larger" else screws(metric=False))]
    nth = names.index(remedies[kind].fastener.name)
    smaller = names[nth - 1] if nth else "8d common nail"
    check = check_with(smaller, 4)
    assert not check.passes
    assert remedies[kind].before.check.used == pytest.approx(check.used, rel=1e-9)
    assert remedies[kind].before.row.fastener.name == smaller


@pytest.mark.parametrize(
    ("pattern", "count", "step"),
    [
        ("where = 'rectangle'", 4, 2),
        ("where = 'ring'", 3, 1),
        ("where = 'ring'", 4, 2),
        ("where = 'each side'", 2, 2),
    ],
)
def test_a_number_grows_as_its_pattern_does(pattern, count, step):
    """In rows of two by twos, one by one in a line of an odd number, and at each side at once."""
    text = NAILS + joint("block", "plank", count=count) + pattern + "\n"
    row = read_text(text).several(JointRow)[0]
    assert row.count == count
    assert grows_by(row) == step


def test_they_stand_apart_enough(remedies):
    for remedy in remedies.values():
        assert (
            remedy.found.spacing
            >= titled("NDS").room(remedy.fastener, predrilled=False, used=0.0).across
        )


def test_a_joint_that_holds_needs_nothing():
    found = sized(POST + joint("block", "plank", "#10 wood screw 3 in", 8))
    assert found.remedies == ()
    assert found.why is None


@pytest.mark.slow
def test_what_no_number_mends_is_said():
    text = POST.replace("46 mph", "290 mph")
    found = sized(text + joint("block", "plank", "#8 wood screw 3 in", 1, into="end grain"))
    assert found.remedies == ()
    assert found.why is Why.END_GRAIN


@pytest.mark.slow
def test_in_the_edge_of_a_panel_blocks_alone_mend():
    """NDS 2018 has no value for fasteners driven into a panel's edge, however many there are."""
    assert [one.kind for one in sized(TOWER + joint()).remedies] == ["blocks"]


def test_lag_screws_are_found_where_wood_screws_count_nothing():
    # NDS 2018 12.2.1.4: lag screws keep 3/4 in end grain, 12.2.2.2: wood screws are not drawn there
    text = POST + joint("block", "plank", "#8 wood screw 3 in", 4, into="end grain")
    (remedy,) = sized(text).remedies
    assert remedy.kind == "lag screws"
    again = joint("block", "plank", remedy.fastener.name, remedy.count, into="end grain")
    assert examine(read_text(POST + again)).joints[0].check.passes


SWING = """
[design]
name  = 'A swing'
units = 'imperial'

[site]
method   = 'forecast'
wind     = '46 mph'
exposure = 'houses and trees'
ground   = 'firm lawn'

[[part]]
name     = 'legs'
shape    = 'member'
from     = ['42 in', '30 in', '0 in']
to       = ['42 in', '2 in', '78 in']
lumber   = '4x4'
cut      = 'level'
mirror   = ['x', 'y']
material = 'douglas fir'

[[part]]
name     = 'beam'
shape    = 'member'
from     = ['-48 in', '0 in', '0 in']
to       = ['48 in', '0 in', '0 in']
lumber   = '4x6 on edge'
on       = 'legs'
material = 'douglas fir'

[[load]]
name      = 'two on the swing'
force     = '700 lbf'
at        = ['0 in', '0 in', '78 in']
direction = 'down'
on        = 'beam'
"""


@pytest.mark.slow
def test_what_two_lag_screws_in_so_small_a_face_cannot_hold_has_no_room():
    """The frame sways by what turns at its legs' heads: more of them would need more room."""
    found = sized(SWING + joint("beam", "legs", "3/8 lag screw 6 in", 2))
    assert found.remedies == ()
    assert found.why is Why.NO_ROOM


ARM = """
[design]
name  = 'A signpost'
units = 'imperial'

[site]
method   = 'forecast'
wind     = '58 mph'
exposure = 'open'
ground   = 'firm lawn'

[[part]]
name     = 'post'
shape    = 'box'
lumber   = '4x4'
height   = '121 in'
embed    = '55 in'
material = 'southern pine, treated'

[[part]]
name     = 'arm'
shape    = 'member'
from     = ['0 in', '0 in', '60 in']
to       = ['30 in', '0 in', '60 in']
lumber   = '2x4 on edge'
material = 'southern pine, treated'

[[part]]
name      = 'sign'
shape     = 'panel'
under     = 'arm'
at        = ['2 in', '0 in', '-2 in']
width     = '22 in'
height    = '14 in'
thickness = '3/4 in'
material  = 'western redcedar'
hangs_at  = '58 in'
"""


PAST = ARM.replace("['0 in', '0 in', '60 in']", "['-6 in', '0 in', '60 in']", 1).replace(
    "2x4 on edge", "2x6 on edge"
)
"""An arm that runs past its post."""


@pytest.mark.slow
def test_other_fasteners_are_found_in_another_number():
    windy = PAST.replace("58 mph", "75 mph")
    (remedy,) = sized(windy + joint("arm", "post", "16d common nail", 2)).remedies
    assert remedy.kind in ("screws", "lag screws")
    assert remedy.count != 2
    again = joint("arm", "post", remedy.fastener.name, remedy.count)
    check = examine(read_text(windy + again)).joints[0].check
    assert check.passes
    assert check.utilization == pytest.approx(remedy.found.check.utilization, rel=1e-6)
    assert remedy.found.spacing >= 3.0 * remedy.fastener.diameter


@pytest.mark.slow
def test_what_holds_where_nothing_held_is_told_as_it_is_found_once_written():
    """Nails in end grain hold no pull: which of their cases is the worst says nothing of screws."""
    windy = ARM.replace("58 mph", "30 mph").replace("2x4 on edge", "4x4")
    nailed = windy + joint("arm", "post", "16d common nail", 3)
    (remedy,) = sized(nailed).remedies
    again = joint("arm", "post", remedy.fastener.name, remedy.count)
    check = examine(read_text(windy + again)).joints[0].check
    assert check.utilization == pytest.approx(remedy.found.check.utilization, rel=1e-6)


def test_each_joint_is_asked_for_dead_load_alone_too():
    """Alone it lasts for good, which other fasteners may bear worst (NDS 2018 Table 2.3.2)."""
    for found in examine(read(str(EXAMPLES / "heron.toml"))).joints:
        (asked,) = found.asked
        (calm,) = asked.cases.calm
        assert asked.cases.set_of(int(calm)).is_calm
        assert calm in asked.which


def test_enough_bolts_that_have_no_room_are_told_apart_from_none_that_is_strong_enough():
    weak = ARM.replace("58 mph", "50 mph")
    found = sized(weak + joint("arm", "post", "1/2 bolt 6 in", 2, washer="1 1/2 in"))
    assert found.why is Why.NO_ROOM
    assert found.crowded.check.passes
    assert found.crowded.spacing < 3.0 * 0.5 * 0.0254


def test_thicker_bolts_are_tried_too():
    """Through an arm, 4 D from its edges and 7 D from its end."""
    weak = PAST.replace("58 mph", "30 mph") + joint(
        "arm", "post", "1/4 bolt 6 in", 2, washer="1 in"
    )
    kinds = {one.kind: one for one in sized(weak).remedies}
    assert kinds["larger"].fastener.diameter > 0.25 * 0.0254
    assert kinds["larger"].fastener.length == pytest.approx(6 * 0.0254)
