"""English: lists of signs, and what surrounds them."""

from __future__ import annotations

WORDS = {
    "batch.is_there": "{path} holds a batch already.",
    "batch.resume_or_fresh": "--resume goes on with it and makes only what is new or changed; --fresh makes all rows "
    "anew; or give another --out.",
    "batch.go_on_with_it": "Go on with it and make only what is new or changed?",
    "batch.resume_and_fresh": "--resume goes on with a batch, and --fresh makes all its rows anew.",
    "batch.leave_one_out": "Leave one of them out.",
    "batch.ledger_of_another_version": "{path} was written by another version of signgen, which told less of rows.",
    "batch.begin_afresh": "Give --fresh to make all rows anew, or another --out.",
    "batch.other_columns": "The batch in that folder has the columns {columns:plain}, and {path} has others.",
    "batch.keep_the_columns": "Mend cells and leave the columns as they are, or give another --out.",
    "batch.alike_differs": "Other rows of the batch in {path} were asked for otherwise: {names}.",
    "batch.ask_as_then": "Give the same sign file and options as then; or the whole list with --resume, to make all "
    "rows with the new ones; or another --out.",
    "batch.has_no_row": "The batch in {path} has no row {row}.",
    "batch.no_such_row": "The list has no row {row}.",
    "batch.how_rows_count": "Rows count as in a spreadsheet: the header is row 1.",
    "batch.no_row_numbers": "'{text}' is no number of a row.",
    "batch.write_row_numbers": "Write numbers from 2 on and ranges of them, as in 19,44-46; the header is row 1.",
    "batch.no_old_number": "'{text}' is no number of a row.",
    "batch.old_number_twice": "Row {row} stands on line {line} too.",
    "batch.leave_the_numbers": "Leave the column row as signgen wrote it: by it rows go back to their places.",
    "batch.report_changed": "{path} was changed after signgen wrote it, and would be lost.",
    "batch.use_or_move_it": "Run the batch with it as the list, if rows were mended in it; or move it away.",
    "batch.offcut_policy": "Each sign pays for the board that it needs with the room for its cut and its screws, for "
    "its minutes and for the wear of the cutters.",
    "batch.offcut_policy_sheets": "Whole sheets are charged, offcuts too. Signs that are cut in one setting-up bear "
    "them by their area, so that equal signs cost the same wherever they lie.",
    "batch.verdict_verified": "verified",
    "batch.verdict_failed": "failed: {where}: {what}",
    "batch.kept": "{count} {count:row|rows} as before, not made again",
    "batch.kept_moved": "{count} {count:row|rows} as before, not made again; {moved} of them under a new number",
    "batch.gone": "Row {row} ({words}) is not in the list any more; its sign was taken away",
    "batch.gone_more": "and {count} more rows that are not in the list any more",
    "batch.twins": "Rows {first} and {row} ask for the same sign; a column copies says how many of one",
    "batch.twins_more": "and {count} more rows that ask for the same as another",
}
