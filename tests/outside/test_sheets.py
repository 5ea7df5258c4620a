"""Sheet lists: layouts without overlap that edge-to-edge cuts can part, and a substrate whose pieces are the whole."""

import json

import pytest
from shapely.geometry import Polygon, box
from shapely.ops import unary_union
from shapely.strtree import STRtree

from conftest import EXAMPLES, run

# Whole steps are printed as millimetres; what is left of them in binary.
NEAR = 1e-6

# Curves are parted as chords within 0.005 mm of them, square millimetres per millimetre of edge.
CHORDS = 0.005


@pytest.fixture(scope="module", params=EXAMPLES)
def listed(request):
    """The sheet lists of an example."""
    return json.loads(run("cargo", "run", "--quiet", "--locked", "--example", "sheets", "--", f"params/{request.param}.yaml"))


def layouts(listed):
    return [(l, layout) for l in listed["lists"] for layout in l["layouts"]]


def test_every_piece_is_on_one_sheet_in_its_size(listed):
    for l in listed["lists"]:
        laid = [p for layout in l["layouts"] for p in layout["pieces"]]
        names = [p["name"] for p in laid] + l["too_large"]
        assert sorted(names) == sorted(p["name"] for p in l["pieces"])
        assert len(set(names)) == len(names)
        asked = {p["name"]: p for p in l["pieces"]}
        for p in laid:
            x0, y0, x1, y1 = p["at"]
            piece = asked[p["name"]]
            size = (piece["width"], piece["length"]) if p["turned"] else (piece["length"], piece["width"])
            assert (x1 - x0, y1 - y0) == pytest.approx(size)
            assert piece["may_turn"] or not p["turned"]


def test_nothing_overlaps_and_all_is_inside(listed):
    for l, layout in layouts(listed):
        sheet = box(0, 0, layout["length"], layout["width"]).buffer(NEAR, join_style="mitre")
        rectangles = [box(*p["at"]) for p in layout["pieces"]] + [box(*o) for o in layout["offcuts"]]
        assert all(sheet.contains(r) for r in rectangles)
        # Grown by half a kerf each they still only touch.
        grown = [r.buffer(l["kerf"] / 2 - NEAR, join_style="mitre") for r in rectangles]
        tree = STRtree(grown)
        for i, r in enumerate(grown):
            assert [k for k in tree.query(r, "intersects") if k != i] == []
        assert sum(r.area for r in rectangles) <= sheet.area


def parts(rectangles, kerf):
    """Whether some line from edge to edge, as wide as the kerf, parts the rectangles, and both sides in turn."""
    if len(rectangles) < 2:
        return True
    for axis in (0, 1):
        for edge in sorted({r[axis + 2] for r in rectangles}):
            low = [r for r in rectangles if r[axis + 2] <= edge + NEAR]
            high = [r for r in rectangles if r[axis] >= edge + kerf - NEAR]
            if high and len(low) + len(high) == len(rectangles):
                return parts(low, kerf) and parts(high, kerf)
    return False


def test_edge_to_edge_cuts_part_every_sheet(listed):
    for l, layout in layouts(listed):
        assert parts([p["at"] for p in layout["pieces"]] + layout["offcuts"], l["kerf"])


def test_the_reader_sees_a_pinwheel():
    assert not parts([[0, 0, 3, 2], [3, 0, 5, 3], [2, 3, 5, 5], [0, 2, 2, 5], [2, 2, 3, 3]], 0)


def test_no_cut_runs_through_a_piece(listed):
    for l, layout in layouts(listed):
        pieces = unary_union([box(*p["at"]).buffer(-NEAR, join_style="mitre") for p in layout["pieces"]])
        for x0, y0, x1, y1 in layout["cuts"]:
            cut = box(x0, y0, x1 + l["kerf"] * (x0 == x1) + NEAR / 2, y1 + l["kerf"] * (y0 == y1) + NEAR / 2)
            assert not cut.intersects(pieces)


def test_the_bound_is_the_area_or_more(listed):
    for l in listed["lists"]:
        assert l["bound"] <= l["cost"]
        bought = sum(x["length"] * x["width"] for x in l["layouts"])
        needed = sum(p["length"] * p["width"] for p in l["pieces"] if p["name"] not in l["too_large"])
        assert l["waste"] == pytest.approx(1 - needed / bought)


def polygon(region):
    return Polygon(region["outer"], region["holes"])


def test_the_pieces_of_the_substrate_are_the_substrate(listed):
    whole = polygon(listed["substrate"])
    lists = [l for l in listed["lists"] if any(p["kind"] == "substrate" for p in l["pieces"])]
    assert len(lists) == 1 and not lists[0]["too_large"]
    pieces = [(p, polygon(p["region"])) for p in lists[0]["pieces"] if p["kind"] == "substrate"]
    union = unary_union([shape for _, shape in pieces])
    rim = whole.exterior.length + sum(i.length for i in whole.interiors)
    assert union.symmetric_difference(whole).area <= CHORDS * rim
    assert sum(shape.area for _, shape in pieces) == pytest.approx(union.area, abs=1e-2)
    for piece, shape in pieces:
        x0, y0, x1, y1 = shape.bounds
        step = 25.4 / 16
        for side, mm in zip(sorted((piece["length"], piece["width"])), sorted((x1 - x0, y1 - y0))):
            assert mm - NEAR <= side < mm + step


def test_mesh_reaches_everywhere_and_laps(listed):
    """No point of the slab is farther from mesh than the cover; pieces that meet lap by a square and 2 in."""
    (mesh,) = [l for l in listed["lists"] if l["need"] == "reinforcing mesh"]
    assert not mesh["too_large"]
    cover = min(38.1, listed["slab_thickness"] / 2)
    pieces = [polygon(p["region"]) for p in mesh["pieces"]]
    assert all(p["kind"] == "mesh" for p in mesh["pieces"])
    grown = [shape.buffer(cover + NEAR, join_style="mitre") for shape in pieces]
    assert polygon(listed["slab"]).difference(unary_union(grown)).area < 1
    for i, a in enumerate(pieces):
        near = [b for k, b in enumerate(pieces) if k != i and a.intersects(b)]
        assert near or len(pieces) == 1
        for b in near:
            x0, y0, x1, y1 = a.intersection(b).bounds
            assert min(x1 - x0, y1 - y0) >= 203.2 - NEAR
