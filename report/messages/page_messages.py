"""Messages of a buyer's page: what stands in its boxes, with slots. Loud words are set large."""

from typing import Literal

Runs = tuple[tuple[str, bool], ...]
"""Words in a row, each with whether it is loud: a verb is as large as the gust before it."""

Advice = tuple[Literal["laid", "posts", "mend", "tie", "weigh"], bool]
"""What is to be done with it, and whether it is too heavy to be laid down."""

ONLY_WITH = "Only with {added}. Without it: {gusts}."
WHEN = "When gusts are forecast over"
ALWAYS = "Always, whatever the forecast"
OVER_ALL = "over {most}"
ANY = "any wind"
ANY_BARE, NONE = "any", "none"
EXPOSURE_WORDS = {"C": "open ground", "B": "houses and trees all round", "D": "shore"}

DO: dict[Advice, Runs] = {
    ("laid", False): (("LAY IT DOWN", True), ("or take it in", False)),
    ("posts", False): (("KEEP CLEAR OF IT", True),),
    ("mend", False): (("LAY IT DOWN", True), ("or take it in, until it is mended", False)),
    ("mend", True): (("KEEP CLEAR OF IT", True), ("until it is mended", False)),
    ("tie", False): (("TIE IT DOWN", True), ("{as_drawn}or", False), ("LAY IT DOWN", True)),
    ("tie", True): (("TIE IT DOWN", True), ("{as_drawn}and keep clear of it", False)),
    ("weigh", False): (
        ("WEIGH IT DOWN", True),
        ("as told below, or", False),
        ("LAY IT DOWN", True),
    ),
    ("weigh", True): (("WEIGH IT DOWN", True), ("as told below, and keep clear of it", False)),
}
AS_DRAWN = "as drawn, "

TIED_FOR = "Tied as drawn it was worked out for {wind}, {spare}."
WEIGHED = "With the weight it was worked out for {wind}, {spare}."
WIDENED = "On the wider foot it was worked out for {wind}, {spare}."
UNTIED_FOR = "It was worked out to stand untied in {wind}, {spare}."
PLANTED = "It stands by {posts}: worked out for {wind}, {spare}."
LAID = "Nothing is offered to hold it: it is meant to lie before the wind comes."
MOVES = "Untied, in {unit} as forecast: {limits}."
MOVES_POSTS = "In {unit} as forecast: {limits}."
SEAMS = "Seams of {names} checked."
OVER_THAT = "Over that: lay it down as well."
OVER_THAT_CLEAR = "Over that: nobody near it."
PEOPLE = "Held so for the wind, NOT for people pushing."
HANDS_OFF = "Do not go out to hold it. Under a hurricane or tornado warning {do}."
LAID_IN_TIME = "lay it down or take it in, in time"
KEEP_AWAY = "keep away from it"

HEADS = {
    "laid": "Lay it down",
    "posts": "Set it in the ground",
    "tie": "Tie it down",
    "weigh": "Weigh it down",
    "stand": "Set it up",
    "mend": "Not before it is mended",
}
BASIS_HEAD = "What this was worked out for"
SEASON_HEAD = "Each season"
NOT_FOR_HEAD = "Not for"
NOT_LOOKED_HEAD = "Not looked at"
NEED = "You need: {what}."
TOOLS = {
    "stake": "a heavy hammer",
    "screw anchor": "a bar to turn them in",
    "manufactured-home anchor": "a bar to turn them in",
    "buried weight": "a spade",
    "deadman": "a spade",
    "pier": "a post-hole digger, concrete",
    "slab bolt": "a hammer drill, a wrench",
}
PULL_SCALE = "a scale that reads {pull}"
ROPES = "{count} of {line}"
POST_TOOLS = "a post-hole digger, a tamper, a level"
LEVEL = "a level"
FLOOR = "a floor of plywood and screws"

CALL = "{ask}, days before you {setting}. Private lines (sprinklers, lights, pool) are not marked."
SLAB = "Find out what lies in and under the slab before you drill: heating, cables, drains."
SET = "Set it on {ground} so that its whole foot bears; where it rocks, {level} beneath its foot."
LEVELS = {True: "pack the ground", False: "put a shim"}
DRIVE = {
    "stake": "Drive {what}, plumb, at the black dots{far}: {how}.",
    "pier": "Cast {what} at the black dots{far}: {how}.",
    "bolt": "Drill and set {what} at the black dots{far}, into a sound slab: {how}.",
    "anchor": "Set {what} at the black dots{far}: {how}.",
}
FAR = ", {far} from the middle of the foot"
FAR_AS_DRAWN = ", as far from the middle of the foot as drawn"
TEST = "Pull each straight up to {pull} on a scale{wet}. If it creeps, use a longer one."
WET = ", when the ground is wet"
TEST_BOLT = "Pull each straight up, hard: nothing may move."
TEST_HARD = "Pull hard on each from every side; if it moves, use a longer one."
FLAG = "Cap the ends and flag them, so that nobody trips over or falls on one."
FLAG_BOLTS = "Cover nuts and ends, so that nobody trips over them."
WEIGH = "Then hold it down: {what}."
PUSH_TO_TEST = "Push on it from every side: it may not rock."
ABOVE = "When more is forecast: {do}. Before you drive a stake for that, {ask}, days ahead."
ABOVE_SLAB = "When more is forecast: {do}."
DIG = "Dig as drawn: {posts}. Tamp the earth back in thin layers; let concrete set for a week."
PUSH_POSTS = "Push hard on it from every side: nothing may move in the ground."
SLOPE = "Slope the earth or concrete away from the post, so that water runs off."
MEND = "Mend it first, as told above; then print this page again."
LAY_STEPS = (
    "Lay it down, or take it in, in time: before the gusts named are due, with no wind yet.",
    "Lay it where nothing falls on it and nobody trips over it.",
)

SEEN_FROM = ("seen from the front", "seen from the right side")
FRONT = "front"

WIND_ASKED = {
    "gust": "a gust of {wind} at the piece",
    "forecast": "a forecast gust of {wind}{around}",
}
WIND_OF_CODE = "the {method} {mapped} of {wind}{around}"
SEASON = {
    "posts": "push on every post",
    "anchors": "pull on every {anchor}",
    "guys": "look over every guy",
    "weight": "see that its added weight lies fast",
    "foot": "look for cracks and gaps at the foot",
    "screws": "tighten its screws",
    "wood": "probe the wood near the ground for rot",
    "blades": "look over blades, hub and axle, the wheel blocked",
}
NOT_FOR = (
    "{climbing}; hang no banners, lights or wreaths on it. Keep it clear of glass, paths, cars and "
    "power lines by its own height."
)
CLIMBING = {True: "Climbing", False: "Climbing or leaning on"}
NOT_STOOD = "Does NOT stand {names}: keep people off. "
LOADS = "Loads worked out: {loads}, no more. "
COMES_OFF = {
    False: "{names} COMES OFF in {wind}: fasten it first.",
    True: "{names} COME OFF in {wind}: fasten them first.",
}
NO_PROMISE = "{what}. No promise for the whole piece."
RULES = (
    "Local rules decide about signs, roads and permits. A licensed professional has to look at it "
    "where people gather."
)
MADE_BY = "Yardfast {version}, fingerprint {fingerprint}"
DRAFT = "NOT READY TO SELL."
CALCULATED = {True: "Calculated; for tests see below.", False: "Calculated, not tested."}
