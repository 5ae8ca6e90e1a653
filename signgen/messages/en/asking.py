"""English: options, lines as they are typed, and what is asked of `signgen explain`."""

from __future__ import annotations

WORDS = {
    "line.before_any": "It stands before any line.",
    "line.text_first": 'Type the text first, as in "17" {setting}.',
    "line.twice": "The line has it twice.",
    "line.leave_one": "Leave one of them out.",
    "option.unknown": "There is no such option.",
    "option.meant": "Did you mean {options:or}?",
    "option.search": "Ask with signgen explain {word}, or see signgen make --help-all.",
    "explain.nothing": "Nothing is known of it.",
    "explain.other_words": "Ask in other words, or see signgen explain recipes, signgen explain sign-file and signgen "
    "make --help-all.",
    "material.refused": "{said} is not cut here: {reason}",
    "material.use_other": "Use another material (signgen list materials).",
    "material.refused.stone": "it wears router bits out in minutes, and its dust scars the lungs.",
    "material.refused.brittle": "it shatters under a router bit.",
    "material.refused.hard-metal": "it wants slower spindles, stiffer machines and cooling.",
    "material.refused.chlorine": "overheated, it gives off hydrogen chloride.",
    "material.refused.fibres": "its fibres harm the lungs, and some of them short out machines.",
    "material.refused.poison": "its dust is poisonous.",
    "material.refused.crumbles": "letters crumble in it.",
}
