"""German: comments and operator messages in programs, and what the check of headings says of them.

In comments only what is in ASCII or in the `spellings` of the language may stand.
"""

from __future__ import annotations

WORDS = {
    "heading.sign": "Schild: {text}, {width} x {height} mm",
    "heading.pieces": "{text}, {width} x {height} mm",
    "heading.program": "Programm {number} von {count}: {does:plain}",
    "heading.from_behind": "Von hinten: Schauseite unten, das Brett wie eine Buchseite gewendet, vor der Schauseite "
    "laufen lassen",
    "heading.tool": "Werkzeug: {tool}, Schaft {shank} mm",
    "heading.cutter": "Fräser {place}. {line}",
    "heading.board": "Brett: {width} x {height} x {thickness} mm, {material}",
    "heading.datum_sign": "X0 Y0: Ecke unten links des fertigen Schilds, {beside} mm rechts und {above} mm über",
    "heading.of_corner": "der Ecke unten links des Bretts",
    "heading.datum_board": "X0 Y0: Ecke unten links des Bretts",
    "heading.datum_sign_behind": "X0 Y0: Ecke unten rechts des fertigen Schilds, wie es jetzt liegt, {beside} mm "
    "links und {above} mm über",
    "heading.of_corner_behind": "der Ecke unten rechts des Bretts, das Schild bei negativem X",
    "heading.datum_board_behind": "X0 Y0: Ecke unten rechts des Bretts, wie es jetzt liegt, das Schild bei negativem X",
    "heading.z_zero_bottom": "Z0: Unterseite des Bretts, also Oberseite der Opferplatte",
    "heading.z_zero_top": "Z0: Oberseite des Bretts",
    "heading.top": "Die Oberseite des Bretts liegt bei Z{z}",
    "heading.set_z": "Z setzen {ways}",
    "heading.then_set_z": "Z setzen {ways}",
    "heading.on_face": "auf der Schauseite bei {place}",
    "heading.on_spoilboard": "auf der Opferplatte bei {place}",
    "heading.one_or_other": "{one}, oder {other}",
    "heading.fit": "einsetzen: {tool}, dann Z0 neu setzen",
    "heading.warms_up": "Spindel warmlaufen lassen: {seconds} s",
    "remark.of": "- {says}: {feature}",
    "remark.word": "{word}: {does}",
    "remark.pass": "Durchgang {number} von {count}, {depth} tief",
    "remark.ramp": "Rampe hinab zu Durchgang {number} von {count}, {depth} tief",
    "remark.pass.groove": "Durchgang {number} von {count} entlang der Nut, höchstens {depth} tief",
    "remark.pass.floor": "Durchgang {number} von {count} über den Grund, {depth} tief",
    "remark.tab": "hinauf und über Steg {number} von {count}",
    "remark.down_behind_tab": "hinter dem Steg hinab",
    "remark.lead_in": "im Bogen an die Wand",
    "remark.lead_out": "im Bogen von der Wand weg",
    "remark.off_wall": "im Bogen von der Wand weg zur Mitte",
    "remark.finishing": "Schlichtgang, {depth} tief",
    "remark.wall_lap": "einmal an der Wand entlang, {depth} tief",
    "remark.helix": "in {count} {count:Umdrehung|Umdrehungen} wie eine Schraube hinab, {depth} tief",
    "remark.bottom_round": "einmal herum am Grund, {depth} tief",
    "remark.pecks": "gerade hinab in Schritten von höchstens {step}, {depth} tief",
    "remark.rings": "in {count} {count:Ring|Ringen} hinab, {depth} tief",
    "remark.undercut": "durch den Schlitz und zurück, {depth} tief",
    "trial.shows": "Fährt bei stehender Spindel um alles, was gefräst wird, und wartet an jeder Ecke",
    "trial.shows_what": "zeigt, was gefräst wird",
    "trial.under_cutter": "{corner}: unter dem Fräser muss Brett liegen",
    "trial.in_the_air": "In der Luft: alles ist {by} mm zu hoch und berührt nichts",
    "headings_true.as_said": "Fräser, Brett und Null wie in den Kommentaren von {count} Dateien",
    "headings_true.other_count": "Die Kopfzeilen nennen {named} Fräser; das Blatt sagt {count}.",
    "headings_true.other_cutter": "Die Kopfzeilen nennen einen anderen Fräser (‚{said}‘) als das Blatt: {wanted}.",
    "headings_true.board": "Die Kopfzeilen nennen nicht die Größe des Bretts, {size}.",
    "headings_true.top": "Die Kopfzeilen sagen nicht, dass die Oberseite des Bretts bei Z{z} liegt.",
    "headings_true.z_zero_bottom": "Die Kopfzeilen sagen nicht, dass Z0 an der Unterseite des Bretts liegt.",
    "headings_true.z_zero_top": "Die Kopfzeilen sagen nicht, dass Z0 an der Oberseite des Bretts liegt.",
    "headings_true.no_datum": "Die Kopfzeilen sagen nicht, wo X0 Y0 liegt.",
    "headings_true.datum": "Die Kopfzeilen sagen anderes, als dass X0 Y0 {left} von der linken und {above} von der "
    "vorderen Kante des Bretts liegt.",
    "headings_true.stop": "Die Meldung vor dem Halt nennt nicht den Fräser, der einzusetzen ist: {tool}.",
    "headings_true.remedy": "Die Programme neu machen, oder dem Blatt erst glauben, wenn es mit dieser Datei "
    "verglichen ist.",
}
