"""German: what is wrong with a list, a sheet or a batch."""

from __future__ import annotations

WORDS = {
    "batching.there_no_sheet": "Dafür gibt es keine Platte.",
    "batching.give_sheet_too": "Auch --sheet angeben.",
    "batching.install_with_pip_install_signgen": "Es mit pip install 'signgen[cluster]' installieren, oder "
    "--scheduler weglassen.",
    "batching.dask_distributed_not_installed": "dask.distributed ist nicht installiert.",
    "batching.took_too_long": "es dauerte zu lang",
    "batching.no_scheduler_answers": "Unter {address} antwortet kein Scheduler: {error}.",
    "batching.start_one_with_dask_scheduler": "Einen mit dask scheduler starten, oder die Adresse berichtigen.",
    "batching.cluster_has_no_workers": "Der Cluster hat keine Arbeiter.",
    "batching.start_some_with_dask_worker": "Mit dask worker welche starten.",
    "batching.workers_have_signgen": "Seine Arbeiter haben signgen {versions:plain}, und hier ist {here}.",
    "batching.install_same_version_on_every": "Auf jedem Arbeiter dieselbe Version installieren.",
    "batching.border_mm_cut_leave_no": "Ein Rand von {border} und der Schnitt lassen keinen Platz darauf.",
    "batching.use_larger_sheet_smaller_clamp": "Eine größere Platte oder ein kleineres clamp-border nehmen.",
    "batching.signs_would_lie_on_x": "Schilder lägen auf {room}, mit {more} für Schnitte ringsum; {machine} "
    "erreicht {travel}.",
    "batching.turn_sheet_give_width_along": "Die Platte drehen: ihre Breite entlang X angeben.",
    "batching.use_smaller_sheet_another_machine": "Eine kleinere Platte oder eine andere Maschine nehmen.",
    "batching.two_cuts_mm_mm_wood": "zwei Schnitte von {cut} und {strip} Holz für die Stege",
    "batching.cut_mm_mm": "einen Schnitt von {cut} und {apart}",
    "batching.mm_too_little": "{gap} sind zu wenig für {why}.",
    "batching.use_mm_more_leave_out": "{least} oder mehr nehmen, oder es weglassen.",
    "batching.keyholes_are_cut_from_back": "Schlüssellöcher werden von hinten gefräst, und eine ganze Platte mit "
    "Schildern wird nicht gewendet.",
    "batching.make_sign_itself_without_sheet": "Das Schild für sich machen, ohne --sheet, oder mit anderen Löchern.",
    "batching.signs_on_sheet_are_cut": "Schilder auf einer Platte werden aus ihr geschnitten, und edge none lässt "
    "das Äußere, wie es ist.",
    "batching.make_sign_itself_without_sheet_2": "Das Schild für sich machen, ohne --sheet, oder edge none weglassen.",
    "batching.sign_x_mm_larger_than": "Das Schild von {sign} ist größer als die {room}, die eine Platte innerhalb "
    "von Rand und Schnitten hat.",
    "batching.let_signs_turned_give_width": "Schilder drehen lassen, oder die Breite als Höhe angeben.",
    "batching.make_smaller_use_larger_sheet": "Es kleiner machen, oder eine größere Platte nehmen.",
    "batching.signs_are_too_many_lay": "{count:,} Schilder sind zu viele, um sie auf einmal auszulegen.",
    "batching.split_list_signs_most": "Die Liste teilen: höchstens {most:,} Schilder.",
    "batching.row_needs_another_cutter_edge": "Zeile {row} braucht für ihre Kante einen anderen Fräser als allein, "
    "und ihr Schild passt dann nicht mehr.",
    "batching.use_larger_sheet": "Eine größere Platte nehmen.",
    "batching.not_signgen_s": "{path} ist nicht von signgen.",
    "batching.choose_another_folder_move_file": "Einen anderen Ordner wählen, oder die Datei woandershin legen.",
    "batching.signs_on_sheet_have_no": "Schilder auf einer Platte haben kein eigenes Brett.",
    "batching.leave_out_sheet_board": "Es weglassen; --sheet ist das Brett.",
    "batching.on_which_failed_whole": "Auf {folder}, das als Ganzes scheiterte: {what}",
    "batching.lone": "Ein einzelnes ‚{brace}‘.",
    "batching.write_brace": "Für eine Klammer {{{{ oder }}}} schreiben.",
    "batching.braces_cut_are": "{close} Klammern, die gefräst werden sollen, sind {{{{ und }}}}.",
    "batching.list_has_no_column": "Die Liste hat keine Spalte ‚{column}‘ für {place}.",
    "batching.use_in_text_sign_file": "Sie als {{{name}}} in einem Text der Schilddatei benutzen, löschen, oder "
    "--ignore-columns angeben.",
    "batching.column_no_key_sign_file": "Diese Spalte ist kein Schlüssel einer Schilddatei.",
    "batching.hint_and_use": "{hint} {use}",
    "batching.more_columns_are_unknown": "{more} weitere Spalten sind unbekannt.",
    "batching.give_ignore_columns": "--ignore-columns angeben.",
    "batching.give_list_column_say_in": "Der Liste eine Spalte {key} geben, oder es in der Schilddatei sagen.",
    "batching.missing": "Es fehlt.",
    "batching.there_no_such_key": "Einen solchen Schlüssel gibt es nicht.",
    "batching.close_text_with_quote_write": "Den Text mit einem Anführungszeichen schließen; eines im Text doppelt "
    "schreiben.",
    "batching.quote_that_opens_text_never": "Ein Anführungszeichen, das einen Text öffnet, wird nie geschlossen.",
    "batching.something_follows_quote_that_closes": "Hinter dem Anführungszeichen, das einen Text schließt, folgt "
    "noch etwas.",
    "batching.row_cannot_read": "Die Zeile lässt sich nicht lesen: {text}.",
    "batching.line_has_more_than_characters": "Die Zeile hat mehr als {longest_record:,} Zeichen.",
    "batching.quoted_text_goes_on_more": "Ein Text in Anführungszeichen geht über mehr als {count:,} Zeilen.",
    "batching.what_done_stays_same_command": "Was fertig ist, bleibt; derselbe Befehl mit --resume macht dort weiter.",
    "batching.said_2": "{remedy} {go_on}",
    "batching.leave_resume_out_give_out": "--resume weglassen, oder das --out des unterbrochenen Stapels angeben.",
    "batching.there_no_batch_in": "In {out} liegt kein Stapel.",
    "batching.give_another_out_copy_list": "Ein anderes --out angeben, oder die Liste zuerst anderswohin kopieren.",
    "batching.would_replaced_while_read": "{path} würde ersetzt, während es gelesen wird.",
}
