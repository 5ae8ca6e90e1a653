(Sign: TANNERY / WORKSHOP, 180 x 90 mm)
(Goes round all that will be cut, spindle still, and waits at each corner)
(Tool: 90 degree V-bit, 12 mm, 6 mm shank)
(Board: 216 x 126 x 6 mm, MDF)
(X0 Y0: bottom-left corner of the finished sign, 18 mm right of and 18 mm above)
(the board's bottom-left corner)
(Z0: bottom of the board, which is the top of the spoilboard)
(The board's top is at Z6)
(Set Z on the spoilboard at X217 Y45, or on the face at X91 Y46)
G17 G21 G40 G49 G54 G80 G90 G94
M5
G0 Z37
G0 X-4 Y-4.5
G0 Z16
(MSG, front left: board must lie under the cutter)
M0
G1 X184 F2000
(MSG, front right: board must lie under the cutter)
M0
G1 Y94
(MSG, back right: board must lie under the cutter)
M0
G1 X-4
(MSG, back left: board must lie under the cutter)
M0
G1 Y-4.5
G0 Z37
M5
M2
