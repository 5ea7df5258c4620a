"""The checks as Python's json reads them, and figures of theirs worked again from the parameter file alone."""

import json
import re

from conftest import ROOT, run
from island import mm

VERDICTS = {"pass", "caution", "fail", "not checked"}


def test_findings_are_whole_and_the_text_counts_the_same(example):
    folder, name = example.folder, example.name
    data = json.loads((folder / "checks/findings.json").read_text())
    found = data["findings"]
    documented = set(re.findall(r"^### (\S+)$", (ROOT / "docs/checks.md").read_text(), re.M))
    codes = {f["code"] for f in found}
    assert documented <= codes, documented - codes
    assert {f["verdict"] for f in found} <= VERDICTS
    lines = (ROOT / "params" / f"{name}.yaml").read_text().splitlines()
    for f in found:
        assert f["found"] and "nan" not in f["found"].lower() and not f["found"].endswith(".")
        assert f["line"] == 0 or f["source_line"] == lines[f["line"] - 1]
        # A limit always says where it comes from, and what is not checked which key is missing.
        assert not f["limit"] or f["source"], f
        assert f["verdict"] != "not checked" or (f["key"] and f["key"] in f["hint"]), f
    text = (folder / "checks/findings.txt").read_text()
    last = text.strip().splitlines()[-1]
    for verdict in VERDICTS:
        count = sum(f["verdict"] == verdict for f in found)
        shown = re.search(rf"(\d+) {verdict}\b", last)
        assert (int(shown[1]) if shown else 0) == count, verdict


def test_figures_of_the_checks_are_those_of_the_file(example):
    found = json.loads((example.folder / "checks/findings.json").read_text())["findings"]
    said = {(f["code"], f["subject"]): f["found"] for f in found}
    imperial = example.params["project"].get("units", "imperial") == "imperial"
    thickness = mm(example.params.get("counter", {}).get("thickness", "2 in"))
    # 150 pcf, 2,402.8 kg/m³: a slab of 2 in weighs 25 psf.
    weight = f"{150 * thickness / 304.8:g} psf" if imperial else f"{2.40277 * 9.80665 * thickness / 1000:.2f} kPa"
    for wanted in example.params["runs"]:
        assert weight in said["slab-weight", wanted["name"]]
    if "gas" not in example.params:
        return
    # The gas of each pipe: the loads of what hangs on it, added up by hand.
    loads = {a["name"]: int(a["heat_input"].split()[0].replace(",", "")) for a in example.params["appliances"] if "heat_input" in a}
    pipes = example.params["gas"]["pipes"]

    def load(pipe):
        below = sum(load(p) for p in pipes if p.get("from") == pipe["name"])
        return below + loads.get(pipe.get("serves"), 0)

    for pipe in pipes:
        assert f"{load(pipe):,} Btu/h" in said["gas-pipe-size", pipe["name"]]


def test_a_failing_check_ends_with_one_and_a_remedy_that_cures_it(program, tmp_path):
    text = (ROOT / "tests/cases/sound.yaml").read_text()
    narrow = text.replace("flange: 3/4 in\n    front: {closed", "flange: 1/4 in\n    front: {closed", 1)
    file = tmp_path / "narrow.yaml"
    file.write_text(narrow)
    data = json.loads(run(program, "check", file, "--format", "json", "--fix-hints", ok=(1,)))
    failing = [f for f in data["findings"] if f["verdict"] == "fail"]
    assert failing and data["verdict"] == "fail"
    remedy = failing[0]["remedy"]
    wanted = {"key": "appliances[2].flange", "now": "1/4 in", "write": "3/8 in", "then": "pass"}
    assert remedy == wanted
    file.write_text(narrow.replace("flange: 1/4 in\n    front: {closed", f"flange: {remedy['write']}\n    front: {{closed", 1))
    run(program, "check", file)
