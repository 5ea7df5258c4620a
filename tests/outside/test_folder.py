"""The folder as a whole: its manifest, and the same bytes from a second build."""

import hashlib
import json

from conftest import TOLERANCE, run


def tree(folder):
    return {str(p.relative_to(folder)): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def test_the_manifest_lists_every_file_with_its_hash(example):
    manifest = json.loads((example.folder / "manifest.json").read_text())
    files = tree(example.folder)
    del files["manifest.json"]
    assert sorted(f["file"] for f in manifest["files"]) == sorted(files)
    for entry in manifest["files"]:
        data = files[entry["file"]]
        assert entry["bytes"] == len(data)
        assert entry["sha256"] == hashlib.sha256(data).hexdigest()
    assert manifest["version"]


def test_a_second_build_gives_the_same_bytes(example, program, out):
    again = out / "second"
    run(program, "build", f"params/{example.name}.yaml", "--out", again, "--tolerance", f"{TOLERANCE} mm")
    folder = again / example.name
    first, second = tree(example.folder), tree(folder if folder.is_dir() else again)
    assert list(first) == list(second)
    assert [name for name in first if first[name] != second[name]] == []


def test_no_output_tells_where_it_was_made(example, out):
    for name, data in tree(example.folder).items():
        assert str(out).encode() not in data, name
