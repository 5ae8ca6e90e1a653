"""German: what cutters do, and what they cannot."""

from __future__ import annotations

WORDS = {
    "cut.no_end_mill_shop_reaches": "Kein Schaftfräser der Werkstatt reicht durch {thickness} und {breakthrough} "
    "darüber hinaus; der längste schneidet {longest} tief.",
    "cut.use_thinner_board_add_longer": "Ein dünneres Brett nehmen, oder in der Werkstattdatei einen längeren "
    "Fräser anlegen.",
    "cut.end_mill_cuts_deep_cannot": "Der Schaftfräser von {diameter} schneidet {cutting_length} tief und reicht "
    "nicht durch {reach}.",
    "cut.name_longer_cutter_leave_end": "Einen längeren Fräser nennen, oder end-mill weglassen und die Wahl dem "
    "Programm überlassen.",
    "cut.name_end_mill_less_make": "Einen Schaftfräser von höchstens {widest} nennen, das Loch mindestens "
    "{diameter} groß machen, oder end-mill weglassen.",
    "cut.no_cutter_shop_makes_board": "Kein Fräser der Werkstatt macht {name} von {diameter} in diesem Brett: der "
    "größte geeignete Schaftfräser hätte {widest_mill}, und der dünnste, der lang genug ist, hat {thinnest}.",
    "cut.use_hole_more_thinner_board": "Ein Loch von {least} oder mehr oder ein dünneres Brett nehmen, oder in der "
    "Werkstattdatei einen Fräser anlegen.",
    "cut.tabs_do_not_fit_round": "{count} Stege von {width} passen mit einem Fräser von {diameter} nicht um diese "
    "Kante.",
    "cut.use_fewer_narrower_tabs_thinner": "Weniger oder schmalere Stege oder einen dünneren Fräser nehmen.",
    "cut.drawn_degree_bit_tip_another": "{name} ist für einen V-Fräser von {angle} Grad mit einer Spitze von {tip} "
    "gezeichnet, und {bit} ist ein anderer.",
    "cut.draw_sign_bit_cuts": "Das Schild für den Fräser zeichnen, der es schneidet.",
    "cut.may_deep_reaches": "{name} darf {max_depth} tief werden, und {bit} reicht {reach} tief.",
    "cut.use_depth_less_larger_bit": "Eine Tiefe von höchstens {most} oder einen größeren V-Fräser nehmen.",
    "cut.may_deep_board": "{name} darf {max_depth} tief werden in einem Brett von {thickness}.",
    "cut.use_smaller_depth": "Eine kleinere Tiefe nehmen.",
    "cut.end_mill_reaches_none_letters": "Der Schaftfräser von {diameter} erreicht keinen der ebenen Böden der "
    "Buchstaben: der V-Fräser räumt sie Linie für Linie in rund {minutes} min.",
    "cut.inner_corners_stay_round_end": "Innenecken bleiben rund: {left} davon erreicht der Schaftfräser von "
    "{diameter} nicht.",
    "choose.only_v_bit_cuts_it": "Das schneidet nur ein V-Fräser, und die Werkstatt hat keinen.",
    "choose.letters_by_mill": "finish recess, raised oder through nehmen, das macht ein Schaftfräser, oder in "
    "der Werkstattdatei einen V-Fräser anlegen.",
    "choose.leave_it_out": "Weglassen, oder in der Werkstattdatei einen V-Fräser anlegen.",
    "choose.no_v_bit": "Die Werkstatt hat keinen V-Fräser: ein Schaftfräser senkt die Buchstaben eben ein.",
    "choose.no_end_mill": "Die Werkstatt hat keinen Schaftfräser: außen wird nichts geschnitten, und das Brett "
    "muss schon das Maß haben.",
    "slow.takes": "Es dauert rund {minutes} min.",
    "slow.takes_with": "Es dauert rund {minutes} min; {way} wären es rund {less} min.",
    "slow.no_end_mill": "ohne genannten end-mill",
    "slow.depth": "mit depth {depth}",
    "slow.ridge": "mit ridge {ridge}",
    "slow.panel_depth": "mit panel-depth {depth}",
    "slow.no_finish_pass": "ohne finish-pass",
    "slow.machine": "auf der Maschine {name}",
    "cut.v_bit_makes_narrow_places": "Was für den Schaftfräser von {diameter} zu eng ist, zwischen Buchstaben und in "
    "ihnen, schneidet der V-Fräser, weniger tief als das Übrige.",
    "cut.use_smaller_depth_thinner_board": "Eine kleinere Tiefe, ein dünneres Brett oder größere Buchstaben "
    "nehmen, oder in der Werkstattdatei einen Fräser anlegen.",
    "cut.use_larger_bolder_letters_more": "Größere oder fettere Buchstaben oder mehr letter-spacing nehmen.",
    "cut.name_end_mill_less_long": "Einen Schaftfräser von höchstens {largest} nennen, der lang genug ist, oder "
    "größere Buchstaben nehmen.",
    "cut.floor_s_depth_v_bit": "In der Tiefe des Bodens ist der V-Fräser {widest} breit, weniger als der "
    "Schaftfräser von {diameter}: in den Ecken bliebe zwischen beiden Holz stehen.",
    "cut.use_end_mill_less_larger": "Einen Schaftfräser von höchstens {widest}, eine größere Tiefe oder einen "
    "stumpferen V-Fräser nehmen.",
    "cut.end_mill_cuts_deep_deepest": "Der Schaftfräser von {diameter} schneidet {cutting_length} tief, und die "
    "tiefste Vertiefung hat {deepest}.",
    "cut.name_longer_cutter_use_smaller": "Einen längeren Fräser nennen, oder eine kleinere Tiefe nehmen.",
    "cut.detail_smaller_than_tolerance_may": "Etwas an {names:plain} ist kleiner als die Toleranz von {tolerance} "
    "und kann verloren gehen. Größere Buchstaben oder eine kleinere Toleranz nehmen.",
    "cut.stroke_narrower_than_flat_bit": "Ein Strich von {names:plain} ist schmaler als die Fläche von {tip} an "
    "der Spitze des V-Fräsers und bleibt dort stehen, höchstens {most} % eines Buchstabens. Größere Buchstaben "
    "oder einen V-Fräser mit feinerer Spitze nehmen.",
    "cut.leaves_top_face_clean_only": "{tool}: die Oberseite wird nur sauber, wo der erste Durchgang tiefer ist "
    "als der Teil der Schneiden, der nach oben zieht, oft ein Durchmesser; die Durchgänge hier haben {stepdown}.",
    "cut.end_mill_cannot_bore": "Ein Schaftfräser von {diameter} kann {name} von {hole} nicht machen; ein Loch "
    "wird auf einer Schraubenlinie gebohrt, die {room} Luft braucht. Der größte, der es kann, hat {widest}.",
    "cut.end_mill_cannot_mill": "Ein Schaftfräser von {diameter} kann {name} von {hole} nicht machen. Der größte, "
    "der es kann, hat {widest}.",
    "cut.would_clear_more": "Ein Fräser von {diameter} würde {area} mehr räumen als der von {best}, und die Böden "
    "würden {minutes} min länger dauern.",
    "cut.would_clear_less": "Ein Fräser von {diameter} würde {area} weniger räumen als der von {best}, und die "
    "Böden würden {minutes} min länger dauern.",
    "cut.another_would_clear_in": "Ein Schaftfräser von {diameter} (end-mill {typed}) würde die ebenen Böden der "
    "Buchstaben in rund {best} statt {minutes} min räumen.",
    "cut.no_thin_end_mill_long_enough": "Kein Schaftfräser der Werkstatt, der in die Buchstaben passt, ist lang "
    "genug für {deepest} und höchstens {thickest} dick, wie scharfe Ecken es brauchen.",
    "cut.no_end_mill_long_enough": "Kein Schaftfräser der Werkstatt, der in die Buchstaben passt, ist lang genug "
    "für {deepest}.",
    "cut.end_mill_has_no_room": "Ein Schaftfräser von {diameter} hat in {name} keinen Platz: der größte, der "
    "passt, hat {largest}.",
    "cut.no_end_mill_has_room": "Kein Schaftfräser der Werkstatt hat in {name} Platz: der größte, der passt, hätte "
    "{largest}.",
    "does.engraves_letters": "fräst die Buchstaben",
    "does.engraves_lines": "fräst die Zierlinien",
    "does.engraves_letters_and_lines": "fräst die Buchstaben und die Zierlinien",
    "does.clears_floors": "räumt {count:den Boden|die Böden}, {depth} tief",
    "does.cuts_through": "schneidet die Buchstaben durch",
    "does.follows_lines": "zieht die Linien der Buchstaben, {depth} tief",
    "does.follows_lines_from_to": "zieht die Linien der Buchstaben, {least:bare} bis {most} tief",
    "does.sharpens_corners": "schärft die Ecken",
    "does.bevels_the_edge": "fast die Kante um {width}",
    "does.makes_holes": "macht {count} {count:Loch|Löcher} von {sizes}",
    "does.mills_slots": "fräst {count} {count:Langloch|Langlöcher} von {sizes}",
    "does.sinks_heads": "senkt {count} {count:Schraubenkopf|Schraubenköpfe} von {sizes}",
    "does.opens_keyholes": "öffnet {count} {count:Schlüsselloch|Schlüssellöcher}, Einführloch {entry}, Schlitz "
    "{slot}, {depth} tief",
    "does.undercuts_keyholes": "unterschneidet {count} {count:Schlüsselloch|Schlüssellöcher} auf {width}",
    "does.cuts_sign_out": "trennt das Schild heraus",
    "does.cuts_sign_out_with_tabs": "trennt das Schild heraus bis auf {count} {count:Steg|Stege}",
    "does.cuts_to_skin": "trennt das Schild bis auf eine Haut von {skin} heraus",
    "does.cuts_signs_out": "trennt {count} {count:Schild|Schilder} heraus",
    "does.cuts_signs_out_with_tabs": "trennt {count} {count:Schild|Schilder} heraus bis auf je {tabs} "
    "{tabs:Steg|Stege}",
    "does.cuts_signs_out_with_some_tabs": "trennt {count} {count:Schild|Schilder} heraus bis auf je {least} bis "
    "{most} Stege",
}
