"use strict";
/* The fields of the form: what they hold, what is wrong with them, and how the rest of them is found. */
const fields = {
  controls() { return [...one("form").querySelectorAll("[name]")].filter((each) => each.type !== "radio" || each.checked); },

  values() {
    const found = {};
    for (const control of this.controls()) if (control.value.trim()) found[control.name] = control.value.trim();
    return found;
  },

  set(values) {
    for (const control of one("form").querySelectorAll("select[name], input[name]:not([type=radio])")) {
      const value = String(values[control.name] ?? "");
      if (control.tagName === "SELECT" && value && ![...control.options].some((each) => each.value === value)) {
        control.append(made("option", { value }, value));
      }
      control.value = value;
    }
    for (const radio of one("form").querySelectorAll("input[type=radio]")) radio.checked = radio.value === (values.font ?? "");
    this.nameFace();
  },

  nameFace() {
    const chosen = one("form").querySelector("input[name=font]:checked") || one("form").querySelector("input[name=font]");
    one("face-now").textContent = chosen.parentElement.textContent.trim();
  },

  /* Problems by the field that caused them; those of no field come back. */
  mark(problems) {
    for (const each of document.querySelectorAll(".wrong")) each.textContent = "";
    for (const each of document.querySelectorAll("[aria-invalid]")) each.removeAttribute("aria-invalid");
    return problems.filter(({ where, what, remedy }) => {
      const name = where.split(/[ .+:]+/).filter(Boolean).find((part) => one(`wrong-${part}`));
      if (!name) return true;
      const place = one(`wrong-${name}`);
      place.textContent = [place.textContent, what, remedy].filter(Boolean).join(" ");
      one(`field-${name}`)?.setAttribute("aria-invalid", "true");
      const hidden = place.closest("details");
      if (hidden) hidden.open = true;
      if (place.closest("#more")) place.closest(".field").hidden = false;
      return false;
    });
  },

  search() {
    const words = one("search").value.toLowerCase().split(/\s+/).filter(Boolean);
    let count = 0;
    for (const field of one("more").querySelectorAll("[data-words]")) {
      const control = field.querySelector("[name]");
      const isSet = control && control.value.trim() !== "";
      field.hidden = !isSet && !words.every((word) => field.dataset.words.includes(word));
      count += !field.hidden;
    }
    one("found").textContent = say(count === 1 ? "found_one" : "found", count);
  },

  own(option, name) {
    const value = `own:${name}`;
    if (option === "font") {
      const radio = made("input", { type: "radio", name: "font", value });
      one("field-font").prepend(made("label", {}, radio, made("span", {}, name)));
      radio.checked = true;
      this.nameFace();
      return;
    }
    const select = one(`field-${option}`);
    const whole = option === "border" ? `path:${value}` : value;
    select.append(made("option", { value: whole }, name));
    select.value = whole;
    if (select.closest("#more")) { one("more").open = true; this.search(); }
  },
};
