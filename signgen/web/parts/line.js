"use strict";
/* The lines of lettering: a row each, and behind it what only this line has. */
const about = JSON.parse(document.getElementById("data").textContent);
const say = (key, ...values) => values.reduce((text, value) => text.replace("{value}", value), about.words[key]);
const one = (id) => document.getElementById(id);

function made(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) if (value !== null) element.setAttribute(name, value);
  element.append(...children);
  return element;
}

const lines = {
  list: one("lines"),
  count: 0,

  add(text = "", settings = {}, after = null) {
    const id = `line-${++this.count}`;
    const input = made("input", { type: "text", id, maxlength: "200", autocomplete: "off", "aria-describedby": "wrong-text" });
    input.value = text;
    const label = made("label", { for: id, class: "unseen" });
    const away = made("button", { type: "button", class: "away" });
    const own = made("details", { class: "own" }, made("summary", {}, say("own")), ...about.lineKeys.map((key) => this.setting(id, key, settings[key.name])));
    own.open = Object.keys(settings).length > 0;
    const row = made("li", {}, label, input, away, own);
    away.addEventListener("click", () => this.remove(row));
    input.addEventListener("keydown", (event) => {
      if (event.key !== "Enter" || event.isComposing) return;
      event.preventDefault();
      this.add("", {}, row).focus();
    });
    if (after) after.after(row); else this.list.append(row);
    this.number();
    return input;
  },

  setting(id, key, value) {
    const own = `${id}-${key.name}`;
    let control;
    const choices = key.name === "font" || key.kind === "font" ? Object.entries(about.faces) : key.choices.map((each) => [each, each]);
    if (key.kind === "flag") choices.push(["true", say("yes")], ["false", say("no")]);
    if (choices.length) {
      control = made("select", { id: own }, made("option", { value: "" }, say("as_sign")), ...choices.map(([name, text]) => made("option", { value: name }, text)));
    } else {
      control = made("input", { id: own, type: "text", autocomplete: "off" });
    }
    control.dataset.key = key.name;
    control.title = key.help;
    if (value !== undefined) control.value = value;
    return made("p", { class: "field" }, made("label", { for: own }, key.label), control);
  },

  remove(row) {
    if (this.list.children.length === 1) { row.querySelector("input").value = ""; row.querySelector("input").focus(); }
    else {
      const next = row.nextElementSibling || row.previousElementSibling;
      row.remove();
      next.querySelector("input").focus();
    }
    this.number();
    this.list.dispatchEvent(new Event("input", { bubbles: true }));
  },

  number() {
    [...this.list.children].forEach((row, i) => {
      row.querySelector("label").textContent = say("line", i + 1);
      const away = row.querySelector(".away");
      away.textContent = "\u00d7";
      away.setAttribute("aria-label", say("away", i + 1));
    });
  },

  set(rows) {
    this.list.replaceChildren();
    rows.forEach(([text, settings]) => this.add(text, settings));
  },

  rows() {
    return [...this.list.children].map((row) => {
      const settings = {};
      for (const control of row.querySelectorAll("[data-key]")) if (control.value.trim()) settings[control.dataset.key] = control.value.trim();
      return [row.querySelector("input").value.trim(), settings];
    }).filter(([text]) => text);
  },

  asked() {
    const rows = this.rows();
    if (rows.every(([, settings]) => !Object.keys(settings).length)) return { text: rows.map(([text]) => text) };
    return { [about.lineTable]: rows.map(([text, settings]) => ({ text, ...settings })) };
  },
};
