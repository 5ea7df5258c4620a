"""The GLB: the format's own validator, the island's sizes from the parameter file, every part against the STL."""

import json
import struct
import subprocess

import numpy as np
import pytest
import trimesh

from conftest import ROOT
from island import Island

# A model that is only looked at keeps its curves this close, millimetres; the STL's own stay within a fifth of it.
SHOWN = 0.1
# Extensions are not asked for: none may be needed.
MIB = 2**20
COMPONENT = {5123: "<u2", 5125: "<u4", 5126: "<f4"}


class Gltf:
    """A GLB taken apart by the layout that the standard gives it."""

    def __init__(self, data):
        magic, version, length = struct.unpack_from("<4sII", data)
        assert (magic, version, length) == (b"glTF", 2, len(data))
        size, kind = struct.unpack_from("<I4s", data, 12)
        assert kind == b"JSON"
        self.json = json.loads(data[20 : 20 + size])
        self.bytes = data[20 + size + 8 :]
        self.nodes = self.json["nodes"]

    def values(self, accessor):
        a = self.json["accessors"][accessor]
        view = self.json["bufferViews"][a["bufferView"]]
        width = {"SCALAR": 1, "VEC3": 3}[a["type"]]
        start = view["byteOffset"] + a["byteOffset"]
        flat = np.frombuffer(self.bytes, COMPONENT[a["componentType"]], a["count"] * width, start)
        return flat.reshape(-1, width) if width > 1 else flat

    def scene(self, number):
        """Every node of a scene with the names above it and its matrix in the world."""
        stack = [(n, (), np.eye(4)) for n in self.json["scenes"][number]["nodes"]]
        while stack:
            index, above, outer = stack.pop()
            node = self.nodes[index]
            matrix = outer @ local(node)
            yield node, above, matrix
            stack += [(n, above + (node["name"],), matrix) for n in node.get("children", ())]

    def surface(self, node):
        (primitive,) = self.json["meshes"][node["mesh"]]["primitives"]
        at = primitive["attributes"]
        triangles = self.values(primitive["indices"]).reshape(-1, 3)
        return self.values(at["POSITION"]), self.values(at["NORMAL"]), triangles

    def material(self, node):
        (primitive,) = self.json["meshes"][node["mesh"]]["primitives"]
        return self.json["materials"][primitive["material"]]


def local(node):
    matrix = np.eye(4)
    x, y, z, w = node.get("rotation", (0, 0, 0, 1))
    matrix[:3, :3] = trimesh.transformations.quaternion_matrix((w, x, y, z))[:3, :3]
    matrix[:3, 3] = node.get("translation", (0, 0, 0))
    return matrix


def y_up(millimetres):
    """From the island's millimetres with z up to metres with y up."""
    p = np.asarray(millimetres) / 1000.0
    return np.stack([p[..., 0], p[..., 2], -p[..., 1]], axis=-1)


def box_y_up(bounds):
    turned = y_up(bounds)
    return np.array([turned.min(axis=0), turned.max(axis=0)])


def path_of(example):
    return example.folder / "models/island.glb"


@pytest.fixture
def gltf(example):
    return Gltf(path_of(example).read_bytes())


def reports(*paths):
    command = ["node", "tests/outside/validate_gltf.cjs", *map(str, paths)]
    done = subprocess.run(command, capture_output=True, text=True, cwd=ROOT)
    assert done.returncode == 0, f"{done.stderr}\n(npm ci in tests/outside installs the validator)"
    return json.loads(done.stdout)


def test_the_validator_of_the_format_has_nothing_to_say(example):
    (report,) = reports(path_of(example))
    assert report["issues"]["messages"] == []
    assert report["info"]["version"] == "2.0"
    assert report["info"]["totalTriangleCount"] > 0


def test_the_validator_sees_a_fault(example, tmp_path):
    data = bytearray(path_of(example).read_bytes())
    gltf = Gltf(bytes(data))
    first = gltf.json["accessors"][gltf.json["meshes"][0]["primitives"][0]["attributes"]["NORMAL"]]
    at = len(data) - len(gltf.bytes) + first["byteOffset"]
    data[at : at + 12] = struct.pack("<3f", 0.0, 2.0, 0.0)
    broken = tmp_path / "broken.glb"
    broken.write_bytes(data)
    (report,) = reports(broken)
    assert report["issues"]["numErrors"] > 0


