"""A reading of programs that shares nothing with the package: words by one pattern, places added up in plain Python.

It knows what this project's programs use: millimetres or inches, G17, G90, arcs by I and J, one zero.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

WORD = re.compile(r"([A-Z])(-?[\d.]+)")


@dataclass
class Move:
    line: int
    code: str
    x0: float
    y0: float
    z0: float
    x: float
    y: float
    z: float
    cx: float = 0.0
    cy: float = 0.0
    f: float = 0.0
    under: str = ""

    @property
    def radius(self) -> float:
        return math.hypot(self.x0 - self.cx, self.y0 - self.cy)

    @property
    def turned(self) -> float:
        """Degrees, always positive; a full circle where both ends are one."""
        a0 = math.atan2(self.y0 - self.cy, self.x0 - self.cx)
        a1 = math.atan2(self.y - self.cy, self.x - self.cx)
        turn = math.degrees(a0 - a1 if self.code == "G2" else a1 - a0) % 360
        return 360.0 if turn < 1e-7 or math.hypot(self.x - self.x0, self.y - self.y0) < 1e-9 else turn

    @property
    def length(self) -> float:
        if self.code in ("G2", "G3"):
            return math.hypot(math.radians(self.turned) * self.radius, self.z - self.z0)
        return math.dist((self.x0, self.y0, self.z0), (self.x, self.y, self.z))

    @property
    def trail(self) -> list[tuple[float, float]]:
        """Places along the way, close enough for its extent."""
        if self.code not in ("G2", "G3"):
            return [(self.x0, self.y0), (self.x, self.y)]
        begin = math.atan2(self.y0 - self.cy, self.x0 - self.cx)
        turn = math.radians(-self.turned if self.code == "G2" else self.turned)
        angles = [begin + turn * part / 90 for part in range(91)]
        return [(self.cx + self.radius * math.cos(a), self.cy + self.radius * math.sin(a)) for a in angles]

    @property
    def cuts(self) -> bool:
        return self.code != "G0"


def moves_of(text: str) -> tuple[list[Move], dict[int, dict[str, float]]]:
    """The moves, and the numbers of each line by letters other than G and M."""
    at = {"X": 0.0, "Y": 0.0, "Z": 0.0}
    code, feed, under, found, words_of = "", 0.0, "", [], {}
    inch = 25.4 if re.search(r"\bG20\b", text) else 1.0
    for number, line in enumerate(text.splitlines(), 1):
        comment = re.match(r"^(?:N\d+ )?\(([^)]*)\)$", line.strip())
        if comment and found and not comment.group(1).startswith("- "):
            under = comment.group(1)
        words = WORD.findall(re.sub(r"\([^)]*\)", "", line))
        unit = dict.fromkeys("XYZIJFRQ", inch)
        values = {letter: float(value) * unit.get(letter, 1.0) for letter, value in words if letter not in "GM"}
        words_of[number] = values
        for letter, value in words:
            if letter == "G" and value in ("0", "1", "2", "3"):
                code = f"G{value}"
        feed = values.get("F", feed)
        if not {"X", "Y", "Z", "I", "J"} & values.keys() or "P" in values:
            continue
        if "R" in values:
            at |= {axis: values[axis] for axis in "XY"}
            found += drilled(number, at["X"], at["Y"], values, feed, under)
            at["Z"] = values["R"]
            continue
        old = dict(at)
        at |= {axis: values[axis] for axis in "XYZ" if axis in values}
        found.append(
            Move(
                number, code, old["X"], old["Y"], old["Z"], at["X"], at["Y"], at["Z"],
                old["X"] + values.get("I", 0.0), old["Y"] + values.get("J", 0.0), feed, under,
            )
        )  # fmt: skip
    return found, words_of


def drilled(number: int, x: float, y: float, values: dict[str, float], feed: float, under: str) -> list[Move]:
    """The feed moves of a drilling cycle: in one go without Q, else in pecks, each begun 0.010 in above the one before
    (NIST IR 6556, 3.5.16.3)."""
    top, bottom, step = values["R"], values["Z"], values.get("Q", 0.0)
    found, above, from_z = [], top, top
    while above > bottom + 1e-9:
        to_z = max(bottom, above - step) if step else bottom
        found.append(Move(number, "G1", x, y, from_z, x, y, to_z, f=feed, under=under))
        above, from_z = to_z, to_z + 0.254
    return found


def passes(moves: list[Move]) -> dict[str, list[float]]:
    """Heights of the passes under each comment, highest first: level ways that are come to from above, at least a tenth
    as long as the longest there, whose extents have half in common with its."""
    seen: dict[tuple[str, float], list] = {}
    low, under = math.inf, ""
    for move in moves:
        if not move.cuts or move.under != under:
            low, under = math.inf, move.under
        if not move.cuts or abs(move.z - move.z0) >= 5e-4 or move.length < 1e-9:
            continue
        entry = seen.setdefault((under, round(move.z, 3)), [move.z < low, 0.0, [], []])
        entry[1] += move.length
        for x, y in move.trail:
            entry[2].append(x)
            entry[3].append(y)
        low = min(low, move.z)
    found: dict[str, list[float]] = {}
    for name in {name for name, _ in seen}:
        own = {z: entry for (other, z), entry in seen.items() if other == name}
        main = max(own.values(), key=lambda entry: entry[1])
        found[name] = sorted(
            (
                z
                for z, entry in own.items()
                if entry is main or (entry[0] and 10 * entry[1] >= main[1] and alike(entry, main))
            ),
            reverse=True,
        )
    return found


def alike(one: list, other: list) -> bool:
    for axis in (2, 3):
        common = min(max(one[axis]), max(other[axis])) - max(min(one[axis]), min(other[axis]))
        widest = max(max(one[axis]) - min(one[axis]), max(other[axis]) - min(other[axis]))
        if common < widest / 2 - 1e-9:
            return False
    return True


def answer(question, text: str, report: dict, thickness: float) -> float | None:
    """The value that a question asks for, from the text; where the papers say it, from the report."""
    moves, words = moves_of(text)
    rows = [*report["programs"], *(report.get("back") or {"programs": []})["programs"]]
    rows = [program for program in rows if program["file"] == question.file]
    first, last, part = 0, len(text), 0
    if len(rows) > 1:
        # one file for all cutters: from the change before the line to the next
        changes = [n for n, line in enumerate(text.splitlines(), 1) if re.search(r"\bM6\b", line)]
        part = max(0, sum(n <= question.line for n in changes) - 1)
        first, last = changes[part], [*changes, len(text)][part + 1]
    row = rows[part]
    moves = [move for move in moves if first <= move.line < last]
    words = {n: values for n, values in words.items() if first <= n < last}
    cuts = [move for move in moves if move.cuts]
    tool = row["tool"]
    top = 0.0 if report["stock"]["z_zero"] == "top" else thickness
    here = next((move for move in moves if move.line == question.line), None)
    slope = math.tan(math.radians(tool["angle_deg"]) / 2) if tool["angle_deg"] else 0.0
    fastest = max((m.f for m in cuts if abs(m.z - m.z0) < 5e-4 and m.length > 1e-9), default=max(m.f for m in cuts))
    turns = max(values["S"] for values in words.values() if "S" in values)
    match question.kind:
        case "hole":
            straight = here.code not in ("G2", "G3")
            if question.about.endswith("X"):
                return here.x if straight else here.cx
            return here.y if straight else here.cy
        case "leftmost":
            return min(move.x for move in cuts)
        case "right_side" | "top_side":
            # straight along the side, the cutter outside: half of it is not the sign
            ends = ((here.x0, here.x), (here.y0, here.y))[question.kind == "top_side"]
            return ends[0] - tool["diameter_mm"] / 2 if ends[0] == ends[1] else None
        case "first":
            first = next(m for m in moves if m.code == "G0" and {"X", "Y"} <= words[m.line].keys())
            return first.x if question.about == "X" else first.y
        case "lowest":
            return min(move.z for move in cuts)
        case "shank":
            return tool["shank_mm"]
        case "speed":
            return turns
        case "feed":
            return fastest
        case "turn":
            return fastest / turns
        case "chip":
            return fastest / turns / 2
        case "surface":
            return math.pi * tool["diameter_mm"] * turns / 1000
        case "depth" | "width" | "other_angle":
            lowest: dict[str, float] = {}
            for move in cuts:
                if move.under and move.z < top - 5e-4:
                    lowest[move.under] = min(lowest.get(move.under, math.inf), move.z)
            deep = top - (max if question.about == "narrowest" else min)(lowest.values())
            if question.kind == "depth":
                return deep
            width = 2 * deep * slope + tool["tip_mm"]
            if question.kind == "width":
                return width
            return width / 2 / math.tan(math.radians(float(question.about) / 2))
        case "passes" | "step" | "last_pass":
            zs = max(passes(moves).values(), key=len)
            return {"passes": len(zs), "step": zs[0] - zs[1], "last_pass": zs[-1]}[question.kind]
        case "centre_x":
            return here.cx
        case "centre_y":
            return here.cy
        case "radius":
            return here.radius
        case "tabs":
            return sum(feature["kind"] == "tab" for feature in report["sign"]["features"])
        case "tab_top":
            low = min(move.z for move in cuts)
            ups = [b.z for b in cuts if b.line == question.line and abs(b.z0 - low) < 5e-4]
            return ups[0]
        case "tab_thick":
            return next(b.z for b in cuts if b.line == question.line) - (top - thickness)
        case "minutes":
            return sum(move.length for move in cuts) / fastest
        case "thicker_width":
            return 2 * 0.5 * slope
        case "thicker_bottom":
            return min(move.z for move in cuts)
        case "thicker_top":
            return min(move.z for move in cuts) + thickness + 0.5
    return None
