"""Steel sections against the published table and against a finite-element section library."""

import json
import math

import pytest
from sectionproperties.analysis import Section
from sectionproperties.pre import Geometry
from sectionproperties.pre.library.steel_sections import cee_section
from shapely.geometry import Polygon

from conftest import run

INCH = 25.4

# Industry technical guide, 2024, as kept in reference-values.md: area in², weight lb/ft, Ix in⁴, rx in, ry in.
PUBLISHED = {
    "250S125-18": (0.097, 0.33, 0.099, 1.014, 0.439),
    "362S125-33": (0.215, 0.73, 0.421, 1.400, 0.413),
    "362S162-33": (0.262, 0.89, 0.551, 1.450, 0.616),
    "600S162-43": (0.447, 1.52, 2.316, 2.276, 0.576),
    "362T125-33": (0.212, 0.72, 0.438, 1.438, 0.377),
}


@pytest.fixture(scope="module")
def sections():
    """The program's own sections, by designator."""
    text = run("cargo", "run", "--quiet", "--locked", "--example", "sections", "--", *PUBLISHED)
    return {s["designator"]: s for s in json.loads(text)}


def flattened(vertices, chords=16):
    """The points of an outline with bulges, by the arithmetic of the DXF reference, arcs as chords."""
    points = []
    for (x0, y0, bulge), (x1, y1, _) in zip(vertices, vertices[1:] + vertices[:1]):
        points.append((x0, y0))
        if bulge == 0:
            continue
        sweep = 4 * math.atan(bulge)
        cx = (x0 + x1) / 2 - (y1 - y0) * (1 - bulge**2) / (4 * bulge)
        cy = (y0 + y1) / 2 + (x1 - x0) * (1 - bulge**2) / (4 * bulge)
        for k in range(1, chords):
            a = sweep * k / chords
            dx, dy = x0 - cx, y0 - cy
            points.append((cx + dx * math.cos(a) - dy * math.sin(a), cy + dx * math.sin(a) + dy * math.cos(a)))
    return points


def analysed(geometry):
    section = Section(geometry.create_mesh(mesh_sizes=[2.0]))
    section.calculate_geometric_properties()
    return section


def properties(section):
    """Area, Ixx and Iyy about the centroid, in inches."""
    ixx, iyy, _ = section.get_ic()
    return section.get_area() / INCH**2, ixx / INCH**4, iyy / INCH**4


@pytest.mark.parametrize("designator", PUBLISHED)
def test_section_has_the_published_properties(sections, designator):
    area, weight, ix, rx, ry = PUBLISHED[designator]
    s = sections[designator]
    a, ixx, iyy = properties(analysed(Geometry(Polygon(flattened(s["vertices"])))))
    # The table is rounded to the last figure printed; half of it, and a tenth of a percent for the chords.
    assert a == pytest.approx(area, abs=0.0005 + 0.001 * area)
    assert s["area"] / INCH**2 == pytest.approx(area, abs=0.0005)
    assert ixx == pytest.approx(ix, abs=0.0005 + 0.001 * ix)
    assert math.sqrt(ixx / a) == pytest.approx(rx, abs=0.0005 + 0.001 * rx)
    assert math.sqrt(iyy / a) == pytest.approx(ry, abs=0.0005 + 0.001 * ry)
    # 490 lb/ft³ (reference-values.md).
    assert s["area"] / INCH**2 / 144 * 490 == pytest.approx(weight, abs=0.005 + 0.001 * weight)


@pytest.mark.parametrize("designator", [d for d in PUBLISHED if "S" in d])
def test_stud_agrees_with_the_library_s_own_lipped_channel(sections, designator):
    s = sections[designator]
    theirs = cee_section(
        d=s["depth"], b=s["flange"], l=s["lip"], t=s["thickness"], r_out=s["radius"] + s["thickness"], n_r=16
    )
    theirs = properties(analysed(theirs))
    ours = properties(analysed(Geometry(Polygon(flattened(s["vertices"])))))
    assert ours == pytest.approx(theirs, rel=1e-3)
    assert s["area"] / INCH**2 == pytest.approx(theirs[0], rel=1e-3)
