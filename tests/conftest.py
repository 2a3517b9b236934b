"""Say in one line what to do where Yardfast is missing or another copy would be tested."""

from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent


def pytest_configure(config):
    try:
        import yardfast
    except ImportError:
        pytest.exit('Yardfast is not installed: run  pip install -e ".[test]"  first', 3)
    here = Path(yardfast.__file__).resolve().parent
    if here != ROOT:
        pytest.exit(f'this would test the copy in {here}: run  pip install -e ".[test]"  here', 3)
