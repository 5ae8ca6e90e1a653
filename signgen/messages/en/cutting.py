"""English: cutting."""

from __future__ import annotations

WORDS = {
    "cut.no_end_mill_shop_reaches": "No end mill in the shop reaches through {thickness} and {breakthrough} "
    "beyond; the longest cuts {longest} deep.",
    "cut.use_thinner_board_add_longer": "Use a thinner board, or add a longer cutter to the shop file.",
    "cut.end_mill_cuts_deep_cannot": "The {diameter} end mill cuts {cutting_length} deep and cannot reach through "
    "{reach}.",
    "cut.name_longer_cutter_leave_end": "Name a longer cutter, or leave end-mill out and let the planner choose.",
    "cut.name_end_mill_less_make": "Name an end mill of {widest} or less, make the hole at least {diameter}, or "
    "leave end-mill out.",
    "cut.no_cutter_shop_makes_board": "No cutter in the shop makes {name} of {diameter} in this board: the largest "
    "end mill that would do has {widest_mill}, and the thinnest that is long enough has {thinnest}.",
    "cut.use_hole_more_thinner_board": "Use a hole of {least} or more, a thinner board, or add a cutter to the "
    "shop file.",
    "cut.tabs_do_not_fit_round": "{count} tabs of {width} do not fit round this edge with a {diameter} cutter.",
    "cut.use_fewer_narrower_tabs_thinner": "Use fewer or narrower tabs, or a thinner cutter.",
    "cut.drawn_degree_bit_tip_another": "{name} is drawn for a {angle} degree bit with a {tip} tip, and {bit} is "
    "another.",
    "cut.draw_sign_bit_cuts": "Draw the sign for the bit that cuts it.",
    "cut.may_deep_reaches": "{name} may be {max_depth} deep, and {bit} reaches {reach}.",
    "cut.use_depth_less_larger_bit": "Use a depth of {most} or less, or a larger bit.",
    "cut.may_deep_board": "{name} may be {max_depth} deep in a board of {thickness}.",
    "cut.use_smaller_depth": "Use a smaller depth.",
    "cut.end_mill_reaches_none_letters": "The {diameter} end mill reaches none of the letters' flat floors: the "
    "V-bit clears them, line by line, in about {minutes} min.",
    "cut.inner_corners_stay_round_end": "Inner corners stay round: the {diameter} end mill does not reach {left} "
    "of them.",
    "choose.only_v_bit_cuts_it": "Only a V-bit cuts it, and the shop has none.",
    "choose.letters_by_mill": "Use finish recess, raised or through, which an end mill makes, or add a "
    "V-bit to the shop file.",
    "choose.leave_it_out": "Leave it out, or add a V-bit to the shop file.",
    "choose.no_v_bit": "The shop has no V-bit: letters are sunk flat by an end mill.",
    "choose.no_end_mill": "The shop has no end mill: the outside is not cut, and the board must already be to size.",
    "slow.takes": "It takes about {minutes} min.",
    "slow.takes_with": "It takes about {minutes} min; {way} it would take about {less} min.",
    "slow.no_end_mill": "without a named end-mill",
    "slow.depth": "with depth {depth}",
    "slow.ridge": "with ridge {ridge}",
    "slow.panel_depth": "with panel-depth {depth}",
    "slow.no_finish_pass": "without finish-pass",
    "slow.machine": "on the machine {name}",
    "cut.v_bit_makes_narrow_places": "Places that are too narrow for the {diameter} end mill, between letters and in "
    "them, are cut by the V-bit, less deep than the rest.",
    "cut.use_smaller_depth_thinner_board": "Use a smaller depth, a thinner board, or larger letters, or add a "
    "cutter to the shop file.",
    "cut.use_larger_bolder_letters_more": "Use larger or bolder letters, or more letter-spacing.",
    "cut.name_end_mill_less_long": "Name an end mill of {largest} or less that is long enough, or use larger letters.",
    "cut.floor_s_depth_v_bit": "At the floor's depth the V-bit is {widest} wide, less than the end mill of "
    "{diameter}: wood would stay in the corners between the two.",
    "cut.use_end_mill_less_larger": "Use an end mill of {widest} or less, a larger depth, or a blunter V-bit.",
    "cut.end_mill_cuts_deep_deepest": "The {diameter} end mill cuts {cutting_length} deep, and the deepest recess "
    "has {deepest}.",
    "cut.name_longer_cutter_use_smaller": "Name a longer cutter, or use a smaller depth.",
    "cut.detail_smaller_than_tolerance_may": "A detail of {names:plain} is smaller than the tolerance of "
    "{tolerance} and may be lost. Use larger letters, or a smaller tolerance.",
    "cut.stroke_narrower_than_flat_bit": "A stroke of {names:plain} is narrower than the {tip} flat of the bit's "
    "tip and stays uncut there, at most {most} % of a letter. Use larger letters, or a bit with a finer tip.",
    "cut.leaves_top_face_clean_only": "The {tool} leaves the top face clean only where the first pass is deeper "
    "than the part of its edges that pulls up, often a diameter; the passes here are {stepdown}.",
    "cut.end_mill_cannot_bore": "A {diameter} end mill cannot make {name} of {hole}; a hole is bored on a helix, "
    "which needs {room} of room. The largest that would do has {widest}.",
    "cut.end_mill_cannot_mill": "A {diameter} end mill cannot make {name} of {hole}. The largest that would do has "
    "{widest}.",
    "cut.would_clear_more": "A {diameter} cutter would clear {area} more than the {best} one, and the floors would "
    "take {minutes} min longer.",
    "cut.would_clear_less": "A {diameter} cutter would clear {area} less than the {best} one, and the floors would "
    "take {minutes} min longer.",
    "cut.another_would_clear_in": "A {diameter} end mill (end-mill {typed}) would clear the letters' flat floors "
    "in about {best} min instead of {minutes}.",
    "cut.no_thin_end_mill_long_enough": "No end mill in the shop that has room in the letters is long enough for "
    "{deepest} and at most {thickest} thick, as sharp corners want.",
    "cut.no_end_mill_long_enough": "No end mill in the shop that has room in the letters is long enough for {deepest}.",
    "cut.end_mill_has_no_room": "A {diameter} end mill has no room in {name}: the largest cutter that would do has "
    "{largest}.",
    "cut.no_end_mill_has_room": "No end mill in the shop has room in {name}: the largest cutter that would do has "
    "{largest}.",
    "does.engraves_letters": "engraves the letters",
    "does.engraves_lines": "engraves the lines",
    "does.engraves_letters_and_lines": "engraves the letters and the lines",
    "does.clears_floors": "clears {count:the floor|the floors}, {depth} deep",
    "does.cuts_through": "cuts the letters right through",
    "does.follows_lines": "follows the letters' lines, {depth} deep",
    "does.follows_lines_from_to": "follows the letters' lines, {least:bare} to {most} deep",
    "does.sharpens_corners": "sharpens the corners",
    "does.bevels_the_edge": "bevels the edge by {width}",
    "does.makes_holes": "makes {count} {count:hole|holes} of {sizes}",
    "does.mills_slots": "mills {count} {count:slot|slots} of {sizes}",
    "does.sinks_heads": "sinks {count} screw {count:head|heads} of {sizes}",
    "does.opens_keyholes": "opens {count} {count:keyhole|keyholes}, entry {entry}, slot {slot}, {depth} deep",
    "does.undercuts_keyholes": "undercuts {count} {count:keyhole|keyholes} to {width}",
    "does.cuts_sign_out": "cuts the sign out",
    "does.cuts_sign_out_with_tabs": "cuts the sign out, leaving {count} {count:tab|tabs}",
    "does.cuts_to_skin": "cuts the sign out down to a skin of {skin}",
    "does.cuts_signs_out": "cuts {count} {count:sign|signs} out",
    "does.cuts_signs_out_with_tabs": "cuts {count} {count:sign|signs} out, leaving {tabs} {tabs:tab|tabs} on each",
    "does.cuts_signs_out_with_some_tabs": "cuts {count} {count:sign|signs} out, leaving {least} to {most} tabs on each",
}
