"""What `yardfast new` asks for each kind of piece: at most eight questions, and follow-ups."""

from collections.abc import Callable, Mapping
from itertools import chain

from . import answers as read
from .questions import Answers, Choice, Question, WrongAnswer, choose

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
    Choice("warning", "a severe-thunderstorm or high-wind warning: gusts from 58 mph (93 km/h)"),
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
LATTICES = (
    Choice("lattice", "lattice: half wood, half air"),
    Choice("climbers", "lattice that vines will grow over"),
    Choice("none", "nothing: open"),
)

LOWEST_ULTIMATE = 38.0
"""Below 85 mph (m/s) a speed is hardly an ultimate one of a map: judgement."""


def questions(kind: str) -> tuple[Question, ...]:
    """Return the questions for a kind of piece. KeyError where there is no such kind."""
    return _ASKED[kind] + _SITE


def _code(answers: Answers) -> bool:
    return answers["asked"] == "code"


def _below_maps(answers: Answers) -> bool:
    return _code(answers) and read.metres_a_second(answers["wind"]) < LOWEST_ULTIMATE


_SITE = (
    Question(
        "ground",
        "The ground under it?",
        "How it holds against sliding, and how far an edge sinks in before the piece goes over.\n"
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
        "Gusts near the ground are slower behind houses and trees, but only where these stand\n"
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
        "Gusts run faster there. The steepest that the standard knows is then taken; the file\n"
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
        "This is what you ask of it, not the wind of your place: that, the building department\n"
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
        "The 3-second gust of the map in your building code. Call the building department.\n"
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
        "It stands on the map. \"Don't know\" leaves it open.",
        read.years("period"),
        read.LEFT_OPEN,
        unknown=read.LEFT_OPEN,
        follows=_code,
    ),
    Question(
        "record",
        "The greatest gust, or several: '10 years: .. mph, 50 years: .. mph'",
        "Gusts, not mean winds, measured 10 m up in the open, as airports do. With how many\n"
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


def _by_units(imperial: str, metric: str, beside: str = "height") -> Callable[[Answers], str]:
    return lambda answers: metric if read.is_metric(answers[beside]) else imperial


def _sides(what: str, default: str) -> Question:
    return Question(
        "sides",
        f"Sides of {what} (0: round)",
        "How many flat sides it has, seen from above: 4, 6, 8; 0 if it is round.",
        read.sides,
        default,
    )


def _height(what: str, default: str) -> Question:
    return Question(
        "height",
        f"Height of {what}, straight up",
        "As on a tape held upright, with its unit: '4 ft', '48 in', '5 ft 6 1/2 in', '1200 mm'.",
        read.one_length("height"),
        default,
    )


def _widths(what: str, imperial: str, metric: str) -> Question:
    return Question(
        "widths",
        f"Width of {what}, bottom and top",
        "Two widths parted by a comma; one if it is straight. They are flat to flat, unless you\n"
        "add 'points' (corner to corner) or 'panel' (of one panel): '18 in, 10 in points'.",
        read.widths,
        _by_units(imperial, metric),
    )


def _walls(what: str, default: str = "3/4 plywood") -> Question:
    return Question(
        "walls",
        f"{what} of what",
        "A sheet as sold ('3/4 plywood', '1/2 marine plywood'), or thickness and material:\n"
        "'3/4 in western redcedar', '18 mm marine plywood'. All: yardfast materials",
        read.sheet_or_board,
        default,
    )


def _foot_default(answers: Answers) -> str:
    """Return a foot somewhat wider than the body: the reach of lumber beyond the wall."""
    metric = read.is_metric(answers["height"])
    step = 0.01 if metric else read.INCH
    width = step * round((read.flats(answers, "bottom") + 6.0 * read.INCH) / step)
    return f"{read.size(width, metric)}, 2x6 flat"


_FOOT = Question(
    "foot",
    "Foot: its width flat to flat, and its lumber",
    "The ring of lumber that it stands on: '24 in, 2x6 flat'. A wider one tips later.",
    read.foot,
    _foot_default,
)


def _sign_foot(text: str, answers: Answers) -> Answers:
    found = read.foot(text, answers)
    _, high = read.section(found["lumber"])
    if read.metres(answers["lower"]) < high:
        raise WrongAnswer(text, f"feet no higher than the board's lower edge, {answers['lower']}")
    return found


def _eaves(text: str, answers: Answers) -> Answers:
    found = read.length(text)
    if read.metres(found) <= read.metres(answers["height"]):
        raise WrongAnswer(text, f"more than the wall's height, {answers['height']}")
    return {"eaves": found}


_ASKED: Mapping[str, tuple[Question, ...]] = {
    "tower": (
        _sides("the tower", "8"),
        _height("its body, without foot and roof", "48 in"),
        _widths("the body", "18 in, 10 in", "450 mm, 250 mm"),
        _walls("Walls"),
        _FOOT,
    ),
    "well": (
        _sides("the wall", "8"),
        _height("the wall", "24 in"),
        _widths("the wall", "30 in", "760 mm"),
        _walls("Wall and roof", "3/4 in western redcedar"),
        Question(
            "eaves",
            "Height of the eaves above the ground",
            "Where the roof begins: the two posts reach up to it.",
            _eaves,
            _by_units("66 in", "1680 mm"),
        ),
    ),
    "post": (
        _sides("the post", "4"),
        _height("the post", "48 in"),
        _widths("the post", "5 1/2 in", "140 mm"),
        Question(
            "wood",
            "Post of what",
            "The name of a material, such as 'southern pine, treated' or 'western redcedar'.\n"
            "All: yardfast materials",
            lambda text, _: {"material": read.material(text)},
            "southern pine, treated",
        ),
        Question(
            "foot",
            "Foot: its width, and the boards that it is of",
            "A square of boards laid flat, side by side: '24 in, 2x6 flat'. A wider one tips later.",
            read.foot,
            _by_units("24 in, 2x6 flat", "600 mm, 2x6 flat"),
        ),
    ),
    "sign": (
        Question(
            "board",
            "Board: wide and high",
            "Two lengths parted by a comma: '48 in, 24 in', '1200 mm, 600 mm'.",
            read.two_lengths("width", "height", "48 in, 24 in"),
            "48 in, 24 in",
        ),
        Question(
            "lower",
            "Height of its lower edge above the ground",
            "The higher, the more wind, and the longer its arm.",
            read.one_length("lower"),
            _by_units("30 in", "750 mm"),
        ),
        _walls("Board"),
        Question(
            "legs",
            "Two legs of which lumber",
            "As sold: '4x4', '2x4'. Their actual size is taken.",
            read.post_lumber("legs"),
            "4x4",
        ),
        Question(
            "foot",
            "Feet, front to back: how long, and their lumber",
            "One under each leg: '36 in, 4x4', '36 in, 2x6 flat'. Longer ones tip later.",
            _sign_foot,
            _by_units("36 in, 4x4", "900 mm, 4x4"),
        ),
    ),
    "arbor": (
        Question(
            "plan",
            "Between the middles of the posts: wide and deep",
            "Two lengths parted by a comma, side to side and front to back: '48 in, 24 in'.",
            read.two_lengths("width", "depth", "48 in, 24 in"),
            "48 in, 24 in",
        ),
        Question(
            "height",
            "Height of the posts",
            "Beams and slats come on top of them.",
            read.one_length("height"),
            _by_units("78 in", "2000 mm", "width"),
        ),
        Question(
            "posts",
            "Four posts of which lumber",
            "As sold: '4x4', '6x6'. Their actual size is taken.",
            read.post_lumber("posts"),
            "4x4",
        ),
        Question(
            "lattice",
            "What closes the two sides?",
            "Wind passes through a lattice; vines close it, and triple its wind.",
            choose("lattice", LATTICES),
            "lattice",
            LATTICES,
        ),
        Question(
            "foot",
            "Sills, front to back: how long, and their lumber",
            "One under each side: '42 in, 2x6 flat'. Longer ones tip later.",
            read.foot,
            _by_units("42 in, 2x6 flat", "1070 mm, 2x6 flat"),
        ),
    ),
    "wheel": (
        _sides("the tower", "4"),
        _height("the tower's body", "60 in"),
        _widths("the body", "24 in, 8 in", "600 mm, 200 mm"),
        _walls("Walls", "1/2 plywood"),
        Question(
            "wheel",
            "Wheel: its width over all, and its blades",
            "Tip to tip, and how many: '36 in, 12 blades'. It looks to the front.",
            read.wheel,
            _by_units("36 in, 12 blades", "900 mm, 12 blades"),
        ),
    ),
}
KINDS = tuple(_ASKED)
MOST_ASKED = max(
    sum(question.follows is None for question in chain(asked, _SITE)) for asked in _ASKED.values()
)
