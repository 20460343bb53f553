"""In: `sizewright function` with a name or none. Out: what the page on the numbers says, or the nearest name."""

import pytest
from click.testing import CliRunner

from sizewright.command.main import sizewright
from sizewright.publish.view_method import MethodView, method_views

METHODS = tuple(method_views())


def test_without_a_name_all_are_listed_with_a_sentence() -> None:
    shown = CliRunner().invoke(sizewright, ["function"])
    assert shown.exit_code == 0
    lines = shown.output.splitlines()
    assert lines[::2] == [one.name for one in METHODS]
    assert all(line.startswith("  ") and line.endswith(".") for line in lines[1::2])


@pytest.mark.parametrize("method", METHODS, ids=lambda one: one.name)
def test_each_is_told_as_on_the_page(method: MethodView) -> None:
    shown = CliRunner().invoke(sizewright, ["function", method.name])
    assert shown.exit_code == 0
    assert method.page in shown.output
    assert all(told in shown.output for told in (*method.takes, *method.gives))


def test_a_misspelt_name_is_asked_about() -> None:
    wrong = CliRunner().invoke(sizewright, ["function", "sleeve_tapper"])
    assert wrong.exit_code == 2
    assert "There is no function “sleeve_tapper”. Did you mean “sleeve_taper”?" in wrong.output
