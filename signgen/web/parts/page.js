"use strict";
/* Asks for the drawing with every letter, and for the proof when the typing rests. */
const token = document.querySelector("meta[name=token]").content;
const KEPT = "signgen.sign";
let asking = null, again = false, number = 0, restTimer = 0, liveTimer = 0;

async function ask(path, body) {
  const reply = await fetch(`api/${path}`, {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-Signgen-Token": token },
    body: JSON.stringify({ ...body, language: document.documentElement.lang }),
  });
  const found = await reply.json();
  if (!reply.ok) throw new Error(found.refused || String(reply.status));
  return found;
}

const wanted = () => ({ ...lines.asked(), ...fields.values() });

function list(id, texts) {
  one(id).replaceChildren(...texts.map((text) => made("li", {}, text)));
}

function said(text, state) {
  if (one("status").textContent !== text) one("status").textContent = text;
  one("look").dataset.state = state;
}

function gone(error) {
  said(error instanceof TypeError ? say("unreachable") : say("refused"), "wrong");
}

function changed() {
  clearTimeout(liveTimer);
  clearTimeout(restTimer);
  takeAway();
  liveTimer = setTimeout(live, about.live);
  restTimer = setTimeout(prove, about.rest);
  try { localStorage.setItem(KEPT, JSON.stringify({ rows: lines.rows(), values: fields.values() })); } catch { /* private windows keep nothing */ }
}

function takeAway() {
  number += 1;
  for (const id of ["zip", "sheet", "moves", "then"]) one(id).hidden = true;
  one("facts").replaceChildren();
}

/* One drawing is asked for at a time; what changed meanwhile is asked for after it. */
async function live() {
  if (asking) { again = true; return; }
  do {
    again = false;
    asking = ask("sketch", { wanted: wanted() });
    try { shown(await asking); } catch (error) { gone(error); }
    asking = null;
  } while (again);
}

function shown(found) {
  if (found.lost) { said(say("busy"), "busy"); return; }
  const others = fields.mark(found.problems || []);
  if (found.ok) {
    one("sketch").src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(found.svg)}`;
    one("sketch").alt = say("drawn", found.title);
    one("lettering").textContent = found.lettering;
    one("command").textContent = found.command;
    one("file").href = `data:text/plain;charset=utf-8,${encodeURIComponent(found.file)}`;
    list("warned", found.warnings);
    list("wrong", []);
    one("look").classList.remove("stale");
    said(say("proving"), "busy");
  } else {
    clearTimeout(restTimer);
    list("wrong", others.map(({ where, what, remedy }) => [where && `${where}:`, what, remedy].filter(Boolean).join(" ")));
    list("warned", []);
    one("look").classList.add("stale");
    said(say(found.problems.length === 1 ? "wrong_one" : "wrong", found.problems.length), "wrong");
  }
}

async function prove() {
  const mine = number;
  try {
    const begun = await ask("prove", { wanted: wanted() });
    for (;;) {
      if (mine !== number) return;
      const found = await ask("wait", { number: begun.number });
      if (mine !== number) return;
      if (!found.running) { proved(found); return; }
    }
  } catch (error) { if (mine === number) gone(error); }
}

function proved(found) {
  if (found.lost) { said(say("lost", found.lost), "wrong"); return; }
  if (!found.ok) {
    const others = fields.mark(found.problems);
    list("wrong", others.map(({ where, what, remedy }) => [where && `${where}:`, what, remedy].filter(Boolean).join(" ")));
    said(say(found.failed ? "failed" : "cannot"), "wrong");
    return;
  }
  const folder = `made/${found.made}`;
  one("sketch").src = `${folder}/preview.png`;
  list("warned", found.warnings);
  one("facts").replaceChildren(...[
    [say("time"), found.span], [say("least"), found.least],
    ...found.programs.map((each) => [each.file, `${each.tool}, ${each.span}`]),
  ].flatMap(([name, value]) => [made("dt", {}, name), made("dd", {}, value)]));
  const sheet = found.files.find((name) => name.startsWith("back-setup.")) || found.files.find((name) => name.startsWith("setup."));
  for (const [id, name] of [["zip", "sign.zip"], ["sheet", sheet], ["moves", "preview.html"]]) {
    one(id).href = `${folder}/${name}`;
    one(id).hidden = false;
  }
  one("then").hidden = false;
  said(say(found.warnings.length ? "proved_warned" : "proved", found.checks), "proved");
}

async function opened(file) {
  try {
    const found = await ask("open", { file: await file.text() });
    if (!found.ok) { fields.mark([]); list("wrong", found.problems.map(({ where, what, remedy }) => `${where}: ${what} ${remedy}`)); return; }
    const { text = [], [about.lineTable]: tables, ...values } = found.fields;
    lines.set(tables ? tables.map(({ text: words, ...settings }) => [words, settings]) : [].concat(text).map((words) => [words, {}]));
    fields.set(Object.fromEntries(Object.entries(values).map(([name, value]) => [name, Array.isArray(value) ? value.join("x") : value])));
    if (Object.keys(values).some((name) => one(`field-${name}`)?.closest("#more"))) one("more").open = true;
    fields.search();
    one("handed-over").textContent = found.left_out.length ? say("left_out", found.left_out.join(", ")) : say("opened", file.name);
    changed();
  } catch (error) { gone(error); }
}

async function handedOver(file) {
  const option = one("own-kind").value;
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    let text = "";
    for (let i = 0; i < bytes.length; i += 32768) text += String.fromCharCode(...bytes.subarray(i, i + 32768));
    const found = await ask("hand-over", { option, name: file.name, data: btoa(text) });
    if (found.ok) { fields.own(option, found.name); one("handed-over").textContent = say("taken", file.name); changed(); }
    else one("handed-over").textContent = found.lost || found.problems.map(({ what, remedy }) => `${what} ${remedy}`).join(" ");
  } catch { one("handed-over").textContent = say("not_taken", file.name); }
}

function begin() {
  let kept = null;
  try { kept = JSON.parse(localStorage.getItem(KEPT)); } catch { /* nothing that can be read is nothing */ }
  if (kept && Array.isArray(kept.rows) && kept.rows.length) {
    lines.set(kept.rows);
    fields.set(Object.fromEntries(Object.entries(kept.values).filter(([, value]) => !String(value).includes("own:"))));
  } else lines.set(about.lines.map((text) => [text, {}]));
  fields.search();
  fields.nameFace();
  one("form").addEventListener("input", (event) => {
    if (event.target.id === "search") { fields.search(); return; }
    if (event.target.type === "file" || event.target.id === "own-kind") return;
    if (event.target.name === "font") fields.nameFace();
    changed();
  });
  one("form").addEventListener("submit", (event) => event.preventDefault());
  one("add-line").addEventListener("click", () => lines.add().focus());
  one("open-file").addEventListener("change", ({ target }) => target.files.length && opened(target.files[0]));
  one("own-file").addEventListener("change", ({ target }) => target.files.length && handedOver(target.files[0]));
  one("copy").addEventListener("click", async () => {
    try { await navigator.clipboard.writeText(one("command").textContent); one("copy").textContent = say("copied"); } catch { getSelection().selectAllChildren(one("command")); }
  });
  for (const kind of ["dragover", "drop"]) document.addEventListener(kind, (event) => {
    if (![...event.dataTransfer.types].includes("Files")) return;
    event.preventDefault();
    if (kind === "drop" && event.dataTransfer.files.length) opened(event.dataTransfer.files[0]);
  });
  changed();
}

begin();
