"""In: pages, and the theme's files they name. Out: one style sheet, one script, and pages that stay light."""

import json
import re
import shutil
import subprocess
from collections.abc import Mapping
from pathlib import Path

import pytest
from tests.bench.page_weight import weight

from sizewright.publish.joined import joined
from sizewright.publish.output import Output

CSS = b'/* a {} */\n  a::before {\n    content: "/* kept */";\n  }\n'
FILES: Mapping[str, bytes] = {
    "theme/a.css": CSS,
    "theme/b.css": b"b { background: url(c/*.png) } /* long\n */ c { d: e }",
    "theme/far/c.css": b"c {}",
    "theme/first.css": b'@import "a.css";',
    "theme/a.js": b"""// what it is
"use strict";
const told = [];
globalThis.said = (word) => (told.push(word), told);
not.there();
""",
    "theme/b.js": b'"use strict";\n\n  // says\n  const told = "// kept";\n  said(told);\n',
    "theme/c.js": b"said(`a\n  // kept too\nb`);\nsaid(this === undefined);",
}


def styles(*names: str) -> str:
    return "".join(f'<link rel="stylesheet" href="../theme/{name}.css">\n' for name in names)


def scripts(*names: str) -> str:
    return "".join(f'<script src="../theme/{name}.js" defer></script>\n' for name in names)


def made(html: str) -> tuple[str, tuple[Output, ...]]:
    return joined(html, "../", FILES)


def test_neighbours_are_one_file_in_their_order() -> None:
    page, (sheet, script) = made(f"<title>t</title>\n{styles('a', 'b')}<style>x</style>\n{scripts('a', 'b')}</head>")
    assert (
        sheet.content.decode() == 'a::before {\ncontent: "/* kept */";\n}\nb { background: url(c/*.png) }  c { d: e }'
    )
    assert page.splitlines() == [
        "<title>t</title>",
        f'<link rel="stylesheet" href="../{sheet.path}">',
        "<style>x</style>",
        f'<script src="../{script.path}" defer></script>',
        "</head>",
    ]
    assert made(page)[1] == ()


@pytest.mark.parametrize(
    "html",
    [
        styles("a"),
        f"{styles('a')}<style>x</style>{styles('b')}",
        styles("a", "none"),
        styles("a", "far/c"),
        styles("a", "first"),
        '<script src="../theme/a.js"></script><script src="../theme/b.js"></script>',
        styles("a", "b").replace("../", "https://elsewhere.example/"),
    ],
)
def test_what_cannot_be_joined_stays_as_it_is(html: str) -> None:
    assert made(html) == (html, ())


def test_scripts_are_each_by_themselves() -> None:
    """One that fails stops no other, names do not meet, and a text that goes on over lines is kept."""
    _, (script,) = made(scripts("a", "b", "c"))
    node = shutil.which("node")
    assert node is not None, "run `sh generator/setup.sh test`, which installs it"
    program = (
        f"const failed = []; globalThis.reportError = (error) => failed.push(error.name);\n{script.content.decode()}\n"
    )
    program += "console.log(JSON.stringify([failed, said(0)]));"
    done = subprocess.run([node, "-e", program], capture_output=True, text=True, check=True)
    failed, told = json.loads(done.stdout)
    assert failed == ["ReferenceError"]
    assert told[:2] == ["// kept", "a\n  // kept too\nb"]


def test_every_page_of_the_sample_has_one_of_each(sample_outputs: Mapping[str, Output]) -> None:
    for path in ("patterns/hat.html", "index.html", "techniques/bobbles.html"):
        page = sample_outputs[path].content.decode()
        linked = re.findall(r'(?:<link rel="stylesheet" href|<script src)="(?:\.\./)?([^"]+)"', page)
        assert len(linked) == len({name.rpartition(".")[2] for name in linked}), path
        assert set(linked) <= set(sample_outputs)


def test_a_page_is_light(demo_site: Path) -> None:
    """A page without its pictures is at most 100 kB as it is sent, its scripts at most 30 kB."""
    pages = sorted((demo_site / "patterns").glob("*.html"))
    assert len(pages) >= 7
    weights = {page.stem: weight(page) for page in pages}
    assert all(found.fonts > 20_000 and found.scripts > 10_000 for found in weights.values()), (
        "hardly anything is weighed"
    )
    assert {name: found.scripts for name, found in weights.items() if found.scripts > 30_000} == {}
    assert {name: found.whole for name, found in weights.items() if found.whole > 100_000} == {}
