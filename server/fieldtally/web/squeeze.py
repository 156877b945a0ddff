"""Long answers compressed on the way, for phones at the edge of a field. Only for answers that hold no
secret beside what the asker typed."""

import gzip

from flask import Response, request

LEAST_BYTES = 2048


def squeezed(response: Response) -> Response:
    """The same response gzipped, where the asker takes that and it is worth it."""
    response.vary.add("Accept-Encoding")
    data = response.get_data()
    if len(data) >= LEAST_BYTES and request.accept_encodings["gzip"] > 0:
        response.set_data(gzip.compress(data, compresslevel=5, mtime=0))
        response.headers["Content-Encoding"] = "gzip"
    return response
