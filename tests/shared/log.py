"""In: what the program and the layout of PDFs log. Out: a test fails by a warning that it did not ask for."""

import logging
from collections.abc import Iterator

import pytest


class Kept(logging.Handler):
    """A handler that keeps what it is given."""

    def __init__(self, records: list[logging.LogRecord]) -> None:
        super().__init__(logging.WARNING)
        self.records = records

    def emit(self, record: logging.LogRecord) -> None:
        self.records.append(record)


@pytest.fixture(autouse=True)
def log_records() -> Iterator[list[logging.LogRecord]]:
    """What weasyprint and sizewright log at WARNING or above; a test that expects any reads and clears the list."""
    records: list[logging.LogRecord] = []
    loggers = [logging.getLogger(name) for name in ("weasyprint", "sizewright")]
    handler = Kept(records)
    for logger in loggers:
        logger.addHandler(handler)
    yield records
    for logger in loggers:
        logger.removeHandler(handler)
    if records:
        lines = [f"{record.name} {record.levelname}: {record.getMessage()}" for record in records]
        pytest.fail("unexpected in the log:\n" + "\n".join(lines), pytrace=False)
