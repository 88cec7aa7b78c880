"""The homeowner page on a slow phone: what goes over the wire, and the first thing painted.

The first paint is put against a page of one line on the same throttled line and processor,
in the same run: what the line itself costs nobody can save.
"""

from __future__ import annotations

import functools
import http.server
import statistics
import tempfile
import threading
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import BrowserContext

from downflow.demo import demo_job
from downflow.homeowner import link
from make.bench import Bench, Row

MOST_KILOBYTES = 60.0
MOST_TIMES = 4.0
# A phone of the lower middle on a poor mobile line.
LINE = {"offline": False, "latency": 150, "downloadThroughput": 1_600_000 / 8,
        "uploadThroughput": 750_000 / 8}
SLOWER = 4
PAINTED = """() => new Promise((resolve) => {
    const look = () => {
        const found = performance.getEntriesByName('first-contentful-paint')[0];
        if (found) resolve(found.startTime); else setTimeout(look, 20);
    };
    look();
})"""
ONE_LINE = "<!doctype html><html lang=en><title>x</title><p>One line</p></html>"


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Nothing."""


def _opened(context: BrowserContext, address: str) -> tuple[float, float]:
    """First paint in milliseconds, and bytes received, on the throttled line."""
    page = context.new_page()
    tools = context.new_cdp_session(page)
    tools.send("Network.enable")
    tools.send("Network.setCacheDisabled", {"cacheDisabled": True})
    tools.send("Network.emulateNetworkConditions", LINE)
    tools.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    received: list[float] = []
    tools.on("Network.loadingFinished", lambda event: received.append(event["encodedDataLength"]))
    page.goto(address, wait_until="networkidle")
    painted = page.evaluate(PAINTED)
    page.close()
    return float(painted), sum(received)


def measure(bench: Bench) -> Iterator[Row]:
    """Bytes and first paint of the demo's homeowner page."""
    with tempfile.TemporaryDirectory() as folder:
        Path(folder, "index.html").write_text(ONE_LINE)
        bare = http.server.ThreadingHTTPServer(
            ("127.0.0.1", 0), functools.partial(_Quiet, directory=folder))
        threading.Thread(target=bare.serve_forever, daemon=True).start()
        ours: list[float] = []
        line: list[float] = []
        size = 0.0
        try:
            for _ in range(bench.runs):
                with bench.fresh_browser() as context:
                    painted, size = _opened(context, link(demo_job(), bench.server.address))
                    ours.append(painted)
                with bench.fresh_browser() as context:
                    line.append(_opened(context, f"http://127.0.0.1:{bare.server_port}/")[0])
        finally:
            bare.shutdown()
    yield Row("homeowner page, over the wire", size / 1000, "kB", MOST_KILOBYTES)
    yield Row("its first paint over that of one line",
              statistics.median(ours) / statistics.median(line), "times", MOST_TIMES)
    yield Row("its first paint on the slow phone", statistics.median(ours), "ms")
