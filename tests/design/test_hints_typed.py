"""Every hint is right when it is typed as told; what is sure is enough for the file to read."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sample_file import HARBOUR_LIGHT, altered, faults
from slips import HEIGHT, SURE, UNSURE
from spoiling import SCRAPS

from yardfast import materials
from yardfast.checks.inputs import read_text
from yardfast.design.builds.stock import named_lumber
from yardfast.design.file.builder_words import MATERIAL_WORDS
from yardfast.design.reader.mending import rewritten, with_changes
from yardfast.design.reader.near_names import first, misspelt
from yardfast.design.reader.scan import seen
from yardfast.design.reader.sheet_names import sheet_thickness
from yardfast.materials.stock import sheet_thicknesses

INCH = 0.0254  # international inch, exact


@pytest.mark.parametrize(("old", "new"), SURE)
def test_what_is_sure_is_enough_for_the_file_to_read(old: str, new: str) -> None:
    text = altered(old, new)
    changes = [fault.change for fault in faults(text)]
    assert changes
    assert all(change is not None and change.sure for change in changes)
    read_text(with_changes(seen(text), [change for change in changes if change]))


@pytest.mark.parametrize(("old", "new"), SURE + UNSURE)
def test_each_hint_typed_alone_mends_what_it_stands_for(old: str, new: str) -> None:
    text = altered(old, new)
    found = faults(text)
    for fault in found:
        if fault.change is None:
            continue
        left = _faults(with_changes(seen(text), [fault.change]))
        assert len(left) < len(found)
        assert (fault.line, fault.key) not in {(each.line, each.key) for each in left}


def test_what_cannot_be_printed_is_in_no_hint() -> None:
    for fault in faults(
        altered("on       = 'foot'", "on = 'foot'\nat = ['0 inA\x80', '0 in', '1 in']")
    ):
        assert fault.hint.isprintable()
        assert fault.change is None or fault.change.new.isprintable()


@pytest.mark.parametrize(("old", "new"), UNSURE)
def test_what_may_mean_two_things_is_not_sure(old: str, new: str) -> None:
    changes = [fault.change for fault in faults(altered(old, new))]
    assert not any(change.sure for change in changes if change)


def test_all_slips_of_one_file_are_put_right_at_once() -> None:
    text, count = HARBOUR_LIGHT, 0
    for old, new in SURE:
        if text.count(old) == 1 or old in text.split("[[part]]")[1]:
            text = text.replace(old, new, 1)
            count += 1
    assert count > 8
    for _ in range(3):
        changes = [fault.change for fault in _faults(text)]
        text = with_changes(seen(text), [each for each in changes if each and each.sure])
    read_text(text)


def test_line_ends_marks_and_notes_are_kept() -> None:
    text = "\ufeff" + altered(HEIGHT, "48 in  # tall\u00a0enough").replace("\n", "\r\n")
    changes = [fault.change for fault in faults(text) if fault.change]
    assert rewritten(text, changes) == text.replace("= 48 in ", "= '48 in' ")


@pytest.mark.parametrize(
    ("word", "name"),
    [
        # American and trade names of the same stuff: common practice
        ("aluminum", "aluminium"),
        ("cdx", "softwood plywood"),
        ("CDX plywood", "softwood plywood"),
        ("exterior plywood", "softwood plywood"),
        ("Western Red Cedar", "western redcedar"),
        ("spruce pine fir", "spruce-pine-fir"),
        ("SPF", "spruce-pine-fir"),
        ("plexiglass", "acrylic"),
        ("alumnium", "aluminium"),
    ],
)
def test_a_word_of_one_meaning_is_understood_and_said(word: str, name: str) -> None:
    design = read_text(altered("'softwood plywood'", f"'{word}'"))
    assert design.parts[1].material == name or misspelt(word, [name]) is None
    if word.casefold() != name and word != "spruce pine fir":
        assert any(word in note and name in note for note in design.notes)


def test_60mph_and_marks_are_understood() -> None:
    text = altered("'58 mph'", "'60mph'")
    text = altered("'48 in'", '"4\'6\\""', text)
    text = altered("wall     = '3/4 in'", "stock    = '1/2\" cdx'", text)
    design = read_text(text)
    tower = design.parts[1].shape
    assert tower.height == pytest.approx(54 * INCH)  # type: ignore[union-attr]
    half = sheet_thicknesses()["1/2 plywood"]
    assert tower.wall == pytest.approx(half)  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("word", "offered"),
    [
        ("cedar", {"western redcedar", "northern white cedar"}),
        ("ceder", {"western redcedar", "northern white cedar"}),
        ("pine", {"southern pine", "spruce-pine-fir", "eastern white pine"}),
        ("pressure treated", {"southern pine, treated"}),
        ("pressure-treated pine", {"southern pine, treated"}),
        ("presure treated", {"southern pine, treated"}),
        ("plywood", {"softwood plywood", "marine plywood"}),
        ("oak", {"white oak", "red oak"}),
    ],
)
def test_a_word_of_several_meanings_is_answered_with_them(word: str, offered: set[str]) -> None:
    (fault,) = faults(
        altered("'1/2 in'\nmaterial = 'softwood plywood'", f"'1/2 in'\nmaterial = '{word}'")
    )
    assert set(re.findall(r"'([^']+)'", fault.hint)) == offered


WOODS = ["cedar", "ceder", "seder", "pine", "pin", "mahogany", "teak", "ipe"]
OTHERS = ["coper", "cooper", "bronze", "brass", "tin", "zinc", "steal", "stell", "iron"]


@pytest.mark.parametrize("word", WOODS + OTHERS)
def test_a_guess_never_crosses_between_wood_and_metal(word: str) -> None:
    kinds = {
        name: "wood" if materials.find_material(name).kind in ("wood", "panel") else "other"
        for name in materials.material_names()
    }
    (fault,) = faults(
        altered("'1/2 in'\nmaterial = 'softwood plywood'", f"'1/2 in'\nmaterial = '{word}'")
    )
    wanted = "wood" if word in WOODS else "other"
    assert {kinds[name] for name in re.findall(r"'([^']+)'", fault.hint)} <= {wanted}


def test_every_answer_to_a_material_names_materials() -> None:
    for word, answer in MATERIAL_WORDS.items():
        named = re.findall(r"'([^']+)'", answer)
        assert named, word
        assert set(named) <= set(materials.material_names()), word
        assert first(answer) in (None, named[0])


@pytest.mark.parametrize(
    ("text", "name", "inches"),
    [
        # names of sheets as yards sell them; CDX is sold in the thicknesses of sheathing: PS 1
        ('1/2" cdx', "1/2 plywood", None),
        ("1/2 CDX plywood", "1/2 plywood", None),
        ("3/4-inch plywood", "3/4 plywood", None),
        ('3/4" exterior plywood', "3/4 plywood", None),
        ("plywood 3/4", "3/4 plywood", None),
        ("¾ ply", "3/4 plywood", None),
        ('7/16" osb', "7/16 OSB", None),
        ("3/4 marine ply", "3/4 marine plywood", None),
        ("18mm plywood", "18 mm plywood", 18 / 25.4),
    ],
)
def test_a_sheet_as_people_name_it(text: str, name: str, inches: float | None) -> None:
    found = sheet_thickness(text)
    assert found is not None
    assert found[0] == name
    thick = inches * INCH if inches else sheet_thicknesses()[name]
    assert found[1] == pytest.approx(thick)


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("2x4 flat", ("2x4", "flat")),
        ("2 x 4 laid flat", ("2x4", "flat")),
        ("2 by 4, on edge", ("2x4", "on edge")),
        ("PT 4x4", ("4x4", "")),
        ("45x95 mm flat", ("45x95 mm", "flat")),
    ],
)
def test_lumber_as_people_name_it(text: str, read: tuple[str, str]) -> None:
    assert named_lumber(text) == read


def _faults(text: str):
    from yardfast.design.faults import DesignError

    try:
        read_text(text)
    except DesignError as error:
        return error.faults
    return ()


@pytest.mark.slow
@given(
    st.lists(st.tuples(st.integers(0, len(HARBOUR_LIGHT)), SCRAPS, st.integers(0, 12)), max_size=5)
)
@settings(max_examples=300, deadline=None)
def test_whatever_is_wrong_each_hint_mends_its_place_and_what_is_sure_ends(changes) -> None:
    text = HARBOUR_LIGHT
    for place, scrap, gone in changes:
        text = text[:place] + scrap + text[place + gone :]
    found = _faults(text)
    for fault in found[:6]:
        if fault.change is not None:
            plain = seen(text).replace("\u00a0", " ")
            assert plain[fault.change.start : fault.change.end] == fault.change.old
            left = _faults(with_changes(seen(text), [fault.change]))
            assert (fault.line, fault.key, fault.found) not in {
                (each.line, each.key, each.found) for each in left
            }
    for _ in range(6):
        sure = [fault.change for fault in _faults(text) if fault.change and fault.change.sure]
        text = with_changes(seen(text), sure)
    assert not sure
