"""The command `errata`: files, folders and git revisions, its exit codes and its forms. The cap is invented."""

import json
import os
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner, Result

from sizewright.command.main import sizewright

MADE = {
    "GIT_AUTHOR_NAME": "A Tester",
    "GIT_AUTHOR_EMAIL": "tester@example.invalid",
    "GIT_COMMITTER_NAME": "A Tester",
    "GIT_COMMITTER_EMAIL": "tester@example.invalid",
    "GIT_CONFIG_GLOBAL": os.devnull,
    "GIT_CONFIG_SYSTEM": os.devnull,
}
CAP = """---
title: Cap
table: heads
sizes: {S: {}, M: {}}
gauge: {stitches: 20 st / 10 cm, rows: 28 rnd / 10 cm}
---
```grade
cast_on = head * stitch_gauge, nearest multiple of 8
```
```work
Cast on {cast_on} sts. Join to work in the round.
Dec Rnd: K8 (9), k2tog, k to end.
```
"""
HEADS = "title: Heads\nsource: invented for a test\nsizes: {S: {head: 48 cm}, M: {head: 56 cm}}\n"
FOUND = "Size M: Dec Rnd reads k9, should read k10."


def errata(*words: str) -> Result:
    return CliRunner().invoke(sizewright, ["errata", *words])


@pytest.fixture
def cap(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A project with one pattern that needs a table beside it, and the working folder in it."""
    for name, value in MADE.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    project = tmp_path / "studio"
    for folder in ("patterns", "sizes"):
        (project / "content" / folder).mkdir(parents=True)
    (project / "content/sizes/heads.yaml").write_text(HEADS, encoding="utf-8")
    file = project / "content/patterns/cap.md"
    file.write_text(CAP, encoding="utf-8")
    monkeypatch.chdir(project)
    return Path("content/patterns/cap.md")


@pytest.fixture
def committed(cap: Path) -> Callable[[str], None]:
    """Writes the pattern and commits it, in a repository of its own, under a tag."""
    subprocess.run(["git", "init", "-q", str(cap.parents[2])], check=True)

    def commit(tag: str) -> None:
        for words in (["add", "."], ["commit", "-q", "-m", tag], ["tag", tag]):
            subprocess.run(["git", *words], check=True)

    commit("v1")
    return commit


def rewrite(cap: Path, before: str = "K8 (9)", after: str = "K8 (10)") -> None:
    text = cap.read_text(encoding="utf-8")
    assert before in text
    cap.write_text(text.replace(before, after), encoding="utf-8")


def test_two_files_and_two_folders(cap: Path, tmp_path: Path) -> None:
    old = tmp_path / "old.md"
    old.write_text(CAP.replace("table: heads\nsizes: {S: {}, M: {}}", "sizes: {S: {head: 48 cm}, M: {head: 56 cm}}"))
    same = errata(str(old), str(cap))
    assert (same.exit_code, same.output) == (0, "No errata in 1 pattern\n")
    rewrite(cap)
    found = errata(str(old), str(cap))
    assert (found.exit_code, found.output) == (1, f"Cap\n  {FOUND}\n\n1 erratum in 1 pattern\n")
    assert errata(".", ".").exit_code == 0


def test_revisions_are_read_as_they_were_with_the_tables_beside_them(
    cap: Path, committed: Callable[[str], None]
) -> None:
    rewrite(cap)
    Path("content/sizes/heads.yaml").write_text(HEADS.replace("48 cm", "56 cm"), encoding="utf-8")
    for old in ("v1", "HEAD", f"v1:{cap}"):
        found = errata(old, str(cap))
        assert (found.exit_code, FOUND in found.output) == (1, True)
        assert "Size S: cast on 112 sts, not 96 sts." in found.output
    committed("v2")
    assert FOUND in errata(f"v1:{cap}", f"v2:{cap}").output
    assert FOUND in errata("v1", "v2").output
    assert FOUND in errata("v1", ".").output
    assert errata("v2", ".").exit_code == 0


@pytest.mark.usefixtures("committed")
def test_a_revision_is_read_from_a_folder_below_the_project(cap: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    rewrite(cap)
    monkeypatch.chdir("content/patterns")
    assert FOUND in errata("v1:cap.md", "cap.md").output
    assert FOUND in errata("v1", "cap.md").output


@pytest.mark.parametrize(
    ("old", "said"),
    [
        ("v9", "“v9” is neither a file or folder nor a revision"),
        ("v1:content/patterns/none.md", "There is no content/patterns/none.md in v1."),
        (":content/patterns/cap.md", "names no revision"),
        ("v1:../../elsewhere.md", "lies outside the repository"),
        ("-v1", ""),
        ("--output=x", ""),
        ("HEAD:content", "no folder “content”"),
    ],
)
@pytest.mark.usefixtures("committed")
def test_what_cannot_be_found_is_told(cap: Path, old: str, said: str) -> None:
    found = errata("--", old, str(cap))
    assert (found.exit_code, said in found.output, "Traceback" in found.output) == (2, True, False), found.output


def test_without_a_repository_or_without_git_it_says_so(cap: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found = errata("v1", str(cap))
    assert (found.exit_code, "not a git repository" in found.output) == (2, True)
    monkeypatch.setenv("PATH", "")
    missing = errata("v1", str(cap))
    assert (missing.exit_code, "needs git, which is not installed" in missing.output) == (2, True)


def test_a_link_in_a_revision_leads_nowhere(cap: Path, committed: Callable[[str], None], tmp_path: Path) -> None:
    secret = tmp_path / "secret.md"
    secret.write_text(CAP, encoding="utf-8")
    cap.with_name("link.md").symlink_to(secret)
    committed("v2")
    found = errata("v2", ".")
    assert "secret" not in found.output
    assert errata("v2:content/patterns/link.md", str(cap)).exit_code == 2


def test_a_fault_in_a_version_is_noted(cap: Path, tmp_path: Path) -> None:
    old = tmp_path / "old.md"
    old.write_text(CAP.replace("table: heads\n", ""), encoding="utf-8")
    found = errata(str(old), str(cap))
    assert "One of the versions has faults" in found.output


@pytest.mark.usefixtures("committed")
def test_json_has_the_sizes_and_both_readings(cap: Path) -> None:
    rewrite(cap)
    told = json.loads(errata("v1", str(cap), "--format", "json").output)
    (pattern,) = told["patterns"]
    assert told["summary"] == {"patterns": 1, "errata": 1}
    assert pattern["errata"] == [
        {
            "change": "corrected",
            "kind": "row",
            "section": "",
            "name": "Dec Rnd",
            "sizes": ["M"],
            "reads": "K9, k2tog, k to end.",
            "should_read": "K10, k2tog, k to end.",
            "line": 12,
            "text": FOUND,
        }
    ]


@pytest.mark.usefixtures("committed")
def test_the_markdown_passage_goes_into_the_header(cap: Path) -> None:
    rewrite(cap)
    text = errata("v1", str(cap), "--format", "markdown").output
    passage = text.split("```yaml\n")[1].split("```")[0]
    (change,) = yaml.safe_load(passage)["changes"]
    assert change["text"] == FOUND
    cap.write_text(cap.read_text(encoding="utf-8").replace("title: Cap\n", f"title: Cap\n{passage}"), encoding="utf-8")
    proofed = CliRunner().invoke(sizewright, ["proof", "--format", "json", str(cap)])
    assert json.loads(proofed.output)["summary"]["errors"] == 0
    assert errata("v1", str(cap)).output.count("Size") == 1, "the entry itself is no erratum"
