"""In: a header. Out: every needle it names, those of the gauges among them, in the order they stand."""

from sizewright.read.pattern import Header, Needle


def needles_of(header: Header) -> tuple[Needle, ...]:
    """The needles of the gauges and of the list of needles."""
    of_gauges = (gauge.needle for gauge in header.gauges if gauge.needle is not None)
    return tuple(sorted((*of_gauges, *header.needles), key=lambda needle: needle.span))
