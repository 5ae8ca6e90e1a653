"""A hundred small drawings that readers of SVG stumble over: the area that each shows in square pixels, or the key of
the sentence by which it is refused. Areas follow from plane geometry."""

from __future__ import annotations

import math

PI = math.pi


def svg(inside: str, root: str = 'viewBox="0 0 100 100" width="100" height="100"') -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" {root}>{inside}</svg>'


SQUARE = '<path d="M10 10h20v20h-20z"/>'
STAR = '<polygon points="50,5 79,95 3,39 97,39 21,95" fill-rule="{}"/>'
LINE = 'd="M20 50H80" fill="none" stroke="black" stroke-width="10"'
CORNER = 'd="M20 80V20H80" fill="none" stroke="black" stroke-width="10"'


def shoelace(points: list[complex]) -> float:
    return abs(sum((p.conjugate() * q).imag for p, q in zip(points, points[1:] + points[:1], strict=True))) / 2


def _star(rule: str) -> float:
    """Of a pentagram by the shoelace formula: the even-odd rule counts its middle not at all, the other one once."""
    x = [50, 79, 3, 97, 21]
    y = [5, 95, 39, 39, 95]

    def meet(a, b, c, d):
        p, q, r, s = (complex(x[i], y[i]) for i in (a, b, c, d))
        u, v = q - p, s - r
        t = ((r - p).conjugate() * v).imag / (u.conjugate() * v).imag
        return p + t * u

    inner = [meet(0, 1, 2, 3), meet(0, 1, 3, 4), meet(1, 2, 3, 4), meet(1, 2, 4, 0), meet(2, 3, 4, 0)]

    middle = sum(inner) / 5
    pentagon = shoelace(sorted(inner, key=lambda p: math.atan2((p - middle).imag, (p - middle).real)))
    signed = shoelace([complex(a, b) for a, b in zip(x, y, strict=True)])  # counts the middle twice
    return signed - 2 * pentagon if rule == "evenodd" else signed - pentagon


