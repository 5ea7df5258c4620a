"""The drawings, read by an SVG library and rendered by another: sizes, measured lengths, lettering."""

import io
import xml.etree.ElementTree as ET

import numpy as np
import pytest
import resvg_py
import svgelements as svg
from PIL import Image
from shapely.affinity import rotate
from shapely.geometry import box
from shapely.strtree import STRtree

from conftest import run
from island import Island

# The line that stands for the ground; nothing else of a view is drawn with it.
GROUND = 0.7
# How much of a text's height its capitals leave: a font size is so much more than the height of a capital.
DESCENT, ASCENT = 0.24, 0.76
# Lengths on paper are read to a tenth of a millimetre as built (issue 2, section 7).
AS_BUILT = 0.1
# The papers of the examples, lying: ISO 216, ANSI/ASME Y14.1 and the architectural sizes, in millimetres.
PAPERS = {"a3": (420.0, 297.0), "tabloid": (431.8, 279.4), "arch-c": (609.6, 457.2)}


def drawings(example):
    return sorted((example.folder / "drawings").glob("*.svg"))


class Drawing:
    def __init__(self, path):
        self.path = path
        self.root = ET.parse(path).getroot()
        # One user unit is one millimetre on paper.
        self.view = svg.SVG.parse(str(path), ppi=25.4)
        self.scale = float(self.root.get("data-scale"))

    @property
    def paper(self):
        size = [self.root.get("width"), self.root.get("height")]
        assert all(s.endswith("mm") for s in size)
        return [float(s[:-2]) for s in size]

    def extents(self, *layers, closed=False):
        """The box round all lines of some layers but the ground, in millimetres as built; or round closed ones only."""
        boxes = []
        for group in self.view.select(lambda e: isinstance(e, svg.Group)):
            if group.values.get("class") in layers:
                for shape in group.select(lambda e: isinstance(e, svg.Shape)):
                    # The width as the file has it, in millimetres.
                    ground = float(shape.values.get("stroke-width") or 0) == GROUND
                    if not ground and (not closed or shape.values.get("d", "").endswith("Z")):
                        boxes.append(shape.bbox(with_stroke=False))
        boxes = np.array(boxes)
        low, high = boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)
        return (high - low) / self.scale

    def texts(self):
        """Every text with the rectangle that it covers on the paper."""
        found = []
        for node in self.root.iter("{http://www.w3.org/2000/svg}text"):
            x, y, size, length = (float(node.get(k)) for k in ("x", "y", "font-size", "textLength"))
            left = {"start": 0, "middle": length / 2, "end": length}[node.get("text-anchor")]
            area = box(x - left, y - ASCENT * size, x - left + length, y + DESCENT * size)
            turn = node.get("transform")
            if turn:
                angle, cx, cy = (float(v) for v in turn.removeprefix("rotate(").removesuffix(")").split())
                area = rotate(area, angle, origin=(cx, cy))
            found.append((node.text, area))
        return found


def test_every_sheet_has_the_size_it_says(example):
    metric = example.params["project"].get("units") == "metric"
    paper = example.params.get("drawings", {}).get("paper", "a3" if metric else "tabloid")
    for path in drawings(example):
        drawing = Drawing(path)
        assert tuple(drawing.paper) == PAPERS[paper], path
        assert [float(v) for v in drawing.root.get("viewBox").split()] == [0, 0, *drawing.paper], path


def projected(outline, along):
    return float(np.ptp(np.array(outline.exterior.coords) @ along))


def sheet_of(example, edge, what):
    """The elevation of a side, by the letters of its run and side."""
    given = next(r for r in example.params["runs"] if r["name"] == edge.run.name)
    mark = given.get("mark", edge.run.name[0]).upper() + edge.side[0].upper()
    return example.folder / f"drawings/elevation-{mark}-{what}.svg"


def test_finished_elevations_measure_what_was_designed(example):
    island = Island(example.params)
    slab = island.slab_outline(lambda e: 0.0)
    seen = 0
    for edge in island.edges:
        path = sheet_of(example, edge, "finished")
        if edge.is_wall:
            assert not path.exists()
            continue
        across, up = Drawing(path).extents("outline", "detail")
        assert across == pytest.approx(projected(slab, edge.along), abs=AS_BUILT), path
        seen += 1
    assert seen >= 3


