"""The frame as measured against scipy's least squares, and what follows it against polygons offset by shapely.

The island and all readings are invented.
"""

import json
import math
import subprocess

import manifold3d
import numpy as np
import pytest
from conftest import ROOT, run, stl_triangles, welded
from scipy.optimize import least_squares
from shapely.geometry import Polygon
from shapely.ops import unary_union

INCH = 25.4
DEPTH = 30 * INCH
COOK = 120 * INCH
BAR = 84 * INCH
# One division of the tape, and a mark where a string meets a side, as docs/as-built.md has them.
TAPE = INCH / 16
STRING = INCH / 16
# Board 1/2 in, base coat 1/4 in, finish coat 1/8 in; the counter passes the finished face by 2 in everywhere.
CLADDING = 7 / 8 * INCH
OVERHANG = 2 * INCH

KEYS = ["working", "seating", "left", "right", "from_working_left", "from_working_right"]
# The corners a length is taped between: working left, working right, seating right, seating left.
ENDS = [(0, 1), (3, 2), (0, 3), (1, 2), (0, 2), (1, 3)]

# The bar turns right from the cook run: seven points, in the world x along the cook run and y away from its working side.
# Cook: 0 1 2 3; bar: its seating left corner is the cook's seating right one.
POINTS = np.array(
    [
        (0, 0), (COOK, 0), (COOK, DEPTH), (0, DEPTH),
        (COOK - DEPTH, DEPTH), (COOK - DEPTH, DEPTH - BAR), (COOK, DEPTH - BAR),
    ]
)
RUNS = {"cook": (0, 1, 2, 3), "bar": (4, 5, 6, 2)}
# A point on the line through two others: the cook's right end on the bar's seating side, the bar's left end on the cook's.
ON_LINE = [(1, 2, 6), (4, 3, 2)]

DESIGN = """
project: {title: Frame as measured, units: imperial}
trade: {board: {thickness: 1/2 in}, base_coat: 1/4 in, finish_coat: 1/8 in}
runs:
  - {name: cook, length: 10 ft, depth: 30 in}
  - {name: bar, length: 7 ft, depth: 30 in, turn: right, passes: earlier}
counter:
  thickness: 2 in
  edge: {square: {eased: 0 in}}
  corners: sharp
  turndown: {depth: 1 in, width: 1-1/2 in}
  overhang: {working: 2 in, seating: 2 in, left: 2 in, right: 2 in}
"""


def design(readings):
    """The file with readings in millimetres."""
    lines = ["as_built:", "  tape: 1/16 in", "  runs:"]
    for name, lengths in readings.items():
        spelt = {k: f"{v:.4f} mm" for k, v in zip(KEYS, lengths)}
        across = ", ".join(f"{k}: {spelt.pop(k)}" for k in KEYS[4:])
        lines += [f"    - run: {name}", *(f"      {k}: {v}" for k, v in spelt.items()), f"      diagonals: {{{across}}}"]
    return DESIGN + "\n".join(lines) + "\n"


def taped(points, name):
    corners = points[list(RUNS[name])]
    return np.array([math.dist(corners[a], corners[b]) for a, b in ENDS])


def frame(rng, off):
    """Points off their places by up to so much each way, those on a side of the other run moved onto it."""
    points = POINTS + rng.uniform(-off, off, POINTS.shape)
    for p, a, b in ON_LINE:
        along = (points[b] - points[a]) / math.dist(points[a], points[b])
        points[p] = points[a] + along * np.dot(points[p] - points[a], along)
    return points


def fitted(readings):
    """The points by scipy, the first at the origin and the second on the x axis."""
    def unpacked(x):
        return np.concatenate([[[0, 0], [x[0], 0]], x[1:].reshape(-1, 2)])

    def misfits(x):
        points = unpacked(x)
        found = [(taped(points, n) - r) / TAPE for n, r in readings.items()]
        for p, a, b in ON_LINE:
            u = (points[b] - points[a]) / math.dist(points[a], points[b])
            v = points[p] - points[a]
            found.append([(u[0] * v[1] - u[1] * v[0]) / STRING])
        return np.concatenate(found)

    start = np.concatenate([[POINTS[1][0]], POINTS[2:].ravel()])
    fit = least_squares(misfits, start, xtol=1e-15, ftol=1e-15, gtol=1e-15)
    return unpacked(fit.x)


