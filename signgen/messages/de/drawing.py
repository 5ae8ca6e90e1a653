"""German: what is drawn, and what is in the way of it."""

from __future__ import annotations

WORDS = {
    "drawing.drawn_single_lines_no_width": "{name} ist in einfachen Linien gezeichnet, die keine Breite zum Fräsen "
    "haben.",
    "drawing.use_finish_stroke_another_font": "finish stroke oder eine andere Schrift nehmen.",
    "drawing.alone_wide_capitals": "'{word}' allein ist {wide} breit bei Großbuchstaben von {height}.",
    "drawing.use_smaller_height_larger_width": "Eine kleinere Höhe oder eine größere Breite nehmen.",
    "drawing.no_room_circle": "'{text}' hat auf einem Kreis von {radius} keinen Platz.",
    "drawing.use_larger_radius_smaller_height": "Einen größeren Radius, eine kleinere Höhe oder weniger Text nehmen.",
    "drawing.strokes_wide_fill_letters_high": "Striche von {pen} Breite füllen Buchstaben von {given} Höhe aus.",
    "drawing.use_more_smaller_depth": "{least} oder mehr oder eine kleinere Tiefe nehmen.",
    "drawing.no_figure_1": "{name} hat keine Ziffer 1.",
    "drawing.give_cap_height_use_another": "cap-height angeben oder eine andere Schrift nehmen.",
    "drawing.bevel_all_round_leaves_outline": "Eine Fase von {width} ringsum lässt von diesem Umriss {left}.",
    "drawing.use_narrower_one_larger_sign": "Eine schmalere Fase oder ein größeres Schild nehmen.",
    "drawing.bevel_runs_into_within": "Die Fase von {width} trifft {name} oder kommt näher als {least_wall} heran.",
    "drawing.use_narrower_one_move_hole": "Eine schmalere Fase nehmen, oder das Loch weiter nach innen rücken (inset).",
    "drawing.bevel_leaves_less_than_face": "Die Fase von {width} lässt weniger als {least_wall} Fläche rings um "
    "das Feld.",
    "drawing.use_narrower_one_larger_panel": "Eine schmalere Fase oder ein weiter innen liegendes Feld (panel) nehmen.",
    "drawing.inside_would_fall_out": "Das Innere von {name} würde herausfallen.",
    "drawing.insides_would_fall_out": "{count} Innenstücke von {name} würden herausfallen.",
    "drawing.use_face_bridges_2_hold": "Die Schrift {stencil_face} nehmen, oder bridges 2, die es halten.",
    "drawing.use_more_bridges_narrower_bridge": "Mehr bridges, eine kleinere bridge-width, größere Buchstaben oder "
    "die Schrift {stencil_face} nehmen.",
    "drawing.ornament_no_room_corner": "Ein Ornament von {size} hat in dieser Ecke keinen Platz ({name}).",
    "drawing.use_smaller_one_smaller_ornament": "Ein kleineres oder einen kleineren ornament-inset nehmen.",
    "drawing.no_face_ships_name_font": "Keine der mitgelieferten Schriften hat es; eine Schriftdatei nennen.",
    "drawing.blank": "'{text}' von {name} ist leer.",
    "drawing.use_another_character": "Ein anderes Zeichen nehmen.",
    "drawing.use_smaller_ornament_size_another": "Eine kleinere ornament-size oder einen anderen ornament-inset "
    "nehmen.",
    "drawing.move_holes_inset_use_another": "Die Löcher verschieben (inset), oder einen anderen ornament-inset "
    "oder eine andere ornament-size nehmen.",
    "drawing.runs_into": "{name} trifft {other}.",
    "drawing.meet": "{one} und {other} berühren sich.",
    "drawing.use_larger_inset_narrower_line": "Einen größeren Abstand (inset) oder eine schmalere Linie nehmen.",
    "drawing.use_smaller_height_larger_sign": "Eine kleinere Höhe, ein größeres Schild oder weniger Text nehmen; "
    "ohne cap-height wird der Text eingepasst.",
    "drawing.comes_closer_than": "{name} kommt näher als {least_wall} an {name2} heran.",
    "drawing.move_hole_inset_use_smaller": "Das Loch verschieben (inset) oder kleinere Buchstaben nehmen.",
    "drawing.move_hole_inset_line": "Das Loch verschieben (inset), oder die Linie.",
    "drawing.sign_can_tip_about_use": "{count} {count:Steg hält|Stege halten} das Schild, und es kann darum "
    "kippen: drei oder mehr nehmen, oder es zusätzlich aufkleben.",
    "drawing.piece_x_small_easily_pulled": "Ein Stück von {width:bare} x {height} ist klein und wird leicht "
    "herausgerissen: zusätzlich mit doppelseitigem Band unter der ganzen Rückseite aufkleben.",
    "drawing.board_thin_lifts_under_cutter": "Ein Brett von {thickness} ist dünn und hebt sich unter dem Fräser: "
    "zusätzlich mit doppelseitigem Band unter der ganzen Rückseite aufkleben.",
    "drawing.nothing_holds_sign_once_cut": "Nichts hält das Schild, wenn es durchgetrennt ist: zusätzlich mit "
    "doppelseitigem Band unter der ganzen Rückseite aufkleben, oder Stege verlangen (tabs).",
    "drawing.does_not_lie_inside_sign": "{name} ({size} bei {x:bare}; {y:bare}) liegt nicht mit {least_wall} Holz "
    "ringsum im Schild.",
    "drawing.use_larger_inset_smaller_hole": "Einen größeren Abstand (inset) oder ein kleineres Loch nehmen.",
    "drawing.run_into_each_other_their": "{name} und {other} treffen sich: ihre Mitten sind {apart} voneinander "
    "entfernt.",
    "drawing.use_smaller_holes_fewer_them": "Kleinere oder weniger Löcher oder einen anderen Abstand (inset) nehmen.",
    "drawing.goes_deep_into_board": "Es reicht {depth} tief in ein Brett von {thickness}.",
    "drawing.use_smaller_screw_thicker_board": "Eine kleinere Schraube oder ein dickeres Brett nehmen.",
    "drawing.goes_deep_v_bit_reaches": "Es reicht {depth} tief, und der V-Fräser reicht {reach}.",
    "drawing.use_smaller_screw_larger_v": "Eine kleinere Schraube oder einen größeren V-Fräser nehmen.",
    "drawing.v_bit_s_tip_wide": "Die Spitze des V-Fräsers ist {tip} breit, nicht schmaler als das Loch.",
    "drawing.use_sharper_v_bit": "Einen spitzeren V-Fräser nehmen.",
    "drawing.only_wood_stay_under_screws": "Nur {left} Holz bleiben unter den Schraubenköpfen: sie können durchreißen.",
    "drawing.use_another_inset_shorter_keyhole": "Einen anderen Abstand (inset), einen kürzeren keyhole-travel "
    "oder eine kleinere Schraube nehmen.",
    "drawing.run_into_each_other_leave": "{name} und {name2} treffen sich oder lassen weniger als {least_beside}.",
    "drawing.use_fewer_keyholes_another_inset": "Weniger Schlüssellöcher oder einen anderen Abstand (inset) nehmen.",
    "drawing.leave_wood_between_them_least": "{name} und {name2} lassen {left} Holz zwischen sich; {least_over} "
    "ist das Mindeste.",
    "drawing.engrave_less_deep_depth_move": "Weniger tief fräsen (depth), die Schlüssellöcher verschieben (inset), "
    "oder ein dickeres Brett nehmen.",
    "drawing.only_wood_carry_screws_heads": "Nur {shoulder} Holz tragen die Schraubenköpfe in den "
    "Schlüssellöchern; üblich sind {usual}. Nichts Schweres daran hängen.",
    "drawing.fire_code_force_where_you": "Die Brandschutzregeln an Ihrem Ort können Ziffern von {asked} verlangen "
    "({rule}); {text} hat {here}. Bei Feuerwehr oder Gemeinde nachfragen.",
    "drawing.use_smaller_inset": "Einen kleineren Abstand nehmen.",
    "drawing.use_fewer_frame_lines_smaller": "Weniger frame-lines oder einen kleineren Abstand nehmen.",
    "drawing.rule_no_room_between_lines": "Ein Strich von {width} hat zwischen den Zeilen {above} und {below} "
    "keinen Platz, die {bottom} auseinander liegen.",
    "drawing.use_larger_line_spacing_thinner": "Größeres line-spacing oder einen dünneren Strich nehmen.",
    "drawing.panel_inside_edge_corners_no": "Ein Feld {inset} innerhalb der Kante mit Ecken von {radius} hat in "
    "diesem Schild keinen Platz.",
    "drawing.use_smaller_panel_inset_panel": "Einen kleineren Abstand des Felds (panel) oder panel-radius oder ein "
    "größeres Schild nehmen.",
    "drawing.rim_wide_inside_panel_does": "Ein Steg von {width} Breite, {inset} innerhalb des Felds, geht nicht um "
    "dieses Schild.",
    "drawing.use_narrower_rim_smaller_rim": "Einen schmaleren Steg (rim) oder kleineren rim-inset nehmen.",
    "drawing.does_not_lie_inside_panel": "{name} liegt nicht mit {least_wall} ringsum im Feld.",
    "drawing.use_smaller_height_less_text": "Eine kleinere Höhe, weniger Text oder einen kleineren Abstand des "
    "Felds (panel) nehmen.",
    "drawing.countersink_begins_face_lies_panel": "{name} hat eine Senkung, die an der Oberfläche beginnt, und "
    "liegt im Feld.",
    "drawing.move_hole_rim_inset_use": "Das Loch auf den Rand verschieben (inset), einen größeren Abstand des "
    "Felds (panel) nehmen, oder die Senkung weglassen.",
    "drawing.panel_s_wall_runs_through": "Die Wand des Felds läuft durch {name} oder dicht daran vorbei.",
    "drawing.leave_out_place_rim": "Es weglassen oder auf den Rand legen.",
    "drawing.tabs_find_no_straight_stretches": "{count} Stege von {width} finden auf dieser Kante von {length} "
    "keine geraden Strecken.",
    "drawing.use_fewer_narrower_tabs": "Weniger oder schmalere Stege nehmen.",
    "drawing.text_lies_off_middle_sign": "Der Text liegt neben der Mitte des Schilds, denn dort ist kein Platz für "
    "ihn.",
    "drawing.text_does_not_fit_between": "Der Text passt nicht zwischen Ränder und Löcher, selbst nicht mit "
    "Großbuchstaben von {least_cap_height}.",
    "drawing.use_larger_sign_less_text": "Ein größeres Schild, weniger Text, eine schmalere Schrift, einen "
    "kleineren Rand (margin) oder Löcher näher an der Kante nehmen.",
    "drawing.lines_run_into_each_other": "Die Zeilen {lines} treffen sich.",
    "drawing.use_another_arc_more_line": "Einen anderen Bogen, mehr line-spacing oder kleinere Buchstaben nehmen, "
    "oder die Höhe weglassen, damit sie eingepasst werden.",
    "drawing.nothing_of_face": "nichts von der Fläche",
    "drawing.face_in_pieces": "die Fläche in {count} Stücken",
    "drawing.the_letters": "den Buchstaben",
    "drawing.these_have_it": "Diese haben es: {others:plain}.",
    "drawing.face_lacks_ornament": "{name} hat kein '{text}'.",
    "drawing.lies_over": "{name} liegt über {other}.",
    "drawing.ornament_comes_closer_than": "{name} kommt näher als {least_wall} an {other} heran.",
    "drawing.carved_runs_into": "{name} trifft {other}.",
    "drawing.lies_outside_sign": "{name} liegt außerhalb des Schilds oder näher als {least_wall} an seiner Kante.",
    "drawing.lies_outside_face": "{name} liegt außerhalb des Schilds oder näher als {least_wall} an seiner "
    "gefasten Kante.",
    "drawing.cutter_leaves_corners_round": "Der Fräser von {cutter} lässt {count} Innenecken der Kante rund, mit "
    "bis zu {most} mehr Holz als verlangt. Ein dünnerer Schaftfräser (end-mill) lässt weniger.",
    "drawing.sunk_to": "{size}, gesenkt auf {sunk}",
    "drawing.head_bears_by_its_rim": "Der V-Fräser schneidet Kegel von {angle} Grad, und der Kopf hat {head}: er "
    "liegt bündig, trägt aber nur mit seinem Rand.",
    "drawing.head_bears_at_hole_s_rim": "Der V-Fräser schneidet Kegel von {angle} Grad, und der Kopf hat {head}: "
    "er liegt bündig, trägt aber nur am Rand des Lochs.",
    "drawing.sign_s_edge": "der Kante des Schilds",
    "drawing.thin_wall_at_hole": "Nur {wall} Holz bleiben zwischen {name} und {other}: es kann ausbrechen. Ein "
    "größerer Abstand (inset) oder ein kleineres Loch lässt mehr.",
    "drawing.thin_walls_at_holes": "Nur {wall} Holz bleiben zwischen {name} und {other} ({count} Wände sind "
    "dünner, als ihr Loch breit ist): es kann ausbrechen. Ein größerer Abstand (inset) oder ein kleineres Loch "
    "lässt mehr.",
    "drawing.thin_wall_beside_letter": "Nur {wall} Holz bleiben zwischen {name} und {other}: es kann ausbrechen.",
    "drawing.keyhole_does_not_lie_inside_sign": "{name} (mit der Schraube bei {x:bare}; {y:bare}) liegt nicht mit "
    "{least_beside} Holz ringsum im Schild.",
    "drawing.read_with_ease_up_to": "Buchstaben von {height} Höhe liest man bequem bis {easy} m (Schildergewerbe) "
    "und kaum weiter als {furthest} m (MUTCD 2000, 2A.14, nach Versuchen).",
    "drawing.with_strokes_of": "{height} mit Strichen von {stroke}",
    "drawing.frame_does_not_go_round": "Ein Rahmen {inset} innerhalb der Kante geht nicht um dieses Schild.",
    "drawing.frame_line_does_not_go_round": "Linie {number} des Rahmens, {inset} innerhalb der Kante, geht nicht "
    "um dieses Schild.",
    "drawing.use_larger_sign_or_another_arc": "Ein größeres Schild, weniger Text, einen anderen Bogen, eine "
    "schmalere Schrift, einen kleineren Rand (margin) oder Löcher näher an der Kante nehmen.",
    "drawing.use_panel_or_more": "panel {more:bare} oder mehr nehmen, oder das Loch verschieben (inset).",
    "drawing.use_panel_or_less_or_more": "panel {less:bare} oder weniger oder {more:bare} oder mehr nehmen, oder "
    "das Loch verschieben (inset).",
    "drawing.cutter_leaves_corner_round": "Der Fräser von {cutter} lässt eine Innenecke der Kante rund, mit bis zu "
    "{most} mehr Holz als verlangt. Ein dünnerer Schaftfräser (end-mill) lässt weniger.",
    "drawing.only_wood_stand_between_letters": "Nur {thin} Holz stehen zwischen durchgeschnittenen Buchstaben und "
    "können brechen: mehr letter-spacing nehmen.",
    "drawing.inside_hangs_less_than_wood": "Das Innere von {hanging:plain} hängt an weniger als {thin_bridge} "
    "Holz: mehr bridges oder eine größere bridge-width nehmen und das Brett dort aufkleben.",
    "drawing.each_inside_hangs_one_bridge": "Jedes Innere hängt an einer Brücke, um die der Fräser es drehen kann: "
    "bridges 2 hält es.",
    "drawing.use_arc_or_line_spacing": "Einen anderen Bogen oder mehr line-spacing nehmen.",
    "drawing.use_line_spacing": "Mehr line-spacing nehmen.",
    "drawing.use_line_spacing_or_smaller": "Mehr line-spacing oder kleinere Buchstaben nehmen, oder die Höhe "
    "weglassen, damit sie eingepasst werden.",
    "drawing.lines_touch": "Buchstaben der Zeilen {lines} berühren sich und werden als eins gefräst: mehr "
    "line-spacing hält sie auseinander.",
    "drawing.skin_goes_by_top": "Die Haut von {held} wird von der Oberseite gemessen, und Bretter weichen um 0,2 "
    "mm in der Dicke ab: das Brett messen, wo es herausgetrennt wird, oder z-zero bottom nehmen.",
    "drawing.tabs_go_by_top": "Die Stege von {held} werden von der Oberseite gemessen, und Bretter weichen um 0,2 "
    "mm in der Dicke ab: das Brett messen, wo es herausgetrennt wird, oder z-zero bottom nehmen.",
}
