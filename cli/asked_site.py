"""What `yardfast new` asks of every piece: its ground, what is around it, what it should stand."""

from . import answers_wind as read
from .questions import Answers, Choice, Question, choose

GROUNDS = (
    Choice("firm lawn", "lawn that a heel does not mark, as in dry weather"),
    Choice("wet lawn", "lawn after long rain: a heel leaves a mark"),
    Choice("gravel", "gravel, raked level and tamped"),
    Choice("sand", "sand, raked level and tamped"),
    Choice("paving", "a slab, or pavers laid tight"),
    Choice("firm clay lawn", "lawn on stiff clay, in dry weather"),
    Choice("soft clay", "clay that squeezes between the fingers"),
)
AROUND = (
    Choice("open", "open field or road"),
    Choice("houses and trees", "houses and trees all round, for 1,500 ft (460 m)"),
    Choice("shore", "wide open water"),
    Choice("sold", "I sell it: it may stand anywhere"),
)
HILLS = (
    Choice("no", "no"),
    Choice("hill", "a hill, round or oval"),
    Choice("ridge", "a ridge"),
    Choice("bluff", "a bluff: steep on one side, level on the other"),
)
WINDS = (
    Choice("advisory", "a wind advisory: gusts from 46 mph (74 km/h)"),
    Choice("warning", "a severe-thunderstorm or high-wind warning: from 58 mph (93 km/h)"),
    Choice("code", "the building department's number"),
    Choice("record", "a record of local gusts"),
)
WIND_OF = {"advisory": "46 mph", "warning": "58 mph"}
"""The lowest gusts of an advisory and a warning of the US National Weather Service."""

EDITIONS = (Choice("ASCE 7-22", "ASCE 7-22"), Choice("ASCE 7-16", "ASCE 7-16"))
SPEEDS = (
    Choice("nominal", "nominal: of an older map"),
    Choice("ultimate", "ultimate: of a map since 2010"),
)

LOWEST_ULTIMATE = 38.0
"""Below 85 mph (m/s) a speed is hardly an ultimate one of a map: judgement."""


def _code(answers: Answers) -> bool:
    return answers["asked"] == "code"


def _below_maps(answers: Answers) -> bool:
    return _code(answers) and read.metres_a_second(answers["wind"]) < LOWEST_ULTIMATE


SITE = (
    Question(
        "ground",
        "The ground under it?",
        "How it holds against sliding, and how far an edge sinks in before the piece goes over. "
        "If you do not know, the softer lawn is taken.",
        choose("ground", GROUNDS),
        "wet lawn",
        GROUNDS,
        "wet lawn",
        "Taken: wet lawn, the softer.",
    ),
    Question(
        "around",
        "What is around it?",
        "Gusts near the ground are slower behind houses and trees, but only where these stand "
        "all round for 1,500 ft. Over open water they are faster. A fence does not count.",
        choose("around", AROUND),
        "open",
        AROUND,
        "open",
        "Taken: open field or road.",
    ),
    Question(
        "hill",
        "On or near the top of a hill, ridge or bluff?",
        "Gusts run faster there. The steepest that the standard knows is then taken; the file "
        "says where to put a smaller number, if the building department has one.",
        choose("hill", HILLS),
        "no",
        HILLS,
        "no",
        "Taken: no. On a crest gusts run faster.",
        follows=lambda answers: answers["around"] != "sold",
    ),
    Question(
        "asked",
        "What should it stand, tied down if need be?",
        "This is what you ask of it, not the wind of your place: that, the building department "
        "knows. Warnings state the gust that they start at.",
        choose("asked", WINDS),
        "warning",
        WINDS,
        "warning",
        "Taken: a warning's lowest gust, 58 mph. It is not the wind of your place.",
    ),
    Question(
        "code wind",
        "Their wind speed, such as '.. mph'",
        "The 3-second gust of the map in your building code. Call the building department. "
        "Ctrl-C leaves without writing, until you know.",
        read.speed("wind"),
        follows=_code,
    ),
    Question(
        "speed kind",
        "Is that speed a nominal or an ultimate one?",
        "Maps before 2010 show nominal speeds, which are lower; they are converted.",
        choose("wind_kind", SPEEDS),
        choices=SPEEDS,
        unknown="nominal",
        unknown_said="Taken: nominal, which gives the higher wind.",
        follows=_below_maps,
    ),
    Question(
        "code source",
        "Who said so, and of which map",
        "For whoever reads the result later: 'Town of .., building department, by telephone'.",
        read.one_line("source"),
        follows=_code,
    ),
    Question(
        "edition",
        "By which edition?",
        "The standard that your building code names. The two differ little at yard height.",
        choose("method", EDITIONS),
        "ASCE 7-22",
        EDITIONS,
        follows=_code,
    ),
    Question(
        "period",
        "Its return period in years, such as 300 or 700",
        'It stands on the map. "Don\'t know" leaves it open.',
        read.years("period"),
        read.LEFT_OPEN,
        unknown=read.LEFT_OPEN,
        follows=_code,
    ),
    Question(
        "record",
        "The greatest gust, or several: '10 years: .. mph, 50 years: .. mph'",
        "Gusts, not mean winds, measured 10 m up in the open, as airports do. With how many "
        "years it takes on the average until such a gust comes again, if that is known.",
        read.record,
        follows=lambda answers: answers["asked"] == "record",
    ),
    Question(
        "record source",
        "Whose record, of which place and years",
        "For whoever reads the result later.",
        read.one_line("source"),
        read.LEFT_OPEN,
        unknown=read.LEFT_OPEN,
        follows=lambda answers: answers["asked"] == "record",
    ),
)
