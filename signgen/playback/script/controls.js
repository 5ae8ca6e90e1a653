// The page: what is shown, and what buttons, keys, fingers and the slider do to it.
const SPEEDS = [1, 2, 5, 10, 20, 50, 100, 200];
const CALM_STEP_MS = 600;

async function start() {
  const job = JSON.parse(document.getElementById("job").textContent);
  const part = (name) => document.getElementById(name);
  const say = (key, values = {}) => job.words[key].replace(/\{(\w+)\}/g, (_, name) => values[name]);
  const figure = (value, places) => value.toLocaleString(job.language, { minimumFractionDigits: places, maximumFractionDigits: places, useGrouping: false });
  const status = part("status");

  const moves = new Moves(await inflated(job.packed), job);
  const board = new Board(job.grid, job.top), course = new Course(moves, board);
  const tones = pattern(job.grid, job.grain);
  await course.prepare((share) => (status.textContent = say("loading", { share: Math.round(100 * share) })));
  const flat = new FlatView(part("flat"), board, tones, job);
  const air = airWays(moves);
  const listings = job.programs.map((program) => new Listing(program.text));
  const finger = matchMedia("(pointer: coarse)").matches;
  const calm = matchMedia("(prefers-reduced-motion: reduce)");

  const now = { time: course.lasts, plays: false, speed: usual(course.lasts), range: [0, course.lasts], probe: null };
  let solid = null, last = 0, due = false;

  function show() {
    due = false;
    course.seek(now.time);
    const changed = board.touched();
    const [move] = moves.at(now.time), ended = now.time >= now.range[1];
    const tip = ended && now.range[1] === course.lasts ? null : course.tip;
    const ways = part("air").checked ? air.until(now.range[0], now.time) : [];
    if (changed) flat.draw(changed);
    if (solid && !part("solid").hidden) {
      solid.load();
      solid.draw(tip, course.tool, ways);
    } else {
      drawOver(part("over"), board, job, { tip, tool: course.tool, air: ways, cutting: moves.isCut(move), probe: now.probe, grid: part("grid").checked });
    }
    shaped();
    const y = now.probe ? now.probe[1] : tip ? tip[1] : board.y0 + (board.ny * board.cell) / 2;
    const text = say("section", { y: figure(y - job.zero[1], 1) });
    drawSection(part("section"), board, y, { tip: now.probe ? null : tip, tool: course.tool, colours: job, text });
    tell(move, ended);
  }

  /** The section is drawn to the picture's own scale where the screen has room for that. */
  function shaped() {
    const strip = part("section"), scale = strip.clientWidth / (board.nx * board.cell);
    strip.style.height = `${Math.round(Math.max(56, Math.min(150, 2.02 * board.top * scale + 2)))}px`;
  }

  function tell(move, ended) {
    const { programs } = job, p = moves.programOf(move), [from, until] = now.range;
    const when = clock(now.time - from), whole = clock(until - from);
    part("when").value = now.time;
    part("when").setAttribute("aria-valuetext", say("when", { when, whole, file: programs[p].file }));
    part("clock").textContent = `${when} / ${whole}`;
    const line = ended ? say("finished") : say("doing", { file: programs[p].file, line: moves.line[move], tool: programs[p].label });
    if (part("doing").textContent !== line) part("doing").textContent = line;
    read(p, move);
    part("play").textContent = say(now.plays ? "pause" : "play");
    part("play").setAttribute("aria-pressed", now.plays);
    part("depth").textContent = probed();
  }

  /** The line that runs, where the tip is, and what is in force. */
  function read(p, move) {
    const line = moves.line[move], { modal, feed, speed } = listings[p].state(line), [x, y, z] = course.tip;
    const row = (number) => (number > 0 && number <= listings[p].lines.length ? `${number}  ${listings[p].text(number)}` : "");
    part("line-before").textContent = row(line - 1);
    part("line-now").textContent = row(line);
    part("line-after").textContent = row(line + 1);
    part("at-x").textContent = figure(x - job.zero[0], 3);
    part("at-y").textContent = figure(y - job.zero[1], 3);
    part("at-z").textContent = figure(z - job.zeroHeight, 3);
    part("at-f").textContent = feed;
    part("at-s").textContent = speed;
    part("modal").textContent = modal;
  }

  function probed() {
    if (!now.probe) return say(finger ? "touch" : "point");
    const [x, y] = now.probe, height = board.height(x, y);
    if (Number.isNaN(height)) return say("beside");
    const at = { x: figure(x - job.zero[0], 1), y: figure(y - job.zero[1], 1) };
    if (height <= 0) return say("through", at);
    return say(board.top - height < 0.005 ? "uncut" : "depth", { ...at, depth: figure(board.top - height, 2) });
  }

  function refresh() {
    if (!due) requestAnimationFrame(show);
    due = true;
  }

  function seek(time) {
    now.time = Math.max(now.range[0], Math.min(now.range[1], time));
    refresh();
  }

  function play(on) {
    if (on && now.time >= now.range[1]) now.time = now.range[0];
    now.plays = on;
    last = performance.now();
    if (on) requestAnimationFrame(run);
    refresh();
    announce();
  }

  function run(at) {
    if (!now.plays) return;
    // who asked for little motion gets a picture now and then instead of a film
    if (!calm.matches || at - last >= CALM_STEP_MS) {
      now.time = Math.min(now.range[1], now.time + (Math.max(0, at - last) / 1000) * now.speed);
      last = at;
      if (now.time >= now.range[1]) now.plays = false;
      show();
      if (!now.plays) announce();
    }
    requestAnimationFrame(run);
  }

  /** For people who listen: where playback stands, when it starts, stops or jumps. */
  function announce() {
    status.textContent = `${say(now.plays ? "plays" : "paused")} ${part("when").getAttribute("aria-valuetext") ?? ""}`;
  }

  function step(by) {
    play(false);
    const [move, done] = moves.at(now.time);
    const next = by > 0 ? (done < 1 && now.time < course.lasts ? move : move + 1) : done > 0 && now.time > moves.since(move) ? move : move - 1;
    const k = Math.max(0, Math.min(moves.count - 1, next));
    seek(by > 0 ? moves.until[k] : moves.since(k));
  }

  function choose(which) {
    const { first } = moves, p = Number(which);
    now.range = which === "" ? [0, course.lasts] : [moves.since(first[p]), moves.until[(first[p + 1] ?? moves.count) - 1]];
    [part("when").min, part("when").max] = now.range;
    play(false);
    seek(now.range[0]);
  }

  function setSpeed(speed) {
    now.speed = speed;
    part("speed").value = speed;
  }

  function view(inSpace) {
    if (inSpace && !solid) {
      try {
        solid = new SolidView(part("solid"), board, tones, job);
      } catch {
        part("view").disabled = true;
        status.textContent = say("no_space");
        return;
      }
    }
    part("view").setAttribute("aria-pressed", inSpace);
    part("solid").hidden = !inSpace;
    part("flat").hidden = part("over").hidden = inSpace;
    part("hint").textContent = say(inSpace ? "hint_space" : "hint_flat");
    refresh();
  }

  for (const speed of SPEEDS) part("speed").add(new Option(say("times", { speed }), speed));
  setSpeed(now.speed);
  part("when").max = course.lasts;
  part("play").addEventListener("click", () => play(!now.plays));
  part("when").addEventListener("input", (event) => {
    now.plays = false;
    seek(event.target.valueAsNumber);
  });
  part("when").addEventListener("change", announce);
  part("speed").addEventListener("change", (event) => setSpeed(Number(event.target.value)));
  part("which").addEventListener("change", (event) => choose(event.target.value));
  part("air").addEventListener("change", refresh);
  part("grid").addEventListener("change", refresh);
  part("back").addEventListener("click", () => step(-1));
  part("on").addEventListener("click", () => step(1));
  part("view").addEventListener("click", () => view(part("solid").hidden));
  addEventListener("resize", refresh);

  pointing(part("stage"), {
    spot: (across, down) => {
      if (solid && !part("solid").hidden) return solid.pick(across, down);
      const { clientWidth: w, clientHeight: h } = part("flat");
      return fitted(part("flat"), board).from(across * w, down * h);
    },
    probe: (place) => {
      now.probe = place;
      refresh();
    },
    inSpace: () => !part("solid").hidden,
    turn: (across, up) => {
      solid.turn -= across;
      solid.tilt = Math.max(0.15, Math.min(1.55, solid.tilt + up));
      refresh();
    },
    zoom: (factor) => {
      solid.zoom = Math.max(0.5, Math.min(12, solid.zoom * factor));
      refresh();
    },
  });

  const turns = { ArrowLeft: [-0.1, 0], ArrowRight: [0.1, 0], ArrowUp: [0, 0.1], ArrowDown: [0, -0.1] };
  const keys = {
    " ": () => play(!now.plays),
    ArrowLeft: (event) => (event.shiftKey ? seek(now.time - 10) : step(-1)),
    ArrowRight: (event) => (event.shiftKey ? seek(now.time + 10) : step(1)),
    Home: () => seek(now.range[0]),
    End: () => seek(now.range[1]),
    "+": () => setSpeed(SPEEDS[Math.min(SPEEDS.length - 1, SPEEDS.indexOf(now.speed) + 1)]),
    "-": () => setSpeed(SPEEDS[Math.max(0, SPEEDS.indexOf(now.speed) - 1)]),
    w: () => part("air").click(),
    g: () => part("grid").click(),
    v: () => part("view").click(),
  };
  addEventListener("keydown", (event) => {
    const own = event.target.closest?.("input, select, button, summary");
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    if (own && (event.key === " " || event.key.startsWith("Arrow") || ["Home", "End"].includes(event.key))) return;
    if (event.target.id === "stage" && solid && !part("solid").hidden) {
      const [across, up] = turns[event.key] ?? [];
      if (across !== undefined) {
        solid.turn -= across;
        solid.tilt = Math.max(0.15, Math.min(1.55, solid.tilt + up));
        event.preventDefault();
        return refresh();
      }
      if (event.key === "+" || event.key === "-") {
        solid.zoom = Math.max(0.5, Math.min(12, solid.zoom * (event.key === "+" ? 1.2 : 1 / 1.2)));
        return refresh();
      }
    }
    if (!keys[event.key]) return;
    event.preventDefault();
    keys[event.key](event);
  });

  for (const control of document.querySelectorAll("[disabled]")) control.disabled = false;
  part("stage").style.aspectRatio = `${board.nx} / ${board.ny}`;
  board.mark(0, 0, board.nx - 1, board.ny - 1);
  view(false);
  show();
  status.textContent = "";
  // for tests, and for whoever wants to look under the hood
  window.sign = { board, course, moves, now, seek, show, solid: () => solid };
  document.documentElement.dataset.ready = "yes";
}

