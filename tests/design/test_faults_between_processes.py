"""Errors go from one process to another whole, as when many files are checked at once."""

import pickle

import pytest
from sample_file import HARBOUR_LIGHT

from yardfast.checks.inputs import read_text
from yardfast.cli.starting.answers import AnswerError
from yardfast.design.faults import DesignError


def test_faults_of_a_design_arrive_whole():
    wrong = HARBOUR_LIGHT.replace("'20 in'", "20").replace("'48 in'", "'48 lb'")
    with pytest.raises(DesignError) as raised:
        read_text(wrong, "light.toml")
    there = pickle.loads(pickle.dumps(raised.value))
    assert type(there) is DesignError
    assert len(there.faults) == 2
    assert there.faults == raised.value.faults
    assert str(there) == str(raised.value)


def test_an_answer_that_cannot_be_taken_arrives_whole():
    error = AnswerError("blue", "a number", "such as 6")
    there = pickle.loads(pickle.dumps(error))
    assert type(there) is AnswerError
    assert str(there) == str(error) == "read 'blue', expected a number: such as 6"
