"""What was assumed where the design is silent: each default that affected the answer."""

import re
from collections.abc import Iterator

from .. import materials
from ..checks.examination import Examination
from ..checks.one_degree import slides_on_a_degree, tips_on_a_degree
from .amounts import Amounts
from .assumed_wind import shape_assumptions, wind_assumptions
from .fastened_seams import seam_assumptions
from .fastener_words import thin_nails
from .joint_words import joint_assumptions
from .load_words import load_assumptions
from .member_words import member_assumptions
from .remark import joined


def assumptions(examination: Examination) -> tuple[str, ...]:
    """Return every default that affected the answer, each true of this design."""
    amounts = Amounts(examination.design.units == "metric")
    return (
        *_weights(examination, amounts),
        *_sizes(examination),
        *_ground(examination, amounts),
        *_level(examination, amounts),
        *_friction(examination),
        *_earth(examination, amounts),
        *_held_together(examination),
        *joint_assumptions(examination),
        *seam_assumptions(examination),
        *thin_nails(examination),
        *load_assumptions(examination),
        *wind_assumptions(examination),
        *shape_assumptions(examination),
        *member_assumptions(examination),
        *_basis(examination),
    )


def plain_source(source: str) -> str:
    """Return a source without its keys to the list of sources."""
    return re.sub(r"\s*(?:as quoted in )?\[R\d+\]", "", source).strip()


def first_source(source: str) -> str:
    """Return the first of several sources."""
    return plain_source(source).split("; ")[0]


def _weights(examination: Examination, amounts: Amounts) -> Iterator[str]:
    design = examination.design
    used = dict.fromkeys(
        p.material for p in design.parts if p.material and p.mass is None and p.density is None
    )
    if design.weighed is not None and used:
        names = joined(used)
        yield (
            f"What is of {names} is scaled to the {amounts.mass(design.weighed)} that a scale "
            "showed, all alike."
        )
        return
    for name in used:
        of = materials.find(name)
        typical, light, heavy = of.typical, of.light, of.heavy
        band = (
            ""
            if light == heavy
            else f" ({amounts.bare_density(light)} to {amounts.bare_density(heavy)})"
        )
        yield (
            f"{name[0].upper()}{name[1:]} weighs {amounts.density(typical)}{band}: "
            f"{of.stands_for} ({first_source(of.source)})."
        )


def _sizes(examination: Examination) -> Iterator[str]:
    for note in examination.design.notes:
        yield f"Read as: {note}."


def _ground(examination: Examination, amounts: Amounts) -> Iterator[str]:
    ground = examination.standing.ground
    yield f"Ground '{ground.name}' means {ground.description}; you can tell it: {ground.field_cue}."
    bears = ground.ratings["allowable pressure"]
    yield (
        f"{ground.name[0].upper()}{ground.name[1:]} is taken to bear "
        f"{amounts.pressure(bears.value)} ({plain_source(bears.source)})."
    )
    gives = ground.ratings.get("yield pressure")
    if gives is not None:
        yield (
            f"{ground.name[0].upper()}{ground.name[1:]} gives way under an edge at "
            f"{amounts.pressure(gives.value)} ({plain_source(gives.source)}), so it turns about a "
            "line a little inside its edge."
        )
    yield "Its foot is taken to bear on the ground all round."


def _level(examination: Examination, amounts: Amounts) -> Iterator[str]:
    """Say what one degree costs where no slope is given."""
    if examination.site.slope is not None:
        return
    limits = examination.limits
    both = (
        ("tipping", limits.forecast_tipping, tips_on_a_degree(examination)),
        ("sliding", limits.forecast_sliding, slides_on_a_degree(examination)),
    )
    costs = [
        f"{what} from about {amounts.bare_gust(now)} down to {amounts.gust(then)}"
        for what, now, then in both
        if now is not None and then is not None
    ]
    more = f": one degree of slope brings {joined(costs)}" if costs else ""
    yield f"The ground is taken as level, since no slope is given{more}."


def _earth(examination: Examination, amounts: Amounts) -> Iterator[str]:
    """Tell what the earth beside posts is taken to hold, and how it is shared among them."""
    posts = examination.posts
    if posts is None:
        return
    pressure = amounts.pressure_per_depth(float(posts.bearing.min()))
    yield (
        f"The earth beside a post may be asked for {pressure} of depth (IBC Table 1806.2, for the "
        f"class of {examination.site.ground}); the hole is filled and tamped in layers."
    )
    if len(posts.part) > 1:
        yield (
            "All posts share the wind alike, each turning in the ground by itself; what braces "
            "them to one another would help and is not counted."
        )


def _friction(examination: Examination) -> Iterator[str]:
    standing, design = examination.standing, examination.design
    kinds = dict.fromkeys(patch.contact for patch in standing.structure.patches)
    for kind in kinds:
        row = standing.ground.friction[kind]
        note = f"; {plain_source(row.note)}" if row.note else ""
        yield (
            f"Friction of {kind} on {standing.ground.name} is taken as {row.coefficient:.2f}: "
            f"{plain_source(row.source)}{note}."
        )
    for i in dict.fromkeys(patch.part for patch in standing.structure.patches):
        part = design.parts[i]
        if part.contact is None and part.material is None:
            yield f"What {part.name} rubs on the ground with is not said: taken as wood."


def _held_together(examination: Examination) -> Iterator[str]:
    loose = [part.name for part in examination.design.parts if part.loose]
    if loose:
        yield (
            f"All parts but {joined(loose)} are taken as held together; those are loose, held "
            "by their weight alone, and judged about their own contact as well."
        )
    elif len(examination.design.parts) > 1:
        yield "All parts are taken as held together, so that it tips and slides as one piece."


def _basis(examination: Examination) -> Iterator[str]:
    site, used = examination.site, examination.factors
    if site.basis == "service" and not site.safety_given:
        yield (
            f"Half again to spare is asked against tipping and sliding (factor of safety "
            f"{site.safety:g}): {plain_source(used.source)}."
        )
    elif not site.basis_given and site.basis != "service":
        yield f"Judged on the {site.basis} basis, since none is named: {plain_source(used.source)}."