def test_framing_elevations_measure_what_was_designed(example):
    island = Island(example.params)
    runs = island.runs
    for edge in island.edges:
        # The side itself, and the panel in it where a run that butts hides part of it.
        i = runs.index(edge.run)
        earlier = [r.get("passes", "earlier") == "earlier" for r in example.params["runs"]]
        start = runs[i - 1].depth if i > 0 and earlier[i] else 0.0
        end = runs[i + 1].depth if i + 1 < len(runs) and not earlier[i + 1] else 0.0
        ends = [0.0, edge.length]
        if edge.side in ("working", "seating"):
            v = 0.0 if edge.side == "working" else edge.run.depth
            ends += [edge.local(edge.run.at(u, v))[0] for u in (start, edge.run.length - end)]
        across, _ = Drawing(sheet_of(example, edge, "framing")).extents("outline", "detail")
        assert across == pytest.approx(max(ends) - min(ends), abs=AS_BUILT), f"{edge.run.name} {edge.side}"


def test_plans_measure_what_was_designed(example):
    island = Island(example.params)
    slab, clad = island.slab_outline(lambda e: 0.0), island.clad(island.cladding)
    # Seen from above the counter hides the finished faces under it.
    plans = [("plan-counter", "outline", slab), ("plan-island", "outline", slab), ("plan-island", "hidden", clad)]
    for name, layer, outline in plans:
        x0, y0, x1, y1 = outline.bounds
        # Lines of the same layer elsewhere on the sheet, such as the key's samples, are not closed.
        found = Drawing(example.folder / f"drawings/{name}.svg").extents(layer, closed=True)
        assert sorted(found) == pytest.approx(sorted([x1 - x0, y1 - y0]), abs=AS_BUILT), (name, layer)


def test_lettering_stays_on_the_sheet_and_apart(example):
    faults = []
    for path in drawings(example):
        drawing = Drawing(path)
        texts = drawing.texts()
        assert len(texts) > 10, path
        sheet = box(0, 0, *drawing.paper)
        for text, area in texts:
            if not sheet.contains(area):
                faults.append(f"{path.name}: '{text}' leaves the sheet")
        tree = STRtree([area for _, area in texts])
        for i, (text, area) in enumerate(texts):
            for j in tree.query(area, predicate="intersects"):
                shared = area.intersection(texts[j][1]).area
                if i < j and shared > 0.05:
                    faults.append(f"{path.name}: '{text}' and '{texts[j][0]}' overlap by {shared:.2f} mm²")
    assert not faults, "\n".join(faults[:40])


def test_every_sheet_can_be_rendered_and_shows_something(example):
    for path in drawings(example) + sorted((example.folder / "template").rglob("*.svg")):
        picture = resvg_py.svg_to_bytes(svg_string=path.read_text(), dpi=96, width=800)
        grey = np.asarray(Image.open(io.BytesIO(bytes(picture))).convert("L"))
        ink = float((grey < 250).mean())
        assert 0.0005 < ink < 0.5, f"{path}: {ink:.4f} of it is ink"


def test_markup_in_names_is_shown_and_not_obeyed(program, tmp_path):
    title = 'Bench <b>&amp; "two" \'three\' </text><script>'
    file = tmp_path / "markup.yaml"
    file.write_text(f"project: {{title: {yaml_quoted(title)}}}\nruns: [{{name: cook <i>, length: 6 ft, depth: 30 in}}]\n")
    run(program, "build", file, "--out", tmp_path / "out")
    sheets = sorted((tmp_path / "out").rglob("*.svg"))
    assert sheets
    for path in sheets:
        root = ET.parse(path).getroot()
        tags = {node.tag.split("}")[1] for node in root.iter()}
        assert tags <= {"svg", "g", "path", "text", "title", "desc", "rect", "defs", "style", "tspan", "line", "circle"}, path
    texts = {node.text for path in sheets for node in ET.parse(path).getroot().iter("{http://www.w3.org/2000/svg}text")}
    assert any(title == text for text in texts), "the title is not on the sheets as written"


def yaml_quoted(text):
    return "'" + text.replace("'", "''") + "'"
