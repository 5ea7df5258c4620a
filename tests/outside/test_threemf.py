"""The 3MF file, read by the reference library of the format in strict mode, and by trimesh."""

import json
import zipfile

import lib3mf
import numpy as np
import pytest
import trimesh

from conftest import stl_triangles

WRAPPER = lib3mf.get_wrapper()


def read(path):
    """The model of a file; the reader must find nothing to warn of."""
    model = WRAPPER.CreateModel()
    reader = model.QueryReader("3mf")
    reader.SetStrictModeActive(True)
    reader.ReadFromFile(str(path))
    assert [reader.GetWarning(i) for i in range(reader.GetWarningCount())] == []
    return model


def each(iterator, current="GetCurrent"):
    while iterator.MoveNext():
        yield getattr(iterator, current)()


def matrix(transform):
    """A transform as the matrix that columns of coordinates are multiplied by from the left."""
    rows = np.array([[transform.Fields[i][j] for j in range(3)] for i in range(4)], dtype=float)
    made = np.eye(4)
    made[:3, :] = rows.T
    return made


def mesh_of(item):
    """The mesh that an item places: its object's own, or that of the only component of its object."""
    resource = item.GetObjectResource()
    if resource.IsMeshObject():
        return resource
    assert resource.IsComponentsObject() and resource.GetComponentCount() == 1
    component = resource.GetComponent(0)
    assert not component.HasTransform() or np.allclose(matrix(component.GetTransform()), np.eye(4))
    return component.GetObjectResource()


def corners(mesh):
    return np.array([[v.Coordinates[i] for i in range(3)] for v in mesh.GetVertices()], dtype=float)


def indices(mesh):
    return np.array([[t.Indices[i] for i in range(3)] for t in mesh.GetTriangleIndices()])


@pytest.fixture
def model(example):
    return read(example.folder / "models/island.3mf")


def test_it_is_in_millimetres_and_says_what_it_is(example, model):
    assert model.GetUnit() == lib3mf.ModelUnit.MilliMeter
    group = model.GetMetaDataGroup()
    told = {group.GetMetaData(i).GetName(): group.GetMetaData(i).GetValue() for i in range(group.GetMetaDataCount())}
    assert told["Title"] == example.params["project"]["title"]
    assert told["Application"] == "islandwright"
    assert "z up" in told["Description"]


def test_every_part_is_there_under_its_mark_and_equal_ones_share_a_mesh(example, model):
    items = list(each(model.GetBuildItems()))
    marks = [p["mark"] for p in example.parts]
    assert [i.GetPartNumber() for i in items] == marks
    assert [i.GetObjectResource().GetName() for i in items] == marks
    used = [mesh_of(i).GetResourceID() for i in items]
    meshes = list(each(model.GetMeshObjects(), "GetCurrentMeshObject"))
    assert sorted(set(used)) == sorted(m.GetResourceID() for m in meshes)
    # Shapes of one kind are equal when their volume, length and number of triangles are: no more meshes than those.
    alike = {(p["kind"], round(p["volume"]), p["length"], p["in_assembly"]["count"]) for p in example.parts}
    assert len(meshes) >= len(alike)
    assert len(set(used)) < len(used)


def test_every_mesh_is_closed_and_turned_outwards(model):
    for mesh in each(model.GetMeshObjects(), "GetCurrentMeshObject"):
        assert mesh.IsManifoldAndOriented(), mesh.GetName()
        assert trimesh.Trimesh(corners(mesh), indices(mesh), process=False).volume > 0, mesh.GetName()


def test_every_part_stands_where_the_stl_has_it(example, model):
    shifts = []
    for part, item in zip(example.parts, each(model.GetBuildItems()), strict=True):
        mesh = mesh_of(item)
        placed = trimesh.transform_points(corners(mesh), matrix(item.GetObjectTransform()))
        ours = trimesh.Trimesh(placed, indices(mesh), process=False)
        assert ours.volume == pytest.approx(part["volume"], rel=1e-3), part["mark"]
        difference = ours.bounds - part["mesh"].bounds
        assert np.ptp(difference, axis=0).max() < 2e-3, part["mark"]
        assert ours.bounds[0].min() > -2e-3, f"{part['mark']} is below zero"
        shifts.append(difference.mean(axis=0))
    # All of them are moved alike.
    assert np.ptp(np.array(shifts), axis=0).max() < 2e-3


