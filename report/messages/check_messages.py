"""Messages of what governed a check, and of what was not looked at, a sentence each, with slots."""

from collections.abc import Mapping
from enum import StrEnum

from ...checks.fasteners.spacing import Near
from ...checks.judged.judging import Remark
from ...checks.not_looked_at import Topic, Unlooked
from ...checks.sides import Meets, Over
from ...checks.stated.governed import Governed
from ...checks.stated.governed_parts import CountsNothing, OfFastening, OfMember

SIDES_SAID: Mapping[StrEnum, str] = {
    **{over: str(over) for over in Over},
    **{meets: str(meets) for meets in Meets},
    Over.QUARTER: "its {side} side",
    Meets.QUARTER: "from its {side} side",
}
"""Over what a piece goes, and how wind meets it: never a bearing."""

REMARKS: Mapping[StrEnum, str] = {
    Remark.WORST_OF: "worst of tipping, sliding and bearing: {of}",
    Remark.HEAD: "{of}",
    Remark.GROUND_ANCHOR: "its ground anchor",
    Remark.LINE: "the line",
    Remark.FORCE_AT: "the force acts {of} above the ground",
    Remark.MOVES: "what moves most: {of}",
}
"""What is remarked of what governed a check."""

_OF_ALL: Mapping[StrEnum, str] = {
    Governed.UNDER_LOAD: "Worst under '{load}', without wind.",
    Governed.UNDER_LOAD_IN_WIND: "Worst under '{load}', and wind at once.",
    Governed.OVER: "Worst over {over}.",
    Governed.WIND: "Worst with the wind {on}.",
    Governed.WIND_OVER: "Worst with the wind {on}, over {over}.",
    Governed.CALM: "Worst in calm air.",
    Governed.LEAST_WIND: (
        "The least wind of the standard, 16 psf (766 Pa) on the whole outline, governs: the answer "
        "does not follow the wind typed."
    ),
    Governed.WIND_CASE: "Wind case: {parts:, }.",
    Governed.FACTORS: "{dead} times the {weighing} weight and {wind} times the {live}.",
    Governed.WIND_FACTOR: "{wind} times the wind.",
    Governed.BARE: "Bare factor of safety, without load factors: {factor}.",
    Governed.TIPS_FIRST: "Nothing of the foot stays loaded: it tips first.",
    Governed.NOTHING_LEFT: "Nothing is left to resist.",
    Governed.REMARKED: "{Remark}.",
    Governed.IN_DOUBT: (
        "As read it is used at {share}; it fails where wood, fasteners or ground give more or less "
        "than that, which nobody knows."
    ),
    Governed.MAP_WIND: "A pass means that the map wind just does not tip it.",
}

