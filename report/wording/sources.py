"""The documents on which an answer rests, each named once."""

import re

from ... import materials, references
from ...checks.examination import Examination
from ...loads.methods import standard_of
from .filled import first_source, plain_source


def sources(examination: Examination) -> list[str]:
    """Return where relations and values come from: standards, tables, then numbered sources."""
    ground = examination.standing.ground
    rubbing = dict.fromkeys(patch.contact for patch in examination.structure.patches)
    named = [part.material for part in examination.design.parts if part.material is not None]
    given = [
        *(check.source for check in (*examination.checks, *(examination.free or ()))),
        *(rating.source for rating in ground.ratings.values()),
        *(ground.friction[contact].source for contact in rubbing),
    ]
    method = examination.site.method
    edition = standard_of(method).document(method)
    plain = [plain_source(each) for source in given for each in source.split(";")]
    plain += [first_source(materials.find_material(name).source) for name in named]
    numbered = sorted({found for source in given for found in re.findall(r"\[(R\d+)\]", source)})
    known = {row["id"]: row["title"] for row in references.table("ground/sources").rows}
    titles = [known[number] for number in numbered if number in known]
    return [each for each in dict.fromkeys([edition, *plain, *titles]) if each.strip()]
