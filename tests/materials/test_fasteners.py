"""Fasteners by the words of the trade."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast import references
from yardfast.materials import fasteners
from yardfast.materials.fastener_sizes import fastener_names
from yardfast.materials.fastener_words import read_words
from yardfast.units.frozen import replace

INCH = 0.0254
PSI = 6894.757293168361


@pytest.mark.parametrize(
    ("text", "kind", "diameter", "length"),
    [
        ("8d common nail", "nail", 0.131, 2.5),
        ("8d common", "nail", 0.131, 2.5),
        ("16 penny common nails", "nail", 0.162, 3.5),
        ("16d sinker", "nail", 0.148, 3.25),
        ("6d box nail", "nail", 0.099, 2.0),
        ("10d finish", "nail", 0.113, 3.0),
        ("8d ring-shank", "nail", 0.113, 2.375),
        ("8d ring shank nail", "nail", 0.113, 2.375),
        ("16 ga finish nail 2 in", "nail", 0.0625, 2.0),
        ("18ga brad 1 1/4 in", "nail", 0.0475, 1.25),
        ("nail 0.131 in x 2 1/2 in", "nail", 0.131, 2.5),
        ("0.131 x 2 1/2 in nail", "nail", 0.131, 2.5),
        ("nail 3.1 mm by 80 mm", "nail", 3.1 / 25.4, 80 / 25.4),
        ("#8 wood screw 2 in", "wood screw", 0.164, 2.0),
        ('No. 8 x 1-1/2" flat head wood screw', "wood screw", 0.164, 1.5),
        ("#10 x 3 in deck screw", "deck screw", 0.190, 3.0),
        ("3/8 lag screw 4 in", "lag screw", 0.375, 4.0),
        ('3/8" × 4″ lag bolt', "lag screw", 0.375, 4.0),
        ("1/2 bolt 6 in", "bolt", 0.5, 6.0),
        ("hex bolt 1/2 x 6 in", "bolt", 0.5, 6.0),
        ("3/8 carriage bolt 4 in", "bolt", 0.375, 4.0),
        ("16 ga staple 1 1/2 in", "staple", 0.0625, 1.5),
        ("16 ga 7/16 crown staple 1-1/2 in", "staple", 0.0625, 1.5),
        ('16 gauge medium 7/16" crown x 1 1/2 in staples', "staple", 0.0625, 1.5),
    ],
)
def test_builders_words_are_understood(text, kind, diameter, length):
    """Sizes of ASTM F1667 and ASME B18.2.1 as held in the tables; ring-shank RSRS-01."""
    found = fasteners.find_fastener(text)
    assert found.kind == kind
    assert found.diameter / INCH == pytest.approx(diameter)
    assert found.length / INCH == pytest.approx(length)
    assert found.source


@pytest.mark.parametrize(
    ("text", "kind", "mm", "length"),
    [
        ("M10 bolt 150 mm", "bolt", 10.0, 150.0),
        ("M8 x 100 bolt", "bolt", 8.0, 100.0),
        ("M12 x 120 mm coach screw", "lag screw", 12.0, 120.0),
        ("8 x 100 mm coach screw", "lag screw", 8.0, 100.0),
        ("5 x 60 mm wood screw", "wood screw", 5.0, 60.0),
        ("4,5 x 50 mm wood screw", "wood screw", 4.5, 50.0),
        ("3,1 x 80 mm nail", "nail", 3.1, 80.0),
    ],
)
def test_metric_fasteners_are_read_as_they_are_sold(text, kind, mm, length):
    one = fasteners.find_fastener(text)
    assert one.kind == kind
    assert 1000.0 * one.diameter == pytest.approx(mm, abs=0.005)
    assert 1000.0 * one.need("length") == pytest.approx(length)


def test_metric_threads_are_those_of_the_standard():
    """d3 of coarse threads, d - 1.22687 p (ISO 68-1): M8 6.466, M10 8.160, M12 9.853 mm."""
    for name, d3 in (("M8 bolt", 6.466), ("M10 bolt", 8.160), ("M12 bolt", 9.853)):
        root = fasteners.find_fastener(f"{name} 100 mm").root_diameter
        assert root is not None
        assert 1000.0 * root == pytest.approx(d3, abs=0.005)
    # 4.5 mm is not taken for #9, which is 0.177 in and has a thicker root
    metric = fasteners.find_fastener("4.5 x 50 mm wood screw").root_diameter
    numbered = fasteners.find_fastener("#9 wood screw 50 mm").root_diameter
    assert metric < numbered


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("finish", "'8d finish nail'"),
        ("8d nail", "'8d box nail'"),
        ("8d comon nail", "did you mean 'common'"),
        ("3/8 lagg screw", "did you mean 'lag'"),
        ("#11 wood screw", "'#18 wood screw'|'#12 wood screw'"),
        ("13/16 bolt 6 in", "'7/16 bolt'"),
        ("17 ga staple", "'16 ga staple'"),
        ("#8 screw 2 in", "wood screw, deck screw or lag screw"),
        ("#8 wood nail", "cannot be both"),
        ("8d common ring-shank nail", "'8d ring-shank nail'"),
        ("common box nail", "cannot be both common and box"),
        ("nail 4 x 3 in", "with its unit"),
        ("hardened #8 wood screw", "nails only"),
        ("pan head 8d common nail", "wood screws only"),
        ("#8 x 2 in x 3 in wood screw", "cannot both be its length"),
        ("", "names no nail"),
        ("8d", "names no nail"),
    ],
)
def test_unknown_fastener_is_refused_with_what_is_near(text, named):
    with pytest.raises(KeyError, match=named):
        fasteners.find_fastener(text)


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("#8 wood screw 2", "with its unit"),
        ("16d common nail 3 in", "3.5 in long"),
        ("18 ga brad 3 in", "0.625 to 2.0 in long"),
        ("#8 wood screw 2 lb", "a mass"),
        ("nail 0 in x 2 in", "above 0"),
        ("#8 wood screw 0 in", "above 0"),
        ("nail 2 ft x 2 in", "at most 1.25 in"),
    ],
)
def test_wrong_length_is_refused(text, named):
    with pytest.raises(ValueError, match=named):
        fasteners.find_fastener(text)


@given(st.text(max_size=40))
def test_no_text_ends_in_another_error(text):
    assert found_or_refused(text)


def found_or_refused(text):
    try:
        found = fasteners.find_fastener(text)
    except (KeyError, ValueError):
        return True
    return 0.0 < found.diameter < 0.04 and (found.length is None or found.length > 0.0)


WORDS = (
    "8d 16d #8 #10 no. 3/8 1/2 0.131 in mm 2 2 1/2 x by ga 16 nail wood lag deck screw bolt 0/1 "
    'staple common box ring-shank finish head flat " 0/0 1/0 -3 e5 ¼ × 40 ft ring brad pan hardened'
)


@given(st.lists(st.sampled_from(WORDS.split()), max_size=7).map(" ".join))
def test_no_mix_of_the_trades_words_ends_in_another_error(text):
    assert found_or_refused(text)


def test_every_name_is_found_and_says_how_well_it_is_known():
    names = fastener_names()
    assert len(names) == len(set(names)) > 90
    for name, found in zip(names, fasteners.all_fasteners(), strict=True):
        assert found == fasteners.find_fastener(name)
        assert found.name == name
        assert found.confidence in references.CONFIDENCES
        assert found.source


@pytest.mark.parametrize(
    ("text", "psi"),
    [
        ("6d box nail", 100_000),  # 0.099
        ("8d common nail", 100_000),  # 0.131
        ("16d sinker", 90_000),  # 0.148
        ("20d common nail", 80_000),  # 0.192
        ("60d common nail", 70_000),  # 0.263
        ("#6 wood screw", 100_000),
        ("#8 wood screw", 90_000),
        ("#10 wood screw", 80_000),
        ("#14 wood screw", 70_000),
        ("1/4 lag screw", 70_000),
        ("5/16 lag screw", 60_000),
        ("3/8 lag screw", 45_000),
        ("1/2 lag screw", 45_000),
        ("1/2 bolt", 45_000),
        ("hardened nail 0.120 in x 3 in", 130_000),
        ("hardened nail 0.177 in x 4 in", 115_000),
    ],
)
def test_steel_is_that_of_the_nominal_diameter(text, psi):
    """NDS 2018 Table I1 and the notes of Tables 12J, 12L, 12N (memory)."""
    assert fasteners.find_fastener(text).bending_yield == pytest.approx(psi * PSI)


def test_steel_thinner_than_the_table_is_a_judgement():
    assert fasteners.find_fastener("4d common nail").confidence == "judgement"
    assert fasteners.find_fastener("4d common nail").bending_yield == pytest.approx(100_000 * PSI)


def test_hardened_steel_beyond_its_rows_is_not_known():
    with pytest.raises(ValueError, match="bending yield"):
        fasteners.find_fastener("hardened nail 0.1 in x 2 in").need("bending_yield")


def test_thread_is_what_the_standard_gives():
    """NDS 2018 Appendix L2 (3/8 x 4: T 2 1/2, T less tip 2 9/32; 12 in long: T 6), L3 (2/3 L)."""
    lag = fasteners.find_fastener("3/8 lag screw 4 in")
    assert lag.thread_length / INCH == pytest.approx(2.5)
    assert (lag.thread_length - lag.tip_length) / INCH == pytest.approx(2 + 9 / 32, abs=0.0005)
    assert fasteners.find_fastener("3/8 x 12 in lag screw").thread_length / INCH == pytest.approx(
        6.0
    )
    assert fasteners.find_fastener("3/8 x 1 in lag screw").thread_length / INCH == pytest.approx(
        1.0
    )
    assert fasteners.find_fastener("#8 wood screw 3 in").thread_length / INCH == pytest.approx(2.0)
    assert fasteners.find_fastener("#8 wood screw").thread_length is None


def test_wood_screw_number_gives_the_nominal_diameter():
    """0.060 + 0.013 n in (trade rule, seen)."""
    numbered = [
        row
        for row in references.table("wood/wood_screws_geometry").rows
        if row["gauge"].startswith("#")
    ]
    assert len(numbered) > 5
    for row in numbered:
        nominal = 0.060 + 0.013 * int(row["gauge"].removeprefix("#"))
        assert float(row["nominal_dia_in"]) == pytest.approx(nominal, abs=0.0005)


def test_inches_and_millimetres_of_nails_agree():
    nails = references.table("wood/nails_geometry")
    assert 25.4 * nails.numbers("length_in") == pytest.approx(
        nails.numbers("length_mm"), abs=0.0501
    )
    assert 25.4 * nails.numbers("shank_dia_in") == pytest.approx(
        nails.numbers("shank_dia_mm"), abs=0.0101
    )


def test_head_is_the_least_published_one():
    assert fasteners.find_fastener("#8 wood screw").head_diameter / INCH == pytest.approx(0.292)
    assert fasteners.find_fastener("#8 pan head wood screw").head_diameter / INCH == pytest.approx(
        0.306
    )
    assert fasteners.find_fastener(
        "#8 washer head wood screw"
    ).head_diameter / INCH == pytest.approx(0.376)
    assert fasteners.find_fastener("16d common nail").head_diameter / INCH == pytest.approx(0.344)
    assert fasteners.find_fastener("3/8 carriage bolt").head_diameter / INCH == pytest.approx(0.782)
    assert any("head: flat" in note for note in fasteners.find_fastener("#8 wood screw").notes)


@pytest.mark.parametrize(
    "size", ["head_diameter", "root_diameter", "thread_length", "bending_yield"]
)
def test_deck_screw_is_not_guessed_until_its_maker_speaks(size):
    screw = fasteners.find_fastener("#10 x 3 in deck screw")
    with pytest.raises(ValueError, match=f"{size.replace('_', ' ')} is not standardised"):
        screw.need(size)
    assert replace(screw, **{size: 0.003}).need(size) == 0.003


def test_screws_yield_at_their_root_and_nails_at_their_shank():
    assert fasteners.find_fastener("#8 wood screw").yielding_diameter / INCH == pytest.approx(0.131)
    assert fasteners.find_fastener("8d common nail").yielding_diameter / INCH == pytest.approx(
        0.131
    )
    with pytest.raises(ValueError, match="root diameter"):
        _ = fasteners.find_fastener("#10 deck screw").yielding_diameter


@pytest.mark.parametrize(
    ("text", "law"),
    [
        ("8d common nail", "smooth nail"),
        ("stainless 8d common nail", "stainless nail"),
        ("8d ring-shank nail", "ring-shank nail"),
        ("#8 wood screw", "wood screw"),
        ("#8 deck screw", "wood screw"),
        ("3/8 lag screw", "lag screw"),
        ("1/2 bolt", None),
        ("16 ga staple", "smooth nail"),
    ],
)
def test_each_kind_has_its_withdrawal_equation(text, law):
    assert fasteners.find_fastener(text).withdrawal_kind == law


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("3 in deck screw", "#8 deck screw 3 in"),
        ("75 mm deck screw", "#8 deck screw 75 mm"),
        ("2 1/2 in wood screw", "#8 wood screw 2 1/2 in"),
    ],
)
def test_a_screw_without_its_number_is_told_how_to_name_it(text, hint):
    with pytest.raises(ValueError, match="only a length") as wrong:
        read_words(text)
    assert f"'{hint}'" in str(wrong.value)
    assert read_words(hint).designation == "#8"


@pytest.mark.parametrize(
    ("text", "crown"),
    [("16 ga staple 2 in", 0.4375), ("14 ga 1 in crown staple 2 in", 1.0)],
)
def test_a_crown_is_as_said_or_the_least(text, crown):
    """ASTM F1667 (memory): 7/16 in, of 14 gage up to 1 in."""
    assert fasteners.find_fastener(text).crown / INCH == pytest.approx(crown)


def test_a_crown_that_is_not_made_is_refused():
    with pytest.raises(ValueError, match=r"made 0.4375 to 1.0 in wide"):
        fasteners.find_fastener("14 ga 3/8 crown staple 2 in")
    with pytest.raises(KeyError, match="cannot be both"):
        fasteners.find_fastener("8d common nail 7/16 crown")


def test_all_sorts_of_a_pennyweight_are_offered_where_none_was_named():
    with pytest.raises(KeyError) as unknown:
        fasteners.find_fastener("8d nail")
    for sort in ("common", "box", "sinker", "finish"):
        assert f"'8d {sort} nail'" in str(unknown.value)
