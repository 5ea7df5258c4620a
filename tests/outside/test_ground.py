"""The ground against numpy: plane, residuals, standard errors, levels that stand off, and what the packs must add up to.

The program reads generated files and writes its own tables; numpy.linalg.lstsq and scipy's linear interpolation say what must
stand in them.
"""

import csv
import json
import os
import subprocess
import time

import numpy as np
import pytest
from scipy.interpolate import LinearNDInterpolator

MM = """project: {title: Ground, units: metric}
levels: {counter: 900 mm, base_gap: 60 mm}
trade: {sleeper: {width: 90 mm, height: 38 mm}}
runs:
  - {name: cook, length: 3 m, depth: 750 mm}
  - {name: bar, length: 2 m, depth: 750 mm, turn: right}
site:
  survey:
    measured: %s
    reading: 1 mm
    shims: [%s]
    most_packing: 500 mm
    points:
%s
"""


@pytest.fixture
def built(program, tmp_path):
    """Builds a file with some levels."""
    return lambda points, *rest, **named: build(program, tmp_path, points, *rest, **named)


def build(program, tmp_path, points, shims="1 mm, 2 mm, 5 mm, 10 mm", measured="up"):
    """The site's tables of a file with these levels, rows as dictionaries of numbers where they are numbers."""
    lines = "\n".join(f"      - {{x: {x} mm, y: {y} mm, z: {z} mm}}" for x, y, z in points)
    path = tmp_path / "ground.yaml"
    path.write_text(MM % (measured, shims, lines))
    done = subprocess.run(
        [str(program), "build", str(path), "--out", str(tmp_path / "out"), "--only", "site"],
        capture_output=True,
        text=True,
    )
    assert done.returncode in (0, 1), done.stdout + done.stderr
    folder = tmp_path / "out" / "ground" / "site"

    def rows(name):
        with open(folder / f"{name}.csv", newline="", encoding="utf-8") as file:
            return list(csv.DictReader(file))

    assert json.loads((folder / "site.json").read_text())
    return {name: rows(name) for name in ("ground", "survey", "shims", "shims-to-buy")}


def scattered(seed, count=40):
    """Levels of a sloping, uneven yard round and under the island."""
    rng = np.random.default_rng(seed)
    x = np.round(rng.uniform(-800, 3800, count), 1)
    y = np.round(rng.uniform(-1800, 1500, count), 1)
    a, b = rng.uniform(-0.02, 0.02, 2)
    z = np.round(a * x + b * y + rng.normal(0, 2.0, count) + rng.uniform(-90, 90), 2)
    return np.column_stack([x, y, z])


def fitted(points):
    x, y, z = points.T
    design = np.column_stack([np.ones_like(x), x, y])
    coefficients, *_ = np.linalg.lstsq(design, z, rcond=None)
    return design, coefficients, z - design @ coefficients


def fact(tables, what):
    return next(r["value"] for r in tables["ground"] if r["what"] == what)


@pytest.mark.parametrize("seed", range(6))
def test_plane_and_residuals_are_those_of_lstsq(built, seed):
    points = scattered(seed)
    tables = built(points)
    design, (_, a, b), residuals = fitted(points)
    ours = np.array([float(r["above the plane [mm]"]) for r in tables["survey"]])
    assert np.abs(ours - residuals).max() < 0.006
    assert float(fact(tables, "fall")) == pytest.approx(1000 * np.hypot(a, b), abs=6e-5)
    way = np.degrees(np.arctan2(-a, -b)) % 360
    assert float(fact(tables, "which way, clockwise from straight away from the cook")) == pytest.approx(way, abs=6e-3)
    spread = np.sqrt(residuals @ residuals / (len(points) - 3))
    assert float(fact(tables, "standard deviation of one level about the plane")) == pytest.approx(spread, abs=6e-3)
    errors = spread * np.sqrt(np.einsum("ij,jk,ik->i", design, np.linalg.inv(design.T @ design), design))
    ours = np.array([float(r["plane ± [mm]"]) for r in tables["survey"]])
    assert np.abs(ours - errors).max() < 0.006


