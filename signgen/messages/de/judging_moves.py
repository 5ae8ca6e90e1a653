"""German: what the checks say of moves, feeds and the text of programs."""

from __future__ import annotations

WORDS = {
    "as_stated.applies_length_tool_h_z": "Es rechnet die Länge von Werkzeug H{tool} ein, und Z wird mit der Spitze "
    "des Fräsers gesetzt.",
    "as_stated.cancels_length_g49_in_middle": "Es hebt mittendrin eine Länge auf (G49), und keine ist eingerechnet.",
    "as_stated.changes_cutter_t_one_cutter": "Es wechselt den Fräser auf T{tool} und ist für einen Fräser gemacht.",
    "as_stated.cuts_rpm_sheet_says": "Es fräst mit {turns:,} U/min; das Blatt sagt {wanted:,}.",
    "as_stated.cutter_called_twice": "Fräser {number} wird zweimal gerufen.",
    "as_stated.cutter_never_called_t_m6": "Fräser {number} wird nie gerufen (T{number} M6).",
    "as_stated.cutter_rpm": "Fräser {number} mit {spindle_rpm:,} U/min",
    "as_stated.does_not_wait_m0_fitted": "Es wartet nicht (M0), bis von Hand eingesetzt ist: {cutter}.",
    "as_stated.extraction_not_switched_on_before": "Die Absaugung wird vor dem ersten Schnitt nicht eingeschaltet "
    "({upper}).",
    "as_stated.extraction_switched_before_last_cut": "Die Absaugung wird vor dem letzten Schnitt geschaltet ({words}).",
    "as_stated.fits_t_where_sheet_says": "Es setzt T{tool} ein, wo das Blatt Fräser {number} nennt: {cutter}.",
    "as_stated.gives_cutter_another_length_than": "{name} gibt Fräser {number} eine andere Länge als seine eigene.",
    "as_stated.length_cutter_not_applied_g43": "Die Länge von Fräser {number} wird nicht eingerechnet (G43 "
    "H{number}), bevor er sich bewegt.",
    "as_stated.make_programs_again_nothing_here": "Die Programme neu machen: nichts hier ist dafür gedacht, von "
    "Hand geändert zu werden.",
    "as_stated.names_tool_t_cutter_fitted": "Es nennt das Werkzeug T{number}, und der Fräser wird von Hand eingesetzt.",
    "as_stated.no_sheet_goes_with_these": "zu diesen Programmen gehört kein Blatt",
    "as_stated.stops_here_sheet_does_not": "Es hält hier ({words}), und das Blatt sagt nichts davon.",
    "as_stated.switches_something_with_sheet_names": "Es schaltet etwas mit {words}, und das Blatt nennt nichts.",
    "case.board_x_has_too_many": "Ein Brett von {board} hat zu viele Zellen von {cell}.",
    "case.use_more": "{least} oder mehr nehmen.",
    "cutter_reach.cone_reaches": "sein Kegel reicht {reach}",
    "cutter_reach.deepest": "am tiefsten: {depths:plain}",
    "cutter_reach.edges_reach": "seine Schneiden reichen {reach}",
    "cutter_reach.goes_deep_but": "{tool} geht bei {place} {depth} tief, aber {what}.",
    "cutter_reach.in": "{depth} von {reach} in {file}",
    "cutter_reach.stands_out_collet_nut_needs": "er steht {stick_out} aus der Spannzange, und die Mutter braucht {nut}",
    "cutter_reach.take_longer_cutter_thinner_board": "Einen längeren Fräser oder ein dünneres Brett nehmen.",
    "depth_limit.goes_deep_drawing_allows": "{tool} geht bei {place} {deep} tief; die Zeichnung erlaubt {allowed}.",
    "depth_limit.in": "{low} in {file}",
    "depth_limit.look_z_zero_board_s": "Z-Null und die Dicke des Bretts ansehen; stimmt beides, die Programme neu "
    "machen.",
    "depth_limit.lowest_point_allowed_down": "tiefster Punkt: {lows:plain}; erlaubt bis {breakthrough}",
    "depth_limit.tip_goes_below_board_allowed": "Die Spitze geht bei {place} {low} unter das Brett; {floor} sind "
    "erlaubt.",
    "feeds_sane.cutter_creeps_through_wood_usual": "Der Fräser kriecht mit {feed} durch das Holz; {usual} sind für "
    "diesen Weg üblich, und unter {least} reibt und brennt er.",
    "feeds_sane.cutter_driven_straight_down_mm": "Der Fräser wird mit {value} senkrecht hinabgetrieben; {most} sind "
    "das Höchste.",
    "feeds_sane.each_tooth_would_take_mm": "Jede Schneide nähme {value}; {most} sind das Höchste für diesen Fräser "
    "in {material}.",
    "feeds_sane.feed_move_has_no_feed": "Ein Weg im Vorschub hat keinen Vorschub.",
    "feeds_sane.give_f_word": "Ihm ein F-Wort geben.",
    "feeds_sane.in": "{least} bis {most} in {file}",
    "feeds_sane.lower_feed": "Den Vorschub senken.",
    "feeds_sane.lower_feed_plunge": "Den Vorschub dieses Eintauchens senken.",
    "feeds_sane.lower_feed_raise_speed": "Den Vorschub senken oder die Drehzahl erhöhen.",
    "feeds_sane.mm_min_machine_s_axes": "mm/min: {feeds:plain}; die Achsen der Maschine erreichen {top}",
    "feeds_sane.move_asks_mm_min_along": "Der Weg verlangt {value} entlang {axis}; die Maschine erreicht {most}.",
    "feeds_sane.raise_feed": "Den Vorschub erhöhen.",
    "ramp_angle.cannot_plunge": "{tool} kann nicht senkrecht eintauchen, geht aber bei {place} mit {slope} Grad "
    "hinab; {limit} Grad sind das Höchste in {material}.",
    "ramp_angle.lead_in_along_ramp_take": "Auf einer Rampe eintauchen, oder einen Fräser nehmen, der senkrecht "
    "eintauchen kann.",
    "ramp_angle.no_end_mill_takes_wood": "kein Schaftfräser nimmt Holz",
    "ramp_angle.steepest_way_into_wood_degrees": "steilster Weg ins Holz {steepest} Grad, {limit} erlaubt",
    "ramp_angle.too_steep": "{tool} darf senkrecht eintauchen, geht aber bei {place} mit {slope} Grad hinab; "
    "{limit} Grad sind das Höchste in {material}.",
    "inside_board.board_left_beside_cut": "{room} Brett bleiben neben dem Schnitt",
    "inside_board.lay_larger_board_move_zero": "Ein größeres Brett auflegen, oder die Null so versetzen, dass das "
    "Brett auf jeder Seite über den Schnitt hinausreicht.",
    "inside_board.out_above": "Der Fräser reicht bei {place} {inside} hinten über das Brett hinaus.",
    "inside_board.out_below": "Der Fräser reicht bei {place} {inside} vorn über das Brett hinaus.",
    "inside_board.out_left": "Der Fräser reicht bei {place} {inside} links über das Brett hinaus.",
    "inside_board.out_right": "Der Fräser reicht bei {place} {inside} rechts über das Brett hinaus.",
    "inside_travel.choose_larger_machine_smaller_sign": "Eine größere Maschine oder ein kleineres Schild wählen, "
    "oder das Schild andersherum legen.",
    "inside_travel.said": "{axes} {spans} von {travel}",
    "inside_travel.tip_goes_along_from_machine": "Die Spitze geht {high} entlang {axes}, von {low} bis {to}; die "
    "Maschine hat {travel}.",
    "legal_text.character_not_plain_ascii": "Das Zeichen ‚{strange}‘ ist kein einfaches ASCII.",
    "legal_text.computes_with": "rechnet damit",
    "legal_text.cutter_changed_t_after_program": "Der Fräser wird auf T{cutters} gewechselt, nachdem das Programm "
    "sich bewegt hat.",
    "legal_text.distances_become_relative": "Maße werden relativ",
    "legal_text.file_lines_motions_read": "{files} {files:Datei|Dateien}, {lines:,} Zeilen und {motions:,} "
    "Bewegungen gelesen",
    "legal_text.g": "{what} (G{code}).",
    "legal_text.keep_one_program_each_cutter": "Für jeden Fräser ein eigenes Programm behalten.",
    "legal_text.keep_one_unit_absolute_distances": "Durchweg bei einer Einheit und absoluten Maßen (G90) bleiben.",
    "legal_text.keeps_work_zeros_offsets_home": "bewahrt Nullpunkte, Versätze und Referenzorte darin auf",
    "legal_text.last_line_does_not_end": "Die letzte Zeile endet nicht, die Datei kann also abgeschnitten sein.",
    "legal_text.line_has_characters_language_allows": "Die Zeile hat {count} Zeichen; die Sprache erlaubt "
    "{most_line_characters}.",
    "legal_text.make_sure_machine_remove_line": "Es an der Maschine sicherstellen, oder diese Zeile entfernen.",
    "legal_text.make_sure_that_machine_starts": "Sicherstellen, dass die Maschine in den Betriebsarten beginnt, für "
    "die das Programm geschrieben wurde.",
    "legal_text.mend_remove_line": "Diese Zeile berichtigen oder entfernen.",
    "legal_text.more_lines_are_refused": "{fault_count} weitere Zeilen werden abgelehnt.",
    "legal_text.not_stated_before_first_motion": "Vor der ersten Bewegung nicht gesagt: {missing:plain}.",
    "legal_text.parameter_set_control_effect": "‚{words}‘: Ein Parameter wird gesetzt, und die Steuerung {what}; "
    "die Wirkung wird nicht verfolgt.",
    "legal_text.program_moves_nothing": "Das Programm bewegt nichts.",
    "legal_text.remove_line": "Diese Zeile entfernen.",
    "legal_text.said": "‚{words}‘: {what}",
    "legal_text.shorten": "Sie kürzen.",
    "legal_text.state_every_mode_in_first": "Jede Betriebsart in den ersten Zeilen nennen.",
    "legal_text.there_no_program": "Es gibt kein Programm.",
    "legal_text.units_change_in_middle": "Die Einheit wechselt mittendrin",
    "legal_text.write_in_plain_letters_some": "In einfachen Buchstaben schreiben; manche Steuerung hält daran, "
    "sogar in einem Kommentar.",
    "pass_depth.cut_in_more_passes": "In mehr Zustellungen fräsen.",
    "pass_depth.deepest_bite": "tiefste Zustellung {said:plain}",
    "pass_depth.in": "{depth} von {most} in {file}",
    "pass_depth.takes_up_once_first_most": "{tool} nimmt bis zu {worst} auf einmal, zuerst bei {place}; {most} sind "
    "das Höchste in {material}.",
    "rapids_clear.a_rapid": "Ein Eilgang",
    "rapids_clear.begin_with_retract_safe_height": "Mit einem Rückzug auf die Sicherheitshöhe beginnen (G0 Z...).",
    "rapids_clear.fast_way_down": "Ein schneller Weg hinab",
    "rapids_clear.first_move_goes_across_program": "Der erste Weg geht quer, und das Programm hat den Fräser vorher "
    "nicht gehoben.",
    "rapids_clear.goes_into_board": "{how} geht bei {place} {depth} in das Brett.",
    "rapids_clear.raise_cutter_well_over_board": "Den Fräser vor dem Start hoch über das Brett heben.",
    "rapids_clear.raise_safe_height": "Die Sicherheitshöhe erhöhen.",
    "rapids_clear.rapid_crosses_over_board_least": "Ein Eilgang quert {low} über dem Brett; {clearance} sind das "
    "Mindeste.",
    "rapids_clear.rapids_tried_against_board_their": "{count:,} Eilgänge gegen das Brett zu ihrer Zeit probiert",
    "rapids_clear.retract_safe_height_before_moving": "Vor dem Queren auf die Sicherheitshöhe zurückziehen und von "
    "über dem Brett im Vorschub hinabgehen.",
    "rapids_clear.tried_and_lowest": "{tried}, der niedrigste quer {lowest} über dem Brett",
    "spindle_ready.at": "{speed:,}",
    "spindle_ready.cut_begins_before_spindle_speed": "Der Schnitt beginnt, bevor die Spindel auf Drehzahl ist: sie "
    "braucht {spindle_start_s} s.",
    "spindle_ready.cutter_moves_into_board_spindle": "Der Fräser fährt in das Brett, und die Spindel steht.",
    "spindle_ready.dwell_s_longer_g4_after": "Nach jedem Start der Spindel {spindle_start_s} s oder länger warten "
    "(G4).",
    "spindle_ready.rpm_s_needed": "{speeds:apart} U/min, {wait}, {spindle_start_s} s nötig",
    "spindle_ready.s_before_first_cut": "{waits} s vor dem ersten Schnitt",
    "spindle_ready.said": "{low:,} bis {high:,}",
    "spindle_ready.spindle_s_speed_outside_machine": "Die Drehzahl liegt außerhalb der {least:,} bis {most:,} U/min "
    "der Maschine.",
    "spindle_ready.spindle_still_turns_when_program": "Die Spindel dreht noch, wenn das Programm endet.",
    "spindle_ready.spindle_turns_backwards_in_cut": "Die Spindel dreht im Schnitt rückwärts (M4).",
    "spindle_ready.start_m3_s_before": "Sie vorher starten (M3 S...).",
    "spindle_ready.stop_with_m5_before_m2": "Sie vor M2 oder M30 mit M5 anhalten.",
    "spindle_ready.use_m3_cutters_turn_clockwise": "M3 nehmen: die Fräser drehen im Uhrzeigersinn.",
    "spindle_ready.write_speed_that_machine_has": "Eine Drehzahl schreiben, die die Maschine hat.",
    "starts_and_ends.first_motion_ends_over_board": "Die erste Bewegung endet {first} über dem Brett: ein höher "
    "geparkter Kopf stürzt im Eilgang dorthin, auf das, was darunter steht.",
    "starts_and_ends.first_motion_goes_across_nobody": "Die erste Bewegung geht quer, und niemand weiß, was dort "
    "steht und wie hoch der Kopf ist.",
    "starts_and_ends.first_z_last_z_over": "erstes Z {firsts}, letztes Z {lasts} über dem Brett",
    "starts_and_ends.first_z_over_board_wherever": "Sein erstes Z liegt {z} über dem Brett, wo der Kopf auch steht: "
    "ein höher geparkter kommt dort im Eilgang herab.",
    "starts_and_ends.go_straight_up_first_g0": "Zuerst gerade hochfahren (G0 Z...).",
    "starts_and_ends.go_z_higher_first": "Zuerst auf Z{high} oder höher fahren.",
    "starts_and_ends.nothing_stands_higher_than": "{said}; nichts steht höher als {high}",
    "starts_and_ends.park_head_lower_than_that": "Den Kopf tiefer parken als das, oder über einer Stelle, an der "
    "nichts steht.",
    "starts_and_ends.program_ends_over_board_s": "Das Programm endet {last} über der Oberseite des Bretts, wo die "
    "nächste Bewegung etwas treffen kann.",
    "starts_and_ends.program_ends_with_cutter_deep": "Das Programm endet mit dem Fräser {top} tief im Brett.",
    "starts_and_ends.retract_end_before_spindle_stops": "Am Ende zurückziehen, bevor die Spindel hält (G0 Z...).",
    "stops_and_waits.look_which_unit_control_has": "Nachsehen, welche Einheit die Steuerung hat.",
    "stops_and_waits.retract_first_g0_z": "Zuerst zurückziehen (G0 Z...).",
    "stops_and_waits.stops": "Es hält ({words})",
    "stops_and_waits.stops_spindle": "Es hält die Spindel an ({words})",
    "stops_and_waits.stops_waits_looked_longest_wait": "{count} Halte und Pausen angesehen, die längste {longest} s",
    "stops_and_waits.waits_s": "Es wartet {seconds} s",
    "stops_and_waits.waits_s_here_s_in": "Es wartet hier {seconds} s und insgesamt {total} s; {allowed} s sind das "
    "Höchste.",
    "stops_and_waits.waits_s_min_s_meant": "Es wartet {seconds} s ({minutes:,} min). Sind {meant} s gemeint? Die "
    "veröffentlichten Regeln zählen das P von G4 in Sekunden, manche Steuerungen in Millisekunden.",
    "stops_and_waits.with_cutter_deep_in_board": "{what} bei {place}, der Fräser steckt {top} tief im Brett.",
    "units_plausible.bottom_left_corner": "seiner Ecke unten links",
    "units_plausible.bottom_right_corner": "seiner Ecke unten rechts",
    "units_plausible.cuts_beside_board_with_x0": "Es fräst neben dem Brett; mit X0 Y0 an {name} bliebe es darauf.",
    "units_plausible.cuts_down_z_below_board": "Es fräst bis Z{low} hinab, unter das Brett; mit Z0 auf dem Brett "
    "würde es passen.",
    "units_plausible.cuts_x_these_may_inches": "Es fräst {size} mit {fastest}: das können Zoll sein.",
    "units_plausible.fastest_feed_usual_may_in": "Sein schnellster Vorschub ist {fastest}, üblich sind {usual}: er "
    "kann in Zoll sein oder je Sekunde.",
    "units_plausible.feeds_program_counts": "Vorschübe, wie das Programm zählt: {said:apart}",
    "units_plausible.in_millimetres_instead_inches_g20": " In Millimetern statt Zoll (G20) täte es das.",
    "units_plausible.larger_than_board_in_millimetres": "Es ist größer als das Brett; in Millimetern statt Zoll "
    "(G20) würde es passen.",
    "units_plausible.look_where_program_wants_x0": "Nachsehen, wo das Programm X0 Y0 will (--zero).",
    "units_plausible.look_where_program_wants_z0": "Nachsehen, wo das Programm Z0 will (--z-zero top heißt: oben).",
    "units_plausible.look_where_program_wants_z0_2": "Nachsehen, wo das Programm Z0 will und wie dick das Brett ist.",
    "units_plausible.look_whether_right_file": "Nachsehen, ob es die richtige Datei ist.",
    "units_plausible.look_which_unit_program_meant": "Nachsehen, in welcher Einheit das Programm gemeint ist.",
    "units_plausible.look_which_unit_program_meant_2": "Nachsehen, in welcher Einheit das Programm gemeint ist (G20 "
    "sind Zoll, G21 Millimeter).",
    "units_plausible.middle": "seiner Mitte",
    "units_plausible.moves_no_feed_so_cuts": "Es bewegt sich nie im Vorschub, fräst also nichts.",
    "units_plausible.never_comes_down_board_lowest": "Es kommt nie auf das Brett herab: sein tiefster Vorschub "
    "liegt {low} darüber.{likely}",
    "units_plausible.said": "{file} bei {said}",
    "units_plausible.top_left_corner": "seiner Ecke oben links",
    "units_plausible.top_right_corner": "seiner Ecke oben rechts",
    "units_plausible.with_z0_board_s_bottom": " Mit Z0 unter dem Brett täte es das.",
    "units_plausible.x_y_z": "X {x0} bis {x1}, Y {y0} bis {y1}, Z {z0} bis {z1}",
}
