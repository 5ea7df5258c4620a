"""The scale model: every print one sound solid that fits the bed, no wall too thin, every member there; a slicer takes it as it is."""

import json
import re
import shutil
import subprocess

import igl
import igl.copyleft.cgal
import numpy as np
import pytest
import trimesh

from conftest import ROOT, run, stl_triangles, welded

# What a ray may be short of the smallest wall, millimetres: the grid that prints stand on, and single precision.
SLACK = 2e-3
SLICER = shutil.which("prusa-slicer")

# Scales and beds that the examples are printed in beside what their files ask for.
TRIALS = {
    "as the file says": {},
    "in several pieces": {"scale": "1:12"},
    "on a small bed": {"scale": "1:20", "printer": {"bed": {"x": "120 mm", "y": "120 mm", "z": "100 mm"}}},
    "with a fine nozzle": {"scale": "1:16", "printer": {"nozzle": "0.25 mm", "wall": "0.6 mm", "clearance": "0.1 mm"}},
}


class Model:
    def __init__(self, folder):
        self.folder = folder
        self.list = json.loads((folder / "scale-model/pieces.json").read_text())
        self.wall = self.list["printer"]["wall"]
        self.pieces = self.list["pieces"]
        for piece in self.pieces:
            piece["path"] = folder / piece["file"]
            piece["mesh"] = welded(stl_triangles(piece["path"]))

    def of(self, layer):
        return [p for p in self.pieces if p["layer"] == layer]

    def in_place(self, piece):
        """The print moved to where it belongs in the model."""
        motion = np.vstack([piece["to_model"], [0, 0, 0, 1]])
        return piece["mesh"].copy().apply_transform(motion)


_made = {}


@pytest.fixture(params=TRIALS)
def model(request, example, program, out):
    """The scale model of every example in every trial, built once."""
    key = (example.name, request.param)
    if key not in _made:
        text = (ROOT / "params" / f"{example.name}.yaml").read_text()
        asked = TRIALS[request.param]
        if asked:
            text += "\nscale_model: " + json.dumps(asked) + "\n"
        folder = out / "scale" / request.param.replace(" ", "-")
        folder.mkdir(parents=True, exist_ok=True)
        file = folder / f"{example.name}.yaml"
        file.write_text(text)
        run(program, "build", file, "--only", "scale-model", "--out", folder, ok=(0, 1))
        _made[key] = Model(folder / example.name)
    return _made[key]


def test_each_print_is_one_closed_body(model):
    for piece in model.pieces:
        mesh = piece["mesh"]
        assert mesh.is_watertight and mesh.is_winding_consistent, piece["path"]
        assert mesh.volume > 0 and abs(mesh.volume - piece["volume"]) < 1e-3 * mesh.volume, piece["path"]
        assert mesh.body_count == 1, f"{piece['path']}: {mesh.body_count} bodies"
        # No edge has four faces: bodies that touch along an edge are not one solid.
        counts = np.unique(np.sort(mesh.edges, axis=1), axis=0, return_counts=True)[1]
        assert (counts == 2).all(), piece["path"]


def test_no_print_cuts_through_itself(model):
    for piece in model.pieces:
        mesh = piece["mesh"]
        pairs = igl.copyleft.cgal.remesh_self_intersections(
            np.asarray(mesh.vertices), np.asarray(mesh.faces, dtype=np.int64), detect_only=True
        )[2]
        assert len(pairs) == 0, f"{piece['path']}: {len(pairs)} pairs"


def test_each_print_lies_on_the_bed_and_fits(model):
    bed = np.array(model.list["printer"]["bed"])
    for piece in model.pieces:
        low, high = piece["mesh"].bounds
        assert np.allclose(low, 0, atol=1e-6), piece["path"]
        assert (high <= bed + 1e-6).all(), piece["path"]
        assert np.allclose(high, piece["size"], atol=1e-4)
        # It stands on more than a line.
        flat = (piece["mesh"].triangles[:, :, 2].max(axis=1) < 1e-6)
        assert piece["mesh"].area_faces[flat].sum() > 4 * model.wall**2, piece["path"]


