"""Who supersedes whom among the entries of one record. Links to entries that are not here lead nowhere,
and a circle (which only a broken or hostile client can write) does no harm."""

from fieldtally.book.entry import Entry


def heads_of(ordered: list[Entry]) -> list[Entry]:
    """The entries that no other supersedes, in order; the last entry if all go round in a circle."""
    superseded = {old for entry in ordered for old in entry.supersedes if old != entry.id}
    return [entry for entry in ordered if entry.id not in superseded] or ordered[-1:]


def roots_of(ordered: list[Entry]) -> list[Entry]:
    """The entries that supersede none that is here, in order; the first entry if there is no such one."""
    here = {entry.id for entry in ordered}
    return [entry for entry in ordered if not _links(entry, here)] or ordered[:1]


def nearest_common(ordered: list[Entry], heads: list[Entry]) -> list[Entry]:
    """The common ancestors of all heads that are not themselves behind another common ancestor."""
    by_id = {entry.id: entry for entry in ordered}
    common = set.intersection(*(_ancestors(by_id, head) for head in heads))
    # an ancestor of a common ancestor is common too, so looking one link back is enough
    behind = {old for entry_id in common for old in by_id[entry_id].supersedes}
    nearest = common - behind
    return [entry for entry in ordered if entry.id in nearest]


def _links(entry: Entry, here: set[str]) -> bool:
    return any(old in here and old != entry.id for old in entry.supersedes)


def _ancestors(by_id: dict[str, Entry], entry: Entry) -> set[str]:
    found: set[str] = set()
    ahead = list(entry.supersedes)
    while ahead:
        entry_id = ahead.pop()
        if entry_id in by_id and entry_id not in found and entry_id != entry.id:
            found.add(entry_id)
            ahead.extend(by_id[entry_id].supersedes)
    return found
