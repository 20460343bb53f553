"""The command: exit codes, streams, pipes, and a message instead of a traceback; as a process where that matters."""

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from sizewright.command.beginning import begin

Done = subprocess.CompletedProcess[str]
Run = Callable[..., Done]
PATTERN = "content/patterns/ear-band.md"


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A sound project of one pattern; the working folder of the commands."""
    begin("ear-band", tmp_path, new_project=True)
    of_one_pdf(tmp_path)
    return tmp_path


def of_one_pdf(project: Path) -> None:
    """Has a project publish the usual PDF alone: what is tested here is no PDF."""
    with (project / "content" / "site.yaml").open("a", encoding="utf-8") as studio:
        studio.write("papers: {sheets: [a4], each_size: no, large_print: no}\n")


def change(project: Path, old: str, new: str, path: str = PATTERN) -> None:
    file = project / path
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


def broken(project: Path) -> None:
    change(project, "fits multiple of 4", "fits multiple of 7")


def contents(folder: Path) -> dict[str, bytes]:
    return {str(file.relative_to(folder)): file.read_bytes() for file in folder.rglob("*") if file.is_file()}


def test_what_begin_writes_proofs_clean(project: Path, typed: Run) -> None:
    done = typed("proof", cwd=project)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == "1 pattern, 3 sizes: 7 quantities worked out exactly, no findings\n"


def test_begin_in_an_empty_folder_leads_to_a_published_site(tmp_path: Path, typed: Run) -> None:
    done = typed("begin", "ear-band", cwd=tmp_path)
    assert done.returncode == 0
    assert "Wrote content/site.yaml, which makes this folder a project" in done.stdout
    following = [line.split() for line in done.stdout.splitlines() if line.startswith("  sizewright")]
    assert [line[1] for line in following] == ["proof", "preview", "publish"]
    assert typed(*following[0][1:], cwd=tmp_path).returncode == 0
    of_one_pdf(tmp_path)
    assert typed(*following[2][1:], cwd=tmp_path).returncode == 0
    assert "Cast on" in (tmp_path / "site" / "patterns" / "ear-band.html").read_text(encoding="utf-8")


def test_begin_beside_other_files(tmp_path: Path, typed: Run) -> None:
    (tmp_path / "letter.txt").touch()
    done = typed("begin", "ear-band", cwd=tmp_path)
    assert done.returncode == 0
    assert typed("proof", "ear-band.md", cwd=tmp_path).returncode == 0
    again = typed("begin", "ear-band", cwd=tmp_path)
    assert (again.returncode, again.stdout) == (2, "")
    assert "is there already" in again.stderr


def test_warnings_alone_do_not_fail(project: Path, typed: Run) -> None:
    change(project, "licence:", "# licence:")
    done = typed("proof", cwd=project)
    assert done.returncode == 0
    assert done.stdout.endswith("\n1 warning in 1 pattern\n")


def test_an_error_does(project: Path, typed: Run) -> None:
    broken(project)
    for form in ("text", "json"):
        done = typed("proof", "--format", form, cwd=project)
        assert (done.returncode, done.stderr) == (1, "")
    told = json.loads(done.stdout)
    assert told["summary"] == {"patterns": 1, "errors": 1, "warnings": 0, "notes": 0}
    assert told["patterns"][0]["findings"][0]["rule"] == "broken-repeat"


def test_one_file_is_proofed_with_the_project_around_it_or_alone(project: Path, typed: Run) -> None:
    assert typed("proof", PATTERN, cwd=project).returncode == 0
    alone = project / "alone.md"
    alone.write_bytes((project / PATTERN).read_bytes())
    broken(project)
    assert typed("proof", alone, cwd=project).returncode == 0
    both = typed("proof", "--format", "json", ".", "alone.md", PATTERN, cwd=project)
    assert both.returncode == 1
    assert [one["source"] for one in json.loads(both.stdout)["patterns"]] == ["alone.md", PATTERN]


@pytest.mark.parametrize("command", ["proof", "publish", "preview"])
@pytest.mark.parametrize(
    ("make", "says"),
    [
        (lambda folder: folder / "nowhere", "nowhere"),
        (lambda folder: folder, "holds no folder “content”"),
    ],
)
def test_what_cannot_be_read_is_said(
    tmp_path: Path, typed: Run, command: str, make: Callable[[Path], Path], says: str
) -> None:
    done = typed(command, make(tmp_path))
    assert (done.returncode, done.stdout) == (2, "")
    assert says in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("command", ["proof", "publish", "preview"])
def test_a_file_that_is_not_text_is_said(project: Path, typed: Run, command: str) -> None:
    (project / PATTERN).write_bytes(b"---\ntitle: \xff\n---\n")
    done = typed(command, cwd=project)
    assert done.returncode == 2
    assert f"{PATTERN} is not UTF-8 text (line 2)" in done.stderr


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["proff"], "Did you mean 'proof'?"),
        (["proof", "--fromat", "json"], "Did you mean '--format'?"),
        (["proof", "--format", "xml"], "'xml' is not one of 'text', 'lines', 'json', 'sarif'"),
        (["preview", "--port", "70000"], "70000 is not in the range"),
        (["begin"], "Missing argument 'NAME'"),
        (["begin", "My Hat"], "Try “my-hat”."),
        (["publish", "a", "b"], "unexpected extra argument"),
    ],
)
def test_wrong_use_is_exit_code_2(tmp_path: Path, typed: Run, words: list[str], says: str) -> None:
    done = typed(*words, cwd=tmp_path)
    assert (done.returncode, done.stdout) == (2, "")
    assert says in done.stderr


def test_the_version_is_the_packages(typed: Run) -> None:
    assert typed("--version").stdout == "sizewright 0.1.0\n"


@pytest.mark.parametrize("command", ["begin", "preview", "proof", "publish"])
def test_help_has_examples_that_name_the_command(typed: Run, command: str) -> None:
    done = typed(command, "--help")
    assert done.returncode == 0
    _, _, examples = done.stdout.partition("Examples:\n")
    assert examples.startswith(f"    sizewright {command}")


def test_it_is_a_module_too(project: Path) -> None:
    line = [sys.executable, "-m", "sizewright", "proof"]
    assert subprocess.run(line, cwd=project, check=False, capture_output=True).returncode == 0


def shell(line: str, sizewright_folder: Path, cwd: Path, **env: str) -> Done:
    surroundings = {**os.environ, "PATH": f"{sizewright_folder}:{os.environ['PATH']}", **env}
    return subprocess.run(
        ["bash", "-o", "pipefail", "-c", line], cwd=cwd, env=surroundings, capture_output=True, text=True, check=False
    )


COMMANDS = Path(sys.executable).parent


@pytest.mark.parametrize(("form", "is_broken"), [("text", True), ("json", False)])
def test_a_reader_who_leaves_early_changes_nothing(project: Path, form: str, *, is_broken: bool) -> None:
    if is_broken:
        broken(project)
    done = shell(f"sizewright proof --format {form} | true; exit ${{PIPESTATUS[0]}}", COMMANDS, project)
    assert (done.returncode, done.stderr) == (int(is_broken), "")


@pytest.mark.parametrize("form", ["text", "json"])
def test_streams_that_are_closed_or_full(project: Path, form: str) -> None:
    assert shell(f"sizewright proof --format {form} >&- 2>&-", COMMANDS, project).returncode == 0
    for unbuffered in ("", "1"):  # what is written is held back, or not; "" is as if it were not set
        full = shell(f"sizewright proof --format {form} >/dev/full", COMMANDS, project, PYTHONUNBUFFERED=unbuffered)
        assert full.returncode == 2
        assert full.stderr == "Error: No space left on device\n"


def test_json_is_utf_8_whatever_the_terminal_speaks(project: Path) -> None:
    change(project, "title: Ear band", "title: Stirnband für Köpfe")
    line = "sizewright proof --format json"
    plain = shell(line, COMMANDS, project, PYTHONIOENCODING="ascii", LC_ALL="C")
    assert plain.returncode == 0
    assert "Stirnband für Köpfe" in plain.stdout
    broken(project)
    text = shell("sizewright proof", COMMANDS, project, PYTHONIOENCODING="ascii", LC_ALL="C")
    assert text.returncode == 1
    assert "Stirnband f?r K?pfe" in text.stdout


def test_the_same_input_gives_the_same_bytes(project: Path, sizewright: Run) -> None:
    change(project, "licence:", "# licence:")
    runs = {sizewright("proof", "--format", "json", cwd=project, env={"PYTHONHASHSEED": seed}).stdout for seed in "123"}
    assert len(runs) == 1


def test_publishing_twice(project: Path, typed: Run) -> None:
    first = typed("publish", cwd=project)
    assert (first.returncode, first.stderr) == (0, "")
    pages = len(list((project / "site").rglob("*.html")))
    assert f"Published in site/: {pages} pages, 1 PDF, " in first.stdout
    before = contents(project / "site")
    assert "patterns/ear-band.pdf" in before
    second = typed("publish", cwd=project)
    assert (second.returncode, second.stderr) == (0, "")
    assert second.stdout == "Nothing has changed since site/ was published (1 pattern, 0 warnings).\n"
    change(project, "Weave in the ends", "Sew in the ends")
    third = typed("publish", cwd=project)
    assert "Published in site/: 1 page, 1 PDF" in third.stdout
    assert "unchanged" in third.stdout


def test_a_refused_pattern_leaves_the_site_as_it_was(project: Path, typed: Run) -> None:
    begin("second", project, new_project=False)
    assert typed("publish", cwd=project).returncode == 0
    before = contents(project / "site")
    broken(project)
    done = typed("publish", cwd=project)
    assert (done.returncode, done.stderr) == (1, "")
    assert "“cast_on” does not fit a multiple of 7" in done.stdout
    assert "Refused: nothing was written, and site/ is what it was." in done.stdout
    assert "--without-refused” publishes the rest without ear-band." in done.stdout
    assert contents(project / "site") == before
    change(project, "Weave in the ends", "Sew in the ends", "content/patterns/second.md")
    rest = typed("publish", "--without-refused", cwd=project)
    assert rest.returncode == 0
    assert "Refused, and kept as last published: ear-band." in rest.stdout
    after = contents(project / "site")
    assert after["patterns/ear-band.html"] == before["patterns/ear-band.html"]
    assert after["patterns/second.html"] != before["patterns/second.html"]


def test_one_that_was_never_published_is_left_out(project: Path, typed: Run) -> None:
    begin("second", project, new_project=False)
    broken(project)
    done = typed("publish", "--without-refused", cwd=project)
    assert done.returncode == 0
    assert "Refused, and left out, as never published: ear-band." in done.stdout
    assert not (project / "site" / "patterns" / "ear-band.html").exists()


def test_an_error_outside_the_patterns_cannot_be_left_out(project: Path, typed: Run) -> None:
    (project / "content" / "site.yaml").write_text("nmae: x\n", encoding="utf-8")
    done = typed("publish", "--without-refused", cwd=project)
    assert done.returncode == 1
    assert "content/site.yaml:1:1  error  " in done.stdout
    assert "--without-refused”" not in done.stdout
    told = json.loads(typed("proof", "--format", "json", cwd=project).stdout)
    assert [finding["source"] for finding in told["findings"]] == ["content/site.yaml"]


def test_files_of_somebody_else_are_not_written_over(project: Path, typed: Run) -> None:
    (project / "site").mkdir()
    (project / "site" / "mine.txt").touch()
    done = typed("publish", cwd=project)
    assert done.returncode == 2
    assert "did not write (mine.txt)" in done.stderr
    assert contents(project / "site") == {"mine.txt": b""}
