"""What people call a sheet as sold, such as ``3/4 plywood``."""

import re
from collections.abc import Mapping
from functools import cache

from ...materials.stock import sheet_thicknesses

_GRADES = ("cdx", "acx", "bcx", "bc", "ac", "cd", "c-d", "a-c", "b-c", "exterior ply", "ext ply")
"""Veneer grades by which softwood plywood is sold (PS 1): A to D, X for glue that stands rain."""


@cache
def _sheet_words() -> Mapping[str, str]:
    return {name.casefold(): name for name in sheet_thicknesses()}


def sheet_thickness(text: str) -> tuple[str, float] | None:
    """Return the name and thickness in m of a sheet as sold, such as ``3/4 plywood``.

    Grades and the glue of softwood plywood, such as CDX or exterior, do not change its thickness;
    a sheet in mm is as thick as it says.
    """
    word = sheet_word(text)
    name = _sheet_words().get(word)
    if name is not None:
        return name, sheet_thicknesses()[name]
    metric = re.fullmatch(r"(\d{1,2}(?:\.\d)?)\s*mm ((?:marine )?plywood|osb|mdo)", word, re.ASCII)
    if metric is None or not 0.003 <= float(metric[1]) / 1000.0 <= 0.05:
        return None
    kind = metric[2].replace("osb", "OSB").replace("mdo", "MDO")
    return f"{metric[1]} mm {kind}", float(metric[1]) / 1000.0


def sheet_word(text: str) -> str:
    """Return what a person calls a sheet with the words of the table."""
    plain = " ".join(re.sub(r"[\s,]+", " ", text.casefold().replace("”", '"')).split())
    plain = re.sub(r"(?<=[\d½¼¾⅜⅝])[\s-]*(?:in\b\.?|inch(?:es)?\b|\"|'')", " ", plain)
    for sign, fraction in (("½", "1/2"), ("¼", "1/4"), ("¾", "3/4"), ("⅜", "3/8"), ("⅝", "5/8")):
        plain = plain.replace(sign, fraction)
    plain = re.sub(r"(?<=\d)mm\b", " mm", plain)
    plain = re.sub(rf"\b(?:{'|'.join(_GRADES)})\b(?: (?:plywood|ply))?", "plywood", plain)
    plain = re.sub(r"\b(?:softwood|exterior|ext|sanded|treated|pt) (?=ply)", "", plain)
    plain = re.sub(r"\bply\b", "plywood", plain)
    plain = re.sub(r"\b(?:sheets?|of|sheathing|board|grade)\b", " ", plain)
    turned = re.fullmatch(r"([a-z ]+?) ?(\d[\d/ -]*(?: mm)?)", " ".join(plain.split()))
    return f"{turned[2]} {turned[1]}" if turned else " ".join(plain.split())
