"""The sentences of a text for a listing, each in several forms, the fullest first."""

from collections.abc import Iterable, Mapping

from ...checks.judged.finding import Ask
from ...checks.judged.judging import Kind
from ...checks.stated.listing import Listing
from ...units.frozen import ByValue, replace
from ..messages import listing_messages as messages
from ..messages.listing_messages import LISTED
from ..wording.amounts import Amounts
from ..wording.filled import filled_message, forms_of, message_of
from ..wording.remark import joined
from .shop import Shop

Forms = tuple[str, ...]
"""One sentence, the fullest form first; an empty last form may be left out."""


class Piece(ByValue, frozen=True):
    """A piece of a text, fullest form first; the lowest ``yields`` gives way first.

    ``what`` names it where it is in the seller's own words.
    """

    forms: Forms
    yields: int = 99
    what: str = ""


def long_text(listing: Listing, shop: Shop) -> list[Piece]:
    """Return the pieces of the long text in their order."""
    amounts = Amounts(listing.design.units == "metric")
    tall, weight = amounts.length(listing.height), amounts.mass(listing.mass)
    said = {
        name: forms_of(getattr(listing, name), amounts, LISTED)
        for name in ("advice", "push", "hold", "unchecked", "use")
    }
    return [
        Piece((messages.ITS_SIZE.format(tall=tall, weight=weight), ""), 2),
        Piece(said["advice"]),
        Piece((elsewhere(listing.acts, listing.site.exposure, listing.limits.act, amounts), ""), 6),
        Piece(said["push"], 1),
        Piece((f"{basis_words(listing)}.",)),
        Piece(said["hold"], 4),
        Piece((fails_besides(listing.short_of, planted=listing.planted),)),
        Piece(said["unchecked"], 5),
        Piece(said["use"], 7),
        Piece((_dig(listing, shop, amounts),)),
        Piece((messages.LOCAL_RULES,)),
        Piece(messages.READ_SHEET, 3),
        *_of_the_seller(listing, shop),
    ]


def short_text(listing: Listing) -> list[Piece]:
    """Return the pieces of the short text in their order."""
    amounts = Amounts(listing.design.units == "metric")
    does, acts = forms_of(listing.todo, amounts, LISTED), act_words(listing)
    forms = [(do, acts[0]) for do in does] + [(does[-1], act) for act in acts[1:]]
    said = tuple(messages.SHORT_TEXT.format(do=do, act=act) for do, act in forms)
    first = filled_message("{first}", listing.unchecked.slots, amounts, LISTED)
    basis = messages.SHORT_BASIS.format(basis=basis_words(listing), first=first)
    return [
        Piece(said, 1),
        Piece((basis,)),
        Piece(messages.SHORT_USE, 3),
        Piece(messages.SHORT_SHEET, 2),
    ]


def act_words(listing: Listing) -> Forms:
    """Return the gust to act at with its surroundings, as every text has it in one of these forms.

    Where it is owed to added weight, the gust without that weight stands beside it.
    """
    return forms_of(listing.act, Amounts(listing.design.units == "metric"), LISTED)


def basis_words(listing: Listing) -> str:
    """Return what the numbers rest on: calculation alone, or with the last dated test."""
    return message_of(listing.basis, Amounts(listing.design.units == "metric"), LISTED)


def elsewhere(
    acts: Mapping[str, float | None], exposure: str | None, own: float | None, amounts: Amounts
) -> str:
    """Return the gusts to act at, m/s, in rougher surroundings; empty where they are no lower."""
    found: dict[str, list[str]] = {}
    for letter, act in acts.items():
        if letter > (exposure or "C") and act is not None and own is not None:
            gust = amounts.act(act)
            if gust != amounts.act(own):
                found.setdefault(gust, []).append(messages.ROUGHER_PLACES[letter])
    said = ", ".join(f"{gust} {joined(places, 'or')}" for gust, places in found.items())
    return messages.ACTS_ELSEWHERE.format(acts=said) if said else ""


def fails_besides(kinds: Iterable[Kind], *, planted: bool) -> str:
    """Return what fails besides the holding; empty where nothing does."""
    words = {**messages.SHORT_OF, **(messages.SHORT_OF_POSTS if planted else {})}
    said = (words.get(kind, messages.SHORT_OF_OTHERS.format(kind=kind)) for kind in kinds)
    return " ".join(dict.fromkeys(said))


def _dig(listing: Listing, shop: Shop, amounts: Amounts) -> str:
    """Return whom to ask before digging, driving or drilling; of a shop's country where none is."""
    slots = {**listing.digging.slots, "ask": Ask(listing.site.country or shop.country)}
    return message_of(replace(listing.digging, slots=slots), amounts, LISTED)


def _of_the_seller(listing: Listing, shop: Shop) -> list[Piece]:
    """Return what the seller says, which has no room before what a buyer has to know."""
    own = {
        "maker": (listing.design.maker or shop.maker, messages.BY_MAKER, 9),
        "contact": (listing.design.contact or shop.contact, messages.ASK, 8),
        "wording": (shop.wording, "{text}", 10),
    }
    return [
        Piece((_sentence(message.format(text=text)), ""), yields, what)
        for what, (text, message, yields) in own.items()
        if text
    ]


def _sentence(text: str) -> str:
    """Return a seller's own words as a sentence."""
    words = " ".join(text.split())
    return words if not words or words.endswith((".", "!", "?", "…")) else f"{words}."
