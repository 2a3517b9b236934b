"""Text for a listing: a short one and a long one, or why there is none.

What a buyer has to know stands in every text: at which gust to act, that it was calculated, and
what was not checked. Where room is short the rest gives way first, in a stated order.
"""

from collections.abc import Sequence

from ...checks.examination import Examination
from ...checks.verdict import Reason, Word
from ...design.faults import DesignError, Fault
from ...design.model import Design
from ...design.reader.scan import Spot, scan
from ...units.frozen import ByValue
from ..wording.amounts import Amounts
from . import label_sentences as say
from .label_sentences import Forms
from .seller_words import TESTED, WITHOUT, overstated, overstated_in_print
from .shop import Shop

SHORT, LONG = 160, 700
"""So many characters the texts have at most."""

_DRAFT = "DRAFT, NOT READY TO SELL."
LONGEST_NAME, SHORTEST_NAME = 60, 12


class Label(ByValue, frozen=True):
    """The texts of one design; ``left_out`` names what of the seller's words found no room.

    A ``draft`` begins with saying so, beyond the length that texts have.
    """

    examination: Examination
    shop: Shop
    short: str
    long: str
    left_out: tuple[str, ...] = ()
    draft: bool = False


class Refusal(ByValue, frozen=True):
    """Why a design has no text: what would be missing, and the reason."""

    examination: Examination
    missing: str
    reason: str


def label(examination: Examination, shop: Shop, *, draft: bool = False) -> Label | Refusal:
    """Return the texts for a listing, or why there are none; a ``draft`` says that it is one.

    Raises DesignError where the design's own words promise what no calculation bears out.
    """
    _check_words(examination)
    refused = _without_act(examination)
    if refused is not None:
        return refused
    short, _ = _fitted(_short(examination), examination, SHORT)
    long, left_out = _fitted(_long(examination, shop), examination, LONG)
    for text, most in ((short, SHORT), (long, LONG)):
        missing = _missing(text, most, examination)
        if missing:
            reason = "the words around it leave no room for it, or promise too much together"
            return Refusal(examination, missing, reason)
    if draft:
        short, long = f"{_DRAFT} {short}", f"{_DRAFT} {long}"
    return Label(examination, shop, short, long, left_out, draft)


def printed_length(text: str) -> int:
    """Return how long a text is as web forms count it: a rare character counts as two."""
    return len(text.encode("utf-16-le", "surrogatepass")) // 2


def shortened(name: str, most: int) -> str:
    """Return a name of at most ``most`` characters as printed: cut at a blank, dots behind it."""
    if printed_length(name) <= most:
        return name
    words = name[:most]
    while printed_length(words) > most - len(_CUT):
        words = words[:-1]
    whole, blank, _ = words.rpartition(" ")
    if blank and len(whole) >= len(words) // 2 and name[len(words)] != " ":
        words = whole
    words = _trimmed(words)
    while words and overstated(words):
        words = words[:-1]
    return f"{words}{_CUT}"


def _trimmed(words: str) -> str:
    """Return words without a mark or a small word such as "of" at their end."""
    while True:
        shorter = words.rstrip(_MARKS)
        first, _, last = shorter.rpartition(" ")
        if not (first and len(last) < 4 and last.isalpha() and last.islower()):
            return shorter
        words = first


_CUT = "..."
_MARKS = " ,;:.-–—(&+/"


class _Piece(ByValue, frozen=True):
    """A piece of a text, fullest form first; the lowest ``yields`` gives way first."""

    forms: Forms
    yields: int = 99
    what: str = ""


def _long(examination: Examination, shop: Shop) -> list[_Piece]:
    amounts = Amounts(examination.design.units == "metric")
    structure = examination.structure
    size = f"{amounts.length(structure.height)} tall, {amounts.mass(structure.mass('typical'))}."
    country = examination.site.country or shop.country
    maker = examination.design.maker or shop.maker
    contact = examination.design.contact or shop.contact
    ask = _sentence(f"Ask: {contact}") if contact else ""
    made = _sentence(f"Made by {maker}") if maker else ""
    return [
        _Piece((size, ""), 2),
        _Piece(say.act_at(examination)),
        _Piece(say.elsewhere(examination), 6),
        _Piece(say.push(examination), 1),
        _Piece((f"{say.basis_words(examination)}.",)),
        _Piece(say.hold(examination), 4),
        _Piece(say.shortfalls(examination)),
        _Piece(say.unchecked(examination), 5),
        _Piece(say.use(examination), 7),
        _Piece(say.dig(examination, country)),
        _Piece(say.rules()),
        _Piece(say.sheet_to_read(), 3),
        _Piece((made, ""), 9, "maker" if made else ""),
        _Piece((ask, ""), 8, "contact" if ask else ""),
        _Piece((_sentence(shop.wording or ""), ""), 10, "wording" if shop.wording else ""),
    ]


