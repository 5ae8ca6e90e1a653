"""English: options, lines as they are typed, and what is asked of `signgen explain`."""

from __future__ import annotations

WORDS = {
    "problem.and_of": "{what} The same of {others}.",
    "problem.and_of_more": "{what} The same of {others:plain} and {count} more.",
    "line.before_any": "It stands before any line.",
    "line.text_first": 'Type the text first, as in "17" {setting}.',
    "line.twice": "The line has it twice.",
    "line.leave_one": "Leave one of them out.",
    "option.unknown": "There is no such option.",
    "option.search": "Ask with signgen explain {word}, or see signgen make --help-all.",
    "explain.nothing": "Nothing is known of it.",
    "explain.all_in_english": "The reference is in English as yet.",
    "explain.all_is_alone": "It makes one page of everything.",
    "explain.leave_the_rest_out": "Leave the other words out.",
    "explain.out_is_of_all": "Only the whole reference is written to a file.",
    "explain.write_all_out": "Write signgen explain --all --out reference.html.",
    "explain.nothing_asked": "It is not said what to explain.",
    "explain.ask_something": "Name an option, a check, a word of the trade, or ask; --all makes a page of everything.",
    "explain.other_words": "Ask in other words, or see signgen explain recipes, signgen explain sign-file and signgen "
    "make --help-all.",
    "material_words.not_cut": "{said} is not cut here: {reason}",
    "material_words.use_other": "Use another material (signgen list materials).",
    "unfit.stone": "it wears router bits out in minutes, and its dust scars the lungs.",
    "unfit.brittle": "it shatters under a router bit.",
    "unfit.hard-metal": "it wants slower spindles, stiffer machines and cooling.",
    "unfit.chlorine": "overheated, it gives off hydrogen chloride.",
    "unfit.fibres": "its fibres harm the lungs, and some of them short out machines.",
    "unfit.poison": "its dust is poisonous.",
    "unfit.crumbles": "letters crumble in it.",
}
