"""Pictures of what words of RS-274 do, for a terminal: letters and marks alone, so that they need no language."""

from __future__ import annotations

LINE = r"""
  Y
  |            o  X Y
  |        .-'
  |    .-'
  o--'______________ X
"""
RAPID = r"""
  Z   o - - - - - >o
      ^            :
      :            v   ~ ~ ~ air
  ____:____________:____
      |            |   wood
"""
CLOCKWISE = r"""
  Y        _.--._
  |      .'      `.     start o, end >
  |     o    +     v    centre +
  |        I J
  |_________________ X
"""
COUNTER = r"""
  Y        _.--._
  |      .'      `.     start o, end <
  |     <     +    o    centre +
  |              I J
  |_________________ X
"""
CENTRE = r"""
  Y         +  centre = start + (I, J)
  |         :
  |         : J
  |  start o:
  |         I ->
  |_________________ X
"""
WAIT = r"""
  F  ____             ____
         |    P s    |
         |___________|        time -->
"""
PLANES = r"""
     Z               Z               Y
     |  G18: X Z     |  G19: Y Z     |  G17: X Y
     |____ X         |____ Y         |____ X
"""
UNITS = r"""
  G20  |----------------------------| 1 inch
  G21  |----|----|----|----|----|---- 25.4 mm
"""
HOME = r"""
  o - - - - - - - - > H     only the machine knows where H is
"""
PROBE = r"""
  Z   |
      v  F
  ____*____   stops at the touch
"""
BESIDE = r"""
  G41:   (o)            G40: (o)         G42:
       ------------->   -----+------>      ------------->
                                              (o)
"""
LENGTH = r"""
     ||     ||
     ||     ||   H: longer tool, Z that much higher
     ||     \/
     \/  ________
"""
ZERO = r"""
  Y
  |     board
  |   +----------+
  |   |          |
  |   0----------+    0 = X0 Y0 of the program
  |
  M_________________ X   M = zero of the machine
"""
CORNER = r"""
  G61  ______        G64  _____
             |                 `.
             |                   |
"""
DRILL = r"""
  Z  . . o - - ->o . . . .   before (G98)
               : ^
     . . . . . v : . . . .   R (G99)
     __________|_|________
               v |           Z
"""
PECK = r"""
     . . . .: : : : : . . .  R
     _______|_:_|_:_|_____
            v ^ | ^ |        Q
                v ^ |        Q
                    v        Z
"""
ABSOLUTE = r"""
  0----------->10                 G90: X10 then X25
  0---------------------------->25
"""
STEPS = r"""
  o----------->10                 G91: X10 then X15
               o--------------->15
"""
FEED = r"""
  |==========>|   G94: F = way in one minute
  |--- 1 min -|   G93: F = 1 / minutes of this move
"""
STOP = r"""
  line 1 -> line 2 -> M0 || ... start pressed ... || -> line 4
"""
END = r"""
  line 1 -> line 2 -> M2 #     line 4 is never run
"""
TURNS = r"""
      seen from above
       .->-.               .-<-.
      ( M3  )             ( M4  )             M5: .
       `---'               `---'
"""
TOOL = r"""
   T2         M6
   [2] . . >  [1] out, [2] in
"""
AIR = r"""
   M8 on   ||  ' ' '      M9 off  ||
           \/ ' '                 \/
"""
HEIGHT = r"""
  Z  |
     |   \/  tip
  ___|________________ top of the board
     |
  ___0________________ Z0: what the heading says
"""
AXES = r"""
        Z  Y
        | /
        |/____ X
"""
FRAME = r"""
  %
  G21 G90 ...
  M2
  %
"""
WRITING = r"""
  N10 G1 X20 Y5 F900 (to the corner)
   |   |  |     |     `- for people
   |   |  |     `- feed
   |   |  `- where
   |   `- how
   `- line number
"""
MODAL = r"""
  G1 X10    G1
  Y20       G1 still
  X0        G1 still
  G0 Z5     G0 takes its place
"""
