"""Sentences of a text for a listing, with slots; where room is short a later form stands."""

from collections.abc import Mapping
from enum import StrEnum

from ...checks.holder import Each, HeldBy
from ...checks.judged.judging import Kind
from ...checks.stated.listing import HoldsIt, Listed, ToDo, Worked

_Forms = Mapping[StrEnum, str | tuple[str, ...]]

EACH_HOLDS: _Forms = {
    Each.PROVED: "each proved in your soil by a pull of {pull} straight up",
    Each.UP: "each to hold {up} straight up",
    Each.SIDEWAYS: "each to hold {sideways} sideways",
    Each.BOTH: "each to hold {up} straight up and {sideways} sideways",
}

IN_BRIEF: _Forms = {
    **EACH_HOLDS,
    HeldBy.POSTS: "none: posts in the ground carry it",
    HeldBy.NOTHING_NEEDED: "needs none",
    HeldBy.NOTHING_HERE: "none here hold it",
    HeldBy.OWN: "{what}{each:+}",
    HeldBy.CHOSEN: "{what}, {where}{each:+}",
}
"""What holds a piece, in a cell of a table."""

_FOR = ", it was worked out for"

LISTED: _Forms = {
    **EACH_HOLDS,
    Listed.ACT: "{act} are forecast ({around})",
    Listed.ACT_WITHOUT: (
        "{act} are forecast ({around}; {without} without its {weight} ballast)",
        "{act} are forecast ({around}; {without} without ballast)",
    ),
    Listed.DO: "{Todo} when gusts over {act:0}.",
    Listed.DO_CALM: "Untied, this piece is for calm days: {todo:0} when gusts over {act:0}.",
    ToDo.CLEAR: "keep clear of it",
    ToDo.ALWAYS: "never leave it untied: hold it down",
    ToDo.STAKE: "stake it",
    ToDo.TIE: "tie it down",
    ToDo.LAY: ("tie it down or lay it down", "tie or lay it down"),
    ToDo.LAY_WEIGHED: ("tie it down or lay it down", "tie or lay it down", "tie it"),
    Listed.CALCULATED: "Calculated, not tested",
    Listed.TESTED: "Calculated; {test} on {day}",
    Listed.POSTS_STAND: tuple(f"With {{its}}{_FOR} {{wind:{n}}}." for n in (0, 1, 2)),
    Listed.POSTS_GIVE: tuple(
        f"{{Its}} {{posts:does|do}} not hold it in {{wind:{n}}}." for n in (0, 1, 2)
    ),
    Listed.NOTHING_HOLDS: tuple(
        f"No stakes and no weight in our lists hold it in {{wind:{n}}}." for n in (0, 1, 2)
    ),
    Listed.UNTIED: tuple(f"It was worked out untied, for {{wind:{n}}}." for n in (0, 1, 2)),
    Listed.HELD: tuple(
        f"{{way:{way}}}{_FOR} {{wind:{wind}}}."
        for way, wind in ((0, 0), (0, 1), (1, 1), (2, 1), (2, 2))
    ),
    Worked.FORECAST: (
        "a forecast gust of {gust} ({around}, {ground})",
        "a forecast gust of {gust} ({ground})",
        "a forecast gust of {gust}",
    ),
    Worked.AT_PIECE: "a gust of {gust} at the piece ({ground})",
    Worked.CODE: (
        "the {gust} map wind of {method} ({around}, {ground})",
        "the {gust} map wind of {method} ({ground})",
        "the {gust} map wind of {method}",
    ),
    Worked.CODE_MEAN: (
        "the {gust} mean wind of the map of {method} ({around}, {ground})",
        "the {gust} mean wind of the map of {method} ({ground})",
        "the {gust} mean wind of the map of {method}",
    ),
    HoldsIt.POST: "its post set {deep} deep",
    HoldsIt.POSTS: "its {posts} set {deep} deep",
    HoldsIt.GUYS: "With {guys} of {line}",
    HoldsIt.WEIGHT: "With {weight} fixed low on its foot",
    HoldsIt.WIDTH: "On a foot {width} across",
    HeldBy.OWN: ("With {what} as on its sheet{each:+}", "With its {all}{each:+}"),
    HeldBy.CHOSEN: ("With {what}, {where}{each:+}", "With {what}{each:+}", "With {all}{each:+}"),
    Listed.PUSH: ("A push of {force} tips it.", ""),
    Listed.PUSH_POSTS: ("A push of {force} is all that its posts may be asked.", ""),
    Listed.UNCHECKED: ("{First}: not checked, nor {others:or}.", "{First}: not checked."),
    Listed.JOINTS_CHECKED: (
        "Joints: calculated. {First}: not checked, nor {others:or}.",
        "Joints: calculated. {First}: not checked.",
    ),
    Listed.DECORATION: "Decoration, not for climbing or leaning.",
    Listed.FOR_LOADS: (
        "Not for climbing or leaning, nor for loads that its sheet does not name.",
        "Not for climbing or leaning.",
    ),
    Listed.DIG: "{Ask} days before {digging}.",
    Listed.DRILL: "Look for pipes before drilling the slab.",
    Listed.NO_DIG: "",
}

SHORT_OF: Mapping[Kind, str] = {
    Kind.BEARING: "Its foot sinks into that ground.",
    Kind.PUSH: "Untied, people can pull it over.",
    Kind.LOOSE: "Its loose parts do not stay on in that wind.",
    Kind.LOOSE_SLIDING: "Its loose parts do not stay on in that wind.",
    Kind.LOAD: "Untied, it does not stand the load named on its sheet.",
    Kind.JOINT: "Its joints are too weak for that.",
    Kind.SEAM: "Its seams are too weak for that.",
    Kind.SPACING: "Some of its fasteners stand where the wood may split.",
    Kind.MEMBER: "Some of its members are too weak for that.",
}
SHORT_OF_OTHERS = "It falls short: {kind}."
SHORT_OF_POSTS: Mapping[Kind, str] = {
    Kind.BEARING: "Its posts sink into that ground.",
    Kind.PUSH: "People can push its posts too far.",
    Kind.LOAD: "Its posts do not stand the load named on its sheet.",
}
ACTS_ELSEWHERE = "That is {acts}."
ROUGHER_PLACES = {"C": "on open ground", "D": "at the shore"}
LOCAL_RULES = "Local rules apply; have someone qualified look where people gather."
READ_SHEET = ("Read its stability sheet before you set it up.", "See its stability sheet.")
SHORT_TEXT = "{do} when gusts over {act}."
SHORT_BASIS = "{basis}; {first} not checked."
SHORT_USE = ("Not for climbing.", "")
SHORT_SHEET = ("See its sheet.", "See sheet.")
BY_MAKER, ASK = "Made by {text}", "Ask: {text}"
ITS_SIZE = "{tall} tall, {weight}."
