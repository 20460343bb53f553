"""The preview's server, asked over real connections: what it gives and refuses, and that it forgets who has left."""

import socket
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import closing
from http.client import HTTPConnection, HTTPResponse
from pathlib import Path

import pytest

from sizewright.command.outcome import Stopped
from sizewright.command.preview.board import Board
from sizewright.command.preview.opening import open_server
from sizewright.command.preview.papers import Papers
from sizewright.command.preview.server import PreviewServer
from sizewright.command.preview.site_files import CONTENT_TYPES

PATIENCE = 60  # seconds until what should come is given up
PANEL = "<section>2 errors</section>"
Ask = Callable[..., tuple[HTTPResponse, bytes]]


@pytest.fixture
def board(tmp_path: Path) -> Board:
    """A board that shows a small site with a secret beside it."""
    site = tmp_path / "site"
    for path, content in {
        "index.html": "<html><body><p>start</p></body></html>",
        "404.html": "<html><body><p>ours: not here</p></body></html>",
        "patterns/hat.html": "<body>hat</body>",
        "patterns/index.html": "<body>all patterns</body>",
        "media/hat.svg": "<svg/>",
        "media/two words.svg": "<svg/>",
        "empty/.keep": "",
    }.items():
        file = site / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(content, encoding="utf-8")
    (tmp_path / "secret.txt").write_text("secret", encoding="utf-8")
    (site / "leak.txt").symlink_to(tmp_path / "secret.txt")
    (site / "leak").symlink_to(tmp_path)
    (site / "circle").symlink_to(site / "circle")
    board = Board()
    board.show(site, "")
    return board


@pytest.fixture
def server(board: Board) -> Iterator[PreviewServer]:
    faults: list[BaseException] = []
    server = PreviewServer(0, board, Papers(), faults.append)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02})
    thread.start()
    yield server
    server.shutdown()
    server.server_close()
    thread.join()
    assert faults == []


@pytest.fixture
def ask(server: PreviewServer) -> Ask:
    def asked(path: str, method: str = "GET", host: str | None = None) -> tuple[HTTPResponse, bytes]:
        with closing(HTTPConnection("127.0.0.1", server.server_port, timeout=PATIENCE)) as connection:
            connection.putrequest(method, path, skip_host=host is not None)
            if host:
                connection.putheader("Host", host)
            connection.endheaders()
            answer = connection.getresponse()
            return answer, answer.read()

    return asked


@pytest.mark.parametrize(
    ("path", "kind", "holds"),
    [
        ("/", "text/html; charset=utf-8", b"<p>start</p>"),
        ("/index.html?size=m", "text/html; charset=utf-8", b"<p>start</p>"),
        ("/patterns/hat.html", "text/html; charset=utf-8", b"hat"),
        ("/patterns/", "text/html; charset=utf-8", b"all patterns"),
        ("/media/hat.svg", "image/svg+xml", b"<svg/>"),
        ("/media/two%20words.svg", "image/svg+xml", b"<svg/>"),
    ],
)
def test_a_page_and_its_parts(ask: Ask, path: str, kind: str, holds: bytes) -> None:
    answer, body = ask(path)
    assert answer.status == 200
    assert answer.headers["Content-Type"] == kind
    assert answer.headers["Cache-Control"] == "no-store"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert int(answer.headers["Content-Length"]) == len(body)
    assert holds in body


@pytest.mark.parametrize("path", ["/", "/media/hat.svg", "/nowhere"])
def test_head_is_get_without_the_body(ask: Ask, path: str) -> None:
    head, nothing = ask(path, "HEAD")
    got, _ = ask(path)
    assert nothing == b""
    assert (head.status, head.headers["Content-Length"]) == (got.status, got.headers["Content-Length"])


@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE", "OPTIONS"])
def test_nothing_but_reading(ask: Ask, method: str) -> None:
    answer, _ = ask("/", method)
    assert (answer.status, answer.headers["Allow"]) == (405, "GET, HEAD")


@pytest.mark.parametrize(
    "path",
    [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/patterns/..%2f..%2fsecret.txt",
        "/..%5csecret.txt",
        "/leak.txt",
        "/leak/secret.txt",
        "//secret.txt",
        "secret.txt",
        "/circle",
        "/index.html%00.svg",
        "/index.html/",
        "/" + "a" * 300,
        "/empty/",
        "/empty/.keep/",
        "/-preview/server.py",
        "/-preview/",
    ],
)
def test_nothing_outside_the_site_and_no_listings(ask: Ask, path: str) -> None:
    answer, body = ask(path)
    assert answer.status == 404
    assert b"secret" not in body
    assert b"ours: not here" in body


