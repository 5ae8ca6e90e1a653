"""English: what the checks say of what is left of the board."""

from __future__ import annotations

WORDS = {
    "edge_bevelled.bevel_too_narrow": "The bevel is {gap} too narrow at {place}.",
    "edge_bevelled.bevel_too_wide": "The bevel is {gap} too wide at {place}.",
    "edge_bevelled.edge_not_bevelled": "The edge is not bevelled at {place}.",
    "edge_bevelled.make_programs_again_if_they": "Make the programs again; if they are as made, report it: the "
    "bevel does not follow the drawing.",
    "edge_bevelled.no_bevel_drawn": "no bevel drawn",
    "edge_bevelled.too_deep": "The bevel is {error} too deep at {place}.",
    "edge_bevelled.too_shallow": "The bevel is {error} too shallow at {place}.",
    "edge_bevelled.upper_line_off_most_places": "upper line off by {off} at most at {count:,} places, surface by "
    "{deep}",
    "edge_size.above_tab": "above its tab",
    "edge_size.compared_places_edge": "{size}, compared at {count:,} places of the edge",
    "edge_size.cutter_takes_off_sign_s": "The cutter takes {near} off the sign's edge at {place}.",
    "edge_size.down_to_bottom": "down to the board's bottom",
    "edge_size.down_to_skin": "down to the skin",
    "edge_size.edge_not_cut": "The edge is not cut {level} at {place}.",
    "edge_size.edge_stands_too_far_out": "The edge stands {through} too far out at {place}.",
    "edge_size.make_programs_again_if_they": "Make the programs again; if they are as made, report it: the cut does "
    "not follow the edge.",
    "edge_size.nothing_cut_through": "nothing is cut through",
    "edge_size.outside_size_x_drawn": "outside size {size}, drawn {drawn}",
    "groove_walls.depth_cuts_over_drawn_wall": "{tool} at depth {depth} cuts {over} over the drawn wall or floor at "
    "{place}: {what}.",
    "groove_walls.ends_short": "ends {gap} short of",
    "groove_walls.make_programs_again_if_they": "Make the programs again; if they are as made, report it: the wall "
    "is not where it is drawn.",
    "groove_walls.never_comes_near": "never comes near",
    "groove_walls.v_bit_outline": "{of}: the V-bit {short} the outline at {place}.",
    "groove_walls.walls_most_outside_places_way": "walls at most {worst_out} outside at {count_in:,} places of the "
    "way and {worst_short} short at {count_out:,} places of the outlines; allowed {allowed}",
    "heads_seated.countersink_too_small": "{hole}: its countersink is {gap} too small at {place}.",
    "heads_seated.countersinks_measured_rims_off_cones": "{count} countersinks measured: rims off by {worst_rim}, "
    "cones by {worst_depth} at most",
    "heads_seated.has_no_countersink": "{hole} at {place} has no countersink.",
    "heads_seated.make_programs_again_if_they": "Make the programs again; if they are as made, report it: the "
    "countersink does not follow the drawing.",
    "heads_seated.no_countersinks_drawn": "no countersinks drawn",
    "heads_seated.too_deep": "{hole}: its countersink is {worst} too deep at {place}.",
    "heads_seated.too_shallow": "{hole}: its countersink is {worst} too shallow at {place}.",
    "heads_seated.v_bit_reaches_beyond_rim": "{hole}: the V-bit reaches {beyond} beyond the rim of its countersink.",
    "held_round.ask_more_tabs_stick_piece": "Ask for more tabs, or stick the piece down with tape as well.",
    "held_round.pieces_held_from_opposite_sides": "{held} of {count} pieces held from opposite sides",
    "held_round.tab_piece_about_on_one": "{count} {count:tab holds|tabs hold} the piece about {place} on one side "
    "only: its middle is {away} away from what they span.",
    "holes_made.and_off_by": "{measured}: centres off by {centres}, diameters by {diameters} at most",
    "holes_made.clear_hole_s_middle_well": "Clear the hole's middle as well: a loose core jams the cutter.",
    "holes_made.cutter_reaches_beyond_rim": "the cutter reaches {outside} beyond its rim",
    "holes_made.holes_measured": "{count} of {holes} holes measured",
    "holes_made.make_programs_again_if_they": "Make the programs again; if they are as made, report it: the bore "
    "does not follow the drawing.",
    "holes_made.measures_with_centre_off_drawn": "{hole}: {what}; it measures {diameter} with its centre {off} off, "
    "drawn {drawn} at {place}.",
    "holes_made.no_holes_drawn": "no holes drawn",
    "holes_made.not_cut_through_board_s": "{hole} at {place} is not cut through to the board's bottom.",
    "holes_made.wood_stands_inside_in_all": "{hole}: {heights} of wood stands inside it at {place}, {left} in all.",
    "holes_made.wood_stands_inside_rim": "{gap} of wood stands inside its rim at {place}",
    "keyholes_made.back_cut_where_nothing_drawn": "The back is cut where nothing is drawn",
    "keyholes_made.first_in_all": "{what}, first at {place}; {count} in all.",
    "keyholes_made.has_head_high_drawing_wants": "{tool} has a head of {diameter}, {head} high; the drawing wants "
    "{undercut} and {drawn_head}.",
    "keyholes_made.head_keyhole_cutter_cuts_where": "The head of the keyhole cutter cuts where nothing is drawn",
    "keyholes_made.keyhole_cutter_s_head_moves": "The keyhole cutter's head moves under the surface at {place} "
    "where it may not.",
    "keyholes_made.keyholes_compared_depths_off_most": "{count} keyholes compared, depths off by {worst} at most",
    "keyholes_made.lift_cutter_over_entry_only": "Lift the cutter over the entry only: elsewhere its head tears out "
    "the wood that carries the sign.",
    "keyholes_made.make_programs_again_if_they": "Make the programs again; if they are as made, report it: the "
    "keyhole does not follow the drawing.",
    "keyholes_made.neck_does_not_go_into": "{tool}: its neck of {neck} does not go into slots of {slot}.",
    "keyholes_made.no_program_has_keyhole_cutter": "No program has a keyhole cutter.",
    "keyholes_made.not_open_drawn": "is not open as drawn",
    "keyholes_made.not_undercut_drawn": "is not undercut as drawn",
    "keyholes_made.said": "{keyhole} {what}: {more}.",
    "keyholes_made.too_deep": "{error} too deep at {place}",
    "keyholes_made.too_high": "{error} too high at {place}",
    "letters_made.make_programs_again_if_they": "Make the programs again; if they are as made, report it: the "
    "engraving does not reach this place.",
    "letters_made.wood_stands_above_drawn_surface": "{feature}: {short} of wood stands above the drawn surface at "
    "{place}, and {area} in all are too shallow.",
    "letters_made.worst_uncut_cells_compared_cell": "worst uncut {worst} at {place}, {compared:,} cells compared, "
    "cell {cell}, {features} letters and ornaments",
    "not_gouged.make_programs_again_if_they": "Make the programs again; if they are as made, report it: this line "
    "cuts where nothing is drawn.",
    "not_gouged.too_much_removed": "{depth} too much is removed at {place}: {what}.",
    "not_gouged.worst_gouge_over_mm_cells": "worst gouge {worst}, {area} over {check}, {size:,} cells compared, "
    "cell {cell}",
    "nothing_loose.after": "{count} after {file}",
    "nothing_loose.leave_tabs_clear_whole_what": "Leave tabs, or clear the whole of what is cut free.",
    "nothing_loose.make_sure_that_tape_screws": "Make sure that tape, screws or tabs hold it, and that nothing jams "
    "when it tips.",
    "nothing_loose.piece_mm2_loose_after_program": "A piece of {area:,} mm2 at {place} is loose after this program.",
    "nothing_loose.pieces_board": "pieces of board: {counts:plain}",
    "place.at": "({x}, {y})",
    "places.edge": "the edge",
    "places.from": "{away} from {name}",
    "recesses_made.cuts_into_wall": "{tool} cuts {over} into the wall of {recess} at {place}.",
    "recesses_made.cutter_ends_short_wall": "{recess}: the cutter ends {gap} short of the wall at {place}.",
    "recesses_made.cutter_reaches_only": "A {cutter} cutter reaches only {share} % of {recess}.",
    "recesses_made.make_programs_again_if_they": "Make the programs again; if they are as made, report it: the "
    "recess does not follow the drawing.",
    "recesses_made.no_recesses_drawn": "no recesses drawn",
    "recesses_made.no_v_bit_sharpens_corners": "{recess}: no V-bit sharpens its corners.",
    "recesses_made.not_cut": "{recess} is not cut.",
    "recesses_made.recess_walls_most_outside_in": "{count} {count:recess|recesses}: walls at most {worst} outside; "
    "{left} in corners that the end mill does not reach",
    "recesses_made.too_much_removed": "{recess}: {wrong} too much is removed at {place}.",
    "recesses_made.use_thinner_end_mill": "Use a thinner end mill.",
    "recesses_made.wood_stands_above_floor": "{recess}: {wrong} of wood stands above the floor at {place}.",
    "recesses_made.wood_stands_in_corner_that": "{recess}: {short} of wood stands in a corner that should be sharp, "
    "at {place}.",
    "skin_holds.no_skin_asked": "no skin asked for",
    "skin_holds.skin_thick_asked": "The skin is {thickness} thick at {place}; {skin} was asked for.",
    "skin_holds.thinnest_asked": "thinnest {lowest}, asked for {skin}",
    "tabs_hold.make_programs_again_if_they": "Make the programs again; if they are as made, report it: without tabs "
    "the sign flies off at the last cut.",
    "tabs_hold.narrowest_lowest": "narrowest {width}, lowest {height}",
    "tabs_hold.tabs_stand": "{count} of {tabs} tabs stand: {least}",
    "tabs_hold.wide_height_high_lowest_place": "{tab} at {place} is {width} wide at a height of {height} and "
    "{lowest} high at its lowest place; {drawn} are drawn.",
    "text_as_ordered.cut_outline_bit_s_tip": "{letter} is cut to {share} % of its outline: the bit's tip is too "
    "wide for it.",
    "text_as_ordered.order.drawn_not_ordered": "{characters:plain} {characters:is|are} drawn and not ordered.",
    "text_as_ordered.extra": "{what} is cut at {place}, {where}.",
    "text_as_ordered.in_part.is_cut": "{letter} is cut in part: {share} % of it.",
    "text_as_ordered.in_part.stands": "{letter} stands in part: {share} % of it.",
    "text_as_ordered.letters_are_cut": "{there} of {count} letters{of_text} are cut, each to {least} % or more; "
    "{shapes} shapes more",
    "text_as_ordered.letters_stand": "{there} of {count} letters{of_text} stand, each to {least} % or more; "
    "{shapes} shapes more",
    "text_as_ordered.make_programs_again_look_whether": "Make the programs again; look whether they belong to this "
    "sign.",
    "text_as_ordered.missing.is_cut": "{letter} is missing: {share} % of it is cut.",
    "text_as_ordered.missing.stands": "{letter} is missing: {share} % of it stands.",
    "text_as_ordered.no_letters_drawn": "no letters drawn",
    "text_as_ordered.of_text": " of '{text}'",
    "text_as_ordered.order.ordered_not_drawn": "{characters:plain} {characters:is|are} ordered and not drawn.",
    "text_as_ordered.shape_that_no_letter": "A shape of {area} that is no letter",
    "text_as_ordered.that_nobody_ordered": "A '{seen}' that nobody ordered",
    "text_as_ordered.where_drawn_what_cut_looks": "Where {letter} is drawn, what is cut looks like '{seen}'.",
    "wood_left.least_wood_under_letter_advised": "least wood under a letter {all_left}, {least} advised",
    "wood_left.limit_depth_depth_take_wider": "Limit the depth (--depth), take a wider V-bit or a thicker board.",
    "wood_left.no_letters_ornament_drawn_that": "no letters or ornament drawn that do not go through",
    "wood_left.only_board_left_advised": "{name}: only {left} of the {thickness} board is left at {place}; {least} "
    "is advised.",
    "wood_over_keyholes.engrave_less_deep_depth_move": "Engrave less deep (--depth), move the keyholes (--inset), "
    "or use a thicker board.",
    "wood_over_keyholes.make_sign_again": "Make the sign again.",
    "wood_over_keyholes.no_wood": "no wood",
    "wood_over_keyholes.nothing_known_face": "Nothing is known of the face.",
    "wood_over_keyholes.only_wood_stay_between_face": "Only {stays} of wood stay between {keyhole} and the face at "
    "{place}.",
    "wood_over_keyholes.reaches_out_board": "{keyhole} reaches out of the board.",
    "wood_over_keyholes.wood_least_wanted": "{least} of wood at the least, {least_over} wanted",
    "edge_size.a_blank": "a blank: nothing is cut outside",
}
