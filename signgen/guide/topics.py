"""Answers to what people ask that is no single option: what to do, and what cannot be done."""

from __future__ import annotations

from msgspec import Struct


class Topic(Struct, frozen=True, kw_only=True):
    """`answer` in whole sentences; `see`: options and commands that it names, shown below it."""

    name: str
    words: tuple[str, ...]
    answer: str
    see: tuple[str, ...] = ()


def _topic(name: str, words: str, answer: str, see: str = "") -> Topic:
    return Topic(
        name=name, words=tuple(words.split(", ")), answer=" ".join(answer.split()), see=tuple(see.split())
    )  # fmt: skip


TOPICS: tuple[Topic, ...] = (
    _topic(
        "board that is already cut",
        "board already cut, blank already to size, precut, ready-made blank, board has its shape, already the "
        "right size, finished board, cut to size",
        """
        A blank that is to keep its own edge: give its size as --size and its shape as --border, and --edge none.
        Nothing is cut outside; X0 Y0 is its front left corner, and clamps on its rim or tape hold it. Of a larger
        board the sign is cut out: --board is that board, and the sign stays a cutter's width and a rim smaller on
        each side.""",
        "edge board size",
    ),
    _topic(
        "smallest text",
        "smallest text, small letters, tiny text, fine print, least letter height, minimum height, how small",
        """
        Capitals of 3 mm are the least that is made to fit. How small letters come out depends on the tip: a V-bit
        with a flat tip cannot cut a stroke narrower than the flat, and a sharp 30 or 60 degree bit cuts finer than
        one of 90. What of a letter stays uncut is measured; a tenth and more is refused with what would do. A face
        with strokes of one width, or --finish stroke, reads best when small.""",
        "v-bit v-bit-tip cap-height finish",
    ),
    _topic(
        "two sides",
        "two sided, double sided, both sides, back side, reverse side, other side",
        """
        A sign is engraved on its face. Only keyholes are cut from behind, as a set-up of their own. For text on
        both sides make two signs from thinner boards and put them back to back.""",
        "holes",
    ),
    _topic(
        "hanging the sign",
        "hang, hang up, hanging, put up on a wall, fasten to the wall, mount on the wall, attach, fix to a wall, "
        "invisible fixing, hidden screws",
        """
        Through holes for screws: --holes corners, top-pair, side-pair and others (signgen list holes), as wide as
        --screw needs. Unseen from the front: --holes keyholes, slots in the back that hang on two screws.
        --template draws the holes at full size to mark the wall.""",
        "holes screw template",
    ),
    _topic(
        "which cutters",
        "which bit do i need, which cutters, tools needed, what bits, what tools, bits to buy, list of cutters",
        """
        Grooves, strokes and bevels are cut by a V-bit (90 degrees unless you say otherwise), everything else by an
        end mill: the outside, holes, flat floors. The planner takes the fewest of the shop's cutters that can make
        the sign; the summary names them. Say what you have by --v-bit and --end-mill, or keep your own in a --shop
        file with only-these-tools = true.""",
        "v-bit end-mill shop",
    ),
    _topic(
        "one cutter only",
        "only one cutter, only one bit, no v-bit, without a v-bit, no end mill, single tool, one bit only",
        """
        Your shop file says which cutters there are (only-these-tools = true). With an end mill alone letters are sunk
        flat (--finish recess, raised or through). With a V-bit alone a blank that is already to size is engraved
        (--edge none); its holes want a drill of their size or an end mill.""",
        "finish end-mill",
    ),
    _topic(
        "several alike",
        "many signs, several signs, a list of signs, more than one, copies, same sign twice, quantity, serial "
        "numbers, spreadsheet, csv, names from a list",
        """
        signgen batch LIST.csv --from SIGN.toml makes a sign for every row of a list, and a column copies says how
        many of each. With --sheet WIDTHxHEIGHT all of them are laid out on whole boards.""",
        "batch",
    ),
    _topic(
        "inches",
        "inches, inch, imperial, feet, fractions, units, millimetres, mm or inch, metric",
        """
        Write the unit and any length may be in inches: --size 8.5x5.5in, --thickness 1/2in, --cap-height '3 1/2
        in'. Bare numbers are millimetres. Who writes the size in inches reads inches on the sheet and in errors
        (--units). Programs in inches come by --dialect inch.""",
        "size dialect",
    ),
    _topic(
        "holding the board down",
        "hold the board, hold down, clamp, clamping, workholding, fix the board, screws in the board, tape, where "
        "do screws go, board moves, vacuum table",
        """
        The setup sheet shows where screws and clamps may be and where not; travel clears them by --clearance, and
        --clamp-height raises it over high clamps. Tabs keep the sign in its board until the end, or an
        --onion-skin. When tape holds the sign itself, --tabs 0.""",
        "clamp-height clearance tabs onion-skin",
    ),
    _topic(
        "speeds and feeds",
        "speed, feed, feeds, how fast, rpm, spindle speed, feed rate, cutting speed, burn marks, burning, smoke, "
        "chatter",
        """
        signgen feeds CUTTER MATERIAL reckons them step by step, as in signgen feeds end-mill-6 hardwood. Where the
        wood burns, feed faster or turn slower; where the cutter chatters, feed slower. The figures stand in the
        shop's data, and a --shop file of your own replaces them.""",
        "shop machine",
    ),
    _topic(
        "how long it takes",
        "time, how long does it take, duration, minutes, too slow, takes too long, quicker, faster, save time",
        """
        The summary and the setup sheet give the time of each program. Deep letters take longest: a smaller --depth
        saves most, then --finish stroke, a larger --end-mill for flat floors, and no --sharp-corners.""",
        "depth finish end-mill",
    ),
    _topic(
        "pictures and logos",
        "logo, picture, photo, image, drawing, artwork, svg, clip art, emblem, crest, icon",
        """
        --art FILE cuts an SVG or DXF drawing beside the text, made as the letters are or by --art-finish. A photograph
        is no area and no line: trace it first. --pictogram NAME is one of those that ship, --code TEXT a QR code. A
        closed path can be the outline (--border path:FILE), a character of a face can stand in the corners
        (--ornament).""",
        "art art-place art-finish pictogram code border ornament",
    ),
    _topic(
        "change a sign",
        "change a sign, edit, again, same sign again, repeat, remake, modify, made before, save settings, project "
        "file",
        """
        The folder of every sign holds sign.toml with all that was asked for. signgen make --from FOLDER/sign.toml
        makes it again, and options behind it go before the file's: --from 17/sign.toml --size 300x200.""",
        "sign-file",
    ),
    _topic(
        "stopped half way",
        "power cut, power failure, stopped, interrupted, pause, resume, continue a program, half way, emergency",
        """
        Keep to the machine's manual. Programs are one for each cutter, so a job can be taken up at the program that
        was stopped, run from its start, if the board has not moved and X0 Y0 and Z0 are where they were: it then
        goes over air where it has been.""",
        "origin z-zero",
    ),
    _topic(
        "check before cutting",
        "safe, test first, is it safe, verify, check a program, crash, collision, before i press start, mistakes, "
        "wrong program",
        """
        No program is written that has not been read back, cut on a simulated board and passed every check. signgen
        check FOLDER judges it again as it stands on disk; --air-cut writes each program a second time, lifted, to
        be run over the board. The manual of the machine, the workshop's rules and local law go first.""",
        "air-cut",
    ),
    _topic(
        "words of one line",
        "one line bigger, different sizes, different fonts, second line smaller, each line, two fonts, line in "
        "another font, size of one line, first line",
        """
        Type settings behind a line, +KEY=VALUE: signgen make "17" +digit-height=90 "Damson Lane" +font=pacifico
        +height-ratio=0.4. In a sign file each such line has a table (signgen explain sign-file).""",
        "sign-file fit",
    ),
    _topic(
        "what it costs",
        "cost, price, quote, how much, money, charge",
        """
        signgen batch LIST.csv --quote reckons boards, the machine's time and the wear of cutters by the [prices] of
        your shop file.""",
        "shop",
    ),
    _topic(
        "printing the sheet",
        "print, setup sheet, paper, instructions, where do i read",
        """
        Open setup.html of the sign's folder and print it from the browser, or ask for --sheet-format pdf. It says
        what to fit, where zero is and which program comes when.""",
        "sheet-format language",
    ),
    _topic(
        "outdoors",
        "outside, outdoor, weather, rain, garden, weatherproof, varnish, finish the wood, oil",
        """
        Larch, oak and the like last outside, and so do HDPE and aluminium composite; plywood only when it is glued
        for it and its edges are sealed. Paint or oil the grooves too: they hold water.""",
        "material paint",
    ),
)  # fmt: skip
