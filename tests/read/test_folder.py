"""In: folders and files as they lie on a disk. Out: a project, or a sentence about what cannot be read."""

from pathlib import Path

import pytest

from sizewright.read.folder import Unreadable, read_again, read_project, read_single, read_text

HEAD = "---\ntitle: A\n---\n"


def written(folder: Path, **files: str) -> Path:
    """A project folder with these files below `content/`; "__" stands for "/" and "_md" for ".md" in their names."""
    for name, text in files.items():
        path = folder / "content" / name.replace("__", "/").replace("_md", ".md").replace("_yaml", ".yaml")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def test_a_folder_without_content_is_no_project(tmp_path: Path) -> None:
    with pytest.raises(Unreadable, match="holds no folder “content”"):
        read_project(tmp_path)


@pytest.mark.parametrize("name", ["missing.md", "."])
def test_a_path_that_is_no_file_is_told(tmp_path: Path, name: str) -> None:
    with pytest.raises(Unreadable, match="cannot be opened"):
        read_single(tmp_path / name)


def test_a_file_that_is_no_text_is_told_with_its_line(tmp_path: Path) -> None:
    path = tmp_path / "a.md"
    path.write_bytes(HEAD.encode() + b"Gr\xf6\xdfe")
    with pytest.raises(Unreadable, match=r"not UTF-8 text \(line 4\)"):
        read_single(path)


def test_a_file_without_an_end_is_read_no_further_than_a_pattern_goes() -> None:
    with pytest.raises(Unreadable, match="too large"):
        read_single(Path("/dev/zero"))


def test_a_translation_is_read_with_its_source(tmp_path: Path) -> None:
    for name in ("hat.md", "hat.de.md"):
        (tmp_path / name).write_text("---\ntitle: Hat\n---\n", encoding="utf-8")
    with pytest.raises(Unreadable, match=r"is read with its source, hat\.md"):
        read_single(tmp_path / "hat.de.md")
    (tmp_path / "hat.dee.md").write_text("", encoding="utf-8")
    with pytest.raises(Unreadable, match=r"named like a translation of hat\.md"):
        read_single(tmp_path / "hat.dee.md")
    (tmp_path / "hat.md").unlink()
    assert read_single(tmp_path / "hat.de.md").patterns[0].header.title == "Hat"


def test_a_pattern_of_a_project_knows_its_tables_and_one_alone_does_not(tmp_path: Path) -> None:
    table = "title: Heads\nsource: invented\nsizes: {M: {head: 56 cm}}\n"
    pattern = "---\ntitle: A\ntable: heads\nsizes: [M]\n---\n"
    folder = written(tmp_path, sizes__heads_yaml=table, patterns__a_md=pattern)
    inside = read_single(folder / "content" / "patterns" / "a.md")
    assert (inside.findings, inside.patterns[0].header.sizes[0].measurements["head"].typed) == ((), "56 cm")
    alone = tmp_path / "alone.md"
    alone.write_text(pattern, encoding="utf-8")
    assert [finding.rule for finding in read_single(alone).findings] == ["missing-file"]


def test_files_are_read_in_their_order_and_hidden_ones_left_out(tmp_path: Path) -> None:
    folder = written(tmp_path, patterns__b_md=HEAD, patterns__a_md=HEAD, pages__about_md=HEAD, techniques__k_md=HEAD)
    (folder / "content" / "patterns" / ".draft.md").write_text(HEAD, encoding="utf-8")
    (folder / "content" / "patterns" / "a folder.md").mkdir()
    project = read_project(folder)
    assert [pattern.name for pattern in project.patterns] == ["a", "b"]
    assert [pattern.source for pattern in project.patterns] == ["content/patterns/a.md", "content/patterns/b.md"]
    assert [page.name for page in (*project.pages, *project.techniques)] == ["about", "k"]


def test_what_leads_out_of_the_project_is_told_once(tmp_path: Path) -> None:
    folder = written(tmp_path / "project", patterns__a_md=HEAD, media__keep_md="")
    outside = tmp_path / "outside.svg"
    outside.write_text('<svg xmlns="http://www.w3.org/2000/svg"/>', encoding="utf-8")
    (folder / "content" / "media" / "hat.svg").symlink_to(outside)
    (folder / "content" / "media" / "loop.svg").symlink_to(folder / "content" / "media" / "loop.svg")
    (folder / "content" / "media" / "folder").symlink_to(tmp_path)
    project = read_project(folder)
    assert [finding.message for finding in project.findings] == ["“content/media/hat.svg” leads out of the project."]
    assert project.media == {"keep.md"}


