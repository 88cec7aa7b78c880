"""What the tests of calculators and jobs in a browser share."""

from __future__ import annotations

import json
import time
from collections.abc import Callable
from typing import Any

from playwright.sync_api import Page
from server import Server

MATCH = "calculators/heat-pump-match/"


def until(page: Page, script: str, seconds: float = 60) -> Any:
    """Waits until a script gives something true: the site's policy allows no other way."""
    end = time.monotonic() + seconds
    while True:
        found = page.evaluate(script)
        if found:
            return found
        assert time.monotonic() < end, f"never: {script}"
        time.sleep(0.05)


def open_page(page: Page, server: Server, path: str) -> None:
    """Opens a page and waits until its calculator is ready and, with a job, shows its numbers."""
    page.goto(server.address + path)
    page.evaluate("""() => {
        window.answers = []; window.ranges = [];
        document.addEventListener('downflow:answer', (e) => window.answers.push(e.detail));
        document.addEventListener('downflow:range', (e) => window.ranges.push(e.detail));
    }""")
    until(page, """async () => {
        const r = await import(document.querySelector('script[src*="offline.js"]')
            .src.replace('offline.js', 'runtime.js'));
        r.start();
        return r.state.value === 'ready';
    }""", 60)


def change(page: Page, name: str, typed: str) -> None:
    """Types into a field and waits for the new number and its range."""
    before = page.evaluate("[window.answers.length, window.ranges.length]")
    page.locator(f'[name="{name}"]').fill(typed)
    until(page, f"window.answers.length > {before[0]} && window.ranges.length > {before[1]}")


def stored(page: Page) -> dict[str, Any]:
    """The open job's file, as this device keeps it."""
    text = until(page, """async () => {
        const open = JSON.parse(localStorage.getItem('downflow.open') ?? 'null');
        if (!open) return null;
        const base = await new Promise((done) => {
            const asked = indexedDB.open('downflow', 1);
            asked.onsuccess = () => done(asked.result);
        });
        const job = await new Promise((done) => {
            const asked = base.transaction('jobs').objectStore('jobs').get(open.id);
            asked.onsuccess = () => done(asked.result);
        });
        base.close();
        return job?.text;
    }""")
    found = json.loads(text)
    assert isinstance(found, dict)
    return found


def eventually(check: Callable[[], bool], seconds: float = 60) -> None:
    """Waits until a check holds."""
    end = time.monotonic() + seconds
    while not check():
        assert time.monotonic() < end, "never"
        time.sleep(0.05)
