"""The island worked out a second time, from the parameter file alone, with an independent polygon library.

Nothing here reads what the program made. World: x along the first run, y away from its working side; faces are the sides of the
frame's outline counter-clockwise, s along them from left to right as seen from outside.
"""

import math
import re
from dataclasses import dataclass

import numpy as np
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

UNIT = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8}


def mm(text):
    """A length of a parameter file: `30 in`, `3-1/2 in`, `5 31/32 in`, `2.4 m`, `1/2 in`."""
    found = re.fullmatch(r"\s*(?:(\d+)[- ])?(\d+)/(\d+)\s*(\w+)\s*|\s*([\d.]+)\s*(\w+)\s*", text)
    assert found, text
    whole, over, under, unit, number, plain = found.groups()
    if plain:
        return float(number) * UNIT[plain]
    return (float(whole or 0) + float(over) / float(under)) * UNIT[unit]


@dataclass
class Run:
    name: str
    origin: np.ndarray
    along: np.ndarray
    away: np.ndarray
    length: float
    depth: float
    walls: tuple

    def at(self, u, v):
        return self.origin + self.along * u + self.away * v

    def rectangle(self, u0, u1, v0, v1):
        return Polygon([self.at(u0, v0), self.at(u1, v0), self.at(u1, v1), self.at(u0, v1)])


@dataclass
class Edge:
    """One side of the frame's outline, counter-clockwise."""

    start: np.ndarray
    end: np.ndarray
    run: Run
    side: str

    @property
    def along(self):
        return (self.end - self.start) / self.length

    @property
    def length(self):
        return float(np.linalg.norm(self.end - self.start))

    @property
    def outward(self):
        return np.array([self.along[1], -self.along[0]])

    @property
    def is_wall(self):
        return self.side in self.run.walls

    def local(self, point):
        d = np.asarray(point) - self.start
        return float(d @ self.along), float(d @ self.outward)