/** The speed that plays the whole job in about a minute. */
function usual(lasts) {
  return SPEEDS.find((speed) => lasts / speed <= 60) ?? SPEEDS.at(-1);
}

function clock(seconds) {
  const whole = Math.round(seconds), minutes = Math.floor(whole / 60);
  return `${minutes}:${String(whole % 60).padStart(2, "0")}`;
}

/** The lines of all rapid moves, and how many of them have been gone by a time. */
function airWays(moves) {
  const ends = [], corners = [];
  for (let k = 1; k < moves.count; k++) {
    if (moves.kind[k] !== RAPID) continue;
    ends.push(moves.until[k]);
    corners.push(moves.x[k - 1], moves.y[k - 1], moves.z[k - 1], moves.x[k], moves.y[k], moves.z[k]);
  }
  const gone = (time) => {
    let low = 0, high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (ends[middle] <= time + 1e-6) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return { until: (from, time) => corners.slice(6 * gone(from), 6 * gone(time)) };
}

/** Pointers over the picture: one points at a place, in space it turns the board when it is dragged; two zoom. */
function pointing(stage, { spot, probe, inSpace, turn, zoom }) {
  const down = new Map();
  const share = (event) => {
    const box = stage.getBoundingClientRect();
    return [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height];
  };
  const spread = () => {
    const [a, b] = [...down.values()];
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  };
  stage.addEventListener("pointerdown", (event) => {
    down.set(event.pointerId, [event.clientX, event.clientY]);
    if (inSpace()) stage.setPointerCapture(event.pointerId);
    probe(spot(...share(event)));
  });
  stage.addEventListener("pointermove", (event) => {
    const held = down.get(event.pointerId);
    if (!held || !inSpace()) return probe(spot(...share(event)));
    const before = down.size === 2 ? spread() : 0;
    down.set(event.pointerId, [event.clientX, event.clientY]);
    if (down.size === 2) zoom(spread() / Math.max(1, before));
    else turn((event.clientX - held[0]) / 160, (event.clientY - held[1]) / 160);
  });
  for (const name of ["pointerup", "pointercancel"]) stage.addEventListener(name, (event) => down.delete(event.pointerId));
  stage.addEventListener("pointerleave", (event) => {
    if (event.pointerType === "mouse") probe(null);
  });
  stage.addEventListener("wheel", (event) => {
    if (!inSpace()) return;
    event.preventDefault();
    zoom(Math.exp(-event.deltaY / 500));
  }, { passive: false });
}

start().catch((error) => {
  document.getElementById("status").textContent = JSON.parse(document.getElementById("job").textContent).words.failed;
  document.documentElement.dataset.ready = "failed";
  throw error;
});
