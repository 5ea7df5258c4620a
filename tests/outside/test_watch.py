"""The live view: a browser that follows the file, inputs that write into it, and requests that must not pass."""

import http.client
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import time

import pytest

from browser import Page, chromium, differ
from conftest import ROOT

DEMO = ROOT / "params/garden-corner.yaml"


class Watch:
    """The program watching a copy of the demo."""

    def __init__(self, program, folder, *more):
        self.file = folder / "yard.yaml"
        shutil.copy(DEMO, self.file)
        self.process = subprocess.Popen(
            [program, "watch", self.file, "--port", "0", *more], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        for line in self.process.stdout:
            found = re.search(r"http://[^/]*?:(\d+)/", line)
            if found:
                self.port = int(found[1])
                break
        self.url = f"http://127.0.0.1:{self.port}/"
        self.wait(lambda said: said["page_of"] != "")

    def ask(self, method, path, body=None, headers=None, host=None):
        link = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        link.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
        link.putheader("Host", host or f"127.0.0.1:{self.port}")
        for name, value in (headers or {}).items():
            link.putheader(name, value)
        if body is not None:
            link.putheader("Content-Length", str(len(body)))
        link.endheaders(body)
        answer = link.getresponse()
        text = answer.read()
        link.close()
        return answer.status, text

    def island(self):
        return json.loads(self.ask("GET", "/island")[1])

    def wait(self, until, seconds=60):
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            said = self.island()
            if until(said):
                return said
            time.sleep(0.02)
        raise AssertionError(f"nothing came: {({k: v for k, v in said.items() if k != 'island'})}")

    @property
    def token(self):
        return re.search(r'data-token="([0-9a-f]+)"', self.ask("GET", "/")[1].decode())[1]

    def write(self, key, value, seen=None, **headers):
        own = {"Origin": self.url.rstrip("/"), "X-Token": self.token, **headers}
        body = json.dumps({"key": key, "value": value, "seen": seen or self.island()["seen"]})
        return self.ask("POST", "/change", body.encode(), {k: v for k, v in own.items() if v is not None})

    def save(self, text):
        """As editors do: another file renamed over it."""
        part = self.file.with_suffix(".swp")
        part.write_bytes(text)
        os.replace(part, self.file)

    def alive(self):
        return self.process.poll() is None and self.ask("GET", "/")[0] == 200


@pytest.fixture
def watch(program, tmp_path):
    found = Watch(program, tmp_path)
    yield found
    found.process.send_signal(signal.SIGINT)
    assert found.process.wait(10) == 0


def test_a_save_comes_to_the_page_and_what_one_looked_at_stays(watch):
    with chromium() as browser:
        own = Page(browser, bypass_csp=True)
        assert own.open(watch.url) == "picture"
        page = own.page
        page.focus("#picture")
        page.keyboard.press("ArrowRight")
        page.evaluate("window.scrollTo(0, 120)")
        page.evaluate("document.querySelector('#cutting details').open = true")
        before, place = own.picture(), page.evaluate("window.scrollY")
        text, first = watch.file.read_bytes(), watch.island()["seen"]
        watch.save(text.replace(b"length: 10 ft\n", b"length: 11 ft\n"))
        seen = watch.wait(lambda said: said["seen"] != first and said["page_of"] == said["seen"])["seen"]
        page.wait_for_function("(seen) => document.documentElement.dataset.seen === seen", arg=seen)
        assert differ(before, own.picture()) > 0.005
        assert page.evaluate("window.scrollY") == place
        page.wait_for_function("document.querySelector('[data-key=\"runs[1].length\"]').value === '11 ft'")
        assert page.evaluate("document.querySelector('#cutting details').open")
        watch.save(text)
        back = watch.wait(lambda said: said["seen"] != seen and said["page_of"] == said["seen"])["seen"]
        page.wait_for_function("(seen) => document.documentElement.dataset.seen === seen", arg=back)
        assert differ(before, own.picture()) < 0.001, "the eye moved"
        assert own.said == []


def test_cost_weight_and_findings_follow_the_number(watch):
    """A longer run costs and weighs more, by the page alone: keys in an input, no look at the file."""
    with chromium() as browser:
        own = Page(browser, bypass_csp=True)
        own.open(watch.url)
        page = own.page
        page.evaluate("document.querySelectorAll('#numbers details').forEach(d => (d.open = true))")

        def figure(name):
            return float(re.search(r"[0-9.]+", page.inner_text(f"#figure-{name} b"))[0])

        before = {name: figure(name) for name in ("cost", "weight")}
        length = page.locator('[data-key="runs[1].length"]')
        length.focus()
        page.keyboard.press("Home")
        for _ in range(3):
            page.keyboard.press("ArrowUp")
        assert length.input_value() == "13 ft"
        page.wait_for_function("(text) => document.querySelector('#figure-weight b').textContent !== text", arg=f"{before['weight']:.1f} lb")
        assert b"length: 13 ft\n" in watch.file.read_bytes()
        # Three of seventeen feet more; of the cost the appliances, some 2,200, stay as they are.
        assert figure("weight") > before["weight"] * 1.1 and figure("cost") > before["cost"] + 100
        now = {name: figure(name) for name in before}
        # The page that is loaded anew says the same, and counts the findings as its chapter does.
        watch.wait(lambda said: said["page_of"] == said["seen"])
        page.reload()
        page.wait_for_selector("html[data-ready=picture]")
        assert {name: figure(name) for name in before} == now
        assert page.inner_text("#figure-findings a").split() == page.inner_text("#findings .tally").split()
        fails = page.locator(".finding.fail").count()
        assert f"{fails} fail" in page.inner_text("#figure-findings")
        page.click("#undo")
        page.wait_for_function("(text) => document.querySelector('#figure-weight b').textContent === text", arg=f"{before['weight']:.1f} lb")
        assert figure("cost") == before["cost"]
        assert b"length: 10 ft\n" in watch.file.read_bytes()
        assert own.said == []


def test_the_page_needs_nothing_that_its_own_policy_forbids(watch):
    with chromium() as browser:
        own = Page(browser)
        own.page.goto(watch.url)
        own.page.wait_for_selector("html[data-ready=picture]")
        own.page.evaluate("document.querySelector('#drawings details').open = true")
        own.page.wait_for_selector("#drawings figure img")
        assert own.said == []
        assert all(url.startswith((watch.url, "blob:", "data:")) for url in own.asked)


def test_a_broken_save_is_reported_over_the_last_good_island(watch):
    with chromium() as browser:
        own = Page(browser, bypass_csp=True)
        own.open(watch.url)
        before = own.picture()
        text = watch.file.read_bytes()
        watch.save(text.replace(b"depth: 30 in\n  - name: bar", b"dept: 30 in\n  - name: bar"))
        own.page.wait_for_selector("#live pre")
        report = own.page.inner_text("#live pre")
        assert "did you mean 'depth'?" in report and re.search(r"yard\.yaml:\d+:\d+", report)
        assert differ(before, own.picture()) < 0.001
        watch.save(text + b"\n")
        own.page.wait_for_selector("#live pre", state="detached")
        assert watch.alive()


def test_an_input_writes_its_value_and_nothing_else(watch):
    with chromium() as browser:
        own = Page(browser, bypass_csp=True)
        own.open(watch.url)
        before = watch.file.read_bytes()
        own.page.evaluate("document.querySelectorAll('#numbers details').forEach(d => d.open = true)")
        box = own.page.locator('[data-key="runs[1].length"]')
        box.fill("3.2 m")
        box.press("Enter")
        own.page.wait_for_function("document.getElementById('numbers-say').textContent === 'Written.'")
        assert watch.file.read_bytes() == before.replace(b"length: 10 ft\n", b"length: 3.2 m\n", 1)
        own.page.click("#undo")
        watch.wait(lambda _: watch.file.read_bytes() == before)
        assert own.said == []


def test_a_file_that_was_changed_meanwhile_is_not_overwritten(watch):
    seen = watch.island()["seen"]
    edited = watch.file.read_bytes() + b"# mine\n"
    watch.save(edited)
    status, why = watch.write("runs[1].length", "12 ft", seen=seen)
    assert status == 409 and b"changed meanwhile" in why
    assert watch.file.read_bytes() == edited
    # Nor is an edit taken back that came after the write.
    watch.wait(lambda said: said["seen"] != seen)
    assert watch.write("runs[1].length", "12 ft")[0] == 200
    watch.save(watch.file.read_bytes() + b"# and this\n")
    kept = watch.file.read_bytes()
    own = {"Origin": watch.url.rstrip("/"), "X-Token": watch.token}
    assert watch.ask("POST", "/undo", b"", own)[0] == 409
    assert watch.file.read_bytes() == kept


def test_it_survives_what_editors_do(watch):
    text = watch.file.read_bytes()
    watch.file.unlink()
    watch.wait(lambda said: "cannot be read" in said["report"])
    assert watch.alive()
    watch.file.write_bytes(text)
    watch.wait(lambda said: said["report"] == "")
    for i in range(50):
        watch.save(text + f"# {i}\n".encode())
        time.sleep(0.02)
    import hashlib

    last = hashlib.sha256(watch.file.read_bytes()).hexdigest()
    watch.wait(lambda said: said["page_of"] == last)
    watch.file.write_bytes(b"\xff\xfe")
    watch.wait(lambda said: "UTF-8" in said["report"])
    watch.file.write_bytes(b"")
    watch.wait(lambda said: "says nothing" in said["report"])
    assert watch.alive()


def test_strangers_are_refused_and_the_file_stays_whole(watch):
    before = watch.file.read_bytes()
    for host in ("evil.example", f"evil.example:{watch.port}", f"127.0.0.1:{watch.port + 1}", "127.0.0.1"):
        for path in ("/", "/island", "/events"):
            assert watch.ask("GET", path, host=host)[0] == 421, host
    assert watch.ask("GET", "/", headers={"Origin": "http://evil.example"})[0] == 403
    assert watch.write("runs[1].length", "12 ft", Origin="http://evil.example")[0] == 403
    assert watch.write("runs[1].length", "12 ft", Origin=None)[0] == 403
    assert watch.write("runs[1].length", "12 ft", **{"X-Token": None})[0] == 403
    assert watch.write("runs[1].length", "12 ft", **{"X-Token": "0" * 64})[0] == 403
    own = {"Origin": watch.url.rstrip("/"), "X-Token": watch.token}
    for path in ("/../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/yard.yaml", "//etc/passwd", "/change/../yard.yaml"):
        for method in ("GET", "POST", "PUT", "DELETE"):
            status, text = watch.ask(method, path, b"{}", own)
            assert status in (404, 405, 421, 400), f"{method} {path}: {status}"
            assert b"root:" not in text and b"runs:" not in text
    for body in (b"", b"{}", b"[1]", b"\xff", b'{"key":"runs[1].length","value":"1 ft","seen":"x","file":"/etc/passwd"}'):
        assert watch.ask("POST", "/change", body, own)[0] in (400, 409)
    for key, value in (("runs", "1"), ("../x", "1"), ("runs[99].length", "1"), ("runs[1].length", "1 ft\nx: 2"), ("runs[1].length", "9" * 500)):
        assert watch.write(key, value)[0] == 422, key
    assert watch.file.read_bytes() == before
    assert watch.alive()


def test_large_and_slow_and_many_are_bounded(watch):
    before = watch.file.read_bytes()
    own = {"Origin": watch.url.rstrip("/"), "X-Token": watch.token}
    try:
        status, _ = watch.ask("POST", "/change", b"x" * (10 << 20), own)
        assert status == 413
    except (ConnectionError, http.client.HTTPException):
        pass  # it hung up before all of it was sent
    assert watch.alive()
    slow = socket.create_connection(("127.0.0.1", watch.port))
    slow.sendall(b"GET / HTTP/1.1\r\nHost: 127")
    started = time.monotonic()
    slow.settimeout(20)
    assert slow.recv(100) in (b"",) or time.monotonic() - started < 10
    assert time.monotonic() - started < 10
    slow.close()
    lines = []
    for _ in range(200):
        try:
            lines.append(socket.create_connection(("127.0.0.1", watch.port), timeout=2))
        except OSError:
            break
    for line in lines:
        line.close()
    time.sleep(0.3)
    assert watch.alive()
    assert watch.file.read_bytes() == before


def test_another_address_is_warned_of(program, tmp_path):
    own = Watch(program, tmp_path, "--address", "0.0.0.0")
    own.process.send_signal(signal.SIGTERM)
    _, said = own.process.communicate(timeout=10)
    assert "can be reached from other machines" in said
