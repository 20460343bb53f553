"""What a person reads: the place, the message, the line with its mark, the sizes, the mend, and one line at the end."""

import io
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from rich.cells import cell_len

from sizewright.base.finding import Finding, Level
from sizewright.base.place import Span
from sizewright.command.proofing import Proofing
from sizewright.command.report_text import marked, print_report, summary
from sizewright.command.terminal import terminal

Made = Callable[..., Proofing]


def finding(
    line: int = 16, column: int = 11, end: int = 39, source: str = "band.md", level: Level = Level.ERROR
) -> Finding:
    span = Span(source, line, column, line, end)
    return Finding("broken-repeat", level, "94 stitches do not fit.", "Cast on 92 or 96.", span, ("Small", "Large"))


def report(proofing: Proofing, stream: io.StringIO | None = None) -> str:
    stream = stream or io.StringIO()
    print_report(terminal(stream), proofing)
    return stream.getvalue()


def test_a_finding_is_shown_whole(made: Made) -> None:
    assert report(made([finding()])) == (
        "Test Band  band.md\n"
        "  band.md:16:11  error  94 stitches do not fit.  [broken-repeat]\n"
        "    16 | cast_on = head * 0.9 * stitch_gauge, nearest multiple of 4\n"
        "       |           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"
        "    sizes: Small, Large\n"
        "    mend: Cast on 92 or 96.\n"
        "\n"
        "1 error in 1 pattern\n"
    )


def test_files_are_grouped_and_sorted(made: Made, band: Path) -> None:
    (band.parent / "site.yaml").write_text("name: x\nnotice: y\n", encoding="utf-8")
    elsewhere = Finding("wrong-value", Level.WARNING, "Odd.", "", Span("site.yaml", 2, 9, 2, 10))
    nowhere = Finding("unsafe-reference", Level.ERROR, "A link leads out.", "Copy it.", None)
    text = report(made([finding(17), finding(16)], [elsewhere, nowhere]))
    heads = [line.split("  error")[0].split("  warning")[0] for line in text.splitlines() if "  [" in line]
    assert heads == ["", "  band.md:16:11", "  band.md:17:11", "  site.yaml:2:9"]
    assert "    2 | notice: y\n      |         ^\n" in text
    assert text.endswith("3 errors, 1 warning in 1 pattern\n")


def test_nothing_found_says_what_was_proofed(made: Made) -> None:
    assert report(made()) == "1 pattern, 2 sizes: 6 quantities worked out exactly, no findings\n"


def test_many_findings_are_counted_by_rule(made: Made) -> None:
    found = [replace(finding(line), rule=f"rule-{line % 3}") for line in range(1, 9)]
    odd = replace(finding(10, level=Level.WARNING), rule="odd")
    ending = report(made([*found, odd, odd, odd])).split("94 stitches do not fit.")[-1].split("\n\n", 1)[1]
    assert ending == (
        "By rule; “sizewright rule NAME” tells what each is about\n"
        "     3  error    rule-1\n"
        "     3  error    rule-2\n"
        "     2  error    rule-0\n"
        "     3  warning  odd\n"
        "\n"
        "8 errors, 3 warnings in 1 pattern\n"
    )
    assert "By rule" not in report(made(found[:7]))


def test_the_counts_fit_a_screen(made: Made) -> None:
    found = [replace(finding(), rule=f"rule-{number:02}") for number in range(40)]
    ending = report(made(found)).split("By rule")[1]
    assert "    24  of 24 other rules\n" in ending
    assert len(ending.splitlines()) < 24


def test_a_line_that_is_no_longer_there_is_left_out(made: Made) -> None:
    assert " | " not in report(made([finding(400)], [finding(1, source="gone.yaml")]))


@pytest.mark.parametrize(
    ("line", "column", "end", "shown", "start", "width"),
    [
        ("abc def", 5, 8, "abc def", 4, 3),
        ("\tabc", 2, 5, "    abc", 4, 3),
        ("編み abc", 4, 7, "編み abc", 5, 3),
        ("編み abc", 1, 3, "編み abc", 0, 4),
        ("abc   ", 1, 7, "abc", 0, 3),
        ("abc", 4, 4, "abc", 3, 1),
        ("abc", 9, 9, "abc", 3, 1),
        ("a\x1b[31mb", 2, 3, "a�[31mb", 1, 1),
    ],
)
def test_the_mark_stands_under_its_place(line: str, column: int, end: int, shown: str, start: int, width: int) -> None:
    assert marked(Span("x", 1, column, 1, end), line) == (shown, start, width)


def test_a_span_of_several_lines_is_marked_to_the_end_of_its_first() -> None:
    assert marked(Span("x", 1, 3, 4, 2), "abcdef") == ("abcdef", 2, 4)


class Screen(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize("width", [30, 44, 60, 100])
@pytest.mark.parametrize("column", [1, 150, 290])
def test_on_a_screen_nothing_is_wider_and_the_place_stays_in_view(
    made: Made, band: Path, monkeypatch: pytest.MonkeyPatch, width: int, column: int
) -> None:
    monkeypatch.setenv("COLUMNS", str(width))
    monkeypatch.setenv("NO_COLOR", "1")
    (band.parent / "long.yaml").write_text("編" * 50 + "".join(f"word{i:03} " for i in range(40)), encoding="utf-8")
    span = Span("long.yaml", 1, column, 1, column + 4)
    text = report(made([], [Finding("x", Level.ERROR, "Long words " * 9, "", span)]), Screen())
    lines = text.splitlines()
    assert max(map(cell_len, lines)) <= width
    at = next(number for number, line in enumerate(lines) if line.strip(" |^") == "" and "^" in line)
    shown, mark = lines[at - 1], lines[at]
    typed = (band.parent / "long.yaml").read_text(encoding="utf-8")[column - 1 : column + 3]
    cells = "".join(sign * (1 if cell_len(sign) == 1 else 2) for sign in shown)
    under = cells[mark.index("^") : mark.rindex("^") + 1]
    assert under == "".join(sign * cell_len(sign) for sign in typed)


def test_colours_are_put_on_a_screen(made: Made, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm-256color")
    assert "\x1b[1;31merror" in report(made([finding()]), Screen())
    assert "\x1b" not in report(made([finding()]))


@pytest.mark.parametrize(
    ("levels", "text"),
    [
        ([Level.ERROR], "1 error in 1 pattern"),
        ([Level.WARNING] * 2, "2 warnings in 1 pattern"),
        ([Level.ERROR, Level.WARNING, Level.ERROR], "2 errors, 1 warning in 1 pattern"),
    ],
)
def test_the_sum(made: Made, levels: list[Level], text: str) -> None:
    assert summary(made([finding(level=level) for level in levels])) == text
