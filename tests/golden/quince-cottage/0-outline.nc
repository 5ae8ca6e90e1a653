(Sign: Quince Cottage, 320 x 110 mm)
(Goes round all that will be cut, spindle still, and waits at each corner)
(Tool: 60 degree V-bit, 12 mm, 6 mm shank)
(Board: 360 x 150 x 15 mm, Hardwood [oak, maple, cherry])
(X0 Y0: bottom-left corner of the finished sign, 20 mm right of and 20 mm above)
(the board's bottom-left corner)
(Z0: bottom of the board, which is the top of the spoilboard)
(The board's top is at Z15)
(Set Z on the spoilboard at X359 Y55, or on the face at X153 Y51)
G17 G21 G40 G49 G54 G80 G90 G94
M5
G0 Z46
G0 X-6 Y-6.5
G0 Z25
(MSG, front left: board must lie under the cutter)
M0
G1 X326 F2000
(MSG, front right: board must lie under the cutter)
M0
G1 Y116
(MSG, back right: board must lie under the cutter)
M0
G1 X-6
(MSG, back left: board must lie under the cutter)
M0
G1 Y-6.5
G0 Z46
M5
M2
