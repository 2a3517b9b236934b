"""Six files as people write them who have never seen one: what they are told, typed, is right."""

import pytest
from slips import FILES

from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError
from yardfast.design.reader.mending import with_changes
from yardfast.design.reader.scan import seen
from yardfast.report.wording.faults import fault_lines


def faults(text):
    try:
        read_text(text, "piece.toml")
    except DesignError as error:
        return error.faults
    return ()


@pytest.fixture(params=FILES, ids=lambda file: file.stem)
def text(request):
    return request.param.read_text(encoding="utf-8")


def test_every_hint_typed_alone_mends_its_place(text):
    found = faults(text)
    assert len(found) > 5
    for fault in found:
        if fault.change is None:
            continue
        left = faults(with_changes(seen(text), [fault.change]))
        assert not any(
            each.line == fault.line and each.key == fault.key and each.part == fault.part
            for each in left
        ), (fault, left)


def test_what_is_sure_ends_and_leaves_only_what_has_to_be_chosen(text):
    before = len(faults(text))
    for _ in range(5):
        sure = [fault.change for fault in faults(text) if fault.change and fault.change.sure]
        text = with_changes(seen(text), sure)
    left = faults(text)
    assert not any(fault.change and fault.change.sure for fault in left)
    assert len(left) < before


def test_what_is_shown_fits_a_window(text):
    lines = fault_lines(faults(text))
    assert max(map(len, lines)) <= 79
    assert len(lines) <= 24
    assert len(fault_lines(faults(text), every=True)) > len(lines)


def test_a_file_all_in_capitals_is_read_as_meant():
    """Every heading and key of it is a word of ours in capitals: all are sure."""
    file = next(each for each in FILES if each.stem == "capitals")
    text = file.read_text(encoding="utf-8")
    found = faults(text)
    assert len(found) == 25
    assert all(fault.change and fault.change.sure for fault in found)
    text = with_changes(seen(text), [fault.change for fault in found if fault.change])
    assert {fault.found for fault in faults(text)} == {"2x6", "Treated Pine"}
    for old, new in (("'2x6'", "'2x6 flat'"), ("'Treated Pine'", "'southern pine, treated'")):
        text = text.replace(old, new)
    design = read_text(text)
    # Half-inch sheathing is 15/32 performance category, 0.451 in in the table of sheets (PS 1).
    assert design.parts[1].shape.wall == pytest.approx(0.451 * 0.0254)
    assert design.parts[1].material == "softwood plywood"
