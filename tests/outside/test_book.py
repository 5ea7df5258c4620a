"""The build book in a browser, opened from the disk."""

import json
import re
import subprocess

import pytest
from pypdf import PdfReader

from browser import DESK, PHONE, Page, chromium, differ
from conftest import EXAMPLES, ROOT

CHAPTERS = ["island", "findings", "drawings", "template", "cutting", "buying", "site", "steps", "files"]


def test_the_modules_by_themselves():
    done = subprocess.run(["node", "--test", ROOT / "tests/outside/book_view.test.mjs"], capture_output=True, text=True)
    assert done.returncode == 0, done.stdout


@pytest.fixture(scope="module")
def browser():
    with chromium() as found:
        yield found


@pytest.fixture(scope="module")
def book(browser, demo):
    opened = Page(browser)
    opened.url = (demo.folder / "index.html").as_uri()
    assert opened.open(opened.url) == "picture"
    return opened


@pytest.fixture(scope="module")
def demo(out, program):
    from conftest import built

    return built("garden-corner", program, out)


def test_one_file_under_two_mebibytes_that_asks_for_nothing(book, demo):
    assert (demo.folder / "index.html").stat().st_size < 2 * 1024 * 1024
    asked = [url for url in book.asked if not url.startswith(("blob:", "data:"))]
    assert asked == [book.url]
    assert book.said == []


def test_every_chapter_is_there_and_reached_from_the_top(book):
    links = book.page.eval_on_selector_all("nav a", "all => all.map(a => a.getAttribute('href'))")
    assert links == [f"#{c}" for c in CHAPTERS]
    for chapter in CHAPTERS:
        heading = book.page.inner_text(f"#{chapter} h2")
        assert heading, chapter


def test_failures_stand_first_and_all_findings_are_there(book, demo):
    found = json.loads((demo.folder / "checks/findings.json").read_text())
    shown = book.page.eval_on_selector_all(".finding", "all => all.length")
    assert shown == len(found["findings"])
    words = book.page.eval_on_selector_all("details.verdicts .verdict", "all => all.map(v => v.textContent)")
    order = ["error", "fail", "caution", "not checked", "pass"]
    assert words == sorted(words, key=order.index)


def test_what_a_finding_is_about_is_shown(book):
    """Everything that has a place on the island has its picture: appliances, openings, runs, counter, the inside."""
    without = book.page.eval_on_selector_all(
        ".finding:is(.fail, .caution):not(:has(.where))", "all => all.map(f => f.querySelectorAll('code')[1]?.textContent ?? '')"
    )
    placed = ("runs", "appliances", "openings", "counter", "compartments", "tile_band")
    assert [key for key in without if key.startswith(placed)] == []


def test_cost_and_weight_are_those_of_the_takeoff(book, demo):
    reckoned = json.loads((demo.folder / "takeoff/takeoff.json").read_text())
    heavy = [row["amount"] for row in reckoned["quantities"]["rows"] if row["item"] == "dead weight"]
    assert len(heavy) == 2, "one row a run"
    shown = float(re.search(r"[0-9.]+", book.page.inner_text("#figure-weight b"))[0])
    assert abs(shown - sum(heavy)) < 0.11, "each is rounded to a tenth"
    total = next(row["amount"] for row in reckoned["totals"]["rows"] if row["what"] == "total")
    assert book.page.inner_text("#figure-cost b").split()[0] == f"{total:.2f}"


def test_every_page_of_the_template_is_there(book, demo):
    pages = sorted((demo.folder / "template/pages").glob("*.svg"))
    shown = book.page.locator("#template details.sheet").count()
    assert len(pages) > 20 and shown == len(pages) + 1, "and the whole counter on one sheet"
    for group in book.page.locator("#template details.set").all():
        names = [name.strip() for name in group.locator(".sheet > summary").all_text_contents()]
        assert len(set(names)) == len(names), f"pages that nobody can tell apart: {names}"


def test_the_picture_shows_an_island(book):
    pixels = book.picture()
    paper = pixels[2, 2]
    share = float((abs(pixels - paper).max(axis=2) > 12).mean())
    assert 0.1 < share < 0.9
    assert len({tuple(p) for p in pixels[::7, ::7].reshape(-1, 3)}) > 20


