"""English: what can be made, and how well it holds."""

from __future__ import annotations

WORDS = {
    "does.roughs_floors": "clears {count:the floor|the floors}, {depth} deep, but for {left} along the walls",
    "does.finishes_floors": "finishes {count:the floor|the floors}, {depth} deep, in narrow places and along the walls",
    "cut.roughing_saves": "The {rough} end mill clears the floors first and is fitted again for the outside: with the "
    "{thin} one that finishes them that takes about {minutes} minutes, where the {thin} one alone would take {alone}.",
    "drawing.use_larger_margin": "Use a larger margin.",
    "choose.name_it": "Use end-mill-name {name}, which cuts {length} deep and must be named, or a thinner board.",
    "tabs.low": "Tabs of {height} are lost where the board is a little thinner than measured.",
    "tabs.higher": "Use {least} or more.",
    "tabs.narrow": "Tabs {width} wide break before the sign is cut out.",
    "tabs.wider": "Use {least} or more.",
    "walls.touch": "{one} runs into {other}.",
    "walls.between": "Only {wood} of wood would stay between {one} and {other}.",
    "walls.edge": "{one} is cut right through, and only {wood} of wood would stay between it and the sign's edge.",
    "walls.hangs": "The inside of {letter} would hang on less than {least} of wood, and break off.",
    "walls.move_line": "Use a smaller height, a larger margin, or move the line: {least} or more must stay.",
    "walls.smaller": "Use a smaller height or less text: {least} or more must stay.",
    "walls.move_apart": "Move one of them, or make one smaller: {least} or more must stay.",
    "walls.more_spacing": "Use more letter-spacing, or larger letters.",
    "walls.wider_bridges": "Use a larger bridge-width, or more bridges.",
    "walls.bridges": "Use larger letters, or bridges.",
    "edge.notch_lost": "The {cutter} cutter does not get into a notch of the outline near X{x} Y{y}: {deep} of wood "
    "would stay where it was asked for.",
    "edge.name_the_thinner": "Name end-mill {cutter:bare}, which gets in ({largest} or less do), or make the notch "
    "wider.",
    "edge.name_a_thinner": "Name an end-mill of {largest} or less that cuts {reach} deep, or make the notch wider.",
    "edge.wider": "Make the notch wider.",
    "uncut.tip": "the flat of {tip} at the bit's tip",
    "uncut.bit": "the bit",
    "uncut.of": "{percent} % of {letter}",
    "uncut.of_a_part": "{percent} % of a part of {letter}",
    "uncut.more": "too much of {count} more",
    "uncut.letters": "Strokes of the letters are too narrow for {bit}: {letters} would not be cut, or less "
    "than {depth} deep. At most {most} % of a letter may be left.",
    "uncut.line": "The {line} is too narrow for {bit}: {percent} % of it would not be cut.",
    "uncut.use": "Use {ways:or}.",
    "uncut.wider_line": "Use a wider line, or {bit}.",
    "uncut.larger": "letters {times} times as high (on a larger sign)",
    "uncut.higher": "cap-height {height} or more",
    "uncut.higher_on_larger": "cap-height {height} or more (on a larger sign)",
    "uncut.finer_bit": "a finer bit, as {name} with a tip of {tip}",
    "uncut.finer_tip": "a bit with a tip of {tip} or less",
    "uncut.sharper": "a sharper bit",
    "uncut.face": "the face {face}",
}
