"""English: shop."""

from __future__ import annotations

WORDS = {
    "shop.shank_does_not_go_into": "Its shank of {shank} does not go into collets of size {series}.",
    "shop.they_take": "They take {least:bare} to {greatest}.",
    "shop.not_less_than_diameter": "{tip} is not less than the diameter of {diameter}.",
    "shop.give_flat_very_tip": "Give the flat at the very tip.",
    "shop.less_than_cutting_length": "{stickout} is less than the cutting length of {length}.",
    "shop.measure_from_collet_tip": "Measure from the collet to the tip.",
    "shop.no_less_than_head_s": "{neck} is no less than the head's {diameter}.",
    "shop.give_neck_above_head": "Give the neck above the head.",
    "shop.no_less_than_cutting_length": "{head} is no less than the cutting length of {length}.",
    "shop.give_head_alone_cutting_length": "Give the head alone; the cutting length goes from its end up to the shank.",
    "shop.more_than": "{slow} is more than {fast}.",
    "shop.give_slowest_speed_first": "Give the slowest speed first.",
    "shop.there_no_collet_size_iso": "There is no collet size {collet} in ISO 15488.",
    "shop.choose_from": "Choose from: {known:plain}.",
    "shop.neither_true_nor_false": "It is neither true nor false.",
    "shop.not_table": "It is not a table.",
    "shop.there_no_such_table": "There is no such table.",
    "shop.write_name": "Write [{kind}.NAME].",
    "shop.use_z_0_9_single": "Use a-z, 0-9 and single hyphens; it becomes part of a file's name.",
    "shop.not_name": "'{name}' is not a name.",
    "shop.write_prices": "Write [prices].",
    "shop.there_no_such_key": "There is no such key.",
    "shop.write_prices_name": "Write [prices.{kind}.NAME].",
    "shop.not_table_tables": "It is not a table of tables.",
    "shop.missing": "It is missing.",
    "shop.write_value_0_5_source": 'Write {{ value = 0.5, source = "common practice" }}, or name where the figure '
    "comes from.",
    "shop.number_needs_source_beside": "A number needs its source beside it.",
    "shop.not_list_numbers": "{text} is not a list of {n} numbers.",
    "shop.write_numbers": "Write {n} numbers in [ ].",
    "shop.not_colour": "'{text}' is not a colour.",
    "shop.write_rrggbb_dcbf94": "Write #rrggbb, as in #dcbf94.",
    "shop.not_list": "{text} is not a list.",
    "shop.write_sentences_none": "Write sentences in [ ], or [] for none.",
    "shop.use_larger_board_turn_quarter": "Use a larger board, turn it by a quarter, or make a smaller sign.",
    "shop.give_it": "Give {key}.",
    "shop.board_is_too_small_wide": "The board is {board} wide; the sign and its outside cut need {needed}, and "
    "{wanted} with room for screws.",
    "shop.board_is_too_small_high": "The board is {board} high; the sign and its outside cut need {needed}, and "
    "{wanted} with room for screws.",
    "shop.needs_more_travel": "{size} and the {cutter} cut around it need {needed} of travel; the machine has "
    "{travel}.",
    "shop.make_it_smaller": "Make the sign at most {most}, or give another machine.",
    "shop.make_it_smaller_or_turn_it": "Make the sign at most {most}, or give another machine. Or turn the sign by "
    "a quarter.",
    "shop.at_a_pass_in": "at {depth} a pass in {material}",
    "shop.spindle_is_weak": "The {tool} takes about {watts} W {slot}, and the spindle has {available} W at {rpm:,} "
    "rpm: begin with half the feed.",
    "shop.cutter_bends": "The {tool} bends by about {bend} under {newtons} N {slot}, {stickout} out of the collet: "
    "take a stouter or a shorter one where size matters, or begin with half the feed.",
    "shop.each_edge_takes": "Each edge of the {tool} takes {chip} in {material}",
    "shop.chip_rubs": "{takes}, and below {least} it rubs and gets hot: a cutter with fewer edges takes more.",
    "shop.chip_breaks_out": "{takes}, and above {most} it breaks out: begin with half the feed.",
}