def test_every_mesh_has_the_colour_of_its_material(example, model):
    groups = list(each(model.GetBaseMaterialGroups(), "GetCurrentBaseMaterialGroup"))
    assert len(groups) == 1
    colours = {}
    for number in groups[0].GetAllPropertyIDs():
        shown = groups[0].GetDisplayColor(number)
        assert shown.Alpha == 255
        colours[number] = (groups[0].GetName(number), (shown.Red, shown.Green, shown.Blue))
    names = [name for name, _ in colours.values()]
    assert len(names) == len(set(names))
    seen = {}
    for part, item in zip(example.parts, each(model.GetBuildItems()), strict=True):
        group, number, there = mesh_of(item).GetObjectLevelProperty()
        assert there and group == groups[0].GetResourceID(), part["mark"]
        seen.setdefault(part["kind"], set()).add(colours[number])
    assert all(len(found) == 1 for found in seen.values()), seen
    assert seen["stud"] == seen["top track"] != seen["board"]


def test_another_reader_sees_the_same_island(example):
    scene = trimesh.load(example.folder / "models/island.3mf")
    assert scene.units == "millimeter"
    whole = trimesh.load_mesh(example.folder / "models/assembly.stl", process=False)
    assert scene.extents == pytest.approx(whole.extents, abs=2e-3)
    assert sum(len(scene.geometry[scene.graph[n][1]].faces) for n in scene.graph.nodes_geometry) == len(whole.faces)


def test_the_package_is_dated_by_nothing_and_holds_the_model_alone(example):
    with zipfile.ZipFile(example.folder / "models/island.3mf") as package:
        assert package.testzip() is None
        assert package.namelist() == ["[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"]
        assert {i.date_time for i in package.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def test_the_strict_reader_sees_a_fault(tmp_path, example):
    """A corner that is not there, and a metadata name of no one: the one is refused, the other warned of or refused."""
    source = zipfile.ZipFile(example.folder / "models/island.3mf")
    faults = [(b'v1="0"', b'v1="99999999"'), (b'name="Title"', b'name="Titel"')]
    for number, (before, after) in enumerate(faults):
        path = tmp_path / f"{number}.3mf"
        with zipfile.ZipFile(path, "w") as spoilt:
            for name in source.namelist():
                text = source.read(name)
                spoilt.writestr(name, text.replace(before, after, 1) if name.endswith(".model") else text)
        with pytest.raises((lib3mf.ELib3MFException, AssertionError)):
            read(path)


def test_every_plate_of_the_scale_model_holds_its_pieces_on_the_bed(example):
    listed = json.loads((example.folder / "scale-model/pieces.json").read_text())
    bed = np.array(listed["printer"]["bed"])
    seen = []
    for number, plate in enumerate(listed["plates"], start=1):
        model = read(example.folder / f"scale-model/plate-{number}.3mf")
        assert model.GetUnit() == lib3mf.ModelUnit.MilliMeter
        items = list(each(model.GetBuildItems()))
        assert [i.GetPartNumber() for i in items] == [p["piece"] for p in plate]
        boxes = []
        for item in items:
            mesh = mesh_of(item)
            assert mesh.IsManifoldAndOriented() and mesh.GetName() == item.GetPartNumber()
            placed = trimesh.transform_points(corners(mesh), matrix(item.GetObjectTransform()))
            ours = trimesh.Trimesh(placed, indices(mesh), process=False)
            stl = stl_triangles(example.folder / f"scale-model/{item.GetPartNumber()}.stl").reshape(-1, 3)
            assert ours.extents == pytest.approx(np.ptp(stl, axis=0), abs=1e-3)
            assert ours.bounds[0][2] == pytest.approx(0, abs=1e-3), "it does not lie on the bed"
            assert (ours.bounds[0] > -1e-3).all() and (ours.bounds[1] < bed + 1e-3).all()
            boxes.append(ours.bounds)
            seen.append(item.GetPartNumber())
        for i, a in enumerate(boxes):
            for b in boxes[:i]:
                # Clear in one direction at least.
                apart = np.maximum(a[0] - b[1], b[0] - a[1])[:2].max()
                assert apart > 1, "two prints would stick together"
    assert sorted(seen) == sorted(p["name"] for p in listed["pieces"])
