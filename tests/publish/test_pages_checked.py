"""In: the sample site on disk. Out: what the HTML and style checkers find in it: nothing."""

from collections.abc import Callable
from pathlib import Path


def test_the_html_is_valid(sample_site: Path, nu_check: Callable[[Path], list[str]]) -> None:
    assert nu_check(sample_site) == []


def test_the_styles_are_valid(sample_site: Path, css_check: Callable[[Path], list[str]]) -> None:
    assert css_check(sample_site) == []
