"""English: what `list` says of what there is to choose from."""

from __future__ import annotations

WORDS = {
    "listing.only_fonts": "Only fonts have one, not {kind}.",
    "listing.write_fonts": "Write list fonts --specimen DIR.",
    "listing.only_examples": "Only examples are copied, not {kind}.",
    "listing.write_examples": "Write list examples --copy DIR.",
    "listing.another_file": "{path} is another file.",
    "listing.choose_another": "Choose another folder, or move the file away.",
    "listing.tool": "{tool}, cuts {deep} deep",
    "listing.tool_named": "{tool}, cuts {deep} deep, only when named",
    "listing.flutes": "{count} {count:flute|flutes}, {shank} shank",
    "listing.flutes_no_plunge": "{count} {count:flute|flutes}, {shank} shank, cannot plunge",
    "listing.also": "also: {names:plain}",
    "listing.cuts": "chip {chip} and stepdown {stepdown} of the diameter, ramps at {entry} degrees",
    "listing.machine": "{machine}; travel {travel}",
    "listing.spindle": "spindle {least} to {most} rpm",
}
