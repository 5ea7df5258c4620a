"""Reads a STEP file with OpenCascade and measures what it finds: the tree with its names, and every distinct solid."""

from collections import Counter

from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Curve, BRepAdaptor_Surface
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.GProp import GProp_GProps
from OCP.IFSelect import IFSelect_RetDone
from OCP.STEPCAFControl import STEPCAFControl_Reader
from OCP.TCollection import TCollection_ExtendedString
from OCP.TDataStd import TDataStd_Name
from OCP.TDF import TDF_Label
from OCP.TDocStd import TDocStd_Document
from OCP.TopAbs import TopAbs_EDGE, TopAbs_FACE, TopAbs_SHELL, TopAbs_SOLID, TopAbs_VERTEX
from OCP.TopExp import TopExp
from OCP.TopoDS import TopoDS
from OCP.collections import (
    IndexedMap_TopoDS_Shape_TopTools_ShapeMapHasher,
    Sequence_TCollection_AsciiString,
    Sequence_TDF_Label,
)
from OCP.XCAFDoc import XCAFDoc_DocumentTool, XCAFDoc_ShapeTool


def name_of(label):
    attribute = TDataStd_Name()
    if label.FindAttribute(TDataStd_Name.GetID_s(), attribute):
        return attribute.Get().ToExtString()
    return None


def distinct(shape, kind):
    found = IndexedMap_TopoDS_Shape_TopTools_ShapeMapHasher()
    TopExp.MapShapes_s(shape, kind, found)
    return [found.FindKey(i) for i in range(1, found.Extent() + 1)]


class Solid:
    """What one distinct shape measures."""

    def __init__(self, shape):
        self.shape = shape
        self.solids = distinct(shape, TopAbs_SOLID)
        self.shells = distinct(shape, TopAbs_SHELL)
        faces, edges = distinct(shape, TopAbs_FACE), distinct(shape, TopAbs_EDGE)
        self.faces = len(faces)
        surfaces = (BRepAdaptor_Surface(TopoDS.Face(f)).GetType() for f in faces)
        self.surfaces = Counter(t.name.removeprefix("GeomAbs_") for t in surfaces)
        real = (TopoDS.Edge(e) for e in edges)
        curves = (BRepAdaptor_Curve(e).GetType() for e in real if not BRep_Tool.Degenerated_s(e))
        self.curves = Counter(t.name.removeprefix("GeomAbs_") for t in curves)
        vertices = (TopoDS.Vertex(v) for v in distinct(shape, TopAbs_VERTEX))
        tolerances = [BRep_Tool.Tolerance_s(v) for v in vertices]
        tolerances += [BRep_Tool.Tolerance_s(TopoDS.Edge(e)) for e in edges]
        tolerances += [BRep_Tool.Tolerance_s(TopoDS.Face(f)) for f in faces]
        self.tolerance = max(tolerances)
        self.valid = BRepCheck_Analyzer(shape).IsValid()
        self.closed = all(BRep_Tool.IsClosed_s(s) for s in self.shells)
        properties = GProp_GProps()
        BRepGProp.VolumeProperties_s(shape, properties, 1e-9)
        self.volume = properties.Mass()

    def vertices(self, location):
        points = []
        for vertex in distinct(self.shape, TopAbs_VERTEX):
            p = BRep_Tool.Pnt_s(TopoDS.Vertex(vertex)).Transformed(location.Transformation())
            points.append((p.X(), p.Y(), p.Z()))
        return points


class StepFile:
    """The tree of a file: `paths` of names with `part`, its solid and its location."""

    def __init__(self, path):
        self.path = path
        reader = STEPCAFControl_Reader()
        reader.SetNameMode(True)
        reader.SetColorMode(True)
        assert reader.ReadFile(str(path)) == IFSelect_RetDone, path
        lengths, angles, solid_angles = (Sequence_TCollection_AsciiString() for _ in range(3))
        reader.ChangeReader().FileUnits(lengths, angles, solid_angles)
        self.units = {lengths.Value(i).ToCString() for i in range(1, lengths.Length() + 1)}
        self.document = TDocStd_Document(TCollection_ExtendedString("XmlXCAF"))
        assert reader.Transfer(self.document), path
        self.tool = XCAFDoc_DocumentTool.ShapeTool_s(self.document.Main())
        free = Sequence_TDF_Label()
        self.tool.GetFreeShapes(free)
        self.roots = [free.Value(i) for i in range(1, free.Length() + 1)]
        self.leaves = []
        self.products = {}
        self._solids = {}
        for root in self.roots:
            self._walk(root, (name_of(root),), XCAFDoc_ShapeTool.GetShape_s(root).Location())

    def _walk(self, label, names, location):
        if not XCAFDoc_ShapeTool.IsAssembly_s(label):
            key = label.Tag()
            self.products[key] = name_of(label)
            if key not in self._solids:
                self._solids[key] = Solid(XCAFDoc_ShapeTool.GetShape_s(label))
            self.leaves.append((names, self._solids[key], location))
            return
        parts = Sequence_TDF_Label()
        XCAFDoc_ShapeTool.GetComponents_s(label, parts)
        for i in range(1, parts.Length() + 1):
            component, referred = parts.Value(i), TDF_Label()
            assert XCAFDoc_ShapeTool.GetReferredShape_s(component, referred)
            there = location.Multiplied(XCAFDoc_ShapeTool.GetLocation_s(component))
            self._walk(referred, (*names, name_of(component)), there)

    @property
    def solids(self):
        """The distinct solids."""
        return list(self._solids.values())
