"""A changed design as text: the file that it was read from, its comments and order kept."""

import re
from collections.abc import Callable, Sequence
from itertools import pairwise
from math import degrees, hypot
from os.path import relpath
from pathlib import Path
from typing import Any

from ...design.builds.sizes import flats_from_points, flats_from_side
from ...design.model import Design, Part
from ...design.shapes.bodies import Shell
from ...design.shapes.cutout import Corners, Cutout
from ...design.shapes.flat import Frame, Plate
from ...design.shapes.gables import Gable
from ...design.shapes.member import Member
from ...design.shapes.plans import Plan, Rectangle, Regular
from ...design.shapes.shape import Shape
from ...loads.asce7.standard import ASCE7, LOWEST_ASCE_WIND
from ...loads.asce7.velocity_pressure import NOMINAL_TO_ULTIMATE
from ...loads.wind.site import Site
from ...units import KMH, MPH, POUND, plain
from .added_holding import added_holding
from .lines import KeyLine, part, text_line
from .written_sizes import written_size

_LIKE = 1.0e-9
_SEVERAL = ("part", "load", "guy")
_HEADING = re.compile(
    r"^[ \t]*\[{1,2}[ \t]*[A-Za-z_][\w.-]*[ \t]*\]{1,2}[ \t]*(#.*)?$", re.MULTILINE
)


def changed_text(old: Design, new: Design, folder: Path) -> str:
    """Return the text of ``old`` with what differs in ``new``, to be written into ``folder``.

    Changed are sizes, places, weights and the wind; parts may stand behind the old ones. ValueError
    where the text has not the form that is needed for it.
    """
    import tomlkit  # noqa: PLC0415 - only where a file is written
    from tomlkit.exceptions import TOMLKitError  # noqa: PLC0415

    write = Writer(old.units == "metric", tomlkit)
    try:
        tables = _Tables(old.text, tomlkit)
        _change_head(write, tables, old, new)
        for i, before in enumerate(old.parts):
            _change_part(write, tables, i, before, new.parts[i])
            _lead_to_drawing(write, tables.get("part", i), Path(old.file).parent, folder)
        _change_heights(write, tables, old, new)
        if len(new.parts) > len(old.parts):
            tables.heading("part")
        text = tables.text().rstrip("\n") + "\n"
    except (TOMLKitError, KeyError, TypeError) as error:
        raise ValueError(" ".join(map(str, error.args))) from None
    added = [_added(write, each) for each in new.parts[len(old.parts) :]]
    return "\n".join([text, *added, *added_holding(write, old, new)])


class _Tables:
    """The tables of a text, each read by itself, so that their order stays whatever it is."""

    def __init__(self, text: str, toml: Any) -> None:
        plain = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
        plain = plain.replace("\u00a0", " ")
        starts = [found.start() for found in _HEADING.finditer(plain)]
        pieces = [plain[a:b] for a, b in pairwise([0, *starts, len(plain)])]
        self._pieces: list[Any] = [toml.parse(piece) for piece in pieces]
        self._toml = toml

    def get(self, name: str, number: int = 0) -> Any:
        """Return a table, or the one of that number among those of its name. KeyError if none."""
        found = [piece[name] for piece in self._pieces if name in piece]
        if number >= len(found):
            raise KeyError(f"[{name}] under a heading of its own")
        table: Any = found[number]
        return table[0] if name in _SEVERAL else table

    def heading(self, name: str) -> None:
        """Raise KeyError where no ``[[name]]`` stands that another could follow."""
        if not any(name in piece for piece in self._pieces[1:]):
            raise KeyError(f"[[{name}]] under a heading of its own")

    def text(self) -> str:
        """Return the text of all tables."""
        return "".join(self._toml.dumps(piece) for piece in self._pieces)


