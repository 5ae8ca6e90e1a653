"""German: sheets, pages, pictures and the summary."""

from __future__ import annotations

WORDS = {
    "programs.one": "{count} Programm",
    "programs.many": "{count} Programme",
    "range": "{least} bis {most}",
    "span.s": "{s} s",
    "span.min": "{min} min",
    "span.min_s": "{min} min {s} s",
    "span.h": "{h} h",
    "span.h_min": "{h} h {min} min",
    # holes
    "noun.hole.one": "Loch",
    "noun.hole.many": "Löcher",
    "noun.slot.one": "Langloch",
    "noun.slot.many": "Langlöcher",
    "noun.sunk": " gesenkt auf {size}",
    # verdict
    "verdict.passed": "alle {count} Prüfungen bestanden",
    "verdict.warned": "{passed} von {count} Prüfungen bestanden, {warned} mit Hinweis",
    "verdict.failed": "nicht starten: {failed} von {count} Prüfungen nicht bestanden",
    "verdict.not_run": ", {count} nicht durchführbar",
    "verdict.left_out": "; {count} brauchen eine Zeichnung und entfielen",
    "verdict.read_on": ": vor dem Start weiterlesen",
    "verdict.proved": "Zurückgelesen, nachgestellt und mit der Zeichnung verglichen.",
    "verdict.stop": "Diese Programme nicht starten.",
    # head
    "head.title": "Einrichtblatt: {sign}",
    "head.about": "{size}, {thickness} {material}",
    "head.time": "rund {span} Fräszeit",
    "head.read_first": "Zuerst lesen:",
    "head.bring": "Bereitlegen:",
    "head.bring.board": "das Brett",
    "head.bring.cutter": "{cutter} (Schaft {shank})",
    "head.bring.collet.one": "Spannzange {names}",
    "head.bring.collet.many": "Spannzangen {names}",
    "head.bring.spanners": "beide Schlüssel",
    "head.bring.screws": "{count} Schrauben von {long}",
    "head.bring.clamps": "Spannpratzen oder doppelseitiges Klebeband",
    "head.bring.measure": "Messschieber, Bleistift und Winkel",
    "head.bring.slip": "einen Streifen Papier",
    "head.bring.vacuum": "Staubsauger",
    "head.bring.protection": "Schutzbrille, Gehörschutz, Staubmaske",
    "head.bring.knife": "Messer und Feile",
    "head.picture": "Das fertige Schild, nach dem nachgestellten Schnitt gezeichnet.",
    "head.alt": "Das fertige Schild: {sign}",
    "head.holes": "{holes}, Mitten von der Ecke unten links.",
    "head.places": "Löcher bei {places}{more}.",
    "head.more_places": " und weitere in report.json",
    "finish.stroke": "Buchstaben aus einfachen Linien, {width} breit und {depth} tief.",
    "finish.recess": "Buchstaben {depth} tief eingelassen, eben.",
    "finish.raised": "Die Buchstaben stehen in einem {depth} tiefen Grund.",
    "finish.panel": "Feld {depth} tief.",
    "finish.through": "Buchstaben ganz durchgeschnitten.",
    "finish.bridges.one": "Eine Brücke von {width} hält jedes Innere.",
    "finish.bridges.many": "{count} Brücken von {width} halten jedes Innere.",
    "finish.frame": "Der Rahmen hat {count} Linien, {width} breit, mit {gap} dazwischen.",
    "finish.ornament": "In jeder Ecke ein ‚{character}‘ von {size}.",
    "finish.ornament.stands": "In jeder Ecke steht ein ‚{character}‘ von {size}.",
    "finish.rim": "Im Feld steht ringsum ein {width} breiter Steg.",
    "finish.chamfer": "Kante {width} breit und {depth} tief gefast, {angle}° gegen die Senkrechte.",
    "run.right.bevel": "ringsum ist die Kante gefast; die Rille außen ist Abfall",
    "head.capitals": "Großbuchstaben {height} hoch.",
    "plan.title": "Das fertige Schild mit Maßen",
    "plan.about": "{width} mal {height}, {count} Löcher",
    # 1 the board
    "board.heading": "Das Brett",
    "board.size": "Größe",
    "board.least": "Mindestens {size}, {thickness} dick, rechtwinklig und eben. Das Schild liegt {left} von seiner "
    "linken und {front} von seiner vorderen Kante, mit Platz für {room}. Ein größeres Brett darf nach rechts und "
    "hinten weiter reichen.",
    "board.room.cut": "den Schnitt ringsum",
    "board.room.screws": "den Schnitt ringsum und Schrauben",
    "board.yours": "Auf Ihr Brett von {size} passt das Schild: rechts davon bleiben {right}, dahinter {behind}. ",
    "board.yours.screws": "Mit {size} wäre ringsum Platz für Schrauben.",
    "board.yours.least": "Das kleinste mögliche misst {size}.",
    "board.blank": "Der Rohling selbst: {size}, {thickness} dick, schon auf Maß, rechtwinklig und eben.",
    "board.offcut": " Übrig bleibt ein Stück von {size} {where}.",
    "board.offcut.right": "rechts",
    "board.offcut.behind": "hinten",
    "board.way": "Lage",
    "board.lay": "Mit der Seite von {width} von links nach rechts (X) und der Seite von {height} von vorn nach hinten "
    "(Y) auflegen, die schönere Fläche oben. Die Buchstaben stehen dann aufrecht, wenn Sie vorn an der Maschine "
    "stehen.",
    "board.grain": " Die Maserung läuft von links nach rechts, wie die Pfeile zeigen.",
    "board.thickness": "Dicke",
    "board.made_for": "Gemacht für {thickness}. An allen vier Ecken messen: ",
    "board.corner.front_left": "vorn links",
    "board.corner.front_right": "vorn rechts",
    "board.corner.back_left": "hinten links",
    "board.corner.back_right": "hinten rechts",
    "board.grooves": "Rillen",
    "board.deepest": "Die tiefste ist {deep} tief und lässt {left} vom Brett; Striche sind {strokes} breit. ",
    "board.trial": "Vor dem Fräsen den V-Fräser an einem Rest desselben Bretts proben: eine Rille von {deep} Tiefe "
    "muss {wide} breit sein.",
    "board.wider": " und {wider} breiter (2 × {slight} × tan {half}° bei {angle}°)",
    "board.below": "Z-Null liegt unter dem Brett: wo es {slight} dicker ist, werden Rillen {slight} tiefer{wider}; wo "
    "es dünner ist, flacher und schmaler. Mehr als {fair} daneben: die Programme mit --thickness neu machen.",
    "board.below.floors": "Z-Null liegt unter dem Brett: wo es {slight} dicker ist, werden Böden {slight} "
    "tiefer{wider}; wo es dünner ist, flacher. Mehr als {fair} daneben: die Programme mit --thickness neu machen.",
    "board.on_top": "Z-Null liegt auf dem Brett, Rillen werden also richtig. Aber Schnitte enden {deep} unter einem "
    "Brett von {thickness}: ein um mehr als das dickeres wird nicht durchgetrennt, und Stege werden um den "
    "Unterschied dicker oder dünner. Dann die Programme mit --thickness neu machen.",
    # 2 zero
    "zero.heading": "Wo Null ist",
    "zero.across": "X und Y",
    "zero.height": "Z",
    "zero.proof": "Nachprüfen",
    "zero.sign": "X0 Y0 ist die Ecke unten links des fertigen Schilds. Auf dem Brett eine Linie {x} von der linken und "
    "eine {y} von der vorderen Kante ziehen. {point} über ihre Kreuzung bringen und X und Y auf 0 setzen.",
    "zero.stock": "X0 Y0 ist die vordere linke Ecke des Bretts. {point} über diese Ecke bringen und X und Y auf 0 "
    "setzen. Das Schild beginnt {x} weiter rechts und {y} weiter hinten.",
    "zero.blank": "X0 Y0 ist die vordere linke Ecke des Rohlings. {point} über diese Ecke bringen und X und Y auf 0 "
    "setzen.",
    "zero.slip": "senken, bis er einen Streifen Papier eben festhält, und Z auf {slip} setzen",
    "zero.bottom": "Z0 ist die Oberseite der Opferplatte, also die Unterseite des Bretts. ",
    "zero.bottom.spoilboard": "Den Fräser neben dem Brett, etwa bei {place}, wo die blanke Opferplatte eben und "
    "ungefräst ist und keine Pratze steht, auf sie {slip}. ",
    "zero.bottom.face": "Den Fräser bei {place} (Z im Plan), wo noch kein Programm gefräst hat, auf das Brett senken, "
    "bis er einen Streifen Papier eben festhält, und Z auf die gemessene Dicke des Bretts (etwa {thickness}) plus "
    "Papier ({slip}) setzen.",
    "zero.bottom.or_face": "Oder ihn bei {place} (Z im Plan), wo noch kein Programm gefräst hat, auf das Brett senken "
    "und Z auf die gemessene Dicke des Bretts (etwa {thickness}) plus Papier ({slip}) setzen.",
    "zero.top": "Z0 ist die Oberseite des Bretts. ",
    "zero.top.face": "Den Fräser bei {place} (Z im Plan) auf das Brett {slip}. Nach dem ersten Programm gilt keine "
    "andere Stelle: sie kann gefräst sein.",
    "zero.top.spoilboard": "Keine ungefräste Stelle ist breit genug: den Fräser neben dem Brett, etwa bei {place}, auf "
    "die blanke Opferplatte {slip} (das Papier weniger die Dicke des Bretts).",
    "zero.nowhere": "Auf diesem Brett lässt es sich nicht setzen: ein größeres nehmen.",
    "zero.way.face": "auf dem Brett bei {place}",
    "zero.way.spoilboard": "auf der Opferplatte bei {place}",
    "zero.or": " oder ",
    "zero.outline": "{file} mit dem ersten Fräser laufen lassen: die Spindel steht, der Fräser fährt {over} über dem "
    "Brett um alles, was gefräst wird, und wartet an jeder Ecke, bis es weitergeht. Jedes Mal muss Brett darunter "
    "sein. Sonst das Brett etwas drehen und X und Y neu setzen.",
    "zero.far": "Spindel aus, Fräser oben: auf X{x} Y{y} fahren. Er muss über der Ecke oben rechts des Schilds stehen, "
    "mit Brett ringsum. Sonst das Brett etwas drehen und X und Y neu setzen.",
    "zero.far.blank": "Spindel aus, Fräser oben: auf X{x} Y{y} fahren. Er muss über der Ecke hinten rechts des "
    "Rechtecks stehen, das der Rohling ausfüllt. Sonst ihn etwas drehen und X und Y neu setzen.",
    "zero.point.v-bit": "Die Spitze des V-Fräsers",
    "zero.point.other": "Die Mitte des Fräsers",
    # 3 holding
    "hold.heading": "Festhalten",
    "hold.spoilboard": "Opferplatte",
    "hold.flat": "Eben, glatt und sauber gefegt, denn ein Span unter dem Brett kippt es. Schnitte gehen {deep} hinein: "
    "der Kratzer ist gewollt.",
    "hold.under": "Was darunter liegt",
    "hold.metal": "Schrauben enden in der Opferplatte und reichen nie in den Tisch darunter. Kein Metall näher als "
    "{deep} unter dem Brett, wo gefräst wird.",
    "hold.screws": "Schrauben",
    "hold.no_screws": "Dieses Brett hat neben dem Schnitt keinen Platz für Schrauben; eines von {size} oder mehr hat "
    "ihn.",
    "hold.no_screws.here": "Auf diesem Brett kann keine frei von Fräsern und Mutter stehen; so halten:",
    "hold.places": "im Verschnitt, gemessen von X0 Y0: ",
    "hold.places.inch": "im Verschnitt, in Zoll gemessen von X0 Y0: ",
    "hold.heads": " Schrauben von {long} halten in der Opferplatte. Vorgebohrt reißt und steigt das Brett nicht; "
    "Köpfe sind höchstens {head} breit, bündig oder tiefer, {gap} von jedem Schnitt.",
    "hold.clamps": "Spannpratzen",
    "hold.clamps.outside": "Nur außerhalb der gestrichelten Linie, höchstens {high} über dem Brett: die Mutter der "
    "Spannzange reicht {far} über das Schild hinaus, und der Kopf startet über dem Schild.",
    "hold.clamps.none": "Keine: die Mutter der Spannzange reicht {far} über das Schild hinaus, und höchstens {room} "
    "Brett liegen außerhalb ihres Wegs.",
    "hold.clamps.full": "Keine: die Mutter der Spannzange reicht {far} über das Schild hinaus und überstreicht das "
    "ganze übrige Brett.",
    "hold.clamps.tape": " Ein größeres Brett nehmen, oder dieses mit doppelseitigem Band über die ganze Unterseite "
    "halten, wenn es gut klebt.",
    "hold.blank.clamps": "Auf dem Rand des Rohlings, außerhalb der gestrichelten Linie, höchstens {high} über dem "
    "Brett: innerhalb kommt die Spannmutter vorbei. Mindestens zwei an gegenüberliegenden Seiten, oder doppelseitiges "
    "Klebeband unter der ganzen Rückseite.",
    "hold.blank.tape": "Keine: die Spannmutter kommt über den Rand des Rohlings. Mit doppelseitigem Klebeband unter "
    "der ganzen Rückseite halten, oder zwischen Leisten, die daneben auf die Opferplatte geschraubt sind und niedriger "
    "als er.",
    "hold.blank.travel": " Zwischen den Schnitten fährt der Fräser {over} über dem Brett.",
    "hold.travel": " Zwischen den Schnitten fährt der Fräser {low} über dem Schild und {over} über dem Brett daneben.",
    "lie.title": "Das Brett auf der Maschine",
    "lie.about": "Brett {width} mal {height}; die Ecke unten links des Schilds liegt {left} von seiner linken "
    "und {front} von seiner vorderen Kante",
    "lie.front": "vorn an der Maschine: hier stehen Sie",
    "lie.grain": "Maserung",
    "lie.datum": "X0 Y0 der Programme",
    "lie.kerf": "wird gefräst: frei halten",
    "lie.tab": "Steg, bleibt bis zuletzt",
    "lie.screw": "Schraube (Vorschlag)",
    "lie.clamp": "Pratzen nur außerhalb",
    "lie.touch": "hier Z setzen",
    # 4 programs
    "run.heading": "Die Programme, in dieser Reihenfolge",
    "run.by_hand": "Sauger leeren. Spindel und Absaugung einmal von Hand laufen lassen: kein Klappern, kein Schlag, "
    "guter Zug.",
    "run.air": "Luftlauf: {file} einmal mit um {high} zu hohem Z laufen lassen und zusehen. Dann Z wieder richtig "
    "setzen.",
    "run.lifted": "Luftlauf: vor jedem Programm das in der Luft ({files}) laufen lassen und zusehen.",
    "run.ready": "Brille, Gehörschutz, Maske; Ärmel und Haare gebunden; Not-Halt in Reichweite.",
    "run.change": "Bei jedem Einsetzen eines Fräsers:",
    "run.collet": "Zuerst sehen, dass die Spindel nicht anlaufen kann; Zange, Mutter und Kegel auswischen. Die Zahlen "
    "der Zange müssen zum Schaft passen, und sie muss ihn auf zwei Dritteln ihrer Länge oder mehr halten ({grip}), "
    "nicht ganz bis zum Anschlag. Nicht mehr herausstehen lassen, als die Karte sagt: lange Fräser federn.",
    "run.row.cutter": "Fräser",
    "run.row.collet": "Zange",
    "run.row.speed": "Spindel",
    "run.row.feed": "Vorschub",
    "run.row.depth": "Tiefe",
    "run.row.time": "Zeit",
    "run.in_collet": "{collet} (Größe {series}) für den Schaft von {shank}",
    "run.rpm": "{rpm} U/min",
    "run.feeds": "{feed} mm/min, {plunge} senkrecht",
    "run.finishing": ", bis {fastest} beim dünnen letzten Zug",
    "run.depth": "hinab bis Z{z} in der Anzeige",
    "run.depth.one": "hinab bis Z{z} in der Anzeige, in einem Zug",
    "run.depth.many": "hinab bis Z{z} in der Anzeige, in {passes} Zustellungen von höchstens {bite}",
    "run.depth.steady": "hinab bis Z{z} in der Anzeige, stetig sinkend, höchstens {bite} auf einmal",
    "run.climb": "; Gleichlauf",
    "run.conventional": "; Gegenlauf",
    "run.about": "rund {span}",
    "run.shares": ": {cutting} % Fräsen, {entry} % Eintauchen, {travel} % Wege",
    "run.fit": "Fräser einsetzen, {stickout} aus der Zange.",
    "run.stops_here": "Hier hält das Programm, die Spindel steht. {fit}",
    "run.start": "Absaugung an, Kopf hoch über dem Schild. Starten, Hand am Vorschub-Halt.",
    "run.go_on": "Das Programm weiterlaufen lassen, Hand am Vorschub-Halt.",
    "run.changer": "Den Fräser in Platz {number} des Wechslers setzen, {stickout} aus seinem Halter.",
    "run.lengths": "Seine Länge kommt in Zeile {number} der Tabelle der Steuerung; X, Y und Z bleiben.",
    "run.lengths.first": "Seine Länge kommt in Zeile {number} der Tabelle der Steuerung; mit ihm in der Spindel und "
    "seiner Länge eingerechnet X, Y und Z setzen wie in Abschnitt 2.",
    "run.zero": "X, Y und Z setzen wie in Abschnitt 2.",
    "run.zero_again": "Nur Z neu setzen, {place}, wie in Abschnitt 2: dieser Fräser ist anders lang. X und Y bleiben; "
    "das Brett wird nicht bewegt.",
    "run.right": "Richtig, wenn:",
    "run.right.sink": "ein Schraubenkopf bündig in seiner Senkung sitzt",
    "run.right.letters": "die Buchstaben scharfe Ecken und saubere Ränder haben{depth}",
    "run.right.half": ", halb so tief wie breit",
    "run.right.up_to": "{half} bis {depth}, wo der Grund eben ist",
    "run.right.deepest": "{half}, höchstens {depth} tief",
    "run.right.floors": "die Böden breiter Buchstaben eben sind, {depth} tief",
    "run.right.strokes": "die Linien der Buchstaben sauber und gleich breit sind",
    "run.right.flat": "die Böden eben und sauber sind, {depth} tief",
    "run.right.corners": "der V-Fräser die Ecken der Buchstaben geschnitten hat, die der Schaftfräser nicht erreicht",
    "run.right.through": "die Buchstaben die Opferplatte zeigen",
    "run.right.hole.one": "das {holes} von {sizes} die Opferplatte zeigt",
    "run.right.hole.many": "{count} {holes} von {sizes} die Opferplatte zeigen",
    "run.right.skin": "eine Haut von {skin} das Schild ringsum hält",
    "run.right.groove": "die Nut um das Schild die Opferplatte zeigt",
    "run.right.grooves": "die Nut um jedes Schild die Opferplatte zeigt",
    "run.right.tabs.one": "{count} Steg das Schild hält, {height} hoch",
    "run.right.tabs.many": "{count} Stege das Schild halten, {height} hoch",
    "run.right.tabs_each": "{count} Stege die Schilder halten, {height} hoch",
    "run.right.loose": "das Schild lose ist: nicht verrutschen lassen, solange die Spindel dreht",
    "run.right.loose_each": "die Schilder lose sind: nicht verrutschen lassen, solange die Spindel dreht",
    "run.right.ended": "das Programm zu Ende gelaufen ist",
    "cutter.title": "Fräser von der Seite",
    "cutter.about": "{cutter}, {stickout} aus der Zange",
    # 5 while it cuts
    "while.heading": "Während gefräst wird",
    "while.chips": "Krümel und Locken sollen fliegen, kein Mehl. Eine verstopfte Nut von Hand räumen, bei stehender "
    "Spindel.",
    "while.rub": "Ein Kreischen, ein brauner oder verschmierter Rand: die Schneide reibt. Ein Zehntel weniger "
    "Drehzahl oder mehr Vorschub; stumpfe reiben immer.",
    "while.spring": "Ein Rand wie ein Waschbrett: der Fräser federt. Kürzer spannen, dünner zustellen oder ein "
    "Zehntel langsamer.",
    "while.load": "Die Spindel quält sich: ein Zehntel weniger Vorschub, dann noch eins; dann Schneide und Schlauch "
    "ansehen.",
    "while.begin": "Die erste Minute eines neuen Bretts mit drei Vierteln der Vorschübe fahren, dann in kleinen "
    "Schritten mehr.",
    "while.chips.up_cut": " Ein nach oben fördernder Fräser hebt sie selbst heraus.",
    "while.chips.down_cut": " Ein nach unten fördernder Fräser drückt sie hinein: die Nut zwischendurch räumen.",
    "while.stop": "Etwas verschiebt sich, klopft oder riecht: Vorschub-Halt, Spindel aus, dann nachsehen. Gefahr: "
    "Not-Halt.",
    # 6 afterwards
    "after.heading": "Danach",
    "after.clear": "Wenn die Spindel steht, den Kopf wegfahren und absaugen.",
    "after.edges": "Scharfe Kanten mit feinem Papier brechen.",
    "after.edges.holes": "Scharfe Kanten mit feinem Papier brechen, Löcher auf beiden Seiten auch.",
    "after.sand": "Eine Fläche, die geschliffen werden darf: Papier auf ebenem Klotz, 180 und dann 240, so bleiben die "
    "Ränder scharf.",
    "after.sand.grain": "Die Fläche mit der Maserung schleifen, Papier auf ebenem Klotz, 180 und dann 240: die Ränder "
    "bleiben scharf.",
    "after.paint": "Farbige Buchstaben: Fläche und Rillen versiegeln, Rillen streichen, trocknen lassen, Fläche sauber "
    "schleifen.",
    "after.paint.flat": "Farbige Buchstaben: alles versiegeln, die Böden streichen, trocknen lassen, Fläche sauber "
    "schleifen.",
    "after.paint.raised": "Farbige Buchstaben: alles streichen und versiegeln, trocknen lassen, dann die zweite Farbe "
    "auf das rollen, was steht.",
    "after.seal": "Im Freien: bei einem Brett, das Wasser zieht, alle Kanten und Löcher auch versiegeln.",
    "after.seal.grain": "Im Freien: alle Kanten auch versiegeln, in Löchern ebenso; dort dringt Wasser zuerst ein.",
    "after.skin": "Das Brett als Ganzes abheben, die Haut von {skin} an der Unterseite mit einem Messer durchtrennen, "
    "vom Körper weg, und bündig putzen.",
    "after.blank": "Den Rohling erst abnehmen, wenn alles stillsteht.",
    "after.no_tabs": "Keine Stege halten das Schild: erst herausnehmen, wenn alles steht.",
    "after.tabs.one": "Das Schild halten und den Steg (schwarz im Plan, {width} breit, {height} hoch, an der "
    "Unterseite) mit einem Messer vom Körper weg oder mit feiner Säge trennen; bündig feilen.",
    "after.tabs.many": "Das Schild halten und die {count} Stege (schwarz im Plan, {width} breit, {height} hoch, an der "
    "Unterseite) mit einem Messer vom Körper weg oder mit feiner Säge trennen; bündig feilen.",
    "after.tabs_each": "Jedes Schild halten und die {count} Stege (schwarz im Plan, {width} breit, {height} hoch, an "
    "der Unterseite) mit einem Messer vom Körper weg oder mit feiner Säge trennen; bündig feilen.",
    "after.template": "Anbringen: {file} mit 100 % drucken, ihre Striche nachmessen ({bar}), waagerecht an die Wand "
    "kleben und die Löcher anzeichnen. Vor dem Bohren nach Leitungen und Rohren suchen.",
    # 7 cautions
    "caution.heading": "Vorsicht",
    "caution.first": "Die Anleitung der Maschine, die Regeln Ihrer Werkstatt und das örtliche Recht gehen vor; dieses "
    "Blatt ergänzt sie nur. Wer neu an der Maschine ist, arbeitet neben jemandem, der sie kennt; Elektrik und feste "
    "Absaugung sind Sache zugelassener Fachleute.",
    "caution.eyes": "Augen und Ohren: Schutzbrille und Gehörschutz vom ersten Start bis zum letzten Halt.",
    "caution.dust": "Staub: am Fräser absaugen und eine passende Maske tragen, auch beim Schleifen; feiner Staub "
    "schadet der Lunge.",
    "caution.hands": "Hände, Haare, Ärmel, Handschuhe und Schmuck bleiben weg von drehenden Fräsern; auch stehende "
    "sind scharf.",
    "caution.clamps": "Pratzen und Schrauben: vor jedem Start prüfen, dass sie fest und aus dem Weg sind.",
    "caution.fire": "Feuer: ein reibender Fräser zündet Staub und Späne. Löscher griffbereit; nach einer halben Stunde "
    "noch einmal nachsehen.",
    "caution.attended": "Eine laufende Maschine nie allein lassen, keine Minute.",
    # 8 checks, 9 files
    "checks.heading": "Was geprüft wurde",
    "checks.meaning": "Was eine Nummer bedeutet:",
    "checks.all_passed": "alle bestanden.",
    "checks.passed": "bestanden",
    "checks.not_run": "nicht gelaufen",
    "checks.warning": "Hinweis",
    "checks.failed": "NICHT BESTANDEN",
    "checks.more": "Und {count} weitere",
    "files.heading": "Dateien in diesem Ordner:",
    "files.outline": "zeigt die Lage",
    "files.lifted": "in der Luft",
    "files.programs": "die Programme",
    "files.setup": "dieses Blatt",
    "files.picture": "das Bild, maßstäblich",
    "files.steps": "die Schritte in Bildern",
    "files.moves": "alle Wege zum Ansehen",
    "files.programs.back": "die Programme der Rückseite, zuerst",
    "files.back": "deren Blatt und Bild",
    "files.template": "die Bohrschablone",
    "files.report": "alle Zahlen für andere Programme",
    "files.sheet": "was für jedes Schild bestellt war, und wo es liegt.",
    "files.sign": "was bestellt war:",
    "files.again": "macht dasselbe noch einmal.",
    # setup-back.html
    "hold.flat.back": "Flach, glatt und abgesaugt: ein Span unter dem Brett kippt es und drückt sich in die "
    "Schauseite. Hier wird nichts durchgefräst.",
    "hold.travel.high": " Zwischen den Schnitten fährt der Fräser {over} über dem Brett.",
    "board.below.keyholes": "Z-Null liegt unter dem Brett, vor der Schauseite bleibt also so viel wie geplant; wo "
    "das Brett {slight} dicker ist, werden Schlüssellöcher {slight} tiefer.",
    "board.on_top.keyholes": "Z-Null liegt auf dem Brett, Schlüssellöcher werden also so tief wie geplant; wo das "
    "Brett {slight} dünner ist, bleibt vor der Schauseite {slight} weniger.",
    "back.title": "Einrichtblatt, Rückseite: {sign}",
    "back.heading": "{sign}: zuerst die Rückseite",
    "back.alt": "Die Rückseite des Schilds: {sign}",
    "back.picture": "Die Rückseite, wie sie jetzt liegt, nach dem nachgestellten Schnitt gezeichnet.",
    "back.measures": "Einführloch {entry}, Schlitz {slot}, innen {undercut} breit (gestrichelt), {travel} vom "
    "Einführloch zur Schraube, {depth} tief; {shoulder} des Bretts tragen jede Schraube. Orte von der Ecke unten "
    "rechts des Schilds.",
    "back.way": "Umgedreht",
    "back.lay": "Das Brett mit der schöneren Fläche nach unten auflegen, seine Seite von {width} von links nach "
    "rechts (X), die von {height} von vorn nach hinten (Y). Das Schild liegt dann {right} von der rechten und "
    "{front} von der vorderen Kante.",
    "back.marks": "Zwei Kanten",
    "back.stops": "Die rechte und die vordere Kante, die gerade und im rechten Winkel sein müssen, mit Bleistift "
    "anzeichnen und an Anschläge schieben. Wird das Brett wie eine Buchseite gewendet, liegt die angezeichnete "
    "Seitenkante links, und die vordere bleibt vorn: von diesen beiden Kanten aus messen beide Aufspannungen.",
    "back.zero.sign": "X0 Y0 ist die Ecke des Schilds, die jetzt vorn rechts liegt. Auf dem Brett eine Linie {x} von "
    "der rechten und eine {y} von der vorderen Kante ziehen. {point} über ihre Kreuzung bringen und X und Y auf 0 "
    "setzen. Die Programme laufen bei negativem X.",
    "back.zero.stock": "X0 Y0 ist die vordere rechte Ecke des Bretts. {point} über diese Ecke bringen und X und Y "
    "auf 0 setzen. Das Schild beginnt {x} weiter links und {y} weiter hinten. Die Programme laufen bei negativem X.",
    "back.then.clear": "Wenn die Spindel steht, den Kopf wegfahren und absaugen, auch in den Schlitzen.",
    "back.then.try": "Eine Schraube der Sorte probieren, die dort hängen wird: ihr Kopf geht am Einführloch hinein und "
    "gleitet ohne Kraft bis ans Ende.",
    "back.then.turn": "Das Brett wie eine Buchseite wenden: die angezeichnete Seitenkante liegt jetzt links, die "
    "vordere bleibt vorn. Beide wieder an ihre Anschläge; Schrauben kommen in dieselben Löcher.",
    "back.then.face": "Mit setup.html weitermachen. Dort X, Y und Z neu setzen: Null ist dieselbe Ecke des Schilds, "
    "die jetzt vorn links liegt.",
    "back.first": "Zuerst die Rückseite:",
    "back.before": "dieses Schild hängt an Schlüssellöchern. Vor allem hier erst {file} ganz abarbeiten; dann das "
    "Brett wie eine Buchseite wenden, seine zwei angezeichneten Kanten wieder an die Anschläge.",
    "run.right.opened": "jedes Schlüsselloch offen ist, Einführloch und Schlitz gleich tief",
    "run.right.undercut": "ein Schraubenkopf vom Einführloch bis ans Ende des Schlitzes gleitet und dort gehalten wird",
    # template.html and template.svg
    "template.title": "Bohrschablone: {sign}",
    "template.about": "{size}, von vorn gesehen, {count} {holes}",
    "template.sheet": "Blatt {number} von {count}: Reihe {row} von oben, {column} von links.",
    "template.scale": "Mit 100 % drucken, nicht an die Seite anpassen: beide Striche müssen {bar} messen.",
    "template.join": "Jedes Blatt an den gestrichelten Linien rechts und unten abschneiden, so über die Nachbarn "
    "legen, dass Ringe mit gleicher Nummer sich decken, und festkleben.",
    "template.wall": "Mit der Strichpunktlinie waagerecht an die Wand kleben und die Mitten durch das Papier "
    "anzeichnen. Vor dem Bohren sicherstellen, dass dort weder Leitung noch Rohr liegt; Bohrer nach Dübel und "
    "Schraube.",
    "template.bar": "muss {bar} messen",
    "template.screw": "Schraube",
    "template.screws.one": "{size}, von vorn gesehen, {count} Schraube zum Aufhängen",
    "template.screws.many": "{size}, von vorn gesehen, {count} Schrauben zum Aufhängen",
    "template.level": "waagerecht",
    "template.level.apart": "waagerecht; {apart} zwischen den äußeren Löchern",
    "template.up": "↑ diese Seite oben",
    # a whole sheet of signs
    "nested.alt": "{title}, wie die Schilder aussehen werden",
    "nested.picture": "Die Schilder, gezeichnet nach dem gedachten Schnitt.",
    "nested.plan": "Die Platte mit den Schildern",
    "sheet.called": "Platte {number} von {sheets}: {count} {count:Schild|Schilder}",
    "nested.plan_about": "Platte von {width} mal {height} mm mit {count} nummerierten Schildern",
    "nested.saw_off": "Reststück {size}",
    "nested.offcut": "; ein Reststück von {size} bleibt ganz",
    "nested.left_over": "{used} % der Platte werden Schilder{offcut}; {waste} % sind Abfall. Schwarz: Stege. "
    "Nummern: siehe die Liste der Schilder.",
    "nested.board": "Die Platte",
    "nested.lies": "Eine Platte von {size}, winklig und eben, mit der Seite von {width} von links nach rechts (X) "
    "und der Seite von {height} von vorn nach hinten (Y), die bessere Seite oben.",
    "nested.grain": " Die Maserung läuft von links nach rechts.",
    "nested.turned": " Manche Schilder liegen um ein Viertel gedreht, so wie ihre Nummern.",
    "nested.zero.stock": "X0 Y0 ist die vordere linke Ecke der Platte. {point} über diese Ecke bringen und X und Y "
    "auf 0 setzen. Die ersten Schilder beginnen {x} weiter rechts und {y} weiter hinten.",
    "nested.zero.signs": "X0 Y0 ist die Ecke unten links aller Schilder zusammen. Eine Linie {x} von der linken "
    "und eine {y} von der vorderen Kante ziehen. {point} über ihre Kreuzung bringen und X und Y auf 0 setzen.",
    "nested.row": "Zeile {row}",
    "nested.which": "Welches Schild welches ist",
    # steps.png
    "steps.board": "das Brett",
    "steps.after": "nach Programm {number}: {tool}",
    "steps.finished": "fertig",
    # preview.svg
    "svg.title": "Schild: {sign}",
    "svg.about": "{width} mal {height} aus {material}, {count} Löcher; wie es die nachgestellten Fräser lassen, "
    "maßstäblich.",
    # summary at the terminal
    "summary.sign": "Schild",
    "summary.lettering": "Schrift",
    "summary.at": "{text} mit {height}",
    "summary.fire_code": "; wo eine Brandschutzordnung gilt, kann sie Ziffern von {height} verlangen",
    "summary.board": "Brett",
    "summary.programs": "Programme",
    "summary.time": "Zeit",
    "summary.checks": "Prüfung",
    "summary.warning": "Hinweis",
    "summary.next": "weiter",
    "summary.made": "{material}{holes}, Großbuchstaben {capitals} hoch",
    "summary.holes.one": ", {count} Loch",
    "summary.holes.many": ", {count} Löcher",
    "summary.least": "mindestens {size}",
    "summary.yours": "Ihres, {size}; mit Platz für Schrauben {least}",
    "summary.blank": "ein Rohling von {size}, schon auf Maß; X0 Y0 ist seine Ecke vorn links",
    "summary.lies": "{board}; das Schild liegt {left} von der linken und {front} von der vorderen Kante",
    "summary.cutting": "rund {span} Fräszeit; Maschine: {machine}",
    "summary.more": " Und {count} weitere auf dem Blatt.",
    "summary.hidden": "und {count} weitere",
    "summary.open": "{file} öffnen und drucken.",
    "summary.do_not": "Nicht fräsen. {file} öffnen und drucken.",
    "summary.care": "Anleitung, Werkstatt und örtliches Recht gehen vor; erst in der Luft.",
    "summary.caution": "Vorsicht",
    # while it works
    "stage.plan": "Das Schild wird gezeichnet, die Schnitte werden geplant",
    "stage.prove": "Das gedachte Brett wird gefräst und geprüft",
    "stage.draw": "Blatt und Bilder werden gezeichnet",
    # preview.html
    "page.title": "Bewegtes Bild: {sign}",
    "page.about": "{size}, {thickness} {material}, {programs}. Das Brett wird hier von den Wegen der Programme selbst "
    "gefräst.",
    "page.noscript": "Diese Seite zeichnet mit einem Skript, das dieser Browser nicht ausführt. Siehe preview.png.",
    "page.stage": "Das Brett von oben oder räumlich, wie die Programme es fräsen: {sign}",
    "page.section_label": "Schnitt durch das Brett von links nach rechts beim Fräser",
    "page.play": "Abspielen",
    "page.slider": "Zeit in den Programmen",
    "page.speed": "Tempo",
    "page.which": "Zeigen",
    "page.all": "alle Programme",
    "page.air": "Wege durch die Luft",
    "page.view": "Räumlich",
    "page.controls": "Wiedergabe",
    "page.opening": "Das Brett wird gefräst ...",
    "page.back": "Eine Bewegung zurück",
    "page.on": "Eine Bewegung weiter",
    "page.grid": "Gitter",
    "page.modal": "In Kraft:",
    "page.readout": "Die Zeile, die Spitze und was gilt",
    "page.nothing": "Kein Programm bewegt etwas, also gibt es nichts abzuspielen.",
    "page.other_file": "Nenne eine andere Datei.",
    "page.several": "Es sind mehrere Bretter und eine Seite.",
    "page.one_by_one": "Prüfe sie einzeln.",
    "page.keys": "Tasten",
    "page.hint_flat": "Auf das Brett zeigen oder tippen, um dort die Tiefe zu lesen.",
    "play.play": "Abspielen",
    "play.pause": "Anhalten",
    "play.plays": "Läuft.",
    "play.paused": "Angehalten.",
    "play.loading": "Das Brett wird gefräst: {share} %",
    "play.failed": "Dieser Browser kann die Wege nicht zeigen. Siehe preview.png.",
    "play.no_space": "Dieser Browser kann nicht räumlich zeichnen (kein WebGL 2).",
    "play.when": "{when} von {whole}, {file}",
    "play.doing": "{file}, Zeile {line}: {tool}",
    "play.finished": "Fertig: was die Programme vom Brett lassen",
    "play.times": "{speed}-fach",
    "play.point": "Auf das Brett zeigen, um die Tiefe zu lesen",
    "play.touch": "Berühre das Brett, um die Tiefe zu lesen",
    "play.beside": "Neben dem Brett",
    "play.through": "X{x} Y{y}: durchgefräst",
    "play.uncut": "X{x} Y{y}: nicht gefräst",
    "play.depth": "X{x} Y{y}: {depth} mm tief",
    "play.section": "Schnitt bei Y{y}",
    "play.hint_flat": "Auf das Brett zeigen oder tippen, um dort die Tiefe zu lesen.",
    "play.hint_space": "Ziehen dreht das Brett, zwei Finger oder das Rad holen es näher; liegt der Fokus auf dem Bild, "
    "drehen es die Pfeiltasten.",
    "key.space": "Leertaste",
    "keys.space": "abspielen oder anhalten",
    "key.step": "← →",
    "keys.step": "einen Weg zurück oder weiter; mit Umschalt zehn Sekunden",
    "key.ends": "Pos1 Ende",
    "keys.ends": "Anfang oder Ende",
    "key.speed": "+ −",
    "keys.speed": "schneller oder langsamer; liegt der Fokus auf dem räumlichen Bild, näher oder ferner",
    "key.air": "W",
    "keys.air": "Wege durch die Luft",
    "key.grid": "G",
    "keys.grid": "Gitter",
    "key.view": "V",
    "keys.view": "räumlich oder von oben",
    # names of checks
    "check.legal_text": "lesbarer Text",
    "check.units_plausible": "Einheiten glaubhaft",
    "check.inside_travel": "im Verfahrweg",
    "check.inside_board": "auf dem Brett",
    "check.fixings_clear": "Schrauben und Pratzen frei",
    "check.rapids_clear": "Eilgänge frei",
    "check.spindle_ready": "Spindel bereit",
    "check.starts_and_ends": "Anfang und Ende",
    "check.feeds_sane": "Vorschübe vernünftig",
    "check.depth_limit": "Tiefe begrenzt",
    "check.cutter_reach": "Fräser lang genug",
    "check.pass_depth": "Zustelltiefe",
    "check.ramp_angle": "Eintauchwinkel",
    "check.text_as_ordered": "Text wie bestellt",
    "check.letters_made": "Buchstaben da",
    "check.groove_walls": "Rillenwände",
    "check.not_gouged": "nichts verletzt",
    "check.holes_made": "Löcher da",
    "check.recesses_made": "Vertiefungen da",
    "check.heads_seated": "Schraubenköpfe sitzen",
    "check.edge_size": "Außenmaß",
    "check.edge_bevelled": "Kante gefast",
    "check.tabs_hold": "Stege halten",
    "check.code_reads": "Code lesbar",
    "check.held_round": "ringsum gehalten",
    "check.skin_holds": "Haut hält",
    "check.nothing_loose": "nichts lose",
    "check.programs_in_order": "Reihenfolge",
    "check.keyholes_made": "Schlüssellöcher da",
    "check.wood_over_keyholes": "Holz über Schlüssellöchern",
    "check.wood_left": "Holz unter den Rillen",
    "check.trials_clear": "Probeläufe frei",
    "check.touched_off": "richtig angetastet",
    "check.stops_and_waits": "Halt und Pausen",
    "check.as_stated": "wie auf dem Blatt",
    "check.headings_true": "Kopfzeilen wahr",
    "check.paper_followed": "nach dem Blatt gearbeitet",
    "check.papers_agree": "Papiere passen",
}
