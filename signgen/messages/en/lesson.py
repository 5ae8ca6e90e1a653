"""English: the lesson that is made of a sign, for pupil and teacher."""

from __future__ import annotations

WORDS = {
    "lesson.no_names": "This is no list of names: its first line must have the word name, and there may be {most} "
    "pupils at most.",
    "lesson.no_column": "The list has no column for {{{column}}} of the sign file.",
    "lesson.write_column": "Add the column, or take the braces out of the sign file.",
    "lesson.write_names": "Write a CSV file with the column name, and columns for what each sign has of its own, "
    "such as text (lines parted by |).",
    "lesson.name_again": "Line {line} names {name} again.",
    "lesson.name_empty": "Line {line} has no name ({name}).",
    "lesson.class_title": "Class of {count}",
    "lesson.class_column_name": "name",
    "lesson.class_column_sign": "sign",
    "lesson.class_column_board": "board",
    "lesson.class_column_programs": "programs and cutters",
    "lesson.class_column_time": "time",
    "lesson.class_column_done": "done",
    "lesson.class_board": "{size}",
    "lesson.class_day": "Order of the day",
    "lesson.class_load": "Together on the machine: {names}",
    "lesson.class_fit": "fit {cutter}, run its program on each board: {time}",
    "lesson.class_saved": "One sign after the other needs {alone} fittings of a cutter; boards side by side need "
    "{shared}, which saves about {minutes} minutes. Each board has a zero of its own: set X, Y and Z for each.",
    "lesson.class_sheet": "Sheet {folder}, {size}: {names}",
    "lesson.class_fit_sheet": "fit {cutter}, run {file}: {time}",
    "lesson.class_saved_sheets": "One sign after the other needs {alone} fittings of a cutter; on shared sheets it"
    " is {shared}, which saves about {minutes} minutes. Each sheet has one zero for "
    "all signs on it.",
    "lesson.sheet_of_class": "Sheets are for the signs of a class.",
    "lesson.name_class": "Name the class with --class, or leave --sheet out.",
    "lesson.no_sheets": "What the batch says of its sheets cannot be read.",
    "lesson.make_sheets_again": "Make the class again.",
    "lesson.class_care": "Only the teacher starts the machine. The machine's manual, the rules of the workshop and "
    "the law come first.",
    "lesson.class_needs_file": "For a class the sign's file is needed.",
    "lesson.class_name_file": "Name the sign file that all signs have in common.",
    "lesson.not_sound": "The programs in this folder do not pass their checks.",
    "lesson.sound_first": "Make the sign again; exercises are spoilt from sound programs.",
    "lesson.few_faults": "This sign gives {count} exercises of different kinds.",
    "lesson.fewer_faults": "Ask for fewer.",
    "lesson.exercises": "The spoilt programs",
    "lesson.exercises_do": "Each folder is a copy of the sign with one fault. Pupils read the program, or ask "
    "signgen check FOLDER --hint 1, then 2, then 3.",
    "lesson.exercise": "{folder}, grade {grade} of 3",
    "lesson.caught_by": "Caught by {codes:plain}",
    "lesson.part": "{file} (cutter {place})",
    "lesson.zero_behind_title": "From the back: the board as it lies face down",
    "lesson.zero_behind": "The back is cut first: the board lies face down, turned over like a page. Zero is the same "
    "corner of the sign, which is bottom right now, so X counts to the left and is negative.",
    "lesson.no_sign": "There is no sign in this folder: sign.toml or report.json is missing.",
    "lesson.no_report": "report.json in this folder is not as make writes it.",
    "lesson.no_program": "The program {file} is missing.",
    "lesson.name_sign": "Name a folder that signgen make wrote, or a sign file.",
    "lesson.no_page": "There is no page '{name}' in a lesson.",
    "lesson.name_page": "Name some of {names:plain}.",
    "lesson.pupil_title": "My sign: {title}",
    "lesson.teacher_title": "For the teacher: {title}",
    "lesson.name": "Name",
    "lesson.class": "Class",
    "lesson.date": "Date",
    "lesson.sign_off": "Before the machine is started, both of us have looked at everything on the last page.",
    "lesson.pupil_signs": "Pupil",
    "lesson.teacher_signs": "Teacher",
    "lesson.about": "{size}, {thickness} thick, {material}; programs: {programs:plain}",
    "lesson.cover_inches": "Your programs count in inches (G20). Write every answer in "
    "millimetres: an inch is 25.4 mm.",
    "lesson.cover_does": "This booklet is made from the programs that will cut your sign. Every question can be "
    "answered from them.",
    "lesson.answer": "Answer: {answer}",
    "lesson.from_line": "from {file}, line {line}",
    "answer.rpm": "rpm",
    "answer.unit": " {unit}",
    "answer.exact": "{value}{unit}",
    "answer.about": "{value}{unit} (± {tolerance})",
    "answer.line": "{file}, line {line}",
    "lesson.page.cover": "Your sign",
    "lesson.page.coordinates": "Places on the sign",
    "lesson.page.zero": "Where zero is",
    "lesson.page.cutter": "Cutter and collet",
    "lesson.page.feeds": "How fast",
    "lesson.page.depth": "Deep and wide with a V-bit",
    "lesson.page.passes": "Pass by pass",
    "lesson.page.arcs": "Arcs",
    "lesson.page.tabs": "Tabs hold the sign",
    "lesson.page.reading": "Reading a program",
    "lesson.page.words": "Word card",
    "lesson.page.fault": "Find the fault",
    "lesson.page.own": "Write your own",
    "lesson.page.time": "How long it takes",
    "lesson.page.thickness": "If the board is thicker",
    "lesson.page.start": "Before the start",
    "lesson.intro.coordinates": "X counts to the right, Y away from you, both from zero. The squares are 20 mm "
    "wide. The middle of a hole is the centre of the arcs that make it, or where the drill goes down.",
    "lesson.intro.zero": "Set X and Y once and leave them. Set Z again for each cutter, on the surface that the "
    "heading of the program names.",
    "lesson.zero_bottom": "Z0 is the bottom of the board; its top is at Z{top}.",
    "lesson.zero_top": "Z0 is the top of the board; its bottom is at Z{bottom}.",
    "lesson.zero_where": "X0 Y0 lies {x} right of and {y} above the bottom left corner of the board ({size}).",
    "lesson.intro.cutter": "The collet must be of the shank's size, never near it. Change cutters with the plug out "
    "or the switch locked. Cutters are sharp: hold them by the shank, in a cloth.",
    "lesson.yours": "{file}: {tool} in {material}",
    "lesson.intro.feeds": "S is how often the cutter turns in a minute, F how far it goes in a minute. Chip load is "
    "what each edge takes: F divided by S and by the number of edges. Cutting speed is π times the diameter times "
    "S, divided by 1000. Work with two edges here; count those of your cutter.",
    "lesson.intro.depth": "A V-bit cuts a groove whose width follows from its depth: width = 2 × depth × tan(half "
    "the angle), and the flat of the tip if it has one. For 60, 90 and 120 degrees the tangent of half the angle is "
    "0.577, 1 and 1.732.",
    "lesson.intro.passes": "A deep cut is made in several passes. The picture shows the board from the side with "
    'the height of every pass under "{under}".',
    "lesson.intro.arcs": "I and J say how far the centre lies from the start of the arc: centre X = start X + I, "
    "centre Y = start Y + J. The radius is the root of I × I + J × J.",
    "lesson.intro.tabs": "Tabs are bridges that keep the sign in the board until the spindle stands still. Without "
    "them the sign comes loose and is thrown.",
    "lesson.intro.reading": "Lines from your programs with what they do. Fill in the empty ones.",
    "lesson.intro.words": "These are all the words that your programs use.",
    "lesson.intro.fault": "Each line stood in your program and was spoilt. Mark what is wrong and write the line as "
    "it should be.",
    "lesson.intro.own": "Write a program that cuts the square 2 mm deep, and a hole of 10 mm (its middle is marked) "
    "2 mm deep. The cutter is a 6 mm end mill and goes along the middle of the line; in the hole it goes round a "
    "circle of radius 2 mm. Z0 is at the top of the board; travel at Z5. Then let the computer read it: signgen "
    "check mine.nc --stock 100x80x12 --z-zero top --material softwood --tool end-mill-6 --page mine.html",
    "lesson.intro.time": "Length divided by feed is the least time. The machine needs longer: it speeds up and "
    "slows down at every corner, goes down slower than it goes along, and travels between cuts.",
    "lesson.time_told": "{file}: the computer reckons {minutes} min. Why is that more than length over feed?",
    "lesson.intro.thickness": "The program knows the thickness that was typed: {thickness}. Measure your board with "
    "a calliper at four places: ____  ____  ____  ____",
    "lesson.intro.start": "Tick each line at the machine. The machine's manual, the rules of your workshop and the "
    "law come before what stands here.",
    "lesson.start_list": "My teacher is here and has said yes.|Eyes and ears are protected; sleeves, hair and "
    "strings are tied back; no gloves.|The extraction runs.|The board is measured and held fast; nothing stands in "
    "the cutter's way.|The right cutter is in, in the right collet, and tight.|X, Y and Z are set; Z for this "
    "cutter.|The right program is loaded; its heading names this cutter.|It has run in the air once.|I know where "
    "the stop is, and one hand stays at it.|I never reach in until the spindle stands still, and never leave it "
    "running.",
    "lesson.column_line": "line",
    "lesson.column_text": "program",
    "lesson.column_does": "what it does",
    "lesson.column_word": "word",
    "lesson.column_meaning": "what it does",
    "lesson.fault_stands": "{file}, line {line}:",
    "lesson.write": "Write it as it should be:",
    "lesson.teacher_about": "Made from the programs in this folder. Each answer stands with its tolerance and the "
    "line that it comes from.",
    "lesson.timetable": "Two lessons of 90 minutes",
    "lesson.timetable_rows": "1st, 0-10: the sign, the booklet, hazards and stop|10-30: places, zero, cutter (pages "
    "'Places', 'Zero', 'Cutter')|30-60: reading a program with the word card|60-80: find the fault; the program "
    "played on the screen|80-90: checklist, questions|2nd, 0-10: what was learnt|10-40: speeds, depth, passes, "
    "arcs, tabs|40-60: write your own and have it checked|60-85: run in the air, then cut one sign while the rest "
    "watch from behind the line|85-90: judge it: measure a groove, a hole and the outside",
    "lesson.materials": "Materials",
    "lesson.materials_rows": "Board {board}, {thickness} thick, {material}|Cutters: {cutters:plain}|Collets: "
    "{collets:plain} mm|Calliper, ruler, pencil, pocket calculator, a screen for the player|Eye and ear protection "
    "for everybody, extraction, clamps or screws",
    "lesson.outcomes": "Outcomes",
    "lesson.outcomes_rows": "names the hazards, the stop and the protective kit (NOCN unit H/600/8573, level "
    "2)|reads a drawing and a setup sheet (NIMS milling, level 1: setup sheet)|chooses cutter and collet "
    "(H/600/8573)|explains the zeros and places points|reads N, G, F, S, T, M words and says which stay in force "
    "(NIMS milling, level 1)|finds the centre of an arc|computes chip load, cutting speed, depth from the width of "
    "a groove|counts passes and justifies tabs|estimates time and says why it is longer|predicts what a wrong "
    "thickness does|dry-runs, inspects and judges against a tolerance (H/600/8573)",
    "lesson.watch": "What to look for",
    "lesson.watch_rows": "X and Y exchanged, or the sign of X left of zero forgotten|I and J taken for places "
    "instead of distances from the start|the depth counted from Z0 although Z0 is the bottom of the board|the full "
    "angle of the V-bit put into the tangent instead of half of it|the first pass counted from zero instead of from "
    "one|F and S exchanged",
    "lesson.own_answer": "One that is right (there are others):",
    "lesson.picture_sign": "The sign seen from above on a grid of 20 mm squares, {size}, with {holes} holes; zero "
    "is marked with a ring.",
    "lesson.picture_zero": "The board with the sign on it and zero at the corner of the sign, {x} right of and {y} "
    "above the corner of the board.",
    "lesson.picture_passes": "The board from the side with {count} lines, one at the height of each pass.",
    "lesson.picture_arc": "An arc with its start, its end and its centre; I and J lead from the start to the centre.",
    "lesson.picture_depth": "A groove in section: {depth} deep and {width} wide, with an angle of {angle} degrees "
    "at its bottom.",
    "lesson.picture_tabs": "The sign in the board with {count} bridges between them.",
    "lesson.picture_own": "A square from X20 Y20 to X60 Y60 and the middle of a hole at X80 Y40 on a board of 100 "
    "by 80 mm.",
    "lesson.picture_cutter": "{tool} in its collet, from the side.",
    "ask.hole": "The middle of hole {number} ({file}, near line {line}): {axis} =",
    "ask.right_side": "In line {line} of {file} the cutter, {diameter} across, goes along the right side of the sign. "
    "X of that side =",
    "ask.top_side": "In line {line} of {file} it goes along the top side. Y of that side =",
    "ask.leftmost": "How far left does the middle of the cutter go while it cuts in {file}? X =",
    "ask.first": "Where does {file} go first, at rapid speed? {axis} =",
    "ask.lowest": "The lowest Z of {file}: Z =",
    "ask.shank": "Which collet does the {tool} of {file} need?",
    "ask.speed": "{file}: turns a minute, S =",
    "ask.feed": "{file}: fastest feed of a level cut, F =",
    "ask.turn": "{file}: way for each turn, F ÷ S =",
    "ask.chip": "{file}: chip load with two edges =",
    "ask.surface": "{file}: cutting speed of the {tool} =",
    "ask.depth": '"{under}" is deepest in line {line}. Depth below the top of the board =',
    "ask.width": 'How wide is the groove of "{under}" there, with {angle} degrees?',
    "ask.other_angle": "How deep would a {other} degree bit go for a groove {width} wide?",
    "ask.passes": 'How many passes does "{under}" take in {file}?',
    "ask.step": "How much deeper is the second pass than the first?",
    "ask.last_pass": "Z of the last pass =",
    "ask.centre_x": "{file}, line {line}: {text} begins at X{x} Y{y}. Centre X =",
    "ask.centre_y": "Centre Y =",
    "ask.radius": "Radius =",
    "ask.tabs": "How many tabs does {file} leave?",
    "ask.tab_top": "Z at the top of the tabs =",
    "ask.tab_thick": "How thick are the tabs?",
    "ask.minutes": "{file}: {length} of cutting at {feed}; time if it kept that feed =",
    "ask.thicker_width": "The board is {extra} thicker than was typed, and Z0 is at its bottom. How much wider do "
    "grooves get with {angle} degrees?",
    "ask.thicker_bottom": "How far below the bottom of that board does {file} still cut? (negative: below)",
    "ask.thicker_top": "The board is {extra} thicker than was typed, and Z0 is at its top. How much wood does "
    "{file} leave at the bottom? (negative: none)",
}
