"""No public name of the package stands in two of its modules: what is read once is known after."""

import ast
import importlib.util
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


def counted():
    spec = importlib.util.spec_from_file_location("house", ROOT / "benchmarks" / "house.py")
    house = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(house)
    return house


def test_no_public_name_stands_in_two_modules():
    house = counted()
    trees = {path: ast.parse(path.read_text(encoding="utf-8")) for path in house.files()}
    _, *several = house.twice(trees)
    assert several == []


def test_a_name_that_stands_twice_is_seen():
    house = counted()
    trees = {
        ROOT / "units" / "one.py": ast.parse("def weight(): ..."),
        ROOT / "units" / "other.py": ast.parse("weight = 3\n_weight = 4"),
    }
    _, *several = house.twice(trees)
    assert several == ["weight: units/one.py, units/other.py"]
