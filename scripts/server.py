"""Serves a built site from this machine, with the site's policy on every response.

    python scripts/server.py [--port N] [--base /path/] [FOLDER]

In a test: `with Server(folder) as server: ... server.address`; `stop()` closes the port, and
`start()` opens the same one again.
"""

from __future__ import annotations

import argparse
import contextlib
import functools
import html
import http.server
import re
import socket
import sys
import threading
from pathlib import Path
from types import TracebackType
from typing import ClassVar

sys.path.insert(0, str(Path(__file__).resolve().parent))

from make.common import SITE
from make.release import policy

PORT = 8000
META = re.compile(rb'http-equiv="Content-Security-Policy" content="([^"]*)"')
HEAD_BYTES = 16_384
TYPES = {
    ".wasm": "application/wasm", ".js": "text/javascript", ".mjs": "text/javascript",
    ".json": "application/json", ".webmanifest": "application/manifest+json",
    ".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
    ".svg": "image/svg+xml", ".woff2": "font/woff2", ".pack": "application/octet-stream",
    ".zip": "application/zip", ".csv": "text/csv; charset=utf-8",
}


class Handler(http.server.SimpleHTTPRequestHandler):
    """Static files under a base path, no listing of folders."""

    protocol_version = "HTTP/1.1"
    extensions_map: ClassVar[dict[str, str]] = {
        **http.server.SimpleHTTPRequestHandler.extensions_map, **TYPES}

    def __init__(self, *args: object, folder: Path, base: str, quiet: bool,
                 asked: list[str]) -> None:
        self.base, self.quiet, self.asked = base, quiet, asked
        self.folder = folder
        super().__init__(*args, directory=str(folder))  # type: ignore[arg-type]

    def translate_path(self, path: str) -> str:
        """The file for an address, under the base path."""
        if not path.startswith(self.base):
            return str(self.folder / "no such file")
        return super().translate_path("/" + path[len(self.base):])

    def list_directory(self, path: object) -> None:  # type: ignore[override]
        """A folder without a page of its own is no page."""
        self.send_error(404)

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """The site's own page for an address with nothing at it."""
        page = self.folder / "404.html"
        if code != 404 or not page.exists():
            super().send_error(code, message, explain)
            return
        body = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers(page)
        if self.command != "HEAD":
            self.wfile.write(body)

    def end_headers(self, page: Path | None = None) -> None:
        """The policy and its companions, on every response."""
        file = page or Path(self.translate_path(self.path))
        if file.is_dir():
            file = file / "index.html"
        self.send_header("Content-Security-Policy", f"{policy_of(file)}; frame-ancestors 'none'")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Referrer-Policy", "no-referrer")
        self.send_header("Cross-Origin-Opener-Policy", "same-origin")
        self.send_header("Cross-Origin-Resource-Policy", "same-origin")
        kept = "/runtime/" in self.path and page is None
        self.send_header("Cache-Control", "max-age=31536000, immutable" if kept else "no-cache")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Remember the address; one line for each request only at the shell."""
        self.asked.append(self.path)
        if not self.quiet:
            super().log_message(format, *args)


def policy_of(file: Path) -> str:
    """A page's own policy, as its head has it; for any other file the policy without scripts."""
    with contextlib.suppress(OSError):
        if file.suffix == ".html":
            with open(file, "rb") as page:
                found = META.search(page.read(HEAD_BYTES))
            if found:
                return html.unescape(found.group(1).decode())
    return policy()


class _Threads(http.server.ThreadingHTTPServer):
    """One thread a connection; closing the server also hangs up on those that are open."""

    daemon_threads = True
    allow_reuse_address = True

    def __init__(self, *args: object) -> None:
        self._open: set[socket.socket] = set()
        super().__init__(*args)  # type: ignore[arg-type]

    def process_request(self, request: socket.socket, client_address: object) -> None:  # type: ignore[override]
        """Remember the connection."""
        self._open.add(request)
        super().process_request(request, client_address)

    def shutdown_request(self, request: socket.socket) -> None:  # type: ignore[override]
        """Forget the connection."""
        self._open.discard(request)
        super().shutdown_request(request)

    def hang_up(self) -> None:
        """End every open connection."""
        for request in list(self._open):
            with contextlib.suppress(OSError):
                request.shutdown(socket.SHUT_RDWR)

    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that hangs up in the middle is nothing to report."""
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]


class Server:
    """A site on a port of this machine; can be stopped and started again on the same port."""

    def __init__(self, folder: Path = SITE, port: int = 0, base: str = "/",
                 quiet: bool = True) -> None:
        self.folder, self.port, self.quiet = Path(folder), port, quiet
        self.base = "/" + base.strip("/") + "/" if base.strip("/") else "/"
        self.asked: list[str] = []
        self._server: _Threads | None = None

    @property
    def address(self) -> str:
        """The start page's address."""
        return f"http://127.0.0.1:{self.port}{self.base}"

    def start(self) -> Server:
        """Open the port and answer from a thread."""
        handler = functools.partial(Handler, folder=self.folder, base=self.base, quiet=self.quiet,
                                    asked=self.asked)
        self._server = _Threads(("127.0.0.1", self.port), handler)
        self.port = self._server.server_address[1]
        threading.Thread(target=self._server.serve_forever, args=(0.05,), daemon=True).start()
        return self

    def stop(self) -> None:
        """Close the port: from now on nobody answers."""
        if self._server:
            self._server.shutdown()
            self._server.server_close()
            self._server.hang_up()
            self._server = None

    def __enter__(self) -> Server:
        return self.start()

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None,
                 trace: TracebackType | None) -> None:
        self.stop()


def main() -> None:
    """Serve until told to stop."""
    parser = argparse.ArgumentParser(description="Serve the built site on this machine.")
    parser.add_argument("--port", type=int, default=PORT)
    parser.add_argument("--base", default="/", help="serve under this path, as /handbook/")
    parser.add_argument("folder", nargs="?", type=Path, default=SITE)
    given = parser.parse_args()
    server = Server(given.folder, given.port, given.base, quiet=False)
    try:
        server.start()
    except OSError as error:
        sys.exit(f"Port {given.port} cannot be used ({error.strerror}). Name another: --port N")
    print(f"Downflow is at {server.address}   (Ctrl+C stops it)", flush=True)
    with contextlib.suppress(KeyboardInterrupt):
        threading.Event().wait()
    server.stop()


if __name__ == "__main__":
    main()
