"""German: options, lines as they are typed, and what is asked of `signgen explain`."""

from __future__ import annotations

WORDS = {
    "problem.and_of": "{what} Ebenso {others}.",
    "problem.and_of_more": "{what} Ebenso {others:plain} und {count} weitere.",
    "line.before_any": "Es steht vor der ersten Zeile.",
    "line.text_first": 'Zuerst den Text schreiben, etwa "17" {setting}.',
    "line.twice": "Die Zeile hat es zweimal.",
    "line.leave_one": "Eines davon weglassen.",
    "option.unknown": "Diese Option gibt es nicht.",
    "option.search": "Mit signgen explain {word} fragen, oder signgen make --help-all ansehen.",
    "explain.nothing": "Darüber ist nichts bekannt.",
    "explain.all_in_english": "Das Nachschlagewerk gibt es vorerst nur auf Englisch.",
    "explain.all_is_alone": "Das macht eine Seite von allem.",
    "explain.leave_the_rest_out": "Die anderen Wörter weglassen.",
    "explain.out_is_of_all": "Nur das ganze Nachschlagewerk wird in eine Datei geschrieben.",
    "explain.write_all_out": "signgen explain --all --out reference.html schreiben.",
    "explain.nothing_asked": "Es ist nicht gesagt, was erklärt werden soll.",
    "explain.ask_something": "Eine Option, eine Prüfung oder ein Fachwort nennen, oder fragen; --all macht eine Seite "
    "von allem.",
    "explain.other_words": "Mit anderen Worten fragen, oder signgen explain recipes, signgen explain sign-file und "
    "signgen make --help-all ansehen.",
    "material_words.not_cut": "{said} wird hier nicht geschnitten: {reason}",
    "material_words.use_other": "Einen anderen Werkstoff nehmen (signgen list materials).",
    "unfit.stone": "es verbraucht Fräser in Minuten, und sein Staub schadet der Lunge für immer.",
    "unfit.brittle": "es zerspringt unter dem Fräser.",
    "unfit.hard-metal": "es braucht langsamere Spindeln, steifere Maschinen und Kühlung.",
    "unfit.chlorine": "überhitzt gibt es Chlorwasserstoff ab.",
    "unfit.fibres": "die Fasern schaden der Lunge, und manche schließen Maschinen kurz.",
    "unfit.poison": "der Staub ist giftig.",
    "unfit.crumbles": "Buchstaben bröckeln darin.",
}
