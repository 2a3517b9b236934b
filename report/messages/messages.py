"""The catalogue of messages: what is said of each finding, with slots. Words change here alone."""

from enum import StrEnum

from ...checks.judged.judging import Kind
from ...checks.not_looked_at import Topic
from ...checks.stated.from_memory import Value
from ...checks.tied import Way
from ...checks.verdict import Reason, Word


class About(StrEnum):
    """What a row of the first screen is about: its label."""

    UNTIED = "Untied"
    IN_WIND = "In wind"
    OFTEN = "How often"
    TIED = "Tied"
    WEIGHED = "Weigh it"
    OR = "Or"
    MEND = "Mend"
    THEN = "Then"
    THEN_TIED = "Then tie it"
    UNTIL = "Until then"
    LAID = "Laid down"
    ALSO = "Also"
    FASTENING = "Fastening"
    NOT_LOOKED_AT = "Not looked at"
    FIRST = "First"
    NEXT = "Next"
    TAKE = "Take"
    NOT_OFFERED = "Not"
    MORE = ""
    """What goes on from the row before."""


OF_MANY = "{label} {n} of {all}"

WHY = {
    (Word.FALLS_OVER, Reason.BALANCE): (
        " with no wind at all: its balance point lies beyond its foot"
    ),
    (Word.FALLS_OVER, Reason.GROUND_GIVES): (
        " with no wind at all: {ground} gives way beneath its foot"
    ),
    (Word.FALLS_OVER, Reason.DOWNHILL): ": it slides downhill with no wind at all",
    (Word.COMES_APART, Reason.PART_FAILS): "{alone}: {fails}",
    (Word.NOTHING_HOLDS, Reason.MOVES): (
        " in the {asked}: no stake, guy, weight or foot alone would do"
    ),
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

IF_FASTENED = "if {what} {verb} fastened"

ALONE = ", {anchors} alone will not save it"
HOLDING_DOWN, DEEPER = "holding it down", "deeper posts"
TOO_WEAK = "{what} too weak for {under}"
WEAK_PARTS = {Kind.JOINT: "joint", Kind.MEMBER: "part", Kind.SEAM: "body with seams"}
WEAK_MANY = {Kind.JOINT: "joints", Kind.MEMBER: "parts", Kind.SEAM: "bodies with seams"}
FAILS = {
    Kind.SPACING: "fasteners stand where wood splits",
    Kind.RACKING: "it racks",
    Kind.LOOSE: "its loose {names} will not stay on",
    Kind.LOAD: "it does not stand {names}",
}
"""What fails where a piece comes apart, by the kind of check."""

UNTIED = {
    "calm": "no gust below {most} asks for it",
    "always": "{do}: any wind may be too much",
    "clear": "keep clear of it: any wind may be too much",
    "act": "{do} when gusts over {act} are forecast",
    "posts": "keep clear of it when gusts over {act} are forecast",
}
KEEP = {
    (False, True): ("keep it tied or laid down", "lay it down or tie it"),
    (False, False): ("keep it laid down", "lay it down"),
    (True, True): ("keep it tied", "tie it"),
    (True, False): ("keep clear of it", "keep clear of it"),
}
"""What to do with a piece always, and in time, by whether it is too heavy to lay down and can be
held."""

UNTIL = {
    "laid": "indoors, or lying down, when gusts over {act} are forecast",
    "stays": "nobody near it when gusts over {act} are forecast",
    "always": "indoors or lying down: any wind may be too much",
    "clear": "nobody near it: any wind may be too much",
}

HOW_SET = {
    "plain": ("against the foot's edge", "against the foot's edge"),
    "bent": ("bent over the foot's edge", "bent over the foot's edge"),
    "cap": ("its head on the foot", "heads on the foot"),
    "washer": ("its rod through the foot", "rods through the foot"),
    "strap": ("strapped over the foot", "strapped over the foot"),
    "eye": ("its eye shackled to the foot", "eyes shackled to the foot"),
}
"""How one anchor, and how several, are set at the foot, by their heads."""

SET_BOLT = "through the foot, {inset} from its edge"

AT_EACH = {
    "corners": "each corner of the foot",
    "sides": "each side of the foot",
    "second sides": "every other side of the foot",
    "feet": "each foot",
    None: "each of {count} places of the foot",
}
TIED = "{what}, {where}, {how}"
PULL_TEST = "Test each: pull up with {pull}, soil wet."
OVER = "Over {wind}: lay it down as well"
OVER_CLEAR = "Over {wind}: nobody near it"
REFUSED = "once it is mended, check it again: held down as it is, {of} would fail too"
REFUSED_ALONE = "held down, {of} would fail: fasten or build that stronger, and check it again"
WEIGHT = "{weight} low in the foot: {bags} on a floor screwed to it"
WIDTH = "a foot {width} across, alone"
WIDTH_SLIDES = "a wider foot alone: it would slide"
OWN = "{holders}, as its file says"

MEND_FIRST = {
    "balance": "widen the foot or lower the piece before anything else",
    "ground": "spread its foot, or set it on firmer ground",
    "downhill": "level its place, or pin it",
    "sinks anchored": (
        "spread its feet, by a ring or sole of boards beneath them: anchors hold it, but draw them "
        "into the {ground}"
    ),
    "nothing": "make it lower or smaller, or set its posts in the ground in concrete",
    "sinks": "spread its foot: a sole of boards or slabs beneath it",
    "people": "keep people off it{anchors}",
    "held": "in place of its own {own}:",
}
OR_ANCHORS = ", or anchor each place for {pull} straight up"

HOW = {"N*m": " in bending", "N": " in shear"}
ASKED = ("too weak: {brief}", "asked {times} what it holds: {advice}")
SEAM_BRIEF = "{fasteners}, one every {apart}"
MEMBER = (
    "too weak: thicker, or shorter",
    "asked {times} what it holds{how}{load}: thicker, shorter, or held at more places",
)
THICKER = (
    "too weak: {thicker} would do",
    "asked {times} what it holds{how}{load}: {thicker} would do; or shorter, or held at more "
    "places",
)
NO_THICKER = (
    "too weak: shorter, or held at more places",
    "asked {times} what it holds{how}{load}, and no thicker stuff that was tried does: shorter, or "
    "held at more places",
)
THICKER_OF = {
    "stock": "{value}",
    "lumber": "{value}",
    "wall": "a wall of {value}",
    "thickness": "{value} thick",
}
LOOSE = (
    "by itself it {does}: fasten it",
    "by itself it {does} {when}: screw or strap it to what it stands on, and take 'loose' out of "
    "the file",
)
IN_WIND = "in {wind}"
WHEN_PEOPLE = {"push": "when it is pushed", "climb": "when it is climbed on"}
UNDER_LOAD = "under '{load}'"
LOAD_FAILS = ("{brief}", "does not stand it: {ways}")
LOAD_BRIEF = "anchors made for it"
LOAD_PULLS = (
    "a wider foot, or anchors made for it: {up} straight up, {sideways} sideways at each of "
    "{places} places"
)
LOAD_WAYS = "a wider or heavier foot, or anchors made for it"
MENDS = "To mend, the worst first, with what to type where that is known"
TAKE_OUT = "# and take out {key}"
SPACING = ("splits: {brief}", "{has} {where}, where {needs} keeps it from splitting: {ways}")
DRILLED = "drill lead holes (predrilled = true)"
FEWER = "fewer of them, wider apart"
THINNER = "fasteners no thicker than {thick}"
FARTHER = "set farther in ('points')"
RACKING = (
    "it leans over: braces across the corners",
    "it leans over sideways: braces across the corners, or joints that hold a pull",
)
HOLD_SAID = {False: "holds", True: "hold"}
RACKING_BY = (
    "it leans over: {joints} {hold} no pull",
    "it leans over sideways, since {joints} {hold} no pull: screws there that do, or braces across "
    "the corners",
)
"""A mend: in a line of the screen where there is little room, and whole."""
MORE_MENDS = "and {n} more: yardfast check FILE --numbers"

ALSO = {
    Kind.BEARING: "it presses harder on {ground} than that bears",
    Kind.EMBEDMENT: "its {posts} way",
    Kind.PULL_OUT: "the wind draws it out of the ground",
    Kind.PUSH: "{people} can tip it: keep people off",
    Kind.CLIMB: "{people} can tip it: keep people off",
}

FASTENING_ALL = "{n} checked, {hold}."
FASTENING_OPEN = "Not given: {names}."
FASTENING_NONE = "not given for {names}: taken as held together"

ASK_BEFORE_DIGGING = "{ask}, days before you {setting}"
ASK_ANYWHERE = "call 811 (US) or the local line"
JUST = "by this code the map wind just does not tip what holds: nothing to spare"
LEAST_WIND = "the code's least wind, 16 psf on all of it, decides, not the wind typed"

TOPICS = {
    Topic.SOIL: "your soil",
    Topic.SLAB: "the slab",
    Topic.TWIST: "its post turning in the ground",
    Topic.STRENGTH: "strength of {of}",
    Topic.SEAMS: "seams of {of}",
    Topic.SEAMS_UNDER_LOADS: "seams under loads",
    Topic.UNDER_LOADS: "what carries '{of}'",
    Topic.UNDER_PEOPLE: "{of} under people",
    Topic.GUY_ENDS: "where guys are tied",
    Topic.LAID_ON: "snow; what is hung on it",
    Topic.PEOPLE: "people",
    Topic.WHEEL: "hub and axle",
    Topic.IN_TIME: "rot",
}
"""What was not looked at, in a word or two; how often it blows so stands in full only."""

GIVEN_BY_FILE = {Topic.SEAMS: "seams of {of}", Topic.STRENGTH: "material of {of}"}
"""What the file can still say of a topic, besides how parts are fastened."""

NEXT = {
    "anchors": "{anchors} into the file",
    "guys": "guys into the file",
    "ballast": "weight into the file",
    "base width": "the foot into the file",
}
NEXT_PAPER = "paper for the buyer"
NEXT_MEND = "what would hold"
NEXT_MORE = "more"
FILE = "FILE"
"""What stands in a command for a name that is too long."""


MEND_IT_FIRST = "Mend first: {what}."
LAY_DOWN = "lay it down when gusts over {act} are forecast"
CALM = "-"
"""In the folder's table, of a piece that no gust below 150 m/s moves."""

MANY = {
    Word.FALLS_OVER: "to mend: falls over",
    Word.COMES_APART: "to mend: comes apart",
    Word.NOTHING_HOLDS: "to change: nothing here holds it",
    Word.TIE_IT_DOWN: "to tie down",
    Word.WEIGH_IT_DOWN: "to weigh down",
    Word.SET_IT_DEEPER: "to set deeper",
    Word.SINKS_IN: "to spread: sinks in",
    Word.KEEP_PEOPLE_OFF: "to keep people off",
    Word.HELD_DOWN: "held down",
    Word.STANDS: "standing by itself",
    Word.STANDS_BY_POSTS: "standing by its posts",
}
"""In the folder's count line, behind how many there are."""

FAULTY = " {n} more cannot be read: see what is wrong with them."
TO_PUT_RIGHT = "{n} to put right"
BRIEF_MEND = "mend {what}"
BRIEF_MORE = "mend {what} and {n} more"
BRIEF_TIE = "hold it with {what}"
BRIEF_HELD = "held with {what}"

_MONTHS = "January February March April May June July August September October November December"
MONTHS = tuple(_MONTHS.split())
RECORDS = {
    "weight": "Weighed on {signed}: {value}.",
    "scale test": "Tested on {signed}: a level pull of {value} at {up} began to lift its edge.",
    "stake pull test": "Stake tested on {signed}: it held {value} straight up.",
}
MORE_RECORDS = "{n} more in its file."

SIZE_ACT = "act at, {unit}"
SIZE_HEADS = ("untied", "tied")
SIZE_WITH = "tied with; pull of the test"
SIZE_KINDS = {"as it is": "As it is", "base width": "Wider", "ballast": "Weight"}
SIZE_FOOT = "{width} foot"
SIZE_STANDS = "stands {wind} as it is"
SIZE_NO_STAKES = "nothing driven there holds it"
SIZE_SINKS = "anchors draw its feet into the ground"
SIZE_BREAKS = "held down, {of} fails"
SIZE_OTHER = {Way.GUYS: "guys", Way.OWN: "as its file says", Way.ANCHORS: "anchors"}
SIZE_TEST = ", {pull}"
SIZE_NONE = {"base width": "a wider foot", "guys": "guys", "height": "lower"}
"""Ways of which it is told why they are none."""

TAKE_NOTHING = "nothing: none of these is needed."
TAKEN = frozenset({About.TIED, About.WEIGHED})
"""Rows of the first screen that say what to take."""

UNSIZED = frozenset({About.UNTIED, About.IN_WIND, About.OFTEN, About.UNTIL})
"""Rows of the first screen that say nothing of sizes."""

SIZE_OF_MANY = "{n} of {all}: {text}"
SIZE_LABELS = {About.THEN_TIED: "Then", About.LAID: "Laid"}
"""Shorter labels, beside the table of sizes."""

SIZE_WRITES = {Way.ANCHORS: "anchors", Way.GUYS: "guys", Way.WEIGHT: "ballast"}
SIZE_NEXT = "yardfast size {file} --write NEW.toml --remedy {kinds}"
SIZE_MORE = "yardfast size {file} --all"

FROM_MEMORY = {
    Value.DENSITY: "the density of {0}",
    Value.SIZE: "the actual size of {0}",
    Value.RATING: "the {0} of {1}",
    Value.FRICTION: "the friction of {0} on {1}",
    Value.SQUARE_BODIES: "force coefficients of square and rectangular bodies",
    Value.ROUND_BODIES: "force coefficients of round bodies",
    Value.SIDED_BODIES: "force coefficients of hexagonal and octagonal bodies",
    Value.SIGNS: "force coefficients of solid signs",
    Value.WIDE_SIGNS: "coefficients of wide signs, Case C",
    Value.LATTICES: "force coefficients of lattices and open frames",
    Value.SHELTER: "shelter behind one another",
    Value.PANELS_OF_ROOFS: "suction on single panels of roofs and lids",
    Value.CYLINDERS: "wind on round bodies",
    Value.BALLS: "wind on balls near the ground",
    Value.LATTICE_FORCES: "force coefficients of lattices",
    Value.LATTICE_ENDS: "the end effect of lattices",
    Value.SINGLE_PANELS: "pressure on single panels",
    Value.EXPOSURE_FACTOR: "the gust near the ground by surroundings (Kz)",
    Value.DIRECTIONALITY: "directionality (Kd)",
    Value.GUST_EFFECT: "the gust effect factor's constants",
    Value.TERRAIN: "the terrain categories",
    Value.LEAST_WIND: "the least wind of 16 psf",
    Value.LOAD_FACTORS: "the load factors of the {0} basis",
    Value.PUSH: "the push of {0}",
    Value.STRENGTH: "the strength of {all}",
    Value.TIMBER: "numbers of the equations for wood and fasteners",
    Value.FASTENER: "sizes and steel of {0}",
    Value.STAPLES: "staples taken as two nails",
    Value.PULLING_OUT: "what pulls out {0}",
    Value.PULLING_THROUGH: "what pulls heads through",
    Value.BEARING_STEP: "how dowel bearing strength is rounded",
    Value.JOINT_FACTOR: "the factor {0} of joints",
    Value.GRAVITY: "the specific gravity of {0} for fasteners",
    Value.SLIP: "how stiff fasteners are sideways",
    Value.AXIAL: "how stiff screws are against a pull",
    Value.COMPANIONS: "the factors on named loads in wind",
    Value.TORSION: "how twist counts beside shear",
}
"""Values that were written from memory, by what they are of."""
