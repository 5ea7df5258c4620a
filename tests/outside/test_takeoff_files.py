"""The takeoff's files, read by Python's own readers, openpyxl and pypdf: the same cells in CSV, JSON and workbook."""

import csv
import datetime
import io
import json
import re
import zipfile

import openpyxl
import pypdf
import pytest

from conftest import run


def tables(example):
    return json.loads((example.folder / "takeoff/takeoff.json").read_text(encoding="utf-8"))


def csv_of(example, key):
    text = (example.folder / f"takeoff/{key.replace('_', '-')}.csv").read_bytes().decode("utf-8")
    assert text.endswith("\r\n") and not re.search(r"(?<!\r)\n", text), f"{key}: a line does not end with CR LF"
    return list(csv.reader(io.StringIO(text, newline=""), strict=True))


def sheets(example):
    book = openpyxl.load_workbook(example.folder / "takeoff/takeoff.xlsx")
    return book, {sheet.title.replace(" ", "_"): sheet for sheet in book.worksheets}


def as_number(text):
    try:
        return float(text)
    except ValueError:
        return None


def test_every_table_is_in_all_three_and_nothing_else(example):
    keys = list(tables(example))
    assert {"cut_list", "sticks", "order", "totals"} <= set(keys)
    assert list(sheets(example)[1]) == keys
    files = {p.stem.replace("-", "_") for p in (example.folder / "takeoff").glob("*.csv")}
    assert files == set(keys)


def test_the_same_cells_stand_in_csv_json_and_workbook(example):
    by_name = sheets(example)[1]
    for key, table in tables(example).items():
        head, *records = csv_of(example, key)
        rows = [list(row.values()) for row in table["rows"]]
        grid = [[cell.value for cell in row] for row in by_name[key].iter_rows()]
        assert [str(v) for v in grid[0]] == head, key
        assert len(records) == len(rows) == len(grid) - 1, key
        for record, row, cells in zip(records, rows, grid[1:], strict=True):
            assert len(record) == len(row) == len(cells) == len(head), (key, record)
            for text, value, cell in zip(record, row, cells, strict=True):
                assert value == cell, (key, record, value, cell)
                if isinstance(value, str):
                    assert text == value, (key, record)
                elif value is None:
                    assert text == "", (key, record)
                else:
                    assert as_number(text) == value, (key, record)


def test_units_are_named_where_a_column_has_one(example):
    for key, table in tables(example).items():
        head = csv_of(example, key)[0]
        named = [re.fullmatch(r".* \[(.+)\]", title) for title in head]
        assert [m[1] for m in named if m] == list(table["units"].values()), key
        assert set(table["units"]) <= set(table["rows"][0] if table["rows"] else table["units"]), key


def test_the_workbook_is_made_for_reading_and_printing(example):
    book, by_name = sheets(example)
    # A fixed date, so that the same input gives the same bytes.
    assert book.properties.created == datetime.datetime(2000, 1, 1)
    for key, sheet in by_name.items():
        assert sheet.freeze_panes == "A2", key
        assert sheet.auto_filter.ref, key
        assert all(cell.font.bold for cell in sheet[1]), key
        assert sheet.page_setup.orientation == "landscape", key
        # One page wide (what the format means where it is silent), as many high as it takes.
        assert (sheet.page_setup.fitToWidth or 1, sheet.page_setup.fitToHeight) == (1, 0), key
        assert sheet.sheet_properties.pageSetUpPr.fitToPage, key
        assert sheet.print_title_rows == "$1:$1", key
        widths = [sheet.column_dimensions[cell.column_letter].width for cell in sheet[1]]
        assert all(3 < w < 90 for w in widths), (key, widths)
        for row in sheet.iter_rows(min_row=2):
            for cell in row:
                assert cell.data_type in "sn", (key, cell.coordinate)
                if cell.data_type == "n" and cell.value is not None:
                    assert cell.number_format.startswith("#,##0"), (key, cell.coordinate)