@pytest.mark.parametrize("seed", range(6))
def test_packs_fill_the_ground_to_one_level_within_the_smallest_shim(built, seed):
    points = scattered(seed, 80)
    shims = ["1 mm, 2 mm, 5 mm, 10 mm", "3 mm, 5 mm, 20 mm", "2 mm"][seed % 3]
    tables = built(points, shims)
    smallest = min(float(s.split()[0]) for s in shims.split(","))
    surface = LinearNDInterpolator(points[:, :2], points[:, 2])
    datum = float(fact(tables, "datum in the survey's own heights"))
    levels, counts = [], {}
    for row in tables["shims"]:
        x, y, ground = (float(row[k]) for k in ("x [mm]", "y [mm]", "ground [mm]"))
        there = surface(x, y)
        if row["ground known"] != "beyond the levels" and not np.isnan(there):
            assert ground == pytest.approx(float(there) - datum, abs=0.03)
        assert ground <= 0.006 and float(row["gap [mm]"]) >= 22 - 0.006
        height = 0.0
        for part in [] if row["shims"] == "none" else row["shims"].split(" + "):
            count, thick = part.split(" × ") if " × " in part else ("1", part)
            height += int(count) * float(thick.split()[0])
            counts[thick] = counts.get(thick, 0) + int(count)
        assert height == pytest.approx(float(row["pack height [mm]"]), abs=0.006)
        levels.append(ground + height)
    # 60 mm of base gap less 38 mm of sleeper.
    assert max(levels) - min(levels) <= smallest + 0.02
    assert max(abs(level - 22) for level in levels) <= smallest / 2 + 0.02
    bought = {r["shim"]: int(r["pieces"]) for r in tables["shims-to-buy"] if r["pieces"] != "0"}
    assert bought == counts


@pytest.mark.parametrize("seed", range(4))
def test_the_datum_is_the_highest_ground_under_the_island(built, seed):
    points = scattered(seed, 60)
    tables = built(points)
    datum = float(fact(tables, "datum in the survey's own heights"))
    surface = LinearNDInterpolator(points[:, :2], points[:, 2])
    # The cook run takes 0 to 3000 by 0 to 750, the bar run 2250 to 3000 by -1250 to 0.
    cook = np.array([(x, y) for x in np.linspace(0, 3000, 301) for y in np.linspace(0, 750, 76)])
    bar = np.array([(x, y) for x in np.linspace(2250, 3000, 76) for y in np.linspace(-1250, 0, 126)])
    heights = surface(np.vstack([cook, bar]))
    highest = np.nanmax(heights)
    assert datum >= highest - 0.006
    if not np.isnan(heights).any():
        assert datum <= highest + 1.0


def test_a_level_that_stands_off_is_found_by_leaving_it_out(built):
    points = scattered(3, 30)
    points[7, 2] -= 25
    tables = built(points)
    forms = {r["level"]: r["form"] for r in tables["survey"]}
    assert forms["P8"] == "hollow"
    for i, row in enumerate(tables["survey"]):
        others = np.delete(points, i, axis=0)
        design, coefficients, residuals = fitted(others)
        spread = np.sqrt(residuals @ residuals / (len(others) - 3))
        here = np.array([1, *points[i, :2]])
        # The level less what the others foretell, by the error of that foretelling.
        off = points[i, 2] - here @ coefficients
        off /= spread * np.sqrt(1 + here @ np.linalg.inv(design.T @ design) @ here)
        residual = float(row["above the plane [mm]"])
        expected = "" if abs(off) <= 2.5 or abs(residual) <= 2 else "peak" if off > 0 else "hollow"
        assert row["form"] == expected, (row, off)


def test_readings_down_give_the_same_ground(built):
    points = scattered(5)
    up = built(points)
    down = built(points * [1, 1, -1], measured="down")
    assert up == down


def test_the_reference_plane(built):
    # z = .0625 x + .08333 y + .045, residuals -.045 four times and +.180; here scaled to 1000 mm and 10 mm.
    raw = np.array([[0, 0, 0], [0, 3, 0.25], [8, 0, 0.5], [8, 3, 0.75], [4, 1.5, 0.6]])
    tables = built(raw * [1000, 1000, 10])
    ours = [float(r["above the plane [mm]"]) for r in tables["survey"]]
    assert ours == pytest.approx([-0.45] * 4 + [1.8], abs=0.006)
    assert float(fact(tables, "fall")) == pytest.approx(10 * np.hypot(0.0625, 0.25 / 3), abs=6e-5)


@pytest.mark.skipif("OUTSIDE_PROGRAM" in os.environ and "debug" in os.environ["OUTSIDE_PROGRAM"], reason="timed in release")
def test_five_hundred_levels_are_quick(built):
    points = scattered(1, 500)
    built(points)
    begin = time.perf_counter()
    built(points)
    # The whole program with reading, planning and writing; the site alone is timed in benches.
    assert time.perf_counter() - begin < 2.0
