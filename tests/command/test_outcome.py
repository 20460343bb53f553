"""A mistake of our own, an interruption and a refusal of the system: a sentence each, an exit code each."""

from collections.abc import Callable
from pathlib import Path
from typing import NoReturn

import pytest
from click.testing import CliRunner, Result

from sizewright.command import proof_command
from sizewright.command.main import sizewright


@pytest.fixture
def fail(band: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Result]:
    """Proofs a pattern, but proofing itself raises what is given."""

    def failing(fault: BaseException, *words: str) -> Result:
        def proof(*_given: object) -> None:
            raise fault

        monkeypatch.setattr(proof_command, "proof_opened", proof)
        return CliRunner().invoke(sizewright, [*words, "proof", str(band)])

    return failing


def test_a_fault_of_ours_is_said_to_be_ours(fail: Callable[..., Result]) -> None:
    done = fail(RuntimeError("no such stitch"))
    assert (done.exit_code, done.stdout) == (3, "")
    assert done.stderr.startswith(
        "This is a fault in sizewright itself, not in your files: RuntimeError: no such stitch"
    )
    assert "report" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_traceback_where_it_is_asked_for(fail: Callable[..., Result]) -> None:
    done = fail(RuntimeError("no such stitch"), "--debug")
    assert done.exit_code == 3
    assert done.stderr.startswith("Traceback (most recent call last):")
    assert "This is a fault in sizewright itself" in done.stderr


def test_an_interruption_is_quiet(fail: Callable[..., Result]) -> None:
    done = fail(KeyboardInterrupt())
    assert (done.exit_code, done.output) == (130, "\n")


def test_what_the_system_refuses_is_a_sentence(fail: Callable[..., Result]) -> None:
    done = fail(PermissionError(13, "Permission denied", "content/site.yaml"))
    assert (done.exit_code, done.stderr) == (2, "Error: content/site.yaml: Permission denied\n")


def test_a_pattern_that_may_not_be_opened(band: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(self: Path, *_: object, **__: object) -> NoReturn:
        raise PermissionError(13, "Permission denied", str(self))

    for opening in ("read_bytes", "read_text", "open"):
        monkeypatch.setattr(Path, opening, refused)
    done = CliRunner().invoke(sizewright, ["proof", str(band)])
    assert (done.exit_code, done.stderr) == (2, "Error: band.md cannot be opened: Permission denied.\n")


def test_no_message_reaches_the_terminal_with_signs_that_it_obeys(fail: Callable[..., Result]) -> None:
    assert "\x1b" not in fail(RuntimeError("\x1b[2J")).stderr
    assert "\x1b" not in CliRunner().invoke(sizewright, ["proof", "\x1b[2J"]).stderr
