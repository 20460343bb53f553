"""What is accepted at its place: shown in every form of the proof with its reason, and no longer counted."""

import json
from pathlib import Path

from click.testing import CliRunner
from sarif_pydantic import Sarif

from sizewright.command.main import sizewright

REASON = "the needles are those of the kit"


def proofed(band: Path, form: str, more: str = "") -> tuple[int, str]:
    """The exit code and output of `proof` on a source with one broken promise, which is accepted."""
    text = band.read_text(encoding="utf-8")
    text = text.replace("require cast_on", "require cast_on = cast_on + 1 st\nrequire cast_on")
    accepted = f'accepted: [{{rule: broken-promise, text: "cast_on + 1 st", reason: {REASON}}}]\n---\n\n```grade'
    text = text.replace("---\n\n```grade", f"{more}{accepted}").replace(
        "{depth}.\n```", "{depth}.\nBind off all sts.\n```"
    )
    band.write_text(text, encoding="utf-8")
    found = CliRunner().invoke(sizewright, ["proof", "--format", form, str(band)])
    return found.exit_code, found.output


def test_text_shows_it_below_the_findings(band: Path) -> None:
    code, text = proofed(band, "text")
    assert code == 0
    assert text.splitlines()[0] == "Accepted"
    assert f"    reason: {REASON}" in text.splitlines()
    assert text.splitlines()[-1] == "1 accepted in 1 pattern"


def test_lines_and_json_have_it_with_its_reason(band: Path) -> None:
    code, lines = proofed(band, "lines")
    assert (code, len(lines.splitlines())) == (0, 1)
    assert ": accepted: broken-promise: " in lines
    assert lines.endswith(f" {REASON}\n")
    told = json.loads(CliRunner().invoke(sizewright, ["proof", "--format", "json", str(band)]).output)
    (pattern,) = told["patterns"]
    assert (pattern["findings"], told["summary"]["errors"]) == ([], 0)
    assert [(one["rule"], one["level"], one["reason"]) for one in pattern["accepted"]] == [
        ("broken-promise", "error", REASON)
    ]


def test_sarif_suppresses_it(band: Path) -> None:
    """Source: SARIF 2.1.0 (OASIS), 3.27.23 and 3.35: a suppression has a kind, a status and a justification."""
    _, text = proofed(band, "sarif")
    (run,) = Sarif.model_validate_json(text).runs
    (result,) = run.results or []
    (suppression,) = json.loads(text)["runs"][0]["results"][0]["suppressions"]
    assert result.rule_id == "broken-promise"
    assert suppression == {"kind": "inSource", "status": "accepted", "justification": REASON}


def test_lines_written_above_it_do_not_move_it(band: Path) -> None:
    proofed(band, "lines", more="notions: [scissors]\ncare: [Wash by hand.]\n")
    text = band.read_text(encoding="utf-8").replace("```grade", "A word before.\n\n```grade")
    band.write_text(text, encoding="utf-8")
    assert CliRunner().invoke(sizewright, ["proof", str(band)]).exit_code == 0
