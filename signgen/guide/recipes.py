"""Commands for signs that people make, to begin from. A test makes each of them."""

from __future__ import annotations

import shlex

from msgspec import Struct


class GuideRecipe(Struct, frozen=True, kw_only=True):
    """`command` is what to type after `signgen make`."""

    name: str
    words: tuple[str, ...]
    about: str
    command: str

    @property
    def arguments(self) -> list[str]:
        """As a shell hands them over."""
        return shlex.split(self.command)


RECIPES: tuple[GuideRecipe, ...] = (
    GuideRecipe(
        name="house number",
        words=("number of a house", "street number", "number with the street below"),
        about="A large number over the name of the lane, with a screw in each corner.",
        command='"48" +digit-height=80 "Damson Lane" --size 200x160 --thickness 15 --material larch --holes corners '
        "--screw '#8'",
    ),
    GuideRecipe(
        name="door plaque",
        words=("name plate", "door sign", "office sign", "surname", "family name"),
        about="A name inside a double line, hung on two screws.",
        command='"The Weavers" --size 240x90 --thickness 12 --material oak --font cinzel --cap-height 18 '
        "--frame 6 --frame-lines 2 --frame-width 1.2 --holes side-pair --screw M4 --inset 15",
    ),
    GuideRecipe(
        name="memorial plate",
        words=("memorial", "bench plate", "grave", "in memory", "dates", "plaque with dates"),
        about="Three centred lines with bevelled edges and countersunk screws.",
        command='"In memory of" +height-ratio=0.6 "Ada Quill" "1931 to 2019" +height-ratio=0.6 --size 220x120 '
        "--thickness 12 --material oak --font cinzel --edge-chamfer 2 --holes corners --screw '#8' --countersink "
        "--inset 12",
    ),
    GuideRecipe(
        name="gate sign",
        words=("farm sign", "gate", "yard sign", "sign on a post"),
        about="Raised letters on a long board, to be painted and read from the road.",
        command='"Tannery Yard" --size 600x160 --thickness 18 --material larch --machine bench-router --finish raised '
        "--cap-height 58 --holes side-pair --screw '#8' --inset 15 --paint black",
    ),
    GuideRecipe(
        name="round plate",
        words=("round sign", "circle sign", "disc", "round plaque", "circular"),
        about="A number in the middle of a disc, with text on a circle over it.",
        command='"QUINCE COTTAGE" +arc=72 +arc-centre=sign +cap-height=14 "9" +digit-height=72 --border circle '
        "--size 200x200 --thickness 12 --material oak",
    ),
    GuideRecipe(
        name="arrow",
        words=("direction sign", "signpost", "pointing sign", "way marker"),
        about="A board that points, with two holes for its post.",
        command='"Mill Lane" --border arrow --size 360x100 --thickness 15 --material larch --cap-height 36 '
        "--holes 'at:20,25;20,75' --screw M6",
    ),
    GuideRecipe(
        name="shop sign",
        words=("business sign", "trade sign", "bakery", "shop front", "company sign"),
        about="A script over a line of capitals, on a scalloped board with a frame.",
        command='"Baker" +font=pacifico "BREAD & ROLLS DAILY" +height-ratio=0.4 --size 420x220 --thickness 18 '
        "--material hardwood --machine bench-router --border scalloped --frame 12 --holes keyholes",
    ),
)
