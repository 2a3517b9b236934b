// The page: one text is the design. Each change goes to the server as the text with what was moved
// in it, and comes back whole: text, fields, drawing, words.

import { ask } from "./asking.js";
import { Form } from "./form.js";
import { Past } from "./past.js";
import { show, showFaults } from "./shown.js";

const state = JSON.parse(document.getElementById("state").textContent);
const by = (id) => document.getElementById(id);
const past = new Past();
const form = new Form({ leading: by("leading"), groups: by("groups") }, { move, mend });

let text = state.answer.text;
let pending = new Map(); // fields that were changed and not sent yet
let request = null; // what is to be asked beside them, such as another kind of piece
let busy = false;
let wanted = false;
let version = 0; // grows with every change made here

// ---- changes

function move(id, values) {
  remember(id);
  pending.set(id, values);
  version += 1;
  look();
}

function take(whole, { step = true } = {}) {
  if (whole === text && pending.size === 0) return;
  if (step) remember("text");
  text = whole;
  pending = new Map();
  version += 1;
  look();
}

function remember(what) {
  past.keep(text, what);
}

function mend(change) {
  const letters = Array.from(text); // the server counts characters, not halves of them
  take([...letters.slice(0, change[0]), change[2], ...letters.slice(change[1])].join(""));
}

async function look() {
  wanted = true;
  if (busy) return;
  busy = true;
  while (wanted) {
    wanted = false;
    await once();
  }
  busy = false;
}

async function once() {
  const asked = version;
  const edits = [...pending];
  const more = request ?? {};
  pending = new Map();
  request = null;
  try {
    const answer = await ask("look", { text, saved: state.saved, edits, ...more });
    if (asked === version) text = answer.text;
    else if (edits.length) text = answer.text; // what came meanwhile is put into this one
    adopt(answer, asked === version);
  } catch (wrong) {
    tell(wrong.message);
  }
}

function adopt(answer, newest) {
  const field = by("text");
  if (newest && document.activeElement !== field) field.value = answer.text;
  form.show(answer, newest);
  show(answer.seen);
  showFaults(answer, by("faults"), { go: (id) => form.go(id), mend });
  mark();
}

// ---- saved or not

function changed() {
  return text !== state.saved;
}

function mark() {
  const name = state.file ?? "a new piece, not in a file yet";
  by("file").textContent = changed() ? `${name}: not saved` : name;
  document.title = `${changed() ? "* " : ""}${by("name").textContent}`;
  by("undo").disabled = !past.back.length;
  by("redo").disabled = !past.on.length;
  by("save").disabled = !changed();
}

async function save(beside = false) {
  const sent = text;
  try {
    const called = document.querySelector("#kind-list [aria-pressed=true]")?.value ?? "";
    const kept = await ask("save", { text: sent, mark: state.mark, called, beside });
    Object.assign(state, kept);
    by("kinds").hidden = true;
    tell(`Saved: ${kept.file}.`);
    say(`Saved: ${kept.file}`);
    look();
  } catch (wrong) {
    if (wrong.answer?.changed) conflict(wrong.answer.name);
    else tell(wrong.answer?.why ?? wrong.message);
  }
  mark();
}

function conflict(name) {
  tell(`${name} was changed meanwhile, by another window or another program. Nothing was written.`, {
    "Take what is in the file": reread,
    "Save mine beside it": () => save(true),
  });
}

async function reread() {
  try {
    const answer = await ask("file", {});
    remember("file");
    Object.assign(state, { file: answer.file, mark: answer.mark, saved: answer.saved });
    text = answer.text;
    version += 1;
    by("text").value = text;
    adopt(answer, true);
    tell("Read anew. Undo brings back what you had.");
  } catch (wrong) {
    tell(wrong.message);
  }
}

// ---- what is told beside the piece

export function tell(words, ways = {}) {
  const notice = by("notice");
  notice.replaceChildren(words);
  for (const [label, act] of Object.entries(ways)) {
    const button = Object.assign(document.createElement("button"), { type: "button", textContent: label });
    button.addEventListener("click", () => { notice.hidden = true; act(); });
    notice.append(" ", button);
  }
  notice.hidden = false;
}

function say(words) {
  by("status").textContent = words;
}

// ---- the kinds of piece that a file begins with

function kinds() {
  const list = by("kind-list");
  for (const [kind, says] of Object.entries(state.kinds)) {
    const button = Object.assign(document.createElement("button"), { type: "button", value: kind });
    const small = Object.assign(document.createElement("span"), { textContent: says });
    button.append(kind, small);
    button.setAttribute("aria-pressed", String(kind === state.kind));
    button.addEventListener("click", () => begin(kind));
    list.append(button);
  }
  by("kinds").hidden = !list.childElementCount;
  for (const unit of document.querySelectorAll("[name=units]")) {
    unit.addEventListener("change", () => begin(document.querySelector("#kind-list [aria-pressed=true]").value));
  }
}

function begin(kind) {
  for (const each of document.querySelectorAll("#kind-list button")) {
    each.setAttribute("aria-pressed", String(each.value === kind));
  }
  remember("kind");
  request = { kind, metric: document.querySelector("[name=units]:checked").value === "metric" };
  pending = new Map();
  version += 1;
  form.forget();
  look();
}

// ---- keys and buttons

function undo() {
  const before = past.undo(text);
  if (before !== null) take(before, { step: false });
}

function redo() {
  const after = past.redo(text);
  if (after !== null) take(after, { step: false });
}

by("undo").addEventListener("click", undo);
by("redo").addEventListener("click", redo);
by("save").addEventListener("click", () => save());
let typing;
by("text").addEventListener("input", () => {
  clearTimeout(typing);
  typing = setTimeout(() => take(by("text").value), 250);
});
document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === "s") {
    event.preventDefault();
    if (changed()) save();
  }
  if (event.target.matches("textarea, input[type=text]")) return; // these undo their own letters
  if (key === "z") {
    event.preventDefault();
    (event.shiftKey ? redo : undo)();
  }
});
addEventListener("beforeunload", (event) => {
  if (changed() && state.file) event.preventDefault();
});

kinds();
by("text").value = text;
adopt(state.answer, true);
