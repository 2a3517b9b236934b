"""Design files drawn at random from a seed: every shape and table, sensible and absurd in turns.

Most of them read; what they describe need not be able to stand. The same seed gives the same text.
"""

from random import Random

GROUNDS = ("paving", "gravel", "sand", "firm lawn", "wet lawn", "firm clay lawn", "soft clay")
MATERIALS = (
    *("southern pine, treated", "softwood plywood", "western redcedar", "steel", "concrete"),
    *("OSB", "acrylic", "aluminium", "brick", "white oak"),
)
FASTENERS = (
    *("8d common", "#8 wood screw 2 in", "#10 deck screw 3 in", "5/16 lag screw 4 in"),
    *("3/8 bolt 6 in", "6d common", "#8 wood screw 1 1/4 in"),
)
STAKES = ("rebar stake 1/2 in x 24 in", "screw anchor 30 in", "buried concrete pad 16 in")
BOLTS = ("bolt 3/8 in into a slab", "bolt 1/2 in into a slab")
LINES = ("nylon rope 1/4 in", "galvanised cable 1/8 in")
SHAPES = {
    "shell": "sides=S bottom=L.2-.5 top=L.1-.5 height=L.2-1.5 wall=T",
    "solid": "sides=S bottom=L.05-.2 top=L.05-.2 height=L.2-1.8",
    "cone": "sides=S bottom=L.1-.5 height=L.1-.5 ?wall=T",
    "box": "length=L.1-.8 width=L.1-.8 height=L.1-.8 ?wall=T",
    "open box": "length=L.1-.8 width=L.1-.8 height=L.1-.8 wall=T open=O",
    "gable": "length=L.2-.8 width=L.2-.8 height=L.1-.5 ?thickness=T",
    "plate": "length=L.2-.9 width=L.2-.9 thickness=T ?solidity=N0.5",
    "round plate": "sides=S across=L.2-.9 thickness=T ?hole=L.02-.3",
    "panel": "width=L.2-1.5 height=L.2-1.2 thickness=T ?solidity=N0.4",
    "frame": "length=L.4-.9 breadth=L.4-.9 width=L.09-.09 height=L.04-.04",
    "ring frame": "sides=S across=L.4-.9 width=L.09-.09 height=L.04-.04",
    "ball": "across=L.05-.5 ?wall=T",
    "rotor": "blades=B span=L.2-.6 root=L.02-.1 tip=L.05-.15 thickness=T yaws=Ntrue ?spins=Ntrue",
    "fixed rotor": "blades=B span=L.2-.6 root=L.02-.1 tip=L.05-.15 thickness=T facing=W",
    "member": "from=P to=F width=L.03-.1 depth=L.03-.1",
    "round member": "from=P to=F across=L.02-.1",
    "cutout": "points=C thickness=T",
    "dome": "across=L.3-.6 height=L.05-.15 ?wall=T",
    "vault": "length=L.2-.8 width=L.2-.5 height=L.3-.7 ?wall=T",
    "weight": "mass=M",
}
"""The keys of each shape: L a length between two in m, ``?`` one that may be left out."""

OUTLINES = (
    ((0, 0), (1, 0), (1, 1), (0, 1)),
    ((0, 0), (1, 0), (0.7, 0.5), (1, 1), (0.3, 0.8), (-0.2, 0.3)),
    ((0, 0), (0.2, 0), (0.2, 0.2), (0.8, 0.2), (0.8, 0), (1, 0), (1, 1), (0, 1)),
)


def any_design(seed: int) -> str:
    """Return the text of a design file."""
    return _Drawn(Random(seed)).text()


