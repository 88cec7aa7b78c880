"""Tests run against the source tree."""

import os
import sys
from pathlib import Path

SOURCE = str(Path(__file__).parents[1] / "calc" / "src")
sys.path.insert(0, SOURCE)
os.environ["PYTHONPATH"] = os.pathsep.join(
    [SOURCE, *filter(None, [os.environ.get("PYTHONPATH")])])