def test_the_demo_is_small(example):
    if example.name == "garden-corner":
        assert path_of(example).stat().st_size < MIB


def test_no_extension_is_needed(gltf):
    assert "extensionsUsed" not in gltf.json and "extensionsRequired" not in gltf.json


def test_another_reader_finds_the_sizes_of_the_design_in_metres(example):
    island = Island(example.params)
    scene = trimesh.load_scene(path_of(example))
    x0, y0, x1, y1 = island.slab_outline(lambda e: 0.0).bounds
    low, high = scene.bounds
    # The counter reaches farthest out, but for what stands in front of a face without overhang; nothing stands below the ground.
    counter = [scene.graph[n] for n in scene.graph.nodes_geometry if n.endswith(" slab")]
    assert len(counter) == 1
    matrix, geometry = counter[0]
    slab = scene.geometry[geometry].copy().apply_transform(matrix).bounds
    assert slab[:, 0] == pytest.approx([x0 / 1000, x1 / 1000], abs=2e-6)
    assert slab[:, 2] == pytest.approx([-y1 / 1000, -y0 / 1000], abs=2e-6)
    assert slab[1, 1] == pytest.approx(island.top / 1000, abs=2e-6)
    assert low[1] >= -1e-6
    assert high[1] == pytest.approx(island.top / 1000, abs=0.0061), "nothing but flanges lies on the counter"


def test_every_part_is_there_once_in_its_place_and_its_shape(example, gltf):
    listed = {p["mark"]: p for p in example.parts}
    seen = {}
    for number in range(len(gltf.json["scenes"])):
        for node, above, matrix in gltf.scene(number):
            if "mesh" in node:
                mark = node["extras"]["mark"]
                assert mark not in seen
                seen[mark] = (node, above, matrix, number)
    assert seen.keys() == listed.keys()
    for mark, (node, _, matrix, _) in seen.items():
        points, _, triangles = gltf.surface(node)
        world = points.astype(float) @ matrix[:3, :3].T + matrix[:3, 3]
        mesh = trimesh.Trimesh(*welded(world, triangles), process=False)
        stl = listed[mark]["mesh"]
        assert [world.min(axis=0), world.max(axis=0)] == pytest.approx(box_y_up(stl.bounds), abs=SHOWN / 1000), mark
        assert mesh.is_watertight and mesh.is_winding_consistent, mark
        # A chord's sagitta times the area is the most that a surface within the tolerance may lack.
        lacking = abs(mesh.volume * 1e9 - stl.volume)
        assert 0 < mesh.volume and lacking <= SHOWN * stl.area, mark


def welded(points, triangles):
    vertices, index = np.unique(points, axis=0, return_inverse=True)
    return vertices, index[triangles]


def test_parts_stand_under_their_run_and_group_and_say_what_they_are(example, gltf):
    listed = {p["mark"]: p for p in example.parts}
    runs = [f"{r['name']} run" for r in example.params["runs"]]
    for number, root in enumerate([example.params["project"]["title"], "forms"]):
        if number == len(gltf.json["scenes"]):
            assert not example.of_kind("edge form", "cutout form")
            continue
        for node, above, _ in gltf.scene(number):
            if "mesh" not in node:
                continue
            part = listed[node["extras"]["mark"]]
            group, run = part["group"], part["run"]
            expected = (root, group) if run is None else (root, runs[run - 1], f"{runs[run - 1]}, {group}")
            assert above == expected, part["mark"]
            assert (group == "forms") == (number == 1)
            assert node["name"] == f"{part['mark']} {part['kind']}"
            assert node["extras"]["section"] == part["section"]
            assert node["extras"]["length_mm"] == part["length"]


def test_normals_are_flat(gltf):
    for mesh in range(len(gltf.json["meshes"])):
        points, normals, triangles = gltf.surface({"mesh": mesh})
        corners = points.astype(float)[triangles]
        across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
        size = np.linalg.norm(across, axis=1)
        assert (size > 0).all()
        told = normals[triangles].astype(float)
        assert np.abs(told - told[:, :1]).max() < 1e-4, "one triangle, one normal"
        # Rounding a corner to single precision turns a sliver by as much as its width allows.
        height = size / np.linalg.norm(corners - np.roll(corners, 1, axis=1), axis=2).max(axis=1)
        off = np.linalg.norm(told[:, 0] - across / size[:, None], axis=1)
        assert (off <= 1e-4 + 1e-6 / height).all()


