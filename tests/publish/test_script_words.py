"""In: scripts with messages, and catalogues. Out: pages say them in their language; an English one needs no table."""

import json
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from sizewright.base.language import Language, language, speaking
from sizewright.base.script_messages import script_messages
from sizewright.publish.joined import joined
from sizewright.publish.script_words import spoken_script

OWN = """"use strict";
const parts = { name: "<b>" };
said.push(tr("Show size {name}", parts), tr("As it is"), ...[1, 3, 5].map((n) => trMany("{n} row", "{n} rows", n)));
said.push(trNodes("Knit {what}, then rest.", { what: 7 }));
"""
ENGLISH = ["Show size <b>", "As it is", "1 row", "3 rows", "5 rows", ["Knit ", 7, ", then rest."]]
POLISH = ["Pokaż <b>", "As it is", "1 rząd", "3 rzędy", "5 rzędów", ["Odpocznij, potem ", 7, "."]]
# The rule of Polish plurals: Unicode CLDR, "pl", cardinals, without the form for fractions.
CATALOGUE = r"""
msgid ""
msgstr ""
"Content-Type: text/plain; charset=utf-8\n"
"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<12 || n%100>14) ? 1 : 2);\n"

msgid "Show size {name}"
msgstr "Pokaż {name}"

msgid "{n} row"
msgid_plural "{n} rows"
msgstr[0] "{n} rząd"
msgstr[1] "{n} rzędy"
msgstr[2] "{n} rzędów"

msgid "Knit {what}, then rest."
msgstr "Odpocznij, potem {what}."

msgid "Said elsewhere"
msgstr "Powiedziane gdzie indziej"
"""


@pytest.fixture
def polish(tmp_path: Path) -> Language:
    """A language that the program does not have, with three forms of the plural."""
    (tmp_path / "pl").mkdir()
    (tmp_path / "pl" / "own.po").write_text(CATALOGUE, encoding="utf-8")
    return language("pl", (tmp_path,))


@pytest.fixture
def files(repository: Path) -> dict[str, bytes]:
    tr = (repository / "themes/studio/assets/tr.js").read_bytes()
    return {"theme/tr.js": tr, "theme/own.js": OWN.encode(), "theme/far/own.js": OWN.encode()}


def run(*scripts: bytes) -> object:
    node = shutil.which("node")
    assert node is not None, "run `sh generator/setup.sh test`, which installs it"
    text = (
        "globalThis.said = [];\n" + "\n".join(one.decode() for one in scripts) + "\nconsole.log(JSON.stringify(said))"
    )
    return json.loads(subprocess.run([node, "-e", text], capture_output=True, text=True, check=True).stdout)


def linked(*names: str) -> str:
    return "".join(f'<script src="theme/{name}.js" defer></script>\n' for name in names)


def test_an_english_page_has_no_table(files: dict[str, bytes]) -> None:
    _, (script,) = joined(linked("tr", "own"), "", files)
    assert b"translated??" not in script.content
    assert run(script.content) == ENGLISH


def test_another_language_is_told_to_each_script(files: dict[str, bytes], polish: Language) -> None:
    with speaking(polish):
        _, (script,) = joined(linked("tr", "own"), "", files)
    assert run(script.content) == POLISH
    assert "elsewhere" not in script.content.decode()


def test_what_is_in_plain_quotation_marks_is_put_in_place(polish: Language) -> None:
    """A page is lighter by the English of each message; one that cannot be put in place is told before."""
    with speaking(polish):
        script = spoken_script(OWN + "said.push(tr('Said elsewhere'));")
    assert 'tr("Pokaż {name}", parts)' in script
    assert '"Odpocznij, potem {what}."' in script
    assert "Show size" not in script
    assert (
        '{"{n} row":["{n} rząd","{n} rzędy","{n} rzędów"],"Said elsewhere":"Powiedziane gdzie indziej","":n=>+('
        in script
    )


def test_scripts_that_are_not_joined_have_a_file_of_words_before_them(
    files: dict[str, bytes], polish: Language
) -> None:
    with speaking(polish):
        page, (words,) = joined(f"<title>t</title>{linked('tr', 'far/own')}", "", files)
    assert page == f'<title>t</title><script src="{words.path}" defer></script>\n{linked("tr", "far/own")}'
    assert run(words.content, files["theme/tr.js"], files["theme/far/own.js"]) == POLISH


def test_messages_are_found_by_reading_the_script() -> None:
    assert script_messages(OWN) == (
        ("Show size {name}",),
        ("As it is",),
        ("{n} row", "{n} rows"),
        ("Knit {what}, then rest.",),
    )


def test_every_message_of_the_theme_is_found(repository: Path) -> None:
    """One within a template literal, or put together, would not be: it would stay in English everywhere."""
    for file in sorted((repository / "themes").glob("*/assets/*.js")):
        script = file.read_text(encoding="utf-8")
        calls = re.findall(r"(?<!globalThis\.)\btr(?:Many|Nodes)?\(\s*(\S)", script)
        if file.name != "tr.js":
            assert set(calls) <= {'"'}, file.name
        found = re.findall(r'\btr(?:Many|Nodes)?\(\s*"((?:[^"\\]|\\.)*)"', script)
        assert {one[0] for one in script_messages(script)} == {json.loads(f'"{one}"') for one in found}, file.name
