"""In: the sample site on disk, in both themes. Out: what the HTML and style checkers find in it: nothing."""

import shutil
from collections.abc import Callable
from pathlib import Path


def test_the_html_is_valid(
    sample_site: Path, plain_site: Path, tmp_path: Path, nu_check: Callable[[Path], list[str]]
) -> None:
    """Both themes in one run: to start the checker takes longer than a page."""
    shutil.copytree(sample_site, tmp_path / "studio")
    shutil.copytree(plain_site, tmp_path / "plain")
    assert nu_check(tmp_path) == []


def test_the_styles_are_valid(sample_site: Path, css_check: Callable[[Path], list[str]]) -> None:
    assert css_check(sample_site) == []
