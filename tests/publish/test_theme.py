"""In: theme folders. Out: the nearest file wins, nothing outside is read, and a broken theme is said in a sentence."""

import re
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont
from tests.publish.conftest import KEPT

from sizewright.proof.proofed import Proofed
from sizewright.publish.output import Output
from sizewright.publish.pages import site_pages
from sizewright.publish.slim import slim
from sizewright.publish.theme import BadTheme, Theme
from sizewright.publish.view_site import Page, Site
from sizewright.read.project import Project

# Signs that patterns print (½ for inches, × and − in instructions), which the shipped typeface must have.
PRINTED = "abcXYZ0123456789½¼¾−×*()[]/“”‘’…–—·•°%+=é"


def own(project: Path, name: str, **files: str) -> None:
    for path, text in files.items():
        file = project / "themes" / name / f"{path}.html"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")


@pytest.mark.parametrize("path", ["../a", "/a", "a/../../b", "a//b", "", ".", "a\\b", "C:/a", "a\0b", "a/"])
def test_an_output_outside_the_site_is_our_own_mistake(path: str) -> None:
    with pytest.raises(ValueError, match="not a path below the site"):
        Output(path, b"")


def test_an_output_is_a_path_and_bytes() -> None:
    assert Output("patterns/hat.html", b"x").path == "patterns/hat.html"


def test_the_shipped_theme_is_found_and_adds_its_files(tmp_path: Path) -> None:
    theme = Theme.find("studio", tmp_path)
    paths = [output.path for output in theme.assets()]
    assert paths == sorted(paths)
    assert {"theme/studio.css", "theme/size.js", "theme/fonts/OFL.txt"} <= set(paths)
    assert not [path for path in paths if path.endswith((".html", ".md", ".ttf"))]
    paper = {output.path for output in theme.paper_files()}
    assert {"theme/paper/paper.css", "theme/paper/AtkinsonHyperlegible-Regular.ttf", "theme/paper/OFL.txt"} <= paper


def test_an_own_theme_overrides_one_file_and_keeps_the_rest(tmp_path: Path) -> None:
    own(tmp_path, "mine", page="{% extends 'shipped/page.html' %}{% block title %}Mine{% endblock %}")
    css = tmp_path / "themes" / "mine" / "assets" / "pattern.css"
    css.parent.mkdir()
    css.write_text("a { color: red }", encoding="utf-8")
    theme = Theme.find("mine", tmp_path)
    assets = {output.path: output.content for output in theme.assets()}
    assert assets["theme/pattern.css"] == b"a { color: red }"
    assert b"Two dye pots" in assets["theme/studio.css"]
    assert "theme/icon-192.png" in assets
    (css.parent / "icon.svg").write_text("<svg/>")  # its pictures are its own, too
    (css.parent / "icon-512.png").write_bytes(b"png")
    assert [one.path for one in theme.assets() if "icon" in one.path] == ["theme/icon-512.png", "theme/icon.svg"]
    assert theme.file("page.html") == tmp_path / "themes" / "mine" / "page.html"
    found = theme.file("base.html")
    assert found is not None
    assert found.parent.name == "studio"
    assert theme.file("nothing.html") is None


@pytest.mark.parametrize(
    ("script", "sent"),
    [
        ("// why\nif (a) {\n  // so\n  b(`x ${c}`); // stays\n}\n\n", "if (a) {\nb(`x ${c}`); // stays\n}\n"),
        ("// Licence: CC0\n  a();", "// Licence: CC0\na();\n"),
        ("a = `one\n  two`;\n  b();\n", None),
        ("/* a\n   b */\n  c();\n", None),
        ("a = 'one \\\n  two';\n", None),
    ],
)
def test_a_script_is_sent_without_comments(script: str, sent: str | None) -> None:
    assert slim("a.js", script.encode()) == (script if sent is None else sent).encode()
    assert slim("a.css", script.encode()) == script.encode()
    assert slim("a.js", b"  \xff\n") == b"\xff\n"


def test_an_own_theme_of_the_shipped_name_extends_the_shipped_one(tmp_path: Path) -> None:
    own(tmp_path, "studio", plain="{% extends 'shipped/plain.html' %}")
    shipped = "{% extends 'shipped/404.html' %}{% block main %}own {{ super() }}{% endblock %}"
    own(tmp_path, "studio", **{"404": shipped})
    theme = Theme.find("studio", tmp_path)
    assert theme.environment.get_template("404.html").filename == str(tmp_path / "themes/studio/404.html")
    with pytest.raises(BadTheme, match=r"plain\.html"):
        theme.render("plain.html")


def test_one_template_is_overridden_and_nothing_else_changes(
    tmp_path: Path, sample_project: Project, sample_proofed: tuple[Proofed, ...], sample_outputs: dict[str, Output]
) -> None:
    thanks = "<p>Knitted something from it? Write to us.</p>"
    own(
        tmp_path,
        "mine",
        pattern=f"{{% extends 'shipped/pattern.html' %}}{{% block rights %}}{{{{ super() }}}}{thanks}{{% endblock %}}",
    )
    pages = site_pages(sample_project, sample_proofed, [KEPT], Theme.find("mine", tmp_path))
    changed = {page.path: page.content.decode() for page in pages if page != sample_outputs[page.path]}
    assert set(changed) == {"patterns/cloth.html", "patterns/hat.html"}
    for path, page in changed.items():
        assert page.replace(thanks, "", 1) == sample_outputs[path].content.decode()


