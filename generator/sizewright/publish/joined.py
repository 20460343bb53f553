"""In: a page and the theme's files. Out: the page with its style sheets as one file and its scripts as another.

Where another language than English is spoken the messages of scripts are put into it.
Many small files are slower to fetch than one and press together worse: the scripts of a pattern's page by a third.
What is for those who read the theme, comments and indentation, stays in the theme.
"""

import re
from collections.abc import Callable, Mapping
from pathlib import PurePosixPath

from sizewright.publish.manifest import digest
from sizewright.publish.output import Output
from sizewright.publish.script_words import script_words, spoken_script

_NAME = r"(theme/[\w./-]+)"
# A string or an address of a style sheet, which is kept, or a comment.
_IN_STYLES = re.compile(r"""("(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'|url\([^"')]*\))|/\*.*?\*/""", re.DOTALL)
_SHORT = 12  # signs of a digest in the name of a file


def joined(html: str, root: str, files: Mapping[str, bytes]) -> tuple[str, tuple[Output, ...]]:
    """A page whose neighbouring style sheets, and scripts, of the theme are one file each, and these files.

    `root` leads from the page to the top of the site; `files` are those of the theme by their paths. What the theme
    does not have, or what has other attributes, stays as it is.
    """
    made: list[Output] = []
    for tag, kind, whole in (
        (f'<link rel="stylesheet" href="{re.escape(root)}{_NAME}">', "css", _styles),
        (f'<script src="{re.escape(root)}{_NAME}" defer></script>', "js", _scripts),
    ):

        def one(run: re.Match[str], tag: str = tag, kind: str = kind, whole: Callable[..., str] = whole) -> str:
            names = re.findall(tag, run[0])
            if len(names) < 2 or not all(_beside(name, kind) and _joins(files.get(name)) for name in names):
                return run[0]
            content = whole([files[name].decode() for name in names]).encode()
            output = Output(f"theme/joined-{digest(content)[:_SHORT]}.{kind}", content)
            made.append(output)
            first = re.match(tag, run[0])
            return run[0][: first.end()].replace(names[0], output.path) + "\n" if first else run[0]

        html = re.sub(f"(?:{tag}\\s*)+", one, html)
    html, words = _with_words(html, root, files)
    return html, (*made, *words)


def _with_words(html: str, root: str, files: Mapping[str, bytes]) -> tuple[str, tuple[Output, ...]]:
    """The page with the messages of those scripts that are not joined, in a file linked before all scripts."""
    linked = list(re.finditer(rf'<script\b[^>]*\bsrc="{re.escape(root)}{_NAME}"', html))
    alone = [files[found[1]] for found in linked if found[1].endswith(".js") and found[1] in files]
    words = "\n".join(filter(None, (script_words(content.decode("utf-8", "replace")) for content in alone)))
    if not words:
        return html, ()
    output = Output(f"theme/words-{digest(words.encode())[:_SHORT]}.js", f"{words}\n".encode())
    at = linked[0].start()
    return f'{html[:at]}<script src="{root}{output.path}" defer></script>\n{html[at:]}', (output,)


def _beside(name: str, kind: str) -> bool:
    """Whether a file lies at the top of the theme, from where the addresses in it lead to the same places."""
    path = PurePosixPath(name)
    return str(path.parent) == "theme" and path.suffix == f".{kind}"


def _joins(content: bytes | None) -> bool:
    """Whether a file may have another before it: some rules of a style sheet must stand first."""
    if content is None or re.search(rb"@(?:charset|import|namespace)", content):
        return False
    try:
        content.decode()
    except UnicodeDecodeError:
        return False
    return True


def _styles(texts: list[str]) -> str:
    return "\n".join(_lines(_IN_STYLES.sub(lambda found: found[1] or "", text)) for text in texts)


def _scripts(texts: list[str]) -> str:
    """Each by itself, as it was in a file of its own: what it names is its own, and its failure stops no other."""
    return "\n".join(map(_script, texts))


def _script(text: str) -> str:
    part = spoken_script(_lines(text, "//") if _plain(text) else text)
    return f"try{{(()=>{{{part}\n}})()}}catch(error){{reportError(error)}}"


def _plain(script: str) -> bool:
    """Whether every line of a script stands by itself, so that none is a part of a text that goes on."""
    lines = script.splitlines()
    return "/*" not in script and all(line.count("`") % 2 == 0 and not line.endswith("\\") for line in lines)


def _lines(text: str, comment: str = "\0") -> str:
    """The lines without indentation, empty ones and those that are a comment left out."""
    lines = (line.strip() for line in text.splitlines())
    return "\n".join(line for line in lines if line and not line.startswith(comment))
