"""Tests run against the source tree."""

import os
import sys
from pathlib import Path

SOURCE = str(Path(__file__).parents[1] / "calc" / "src")
sys.path.insert(0, SOURCE)
os.environ["PYTHONPATH"] = os.pathsep.join(
    [SOURCE, *filter(None, [os.environ.get("PYTHONPATH")])])

from hypothesis import HealthCheck, settings  # noqa: E402

# A busy machine is no fault of the code: what is drawn is the same everywhere, and no
# example is timed.
settings.register_profile("downflow", deadline=None, derandomize=True,
                          suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
settings.load_profile("downflow")
