"""Every kind of thing that a sign can have, one file a kind (a kind and its variant may share one).

A kind is a frozen value that says of itself what anybody asks of any feature: its footprint, the depths allowed at
points, how deep a cutter may go for it, itself moved, its facts. Only the planner and the exact check of a kind know
it; a new one is listed here for the laws that the tests hold over all of them.
"""

from __future__ import annotations

from signgen.features.edge import Bevel, Edge, ReadyEdge
from signgen.features.feature import Feature
from signgen.features.groove import Groove, Stroke
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.features.raised import Raised
from signgen.features.recess import Panel, Recess
from signgen.features.tab import Tab

KINDS: tuple[type[Feature], ...] = (Edge, ReadyEdge, Groove, Stroke, Recess, Panel, Raised, Hole, Keyhole, Bevel, Tab)
