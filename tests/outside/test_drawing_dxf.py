"""Each sheet as DXF, read by a DXF library: nothing to mend, units, extents, layers, and dimensions that measure what is built."""

import re
import xml.etree.ElementTree as ET
from fractions import Fraction

import ezdxf
import ezdxf.bbox
import pytest

SVG = "{http://www.w3.org/2000/svg}"
# Half of a step of what is lettered, in the units that a style measures in; a chain that adds up may be off by a whole step.
STEP = {"mm": 1.0, "ft-in": 1 / 16}
# The oblique strokes at the ends of a dimension line are drawn with this pen and reach so far along x and y, millimetres.
STROKE_PEN, STROKE_REACH = 0.35, 1.8


class Sheet:
    def __init__(self, path):
        self.path = path
        self.root = ET.parse(path).getroot()
        self.paper = [float(self.root.get(k).removesuffix("mm")) for k in ("width", "height")]
        self.scale = float(self.root.get("data-scale"))
        self.document = ezdxf.readfile(path.with_suffix(".dxf"))
        self.space = self.document.modelspace()

    @property
    def dimensions(self):
        return list(self.space.query("DIMENSION"))

    def groups(self):
        return [g for g in self.root.iter(f"{SVG}g")]

    def strokes(self):
        """The oblique strokes that the SVG shows."""
        for group in self.groups():
            if group.get("class") == "dimension":
                for path in group.iter(f"{SVG}path"):
                    ends = re.fullmatch(r"M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)", path.get("d"))
                    if ends and float(path.get("stroke-width")) == STROKE_PEN:
                        x0, y0, x1, y1 = map(float, ends.groups())
                        if abs(abs(x1 - x0) - STROKE_REACH) < 0.001 and abs(abs(y1 - y0) - STROKE_REACH) < 0.001:
                            yield x0, y0, x1, y1


_sheets = {}


@pytest.fixture
def sheets(example):
    if example.name not in _sheets:
        _sheets[example.name] = [Sheet(p) for p in sorted((example.folder / "drawings").glob("*.svg"))]
    return _sheets[example.name]


def test_there_is_nothing_to_mend(sheets):
    for sheet in sheets:
        audit = sheet.document.audit()
        faults = [f"{f.code} {f.message}" for f in [*audit.errors, *audit.fixes]]
        assert not faults, f"{sheet.path}: {faults}"


def test_units_and_extents_are_those_of_the_paper(sheets):
    for sheet in sheets:
        header = sheet.document.header
        assert sheet.document.units == ezdxf.units.MM and header["$MEASUREMENT"] == 1
        assert tuple(header["$EXTMIN"])[:2] == (0, 0)
        assert tuple(header["$EXTMAX"])[:2] == pytest.approx(sheet.paper, abs=1e-3), sheet.path
        lines = ezdxf.bbox.extents(sheet.space.query("LWPOLYLINE HATCH"))
        assert lines.extmin.x >= 0 and lines.extmin.y >= 0, sheet.path
        assert lines.extmax.x <= sheet.paper[0] and lines.extmax.y <= sheet.paper[1], sheet.path
        for text in sheet.space.query("TEXT"):
            at = text.dxf.align_point if text.dxf.halign else text.dxf.insert
            assert 0 < at.x < sheet.paper[0] and 0 < at.y < sheet.paper[1], f"{sheet.path}: {text.dxf.text}"


def test_layers_are_those_of_the_svg_and_each_has_its_width(sheets):
    for sheet in sheets:
        drawn = {e.dxf.layer for e in sheet.space}
        shown = {g.get("class") for g in sheet.groups() if len(g)}
        # White fills, which only hide what lies below on paper, are not in the DXF.
        assert drawn <= shown and {"border", "note"} & drawn, sheet.path
        for name in drawn:
            layer = sheet.document.layers.get(name)
            assert layer.dxf.lineweight in (18, 25, 35, 50, 70), name
        types = {name: sheet.document.layers.get(name).dxf.linetype for name in ("hidden", "centre", "outline")}
        assert types == {"hidden": "DASHED", "centre": "CENTRE", "outline": "Continuous"}
        for name in ("DASHED", "CENTRE", "PHANTOM"):
            # Strokes and gaps on the paper: long enough to be seen, short enough for a short line.
            assert 3 < sheet.document.linetypes.get(name).pattern_tags.tags[2].value < 20


def test_lettering_is_the_svg_s(sheets):
    for sheet in sheets:
        found = [t.dxf.text for t in sheet.space.query("TEXT")]
        for dimension in sheet.dimensions:
            found += [t.dxf.text for t in sheet.document.blocks.get(dimension.dxf.geometry).query("TEXT")]
        wanted = [t.text for t in sheet.root.iter(f"{SVG}text")]
        spelt = re.compile(r"\\U\+([0-9A-F]{4})")
        found = [spelt.sub(lambda m: chr(int(m[1], 16)), t).replace("^ ", "^") for t in found]
        assert sorted(found) == sorted(wanted), sheet.path


def test_there_is_a_dimension_for_each_that_is_drawn(sheets):
    total = 0
    for sheet in sheets:
        strokes = len(list(sheet.strokes()))
        assert 2 * len(sheet.dimensions) == strokes, sheet.path
        total += len(sheet.dimensions)
    assert total >= 50


def inches(text):
    """A length as inch drawings spell it: `3'-6 1/2"`, `7/8"`."""
    feet, whole, part = re.fullmatch(r"(?:(\d+)'-)?(?:(\d+)\b(?!/))? ?(?:(\d+/\d+))?\"", text).groups()
    return float(12 * int(feet or 0) + int(whole or 0) + Fraction(part or 0))


def lettered(text, unit):
    return float(text) if unit == "mm" else inches(text)


def test_dimensions_measure_what_they_letter(sheets):
    seen = 0
    for sheet in sheets:
        for dimension in sheet.dimensions:
            style = sheet.document.dimstyles.get(dimension.dxf.dimstyle)
            unit = style.dxf.name.split("-", 2)[2]
            measured = dimension.get_measurement() * dimension.override().get("dimlfac")
            block = sheet.document.blocks.get(dimension.dxf.geometry)
            shown = [t.dxf.text for t in block.query("TEXT")]
            own = dimension.dxf.get("text", "")
            where = f"{sheet.path}: {shown} for {measured}"
            # Extension lines are the sheet's.
            assert style.dxf.dimse1 == style.dxf.dimse2 == 1
            assert style.dxf.dimlunit == {"mm": 2, "ft-in": 4}[unit]
            if not shown:
                assert own == " ", where
                continue
            (text,) = shown
            # What is not written down is what a reader letters by itself: rounded to the nearest step.
            most = STEP[unit] * (1.0 if own else 0.5) + 1e-4
            assert own in ("", text), where
            assert abs(measured - lettered(text, unit)) <= most, where
            seen += 1
    assert seen >= 50


def test_dimensions_measure_at_the_scale_of_their_sheet(sheets):
    """Sheets of one scale: all their dimensions are at it."""
    checked = 0
    for sheet in sheets:
        for dimension in sheet.dimensions:
            style = sheet.document.dimstyles.get(dimension.dxf.dimstyle)
            factor = dimension.override().get("dimlfac") * (25.4 if style.dxf.dimlunit == 4 else 1.0)
            ratio = float(style.dxf.name.split("-")[1].replace("_", "."))
            assert factor == pytest.approx(ratio, rel=1e-4)
            if sheet.path.stem.startswith(("elevation", "plan")):
                assert factor * sheet.scale == pytest.approx(1.0, rel=1e-6), sheet.path
                checked += 1
    assert checked