def test_no_text_becomes_a_formula(program, tmp_path):
    file = tmp_path / "formula.yaml"
    file.write_text("project: {title: '=1+1 & more'}\nruns: [{name: '=2+2', mark: K, length: 6 ft, depth: 30 in}]\n")
    run(program, "build", file, "--only", "takeoff", "--out", tmp_path)
    book = tmp_path / "formula/takeoff/takeoff.xlsx"
    with zipfile.ZipFile(book) as package:
        parts = [package.read(n) for n in package.namelist() if n.startswith("xl/worksheets/")]
    assert parts and not any(b"<f>" in p or b"<f " in p for p in parts)
    values = [c.value for s in openpyxl.load_workbook(book).worksheets for row in s.iter_rows() for c in row]
    assert any(str(v).startswith("=2+2") for v in values)
    text = (tmp_path / "formula/takeoff/cut-list.csv").read_bytes().decode()
    assert "=2+2" in text and "'=2+2" not in text


def test_every_piece_of_the_cut_list_has_one_label_and_stands_on_one_stick(example):
    rows = tables(example)["cut_list"]["rows"]
    rows = [row for row in rows if row["kind"] not in ("scrap", "offcut")]
    marks = sorted(row["mark"] for row in rows)
    assert len(set(marks)) == len(marks) > 0
    # Segments of one part carry its mark and their number.
    cut = {"stud", "jamb", "cripple", "bottom track", "top track", "header", "sill", "tie", "trimmer", "blocking", "sleeper", "base channel"}
    parts = [row["mark"] for row in rows if row["kind"] != "corner mesh"]
    assert {m.split(" ")[0] for m in parts} == {p["mark"] for p in example.of_kind(*cut)}
    labels = pypdf.PdfReader(example.folder / "takeoff/labels.pdf", strict=True)
    text = "\n".join(page.extract_text() for page in labels.pages)
    missing = [m for m in marks if not re.search(rf"(?<![\w-]){re.escape(m)}(?![\w-])", text)]
    assert missing == []


@pytest.mark.parametrize("metric", [False, True])
def test_labels_stay_inside_their_labels(program, tmp_path, metric):
    units = "metric" if metric else "imperial"
    file = tmp_path / "labels.yaml"
    name = "the long run by greenhouse, WATER BARREL"
    file.write_text(f"project: {{title: Trial, units: {units}}}\nruns: [{{name: '{name}', mark: K, length: 3 m, depth: 760 mm}}]\n")
    # A run of this length without a joint fails a check of the slab; it is built all the same.
    run(program, "build", file, "--only", "takeoff", "--out", tmp_path, ok=(0, 1))
    pages = pypdf.PdfReader(tmp_path / "labels/takeoff/labels.pdf", strict=True).pages
    mm = 72 / 25.4
    # Left edge, top edge, pitches and size of a label on the two common papers, millimetres.
    left, top, across, down, wide, high, paper = (
        (0.0, 0.5, 70.0, 37.0, 70.0, 37.0, (210.0, 297.0)) if metric else (4.7625, 12.7, 69.85, 25.4, 66.675, 25.4, (215.9, 279.4))
    )
    for page in pages:
        size = [float(v) / mm for v in page.mediabox[2:]]
        assert size == pytest.approx(paper, abs=0.01)
        seen = []

        def visit(text, cm, tm, font, font_size):
            if text.strip():
                x, y = (tm[4] * cm[0] + tm[5] * cm[2] + cm[4]) / mm, (tm[4] * cm[1] + tm[5] * cm[3] + cm[5]) / mm
                seen.append((text, x, paper[1] - y))

        page.extract_text(visitor_text=visit)
        assert seen
        for text, x, y in seen:
            column, row = (x - left) / across, (y - top) / down
            inside_x = (x - left) - int(column) * across
            inside_y = (y - top) - int(row) * down
            assert 2 <= inside_x <= wide - 2 and 2 <= inside_y <= high - 2, (text, x, y)