_OF_FASTENING: Mapping[StrEnum, str] = {
    OfFastening.TURNS_FREELY: (
        "Its fasteners stand so that nothing resists turning: set them apart."
    ),
    OfFastening.MOST_USED: (
        "The {fastener}{where}{of_all} is used most: pulled {pull} and pushed sideways {shear}; "
        "{holds}."
    ),
    OfFastening.TOWARD: " toward its {side} side",
    OfFastening.ONE_OF: ", one of {number},",
    OfFastening.HOLDS: (
        "by {book} it holds {out} against pulling out{through}, and {sideways} sideways{mode}"
    ),
    OfFastening.AT_HEAD: ", {force} at its {head}",
    OfFastening.MODE: " (mode {mode})",
    OfFastening.MODE_MEANS: " (mode {mode}: {means})",
    OfFastening.REACH: (
        "From {head_in} through {through} it reaches {reach} into {point_in}{beyond}, {into}; "
        "factors {factor_out} on pulling out and {factor_sideways} sideways."
    ),
    OfFastening.COMES_OUT: " and comes out beyond",
    OfFastening.AS_THICK: " (at least as thick as that)",
    OfFastening.LASTS: "Under wind, which lasts less, it would hold {times} times as much.",
    OfFastening.LASTS_SIDEWAYS: (
        "Under wind, which lasts less, it would hold {times} times as much sideways."
    ),
    OfFastening.TESTED_MEAN: (
        "In tests such fasteners came out of dry side grain at {mean} on the average (Wood "
        "Handbook), over a factor of {factor} {over}; it is judged by NDS."
    ),
    OfFastening.DECK_SCREWS: (
        "Deck screws are not standardised: steel and head are taken as those of a wood screw of "
        "its number, the root as one maker's; the maker's sheet counts."
    ),
    OfFastening.STAPLES: (
        "NDS has no staples: each counts as two nails of its leg's diameter (EN 1995-1-1 8.4), its "
        "crown as a round head of the crown's area (judgement)."
    ),
    OfFastening.SHARED: "It shares the load with {names}.",
    OfFastening.APART: "{each} stand{spots}, {apart} apart at least.",
    OfFastening.AT_PLACES: " at each of {number} places",
    OfFastening.GLUE: "Glue is shown and not counted.",
    OfFastening.SEAM_ASKED: (
        "Each {fastener}, one every {spacing} along each of {seams} seams in each panel, is pulled "
        "{pull} by its panel and pushed sideways {shear} by the shear along the seam."
    ),
    OfFastening.SEAM_HOLDS: "{Holds}.",
    OfFastening.SEAM_REACH: (
        "Through {through} of panel it reaches {reach} into {into}; factors {factor_out} on "
        "pulling out and {factor_sideways} sideways."
    ),
    OfFastening.INTO_CLEAT: "a cleat of {wood} (at least as thick as that), side grain",
    OfFastening.INTO_NEXT_EDGE: "the edge of the next panel",
    OfFastening.SPACED: "Each {fastener} stands {has} or more {where} and needs {needs}.",
    CountsNothing.PANEL_EDGE: (
        "No value is published for what holds in the edge of a panel: nothing is counted against "
        "pulling out."
    ),
    CountsNothing.END_GRAIN: (
        "In end grain nails, staples and wood screws count nothing against pulling out; by "
        "EN 1995-1-1 nothing does."
    ),
    CountsNothing.TOO_SHORT: (
        "Its point goes in less than the {least} that it has to, so it counts nothing."
    ),
    CountsNothing.NO_NUT: "It is too short to take a nut on the far side.",
    CountsNothing.HEAD_UNKNOWN: (
        "Its head's size is not known, so it counts nothing: name its trade size."
    ),
    CountsNothing.SMALL_HEAD: (
        "No value is published for heads so small: nothing is counted against its head pulling "
        "through."
    ),
    CountsNothing.LET_IN: (
        "Its flat head is let in as deep as the piece is thick: nothing is left to hold it."
    ),
    CountsNothing.NOT_OUTDOORS: (
        "EN 1995-1-1 gives this sheet no value in the open: nothing is counted."
    ),
    CountsNothing.NO_WASHER: (
        "No value is held here for washers on this wood: pull is not counted."
    ),
}

NEAR: Mapping[StrEnum, str] = {
    Near.END: "from an end of {part}",
    Near.EDGE: "from an edge of {part}",
    Near.EACH_OTHER: "apart in {part}",
}

_OF_MEMBER: Mapping[StrEnum, str] = {
    OfMember.JUDGED: "Judged {how}; {governs} governs{place}; {stuff}.",
    OfMember.BESIDE: "What {names} beside it would hold is not counted.",
    OfMember.BENDS: "In the wind asked for it bends {bend}: shown, not judged.",
    OfMember.BENDS_UNDER: "Under '{load}' it bends {bend}: shown, not judged.",
    OfMember.TOO_SLENDER: (
        "Too slender: pressed along itself it counts as {times} times as long as thick, NDS allows "
        "{most}."
    ),
    OfMember.SLENDER: (
        "It counts as {times} times as long as thick: NDS allows {most} for a column."
    ),
    OfMember.NO_COLUMN: (
        "It counts as {times} times as long as thick: NDS allows {most} for a column. It is none, "
        "pressed by less than {share} % of what it holds along itself."
    ),
    OfMember.FROM_LOWER_END: " {up} from its lower end",
    OfMember.AT_FOOT: " at its foot",
    OfMember.ABOVE_FOOT: " {up} above its foot",
    OfMember.IN_PLACE: " in {place}",
    OfMember.OF_LUMBER: "{species}, {grade}, wet in use",
    OfMember.OF_SANDED: "a sheet of {thick} in, sanded, wet in use",
    OfMember.OF_SHEET: "a sheet of span rating {rating}, wet in use",
}

