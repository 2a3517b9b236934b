"""Which bodies have seams: upright shells of flat panels."""

from ...design.placing import Body
from ...design.shapes.bodies import Shell
from ...design.structure import Structure


def seamed(body: Body) -> bool:
    """Return whether a body has seams that are worked out."""
    return isinstance(body.shape, Shell) and body.shape.sides > 0 and body.upright


def seamed_parts(structure: Structure) -> tuple[str, ...]:
    """Return the parts that have seams, in the file's order."""
    names = [structure.design.parts[body.part].name for body in structure.bodies if seamed(body)]
    return tuple(dict.fromkeys(names))
