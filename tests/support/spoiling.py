"""Scraps to spoil a design file with, and what must come of it."""

from hypothesis import strategies as st

from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError, Fault
from yardfast.design.model import Design

SCRAPS = st.one_of(
    st.sampled_from(
        [
            *("'", '"', "'''", '"""', "“", "”", "‘", "[", "]", "[[", "]]", "{", "}", "=", "#", ","),
            *("\n", "\r", "\t", "\\", "\0", "\ufeff", "\u00a0", "\ud800", "\u2028", ".", ":", "-"),
            *("nan", "inf", "1e999", "9" * 5000, "0x", "true", "'0 in'", "'1e400 in'", "½", "''"),
            *("[site]", "[[part]]", "[part]", "[site.gusts]", "name = 'tower'", "on = 'roof'"),
            *("shape = 'box'", "shape = 'rotor'", "sides = 0", "at = [", "1979-05-27", "'1/0 in'"),
        ]
    ),
    st.text(max_size=8),
)


def reads_or_says_what_is_wrong(text: str) -> None:
    """Assert that a text gives a design, or faults that can be shown."""
    found, faults = outcome(text)
    assert isinstance(found, Design) != bool(faults)
    lines = [fault.line or 0 for fault in faults]
    assert lines == sorted(lines)
    assert all(fault.found and fault.expected and len(fault.found) <= 60 for fault in faults)
    for fault in faults:
        assert f"{fault.found}{fault.expected}{fault.hint}{fault.part}{fault.key}".isprintable()


def outcome(text: str) -> tuple[Design | None, tuple[Fault, ...]]:
    """Return the design in a text, or everything that is wrong with it."""
    try:
        return read_text(text, "piece.toml"), ()
    except DesignError as error:
        return None, error.faults
