"""What a hole is beside its place and diameter: round or a slot, and sunk for a screw's head or not."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from signgen.errors import AskError
from signgen.holes.common import SCREW
from signgen.holes.screws import HEAD_STANDARDS, Head, HeadStandard, head_of
from signgen.messages import Message, Mm
from signgen.option import Option
from signgen.units import Limits

SLOT_LENGTH = Option(
    name="slot-length", kind="length", metavar="LENGTH", group="Holes",
    help="Make the holes slots of this whole length, so that the sign can be shifted.", otherwise="round holes",
    replaces=("countersink", "screw-head", "head-diameter", "head-angle"),
    words=("oblong holes", "adjustable holes", "elongated holes", "slots"),
)  # fmt: skip
SLOT_ANGLE = Option(
    name="slot-angle", kind="angle", metavar="ANGLE", group="Holes", limits=Limits(least=-360, greatest=360),
    help="Direction of the slots, anticlockwise from the right.", otherwise="0, along the width",
    words=("direction of slots", "upright slots"),
)  # fmt: skip
COUNTERSINK = Option(
    name="countersink", kind="flag", metavar="true", group="Holes",
    help="Sink the screws' heads: the V-bit cuts a cone at the top of each hole.",
    words=("countersunk", "sunk screws", "flush screws", "screw heads", "flat head"),
)  # fmt: skip
SCREW_HEAD = Option(
    name="screw-head", kind="choice", metavar="STANDARD", group="Holes", choices=HEAD_STANDARDS,
    help="Head of an M screw: iso7046 (cross-recessed, as ISO 2009 slotted) or iso10642 (hexagon socket).",
    otherwise="iso7046", replaces=("head-diameter", "head-angle"),
    words=("kind of screw head",),
)  # fmt: skip
HEAD_DIAMETER = Option(
    name="head-diameter", kind="length", metavar="LENGTH", group="Holes", limits=Limits(least=1, greatest=200),
    help="Diameter of the screw's head for the countersink.", otherwise="the screw's, by its standard",
    replaces=("screw-head",),
    words=("size of the screw head", "washer"),
)  # fmt: skip
HEAD_ANGLE = Option(
    name="head-angle", kind="angle", metavar="ANGLE", group="Holes", limits=Limits(least=60, greatest=120),
    help="Full angle of the cone under the screw's head.", otherwise="90, or 82 for a wood screw",
    words=("angle of the screw head",),
)  # fmt: skip

FORM_OPTIONS = (SLOT_LENGTH, SLOT_ANGLE, COUNTERSINK, SCREW_HEAD, HEAD_DIAMETER, HEAD_ANGLE)

_USUAL_HEAD_DEG = 90.0


class HoleForm(Struct, frozen=True, kw_only=True):
    """`slot_length_mm` over all, None for round holes; `head` None when it is not sunk."""

    slot_length_mm: float | None = None
    slot_angle_deg: float = 0.0
    head: Head | None = None

    @classmethod
    def from_options(cls, values: Mapping[str, object], diameter_mm: float) -> HoleForm:
        """The form from values that `read_option` gave, the screw's among them, for holes of this diameter.

        Raises: AskError when one asks for something that the others do not go with.
        """
        length = values.get(SLOT_LENGTH.name)
        if isinstance(length, float):
            return cls._slot(length, values, diameter_mm)
        if SLOT_ANGLE.name in values:
            raise AskError.at(
                SLOT_ANGLE.name, Message("hole.there_no_slot"), Message("hole.give_slot_length_too_leave")
            )
        if values.get(COUNTERSINK.name) is not True:
            for option in (SCREW_HEAD, HEAD_DIAMETER, HEAD_ANGLE):
                if option.name in values:
                    raise AskError.at(
                        option.name,
                        Message("hole.there_no_countersink"),
                        Message("hole.give_countersink_too_leave_out"),
                    )
            return cls()
        head = _head(values)
        if head.diameter_mm <= diameter_mm:
            raise AskError.at(
                HEAD_DIAMETER.name if HEAD_DIAMETER.name in values else COUNTERSINK.name,
                Message("hole.head_falls_through_holes", head=Mm(head.diameter_mm), hole=Mm(diameter_mm)),
                Message("hole.use_smaller_holes_larger_head"),
            )
        return cls(head=head)

    @classmethod
    def _slot(cls, length_mm: float, values: Mapping[str, object], diameter_mm: float) -> HoleForm:
        if values.get(COUNTERSINK.name) is True:
            raise AskError.at(
                COUNTERSINK.name,
                Message("hole.slots_cannot_countersunk"),
                Message("hole.leave_out_countersink_slot_length"),
            )
        if length_mm <= diameter_mm:
            raise AskError.at(
                SLOT_LENGTH.name,
                Message("hole.slot_wide_longer_than", diameter=Mm(diameter_mm), length=Mm(length_mm)),
                Message("hole.use_more_than_leave_out", diameter=Mm(diameter_mm)),
            )
        angle = values.get(SLOT_ANGLE.name)
        return cls(slot_length_mm=length_mm, slot_angle_deg=angle if isinstance(angle, float) else 0.0)

    def asked(self) -> dict[str, str | float]:
        """Its options as a sign file would ask for them; reading them gives an equal form."""
        if self.slot_length_mm is not None:
            return {SLOT_LENGTH.name: self.slot_length_mm, SLOT_ANGLE.name: self.slot_angle_deg}
        if self.head is not None:
            return {
                COUNTERSINK.name: True, HEAD_DIAMETER.name: self.head.diameter_mm,
                HEAD_ANGLE.name: self.head.angle_deg,
            }  # fmt: skip
        return {}


def _head(values: Mapping[str, object]) -> Head:
    """The head asked for: the screw's, where nothing else is said."""
    screw, standard = values.get(SCREW.name), values.get(SCREW_HEAD.name)
    diameter, angle = values.get(HEAD_DIAMETER.name), values.get(HEAD_ANGLE.name)
    if isinstance(diameter, float):
        if standard is not None:
            raise AskError.at(SCREW_HEAD.name, Message("hole.head_diameter_given_too"), Message("hole.give_one_two"))
        return Head(diameter_mm=diameter, angle_deg=angle if isinstance(angle, float) else _USUAL_HEAD_DEG)
    if not isinstance(screw, str):
        raise AskError.at(COUNTERSINK.name, Message("hole.not_said_head"), Message("hole.give_screw_head_diameter"))
    wanted: HeadStandard | None = next((each for each in HEAD_STANDARDS if each == standard), None)
    head = head_of(screw, wanted)
    return Head(diameter_mm=head.diameter_mm, angle_deg=angle) if isinstance(angle, float) else head