def test_layers_taking_apart_and_the_cut_plane_change_the_picture(book):
    whole = book.picture()
    book.page.uncheck("[data-layer=coats]")
    without = book.picture()
    assert differ(whole, without) > 0.01
    book.page.check("[data-layer=coats]")
    assert differ(whole, book.picture()) < 0.001
    book.slide("apart", 60)
    apart = book.picture()
    assert differ(whole, apart) > 0.05
    book.slide("apart", 0)
    assert differ(whole, book.picture()) < 0.02
    book.slide("cut-share", 45)
    assert differ(whole, book.picture()) > 0.05
    book.slide("cut-share", 0)


def test_a_tap_names_the_part(book, demo):
    box = book.page.locator("#picture").bounding_box()
    marks = {p["mark"] for p in json.loads((demo.folder / "models/parts.json").read_text())["parts"]}
    named = set()
    for across in (0.3, 0.5, 0.7):
        for down in (0.4, 0.5, 0.6):
            book.page.mouse.click(box["x"] + across * box["width"], box["y"] + down * box["height"])
            if book.page.locator("#chosen strong").count():
                named.add(book.page.inner_text("#chosen strong"))
    assert named and named <= marks
    book.page.mouse.click(box["x"] + 3, box["y"] + 3)
    assert "Tap a part" in book.page.inner_text("#chosen")


def test_a_part_is_found_by_its_mark_and_on_the_cut_list(book):
    book.page.evaluate("document.querySelector('.parts').open = true")
    book.page.fill("#part-find", "C-S01")
    book.page.click("#part-list button")
    assert book.page.inner_text("#chosen strong") == "C-S01"
    book.page.click("#chosen button")
    row = book.page.inner_text("tr.found")
    assert "C-S01" in row and "stud" in row
    assert book.page.locator("tr.found").is_visible()


def test_ticks_are_remembered(browser, book, demo):
    own = Page(browser)
    own.open(book.url)
    boxes = own.page.locator("input[data-tick]")
    if boxes.count() == 0:
        pytest.fail("no checklist")
    first = boxes.first
    first.check()
    own.page.reload()
    own.page.wait_for_function("document.documentElement.dataset.ready")
    assert own.page.locator("input[data-tick]").first.is_checked()
    own.context.close()


def test_the_keyboard_alone_suffices(browser, book):
    own = Page(browser)
    own.open(book.url)
    page = own.page
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    page.focus("#picture")
    before = own.picture()
    page.keyboard.press("ArrowRight")
    turned = own.picture()
    assert differ(before, turned) > 0.02
    page.keyboard.press("+")
    assert differ(turned, own.picture()) > 0.02
    page.keyboard.press("Home")
    assert differ(before, own.picture()) < 0.001
    page.focus("#apart")
    page.keyboard.press("End")
    assert page.inner_text("#apart-says") == "apart"
    page.focus("#drawings details summary")
    page.keyboard.press("Enter")
    page.wait_for_selector("#drawings figure img")
    own.context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [DESK, PHONE])
def test_nothing_serious_stands_in_anybody_s_way(browser, book, scheme, size):
    own = Page(browser, size, color_scheme=scheme, bypass_csp=True)
    own.open(book.url)
    own.page.evaluate("document.querySelectorAll('details:not(.sheet)').forEach(d => d.open = true)")
    assert own.faults() == []
    across = own.page.evaluate("document.documentElement.scrollWidth")
    assert across <= size[0], f"the page is {across} wide on a screen of {size[0]}"
    own.context.close()


def test_without_webgl_the_drawn_views_stand_in(demo):
    with chromium("--disable-3d-apis") as bare:
        own = Page(bare)
        assert own.open((demo.folder / "index.html").as_uri()) == "drawn"
        own.page.wait_for_selector("#drawn img")
        sizes = own.page.eval_on_selector_all("#drawn img", "all => all.map(i => i.naturalWidth)")
        assert sizes and min(sizes) > 100
        assert own.page.locator("#picture").is_hidden()


def test_it_prints(browser, book, tmp_path):
    own = Page(browser)
    own.open(book.url)
    path = tmp_path / "book.pdf"
    path.write_bytes(own.page.pdf(format="A4", print_background=False))
    text = "\n".join(p.extract_text() for p in PdfReader(path).pages)
    for wanted in ("Findings", "Cut lists", "To buy"):
        assert wanted in text
    assert "Take apart" not in text and "Show in the picture" not in text
    own.context.close()


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_example_opens_without_a_word(browser, name, out, program):
    from conftest import built

    own = Page(browser)
    assert own.open((built(name, program, out).folder / "index.html").as_uri()) == "picture"
    assert own.said == []
    own.context.close()
