"""In: every source of the language tests, its errors made warnings as far as a studio may. Out: a site all the same.

What may be made a warning must leave something to print: behind each such fault stand numbers that are wrong, not none.
"""

import re
from pathlib import Path

from sizewright.base.finding import Level
from sizewright.proof.levels import FIRM
from sizewright.proof.run import RULES, proof
from sizewright.publish.run import publish
from sizewright.read.folder import read_project

SOURCES = sorted((Path(__file__).parents[1] / "language").glob("*.md"))
MARKERS = re.compile(r"(?:[ \t]*<<[^<>]*>>)+$", re.M)
SOFT = [
    name for name, rule in RULES.items() if rule.level is Level.ERROR and name not in FIRM and name != "unsafe-level"
]


class Steps:
    """Progress that nobody looks at."""

    def start(self, total: int, what: str) -> None:
        """Begins."""

    def step(self) -> None:
        """Goes on."""


def test_errors_made_warnings_are_published_without_a_hitch(tmp_path: Path) -> None:
    (tmp_path / "content/patterns").mkdir(parents=True)
    rules = "".join(f"  {name}: {{level: warning, reason: a trial}}\n" for name in SOFT)
    (tmp_path / "content/site.yaml").write_text(f"name: Trial\nrules:\n{rules}", encoding="utf-8")
    for source in SOURCES:
        text = MARKERS.sub("", source.read_text(encoding="utf-8"))
        (tmp_path / "content/patterns" / source.name).write_text(text, encoding="utf-8")
    project = read_project(tmp_path)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    softened = {one.rule for each in proofed if not each.refused for one in each.findings} & set(SOFT)
    assert len(softened) > 8
    assert publish(project, proofed, without_refused=True, papers=False, progress=Steps()).done
    pages = {path.stem for path in (tmp_path / "site/patterns").glob("*.html")}
    assert pages == {each.graded.pattern.name for each in proofed if not each.refused}
