"""The air network: against a general library, and against its own number of branches.

The library is run here where it is installed (`pip install pandapipes==0.16.0`); otherwise the
times that it took when the reference cases were made stand in, and the row says so.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from make.bench import Bench, Row

sys.path.insert(0, str(Path(__file__).resolve().parents[3] / "tests"))

SIZES = (10, 20, 40, 100, 200, 500, 1000, 2000)
LIBRARY_SHARE = 0.01
FROM_200_TO_2000 = 20.0


def measure(bench: Bench) -> Iterator[Row]:
    """A home from plain data to its flows; then the time for each branch as homes grow."""
    import bench_network

    found = bench_network.against_library()
    where = "run here" if found["library_run_here"] else "as timed when the cases were made"
    yield Row(f"network of {found['branches']} branches, own time over the library's ({where})",
              1.0 / found["ratio"], "", LIBRARY_SHARE)
    times = {size: bench_network.solve_ms(bench_network.home(size)) for size in SIZES}
    for size in SIZES:
        yield Row(f"network of {size} branches, solve over that of 40", times[size] / times[40], "")
    yield Row("network, solve of 2,000 branches over 200", times[2000] / times[200], "",
              FROM_200_TO_2000)
