"""The STEP file through OpenCascade: every solid valid, closed, exact; names, units and places; arcs still arcs."""

import json
import subprocess
from collections import Counter

import numpy as np
import pytest
from conftest import ROOT, TOLERANCE
from solid_reader import StepFile

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
    listed = {p["mark"]: p for p in example.parts}
    for names, solid, location in model.leaves:
        mesh = listed[names[-1]]["mesh"]
        low, high = mesh.bounds
        points = np.array(solid.vertices(location))
        # Corners of the solid are corners of its mesh; the mesh is in single precision.
        assert (points > low - 0.01).all() and (points < high + 0.01).all(), names
        near, _, _ = mesh.nearest.on_surface(points[:: max(1, len(points) // 4)])
        assert np.allclose(near, points[:: max(1, len(points) // 4)], atol=TOLERANCE + 0.01), names


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


def punch_outs(solid):
    """Each is a slot with two half-round ends and two flat sides."""
    return (solid.faces - 22) // 4


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
    assert checked[0, False] and checked[2, False], checked


def test_boards_and_boxes_are_plane(example, model):
    listed = {p["mark"]: p for p in example.parts}
    for names, solid, _ in model.leaves:
        if listed[names[-1]]["kind"] in ("sleeper", "tile", "body", "leaf"):
            assert set(solid.surfaces) == {"Plane"} and set(solid.curves) == {"Line"}, names


def test_the_slab_has_the_arcs_of_its_file(example, model):
    """Rounded corners of the plan and of cutouts are cylinders, eased edges cylinders along the sides."""
    slab = next(s for names, s, _ in model.leaves if names[-1] in {p["mark"] for p in example.of_kind("slab")})
    rounded = isinstance(example.params["counter"].get("corners"), dict) and "rounded" in example.params["counter"]["corners"]
    if rounded:
        assert slab.surfaces["Cylinder"] >= 2 and slab.curves["Circle"] >= 4
    edge = next(iter(example.params["counter"].get("edge", {"square": {}})))
    if edge in ("half_round", "quarter_round", "cove"):
        assert slab.surfaces["Cylinder"] >= 1
    assert slab.faces >= 6 + slab.surfaces["Cylinder"]


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
