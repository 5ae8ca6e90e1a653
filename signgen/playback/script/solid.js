// The board in space: a lit height field, its sides, the cutter and the ways through the air (WebGL 2, no library).
const MESH_CELLS = 360000, ROUND = 32, VIEW_DEG = 32;

const FIELD_VERTEX = `#version 300 es
uniform highp sampler2D heights;
uniform ivec2 cells, mesh;
uniform vec2 corner;
uniform float cell;
uniform mat4 view;
uniform int rim;
out vec2 at;
out float side;
void main() {
  side = 0.0;
  vec2 share;
  float down = 1.0;
  if (rim > 0) {
    // around the board once: the upper edge and the lower one
    int walk = gl_VertexID >> 1, edge = walk / 256;
    float s = float(walk % 256) / 255.0;
    share = edge == 0 ? vec2(s, 0) : edge == 1 ? vec2(1, s) : edge == 2 ? vec2(1.0 - s, 1) : vec2(0, 1.0 - s);
    down = float(gl_VertexID & 1);
    side = edge % 2 == 0 ? 0.72 : 0.6;
  } else {
    share = vec2(gl_VertexID >> 1, gl_InstanceID + (gl_VertexID & 1)) / vec2(mesh - 1);
  }
  at = share * vec2(cells - 1);
  float z = max(0.0, texelFetch(heights, ivec2(at + 0.5), 0).r) * down;
  gl_Position = view * vec4(corner + at * cell, z, 1);
}`;

const FIELD_PIXEL = `#version 300 es
precision highp float;
precision highp int;
uniform highp sampler2D heights;
uniform sampler2D tones;
uniform ivec2 cells;
uniform float cell, top;
uniform vec3 face, ground;
in vec2 at;
in float side;
out vec4 colour;
float z(ivec2 k) { return texelFetch(heights, clamp(k, ivec2(0), cells - 1), 0).r; }
float smoothed(vec2 p) {
  ivec2 k = ivec2(floor(p));
  vec2 f = p - floor(p);
  return mix(mix(z(k), z(k + ivec2(1, 0)), f.x), mix(z(k + ivec2(0, 1)), z(k + 1), f.x), f.y);
}
void main() {
  float height = smoothed(at);
  if (side > 0.0) {
    colour = vec4(mix(face, ground, 0.4) * side, 1);
    return;
  }
  if (height <= 0.0) discard;
  vec2 slope = vec2(smoothed(at + vec2(1, 0)) - smoothed(at - vec2(1, 0)),
                    smoothed(at + vec2(0, 1)) - smoothed(at - vec2(0, 1))) / (2.0 * cell);
  vec3 light = vec3(${LIGHT.map((value) => value.toFixed(3)).join(", ")});
  float facing = max(0.0, dot(normalize(vec3(-slope, 1)), light) / light.z);
  float depth = top - height, tone = texture(tones, (at + 0.5) / vec2(cells)).r * 255.0 / 128.0;
  float lit = (${AMBIENT.toFixed(2)} + ${(1 - AMBIENT).toFixed(2)} * facing) * (1.0 - ${SINK.toFixed(2)} * depth / top);
  colour = vec4(mix(face, ground, min(1.0, depth / ${FRESH_MM.toFixed(2)})) * lit * tone, 1);
}`;

const PLAIN_VERTEX = `#version 300 es
uniform mat4 view;
uniform vec3 tip;
uniform vec2 outline[24];
uniform int turned;
in vec3 place;
out float shine;
void main() {
  shine = 1.0;
  vec3 p = place;
  if (turned > 0) {
    float angle = float(gl_VertexID >> 1) * ${((2 * Math.PI) / ROUND).toFixed(8)};
    vec2 rz = outline[gl_InstanceID + (gl_VertexID & 1)];
    p = tip + vec3(rz.x * cos(angle), rz.x * sin(angle), rz.y);
    shine = 0.62 + 0.38 * cos(angle - 2.3);
  }
  gl_Position = view * vec4(p, 1);
}`;

const PLAIN_PIXEL = `#version 300 es
precision highp float;
uniform vec4 ink;
in float shine;
out vec4 colour;
void main() { colour = vec4(ink.rgb * shine, 1) * ink.a; }`;

/** A cutter's outline from its tip up: (distance from the axis, height over the tip). */
function outlineOf(tool) {
  const points = [];
  if (tool.ball) for (let i = 0; i <= 8; i++) points.push([tool.radius * Math.sin((i * Math.PI) / 16), tool.radius * (1 - Math.cos((i * Math.PI) / 16))]);
  else points.push([0, 0], [tool.tip, 0], [tool.radius, (tool.radius - tool.tip) * tool.rise]);
  const shoulder = Math.max(points.at(-1)[1], tool.edge);
  points.push([tool.radius, shoulder]);
  if (tool.length > shoulder) points.push([tool.shank / 2, shoulder], [tool.shank / 2, tool.length]);
  points.push([0, points.at(-1)[1]]);
  return points;
}

