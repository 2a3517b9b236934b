"""What stands behind the first screen, a section for each option: loaded where it is asked for."""

from ...checks.examination import Examination
from ...checks.tied import Way
from ...units.frozen import ByValue, values_by_name
from ..told.facts import facts_of
from ..wording.amounts import Amounts
from ..wording.lines import Line, spelled_out, wrapped
from .first_screen import MOST_COLUMNS, first_screen, mood_of, title, word_line

_WIDE = MOST_COLUMNS


class Shown(ByValue, frozen=True):
    """What is asked for behind the first screen."""

    numbers: bool = False
    as_read: bool = False
    assumed: bool = False
    cautions: bool = False
    everything: bool = False
    engineer: bool = False

    @property
    def nothing(self) -> bool:
        """Return whether the first screen alone is asked for."""
        return not any(values_by_name(self).values())


def shown_of(found: Examination, shown: Shown, columns: int = MOST_COLUMNS) -> list[Line]:
    """Return the first screen, or the word with the sections that are asked for."""
    if shown.nothing:
        return first_screen(found, columns)
    lines = first_screen(found, columns) if shown.everything or shown.engineer else _head(found)
    amounts = Amounts(found.design.units == "metric")
    sections = (
        (shown.numbers or shown.everything or shown.engineer, _numbers),
        (bool(found.verdict.mend) and (shown.numbers or shown.everything), _mends),
        (shown.engineer, _engineer),
        (shown.as_read or shown.everything, _as_read),
        (shown.assumed or shown.everything, _assumed),
        (shown.cautions or shown.everything, _cautions),
    )
    for wanted, section in sections:
        if wanted:
            lines += [Line(""), *section(found, amounts)]
    return lines


def _head(found: Examination) -> list[Line]:
    """Return what it is and its word, in two lines or three."""
    facts, verdict = facts_of(found), found.verdict
    word, said = word_line(verdict, facts)
    lines = wrapped(f"{word}   {said}", "  ", "    ", width=_WIDE)
    first = Line(lines[0].text, word=(word, mood_of(verdict.word)))
    return [*title(facts, _WIDE), first, *lines[1:]]


def _numbers(found: Examination, amounts: Amounts) -> list[Line]:
    """Return each check with what it has and needs, the gusts with their range, and pulls."""
    from ...checks.how_often import how_often  # noqa: PLC0415
    from ...checks.stated.shown_checks import shown_checks  # noqa: PLC0415
    from ...checks.stated.starts import starts  # noqa: PLC0415
    from ..told.how_often_words import how_often_said  # noqa: PLC0415
    from ..told.tied_words import needed_pulls  # noqa: PLC0415
    from ..wording.asked_wind import asked_wind, code_wind  # noqa: PLC0415
    from ..wording.remark import capital  # noqa: PLC0415
    from .checks_table import checks_table  # noqa: PLC0415
    from .starts import starts_said  # noqa: PLC0415

    lines, tied = checks_table(shown_checks(found), amounts), found.verdict.tied
    said = [starts_said(starts(found), amounts)]
    if often := how_often_said(how_often(found), amounts):
        said.append(f"{capital(often)}.")
    if tied.ways[:1] == (Way.ANCHORS,) and tied.anchors is not None:
        said.append(needed_pulls(tied.anchors, found.remedies.stakes, amounts))
    said.append(f"Asked: {asked_wind(found.site, amounts)}.")
    said.append(code_wind(found.site, amounts) or "")
    for each in said:
        lines += wrapped(each, rest="  ", width=_WIDE) if each else []
    return lines


def _mends(found: Examination, amounts: Amounts) -> list[Line]:
    from ...checks.sizing.mending import mending  # noqa: PLC0415
    from ..advice.mend_lines import mend_lines  # noqa: PLC0415

    del amounts
    return mend_lines(mending(found), facts_of(found), _WIDE)


def _engineer(found: Examination, amounts: Amounts) -> list[Line]:
    from ...checks.stated.governed import all_governed  # noqa: PLC0415
    from ..fastening.seam_words import seam_lines  # noqa: PLC0415
    from .checks_table import engineer, wind_line  # noqa: PLC0415

    fastened = {each.row.part for each in found.fastened_seams}
    return [
        *engineer(all_governed(found, found.checks), amounts),
        *seam_lines(found.seams, fastened, amounts),
        *wind_line(found.wind, found.exposed.kinds, found.site, found.factors, found.limits),
    ]


def _as_read(found: Examination, amounts: Amounts) -> list[Line]:
    from ...checks.stated.proof import proof_of  # noqa: PLC0415
    from ..wording.as_read import as_read  # noqa: PLC0415
    from .prove import prove  # noqa: PLC0415

    return [*as_read(found.structure, amounts), *prove(proof_of(found), amounts)]


def _assumed(found: Examination, amounts: Amounts) -> list[Line]:
    """Return what was taken for granted, and which values were not looked up in their source."""
    from ...checks.stated.assumed import assumed  # noqa: PLC0415
    from ...checks.stated.from_memory import from_memory  # noqa: PLC0415
    from ..told.assumptions import assumptions  # noqa: PLC0415
    from ..told.unverified import unverified  # noqa: PLC0415

    lines = spelled_out("Assumed", list(assumptions(assumed(found), amounts)), width=_WIDE)
    memory = unverified(from_memory(found))
    if memory:
        lines += spelled_out(f"{len(memory)} not looked up in the source", memory, width=_WIDE)
    return lines


def _cautions(found: Examination, amounts: Amounts) -> list[Line]:
    """Return what to take care of, and all that was not looked at, each in one full sentence."""
    from ...checks.stated.cautions import cautions_of  # noqa: PLC0415
    from ..told.cautions import cautions  # noqa: PLC0415
    from ..told.not_checked import not_checked  # noqa: PLC0415

    lines = spelled_out("Take care", list(cautions(cautions_of(found), amounts)), width=_WIDE)
    unlooked = list(not_checked(found.verdict.not_looked_at, amounts))
    return [*lines, *spelled_out("Not looked at", unlooked, width=_WIDE)]
