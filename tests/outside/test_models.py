"""The models: every solid closed and sound by two mesh libraries, no two of them in the same place by a third."""

import igl.copyleft.cgal
import manifold3d
import numpy as np
import pytest
import trimesh

from conftest import TOLERANCE, stl_triangles
from island import Island

# Kinds whose nesting the model allows: an upright's square end in the bends of its track, no higher than this, millimetres.
UPRIGHTS = {"stud", "jamb", "cripple"}
CHANNELS = {"bottom track", "top track", "header", "sill"}
NESTING = 0.5
# Two solids that touch share nothing thicker than this, millimetres: an STL number near 4 m is good to 0.00025 mm.
CONTACT = 0.002
# Forms are gone when the appliances come.
FORMS, APPLIANCES = "forms", "appliances"


def test_every_stl_is_closed_and_consistently_wound(example):
    for path in example.files(".stl"):
        # trimesh's own reader, then every body that the file holds.
        mesh = trimesh.load_mesh(path, process=False)
        assert len(mesh.faces) == len(stl_triangles(path)) > 0
        mesh.merge_vertices()
        assert np.isfinite(mesh.vertices).all(), path
        assert mesh.volume > 0, path
        edges, counts = np.unique(np.sort(mesh.edges, axis=1), axis=0, return_counts=True)
        # Bodies that touch may share an edge: then four triangles meet there, but never an odd number.
        assert (counts % 2 == 0).all(), f"{path}: {int((counts % 2).sum())} open edges"
        directed = mesh.edges
        forward = np.unique(directed, axis=0, return_counts=True)
        backward = np.unique(directed[:, ::-1], axis=0, return_counts=True)
        assert np.array_equal(forward[0], backward[0]) and np.array_equal(forward[1], backward[1]), path


def test_the_groups_together_are_the_assembly(example):
    whole = len(stl_triangles(example.folder / "models/assembly.stl"))
    groups = [p for p in example.files(".stl") if p.parent.name == "models" and p.name != "assembly.stl"]
    assert sum(len(stl_triangles(p)) for p in groups) == whole


def test_every_part_is_closed_outward_and_has_its_exact_volume(example):
    faults = []
    for part in example.parts:
        mesh = part["mesh"]
        if not mesh.is_watertight:
            faults.append(f"{part['mark']}: open")
        elif not mesh.is_winding_consistent:
            faults.append(f"{part['mark']}: winding")
        elif not mesh.volume > 0:
            faults.append(f"{part['mark']}: inside out")
        elif abs(mesh.volume / part["volume"] - 1) > 1e-3:
            faults.append(f"{part['mark']} {part['kind']}: {mesh.volume} for {part['volume']}")
    assert not faults, "\n".join(faults[:40])


def test_no_part_cuts_through_itself(example):
    faults, seen = [], set()
    for part in example.parts:
        mesh = part["mesh"]
        # Equal members are tested once: the same triangles with the same sides, to the figures of the file.
        key = (mesh.faces.tobytes(), np.round(mesh.edges_unique_length, 2).tobytes())
        if key in seen:
            continue
        seen.add(key)
        pairs = igl.copyleft.cgal.remesh_self_intersections(
            np.asarray(mesh.vertices), np.asarray(mesh.faces, dtype=np.int64), detect_only=True
        )[2]
        if len(pairs):
            faults.append(f"{part['mark']} {part['kind']}: {len(pairs)} pairs")
    assert not faults, "\n".join(faults[:40])


def as_manifold(mesh):
    made = manifold3d.Manifold(
        manifold3d.Mesh64(
            vert_properties=np.asarray(mesh.vertices, dtype=np.float64), tri_verts=np.asarray(mesh.faces, dtype=np.uint64)
        )
    )
    assert made.status() == manifold3d.Error.NoError
    return made


def close_pairs(boxes):
    """Pairs of boxes that share more than the contact tolerance in every direction."""
    low, high = boxes[:, 0], boxes[:, 1]
    order = np.argsort(low[:, 0])
    for k, i in enumerate(order):
        for j in order[k + 1 :]:
            if low[j, 0] >= high[i, 0] - CONTACT:
                break
            if (low[j] < high[i] - CONTACT).all() and (low[i] < high[j] - CONTACT).all():
                yield i, j


