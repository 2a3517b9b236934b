"""Text for a listing: a short one and a long one, or why there is none.

What a buyer has to know stands in every text: at which gust to act, that it was calculated, and
what was not checked. Where room is short the rest gives way first, in a stated order.
"""

from collections.abc import Sequence

from ...checks.examination import Examination
from ...checks.limits import GREATEST_GUST
from ...checks.stated.listing import Listing, listing_of, tests_of
from ...checks.verdict import Reason, Verdict, Word
from ...design.faults import DesignError, Fault
from ...design.model import Design
from ...design.reader.scan import Spot, scan
from ...units.frozen import ByValue
from ..wording.amounts import Amounts
from .label_sentences import Piece, act_words, basis_words, long_text, short_text
from .seller_words import TESTED, WITHOUT, overstated, overstated_in_print
from .shop import Shop

SHORT, LONG = 160, 700
"""So many characters the texts have at most."""

_DRAFT = "DRAFT, NOT READY TO SELL."
LONGEST_NAME, SHORTEST_NAME = 60, 12


class Label(ByValue, frozen=True):
    """The texts of one design from its ``listing``.

    ``left_out`` names what of the seller's own words found no room.

    A ``draft`` begins with saying so, beyond the length that texts have.
    """

    listing: Listing
    shop: Shop
    short: str
    long: str
    left_out: tuple[str, ...] = ()
    draft: bool = False


class Refusal(ByValue, frozen=True):
    """Why a design has no text: what would be missing, and the reason."""

    design: Design
    missing: str
    reason: str


def label(examination: Examination, shop: Shop, *, draft: bool = False) -> Label | Refusal:
    """Return the texts for a listing, or why there are none; a ``draft`` says that it is one.

    Raises DesignError where the design's own words promise what no calculation bears out.
    """
    design = examination.design
    _check_words(design)
    if why := _without_act(examination.limits.act, examination.verdict, design):
        return Refusal(design, ACT_AT, why)
    listing = listing_of(examination)
    short, _ = _fitted(short_text(listing), design.name, SHORT)
    long, left_out = _fitted(long_text(listing, shop), design.name, LONG)
    for text, most in ((short, SHORT), (long, LONG)):
        missing = _missing(text, most, listing)
        if missing:
            reason = "the words around it leave no room for it, or promise too much together"
            return Refusal(design, missing, reason)
    if draft:
        short, long = f"{_DRAFT} {short}", f"{_DRAFT} {long}"
    return Label(listing, shop, short, long, left_out, draft)


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


def _fitted(pieces: Sequence[Piece], called: str, most: int) -> tuple[str, tuple[str, ...]]:
    """Return the pieces behind the name as one text, and what of the seller's had no room."""
    name, forms = " ".join(called.split()), [0] * len(pieces)

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
    return frozenset({TESTED} if tests_of(design) else ())


def _check_words(design: Design) -> None:
    """Raise DesignError where the piece's name or its maker promises too much."""
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


def _without_act(act: float | None, verdict: Verdict, design: Design) -> str:
    """Return why there is no gust to act at, empty where there is one."""
    if act is None:
        most = Amounts(design.units == "metric").gust(GREATEST_GUST)
        return f"no gust below {most} tips or slides it: there is none to print"
    if verdict.word is Word.FALLS_OVER:
        how = "slides away" if verdict.reason is Reason.DOWNHILL else "falls over"
        return f"it {how} with no wind at all: mend the design first"
    return ""


ACT_AT, BASIS, _NOT_CHECKED = "act-at", "basis", "not-checked"


def _missing(text: str, most: int, listing: Listing) -> str:
    """Return what a finished text lacks of what it must have; nothing where it may be printed."""
    if not any(act in text for act in act_words(listing)):
        return ACT_AT
    if basis_words(listing) not in text:
        return BASIS
    if "not checked" not in text:
        return _NOT_CHECKED
    word = overstated_in_print(text, _earned(listing.design))
    if word is not None:
        return f"a text without '{word.word}'"
    return "" if printed_length(text) <= most else f"a text of at most {most} characters"