class SolidView {
  /** Throws where the browser has no WebGL 2. */
  constructor(canvas, board, tones, colours) {
    const gl = canvas.getContext("webgl2", { antialias: true, alpha: false, preserveDrawingBuffer: true });
    if (!gl) throw new Error("no WebGL 2");
    Object.assign(this, { canvas, board, gl, turn: -0.35, tilt: 0.9, zoom: 1.12 });
    this.field = program(gl, FIELD_VERTEX, FIELD_PIXEL);
    this.plain = program(gl, PLAIN_VERTEX, PLAIN_PIXEL);
    const { nx, ny } = board, apart = Math.max(1, Math.sqrt((nx * ny) / MESH_CELLS));
    this.mesh = [Math.max(2, Math.round(nx / apart)), Math.max(2, Math.round(ny / apart))];
    this.colours = [colours.face, colours.ground].map((rgb) => rgb.map((value) => value / 255));
    gl.enable(gl.DEPTH_TEST);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
    texture(gl, 0, gl.NEAREST);
    gl.texStorage2D(gl.TEXTURE_2D, 1, gl.R32F, nx, ny);
    this.load();
    texture(gl, 1, gl.LINEAR);
    gl.texStorage2D(gl.TEXTURE_2D, 1, gl.R8, nx, ny);
    gl.texSubImage2D(gl.TEXTURE_2D, 0, 0, 0, nx, ny, gl.RED, gl.UNSIGNED_BYTE, tones);
    this.nothing = gl.createVertexArray();
    this.lines = gl.createVertexArray();
    this.linesBuffer = gl.createBuffer();
    this.middle = [board.x0 + (nx * board.cell) / 2, board.y0 + (ny * board.cell) / 2, 0];
    this.size = Math.hypot(nx, ny) * board.cell;
  }

  /** Takes over the board's heights. */
  load() {
    const { gl, board } = this;
    gl.activeTexture(gl.TEXTURE0);
    gl.texSubImage2D(gl.TEXTURE_2D, 0, 0, 0, board.nx, board.ny, gl.RED, gl.FLOAT, board.z);
  }

  /** Where the eye is, and the three directions of its picture. */
  eye() {
    const { canvas, middle, size, turn, tilt, zoom } = this;
    const wide = canvas.width / canvas.height, open = Math.tan((VIEW_DEG * Math.PI) / 360);
    const far = (0.52 * size) / (open * Math.min(1, wide) * zoom);
    const away = [Math.sin(turn) * Math.cos(tilt), -Math.cos(turn) * Math.cos(tilt), Math.sin(tilt)];
    const right = [Math.cos(turn), Math.sin(turn), 0];
    return { at: middle.map((value, i) => value + far * away[i]), away, right, up: cross(away, right), far, wide, open };
  }

  matrix() {
    const { at, away, right, up, far, wide, open } = this.eye();
    const near = Math.max(0.02 * far, far - this.size), end = far + this.size;
    const rows = [
      right.map((value) => value / (open * wide)),
      up.map((value) => value / open),
      away.map((value) => (-value * (end + near)) / (end - near)),
      away.map((value) => -value),
    ].map((row) => [...row, -dot(row, at)]);
    // depth runs from -1 at `near` to 1 at `end`
    rows[2][3] = -dot(rows[2].slice(0, 3), at) - (2 * end * near) / (end - near);
    return new Float32Array([0, 1, 2, 3].flatMap((column) => rows.map((row) => row[column])));
  }

  /** `air`: corners of the lines to draw through the air, three numbers each. */
  draw(tip, tool, air) {
    const { gl, board, canvas, field, plain } = this, ratio = Math.min(2, devicePixelRatio);
    const [wide, high] = [canvas.clientWidth, canvas.clientHeight].map((value) => Math.max(1, Math.round(value * ratio)));
    if (canvas.width !== wide || canvas.height !== high) Object.assign(canvas, { width: wide, height: high });
    gl.viewport(0, 0, wide, high);
    gl.clearColor(0.894, 0.886, 0.863, 1);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    const view = this.matrix();
    gl.useProgram(plain.program);
    gl.uniformMatrix4fv(plain.at("view"), false, view);
    this.table();

    gl.useProgram(field.program);
    gl.uniformMatrix4fv(field.at("view"), false, view);
    gl.uniform1i(field.at("heights"), 0);
    gl.uniform1i(field.at("tones"), 1);
    gl.uniform2i(field.at("cells"), board.nx, board.ny);
    gl.uniform2i(field.at("mesh"), ...this.mesh);
    gl.uniform2f(field.at("corner"), board.x0, board.y0);
    gl.uniform1f(field.at("cell"), board.cell);
    gl.uniform1f(field.at("top"), board.top);
    gl.uniform3f(field.at("face"), ...this.colours[0]);
    gl.uniform3f(field.at("ground"), ...this.colours[1]);
    gl.bindVertexArray(this.nothing);
    gl.uniform1i(field.at("rim"), 0);
    gl.drawArraysInstanced(gl.TRIANGLE_STRIP, 0, 2 * this.mesh[0], this.mesh[1] - 1);
    gl.uniform1i(field.at("rim"), 1);
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 2 * 1024);

