"""The drawing set as one PDF, by two PDF libraries and a font library: pages, fonts, lettering, bookmarks, and what PDF/A-2b asks.

No validator of PDF/A is to be had from the registries that the tests may use, so its clauses are asked for one by one; numbers in
brackets are those of ISO 19005-2 (from memory).
"""

import io
import re
import xml.etree.ElementTree as ET

import pikepdf
import pypdf
import pytest
from fontTools.ttLib import TTFont

from pdf_strokes import MM

SVG = "{http://www.w3.org/2000/svg}"


class DrawingSet:
    """The PDF of an example, and its sheets' own files by their numbers."""

    def __init__(self, example):
        folder = example.folder / "drawings"
        self.path = folder / "drawing-set.pdf"
        self.pdf = pikepdf.open(self.path)
        self.read = pypdf.PdfReader(self.path, strict=True)
        self.sheets = {}
        for path in folder.glob("*.svg"):
            root = ET.parse(path).getroot()
            number, title = root.find(f"{SVG}title").text.split(" ", 1)
            assert number not in self.sheets, f"two sheets are number {number}"
            self.sheets[number] = (title, root, path)

    def pages(self):
        """Each page with the number, the title and the SVG of its sheet."""
        for label, page in zip(self.read.page_labels, self.pdf.pages, strict=True):
            title, root, _ = self.sheets[label]
            yield label, title, root, page


_sets = {}


@pytest.fixture
def drawing_set(example):
    if example.name not in _sets:
        _sets[example.name] = DrawingSet(example)
    return _sets[example.name]


def test_the_file_is_whole(drawing_set):
    # What `qpdf --check` asks, by the same library.
    assert drawing_set.pdf.check_pdf_syntax() == []
    assert not drawing_set.pdf.is_encrypted
    assert len(drawing_set.read.pages) == len(drawing_set.sheets) >= 8


def test_pages_are_labelled_by_their_sheets_in_order(drawing_set):
    labels = drawing_set.read.page_labels
    assert labels == [str(n) for n in range(1, len(labels) + 1)]
    assert set(labels) == set(drawing_set.sheets)


def test_every_page_has_its_sheet_s_paper(drawing_set):
    for label, _, root, page in drawing_set.pages():
        width, height = (float(root.get(k).removesuffix("mm")) for k in ("width", "height"))
        x0, y0, x1, y1 = (float(v) * MM for v in page.MediaBox)
        assert (x0, y0) == (0, 0)
        assert (x1, y1) == pytest.approx((width, height), abs=0.001), label


def test_lettering_can_be_searched(drawing_set, example):
    for (label, title, root, _), page in zip(drawing_set.pages(), drawing_set.read.pages):
        found = re.sub(r"\s+", "", page.extract_text())
        assert re.sub(r"\s+", "", title) in found, label
        assert re.sub(r"\s+", "", example.params["project"]["title"]) in found, label
        # Everything that is lettered on the sheet, letter for letter.
        for node in root.iter(f"{SVG}text"):
            assert re.sub(r"\s+", "", node.text) in found, f"{label}: {node.text}"


def fonts(pdf):
    for page in pdf.pages:
        for font in page.get("/Resources", {}).get("/Font", {}).values():
            yield font


def test_every_font_is_embedded_and_holds_only_what_is_used(drawing_set):
    seen = set()
    for font in fonts(drawing_set.pdf):
        assert font.Subtype == "/Type0" and font.Encoding == "/Identity-H" and "/ToUnicode" in font
        below = font.DescendantFonts[0]
        descriptor = below.FontDescriptor
        assert re.fullmatch(r"/[A-Z]{6}\+DejaVuSansCondensed", str(descriptor.FontName))
        program = TTFont(io.BytesIO(descriptor.FontFile2.read_bytes()))
        glyphs = program.getGlyphOrder()
        assert 20 < len(glyphs) < 300, "the whole font has thousands"
        # [6.2.11.5] The widths that the page is set by are those of the font.
        widths = per_glyph(below.W)
        em = program["head"].unitsPerEm
        for number, width in widths.items():
            own = program["hmtx"].metrics[program.getGlyphName(number)][0] * 1000 / em
            assert width == pytest.approx(own, abs=1), number
        assert below.CIDToGIDMap == "/Identity" or below.CIDToGIDMap.read_bytes()
        seen.add(font.objgen)
    assert len(seen) == 1, "one font for all pages"


def per_glyph(array):
    """The widths of a CID font, glyph by glyph."""
    found, items = {}, list(array)
    while items:
        first, second = int(items.pop(0)), items.pop(0)
        if isinstance(second, pikepdf.Array):
            found.update({first + i: float(w) for i, w in enumerate(second)})
        else:
            found.update(dict.fromkeys(range(first, int(second) + 1), float(items.pop(0))))
    return found


def leaves(items, path=()):
    """Bookmarks as (titles from the top, item); a list follows the item that it belongs below."""
    last = None
    for item in items:
        if isinstance(item, list):
            yield from leaves(item, (*path, last))
        else:
            last = item.title
            yield (*path, item.title), item


