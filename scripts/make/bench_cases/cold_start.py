"""The first recomputed answer with nothing cached, against the bare, untouched runtime.

Both are counted from the moment a worker is made. The bare runtime is the package as it
comes, with no calculator in it, started in a module worker on the same server, and is done
when it has evaluated `1 + 1`. Ours is done when a changed input's new answer is painted.
The two take turns, each in a browser with an empty profile.
"""

from __future__ import annotations

import shutil
import statistics
import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import BrowserContext
from server import Server

from make.bench import Bench, Row
from make.common import MODULES

LIMIT = 0.6
PAGE = "calculators/heat-pump-match/"
BARE_FILES = ("pyodide.mjs", "pyodide.asm.js", "pyodide.asm.wasm", "python_stdlib.zip",
              "pyodide-lock.json")
BARE_WORKER = """
import { loadPyodide } from "./pyodide.mjs";
const py = await loadPyodide({ indexURL: new URL("./", self.location.href).href });
self.postMessage(py.runPython("1 + 1"));
"""
BARE = """async () => {
    const began = performance.now();
    const worker = new Worker(new URL('worker.mjs', location.href), {type: 'module'});
    await new Promise((resolve) => { worker.onmessage = resolve; });
    return performance.now() - began;
}"""
INIT = """
globalThis.madeWorker = 0;
const Plain = globalThis.Worker;
globalThis.Worker = class extends Plain {
    constructor(...how) {
        globalThis.madeWorker ||= performance.now();
        super(...how);
    }
};
"""
OURS = """async (typed) => {
    const calculator = document.querySelector('df-calculator');
    const answered = new Promise((resolve) => calculator.addEventListener('downflow:answer',
        () => resolve(performance.now()), {once: true}));
    const field = [...calculator.querySelectorAll('form input[inputmode=decimal]')].find(
        (input) => !input.dataset.column && Number(input.value.replaceAll(',', '')));
    field.focus();
    field.value = String(Number(field.value.replaceAll(',', '')) + 1);
    field.dispatchEvent(new Event('input', {bubbles: true}));
    return (await answered) - globalThis.madeWorker;
}"""


def _bare(context: BrowserContext, server: Server) -> float:
    page = context.new_page()
    page.goto(server.address)
    return float(page.evaluate(BARE))


def _ours(context: BrowserContext, server: Server) -> float:
    page = context.new_page()
    page.goto(server.address + PAGE, wait_until="domcontentloaded")
    page.evaluate("() => customElements.whenDefined('df-calculator').then(() => null)")
    return float(page.evaluate(OURS))


def measure(bench: Bench) -> Iterator[Row]:
    """Medians, and their ratio."""
    bare, ours = [], []
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        for name in BARE_FILES:
            shutil.copy(MODULES / "pyodide" / name, folder / name)
        (folder / "worker.mjs").write_text(BARE_WORKER)
        (folder / "index.html").write_text("<!doctype html><title>bare</title>")
        with Server(folder) as server:
            for _ in range(bench.runs):
                with bench.fresh_browser() as context:
                    bare.append(_bare(context, server))
                with bench.fresh_browser(INIT) as context:
                    ours.append(_ours(context, bench.server))
    yield Row("bare runtime, booted", statistics.median(bare), "ms")
    yield Row("first recomputed answer, cold", statistics.median(ours), "ms")
    yield Row("first answer / bare runtime", statistics.median(ours) / statistics.median(bare),
              "", LIMIT)
