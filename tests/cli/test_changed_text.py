"""What `size` changes, written into the file and read again: the same to five micrometres."""

import numpy as np
import pytest
from garden import EXAMPLES

from yardfast.checks.anchoring.ground_parts import ground_parts
from yardfast.checks.inputs import read, read_text
from yardfast.checks.sizing.laid_weight import with_weight
from yardfast.checks.sizing.other_height import with_height
from yardfast.checks.sizing.wider_foot import with_width
from yardfast.cli.files.changed_text import changed_text
from yardfast.design.structure import build_structure
from yardfast.loads.given import GivenLoad
from yardfast.statics.tables.anchor_table import GuyRow
from yardfast.units.frozen import values_by_name

FILES = {file.stem: file for file in EXAMPLES}
CHANGES = {
    "lower": lambda design, ground, tall: with_height(design, ground, 0.8 * tall),
    "wider": lambda design, ground, _: with_width(design, ground, 1.5),
    "heavier": lambda design, ground, _: with_weight(design, ground, 42.5),
}


def numbers(one):
    """Return all that a part, its place or its shape holds, as one row of numbers by name."""
    found = {}
    for name, value in values_by_name(one).items():
        if isinstance(value, int | float):
            found[name] = float(value)
        elif isinstance(value, tuple):
            found[name] = np.ravel(
                [np.ravel(each) for each in value] if name == "points" else value
            )
        elif hasattr(value, "__struct_fields__") or hasattr(value, "moments"):
            found.update({f"{name}.{key}": its for key, its in numbers(value).items()})
    return {
        key: value
        for key, value in found.items()
        if np.asarray(value).dtype.kind in "if" and key not in ("line",)
    }


@pytest.mark.parametrize("way", CHANGES)
@pytest.mark.parametrize("name", FILES)
def test_a_change_that_is_written_reads_as_that_change(name, way):
    file = FILES[name]
    design = read(file)
    structure = build_structure(design)
    new = CHANGES[way](design, ground_parts(structure), structure.height)
    if new is None:
        pytest.skip("its shapes keep their height")
    again = read_text(changed_text(design, new, file.parent), str(file))
    assert [part.name for part in sorted(again.parts, key=lambda one: one.name)] == sorted(
        part.name for part in new.parts
    )
    by_name = {part.name: part for part in again.parts}
    for wanted in new.parts:
        read_again = numbers(by_name[wanted.name])
        for key, value in numbers(wanted).items():
            assert read_again[key] == pytest.approx(value, rel=1e-7, abs=5e-6), (wanted.name, key)
    for table in (GivenLoad, GuyRow):
        for a, b in zip(new.several(table), again.several(table), strict=True):
            for key, value in numbers(a).items():
                assert numbers(b)[key] == pytest.approx(value, rel=1e-7, abs=5e-6), key
