"""The steps from weight to tipping, sliding and bearing."""

from collections import Counter
from math import isfinite
from typing import Any

from ...checks.examination import Examination
from ...checks.judged.judging import Kind
from ...checks.sides import over_found
from ...checks.stated.worked import gripping, slope_parts, turning
from ...design.structure import GRAVITY
from ..wording.words import side_said
from .calculation_text import (
    calculation_section,
    calculation_table,
    four_figures,
    paragraph,
    ratio,
    step,
)


def weight(examination: Examination) -> dict[str, Any]:
    """Return weight and centre of mass, part by part."""
    structure = examination.structure
    copies = Counter(body.part for body in structure.bodies)
    rows = [
        [
            part.name,
            part.material or ("as given" if part.mass is not None else "density given"),
            str(copies[i]),
            four_figures(1000.0 * float(structure.part_volume[i])),
            *(four_figures(float(structure.part_mass[k, i])) for k in range(3)),
            four_figures(float(structure.part_centre[i, 2])),
        ]
        for i, part in enumerate(examination.design.parts)
    ]
    mass = structure.mass("typical")
    z = float(structure.centre_of_mass("typical")[2])
    heads = ["Part", "Material", "Copies", "dm³", "light kg", "typical kg", "heavy kg", "z m"]
    return calculation_section(
        "Weight and balance point",
        calculation_table(
            heads, rows, "All copies of each part; the volume is that of its material."
        ),
        step("weight", "Typical weight", {"m": mass, "W": mass * GRAVITY}, g=f"{GRAVITY}"),
        step("centre", "Height of the balance point", {"mz": mass * z, "m": mass, "z": z}),
        paragraph(
            f"Light {four_figures(structure.weight('light'))} N, heavy "
            f"{four_figures(structure.weight('heavy'))} N. Stability is judged with the light "
            "weight, "
            "the gusts at which it tips and slides with the typical one."
        ),
    )


def tipping(examination: Examination) -> dict[str, Any]:
    """Return tipping of the piece without anchors."""
    check, used = examination.overturning, examination.factors
    t = turning(examination)
    sine, cosine = slope_parts(examination)
    over = side_said(over_found(examination, check.toward_deg or 0.0))
    return calculation_section(
        f"Tipping over {over}, without anchors",
        step(
            "overturning",
            "What turns it over, about the line on which it turns",
            {
                "w": used.wind,
                "Mw": t.wind_moment,
                "U": t.uplift,
                "a": t.uplift_arm,
                "M": check.demand,
            },
            used.source,
        ),
        step(
            "holding",
            "What its light weight holds against it",
            {
                "D": check.dead,
                "W": t.weight,
                "d": t.arm,
                "z": t.height,
                "cos": cosine,
                "sin": sine,
                "M": check.capacity,
            },
            used.source,
        ),
        paragraph(
            f"The line lies {four_figures(t.pivot)} m from the middle, toward "
            f"{four_figures(check.toward_deg or 0.0)} deg; on ground that gives way it lies a "
            "little "
            "inside the edge. Mw is the sum of F z times the cosine of the angle between wind and "
            "that way."
        ),
        ratio("Utilization", check),
    )


def sliding(examination: Examination) -> dict[str, Any]:
    """Return sliding of the piece without anchors."""
    check, used = examination.sliding, examination.factors
    g = gripping(examination)
    sine, cosine = slope_parts(examination)
    return calculation_section(
        f"Sliding on {examination.site.ground}, without anchors",
        step(
            "pushing",
            "What pushes it along",
            {
                "w": used.wind,
                "H": g.force,
                "D": check.dead,
                "W": g.weight,
                "sin": sine,
                "S": check.demand,
            },
            used.source,
        ),
        step(
            "friction",
            "What friction holds; mu is that of the contact, less where the force also turns it",
            {
                "mu": g.share,
                "D": check.dead,
                "W": g.weight,
                "cos": cosine,
                "w": used.wind,
                "U": g.uplift,
                "R": check.capacity,
            },
            "; ".join(
                dict.fromkeys(
                    examination.standing.ground.friction[patch.contact].source
                    for patch in examination.structure.patches
                )
            ),
        ),
        ratio("Utilization", check),
    )


def bearing(examination: Examination) -> dict[str, Any]:
    """Return the pressure on the ground."""
    check = next(each for each in examination.checks if each.kind is Kind.BEARING)
    title = f"Bearing on {examination.site.ground}"
    if not isfinite(check.demand):
        return calculation_section(
            title, paragraph("Nothing of the foot stays loaded: it tips first.")
        )
    return calculation_section(
        title,
        step(
            "bearing",
            "The force on the ground over the part of the contact whose middle lies beneath it",
            {"p": check.demand, "pa": check.capacity},
            check.source,
        ),
        ratio("Utilization", check),
    )
