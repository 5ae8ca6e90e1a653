"""German: words of the trade, and what they mean. The first of the words is its name."""

from __future__ import annotations

WORDS = {
    "term.datum.words": "Nullpunkt, Ursprung, Werkstücknullpunkt, XY-Null, Bezugspunkt",
    "term.datum": "Der Punkt, von dem die Programme messen, X0 Y0. Wenn nichts anderes verlangt ist, ist es die "
    "Ecke unten links des fertigen Schilds; der Schnitt ringsum läuft also etwas links davon und darunter, und das "
    "Brett muss an allen Seiten darüber hinausreichen. Einmal setzen; er bleibt beim Fräserwechsel, wo er ist.",
    "term.z-zero.words": "Z-Null, Z0, Z-Nullpunkt",
    "term.z-zero": "Die Höhe, die in den Programmen Z0 heißt. Ohne andere Angabe ist es die Unterseite des Bretts, "
    "also die Oberseite der Opferplatte: jeder Fräser wird auf dieselbe Fläche gesetzt und schneidet um dasselbe "
    "kleine Stück durch. Nach jedem Fräserwechsel neu setzen, denn keine zwei Fräser stehen gleich weit heraus.",
    "term.spoilboard.words": "Opferplatte, Unterlage",
    "term.spoilboard": "Eine ebene Platte unter dem Werkstück, in die Durchschnitte laufen dürfen. Sie muss eben "
    "sein, und das Werkstück muss ohne Spalt auf ihr liegen, denn an ihr wird Z0 gemessen.",
    "term.breakthrough.words": "Durchbruch, Übertiefe",
    "term.breakthrough": "Wie weit ein Durchschnitt unter die Unterseite des Bretts geht, damit keine Haut bleibt. "
    "Er geht von der Opferplatte ab: 0,3 mm sind üblich.",
    "term.stock.words": "Brett, Rohling, Rohteil, Platte",
    "term.stock": "Das Brett, wie es auf der Maschine liegt, bevor etwas gefräst ist. Das Einrichtblatt nennt die "
    "kleinste Größe, die reicht.",
    "term.thickness.words": "Dicke, gemessene Dicke, Stärke, Brettdicke",
    "term.thickness": "Das Brett mit dem Messschieber an mehreren Stellen messen und nehmen, was sich ergibt: "
    "Bretter sind selten so dick, wie sie heißen. Liegt Z0 unten, wird ein dickeres Brett tiefer graviert, und die "
    "Buchstaben werden breiter: bei einem 90-Grad-Fräser macht 0,1 mm Dicke jede Rille 0,2 mm breiter.",
    "term.tab.words": "Steg, Haltesteg",
    "term.tab": "Ein kurzes Stück, das unten im Schnitt ringsum stehen bleibt und das Schild bis zuletzt im Brett "
    "hält. Stege mit Messer oder Säge trennen, wenn die Spindel steht, und den Rest abschleifen. Ohne Stege müssen "
    "Klebeband oder Schrauben das Stück halten, sonst packt es der Fräser, wenn es frei wird.",
    "term.keyhole.words": "Schlüsselloch, Aufhängeschlitz",
    "term.keyhole": "Ein Schlitz in der Rückseite, innen breiter als an der Fläche, mit einem runden Einführloch am "
    "unteren Ende: dort wird das Schild über einen Schraubenkopf geschoben und herabgelassen. Ihn schneidet ein "
    "Schlüssellochfräser, ein Kopf auf dünnem Hals, der nur am Einführloch herauskommen darf.",
    "term.climb.words": "Gleichlauf, Gleichlauffräsen",
    "term.climb": "So fräsen, dass die Schneiden von der ungefrästen Seite her ins Holz gehen: bei üblicher "
    "Drehrichtung liegt das Holz, das bleibt, rechts vom Weg. Auf einer Maschine ohne Spiel wird die Kante sauberer.",
    "term.conventional-milling.words": "Gegenlauf, Gegenlauffräsen",
    "term.conventional-milling": "So fräsen, dass die Schneiden aus dem Schnitt heraus kommen: das Holz, das "
    "bleibt, liegt links vom Weg. Das schont Maschinen mit Spiel und hebt mehr Fasern.",
    "term.stepdown.words": "Zustellung, Zustelltiefe, Schnitttiefe",
    "term.stepdown": "Wie viel tiefer jeder Durchgang geht als der vorige. Etwa der halbe Durchmesser des Fräsers "
    "ist in Holz üblich; zu viel biegt oder bricht den Fräser und würgt die Spindel ab.",
    "term.stepover.words": "Bahnabstand, seitliche Zustellung",
    "term.stepover": "Wie weit benachbarte Ringe auseinander liegen, wo eine Fläche geräumt wird. Unter dem halben "
    "Durchmesser bleibt nichts zwischen ihnen stehen.",
    "term.chip-load.words": "Zahnvorschub, Vorschub je Zahn, Vorschub je Schneide",
    "term.chip-load": "Wie viel jede Schneide bei jeder Umdrehung nimmt: Vorschub geteilt durch Drehzahl mal Zahl "
    "der Schneiden. Zu wenig reibt nur, wird heiß und verbrennt das Holz; zu viel bricht den Fräser. Brennt die "
    "Kante, den Vorschub erhöhen oder die Drehzahl senken; rattert der Fräser oder wird die Spindel tiefer im Ton, "
    "den Vorschub senken.",
    "term.feed.words": "Vorschub, Vorschubgeschwindigkeit",
    "term.feed": "Wie schnell der Fräser durch das Werkstück geht, in Millimetern je Minute. An den meisten "
    "Steuerungen lässt er sich ändern, während das Programm läuft.",
    "term.plunge.words": "Eintauchen, Tauchvorschub",
    "term.plunge": "Gerade nach unten fahren. Für einen Fräser ist nichts schwerer, darum geht es langsam, und ein "
    "Fräser ohne Schneiden über die Stirn kann es gar nicht.",
    "term.ramp.words": "Rampe, schräges Eintauchen",
    "term.ramp": "Auf dem Weg des Schnitts schräg hinabgehen, mit wenigen Grad, statt gerade nach unten. Das schont "
    "den Fräser und lässt keinen Brandfleck.",
    "term.helix.words": "Schraubenlinie, Helix, Wendel",
    "term.helix": "In einer Spirale hinabgehen, um ein Loch zu bohren, das weiter ist als der Fräser. Unten endet "
    "sie mit einem vollen Kreis, damit das Loch überall rund ist.",
    "term.peck.words": "Spanbruchbohren, Tieflochbohren",
    "term.peck": "In Schritten bohren und dazwischen herauskommen, damit die Späne aus dem Loch kommen und der "
    "Bohrer kühl bleibt.",
    "term.rapid.words": "Eilgang, G0",
    "term.rapid": "Eine Bewegung, so schnell die Maschine kann, gedacht für die Luft. Berührt sie Holz, bricht der "
    "Fräser: jedes Programm wird darauf geprüft, bevor es geschrieben wird.",
    "term.clearance.words": "Sicherheitshöhe, Sicherheitsabstand, Rückzugshöhe",
    "term.clearance": "Wie hoch über dem Brett der Fräser von Schnitt zu Schnitt fährt. Es muss höher sein als jede "
    "Pratze und Schraube auf dem Weg.",
    "term.v-bit.words": "V-Fräser, V-Nutfräser, Gravierfräser, Gravurstichel",
    "term.v-bit": "Ein Fräser mit einem spitzen Kegel. Die Breite seiner Rille folgt aus ihrer Tiefe: bei 90 Grad "
    "ist sie halb so tief wie breit, bei 60 Grad 0,87-mal. So bekommen Buchstaben scharfe Ecken: der Fräser steigt, "
    "wo sie schmal werden. Der Winkel ist der ganze zwischen beiden Seiten.",
    "term.tip-flat.words": "Spitzenbreite, abgeflachte Spitze, Spitze",
    "term.tip-flat": "Die kleine Fläche, die die meisten V-Fräser an der Spitze haben. Sie ist die schmalste Linie, "
    "die der Fräser schneiden kann; mit der Lupe messen und mit v-bit-tip angeben.",
    "term.end-mill.words": "Schaftfräser, Nutfräser, Fräser",
    "term.end-mill": "Ein zylindrischer Fräser mit ebener Stirn, für den Schnitt ringsum, Löcher und ebene Böden. "
    "Sein Radius bleibt in jeder Innenecke stehen.",
    "term.ball-nose.words": "Kugelfräser, Radiusfräser",
    "term.ball-nose": "Ein Fräser mit runder Stirn, für Mulden und Rillen mit rundem Grund.",
    "term.flute.words": "Schneide, Zahn, Spannut",
    "term.flute": "Eine schneidende Kante mit der Nut davor, die den Span abführt. Zwei sind in Holz üblich, eine "
    "in Kunststoffen, die schmelzen.",
    "term.shank.words": "Schaft",
    "term.shank": "Der runde Teil des Fräsers, den die Spannzange hält. Sein Durchmesser bestimmt, welche Zange "
    "nötig ist.",
    "term.collet.words": "Spannzange, Zange",
    "term.collet": "Die geschlitzte Hülse, die den Fräser in der Spindel hält. Sie schließt um etwa einen "
    "Millimeter und öffnet nie weiter als ihr Maß: ein Schaft von 8 mm gehört in eine 8-7, einer von 1/8 Zoll in "
    "eine 4-3. Zwei Drittel ihrer Länge oder mehr müssen den Schaft halten; sauber halten und in die Mutter "
    "einrasten, bevor beide auf die Spindel kommen.",
    "term.stick-out.words": "Auskraglänge, Überstand, Ausspannlänge",
    "term.stick-out": "Wie weit der Fräser aus der Spannzange steht. Doppelt so weit biegt er sich achtmal so viel: "
    "nicht länger, als der Schnitt es braucht.",
    "term.runout.words": "Rundlauf, Rundlauffehler, Schlag",
    "term.runout": "Wie weit die Spitze des Fräsers neben der Achse läuft. Er kommt von Schmutz in der Zange oder "
    "einem krummen Schaft, macht Rillen breiter und nutzt eine Schneide zuerst ab.",
    "term.spindle.words": "Spindel, Fräsmotor",
    "term.spindle": "Der Motor, der den Fräser dreht. Er muss auf Drehzahl sein, bevor der Fräser das Holz trifft: "
    "die Programme warten.",
    "term.cap-height.words": "Versalhöhe, Höhe der Großbuchstaben",
    "term.cap-height": "Die Höhe eines großen H, an der Schrift selbst gemessen. Kleinbuchstaben und Ziffern folgen "
    "daraus.",
    "term.digit-height.words": "Ziffernhöhe",
    "term.digit-height": "Die Höhe der Ziffer 1, an der Schrift selbst gemessen. In vielen Schriften ist sie die "
    "der Großbuchstaben, in Schreibschriften oft weniger: statt cap-height angeben, wenn eine Zahl eine bestimmte "
    "Größe haben muss.",
    "term.baseline.words": "Grundlinie, Schriftlinie",
    "term.baseline": "Die Linie, auf der die Buchstaben stehen; g und y hängen darunter.",
    "term.variable-font.words": "variable Schrift, Schriftachsen",
    "term.variable-font": "Eine Schrift, die sich zwischen zwei Enden einer Eigenschaft einstellen lässt: wght ist "
    "die Stärke, wdth die Breite. Sie kommt in ihrer eigenen Einstellung, wenn font-axes nichts anderes sagt, etwa "
    "wght=600,wdth=90.",
    "term.fallback.words": "Ersatzschrift",
    "term.fallback": "Buchstaben, die einer Schrift fehlen, aus einer anderen setzen, die sie hat, mit gleich hohen "
    "Großbuchstaben. Nur auf Wunsch, nicht von selbst, denn zwei Schriften in einer Zeile sieht man.",
    "term.fit.words": "Einpassen, so groß wie möglich",
    "term.fit": "Zeilen ohne eigene Höhe wachsen, bis sie an die Ränder, ein Loch oder eine Zeile im Kreis stoßen: "
    "alle auf dieselbe Höhe (together) oder jede auf dieselbe Breite (each).",
    "term.arc.words": "Bogen, Text im Kreis, Ring",
    "term.arc": "Ein Kreis, auf dem die Buchstaben stehen. Jeder wird als Ganzes gedreht, keiner gebogen. "
    "Buchstaben oben auf ihm (above) und unten in ihm (below) liest man von links; ein Ring geht ganz herum. Einen "
    "kleineren Radius als den des Schilds angeben, um die Höhe der Buchstaben und den Rand.",
    "term.legibility.words": "Lesbarkeit, Leseabstand",
    "term.legibility": "Wie weit Buchstaben zu lesen sind, folgt aus ihrer Höhe; wie gut, aus der Breite ihrer "
    "Striche, ihrer Form und dem Raum dazwischen. Der Bericht stellt diese Zahlen neben veröffentlichte Regeln. "
    "Eine Regel, die eingehalten werden muss, nennt das Recht dort, wo das Schild hängen wird, oder wer darüber "
    "wacht.",
    "term.kerning.words": "Unterschneidung, Kerning",
    "term.kerning": "Raum, der zwischen Buchstaben weggenommen wird, die sonst zu weit auseinander stünden, etwa A "
    "und V.",
    "term.groove.words": "Rille, V-Rille, geschnitzter Buchstabe",
    "term.groove": "Buchstaben, die ein V-Fräser längs ihrer Mitte schneidet, so tief, wie ihre Breite verlangt, "
    "bis zur größten Tiefe; breitere bekommen dort einen ebenen Boden.",
    "term.recess.words": "Vertiefung, Tasche, eingelassener Buchstabe",
    "term.recess": "Ein Buchstabe oder ein Feld mit ebenem Boden und senkrechten Wänden, von einem Schaftfräser "
    "geschnitten. Innenecken bleiben so rund wie der Fräser, wenn nicht der V-Fräser sie säubert (sharp-corners).",
    "term.raised-letters.words": "erhabene Buchstaben, stehende Buchstaben",
    "term.raised-letters": "Buchstaben, die auf der Höhe der Fläche bleiben, während der Grund um sie in einem Feld "
    "vertieft wird.",
    "term.stroke.words": "Strich, einfache Linie",
    "term.stroke": "Ein Buchstabe aus einfachen Linien, denen der V-Fräser in einer Tiefe folgt, sodass alle gleich "
    "breit sind. Dafür gemacht sind die Schriften namens hershey; bei Umrissschriften mit Strichen von einer Breite "
    "werden die Mittellinien genommen.",
    "term.stencil-bridge.words": "Brücke, Schablonenbrücke",
    "term.stencil-bridge": "Ein Stück Holz quer durch den Strich eines ganz durchgeschnittenen Buchstabens. Es "
    "hält, was herausfiele, etwa das Innere eines O. Schablonenschriften haben ihre eigenen.",
    "term.flat-floor.words": "ebener Boden",
    "term.flat-floor": "Der ebene Grund eines Buchstabens, der für eine Rille von größter Tiefe zu breit ist. Der "
    "Schaftfräser räumt ihn, und der V-Fräser macht die Wände und was der Schaftfräser nicht erreicht.",
    "term.medial-axis.words": "Mittelachse, Mittellinie",
    "term.medial-axis": "Die Linie aller Punkte, die von beiden Seiten eines Buchstabens gleich weit entfernt sind. "
    "Auf ihr läuft die Spitze des V-Fräsers, und der Abstand zu den Seiten sagt, wie tief.",
    "term.margin.words": "Rand, Randabstand",
    "term.margin": "Raum zwischen den Buchstaben und der Kante des Schilds.",
    "term.inset.words": "Lochabstand, Abstand von der Kante",
    "term.inset": "Der Abstand von der Kante des Schilds zur Mitte eines Lochs. Das Doppelte des Lochdurchmessers "
    "bewahrt das Holz vor dem Spalten.",
    "term.clearance-hole.words": "Durchgangsloch",
    "term.clearance-hole": "Ein Loch, durch das eine Schraube geht, ohne zu fassen. Für eine Schraube M5 ist es 5,5 "
    "mm weit (ISO 273, mittel), für eine Holzschraube Nr. 8 11/64 Zoll.",
    "term.countersink.words": "Senkung, Senkloch, versenkter Kopf",
    "term.countersink": "Ein Kegel am oberen Ende eines Lochs, damit der Kopf einer Senkkopfschraube bündig mit dem "
    "Schild liegt. Der V-Fräser schneidet ihn, bevor das Loch gebohrt wird, so weit, wie --screw oder "
    "--head-diameter sagt. Am ersten Loch eine Schraube probieren; steht ihr Kopf vor, stimmt der Winkel des "
    "V-Fräsers oder seine Null nicht.",
    "term.slot.words": "Langloch",
    "term.slot": "Ein Loch, das länger als breit ist (--slot-length), damit sich das Schild verschieben lässt, "
    "bevor die Schrauben angezogen werden. Unter den Schraubenkopf gehört eine Scheibe.",
    "term.border.words": "Umriss, Form, Außenform",
    "term.border": "Der Umriss des Schilds: einer aus der Liste (signgen list borders) oder der geschlossene Pfad "
    "einer SVG-Datei. Eine Innenecke wird so rund wie der Fräser, der an ihr entlang geht; das Blatt sagt es, wenn "
    "man es sieht.",
    "term.eye.words": "Öse",
    "term.eye": "Das Loch am Ende eines Anhängers, an dem er hängt.",
    "term.ogee.words": "Karnies, S-Bogen",
    "term.ogee": "Ein doppelter Bogen, erst nach außen, dann nach innen, wie an den Ecken mancher Tafeln.",
    "term.kerf.words": "Schnittfuge, Schnittbreite",
    "term.kerf": "Die Breite eines Schnitts. Beim Schnitt ringsum mit dem Schaftfräser ist es dessen Durchmesser.",
    "term.gouge.words": "Verletzung, Einschnitt",
    "term.gouge": "Ein Schnitt in das, was hätte bleiben sollen. Jedes Programm wird darauf geprüft, bevor es "
    "geschrieben wird.",
    "term.tear-out.words": "Ausriss, Ausrisse",
    "term.tear-out": "Fasern, die mit dem Span ausreißen, meist quer zur Maserung und an der Unterseite. Ein "
    "scharfer Fräser, eine frische Opferplatte und Klebeband auf der Fläche helfen.",
    "term.grain.words": "Maserung, Faserrichtung",
    "term.grain": "Die Richtung der Fasern. Sie gehört längs der längeren Seite des Schilds: kleine Buchstaben "
    "brechen weniger aus, und das Schild biegt sich weniger.",
    "term.dialect.words": "Dialekt, Postprozessor",
    "term.dialect": "Wie eine Art von Steuerung ihre Programme geschrieben haben will. Der schlichte bleibt bei "
    "Wörtern, die alle kennen.",
    "term.dust-extraction.words": "Absaugung, Staub",
    "term.dust-extraction": "Holzstaub schadet der Lunge, mancher erzeugt Krebs, und er brennt. Am Fräser absaugen, "
    "eine Maske tragen und die örtlichen Grenzwerte einhalten.",
    "term.pass.words": "Durchgang, Zustellebene, Schicht",
    "term.pass": "Ein Weg des Fräsers auf einer Tiefe. Ein tiefer Schnitt braucht mehrere Durchgänge, jeder um die "
    "Zustellung tiefer als der vorige: Tiefe durch Zustellung, aufgerundet, sagt wie viele.",
    "term.tool-change.words": "Werkzeugwechsel, Fräserwechsel",
    "term.tool-change": "Einen Fräser herausnehmen und den nächsten einsetzen, bei stehender Spindel und gezogenem "
    "Stecker oder gesichertem Schalter. Ein Programm ist hier für einen Fräser oder hält für den nächsten an. "
    "Nach dem Wechsel wird Z neu "
    "gesetzt, denn keine zwei Fräser stehen gleich weit vor; X und Y bleiben.",
    "term.offset.words": "Versatz, Nullpunktverschiebung",
    "term.offset": "Ein Abstand, der dazugezählt wird. Die Nullpunktverschiebung (G54) ist, wo auf der Maschine der "
    "Nullpunkt des Programms liegt. Der Versatz des Fräsers ist sein Radius, um den seine Mitte neben der Linie "
    "läuft; hier steht er schon im Programm, darum gilt G40.",
    "term.dry-run.words": "Trockenlauf, Luftschnitt",
    "term.dry-run": "Das Programm mit Z hoch über dem Brett laufen lassen, oder mit stehender Spindel ohne Fräser, "
    "um vor dem Schnitt zu sehen, wohin es fährt. Eine Hand bleibt am Halt.",
    "term.coordinates.words": "Koordinaten, Ort",
    "term.coordinates": "Drei Zahlen, die einen Ort nennen: X längs der Breite, Y längs der Höhe, Z nach oben. Sie "
    "zählen von den Nullpunkten, darum hat ein Ort links von X0 oder unter Z0 ein Minus.",
}
