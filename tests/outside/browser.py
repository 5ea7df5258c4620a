"""Headless Chromium from Debian, driven by Playwright: it draws WebGL by software, so that every machine sees the same."""

import atexit
import base64
import contextlib
import functools
import io
import pathlib
import shutil

import numpy as np
from PIL import Image
from playwright.sync_api import sync_playwright

DESK, PHONE = (1280, 900), (390, 844)
ARGUMENTS = ["--no-sandbox", "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader"]
AXE = pathlib.Path(__file__).parent / "node_modules/axe-core/axe.min.js"


@functools.cache
def driver():
    """One driver for the whole session: a second one cannot run beside it."""
    started = sync_playwright().start()
    atexit.register(started.stop)
    return started


@contextlib.contextmanager
def chromium(*more):
    path = shutil.which("chromium")
    assert path, "Debian's chromium is missing"
    browser = driver().chromium.launch(executable_path=path, args=[*ARGUMENTS, *more])
    try:
        yield browser
    finally:
        browser.close()


class Page:
    """A page with everything that it said on the console and everything that it asked the network for."""

    def __init__(self, browser, size=DESK, **options):
        self.context = browser.new_context(viewport={"width": size[0], "height": size[1]}, **options)
        self.page = self.context.new_page()
        self.said, self.asked = [], []
        self.page.on("console", lambda m: self.said.append(f"{m.type}: {m.text}") if m.type in ("error", "warning") else None)
        self.page.on("pageerror", lambda e: self.said.append(f"error: {e}"))
        self.page.on("request", lambda r: self.asked.append(r.url))

    def open(self, url):
        self.page.goto(url)
        self.page.wait_for_function("document.documentElement.dataset.ready", timeout=60_000)
        return self.page.evaluate("document.documentElement.dataset.ready")

    def picture(self):
        """The canvas as pixels."""
        self.page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
        url = self.page.evaluate("document.getElementById('picture').toDataURL()")
        return np.asarray(Image.open(io.BytesIO(base64.b64decode(url.split(",", 1)[1]))).convert("RGB")).astype(int)

    def slide(self, name, value):
        self.page.evaluate(
            "([id, v]) => { const e = document.getElementById(id); e.value = v; e.dispatchEvent(new Event('input')); }", [name, value]
        )

    def faults(self):
        """What axe-core finds that is serious or worse, by WCAG 2.2 AA."""
        self.page.add_script_tag(content=AXE.read_text())
        tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
        found = self.page.evaluate("(tags) => axe.run(document, {runOnly: tags})", tags)["violations"]
        return [(v["id"], v["impact"], [n["html"][:120] for n in v["nodes"][:3]]) for v in found if v["impact"] in ("serious", "critical")]


def differ(a, b):
    """The share of pixels that differ by more than a hair."""
    return float((np.abs(a - b).max(axis=2) > 12).mean())
