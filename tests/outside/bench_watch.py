"""From a save to the new picture, by the wall clock: `python tests/outside/bench_watch.py PROGRAM [SAVES]`.

A browser stands open at the demo. The file is saved with another length of its first run; the page's clock is asked when the
first frame with the new island was drawn. The limit is a median of 150 ms.
"""

import pathlib
import statistics
import sys
import tempfile
import time

from browser import Page, chromium
from test_watch import Watch

# The time of the first frame that shows an island other than the last one.
HOOK = """
() => {
  window.frames = [];
  new MutationObserver(() => requestAnimationFrame(() => requestAnimationFrame(() =>
    window.frames.push([document.documentElement.dataset.shown, Date.now()]))))
    .observe(document.documentElement, { attributes: true, attributeFilter: ["data-shown"] });
}
"""


def main(program, saves=30):
    folder = pathlib.Path(tempfile.mkdtemp())
    watch = Watch(program, folder)
    text = watch.file.read_bytes()
    took = []
    with chromium() as browser:
        own = Page(browser)
        own.open(watch.url)
        own.page.evaluate(HOOK)
        time.sleep(1)
        for i in range(saves):
            other = text.replace(b"length: 10 ft\n", f"length: {3000 + i * 10} mm\n".encode())
            before = own.page.evaluate("window.frames.length")
            began = time.time() * 1000
            watch.save(other)
            own.page.wait_for_function("(n) => window.frames.length > n", arg=before, polling=5)
            took.append(own.page.evaluate("window.frames.at(-1)[1]") - began)
            time.sleep(1.2)
    watch.process.terminate()
    took.sort()
    print(f"{saves} saves: median {statistics.median(took):.0f} ms, from {took[0]:.0f} to {took[-1]:.0f} ms")


if __name__ == "__main__":
    main(sys.argv[1], *(int(a) for a in sys.argv[2:]))
