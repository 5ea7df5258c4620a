"""What the sheets measure: overall dimensions against the models, a ruler laid on a sheet, and colours alike in all formats."""

import math
import re
import xml.etree.ElementTree as ET

import ezdxf
import numpy as np
import pikepdf
import pytest
import svgelements as svg
import trimesh

from conftest import ROOT, run
from pdf_strokes import strokes

SVG = "{http://www.w3.org/2000/svg}"
# A drawing letters and measures as built, to a tenth of a millimetre; an STL number near 4 m is good to 0.00025 mm.
AS_BUILT = 0.1
LAYERS = {
    *("border", "outline", "detail", "hidden", "centre", "cut", "section", "hatch"),
    *("site", "symbol", "table", "dimension", "note"),
}


def measured(path):
    """The built lengths in millimetres that a sheet's dimensions measure, those across and those up the sheet."""
    found = {"across": [], "up": []}
    document = ezdxf.readfile(path)
    for dimension in document.modelspace().query("DIMENSION"):
        style = document.dimstyles.get(dimension.dxf.dimstyle)
        unit = 25.4 if style.dxf.dimlunit == 4 else 1.0
        length = dimension.get_measurement() * dimension.override().get("dimlfac") * unit
        way = "across" if abs(math.cos(math.radians(dimension.dxf.angle))) > 0.5 else "up"
        found[way].append(length)
    return found


def extents(mesh):
    low, high = mesh.bounds
    return high - low


def group(example, name):
    return trimesh.load_mesh(example.folder / f"models/{name}.stl", process=False)


def kinds(example, *names):
    """The box round all parts of some kinds."""
    vertices = np.vstack([p["mesh"].vertices for p in example.of_kind(*names)])
    return trimesh.PointCloud(vertices)


def has(lengths, wanted):
    return any(abs(length - wanted) <= AS_BUILT for length in lengths)


def test_plans_give_the_extents_of_the_models(example):
    framing = measured(example.folder / "drawings/plan-framing.dxf")
    frame = extents(group(example, "framing"))
    assert has(framing["across"], frame[0]) and has(framing["up"], frame[1]), (framing, frame)
    island = measured(example.folder / "drawings/plan-island.dxf")
    clad = extents(kinds(example, "bottom track", "finish coat"))
    assert has(island["across"], clad[0]) and has(island["up"], clad[1]), (island, clad)
    counter = measured(example.folder / "drawings/plan-counter.dxf")
    slab = extents(kinds(example, "slab"))
    assert has(counter["across"], slab[0]) and has(counter["up"], slab[1]), (counter, slab)
    # The overall is the longest one: nothing is measured past the slab.
    assert max(counter["across"]) == pytest.approx(slab[0], abs=AS_BUILT)


def test_elevations_give_the_heights_of_the_models(example):
    frame_top = group(example, "framing").bounds[1][2]
    slab_top = kinds(example, "slab").bounds[1][2]
    framing = sorted((example.folder / "drawings").glob("elevation-*-framing.dxf"))
    finished = sorted((example.folder / "drawings").glob("elevation-*-finished.dxf"))
    assert framing and finished
    for path in framing:
        assert max(measured(path)["up"]) == pytest.approx(frame_top, abs=AS_BUILT), path
    for path in finished:
        assert has(measured(path)["up"], slab_top), path


def test_the_long_framing_elevations_give_the_length_of_their_run(example):
    frame = extents(group(example, "framing"))
    for number, given in enumerate(example.params["runs"]):
        mark = given.get("mark", given["name"][0]).upper()
        lengths = measured(example.folder / f"drawings/elevation-{mark}W-framing.dxf")["across"]
        own = [p["mesh"].vertices for p in example.of_kind("bottom track", "top track") if p["mark"].startswith(f"{mark}-")]
        along = np.ptp(np.vstack(own), axis=0)[number % 2]
        assert len(example.params["runs"]) > 1 or along == pytest.approx(frame[0], abs=AS_BUILT)
        assert has(lengths, along), (mark, along, lengths)


@pytest.fixture(scope="module")
def ruler(program, out):
    """The bench of 3,000 mm, whose elevations come out at 1:20."""
    target = out / "ruler"
    run(program, "build", ROOT / "tests/outside/ruler.yaml", "--out", target, "--only", "drawings")
    return target / "ruler" / "drawings"


def level_lines(path, layer):
    """How long the level lines of a layer are on the paper, millimetres, by an SVG library."""
    found = []
    for g in svg.SVG.parse(str(path), ppi=25.4).select(lambda e: isinstance(e, svg.Group)):
        if g.values.get("class") == layer:
            for shape in g.select(lambda e: isinstance(e, svg.Shape)):
                x0, y0, x1, y1 = shape.bbox(with_stroke=False)
                if y1 - y0 < 1e-6:
                    found.append(x1 - x0)
    return found


