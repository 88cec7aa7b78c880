"""A year of 8,760 hours in the browser: a weather file read, counted, and worked hour by hour."""

from __future__ import annotations

import gzip
import statistics
from collections.abc import Iterator

from make.bench import Bench, Row
from make.common import ROOT

FILE = ROOT / "tests" / "data" / "727720_helena_mt_tmy3.epw.gz"
PAGE = "calculators/year-of-this-home/"
TIMES = 15
MOST_MS = 300.0
ASK = """async ([text, times]) => {
    const { ask } = await import(new URL('../../assets/runtime.js', location.href).href);
    const taken = [];
    for (let n = 0; n < times + 1; n++) {
        const began = performance.now();
        const reply = await ask('weather', {text, job: null, units: 'ip', at: ''});
        if (!reply.ok || !reply.kwh) throw new Error(JSON.stringify(reply.errors));
        taken.push(performance.now() - began);
    }
    return taken.slice(1);
}"""


def measure(bench: Bench) -> Iterator[Row]:
    """Median of a whole file, from its text to the year's electricity."""
    text = gzip.decompress(FILE.read_bytes()).decode()
    with bench.fresh_browser() as context:
        page = context.new_page()
        page.goto(bench.server.address + PAGE)
        taken = page.evaluate(ASK, [text, TIMES])
    yield Row("8,760 hours: file read and worked", statistics.median(taken), "ms", MOST_MS)
