"""What the setup sheet tells the operator, and the control, about one program."""

from __future__ import annotations

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
