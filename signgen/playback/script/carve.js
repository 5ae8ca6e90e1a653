// What cutters leave of the board. This is a simulation of its own: it shares the moves with the one that judged the
// programs, and nothing else.

/** A tool is a flat disc of radius `tip` with a cone around it that rises by `rise` for each millimetre, or a half
 *  ball; both up to `radius`. */
class Board {
  constructor(grid, top) {
    Object.assign(this, grid);
    this.top = top;
    this.z = new Float32Array(this.nx * this.ny).fill(top);
    this.touched();
  }

  /** The cells changed since the last call, as [first column, first row, last column, last row]; null for none. */
  touched() {
    const changed = this.changed;
    this.changed = null;
    return changed;
  }

  mark(low, bottom, high, upper) {
    const c = this.changed;
    this.changed = c
      ? [Math.min(c[0], low), Math.min(c[1], bottom), Math.max(c[2], high), Math.max(c[3], upper)]
      : [low, bottom, high, upper];
  }

  restore(heights) {
    if (heights) this.z.set(heights);
    else this.z.fill(this.top);
    this.mark(0, 0, this.nx - 1, this.ny - 1);
  }

  /** Height under a place, NaN beside the board. */
  height(x, y) {
    const i = Math.round((x - this.x0) / this.cell), j = Math.round((y - this.y0) / this.cell);
    return i < 0 || j < 0 || i >= this.nx || j >= this.ny ? NaN : this.z[j * this.nx + i];
  }

  /** Cuts along a straight piece of the tip's way. */
  cut(tool, [ax, ay, az], [bx, by, bz]) {
    const low = Math.min(az, bz);
    if (low >= this.top) return;
    const { nx, ny, x0, y0, cell, z } = this;
    const depth = this.top - low;
    let reach = tool.radius;
    if (tool.ball && depth < reach) reach = Math.sqrt(depth * (2 * tool.radius - depth));
    else if (tool.rise) reach = Math.min(reach, tool.tip + depth / tool.rise);
    const length = Math.hypot(bx - ax, by - ay);
    const firstRow = Math.max(0, Math.ceil((Math.min(ay, by) - reach - y0) / cell));
    const lastRow = Math.min(ny - 1, Math.floor((Math.max(ay, by) + reach - y0) / cell));
    const still = length < 1e-6;
    const tx = still ? 1 : (bx - ax) / length, ty = still ? 0 : (by - ay) / length;
    const from = still ? low : az, slope = still ? 0 : (bz - az) / length, run = still ? 0 : length;
    const lean = lag(tool, slope), squared = tool.radius * tool.radius;
    const { ball, radius, tip, rise } = tool;
    let left = nx, right = -1;
    for (let j = firstRow; j <= lastRow; j++) {
      const y = y0 + j * cell;
      // the part of the way that comes near enough to this row
      let s0 = 0, s1 = run;
      if (Math.abs(ty) > 1e-12) {
        const p = (y - reach - ay) / ty, q = (y + reach - ay) / ty;
        s0 = Math.max(0, Math.min(p, q));
        s1 = Math.min(run, Math.max(p, q));
      }
      if (s0 > s1) continue;
      const e0 = ax + s0 * tx, e1 = ax + s1 * tx;
      const first = Math.max(0, Math.ceil((Math.min(e0, e1) - reach - x0) / cell));
      const last = Math.min(nx - 1, Math.floor((Math.max(e0, e1) + reach - x0) / cell));
      if (first > last) continue;
      left = Math.min(left, first);
      right = Math.max(right, last);
      // square roots are written out: Math.hypot takes ten times as long
      const dy = y - ay;
      for (let i = first, k = j * nx + first; i <= last; i++, k++) {
        const dx = x0 + i * cell - ax;
        const along = dx * tx + dy * ty, beside = dx * ty - dy * tx;
        let s = along < 0 ? 0 : along > run ? run : along;
        if (slope) {
          const room = squared - beside * beside;
          if (room < 0) continue;
          const half = Math.sqrt(room), best = along - lean(beside < 0 ? -beside : beside, half);
          const least = along - half, most = along + half;
          if (least > run || most < 0) continue;
          s = best < least ? least : best > most ? most : best;
          s = s < 0 ? 0 : s > run ? run : s;
        }
        const ahead = s - along, away = ahead * ahead + beside * beside;
        if (!slope && away > squared) continue;
        let height = from + slope * s;
        if (ball) height += radius - Math.sqrt(Math.max(0, squared - away));
        else if (rise) {
          const out = Math.sqrt(away) - tip;
          if (out > 0) height += out * rise;
        }
        if (height < z[k]) z[k] = height;
      }
    }
    if (right >= left && lastRow >= firstRow) this.mark(left, firstRow, right, lastRow);
  }
}

