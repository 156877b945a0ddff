"""Who pushes."""

from dataclasses import dataclass

from fieldtally.store.receipt import Origin


@dataclass(frozen=True)
class Sender:
    """The account that pushes, in its role, from one device. `skew_ms` is the server's clock less the
    phone's at sending; `received_at_ms` is milliseconds since 1970 UTC."""

    account_id: str
    role: str
    device: str
    skew_ms: int | None
    received_at_ms: int

    @property
    def origin(self) -> Origin:
        return Origin(self.account_id, self.device, self.skew_ms, self.received_at_ms)
