"""What the outside readers share: the program, and every example built once."""

import json
import os
import pathlib
import subprocess

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[2]


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