class _Drawn:
    """One file as it grows: what is drawn, and the parts that there are."""

    def __init__(self, draw: Random) -> None:
        self.draw = draw
        self.names: list[str] = []
        self.size = draw.choice((0.3, 1.0, 1.0, 1.0, 3.0))

    def text(self) -> str:
        tables = [self._head(), self._site()]
        tables += [self._part(k) for k in range(self._one(1, 2, 3, 3, 4, 5, 7))]
        for table, odds in (
            (self._joint, 0.5),
            (self._seam, 0.2),
            (self._anchor, 0.2),
            (self._ballast, 0.2),
            (self._guy, 0.1),
            (self._load, 0.2),
        ):
            while self._chance(odds):
                tables.append(table())
        return "\n".join(tables)

    def _one(self, *choices):
        return self.draw.choice(choices)

    def _chance(self, odds: float) -> bool:
        return self.draw.random() < odds

    def _length(self, low: float, high: float) -> str:
        """Return a length between two in m, now and then extreme."""
        value = self.draw.uniform(low, high) * self.size
        if self._chance(0.02):
            value = self._one(0.00002, 0.0005, 30.0)
        return f"'{value * 1000.0:.{self._one(0, 1, 3)}f} mm'"

    def _name(self) -> str:
        return f"'{self._one(*self.names)}'"

    def _point(self, reach: float = 0.3) -> str:
        """Return three lengths, each 0 half of the time, seldom below 0 upward."""
        x, y, z = (self.draw.uniform(-reach, reach) * self._one(0, 0, 1, 1) for _ in range(3))
        z = z if self._chance(0.02) else abs(z)
        return f"['{1000.0 * x:.1f} mm', '{1000.0 * y:.1f} mm', '{1000.0 * z:.1f} mm']"

    def _head(self) -> str:
        rest = "laid_down = true\n" if self._chance(0.1) else ""
        if self._chance(0.1):
            rest += f"turn = '{self.draw.uniform(-180, 180):.1f} deg'\n"
        return f"[design]\nname = 'drawn'\nunits = '{self._one('metric', 'imperial')}'\n{rest}"

    def _site(self) -> str:
        method = self._one("forecast", "forecast", "gust", "ASCE 7-22", "ASCE 7-16", "EN 1991-1-4")
        wind = self._one(1.0, 12.0, 20.0, 26.0, 40.0, 46.9, 130.0)
        keys = [f"method = '{method}'", f"ground = '{self._one(*GROUNDS)}'"]
        if method == "EN 1991-1-4":
            keys.append(f"wind = '{min(wind, 30.0)} m/s'\nterrain = '{self._one('0', 'II', 'IV')}'")
        else:
            keys.append(f"wind = '{wind} m/s'")
        if method not in ("gust", "EN 1991-1-4"):
            keys.append(f"exposure = '{self._one('B', 'C', 'D')}'")
        if method.startswith("ASCE"):
            keys.append("wind_kind = 'ultimate'")
        for more in (
            f"slope = '{self._one(5, 30, 0.01)} deg'",
            "elevation = '2000 m'",
            f"people = '{self._one('children', 'public', 'none')}'",
            "sheltering = true",
            "basis = 'service'\nsafety = 2.0",
        ):
            if self._chance(0.1):
                keys.append(more)
        return "[site]\n" + "\n".join(keys) + "\n"

    def _part(self, k: int) -> str:
        drawn = self._one(*SHAPES) if k else self._one("frame", "plate", "box", *SHAPES)
        name, shape = f"part {k}", drawn.split()[-1]
        keys = [f"name = '{name}'", f"shape = '{shape}'"]
        for word in SHAPES[drawn].split():
            key, _, slot = word.lstrip("?").partition("=")
            if word[0] != "?" or self._chance(0.4):
                keys.append(f"{key} = {self._slot(slot)}")
        if shape != "weight" and self._chance(0.9):
            keys.append(f"material = '{self._one(*MATERIALS)}'")
        elif shape != "weight":
            keys.append(f"density = '{self._one(20, 500, 7850)} kg/m^3'")
        if shape in ("solid", "panel", "member") and self._chance(0.25):
            keys.append(f"embed = {self._length(0.1, 0.4)}")
        else:
            keys += self._placed(k)
        self.names.append(name)
        return "[[part]]\n" + "\n".join(keys) + "\n"

    def _slot(self, slot: str) -> str:
        match slot[0]:
            case "L":
                low, high = slot[1:].split("-")
                return self._length(float(low), float(high))
            case "N":
                return slot[1:]
            case "S":
                return str(self._one(0, 0, 3, 4, 4, 5, 6, 8, 8, 17, 60))
            case "T":
                return f"'{self._one(3, 12, 18, 18, 38)} mm'"
            case "O":
                faces = ["top", "bottom", "front", "left"]
                return str(self.draw.sample(faces, self._one(1, 2)))
            case "B":
                return str(self._one(1, 2, 4, 8, 12))
            case "W":
                return f"'{self._one(0, 90, 180, 33)} deg'"
            case "M":
                return f"'{self._one(0.1, 5.0, 80.0)} kg'"
            case "P":
                return self._point()
            case "F":
                up, level = "['0 mm', '0 mm', '900 mm']", "['700 mm', '0 mm', '0 mm']"
                return self._one(self._point(0.8), up, level, "['0 mm', '300 mm', '900 mm']")
            case _:
                w, h = self.draw.uniform(100, 700), self.draw.uniform(100, 900)
                corners = [f"['{x * w:.1f} mm', '{z * h:.1f} mm']" for x, z in self._one(*OUTLINES)]
                return f"[{', '.join(corners)}]"

    def _placed(self, k: int) -> list[str]:
        keys: list[str] = []
        under = bool(k) and self._chance(0.04)
        if self.names and self._chance(0.9):
            last = f"'{self.names[-1]}'" if self._chance(0.6) else self._name()
            keys.append(f"{'under' if under else 'on'} = {last}")
        copies = self._one("step = ['0 mm', '150 mm', '0 mm']", f"ring = {self._length(0.2, 1.0)}")
        for odds, key in (
            (0.3, f"at = {self._point()}"),
            (0.15, f"turn = '{self._one(30, 45, 90, 17.3)} deg'"),
            (0.1, f"tilt = '{self._one(5, -30, 90, 45)} deg'"),
            (0.12, f"count = {self._one(1, 2, 3, 4, 7, 20)}\n{copies}"),
            (0.1, f"mirror = {self._one(['x'], ['y'], ['x', 'y'])}"),
            (0.0 if under else 0.08, "loose = true"),
        ):
            if self._chance(odds):
                keys.append(key)
        return keys

    def _joint(self) -> str:
        k = self.draw.randrange(len(self.names))
        fastener = self._one(*FASTENERS)
        rest = self._one("", "blocks = 'spruce-pine-fir'\n")
        if "bolt" in fastener:
            rest = "washer = '1 1/2 in'\n"
        if self._chance(0.2):
            rest += f"where = '{self._one('ring', 'rectangle', 'each side')}'\n"
        return (
            f"[[joint]]\nname = 'j{self.draw.random():.6f}'\nof = '{self.names[k]}'\n"
            f"to = '{self.names[k - 1]}'\nfastener = '{fastener}'\n"
            f"count = {self._one(1, 2, 4, 8, 30)}\n{rest}"
        )

    def _seam(self) -> str:
        cleat = "cleat = 'spruce-pine-fir'\n" if self._chance(0.7) else ""
        return (
            f"[[seam]]\npart = {self._name()}\nfastener = '{self._one(*FASTENERS[:2])}'\n"
            f"spacing = '150 mm'\n{cleat}"
        )

    def _anchor(self) -> str:
        where = self._one(
            *("where = 'corners'", "where = 'sides'", "where = 'second sides'"),
            "at = ['0 mm', '0 mm', '0 mm']\nring = '600 mm'\ncount = 4",
            "at = ['300 mm', '0 mm', '0 mm']",
        )
        kind = self._one(*STAKES, *STAKES, *BOLTS)
        return f"[[anchor]]\nname = 'a{self.draw.random():.6f}'\nkind = '{kind}'\n{where}\n"

    def _ballast(self) -> str:
        what = self._one(
            "kind = '40 lb bag'", "mass = '20 kg'", "kind = 'concrete paver 12 x 12 x 2 in'"
        )
        at = f"at = {self._point(1.0)}\n" if self._chance(0.4) else ""
        return (
            f"[[ballast]]\nname = 'b{self.draw.random():.6f}'\n{what}\n"
            f"{self._one('on', 'on', 'inside')} = {self._name()}\ncount = {self._one(1, 4)}\n{at}"
        )

    def _guy(self) -> str:
        return (
            f"[[guy]]\nname = 'g{self.draw.random():.6f}'\nline = '{self._one(*LINES)}'\n"
            f"anchor = '{self._one(*STAKES)}'\nheight = {self._length(0.2, 1.2)}\n"
            f"radius = {self._length(0.5, 2.0)}\ncount = {self._one(3, 4, 8)}\n"
        )

    def _load(self) -> str:
        on = f"on = {self._name()}\n" if self._chance(0.5) else ""
        force, way = self._one(10, 200, 1000), self._one("down", "up", "left", "back")
        return (
            f"[[load]]\nname = 'l{self.draw.random():.6f}'\nforce = '{force} N'\n"
            f"at = {self._point(0.6)}\ndirection = '{way}'\n{on}"
        )
