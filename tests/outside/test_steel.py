"""The mechanics of cold-formed steel against finite elements (sectionproperties) and finite strips (pycufsm)."""

import json
import math

import numpy as np
import pytest
from pycufsm.fsm import strip
from sectionproperties.analysis import Section
from sectionproperties.pre.library.steel_sections import cee_section, channel_section

from conftest import run

INCH = 25.4
KSI = 6.894757293168
E, NU = 29500, 0.3

TRIED = "3.5x1.25x0.5x0.0346"
STUDS = [TRIED, "362S125-33", "362S162-54", "600S162-43", "250S125-18"]
TRACKS = ["362T125-33"]


@pytest.fixture(scope="module")
def ours():
    text = run("cargo", "run", "--quiet", "--locked", "--example", "steel", "--", *STUDS, *TRACKS)
    return {s["designator"]: s for s in json.loads(text)}


def analysed(s, radius):
    sizes = dict(d=s["depth"], b=s["flange"], t=s["thickness"], r_out=radius + s["thickness"], n_r=12)
    lip = s["lip"]
    if lip:
        geometry = cee_section(l=lip, **sizes)
    else:
        geometry = channel_section(
            d=s["depth"], b=s["flange"], t_f=s["thickness"], t_w=s["thickness"], r=radius, n_r=12
        )
    section = Section(geometry.create_mesh(mesh_sizes=[1.0]))
    section.calculate_geometric_properties()
    section.calculate_warping_properties()
    return section


@pytest.mark.parametrize("designator", STUDS)
def test_gross_properties_agree_with_finite_elements(ours, designator):
    s = ours[designator]
    g = s["gross"]
    theirs = analysed(s, s["radius"])
    ixx, iyy, _ = theirs.get_ic()
    assert g["area"] == pytest.approx(theirs.get_area(), rel=1e-3)
    assert (g["ix"], g["iy"]) == pytest.approx((ixx, iyy), rel=1e-3)
    assert g["j"] == pytest.approx(theirs.get_j(), rel=0.01)
    assert g["centroid"] == pytest.approx(theirs.get_c()[0], rel=1e-3)
    x0 = theirs.get_sc()[0] - theirs.get_c()[0]
    assert g["x0"] == pytest.approx(x0, rel=0.01)
    assert g["cw"] == pytest.approx(theirs.get_gamma(), rel=0.03)


def nodes_of(s, bend=4):
    """Points along the middle line, from one free edge to the other, bends rounded."""
    t, lip = s["thickness"], s["lip"]
    h, b = s["depth"] / 2 - t / 2, s["flange"] - (t if lip else 0)
    r, end = s["radius"] + t / 2, s["depth"] / 2 - lip
    points = []

    def line(p, q, n):
        points.extend((p[0] + (q[0] - p[0]) * k / n, p[1] + (q[1] - p[1]) * k / n) for k in range(n))

    def arc(cx, cy, a0, a1):
        turns = [math.radians(a0 + (a1 - a0) * k / bend) for k in range(bend)]
        points.extend((cx + r * math.cos(a), cy + r * math.sin(a)) for a in turns)

    if lip:
        line((b, -end), (b, r - h), 4)
        arc(b - r, r - h, 0, -90)
    line((b - r if lip else b, -h), (r, -h), 8)
    arc(r, r - h, -90, -180)
    line((0, r - h), (0, h - r), 16)
    arc(r, h - r, 180, 90)
    line((r, h), (b - r if lip else b, h), 8)
    if lip:
        arc(b - r, h - r, 90, 0)
        line((b, h - r), (b, end), 4)
        points.append((b, end))
    else:
        points.append((b, h))
    return points


def strip_stresses(s, lengths):
    """The lowest buckling stress, MPa, at each half wavelength, mm; inside, inches and ksi, which suit the solver."""
    points = [(x / INCH, y / INCH) for x, y in nodes_of(s)]
    nodes = np.array([[i, x, y, 1, 1, 1, 1, 1.0] for i, (x, y) in enumerate(points)])
    elements = np.array([[i, i, i + 1, s["thickness"] / INCH, 0] for i in range(len(points) - 1)])
    none = {"glob": [0], "dist": [0], "local": [0], "other": [0], "o_space": 1, "couple": 1, "orth": 2, "norm": 1}
    material = np.array([[0, E, E, NU, NU, E / (2 * (1 + NU))]])
    lengths = np.array(lengths, dtype=float) / INCH
    ones = np.ones((len(lengths), 1))
    found, _, _ = strip(
        material, nodes, elements, lengths, np.array([]), np.array([]), none, "S-S", ones, 1, {}
    )
    return np.array(found) * KSI


def test_the_strips_themselves_give_the_values_of_the_design_page(ours):
    # design.md: local 15.26 ksi at 2.64 in, distortional 35.24 at 14.8 in, whole column 41.1/17.2/7.17 ksi.
    found = strip_stresses(ours[TRIED], [INCH * l for l in (2.64, 14.8, 36, 60, 96)]) / KSI
    assert found == pytest.approx([15.26, 35.24, 41.1, 17.2, 7.17], rel=5e-3)


@pytest.mark.parametrize("designator", STUDS + TRACKS)
def test_whole_columns_agree_with_finite_strips(ours, designator):
    s = ours[designator]
    columns = s["columns"]
    strips = strip_stresses(s, columns["lengths"])
    turning = s["distortional"]["stress"] if s["distortional"] else math.inf
    for length, mine, theirs in zip(columns["lengths"], columns["stresses"], strips):
        # Strips let the section change its shape along the way, a column of one shape is a little stiffer. Where
        # that matters, distortional buckling is the lower of our two; a tenth is left between the two theories.
        assert min(mine, turning) <= 1.10 * theirs, length
        if length > 90 * INCH:
            assert mine == pytest.approx(theirs, rel=0.04)


@pytest.mark.parametrize("designator", STUDS)
def test_element_by_element_is_never_above_the_strips(ours, designator):
    s = ours[designator]
    local = strip_stresses(s, np.geomspace(0.5 * s["depth"], 1.5 * s["depth"], 25)).min()
    assert s["weakest_element"] <= local


@pytest.mark.parametrize("designator", TRACKS)
def test_a_track_s_slender_flange_drags_its_web_along(ours, designator):
    # Element by element takes the web as held by its flanges; those of a track buckle at nearly the same stress.
    s = ours[designator]
    local = strip_stresses(s, np.geomspace(0.5 * s["depth"], 2.0 * s["depth"], 25)).min()
    assert s["weakest_element"] == pytest.approx(local, rel=0.06)


@pytest.mark.parametrize("designator", [TRIED, "362S162-54"])
def test_distortional_buckling_agrees_with_the_strips_minimum(ours, designator):
    s = ours[designator]
    waves = np.geomspace(9 * INCH, 24 * INCH, 40)
    curve = strip_stresses(s, waves)
    turning = s["distortional"]
    # The formula gives the web its full stiffness though it buckles first: it lies above the strips by up to a sixth.
    assert curve.min() < turning["stress"] < 1.18 * curve.min()
    assert turning["half_wave"] == pytest.approx(waves[curve.argmin()], rel=0.1)
