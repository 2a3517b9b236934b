"""Many designs: what comes back of each, by any executor, and how small a result travels."""

import pickle
import subprocess
import sys
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import pytest
from garden import EXAMPLES, FOLDER, each_example
from sample_file import HARBOUR_LIGHT
from verdict_designs import STANDS

import yardfast as yf
from yardfast.report.data import catalogue
from yardfast.report.data.catalogue import AHEAD, finished


@pytest.fixture
def files(tmp_path):
    """Some designs, one that cannot be read and one that is not there."""
    for k in range(6):
        text = HARBOUR_LIGHT.replace("'48 in'", f"'{40 + 4 * k} in'")
        (tmp_path / f"{k}.toml").write_text(text, encoding="utf-8")
    (tmp_path / "wrong.toml").write_text("[design]\n", encoding="utf-8")
    return [*sorted(tmp_path.glob("*.toml")), tmp_path / "gone.toml"]


def told(found):
    return found.to_dict() if isinstance(found, yf.Result) else found.faults


@each_example
@pytest.mark.slow
def test_a_result_travels_in_50_kilobytes_and_says_the_same(file):
    result = yf.check(file)
    packed = pickle.dumps(result)
    assert len(packed) <= 50_000
    other = pickle.loads(packed)
    assert other.to_dict() == result.to_dict()
    assert other.to_text() == result.to_text()
    assert (other.name, other.file, other.passes) == (result.name, result.file, result.passes)
    assert (other.row, repr(other)) == (result.row, repr(result))


@pytest.mark.slow
def test_what_did_not_travel_is_worked_out_again_the_same():
    result = yf.check(EXAMPLES[0])
    other = pickle.loads(pickle.dumps(result))
    assert other.needs_anchors == result.needs_anchors
    assert other.limits == result.limits
    assert other.checks == result.checks
    assert other.verdict == result.verdict
    assert pickle.loads(pickle.dumps(other)).to_dict() == result.to_dict()


@pytest.mark.slow
def test_what_is_kept_cannot_be_changed_through_what_is_given(tmp_path):
    other = pickle.loads(pickle.dumps(yf.check(EXAMPLES[0])))
    other.to_dict()["checks"].clear()
    assert other.to_dict()["checks"]


@pytest.mark.slow
@pytest.mark.parametrize("executor", [None, "threads", "processes"])
def test_each_path_comes_back_once_whoever_works_it_out(files, executor):
    pool = {
        None: lambda: None,
        "threads": lambda: ThreadPoolExecutor(3),
        "processes": lambda: ProcessPoolExecutor(2, get_context("spawn")),
    }[executor]()
    found = dict(yf.check_many(files, pool))
    if pool is not None:
        pool.shutdown()
    assert sorted(found) == sorted(files)
    assert isinstance(found[files[-1]], yf.DesignError)
    assert isinstance(found[files[-2]], yf.DesignError)
    for path, one in found.items():
        assert told(one) == told(dict(yf.check_many([path]))[path])


def test_a_fault_of_ours_is_told_of_its_design_alone(files, monkeypatch):
    right = catalogue.check

    def wrong(path):
        if path == files[2]:
            raise ZeroDivisionError("by nothing")
        return right(path)

    monkeypatch.setattr(catalogue, "check", wrong)
    found = dict(yf.check_many(files[:4], ThreadPoolExecutor(2)))
    (fault,) = found[files[2]].faults
    assert "ZeroDivisionError: by nothing" in fault.found
    assert sum(isinstance(one, yf.Result) for one in found.values()) == 3


def test_no_more_is_handed_out_than_is_waited_for():
    handed = []

    class Counting(ThreadPoolExecutor):
        def submit(self, work, one):
            handed.append(one)
            return super().submit(work, one)

    with Counting(1) as pool:
        coming = finished(enumerate(map(str, range(1000))), lambda one: one[0], pool)
        next(coming)
        assert len(handed) <= AHEAD + 1
        assert sorted([0, *(found for _, found in coming)])[1:] == list(range(1000))[1:]
    assert len(handed) == 1000


def test_results_of_designs_not_from_a_file_travel_too():
    result = yf.check(yf.read(FOLDER / "light-tower.toml"))
    assert pickle.loads(pickle.dumps(result)).fingerprint == result.fingerprint


def test_a_piece_that_stands_says_so_from_afar(tmp_path):
    file = tmp_path / "block.toml"
    file.write_text(STANDS, encoding="utf-8")
    other = pickle.loads(pickle.dumps(yf.check(file)))
    assert other.passes
    assert other.row.word == "stands by itself"


@pytest.mark.slow
@pytest.mark.parametrize(
    ("count", "more"),
    [(60, ()), pytest.param(10_000, ("--blocks",), marks=pytest.mark.longest)],
)
def test_a_killed_worker_of_a_cluster_loses_nothing_and_repeats_nothing(count, more):
    """Dask's own retries, no engine of ours: light towers, and ten thousand mounting blocks."""
    pytest.importorskip("distributed")
    script = Path(yf.__file__).parent / "benchmarks" / "cluster.py"
    ran = subprocess.run(
        [sys.executable, str(script), str(count), "--workers", "2", *more],
        capture_output=True,
        text=True,
        check=False,
        timeout=3600,
    )
    assert ran.returncode == 0, ran.stdout + ran.stderr[-2000:]
    assert f"killed after {count // 5} designs" in ran.stdout
    assert f"{count} designs" in ran.stdout
    assert "0 lost, 0 came twice" in ran.stdout
    assert "0 differ" in ran.stdout
