"""English. Keys are `group.name`; `{name}` stands for a value."""

from __future__ import annotations

COMMA = False

WORDS = {
    "and": "and",
    "programs.one": "{count} program",
    "programs.many": "{count} programs",
    "range": "{least} to {most}",
    "span.s": "{s} s",
    "span.min": "{min} min",
    "span.min_s": "{min} min {s} s",
    "span.h": "{h} h",
    "span.h_min": "{h} h {min} min",
    # cutters and holes
    "tool.v-bit": "{angle} degree V-bit, {size} mm",
    "tool.flat": ", {tip} mm flat tip",
    "tool.end-mill": "{size} mm {cut}end mill",
    "tool.ball-nose": "{size} mm {cut}ball nose",
    "tool.drill": "{size} mm {cut}drill",
    "tool.keyhole": "{size} mm keyhole cutter",
    "tool.cut.down-cut": "down-cut ",
    "tool.cut.compression": "compression ",
    "tool.cut.straight": "straight ",
    "noun.hole.one": "hole",
    "noun.hole.many": "holes",
    "noun.slot.one": "slot",
    "noun.slot.many": "slots",
    "noun.sunk": " sunk to {size}",
    # verdict
    "verdict.passed": "all {count} checks passed",
    "verdict.warned": "{passed} of {count} checks passed, {warned} with a warning",
    "verdict.failed": "do not run: {failed} of {count} checks failed",
    "verdict.not_run": ", and {count} could not be made",
    "verdict.left_out": "; {count} need a drawing and were left out",
    "verdict.read_on": ": read on before you start",
    "verdict.proved": "Read back, simulated and compared with the drawing.",
    "verdict.stop": "Do not run these programs.",
    # head
    "head.title": "Setup sheet: {sign}",
    "head.about": "{size}, {thickness} {material}",
    "head.time": "about {span} of cutting",
    "head.read_first": "Read first:",
    "head.bring": "Bring",
    "head.bring.board": "the board",
    "head.bring.cutter": "{cutter} ({shank} shank)",
    "head.bring.collet.one": "collet {names}",
    "head.bring.collet.many": "collets {names}",
    "head.bring.spanners": "both spanners",
    "head.bring.screws": "{count} wood screws",
    "head.bring.clamps": "clamps or double-sided tape",
    "head.bring.measure": "calliper, pencil and square",
    "head.bring.slip": "a slip of paper",
    "head.bring.vacuum": "vacuum",
    "head.bring.protection": "eye and ear protection and a dust mask",
    "head.bring.knife": "knife and file",
    "head.picture": "The finished sign, drawn from the simulated cut.",
    "head.alt": "The finished sign: {sign}",
    "head.holes": "{holes}, middles from the lower left corner.",
    "head.places": "Holes at {places}{more}.",
    "head.more_places": " and more in report.json",
    "finish.stroke": "Letters of single lines, {width} wide and {depth} deep.",
    "finish.recess": "Letters sunk {depth} deep, flat.",
    "finish.raised": "Letters stand in a ground that is sunk {depth}.",
    "finish.panel": "Panel sunk {depth}.",
    "finish.through": "Letters cut right through.",
    "finish.bridges.one": "A bridge {width} wide holds every inside.",
    "finish.bridges.many": "{count} bridges {width} wide hold every inside.",
    "finish.frame": "The frame is {count} lines {width} wide with {gap} between them.",
    "finish.ornament": "A ‘{character}’ of {size} in every corner.",
    "finish.ornament.stands": "A ‘{character}’ of {size} stands in every corner.",
    "finish.rim": "A rim {width} wide stands in the panel all round.",
    "finish.chamfer": "Edge bevelled {width} wide and {depth} deep, {angle}° from the upright.",
    "run.right.bevel": "the edge is bevelled all round, and the groove outside it is waste",
    "head.capitals": "Capitals {height} high.",
    "plan.title": "The finished sign with its measures",
    "plan.about": "{width} by {height} mm, {count} holes",
    # 1 the board
    "board.heading": "The board",
    "board.size": "Size",
    "board.least": "At least {size}, {thickness} thick, square and flat. The sign lies {left} from its left edge and "
    "{front} from its front edge, with room for {room}. A larger board may reach further right and back.",
    "board.room.cut": "the cut around it",
    "board.room.screws": "the cut around it and screws",
    "board.yours": "Your board of {size} holds the sign: {right} are left to the right of it and {behind} behind it. ",
    "board.yours.screws": "With {size} it would have room for screws all round.",
    "board.yours.least": "The least that would do is {size}.",
    "board.offcut": " Left over afterwards: a piece of {size} {where}.",
    "board.offcut.right": "on the right",
    "board.offcut.behind": "at the back",
    "board.way": "Which way round",
    "board.lay": "Lay it with its side of {width} from left to right (X) and its side of {height} from front to back "
    "(Y), the better face up. The letters then stand upright for you at the machine's front.",
    "board.grain": " The grain of the face runs from left to right, as the arrows show.",
    "board.thickness": "Thickness",
    "board.made_for": "Made for {thickness}. Measure all four corners: ",
    "board.corner.front_left": "front left",
    "board.corner.front_right": "front right",
    "board.corner.back_left": "back left",
    "board.corner.back_right": "back right",
    "board.grooves": "Grooves",
    "board.deepest": "The deepest goes {deep} down and leaves {left} of wood; strokes are {strokes}\u00a0mm wide. ",
    "board.trial": "Before the cut, try the bit on scrap of the same board: a groove {deep} deep must be {wide} wide.",
    "board.wider": " and {wider} wider (2 × {slight} × tan {half}° with a bit of {angle}°)",
    "board.below": "Z zero lies under the board: where it is {slight} thicker, grooves get {slight} deeper{wider}; "
    "where it is thinner, shallower and narrower. More than {fair} off: make the programs again with --thickness.",
    "board.below.floors": "Z zero lies under the board: where it is {slight} thicker, floors get {slight} "
    "deeper{wider}; where it is thinner, shallower. More than {fair} off: make the programs again with --thickness.",
    "board.on_top": "Z zero lies on the board's top, so grooves come out right. But cuts end {deep} below a board of "
    "{thickness}: one that is thicker by more than that is not cut through, and tabs get thicker or thinner by the "
    "difference. Make the programs again with --thickness then.",
    # 2 zero
    "zero.heading": "Where zero is",
    "zero.across": "X and Y",
    "zero.height": "Z",
    "zero.proof": "Prove it",
    "zero.sign": "X0 Y0 is the lower left corner of the finished sign. On the board draw a line {x} from the left edge "
    "and one {y} from the front edge. Bring {point} over their crossing and set X and Y to 0.",
    "zero.stock": "X0 Y0 is the front left corner of the board. Bring {point} over that corner and set X and Y to 0. "
    "The sign begins {x} to the right and {y} further back.",
    "zero.slip": "until it just holds a slip of paper, and set Z to {slip}",
    "zero.bottom": "Z0 is the top of the spoilboard, that is the underside of your board. ",
    "zero.bottom.spoilboard": "Lower the cutter onto the bare spoilboard beside the board, as at {place}, where it is "
    "flat and uncut and no clamp stands, {slip}. ",
    "zero.bottom.face": "Lower the cutter onto the face at {place} (Z on the plan), which no program before has cut, "
    "until it just holds a slip of paper, and set Z to the board's thickness as measured (about {thickness}) plus the "
    "paper's {slip}.",
    "zero.bottom.or_face": "Or lower it onto the face at {place} (Z on the plan), which no program before has cut, and "
    "set Z to the board's thickness as measured (about {thickness}) plus the paper's {slip}.",
    "zero.top": "Z0 is the top of the board. ",
    "zero.top.face": "Lower the cutter onto the face at {place} (Z on the plan), {slip}. No other place will do after "
    "the first program: it may have been cut.",
    "zero.top.spoilboard": "No face stands that is wide enough: lower the cutter onto the bare spoilboard beside the "
    "board, as at {place}, {slip} (the paper less the board's thickness).",
    "zero.nowhere": "It cannot be set on this board: use a larger one.",
    "zero.way.face": "on the face at {place}",
    "zero.way.spoilboard": "on the spoilboard at {place}",
    "zero.or": " or ",
    "zero.outline": "Run {file} with the first cutter in: the spindle stands still, the cutter goes {over} over the "
    "board round all that will be cut, and waits at each corner until you go on. There must be board under it each "
    "time. If not, turn the board a little and set X and Y again.",
    "zero.far": "Spindle off, cutter raised: move to X{x} Y{y}. It must stand over the sign's upper right corner with "
    "board on every side. If not, turn the board a little and set X and Y again.",
    "zero.point.v-bit": "the point of the V-bit",
    "zero.point.other": "the middle of the cutter",
    # 3 holding
    "hold.heading": "Hold it down",
    "hold.spoilboard": "Spoilboard",
    "hold.flat": "Flat, smooth and swept clean, for a chip under the board tilts it. Cuts go {deep} into it: that "
    "scratch is meant.",
    "hold.under": "What lies under",
    "hold.metal": "Screws end inside the spoilboard and never reach the table under it. No metal within {deep} below "
    "the board where it is cut.",
    "hold.screws": "Screws",
    "hold.no_screws": "This board has no room for screws outside the cut; one of {size} or more has.",
    "hold.places": "in the waste, measured from X0 Y0: ",
    "hold.heads": " Heads up to {head} across, flush or below the top; they clear every cut by {gap}. Drill first, so "
    "that the board neither lifts nor splits.",
    "hold.clamps": "Clamps",
    "hold.clamps.outside": "Only outside the dashed line, no higher than {high} over the board: the collet's nut "
    "reaches {far} beyond the sign, and the head starts over the sign.",
    "hold.clamps.none": "None: the collet's nut reaches {far} beyond the sign, and at most {room} of board lie outside "
    "its way.",
    "hold.clamps.tape": " Take a larger board, or hold this one by double-sided tape over its whole back, if it "
    "sticks well.",
    "hold.travel": " Between cuts the cutter travels {low} over the sign and {over} over the board beside it.",
    "lie.title": "The board on the machine",
    "lie.about": "Board {width} by {height} mm; the sign's lower left corner lies {left} mm from its left and {front} "
    "mm from its front edge",
    "lie.front": "front of the machine: you stand here",
    "lie.grain": "grain",
    "lie.datum": "X0 Y0 of the programs",
    "lie.kerf": "cut away: keep clear",
    "lie.tab": "tab, stays until the end",
    "lie.screw": "suggested screw",
    "lie.clamp": "clamps outside this line",
    "lie.touch": "set Z here",
    # 4 programs
    "run.heading": "The programs, in this order",
    "run.by_hand": "Empty the extractor. Run spindle and extraction once by hand: no rattle, no wobble, good suction.",
    "run.air": "Air pass: run {file} once with Z set {high} mm too high and watch where it goes. Then set Z right "
    "again.",
    "run.lifted": "Air pass: before each program run it in the air ({files}) and watch where it goes.",
    "run.ready": "Glasses, ears, mask; sleeves and hair tied back; emergency stop within reach.",
    "run.change": "Whenever a cutter goes in",
    "run.collet": "Spindle locked off; collet, nut and taper clean. The collet's size is etched on its face. At least "
    "{percent} % of the collet's length ({grip}) grip the shank, and the cutter does not touch the bottom of the "
    "taper. No longer stick-out than stated, for short is stiff.",
    "run.row.cutter": "Cutter",
    "run.row.collet": "Collet",
    "run.row.speed": "Spindle",
    "run.row.feed": "Feed",
    "run.row.time": "Time",
    "run.in_collet": "{collet} (size {series}) for its {shank} shank",
    "run.rpm": "{rpm} rpm",
    "run.feeds": "{feed} mm/min, {plunge} straight down",
    "run.climb": "; climb milling",
    "run.conventional": "; conventional milling",
    "run.about": "about {span}",
    "run.shares": ": {cutting} % cutting, {entry} % ways down, {travel} % travel",
    "run.fit": "Fit the cutter, {stickout} out of the collet.",
    "run.stops_here": "The program stops here, the spindle still. {fit}",
    "run.start": "Extraction on, head high over the sign. Start, hand at feed hold.",
    "run.go_on": "Let the program go on, hand at feed hold.",
    "run.changer": "Put the cutter into place {number} of the changer, {stickout} out of its holder.",
    "run.lengths": "Set X and Y as in section 2; its length goes into line {number} of the control's table.",
    "run.zero": "Set X, Y and Z as in section 2.",
    "run.zero_again": "Set only Z again, {place}, as in section 2: this cutter has another length. X and Y stay as "
    "they are; the board is not moved.",
    "run.right": "Right when",
    "run.right.sink": "a screw's head lies flush in its seat",
    "run.right.letters": "letters have sharp corners and clean rims{depth}",
    "run.right.half": ", half as deep as wide",
    "run.right.up_to": "{half} up to {depth}, where the floor is flat",
    "run.right.deepest": "{half}, {depth} at the deepest",
    "run.right.floors": "the floors of wide letters are flat, {depth} deep",
    "run.right.strokes": "the letters' lines are clean and alike in width",
    "run.right.flat": "the floors are flat and clean, {depth} deep",
    "run.right.corners": "the V-bit has cut the letters' corners, where the end mill does not reach",
    "run.right.through": "the letters show the spoilboard",
    "run.right.hole.one": "the {holes} of {sizes} mm shows the spoilboard",
    "run.right.hole.many": "{count} {holes} of {sizes} mm show the spoilboard",
    "run.right.skin": "a skin of {skin} holds the sign all round",
    "run.right.groove": "the groove around the sign shows the spoilboard",
    "run.right.grooves": "the groove around every sign shows the spoilboard",
    "run.right.tabs.one": "the sign is held by {count} tab, {height} high",
    "run.right.tabs.many": "the sign is held by {count} tabs, {height} high",
    "run.right.tabs_each": "the signs are held by {count} tabs, {height} high",
    "run.right.loose": "the sign is loose: keep it from moving while the spindle turns",
    "run.right.loose_each": "the signs are loose: keep them from moving while the spindle turns",
    "run.right.ended": "the program has run to its end",
    "cutter.title": "Cutter in profile",
    "cutter.about": "{cutter}, {stickout} mm out of the collet",
    # 5 while it cuts
    "while.heading": "While it cuts",
    "while.adjust": "The feeds are a beginning: start at about 80 % by the override and go up by 10 % at a time "
    "while the sound stays even.",
    "while.pitch": "The spindle's pitch dips: the load is too high. Feed down first, 10 % at a time; then look at "
    "the cutter's edge and the extraction.",
    "while.burn": "It squeals, or the cut browns or melts: the cutter rubs. Feed up 10 % or speed down 10 %; blunt "
    "cutters burn too.",
    "while.chatter": "It hums and leaves waves: chatter. Speed down 10 %, then a shorter stick-out or a thinner pass.",
    "while.chips": "Chips, not dust, are right. If they stay in the groove: hold, stop the spindle, clear them.",
    "while.chips.up_cut": " An up-cut cutter lifts them out by itself.",
    "while.chips.down_cut": " A down-cut cutter presses them down: clear the slot between passes.",
    "while.stop": "Something moved or sounds wrong: feed hold, spindle off. Danger: emergency stop at once, then "
    "think.",
    # 6 afterwards
    "after.heading": "Afterwards",
    "after.clear": "When the spindle stands still, move the head clear and vacuum.",
    "after.edges": "Take the sharp edges off with fine paper.",
    "after.edges.holes": "Take the sharp edges off, holes on both sides too, with fine paper.",
    "after.sand": "A face that may be sanded: paper on a flat block, 180 then 240, so that the rims stay sharp.",
    "after.sand.grain": "Sand the face along the grain with paper on a flat block, 180 then 240: the rims stay sharp.",
    "after.paint": "Painted letters: seal face and grooves, paint the grooves, let dry, sand the face clean.",
    "after.paint.flat": "Painted letters: seal everything, paint the floors, let dry, sand the face clean.",
    "after.paint.raised": "Painted letters: paint and seal everything, let dry, then roll the second colour onto what "
    "stands.",
    "after.seal": "Outdoors: a board that takes up water wants every edge and hole sealed too.",
    "after.seal.grain": "Outdoors: seal every edge too, in holes as well; water comes in there first.",
    "after.skin": "Lift the board out as one piece, cut the skin of {skin} through at the underside with a knife, away "
    "from you, and trim what stands out flush.",
    "after.no_tabs": "No tabs hold the sign: lift it out only when everything stands still.",
    "after.tabs.one": "Hold the sign and cut the tab (black on the plan, {width} wide, {height} high, at the "
    "underside) with a knife, away from you, or a fine saw; file flush.",
    "after.tabs.many": "Hold the sign and cut the {count} tabs (black on the plan, {width} wide, {height} high, at the "
    "underside) with a knife, away from you, or a fine saw; file flush.",
    "after.tabs_each": "Hold each sign and cut the {count} tabs (black on the plan, {width} wide, {height} high, at "
    "the underside) with a knife, away from you, or a fine saw; file flush.",
    "after.template": "Put it up: print {file} at 100 %, measure its bars ({bar}), tape it to the wall level and mark "
    "the holes through it. Look for pipes and cables before you drill.",
    # 7 cautions
    "caution.heading": "Cautions",
    "caution.first": "The machine's manual, the rules of your workshop and local law come first; this sheet only adds "
    "to them. Who is new to the machine works beside somebody who knows it; wiring and fixed extraction are for "
    "licensed people.",
    "caution.eyes": "Eyes and ears: safety glasses and hearing protection from the first start to the last stop.",
    "caution.dust": "Dust: extract at the cutter and wear a fitting mask, also when sanding; fine dust harms the "
    "lungs.",
    "caution.hands": "Hands, hair, sleeves, gloves and jewellery stay away from turning cutters; still ones are sharp "
    "too.",
    "caution.clamps": "Clamps and screws: before every start check that they are tight and out of the way.",
    "caution.fire": "Fire: a rubbing cutter lights dust and chips. Extinguisher at hand; look again half an hour "
    "later.",
    "caution.attended": "Never leave a running machine, not even for a minute.",
    # 8 checks, 9 files
    "checks.heading": "What was checked",
    "checks.meaning": "What a code means:",
    "checks.all_passed": "all passed.",
    "checks.passed": "passed",
    "checks.not_run": "not run",
    "checks.warning": "warning",
    "checks.failed": "FAILED",
    "checks.more": "And {count} more",
    "files.heading": "Files in this folder:",
    "files.outline": "shows the place",
    "files.lifted": "in the air",
    "files.programs": "the programs",
    "files.setup": "this sheet",
    "files.picture": "the picture, to scale",
    "files.steps": "the steps in pictures",
    "files.moves": "every move to watch",
    "files.programs.back": "the programs of the back, run first",
    "files.back": "their sheet and picture",
    "files.template": "the drilling template",
    "files.report": "all figures for other programs",
    "files.sheet": "what was asked for each sign, and where it lies.",
    "files.sign": "what was asked for:",
    "files.again": "makes the same again.",
    # setup-back.html
    "hold.flat.back": "Flat, smooth and swept clean: a chip under the board tilts it, and marks the face. Nothing is "
    "cut through here.",
    "hold.travel.high": " Between cuts the cutter travels {over} over the board.",
    "board.below.keyholes": "Z zero lies under the board, so the wood before the face stays as planned; where the "
    "board is {slight} thicker, keyholes get {slight} deeper.",
    "board.on_top.keyholes": "Z zero lies on the board, so keyholes get as deep as planned; where the board is "
    "{slight} thinner, {slight} less wood stays before the face.",
    "back.title": "Setup sheet, back: {sign}",
    "back.heading": "{sign}: the back first",
    "back.alt": "The back of the sign: {sign}",
    "back.picture": "The back, as it lies now, drawn from the simulated cut.",
    "back.measures": "Entry {entry}, slot {slot}, inside {undercut} wide (dashed), {travel} from entry to screw, "
    "{depth} deep; {shoulder} of wood carry each screw. Places from the lower right corner of the sign.",
    "back.way": "Face down",
    "back.lay": "Lay the board with its better face down and its side of {width} from left to right (X), its side of "
    "{height} from front to back (Y). The sign will lie {right} from the right edge and {front} from the front edge.",
    "back.marks": "Two edges",
    "back.stops": "Pencil a mark on the right and on the front edge, which must be straight and square to each "
    "other, and push them against stops. When the board is turned over like a page the marked side edge lies left, "
    "and the front one stays in front: both set-ups are measured from these two edges.",
    "back.zero.sign": "X0 Y0 is the corner of the sign that lies front right now. On the board draw a line {x} from "
    "the right edge and one {y} from the front edge. Bring {point} over their crossing and set X and Y to 0. The "
    "programs run at negative X.",
    "back.zero.stock": "X0 Y0 is the front right corner of the board. Bring {point} over that corner and set X and Y "
    "to 0. The sign begins {x} to the left and {y} further back. The programs run at negative X.",
    "back.then.clear": "When the spindle stands still, move the head clear and vacuum, in the slots too.",
    "back.then.try": "Try a screw of the kind that will hang there: its head goes in at the entry and slides to the "
    "end without force.",
    "back.then.turn": "Turn the board over like a page, about an upright line: the marked side edge now lies left, the "
    "front one stays in front. Both against their stops again; screws go into the same holes.",
    "back.then.face": "Go on with setup.html. Set X, Y and Z anew there: zero is the same corner of the sign, which "
    "lies front left now.",
    "back.first": "The back first:",
    "back.before": "this sign hangs on keyholes. Do all of {file} before anything here; then turn the board over "
    "like a page, its two marked edges against the stops again.",
    "run.right.opened": "each keyhole is open, entry and slot as deep as each other",
    "run.right.undercut": "a screw's head slides from the entry to the end of the slot and is held there",
    # template.html and template.svg
    "template.title": "Drilling template: {sign}",
    "template.about": "{size}, seen from the front, {count} {holes}",
    "template.sheet": "Sheet {number} of {count}: row {row} from above, {column} from the left.",
    "template.scale": "Print at 100 %, not fitted to the page: both bars must measure {bar}.",
    "template.join": "Cut each sheet along the dashed lines at its right and lower side, lay it over its neighbours so "
    "that rings of the same number cover each other, and tape it.",
    "template.wall": "Tape it to the wall with its dash-dotted line level, and mark the middles through the paper. "
    "Before you drill, make sure that no pipe or cable runs there; drill as plug and screw want it.",
    "template.bar": "must measure {bar}",
    "template.screw": "screw",
    "template.screws.one": "{size}, seen from the front, {count} screw to hang it on",
    "template.screws.many": "{size}, seen from the front, {count} screws to hang it on",
    "template.level": "level",
    "template.level.apart": "level; {apart} between the outer holes",
    "template.up": "↑ this side up",
    # a whole sheet of signs
    "nested.alt": "{title}, as the signs will look",
    "nested.picture": "The signs, drawn from the simulated cut.",
    "nested.plan": "The sheet of signs",
    "nested.plan_about": "Sheet {width} by {height} mm with {count} numbered signs",
    "nested.saw_off": "offcut {size}",
    "nested.offcut": "; an offcut of {size} stays whole",
    "nested.left_over": "{used} % of the sheet becomes signs{offcut}; {waste} % is waste. Black: tabs. Numbers: "
    "see the list of signs.",
    "nested.board": "The sheet",
    "nested.lies": "A sheet of {size}, square and flat, with its side of {width} from left to right (X) and its "
    "side of {height} from front to back (Y), the better face up.",
    "nested.grain": " Its grain runs from left to right.",
    "nested.turned": " Some signs lie turned by a quarter, as their numbers do.",
    "nested.zero.stock": "X0 Y0 is the front left corner of the sheet. Bring {point} over that corner and set X "
    "and Y to 0. The first signs begin {x} to the right and {y} further back.",
    "nested.zero.signs": "X0 Y0 is the lower left corner of all signs together. Draw a line {x} from the left edge "
    "and one {y} from the front edge. Bring {point} over their crossing and set X and Y to 0.",
    "nested.row": "row {row}",
    "nested.which": "Which sign is which",
    # steps.png
    "steps.board": "the board",
    "steps.after": "after program {number}: {tool}",
    "steps.finished": "finished",
    # preview.svg
    "svg.title": "Sign: {sign}",
    "svg.about": "{width} by {height} mm in {material}, {count} holes; as left by the simulated cutters, to scale.",
    # summary at the terminal
    "summary.sign": "sign",
    "summary.lettering": "lettering",
    "summary.at": "{text} at {height} mm",
    "summary.fire_code": "; where a fire code is in force it may ask for figures of {height} mm",
    "summary.board": "board",
    "summary.programs": "programs",
    "summary.time": "time",
    "summary.checks": "checks",
    "summary.warning": "warning",
    "summary.next": "next",
    "summary.made": "{material}{holes}, capitals {capitals} mm high",
    "summary.holes.one": ", {count} hole",
    "summary.holes.many": ", {count} holes",
    "summary.least": "at least {size} mm",
    "summary.yours": "yours, {size} mm; with room for screws {least} mm",
    "summary.lies": "{board}; the sign lies {left} mm from its left and {front} mm from its front edge",
    "summary.cutting": "about {span} of cutting",
    "summary.more": " And {count} more on the sheet.",
    "summary.hidden": "and {count} more",
    "summary.open": "Open {file} and print it.",
    "summary.do_not": "Do not cut. Open {file} and print it.",
    # while it works
    "stage.plan": "Drawing the sign and planning the cuts",
    "stage.prove": "Cutting the virtual board and checking it",
    "stage.draw": "Drawing the sheet and the pictures",
    # preview.html
    "page.title": "Moving picture: {sign}",
    "page.about": "{size}, {thickness} {material}, {programs}. The board is cut here by the programs' own moves.",
    "page.noscript": "This page draws by a script, which is switched off in this browser. See preview.png instead.",
    "page.stage": "The board seen from above, or in space, as the programs cut it: {sign}",
    "page.section_label": "Section through the board from left to right at the cutter",
    "page.play": "Play",
    "page.slider": "Time in the programs",
    "page.speed": "Speed",
    "page.which": "Show",
    "page.all": "all programs",
    "page.air": "Ways through the air",
    "page.view": "In space",
    "page.controls": "Playback",
    "page.opening": "Cutting the board ...",
    "page.keys": "Keys",
    "page.hint_flat": "Point at the board, or touch it, to read the depth there.",
    "play.play": "Play",
    "play.pause": "Pause",
    "play.plays": "Playing.",
    "play.paused": "Paused.",
    "play.loading": "Cutting the board: {share} %",
    "play.failed": "This browser cannot show the moves. See preview.png instead.",
    "play.no_space": "This browser cannot draw in space (it has no WebGL 2).",
    "play.when": "{when} of {whole}, {file}",
    "play.doing": "{file}, line {line}: {tool}",
    "play.finished": "Finished: what the programs leave of the board",
    "play.times": "{speed} times",
    "play.point": "Point at the board to read its depth",
    "play.beside": "Beside the board",
    "play.through": "X{x} Y{y}: cut through",
    "play.uncut": "X{x} Y{y}: not cut",
    "play.depth": "X{x} Y{y}: {depth} mm deep",
    "play.section": "Section at Y{y}",
    "play.hint_flat": "Point at the board, or touch it, to read the depth there.",
    "play.hint_space": "Drag to turn the board, two fingers or the wheel bring it nearer; with the picture in focus "
    "the arrow keys turn it.",
    "key.space": "Space",
    "keys.space": "play or pause",
    "key.step": "← →",
    "keys.step": "one move back or on; ten seconds with Shift",
    "key.ends": "Home End",
    "keys.ends": "beginning or end",
    "key.speed": "+ −",
    "keys.speed": "faster or slower; nearer or farther with the picture in space in focus",
    "key.air": "T",
    "keys.air": "ways through the air",
    "key.view": "V",
    "keys.view": "in space or from above",
}

NAMES: dict[str, str] = {}
"""What the shop, the checks and the operations call things, in this language; nothing to say in English."""

PHRASES: tuple[tuple[str, str], ...] = ()
"""Sentences of other parts of the program: a pattern of the English one, and what to say for it."""
