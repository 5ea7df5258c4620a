"""Areas and volumes of slab, boards and coats against polygons made from the parameter file by another library."""

import numpy as np
import pytest
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from island import Island, mm


@pytest.fixture
def island(example):
    return Island(example.params)


def test_lengths_are_read_as_the_trade_writes_them():
    assert mm("3-1/2 in") == pytest.approx(88.9)
    assert mm("5 31/32 in") == pytest.approx(151.60625)
    assert mm("1/8 in") == pytest.approx(3.175)
    assert mm("2.4 m") == pytest.approx(2400.0)
    assert mm("10 ft") == pytest.approx(3048.0)


def doubled_areas(triangles):
    """Twice the areas of plane triangles."""
    (a, b), (c, d) = (triangles[:, 1] - triangles[:, 0]).T, (triangles[:, 2] - triangles[:, 0]).T
    return np.abs(a * d - b * c)


def shadow(mesh, axes):
    """What a mesh covers, looked at along the axis left out."""
    plane = mesh.triangles[:, :, axes]
    area = doubled_areas(plane)
    # Faces seen edge on cover nothing; the rest is grown a hair so that neighbours join.
    return unary_union([Polygon(t).buffer(1e-4, join_style="mitre") for t in plane[area > 1e-6]])


def test_slab_covers_the_outline_less_its_cutouts(example, island):
    (slab,) = example.of_kind("slab")
    ours = shadow(slab["mesh"], [0, 1])
    # The outermost line stands where no profile draws it in.
    theirs = island.slab_outline(lambda e: 0.0).difference(island.cutouts())
    assert ours.area == pytest.approx(theirs.area, rel=1e-4)
    assert ours.symmetric_difference(theirs).area < 1e-4 * theirs.area


def even_odd_area(loops):
    """The area of a section's loops, holes taken out."""
    area = Polygon()
    for loop in loops:
        area = area.symmetric_difference(Polygon(loop[:, :2]))
    return area.area


def test_slab_s_slices_are_those_of_the_polygons(example, island):
    (slab,) = example.of_kind("slab")
    underside = island.top - island.thickness
    for z in (-0.6 * island.drop, 0.3 * island.thickness, 0.97 * island.thickness):
        theirs = island.slice(z).area
        if z < 0 and theirs == 0:
            continue
        section = slab["mesh"].section(plane_origin=[0, 0, underside + z], plane_normal=[0, 0, 1])
        assert even_odd_area(section.discrete) == pytest.approx(theirs, rel=1e-3), z


def test_slab_s_volume_is_its_slices_added_up(example, island):
    (slab,) = example.of_kind("slab")
    theirs = island.slab_volume()
    assert slab["volume"] == pytest.approx(theirs, rel=5e-4)
    assert slab["mesh"].volume == pytest.approx(theirs, rel=1e-3)


def on_face(edge, mesh):
    """A mesh in the coordinates of a side: s, outwards, z."""
    d = mesh.vertices[:, :2] - edge.start
    return np.column_stack([d @ edge.along, d @ edge.outward, mesh.vertices[:, 2]])


def boards_of(example, island, edge):
    """The boards that lie flat on a side."""
    found = []
    for part in example.of_kind("board"):
        p = on_face(edge, part["mesh"])
        flat = abs(p[:, 1].min()) < 0.01 and abs(p[:, 1].max() - island.board) < 0.01
        beside = p[:, 0].max() < -island.board - 0.01 or p[:, 0].min() > edge.length + island.board + 0.01
        # A board of the next side also fits between these two planes when it is seen end on.
        if flat and not beside and np.ptp(p[:, 0]) > island.board + 0.01:
            triangles = p[part["mesh"].faces][:, :, [0, 2]]
            area = doubled_areas(triangles)
            found.append(unary_union([Polygon(t).buffer(1e-4, join_style="mitre") for t in triangles[area > 1e-6]]))
    return found


def test_boards_cover_every_face_but_for_openings_and_joints(example, island):
    total = 0
    for i, edge in enumerate(island.edges):
        boards = boards_of(example, island, edge)
        if edge.is_wall:
            assert boards == []
            continue
        total += len(boards)
        covered = unary_union(boards)
        assert sum(b.area for b in boards) == pytest.approx(covered.area, rel=1e-5), "boards overlap"
        before, after = island.edges[i - 1], island.edges[(i + 1) % len(island.edges)]
        turns = lambda a, b: a.along[0] * b.along[1] - a.along[1] * b.along[0]
        # Lapped one way: where a side begins at an outward corner its board covers the edge of the one before.
        s0 = 0.0 if before.is_wall else (-island.board if turns(before, edge) > 0 else island.board)
        face = box(s0, island.foot, edge.length, island.frame_top).difference(island.holes(edge))
        assert covered.difference(face.buffer(0.01, join_style="mitre")).area < 1.0, f"{edge.side}: a board outside its face"
        # What is left bare is joints: grown by half a joint the boards cover the face.
        bare = face.difference(covered.buffer(island.gap / 2 + 0.01, join_style="mitre", cap_style="square"))
        assert bare.area < 1.0, f"{edge.run.name} {edge.side}: bare {bare.area} at {bare.bounds}"
    assert total == len(example.of_kind("board")) > 0


def test_base_coat_has_the_volume_of_its_shell(example, island):
    inner, outer = island.clad(island.board), island.clad(island.board + island.base_coat)
    height = island.frame_top - island.foot
    shell = (outer.area - inner.area) * height
    holes = sum(island.holes(e).area for e in island.edges if not e.is_wall) * island.base_coat
    found = sum(p["volume"] for p in example.of_kind("base coat"))
    assert found == pytest.approx(shell - holes, rel=1e-6)
