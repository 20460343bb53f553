"""In: the files git tracks. Out: the house rules hold: short functions, short files, a tidy top level, no addresses."""

import ast
import re
import subprocess
from pathlib import Path

import pytest

LONGEST_FUNCTION = 40
LONGEST_FILE = 300
WRITTEN_BY_HAND = {".py", ".sh", ".js", ".mjs", ".css", ".html", ".jinja", ".xml", ".lark"}
TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    "pyproject.toml",
    "generator",
    "content",
    "themes",
    "tests",
    "site",
}

# Joined here, so that this file holds none of what it looks for.
REGISTRIES = ["pypi" + ".org", "pythonhosted" + ".org", "npmjs" + ".org", "npmjs" + ".com", "deb." + "debian.org"]
REGISTRIES += ["security." + "debian.org", "snapshot." + "debian.org"]
# A folder of that name inside another path (a stage's, say) is none of the machine's.
MACHINE_PATH = r"(?<![\w.~*)\]}>-])/(?:work|root)/"
FORBIDDEN = re.compile("|".join([MACHINE_PATH, *map(re.escape, REGISTRIES)]).encode())


@pytest.fixture(scope="module")
def tracked(repository: Path) -> list[Path]:
    """The files git tracks and that are there; a source archive without git cannot be judged, and fails."""
    command = ["git", "-c", f"safe.directory={repository}", "-C", str(repository), "ls-files", "-z"]
    names = subprocess.run(command, capture_output=True, check=True).stdout.decode().split("\0")
    files = [repository / name for name in names if name and (repository / name).is_file()]
    assert len(files) > 20, "git names hardly any file: nothing would be checked"
    return files


def long_functions(source: str, most: int = LONGEST_FUNCTION) -> list[str]:
    """The functions of more lines than that, from `def` to the last one, as "name: lines"."""
    functions = (
        node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    )
    lengths = ((function.name, (function.end_lineno or 0) - function.lineno + 1) for function in functions)
    return [f"{name}: {lines}" for name, lines in lengths if lines > most]


def test_a_long_function_is_seen() -> None:
    body = "    x = 1\n"
    assert long_functions("def kept():\n" + body * 39) == []
    assert long_functions("class A:\n  async def grown():\n" + ("  " + body) * 40) == ["grown: 41"]


@pytest.mark.parametrize(
    "text", [f"see {'/' + 'work'}/main", f"={'/' + 'root'}/x", f"https://{REGISTRIES[0]}/simple", f'"{REGISTRIES[2]}"']
)
def test_a_machines_address_is_seen(text: str) -> None:
    assert FORBIDDEN.search(text.encode())


@pytest.mark.parametrize("text", ["generator/sizewright/work/rows.py", "../work/x", "{stage}/work/", "framework/"])
def test_a_stages_folder_is_no_machine_path(text: str) -> None:
    assert not FORBIDDEN.search(text.encode())


def test_functions_are_short(tracked: list[Path], repository: Path) -> None:
    scripts = [file for file in tracked if file.suffix == ".py"]
    assert scripts
    found = {f"{file.relative_to(repository)}": long_functions(file.read_text(encoding="utf-8")) for file in scripts}
    assert {file: names for file, names in found.items() if names} == {}


def test_files_are_short(tracked: list[Path], repository: Path) -> None:
    texts = [
        file
        for file in tracked
        if file.suffix in WRITTEN_BY_HAND and "content" not in file.relative_to(repository).parts
    ]
    assert texts
    lengths = {f"{file.relative_to(repository)}": len(file.read_text(encoding="utf-8").splitlines()) for file in texts}
    assert {file: lines for file, lines in lengths.items() if lines > LONGEST_FILE} == {}


def test_the_top_level_holds_only_what_was_agreed(tracked: list[Path], repository: Path) -> None:
    entries = {file.relative_to(repository).parts[0] for file in tracked}
    assert {entry for entry in entries if not entry.startswith(".")} - TOP_LEVEL == set()


def test_what_publishing_writes_is_not_kept(tracked: list[Path], repository: Path) -> None:
    kept = {f"{file.relative_to(repository)}" for file in tracked if file.is_relative_to(repository / "site")}
    assert kept == {"site/.gitignore"}


def test_no_file_holds_an_address_of_a_machine_or_a_registry(tracked: list[Path], repository: Path) -> None:
    found = {f"{file.relative_to(repository)}": FORBIDDEN.search(file.read_bytes()) for file in tracked}
    assert {file: match[0] for file, match in found.items() if match} == {}