def test_each_sheet_has_its_bookmark(drawing_set):
    read = drawing_set.read
    below, chapters = {}, set()
    for path, item in leaves(read.outline):
        page = read.get_destination_page_number(item)
        label = read.page_labels[page]
        if path[-1] == f"{label} {drawing_set.sheets[label][0]}":
            assert label not in below
            below[label] = path[:-1]
        else:
            chapters.add(path)
    assert set(below) == set(drawing_set.sheets)
    # A bookmark that is no sheet stands over several sheets of one kind.
    for chapter in chapters:
        assert sum(path == chapter for path in below.values()) > 1, chapter


def test_it_says_what_it_is_and_says_it_twice_alike(drawing_set, example):
    project = example.params["project"]
    info = drawing_set.read.metadata
    assert info.title == f"{project['title']}: drawing set"
    assert (info.author or "") == project.get("drawn_by", "")
    with drawing_set.pdf.open_metadata() as xmp:
        # [6.6.4]
        assert (xmp["pdfaid:part"], xmp["pdfaid:conformance"]) == ("2", "B")
        # [6.6.3] The two descriptions agree.
        assert xmp["dc:title"] == info.title
        assert xmp["dc:description"] == info.subject
        assert xmp["pdf:Producer"] == info.producer == xmp["xmp:CreatorTool"] == info.creator == "islandwright"
        if project.get("drawn_by"):
            assert list(xmp["dc:creator"]) == [info.author]
        stamp = re.sub(r"\D", "", xmp["xmp:CreateDate"])[:14]
        assert str(info["/CreationDate"])[2:16] == stamp
    # No clock: the file's own date, or none that means anything.
    date = str(project.get("date", ""))
    known = re.fullmatch(r"\d{4}-\d\d-\d\d", date)
    assert stamp == (date.replace("-", "") if known else "20000101") + "000000"
    assert drawing_set.pdf.Root.Lang == "en"


def objects(pdf):
    for thing in pdf.objects:
        if isinstance(thing, (pikepdf.Dictionary, pikepdf.Stream)):
            yield thing


def test_what_pdf_a_forbids_is_not_there(drawing_set):
    pdf = drawing_set.pdf
    start = drawing_set.path.read_bytes()[:20]
    # [6.1.2] A header of the version, then four bytes that show that the file is not text.
    assert re.match(rb"%PDF-1\.[4-7]\n%[\x80-\xff]{4}", start), start
    # [6.1.3] The file has an identity and no encryption.
    assert "/ID" in pdf.trailer and "/Encrypt" not in pdf.trailer
    # [6.4, 6.5, 6.8, 6.9] Nothing acts, nothing is filled in, nothing is inside, nothing can be switched off.
    for key in ("/OpenAction", "/AA", "/AcroForm", "/OCProperties", "/Requirements"):
        assert key not in pdf.Root, key
    assert "/EmbeddedFiles" not in pdf.Root.get("/Names", {}) and "/JavaScript" not in pdf.Root.get("/Names", {})
    for thing in objects(pdf):
        for key in ("/JS", "/AA", "/JavaScript", "/EF", "/OPI", "/TR", "/HTP", "/PS", "/Ref"):
            assert key not in thing, f"{key} in {thing}"
        assert thing.get("/S") not in ("/JavaScript", "/Launch", "/Sound", "/Movie", "/SubmitForm", "/ImportData", "/GoToR")
        assert thing.get("/Type") not in ("/Filespec", "/EmbeddedFile", "/OCG")
        if isinstance(thing, pikepdf.Stream):
            # [6.1.7] Nothing outside the file, no filter with a patent.
            assert not {"/F", "/FFilter", "/FDecodeParms"} & set(thing.keys())
            assert "/LZWDecode" not in str(thing.get("/Filter", "")) and "/Crypt" not in str(thing.get("/Filter", ""))
    # [6.3] No annotation at all.
    assert all("/Annots" not in page for page in pdf.pages)


def test_colours_mean_the_same_everywhere(drawing_set):
    pdf = drawing_set.pdf
    # [6.2.3] One output intent, with a profile for a display.
    (intent,) = pdf.Root.OutputIntents
    assert intent.S == "/GTS_PDFA1" and "/OutputConditionIdentifier" in intent
    profile = intent.DestOutputProfile.read_bytes()
    assert int(intent.DestOutputProfile.N) == 3
    assert profile[36:40] == b"acsp" and profile[16:20] == b"RGB " and profile[12:16] == b"mntr" and profile[8] <= 4
    assert int.from_bytes(profile[:4], "big") == len(profile)
    # [6.2.4] Every colour is of a profile: no colour of a device.
    for page in pdf.pages:
        spaces = page.Resources.get("/ColorSpace", {})
        assert all(space[0] == "/ICCBased" for space in spaces.values())
        names = set(spaces.keys())
        for operands, operator in pikepdf.parse_content_stream(page):
            assert str(operator) not in ("g", "G", "rg", "RG", "k", "K", "ri", "i", "BI", "sh"), operator
            if str(operator) in ("cs", "CS"):
                assert str(operands[0]) in names
    # [6.1.13] Graphics states are never nested deeper than 28.
    for page in pdf.pages:
        deep = most = 0
        for _, operator in pikepdf.parse_content_stream(page):
            deep += {"q": 1, "Q": -1}.get(str(operator), 0)
            most = max(most, deep)
        assert deep == 0 and most <= 28
