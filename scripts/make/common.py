"""What every step of the build shares: places, progress lines, Node, and content hashes."""

from __future__ import annotations

import contextlib
import fcntl
import hashlib
import os
import shutil
import subprocess
import sys
import threading
import time
from collections.abc import Iterator, Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SCRIPTS = ROOT / "scripts"
BUILD = ROOT / ".build"
VENV = BUILD / "venv"
PYTHON = VENV / "bin" / "python"
NODE_PLACE = BUILD / "node"
MODULES = NODE_PLACE / "node_modules"
CACHE = BUILD / "cache"
SITE = BUILD / "site"

LEAST_NODE = (20, 19)
BEAT_S = 15.0
HASH_LENGTH = 16


class StepFailed(Exception):
    """A step of the build that did not work; the message is for the person at the shell."""


def say(text: str) -> None:
    """Print one progress line at once."""
    print(text, flush=True)


@contextlib.contextmanager
def step(what: str) -> Iterator[None]:
    """Say what begins, say every while that it still runs, and how long it took."""
    say(f"{what} ...")
    start = time.monotonic()
    over = threading.Event()

    def beat() -> None:
        while not over.wait(BEAT_S):
            say(f"  still at it: {what.lower()}, {time.monotonic() - start:.0f} s")

    thread = threading.Thread(target=beat, daemon=True)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join()
    say(f"  done in {time.monotonic() - start:.1f} s")


def run(
    command: Sequence[str | Path],
    cwd: Path = ROOT,
    env: dict[str, str] | None = None,
) -> str:
    """Run a command quietly; on failure stop with everything it printed."""
    done = subprocess.run(
        [str(part) for part in command],
        cwd=cwd,
        env={**os.environ, **(env or {})},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    if done.returncode:
        shown = " ".join(str(part) for part in command)
        raise StepFailed(f"{shown}\nended with status {done.returncode}:\n{done.stdout}")
    return done.stdout


@contextlib.contextmanager
def alone(name: str) -> Iterator[None]:
    """Let one build at a time work in .build."""
    BUILD.mkdir(exist_ok=True)
    with open(BUILD / f"{name}.lock", "w") as lock:
        try:
            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            say(f"Another {name} is running here; waiting for it.")
            fcntl.flock(lock, fcntl.LOCK_EX)
        yield


def _node_version(node: str) -> tuple[int, ...] | None:
    try:
        text = subprocess.run([node, "--version"], capture_output=True, text=True).stdout
        return tuple(int(part) for part in text.strip().lstrip("v").split(".")[:2])
    except (OSError, ValueError):
        return None


def system_node() -> str | None:
    """The Node on the path, when it is new enough and has npm beside it."""
    node = shutil.which("node")
    if node and shutil.which("npm") and (_node_version(node) or (0,)) >= LEAST_NODE:
        return node
    return None


def node() -> str:
    """The Node to use: the machine's own, else the one that set-up brought."""
    found = system_node() or shutil.which("node", path=str(VENV / "bin"))
    if not found:
        raise StepFailed("Node is missing: run scripts/setup first")
    return found


def node_env() -> dict[str, str]:
    """Environment in which `node` and `npm` are found."""
    return {"PATH": f"{Path(node()).parent}{os.pathsep}{os.environ.get('PATH', '')}"}


def digest(data: bytes) -> str:
    """Full SHA-256 of some bytes, in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def digest_of(*parts: bytes | str | Path) -> str:
    """One short hash over texts, bytes and files, in the order given."""
    total = hashlib.sha256()
    for part in parts:
        data = part.read_bytes() if isinstance(part, Path) else part
        data = data.encode() if isinstance(data, str) else data
        total.update(str(len(data)).encode() + b"\0" + data)
    return total.hexdigest()[:HASH_LENGTH]


def main(work: object) -> None:
    """Run a script's work and turn a failed step into a message and a status."""
    assert callable(work)
    try:
        work()
    except StepFailed as failed:
        print(f"\nStopped: {failed}", file=sys.stderr, flush=True)
        sys.exit(1)
    except KeyboardInterrupt:
        sys.exit(130)
