"""The kinds of piece that `yardfast new` knows: each a file of questions and a template."""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from ...units.frozen import ByValue
from .answered_stock import lumber
from .answers import Answers, Choice, with_answer
from .expressions import Worth, number
from .questions import Question
from .templates import aligned, filled_template

_FOLDER = Path(__file__).parent.parent / "pieces"
_SITE = "site"

PIECE_KINDS = (
    *("tower", "well", "post", "sign", "arbor", "wheel", "cut-out", "barn", "mailbox"),
    *("birdhouse", "footbridge", "swing", "obelisk", "planter", "a-frame", "crossed boards"),
)
"""The kinds, in the order in which they are offered."""


class PieceKind(ByValue, frozen=True):
    """A kind of piece: what it is called, what is asked, and the template of its file.

    ``lumber`` names sticks that nobody is asked for, ``sizes`` what follows from the answers.
    """

    kind: str
    says: str
    name: str
    also: tuple[str, ...]
    questions: tuple[Question, ...]
    lumber: Mapping[str, str]
    sizes: Mapping[str, str]
    template: str

    def text(self, answers: Answers) -> str:
        """Return the file for what was answered."""
        answers = with_answer(answers, {})
        for slot, stick in self.lumber.items():
            answers = with_answer(
                answers, lumber(slot, filled_template(stick, answers.texts, answers.values))
            )
        values: dict[str, Worth] = dict(answers.values)
        for name, total in self.sizes.items():
            values[name] = number(total, values)
        texts = {
            **answers.texts,
            "called": self.name,
            "crest": _crest(answers),
            "post_wood": _post_wood(answers),
        }
        whole = "\n".join((_loaded(_SITE)["template"], self.template))
        return aligned(filled_template(whole, texts, values))


@cache
def piece(kind: str) -> PieceKind:
    """Return a kind of piece, with what is asked of every piece's place. KeyError for none such."""
    if kind not in PIECE_KINDS:
        raise KeyError(kind)
    data = _loaded(kind.replace(" ", "-"))
    asked = [*data["ask"], *_loaded(_SITE)["ask"]]
    return PieceKind(
        kind=kind,
        says=data["says"],
        name=data["name"],
        also=tuple(data.get("also", ())),
        questions=tuple(_question(row) for row in asked),
        lumber=data.get("lumber", {}),
        sizes=data.get("sizes", {}),
        template=data["template"],
    )


@cache
def _loaded(name: str) -> Mapping[str, Any]:
    return tomllib.loads((_FOLDER / f"{name}.toml").read_text(encoding="utf-8"))


def _question(row: Mapping[str, Any]) -> Question:
    """Return a question as its row says, and as all of its kind have in common."""
    common = _loaded("common").get(row["takes"], {})
    whole = {**common, **row}
    choices = tuple(Choice(word, says) for word, says in whole.pop("choices", {}).items())
    return Question(**whole, choices=choices)


def _crest(answers: Answers) -> str:
    """Return the factor on the crest of the steepest hill that was answered."""
    landform = answers.texts.get("landform", "")
    if not landform:
        return ""
    from ...loads.asce7.hill import greatest_topographic_factor  # noqa: PLC0415 - only where asked

    return f"{greatest_topographic_factor(landform, 'C'):.2f}"


def _post_wood(answers: Answers) -> str:
    """Return what posts are of: the wood of the walls, or pine where these are of sheets."""
    of = answers.texts.get("material", "")
    return "southern pine" if of.endswith(("plywood", "OSB", "MDO")) or not of else of
