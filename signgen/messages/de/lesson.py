"""Deutsch: das Lehrblatt aus einem Schild, für Lernende und Lehrkraft."""

from __future__ import annotations

WORDS = {
    "lesson.no_names": "Das ist keine Namensliste: Ihre erste Zeile muss das Wort name haben, und höchstens {most} "
    "Lernende dürfen darin stehen.",
    "lesson.no_column": "Die Liste hat keine Spalte für {{{column}}} der Schilddatei.",
    "lesson.write_column": "Die Spalte ergänzen oder die Klammern aus der Schilddatei nehmen.",
    "lesson.write_names": "Schreibe eine CSV-Datei mit der Spalte name, und Spalten für das, was jedes Schild eigen "
    "hat, wie text (Zeilen durch | getrennt).",
    "lesson.name_again": "Zeile {line} nennt {name} noch einmal.",
    "lesson.name_empty": "Zeile {line} hat keinen Namen ({name}).",
    "lesson.class_title": "Klasse mit {count}",
    "lesson.class_column_name": "Name",
    "lesson.class_column_sign": "Schild",
    "lesson.class_column_board": "Brett",
    "lesson.class_column_programs": "Programme und Fräser",
    "lesson.class_column_time": "Zeit",
    "lesson.class_column_done": "fertig",
    "lesson.class_board": "{size}",
    "lesson.class_day": "Ablauf des Tages",
    "lesson.class_load": "Zusammen auf der Maschine: {names}",
    "lesson.class_fit": "{cutter} einspannen, sein Programm auf jedem Brett: {time}",
    "lesson.class_saved": "Ein Schild nach dem anderen braucht {alone} Fräserwechsel; Bretter nebeneinander "
    "brauchen {shared}, das spart etwa {minutes} Minuten. Jedes Brett hat seinen eigenen Nullpunkt: X, Y und Z für "
    "jedes setzen.",
    "lesson.class_sheet": "Platte {folder}, {size}: {names}",
    "lesson.class_fit_sheet": "{cutter} einspannen, {file} ausführen: {time}",
    "lesson.class_saved_sheets": "Ein Schild nach dem anderen braucht {alone} Fräserwechsel; auf gemeinsamen "
    "Platten sind es {shared}, das spart etwa {minutes} Minuten. Jede Platte hat "
    "einen Nullpunkt für alle Schilder darauf.",
    "lesson.sheet_of_class": "Platten sind für die Schilder einer Klasse.",
    "lesson.name_class": "Nenne die Klasse mit --class, oder lass --sheet weg.",
    "lesson.no_sheets": "Was der Stapel von seinen Platten sagt, ist nicht zu lesen.",
    "lesson.make_sheets_again": "Die Klasse noch einmal anfertigen.",
    "lesson.class_care": "Nur die Lehrkraft startet die Maschine. Anleitung der Maschine, Regeln der Werkstatt und "
    "Gesetz gehen vor.",
    "lesson.class_needs_file": "Für eine Klasse braucht es die Schilddatei.",
    "lesson.class_name_file": "Nenne die Schilddatei, die allen Schildern gemeinsam ist.",
    "lesson.not_sound": "Die Programme in diesem Ordner bestehen ihre Prüfungen nicht.",
    "lesson.sound_first": "Mache das Schild neu; Übungen werden aus heilen Programmen gemacht.",
    "lesson.few_faults": "Dieses Schild gibt {count} Übungen verschiedener Art her.",
    "lesson.fewer_faults": "Verlange weniger.",
    "lesson.exercises": "Die verdorbenen Programme",
    "lesson.exercises_do": "Jeder Ordner ist eine Kopie des Schilds mit einem Fehler. Lernende lesen das Programm "
    "oder fragen signgen check ORDNER --hint 1, dann 2, dann 3.",
    "lesson.exercise": "{folder}, Stufe {grade} von 3",
    "lesson.caught_by": "Gefunden von {codes:plain}",
    "lesson.part": "{file} (Fräser {place})",
    "lesson.zero_behind_title": "Von hinten: das Brett, wie es mit der Schauseite nach unten liegt",
    "lesson.zero_behind": "Zuerst wird die Rückseite gefräst: das Brett liegt mit der Schauseite nach unten, wie eine "
    "Buchseite gewendet. Null ist dieselbe Ecke des Schilds, die jetzt unten rechts liegt; X zählt "
    "darum nach links und ist negativ.",
    "lesson.no_sign": "In diesem Ordner ist kein Schild: sign.toml oder report.json fehlt.",
    "lesson.no_report": "report.json in diesem Ordner ist nicht, wie make es schreibt.",
    "lesson.no_program": "Das Programm {file} fehlt.",
    "lesson.name_sign": "Nenne einen Ordner, den signgen make geschrieben hat, oder eine Schilddatei.",
    "lesson.no_page": "Eine Seite „{name}“ gibt es im Lehrblatt nicht.",
    "lesson.name_page": "Nenne einige von {names:plain}.",
    "lesson.pupil_title": "Mein Schild: {title}",
    "lesson.teacher_title": "Für die Lehrkraft: {title}",
    "lesson.name": "Name",
    "lesson.class": "Klasse",
    "lesson.date": "Datum",
    "lesson.sign_off": "Bevor die Maschine startet, haben wir beide alles auf der letzten Seite angesehen.",
    "lesson.pupil_signs": "Schülerin oder Schüler",
    "lesson.teacher_signs": "Lehrkraft",
    "lesson.about": "{size}, {thickness} dick, {material}; Programme: {programs:plain}",
    "lesson.cover_inches": "Deine Programme zählen in Zoll (G20). Schreibe jede Antwort in "
    "Millimetern: ein Zoll ist 25,4 mm.",
    "lesson.cover_does": "Dieses Heft ist aus den Programmen gemacht, die dein Schild fräsen. Jede Frage lässt sich "
    "daraus beantworten.",
    "lesson.answer": "Antwort: {answer}",
    "lesson.from_line": "aus {file}, Zeile {line}",
    "answer.rpm": "U/min",
    "answer.unit": " {unit}",
    "answer.exact": "{value}{unit}",
    "answer.about": "{value}{unit} (± {tolerance})",
    "answer.line": "{file}, Zeile {line}",
    "lesson.page.cover": "Dein Schild",
    "lesson.page.coordinates": "Orte auf dem Schild",
    "lesson.page.zero": "Wo der Nullpunkt ist",
    "lesson.page.cutter": "Fräser und Spannzange",
    "lesson.page.feeds": "Wie schnell",
    "lesson.page.depth": "Tief und breit mit dem V-Fräser",
    "lesson.page.passes": "Durchgang für Durchgang",
    "lesson.page.arcs": "Bögen",
    "lesson.page.tabs": "Stege halten das Schild",
    "lesson.page.reading": "Ein Programm lesen",
    "lesson.page.words": "Wörterkarte",
    "lesson.page.fault": "Finde den Fehler",
    "lesson.page.own": "Schreib dein eigenes",
    "lesson.page.time": "Wie lange es dauert",
    "lesson.page.thickness": "Wenn das Brett dicker ist",
    "lesson.page.start": "Vor dem Start",
    "lesson.intro.coordinates": "X zählt nach rechts, Y von dir weg, beides vom Nullpunkt. Die Kästchen sind 20 mm "
    "breit. Die Mitte eines Lochs ist die Mitte der Bögen, die es fräsen, oder wo der Bohrer hinabgeht.",
    "lesson.intro.zero": "X und Y werden einmal gesetzt und bleiben. Z wird für jeden Fräser neu gesetzt, auf der "
    "Fläche, die der Kopf des Programms nennt.",
    "lesson.zero_bottom": "Z0 ist die Unterseite des Bretts; seine Oberseite liegt bei Z{top}.",
    "lesson.zero_top": "Z0 ist die Oberseite des Bretts; seine Unterseite liegt bei Z{bottom}.",
    "lesson.zero_where": "X0 Y0 liegt {x} rechts von und {y} über der linken unteren Ecke des Bretts ({size}).",
    "lesson.intro.cutter": "Die Spannzange muss genau zum Schaft passen. Gewechselt wird mit gezogenem Stecker oder "
    "gesichertem Schalter. Fräser sind scharf: am Schaft und mit einem Tuch anfassen.",
    "lesson.yours": "{file}: {tool} in {material}",
    "lesson.intro.feeds": "S sagt, wie oft der Fräser in der Minute dreht, F wie weit er in der Minute kommt. Der "
    "Vorschub je Zahn ist, was jede Schneide nimmt: F durch S und durch die Zahl der Schneiden. Die "
    "Schnittgeschwindigkeit ist π mal Durchmesser mal S, durch 1000. Rechne hier mit zwei Schneiden; zähle die "
    "deines Fräsers.",
    "lesson.intro.depth": "Beim V-Fräser folgt die Breite der Nut aus der Tiefe: Breite = 2 × Tiefe × Tangens des "
    "halben Winkels, und dazu die Spitze, wenn sie flach ist. Für 60, 90 und 120 Grad ist der Tangens des halben "
    "Winkels 0,577, 1 und 1,732.",
    "lesson.intro.passes": "Ein tiefer Schnitt braucht mehrere Durchgänge. Das Bild zeigt das Brett von der Seite "
    "mit der Höhe jedes Durchgangs unter „{under}“.",
    "lesson.intro.arcs": "I und J sagen, wie weit die Mitte vom Anfang des Bogens liegt: Mitte X = Anfang X + I, "
    "Mitte Y = Anfang Y + J. Der Radius ist die Wurzel aus I × I + J × J.",
    "lesson.intro.tabs": "Stege halten das Schild im Brett, bis die Spindel steht. Ohne sie löst es sich und wird "
    "weggeschleudert.",
    "lesson.intro.reading": "Zeilen aus deinen Programmen und was sie tun. Fülle die leeren aus.",
    "lesson.intro.words": "Das sind alle Wörter, die deine Programme benutzen.",
    "lesson.intro.fault": "Jede Zeile stand in deinem Programm und wurde verdorben. Markiere, was falsch ist, und "
    "schreibe die Zeile richtig.",
    "lesson.intro.own": "Schreibe ein Programm, das das Quadrat 2 mm tief fräst, und ein Loch von 10 mm (die Mitte "
    "ist bezeichnet) 2 mm tief. Der Fräser ist ein 6-mm-Schaftfräser und läuft auf der Linie; im Loch läuft er auf "
    "einem Kreis mit Radius 2 mm. Z0 ist die Oberseite des Bretts; gefahren wird auf Z5. Dann lass den Computer es "
    "lesen: signgen check meins.nc --stock 100x80x12 --z-zero top --material softwood --tool end-mill-6 --page "
    "meins.html",
    "lesson.intro.time": "Länge durch Vorschub ist die kürzeste Zeit. Die Maschine braucht länger: Sie beschleunigt "
    "und bremst an jeder Ecke, geht langsamer hinab als voran, und fährt zwischen den Schnitten.",
    "lesson.time_told": "{file}: Der Computer rechnet {minutes} min. Warum ist das mehr als Länge durch Vorschub?",
    "lesson.intro.thickness": "Das Programm kennt die Dicke, die eingetippt wurde: {thickness}. Miss dein Brett mit "
    "dem Messschieber an vier Stellen: ____  ____  ____  ____",
    "lesson.intro.start": "Hake jede Zeile an der Maschine ab. Die Anleitung der Maschine, die Regeln der Werkstatt "
    "und das Gesetz gehen dem vor, was hier steht.",
    "lesson.start_list": "Meine Lehrkraft ist da und hat Ja gesagt.|Augen und Ohren sind geschützt; Ärmel, Haare "
    "und Bänder sind zurückgebunden; keine Handschuhe.|Die Absaugung läuft.|Das Brett ist gemessen und fest; nichts "
    "steht dem Fräser im Weg.|Der richtige Fräser steckt in der richtigen Spannzange und ist fest.|X, Y und Z sind "
    "gesetzt; Z für diesen Fräser.|Das richtige Programm ist geladen; sein Kopf nennt diesen Fräser.|Es ist einmal "
    "in der Luft gelaufen.|Ich weiß, wo der Halt ist, und eine Hand bleibt dort.|Ich greife nie hinein, bevor die "
    "Spindel steht, und lasse sie nie allein laufen.",
    "lesson.column_line": "Zeile",
    "lesson.column_text": "Programm",
    "lesson.column_does": "was sie tut",
    "lesson.column_word": "Wort",
    "lesson.column_meaning": "was es tut",
    "lesson.fault_stands": "{file}, Zeile {line}:",
    "lesson.write": "So muss sie heißen:",
    "lesson.teacher_about": "Aus den Programmen in diesem Ordner gemacht. Jede Antwort steht mit ihrer Toleranz und "
    "der Zeile, aus der sie kommt.",
    "lesson.timetable": "Zwei Stunden von je 90 Minuten",
    "lesson.timetable_rows": "1., 0-10: das Schild, das Heft, Gefahren und Halt|10-30: Orte, Nullpunkt, Fräser "
    "(Seiten „Orte“, „Nullpunkt“, „Fräser“)|30-60: ein Programm lesen mit der Wörterkarte|60-80: den Fehler finden; "
    "das Programm am Bildschirm abspielen|80-90: Prüfliste, Fragen|2., 0-10: was gelernt wurde|10-40: Tempo, Tiefe, "
    "Durchgänge, Bögen, Stege|40-60: ein eigenes schreiben und prüfen lassen|60-85: in der Luft laufen lassen, dann "
    "ein Schild fräsen, während die anderen hinter der Linie zusehen|85-90: beurteilen: eine Nut, ein Loch und das "
    "Außenmaß messen",
    "lesson.materials": "Material",
    "lesson.materials_rows": "Brett {board}, {thickness} dick, {material}|Fräser: {cutters:plain}|Spannzangen: "
    "{collets:plain} mm|Messschieber, Lineal, Bleistift, Taschenrechner, ein Bildschirm für das Abspielen|Augen- "
    "und Gehörschutz für alle, Absaugung, Klemmen oder Schrauben",
    "lesson.outcomes": "Lernziele",
    "lesson.outcomes_rows": "nennt Gefahren, Halt und Schutzausrüstung (NOCN unit H/600/8573, Stufe 2)|liest "
    "Zeichnung und Einrichteblatt (NIMS Fräsen, Stufe 1: setup sheet)|wählt Fräser und Spannzange "
    "(H/600/8573)|erklärt die Nullpunkte und findet Orte|liest N-, G-, F-, S-, T- und M-Wörter und sagt, welche in "
    "Kraft bleiben (NIMS Fräsen, Stufe 1)|findet die Mitte eines Bogens|berechnet Vorschub je Zahn, "
    "Schnittgeschwindigkeit und Tiefe aus der Breite einer Nut|zählt Durchgänge und begründet Stege|schätzt die "
    "Zeit und sagt, warum es länger dauert|sagt voraus, was eine falsche Dicke bewirkt|lässt trocken laufen, prüft "
    "und urteilt nach einer Toleranz (H/600/8573)",
    "lesson.watch": "Worauf zu achten ist",
    "lesson.watch_rows": "X und Y vertauscht, oder das Vorzeichen links von null vergessen|I und J für Orte "
    "gehalten statt für Abstände vom Anfang|die Tiefe von Z0 gezählt, obwohl Z0 die Unterseite ist|den ganzen "
    "Winkel des V-Fräsers in den Tangens gesetzt statt des halben|beim Zählen der Durchgänge mit null statt mit "
    "eins begonnen|F und S vertauscht",
    "lesson.own_answer": "Eines, das stimmt (es gibt andere):",
    "lesson.picture_sign": "Das Schild von oben auf Kästchen von 20 mm, {size}, mit {holes} Löchern; ein Ring "
    "bezeichnet den Nullpunkt.",
    "lesson.picture_zero": "Das Brett mit dem Schild darauf und dem Nullpunkt an der Ecke des Schilds, {x} rechts "
    "von und {y} über der Ecke des Bretts.",
    "lesson.picture_passes": "Das Brett von der Seite mit {count} Linien, eine auf der Höhe jedes Durchgangs.",
    "lesson.picture_arc": "Ein Bogen mit Anfang, Ende und Mitte; I und J führen vom Anfang zur Mitte.",
    "lesson.picture_depth": "Eine Nut im Schnitt: {depth} tief und {width} breit, mit einem Winkel von {angle} Grad "
    "am Grund.",
    "lesson.picture_tabs": "Das Schild im Brett mit {count} Stegen dazwischen.",
    "lesson.picture_own": "Ein Quadrat von X20 Y20 bis X60 Y60 und die Mitte eines Lochs bei X80 Y40 auf einem "
    "Brett von 100 mal 80 mm.",
    "lesson.picture_cutter": "{tool} in der Spannzange, von der Seite.",
    "ask.hole": "Die Mitte von Loch {number} ({file}, bei Zeile {line}): {axis} =",
    "ask.right_side": "In Zeile {line} von {file} fährt der Fräser, {diameter} dick, an der rechten Seite des Schilds "
    "entlang. X dieser Seite =",
    "ask.top_side": "In Zeile {line} von {file} fährt er an der oberen Seite entlang. Y dieser Seite =",
    "ask.leftmost": "Wie weit nach links kommt die Mitte des Fräsers beim Fräsen in {file}? X =",
    "ask.first": "Wohin fährt {file} zuerst im Eilgang? {axis} =",
    "ask.lowest": "Das tiefste Z von {file}: Z =",
    "ask.shank": "Welche Spannzange braucht der {tool} von {file}?",
    "ask.speed": "{file}: Umdrehungen in der Minute, S =",
    "ask.feed": "{file}: schnellster Vorschub eines ebenen Schnitts, F =",
    "ask.turn": "{file}: Weg je Umdrehung, F ÷ S =",
    "ask.chip": "{file}: Vorschub je Zahn bei zwei Schneiden =",
    "ask.surface": "{file}: Schnittgeschwindigkeit des {tool} =",
    "ask.depth": "„{under}“ ist in Zeile {line} am tiefsten. Tiefe unter der Oberseite =",
    "ask.width": "Wie breit ist die Nut von „{under}“ dort, mit {angle} Grad?",
    "ask.other_angle": "Wie tief ginge ein Fräser mit {other} Grad für eine Nut von {width} Breite?",
    "ask.passes": "Wie viele Durchgänge braucht „{under}“ in {file}?",
    "ask.step": "Um wie viel tiefer ist der zweite Durchgang als der erste?",
    "ask.last_pass": "Z des letzten Durchgangs =",
    "ask.centre_x": "{file}, Zeile {line}: {text} beginnt bei X{x} Y{y}. Mitte X =",
    "ask.centre_y": "Mitte Y =",
    "ask.radius": "Radius =",
    "ask.tabs": "Wie viele Stege lässt {file} stehen?",
    "ask.tab_top": "Z an der Oberseite der Stege =",
    "ask.tab_thick": "Wie dick sind die Stege?",
    "ask.minutes": "{file}: {length} Fräsweg mit {feed}; Zeit bei diesem Vorschub =",
    "ask.thicker_width": "Das Brett ist {extra} dicker als eingetippt, und Z0 ist unten. Wie viel breiter werden "
    "Nuten mit {angle} Grad?",
    "ask.thicker_bottom": "Wie weit unter der Unterseite dieses Bretts fräst {file} noch? (negativ: darunter)",
    "ask.thicker_top": "Das Brett ist {extra} dicker als eingetippt, und Z0 ist oben. Wie viel Holz lässt {file} "
    "unten stehen? (negativ: keines)",
}
