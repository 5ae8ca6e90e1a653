// The programs' lines as they stand, and which modal words are in force after each.
// Source of the groups: NIST IR 6556, section 3.4 and Table 4.
const GROUPS = [
  ["G0", "G1", "G2", "G3", "G38.2", "G80", "G81", "G82", "G83", "G84", "G85", "G86", "G87", "G88", "G89"],
  ["G17", "G18", "G19"], ["G20", "G21"], ["G90", "G91"], ["G93", "G94"], ["G40", "G41", "G42"], ["G43", "G49"],
  ["G54", "G55", "G56", "G57", "G58", "G59", "G59.1", "G59.2", "G59.3"], ["G61", "G61.1", "G64"], ["G98", "G99"],
  ["M3", "M4", "M5"], ["M7", "M8", "M9"],
];
const GROUP_OF = new Map(GROUPS.flatMap((names, group) => names.map((name) => [name, group])));

class Listing {
  constructor(text) {
    this.lines = text.replace(/\n$/, "").split("\n");
    const force = new Array(GROUPS.length).fill(""), own = { F: "", S: "" };
    this.states = this.lines.map((line) => {
      const bare = line.replace(/\([^)]*\)|;.*$/g, "").replace(/\s/g, "").toUpperCase();
      for (const [, letter, number] of bare.matchAll(/([A-Z])([-+]?\d*\.?\d*)/g)) {
        const name = letter + Number(number), group = GROUP_OF.get(name);
        if (group !== undefined) force[group] = name;
        if (letter in own && number !== "") own[letter] = String(Number(number));
      }
      return { modal: force.filter(Boolean).join(" "), feed: own.F, speed: own.S };
    });
  }

  text(line) {
    return this.lines[line - 1] ?? "";
  }

  state(line) {
    return this.states[line - 1] ?? { modal: "", feed: "", speed: "" };
  }
}
