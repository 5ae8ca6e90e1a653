"""German: what the reader of programs refuses and notes."""

from __future__ import annotations

WORDS = {
    "reader.arc_given_radius_may_not": "Ein durch seinen Radius gegebener Bogen darf nicht enden, wo er beginnt.",
    "reader.arc_has_either_radius_r": "Ein Bogen hat entweder einen Radius R oder einen Mittelpunkt, nicht beides.",
    "reader.arc_in_plane_needs_full": "Ein Bogen in dieser Ebene braucht {letters}; ein voller Kreis wiederholt "
    "eines davon.",
    "reader.arc_needs_centre_radius": "Ein Bogen braucht seinen Mittelpunkt oder seinen Radius.",
    "reader.atan_needs_two_values_atan": "ATAN braucht zwei Werte, ATAN[a]/[b].",
    "reader.back_boring_not_followed_cutter": "Rückwärtsbohren wird nicht verfolgt: der Fräser gilt als über dem Loch.",
    "reader.brackets_are_nested_more_than": "Klammern sind mehr als {deepest_nesting} tief geschachtelt.",
    "reader.centre_nearer_one_end_arc": "Der Mittelpunkt liegt dem einen Ende des Bogens {mismatch} näher als dem "
    "anderen.",
    "reader.character_has_no_place_here": "Das Zeichen {text} hat hier keinen Platz.",
    "reader.comment_may_not_hold_opening": "Ein Kommentar darf keine öffnende Klammer enthalten.",
    "reader.comment_not_closed_on_line": "Der Kommentar ist auf seiner Zeile nicht geschlossen.",
    "reader.cutter_compensation_not_followed_path": "Die Fräserradiuskorrektur wird nicht verfolgt; der Weg gilt, "
    "wie er geschrieben ist.",
    "reader.cutter_compensation_on_already_must": "Die Fräserradiuskorrektur ist schon ein; sie muss aus sein, um "
    "eingeschaltet zu werden.",
    "reader.cutter_compensation_works_in_plane": "Die Fräserradiuskorrektur gilt nur in der Ebene von G17.",
    "reader.cycle_drills_although_no_feed": "Der Zyklus bohrt, obwohl kein Vorschub gegeben wurde.",
    "reader.d_must_number_tool": "D muss die Nummer eines Werkzeugs sein.",
    "reader.drilling_cycle_may_not_run": "Ein Bohrzyklus darf nicht mit zeitreziprokem Vorschub (G93) laufen.",
    "reader.drilling_cycle_may_not_run_2": "Ein Bohrzyklus darf nicht laufen, solange G41 oder G42 gilt.",
    "reader.drilling_cycle_needs_x_y": "Ein Bohrzyklus braucht X, Y oder Z.",
    "reader.expression_has_no_value": "Dieser Ausdruck hat keinen Wert.",
    "reader.expression_needs_operator_closing_bracket": "Ein Ausdruck braucht hier ein Rechenzeichen oder seine "
    "schließende Klammer.",
    "reader.first_must_say_how_deep": "Das erste {name} muss sagen, wie tief: {letter} fehlt.",
    "reader.first_must_say_where_feeding": "Das erste {name} muss sagen, wo der Vorschub beginnt: R fehlt.",
    "reader.g10_l20_sets_zero_tool": "G10 L20 setzt die Null an den Ort des Werkzeugs: viele Steuerungen tun das, "
    "die veröffentlichten Regeln nicht.",
    "reader.g10_moves_work_zero_measured": "G10 versetzt einen Nullpunkt, gemessen von einem Ort, den nur die "
    "Maschine kennt; er gilt als der von G54.",
    "reader.g10_needs_l2_p_number": "G10 braucht L2 und P, die Nummer eines Nullpunkts.",
    "reader.g43_needs_h_number_tool": "G43 braucht H, die Nummer einer Werkzeuglänge.",
    "reader.g4_needs_p_seconds_0": "G4 braucht P, Sekunden von 0 oder mehr.",
    "reader.g53_may_not_used_while": "G53 darf nicht benutzt werden, solange G41 oder G42 gilt.",
    "reader.g53_needs_g0_g1_place": "G53 braucht G0 oder G1 und einen Ort als Ziel.",
    "reader.g53_works_with_g0_g1": "G53 geht nur mit G0 und G1.",
    "reader.g80_ends_motion_moves_no": "G80 beendet die Bewegung; es bewegt keine Achse.",
    "reader.g83_needs_peck_q_greater": "G83 braucht einen Bohrschritt Q, größer als 0.",
    "reader.g84_needs_spindle_that_turns": "G84 braucht eine Spindel, die im Uhrzeigersinn dreht (M3).",
    "reader.g87_needs_i_j_k": "G87 braucht I, J und K.",
    "reader.g92_needs_axis_word": "G92 braucht ein Achswort.",
    "reader.g_code_times_ten": "Das Zehnfache eines G-Worts",
    "reader.has_no_meaning_arc_in": "{offsets} hat für einen Bogen in der Ebene von G{plane} keinen Sinn.",
    "reader.in_inverse_time_g93_every": "Mit zeitreziprokem Vorschub (G93) braucht jeder Weg im Vorschub sein "
    "eigenes F, größer als 0.",
    "reader.l_must_1_more": "L muss 1 oder mehr sein.",
    "reader.line_has_characters_are_allowed": "Die Zeile hat {count} Zeichen; {longest_line} sind erlaubt.",
    "reader.line_in_middle_without_one": "Eine %-Zeile mittendrin, ohne eine vor der ersten Zeile des Programms.",
    "reader.line_may_have_m_words": "Eine Zeile darf höchstens {most_m_words} M-Worte haben.",
    "reader.line_moves_feed_rate_none": "Die Zeile bewegt sich im Vorschub, und keiner größer als 0 ist gegeben.",
    "reader.line_number_has_one_five": "Eine Zeilennummer hat eine bis fünf Ziffern.",
    "reader.line_number_must_come_first": "Eine Zeilennummer muss als Erstes auf ihrer Zeile stehen.",
    "reader.lines_after_program_s_end": "Zeilen nach dem Ende des Programms laufen nie.",
    "reader.m_code": "Ein M-Wort",
    "reader.many_controls_take_line_numbers": "Viele Steuerungen nehmen Zeilennummern von mehr als fünf Ziffern, "
    "nicht alle.",
    "reader.many_controls_take_program_s": "Viele Steuerungen nehmen hier die Nummer eines Programms, nicht alle: "
    "die veröffentlichten Regeln haben keine.",
    "reader.many_controls_take_with_g64": "Viele Steuerungen nehmen bei G64 an, wie weit Ecken gerundet werden "
    "dürfen (P), nicht alle: die veröffentlichten Regeln kennen G64 allein.",
    "reader.may_not_negative": "{letter} darf nicht negativ sein.",
    "reader.may_stand_only_once_on": "{letter} darf nur einmal auf einer Zeile stehen.",
    "reader.motion_code_has_no_axis": "Das Bewegungswort hat kein Achswort als Ziel.",
    "reader.must_whole_number": "{what} muss eine ganze Zahl sein.",
    "reader.needs_dwell_p_seconds_0": "{name} braucht eine Pause von P Sekunden, 0 oder mehr.",
    "reader.needs_turning_spindle": "{code_name} braucht eine drehende Spindel.",
    "reader.no_axis_may_turn_during": "Während eines Bohrzyklus darf keine Achse drehen.",
    "reader.no_motion_code_in_force": "Für G53 gilt kein Bewegungswort; viele Steuerungen beginnen mit G0.",
    "reader.no_motion_code_in_force_2": "Für diese Achsworte gilt kein Bewegungswort.",
    "reader.not_code_language": "{spelled} ist kein Wort dieser Sprache.",
    "reader.nothing_on_line_gives_meaning": "Nichts auf dieser Zeile gibt {letter} einen Sinn.",
    "reader.number_larger_than_any_machine": "Diese Zahl ist größer, als eine Maschine brauchen kann.",
    "reader.number_missing_cannot_read_here": "Hier fehlt eine Zahl, oder sie lässt sich nicht lesen.",
    "reader.o_word_subroutine_loop_condition": "Ein O-Wort: ein Unterprogramm, eine Schleife oder eine Bedingung in "
    "der Sprache mancher Steuerungen. Die veröffentlichten Regeln haben keine, und was es tut, wird nicht verfolgt.",
    "reader.only_machine_knows_tool_s": "Nur die Maschine kennt die Länge des Werkzeugs; Z gilt trotzdem für seine "
    "Spitze.",
    "reader.only_machine_knows_where_g53": "Nur die Maschine weiß, wohin G53 führt; dieser Weg bleibt außer Acht.",
    "reader.only_machine_knows_where_goes": "Nur die Maschine weiß, wohin {name} geht; dieser Weg bleibt außer Acht.",
    "reader.only_machine_knows_where_zero": "Nur die Maschine weiß, wo die Null von {name} liegt; sie gilt als die "
    "von G54.",
    "reader.only_printable_characters_ascii_may": "Nur die druckbaren Zeichen von ASCII dürfen vorkommen.",
    "reader.parameter_holds_what_machine_has": "Parameter {index} enthält, was die Maschine gespeichert hat; er "
    "gilt als 0.",
    "reader.parameter_s_number": "Die Nummer eines Parameters",
    "reader.parameter_setting_needs_equals_sign": "Ein Parameter wird mit einem Gleichheitszeichen gesetzt.",
    "reader.parameters_are_numbered_from_1": "Parameter haben Nummern von 1 bis {last_parameter}.",
    "reader.probe_stops_where_touches_which": "Ein Taster hält, wo er berührt, und das weiß nur die Maschine; "
    "dieser Weg bleibt außer Acht.",
    "reader.program_begins_with_line_has": "Das Programm beginnt mit einer %-Zeile und hat keine zweite.",
    "reader.program_never_ends_has_neither": "Das Programm endet nie: es hat weder M2 noch M30 noch ein Paar "
    "%-Zeilen um sich.",
    "reader.program_reckons_from_where_before": "Das Programm rechnet damit, wo {axis} steht, bevor es das gesagt "
    "hat; es gilt als 0.",
    "reader.r_lies_below_bottom_hole": "R liegt unter dem Grund des Lochs.",
    "reader.radius_too_small_reach_end": "Der Radius ist zu klein, um das Ende des Bogens zu erreichen.",
    "reader.semicolon_begins_comment_on_many": "Ein Semikolon beginnt auf vielen Steuerungen einen Kommentar, nicht "
    "auf allen: die veröffentlichten Regeln kennen nur ( ).",
    "reader.stands_motions_more_than_reader": "Das steht für {motions} Bewegungen, mehr, als dieser Leser verfolgt.",
    "reader.these_two_codes_exclude_each": "Diese zwei Worte schließen einander aus und dürfen nicht auf einer "
    "Zeile stehen.",
    "reader.turning_axes_are_not_followed": "Drehachsen werden nicht verfolgt.",
    "reader.two_codes_line_both_want": "Zwei Worte dieser Zeile wollen beide ihre Achsworte.",
    "reader.units_change_after_feed_rate": "Die Einheit wechselt nach einem Vorschub oder einer Bewegung; die Zahl "
    "des Vorschubs bleibt, wie sie war.",
    "reader.whether_line_that_begins_with": "Ob eine Zeile läuft, die mit / beginnt, hängt an einem Schalter; sie "
    "gilt als laufend.",
    "reader.work_zeros_are_numbered_from": "Nullpunkte haben Nummern von 1 bis 9.",
}