class Writer:
    """Values as the file has them, in the design's units; a comment behind one stays."""

    def __init__(self, metric: bool, toml: Any) -> None:
        self.metric = metric
        self._toml = toml

    def length(self, metres: float) -> str:
        """Return a length."""
        metres = round(metres, 9)
        return ("-" if metres < 0.0 else "") + written_size(abs(metres), self.metric, 64)

    def mass(self, kilograms: float) -> str:
        """Return a mass."""
        return f"{plain(kilograms, 7)} kg" if self.metric else f"{plain(kilograms / POUND, 7)} lb"

    def speed(self, metres_a_second: float) -> str:
        """Return a wind speed."""
        if self.metric:
            return f"{plain(metres_a_second / KMH, 7)} km/h"
        return f"{plain(metres_a_second / MPH, 7)} mph"

    def set(self, table: Any, key: str, text: str) -> None:
        """Set a key to a text."""
        table[key] = self._toml.string(text, literal=True)

    def set_lengths(self, table: Any, key: str, old: Sequence[float], new: Sequence[float]) -> None:
        """Set a list of lengths; those that stay as they were keep their text."""
        listed = table.get(key)
        texts = [
            str(listed[i]) if listed is not None and _alike(a, b) else self.length(b)
            for i, (a, b) in enumerate(zip(old, new, strict=True))
        ]
        table[key] = self._array(texts)

    def set_corners(self, table: Any, key: str, corners: Corners) -> None:
        """Set a list of points."""
        table[key] = self._nested([[self.length(c) for c in corner] for corner in corners])

    def set_outlines(self, table: Any, key: str, outlines: Sequence[Corners]) -> None:
        """Set a list of lists of points."""
        table[key] = self._nested(
            [[[self.length(c) for c in corner] for corner in each] for each in outlines]
        )

    def _array(self, texts: Sequence[str]) -> Any:
        array = self._toml.array()
        for text in texts:
            array.append(self._toml.string(text, literal=True))
        return array

    def _nested(self, values: Sequence[Any]) -> Any:
        if values and isinstance(values[0], str):
            return self._array(values)
        array = self._toml.array()
        for value in values:
            array.append(self._nested(value))
        return array


def _change_head(write: Writer, tables: _Tables, old: Design, new: Design) -> None:
    if old.weighed != new.weighed and new.weighed is not None:
        write.set(tables.get("design"), "weighed", write.mass(new.weighed))
    before, after = old.table(Site), new.table(Site)
    if before.wind == after.wind:
        return
    nominal = after.wind_kind == "nominal"
    write.set(
        tables.get("site"),
        "wind",
        write.speed(after.wind / (NOMINAL_TO_ULTIMATE if nominal else 1)),
    )
    tables.get("site")["wind"].comment("the greatest that it stands as it is")
    below_maps = after.method in ASCE7.names and after.wind < LOWEST_ASCE_WIND
    if below_maps and after.wind_kind is None:
        write.set(tables.get("site"), "wind_kind", "ultimate")


def _change_part(write: Writer, tables: _Tables, number: int, old: Part, new: Part) -> None:
    if new is old:
        return
    table = tables.get("part", number)
    if new.shape is not old.shape and new.shape != old.shape:
        _change_shape(write, table, old.shape, new.shape)
    if new.place.on != old.place.on and new.place.on is not None:
        write.set(table, "on", new.place.on)
    if any(not _alike(a, b) for a, b in zip(old.place.at, new.place.at, strict=True)):
        write.set_lengths(table, "at", old.place.at, new.place.at)
    if old.place.step != new.place.step and old.place.step and new.place.step:
        write.set_lengths(table, "step", old.place.step, new.place.step)
    if new.mass != old.mass and new.mass is not None:
        write.set(table, "mass", write.mass(new.mass))
    if new.hangs_at != old.hangs_at and new.hangs_at is not None:
        write.set(table, "hangs_at", write.length(new.hangs_at))


def _lead_to_drawing(write: Writer, table: Any, here: Path, there: Path) -> None:
    """Let the name of a drawing lead to where it is, from the folder that is written to."""
    if "outline" in table and here.resolve() != there.resolve():
        drawing = (here / str(table["outline"])).resolve()
        write.set(table, "outline", Path(relpath(drawing, there.resolve())).as_posix())


