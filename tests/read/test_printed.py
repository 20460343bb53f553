"""Instructions printed in house style, and read again: the same tree, places apart.

That every pattern and published row keeps its tree, and that trees drawn at random do, is shown here; what the style
is, by examples.
"""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.read.notation_again import directions, lines_of, source, without_places
from tests.read.notation_trees import DIRECTIONS, PROMISED, PROMISES

from sizewright.read.notation.direction_tree import Direction, Even, Promise, RepeatRows, Row, Spaced, Unread

THOROUGH = settings(derandomize=True, max_examples=250, deadline=None)


def assert_same_again(block: tuple[Direction, ...]) -> None:
    """Prints and reads a block."""
    text = lines_of(block)
    (again,) = directions(source(text).patterns[0])
    assert without_places(again) == without_places(block), text


@given(DIRECTIONS)
@THOROUGH
def test_a_direction_printed_and_read_is_the_same(direction: Direction) -> None:
    assert_same_again((direction,))


@given(PROMISED, PROMISES)
@settings(THOROUGH, max_examples=100)
def test_so_is_one_with_a_count_behind_it(
    direction: Row | RepeatRows | Even | Spaced | Unread, promise: Promise | None
) -> None:
    assert_same_again((replace(direction, promise=promise),))


@given(st.lists(DIRECTIONS, min_size=2, max_size=5))
@settings(THOROUGH, max_examples=25)
def test_so_is_a_block(block: list[Direction]) -> None:
    assert_same_again(tuple(block))