def test_what_extends_the_shipped_template_extends_that_of_the_next_folder(tmp_path: Path) -> None:
    """A theme named like a shipped one, `plain`, whose `base.html` extends that of `studio`: none is met twice."""
    own(tmp_path, "plain", base="{% extends 'shipped/base.html' %}{% block look %}mine {{ super() }}{% endblock %}")
    theme = Theme.find("plain", tmp_path)
    assert [folder.parent.name for folder in theme.folders] == ["themes"] * 3
    site = Site("S", "", "", "en", "", "", "", (), ())
    page = theme.render("404.html", site=site, page=Page("Gone", "", "404.html", ""), intro=None)
    assert page.count("mine") == page.count("plain.css") == page.count("studio.css") == 1
    assert page.index("studio.css") < page.index("mine") < page.index("plain.css")


def test_a_theme_that_is_not_there_is_said_with_the_nearest_name(tmp_path: Path) -> None:
    with pytest.raises(BadTheme, match=r"There is no theme “studo”\. Did you mean “studio”\?"):
        Theme.find("studo", tmp_path)


@pytest.mark.parametrize("name", ["../studio", "a/b", "", ".hidden", "/etc"])
def test_a_theme_is_named_and_not_a_path(tmp_path: Path, name: str) -> None:
    with pytest.raises(BadTheme, match="not a theme's name"):
        Theme.find(name, tmp_path)


def test_a_link_out_of_the_theme_is_not_read(tmp_path: Path) -> None:
    secret = tmp_path / "secret.txt"
    secret.write_text("secret", encoding="utf-8")
    project = tmp_path / "project"
    own(project, "mine", page="hello")
    folder = project / "themes" / "mine"
    (folder / "assets").mkdir()
    (folder / "assets" / "a.txt").symlink_to(secret)
    (folder / "leak.html").symlink_to(secret)
    theme = Theme.find("mine", project)
    for reads in (theme.assets, lambda: theme.render("leak.html"), lambda: theme.file("leak.html")):
        with pytest.raises(BadTheme, match="leads out of its folder"):
            reads()


def test_a_theme_folder_that_is_a_link_out_of_the_project_is_not_read(tmp_path: Path) -> None:
    own(tmp_path / "elsewhere", "mine", page="hello")
    (tmp_path / "project" / "themes").mkdir(parents=True)
    (tmp_path / "project" / "themes" / "mine").symlink_to(tmp_path / "elsewhere" / "themes" / "mine")
    with pytest.raises(BadTheme, match="leads out of its folder"):
        Theme.find("mine", tmp_path / "project")


@pytest.mark.parametrize(
    ("template", "said"),
    [
        ("{% for x in %}", r"page\.html:1: "),
        ("\n{{ missing }}", r"page\.html:2: 'missing' is undefined"),
        ("{% include 'gone.html' %}", "gone.html"),
        ("{{ site.__class__.__mro__ }}", "'__class__' of 'str' object is unsafe"),
        ("{% include 'page.html' %}", "recursion"),
        ("{{ 1 / 0 }}", r"page\.html:1: division by zero"),
    ],
)
def test_a_broken_template_is_said_in_a_sentence(tmp_path: Path, template: str, said: str) -> None:
    own(tmp_path, "mine", page=template)
    with pytest.raises(BadTheme, match=said):
        Theme.find("mine", tmp_path).render("page.html", site="x")


def test_templates_have_no_functions_of_the_engine(tmp_path: Path) -> None:
    own(tmp_path, "mine", page="{{ lipsum() }}")
    with pytest.raises(BadTheme, match="'lipsum' is undefined"):
        Theme.find("mine", tmp_path).render("page.html")


def test_what_a_template_is_given_is_escaped(tmp_path: Path) -> None:
    own(tmp_path, "mine", page="{{ text }}")
    assert Theme.find("mine", tmp_path).render("page.html", text="<b>&") == "&lt;b&gt;&amp;"


def test_the_typeface_has_the_signs_patterns_print(repository: Path) -> None:
    studio = repository / "themes/studio"
    files = [*studio.rglob("*.ttf"), *studio.rglob("*-Latin.woff2")]  # "-More" has the letters of further languages
    assert len(files) == 6
    for file in files:
        with TTFont(file) as font:
            assert not {sign for sign in PRINTED if ord(sign) not in font.getBestCmap()}, file.name
            assert font["OS/2"].fsType == 0, "may be embedded (OpenType, OS/2 fsType)"


def test_the_licence_is_beside_each_set_of_fonts(repository: Path) -> None:
    for folder in ("assets/fonts", "paper"):
        text = (repository / "themes/studio" / folder / "OFL.txt").read_text(encoding="utf-8")
        assert "SIL OPEN FONT LICENSE" in text
        assert "Copyright 2020 Braille Institute of America" in text


def test_style_sheets_load_nothing_from_elsewhere(repository: Path) -> None:
    sheets = list((repository / "themes/studio").rglob("*.css"))
    assert len(sheets) >= 6
    for sheet in sheets:
        text = sheet.read_text(encoding="utf-8")
        assert "@import" not in text
        for address in re.findall(r"url\(\"?([^\")]*)", text):
            assert (sheet.parent / address).is_file(), f"{sheet.name}: {address}"
