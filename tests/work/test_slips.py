"""A fixed sample of slips planted in the demo's instructions is caught; `tests/bench/mutations.py` plants them all."""

from dataclasses import replace
from pathlib import Path

import pytest
from tests.bench.mutations import caught, copied, slips_of

# Kinds of which each slip must be caught; of the others some are other but valid knitting.
CERTAIN = ("promise", "place", "decrease forgotten", "increase forgotten", "stated multiple", "once for twice")
EVERY = 12


@pytest.fixture(scope="module")
def patterns(repository: Path, tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    """The demo's patterns, copied, so that slips may be planted in them."""
    return copied(repository / "content", tmp_path_factory.mktemp("slips"))


def test_a_sample_of_slips_is_caught(patterns: list[Path]) -> None:
    kinds: set[str] = set()
    missed: list[str] = []
    number = 0
    for path in patterns:
        certain = [slip for slip in slips_of(path) if slip.kind in CERTAIN]
        sample = [slip for at, slip in enumerate(certain, start=number) if at % EVERY == 0]
        number += len(certain)
        kinds.update(slip.kind for slip in sample)
        missed += [
            f"{slip.source}:{slip.line} {slip.kind}: {slip.before} became {slip.after}"
            for slip, found in caught(path, sample)
            if not found
        ]
    assert number > 80
    assert kinds >= {"promise", "place", "decrease forgotten"}
    assert missed == []


def test_what_is_not_changed_is_not_caught(patterns: list[Path]) -> None:
    """So that a slip is not called caught whatever it is; a source is left as it was."""
    for path in patterns:
        text = path.read_text(encoding="utf-8")
        first = next(iter(slips_of(path)), None)
        if first is None:  # an adaptation may have no block of its own
            assert "based_on:" in text
            continue
        assert [found for _, found in caught(path, [replace(first, text=text)])] == [False]
        assert path.read_text(encoding="utf-8") == text
