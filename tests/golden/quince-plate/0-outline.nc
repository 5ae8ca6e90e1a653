(Sign: QUINCE COTTAGE / 17 / WAYFIELD, 200 x 200 mm)
(Goes round all that will be cut, spindle still, and waits at each corner)
(Tool: 90 degree V-bit, 12 mm, 6 mm shank)
(Board: 240 x 240 x 12 mm, Birch plywood)
(X0 Y0: bottom-left corner of the finished sign, 20 mm right of and 20 mm above)
(the board's bottom-left corner)
(Z0: bottom of the board, which is the top of the spoilboard)
(The board's top is at Z12)
(Set Z on the spoilboard at X239 Y100, or on the face at X97 Y101)
G17 G21 G40 G49 G54 G80 G90 G94
M5
G0 Z43
G0 X-5.9996 Y-6.2524
G0 Z22
(MSG, front left: board must lie under the cutter)
M0
G1 X205.9997 F2000
(MSG, front right: board must lie under the cutter)
M0
G1 Y205.9999
(MSG, back right: board must lie under the cutter)
M0
G1 X-5.9996
(MSG, back left: board must lie under the cutter)
M0
G1 Y-6.2524
G0 Z43
M5
M2
