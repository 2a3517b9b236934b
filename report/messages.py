"""The catalogue of messages: what is said of each finding, with slots. Words change here alone."""

from ..checks.judging import Kind
from ..checks.verdict import Reason, Word

WHY = {
    (Word.FALLS_OVER, Reason.BALANCE): (
        " with no wind at all: its balance point lies beyond its foot"
    ),
    (Word.FALLS_OVER, Reason.GROUND_GIVES): (
        " with no wind at all: {ground} gives way beneath its foot"
    ),
    (Word.FALLS_OVER, Reason.DOWNHILL): ": it slides downhill with no wind at all",
    (Word.COMES_APART, Reason.PART_FAILS): "{alone}: {fails}",
    (Word.NOTHING_HOLDS, Reason.MOVES): " in the {asked}: no stake, guy, weight or foot would do",
    (Word.NOTHING_HOLDS, Reason.HELD_TOO_LITTLE): (
        " in the {asked}: not its {own}, nor any other way tried here"
    ),
    (Word.TIE_IT_DOWN, Reason.MOVES): " to stand the {asked}",
    (Word.TIE_IT_DOWN, Reason.HELD_TOO_LITTLE): (" better: its own {own} do not stand the {asked}"),
    (Word.WEIGH_IT_DOWN, Reason.MOVES): " to stand the {asked}: nothing driven there would hold it",
    (Word.WEIGH_IT_DOWN, Reason.HELD_TOO_LITTLE): (": its {own} do not stand the {asked}"),
    (Word.SET_IT_DEEPER, Reason.POSTS_GIVE): ": its {posts} way in the {asked}",
    (Word.SINKS_IN, Reason.PRESSES): ": it presses harder on {ground} than that bears",
    (Word.KEEP_PEOPLE_OFF, Reason.PEOPLE): ": it stands the {asked}, but {people} can tip it",
    (Word.HELD_DOWN, Reason.NOTHING_FAILS): " by its {own}, to stand the {asked}",
    (Word.STANDS, Reason.NOTHING_FAILS): " in the {asked}",
    (Word.STANDS_BY_POSTS, Reason.NOTHING_FAILS): " in the {asked}",
}
"""What follows a word: why, beginning with what stands between the two in a sentence."""

IF_FASTENED = "if {what} is fastened"

ALONE = ", {anchors} alone will not save it"
TOO_WEAK = "{what} too weak for {under}"
WEAK_PARTS = {Kind.JOINT: "joint", Kind.MEMBER: "part", Kind.SEAM: "body with seams"}
WEAK_MANY = {Kind.JOINT: "joints", Kind.MEMBER: "parts", Kind.SEAM: "bodies with seams"}
FAILS = {
    Kind.SPACING: "fasteners of {names} are too close to an end, an edge or each other",
    Kind.RACKING: "it racks",
    Kind.LOOSE: "its loose {names} will not stay on",
    Kind.LOAD: "{untied}it does not stand {names}",
}
"""What fails where a piece comes apart, by the kind of check."""