def test_equal_shapes_are_there_once(example, gltf):
    nodes = [n for n in gltf.nodes if "mesh" in n]
    assert len(nodes) == len(example.parts)
    # Twice the bytes would be there twice.
    stored = [tuple(a.tobytes() for a in gltf.surface({"mesh": m})) for m in range(len(gltf.json["meshes"]))]
    materials = [gltf.material({"mesh": m})["name"] for m in range(len(stored))]
    assert len(set(zip(stored, materials))) == len(stored)
    tiles = {n["mesh"] for n in nodes if n["extras"]["kind"] == "tile"}
    assert len(tiles) <= max(1, len(example.of_kind("tile")) // 3)


# What each kind is made of; the finish coat's colour is the file's.
LOOKS = {
    "stud": "galvanised steel", "bottom track": "galvanised steel", "header": "galvanised steel", "board": "cement board",
    "finish coat": "finish coat", "slab": "concrete", "tile": "tile", "leaf": "stainless steel", "flange": "stainless steel",
}


def test_materials_go_by_kind(gltf):
    for node in gltf.nodes:
        wanted = LOOKS.get(node.get("extras", {}).get("kind"))
        if wanted:
            assert gltf.material(node)["name"] == wanted
    metals = {m["name"] for m in gltf.json["materials"] if m["pbrMetallicRoughness"]["metallicFactor"] > 0.5}
    assert metals <= {"galvanised steel", "stainless steel"} and "galvanised steel" in metals


def test_the_finish_coat_has_the_colour_of_the_file(program, tmp_path):
    text = (ROOT / "params/smallest.yaml").read_text()
    file = tmp_path / "coloured.yaml"
    file.write_text(text + "\ntrade: {finish_colour: '#804020'}\n")
    subprocess.run([program, "build", file, "--only", "models", "--out", tmp_path / "out"], check=True, capture_output=True)
    (made,) = (tmp_path / "out").rglob("island.glb")
    gltf = Gltf(made.read_bytes())
    (look,) = [m for m in gltf.json["materials"] if m["name"] == "finish coat"]
    # IEC 61966-2-1, worked by hand: ((c / 255 + 0.055) / 1.055) ** 2.4.
    assert look["pbrMetallicRoughness"]["baseColorFactor"] == pytest.approx([0.21586, 0.05127, 0.01444, 1.0], abs=1e-5)


def test_each_run_a_corner_and_the_top_are_named_views_that_take_in_what_they_show(example, gltf):
    names = [f"{r['name']} run, front" for r in example.params["runs"]] + ["corner", "top"]
    assert [c["name"] for c in gltf.json["cameras"]] == names
    nodes = list(gltf.scene(0))
    parts = [(above, world_points(gltf, node, matrix)) for node, above, matrix in nodes if "mesh" in node]
    for node, _, matrix in nodes:
        if "camera" not in node:
            continue
        camera = gltf.json["cameras"][node["camera"]]
        assert camera["name"] == node["name"]
        run = node["name"].removesuffix(", front")
        shown = np.vstack([p for above, p in parts if run == node["name"] or run in above])
        seen = (shown - matrix[:3, 3]) @ matrix[:3, :3]
        assert (seen[:, 2] < 0).all(), "behind the eye"
        if camera["type"] == "perspective":
            lens = camera["perspective"]
            edge = np.tan(lens["yfov"] / 2) * -seen[:, 2:]
        else:
            lens = camera["orthographic"]
            edge = np.array([lens["xmag"], lens["ymag"]])
        share = np.abs(seen[:, :2] / edge).max()
        assert 0.5 < share < 1.0, (node["name"], share)
        assert lens["znear"] < -seen[:, 2].max() and -seen[:, 2].min() < lens["zfar"]


def world_points(gltf, node, matrix):
    points, _, _ = gltf.surface(node)
    return points.astype(float) @ matrix[:3, :3].T + matrix[:3, 3]


def test_the_front_is_seen_from_the_working_side(example, gltf):
    island = Island(example.params)
    eyes = {n["name"]: m[:3, 3] for n, _, m in gltf.scene(0) if "camera" in n}
    for run in island.runs:
        x, y, z = eyes[f"{run.name} run, front"]
        u, v = np.array([x * 1000, -z * 1000]) - run.origin, run
        assert u @ v.away < -500, "the eye is in front of the working face"
        assert u @ v.along == pytest.approx(run.length / 2, abs=1)
        assert y * 1000 > island.top