def thicknesses(mesh, count=3000):
    """How far it is through the solid, straight inwards, from points spread over its surface and from each triangle's middle.

    Where the far side does not face the other way within 45 degrees, two sides meet in an edge: that is no wall, and infinite here.
    """
    spread, faces = trimesh.sample.sample_surface(mesh, count, seed=1)
    points = np.vstack([spread, mesh.triangles_center])
    normals = mesh.face_normals[np.concatenate([faces, np.arange(len(mesh.faces))])]
    vertices, triangles = np.asarray(mesh.vertices, dtype=float), np.asarray(mesh.faces, dtype=np.int64)
    found, missed = np.full(len(points), np.inf), len(points)
    for i, (point, inward) in enumerate(zip(points, -normals)):
        # The point's own triangle is not the other side.
        beyond = [hit[:2] for hit in igl.ray_mesh_intersect(point, inward, vertices, triangles) if hit[1] > 1e-3]
        if beyond:
            face, far = min(beyond, key=lambda hit: hit[1])
            missed -= 1
            if mesh.face_normals[face] @ inward > 0.7071:
                found[i] = far
    # A ray that meets an edge exactly may slip through; no more than a few do.
    assert missed < 0.01 * len(points)
    return found


def test_no_wall_is_thinner_than_the_smallest(model):
    for piece in model.pieces:
        found = thicknesses(piece["mesh"])
        assert found.min() >= model.wall - SLACK, f"{piece['path']}: {found.min():.4f} mm"


def test_every_member_is_in_the_frame(model, example):
    members = {p["mark"] for p in example.parts if p["group"] == "framing"}
    frames = model.of("frame")
    assert {m for f in frames for m in f["members"]} == members
    bars = {b["mark"]: b for b in model.list["bars"]}
    assert set(bars) == members and len(model.list["bars"]) == len(members)
    meshes = {f["name"]: model.in_place(f) for f in frames}
    scale = model.list["scale"]
    whole = {p["mark"]: p["mesh"].bounds for p in example.parts if p["group"] == "framing"}
    for frame in frames:
        mesh = meshes[frame["name"]]
        low, high = mesh.bounds
        middles = {m: (np.array(bars[m]["low"]) + bars[m]["high"]) / 2 for m in frame["members"]}
        inside = {m: c for m, c in middles.items() if ((c > low) & (c < high)).all()}
        # A member that a joint cuts has its middle in one of its pieces, or in the gap of the joint.
        sure = {m: c for m, c in inside.items() if sum(m in f["members"] for f in frames) == 1}
        vertices, triangles = np.asarray(mesh.vertices, dtype=float), np.asarray(mesh.faces, dtype=np.int64)
        winding = igl.winding_number(vertices, triangles, np.array(list(sure.values())))
        assert (winding > 0.5).all(), frame["path"]
    for mark, bar in bars.items():
        size = np.array(bar["high"]) - bar["low"]
        assert (size >= model.wall - 1e-9).all(), mark
        middle = (np.array(bar["low"]) + bar["high"]) / 2
        assert np.abs(middle - whole[mark].mean(axis=0) / scale).max() < 60 / scale, mark


def test_the_pieces_do_not_share_space_when_put_together(model):
    import manifold3d

    solids = []
    for piece in model.pieces:
        if piece["layer"] == "frame" and not model.list["frame_inside_base"]:
            continue
        mesh = model.in_place(piece)
        solid = manifold3d.Manifold(manifold3d.Mesh64(np.asarray(mesh.vertices, dtype=np.float64), np.asarray(mesh.faces, dtype=np.uint64)))
        assert solid.status() == manifold3d.Error.NoError
        solids.append((piece["name"], solid))
    for i, (a, one) in enumerate(solids):
        for b, other in solids[i + 1 :]:
            shared = one ^ other
            assert shared.volume() < 0.02 * max(1.0, shared.surface_area() / 2), f"{a} and {b} share {shared.volume():.3f} mm³"


def test_a_slicer_takes_each_print_as_it_is(model):
    assert SLICER, "no slicer: apt-get install --no-install-recommends prusa-slicer"
    for piece in model.pieces:
        done = subprocess.run([SLICER, "--info", str(piece["path"])], capture_output=True, text=True)
        assert done.returncode == 0, done.stderr
        said = dict(re.findall(r"^(\w+) = (.*)$", done.stdout, re.M))
        assert said["manifold"] == "yes", done.stdout
        assert said["number_of_parts"].strip() == "1", done.stdout
        words = done.stdout + done.stderr
        assert not re.search(r"open_edges|degenerate|repaired|fixed|removed|reversed|backwards", words), words
        assert abs(float(said["volume"]) / piece["volume"] - 1) < 1e-3