def test_three_metres_at_1_to_20_are_150_millimetres_on_paper(ruler):
    path = ruler / "elevation-BW-framing.svg"
    root = ET.parse(path).getroot()
    assert "Scale 1:20." in root.find(f"{SVG}desc").text
    assert (root.get("width"), root.get("height")) == ("297mm", "210mm")
    texts = [t.text for t in root.iter(f"{SVG}text")]
    assert "3000" in texts and "1:20" in texts
    assert max(level_lines(path, "dimension")) == pytest.approx(150.0, abs=0.05)
    # The same on the page of the PDF that is printed: dimension lines are 0.18 mm wide.
    number = root.find(f"{SVG}title").text.split(" ")[0]
    document = pikepdf.open(ruler / "drawing-set.pdf")
    level = [
        abs(points[1][0] - points[0][0])
        for width, dashed, points in strokes(document.pages[int(number) - 1])
        if abs(width - 0.18) < 0.005 and not dashed and len(points) == 2 and abs(points[1][1] - points[0][1]) < 1e-3
    ]
    assert max(level) == pytest.approx(150.0, abs=0.05)


def test_groups_are_named_by_layers_and_nothing_leaves_the_paper(example):
    for path in sorted((example.folder / "drawings").glob("*.svg")):
        root = ET.parse(path).getroot()
        names = [g.get("id") for g in root.iter(f"{SVG}g")]
        assert len(set(names)) == len(names) >= 2, path
        for g in root.iter(f"{SVG}g"):
            assert g.get("class") in LAYERS and re.fullmatch(rf"{g.get('class')}(-\d+)?", g.get("id")), path
        # Every line and letter stands in a group.
        assert {child.tag for child in root} <= {f"{SVG}{t}" for t in ("title", "desc", "rect", "g")}
        width, height = (float(root.get(k).removesuffix("mm")) for k in ("width", "height"))
        for shape in svg.SVG.parse(str(path), ppi=25.4).elements(lambda e: isinstance(e, svg.Path)):
            x0, y0, x1, y1 = shape.bbox(with_stroke=False)
            assert x0 >= 0 and y0 >= 0 and x1 <= width and y1 <= height, f"{path}: {shape.d()[:80]}"


# Colours.


def luminance(colour):
    """Relative luminance after WCAG 2.1."""
    parts = [c / 255 for c in colour]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def rgb(text):
    digits = text.removeprefix("#")
    digits = "".join(d * 2 for d in digits) if len(digits) == 3 else digits
    return tuple(int(digits[i : i + 2], 16) for i in (0, 2, 4))


def pdf_colours(path):
    """Every colour that strokes or fills on the pages, 0 to 255."""
    found = set()
    document = pikepdf.open(path)
    for page in document.pages:
        for operands, operator in pikepdf.parse_content_stream(page):
            if str(operator) in ("sc", "scn", "SC", "SCN"):
                parts = [round(float(o) * 255) for o in operands]
                found.add(tuple(parts * 3 if len(parts) == 1 else parts))
    return found


@pytest.mark.parametrize("ink", ["black", "colour"])
def test_ink_is_the_same_in_every_format(program, out, ink):
    text = (ROOT / "params/garden-corner.yaml").read_text()
    assert "\ndrawings:\n" in text and "ink:" not in text
    file = out / f"{ink}.yaml"
    file.write_text(text.replace("\ndrawings:\n", f"\ndrawings:\n  ink: {ink}\n"))
    run(program, "build", file, "--out", out / "inks", "--only", "drawings")
    folder = out / "inks" / ink / "drawings"
    layers, fills = {}, set()
    for path in folder.glob("*.svg"):
        for g in ET.parse(path).getroot().iter(f"{SVG}g"):
            colour = rgb(g.get("stroke"))
            assert layers.setdefault(g.get("class"), colour) == colour
            assert all(rgb(t.get("fill")) == colour for t in g.iter(f"{SVG}text"))
            fills |= {rgb(p.get("fill")) for p in g.iter(f"{SVG}path") if p.get("fill")}
    black = {(0, 0, 0)}
    if ink == "black":
        assert set(layers.values()) == black
        assert all(r == g == b for r, g, b in fills)
    else:
        assert len(set(layers.values())) == len(layers) >= 7
        # 4.5 to 1 on white (WCAG 2.1, 1.4.3), so that a grey print can be read.
        assert all(1.05 / (luminance(c) + 0.05) >= 4.5 for c in layers.values()), layers
    # The PDF has these colours and no other.
    drawn = set(layers.values()) | fills
    assert pdf_colours(folder / "drawing-set.pdf") <= drawn | black
    assert set(layers.values()) <= pdf_colours(folder / "drawing-set.pdf")
    for path in folder.glob("*.dxf"):
        document = ezdxf.readfile(path)
        assert not document.audit().errors
        for name in {e.dxf.layer for e in document.modelspace()}:
            layer = document.layers.get(name)
            if ink == "colour":
                assert tuple(layer.rgb) == layers[name], name
            else:
                # 7 is black on paper; what is to be cut is red, as shops have it.
                assert layer.dxf.color == (1 if name == "cut" else 7), name
