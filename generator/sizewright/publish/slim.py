"""In: a file of a theme as it is written. Out: as it is sent: a script without comments and indentation, others as is.

Lines stay in their order and nothing within one is touched, so that no parser is needed. A comment that tells of a
licence stays.
"""

import re

_COMMENT = re.compile(r"\s*//(?!.*(?:licen[cs]e|copyright|©)).*", re.IGNORECASE)


def slim(name: str, content: bytes) -> bytes:
    """The content of a file of this name, as it is sent.

    A script that has a text or a comment over several lines, where indentation may mean something, stays as it is.
    """
    if not name.endswith(".js"):
        return content
    lines = content.decode("utf-8", "surrogateescape").splitlines()
    told = [line.strip() for line in lines if not _COMMENT.fullmatch(line)]
    if any(line.count("`") % 2 or "/*" in line or line.endswith("\\") for line in told):
        return content
    return "".join(f"{line}\n" for line in told if line).encode("utf-8", "surrogateescape")