@pytest.fixture(scope="module")
def built(program, tmp_path_factory):
    """Readings of a frame up to 3/16 in off each way, with noise, and the folder that was built of them."""
    rng = np.random.default_rng(20270514)
    points = frame(rng, 3 / 16 * INCH)
    readings = {n: taped(points, n) + rng.normal(0, TAPE, 6) for n in RUNS}
    folder = tmp_path_factory.mktemp("as-built")
    (folder / "frame.yaml").write_text(design(readings))
    run(program, "build", folder / "frame.yaml", "--out", folder / "out", "--only", "site,models,takeoff", ok=(0, 1))
    return readings, folder / "out" / "frame"


def rows(folder, table):
    return json.loads((folder / "site/site.json").read_text())[table.replace("-", "_")]["rows"]


def test_the_frame_is_the_one_that_scipy_fits(built):
    readings, folder = built
    points = fitted(readings)
    found = rows(folder, "as-built")
    assert len(found) == 12
    for name in RUNS:
        own = [r for r in found if r["run"] == name]
        lengths = taped(points, name)
        for row, read, length in zip(own, readings[name], lengths):
            assert row["read_mm"] == pytest.approx(read, abs=6e-4)
            assert row["fitted_mm"] == pytest.approx(length, abs=6e-4)
            assert row["fitted_less_read"] == pytest.approx(length - read, abs=1.2e-3)
    corners = rows(folder, "as-built-corners")
    for name, numbers in RUNS.items():
        own = [r for r in corners if r["run"] == name]
        for row, number in zip(own, numbers):
            assert [row["along"], row["away"]] == pytest.approx(points[number], abs=2e-3), row
    checked = sum(r["checked_by_the_others"] for r in found) / 100
    # Twelve lengths and two marks on strings less eleven for the shape of seven points are three; the marks have their share.
    assert 2.0 < checked < 3.0


def test_one_gross_error_is_named(program, tmp_path):
    rng = np.random.default_rng(7)
    for case, (name, key) in enumerate([(n, k) for n in RUNS for k in range(6)] * 2):
        points = frame(rng, INCH / 8)
        readings = {n: taped(points, n) + rng.normal(0, TAPE, 6) for n in RUNS}
        error = rng.choice([-1, 1]) * rng.choice([1, 1.5, 2, 6]) * INCH
        readings[name][key] += error
        path = tmp_path / f"{case}.yaml"
        path.write_text(design(readings))
        said = subprocess.run(
            [program, "check", path, "--format", "json"], capture_output=True, text=True, cwd=ROOT, check=False
        )
        findings = [f for f in json.loads(said.stdout)["findings"] if f["code"] == "frame-tape" and f["verdict"] == "fail"]
        line = 1 + path.read_text().splitlines().index(f"    - run: {name}")
        assert len(findings) == 1, (name, KEYS[key], error, findings)
        assert findings[0]["line"] == line + min(key + 1, 5), (name, KEYS[key], error, findings)
        # The two diagonals stand on one line.
        if key >= 4:
            assert KEYS[key].replace("_", " ").replace("from", "diagonal from") in findings[0]["found"]


def faces(folder):
    """The frame's outline as fitted: where its sides meet, counter-clockwise."""
    corners = {}
    for name in RUNS:
        own = [r for r in rows(folder, "as-built-corners") if r["run"] == name]
        corners[name] = [np.array([r["along"], r["away"]]) for r in own]
    cook, bar = corners["cook"], corners["bar"]
    inner = meet(cook[0], cook[1], bar[0], bar[1])
    outer = meet(bar[2], bar[3], cook[2], cook[3])
    return Polygon([cook[0], inner, bar[1], bar[2], outer, cook[3]])


