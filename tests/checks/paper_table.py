"""The plate's setup sheet spoilt: what it tells a person to do, against what the programs and the board are."""

from __future__ import annotations

from msgspec.structs import replace

from signgen.checks.fixing import screws_at
from tests.checks.plate import END_MILL, TOLD, V_BIT, Plate

GOOD = Plate()

PAPER_TABLE: tuple[tuple[str, Plate, str, tuple[int, ...]], ...] = (
    *(
        (what, plate, "C160", ())
        for what, plate in (
            ("Z set on a groove that is cut by then", GOOD.step(1, touch_x_mm=12.5, touch_y_mm=17.5)),
            ("Z set at the rim of a groove", GOOD.step(1, touch_x_mm=18.5, touch_y_mm=17.5)),
            ("Z set at the board's rim", GOOD.step(0, touch_x_mm=-11.5)),
            ("Z set on the board for the spoilboard", GOOD.step(0, touch_on="spoilboard", touch_plus_thickness=False)),
            ("Z set on the face as on the spoilboard", GOOD.step(0, touch_plus_thickness=False)),
            ("Z set on the spoilboard as on the face", GOOD.step(0, touch_on="spoilboard", touch_x_mm=90)),
            ("the paper taken for twice as thick", GOOD.step(1, touch_types_mm=0.2)),
            ("the paper forgotten", GOOD.step(1, touch_types_mm=0.0)),
            (
                "the nut on the board while the spoilboard is touched",
                replace(GOOD, tools=(V_BIT, replace(END_MILL, stickout_mm=9.5))).step(
                    1, touch_on="spoilboard", touch_x_mm=80, touch_plus_thickness=False
                ),
            ),
            ("a screw where Z is set", replace(GOOD, told=TOLD, fixings=screws_at([(30, 22)], GOOD.zero))),
            ("no place to set Z", GOOD.step(1, sets_z=())),
        )
    ),
    *(
        (what, plate, "C161", ())
        for what, plate in (
            ("sheet: Z set by a figure 0.02 mm off", GOOD.step(1, touch_types_mm=0.12)),
            ("sheet: a thicker paper than the one that is typed", GOOD.step(0, touch_paper_mm=0.2)),
            ("sheet: Z not set again after the change", GOOD.step(1, sets_z=())),
            ("sheet: Z never set", GOOD.step(0, sets_z=())),
            ("sheet: X and Y never set", GOOD.step(0, sets_xy=False)),
            ("sheet: the datum half a millimetre aside", GOOD.telling(datum=replace(TOLD.datum, x_mm=12.5))),
            ("sheet: the datum from the other corner", GOOD.telling(datum=replace(TOLD.datum, corner="front right"))),
            ("sheet: the files in another order", GOOD.telling(steps=TOLD.steps[::-1])),
            ("sheet: a file twice", GOOD.telling(steps=(*TOLD.steps, TOLD.steps[1]))),
            ("sheet: a file left out", GOOD.telling(steps=TOLD.steps[1:])),
            ("sheet: a file that there is not", GOOD.step(1, file="3-end-mill-6.nc")),
            ("sheet: a start taken for a pause", GOOD.step(1, begins="pause")),
            (
                "sheet: the cutters swapped",
                GOOD.telling(
                    steps=(
                        replace(TOLD.steps[0], cutter=TOLD.steps[1].cutter),
                        replace(TOLD.steps[1], cutter=TOLD.steps[0].cutter),
                    )
                ),
            ),
            ("sheet: a cutter that there is not", GOOD.step(1, cutter_name="end-mill-8")),
            ("sheet: another diameter", GOOD.step(1, cutter_diameter_mm=6.35)),
            ("sheet: another angle", GOOD.step(0, cutter_angle_deg=60.0)),
            ("sheet: another tip", GOOD.step(0, cutter_tip_mm=0.2)),
            ("sheet: another collet", GOOD.step(1, cutter_collet="8-7")),
            ("sheet: too little grip", GOOD.step(1, cutter_grip_mm=12.0)),
            ("sheet: too short a stick-out", GOOD.step(1, cutter_stick_out_mm=9.5)),
            ("sheet: another spindle speed", GOOD.step(1, spindle_rpm=12000)),
            ("sheet: a lower feed", GOOD.step(1, feed_mm_per_min=600, fastest_mm_per_min=700)),
            ("sheet: a lower plunge", GOOD.step(1, plunge_mm_per_min=200)),
            ("sheet: another deepest Z", GOOD.step(1, lowest_z_mm=-0.2)),
            ("sheet: shallower passes", GOOD.step(1, pass_mm=1.5)),
            ("sheet: more passes", GOOD.step(1, passes=8)),
            ("sheet: the board's sides swapped", GOOD.telling(board=replace(TOLD.board, width_mm=64, height_mm=84))),
            ("sheet: another thickness", GOOD.telling(board=replace(TOLD.board, thickness_mm=9.2))),
            ("sheet: the better face down", GOOD.telling(board=replace(TOLD.board, face_up=False))),
            ("sheet: less scratch in the spoilboard", GOOD.telling(into_spoilboard_mm=0.1)),
            ("sheet: metal nearer below", GOOD.telling(metal_free_mm=0.5)),
            ("sheet: a screw in the way of the edge", GOOD.holding(screws_mm=((-4.0, 20.0),))),
            ("sheet: a screw beside the board", GOOD.holding(screws_mm=((-14.0, 20.0),))),
            ("sheet: heads too wide", GOOD.holding(screws_mm=((66.5, 46.5),), head_mm=16)),
            ("sheet: heads that stand too high", GOOD.holding(screws_mm=((68.0, 48.0),), stands_mm=26)),
            ("sheet: screws too short", GOOD.holding(screws_mm=((68.0, 48.0),), screw_mm=12)),
            (
                "sheet: clamps too near",
                GOOD.holding(clamp_line_mm=((-8.0, -8.0), (68.0, -8.0), (68.0, 48.0), (-8.0, 48.0))),
            ),
        )
    ),
)
