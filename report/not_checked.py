"""What was not checked of a design: said on every output, so that nobody reads in a promise."""

from ..checks.examination import Examination
from ..design.shapes.rotor import Rotor
from ..loads.methods import standard_of
from .amounts import Amounts
from .fastened_seams import seams_under_loads
from .how_often_words import how_often
from .joint_words import uncovered
from .load_words import loads_unchecked
from .member_words import strength_unchecked
from .remark import Remark, are_many, joined
from .seam_words import seams_unchecked
from .stand import anchor_word

_NAMED = 6
_NAMED_BRIEFLY = 4


def not_checked(examination: Examination) -> tuple[Remark, ...]:
    """Return what was not checked, the joints first."""
    return tuple(
        remark
        for remark in (
            _joints(examination),
            strength_unchecked(examination),
            seams_unchecked(examination),
            seams_under_loads(examination),
            loads_unchecked(examination),
            _hold_downs(examination),
            _guys(examination),
            Remark(
                "Snow and ice were not counted: they load roofs and decks, and never help here.",
                "snow, ice",
            ),
            Remark(
                "Nothing hung on it was counted: lights, banners, wreaths, vines, flower boxes.",
                "things hung on it",
            ),
            _wheel(examination),
            _people(examination),
            Remark(
                "Sway, flutter and shaking were not looked at: wind is taken as a steady push, "
                "as long as a gust.",
                "sway",
            ),
            _how_often(examination),
            Remark(
                "Rot, rust, frost heave and settling of the ground were not counted.",
                "rot, frost",
            ),
        )
        if remark is not None
    )


def _joints(examination: Examination) -> Remark | None:
    names = [part.name for part in examination.design.parts if not part.loose]
    if examination.joints:
        return _other_joints(uncovered(examination))
    if len(names) < 2:
        return None
    said = joined(names) if len(names) <= _NAMED else f"its {len(names)} parts"
    return Remark(
        f"How {said} are fastened to one another was not checked: they are taken as held together.",
        f"how {said if len(names) <= _NAMED_BRIEFLY else f'its {len(names)} parts'} are fastened",
    )


def _other_joints(names: list[str]) -> Remark | None:
    """Say of which parts no joint tells how they are fastened."""
    if not names:
        return None
    said = joined(names) if len(names) <= _NAMED else f"{len(names)} other parts"
    few = joined(names) if len(names) <= _NAMED_BRIEFLY else f"{len(names)} other parts"
    return Remark(
        f"How {said} {'are' if are_many(names) else 'is'} fastened was not checked: no joint "
        "says it.",
        f"how {few} {'are' if are_many(names) else 'is'} fastened",
    )


def _hold_downs(examination: Examination) -> Remark | None:
    if examination.posts is not None and len(examination.posts.part) == 1:
        return Remark(
            "How wind off its middle twists the post, and turns it in the ground, was not checked.",
            "twist of the post",
        )
    if not examination.needs_anchors or examination.posts is not None:
        return None
    if not examination.standing.ground.stakes_possible:
        return Remark(
            "No bolt and no slab was checked: what a bolt holds depends on both.",
            "the bolts and the slab",
        )
    one = anchor_word(examination)
    return Remark(
        f"No {one} was checked: what one holds in your soil is known once it is pulled on "
        "the spot.",
        f"{one}s in your soil",
    )


def _guys(examination: Examination) -> Remark | None:
    if not examination.held.guys:
        return None
    return Remark(
        "How the guys are fastened to the piece was not checked, nor whether it bears their pull "
        "there.",
        "how the guys are fastened to the piece",
    )


def _wheel(examination: Examination) -> Remark | None:
    wheels = [p.name for p in examination.design.parts if isinstance(p.shape, Rotor)]
    if not wheels:
        return None
    said = joined(wheels)
    judged = {one.name for one in examination.members.judged}
    blades = "" if judged.issuperset(wheels) else "blades, "
    whole = f"{blades}hub, axle and bearing of {said} were not checked, nor how fast it may run."
    return Remark(whole[0].upper() + whole[1:], f"{blades}hub and axle of {said}")


def _people(examination: Examination) -> Remark | None:
    if examination.site.people in ("children", "public"):
        return None
    return Remark(
        "People who push, lean on or climb it were not judged; the push that tips it is stated.",
        "people",
    )


def _how_often(examination: Examination) -> Remark | None:
    site = examination.site
    if how_often(examination) is not None:
        return None
    amounts = Amounts(examination.design.units == "metric")
    wind = amounts.gust(site.wind, "near")
    if standard_of(site.method).is_code:
        return Remark(
            f"Whether {wind} is the code's wind for this place was not checked, nor how often it "
            "comes there.",
            f"whether {wind} is this place's wind",
        )
    return Remark(
        f"How often a gust of {wind} comes where it stands was not checked: it is what was asked "
        "for, not the wind of the place.",
        "how often it blows so",
    )
