(Sign: 17 / Larkspur Lane, 220 x 140 mm)
(Goes round all that will be cut, spindle still, and waits at each corner)
(Tool: 90 degree V-bit, 12 mm, 6 mm shank)
(Board: 260 x 180 x 12 mm, Birch plywood)
(X0 Y0: bottom-left corner of the finished sign, 20 mm right of and 20 mm above)
(the board's bottom-left corner)
(Z0: bottom of the board, which is the top of the spoilboard)
(The board's top is at Z12)
(Set Z on the spoilboard at X259 Y70, or on the face at X111 Y69)
G17 G21 G40 G49 G54 G80 G90 G94
M5
G0 Z43
G0 X-6 Y-6
G0 Z22
(MSG, front left: board must lie under the cutter)
M0
G1 X226 F2000
(MSG, front right: board must lie under the cutter)
M0
G1 Y146.5
(MSG, back right: board must lie under the cutter)
M0
G1 X-6
(MSG, back left: board must lie under the cutter)
M0
G1 Y-6
G0 Z43
M5
M2
