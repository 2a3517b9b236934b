"""The page of the Python interface is the docstrings', and every example in one runs."""

import doctest
import importlib
from pathlib import Path

import interface_page
import pytest

import yardfast as yf

ROOT = Path(yf.__file__).resolve().parent
ROOMS = (
    "units",
    "references",
    "materials",
    "design",
    "loads",
    "statics",
    "checks",
    "report",
    "cli",
)
MODULES = sorted(
    ".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
    for room in ROOMS
    for file in (ROOT / room).rglob("*.py")
    if ">>> " in file.read_text(encoding="utf-8")
)


@pytest.mark.parametrize("module", MODULES)
def test_examples_in_docstrings_give_what_they_show(module, monkeypatch):
    monkeypatch.chdir(ROOT)
    found = importlib.import_module(f"yardfast.{module}")
    tests = doctest.DocTestFinder().find(found, extraglobs={"yf": yf})
    assert any(test.examples for test in tests)
    runner = doctest.DocTestRunner(optionflags=doctest.FAIL_FAST)
    told = []
    for test in tests:
        runner.run(test, out=told.append)
    assert runner.failures == 0, "".join(told)


def test_the_page_is_the_one_that_the_docstrings_make():
    """Where this fails, run  python tests/support/interface_page.py"""
    assert interface_page.PAGE.read_text(encoding="utf-8") == interface_page.page()


def test_every_public_name_stands_on_it_and_every_call_has_an_example():
    assert {*interface_page.CALLS, *interface_page.KINDS} == set(yf.__all__)
    for name in interface_page.CALLS:
        assert ">>> " in getattr(yf, name).__doc__, name
