"""The documents on which an answer rests, each named once."""

import re

from ... import references
from ...checks.stated.cited import Cited
from .filled import first_source, plain_source


def sources(cited: Cited) -> list[str]:
    """Return where relations and values come from: standards, tables, then numbered sources."""
    plain = [plain_source(each) for source in cited.values for each in source.split(";")]
    plain += [first_source(source) for source in cited.materials]
    numbered = sorted({n for source in cited.values for n in re.findall(r"\[(R\d+)\]", source)})
    known = {row["id"]: row["title"] for row in references.table("ground/sources").rows}
    titles = [known[number] for number in numbered if number in known]
    return [each for each in dict.fromkeys([cited.edition, *plain, *titles]) if each.strip()]
