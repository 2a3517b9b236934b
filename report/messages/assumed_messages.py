"""Messages of what was assumed where a design is silent, a sentence each, with slots.

A slot with a capital begins a sentence.
"""

from collections.abc import Mapping
from enum import StrEnum

from ...checks.stated.assumed import Assumed
from ...checks.stated.assumed_parts import OfParts

LIKE = {3: "a square's face", 5: "a square's face", 7: "a hexagon"}
LIKE_ALL = "an octagon"
"""Whose coefficient a number of sides takes for which none is published."""

WIDEST_BOARD = {False: "5 1/2 in", True: "140 mm"}

ASSUMED: Mapping[StrEnum, str] = {
    Assumed.SCALED: ("What is of {names} is scaled to the {mass} that a scale showed, all alike."),
    Assumed.WEIGHS: "{Name} weighs {density}: {means} ({source}).",
    Assumed.WEIGHS_BAND: "{Name} weighs {density} ({light} to {heavy}): {means} ({source}).",
    Assumed.READ_AS: "Read as: {note}.",
    Assumed.GROUND: "Ground '{name}' means {means}; you can tell it: {cue}.",
    Assumed.BEARS: "{Name} is taken to bear {pressure} ({source}).",
    Assumed.GIVES_WAY: (
        "{Name} gives way under an edge at {pressure} ({source}), so it turns about a line a "
        "little inside its edge."
    ),
    Assumed.ALL_ROUND: "Its foot is taken to bear on the ground all round.",
    Assumed.LEVEL: "The ground is taken as level, since no slope is given.",
    Assumed.LEVEL_COSTS: (
        "The ground is taken as level, since no slope is given: one degree of slope brings {costs}."
    ),
    Assumed.TIPPING_COSTS: "tipping from about {now} down to {then}",
    Assumed.SLIDING_COSTS: "sliding from about {now} down to {then}",
    Assumed.BOTH_COST: "{first} and {second}",
    Assumed.FRICTION: "Friction of {kind} on {ground} is taken as {value}: {source}.",
    Assumed.FRICTION_NOTED: (
        "Friction of {kind} on {ground} is taken as {value}: {source}; {note}."
    ),
    Assumed.RUBS_AS_WOOD: "What {name} rubs on the ground with is not said: taken as wood.",
    Assumed.EARTH: (
        "The earth beside a post may be asked for {pressure} of depth (IBC Table 1806.2, for the "
        "class of {ground}); the hole is filled and tamped in layers."
    ),
    Assumed.POSTS_SHARE: (
        "All posts share the wind alike, each turning in the ground by itself; what braces them to "
        "one another would help and is not counted."
    ),
    Assumed.LOOSE: (
        "All parts but {names} are taken as held together; those are loose, held by their weight "
        "alone, and judged about their own contact as well."
    ),
    Assumed.HELD_TOGETHER: (
        "All parts are taken as held together, so that it tips and slides as one piece."
    ),
    Assumed.TO_SPARE: (
        "Half again to spare is asked against tipping and sliding (factor of safety {safety}): "
        "{source}."
    ),
    Assumed.BASIS: "Judged on the {basis} basis, since none is named: {source}.",
    Assumed.AIR: (
        "Air is taken as at sea level, {rho} kg/m3 ({pounds} lb/ft3): 5,000 ft (1,500 m) up the "
        "same wind pushes about a sixth less."
    ),
    Assumed.AIR_EN: (
        "Air of {rho} kg/m3, and what the file does not say of a National Annex is as EN 1991-1-4 "
        "recommends: your country's annex counts before that."
    ),
    Assumed.NO_OROGRAPHY: (
        "No hill is taken to speed the wind up, since 'orography' is not given."
    ),
    Assumed.STRUCTURAL_FACTOR: (
        "c_s c_d is 1, as for what is lower than 15 m; between two faces of a rectangle the force "
        "goes by the squares of sine and cosine: a judgement."
    ),
    Assumed.SURROUNDINGS: (
        "No surroundings are given: a forecast gust is taken to reach it over open ground."
    ),
    Assumed.NO_HILL: (
        "No hill, ridge or bluff is taken to speed the wind up, since 'topographic' is not given."
    ),
    Assumed.ULTIMATE: "The wind is taken as an ultimate speed of the code's map.",
    Assumed.GUST_EFFECT: (
        "The gust effect factor is the computed one, {factor} (ASCE/SEI 7 26.11.4), since a gust "
        "takes in a small piece whole; 0.85 is permitted."
    ),
    Assumed.DIRECTIONALITY: (
        "Directionality Kd by each part's own kind, 1.00 where the code names none: {values}."
    ),
    Assumed.LIFTED: (
        "Wind is taken to lift closed tops as well, where that is worse, and to lift or press "
        "roofs and boards that it blows beneath ({figures})."
    ),
    Assumed.SHELTER: "What stands clear behind another part is counted as sheltered (ISO 4302).",
    Assumed.NO_SHELTER: (
        "Parts that stand behind one another with a clear gap each take their full wind: no "
        "shelter is counted beyond a tenth of the width of the one in front."
    ),
    Assumed.RANGE: "The range takes wind coefficients {share} % off either way: a judgement.",
    Assumed.ROUGH: "The round surface of {name} is taken as rough; smooth takes less wind.",
    Assumed.SIDES: (
        "No coefficient is published for the {sides} sides of {name}: it takes that of {like}."
    ),
    Assumed.SPINS: (
        "{name} is taken to spin, since the file does not say that it is locked: spinning it takes "
        "more wind."
    ),
    Assumed.DISC: (
        "A spinning {name} is taken to push as a whole disc does, 1.2 times the wind's pressure on "
        "it, whatever its blades."
    ),
    OfParts.JOINT: "Joint '{name}': {items}.",
    OfParts.LAID_OUT: "{count} set where {of} and {to} touch, evenly",
    OfParts.LAID_OUT_SIDES: "{count} set where {of} and {to} touch, evenly along each side",
    OfParts.LAID_OUT_ROWS: "{count} set where {of} and {to} touch, in rows",
    OfParts.INTO_BLOCKS: "as many from each part into blocks of {wood}, across their grain",
    OfParts.HEADS_IN: "heads in {part}, the thinner along them",
    OfParts.POINTS_IN: "points in {into}",
    OfParts.POINTS_IN_EDGE: "points in the edge of a panel",
    OfParts.POINTS_IN_FACE: "points in the face of a panel",
    OfParts.MADE_WET: "fastened in wood that was wet or gets wet, the worse of the two",
    OfParts.CROWNS: "crowns along the grain under them, the weaker way",
    OfParts.SEAM: "Seams of '{name}': {items}.",
    OfParts.ROW_OF_ITS_OWN: "each panel by a row of its own, heads in the panels",
    OfParts.SEAM_ROOM: (
        "two or more, the last {end} from either end and all {edge} from the panel's edge, or more"
    ),
    OfParts.CLEATS: "cleats of {wood}, across their grain",
    OfParts.CLEATS_THICK: "cleats of {wood} at least {thick} thick, across their grain",
    OfParts.THIN_NAILS: "{fasteners}: {notes} ({source}).",
    OfParts.NEAREST_PART: (
        "'{name}' is taken to act on {part}, the nearest part: write  on = '..'  with the part's "
        "name if it acts on another."
    ),
    OfParts.NEAREST_PART_OFF: (
        "'{name}' is taken to act on {part}, the nearest part, {off} from it: write  on = '..'  "
        "with the part's name if it acts on another."
    ),
    OfParts.BESIDE_ITS_PART: (
        "'{name}' acts on {part}, {off} from it: 'at' is measured from the middle of the design."
    ),
    OfParts.ONE_LOAD: (
        "On joints and strength the named load acts by itself. Without wind wood holds that as "
        "what lasts ten years in all: {lasting}; in wind as it holds wind, each less than alone, "
        "since both seldom come at their worst together."
    ),
    OfParts.SEVERAL_LOADS: (
        "On joints and strength each named load acts by itself, and all of them together. Without "
        "wind wood holds that as what lasts ten years in all: {lasting}; in wind as it holds wind, "
        "each less than alone, since both seldom come at their worst together."
    ),
    OfParts.LASTS_EN: "k_mod {live} in place of the {wind} of wind (EN 1995-1-1 Table 3.1)",
    OfParts.LASTS_FACTORED: "lambda {live} in place of the {wind} of wind (NDS 2018 Table N3)",
    OfParts.LASTS: "C_D {live} in place of the {wind} of wind (NDS 2018 Table 2.3.2)",
    OfParts.WET: "Wood is taken as wet in use, as out of doors.",
    OfParts.GRADE: (
        "The lumber of {names} is taken as {grade} grade, the lowest commonly sold: write  grade = "
        "'No. 2'  if its stamp says so."
    ),
    OfParts.FACE_GRAIN: (
        "The face grain of {names} is taken to run along the longer side of each piece; plywood is "
        "taken as the weakest lay-up, of three layers."
    ),
    OfParts.FACE_GRAIN_TURNED: (
        "The face grain of {names} is taken to run along the longer side of each piece; plywood is "
        "taken as the weakest lay-up, of three layers. Turned round, {deciding} would not be "
        "judged the same."
    ),
    OfParts.SEPARATE_BOARDS: (
        "{Names}: boards no wider than {widest}, as strong as lumber of their grade though "
        "thinner, along their longer side or, over beams and on roofs, from support to support; "
        "separate, so that one of them alone carries who stands on it."
    ),
    OfParts.HOLES: (
        "Holes of bolts and lag screws are not taken off the sections of {names} (NDS 2018 3.1.2, "
        "EN 1995-1-1 5.2): beside one a piece has so much less as the hole is wide."
    ),
    OfParts.STUFF: "{Name} is taken as {means}.",
    OfParts.STICKS: (
        "{Names}: bent, pressed, sheared and twisted as the balance of the whole piece gives it, "
        "each joint as stiff as its fasteners are said to be, three times so and a third; the "
        "crush where it bears is left out."
    ),
    OfParts.AT_CORNERS: (
        "Joints and parts are judged as if the ground held it, pressed and drawn, at the corners "
        "of each part's own foot: whether it stands at all is told apart."
    ),
    OfParts.AT_ANCHORS: (
        "Joints and parts are judged with the ground pressing at the corners of each part's own "
        "foot, and drawn at the anchors alone; where these do not hold it, as if the ground did."
    ),
}
