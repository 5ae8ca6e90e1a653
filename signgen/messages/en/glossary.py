"""English: words of the trade, and what they mean. The first of the words is its name."""

from __future__ import annotations

WORDS = {
    "term.datum.words": "datum, origin, zero, XY zero, work zero",
    "term.datum": "The point from which the programs measure, X0 Y0. Unless you ask otherwise it is the bottom-left "
    "corner of the finished sign, so the outside cut runs a little to the left of it and below it, and the board "
    "must reach past it on all sides. Set it once; it stays where it is when you change the cutter.",
    "term.z-zero.words": "z zero, z-zero, Z0",
    "term.z-zero": "The height that the programs call Z0. By default it is the bottom of the board, which is the "
    "top of the spoilboard: every cutter is set to the same surface and cuts through by the same little bit. Set it "
    "anew after every change of cutter, for no two cutters stick out alike.",
    "term.spoilboard.words": "spoilboard, sacrificial board, wasteboard",
    "term.spoilboard": "A flat board under your work that through cuts may run into. It must be flat and the work "
    "must lie on it without gaps, since Z0 is measured there.",
    "term.breakthrough.words": "breakthrough",
    "term.breakthrough": "How far a through cut goes below the bottom of the board, so that no skin is left. It "
    "comes off the spoilboard: 0.3 mm is usual.",
    "term.stock.words": "stock, board, blank",
    "term.stock": "The board as it lies on the machine, before anything is cut. The sheet gives the least size that "
    "will do.",
    "term.thickness.words": "thickness, measured thickness",
    "term.thickness": "Measure the board with a caliper at several places, and use the figure you find: boards are "
    "seldom as thick as their name. With Z0 at the bottom, a board thicker than you said is engraved deeper and its "
    "letters get wider: of a 90 degree bit, 0.1 mm of thickness makes every groove 0.2 mm wider.",
    "term.tab.words": "tab, holding tab, bridge",
    "term.tab": "A short bridge left at the bottom of the outside cut that keeps the sign in the board until the "
    "end. Cut the tabs with a knife or a saw when the spindle stands still, and sand what is left. Without tabs, "
    "tape or screws must hold the piece, or the cutter will catch it when it comes free.",
    "term.keyhole.words": "keyhole, keyhole slot",
    "term.keyhole": "A slot in a sign's back that is wider inside than at the surface, with a round entry at its "
    "lower end: the sign is pushed over a screw's head there and let down on it. It is cut with a keyhole cutter, a "
    "head on a thin neck, which must come out at the entry alone.",
    "term.climb.words": "climb, climb milling, down milling",
    "term.climb": "Cutting so that the edges come down into the wood from the uncut side: with the usual spindle "
    "the wood that stays lies to the right of the way. It leaves a cleaner edge on a machine without play.",
    "term.conventional-milling.words": "conventional milling, up milling",
    "term.conventional-milling": "Cutting so that the edges come up out of the cut: the wood that stays lies to the "
    "left of the way. It is kinder to machines with play, and lifts fibres more.",
    "term.stepdown.words": "stepdown, pass depth, depth of cut",
    "term.stepdown": "How much deeper each pass goes than the one before. About half the cutter's diameter is usual "
    "in wood; too much bends or breaks the cutter, and stalls the spindle.",
    "term.stepover.words": "stepover",
    "term.stepover": "How far neighbouring rings lie apart where an area is cleared. Below half the diameter "
    "nothing stays standing between them.",
    "term.chip-load.words": "chip load, feed per tooth",
    "term.chip-load": "How much each cutting edge takes at every turn: feed divided by speed times number of edges. "
    "Too little only rubs, gets hot and burns the wood; too much breaks the cutter. When the edge burns, raise the "
    "feed or lower the speed; when it chatters or the spindle's pitch drops, lower the feed.",
    "term.feed.words": "feed, feed rate",
    "term.feed": "How fast the cutter goes through the work, in millimetres a minute. Most controls let you change "
    "it while the program runs.",
    "term.plunge.words": "plunge, plunge feed",
    "term.plunge": "Going straight down. It is the hardest thing for a cutter, so it is slow, and a cutter without "
    "edges across its tip cannot do it at all.",
    "term.ramp.words": "ramp, ramp entry",
    "term.ramp": "Going down along the way of the cut, at a slope of a few degrees, instead of straight down. It "
    "spares the cutter and leaves no burnt spot.",
    "term.helix.words": "helix, helical bore",
    "term.helix": "Going down in a spiral, to bore a hole that is wider than the cutter. It ends with a full circle "
    "at the bottom, so that the hole is round all the way.",
    "term.peck.words": "peck, peck drilling",
    "term.peck": "Drilling in steps and coming up between them, so that the chips leave the hole and the drill "
    "stays cool.",
    "term.rapid.words": "rapid, G0",
    "term.rapid": "A move as fast as the machine can, meant for the air. One that touches wood breaks the cutter: "
    "every program is checked for that before it is written.",
    "term.clearance.words": "clearance, safe height, retract height",
    "term.clearance": "How high above the board the cutter travels from cut to cut. It must be higher than every "
    "clamp and screw that lies on the way.",
    "term.v-bit.words": "V-bit, v bit, vee bit, engraving bit",
    "term.v-bit": "A cutter with a pointed cone. It cuts a groove whose width follows from its depth: a 90 degree "
    "bit is half as deep as the groove is wide, a 60 degree bit 0.87 times. That is how letters get sharp corners: "
    "the bit rises where they get narrow. The angle is the full angle between both sides.",
    "term.tip-flat.words": "tip flat, v-bit-tip, flat tip",
    "term.tip-flat": "The small flat that most V-bits have at their very point. It is the narrowest line that the "
    "bit can cut; measure it with a loupe, and say so with v-bit-tip.",
    "term.end-mill.words": "end mill, router bit, straight bit",
    "term.end-mill": "A cylindrical cutter with a flat end, for outside cuts, holes and flat floors. Its radius is "
    "what stays in every inside corner.",
    "term.ball-nose.words": "ball-nose, ball nose, ball end",
    "term.ball-nose": "A cutter with a round end, for hollows and grooves with a round bottom.",
    "term.flute.words": "flute, cutting edge, tooth",
    "term.flute": "A cutting edge with the channel before it that carries the chip away. Two are usual in wood, one "
    "in plastics that melt.",
    "term.shank.words": "shank",
    "term.shank": "The round part of a cutter that the collet holds. Its diameter decides which collet you need.",
    "term.collet.words": "collet",
    "term.collet": "The slotted sleeve that holds the cutter in the spindle. It closes by about a millimetre and "
    "never opens further than its size: an 8 mm shank goes into an 8-7, a 1/8 inch shank into a 4-3. Two thirds of "
    "its length or more must hold the shank; keep it clean, and snap it into the nut before both go on to the "
    "spindle.",
    "term.stick-out.words": "stick-out, stickout, overhang",
    "term.stick-out": "How far the cutter stands out of the collet. Twice as far bends eight times as much: no "
    "longer than the cut needs.",
    "term.runout.words": "runout",
    "term.runout": "How far the cutter's tip runs off the axis. It comes from dirt in the collet or a bent shank, "
    "makes grooves wider and wears one edge first.",
    "term.spindle.words": "spindle, router motor",
    "term.spindle": "The motor that turns the cutter. It must be at speed before the cutter meets the wood: the "
    "programs wait.",
    "term.cap-height.words": "cap height, cap-height",
    "term.cap-height": "The height of a capital H, measured on the face itself. Small letters and figures follow "
    "from it.",
    "term.digit-height.words": "digit height, digit-height, figure height",
    "term.digit-height": "The height of the figure 1, measured on the face itself. In many faces it is that of the "
    "capitals, in script faces often less: give it instead of cap-height when a number has to have a certain size.",
    "term.baseline.words": "baseline",
    "term.baseline": "The line that letters stand on; g and y hang below it.",
    "term.variable-font.words": "variable font, font axes, font-axes",
    "term.variable-font": "A font that can be set between two ends of a property: wght is its weight, wdth its "
    "width. It comes at its own settings unless font-axes says otherwise, as in wght=600,wdth=90.",
    "term.fallback.words": "fallback, font-fallback",
    "term.fallback": "Setting letters that a face lacks in another that has them, their capitals as high. Asked "
    "for, not done by itself, since two faces in one line show.",
    "term.fit.words": "fit, as large as fits",
    "term.fit": "Lines without a height of their own grow until they meet the margins, a hole or a line on a "
    "circle: all to the same height (together), or each to the same width (each).",
    "term.arc.words": "arc, text on a circle, ring",
    "term.arc": "A circle that carries the feet of the letters. Each letter is turned as a whole, none is bent. "
    "Letters on its top (above) and in its bottom (below) read from the left; a ring goes all the way round. Give a "
    "smaller radius than the sign's by the height of the letters and the margin.",
    "term.legibility.words": "legibility, reading distance",
    "term.legibility": "How far letters read goes by their height; how well, by the width of their strokes, their "
    "shape and the room between them. The report sets these figures beside published rules. A rule that you have to "
    "keep is named by the law where the sign will hang, or by who watches over it.",
    "term.kerning.words": "kerning",
    "term.kerning": "Room taken away between letters that would look too far apart, such as A and V.",
    "term.groove.words": "groove, V-groove, carved letter",
    "term.groove": "Letters cut by a V-bit along their middle, as deep as they are wide, up to the greatest depth; "
    "wider ones get a flat floor there.",
    "term.recess.words": "recess, pocket, sunk letter",
    "term.recess": "A letter or a panel with a flat floor and upright walls, cut by an end mill. Its inner corners "
    "stay as round as the cutter unless the V-bit cleans them (sharp-corners).",
    "term.raised-letters.words": "raised letters, standing letters",
    "term.raised-letters": "Letters that stay at the height of the face while the ground round them is sunk inside "
    "a panel.",
    "term.stroke.words": "stroke, single line",
    "term.stroke": "A letter of single lines that the V-bit follows at one depth, so that all are alike in width. "
    "Faces made for it are the hershey ones; of outline faces with strokes of one width the middle lines are taken.",
    "term.stencil-bridge.words": "stencil bridge, bridges",
    "term.stencil-bridge": "A bar of wood across a stroke of a letter that is cut right through. It holds what "
    "would fall out, as the inside of an O. Stencil faces have their own.",
    "term.flat-floor.words": "flat floor",
    "term.flat-floor": "The even bottom of a letter that is too wide for a groove of the greatest depth. The end "
    "mill clears it, and the V-bit does the walls and what the end mill cannot reach.",
    "term.medial-axis.words": "medial axis, middle line",
    "term.medial-axis": "The line of all points that are equally far from both sides of a letter. The V-bit's tip "
    "runs along it, and the distance to the sides says how deep.",
    "term.margin.words": "margin",
    "term.margin": "Room kept between the letters and the edge of the sign.",
    "term.inset.words": "inset",
    "term.inset": "The distance from the edge of the sign to the middle of a hole. Twice the hole's diameter keeps "
    "the wood from splitting.",
    "term.clearance-hole.words": "clearance hole, through hole",
    "term.clearance-hole": "A hole that a screw slips through without biting. For an M5 screw it is 5.5 mm wide "
    "(ISO 273, medium), for a No. 8 wood screw 11/64 inch.",
    "term.countersink.words": "countersink, countersunk hole, sunk head",
    "term.countersink": "A cone at the top of a hole, so that the head of a flat-headed screw lies flush with the "
    "sign. The V-bit cuts it before the hole is bored, as wide as --screw or --head-diameter says. Try a screw in "
    "the first hole; if its head stands out, the V-bit's angle or its zero is not what it should be.",
    "term.slot.words": "slot, oblong hole, adjustment slot",
    "term.slot": "A hole that is longer than wide (--slot-length), so that the sign can be shifted before its "
    "screws are tightened. Put a washer under the screw's head.",
    "term.border.words": "border, outline, shape",
    "term.border": "The outline of the sign: one of a list (signgen list borders), or the closed path of an SVG "
    "file. An inside corner comes out as round as the cutter that goes along it; the sheet says so when it shows.",
    "term.eye.words": "eye",
    "term.eye": "The hole in the end of a tag that it hangs by.",
    "term.ogee.words": "ogee",
    "term.ogee": "A double curve, first outward and then inward, as on the corners of some plaques.",
    "term.kerf.words": "kerf",
    "term.kerf": "The width of a cut. Of an end mill's outside cut it is the cutter's diameter.",
    "term.gouge.words": "gouge",
    "term.gouge": "A cut into what should have stayed. Every program is checked for it before it is written.",
    "term.tear-out.words": "tear-out, tearout, breakout",
    "term.tear-out": "Fibres that come off with the chip, mostly across the grain and at the bottom. A sharp "
    "cutter, a fresh spoilboard and tape on the face help.",
    "term.grain.words": "grain",
    "term.grain": "The direction of the fibres. Lay it along the longer side of the sign: small letters break out "
    "less, and the sign bends less.",
    "term.dialect.words": "dialect, post-processor",
    "term.dialect": "How one kind of control wants its programs written. The plain one keeps to words that all of "
    "them know.",
    "term.dust-extraction.words": "dust extraction, dust",
    "term.dust-extraction": "Wood dust harms the lungs, some of it causes cancer, and it burns. Extract it at the "
    "cutter, wear a mask, and keep to the limits that hold where you are.",
    "term.pass.words": "pass, passes, level",
    "term.pass": "One trip of the cutter along its path at one depth. A deep cut is made in several passes, each by "
    "the stepdown deeper than the one before: depth divided by stepdown, rounded up, is how many.",
    "term.tool-change.words": "tool change, change of cutter",
    "term.tool-change": "Taking one cutter out and the next in, with the spindle stopped and the plug out or the "
    "switch locked. A program here is for one cutter, or stops for the next. "
    "After the change set Z again, for no two cutters stick "
    "out alike; leave X and Y as they are.",
    "term.offset.words": "offset, work offset, cutter offset",
    "term.offset": "A distance that is added. The work offset (G54) is where the program's zero lies on the "
    "machine. The cutter's offset is its radius, by which its middle keeps beside the line that is to be cut; here "
    "it is in the program already, so G40 is in force.",
    "term.dry-run.words": "dry run, air cut, run in the air",
    "term.dry-run": "Running the program with Z set high above the board, or with the spindle off and no cutter in, "
    "to see where it goes before it cuts. Keep a hand at the stop.",
    "term.coordinates.words": "coordinates, coordinate, place",
    "term.coordinates": "Three numbers that name a place: X along the width, Y along the height, Z up. They count "
    "from the zeros, so a place to the left of X0 or below Z0 has a minus sign.",
}
