"""In: the faults of all sizes. Out: those of one kind at one place together: one fault in six sizes is one finding."""

from collections.abc import Iterator
from typing import TypeVar

from sizewright.base.place import Span
from sizewright.work.faults import Fault
from sizewright.work.worked import Worked

_Kind = TypeVar("_Kind", bound=Fault)


def grouped(worked: Worked, kind: type[_Kind]) -> Iterator[tuple[tuple[_Kind, ...], tuple[str, ...]]]:
    """The faults of a kind, place by place, with the names of their sizes; of one met again and again, the first."""
    places: dict[Span, dict[int, _Kind]] = {}
    for fault in worked.faults:
        if isinstance(fault, kind):
            places.setdefault(fault.span, {}).setdefault(fault.size, fault)
    for by_size in places.values():
        faults = tuple(by_size[size] for size in sorted(by_size))
        yield faults, tuple(name for fault in faults if (name := name_of(worked, fault.size)))


def name_of(worked: Worked, size: int) -> str:
    """The name of a size by its place; "" in a pattern of one size."""
    return worked.graded.sizes[size] if worked.graded.sizes else ""
