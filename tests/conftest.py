"""Say in one line what to do where Yardfast is missing or another copy would be tested.

Small products of matrices stay in one thread, as in the command. Random designs are the same in
each run, so that a run that was green stays so; ``--hypothesis-profile=default`` draws new ones.
What many tests ask of the same design is examined once: nothing changes what was found.
"""

import os
from collections import OrderedDict
from pathlib import Path

for each in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(each, "1")  # before anything loads the library of matrices

import pytest  # noqa: E402
from hypothesis import settings  # noqa: E402

settings.register_profile("repeated", derandomize=True, deadline=None)
settings.load_profile("repeated")

ROOT = Path(__file__).resolve().parent.parent

KEPT = 300
"""So many examinations are kept, those asked for last."""


def once(examine):
    """Return an examination that gives of an equal design what it gave of it last."""
    known = OrderedDict()

    def examined(design):
        for key, (asked, found) in reversed(known.items()):
            if asked.text == design.text and asked == design:
                known.move_to_end(key)
                return found
        found = examine(design)
        known[object()] = design, found
        while len(known) > KEPT:
            known.popitem(last=False)
        return found

    return examined


def pytest_configure(config):
    try:
        import yardfast
    except ImportError:
        pytest.exit('Yardfast is not installed: run  pip install -e ".[test]"  first', 3)
    here = Path(yardfast.__file__).resolve().parent
    if here != ROOT:
        pytest.exit(f'this would test the copy in {here}: run  pip install -e ".[test]"  here', 3)
    from yardfast.checks import examination

    examination.examine = once(examination.examine)
