"""German: what the checks say of what is left of the board."""

from __future__ import annotations

WORDS = {
    "edge_bevelled.bevel_too_narrow": "Die Fase ist bei {place} um {gap} zu schmal.",
    "edge_bevelled.bevel_too_wide": "Die Fase ist bei {place} um {gap} zu breit.",
    "edge_bevelled.edge_not_bevelled": "Die Kante ist bei {place} nicht gefast.",
    "edge_bevelled.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: die "
    "Fase folgt nicht der Zeichnung.",
    "edge_bevelled.no_bevel_drawn": "keine Fase gezeichnet",
    "edge_bevelled.too_deep": "Die Fase ist bei {place} um {error} zu tief.",
    "edge_bevelled.too_shallow": "Die Fase ist bei {place} um {error} zu flach.",
    "edge_bevelled.upper_line_off_most_places": "obere Linie an {count:,} Stellen höchstens {off} daneben, Fläche "
    "höchstens {deep}",
    "edge_size.above_tab": "über ihrem Steg",
    "edge_size.compared_places_edge": "{size}, verglichen an {count:,} Stellen der Kante",
    "edge_size.cutter_takes_off_sign_s": "Der Fräser nimmt bei {place} {near} von der Kante des Schilds.",
    "edge_size.down_to_bottom": "bis zur Unterseite des Bretts",
    "edge_size.down_to_skin": "bis zur Haut",
    "edge_size.edge_not_cut": "Die Kante ist bei {place} nicht {level} gefräst.",
    "edge_size.edge_stands_too_far_out": "Die Kante steht bei {place} um {through} zu weit außen.",
    "edge_size.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: der "
    "Schnitt folgt nicht der Kante.",
    "edge_size.nothing_cut_through": "nichts wird durchgefräst",
    "edge_size.outside_size_x_drawn": "Außenmaß {size}, gezeichnet {drawn}",
    "groove_walls.depth_cuts_over_drawn_wall": "{tool} schneidet bei {place} in der Tiefe {depth} um {over} über "
    "die gezeichnete Wand oder den Boden: {what}.",
    "groove_walls.ends_short": "endet {gap} vor",
    "groove_walls.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: die "
    "Wand ist nicht, wo sie gezeichnet ist.",
    "groove_walls.never_comes_near": "kommt nie in die Nähe von",
    "groove_walls.v_bit_outline": "{of}: der V-Fräser {short} dem Umriss bei {place}.",
    "groove_walls.walls_most_outside_places_way": "Wände höchstens {worst_out} außerhalb an {count_in:,} Stellen "
    "des Wegs und {worst_short} zu kurz an {count_out:,} Stellen der Umrisse; erlaubt {allowed}",
    "heads_seated.countersink_too_small": "{hole}: die Senkung ist bei {place} um {gap} zu klein.",
    "heads_seated.countersinks_measured_rims_off_cones": "{count} Senkungen gemessen: Ränder höchstens {worst_rim} "
    "daneben, Kegel höchstens {worst_depth}",
    "heads_seated.has_no_countersink": "{hole} bei {place} hat keine Senkung.",
    "heads_seated.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: die "
    "Senkung folgt nicht der Zeichnung.",
    "heads_seated.no_countersinks_drawn": "keine Senkungen gezeichnet",
    "heads_seated.too_deep": "{hole}: die Senkung ist bei {place} um {worst} zu tief.",
    "heads_seated.too_shallow": "{hole}: die Senkung ist bei {place} um {worst} zu flach.",
    "heads_seated.v_bit_reaches_beyond_rim": "{hole}: der V-Fräser reicht {beyond} über den Rand der Senkung hinaus.",
    "held_round.ask_more_tabs_stick_piece": "Mehr Stege verlangen, oder das Stück zusätzlich festkleben.",
    "held_round.pieces_held_from_opposite_sides": "{held} von {count} Stücken von gegenüberliegenden Seiten gehalten",
    "held_round.tab_piece_about_on_one": "{count} {count:Steg hält|Stege halten} das Stück um {place} nur auf einer "
    "Seite: seine Mitte liegt {away} neben dem, was sie umspannen.",
    "holes_made.and_off_by": "{measured}: Mitten höchstens {centres} daneben, Durchmesser höchstens {diameters}",
    "holes_made.clear_hole_s_middle_well": "Auch die Mitte des Lochs räumen: ein loser Kern klemmt den Fräser.",
    "holes_made.cutter_reaches_beyond_rim": "der Fräser reicht {outside} über den Rand hinaus",
    "holes_made.holes_measured": "{count} von {holes} Löchern gemessen",
    "holes_made.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: die "
    "Bohrung folgt nicht der Zeichnung.",
    "holes_made.measures_with_centre_off_drawn": "{hole}: {what}; es misst {diameter}, die Mitte liegt {off} "
    "daneben, gezeichnet {drawn} bei {place}.",
    "holes_made.no_holes_drawn": "keine Löcher gezeichnet",
    "holes_made.not_cut_through_board_s": "{hole} bei {place} ist nicht bis zur Unterseite des Bretts durchgefräst.",
    "holes_made.wood_stands_inside_in_all": "{hole}: bei {place} stehen {heights} Holz darin, insgesamt {left}.",
    "holes_made.wood_stands_inside_rim": "bei {place} stehen {gap} Holz innerhalb des Rands",
    "keyholes_made.back_cut_where_nothing_drawn": "Die Rückseite ist gefräst, wo nichts gezeichnet ist",
    "keyholes_made.first_in_all": "{what}, zuerst bei {place}; insgesamt {count}.",
    "keyholes_made.has_head_high_drawing_wants": "{tool} hat einen Kopf von {diameter}, {head} hoch; die Zeichnung "
    "will {undercut} und {drawn_head}.",
    "keyholes_made.head_keyhole_cutter_cuts_where": "Der Kopf des Schlüssellochfräsers schneidet, wo nichts "
    "gezeichnet ist",
    "keyholes_made.keyhole_cutter_s_head_moves": "Der Kopf des Schlüssellochfräsers bewegt sich bei {place} unter "
    "der Fläche, wo er nicht darf.",
    "keyholes_made.keyholes_compared_depths_off_most": "{count} Schlüssellöcher verglichen, Tiefen höchstens "
    "{worst} daneben",
    "keyholes_made.lift_cutter_over_entry_only": "Den Fräser nur über dem Einführloch heben: anderswo reißt sein "
    "Kopf das Holz heraus, das das Schild trägt.",
    "keyholes_made.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: das "
    "Schlüsselloch folgt nicht der Zeichnung.",
    "keyholes_made.neck_does_not_go_into": "{tool}: sein Hals von {neck} geht nicht in Schlitze von {slot}.",
    "keyholes_made.no_program_has_keyhole_cutter": "Kein Programm hat einen Schlüssellochfräser.",
    "keyholes_made.not_open_drawn": "ist nicht offen wie gezeichnet",
    "keyholes_made.not_undercut_drawn": "ist nicht unterschnitten wie gezeichnet",
    "keyholes_made.said": "{keyhole} {what}: {more}.",
    "keyholes_made.too_deep": "{error} zu tief bei {place}",
    "keyholes_made.too_high": "{error} zu hoch bei {place}",
    "letters_made.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: die "
    "Gravur erreicht diese Stelle nicht.",
    "letters_made.wood_stands_above_drawn_surface": "{feature}: bei {place} stehen {short} Holz über der "
    "gezeichneten Fläche, und insgesamt sind {area} zu flach.",
    "letters_made.worst_uncut_cells_compared_cell": "höchstens ungefräst {worst} bei {place}, {compared:,} Zellen "
    "verglichen, Zelle {cell}, {features} Buchstaben und Zierstücke",
    "not_gouged.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: diese "
    "Zeile fräst, wo nichts gezeichnet ist.",
    "not_gouged.too_much_removed": "Bei {place} sind {depth} zu viel weg: {what}.",
    "not_gouged.worst_gouge_over_mm_cells": "tiefste Verletzung {worst}, {area} über {check}, {size:,} Zellen "
    "verglichen, Zelle {cell}",
    "nothing_loose.after": "{count} nach {file}",
    "nothing_loose.leave_tabs_clear_whole_what": "Stege lassen, oder alles räumen, was losgeschnitten wird.",
    "nothing_loose.make_sure_that_tape_screws": "Sicherstellen, dass Klebeband, Schrauben oder Stege es halten und "
    "nichts klemmt, wenn es kippt.",
    "nothing_loose.piece_mm2_loose_after_program": "Ein Stück von {area:,} mm2 bei {place} ist nach diesem Programm "
    "lose.",
    "nothing_loose.pieces_board": "Stücke des Bretts: {counts:plain}",
    "place.at": "({x}; {y})",
    "places.edge": "der Kante",
    "places.from": "{away} von: {name}",
    "recesses_made.cuts_into_wall": "{tool} schneidet bei {place} {over} in die Wand von {recess}.",
    "recesses_made.cutter_ends_short_wall": "{recess}: der Fräser endet bei {place} {gap} vor der Wand.",
    "recesses_made.cutter_reaches_only": "Ein Fräser von {cutter} erreicht nur {share} % von {recess}.",
    "recesses_made.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: die "
    "Vertiefung folgt nicht der Zeichnung.",
    "recesses_made.no_recesses_drawn": "keine Vertiefungen gezeichnet",
    "recesses_made.no_v_bit_sharpens_corners": "{recess}: kein V-Fräser schärft die Ecken.",
    "recesses_made.not_cut": "{recess} ist nicht gefräst.",
    "recesses_made.recess_walls_most_outside_in": "{count} {count:Vertiefung|Vertiefungen}: Wände höchstens {worst} "
    "außerhalb; {left} in Ecken, die der Schaftfräser nicht erreicht",
    "recesses_made.too_much_removed": "{recess}: bei {place} sind {wrong} zu viel weg.",
    "recesses_made.use_thinner_end_mill": "Einen dünneren Schaftfräser nehmen.",
    "recesses_made.wood_stands_above_floor": "{recess}: bei {place} stehen {wrong} Holz über dem Boden.",
    "recesses_made.wood_stands_in_corner_that": "{recess}: bei {place} stehen {short} Holz in einer Ecke, die "
    "scharf sein soll.",
    "skin_holds.no_skin_asked": "keine Haut verlangt",
    "skin_holds.skin_thick_asked": "Die Haut ist bei {place} {thickness} dick; verlangt waren {skin}.",
    "skin_holds.thinnest_asked": "am dünnsten {lowest}, verlangt {skin}",
    "tabs_hold.make_programs_again_if_they": "Die Programme neu machen; sind sie wie gemacht, bitte melden: ohne "
    "Stege fliegt das Schild beim letzten Schnitt weg.",
    "tabs_hold.narrowest_lowest": "am schmalsten {width}, am niedrigsten {height}",
    "tabs_hold.tabs_stand": "{count} von {tabs} Stegen stehen: {least}",
    "tabs_hold.wide_height_high_lowest_place": "{tab} bei {place} ist in {height} Höhe {width} breit und an der "
    "niedrigsten Stelle {lowest} hoch; gezeichnet sind {drawn}.",
    "text_as_ordered.cut_outline_bit_s_tip": "{letter} ist zu {share} % seines Umrisses gefräst: die Spitze des "
    "Fräsers ist zu breit dafür.",
    "text_as_ordered.order.drawn_not_ordered": "{characters:plain} {characters:ist|sind} gezeichnet und nicht "
    "bestellt.",
    "text_as_ordered.extra": "{what} ist bei {place} gefräst, {where}.",
    "text_as_ordered.in_part.is_cut": "{letter} ist nur zum Teil gefräst: {share} %.",
    "text_as_ordered.in_part.stands": "{letter} steht nur zum Teil: {share} %.",
    "text_as_ordered.letters_are_cut": "{there} von {count} Buchstaben{of_text} sind gefräst, jeder zu {least} % "
    "oder mehr; {shapes} Formen mehr",
    "text_as_ordered.letters_stand": "{there} von {count} Buchstaben{of_text} stehen, jeder zu {least} % oder mehr; "
    "{shapes} Formen mehr",
    "text_as_ordered.make_programs_again_look_whether": "Die Programme neu machen; nachsehen, ob sie zu diesem "
    "Schild gehören.",
    "text_as_ordered.missing.is_cut": "{letter} fehlt: {share} % davon sind gefräst.",
    "text_as_ordered.missing.stands": "{letter} fehlt: {share} % davon stehen.",
    "text_as_ordered.no_letters_drawn": "keine Buchstaben gezeichnet",
    "text_as_ordered.of_text": " von ‚{text}‘",
    "text_as_ordered.order.ordered_not_drawn": "{characters:plain} {characters:ist|sind} bestellt und nicht "
    "gezeichnet.",
    "text_as_ordered.shape_that_no_letter": "Eine Form von {area}, die kein Buchstabe ist,",
    "text_as_ordered.that_nobody_ordered": "Ein ‚{seen}‘, das niemand bestellt hat,",
    "text_as_ordered.where_drawn_what_cut_looks": "Wo gezeichnet ist: {letter}, sieht das Gefräste aus wie ‚{seen}‘.",
    "wood_left.least_wood_under_letter_advised": "wenigstes Holz unter einem Buchstaben {all_left}, {least} empfohlen",
    "wood_left.limit_depth_depth_take_wider": "Die Tiefe begrenzen (--depth), einen stumpferen V-Fräser oder ein "
    "dickeres Brett nehmen.",
    "wood_left.no_letters_ornament_drawn_that": "keine Buchstaben oder Zier gezeichnet, die nicht durchgehen",
    "wood_left.only_board_left_advised": "{name}: bei {place} bleiben nur {left} des Bretts von {thickness}; "
    "{least} sind empfohlen.",
    "wood_over_keyholes.engrave_less_deep_depth_move": "Weniger tief gravieren (--depth), die Schlüssellöcher "
    "versetzen (--inset) oder ein dickeres Brett nehmen.",
    "wood_over_keyholes.make_sign_again": "Das Schild neu machen.",
    "wood_over_keyholes.no_wood": "kein Holz",
    "wood_over_keyholes.nothing_known_face": "Von der Schauseite ist nichts bekannt.",
    "wood_over_keyholes.only_wood_stay_between_face": "Nur {stays} Holz bleiben bei {place} zwischen der Schauseite "
    "und: {keyhole}.",
    "wood_over_keyholes.reaches_out_board": "{keyhole} reicht aus dem Brett heraus.",
    "wood_over_keyholes.wood_least_wanted": "mindestens {least} Holz, {least_over} gewünscht",
    "edge_size.a_blank": "ein Rohling: außen wird nichts gefräst",
}
