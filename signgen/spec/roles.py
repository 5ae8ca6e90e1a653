"""What a line of a sign is there for."""

from __future__ import annotations

from typing import Literal, get_args

Role = Literal["number", "title", "name", "detail"]
"""A house number or what a sign is called, which leads; what goes with it; what is read from near by."""

ROLES: tuple[Role, ...] = get_args(Role)
