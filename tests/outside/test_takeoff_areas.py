"""The takeoff's areas and volumes against polygons made from the parameter file by another library."""

import json
import math

import pytest
from shapely.geometry import box

from island import Island, mm

# What one of the table's units is, in millimetres to its power or kilograms.
UNITS = {
    "ft": 304.8, "m": 1000.0, "ft²": 304.8**2, "m²": 1e6, "ft³": 304.8**3, "L": 1e6, "lb": 0.45359237, "kg": 1.0, None: 1.0,
}
# How far a printed amount may be from the exact one: half a step of its last figure.
HALF_STEP = {"ft": 0.005, "m": 0.005, "ft²": 0.005, "m²": 0.0005, "ft³": 0.0005, "L": 0.05, "lb": 0.05, "kg": 0.05, None: 0}
# The lip of the base channel, common practice: the finish coat begins above it.
LIP = 9.525


class Takeoff:
    def __init__(self, example):
        text = (example.folder / "takeoff/takeoff.json").read_text()
        self.rows = json.loads(text)["quantities"]["rows"]

    def sum(self, item, run=None, face=None):
        """The sum of an item's rows, and how far off rounding may be."""
        rows = [
            r for r in self.rows
            if r["item"] == item and (run is None or r["run"] == run) and (face is None or r["face"] == face)
        ]
        total = sum(r["amount"] * UNITS[r["unit"]] for r in rows)
        off = sum(HALF_STEP[r["unit"]] * UNITS[r["unit"]] for r in rows)
        return total, off * 1.001 + 1e-3


@pytest.fixture
def island(example):
    return Island(example.params)


@pytest.fixture
def takeoff(example):
    return Takeoff(example)


NAMES = {"working": "working side", "seating": "seating side", "left": "left end", "right": "right end"}


def name(edge):
    return f"{edge.run.name} run, {NAMES[edge.side]}"


def turns_out(a, b):
    return a.along[0] * b.along[1] - a.along[1] * b.along[0] > 0


def face(island, i, inner, outer, low, high):
    """What a layer between two distances from the frame covers of a side, openings taken off.

    Where a side begins it covers the edge of the one before, at an inward corner it begins at that one's front; where it
    ends it stops at the back of the next one's layer.
    """
    edges = island.edges
    before, edge, after = edges[i - 1], edges[i], edges[(i + 1) % len(edges)]
    s0 = 0.0 if before.is_wall else (-outer if turns_out(before, edge) else outer)
    end = 0.0 if after.is_wall else (inner if turns_out(edge, after) else -inner)
    return box(s0, low, edge.length + end, high).difference(island.holes(edge))


def tile_foot(island):
    """Where the finish coat stops: a joint below the last whole row of the tile band."""
    band = island.params.get("tile_band")
    if not band or not band.get("laid", True):
        return island.frame_top
    tile = island._or(band.get("tile_height"), "4-1/4 in", "100 mm")
    joint = island._or(band.get("joint"), "3/16 in", "3 mm")
    height = island._or(band.get("height"), "4-1/4 in", "100 mm")
    rows = math.floor((height + joint + 1e-6) / (tile + joint))
    assert rows > 0
    return island.frame_top - rows * (tile + joint)


def clad(island):
    return [i for i, edge in enumerate(island.edges) if not edge.is_wall]


def test_base_coat_and_finish_coat_of_every_face(island, takeoff):
    base = island.board + island.base_coat
    layers = [
        ("base coat", island.board, base, island.foot, island.frame_top),
        ("finish coat", base, base + island.finish_coat, island.foot + LIP, tile_foot(island)),
    ]
    for item, inner, outer, low, high in layers:
        for i in clad(island):
            theirs = face(island, i, inner, outer, low, high).area
            ours, off = takeoff.sum(item, face=name(island.edges[i]))
            assert ours == pytest.approx(theirs, abs=off), (item, name(island.edges[i]))
            volume, off = takeoff.sum(f"{item}, mixed", face=name(island.edges[i]))
            assert volume == pytest.approx(theirs * (outer - inner), abs=off), (item, name(island.edges[i]))


def test_boards_and_their_joints_are_the_faces(island, takeoff):
    height = island.frame_top - island.foot
    for i in clad(island):
        edge, before = island.edges[i], island.edges[i - 1]
        theirs = face(island, i, 0.0, island.board, island.foot, island.frame_top).area
        boards, off = takeoff.sum("board", face=name(edge))
        tape, tape_off = takeoff.sum("joint tape", face=name(edge))
        if not before.is_wall and not turns_out(before, edge):
            tape -= height
        # Where an upright joint meets one between courses, the little square of the gap belongs to neither.
        crossings = 20 * island.gap**2
        assert boards + tape * island.gap == pytest.approx(theirs, abs=off + tape_off * island.gap + crossings), name(edge)


def shares(island):
    """Each run's part of the plane: the passing run goes through the corner with all its overhangs."""
    wide = [island.cladding + max(island.overhang.values()) + 1.0] * len(island.runs)
    found = []
    for k, run in enumerate(island.runs):
        reach = {s: 0.0 if s in run.walls else island.cladding + island.overhang[s] for s in ("working", "seating")}
        band = run.rectangle(-wide[k], run.length + wide[k], -reach["working"], run.depth + reach["seating"])
        found.append(band)
    for k, given in enumerate(island.params["runs"][1:], start=1):
        later = given.get("passes", "earlier") == "later"
        butting, passing = (k - 1, k) if later else (k, k - 1)
        found[butting] = found[butting].difference(found[passing])
    return found


def test_counter_substrate_and_slab_of_every_run(island, takeoff):
    outline = island.slab_outline(lambda e: 0.0).difference(island.cutouts())
    inside = island.slab_outline(lambda e: island.rim if island.is_dropped(e) else 0.0).difference(island.cutouts())
    parts = shares(island)
    assert sum(outline.intersection(p).area for p in parts) == pytest.approx(outline.area, rel=1e-9)
    for run, part in zip(island.runs, parts):
        for item, whole in (("counter area", outline), ("substrate", inside)):
            theirs = whole.intersection(part).area
            ours, off = takeoff.sum(item, run=run.name)
            assert ours == pytest.approx(theirs, abs=off + 1e-5 * theirs), (item, run.name)
    ours, off = takeoff.sum("slab")
    assert ours == pytest.approx(island.slab_volume(), rel=5e-4, abs=off)
    # 150 lb a cubic foot.
    weight, off = takeoff.sum("slab, fresh")
    expected = island.slab_volume() / 304.8**3 * 150 * 0.45359237
    assert weight == pytest.approx(expected, rel=5e-4, abs=off)
    whole, off = takeoff.sum("slab, fresh, all runs")
    assert whole == pytest.approx(expected if len(island.runs) > 1 else 0.0, rel=5e-4, abs=off)


def test_sealer_covers_top_and_finish_coat_twice(island, takeoff):
    top = island.slab_outline(lambda e: 0.0).difference(island.cutouts()).area
    counter, _ = takeoff.sum("sealer, counter")
    # The edges come on top: no lower than the slab is thick, no longer than the outline goes round.
    exposed = sum(e.length for e in island.edges if not e.is_wall)
    assert 2 * top < counter < 2 * (top + 1.3 * exposed * (island.thickness + island.drop + 60))
    finish, off = takeoff.sum("finish coat")
    sealed, more = takeoff.sum("sealer, finish coat")
    assert sealed == pytest.approx(2 * finish, abs=2 * off + more)