GOVERNED: Mapping[StrEnum, str] = {
    **SIDES_SAID,
    **REMARKS,
    **NEAR,
    **_OF_ALL,
    **_OF_FASTENING,
    **_OF_MEMBER,
}
"""What is said beside a check, by what governed it."""

NOT_CHECKED: Mapping[StrEnum, str] = {
    Topic.SEAMS: (
        "The seams of {of} were not judged, since how its panels are joined is not said: what they "
        "carry is among the figures for engineers."
    ),
    Topic.SEAMS_UNDER_LOADS: (
        "Seams are judged by the wind alone: what {of} asks of them was not checked."
    ),
    Topic.UNDER_PEOPLE: (
        "Plates and walls were not judged under people who push or climb: {of}; their joints and "
        "what carries them were."
    ),
    Topic.TWIST: ("Whether wind off its middle turns the post in the ground was not checked."),
    Topic.SLAB: "No bolt and no slab was checked: what a bolt holds depends on both.",
    Topic.SOIL: (
        "No {anchor} was checked: what one holds in your soil is known once it is pulled on the "
        "spot."
    ),
    Topic.GUY_ENDS: (
        "How the guys are fastened to the piece was not checked, nor whether it bears their pull "
        "there."
    ),
    Topic.LAID_ON: (
        "Snow, ice and what is hung on it (lights, banners, wreaths, vines, flower boxes) were not "
        "counted: they load it, and never help here."
    ),
    Topic.WHEEL: ("Hub, axle and bearing of {of} were not checked, nor how fast it may run."),
    Topic.PEOPLE: (
        "People who push, lean on or climb it were not judged; the push that tips it is stated."
    ),
    Topic.IN_TIME: (
        "Flutter and shaking were not looked at (wind is taken as a steady push, as long as a "
        "gust), nor rot, rust, frost heave and settling of the ground."
    ),
    Topic.HOW_OFTEN: (
        "How often a gust of {wind} comes where it stands was not checked: it is what was asked "
        "for, not the wind of the place."
    ),
    Unlooked.NOT_THE_CODES: (
        "Whether {wind} is the code's wind for this place was not checked, nor how often it comes "
        "there."
    ),
    Unlooked.WHEEL_AND_BLADES: (
        "Blades, hub, axle and bearing of {of} were not checked, nor how fast it may run."
    ),
    Unlooked.NO_JOINTS: (
        "How {names:its # parts} are fastened to one another was not checked: they are taken as "
        "held together."
    ),
    Unlooked.OTHER_JOINTS: (
        "How {names:# other parts} {names:is|are} fastened was not checked: no joint says it."
    ),
    Unlooked.NO_STRENGTH: (
        "The strength of the {kinds} was not checked: bending, splitting, panels under wind"
        "{reasons:?}."
    ),
    Unlooked.OTHER_STRENGTH: ("The strength of {names:# of its parts} was not checked{reasons:?}."),
    Unlooked.WHY: "{name}: {why}",
    Unlooked.PARTS_UNDER_LOADS: (
        "What {loads} {loads:asks|ask} of the strength of {weak:# parts} was not checked."
    ),
    Unlooked.HOOKS_UNDER_LOADS: (
        "What {loads} {loads:asks|ask} of the hooks of {hung:# parts} was not checked."
    ),
    Unlooked.PARTS_AND_HOOKS: (
        "What {loads} {loads:asks|ask} of the strength of {weak:# parts} and the hooks of "
        "{hung:# parts} was not checked."
    ),
}
"""What was not looked at, in a full sentence each."""
