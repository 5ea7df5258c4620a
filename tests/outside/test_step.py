"""The STEP file through OpenCascade: every solid valid, closed, exact; names, units and places; arcs still arcs."""

import json
import subprocess
from collections import Counter

import numpy as np
import pytest
from conftest import ROOT
from scipy.spatial import cKDTree
from solid_reader import StepFile
from step_text import StepText, area

# What may be found: nothing is approximated.
SURFACES = {"Plane", "Cylinder", "Cone", "Sphere", "Torus", "SurfaceOfRevolution"}
CURVES = {"Line", "Circle", "Ellipse"}

_read = {}


@pytest.fixture
def model(example):
    if example.name not in _read:
        _read[example.name] = StepFile(example.folder / "models/island.step")
    return _read[example.name]


def check_solid(name, solid):
    assert len(solid.solids) == 1 and len(solid.shells) == 1, name
    assert solid.valid and solid.closed, name
    assert solid.tolerance <= 1e-6, (name, solid.tolerance)
    assert set(solid.surfaces) <= SURFACES, (name, solid.surfaces)
    assert set(solid.curves) <= CURVES, (name, solid.curves)


def test_every_distinct_solid_is_one_valid_closed_body(model):
    assert model.solids
    for names, solid, _ in model.leaves:
        check_solid(names[-1], solid)


def test_the_file_is_in_millimetres(model):
    assert model.units == {"millimetre"}


def test_every_part_is_there_under_its_mark_and_with_its_volume(example, model):
    listed = {p["mark"]: p for p in example.parts}
    found = {names[-1]: solid for names, solid, _ in model.leaves}
    assert len(found) == len(model.leaves) and found.keys() == listed.keys()
    for mark, part in listed.items():
        assert found[mark].volume == pytest.approx(part["volume"], rel=1e-6), mark


def test_the_tree_is_island_run_group_part(example, model):
    assert len(model.roots) == 1
    runs = [r["name"] for r in example.params["runs"]]
    listed = {p["mark"]: p for p in example.parts}
    for names, _, _ in model.leaves:
        part = listed[names[-1]]
        assert names[0] == example.params["project"]["title"]
        group = part["group"]
        if part["run"] is None:
            assert names[1:-1] == (group,)
        else:
            run = runs[part["run"] - 1]
            assert names[1:-1] == (run, f"{run}: {group}")


def test_every_part_stands_where_its_mesh_does(example, model):
    """Each corner of the solid is a corner of the mesh, which is in single precision; and it reaches as far."""
    listed = {p["mark"]: p for p in example.parts}
    for names, solid, location in model.leaves:
        mesh = listed[names[-1]]["mesh"]
        points = np.array(solid.vertices(location))
        apart, _ = cKDTree(mesh.vertices).query(points)
        assert apart.max() < 0.01, (names, apart.max())
        low, high = mesh.bounds
        # Round parts reach beyond their corners: by their bow at most.
        bow = 0 if set(solid.curves) == {"Line"} else 25
        assert (points.min(axis=0) < low + 0.01 + bow).all() and (points.max(axis=0) > high - 0.01 - bow).all(), names


def test_equal_parts_share_one_solid(example, model):
    # Fewer solids than parts, and no two products of one shape: told apart by volume, faces and lengths of the box.
    assert len(model.solids) < len(model.leaves)
    seen = Counter(
        (round(s.volume, 3), s.faces, *(np.ptp(np.array(s.vertices(_nowhere())), axis=0).round(4)))
        for s in model.solids
    )
    # A left and a right cut may agree in all of that.
    assert max(seen.values()) <= 2, seen.most_common(3)


def _nowhere():
    from OCP.TopLoc import TopLoc_Location

    return TopLoc_Location()


def test_members_have_the_faces_of_a_rolled_section(example, model):
    """A lipped stud has 12 flats and 8 bends (inside and outside of four), and two ends; a track 8, 4 and two; a
    punch-out adds two flats and two half cylinders; a tab takes one end away and adds two flange ends, two cylinders
    of the fold, the flat's two sides, its tip and the sheet's two edges."""
    listed = {p["mark"]: p for p in example.parts}
    checked = Counter()
    for names, solid, _ in model.leaves:
        part = listed[names[-1]]
        if part["group"] != "framing" or part["material"] != "galvanised steel":
            continue
        lipped = "S" in part["section"]
        flats, bends = (14, 8) if lipped else (10, 4)
        planes, cylinders = solid.surfaces["Plane"], solid.surfaces["Cylinder"]
        assert planes + cylinders == solid.faces
        # What is beyond the bare member: p punch-outs and t tabs.
        more_flats, more_round = planes - flats, cylinders - bends
        tabs = (more_flats - more_round) // 4
        slots = (more_round - 2 * tabs) // 2
        assert tabs in (0, 2), part["mark"]
        assert more_flats == 2 * slots + 6 * tabs and more_round == 2 * slots + 2 * tabs, part["mark"]
        # Two arcs at each bend's faces, at each half cylinder, and at the fold.
        assert solid.curves["Circle"] == 2 * bends + 4 * slots + 4 * tabs, part["mark"]
        checked[tabs, slots > 0] += 1
    assert sum(checked[0, punched] for punched in (False, True)), checked
    if example.params.get("openings"):
        assert sum(checked[2, punched] for punched in (False, True)), "headers are folded onto jambs"


