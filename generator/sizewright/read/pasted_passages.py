"""In: a line of a pasted pattern above instructions. Out: the sizes that it says they are for."""

import re
from collections.abc import Sequence

# As in "Sizes M and L only:", and in "For sizes M (L):".
_SOME = re.compile(
    r"(?:for )?(?:the )?sizes? (?P<names>[^:]{1,80}?) only ?[:.]?|for (?:the )?sizes? (?P<for>[^:]{1,80}?) ?:",
    re.IGNORECASE,
)
_OTHERS = re.compile(r"(?:for )?(?:all |the )*(?:other|remaining) sizes\b.*", re.IGNORECASE)
_ALL = re.compile(r"(?:for )?all (?:the )?sizes ?:?", re.IGNORECASE)
_BETWEEN = re.compile(r"\s*(?:[,;&/()\[\]]|\band\b|\bor\b)\s*", re.IGNORECASE)


def tells_sizes(line: str) -> bool:
    """Whether a line begins by saying that only some sizes carry out what follows."""
    text = line.strip()
    return bool(_SOME.match(text) or _OTHERS.fullmatch(text))


def ends_passage(line: str) -> bool:
    """Whether what follows a line is for other sizes than what stands before it."""
    return tells_sizes(line) or bool(_ALL.fullmatch(line.strip()))


def sizes_in(line: str, sizes: Sequence[str]) -> tuple[str, ...]:
    """The names of the sizes that a line of its own tells, as the header has them; none where one is unknown."""
    found = _SOME.fullmatch(line.strip())
    if found is None:
        return ()
    known = {size.casefold(): size for size in sizes}
    whole = (found["names"] or found["for"]).strip()
    names = [whole] if whole.casefold() in known else [name for name in _BETWEEN.split(whole) if name.strip()]
    named = [known.get(name.strip().casefold()) for name in names]
    return tuple(name for name in named if name is not None) if all(named) else ()
