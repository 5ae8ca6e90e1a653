"""German: what the shop calls things, and what is said of materials."""

from __future__ import annotations

WORDS = {
    "material.birch-plywood": "Birkensperrholz",
    "material.softwood-plywood": "Nadelsperrholz",
    "material.mdf": "MDF",
    "material.softwood": "Nadelholz (Kiefer, Fichte, Lärche)",
    "material.hardwood": "Laubholz (Eiche, Ahorn, Kirsche)",
    "material.acrylic": "Acrylglas, gegossen",
    "material.hdpe": "HDPE-Platte",
    "material.foam-sheet": "Schaumplatte ohne PVC (Polypropylen)",
    "material.aluminium-composite": "Aluminium-Verbundplatte (zwei dünne Häute, Kunststoffkern)",
    "material.aluminium": "Aluminiumlegierung (weich, zum Gravieren)",
    "material.brass": "Messing (gut zerspanbar)",
    "machine.desktop-router": "Tischfräse",
    "machine.bench-router": "Standfräse",
    "machine.sheet-router": "Plattenfräse",
    "v-bit.pointed": "V-Fräser {angle} Grad, {size}",
    "v-bit.flat": "V-Fräser {angle} Grad, {size}, Spitze {tip} flach",
    "tool.keyhole": "Schlüssellochfräser {size}",
    "tool.end-mill": "Schaftfräser {size}",
    "tool.end-mill.down-cut": "Schaftfräser mit Linksdrall {size}",
    "tool.end-mill.compression": "Schaftfräser mit Gegendrall {size}",
    "tool.end-mill.straight": "Schaftfräser mit geraden Schneiden {size}",
    "tool.ball-nose": "Kugelfräser {size}",
    "tool.ball-nose.down-cut": "Kugelfräser mit Linksdrall {size}",
    "tool.ball-nose.compression": "Kugelfräser mit Gegendrall {size}",
    "tool.ball-nose.straight": "Kugelfräser mit geraden Schneiden {size}",
    "tool.drill": "Bohrer {size}",
    "tool.drill.down-cut": "Bohrer mit Linksdrall {size}",
    "tool.drill.compression": "Bohrer mit Gegendrall {size}",
    "tool.drill.straight": "Bohrer mit geraden Schneiden {size}",
    "caution.wood-dust": "Holzstaub schadet der Lunge und brennt: absaugen und Maske tragen; örtliche Grenzwerte "
    "gelten.",
    "caution.glue-lines": "Leimfugen stumpfen Fräser ab, und die letzte Lage splittert: das Brett flach auf eine "
    "frische Opferplatte drücken.",
    "caution.not-as-thick-as-named": "Bretter sind selten so dick, wie sie heißen: an mehreren Stellen messen.",
    "caution.voids": "Hohlstellen und Äste im Kern können ausbrechen: zuerst die Kanten des Bretts ansehen.",
    "caution.mdf-dust": "Der Staub ist sehr fein und trägt Formaldehydharz: absaugen und Maske tragen; örtliche "
    "Grenzwerte gelten.",
    "caution.blunts": "Es stumpft Fräser ab: vor langer Arbeit die Schneide ansehen.",
    "caution.resin": "Harz verklebt Fräser, und Fasern reißen an kleinen Buchstaben: einen scharfen Fräser nehmen.",
    "caution.wood-moves": "Holz arbeitet quer zur Faser mit den Jahreszeiten: an den Schrauben Luft lassen.",
    "caution.hardwood-dust": "Staub von Laubhölzern wie Eiche und Buche kann Krebs erzeugen: absaugen und Maske "
    "tragen; örtliche Grenzwerte gelten.",
    "caution.burns": "Es brennt, wo der Fräser verweilt: Vorschub halten, Fräser scharf.",
    "caution.melts-and-welds": "Es schmilzt und schweißt sich heiß an den Fräser: scharfer Fräser, voller "
    "Vorschub, Späne räumen, nie verweilen.",
    "caution.sheet-cracks": "Späne sind scharf, und die Platte reißt, wenn sie hart gespannt wird: Augen schützen.",
    "caution.film": "Die Schutzfolie auf der Fläche lassen.",
    "caution.strings": "Lange Fäden wickeln sich um den Fräser: vor dem Abziehen die Spindel anhalten.",
    "caution.tape-hardly-sticks": "Klebeband haftet kaum: mit Schrauben oder Pratzen halten.",
    "caution.foamed-pvc": "Nach dem Datenblatt fragen: PVC-Schaum sieht gleich aus, und seine heißen Späne geben "
    "Chlorwasserstoff ab.",
    "caution.melts": "Es schmilzt, wenn der Fräser reibt: scharfer Fräser, voller Vorschub, Späne räumen, nie "
    "verweilen.",
    "caution.soft": "Es ist weich und hebt sich: überall halten, und Stege vor dem Trennen niederdrücken.",
    "caution.skin-chips": "Späne der Häute sind scharf und heiß: Augen schützen, Hände weg, abbürsten.",
    "caution.hot-metal-chips": "Nie in die Absaugung einer Holzwerkstatt: heiße Metallspäne zünden den Staub.",
    "caution.core-melts": "Der Kern schmilzt, wenn der Fräser reibt: scharfer Einzahnfräser, Späne räumen.",
    "caution.hot-chips": "Späne sind scharf und heiß: Augen schützen, Hände weg, abbürsten.",
    "caution.welds-when-dry": "Es schweißt sich an eine trockene Schneide: Einzahnfräser, Luft auf den Schnitt, "
    "ein Tropfen Alkohol oder Schneidöl, wie es sein Datenblatt erlaubt.",
    "caution.hold-all-round": "Ringsum mit Pratzen oder Schrauben halten; eine kleine Fräse will leichte Zustellungen.",
    "caution.needles": "Späne fliegen als feine Nadeln: Augen schützen und die Maschine abdecken.",
    "caution.no-wood-extractor": "Nie in die Absaugung einer Holzwerkstatt.",
    "caution.lead": "Manches Messing enthält Blei: Hände waschen, kein Essen in der Nähe.",
}
