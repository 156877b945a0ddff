"""What may go wrong later with these settings: said at start, and by `fieldtally doctor` with the rest."""

from pathlib import Path

from fieldtally.settings import Settings
from fieldtally.web.shell import is_built

MOUNTS = Path("/proc/self/mounts")
# File systems shared between machines, where SQLite's write-ahead log is not reliable (sqlite.org/wal.html)
SHARED = {
    "nfs", "nfs3", "nfs4", "cifs", "smb3", "smbfs", "afs", "ceph", "glusterfs", "lustre", "9p", "virtiofs",
    "vboxsf", "drvfs", "prl_fs", "fuse.sshfs", "fuse.glusterfs", "fuse.s3fs", "fuse.rclone", "fuse.osxfs",
    "fuse.grpcfuse", "fuse.vmhgfs-fuse",
}  # fmt: skip
HERE = ("127.0.0.1", "::1", "localhost")


def warnings(settings: Settings) -> list[str]:
    found = [not_built(), shared_folder(settings), no_https(settings)]
    return [warning for warning in found if warning]


def not_built() -> str | None:
    if is_built():
        return None
    return "the web client is not built; in the project's folder run: pip install ."


def shared_folder(settings: Settings) -> str | None:
    kind = file_system(settings.data_dir) if settings.is_sqlite else None
    if kind not in SHARED:
        return None
    return (
        f"the data folder lies on a shared file system ({kind}), where SQLite can lose data; "
        "put it on a disk of this machine, or use PostgreSQL (FIELDTALLY_DATABASE_URL)."
    )


def no_https(settings: Settings) -> str | None:
    if settings.https or settings.host in HERE:
        return None
    return "phones work offline over HTTPS only; docs/deploy.md shows how, then set FIELDTALLY_HTTPS=1."


def file_system(folder: Path, mounts: Path = MOUNTS) -> str | None:
    """The type of file system `folder` lies on, or None where this machine does not tell (not Linux)."""
    if not mounts.exists():
        return None
    wanted = folder.absolute().resolve()
    deepest, kind = -1, None
    for line in mounts.read_text("utf-8", "replace").splitlines():
        _, place, found, *_ = line.split(" ")
        place = Path(place.replace("\\040", " "))
        if wanted.is_relative_to(place) and len(place.parts) >= deepest:  # a later mount hides an earlier one
            deepest, kind = len(place.parts), found
    return kind
