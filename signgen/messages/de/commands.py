"""German: what the commands beside `make` say: check, list, feeds, doctor and the command line itself."""

from __future__ import annotations

WORDS = {
    "checking.name_program_or_folder": "Ein Programm nennen, oder einen Ordner, den make geschrieben hat.",
    "checking.named_twice": "Es ist zweimal genannt.",
    "checking.name_each_once": "Jedes Programm einmal nennen.",
    "checking.cutters_given": "{count} Fräser {count:ist|sind} gegeben für {wanted} nacheinander: {in_turn:plain}.",
    "checking.give_tool_for_each": "Für jeden davon --tool angeben, in dieser Reihenfolge.",
    "checking.not_of_this_sign": "{name} gehört nicht zu diesem Schild.",
    "checking.move_it": "Es anderswohin legen.",
    "checking.file_missing": "{name} fehlt.",
    "checking.name_folder_or_make_again": "Einen Ordner nennen, den signgen make geschrieben hat, oder das Schild neu "
    "machen.",
    "checking.folder_knows": "Ein Ordner, den make geschrieben hat, weiß das selbst.",
    "checking.leave_out_or_name_program": "Es weglassen, oder ein Programm nennen.",
    "checking.neither_png_nor_svg": "‚{file}‘ endet weder auf .png noch auf .svg.",
    "checking.name_either": "Eine Datei mit einer der beiden Endungen nennen.",
    "checking.several_boards": "Es sind mehrere Bretter und ein Bild.",
    "checking.one_by_one": "Sie einzeln prüfen.",
}
