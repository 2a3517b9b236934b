"""Say in one line what to do where Yardfast is missing or another copy would be tested.

Small products of matrices stay in one thread, as in the command. Random designs are the same in
each run, so that a run that was green stays so; ``--hypothesis-profile=default`` draws new ones.
"""

import os
from pathlib import Path

for each in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(each, "1")  # before anything loads the library of matrices

import pytest  # noqa: E402
from hypothesis import settings  # noqa: E402

settings.register_profile("repeated", derandomize=True, deadline=None)
settings.load_profile("repeated")

ROOT = Path(__file__).resolve().parent.parent


def pytest_configure(config):
    try:
        import yardfast
    except ImportError:
        pytest.exit('Yardfast is not installed: run  pip install -e ".[test]"  first', 3)
    here = Path(yardfast.__file__).resolve().parent
    if here != ROOT:
        pytest.exit(f'this would test the copy in {here}: run  pip install -e ".[test]"  here', 3)
