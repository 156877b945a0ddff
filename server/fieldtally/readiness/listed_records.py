"""Records other than attempts, as evidence listed under a finding."""

from fieldtally.readiness.context import Book


def records_behind(book: Book, records: list, label, outcome) -> list[dict]:
    """Newest first. `label` and `outcome` make words from a record."""
    return [
        {
            "record_id": record.record_id, "kind": record.kind, "local_date": book.date_of(record),
            "label": label(record), "outcome": outcome(record), "weight": 1.0,
            "outing_id": record.body.get("outing_id"),
        }
        for record in reversed(records)
    ]  # fmt: skip
