"""German: the steps of speeds and feeds."""

from __future__ import annotations

WORDS = {
    "worked.feed_per_tooth": "Vorschub je Schneide",
    "worked.material_s_ratio_times_neck": "das Verhältnis des Werkstoffs mal den Durchmesser des Halses: er ist das "
    "schwächste Stück",
    "worked.material_s_ratio_times_diameter": "das Verhältnis des Werkstoffs mal den Durchmesser",
    "worked.mean_diameter_v_bit": "Mittlerer Durchmesser",
    "worked.half_width_deep_half_tip": "halb so breit wie in {depth} Tiefe, und die halbe Spitze",
    "worked.raised_least_chip_that_does": "erhöht auf den kleinsten Span, der nicht reibt",
    "worked.feed_wanted_speed": "Vorschub bei Wunschzahl",
    "worked.machine_reaches": "die Maschine erreicht {top}",
    "worked.so_slow_that_chip_keeps": "so langsam, dass der Span bei größtem Vorschub der Maschine seine Dicke "
    "behält, in Hundertern",
    "worked.spindle_goes_no_slower_so": "langsamer dreht die Spindel nicht, der Span wird also dünner",
    "worked.spindle_speed": "Drehzahl",
    "worked.machine_has": "die Maschine hat {least} bis {most}",
    "worked.in_tens_never_over_machine": "in Zehnern, nie über dem der Maschine",
    "worked.straight_down": "Senkrecht hinab",
    "worked.z_reaches": "Z erreicht {top}",
    "worked.along_ramp": "Auf einer Rampe",
    "worked.degrees_steepest": "höchstens {degrees} Grad steil",
    "worked.depth_pass": "Zustellung",
    "worked.no_deeper_than_cone": "nicht tiefer als sein Kegel",
    "worked.height_head_in_slot_that": "die Höhe des Kopfs, in einem vorher offen gefrästen Schlitz",
    "worked.no_deeper_than_edges": "nicht tiefer als seine Schneiden",
    "worked.slowest_that_machine_has_drills": "die langsamste der Maschine: Bohrer wollen wenige Umdrehungen",
    "worked.depth_peck": "Bohrschritt",
    "worked.speed_rim": "Schnittgeschwindigkeit",
    "worked.thin_chip": "Dünner Span",
    "worked.times_feed_up_times_machine": "mal den Vorschub, höchstens das {most}-Fache und der der Maschine",
    "worked.spindle_has_w_speed": "die Spindel hat bei dieser Drehzahl {watts} W",
    "worked.out_collet_diameters_above_4": "{out} aus der Zange, {ratio} Durchmesser; über 4 kann er rattern",
    "worked.feed": "Vorschub",
    "worked.removed": "Abgetragen",
    "worked.power": "Leistung",
    "worked.force": "Kraft",
    "worked.bend": "Biegung",
}
