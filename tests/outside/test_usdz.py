"""The USDZ: the reference library's checkers, sizes in metres from the parameter file, every part against the STL."""

import warnings
import zipfile

import numpy as np
import pytest
from pxr import Gf, Sdf, Usd, UsdGeom, UsdShade, UsdUtils, UsdValidation

from island import Island
from test_glb import MIB, box_y_up

# The layer spells lengths to a hundredth of a millimetre, and curves are within a tenth.
NEAR = 0.11e-3
SEEN = {"sleeper", "base channel", "base coat", "finish coat", "tile", "substrate", "slab", "body", "flange", "leaf"}


def path_of(example):
    return example.folder / "models/island.usdz"


@pytest.fixture
def stage(example):
    return Usd.Stage.Open(str(path_of(example)))


def complaints(path):
    """What the older checker says, with the rules for phones' viewers."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        checker = UsdUtils.ComplianceChecker(arkit=True)
        checker.CheckCompliance(str(path))
    return checker.GetErrors() + checker.GetWarnings() + checker.GetFailedChecks()


def validation_errors(stage):
    """What the newer framework says, all of its validators asked."""
    registry = UsdValidation.ValidationRegistry()
    context = UsdValidation.ValidationContext(registry.GetOrLoadAllValidators())
    return [(e.GetName(), e.GetMessage()) for e in context.Validate(stage)]


def parts(stage):
    """The prims that stand for parts, by mark."""
    found = {}
    for prim in stage.Traverse():
        text = prim.GetCustomDataByKey("part")
        if text:
            mark, kind = text.split(" ", 1)
            assert mark not in found
            found[mark] = (prim, kind)
    return found


def world_box(prim):
    cache = UsdGeom.BBoxCache(Usd.TimeCode.Default(), [UsdGeom.Tokens.default_, UsdGeom.Tokens.render])
    found = cache.ComputeWorldBound(prim).ComputeAlignedRange()
    return np.array([found.GetMin(), found.GetMax()])


def test_the_checkers_of_the_reference_library_have_nothing_to_say(example, stage):
    assert complaints(path_of(example)) == []
    assert validation_errors(stage) == []


def test_the_checkers_see_faults(tmp_path):
    bare = tmp_path / "bare.usda"
    bare.write_text('#usda 1.0\n\ndef Xform "A"\n{\n    rel material:binding = </Nowhere>\n}\n')
    assert complaints(bare)
    assert validation_errors(Usd.Stage.Open(str(bare)))


def test_the_archive_is_stored_and_aligned(example):
    data = path_of(example).read_bytes()
    with zipfile.ZipFile(path_of(example)) as archive:
        (entry,) = archive.infolist()
        assert entry.compress_type == zipfile.ZIP_STORED
        content = archive.read(entry)
    assert data.index(content) % 64 == 0
    assert content.startswith(b"#usda 1.0")


def test_the_demo_is_small(example):
    if example.name == "garden-corner":
        assert path_of(example).stat().st_size < 3 * MIB


def test_it_stands_upright_in_metres_at_true_size(example, stage):
    assert UsdGeom.GetStageMetersPerUnit(stage) == 1.0
    assert UsdGeom.GetStageUpAxis(stage) == "Y"
    island = Island(example.params)
    slab = next(world_box(p) for p, kind in parts(stage).values() if kind == "slab")
    x0, y0, x1, y1 = (v / 1000 for v in island.slab_outline(lambda e: 0.0).bounds)
    assert slab[:, 0] == pytest.approx([x0, x1], abs=1.1e-5)
    assert slab[:, 2] == pytest.approx([-y1, -y0], abs=1.1e-5)
    assert slab[1, 1] == pytest.approx(island.top / 1000, abs=1.1e-5)
    whole = world_box(stage.GetDefaultPrim())
    assert -1e-5 <= whole[0, 1] < island.foot / 1000
    assert whole[1, 1] == pytest.approx(island.top / 1000, abs=0.0061)


def test_what_one_sees_is_there_in_its_place_and_nothing_else(example, stage):
    found = parts(stage)
    listed = {p["mark"]: p for p in example.parts}
    hidden_bodies = {m for m, p in listed.items() if p["kind"] == "body" and m.endswith("-BD")}
    seen = {m for m, p in listed.items() if p["kind"] in SEEN} - hidden_bodies
    assert found.keys() == seen
    for mark, (prim, kind) in found.items():
        assert kind == listed[mark]["kind"]
        assert world_box(prim) == pytest.approx(box_y_up(listed[mark]["mesh"].bounds), abs=NEAR), mark


def test_parts_share_their_shapes(example, stage):
    found = [prim for prim, _ in parts(stage).values()]
    assert all(prim.IsInstance() for prim in found)
    tiles = [prim for prim, kind in parts(stage).values() if kind == "tile"]
    if tiles:
        assert len({p.GetPrototype().GetPath() for p in tiles}) <= len(tiles) // 3


def test_surfaces_are_triangles_with_a_normal_for_each_corner_and_an_extent_that_holds(stage):
    for prototype in stage.GetPrototypes():
        (prim,) = prototype.GetChildren()
        mesh = UsdGeom.Mesh(prim)
        points = np.array(mesh.GetPointsAttr().Get())
        counts = np.array(mesh.GetFaceVertexCountsAttr().Get())
        indices = np.array(mesh.GetFaceVertexIndicesAttr().Get())
        assert (counts == 3).all() and len(indices) == 3 * len(counts)
        assert UsdGeom.Mesh.ValidateTopology(indices.tolist(), counts.tolist(), len(points))[0]
        assert mesh.GetNormalsInterpolation() == UsdGeom.Tokens.vertex
        normals = np.array(mesh.GetNormalsAttr().Get())
        assert normals.shape == points.shape
        assert np.linalg.norm(normals, axis=1) == pytest.approx(1.0, abs=1e-4)
        assert mesh.GetSubdivisionSchemeAttr().Get() == UsdGeom.Tokens.none
        extent = np.array(mesh.GetExtentAttr().Get())
        assert extent == pytest.approx(np.array([points.min(axis=0), points.max(axis=0)]), abs=1e-6)


def test_every_part_has_a_preview_surface(example, stage):
    for mark, (prim, kind) in parts(stage).items():
        proxy = next(iter(prim.GetFilteredChildren(Usd.TraverseInstanceProxies())))
        material, _ = UsdShade.MaterialBindingAPI(proxy).ComputeBoundMaterial()
        assert material, mark
        shader, _, _ = material.ComputeSurfaceSource()
        assert shader.GetIdAttr().Get() == "UsdPreviewSurface"
        colour = shader.GetInput("diffuseColor").Get()
        assert all(0 <= c <= 1 for c in colour)
        assert (shader.GetInput("metallic").Get() > 0.5) == (kind in {"body", "flange", "leaf"})


def test_the_layer_survives_the_library_s_own_writer(example, stage, tmp_path):
    copy = tmp_path / "copy.usdc"
    stage.GetRootLayer().Export(str(copy))
    again = Usd.Stage.Open(str(copy))
    assert np.allclose(world_box(again.GetDefaultPrim()), world_box(stage.GetDefaultPrim()))
    assert Sdf.Layer.FindOrOpen(str(copy)).defaultPrim == "Island"
    assert Gf.IsClose(UsdGeom.GetStageMetersPerUnit(again), 1.0, 1e-9)
