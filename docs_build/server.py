"""A small static server for the local network: right types, compression, security headers."""

from __future__ import annotations

import errno
import functools
import gzip
import io
import socket
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from docs_build.bootstrap import Trouble, say

CSP = (
    "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; "
    "img-src 'self' data: blob:; worker-src 'self'; object-src 'none'; base-uri 'none'; "
    "form-action 'none'"
)
"""What a page of the book may load: nothing from another host, no inline script."""

COMPRESSED = {
    ".html", ".css", ".js", ".mjs", ".json", ".svg", ".wasm", ".txt", ".webmanifest", ".zip",
}  # fmt: skip


class Handler(SimpleHTTPRequestHandler):
    """Serves one folder, compressed where the browser takes it."""

    protocol_version = "HTTP/1.1"
    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".mjs": "text/javascript",
        ".js": "text/javascript",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
        ".svg": "image/svg+xml",
    }

    def end_headers(self) -> None:
        """Add the headers that a static host should send, too."""
        self.send_header("Content-Security-Policy", CSP)
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Referrer-Policy", "no-referrer")
        # Its manifest has one name in every edition, so a browser must ask for it anew.
        immutable = "/_runtime/" in self.path and not self.path.endswith("/runtime.json")
        self.send_header(
            "Cache-Control", "public, max-age=31536000, immutable" if immutable else "no-cache"
        )
        super().end_headers()

    def send_head(self) -> io.BytesIO | None:  # type: ignore[override]
        """Answer with the compressed file where that helps, else as the base class does."""
        path = Path(self.translate_path(self.path))
        if path.is_dir() and self.path.split("?")[0].endswith("/"):
            path = path / "index.html"
        takes = "gzip" in self.headers.get("Accept-Encoding", "")
        if not (takes and path.suffix in COMPRESSED and path.is_file()):
            return super().send_head()  # type: ignore[return-value]
        state = path.stat()
        body = compressed(path, state.st_mtime_ns)
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Vary", "Accept-Encoding")
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Last-Modified", self.date_time_string(int(state.st_mtime)))
        self.end_headers()
        return io.BytesIO(body)

    def log_message(self, format: str, *args: object) -> None:
        """Keep quiet: the terminal shows the address and the QR code."""


@functools.lru_cache(maxsize=512)
def compressed(path: Path, stamp: int) -> bytes:
    """Return the gzip form of a file; ``stamp`` (its time of change) keeps the cache true."""
    return gzip.compress(path.read_bytes(), compresslevel=6, mtime=0)


def listen(port: int) -> ThreadingHTTPServer:
    """Take the port on all interfaces.

    Raises
    ------
    Trouble
        where the port is busy or may not be used
    """
    try:
        return ThreadingHTTPServer(("", port), Handler)
    except OSError as error:
        if error.errno in {errno.EADDRINUSE, 10048}:
            raise Trouble(
                f"Port {port} is in use by another program; choose another one with --port."
            ) from error
        if isinstance(error, PermissionError):
            raise Trouble(
                f"Port {port} may not be used by this account; choose one above 1023 with --port."
            ) from error
        raise Trouble(f"Port {port} cannot be used: {error.strerror}.") from error


def address(port: int) -> str:
    """Return the address at which a phone on the same network finds this machine."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # TEST-NET-1: picks the interface, sends nothing
            host = probe.getsockname()[0]
        except OSError:
            host = "127.0.0.1"
    return f"http://{host}:{port}/"


def announce(port: int) -> None:
    """Print the address and its QR code."""
    import segno

    url = address(port)
    say(f"\nOn this machine:   http://localhost:{port}/\nOn the phone:      {url}\n")
    segno.make(url, micro=False).terminal(compact=True)
    say("\nThe phone must be on the same network. Ctrl+C stops the server.")


def run(httpd: ThreadingHTTPServer, folder: Path) -> None:
    """Serve ``folder`` until stopped."""
    httpd.RequestHandlerClass = functools.partial(Handler, directory=str(folder))  # type: ignore[assignment]
    httpd.serve_forever()
