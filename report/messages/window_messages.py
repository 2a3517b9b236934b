"""What the page in the browser says besides the verdict: pictures in words, fields, saving."""

FRONT_SAID = (
    "{name} seen from the side: {height} tall, its balance point {balance} up. A wind of {wind} "
    "presses on it with {force}, {at} above the ground."
)
PLAN_SAID = "{name} seen from above, with {marks}."

SCALE = "Scale {scale}. The person is {person} tall."
STRIP = {"act": "act at", "slides": "slides", "tips": "tips", "asked": "asked"}
STRIP_POSTS = "posts give way"
STRIP_SAID = "Forecast gusts in {unit}: {marks}."
STRIP_OVER = "{mark} above {most}"

TABLES = {
    "design": "The piece",
    "site": "Place",
    "part": "Part",
    "joint": "Joint",
    "seam": "Seam",
    "anchor": "Anchor",
    "ballast": "Weight laid on",
    "guy": "Guy",
    "load": "Load",
    "record": "Record",
}
FIELDS = {
    "across": "across, flat to flat",
    "across_side": "across, by its side",
    "across_points": "across, over points",
    "bottom": "bottom, flat to flat",
    "top": "top, flat to flat",
    "height": "height, straight up",
    "panel_length": "height, along the slope",
    "wall": "wall thickness",
    "stock": "sheet, as sold",
    "lumber": "lumber, as sold",
    "on": "stands on",
    "under": "hangs under",
    "at": "moved by: right, away, up",
    "from": "from: right, away, up",
    "to": "to: right, away, up",
    "joint.to": "to",
    "step": "each further: right, away, up",
    "of": "fastens",
    "mass": "weight of each",
    "design.units": "shown in",
    "design.weighed": "weighed on a scale",
    "design.laid_down": "meant to be laid down",
    "site.wind": "wind asked",
    "site.method": "wind given as",
    "site.exposure": "around it",
    "site.ground": "ground",
    "count": "how many",
    "ring": "round a ring of",
    "embed": "deep in the ground",
    "solidity": "share that is solid",
}

NUMBERS = {
    "act": "lay down or tie over",
    "slides": "slides at",
    "tips": "tips at",
    "push": "push that tips it",
    "weight": "weighs",
    "height": "tall",
    "foot": "foot",
}
NUMBERS_POSTS = "posts give way at"
NO_GUST = "no gust below {most}"
CHANGES_WORD = "was {word}"
"""Behind the word of a changed piece: the word of the saved one."""

WAYS = {
    "base width": "A wider foot",
    "ballast": "Weight low in it",
    "anchors": "Stakes, anchors or bolts",
    "guys": "Guys",
    "height": "Lower",
    "wind": "Less wind asked of it",
}
WAYS_NONE = "It neither tips nor slides as it is: nothing has to hold it."
WAY_PULL = ": {pull} asked of each"
WAY_ACT = ": untied, act at {act}"
NO_FORM = "this file cannot be changed by itself: it lacks {what}"
NO_WAY = "that is no way for this piece: {why}"
NO_HEIGHT = "its parts cannot be made so tall or low: change them one by one"
"""Why a way, a weight or a height was not put into the text."""
EMPTY_LABEL = "no text for a listing: {reason}"
"""Why there is no text for a listing."""