/** On a slope the lowest cut at a place is made a little before or behind the axis: by how much, given how far beside
 *  the way the place lies and half the cutter's width there (from setting the derivative to zero). */
function lag(tool, slope) {
  const down = Math.sign(slope), m = Math.abs(slope);
  if (tool.ball) return (beside, half) => (down * m * half) / Math.sqrt(1 + m * m);
  if (!tool.rise || m >= tool.rise) return (beside, half) => down * half;
  const ratio = m / Math.sqrt(tool.rise ** 2 - m * m);
  return (beside) =>
    down * Math.max(ratio * beside, beside < tool.tip ? Math.sqrt(tool.tip ** 2 - beside ** 2) : 0);
}

/** The board at any time: cut on from where it is, or from the nearest earlier state that was kept. */
class Course {
  constructor(moves, board) {
    this.moves = moves;
    this.board = board;
    this.lasts = moves.until[moves.count - 1];
    this.kept = [{ move: 0, part: 0, time: 0, heights: null }];
    this.move = 0;
    this.part = 0;
    this.time = 0;
  }

  /** Cuts the whole job once and keeps states on the way; gives the browser time to breathe. */
  async prepare(say) {
    const most = Math.max(2, Math.min(16, Math.floor(56e6 / this.board.z.byteLength)));
    let breath = performance.now();
    for (let k = 1; k < this.moves.count; k++) {
      this.to(k, 1);
      const due = this.kept.at(-1).time + this.lasts / most <= this.moves.until[k];
      if (due || this.moves.first.includes(k + 1) || k === this.moves.count - 1) this.keep();
      if ((k & 63) === 0 && performance.now() - breath > 60) {
        say(k / this.moves.count);
        await new Promise((done) => setTimeout(done));
        breath = performance.now();
      }
    }
  }

  keep() {
    const { move, part } = this;
    this.kept.push({ move, part, time: this.moves.until[move], heights: this.board.z.slice() });
  }

  /** Cuts on to a part of a later move. */
  to(move, part) {
    const { moves, board } = this;
    while (this.move < move || (this.move === move && this.part < part)) {
      if (this.part >= 1) {
        this.move++;
        this.part = 0;
      }
      const k = this.move, end = k < move ? 1 : part;
      if (moves.isCut(k) && end > this.part) {
        const tool = moves.tools[moves.programOf(k)];
        moves.pieces(k, this.part, end, (from, to) => board.cut(tool, from, to));
      }
      this.part = end;
    }
    this.time = moves.since(move) + part * (moves.until[move] - moves.since(move));
  }

  /** The board as it is at a time. */
  seek(time) {
    const [move, part] = this.moves.at(Math.min(this.lasts, Math.max(0, time)));
    const back = move < this.move || (move === this.move && part < this.part);
    let from = null;
    for (const state of this.kept) {
      const reached = state.move < move || (state.move === move && state.part <= part);
      if (reached && (back || state.move > this.move)) from = state;
    }
    if (from) {
      this.board.restore(from.heights);
      this.move = from.move;
      this.part = from.part;
    }
    this.to(move, part);
  }

  /** Where the cutter's tip is now. */
  get tip() {
    return this.moves.place(this.move, this.part);
  }

  get tool() {
    return this.moves.tools[this.moves.programOf(this.move)];
  }
}
