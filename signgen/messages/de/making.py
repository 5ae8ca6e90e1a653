"""German: what can be made, and how well it holds."""

from __future__ import annotations

WORDS = {
    "does.roughs_floors": "räumt {count:den Boden|die Böden}, {depth} tief, bis auf {left} an den Wänden",
    "does.finishes_floors": "macht {count:den Boden|die Böden} in engen Stellen und an den Wänden fertig, {depth} tief",
    "cut.roughing_saves": "Der Schaftfräser von {rough} räumt die Böden zuerst und wird für den Umriss noch einmal "
    "eingesetzt: mit dem von {thin}, der sie fertig macht, etwa {minutes} Minuten; der von {thin} allein "
    "brauchte {alone}.",
    "drawing.use_larger_margin": "Einen größeren Rand (margin) nehmen.",
    "choose.name_it": "end-mill-name {name} schneidet {length} tief und muss genannt werden; oder eine dünnere Platte.",
    "tabs.low": "Haltestege von {height} gehen verloren, wo die Platte etwas dünner ist als gemessen.",
    "tabs.higher": "{least} oder mehr nehmen.",
    "tabs.narrow": "Haltestege von {width} Breite brechen, bevor das Schild ausgeschnitten ist.",
    "tabs.wider": "{least} oder mehr nehmen.",
    "walls.touch": "{one} läuft in {other}.",
    "walls.between": "Zwischen {one} und {other} blieben nur {wood} Holz.",
    "walls.edge": "{one} geht durch die Platte, und bis zur Kante des Schildes blieben nur {wood} Holz.",
    "walls.hangs": "Das Innere von {letter} hinge an weniger als {least} Holz und bräche ab.",
    "walls.move_line": "Kleinere Höhe, größeren Rand oder andere Stelle der Linie nehmen: {least} müssen bleiben.",
    "walls.smaller": "Kleinere Höhe oder weniger Text nehmen: {least} müssen bleiben.",
    "walls.move_apart": "Eines davon verschieben oder verkleinern: {least} müssen bleiben.",
    "walls.more_spacing": "Mehr letter-spacing oder größere Buchstaben nehmen.",
    "walls.wider_bridges": "Größere bridge-width oder mehr bridges nehmen.",
    "walls.bridges": "Größere Buchstaben oder bridges nehmen.",
    "edge.notch_lost": "Der Fräser von {cutter} kommt nicht in eine Kerbe des Umrisses bei X{x} Y{y}: {deep} Holz "
    "blieben, wo sie verlangt war.",
    "edge.name_the_thinner": "end-mill {cutter:bare} nennen, der hineinkommt (bis {largest}), oder die Kerbe breiter "
    "machen.",
    "edge.name_a_thinner": "Einen end-mill von höchstens {largest} nennen, der {reach} tief schneidet, oder die Kerbe "
    "breiter machen.",
    "edge.wider": "Die Kerbe breiter machen.",
    "uncut.tip": "die Fläche von {tip} an der Spitze des V-Fräsers",
    "uncut.bit": "den V-Fräser",
    "uncut.of": "{percent} % von {letter}",
    "uncut.of_a_part": "{percent} % eines Teils von {letter}",
    "uncut.more": "zu viel von {count} weiteren",
    "uncut.letters": "Striche der Buchstaben sind zu schmal für {bit}: {letters} blieben stehen oder würden "
    "weniger als {depth} tief. Höchstens {most} % eines Buchstabens dürfen bleiben.",
    "uncut.line": "{line} ist zu schmal für {bit}: {percent} % davon blieben stehen.",
    "uncut.use": "Abhilfe: {ways:or}.",
    "uncut.wider_line": "Eine breitere Linie nehmen, oder {bit}.",
    "uncut.larger": "Buchstaben {times} mal so hoch (auf einem größeren Schild)",
    "uncut.higher": "cap-height {height} oder mehr",
    "uncut.higher_on_larger": "cap-height {height} oder mehr (auf einem größeren Schild)",
    "uncut.finer_bit": "ein feinerer Fräser wie {name} mit einer Spitze von {tip}",
    "uncut.finer_tip": "ein Fräser mit einer Spitze von {tip} oder weniger",
    "uncut.sharper": "ein spitzerer Fräser",
    "uncut.face": "die Schrift {face}",
}
