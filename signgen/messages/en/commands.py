"""English: what the commands beside `make` say: check, list, feeds, doctor and the command line itself."""

from __future__ import annotations

WORDS = {
    "checking.name_program_or_folder": "Name a program, or a folder that make wrote.",
    "checking.named_twice": "It is named twice.",
    "checking.name_each_once": "Name each program once.",
    "checking.cutters_given": "{count} {count:cutter is|cutters are} given for {wanted} in turn: {in_turn:plain}.",
    "checking.give_tool_for_each": "Give --tool for each of them, in this order.",
    "checking.not_of_this_sign": "{name} does not belong to this sign.",
    "checking.move_it": "Move it elsewhere.",
    "checking.file_missing": "{name} is missing.",
    "checking.name_folder_or_make_again": "Name a folder that signgen make wrote, or make the sign again.",
    "checking.folder_knows": "A folder that make wrote knows this by itself.",
    "checking.leave_out_or_name_program": "Leave it out, or name a program.",
    "checking.neither_png_nor_svg": "'{file}' ends neither in .png nor in .svg.",
    "checking.name_either": "Name a file of one of both.",
    "checking.several_boards": "There are several boards and one picture.",
    "checking.one_by_one": "Judge them one by one.",
}
