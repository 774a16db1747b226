"""Negotiating: which form an answer takes, and whether the caller has it already."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from hashlib import blake2b

from roofing_core.version import VERSION

JSON = "application/json"
TEXT = "text/plain"
SVG = "image/svg+xml"
HTML = "text/html"
PDF = "application/pdf"
CSV = "text/csv"
XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@lru_cache(maxsize=256)
def preferred(accept: str, offers: Sequence[str]) -> str | None:
    """Give the form on offer that an Accept header likes best (RFC 9110); the first of equals.

    None when it takes none of them.
    """
    ranges = [_range(one) for one in accept.split(",") if one.strip()]
    liked = {offer: _liking(offer, ranges) for offer in offers}
    best = max(offers, key=lambda offer: liked[offer])
    return best if liked[best] > 0 else None


def _range(one: str) -> tuple[str, float]:
    """Take a media range and its weight apart; a weight that cannot be read counts as 1."""
    media, *parameters = (part.strip().lower() for part in one.split(";"))
    weights = [part[2:] for part in parameters if part.startswith("q=")]
    try:
        return media, max(0.0, min(1.0, float(weights[0]))) if weights else 1.0
    except ValueError:
        return media, 1.0


def _liking(offer: str, ranges: list[tuple[str, float]]) -> float:
    """Give the weight of the closest range that the offer falls under."""
    kind = offer.partition("/")[0]
    for closeness in (offer, f"{kind}/*", "*/*"):
        weights = [weight for media, weight in ranges if media == closeness]
        if weights:
            return max(weights)
    return 0.0 if ranges else 1.0


def etag(path: str, query: bytes, media_type: str) -> str:
    """Give the strong tag of an answer. It is a pure function of the request and the version."""
    said = b"\0".join(
        (VERSION.encode(), path.encode("utf-8", "replace"), query, media_type.encode())
    )
    return f'"{blake2b(said, digest_size=12).hexdigest()}"'


def has_it(if_none_match: str | None, tag: str) -> bool:
    """Tell whether an If-None-Match header, if there is one, names the tag."""
    if if_none_match is None:
        return False
    tags = (one.strip().removeprefix("W/") for one in if_none_match.split(","))
    return if_none_match.strip() == "*" or tag in tags
