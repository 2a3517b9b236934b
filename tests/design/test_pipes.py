"""A pipe that nobody writes to, in a folder that somebody sent, keeps nobody waiting."""

import os

import pytest
from sample_file import part_text

from yardfast.checks.inputs import read, read_text
from yardfast.design.faults import DesignError

CUTOUT = "shape='cutout'\noutline='{}'\nheight='1 ft'\nthickness='1/2 in'"


def test_a_pipe_is_no_design_file(tmp_path):
    pipe = tmp_path / "piece.toml"
    os.mkfifo(pipe)
    with pytest.raises(DesignError) as refused:
        read(pipe)
    (fault,) = refused.value.faults
    assert fault.found == "a pipe, which may never end"


def test_a_pipe_is_no_record_of_gusts(tmp_path):
    os.mkfifo(tmp_path / "gusts.csv")
    text = part_text("shape='box'\nlumber='4x4'\nheight='30 in'")
    text = text.replace("[site]\n", "[site]\ngust_record = 'gusts.csv'\n", 1)
    with pytest.raises(DesignError) as refused:
        read_text(text, str(tmp_path / "piece.toml"))
    (fault,) = refused.value.faults
    assert fault.key == "gust_record"
    assert "a pipe" in fault.expected


def test_a_pipe_that_a_shell_puts_in_place_of_a_file_is_read(tmp_path):
    """As in ``check <(…)``: something writes to it as it is opened."""
    ends = os.pipe()
    text = part_text("shape='box'\nlumber='4x4'\nheight='30 in'")
    os.write(ends[1], text.encode())
    os.close(ends[1])
    try:
        assert read(f"/dev/fd/{ends[0]}").name == read_text(text).name
    finally:
        os.close(ends[0])


def test_a_pipe_is_not_offered_as_the_drawing_that_was_meant(tmp_path):
    os.mkfifo(tmp_path / "heron.svg")
    (tmp_path / "herons.svg").write_text("<svg/>", encoding="utf-8")
    file = tmp_path / "piece.toml"
    with pytest.raises(DesignError) as refused:
        read_text(part_text(CUTOUT.format("heron.svg")), str(file))
    (fault,) = refused.value.faults
    assert "herons.svg" in fault.hint


def test_a_name_too_long_for_any_file_is_told():
    with pytest.raises(DesignError) as refused:
        read("a" * 5000 + ".toml")
    (fault,) = refused.value.faults
    assert fault.found == "File name too long"
