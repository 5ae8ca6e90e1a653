"""The shop that a batch is made with."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from signgen.shop.load import load_shop
from signgen.shop.shop import Shop


@lru_cache(maxsize=8)
def shop_of(path: Path | None) -> Shop:
    """The shop, read once: a batch is made with one state of it."""
    return load_shop(path)