def test_boards_and_boxes_are_plane(example, model):
    listed = {p["mark"]: p for p in example.parts}
    for names, solid, _ in model.leaves:
        if listed[names[-1]]["kind"] in ("sleeper", "tile", "leaf"):
            assert set(solid.surfaces) == {"Plane"} and set(solid.curves) == {"Line"}, names


# Arcs in the profile of an edge with turndown: both arrises of a square one are eased, a half round is two quarters.
ARCS = {"square": 2, "half-round": 2, "quarter-round": 1, "cove": 1, "chamfer": 0}


def test_the_slab_has_the_arcs_of_its_file(example, model):
    """Where sides meet in a rounded corner each arc of the edge is turned: a torus, or what crosses its own axis. Where they
    are mitred it is cut in an ellipse. A chain of n runs has n + 3 outward corners and n − 1 inward ones."""
    (mark,) = (p["mark"] for p in example.of_kind("slab"))
    slab = next(s for names, s, _ in model.leaves if names[-1] == mark)
    counter, runs = example.params.get("counter", {}), example.params["runs"]
    if any(r.get("walls") for r in runs):
        # Against a wall nothing is turned: only cutouts are round.
        assert not slab.surfaces["Torus"] + slab.surfaces["SurfaceOfRevolution"]
        return
    edge = counter.get("edge", "square")
    edge = edge if isinstance(edge, str) else next(iter(edge))
    rounded = "rounded" in counter.get("corners", {})
    outward, inward = len(runs) + 3, len(runs) - 1
    turned = slab.surfaces["Torus"] + slab.surfaces["SurfaceOfRevolution"]
    assert turned == (ARCS[edge] * outward if rounded else 0)
    assert slab.curves["Ellipse"] == ARCS[edge] * (inward if rounded else inward + outward)


def test_the_smallest_slab_is_counted_on_paper(example, model):
    """Four sides of two quarter rounds, a drop and the turndown's inside; the turndown's underside all round; top, underside."""
    if example.name != "smallest":
        return
    slab = next(s for names, s, _ in model.leaves if names[-1] == "SLAB")
    assert slab.surfaces == {"Cylinder": 4 * 2, "Plane": 4 * 2 + 1 + 2}
    # At each of four mitres two ellipses; along the sides six lines each, and at the mitres three lines but for the merged one.
    assert slab.curves == {"Ellipse": 4 * 2, "Line": 4 * 6 + 4 * 2}


@pytest.fixture(scope="module")
def every_sort(tmp_path_factory):
    command = ["cargo", "run", "--quiet", "--locked", "--example", "exact_solids"]
    done = subprocess.run(command, capture_output=True, text=True, cwd=ROOT)
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    path = tmp_path_factory.mktemp("step") / "solids.step"
    path.write_text(told["step"])
    return StepFile(path), dict(told["volumes"])


def test_solids_of_every_sort_are_valid_and_exact(every_sort):
    """Slabs with every edge at every corner, strips cut askew, members with tabs, turned profiles up to a full turn."""
    model, volumes = every_sort
    found = {names[-1]: solid for names, solid, _ in model.leaves}
    assert found.keys() == volumes.keys() and len(volumes) > 80
    for name, solid in found.items():
        check_solid(name, solid)
        assert solid.volume == pytest.approx(volumes[name], rel=1e-6), name
    kinds = sum((s.surfaces for s in found.values()), Counter())
    assert set(kinds) == SURFACES, kinds


def test_letters_outside_ascii_arrive(every_sort):
    model, _ = every_sort
    assert model.leaves[0][0][0] == "Solids — Prüfstücke"


def test_the_same_input_gives_the_same_bytes(example):
    text = (example.folder / "models/island.step").read_text()
    assert text.isascii() and "FILE_SCHEMA(('AUTOMOTIVE_DESIGN" in text
    assert "1970-01-01T00:00:00" in text


def check_senses(text):
    """OpenCascade turns a face round that is the wrong way; here none is: bounds run counter-clockwise round the normal that
    the face's sense gives, holes clockwise, and where a plane face has the whole solid on one side its normal points away."""
    step = StepText(text)
    shells = step.of("CLOSED_SHELL")
    for shell in shells:
        faces = list(step.faces(shell))
        corners = np.concatenate([p for _, _, bounds in faces for p in bounds])
        for surface, same, bounds in faces:
            sign = 1 if same else -1
            outer, *holes = (area(step.flat(surface, points)) * sign for points in bounds)
            assert outer > 0 and all(h < 0 for h in holes), (shell, step.kind(surface))
            if step.kind(surface) == "PLANE":
                origin, frame = step.axes(step.refs(surface)[0])
                heights = (corners - origin) @ frame[2] * sign
                assert not heights.min() > -1e-6 or heights.max() < 1e-6, (shell, "it faces inwards")
    return len(shells)


def test_faces_and_bounds_run_as_the_file_says(example, model):
    assert check_senses((example.folder / "models/island.step").read_text()) == len(model.solids)


def test_faces_of_every_sort_run_as_the_file_says(every_sort):
    model, _ = every_sort
    assert check_senses(model.path.read_text()) == len(model.solids)