def _short(examination: Examination) -> list[_Piece]:
    acts, first = say.act_words(examination), say.first_unchecked(examination).lower()
    does = say.what_to_do(examination)
    forms = [(do, acts[0]) for do in does] + [(does[-1], act) for act in acts[1:]]
    return [
        _Piece(tuple(f"{do} when gusts over {act}." for do, act in forms), 1),
        _Piece((f"{say.basis_words(examination)}; {first} not checked.",)),
        _Piece(("Not for climbing.", ""), 3),
        _Piece(("See its sheet.", "See sheet."), 2),
    ]


def _sentence(text: str) -> str:
    """Return a seller's own words as a sentence."""
    words = " ".join(text.split())
    return words if not words or words.endswith((".", "!", "?", "…")) else f"{words}."


def _fitted(
    pieces: Sequence[_Piece], examination: Examination, most: int
) -> tuple[str, tuple[str, ...]]:
    """Return the pieces behind the name as one text, and what of the seller's had no room."""
    name, forms = " ".join(examination.design.name.split()), [0] * len(pieces)

    def text(called: str) -> str:
        said = (piece.forms[form] for piece, form in zip(pieces, forms, strict=True))
        words = " ".join(filter(None, said))
        return f"{called}{_behind(called, words)} {words}"

    order = sorted(range(len(pieces)), key=lambda i: pieces[i].yields)
    called = shortened(name, LONGEST_NAME)
    for i in order:
        while printed_length(text(called)) > most and forms[i] < len(pieces[i].forms) - 1:
            forms[i] += 1
    left_out = tuple(
        piece.what
        for piece, form in zip(pieces, forms, strict=True)
        if piece.what and not piece.forms[form]
    )
    over = printed_length(text(called)) - most
    if over > 0:
        called = shortened(name, max(printed_length(called) - over, SHORTEST_NAME))
    return text(called), left_out


def _behind(name: str, words: str) -> str:
    """Return the mark between a name and what is said of it."""
    if name.endswith((".", "!", "?")) and not name.endswith(_CUT):
        return ""
    return "." if words[:1].isupper() and not name.endswith(_CUT) else ":"


def _earned(design: Design) -> frozenset[str]:
    """Return the seller's words that a design has earned: "tested" by a dated test."""
    return frozenset({TESTED} if say.tests(design) else ())


def _check_words(examination: Examination) -> None:
    """Raise DesignError where the piece's name or its maker promises too much."""
    design = examination.design
    faults: list[Fault] = []
    written = {"name": design.name, "maker": design.maker, "contact": design.contact}
    for key, text in written.items():
        if not text:
            continue
        word = overstated(text, _earned(design))
        if word is not None:
            line = scan(design.text, {"design": False, "part": True}).line(Spot("design", 0, key))
            expected = f"a {key} without '{word.word}' in a listing: {word.reason}"
            faults.append(Fault(design.file, line, "design", key, text, expected, WITHOUT))
    if faults:
        raise DesignError(tuple(faults))


def _without_act(examination: Examination) -> Refusal | None:
    """Return why there is no gust to act at, None where there is one."""
    amounts = Amounts(examination.design.units == "metric")
    if examination.limits.act is None:
        reason = f"no gust below {amounts.gust(150.0)} tips or slides it: there is none to print"
        return Refusal(examination, ACT_AT, reason)
    verdict = examination.verdict
    if verdict.word is Word.FALLS_OVER:
        how = "slides away" if verdict.reason is Reason.DOWNHILL else "falls over"
        return Refusal(examination, ACT_AT, f"it {how} with no wind at all: mend the design first")
    return None


ACT_AT, BASIS, _NOT_CHECKED = "act-at", "basis", "not-checked"


def _missing(text: str, most: int, examination: Examination) -> str:
    """Return what a finished text lacks of what it must have; nothing where it may be printed."""
    if not any(act in text for act in say.act_words(examination)):
        return ACT_AT
    if say.basis_words(examination) not in text:
        return BASIS
    if "not checked" not in text:
        return _NOT_CHECKED
    word = overstated_in_print(text, _earned(examination.design))
    if word is not None:
        return f"a text without '{word.word}'"
    return "" if printed_length(text) <= most else f"a text of at most {most} characters"
