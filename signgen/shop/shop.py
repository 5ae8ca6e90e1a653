"""The shop: what is at hand. Made by `shop.load.load_shop`."""

from __future__ import annotations

from msgspec import Struct

from signgen.shop.materials import Machine, Material
from signgen.shop.tools import Tool


class Shop(Struct, frozen=True, kw_only=True):
    """Cutters, materials and machines; names are unique in each, every number positive and sourced. Order is
    preference. `user_file` is the absolute path of the user's own shop file, None when there is none."""

    tools: tuple[Tool, ...]
    materials: tuple[Material, ...]
    machines: tuple[Machine, ...]
    user_file: str | None = None
