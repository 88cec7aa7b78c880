"""The runtime that ships, under Node, as a partner that answers line by line."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from make.common import SITE, node

PARTNER = Path(__file__).with_name("ask.mjs")


class Shipped:
    """Python as a reader's browser has it."""

    def __init__(self, folder: Path) -> None:
        self._process = subprocess.Popen(
            [node(), str(PARTNER), str(folder)], text=True, encoding="utf-8",
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE)

    def send(self, text: str) -> None:
        """Put one question; the answer is read later, so that both Pythons work at once."""
        assert self._process.stdin
        self._process.stdin.write(text + "\n")
        self._process.stdin.flush()

    def receive(self) -> Any:
        """The answer to the oldest question put."""
        assert self._process.stdout
        assert self._process.stderr
        answer = self._process.stdout.readline()
        if not answer:
            raise AssertionError(f"the runtime broke down: {self._process.stderr.read()[-2000:]}")
        return json.loads(answer)

    def ask(self, request: dict[str, Any]) -> Any:
        """What the bridge answers, inside the runtime."""
        self.send(json.dumps(request))
        return self.receive()

    def run(self, expression: str) -> Any:
        """The value of a Python expression, inside the runtime."""
        self.send("#" + expression)
        return self.receive()

    def close(self) -> None:
        """End the partner."""
        self._process.kill()
        self._process.wait()


@pytest.fixture(scope="session")
def runtime_folder() -> Path:
    folders = list((SITE / "runtime").iterdir())
    assert len(folders) == 1, "one runtime in the site; build it first: scripts/build"
    return folders[0]


@pytest.fixture(scope="session")
def shipped(runtime_folder: Path) -> Iterator[Shipped]:
    partner = Shipped(runtime_folder)
    yield partner
    partner.close()
