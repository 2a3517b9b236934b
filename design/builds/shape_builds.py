"""How the keys of each shape become the shape, and what is wrong between them."""

from ..reader.row import Row
from ..shapes.ball import Ball
from ..shapes.bodies import Shell, Solid
from ..shapes.boxes import FACES, Box
from ..shapes.flat import Frame, Panel, Plate
from ..shapes.plans import Plan, Rectangle, Regular
from ..shapes.rotor import Rotor
from ..shapes.shape import Shape
from ..shapes.weight import Weight
from .sizes import (
    ROUNDING,
    across_flats,
    largest_hollow,
    largest_lean_wall,
    length_as_shown,
    shell_height,
    wall_fits,
    width_keys,
)
from .stock import lumber_section, thickness


def build_shell(row: Row) -> Shape | None:
    """Return a hollow body, or None with its faults recorded."""
    row.need("sides")
    sides = row.count("sides")
    bottom, top = across_flats(row, "bottom", sides), across_flats(row, "top", sides)
    height, wall = shell_height(row, bottom, top), thickness(row, "wall")
    if sides is None or bottom is None or top is None or height is None or wall is None:
        return None
    lean = (bottom - top) / 2.0
    largest = largest_lean_wall(max(bottom, top), lean, height)
    if not wall_fits(row, "wall", wall, largest, "shape = 'solid', if it is solid"):
        return None
    if wall >= largest_lean_wall(min(bottom, top), lean, height):
        row.note("its walls meet at the narrow end, which is closed")
    return Shell(sides, bottom, top, height, wall)


def build_solid(row: Row) -> Shape | None:
    """Return a solid body, or a square post of lumber, or None with its faults recorded."""
    if row.given("lumber"):
        section = lumber_section(
            row, ("sides", *width_keys("bottom"), *width_keys("top")), standing=True
        )
        row.need("height")
        height = row.quantity("height")
        if section is None or height is None:
            return None
        if section.wide != section.thin:
            row.refuse("lumber", "square lumber, such as '4x4'", "shape = 'box'")
            return None
        return Solid(4, section.wide, section.wide, height)
    row.need("sides", "height")
    sides, height = row.count("sides"), row.quantity("height")
    bottom, top = across_flats(row, "bottom", sides), across_flats(row, "top", sides)
    if sides is None or bottom is None or top is None or height is None:
        return None
    return Solid(sides, bottom, top, height)


def build_box(row: Row) -> Shape | None:
    """Return a rectangular body, or a post of lumber, or None with its faults recorded."""
    if row.given("lumber"):
        section = lumber_section(row, ("length", "width"), standing=True)
        row.need("height")
        length = section.wide if section else None
        width = section.thin if section else None
    else:
        row.need("length", "width", "height")
        length, width = row.quantity("length"), row.quantity("width")
    height, wall = row.quantity("height"), thickness(row, "wall", needed=False)
    faces = row.choices("open")
    if faces and not (row.given("wall") or row.given("stock")):
        row.refuse("open", "'wall' beside it: only a hollow box has open faces")
        return None
    if faces == FACES:
        row.refuse("open", "at least one closed face", "leave one out")
        return None
    if length is None or width is None or height is None:
        return None
    if row.failed("top_length", "top_width", "open"):
        return None
    tops = row.quantity("top_length"), row.quantity("top_width")

    def box(thick: float | None) -> Box:
        return Box(length, width, height, thick, faces, *tops)

    def hollow(thick: float) -> bool:
        return box(thick * (1.0 + ROUNDING)).inner() is not None

    if wall is not None and not hollow(wall):
        largest = largest_hollow(hollow, max(length, width, height))
        wall_fits(row, "wall", wall, min(largest, wall), "leave out 'wall', if it is solid")
        return None
    return box(wall)


def build_plate(row: Row) -> Shape | None:
    """Return a plate lying flat, or None with its faults recorded."""
    plan = _plan(row, "width")
    thick = thickness(row, "thickness")
    holes = [key for key in width_keys("hole") if row.given(key)]
    if holes and (row.given("length") or row.given("width")):
        row.refuse(
            holes[0],
            "no hole in a rectangular plate",
            "a 'frame' with 'length' and 'breadth' is open in the middle",
        )
        return None
    sides = row.count("sides")
    hole = across_flats(row, "hole", sides, needed=False) if holes else 0.0
    if plan is None or thick is None or hole is None:
        return None
    if isinstance(plan, Regular) and hole >= plan.across * (1.0 - ROUNDING):
        row.refuse(holes[0], f"less than the plate's own {length_as_shown(row, plan.across)}")
        return None
    return Plate(plan, thick, hole, _or(row.quantity("solidity"), 1.0))


