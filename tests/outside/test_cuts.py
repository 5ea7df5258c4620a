"""What planes go through: the program's own cut regions against sections of the written models by another library."""

import json

import numpy as np
import pytest
from shapely.geometry import Polygon
from shapely.ops import unary_union

from conftest import ROOT, run

# An STL number near 4 m is good to 0.00025 mm; along a rim that adds up to so much area for each millimetre of it, mm².
RIM = 0.002


@pytest.fixture
def planes(example):
    text = run("cargo", "run", "--quiet", "--locked", "--example", "cut_regions", "--", ROOT / "params" / f"{example.name}.yaml")
    return json.loads(text)


def of_program(polygons):
    """The polygons of the program, each of them valid by another library, none over another."""
    found = [Polygon(rings[0], rings[1:]) for rings in polygons]
    assert all(p.is_valid for p in found)
    whole = unary_union(found)
    assert abs(whole.area - sum(p.area for p in found)) <= 1e-6 * whole.area
    return whole


def of_mesh(mesh, axis, at):
    """The same from the triangles in the STL: segments of another library, chained by it."""
    normal, origin = np.eye(3)[axis], np.eye(3)[axis] * at
    path = mesh.section(plane_origin=origin, plane_normal=normal)
    if path is None:
        return Polygon()
    # To the two other axes in rising order.
    others = [i for i in range(3) if i != axis]
    to_plane = np.zeros((4, 4))
    to_plane[0, others[0]] = to_plane[1, others[1]] = to_plane[2, axis] = to_plane[3, 3] = 1
    to_plane[2, 3] = -at
    flat, _ = path.to_2D(to_2D=to_plane)
    # A ring inside another one is its hole.
    whole = Polygon()
    for ring in flat.polygons_closed:
        whole = whole.symmetric_difference(ring)
    return whole


def test_every_cut_region_is_the_section_of_the_written_model(example, planes):
    meshes = {part["mark"]: part["mesh"] for part in example.parts}
    faults, compared = [], 0
    for plane in planes:
        axis, at = plane["axis"], plane["at"]
        for mark, mesh in meshes.items():
            low, high = mesh.bounds[:, axis]
            if not low + 0.01 < at < high - 0.01:
                continue
            own = of_program(plane["parts"].get(mark, []))
            other = of_mesh(mesh, axis, at)
            compared += 1
            if own.symmetric_difference(other).area > RIM * other.length + 1e-4 * other.area:
                faults.append(f"{'xyz'[axis]} = {at:.1f} {mark}: {own.area:.2f} for {other.area:.2f}")
        for mark in plane["parts"]:
            low, high = meshes[mark].bounds[:, axis]
            assert low - 0.01 < at < high + 0.01, f"{mark} is not there at {at}"
    assert not faults, "\n".join(faults[:40])
    assert compared > 30
