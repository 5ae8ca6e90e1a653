// The programs' moves, unpacked; sign coordinates, millimetres and seconds throughout.
const RAPID = 0, LINE = 1, CLOCKWISE = 2, CHANGE = 4;
const CHORD_MM = 0.002;

async function inflated(text) {
  const packed = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** Reads columns one after the other: bytes as they are, whole numbers as four planes of folded differences. */
class Columns {
  constructor(bytes) {
    this.bytes = bytes;
    this.at = 0;
  }

  small(count) {
    this.at += count;
    return this.bytes.slice(this.at - count, this.at);
  }

  whole(count) {
    const { bytes, at } = this, out = new Int32Array(count);
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const k = at + i;
      const folded = bytes[k] | (bytes[k + count] << 8) | (bytes[k + 2 * count] << 16) | (bytes[k + 3 * count] << 24);
      sum += (folded >>> 1) ^ -(folded & 1);
      out[i] = sum;
    }
    this.at += 4 * count;
    return out;
  }
}

/** Every move of every program in order. Move i goes from the end of move i - 1; a CHANGE has no way: the cutter is
 *  changed there and stands at its end when the program begins. */
class Moves {
  constructor(bytes, job) {
    const columns = new Columns(bytes), n = job.moves;
    const mm = (values) => Float64Array.from(values, (value) => value / job.perMm);
    this.count = n;
    this.kind = columns.small(n);
    this.x = mm(columns.whole(n));
    this.y = mm(columns.whole(n));
    this.z = mm(columns.whole(n));
    this.line = columns.whole(n);
    this.until = Float64Array.from(columns.whole(n), (value) => value / 1000);
    const i = mm(columns.whole(job.arcs)), j = mm(columns.whole(job.arcs));
    this.cx = new Float64Array(n);
    this.cy = new Float64Array(n);
    for (let k = 0, arc = 0; k < n; k++) {
      if (!this.isArc(k)) continue;
      this.cx[k] = this.x[k - 1] + i[arc];
      this.cy[k] = this.y[k - 1] + j[arc++];
    }
    this.first = job.programs.map((program) => program.first);
    this.tools = job.programs.map((program) => program.tool);
  }

  isArc(k) {
    return this.kind[k] >= CLOCKWISE && this.kind[k] < CHANGE;
  }

  isCut(k) {
    return this.kind[k] >= LINE && this.kind[k] < CHANGE;
  }

  /** The program that a move belongs to. */
  programOf(k) {
    let p = this.first.length - 1;
    while (this.first[p] > k) p--;
    return p;
  }

  /** When a move begins. */
  since(k) {
    return k ? this.until[k - 1] : 0;
  }

  /** The move that runs at a time, and how much of it is done. */
  at(time) {
    let low = 0, high = this.count - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.until[middle] > time) high = middle;
      else low = middle + 1;
    }
    const since = this.since(low), lasts = this.until[low] - since;
    return [low, lasts > 0 ? Math.min(1, Math.max(0, (time - since) / lasts)) : 1];
  }

  arc(k) {
    const ax = this.x[k - 1] - this.cx[k], ay = this.y[k - 1] - this.cy[k];
    const bx = this.x[k] - this.cx[k], by = this.y[k] - this.cy[k];
    const clockwise = this.kind[k] === CLOCKWISE;
    let sweep = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    // ends that agree are a full circle
    if (Math.max(Math.abs(ax - bx), Math.abs(ay - by)) < 1e-6) sweep = 2 * Math.PI;
    else if (clockwise && sweep > 0) sweep = 2 * Math.PI - sweep;
    else if (clockwise) sweep = -sweep;
    else if (sweep < 0) sweep += 2 * Math.PI;
    return { radius: Math.hypot(ax, ay), from: Math.atan2(ay, ax), sweep: clockwise ? -sweep : sweep };
  }

  /** Where the tip is when a part of a move is done. */
  place(k, part) {
    if (k === 0 || this.kind[k] === CHANGE || part >= 1) return [this.x[k], this.y[k], this.z[k]];
    const z = this.z[k - 1] + part * (this.z[k] - this.z[k - 1]);
    if (!this.isArc(k)) {
      return [this.x[k - 1] + part * (this.x[k] - this.x[k - 1]), this.y[k - 1] + part * (this.y[k] - this.y[k - 1]), z];
    }
    const { radius, from, sweep } = this.arc(k), angle = from + part * sweep;
    return [this.cx[k] + radius * Math.cos(angle), this.cy[k] + radius * Math.sin(angle), z];
  }

  /** Calls `each(from, to)` with the straight pieces of a part of a move. */
  pieces(k, begin, end, each) {
    let count = 1;
    if (this.isArc(k)) {
      const { radius, sweep } = this.arc(k);
      const half = Math.acos(1 - Math.min(1, CHORD_MM / Math.max(radius, CHORD_MM)));
      count = Math.max(1, Math.ceil(((end - begin) * Math.abs(sweep)) / (2 * half)));
      if (Math.abs(sweep) * (end - begin) > 4) count = Math.max(3, count);
    }
    let from = begin > 0 ? this.place(k, begin) : [this.x[k - 1], this.y[k - 1], this.z[k - 1]];
    for (let i = 1; i <= count; i++) {
      const to = this.place(k, begin + ((end - begin) * i) / count);
      each(from, to);
      from = to;
    }
  }
}
