"""`fieldtally tidy`: photos and voice notes that no logbook speaks of any more. Nothing goes without --drop."""

import click

from fieldtally.cli.opening import opened
from fieldtally.cli.output import answer, json_option
from fieldtally.store.blob_use import every_logbook, unused
from fieldtally.store.blobs import blobs


@click.command()
@click.option("--drop", is_flag=True, help="Drop them for good; without it they are only counted.")
@json_option
def tidy(drop: bool, as_json: bool) -> None:
    """Count the photos and voice notes taken back more than 30 days ago, or drop them.

    A file stays while any entry that stands refers to it, or one that this server cannot read mentions it.
    """
    files = size_bytes = uploads = 0
    with opened():
        for logbook_id in every_logbook():
            for blob in unused(logbook_id):
                files, size_bytes = files + 1, size_bytes + blob.size_bytes
                if drop:
                    blobs().drop(logbook_id, blob.sha256)
            uploads += blobs().drop_unfinished(logbook_id) if drop else 0
    data = {"dropped": drop, "files": files, "size_bytes": size_bytes, "unfinished_uploads": uploads}
    answer(data, as_json, lambda: in_words(data))


def in_words(data: dict) -> str:
    found = f"{data['files']} photos and voice notes nobody needs any more, {data['size_bytes'] / 1e6:.1f} MB"
    if not data["dropped"]:
        return f"{found}. Nothing was dropped; that takes --drop."
    return f"Dropped {found}, and {data['unfinished_uploads']} uploads that were never finished."
