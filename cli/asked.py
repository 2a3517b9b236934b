"""What `yardfast new` asks for each kind of piece: at most eight questions, and follow-ups."""

from collections.abc import Callable, Mapping

from ..units import INCH
from . import answers as read
from .asked_site import SITE
from .questions import AnswerError, Answers, Choice, Default, Question, choose
from .starting_files import READY

LATTICES = (
    Choice("lattice", "lattice: half wood, half air"),
    Choice("climbers", "lattice that vines will grow over"),
    Choice("none", "nothing: open"),
)


def questions(kind: str) -> tuple[Question, ...]:
    """Return the questions for a kind of piece. KeyError where there is no such kind."""
    return SITE if kind in READY else _ASKED[kind] + SITE


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
        "Two widths parted by a comma; one if it is straight. They are flat to flat, unless you "
        "add 'points' (corner to corner) or 'panel' (of one panel): '18 in, 10 in points'.",
        read.widths,
        _by_units(imperial, metric),
    )


def _walls(what: str, default: Default = "3/4 plywood") -> Question:
    return Question(
        "walls",
        f"{what} of what",
        "A sheet as sold ('3/4 plywood', '1/2 marine plywood'), or thickness and material: "
        "'3/4 in western redcedar', '18 mm marine plywood'. All: yardfast materials",
        read.sheet_or_board,
        default,
    )


def _foot_default(answers: Answers) -> str:
    """Return a foot somewhat wider than the body: the reach of lumber beyond the wall."""
    metric = read.is_metric(answers["height"])
    step = 0.01 if metric else INCH
    width = step * round((read.flats(answers, "bottom") + 6.0 * INCH) / step)
    return f"{read.size(width, metric)}, 2x6 flat"


def _eaves_default(answers: Answers) -> str:
    """Return eaves that one stands upright under, and that leave the wall's opening free."""
    metric = read.is_metric(answers["height"])
    upright, opening = (1.68, 1.07) if metric else (66.0 * INCH, 42.0 * INCH)
    return read.size(max(upright, read.metres(answers["height"]) + opening), metric)


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
        raise AnswerError(text, f"feet no higher than the board's lower edge, {answers['lower']}")
    return found


def _eaves(text: str, answers: Answers) -> Answers:
    found = read.length(text)
    if read.metres(found) <= read.metres(answers["height"]):
        raise AnswerError(text, f"more than the wall's height, {answers['height']}")
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
        _walls(
            "Wall and roof",
            _by_units("3/4 in western redcedar", "19 mm western redcedar"),
        ),
        Question(
            "eaves",
            "Height of the eaves above the ground",
            "Where the roof begins: the two posts reach up to it.",
            _eaves,
            _eaves_default,
        ),
    ),
    "post": (
        _sides("the post", "4"),
        _height("the post", "48 in"),
        _widths("the post", "5 1/2 in", "140 mm"),
        Question(
            "wood",
            "Post of what",
            "The name of a material, such as 'southern pine, treated' or 'western redcedar'. "
            "All: yardfast materials",
            lambda text, _: {"material": read.material(text)},
            "southern pine, treated",
        ),
        Question(
            "foot",
            "Foot: its width, and the boards that it is of",
            "A square of boards laid flat, side by side: '24 in, 2x6 flat'. Wider ones tip later.",
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
