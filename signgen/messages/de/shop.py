"""German: the workshop's data."""

from __future__ import annotations

WORDS = {
    "shop.shank_does_not_go_into": "Der Schaft von {shank} passt nicht in Spannzangen der Größe {series}.",
    "shop.they_take": "Sie nehmen {least:bare} bis {greatest} auf.",
    "shop.not_less_than_diameter": "{tip} ist nicht kleiner als der Durchmesser von {diameter}.",
    "shop.give_flat_very_tip": "Die Fläche ganz an der Spitze angeben.",
    "shop.less_than_cutting_length": "{stickout} ist kürzer als die Schneidenlänge von {length}.",
    "shop.measure_from_collet_tip": "Von der Spannzange bis zur Spitze messen.",
    "shop.no_less_than_head_s": "{neck} ist nicht weniger als der Kopf mit {diameter}.",
    "shop.give_neck_above_head": "Den Hals über dem Kopf angeben.",
    "shop.no_less_than_cutting_length": "{head} ist nicht weniger als die Schneidenlänge von {length}.",
    "shop.give_head_alone_cutting_length": "Den Kopf allein angeben; die Schneidenlänge reicht von seinem Ende bis "
    "zum Schaft.",
    "shop.more_than": "{slow} ist mehr als {fast}.",
    "shop.give_slowest_speed_first": "Die langsamste Drehzahl zuerst angeben.",
    "shop.there_no_collet_size_iso": "Die Spannzangengröße {collet} gibt es in ISO 15488 nicht.",
    "shop.choose_from": "Zur Wahl stehen: {known:plain}.",
    "shop.neither_true_nor_false": "Es ist weder true noch false.",
    "shop.not_table": "Es ist keine Tabelle.",
    "shop.there_no_such_table": "Eine solche Tabelle gibt es nicht.",
    "shop.write_name": "[{kind}.NAME] schreiben.",
    "shop.use_z_0_9_single": "a-z, 0-9 und einzelne Bindestriche nehmen; es wird Teil eines Dateinamens.",
    "shop.not_name": "'{name}' ist kein Name.",
    "shop.write_prices": "[prices] schreiben.",
    "shop.there_no_such_key": "Einen solchen Schlüssel gibt es nicht.",
    "shop.write_prices_name": "[prices.{kind}.NAME] schreiben.",
    "shop.not_table_tables": "Es ist keine Tabelle von Tabellen.",
    "shop.missing": "Es fehlt.",
    "shop.write_value_0_5_source": '{{ value = 0.5, source = "common practice" }} schreiben, oder nennen, woher '
    "die Zahl kommt.",
    "shop.number_needs_source_beside": "Bei einer Zahl muss ihre Quelle stehen.",
    "shop.not_list_numbers": "{text} ist keine Liste von {n} Zahlen.",
    "shop.write_numbers": "{n} Zahlen in [ ] schreiben.",
    "shop.not_colour": "'{text}' ist keine Farbe.",
    "shop.write_rrggbb_dcbf94": "#rrggbb schreiben, wie #dcbf94.",
    "shop.not_list": "{text} ist keine Liste.",
    "shop.write_sentences_none": "Sätze in [ ] schreiben, oder [] für keine.",
    "shop.use_larger_board_turn_quarter": "Ein größeres Brett nehmen, es um ein Viertel drehen, oder ein kleineres "
    "Schild machen.",
    "shop.give_it": "{key} angeben.",
    "shop.board_is_too_small_wide": "Das Brett ist {board} breit; Schild und Außenschnitt brauchen {needed}, mit "
    "Platz für Schrauben {wanted}.",
    "shop.board_is_too_small_high": "Das Brett ist {board} hoch; Schild und Außenschnitt brauchen {needed}, mit "
    "Platz für Schrauben {wanted}.",
    "shop.needs_more_travel": "{size} und der Schnitt von {cutter} ringsum brauchen {needed} Verfahrweg; die "
    "Maschine hat {travel}.",
    "shop.make_it_smaller": "Das Schild höchstens {most} groß machen oder eine andere Maschine angeben.",
    "shop.make_it_smaller_or_turn_it": "Das Schild höchstens {most} groß machen oder eine andere Maschine angeben. "
    "Oder das Schild um ein Viertel drehen.",
    "shop.at_a_pass_in": "bei {depth} Zustellung in {material}",
    "shop.spindle_is_weak": "{tool}: er braucht rund {watts} W {slot}, und die Spindel hat bei {rpm:,} U/min "
    "{available} W: mit halbem Vorschub beginnen.",
    "shop.cutter_bends": "{tool}: er biegt sich unter {newtons} N um rund {bend} {slot}, {stickout} aus der Zange: "
    "wo es auf das Maß ankommt, einen dickeren oder kürzeren nehmen, oder mit halbem Vorschub beginnen.",
    "shop.each_edge_takes": "{tool}: jede Schneide nimmt {chip} in {material}",
    "shop.chip_rubs": "{takes}, und unter {least} reibt sie und wird heiß: ein Fräser mit weniger Schneiden nimmt "
    "mehr.",
    "shop.chip_breaks_out": "{takes}, und über {most} bricht sie aus: mit halbem Vorschub beginnen.",
}