def _change_shape(write: Writer, table: Any, old: Shape, new: Shape) -> None:
    match old, new:
        case Plate(before), Plate(after):
            _change_plan(write, table, before, after, "width")
        case Frame(before), Frame(after):
            _change_plan(write, table, before, after, "breadth")
        case _, Shell(_, bottom, top, height) if "panel_length" in table:
            along = hypot(height, (bottom - top) / 2.0)
            write.set(table, "panel_length", write.length(along))
        case _, Gable(height=height, knee_height=knee):
            write.set(table, "height", write.length(height))
            if knee is not None:
                write.set(table, "knee_height", write.length(knee))
        case Member() as before, Member() as after:
            write.set_lengths(table, "from", before.start, after.start)
            write.set_lengths(table, "to", before.end, after.end)
        case _, Cutout() as figure if "outline" in table:
            write.set(table, "height", write.length(figure.height))
        case _, Cutout() as figure:
            write.set_corners(table, "points", figure.points)
            if figure.holes:
                write.set_outlines(table, "holes", figure.holes)
        case _:
            height: float = getattr(new, "height")  # noqa: B009 - of all other shapes that change
            write.set(table, "height", write.length(height))


def _change_plan(write: Writer, table: Any, old: Plan, new: Plan, second: str) -> None:
    """Change an outline; ``second`` is the key of a rectangle's width."""
    match old, new:
        case Regular(), Regular(sides, across):
            key, of_flats = _measure_of(table, sides)
            write.set(table, key, write.length(across * of_flats))
        case Rectangle() as before, Rectangle(length, width):
            if not _alike(before.length, length):
                write.set(table, "length", write.length(length))
            if not _alike(before.width, width):
                write.set(table, second, write.length(width))
        case _:
            raise TypeError("another kind of outline")


def _measure_of(table: Any, sides: int) -> tuple[str, float]:
    """Return the key that gives a regular outline's width, and what it is of that over flats."""
    measures: dict[str, Callable[[float, int], float]] = {
        "across_points": flats_from_points,
        "across_side": flats_from_side,
    }
    for key, flats in measures.items():
        if key in table:
            return key, 1.0 / flats(1.0, sides)
    return "across", 1.0


def _change_heights(write: Writer, tables: _Tables, old: Design, new: Design) -> None:
    """Change the heights of loads and guys, where the design has any."""
    from ...loads.given import GivenLoad  # noqa: PLC0415
    from ...statics.tables.anchor_table import GuyRow  # noqa: PLC0415 - only where a file is written

    loads = zip(old.several(GivenLoad), new.several(GivenLoad), strict=True)
    for i, (before, after) in enumerate(loads):
        if before.at != after.at:
            write.set_lengths(tables.get("load", i), "at", before.at, after.at)
    for i, (guy, moved) in enumerate(zip(old.several(GuyRow), new.several(GuyRow), strict=False)):
        if guy.height != moved.height:
            write.set(tables.get("guy", i), "height", write.length(moved.height))


def _added(write: Writer, new: Part) -> str:
    """Return a part that was not there: a foot beneath all, or weight laid low."""
    at = ", ".join(f"'{write.length(c)}'" for c in new.place.at)
    rows: list[KeyLine] = [("at", f"[{at}]", "right, away from you, up")]
    plate = new.shape.plate
    if plate is not None and isinstance(plate.plan, Rectangle):
        from ...checks.sizing.wider_foot import SHEET  # noqa: PLC0415 - only where a foot is added

        plan = plate.plan
        rows += [
            text_line("length", write.length(plan.length)),
            text_line("width", write.length(plan.width)),
            text_line("stock", SHEET, "as sold; its actual thickness is taken"),
            text_line("material", new.material or ""),
        ]
        return part(new.name, "plate", rows, "beneath all that stood on the ground")
    place = new.place
    if place.ring is not None:
        rows.append(("count", str(place.count), "on a floor screwed to each side of the foot"))
        rows.append(text_line("ring", write.length(place.ring)))
        if place.start:
            rows.append(text_line("start", f"{plain(degrees(place.start), 7)} deg"))
    rows.append(
        text_line("mass", write.mass(new.mass or 0.0), "fixed there, so that it lifts with it")
    )
    return part(new.name, "weight", rows)


def _alike(a: float, b: float) -> bool:
    return abs(a - b) <= _LIKE
