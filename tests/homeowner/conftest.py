"""What the homeowner tests share: the demo's link, and Node to run the page's script in."""

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "scripts"))


def node():
    """The `node` of the set-up, or the system's."""
    from make.common import VENV

    found = shutil.which("node") or shutil.which("node", path=str(VENV / "bin"))
    assert found, "Node is missing: scripts/setup brings it"
    return found


def ask_node(script, data):
    """Runs a script beside this file with JSON on its input, and reads its JSON."""
    done = subprocess.run(
        [node(), str(Path(__file__).parent / script), str(ROOT / "docs" / "h")],
        input=json.dumps(data), capture_output=True, text=True, timeout=300, check=False)
    assert done.returncode == 0, done.stderr[-3000:]
    return json.loads(done.stdout)


@pytest.fixture(scope="session")
def run_page():
    """The page's own script, run in Node."""
    return ask_node


@pytest.fixture(scope="session")
def demo_slots():
    """The demo job's slots."""
    from downflow import homeowner
    from downflow.demo import demo_job

    return homeowner.slots_of(demo_job())