def test_a_folder_is_asked_for_with_a_slash(ask: Ask) -> None:
    answer, _ = ask("/patterns?size=m")
    assert (answer.status, answer.headers["Location"]) == (301, "/patterns/?size=m")
    answer, _ = ask("//patterns")  # never "//patterns/", which would be another machine
    assert (answer.status, answer.headers["Location"]) == (301, "/patterns/")


@pytest.mark.parametrize(
    "host", ["rebound.example", "rebound.example:8642", "127.0.0.1.rebound.example", "", "[::1", "192.0.2.1"]
)
def test_another_name_for_this_machine_is_refused(ask: Ask, host: str) -> None:
    answer, body = ask("/", host=host or " ")
    assert answer.status == 403
    assert b"start" not in body


@pytest.mark.parametrize("host", ["localhost", "LOCALHOST:9000", "127.0.0.1", "[::1]:8642"])
def test_its_own_names_are_answered(ask: Ask, host: str) -> None:
    assert ask("/", host=host)[0].status == 200


def test_it_listens_on_loopback_only(server: PreviewServer) -> None:
    assert server.socket.getsockname()[0] == "127.0.0.1"


def test_the_panel_lies_over_every_page_and_over_nothing_else(board: Board, ask: Ask) -> None:
    board.show(board.shown.folder, PANEL)
    for path in ("/", "/patterns/hat.html", "/nowhere.html"):
        body = ask(path)[1].decode()
        assert body.count(PANEL) == 1
        assert body.index(PANEL) < body.index("</body>")
    assert PANEL.encode() not in ask("/media/hat.svg")[1]


def test_before_there_is_any_page_the_panel_has_one_of_its_own(board: Board, ask: Ask) -> None:
    board.show(None, PANEL)
    answer, body = ask("/")
    assert answer.status == 404
    assert PANEL in body.decode()


def test_the_panels_own_files_are_given(ask: Ask) -> None:
    assert ask("/-preview/panel.css")[0].headers["Content-Type"] == CONTENT_TYPES[".css"]
    assert b"EventSource" in ask("/-preview/panel.js")[1]


def test_a_page_that_waits_is_told_of_the_next_state_once(board: Board, ask: Ask) -> None:
    mark = board.shown.mark
    timer = threading.Timer(0.1, board.show, (board.shown.folder, PANEL))
    timer.start()
    answer, body = ask(f"/-preview/changes?shown={mark}")
    timer.join()
    assert answer.headers["Content-Type"] == "text/event-stream"
    assert body.count(b"data:") == 1


def test_a_page_that_is_behind_is_told_at_once(ask: Ask) -> None:
    assert b"data:" in ask("/-preview/changes?shown=another-preview-1")[1]


def test_a_page_that_is_closed_gives_its_thread_back(board: Board, server: PreviewServer) -> None:
    before = threading.active_count()
    pages = [socket.create_connection(("127.0.0.1", server.server_port), timeout=PATIENCE) for _ in range(5)]
    for page in pages:
        page.sendall(f"GET /-preview/changes?shown={board.shown.mark} HTTP/1.1\r\nHost: localhost\r\n\r\n".encode())
        assert page.recv(12) == b"HTTP/1.0 200"
    assert threading.active_count() == before + 5
    for page in pages:
        page.close()
    deadline = time.monotonic() + PATIENCE
    while threading.active_count() > before and time.monotonic() < deadline:
        time.sleep(0.05)
    assert threading.active_count() == before


def test_a_port_that_is_taken_is_said_to_be(board: Board, server: PreviewServer) -> None:
    with pytest.raises(Stopped, match=f"Port {server.server_port} on 127.0.0.1 is in use"):
        open_server(server.server_port, board, Papers(), lambda _: None)


def test_without_a_port_the_next_free_one_is_taken(board: Board) -> None:
    with closing(open_server(None, board, Papers(), lambda _: None).socket) as first:
        other = open_server(None, board, Papers(), lambda _: None)
        other.server_close()
        assert other.server_port > first.getsockname()[1]
