"""In: a sentence. Out: a cast-on told in stretches, with the markers between: "Cast on 8 sts, pm, cast on 8 sts"."""

from sizewright.read.notation.cursor import STITCH_WORDS
from sizewright.read.notation.direction_tree import CastOn
from sizewright.read.notation.kinds import Marking
from sizewright.read.notation.row_parser import RowParser
from sizewright.read.notation.tree import Action, Add, Count, Mark

_CAST_ON = (("cast", "on"), ("co",))


class CastOnParser(RowParser):
    """Reads one sentence that begins with casting on."""

    def cast_on(self) -> CastOn | None:
        """The direction; None where more is said than stretches and markers."""
        start = self.position
        count = self._stretch(first=True)
        if count is None:
            return None
        behind: list[Action] = []
        while not self.done and not self.at("(", "["):
            self.skip(",", "and", "then")
            if self.at("placing"):
                return self._placing(start, count) if not behind else None
            mark = self._marking()
            if isinstance(mark, Mark) and mark.what is Marking.PLACE:
                behind.append(mark)
                continue
            more_start = self.position
            more = self._stretch(first=False)
            if more is None:
                return None
            behind.append(Add(self.since(more_start), more))
        promise = None if self.done else self.promise()
        if not self.done:
            return None
        return CastOn(self.since(start), count, behind=tuple(behind), promise=promise)

    def _stretch(self, *, first: bool) -> Count | None:
        said = self.phrase(_CAST_ON) is not None
        if (first and not said) or not self.number_ahead():
            return None
        if not (said or self.peek(1) in STITCH_WORDS):  # "2 on each needle" is no stretch
            return None
        count = self.step().count
        self.stitch_words()
        return count if self.done or self.at(",", "and", "then") or self.promise_ahead() else None

    def _placing(self, start: int, count: Count) -> CastOn | None:
        """ "placing a marker after 4 sts", "placing markers every 8 sts"."""
        self.step()
        self.skip("a")
        if self.marker_name() is None:
            return None
        every = {"every", "each"} & set(self.texts(2))
        self.skip("after", "every", "each", "the", "first")
        first = self.fixed() if self.number_ahead() else None
        self.skip("th", "rd", "nd", "st", "sts", "stitch", "stitches")
        total = count.value if isinstance(count.value, int) else None
        if not self.done or not first or (every and total is None):
            raise self.fault("Write “Cast on 8 sts, pm, cast on 8 sts”.")
        return self._marked_at(start, count, (first,) if not every else range(first, total or 0, first))

    def _marked_at(self, start: int, count: Count, places: range | tuple[int, ...]) -> CastOn | None:
        """The cast-on in stretches, a marker behind each."""
        span = self.since(start)
        total = count.value if isinstance(count.value, int) else None
        if total is None or not places or places[-1] > total:
            raise self.fault("Write “Cast on 8 sts, pm, cast on 8 sts”.")
        behind: list[Action] = []
        ends = [*places[1:], total]
        for before, after in zip(places, ends, strict=True):
            behind += [Mark(span, Marking.PLACE), Add(span, Count(span, after - before))]
        return CastOn(span, Count(count.span, places[0]), behind=tuple(behind))
