"""In: a line of plain text. Out: it as Markdown that shows the same signs."""

import re

_SIGNS = re.compile(r"[\\`*_{}<\[~]|&(?=#?\w+;)")
_OPENING = re.compile(r"^(?:#|>|\+(?=\s)|[-=:|])")


def as_prose(line: str) -> str:
    """The line, its signs no marks of Markdown or of numbers; a list may stay one. The space before it goes."""
    text = _SIGNS.sub(lambda found: f"\\{found.group()}", line.strip())
    bullet = re.match(r"-\s+\S", text)
    return text if bullet else _OPENING.sub(lambda found: f"\\{found.group()}", text)