SHOWN: dict[str, tuple[str, float]] = {
    "square": (svg(SQUARE), 400),
    "nonzero star": (svg(STAR.format("nonzero")), _star("nonzero")),
    "even-odd star": (svg(STAR.format("evenodd")), _star("evenodd")),
    "rings alike": (svg('<path d="M10 10h40v40h-40zM20 20h20v20h-20z"/>'), 1600),
    "rings alike, even-odd": (svg('<path fill-rule="evenodd" d="M10 10h40v40h-40zM20 20h20v20h-20z"/>'), 1200),
    "rings opposed": (svg('<path d="M10 10h40v40h-40zM20 20v20h20v-20z"/>'), 1200),
    "open path": (svg('<path d="M10 10h20v20h-20"/>'), 400),
    "circle": (svg('<circle cx="50" cy="50" r="20"/>'), PI * 400),
    "ellipse": (svg('<ellipse cx="50" cy="50" rx="30" ry="10"/>'), PI * 300),
    "ellipse of one radius": (svg('<ellipse cx="50" cy="50" rx="10"/>'), PI * 100),
    "round rectangle": (svg('<rect x="10" y="10" width="40" height="30" rx="5"/>'), 1200 - (4 - PI) * 25),
    "rectangle too round": (svg('<rect x="10" y="10" width="20" height="30" rx="50" ry="5"/>'), 600 - (4 - PI) * 50),
    "per cents": (svg('<rect x="10%" y="10%" width="50%" height="20%"/>'), 1000),
    "units": (svg('<rect width="1in" height="2.54cm"/>'), 96 * 96),
    "arc flags without spaces": (svg('<path d="M30 50a20 20 0 1120 20z"/>'), 0.75 * PI * 400 + 200),
    "arc too small": (svg('<path d="M30 50A1 1 0 0 1 70 50z"/>'), PI * 200),
    "turned arc": (svg('<path d="M30 50A20 10 90 0 0 70 50z"/>'), PI * 40 * 20 / 2),
    "arc of no radius": (svg('<path d="M10 10A0 5 0 0 1 30 10L30 30L10 30z"/>'), 400),
    "arc to where it is": (svg('<path d="M10 10A5 5 0 0 1 10 10H30V30H10z"/>'), 400),
    "numbers without spaces": (svg('<path d="M10-10 10,10.5.5 30-.5-30.5z"/>', 'viewBox="-50 -50 200 200"'),
                              shoelace([10 - 10j, 10 + 10.5j, 0.5 + 30j, -0.5 - 30.5j])),
    "exponents": (svg('<path d="M1e1 1.0e+1H3E1V.3e2H10z"/>'), 400),
    "implicit lines": (svg('<path d="m10 10 20 0 0 20-20 0"/>'), 400),
    "two parts after z": (svg('<path d="M10 10h10v10h-10z l-5 0 0 -5 5 0z"/>'), 125),
    "smooth cubics": (svg('<path d="M10 50C10 40 40 40 40 50S70 60 70 50z"/>'), 2 * 0.6 * 30 * 10),
    "quadratic": (svg('<path d="M10 50Q50 10 90 50z"/>'), 2 / 3 * 0.5 * 80 * 40),
    "smooth quadratic": (svg('<path d="M10 50Q30 10 50 50T90 50z"/>'), 2 * 2 / 3 * 0.5 * 40 * 40),
    "matrix": (svg(f'<g transform="matrix(2 0 0 1.5 0 0)">{SQUARE}</g>'), 1200),
    "list of transforms": (svg(f'<g transform="translate(50,50) rotate(30) scale(.5)">{SQUARE}</g>'), 100),
    "rotation about a point": (svg(f'<g transform="rotate(45 20 20)">{SQUARE}</g>'), 400),
    "skew": (svg(f'<g transform="skewX(30)">{SQUARE}</g>'), 400),
    "mirrored": (svg(f'<g transform="matrix(-1 0 0 1 100 0)">{SQUARE}</g>'), 400),
    "flattened to nothing": (svg(f'<g transform="scale(0)">{SQUARE}</g>'), 0),
    "view box in millimetres": (svg(SQUARE, 'viewBox="0 0 100 100" width="50" height="50"'), 100),
    "other proportions": (svg(SQUARE, 'viewBox="0 0 100 100" width="50" height="100"'), 100),
    "stretched": (svg(SQUARE, 'viewBox="0 0 100 100" width="50" height="100" preserveAspectRatio="none"'), 200),
    "sliced": (svg(SQUARE, 'viewBox="0 0 100 100" width="50" height="100" preserveAspectRatio="xMinYMin slice"'), 400),
    "outside the page": (svg('<rect x="90" y="0" width="50" height="10"/>'), 100),
    "use": (svg(f'<defs><g id="a">{SQUARE}</g></defs><use href="#a"/><use xlink:href="#a" x="40"/>'), 800),
    "use before it is there": (svg('<use href="#a" y="5"/><defs><rect id="a" width="10" height="4"/></defs>'), 40),
    "use that paints": (svg('<use href="#a" fill="none"/><defs><rect id="a" width="10" height="4"/></defs>'), 0),
    "symbol": (svg('<symbol id="s" viewBox="0 0 10 10"><rect width="10" height="10"/></symbol>'
                   '<use href="#s" width="20" height="20"/>'), 400),
    "symbol cuts off": (svg('<symbol id="s" viewBox="0 0 10 10"><rect width="90" height="10"/></symbol>'
                            '<use href="#s" width="20" height="20"/>'), 400),
    "nested svg": (svg('<svg x="9" y="9" width="20" height="20" viewBox="0 0 2 2"><rect width="1" height="9"/></svg>'),
                   200),
    "nested svg, overflow": (svg('<svg width="20" height="20" overflow="visible"><rect width="30" height="10"/></svg>'),
                             300),
    "clip": (svg(f'<clipPath id="c"><rect x="20" y="0" width="50" height="50"/></clipPath><g clip-path="url(#c)">'
                 f"{SQUARE}</g>"), 200),
    "clip in a clip": (svg('<clipPath id="d"><rect width="50" height="15"/></clipPath><clipPath id="c" '
                           'clip-path="url(#d)"><rect x="20" width="50" height="50"/></clipPath>'
                           f'<g clip-path="url(#c)">{SQUARE}</g>'), 50),
    "even-odd clip": (svg('<clipPath id="c"><path clip-rule="evenodd" d="M0 0h40v40h-40zM15 15h10v10h-10z"/></clipPath>'
                          f'<g clip-path="url(#c)">{SQUARE}</g>'), 300),
    "clip that goes along": (svg('<clipPath id="c"><rect width="20" height="100"/></clipPath>'
                                 f'<g transform="translate(50)" clip-path="url(#c)">{SQUARE}</g>'), 200),
    "empty clip": (svg(f'<clipPath id="c"/><g clip-path="url(#c)">{SQUARE}</g>'), 0),
    "clip by use": (svg('<defs><rect id="r" width="20" height="99"/></defs><clipPath id="c"><use href="#r"/></clipPath>'
                        f'<g clip-path="url(#c)">{SQUARE}</g>'), 200),
    "painted over": (svg(f'{SQUARE}<rect x="10" y="10" width="10" height="20" fill="white"/>'), 200),
    "painted over and again": (svg(f'{SQUARE}<rect x="10" y="10" width="10" height="20" fill="#fff"/>'
                                   '<rect x="10" y="10" width="10" height="5" fill="#222"/>'), 250),
    "yellow is light": (svg('<rect width="10" height="10" fill="yellow"/>'), 0),
    "red is dark": (svg('<rect width="10" height="10" fill="rgb(255, 0, 0)"/>'), 100),
    "current colour": (svg('<g color="#fff"><rect width="10" height="10" fill="currentColor"/></g>'), 0),
    "transparent": (svg('<rect width="10" height="10" fill="transparent"/>'), 0),
    "no opacity": (svg('<rect width="9" height="9" fill-opacity="0"/><g opacity="0"><rect width="5" height="5"/></g>'),
                   0),
    "not displayed": (svg('<g style="display:none"><rect width="10" height="10"/></g>'), 0),
    "hidden but one": (svg('<g visibility="hidden"><rect width="9" height="9"/><rect width="5" height="5" '
                           'visibility="visible"/></g>'), 25),
    "classes": (svg('<style>.a{fill:none} rect.b{fill:#000}</style><rect class="a" width="9" height="9"/>'
                    '<rect class="a b" width="5" height="5"/>'), 25),
    "ids and commas": (svg('<style>/* x */ #p, .q { fill : none }</style><rect id="p" width="9" height="9"/>'), 0),
    "style goes before attributes": (svg('<rect width="9" height="9" fill="black" style="fill:none"/>'), 0),
    "important": (svg('<style>rect{fill:none!important}</style><rect width="9" height="9" style="fill:black"/>'), 0),
    "editors' notes": (svg('<x:grid xmlns:x="http://larkspur.example/x"><path d="M0 0h9v9z"/></x:grid>' + SQUARE), 400),
    "butt ends": (svg(f"<path {LINE}/>"), 600),
    "round ends": (svg(f'<path {LINE} stroke-linecap="round"/>'), 600 + PI * 25),
    "square ends": (svg(f'<path {LINE} stroke-linecap="square"/>'), 700),
    "miter": (svg(f"<path {CORNER}/>"), 1200),
    "bevel": (svg(f'<path {CORNER} stroke-linejoin="bevel"/>'), 1187.5),
    "round corner": (svg(f'<path {CORNER} stroke-linejoin="round"/>'), 1175 + PI * 25 / 4),
    "miter over its limit": (svg(f'<path {CORNER} stroke-miterlimit="1.4"/>'), 1187.5),
    "closed band": (svg('<rect x="20" y="20" width="40" height="40" fill="none" stroke="black" stroke-width="4"/>'),
                    44**2 - 36**2),
    "closed round band": (svg('<circle cx="50" cy="50" r="20" fill="none" stroke="black" stroke-width="4"/>'),
                          PI * (22**2 - 18**2)),
    "filled and drawn": (svg('<circle cx="50" cy="50" r="20" stroke="black" stroke-width="4"/>'), PI * 22**2),
    "white line over": (svg('<circle cx="50" cy="50" r="20" stroke="white" stroke-width="4"/>'), PI * 18**2),
    "line below": (svg('<circle cx="50" cy="50" r="20" stroke="white" stroke-width="4" paint-order="stroke"/>'),
                   PI * 20**2),
    "dashes": (svg(f'<path {LINE} stroke-dasharray="10 5"/>'), 400),
    "dashes, an odd number": (svg(f'<path {LINE} stroke-dasharray="10"/>'), 300),
    "dashes begin later": (svg(f'<path {LINE} stroke-dasharray="10 5" stroke-dashoffset="5"/>'), 400),
    "dots": (svg(f'<path {LINE} stroke-dasharray="0 25" stroke-linecap="round"/>'), 3 * PI * 25),
    "a dot": (svg('<path d="M50 50h0" stroke="black" stroke-width="10" stroke-linecap="round"/>'), PI * 25),
    "a dot without ends": (svg('<path d="M50 50h0" stroke="black" stroke-width="10"/>'), 0),
    "pen turned with its shape": (svg(f'<g transform="scale(1 .5)"><path {LINE}/></g>'), 300),
    "pen without width": (svg('<path d="M20 50H80" stroke="black" stroke-width="0"/>'), 0),
    "polyline": (svg('<polyline points="10,10 30 10,30,30 10 30"/>'), 400),
    "one point": (svg('<polygon points="10 10"/>'), 0),
    "link": (svg(f'<a href="https://larkspur.example">{SQUARE}</a>'), 400),
    "a bow tie": (svg('<path d="M10 10L50 50V10L10 50z"/>'), 800),
    "no unit, no size": (svg(SQUARE, 'viewBox="0 0 100 100"'), 400),
    "nothing at all": (svg(""), 0),
    "often the same": (svg('<defs><rect id="r" width="10" height="10"/></defs>' + '<use href="#r"/>' * 300), 100),
}  # fmt: skip
BOMB = '<g id="a0"><rect width="1" height="1"/></g>' + "".join(
    f'<g id="a{n}">' + f'<use href="#a{n - 1}"/>' * 10 + "</g>" for n in range(1, 15)
)
REFUSED: dict[str, tuple[str, str]] = {
    "entities": (
        '<!DOCTYPE svg [<!ENTITY a "aaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>' + svg("&b;"), "art.document_type"
    ),
    "elsewhere": (svg('<use href="https://larkspur.example/a.svg#b"/>'), "art.outside"),
    "script": (svg("<script>1</script>"), "art.acts"),
    "handler": (svg('<rect onclick="go()" width="1" height="1"/>'), "art.script"),
    "animation": (svg('<rect width="1" height="1"><animate/></rect>'), "art.acts"),
    "bomb of uses": (svg(f"<defs>{BOMB}</defs><use href='#a14'/>"), "art.draws_too_much"),
    "use of itself": (svg('<g id="a"><use href="#a"/></g>'), "art.uses_itself"),
    "clip of itself": (svg('<clipPath id="c" clip-path="url(#c)"><rect/></clipPath><rect width="1" height="1" '
                           'clip-path="url(#c)"/>'), "art.uses_itself"),
    "mask": (svg('<mask id="m"/><rect width="1" height="1" mask="url(#m)"/>'), "art.effect"),
    "filter": (svg('<rect width="1" height="1" style="filter:blur(2px)"/>'), "art.effect"),
    "text": (svg("<text>Quince</text>"), "art.not_said"),
    "picture": (svg('<image href="data:image/png;base64,AA"/>'), "art.not_said"),
    "gradient": (svg('<rect width="1" height="1" fill="url(#g)"/>'), "art.gradient"),
    "half transparent": (svg('<g opacity=".5"><rect width="1" height="1"/></g>'), "art.half_transparent"),
    "half transparent colour": (svg('<rect width="1" height="1" fill="#ff000080"/>'), "art.half_transparent"),
    "no colour": (svg('<rect width="1" height="1" fill="larkspur"/>'), "art.no_colour"),
    "infinite": (svg('<path d="M0 0H1e999V9z"/>'), "art.too_far"),
    "1e30": (svg('<path d="M0 0H1e30V9z"/>'), "art.too_far"),
    "scaled to 1e30": (svg(f'<g transform="scale(1e30)">{SQUARE}</g>'), "art.too_far"),
    "not a number": (svg('<path d="M0 0HnanV9z"/>'), "art.path_junk"),
    "junk words": (svg('<path d="M0 0 L bread and butter"/>'), "art.path_junk"),
    "breaks off": (svg('<path d="M0 0 L 1"/>'), "art.path_breaks_off"),
    "begins with a line": (svg('<path d="L 1 1 2 2"/>'), "art.path_junk"),
    "view box of no width": (svg(SQUARE, 'viewBox="0 0 0 10"'), "art.no_view_box"),
    "view box of words": (svg(SQUARE, 'viewBox="all of it"'), "art.no_view_box"),
    "ems": (svg('<rect width="2em" height="1"/>'), "art.no_length"),
    "transform of words": (svg('<g transform="turn(3)"><rect width="1" height="1"/></g>'), "art.no_transform"),
    "transform by style": (svg('<rect width="1" height="1" style="transform:scale(2)"/>'), "art.style_changes"),
    "media": (svg("<style>@media print{rect{fill:none}}</style>"), "art.style_rule"),
    "import": (svg('<style>@import "x.css";</style>'), "art.style_rule"),
    "selectors": (svg("<style>g > rect{fill:none}</style>"), "art.style_selector"),
    "markers": (svg('<path d="M0 0h9" stroke="black" marker-end="url(#m)"/>'), "art.effect"),
    "pen that stays": (svg('<path d="M0 0h9" stroke="black" vector-effect="non-scaling-stroke"/>'), "art.effect"),
    "two hundred thousand arcs": (svg(f'<path d="M0 0{"a1 1 0 0 1 2 0" * 200_000}"/>'), "art.draws_too_much"),
    "a tangle": (
        svg(f'<path d="M0 0{"".join(f"L{i * 7919 % 997 / 10} {i * 104729 % 991 / 10}" for i in range(4000))}"/>'),
        "art.tangle",
    ),
    "a million dashes": (svg('<path d="M0 50H100" stroke="black" stroke-dasharray="0.0001"/>'), "art.many_dashes"),
    "too deep": (svg("<g>" * 5000 + "</g>" * 5000), "art.too_deep"),
    "fifty thousand elements": (svg("<g/>" * 50_000), "art.too_many_elements"),
    "html": ("<html/>", "art.begins_not_svg"),
    "no XML": ("Larkspur Lane", "art.not_well_formed"),
    "unclosed": ("<svg><g></svg>", "art.not_well_formed"),
    "unknown": (svg("<larkspur/>"), "art.unknown_element"),
    "points of three numbers": (svg('<polygon points="1 2 3"/>'), "art.no_points"),
    "a switch": (svg("<switch><g/></switch>"), "art.not_said"),
}  # fmt: skip
