"""In: the projects of some paths. Out: their instruction lines in house style, and files rewritten where asked for."""

import os
import re
import shutil
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from sizewright.command.outcome import Stopped
from sizewright.command.reading import Opened
from sizewright.read.folder import lines_of, read_single
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.pattern import Pattern
from sizewright.read.restated import Restated, restated

_LINE_ENDS = re.compile(r"(\r\n|\r|\n)")


@dataclass(frozen=True, slots=True)
class RestatedFile:
    """The lines of one pattern; `source` as the person here would type the path."""

    source: str
    pattern: Pattern
    vocabulary: Vocabulary
    lines: tuple[Restated, ...]

    @property
    def differing(self) -> tuple[Restated, ...]:
        """The lines that are said otherwise in house style."""
        return tuple(line for line in self.lines if line.differs)


def restated_files(opened: Sequence[Opened]) -> tuple[RestatedFile, ...]:
    """Every pattern of the projects, by its path; one that two of them hold comes once."""
    found: dict[str, RestatedFile] = {}
    for one in opened:
        vocabulary = Vocabulary(one.project.terms)
        for pattern in one.project.patterns:
            source = one.shown(pattern.source)
            found[source] = RestatedFile(source, pattern, vocabulary, restated(pattern, vocabulary))
    return tuple(found[source] for source in sorted(found))


def rewrite(file: RestatedFile) -> None:
    """Writes the lines in house style into the file, in one step; all else stays byte for byte.

    Raises OSError where the system refuses, `Stopped` where the file changed since it was read, and ValueError where it
    would not say the same, which is a fault of ours. The file is left as it is then.
    """
    path = Path(file.source).resolve()
    before = path.read_bytes().decode("utf-8")
    if lines_of(file.source, before.removeprefix("\ufeff")).text != file.pattern.typed.text:
        raise Stopped(f"{file.source} changed while it was read; it was left as it is.")
    after = _rewritten(before, file)
    _check(after, file)
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as new:
            new.write(after.encode("utf-8"))
        shutil.copymode(path, name)
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _rewritten(text: str, file: RestatedFile) -> str:
    """The text with the lines that differ in house style, its line ends as they are."""
    parts = _LINE_ENDS.split(text)  # line, end, line, end, ... line
    for line in reversed(file.differing):
        first, last = 2 * (line.first - 1), 2 * (line.last - 1)
        typed = parts[first]
        indent = typed[: len(typed) - len(typed.lstrip())]
        parts[first : last + 1] = [indent + line.house]
    return "".join(parts)


def _check(text: str, file: RestatedFile) -> None:
    """Raises ValueError where the text does not say in house style what the file said."""
    (pattern,) = read_single(Path(file.source), text.removeprefix("\ufeff")).patterns  # with its base beside it
    again = [line.house or line.typed for line in restated(pattern, file.vocabulary)]
    wanted = [line.house or line.typed for line in file.lines]
    if again != wanted:
        lost = next((line for line, other in zip(wanted, again, strict=False) if line != other), "the number of lines")
        message = f"{file.source} would not say the same in house style: {lost}"
        raise ValueError(message)
