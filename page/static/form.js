// The form: a field for each value of the file; those that decide most come first, with a tape.

import { mended } from "./shown.js";
import { Tape } from "./tape.js";

const PLACES = ["right", "away", "up"];
const WAIT = 200; // ms after the last letter

export class Form {
  constructor(at, { move, mend }) {
    this.at = at;
    this.move = move;
    this.mend = mend;
    this.rows = new Map();
    this.saved = new Map();
    this.first = [];
    this.shape = "";
  }

  forget() {
    this.shape = "";
  }

  show(answer, newest) {
    if (answer.seen) this.first = answer.seen.leading;
    const all = new Map(answer.groups.flatMap((group) => group.fields.map((field) => [field.id, { field, group }])));
    const first = this.first.filter((id) => all.has(id));
    const metric = all.get("design.0.units")?.field.value[0].toLowerCase() === "metric";
    const shape = JSON.stringify([metric, first, [...all].map(([id, { field }]) => [id, field.kind])]);
    if (shape !== this.shape) this.build(answer, all, first, metric);
    this.shape = shape;
    if (!newest) return;
    const was = new Map((answer.seen?.was ?? []).map(([id, value]) => [id, value]));
    for (const [id, { field }] of all) this.rows.get(id)?.show(field, was, answer.seen);
    this.wrong(answer.faults);
  }

  build(answer, all, first, metric) {
    const focused = document.activeElement?.id;
    this.rows = new Map();
    const row = (id, titled) => {
      const made = new Row(all.get(id).field, titled, this, metric, first.includes(id));
      this.rows.set(id, made);
      return made.element;
    };
    this.at.leading.replaceChildren(...first.map((id) => row(id, all.get(id).field.table === "part" ? all.get(id).group.title : "")));
    const groups = answer.groups.map((group) => {
      const rest = group.fields.filter((field) => !first.includes(field.id));
      if (!rest.length) return null;
      const box = Object.assign(document.createElement("section"), { className: "group" });
      const heading = Object.assign(document.createElement("h3"), { id: `g-${group.id.replaceAll(".", "-")}`, textContent: group.title });
      box.setAttribute("role", "group");
      box.setAttribute("aria-labelledby", heading.id);
      box.append(heading);
      box.append(...rest.map((field) => row(field.id, "")));
      return box;
    });
    this.at.groups.replaceChildren(...groups.filter(Boolean));
    if (focused) document.getElementById(focused)?.focus();
  }

  wrong(faults) {
    const of = new Map(faults.filter((fault) => fault.field).map((fault) => [fault.field, fault]));
    for (const [id, row] of this.rows) row.wrong(of.get(id), this.mend);
  }

  go(id) {
    const row = this.rows.get(id);
    (row?.inputs[0] ?? document.getElementById("text")).focus();
  }
}

class Row {
  constructor(field, of, form, metric, ruled) {
    this.id = field.id;
    this.form = form;
    const several = field.value.length === 3;
    this.element = document.createElement(several ? "fieldset" : "div");
    this.element.className = "field";
    const label = document.createElement(several ? "legend" : "label");
    label.append(Object.assign(document.createElement("span"), { textContent: field.label }));
    if (of) label.prepend(Object.assign(document.createElement("span"), { className: "of", textContent: of }), " ");
    if (!several) label.htmlFor = this.name();
    this.inputs = this.made(field, several, of);
    this.was = Object.assign(document.createElement("p"), { className: "was", hidden: true });
    this.fault = Object.assign(document.createElement("p"), { className: "wrong", id: `${this.name()}-wrong`, hidden: true });
    const three = Object.assign(document.createElement("div"), { className: several ? "three" : "" });
    three.append(...this.inputs);
    this.element.append(label, three);
    this.tape = null;
    if (ruled && field.size !== null) {
      this.tape = new Tape(field, metric, of ? `${of}, ${field.label}` : field.label, (typed) => {
        this.inputs[0].value = typed;
        form.move(this.id, [typed]);
      });
      this.element.append(this.tape.element);
    }
    this.element.append(this.was, this.fault);
  }

  name(k = 0) {
    return `f-${this.id.replaceAll(".", "-")}${k ? `-${k}` : ""}`;
  }

  made(field, several, of) {
    const choices = field.kind === "flag" ? ["true", "false"] : field.choices;
    if (choices.length && ["choice", "flag", "numeral"].includes(field.kind)) return [this.choice(choices)];
    return field.value.map((_, k) => {
      const input = Object.assign(document.createElement("input"), { type: "text", id: this.name(k), autocomplete: "off", spellcheck: false });
      if (several) input.setAttribute("aria-label", [of, `${field.label}: ${PLACES[k]}`].filter(Boolean).join(" "));
      let wait;
      const send = () => {
        clearTimeout(wait);
        if (input.dataset.sent !== this.values().join("\n")) this.send();
      };
      input.addEventListener("input", () => {
        clearTimeout(wait);
        wait = setTimeout(send, WAIT);
      });
      input.addEventListener("change", send);
      return input;
    });
  }

  choice(choices) {
    const select = Object.assign(document.createElement("select"), { id: this.name() });
    this.choices = choices;
    select.append(...choices.map((each) => new Option(each, each)));
    select.addEventListener("change", () => this.send());
    return select;
  }

  values() {
    return this.inputs.map((input) => input.value);
  }

  send() {
    for (const input of this.inputs) input.dataset.sent = this.values().join("\n");
    this.form.move(this.id, this.values());
  }

  show(field, was, seen) {
    field.value.forEach((value, k) => {
      const input = this.inputs[k];
      if (input === undefined) return;
      if (this.choices && ![...input.options].some((each) => each.value === value)) input.append(new Option(value, value));
      if (document.activeElement !== input || input.matches("select")) input.value = value;
      input.dataset.sent = field.value.join("\n");
    });
    this.tape?.show(field);
    if (!seen) return;
    const before = was.get(this.id);
    this.was.hidden = before === undefined;
    this.element.classList.toggle("changed", before !== undefined);
    this.was.textContent = before === undefined ? "" : before === "" ? "new, not saved" : `saved: ${before}`;
  }

  wrong(fault, mend) {
    this.fault.hidden = !fault;
    this.element.toggleAttribute("data-wrong", Boolean(fault));
    for (const input of this.inputs) {
      input.toggleAttribute("aria-invalid", Boolean(fault));
      if (fault) {
        input.setAttribute("aria-invalid", "true");
        input.setAttribute("aria-describedby", this.fault.id);
      } else input.removeAttribute("aria-describedby");
    }
    this.fault.replaceChildren(fault?.says ?? "");
    if (fault?.change) this.fault.append(" ", mended(fault, mend));
  }
}
