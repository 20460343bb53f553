"""In: what somebody signed off, and what is now. Out: what moved since, by size, with its place."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sizewright.base.place import Span
from sizewright.proof.matched import Item, matched
from sizewright.proof.telling import by_size
from sizewright.read.sign_off import NOTHING, Record, SignOff

_BY_NAME = ("quantity", "fact", "accepted")  # there is one of each name; all else is matched by what it says
_CALLED = {"row": "count of ", "accepted": "acceptance of ", "text": "what a sentence counts"}
_IN = " in "  # between the name of a quantity and its unit


@dataclass(frozen=True, slots=True)
class Moved:
    """One thing that is not as it was signed off: a sentence, where it is (None: it is gone), and in which sizes."""

    kind: str
    message: str
    span: Span | None
    sizes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Sizes:
    """The sizes both have, with their places in the old and in the new records."""

    places: tuple[tuple[str, int, int], ...]

    def was(self, record: Record) -> list[tuple[str, str]]:
        return [(size, _shown(record, before)) for size, before, _ in self.places]

    def is_now(self, record: Record) -> list[tuple[str, str]]:
        return [(size, _shown(record, after)) for size, _, after in self.places]


def moved(signed: SignOff, sizes: tuple[str, ...], records: Sequence[Record]) -> tuple[Moved, ...]:
    """Everything that differs, sizes first, then in the order of the records."""
    found = []
    if sizes != signed.sizes:
        found.append(Moved("sizes", f"Sizes were {', '.join(signed.sizes)}, are {', '.join(sizes)}.", None))
    both = _Sizes(tuple((size, signed.sizes.index(size), sizes.index(size)) for size in sizes if size in signed.sizes))
    for old, new, elsewhere in (*_of_a_name(signed.records, records), *_by_meaning(signed.records, records, both)):
        difference = _difference(old, new, both)
        if difference is not None:
            found.append(difference)
        elif elsewhere and new is not None:
            found.append(Moved(new.kind, f"{_called(new)} stands elsewhere.", new.span))
    return tuple(found)


def _shown(record: Record, place: int) -> str:
    """What a record says in one size, as a sentence has it."""
    value = record.values[place]
    if record.kind == "quantity":
        return f"{value} {record.name.partition(_IN)[2]}".strip()
    return f"“{value}”" if record.kind in ("does", "text") and value != NOTHING else value


_Pairs = Iterator[tuple[Record | None, Record | None, bool]]


def _of_a_name(old: Sequence[Record], new: Sequence[Record]) -> _Pairs:
    was, is_now = ({(one.kind, one.name): one for one in side if one.kind in _BY_NAME} for side in (old, new))
    for key in dict.fromkeys((*is_now, *was)):
        yield was.get(key), is_now.get(key), False


def _by_meaning(old: Sequence[Record], new: Sequence[Record], both: _Sizes) -> _Pairs:
    before, after = ([one for one in side if one.kind not in _BY_NAME] for side in (old, new))
    was = [Item(one.kind, one.name, tuple(value for _, value in both.was(one))) for one in before]
    is_now = [Item(one.kind, one.name, tuple(value for _, value in both.is_now(one))) for one in after]
    for match in matched(was, is_now):
        yield (
            None if match.old is None else before[match.old],
            None if match.new is None else after[match.new],
            match.moved,
        )


def _difference(old: Record | None, new: Record | None, both: _Sizes) -> Moved | None:
    if new is None:
        return None if old is None else Moved(old.kind, f"{_called(old)} is gone; it was {_told(both.was(old))}.", None)
    if old is None:
        return Moved(new.kind, f"{_called(new)} is new: {_told(both.is_now(new))}.", new.span)
    pairs = zip(both.was(old), both.is_now(new), strict=True)
    told = [(size, f"was {was}, is {is_now}") for (size, was), (_, is_now) in pairs if was != is_now]
    if not told:
        return None
    sizes = tuple(size for size, _ in told if size != NOTHING)
    words = dict.fromkeys(words for _, words in told)
    if len(words) > 1:
        return Moved(new.kind, f"{_called(new)}: {_told(told)}.", new.span, sizes)
    who = f"Size{'s' if len(sizes) > 1 else ''} {', '.join(sizes)}: " if sizes else ""
    return Moved(new.kind, f"{who}{_called(new)} {next(iter(words))}.", new.span, sizes)


def _told(values: Sequence[tuple[str, str]]) -> str:
    """A value for each size, once where all agree."""
    found = dict.fromkeys(value for _, value in values)
    return next(iter(found)) if len(found) == 1 else by_size(values)


def _called(record: Record) -> str:
    name = "a direction" if record.name == NOTHING and record.kind == "does" else record.name
    if record.kind == "quantity":
        name = name.partition(_IN)[0]
    return _CALLED.get(record.kind, "") + ("" if record.kind == "text" else name)