class Island:
    def __init__(self, params):
        self.params = params
        self.metric = params["project"].get("units") == "metric"
        self.runs = self._runs()
        self.frame = unary_union([r.rectangle(0, r.length, 0, r.depth) for r in self.runs])
        self.edges = self._edges()
        trade, counter = params.get("trade", {}), params.get("counter", {})
        levels = params.get("levels", {})
        board = trade.get("board", {})
        # The usual values are those that the parameter file's own documentation names.
        self.board = self._or(board.get("thickness"), "1/2 in", "12 mm")
        self.gap = self._or(board.get("gap"), "1/8 in", "3 mm")
        self.base_coat = self._or(trade.get("base_coat"), "1/4 in", "6 mm")
        self.finish_coat = self._or(trade.get("finish_coat"), "1/8 in", "3 mm")
        self.cladding = self.board + self.base_coat + self.finish_coat
        band = params.get("tile_band")
        tile = self._or(band.get("tile_thickness"), "3/8 in", "10 mm") if band and band.get("laid", True) else 0.0
        self.cladding_at_most = self.board + self.base_coat + max(self.finish_coat, tile)
        self.substrate = self._or(trade.get("substrate", {}).get("thickness"), "1/2 in", "12 mm")
        self.top = self._or(levels.get("counter"), "36 in", "900 mm")
        self.foot = self._or(levels.get("base_gap"), "2 in", "50 mm")
        self.thickness = self._or(counter.get("thickness"), "2 in", "50 mm")
        self.frame_top = self.top - self.thickness - self.substrate
        over = counter.get("overhang", {})
        working = self._or(over.get("working"), "1-1/2 in", "40 mm")
        self.overhang = {"working": working}
        for side in ("seating", "left", "right"):
            self.overhang[side] = mm(over[side]) if side in over else working
        turndown = counter.get("turndown", {})
        self.drop = self._or(turndown.get("depth"), "1 in", "25 mm")
        self.rim = self._or(turndown.get("width"), "1-1/2 in", "40 mm")
        self.dropped = turndown.get("sides", ["working", "seating", "left", "right"])
        self.profile = counter.get("edge", {"square": {}})
        self.corner = counter.get("corners", "sharp")

    def _or(self, given, imperial, metric):
        return mm(given or (metric if self.metric else imperial))

    def _runs(self):
        found = []
        origin, along = np.zeros(2), np.array([1.0, 0.0])
        for given in self.params["runs"]:
            length, depth = mm(given["length"]), mm(given["depth"])
            away = np.array([-along[1], along[0]])
            if "turn" in given:
                last = found[-1]
                if given["turn"] == "right":
                    along, away = -last.away, last.along
                    origin = last.at(last.length - depth, last.depth)
                else:
                    along, away = last.away, -last.along
                    origin = last.at(last.length, 0)
            found.append(Run(given["name"], origin, along, away, length, depth, tuple(given.get("walls", ()))))
        return found

    def _edges(self):
        ring = Polygon(self.frame.exterior).simplify(0)
        points = [np.array(p) for p in ring.exterior.coords[:-1]]
        if not ring.exterior.is_ccw:
            points.reverse()
        edges = []
        for start, end in zip(points, points[1:] + points[:1]):
            middle = (start + end) / 2
            outward = np.array([(end - start)[1], -(end - start)[0]])
            for run in self.runs:
                d = middle - run.origin
                u, v = d @ run.along, d @ run.away
                sides = {"working": (v, -run.away), "seating": (v - run.depth, run.away)}
                sides |= {"left": (u, -run.along), "right": (u - run.length, run.along)}
                # A long side passes the corner square; an end that stands there is part of the other run's long side.
                fits = [
                    side
                    for side, (apart, out) in sides.items()
                    if abs(apart) < 1e-6 and out @ outward > 0 and -1e-6 <= u <= run.length + 1e-6
                    and -1e-6 <= v <= run.depth + 1e-6
                ]
                if fits and not (edges and len(edges) > len(points)):
                    best = Edge(start, end, run, fits[0])
                    long = fits[0] in ("working", "seating")
                    is_end = (run is self.runs[0] and fits[0] == "left") or (run is self.runs[-1] and fits[0] == "right")
                    if long or is_end:
                        edges.append(best)
                        break
        assert len(edges) == len(points) == 2 * len(self.runs) + 2
        return edges

    def run(self, name=None):
        return next(r for r in self.runs if name is None or r.name == name)

    # Where things stand.

    def things(self):
        return {t["name"]: t for t in self.params.get("appliances", []) + self.params.get("openings", [])}

    def width(self, thing):
        return mm(thing["cutout"]["width"] if "cutout" in thing else thing["width"])

    def middle(self, thing):
        """Along the run from its left end; in an end, from the working side."""
        at, run = thing["at"], self.run(thing.get("run"))
        extent = run.depth if thing.get("side") in ("left", "right") else run.length
        if "in_line_with" in at:
            return self.middle(self.things()[at["in_line_with"]])
        if "between" in at:
            ends = []
            for name, sign in zip(at["between"], (1, -1)):
                if name in ("left-end", "right-end"):
                    ends.append(0.0 if name == "left-end" else extent)
                else:
                    other = self.things()[name]
                    ends.append(self.middle(other) + sign * self.width(other) / 2)
            return sum(ends) / 2
        distance = mm(at["distance"])
        return distance if at["from"] in ("left", "working") else extent - distance

    def holes(self, edge):
        """Holes through the cladding of a side: rectangles in s and z."""
        found = []
        for thing in self.params.get("openings", []):
            run, side = self.run(thing.get("run")), thing.get("side", "working")
            if run is edge.run and side == edge.side:
                z = mm(thing["sill"])
                found.append((thing, self.middle(thing), mm(thing["width"]) / 2, z, z + mm(thing["height"])))
        for thing in self.params.get("appliances", []):
            if "open" in thing["front"] and self.run(thing.get("run")) is edge.run and edge.side == "working":
                z = self.top - mm(thing["front"]["open"]["panel_height"])
                found.append((thing, self.middle(thing), self.width(thing) / 2, z, self.frame_top))
        boxes = []
        for thing, middle, half, z0, z1 in found:
            run = edge.run
            ends = [run.at(middle + d, 0) if edge.side in ("working", "seating") else run.at(0, middle + d) for d in (-half, half)]
            s = sorted(edge.local(p)[0] for p in ends)
            boxes.append(box(s[0], max(z0, self.foot), s[1], min(z1, self.frame_top)))
        return unary_union(boxes) if boxes else Polygon()

    # Plans.

    def outline(self, distance):
        """The frame's outline with every side moved outwards by its own distance."""
        lines = [(e.start + e.outward * distance(e), e.along) for e in self.edges]
        points = []
        for (p, a), (q, b) in zip([lines[-1]] + lines[:-1], lines):
            k = np.linalg.solve(np.column_stack([a, -b]), q - p)
            points.append(p + a * k[0])
        return points

    def clad(self, distance):
        """The outline of the faces clad so thick; walls are not clad."""
        return Polygon(self.outline(lambda e: 0.0 if e.is_wall else distance))

    def reach(self, edge):
        return 0.0 if edge.is_wall else self.cladding + self.overhang[edge.side]

    def is_dropped(self, edge):
        return self.drop > 0 and not edge.is_wall and edge.side in self.dropped

    def slab_outline(self, inset):
        """The slab's outline with every side drawn in by its own distance; exposed outward corners are shaped."""
        points = self.outline(lambda e: self.reach(e) - inset(e))
        shape = Polygon(points)
        if self.corner == "sharp":
            return shape
        (kind, given), = self.corner.items()
        for i, edge in enumerate(self.edges):
            before, at = self.edges[i - 1], points[i]
            turn = before.along[0] * edge.along[1] - before.along[1] * edge.along[0]
            if turn < 0 or before.is_wall or edge.is_wall:
                continue
            # The radius is the outermost line's; a line inside it is turned more tightly about the same centre.
            size = mm(given["radius"]) - max(inset(before), inset(edge)) if kind == "rounded" else mm(given["size"])
            inner = at - before.along * size + edge.along * size
            square = Polygon([at, at - before.along * size, inner, at + edge.along * size])
            if kind == "rounded":
                disc = [inner + size * np.array([math.cos(t), math.sin(t)]) for t in np.linspace(0, 2 * math.pi, 721)]
                shape = shape.difference(square.difference(Polygon(disc)))
            else:
                shape = shape.difference(Polygon([at, at - before.along * size, at + edge.along * size]))
        return shape

    def cutouts(self):
        """The holes in the counter; those with an open front reach far past its edge."""
        found = []
        for thing in self.params.get("appliances", []):
            run, middle, half = self.run(thing.get("run")), self.middle(thing), self.width(thing) / 2
            depth = mm(thing["cutout"]["depth"])
            radius = mm(thing["cutout"].get("corner_radius", "0 mm"))
            if "open" in thing["front"]:
                v0, v1 = -1000.0, depth
            else:
                v0 = mm(thing["front"]["closed"]["setback"])
                v1 = v0 + depth
            hole = run.rectangle(middle - half, middle + half, v0, v1)
            found.append(hole.buffer(-radius).buffer(radius, quad_segs=180) if radius else hole)
        return unary_union(found) if found else Polygon()

    # The slab.

    def inset_at(self, edge, z):
        """How far the edge profile draws a side in at a height above the slab's underside."""
        if edge.is_wall:
            return 0.0
        low = -self.drop if self.is_dropped(edge) else 0.0
        if z < low:
            return 0.0
        above, below = self.thickness - z, z - low
        name, given = (self.profile, {}) if isinstance(self.profile, str) else next(iter(self.profile.items()))
        given = given or {}
        arc = lambda r, d: r - math.sqrt(max(r * r - (r - d) ** 2, 0.0)) if d < r else 0.0
        if name == "square":
            eased = self._or(given.get("eased"), "1/8 in", "3 mm")
            return max(arc(eased, above), arc(eased, below))
        if name == "chamfer":
            return max(0.0, mm(given["size"]) - above)
        if name == "half-round":
            r = (self.thickness - low) / 2
            return r - math.sqrt(max(r * r - (below - r) ** 2, 0.0))
        if name == "quarter-round":
            return arc(mm(given["radius"]), above)
        r = mm(given["radius"])
        return math.sqrt(max(r * r - below * below, 0.0))

    def slice(self, z):
        """The slab cut level at a height above its underside."""
        outer = self.slab_outline(lambda e: self.inset_at(e, z))
        if z > 0:
            return outer.difference(self.cutouts())
        inner = self.slab_outline(lambda e: self.rim if self.is_dropped(e) else 0.0)
        return outer.difference(inner).difference(self.cutouts())

    def slab_volume(self, slices=48):
        """The slices added up, closer together towards the ends of each stretch, where arcs run level."""
        total = 0.0
        stretches = [(0.0, self.thickness)] + ([(-self.drop, 0.0)] if any(map(self.is_dropped, self.edges)) else [])
        for low, high in stretches:
            levels = low + (high - low) * (1 - np.cos(np.linspace(0, math.pi, slices + 1))) / 2
            for a, b in zip(levels, levels[1:]):
                total += (b - a) * self.slice((a + b) / 2).area
        return total
