"""What the outside readers share: the program, and every example built once."""

import json
import os
import pathlib
import subprocess
import tempfile

import numpy as np
import pytest
import trimesh
import yaml

ROOT = pathlib.Path(__file__).resolve().parents[2]
EXAMPLES = sorted(p.stem for p in (ROOT / "params").glob("*.yaml"))

# Curves are written this close to the exact ones, millimetres, for everything that the readers measure.
TOLERANCE = 0.02


def run(*command, ok=(0,)):
    """Runs a command and gives what it printed; anything but an expected exit code stops the test with its words."""
    done = subprocess.run([str(c) for c in command], capture_output=True, text=True, cwd=ROOT)
    assert done.returncode in ok, f"{command}: exit {done.returncode}\n{done.stdout}\n{done.stderr}"
    return done.stdout


@pytest.fixture(scope="session")
def program():
    """The release program; `tests/run` builds it."""
    path = pathlib.Path(os.environ.get("OUTSIDE_PROGRAM", ROOT / "target/release/islandwright"))
    assert path.is_file(), f"{path} is missing: run tests/run, or cargo build --release"
    return path


@pytest.fixture(scope="session")
def out():
    """The folder that the examples are built into."""
    return pathlib.Path(os.environ.get("OUTSIDE_OUT") or tempfile.mkdtemp(prefix="islandwright-outside."))


class Example:
    """One example: its parameter file, and the folder that the program made of it."""

    def __init__(self, name, folder):
        self.name = name
        self.folder = folder
        self.params = yaml.safe_load((ROOT / "params" / f"{name}.yaml").read_text())
        self._parts = None

    def files(self, *suffixes):
        found = sorted(p for p in self.folder.rglob("*") if p.suffix in suffixes)
        assert found, f"{self.name}: no {suffixes} in {self.folder}"
        return found

    @property
    def parts(self):
        """The parts as the program lists them, each with `mesh`, its triangles cut out of the assembly's STL."""
        if self._parts is None:
            listed = json.loads((self.folder / "models/parts.json").read_text())["parts"]
            triangles = stl_triangles(self.folder / "models/assembly.stl")
            for part in listed:
                first, count = part["in_assembly"]["first"], part["in_assembly"]["count"]
                part["mesh"] = welded(triangles[first : first + count])
            assert sum(p["in_assembly"]["count"] for p in listed) == len(triangles)
            self._parts = listed
        return self._parts

    def of_kind(self, *kinds):
        return [p for p in self.parts if p["kind"] in kinds]


def stl_triangles(path):
    """The triangles of a binary STL, by the layout of the format: 80 bytes, a count, 50 bytes each."""
    data = path.read_bytes()
    count = int.from_bytes(data[80:84], "little")
    assert len(data) == 84 + 50 * count, f"{path}: {len(data)} bytes for {count} triangles"
    record = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("extra", "<u2")])
    return np.frombuffer(data[84:], dtype=record)["corners"].astype(float)


def welded(triangles):
    """A mesh of triangles whose equal corners are one vertex; nothing is mended."""
    vertices, index = np.unique(triangles.reshape(-1, 3), axis=0, return_inverse=True)
    return trimesh.Trimesh(vertices, index.reshape(-1, 3), process=False, validate=False)


_built = {}


@pytest.fixture(params=EXAMPLES)
def example(request, program, out):
    """Every example in `params`, built once."""
    return built(request.param, program, out)


def built(name, program, out):
    """An example by its name, built when it is first asked for."""
    if os.environ.get('KEEP_BUILT'):
        return _built.setdefault(name, Example(name, out / 'first' / name))
    if name not in _built:
        target = out / "first"
        run(program, "build", f"params/{name}.yaml", "--out", target, "--tolerance", f"{TOLERANCE} mm")
        folder = target / name
        _built[name] = Example(name, folder if folder.is_dir() else target)
    return _built[name]


def cutting_answers(problems):
    """What the program's solver answers to cutting problems, through the example of that name."""
    lines = "".join(json.dumps(p) + "\n" for p in problems)
    command = ["cargo", "run", "--quiet", "--locked", "--example", "cutting"]
    done = subprocess.run(command, input=lines, capture_output=True, text=True, cwd=ROOT)
    assert done.returncode == 0, done.stderr
    return [json.loads(line) for line in done.stdout.splitlines()]