def meet(a, b, c, d):
    u, v = b - a, d - c
    t = ((c - a)[0] * v[1] - (c - a)[1] * v[0]) / (u[0] * v[1] - u[1] * v[0])
    return a + u * t


def parts(folder):
    listed = json.loads((folder / "models/parts.json").read_text())["parts"]
    triangles = stl_triangles(folder / "models/assembly.stl")
    for part in listed:
        first, count = part["in_assembly"]["first"], part["in_assembly"]["count"]
        part["mesh"] = welded(triangles[first : first + count])
    return listed


def shadow(mesh):
    flat = [Polygon(t[:, :2]) for t in mesh.triangles]
    return unary_union([p.buffer(0) for p in flat if p.area > 1e-6])


def test_the_counter_is_the_measured_polygon_moved_out(built):
    _, folder = built
    slab = next(p for p in parts(folder) if p["kind"] == "slab")
    expected = faces(folder).buffer(CLADDING + OVERHANG, join_style="mitre", mitre_limit=10)
    found = shadow(slab["mesh"])
    assert found.symmetric_difference(expected).area < 0.02 * expected.length, "within a fiftieth of a millimetre"
    assert slab["mesh"].is_watertight
    # The plan's own outline is another one.
    planned = Polygon([POINTS[i] for i in (0, 4, 5, 6, 2, 3)]).buffer(CLADDING + OVERHANG, join_style="mitre", mitre_limit=10)
    assert found.symmetric_difference(planned).area > 1.0 * expected.length
    rim = expected.difference(expected.buffer(-1.5 * INCH, join_style="mitre", mitre_limit=10))
    volume = expected.area * 2 * INCH + rim.area * INCH
    assert slab["mesh"].volume == pytest.approx(volume, rel=1e-5)


def test_forms_are_closed_and_lie_round_the_counter(built):
    _, folder = built
    expected = faces(folder).buffer(CLADDING + OVERHANG, join_style="mitre", mitre_limit=10)
    forms = [p for p in parts(folder) if p["kind"] == "edge form"]
    for form in forms:
        assert form["mesh"].is_watertight and form["mesh"].volume > 0
    forms = [f for f in forms if f["section"].startswith("edge form wall")]
    assert len(forms) == 6
    for form in forms:
        lies = shadow(form["mesh"])
        # Against the edge along its whole side, never in the concrete.
        assert lies.intersection(expected).area < 0.02 * lies.length
        assert lies.distance(expected) < 0.02
    lengths = sorted(side_lengths(expected))
    # A mitred strip 3/4 in thick is longest on the outside of an outward corner and on the inside of an inward one.
    found = sorted(f["mesh"].bounding_box_oriented.primitive.extents.max() for f in forms)
    assert np.allclose(found, lengths, atol=2.2 * 0.75 * INCH)


def side_lengths(polygon):
    ring = np.array(polygon.exterior.coords)
    return np.linalg.norm(np.diff(ring, axis=0), axis=1)


def test_boards_meet_at_corners_and_share_no_space(built):
    _, folder = built
    clad = [p for p in parts(folder) if p["kind"] in ("board", "base coat", "finish coat")]
    assert len(clad) > 12

    def body(mesh):
        return manifold3d.Manifold(
            manifold3d.Mesh(mesh.vertices.astype(np.float32), mesh.faces.astype(np.uint32))
        )

    for i, a in enumerate(clad):
        for b in clad[i + 1 :]:
            low = np.maximum(a["mesh"].bounds[0], b["mesh"].bounds[0])
            high = np.minimum(a["mesh"].bounds[1], b["mesh"].bounds[1])
            if np.any(high - low < 1e-3) or a["mark"].split("-")[0] == b["mark"].split("-")[0]:
                continue
            shared = (body(a["mesh"]) ^ body(b["mesh"])).volume()
            # Faces touch; coordinates are single floats.
            assert shared < 5.0, (a["mark"], b["mark"], shared)