BOBBLE = "---\ntitle: A\n---\n```work\nCast on 6 sts.\nRow 1: K2, mb, k3.\n```\n"


def test_a_pattern_read_again_still_knows_the_stitches_of_the_studio(tmp_path: Path) -> None:
    stitch = "- {term: mb, meaning: make bobble, uses: 1, makes: 1}\n"
    folder = written(tmp_path, stitches_yaml=stitch, patterns__a_md=BOBBLE, patterns__b_md=HEAD)
    project = read_project(folder)
    assert project.findings == ()
    written(tmp_path, patterns__a_md=BOBBLE.replace("title: A", "title: B"))
    again = read_again(project, {"a"})
    assert again.findings == ()
    assert [pattern.header.title for pattern in again.patterns] == ["B", "A"]
    assert again.patterns[1] is project.patterns[1]


def test_a_pattern_read_again_gives_its_findings_anew(tmp_path: Path) -> None:
    folder = written(tmp_path, patterns__a_md=f"{HEAD}{{a +}}", patterns__b_md=f"{HEAD}{{b +}}")
    project = read_project(folder)
    assert len(project.findings) == 2
    written(tmp_path, patterns__a_md=HEAD)
    again = read_again(project, {"a"})
    assert [finding.span and finding.span.source for finding in again.findings] == ["content/patterns/b.md"]


def test_a_text_in_memory_is_read_like_a_file(tmp_path: Path) -> None:
    path = tmp_path / "hat.md"
    path.write_text(BOBBLE, encoding="utf-8")
    here, there = read_text(BOBBLE, str(path)), read_single(path)
    assert here.patterns == there.patterns
    assert here.findings == there.findings
    assert here.patterns[0].name == "hat"


@pytest.mark.parametrize(
    ("kind", "name", "told", "mend"),
    [
        ("patterns", "hat.dee.md", "there is no language “dee”", "Did you mean hat.de.md?"),
        ("patterns", "hat.DE.md", "there is no language “DE”", "Did you mean hat.de.md?"),
        ("patterns", "hat.ed.md", "there is no language “ed”", "Did you mean hat.de.md?"),
        ("patterns", "hat_de.md", "a translation of hat is named hat.CODE.md", "Did you mean hat.de.md?"),
        ("patterns", "hat.spring.md", "there is no language “spring”", "a source has no dot in its name"),
        ("", "site.dd.md", "there is no language “dd”", "Did you mean site.de.md?"),
        ("", "stitches.xx.md", "there is no language “xx”", "as stitches.de.md"),
    ],
)
def test_a_file_named_almost_like_a_translation_is_told_once(
    tmp_path: Path, kind: str, name: str, told: str, mend: str
) -> None:
    hat = "---\ntitle: Hat\n---\n"
    site = "name: Larkfold\nlanguages: [en, de]\nrules: {untranslated: off}\n"
    folder = written(tmp_path, site_yaml=site, stitches_yaml="", patterns__hat_md=hat)
    before = read_project(folder)
    (folder / "content" / kind / name).write_text("<!-- Hat -->\nMütze\n", encoding="utf-8")
    project = read_project(folder)
    assert [pattern.name for pattern in project.patterns] == ["hat"]
    (finding,) = [one for one in project.findings if one not in before.findings]
    assert finding.rule == "stray-translation"
    assert (told in finding.message, mend in finding.mend) == (True, True), finding


def test_words_of_the_studio_without_a_file_in_a_language_are_told(tmp_path: Path) -> None:
    site = "name: Larkfold\ndescription: Knits\nlanguages: [en, de]\n"
    stitches = "- {term: mb, meaning: make bobble, uses: 1, makes: 1}\n"
    folder = written(tmp_path, site_yaml=site, stitches_yaml=stitches)
    told = [one.message for one in read_project(folder).findings if one.rule == "untranslated"]
    assert [name in message for name, message in zip(("site.de.md", "stitches.de.md"), told, strict=True)] == [True] * 2
    (folder / "content" / "site.de.md").write_text("<!-- Knits -->\nStricken\n", encoding="utf-8")
    told = [one.message for one in read_project(folder).findings if one.rule == "untranslated"]
    assert len(told) == 1