    gl.useProgram(plain.program);
    if (air.length) this.strokes(air, [0.08, 0.35, 0.55, 1], gl.LINES);
    if (tip) this.cutter(tip, tool);
  }

  table() {
    const { board, gl } = this, [x, y] = [board.x0, board.y0], reach = 0.2 * this.size;
    const [low, left] = [y - reach, x - reach];
    const [high, right] = [y + board.ny * board.cell + reach, x + board.nx * board.cell + reach];
    const under = -0.02;
    this.strokes([left, low, under, right, low, under, left, high, under, right, high, under], [0.6, 0.58, 0.54, 1], gl.TRIANGLE_STRIP);
  }

  strokes(corners, ink, kind) {
    const { gl, plain } = this;
    gl.uniform1i(plain.at("turned"), 0);
    gl.uniform4f(plain.at("ink"), ...ink);
    gl.bindVertexArray(this.lines);
    gl.bindBuffer(gl.ARRAY_BUFFER, this.linesBuffer);
    gl.bufferData(gl.ARRAY_BUFFER, new Float32Array(corners), gl.STREAM_DRAW);
    const place = gl.getAttribLocation(plain.program, "place");
    gl.enableVertexAttribArray(place);
    gl.vertexAttribPointer(place, 3, gl.FLOAT, false, 0, 0);
    gl.drawArrays(kind, 0, corners.length / 3);
  }

  cutter(tip, tool) {
    const { gl, plain } = this, outline = outlineOf(tool);
    gl.uniform1i(plain.at("turned"), 1);
    gl.uniform3f(plain.at("tip"), ...tip);
    gl.uniform2fv(plain.at("outline"), new Float32Array(outline.flat()));
    gl.uniform4f(plain.at("ink"), 0.35, 0.4, 0.46, 0.75);
    gl.bindVertexArray(this.nothing);
    gl.enable(gl.BLEND);
    gl.drawArraysInstanced(gl.TRIANGLE_STRIP, 0, 2 * (ROUND + 1), outline.length - 1);
    gl.disable(gl.BLEND);
  }

  /** The place on the board that is seen at a point of the picture (0 to 1 across and down); null beside it. */
  pick(across, down) {
    const { at, away, right, up, far, wide, open } = this.eye(), { board } = this;
    const u = (2 * across - 1) * open * wide, v = (1 - 2 * down) * open;
    const way = away.map((value, i) => -value + u * right[i] + v * up[i]);
    if (way[2] >= 0) return null;
    const last = -at[2] / way[2], step = board.cell / Math.hypot(way[0], way[1], way[2]);
    for (let s = Math.max(0, (board.top - at[2]) / way[2]); s <= last; s += step) {
      const x = at[0] + s * way[0], y = at[1] + s * way[1];
      if (board.height(x, y) >= at[2] + s * way[2]) return [x, y];
    }
    const x = at[0] + last * way[0], y = at[1] + last * way[1];
    return Number.isNaN(board.height(x, y)) ? null : [x, y];
  }
}

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

function texture(gl, unit, filter) {
  gl.activeTexture(gl.TEXTURE0 + unit);
  gl.bindTexture(gl.TEXTURE_2D, gl.createTexture());
  for (const name of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER]) gl.texParameteri(gl.TEXTURE_2D, name, filter);
  for (const name of [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T]) gl.texParameteri(gl.TEXTURE_2D, name, gl.CLAMP_TO_EDGE);
}

function program(gl, vertex, pixel) {
  const made = gl.createProgram(), places = new Map();
  for (const [kind, source] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, pixel]]) {
    const shader = gl.createShader(kind);
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS)) throw new Error(gl.getShaderInfoLog(shader));
    gl.attachShader(made, shader);
  }
  gl.linkProgram(made);
  if (!gl.getProgramParameter(made, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(made));
  const at = (name) => places.get(name) ?? places.set(name, gl.getUniformLocation(made, name)).get(name);
  return { program: made, at };
}
