"""What names of anchors, lines and ballast mean."""

import pytest

from yardfast import references
from yardfast.materials import anchors, ballast, guy_lines, holding_rules

LB, INCH = 0.45359237, 0.0254


@pytest.mark.parametrize(
    ("names", "find"),
    [
        (anchors.anchor_names, anchors.find_anchor),
        (guy_lines.line_names, guy_lines.find_line),
        (ballast.ballast_names, ballast.find_ballast),
    ],
)
def test_every_name_is_found_and_has_a_source(names, find):
    assert len(set(names())) == len(names())
    for name in names():
        found = find(name)
        assert found.name == name
        assert found.source
        assert found.confidence in references.CONFIDENCES
    with pytest.raises(KeyError, match="elephant"):
        find("elephant")


@pytest.mark.parametrize(
    "name",
    [
        "rebar stake 1/2 in x 24 in",
        "steel stake 1 in x 36 in",
        "wood stake 2x2 x 24 in",
        "screw anchor 30 in",
        "helical anchor 5 ft",
        "manufactured-home anchor",
        "buried concrete pad 16 in",
        "concrete pier 12 in x 36 in",
        "bolt 1/2 in into a slab",
    ],
)
def test_kinds_are_called_as_builders_call_them(name):
    assert name in anchors.anchor_names()


def test_a_stake_measures_what_its_name_says():
    stake = anchors.find_anchor("rebar stake 1/2 in x 24 in")
    assert stake.diameter == pytest.approx(0.5 * INCH)
    assert stake.length == pytest.approx(24 * INCH)
    assert stake.embedded < stake.length
    tested = anchors.find_anchor("steel stake 16 mm x 380 mm")
    assert (tested.diameter, tested.embedded) == (0.016, 0.380)


def test_anchors_reach_no_deeper_than_they_are_long():
    for anchor in map(anchors.find_anchor, anchors.anchor_names()):
        if anchor.embedded is not None and anchor.length is not None:
            assert anchor.embedded <= anchor.length
        assert anchor.head.name in anchors.heads()


def test_only_a_plain_head_slips_out():
    assert [h for h in anchors.heads() if anchors.find_head(h).holds == 0.0] == ["plain"]
    with pytest.raises(KeyError):
        anchors.find_head("glued")


@pytest.mark.parametrize("pounds", [40, 50, 60, 80])
def test_bags_weigh_what_is_printed_on_them(pounds):
    assert ballast.find_ballast(f"{pounds} lb bag").least == pytest.approx(pounds * LB)


def test_water_weighs_only_while_full():
    for kind in map(ballast.find_ballast, ballast.ballast_names()):
        assert kind.while_full == ("water" in kind.name)
        assert 0.0 < kind.least <= kind.most
    # 62.4 lb/ft3 and 8.34 lb/US gal are one: FEMA P-259; 231 in3 to the gallon
    jug = ballast.find_ballast("water jug 5 gal")
    gallons = 5 * 231 * INCH**3
    assert jug.least == pytest.approx(ballast.find_ballast("water").least * gallons, rel=0.001)


def test_knots_keep_what_is_printed():
    """Knots in Use 4th ed. p. 9: bowline 70, figure-eight 72, reef knot 50 percent."""
    keeps = {name: guy_lines.end(name).keeps for name in guy_lines.ends("rope")}
    assert keeps["bowline"] == 0.70
    assert keeps["figure-eight loop"] == 0.72
    assert keeps["reef knot"] == keeps["any knot"] == min(keeps.values()) == 0.50
    assert set(guy_lines.ends("cable")).isdisjoint(keeps)


def test_thicker_lines_of_a_kind_never_break_sooner():
    kinds: dict[tuple[str, str], list[float]] = {}
    for line in guy_lines.all_lines():
        name, number, unit = line.name.rsplit(" ", 2)
        assert number
        kinds.setdefault((name, unit), []).append(line.breaking)
    for loads in kinds.values():
        assert loads == sorted(loads)


def test_a_rule_tells_its_source():
    wet = holding_rules.rule("stake", "wet share")
    assert wet.value == 0.5
    assert "Illinois" in wet.source
    assert wet.confidence == "copy"
    with pytest.raises(KeyError, match="luck"):
        holding_rules.rule("stake", "luck")


def test_no_rule_stands_twice():
    rows = references.table("ground/holding_rules").rows
    keys = [(row["group"], row["rule"]) for row in rows]
    assert len(set(keys)) == len(keys)


def test_a_bent_head_holds_its_pounds_in_newtons():
    """140 lbf over a foot's edge: 140 x 4.4482216 = 622.8 N (its row; as in the hand cases)."""
    assert anchors.find_head("bent").holds == pytest.approx(140.0 * 4.4482216152605)
