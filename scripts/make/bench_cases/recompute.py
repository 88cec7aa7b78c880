"""Changing an input on each calculator's page: to the new number, and to its range.

The same questions that the page put to its worker are then put to this machine's Python,
so that the two are compared on equal work. A browser runs new code slowly at first and
compiles what is used often; the median is taken after that, the first change is told too.
"""

from __future__ import annotations

import json
import statistics
import time
from collections.abc import Iterator

from playwright.sync_api import Page

from downflow.bridge import handle
from downflow.calculators import all_calculators
from downflow.demo import demo_job
from downflow.facts.job import write_job
from make.bench import Bench, Row
from make.common import StepFailed

WARMING = 40
CHANGES = 30
MOST_MS = 30.0
MOST_TIMES = 3.0
MOST_RANGE_MS = 1000.0
INIT = """
globalThis.asked = [];
const plain = Worker.prototype.postMessage;
Worker.prototype.postMessage = function (message, ...rest) {
    if (message?.text) {
        const began = performance.now();
        const mine = {text: message.text, milliseconds: 0};
        globalThis.asked.push(mine);
        this.addEventListener('message', ({data}) => {
            if (data.n === message.n) mine.milliseconds = performance.now() - began;
        });
    }
    return plain.call(this, message, ...rest);
};
"""
CHANGE = """async ([warming, changes]) => {
    const calculator = document.querySelector('df-calculator');
    for (let n = 0; n < 300 && calculator.dataset.whose !== 'job'; n++) {
        await new Promise((resolve) => setTimeout(resolve, 50));
    }
    const next = (name) => new Promise((resolve) => calculator.addEventListener(name,
        (event) => resolve(event.detail.milliseconds), {once: true}));
    const fields = [...calculator.querySelectorAll('form input[inputmode=decimal]')].filter(
        (input) => !input.dataset.column && Number(input.value.replaceAll(',', '')));
    // Every value is a new one, far enough from the last to show, near enough to be allowed.
    const type = async (n) => {
        const answered = next('downflow:answer');
        field.value = String(Number((first * (1 + (n % 5 + 1) / 50 + n / 5000)).toFixed(4)));
        field.dispatchEvent(new Event('input', {bubbles: true}));
        return Promise.race([answered, new Promise((resolve) => setTimeout(resolve, 3000, -1))]);
    };
    // Some fields take no other value than they have: the first that does is the one.
    let field, first, first_change = -1;
    while (first_change < 0 && (field = fields.shift())) {
        const before = field.value;
        first = Number(before.replaceAll(',', ''));
        field.focus();
        first_change = await type(0);
        if (first_change >= 0) break;
        field.value = before;
        field.dispatchEvent(new Event('input', {bubbles: true}));
        await new Promise((resolve) => setTimeout(resolve, 300));
    }
    if (!field) return null;
    const answers = [];
    for (let n = 1; n <= warming + changes; n++) {
        if (n === warming + 1) globalThis.asked.length = 0;
        const took = await type(n);
        if (took < 0) return null;
        if (n > warming) answers.push(took);
    }
    const asked = globalThis.asked.slice();
    const ranged = next('downflow:range');
    await type(warming + changes + 1);
    const range = await Promise.race([ranged, new Promise((r) => setTimeout(r, 8000, -1))]);
    return {answers, asked, range, first_change};
}"""


OPEN = """async (text) => {
    const { jobs } = await import(new URL('assets/store.js', location.href).href);
    return (await jobs.add(text)).ok;
}"""


def _here(text: str) -> float:
    began = time.perf_counter()
    handle(text)
    return (time.perf_counter() - began) * 1000.0


def _one(page: Page, address: str) -> tuple[float, float, float, float] | None:
    answer = page.goto(address)
    if not answer or not answer.ok:
        return None
    page.evaluate("() => customElements.whenDefined('df-calculator').then(() => null)")
    found = page.evaluate(CHANGE, [WARMING, CHANGES])
    if found is None:
        return None
    changes = [a for a in found["asked"] if json.loads(a["text"])["op"] == "change"]
    here = [_here(a["text"]) for a in changes]
    there = [a["milliseconds"] for a in changes]
    times = statistics.median(there) / max(statistics.median(here), 1e-6)
    return statistics.median(found["answers"]), times, found["range"], found["first_change"]


def measure(bench: Bench) -> Iterator[Row]:
    """For each calculator the median of 30 changes; the worst is held to the limits."""
    medians: dict[str, tuple[float, float, float, float]] = {}
    with bench.fresh_browser(INIT) as context:
        page = context.new_page()
        page.goto(bench.server.address)
        if not page.evaluate(OPEN, write_job(demo_job())):
            raise StepFailed("the worked example could not be opened as a job")
        for id_ in sorted(all_calculators()):
            found = _one(page, f"{bench.server.address}calculators/{id_}/")
            if found is None:
                yield Row(f"{id_}: no field gave an answer", float("nan"), "")
                continue
            medians[id_] = found
            yield Row(f"{id_}: first change", found[3], "ms")
            yield Row(f"{id_}: to the new number", found[0], "ms")
            yield Row(f"{id_}: against this machine's Python", found[1], "times")
            yield Row(f"{id_}: to the range", found[2], "ms")
    if medians:
        yield Row("worst to the new number", max(m[0] for m in medians.values()), "ms", MOST_MS)
        yield Row("worst against this machine's Python", max(m[1] for m in medians.values()),
                  "times", MOST_TIMES)
        yield Row("worst to the range", max(m[2] for m in medians.values()), "ms", MOST_RANGE_MS)
