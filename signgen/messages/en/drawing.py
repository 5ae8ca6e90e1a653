"""English: drawing."""

from __future__ import annotations

WORDS = {
    "drawing.drawn_single_lines_no_width": "{name} is drawn in single lines, which have no width to be cut.",
    "drawing.use_finish_stroke_another_font": "Use finish stroke, or another font.",
    "drawing.alone_wide_capitals": "'{word}' alone is {wide} wide with capitals of {height}.",
    "drawing.use_smaller_height_larger_width": "Use a smaller height or a larger width.",
    "drawing.no_room_circle": "'{text}' has no room on a circle of {radius}.",
    "drawing.use_larger_radius_smaller_height": "Use a larger radius, a smaller height or less text.",
    "drawing.strokes_wide_fill_letters_high": "Strokes {pen} wide fill letters {given} high.",
    "drawing.use_more_smaller_depth": "Use {least} or more, or a smaller depth.",
    "drawing.no_figure_1": "{name} has no figure 1.",
    "drawing.give_cap_height_use_another": "Give cap-height, or use another font.",
    "drawing.bevel_all_round_leaves_outline": "A bevel of {width} all round leaves {left} of this outline.",
    "drawing.use_narrower_one_larger_sign": "Use a narrower one, or a larger sign.",
    "drawing.bevel_runs_into_within": "The bevel of {width} runs into {name} or within {least_wall} of it.",
    "drawing.use_narrower_one_move_hole": "Use a narrower one, or move the hole further in (inset).",
    "drawing.bevel_leaves_less_than_face": "The bevel of {width} leaves less than {least_wall} of face round the "
    "panel.",
    "drawing.use_narrower_one_larger_panel": "Use a narrower one, or a larger panel inset.",
    "drawing.inside_would_fall_out": "The inside of {name} would fall out.",
    "drawing.insides_would_fall_out": "{count} insides of {name} would fall out.",
    "drawing.use_face_bridges_2_hold": "Use the face {stencil_face}, or bridges 2 to hold it.",
    "drawing.use_more_bridges_narrower_bridge": "Use more bridges, a narrower bridge-width, larger letters, or the "
    "face {stencil_face}.",
    "drawing.ornament_no_room_corner": "An ornament of {size} has no room in the {name} corner.",
    "drawing.use_smaller_one_smaller_ornament": "Use a smaller one, or a smaller ornament-inset.",
    "drawing.no_face_ships_name_font": "No face that ships has it; name a font file.",
    "drawing.blank": "'{text}' of {name} is blank.",
    "drawing.use_another_character": "Use another character.",
    "drawing.use_smaller_ornament_size_another": "Use a smaller ornament-size, or another ornament-inset.",
    "drawing.move_holes_inset_use_another": "Move the holes (inset), or use another ornament-inset or ornament-size.",
    "drawing.runs_into": "The {name} runs into {other}.",
    "drawing.meet": "The {one} and the {other} meet.",
    "drawing.use_larger_inset_narrower_line": "Use a larger inset, or a narrower line.",
    "drawing.use_smaller_height_larger_sign": "Use a smaller height, a larger sign or less text; without "
    "cap-height the text is made to fit.",
    "drawing.comes_closer_than": "{name} comes closer than {least_wall} to {name2}.",
    "drawing.move_hole_inset_use_smaller": "Move the hole (inset), or use smaller letters.",
    "drawing.move_hole_inset_line": "Move the hole (inset), or the line.",
    "drawing.sign_can_tip_about_use": "{count} {count:tab holds|tabs hold} the sign, and it can tip about "
    "{count:it|them}: use three or more, or tape it down as well.",
    "drawing.piece_x_small_easily_pulled": "A piece of {width:bare} x {height} is small and easily pulled out: "
    "stick it down with double-sided tape under its whole back as well.",
    "drawing.board_thin_lifts_under_cutter": "A board of {thickness} is thin and lifts under the cutter: stick it "
    "down with double-sided tape under its whole back as well.",
    "drawing.nothing_holds_sign_once_cut": "Nothing holds the sign once it is cut through: stick it down with "
    "double-sided tape under its whole back as well, or ask for tabs.",
    "drawing.does_not_lie_inside_sign": "{name} ({size} at {x:bare}, {y:bare}) does not lie inside the sign with "
    "{least_wall} of wood around it.",
    "drawing.use_larger_inset_smaller_hole": "Use a larger inset or a smaller hole.",
    "drawing.run_into_each_other_their": "{name} and {other} run into each other: their middles are {apart} apart.",
    "drawing.use_smaller_holes_fewer_them": "Use smaller holes, fewer of them, or another inset.",
    "drawing.goes_deep_into_board": "It goes {depth} deep into a board of {thickness}.",
    "drawing.use_smaller_screw_thicker_board": "Use a smaller screw or a thicker board.",
    "drawing.goes_deep_v_bit_reaches": "It goes {depth} deep, and the V-bit reaches {reach}.",
    "drawing.use_smaller_screw_larger_v": "Use a smaller screw or a larger V-bit.",
    "drawing.v_bit_s_tip_wide": "The V-bit's tip is {tip} wide, no less than the hole.",
    "drawing.use_sharper_v_bit": "Use a sharper V-bit.",
    "drawing.only_wood_stay_under_screws": "Only {left} of wood stay under the screws' heads: they may pull through.",
    "drawing.use_another_inset_shorter_keyhole": "Use another inset, a shorter keyhole-travel or a smaller screw.",
    "drawing.run_into_each_other_leave": "{name} and {name2} run into each other, or leave less than {least_beside}.",
    "drawing.use_fewer_keyholes_another_inset": "Use fewer keyholes, or another inset.",
    "drawing.leave_wood_between_them_least": "{name} and {name2} leave {left} of wood between them; {least_over} "
    "is the least.",
    "drawing.engrave_less_deep_depth_move": "Engrave less deep (depth), move the keyholes (inset), or use a "
    "thicker board.",
    "drawing.only_wood_carry_screws_heads": "Only {shoulder} of wood carry the screws' heads in the keyholes; "
    "{usual} are usual. Hang nothing heavy on them.",
    "drawing.fire_code_force_where_you": "The fire code in force where you live may ask for figures of {asked} "
    "({rule}); {text} has {here}. Ask the fire service or the council.",
    "drawing.use_smaller_inset": "Use a smaller inset.",
    "drawing.use_fewer_frame_lines_smaller": "Use fewer frame-lines, or a smaller inset.",
    "drawing.rule_no_room_between_lines": "A rule of {width} has no room between lines {above} and {below}, which "
    "are {bottom} apart.",
    "drawing.use_larger_line_spacing_thinner": "Use a larger line-spacing or a thinner rule.",
    "drawing.panel_inside_edge_corners_no": "A panel {inset} inside the edge, with corners of {radius}, has no "
    "room in this sign.",
    "drawing.use_smaller_panel_inset_panel": "Use a smaller panel inset or panel-radius, or a larger sign.",
    "drawing.rim_wide_inside_panel_does": "A rim {width} wide, {inset} inside the panel, does not go round this sign.",
    "drawing.use_narrower_rim_smaller_rim": "Use a narrower rim or a smaller rim-inset.",
    "drawing.does_not_lie_inside_panel": "{name} does not lie inside the panel with {least_wall} around it.",
    "drawing.use_smaller_height_less_text": "Use a smaller height, less text, or a smaller panel inset.",
    "drawing.countersink_begins_face_lies_panel": "{name} has a countersink, which begins at the face, and lies in "
    "the panel.",
    "drawing.move_hole_rim_inset_use": "Move the hole to the rim (inset), use a larger panel inset, or leave the "
    "countersink out.",
    "drawing.panel_s_wall_runs_through": "The panel's wall runs through {name} or close by.",
    "drawing.leave_out_place_rim": "Leave it out, or place it on the rim.",
    "drawing.tabs_find_no_straight_stretches": "{count} tabs of {width} find no straight stretches on this edge of "
    "{length}.",
    "drawing.use_fewer_narrower_tabs": "Use fewer or narrower tabs.",
    "drawing.text_lies_off_middle_sign": "The text lies off the middle of the sign, for it has no room there.",
    "drawing.text_does_not_fit_between": "The text does not fit between margins and holes, not even with capitals "
    "of {least_cap_height}.",
    "drawing.use_larger_sign_less_text": "Use a larger sign, less text, a narrower face, a smaller margin, or "
    "holes nearer to the edge.",
    "drawing.lines_run_into_each_other": "Lines {lines} run into each other.",
    "drawing.use_another_arc_more_line": "Use another arc, more line-spacing, smaller letters, or leave the height "
    "out so that they are made to fit.",
    "drawing.nothing_of_face": "nothing of the face",
    "drawing.face_in_pieces": "the face in {count} pieces",
    "drawing.the_letters": "the letters",
    "drawing.these_have_it": "These have it: {others:plain}.",
    "drawing.face_lacks_ornament": "{name} has no '{text}'.",
    "drawing.lies_over": "The {name} lies over {other}.",
    "drawing.ornament_comes_closer_than": "The {name} comes closer than {least_wall} to {other}.",
    "drawing.carved_runs_into": "{name} runs into {other}.",
    "drawing.lies_outside_sign": "{name} lies outside the sign or within {least_wall} of its edge.",
    "drawing.lies_outside_face": "{name} lies outside the sign or within {least_wall} of its bevelled edge.",
    "drawing.cutter_leaves_corners_round": "The {cutter} cutter leaves {count} inside corners of the edge round, "
    "with up to {most} of wood more than asked for. A thinner end-mill leaves less.",
    "drawing.sunk_to": "{size}, sunk to {sunk}",
    "drawing.head_bears_by_its_rim": "The V-bit cuts cones of {angle} degrees and the head has {head}: it lies "
    "flush, but bears by its rim only.",
    "drawing.head_bears_at_hole_s_rim": "The V-bit cuts cones of {angle} degrees and the head has {head}: it lies "
    "flush, but bears at the hole's rim only.",
    "drawing.sign_s_edge": "the sign's edge",
    "drawing.thin_wall_at_hole": "Only {wall} of wood stay between {name} and {other}: it may break out. A larger "
    "inset or a smaller hole leaves more.",
    "drawing.thin_walls_at_holes": "Only {wall} of wood stay between {name} and {other} ({count} walls are thinner "
    "than their hole is wide): it may break out. A larger inset or a smaller hole leaves more.",
    "drawing.thin_wall_beside_letter": "Only {wall} of wood stay between {name} and {other}: it may break out.",
    "drawing.keyhole_does_not_lie_inside_sign": "{name} (with its screw at {x:bare}, {y:bare}) does not lie inside "
    "the sign with {least_beside} of wood around it.",
    "drawing.read_with_ease_up_to": "Letters {height} high are read with ease up to {easy} m away (sign trade, "
    "easy reading) and hardly beyond {furthest} m (MUTCD 2000, 2A.14, as research supports).",
    "drawing.with_strokes_of": "{height} with strokes of {stroke}",
    "drawing.frame_does_not_go_round": "A frame {inset} inside the edge does not go round this sign.",
    "drawing.frame_line_does_not_go_round": "Line {number} of the frame, {inset} inside the edge does not go round "
    "this sign.",
    "drawing.use_larger_sign_or_another_arc": "Use a larger sign, less text, another arc, a narrower face, a "
    "smaller margin, or holes nearer to the edge.",
    "drawing.use_panel_or_more": "Use panel {more:bare} or more, or move the hole (inset).",
    "drawing.use_panel_or_less_or_more": "Use panel {less:bare} or less, or {more:bare} or more, or move the hole "
    "(inset).",
    "drawing.cutter_leaves_corner_round": "The {cutter} cutter leaves one inside corner of the edge round, with up "
    "to {most} of wood more than asked for. A thinner end-mill leaves less.",
    "drawing.only_wood_stand_between_letters": "Only {thin} of wood stand between letters that are cut right "
    "through, and it may break: use more letter-spacing.",
    "drawing.inside_hangs_less_than_wood": "The inside of {hanging:plain} hangs on less than {thin_bridge} of "
    "wood: use more bridges or a larger bridge-width, and stick the board down there.",
    "drawing.each_inside_hangs_one_bridge": "Each inside hangs on one bridge, about which the cutter can turn it: "
    "bridges 2 hold it.",
    "drawing.use_arc_or_line_spacing": "Use another arc or more line-spacing.",
    "drawing.use_line_spacing": "Use more line-spacing.",
    "drawing.use_line_spacing_or_smaller": "Use more line-spacing, smaller letters, or leave the height out so "
    "that they are made to fit.",
    "drawing.lines_touch": "Letters of lines {lines} touch, and are cut as one: use more line-spacing to keep them "
    "apart.",
    "drawing.skin_goes_by_top": "The skin of {held} are measured from the board's top, and boards differ by 0.2 mm "
    "in thickness: measure the board where it is cut out, or use z-zero bottom.",
    "drawing.tabs_go_by_top": "The tabs of {held} are measured from the board's top, and boards differ by 0.2 mm "
    "in thickness: measure the board where it is cut out, or use z-zero bottom.",
}
