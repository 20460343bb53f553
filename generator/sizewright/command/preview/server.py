"""In: a board that says what to show. Out: the pages on loopback, each told when to load itself again."""

import select
import sys
from collections.abc import Callable, Mapping
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from socketserver import TCPServer
from urllib.parse import parse_qs, urlsplit

from sizewright.command.preview.board import Board
from sizewright.command.preview.panel import NO_PAGE, OWN, faulty_paper, with_panel
from sizewright.command.preview.papers import Papers
from sizewright.command.preview.site_files import CONTENT_TYPES, content_type, file_for, parts_of, with_slash
from sizewright.publish.faults import NotWritten
from sizewright.publish.offline import RETIRED, WORKER
from sizewright.publish.theme import BadTheme

HOST = "127.0.0.1"
# A stranger's name server may give the stranger's name this machine's address, and their page could then read the
# preview. Such a request still carries their name: only the names of loopback itself are answered.
_OUR_NAMES = frozenset({"127.0.0.1", "localhost", "::1"})
_LOOK_AGAIN = 1.0  # seconds between two looks whether a page that waits is still open
_OWN_FILES: Mapping[tuple[str, ...] | None, Path] = {
    (OWN, name): Path(__file__).with_name(name) for name in ("panel.css", "panel.js")
}


class PreviewServer(ThreadingHTTPServer):
    """Serves one board on 127.0.0.1 only; every request has a thread of its own, and none outlives the program.

    `on_fault` gets what went wrong in a request that is not the browser's doing.
    """

    daemon_threads = True

    def __init__(self, port: int, board: Board, papers: Papers, on_fault: Callable[[BaseException], None]) -> None:
        self.board = board
        self.papers = papers
        self._on_fault = on_fault
        super().__init__((HOST, port), _Handler)

    def server_bind(self) -> None:
        """Binds without looking up the machine's name, which may take seconds."""
        TCPServer.server_bind(self)
        self.server_name, self.server_port = HOST, self.server_address[1]

    @property
    def address(self) -> str:
        """The address to open in a browser."""
        return f"http://{HOST}:{self.server_port}/"

    def handle_error(self, _request: object, _client_address: object) -> None:
        """A browser that leaves in the middle of a page is no fault; anything else is told."""
        fault = sys.exc_info()[1]
        if fault is not None and not isinstance(fault, (ConnectionError, TimeoutError)):
            self._on_fault(fault)


class _Handler(BaseHTTPRequestHandler):
    server: PreviewServer
    server_version = "sizewright"
    sys_version = ""
    timeout = 10  # seconds that a connection may take to say what it wants, or to take what it gets

    def do_GET(self) -> None:
        self._answer()

    def do_HEAD(self) -> None:
        self._answer()

    def _only_reading(self) -> None:
        self._send(
            HTTPStatus.METHOD_NOT_ALLOWED, b"The preview can only be read.\n", "text/plain", {"Allow": "GET, HEAD"}
        )

    do_POST = do_PUT = do_PATCH = do_DELETE = do_OPTIONS = _only_reading  # noqa: N815 - the library's names

    def log_message(self, *_words: object) -> None:
        """Says nothing: a line for every picture would bury the findings."""

    def _answer(self) -> None:
        parts = parts_of(self.path)
        if not self._is_for_us():
            self._send(HTTPStatus.FORBIDDEN, b"The preview answers to this machine's own names only.\n", "text/plain")
        elif parts == (OWN, "changes"):
            self._tell_of_change()
        elif parts == (WORKER,):  # one that a site served from here before has left is taken away
            self._send(HTTPStatus.OK, RETIRED, "text/javascript")
        elif parts in _OWN_FILES:
            self._send_file(_OWN_FILES[parts])
        else:
            self._send_page()

    def _is_for_us(self) -> bool:
        try:
            name = urlsplit(f"//{self.headers.get('Host', '')}").hostname
        except ValueError:
            return False
        return name in _OUR_NAMES

    def _send_page(self) -> None:
        folder = self.server.board.shown.folder
        slashed = with_slash(folder, self.path) if folder else None
        file = file_for(folder, self.path) if folder else None
        if slashed:
            self._send(HTTPStatus.MOVED_PERMANENTLY, b"", "text/plain", {"Location": slashed})
        elif file is not None:
            self._send_file(file)
        elif not self._send_paper():
            self._send_missing()

    def _send_paper(self) -> bool:
        """Whether a PDF is asked for: then it is sent, or a page that says what is wrong with it."""
        try:
            paper = self.server.papers.paper("/".join(parts_of(self.path) or ()))
        except (NotWritten, BadTheme) as reason:
            self._send_html(HTTPStatus.INTERNAL_SERVER_ERROR, faulty_paper((str(reason),)))
            return True
        if paper is not None and paper.faults:
            self._send_html(HTTPStatus.INTERNAL_SERVER_ERROR, faulty_paper(paper.faults))
        elif paper is not None:
            self._send(HTTPStatus.OK, paper.content, CONTENT_TYPES[".pdf"])
        return paper is not None

    def _send_missing(self) -> None:
        folder = self.server.board.shown.folder
        own = file_for(folder, "/404.html") if folder else None
        page = own.read_text(encoding="utf-8") if own else NO_PAGE
        self._send_html(HTTPStatus.NOT_FOUND, page)

    def _send_file(self, file: Path) -> None:
        kind = content_type(file)
        if kind.startswith("text/html"):
            self._send_html(HTTPStatus.OK, file.read_text(encoding="utf-8"))
        else:
            self._send(HTTPStatus.OK, file.read_bytes(), kind)

    def _send_html(self, status: HTTPStatus, page: str) -> None:
        shown = self.server.board.shown
        self._send(status, with_panel(page, shown.panel, shown.mark).encode(), "text/html; charset=utf-8")

    def _send(self, status: HTTPStatus, body: bytes, kind: str, more: dict[str, str] | None = None) -> None:
        self._send_head(status, {"Content-Type": kind, "Content-Length": str(len(body)), **(more or {})})
        if self.command != "HEAD":
            self.wfile.write(body)

    def _send_head(self, status: HTTPStatus, headers: dict[str, str]) -> None:
        self.send_response(status)
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Cross-Origin-Resource-Policy", "same-origin")
        for name, value in headers.items():
            self.send_header(name, value)
        self.end_headers()

    def _tell_of_change(self) -> None:
        """Holds the connection until there is another state than the page's, then says so once and ends.

        The connection is looked at every second: a page that was closed gives its thread back.
        """
        mark = parse_qs(urlsplit(self.path).query).get("shown", [""])[0]
        self._send_head(HTTPStatus.OK, {"Content-Type": "text/event-stream"})
        if self.command == "HEAD":
            return
        self.wfile.write(b"retry: 500\n\n")
        while not self.server.board.wait_for_other(mark, _LOOK_AGAIN):
            if self._has_gone():
                return
        self.wfile.write(b"data: changed\n\n")

    def _has_gone(self) -> bool:
        """Whether the browser has closed its end: it sends nothing here, so what can be read is the end."""
        readable, _, _ = select.select([self.connection], [], [], 0)
        return bool(readable)
