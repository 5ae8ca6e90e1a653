// The board seen from above: a lit surface with its own grain, drawn cell by cell.
const LIGHT = [-0.52, 0.55, 0.655], AMBIENT = 0.46, SINK = 0.2, FRESH_MM = 0.12;
const TABLE = [124, 120, 112], SHADE = 0.55;

/** A row of smooth noise at a time: lattice values from an integer hash, blended down, then across. */
class Noise {
  constructor(seed, stepX, stepY, cell, nx) {
    this.seed = Math.imul(seed, 2654435761);
    this.per = cell / stepY;
    this.columns = Math.ceil((nx * cell) / stepX) + 2;
    this.blend = new Float32Array(this.columns);
    this.at = new Uint16Array(nx);
    this.share = new Float32Array(nx);
    for (let i = 0; i < nx; i++) {
      const x = (i * cell) / stepX;
      this.at[i] = Math.floor(x);
      this.share[i] = soft(x - Math.floor(x));
    }
  }

  value(i, j) {
    let n = (j * this.columns + i + this.seed) >>> 0;
    n = Math.imul(n ^ (n >>> 16), 0x7feb352d);
    n = Math.imul(n ^ (n >>> 15), 0x846ca68b);
    return ((n ^ (n >>> 16)) >>> 8) / (1 << 24);
  }

  row(j) {
    const y = j * this.per, low = Math.floor(y), share = soft(y - low);
    for (let i = 0; i < this.columns; i++) {
      const a = this.value(i, low);
      this.blend[i] = a + share * (this.value(i, low + 1) - a);
    }
  }

  of(i) {
    const a = this.blend[this.at[i]];
    return a + this.share[i] * (this.blend[this.at[i] + 1] - a);
  }
}

const soft = (share) => share * share * (3 - 2 * share);

/** (nx * ny) brightness of the board's own pattern, 128 for 1. */
function pattern(grid, grain) {
  const { nx, ny, cell } = grid, out = new Uint8Array(nx * ny);
  const steps = grain
    ? [[3, 150, 62], [5, 45, 18], [7, 16, 0.6], [19, 3.2, 0.34], [11, 120, 25]]
    : [[13, 14, 14], [17, 1.1, 0.9]];
  const noises = steps.map(([seed, x, y]) => new Noise(seed, Math.max(x, cell), Math.max(y, cell), cell, nx));
  for (let j = 0, k = 0; j < ny; j++) {
    for (const noise of noises) noise.row(j);
    for (let i = 0; i < nx; i++, k++) {
      let tone;
      if (grain) {
        const phase = (j * cell + 34 * noises[0].of(i) + 5 * noises[1].of(i)) / 6.5, ring = phase - Math.floor(phase);
        const late = ring * ring * ring * (ring > 0.9 ? 10 - 10 * ring : 1), pore = noises[3].of(i) - 0.72;
        tone = 1.01 - 0.1 * late + 0.07 * (noises[2].of(i) - 0.5) + 0.06 * (noises[4].of(i) - 0.5) - (pore > 0 ? 0.35 * pore : 0);
      } else tone = 1 + 0.02 * (noises[0].of(i) - 0.5) + 0.025 * (noises[1].of(i) - 0.5);
      out[k] = 128 * tone;
    }
  }
  return out;
}

class FlatView {
  constructor(canvas, board, tones, colours) {
    this.board = board;
    this.tones = tones;
    this.colours = colours;
    canvas.width = board.nx;
    canvas.height = board.ny;
    this.context = canvas.getContext("2d", { alpha: false });
    this.image = this.context.createImageData(board.nx, board.ny);
    this.image.data.fill(255);
  }

  /** Draws the cells of a range anew, and what their slopes and shadows touch. */
  draw([left, bottom, right, upper]) {
    const { board, tones, image } = this, { nx, ny, z, top } = board;
    const { face, ground } = this.colours, pixels = image.data;
    const fall = Math.max(1, Math.round(1.2 / board.cell)), per = 1 / (2 * board.cell);
    const [lx, ly, lz] = LIGHT;
    left = Math.max(0, left - 1);
    right = Math.min(nx - 1, right + fall + 1);
    bottom = Math.max(0, bottom - fall - 1);
    upper = Math.min(ny - 1, upper + 1);
    for (let j = bottom; j <= upper; j++) {
      const below = j > 0 ? nx : 0, above = j < ny - 1 ? nx : 0;
      for (let i = left, k = j * nx + left, p = 4 * ((ny - 1 - j) * nx + left); i <= right; i++, k++, p += 4) {
        const height = z[k];
        if (height <= 0) {
          // cut through: the table, in the shadow of what stands to its upper left
          const over = i >= fall && j < ny - fall ? z[k - fall + fall * nx] : top;
          const dim = over > 0 ? SHADE : 1;
          pixels[p] = TABLE[0] * dim;
          pixels[p + 1] = TABLE[1] * dim;
          pixels[p + 2] = TABLE[2] * dim;
          continue;
        }
        const sx = (z[i < nx - 1 ? k + 1 : k] - z[i ? k - 1 : k]) * per, sy = (z[k + above] - z[k - below]) * per;
        const facing = (lz - sx * lx - sy * ly) / (lz * Math.sqrt(1 + sx * sx + sy * sy));
        const depth = top - height, fresh = depth < FRESH_MM ? depth / FRESH_MM : 1;
        const lit = AMBIENT + (1 - AMBIENT) * (facing > 0 ? facing : 0);
        const bright = lit * (1 - (SINK * depth) / top) * tones[k] / 128;
        pixels[p] = (face[0] + (ground[0] - face[0]) * fresh) * bright;
        pixels[p + 1] = (face[1] + (ground[1] - face[1]) * fresh) * bright;
        pixels[p + 2] = (face[2] + (ground[2] - face[2]) * fresh) * bright;
      }
    }
    this.context.putImageData(image, 0, 0, left, ny - 1 - upper, right - left + 1, upper - bottom + 1);
  }
}
