// What lies over the board seen from above, and the section through it.
const INK = "#1d262e", RUST = "#8c2f14", BLUE = "#14598c", STEEL = "#5d6a74";

/** A canvas as fine as the screen; comes back with its context, drawn on in the page's own lengths. */
function fine(canvas) {
  const ratio = Math.min(3, devicePixelRatio), { clientWidth: wide, clientHeight: high } = canvas;
  const [w, h] = [Math.round(wide * ratio), Math.round(high * ratio)];
  if (canvas.width !== w || canvas.height !== h) Object.assign(canvas, { width: w, height: h });
  const context = canvas.getContext("2d");
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.clearRect(0, 0, wide, high);
  return context;
}

/** From the sign's millimetres to a canvas that shows the whole board. */
function fitted(canvas, board) {
  const scale = canvas.clientWidth / (board.nx * board.cell);
  const left = board.x0 - board.cell / 2, upper = board.y0 + (board.ny - 0.5) * board.cell;
  return {
    scale,
    to: (x, y) => [(x - left) * scale, (upper - y) * scale],
    from: (px, py) => [left + px / scale, upper - py / scale],
  };
}

function drawOver(canvas, board, job, { tip, tool, air, cutting, probe, grid }) {
  const pen = fine(canvas), fit = fitted(canvas, board);
  rulers(pen, canvas, board, job, fit, grid);
  pen.lineJoin = "round";
  if (air.length) {
    pen.beginPath();
    for (let k = 0; k < air.length; k += 6) {
      pen.moveTo(...fit.to(air[k], air[k + 1]));
      pen.lineTo(...fit.to(air[k + 3], air[k + 4]));
    }
    stroke(pen, "#fff", 2.6, []);
    stroke(pen, BLUE, 1.2, [5, 3]);
  }
  datum(pen, fit.to(...job.zero), Math.min(34, 0.18 * canvas.clientHeight));
  if (tip) {
    const at = fit.to(tip[0], tip[1]), depth = board.top - tip[2];
    ring(pen, at, tool.radius * fit.scale, "#fff", 3, []);
    ring(pen, at, tool.radius * fit.scale, INK, 1.4, cutting ? [] : [4, 3]);
    // how wide it is where it meets the face
    const wide = tool.rise && depth > 0 ? Math.min(tool.radius, tool.tip + depth / tool.rise) : 0;
    if (wide && wide < tool.radius) ring(pen, at, wide * fit.scale, RUST, 1.4, []);
    pen.fillStyle = RUST;
    pen.beginPath();
    pen.arc(...at, 2, 0, 7);
    pen.fill();
  }
  if (probe) {
    const [x, y] = fit.to(...probe);
    pen.beginPath();
    for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]]) {
      pen.moveTo(x + 4 * dx, y + 4 * dy);
      pen.lineTo(x + 12 * dx, y + 12 * dy);
    }
    stroke(pen, "#fff", 3, []);
    stroke(pen, INK, 1.4, []);
  }
}

/** Marks along the lower and the left edge, counted from the programs' zero; lines over the whole board if asked for. */
function rulers(pen, canvas, board, job, fit, grid) {
  const { clientWidth: wide, clientHeight: high } = canvas;
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500].find((mm) => mm * fit.scale >= 34) ?? 1000;
  pen.font = "11px sans-serif";
  for (const across of [true, false]) {
    const [zero, end] = across ? [job.zero[0], wide] : [job.zero[1], high];
    const low = fit.from(0, high)[across ? 0 : 1], up = fit.from(wide, 0)[across ? 0 : 1];
    for (let n = Math.ceil((low - zero) / step); zero + n * step <= up; n++) {
      const [px, py] = fit.to(across ? zero + n * step : 0, across ? 0 : zero + n * step);
      pen.beginPath();
      if (across) [pen.moveTo(px, grid ? 0 : high - 7), pen.lineTo(px, high)];
      else [pen.moveTo(0, py), pen.lineTo(grid ? wide : 7, py)];
      stroke(pen, "#fff", 2.4, []);
      stroke(pen, INK, 0.8, []);
      const at = across ? px : py;
      if (at < 16 || at > end - 16) continue;
      Object.assign(pen, { strokeStyle: "#fff", lineWidth: 3, fillStyle: INK, textBaseline: across ? "bottom" : "middle" });
      pen.textAlign = across ? "center" : "left";
      pen.strokeText(n * step, across ? px : 9, across ? high - 8 : py);
      pen.fillText(n * step, across ? px : 9, across ? high - 8 : py);
    }
  }
}

function stroke(pen, ink, width, dashes) {
  Object.assign(pen, { strokeStyle: ink, lineWidth: width });
  pen.setLineDash(dashes);
  pen.stroke();
}

function ring(pen, at, radius, ink, width, dashes) {
  pen.beginPath();
  pen.arc(...at, Math.max(1, radius), 0, 7);
  stroke(pen, ink, width, dashes);
}

function datum(pen, [x, y], reach) {
  pen.beginPath();
  for (const [dx, dy] of [[1, 0], [0, -1]]) {
    pen.moveTo(x, y);
    pen.lineTo(x + reach * dx, y + reach * dy);
  }
  stroke(pen, "#fff", 4, []);
  stroke(pen, RUST, 2, []);
  pen.font = "bold 13px sans-serif";
  pen.textBaseline = "middle";
  for (const [text, dx, dy] of [["X", reach + 9, 0], ["Y", 0, -reach - 9]]) {
    pen.textAlign = "center";
    Object.assign(pen, { strokeStyle: "#fff", lineWidth: 4, fillStyle: RUST });
    pen.setLineDash([]);
    pen.strokeText(text, x + dx, y + dy);
    pen.fillText(text, x + dx, y + dy);
  }
}

/** The board cut open from left to right at `y`, with the cutter if it is there. */
function drawSection(canvas, board, y, { tip, tool, colours, text }) {
  const pen = fine(canvas), { clientWidth: wide, clientHeight: high } = canvas;
  const fit = fitted(canvas, board), room = board.top * 1.9, low = -0.12 * board.top;
  const tall = (high - 2) / (room - low), up = (z) => high - 1 - (z - low) * tall;
  const j = Math.max(0, Math.min(board.ny - 1, Math.round((y - board.y0) / board.cell)));
  pen.fillStyle = "#8d877c";
  pen.fillRect(0, up(0), wide, high);
  pen.beginPath();
  pen.moveTo(0, up(0));
  for (let i = 0; i < board.nx; i++) {
    pen.lineTo((i + 0.5) * board.cell * fit.scale, up(Math.max(low, board.z[j * board.nx + i])));
  }
  pen.lineTo(wide, up(0));
  pen.closePath();
  pen.fillStyle = `rgb(${colours.ground.join(" ")})`;
  pen.fill();
  stroke(pen, INK, 1, []);
  if (tip) {
    const [x] = fit.to(tip[0], 0), outline = outlineOf(tool);
    pen.beginPath();
    for (const [r, z] of [...outline, ...outline.map(([r, z]) => [-r, z]).reverse()]) {
      pen.lineTo(x + r * fit.scale, up(tip[2] + z));
    }
    pen.closePath();
    pen.fillStyle = "rgb(93 106 116 / 0.72)";
    pen.fill();
    stroke(pen, INK, 1, []);
  }
  pen.font = "12px sans-serif";
  Object.assign(pen, { textAlign: "left", textBaseline: "top", fillStyle: INK });
  pen.fillText(text, 6, 4);
}
