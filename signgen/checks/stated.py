"""What the setup sheet tells the operator, and the control, about one program."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct

from signgen.shop.manner import Change, Manner
from signgen.shop.materials import CuttingData


class Stated(Struct, frozen=True, kw_only=True):
    """`number`: the cutter's place in the order, and in a tool changer, from 1. `change`: how it comes into the
    spindle: before the file is started ("none"), in a pause of it ("pause"), or by a changer that has its length in a
    table ("lengths"). `cutting`: speed and feeds as they stand on the sheet. `manner`: what is switched with the
    spindle, and how long it warms up."""

    number: int
    change: Change
    cutting: CuttingData
    manner: Manner


class Papers(Struct, frozen=True, kw_only=True):
    """What lies beside the programs of one side: `programs`, what the report says of each, in its order; `z_zero` as it
    says, None where it does not; `changed`: pages and pictures that are no longer what make wrote, by the digests in
    the report."""

    programs: Sequence[Mapping[str, object]]
    z_zero: str | None
    changed: Sequence[str]
