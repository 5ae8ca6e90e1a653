"""English: comments and operator messages in programs, and what the check of headings says of them."""

from __future__ import annotations

WORDS = {
    "heading.sign": "Sign: {text}, {width} x {height} mm",
    "heading.pieces": "{text}, {width} x {height} mm",
    "heading.program": "Program {number} of {count}: {does:plain}",
    "heading.from_behind": "From the back: board face down, turned over like a page, run before the face",
    "heading.tool": "Tool: {tool}, {shank} mm shank",
    "heading.cutter": "Cutter {place}. {line}",
    "heading.board": "Board: {width} x {height} x {thickness} mm, {material}",
    "heading.datum_sign": "X0 Y0: bottom-left corner of the finished sign, {beside} mm right of and {above} mm above",
    "heading.of_corner": "the board's bottom-left corner",
    "heading.datum_board": "X0 Y0: bottom-left corner of the board",
    "heading.datum_sign_behind": "X0 Y0: bottom-right corner of the finished sign as it lies now, {beside} mm left "
    "of and {above} mm above",
    "heading.of_corner_behind": "the board's bottom-right corner, the sign at negative X",
    "heading.datum_board_behind": "X0 Y0: bottom-right corner of the board as it lies now, the sign at negative X",
    "heading.z_zero_bottom": "Z0: bottom of the board, which is the top of the spoilboard",
    "heading.z_zero_top": "Z0: top of the board",
    "heading.top": "The board's top is at Z{z}",
    "heading.set_z": "Set Z {ways}",
    "heading.then_set_z": "set Z {ways}",
    "heading.on_face": "on the face at {place}",
    "heading.on_spoilboard": "on the spoilboard at {place}",
    "heading.one_or_other": "{one}, or {other}",
    "heading.fit": "fit the {tool} and set Z0 anew",
    "heading.warms_up": "Warming the spindle up: {seconds} s",
    "trial.shows": "Goes round all that will be cut, spindle still, and waits at each corner",
    "trial.shows_what": "shows what will be cut",
    "trial.under_cutter": "{corner}: board must lie under the cutter",
    "trial.in_the_air": "In the air: everything is {by} mm too high and touches nothing",
    "headings_true.as_said": "cutter, board and zero as in the comments of {count} files",
    "headings_true.other_count": "The heading names {named} cutters; the sheet says {count}.",
    "headings_true.other_cutter": "The heading names another cutter ('{said}') than the sheet: {wanted}.",
    "headings_true.board": "The heading does not say the board's size, {size}.",
    "headings_true.top": "The heading does not say that the board's top is at Z{z}.",
    "headings_true.z_zero_bottom": "The heading does not say that Z0 is at the board's bottom.",
    "headings_true.z_zero_top": "The heading does not say that Z0 is at the board's top.",
    "headings_true.no_datum": "The heading does not say where X0 Y0 lies.",
    "headings_true.datum": "The heading says otherwise than that X0 Y0 is {left} from the board's left and {above} "
    "from its lower edge.",
    "headings_true.stop": "The message before the stop does not name the cutter to fit, {tool}.",
    "headings_true.remedy": "Make the programs again, or believe the setup sheet only after comparing it with this "
    "file.",
}
