"""What a piece was found to do once it is changed, in a sentence: its checks by their plain names.

Only those that a builder asked about are named; what was not checked is said elsewhere.
"""

from collections.abc import Sequence

from .remark import are_many, joined

_WHOLE = {
    "overturning": "tip",
    "sliding": "slide",
    "bearing": "sink in",
    "push": "go over when pushed",
    "climb": "go over when climbed",
}
_PARTS = {
    "loose": ("does not tip", "do not tip"),
    "loose sliding": ("does not slide", "do not slide"),
    "load": ("does not tip it", "do not tip it"),
    "embedment": ("stays upright in the ground", "stay upright in the ground"),
    "joint": ("stays fastened", "stay fastened"),
    "seam": ("keeps its panels together", "keep their panels together"),
    "anchor": ("can take the pull", "can take the pull"),
    "anchor head": ("will not pull through", "will not pull through"),
    "guy": ("can take the pull", "can take the pull"),
    "member": ("is strong enough for the wind", "are strong enough for the wind"),
}

_OF_PARTS = ("loose", "loose sliding", "embedment", "member")
"""Checks that bear the name of a part, which may itself be one of many."""


def passing(names: Sequence[str]) -> str:
    """Return what passes: ``it neither tips nor slides; tower to foot stays fastened``."""
    said: list[str] = []
    whole = [_WHOLE[name] for name in names if name in _WHOLE]
    if len(whole) > 1:
        said.append(f"it does not {joined(whole, 'or')}")
    elif whole:
        said.append(f"it does not {whole[0]}")
    if whole[:2] == ["tip", "slide"]:
        more = f", nor does it {joined(whole[2:], 'or')}" if whole[2:] else ""
        said = [f"it neither tips nor slides{more}"]
    for kind, (one, many) in _PARTS.items():
        parts = [name for each, _, name in (n.partition(": ") for n in names) if each == kind]
        if parts:
            several = len(parts) > 1 or (kind in _OF_PARTS and are_many(parts))
            said.append(f"{joined(parts)} {many if several else one}")
    return "; ".join(said)


def named(name: str) -> str:
    """Return a check by its plain name: ``tipping``, ``joint tower to foot``."""
    plain = {"overturning": "tipping", "bearing": "sinking in", "climb": "climbing"}
    kind, colon, of = name.partition(": ")
    kind = {"member": "strength of", "embedment": "depth of", "seam": "seams of"}.get(kind, kind)
    return f"{kind} {of}" if colon else plain.get(name, name)