def thickness(shared):
    """The thickness of what two solids share, as of a thin sheet: its volume over one of its two skins."""
    volume, area = shared.volume(), shared.surface_area()
    return 2 * volume / area if volume > 0 and area > 0 else 0.0


def is_allowed(a, b, shared):
    """Whether two parts may share this space."""
    kinds = {a["kind"], b["kind"]}
    if kinds & UPRIGHTS and kinds & CHANNELS:
        box = np.array(shared.bounding_box())
        return (box[3:] - box[:3]).min() <= NESTING
    # Slab, substrate and forms meet in curves that each cuts into chords of its own.
    return {a["group"], b["group"]} <= {"counter", "forms"} and thickness(shared) <= TOLERANCE


def test_no_two_solids_share_volume(example):
    parts = example.parts
    made = [as_manifold(p["mesh"]) for p in parts]
    boxes = np.array([p["mesh"].bounds for p in parts])
    faults, tried = [], 0
    for i, j in close_pairs(boxes):
        a, b = parts[i], parts[j]
        if {a["group"], b["group"]} == {FORMS, APPLIANCES}:
            continue
        tried += 1
        shared = made[i] ^ made[j]
        thick = thickness(shared)
        if thick > CONTACT and not is_allowed(a, b, shared):
            faults.append(
                f"{a['mark']} {a['kind']} and {b['mark']} {b['kind']}: {shared.volume():.1f} mm³, {thick:.3f} mm thick,"
                f" at {np.round(shared.bounding_box(), 1).tolist()}"
            )
    assert tried > 0
    assert not faults, f"{len(faults)} of {tried} pairs\n" + "\n".join(faults[:60])


def test_the_overlap_check_sees_an_overlap():
    a, b = trimesh.creation.box((10, 10, 10)), trimesh.creation.box((10, 10, 10))
    touching, inside = b.copy(), b.copy()
    touching.apply_translation((10, 3, 0))
    inside.apply_translation((9.99, 3, 0))
    assert thickness(as_manifold(a) ^ as_manifold(touching)) == 0
    assert thickness(as_manifold(a) ^ as_manifold(inside)) == pytest.approx(0.01, rel=0.01)


def test_the_self_intersection_check_sees_a_crossing():
    a, b = trimesh.creation.box((10, 10, 10)), trimesh.creation.box((10, 10, 10))
    b.apply_translation((5, 5, 5))
    both = trimesh.util.concatenate([a, b])
    pairs = igl.copyleft.cgal.remesh_self_intersections(
        np.asarray(both.vertices), np.asarray(both.faces, dtype=np.int64), detect_only=True
    )[2]
    assert len(pairs) > 0


def test_the_models_reach_as_far_as_the_design(example):
    island = Island(example.params)

    def bounds(name):
        return trimesh.load_mesh(example.folder / f"models/{name}.stl", process=False).bounds

    def expected(plan, low, high):
        x0, y0, x1, y1 = plan.bounds
        return [[x0, y0, low], [x1, y1, high]]

    # Frame, finished faces and counter, each from the parameter file; an STL number is good to 0.0003 mm here.
    framing = bounds("framing")
    assert framing[0][2] >= -1e-3, "something stands below the datum"
    assert framing == pytest.approx(np.array(expected(island.frame, framing[0][2], island.frame_top)), abs=2e-3)
    boards = bounds("boards")
    assert boards[1][2] == pytest.approx(island.frame_top, abs=2e-3)
    assert bounds("coats") == pytest.approx(
        np.array(expected(island.clad(island.cladding_at_most), island.foot, island.frame_top)), abs=2e-3
    )
    slab = island.slab_outline(lambda e: 0.0)
    low = min(island.frame_top, island.top - island.thickness - max(island.drop * island.is_dropped(e) for e in island.edges))
    assert bounds("counter") == pytest.approx(np.array(expected(slab, low, island.top)), abs=2e-3)
