"""Who made a piece and what was measured on it: read strictly, all faults at once."""

import pytest
from verdict_designs import block, design_text

import yardfast as yf
from yardfast.checks.inputs import read_text
from yardfast.design.file.record_table import Record

PIECE = design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), wind="46 mph")


def with_design(lines):
    return PIECE.replace("[site]", f"{lines}\n[site]", 1)


def faults(text):
    with pytest.raises(yf.DesignError) as raised:
        read_text(text)
    return {fault.key: fault for fault in raised.value.faults}


def test_maker_serial_date_and_revision_are_read():
    design = read_text(
        with_design("serial = 'H-7'\ndate = 2026-05-31\nrevision = 'B'\ncontact = 'a@b.org'")
    )
    assert (design.serial, design.date, design.revision, design.contact) == (
        "H-7",
        "2026-05-31",
        "B",
        "a@b.org",
    )


@pytest.mark.parametrize("date", ["'31.5.2026'", "'2026-13-01'", "'2026-02-30'", "20260531"])
def test_a_date_is_a_day_of_the_calendar(date):
    assert set(faults(with_design(f"date = {date}"))) == {"date"}


def test_records_in_si():
    text = """
[[record]]
kind = 'scale test'
value = '10 lbf'
height = '4 ft'
date = '2026-05-31'
by = 'J. Miller'
[[record]]
kind = 'weight'
value = '20 kg'
date = 2026-06-01
by = 'J. Miller'
"""
    pull, weight = read_text(PIECE + text).several(Record)
    assert (pull.value, pull.height) == pytest.approx((44.482, 1.2192), abs=5e-4)
    assert (weight.kind, weight.value, weight.date) == ("weight", 20.0, "2026-06-01")


def test_all_that_is_wrong_with_a_record_comes_at_once():
    found = faults(PIECE + "[[record]]\nkind = 'scale test'\nvalue = '10 lb'\nwho = 'me'\n")
    assert set(found) == {"value", "height", "date", "who"}
    assert "10 lbf" in found["value"].hint
    assert "'by'" in found["who"].hint


def test_a_height_belongs_to_a_scale_test_only():
    text = (
        "[[record]]\nkind = 'weight'\nvalue = '9 kg'\nheight = '1 m'\ndate = 2026-05-31\nby = 'J'"
    )
    assert set(faults(PIECE + text)) == {"height"}
