"""German: what `list` says of what there is to choose from."""

from __future__ import annotations

WORDS = {
    "listing.only_fonts": "Das gibt es nur für fonts, nicht für {kind}.",
    "listing.write_fonts": "list fonts --specimen ORDNER schreiben.",
    "listing.only_examples": "Nur examples werden kopiert, nicht {kind}.",
    "listing.write_examples": "list examples --copy ORDNER schreiben.",
    "listing.another_file": "{path} ist eine andere Datei.",
    "listing.choose_another": "Einen anderen Ordner wählen, oder die Datei woandershin legen.",
    "listing.tool": "{tool}, schneidet {deep} tief",
    "listing.tool_named": "{tool}, schneidet {deep} tief, nur wenn genannt",
    "listing.flutes": "{count} {count:Schneide|Schneiden}, Schaft {shank}",
    "listing.flutes_no_plunge": "{count} {count:Schneide|Schneiden}, Schaft {shank}, kann nicht senkrecht eintauchen",
    "listing.also": "auch: {names:plain}",
    "listing.cuts": "Span {chip} und Zustellung {stepdown} des Durchmessers, Rampen mit {entry} Grad",
    "listing.machine": "{machine}; Wege {travel}",
    "listing.spindle": "Spindel {least} bis {most} U/min",
}
