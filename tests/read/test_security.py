"""In: sources that try to run or fetch something. Out: it is text or a finding; nothing is executed, nothing leaves."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_project
from sizewright.read.pattern import Address, Image, Insert, Markup
from sizewright.read.project import Project

Read = Callable[[str], Project]

HEADER = "---\ntitle: A\n---\n\n"
SVG = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">{}</svg>'


def rules(project: Project) -> set[str]:
    return {finding.rule for finding in project.findings}


def markup(project: Project) -> str:
    return "".join(piece.html for piece in project.patterns[0].body if isinstance(piece, Markup))


@pytest.mark.parametrize(
    "html", ["<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "a <b onclick='x'>b</b>", "<!-- <script> -->"]
)
def test_html_is_text(read_text: Read, html: str) -> None:
    shown = markup(read_text(f"{HEADER}{html}\n\n- {html}\n\n```\n{html}\n```\n"))
    assert shown.count("&lt;") >= 3
    for opened in ("<script", "<img", "<b", "<!--"):
        assert opened not in shown.replace("<blockquote", "")


@pytest.mark.parametrize(
    "target",
    [
        *("javascript:alert(1)", "JaVaScRiPt:alert(1)", "data:text/html,x", "vbscript:x", "file:///etc/passwd"),
        *("//elsewhere.example/x", "java&#115;cript:alert(1)", "../../../etc/passwd", "/etc/passwd", "blob:x"),
    ],
)
@pytest.mark.parametrize("link", ["[a]({})", "[a][b]\n\n[b]: {}", "<{}>"])
def test_an_unsafe_link_is_a_finding(read_text: Read, target: str, link: str) -> None:
    project = read_text(HEADER + link.format(target) + "\n")
    addresses = [piece.address for piece in project.patterns[0].body if isinstance(piece, Address)]
    assert set(addresses) <= {"#"}
    assert "href" not in markup(project)
    if addresses:
        assert "unsafe-reference" in rules(project)
    else:
        assert link == "<{}>", "only what is no address at all stays words"


@pytest.mark.parametrize(
    "path",
    [
        *("../x.svg", "../../x.svg", "a/../../x.svg", "/etc/x.svg", "%2e%2e/x.svg", "..%2fx.svg", "..\\x.svg"),
        *("https://elsewhere.example/x.png", "//elsewhere.example/x.png", "data:image/png;base64,x", "file:///x.png"),
    ],
)
def test_a_picture_from_elsewhere_is_a_finding(read_text: Read, path: str) -> None:
    project = read_text(f"{HEADER}![A]({path})\n")
    assert rules(project) == {"unsafe-reference"}
    assert not any(isinstance(piece, Image) for piece in project.patterns[0].body)
    header = read_text(f"---\ntitle: A\npicture: {{file: '{path}', alt: A}}\n---\n")
    assert rules(header) == {"unsafe-reference"}


def with_picture(folder: Path, name: str, content: bytes) -> Project:
    for part in ("media", "patterns"):
        (folder / "content" / part).mkdir(parents=True, exist_ok=True)
    (folder / "content" / "media" / name).write_bytes(content)
    return read_project(folder)


@pytest.mark.parametrize("linked", ["media/x.svg", "patterns/x.md", "sizes/x.yaml"])
def test_a_link_out_of_the_project_is_not_followed(tmp_path: Path, linked: str) -> None:
    outside = tmp_path / "outside"
    outside.write_text("title: secret", encoding="utf-8")
    path = tmp_path / "project" / "content" / linked
    path.parent.mkdir(parents=True)
    path.symlink_to(outside)
    project = read_project(tmp_path / "project")
    assert rules(project) == {"unsafe-reference"}
    assert (project.patterns, project.tables, project.media) == ((), {}, frozenset())


@pytest.mark.parametrize(
    "inside",
    [
        "<script>x</script>",
        "<g onload='x'/>",
        "<foreignObject/>",
        "<image href='https://elsewhere.example/x'/>",
        "<image xlink:href='https://elsewhere.example/x'/>",
        "<use href='other.svg#a'/>",
        "<a href='javascript:x'/>",
        "<image href='data:text/html,x'/>",
        "<style>@import 'x.css';</style>",
        "<style>g { fill: url(https://elsewhere.example/x) }</style>",
        "<g style='fill: url( \"https://elsewhere.example/x\" )'/>",
        "<set attributeName='href' to='x'/>",
        "<animate attributeName='href' to='x'/>",
    ],
)
def test_an_svg_that_runs_or_fetches_is_a_finding(tmp_path: Path, inside: str) -> None:
    assert rules(with_picture(tmp_path, "x.svg", SVG.format(inside).encode())) == {"unsafe-picture"}


@pytest.mark.parametrize(
    "content",
    [
        b'<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><svg>&b;</svg>',
        b'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]><svg>&a;</svg>',
        b'<?xml-stylesheet href="https://elsewhere.example/x.css"?><svg xmlns="http://www.w3.org/2000/svg"/>',
        b"<svg>" * 3000,
        b"no picture",
        b"",
    ],
    ids=["entities", "outside", "style sheet", "never closed", "no picture", "empty"],
)
def test_a_hostile_svg_is_a_finding(tmp_path: Path, content: bytes) -> None:
    assert rules(with_picture(tmp_path, "x.svg", content)) == {"unsafe-picture"}


def test_a_plain_svg_is_none(tmp_path: Path) -> None:
    inside = "<defs><g id='a'/></defs><use href='#a' fill='url(#a)'/><image href='data:image/png;base64,x'/>"
    assert rules(with_picture(tmp_path, "x.svg", SVG.format(inside).encode())) == set()


def test_a_page_that_calls_itself_a_picture_is_a_finding(tmp_path: Path) -> None:
    assert rules(with_picture(tmp_path, "x.png", b"<html><script>x</script>")) == {"unsafe-picture"}


@pytest.mark.parametrize(
    "line",
    ["summary: !!python/object/apply:os.system ['x']", "summary: !x y", "summary: &a y", "summary: *a", "<<: *a"],
)
def test_yaml_tags_and_anchors_are_findings(read_text: Read, line: str) -> None:
    assert rules(read_text(f"---\ntitle: A\n{line}\n---\n")) >= {"unreadable-header"}


@pytest.mark.parametrize(
    "inside",
    [
        *("__import__('os').system('x')", "''.__class__", "0:>999999999", "x!r", "open('x')", "x.__class__.__mro__"),
        *("{7 * 7}", "% x %", "lambda: 1", "exec('x')", "min.__globals__", "9 ** 9", "9 << 9", "globals()", "x[0]"),
    ],
)
def test_what_stands_in_braces_is_never_executed(read_text: Read, inside: str) -> None:
    project = read_text(f"{HEADER}{{{inside}}}\n\n```grade\na = {inside}\n```\n")
    pattern = project.patterns[0]
    graded = grade(pattern)
    assert graded.inserts == {}
    assert "a" not in graded.quantities
    unread = not any(isinstance(piece, Insert) for piece in pattern.body)
    assert (rules(project) if unread else {finding.rule for finding in graded.findings}) & {
        "unreadable-formula",
        "unknown-name",
        "unknown-function",
        "unknown-style",
        "unknown-unit",
    }
    assert "49" not in markup(project)
