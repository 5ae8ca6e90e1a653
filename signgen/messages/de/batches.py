"""Deutsch: Listen von Schildern und was dazugehört."""

from __future__ import annotations

WORDS = {
    "batch.is_there": "In {path} liegt schon ein Auftrag.",
    "batch.resume_or_fresh": "--resume setzt ihn fort und macht nur, was neu oder geändert ist; --fresh macht alle "
    "Zeilen neu; oder ein anderes --out angeben.",
    "batch.go_on_with_it": "Fortsetzen und nur machen, was neu oder geändert ist?",
    "batch.resume_and_fresh": "--resume setzt einen Auftrag fort, und --fresh macht alle seine Zeilen neu.",
    "batch.leave_one_out": "Eines davon weglassen.",
    "batch.ledger_of_another_version": "{path} stammt von einer anderen Fassung von signgen, die weniger über Zeilen "
    "festhielt.",
    "batch.begin_afresh": "Mit --fresh alle Zeilen neu machen, oder ein anderes --out angeben.",
    "batch.other_columns": "Der Auftrag in jenem Ordner hat die Spalten {columns:plain}, und {path} hat andere.",
    "batch.keep_the_columns": "Zellen berichtigen und die Spalten lassen, wie sie sind, oder ein anderes --out "
    "angeben.",
    "batch.alike_differs": "Andere Zeilen des Auftrags in {path} wurden anders verlangt: {names}.",
    "batch.ask_as_then": "Dieselbe Schilddatei und dieselben Optionen wie damals angeben; oder die ganze Liste mit "
    "--resume, damit alle Zeilen mit den neuen gemacht werden; oder ein anderes --out.",
    "batch.has_no_row": "Der Auftrag in {path} hat keine Zeile {row}.",
    "batch.no_such_row": "Die Liste hat keine Zeile {row}.",
    "batch.how_rows_count": "Zeilen zählen wie in einer Tabelle: die Kopfzeile ist Zeile 1.",
    "batch.no_row_numbers": "„{text}“ ist keine Nummer einer Zeile.",
    "batch.write_row_numbers": "Nummern ab 2 und Bereiche davon schreiben, etwa 19,44-46; die Kopfzeile ist Zeile 1.",
    "batch.no_old_number": "„{text}“ ist keine Nummer einer Zeile.",
    "batch.old_number_twice": "Zeile {row} steht auch in Dateizeile {line}.",
    "batch.leave_the_numbers": "Die Spalte row so lassen, wie signgen sie schrieb: nach ihr kommen Zeilen an ihren "
    "Platz zurück.",
    "batch.report_changed": "{path} wurde geändert, nachdem signgen sie schrieb, und ginge verloren.",
    "batch.use_or_move_it": "Den Auftrag mit ihr als Liste laufen lassen, wenn Zeilen darin berichtigt wurden; sonst "
    "sie woandershin legen.",
    "batch.offcut_policy": "Jedes Schild zahlt die Platte, die es mit dem Platz für seinen Schnitt und seine "
    "Schrauben braucht, seine Minuten und die Abnutzung der Fräser.",
    "batch.offcut_policy_sheets": "Berechnet werden ganze Platten samt Reststücken. Schilder, die in einer "
    "Einrichtung geschnitten werden, tragen sie nach ihrer Fläche, sodass gleiche Schilder überall gleich viel "
    "kosten.",
    "batch.verdict_verified": "geprüft",
    "batch.verdict_failed": "nicht gemacht: {where}: {what}",
    "batch.kept": "{count} {count:Zeile|Zeilen} wie zuvor, nicht noch einmal gemacht",
    "batch.kept_moved": "{count} {count:Zeile|Zeilen} wie zuvor, nicht noch einmal gemacht; {moved} davon unter neuer "
    "Nummer",
    "batch.gone": "Zeile {row} ({words}) steht nicht mehr in der Liste; ihr Schild wurde weggenommen",
    "batch.gone_more": "und {count} weitere Zeilen, die nicht mehr in der Liste stehen",
    "batch.twins": "Zeilen {first} und {row} verlangen dasselbe Schild; eine Spalte copies sagt, wie viele es sein "
    "sollen",
    "batch.twins_more": "und {count} weitere Zeilen, die dasselbe wie eine andere verlangen",
    "batch.not_ours": "{path} stammt nicht von signgen.",
    "proof.title": "Korrekturabzug von {name}",
    "proof.about": "{rows:,} {rows:Zeile|Zeilen}, {signs:,} {signs:Schild|Schilder}.",
    "proof.failed": "{count:,} {count:Zeile kann|Zeilen können} so nicht gemacht werden.",
    "proof.only_drawn": "Die Schilder, wie sie aussehen werden, jedes in seinem eigenen Maßstab. Bitte jedes Wort und "
    "jede Zahl ansehen, abhaken, was stimmt, und danebenschreiben, was nicht stimmt. Programme werden erst danach "
    "gemacht und geprüft.",
    "proof.row": "Zeile {row}",
    "proof.sign": "Durchgesehen und freigegeben wie abgehakt:",
    "proof.name": "Name",
    "proof.date": "Datum",
    "proof.signature": "Unterschrift",
    "proof.shown": "{count:,} {count:Schild|Schilder} gezeichnet: {path}. Programme wurden keine gemacht.",
    "proof.more_failed": "und {count:,} weitere Zeilen; der Korrekturabzug zeigt alle",
    "proof.no_pdf": "Es gibt keine PDF-Datei: {why}",
    "index.title": "Auftrag {name}",
    "index.alone": "{signs:,} {signs:Schild|Schilder}, etwa {minutes} Minuten Fräszeit.",
    "index.on_sheets": "{signs:,} {signs:Schild|Schilder} auf {sheets:,} {sheets:Platte|Platten}, etwa {minutes} "
    "Minuten Fräszeit.",
    "index.and_failed": "{made} {count:,} {count:Zeile konnte|Zeilen konnten} nicht gemacht werden; sie stehen in "
    "errors.csv.",
    "index.search": "Wörter, Nummern, Ordner suchen",
    "index.row": "Zeile",
    "index.picture": "Bild",
    "index.words": "Wörter",
    "index.copies": "Stück",
    "index.minutes": "Zeit",
    "index.cost": "Kosten",
    "index.verdict": "Ergebnis",
    "index.setup": "Rüstblatt",
    "index.setup-back": "Rüstblatt der Rückseite",
    "index.preview": "Wege",
    "workbook.no_library": "Dateien von Tabellenprogrammen brauchen Bibliotheken, die nicht installiert sind.",
    "workbook.install": "Installieren mit pip install 'signgen[sheets]', oder die Liste als CSV (UTF-8) sichern.",
    "workbook.broken": "{path} lässt sich nicht als Tabelle lesen: {why}.",
    "workbook.save_again": "Im Tabellenprogramm öffnen und neu sichern, oder als CSV (UTF-8) sichern.",
    "workbook.too_large": "{path} entfaltet sich zu mehr als {most} MB oder hat mehr Zellen als eine Liste von "
    "Schildern.",
    "workbook.save_as_text": "Die Liste allein als CSV (UTF-8) sichern oder teilen.",
    "workbook.no_sheet": "{path} hat kein Blatt „{name}“.",
    "workbook.name_one": "Es hat {names}.",
    "workbook.cell_error": "Zelle {place} enthält einen Fehler, {text}.",
    "workbook.mend_cell": "Die Formel berichtigen oder den Wert hineinschreiben.",
    "workbook.is_text": "{path} ist keine Datei eines Tabellenprogramms und hat keine Blätter.",
    "workbook.leave_it_out": "worksheet weglassen.",
    "batch.its_value": "{key} {value}",
    "batch.apart": "Zeile {row} verlangt {what}",
    "batch.apart_by_mill": "Zeile {row} hat Vertiefungen, die kein Schaftfräser der anderen räumt ({mills:plain})",
    "batch.sheets_apart": "{sheets} getrennt, denn {why}",
    "batch.no_list": "Es ist keine Liste angegeben.",
    "batch.name_a_list": "Hinter signgen batch nennen; signgen batch --example gibt eine zum Anfangen aus.",
    "packing.title": "Packliste {name}",
    "packing.done": "Gepackt",
    "packing.row": "Zeile",
    "packing.copies": "Stück",
    "packing.words": "Wörter",
    "packing.size": "Größe",
    "packing.place": "Gemacht als",
    "packing.piece": "{folder}, Nr. {piece}",
    "packing.failed": "nicht gemacht",
    "labels.title": "Etiketten {name}",
    "labels.row": "Zeile {row}",
}