def build_panel(row: Row) -> Shape | None:
    """Return a board or lattice that stands, or None with its faults recorded."""
    row.need("width", "height")
    width, height = row.quantity("width"), row.quantity("height")
    thick = thickness(row, "thickness")
    if width is None or height is None or thick is None:
        return None
    solidity = _or(row.quantity("solidity"), 1.0)
    return Panel(width, height, thick, solidity, bool(row.flag("climbers")))


def build_frame(row: Row) -> Shape | None:
    """Return a ring of lumber, or None with its faults recorded."""
    plan = _plan(row, "breadth")
    if row.given("lumber"):
        section = lumber_section(row, ("width", "height"), standing=False)
        width, height = (section.in_plan, section.high) if section else (None, None)
        key = "lumber"
    else:
        row.need("width", "height")
        width, height, key = row.quantity("width"), row.quantity("height"), "width"
    if plan is None or width is None or height is None:
        return None
    if not wall_fits(row, key, width, plan.least_width / 2.0, "shape = 'plate', if it is closed"):
        return None
    return Frame(plan, width, height)


def build_ball(row: Row) -> Shape | None:
    """Return a ball, or None with its faults recorded."""
    row.need("across")
    across, wall = row.quantity("across"), thickness(row, "wall", needed=False)
    if across is None:
        return None
    if wall is not None and not wall_fits(
        row, "wall", wall, across / 2.0, "leave out 'wall', if it is solid"
    ):
        return None
    return Ball(across, wall)


def build_rotor(row: Row) -> Shape | None:
    """Return a wheel of blades, or None with its faults recorded."""
    row.need("blades", "span", "root", "tip")
    blades, thick = row.count("blades"), thickness(row, "thickness")
    span, root, tip = (row.quantity(key) for key in ("span", "root", "tip"))
    facing, yaws = row.quantity("facing"), bool(row.flag("yaws"))
    if yaws and row.given("facing"):
        row.refuse(
            "facing",
            "no 'facing' beside yaws = true: it turns into the wind",
            "leave out one of the two",
        )
    elif not yaws and not row.given("yaws"):
        row.need("facing", reason=", clockwise from the back (+y), or yaws = true")
    elif not yaws:
        row.need("facing", reason=", clockwise from the back (+y)")
    if blades is None or span is None or root is None or tip is None or thick is None:
        return None
    return Rotor(
        blades,
        span,
        root,
        tip,
        thick,
        facing,
        _or(row.quantity("solidity"), 1.0),
        _or(row.quantity("pitch"), 0.0),
        row.flag("spins") is not False,
        yaws,
    )


def build_weight(row: Row) -> Shape | None:
    """Return a point mass, or None with its faults recorded."""
    row.need("mass")
    return Weight()


def _plan(row: Row, width: str) -> Plan | None:
    """Return a flat piece's outline: regular by sides and across, or a rectangle."""
    regular = [key for key in ("sides", *width_keys("across")) if row.given(key)]
    # A frame's own 'width' is that of its lumber, so only its 'breadth' tells of a rectangle.
    oblong = [key for key in ("length", width) if row.given(key)]
    if regular and oblong:
        row.refuse(
            oblong[0],
            f"either 'sides' and 'across' or 'length' and '{width}', not both",
            f"leave out {', '.join(oblong)}, or {', '.join(regular)}",
        )
        return None
    if oblong:
        row.need("length", width)
        length, across = row.quantity("length"), row.quantity(width)
        return Rectangle(length, across) if length is not None and across is not None else None
    row.need("sides", reason=f" (and 'across'), or 'length' and '{width}'")
    sides = row.count("sides")
    across = across_flats(row, "across", sides)
    return Regular(sides, across) if sides is not None and across is not None else None


def _or(value: float | None, default: float) -> float:
    return default if value is None else value
