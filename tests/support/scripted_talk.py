"""A talk by a script: what is typed line by line, and what was said and asked."""

from yardfast.checks.inputs import read_text
from yardfast.cli.commands.new import file_of, typed_answers

ENTER = ""


class ScriptedTalk:
    """Answers from a list; no more input when it is used up, or a line raises what it holds."""

    def __init__(self, *lines):
        self.lines = list(lines)
        self.said = []
        self.asked = []

    def say(self, text):
        self.said.append(text)

    def ask(self, prompt):
        self.asked.append(prompt)
        if not self.lines:
            raise EOFError
        line = self.lines.pop(0)
        if isinstance(line, BaseException):
            raise line
        return line

    @property
    def heard(self):
        return "\n".join([*self.said, *self.asked])


def answered(kind, *lines):
    """The design and its text for the lines typed; Enter for all that is left."""
    talk = ScriptedTalk(*lines, *[ENTER] * (40 - len(lines)))
    text = asked_file(kind, talk)
    return read_text(text), text, talk


def asked_file(kind, talk):
    """The file for what is answered."""
    return file_of(kind, typed_answers(kind, talk))


def part(design, name):
    return next(each for each in design.parts if each.name == name)
