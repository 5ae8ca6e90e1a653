(Sign: 9 / Heron Weir, 250 x 170 mm)
(Goes round all that will be cut, spindle still, and waits at each corner)
(Tool: 90 degree V-bit, 12 mm, 6 mm shank)
(Board: 286 x 206 x 18 mm, Softwood [pine, spruce, larch])
(X0 Y0: bottom-left corner of the finished sign, 18 mm right of and 18 mm above)
(the board's bottom-left corner)
(Z0: bottom of the board, which is the top of the spoilboard)
(The board's top is at Z18)
(Set Z on the spoilboard at X287 Y85, or on the face at X126 Y90)
G17 G21 G40 G49 G54 G80 G90 G94
M5
G0 Z49
G0 X-4 Y-4.5
G0 Z28
(MSG, front left: board must lie under the cutter)
M0
G1 X254 F2000
(MSG, front right: board must lie under the cutter)
M0
G1 Y174
(MSG, back right: board must lie under the cutter)
M0
G1 X-4
(MSG, back left: board must lie under the cutter)
M0
G1 Y-4.5
G0 Z49
M5
M2
