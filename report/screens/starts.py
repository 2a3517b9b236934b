"""At which forecast gust a piece slides, starts to tip or its posts give way, with the range."""

from ...checks.judged.finding import Finding
from ...checks.stated.starts import Goes, Starts
from ..wording.amounts import Amounts
from ..wording.filled import Messages, message_of

_RANGE = "({low} to {high})"
_POSTS = "{posts:It reaches|They reach} what the ground may be asked in "

_STARTS: Messages = {
    Starts.FALLS: "Untied it falls over with no wind at all.",
    Starts.TIPS: f"{{untied}} {{who}} starts to tip in a forecast gust of about {{tips}} {_RANGE}.",
    Starts.NEVER_TIPS: "{untied} {who} starts to tip in no gust below {beyond}.",
    Starts.SLIDES_THEN_TIPS: (
        "{untied} {who} slides{off} at about {slides} and {again:1}starts to tip at about "
        f"{{bare_tips}} {_RANGE}, in gusts as forecast."
    ),
    Starts.SLIDES_ALONE: (
        "{untied} {who} slides{off} at about {slides} and {again:1}starts to tip in no gust below "
        "{beyond}, in gusts as forecast."
    ),
    Starts.POSTS_GIVE: f"{_POSTS}a forecast gust of about {{tips}} {_RANGE}.",
    Starts.POSTS_STAND: f"{_POSTS}no gust below {{beyond}}.",
    Goes.IT: ("it", "it "),
    Goes.LOOSE: ("the {loose}", "the {loose} "),
    Goes.NOT_AGAIN: "",
    Goes.UNTIED: "Untied",
    Goes.LEFT_UNTIED: "Left untied",
    Goes.OFF: " off",
    Goes.ALONG: "",
    Goes.UP_TO: "{gust}",
    Goes.BEYOND: "over {gust}",
}


def starts_said(found: Finding | None, amounts: Amounts) -> str:
    """Return at which forecast gust it slides and starts to tip, with the range."""
    return "" if found is None else message_of(found, amounts, _STARTS)
