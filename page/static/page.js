// The page: one text is the design. Each change goes to the server as the text with what was moved
// in it, and comes back whole: text, fields, drawing, words.

import { ask, askLines } from "./asking.js";
import { Form } from "./form.js";
import { Past } from "./past.js";
import { papers } from "./papers.js";
import { show, showFaults } from "./shown.js";
import { Ways } from "./ways.js";

const GIVEN = { weight: "weigh", tall: "stretch" }; // what is typed, and its form

const state = JSON.parse(document.getElementById("state").textContent);
const by = (id) => document.getElementById(id);
const past = new Past();
const form = new Form({ leading: by("leading"), groups: by("groups") }, { move, mend });

const ways = new Ways(by("ways"), by("ways-wait"), (way) => put({ way }));

let text = state.answer.text;
let pending = new Map(); // fields that were changed and not sent yet
let request = null; // what is to be asked beside them, such as another kind of piece
let busy = false;
let wanted = false;
let settled = Promise.resolve();
let stop = null; // ends what is still to come of an answer that nobody waits for
let version = 0; // grows with every change made here
let base = 0; // grows where the text is replaced as a whole: what was asked of the old one is void

// ---- changes

function move(id, values) {
  remember(id);
  pending.set(id, values);
  version += 1;
  mark();
  look();
}

function take(whole, { step = true } = {}) {
  if (whole === text && pending.size === 0) return;
  if (step) remember("text");
  replace(whole);
  look();
}

function replace(whole) {
  text = whole;
  pending = new Map();
  version += 1;
  base += 1;
}

function remember(what) {
  past.keep(text, what);
  mark();
}

function mend(change) {
  const letters = Array.from(text); // the server counts characters, not halves of them
  take([...letters.slice(0, change[0]), change[2], ...letters.slice(change[1])].join(""));
}

// Puts a way to hold it, or a weight, into the text; what is in the way is told.
async function put(what) {
  remember("put");
  request = what;
  version += 1;
  await look();
}

// Asks as long as something was changed since; what waits for the last answer awaits this.
function look() {
  wanted = true;
  if (!busy) settled = asking();
  return settled;
}

async function asking() {
  busy = true;
  while (wanted) {
    wanted = false;
    await once();
  }
  busy = false;
}

// The first line of the answer has the drawing; the second what follows once all is judged, which
// is not waited for where something was changed by then.
async function once() {
  const [asked, on] = [version, base];
  const more = request ?? { edits: [...pending] };
  if (!request) pending = new Map();
  request = null;
  stop?.abort();
  stop = new AbortController();
  const lines = askLines("look", { text, saved: state.saved, ...more }, stop.signal);
  try {
    const { value: answer } = await lines.next();
    if (base !== on) return;
    text = answer.text;
    wanted ||= pending.size > 0;
    adopt(answer, asked === version);
    finish(lines, answer, asked);
  } catch (wrong) {
    if (wrong.name === "AbortError") return;
    const beside = Object.keys(GIVEN).find((what) => what in more);
    if (beside) tellBeside(beside, wrong.message);
    else tell(wrong.message);
  }
}

async function finish(lines, answer, asked) {
  try {
    const { value, done } = await lines.next();
    if (!done && asked === version) adopt({ ...answer, ...value }, true);
  } catch (wrong) {
    if (wrong.name !== "AbortError" && asked === version) tell(wrong.message);
  }
}

function adopt(answer, newest) {
  const field = by("text");
  if (newest && document.activeElement !== field) field.value = answer.text;
  form.show(answer, newest);
  show(answer.seen);
  showFaults(answer, by("faults"), { go: (id) => form.go(id), mend });
  by("weigh").hidden = !answer.seen?.weightless;
  if (answer.seen) {
    by("stretch").hidden = !answer.seen.stretched;
    by("tall").placeholder = answer.seen.stretched;
  }
  if (!answer.seen || answer.seen.verdict) ways.look(answer.text, answer.seen);
  mark();
}

// ---- saved or not

function changed() {
  return text !== state.saved || pending.size > 0;
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
  await settled;
  const sent = text;
  try {
    const called = document.querySelector("#kind-list [aria-pressed=true]")?.value ?? "";
    const kept = await ask("save", { text: sent, mark: state.mark, called, beside });
    Object.assign(state, kept);
    by("kinds").hidden = true;
    tell(`Saved: ${kept.file}.`);
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
    replace(answer.text);
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

// ---- the kinds of piece that a file begins with

function kinds() {
  const list = by("kind-list");
  for (const [kind, says] of Object.entries(state.kinds)) {
    const button = Object.assign(document.createElement("button"), { type: "button", value: kind, textContent: kind });
    button.setAttribute("aria-description", says);
    button.setAttribute("aria-pressed", String(kind === state.kind));
    button.addEventListener("click", () => begin(kind));
    list.append(button);
  }
  by("kind-says").textContent = state.kinds[state.kind] ?? "";
  by("kinds").hidden = !list.childElementCount;
  for (const unit of document.querySelectorAll("[name=units]")) {
    unit.addEventListener("change", () => begin(document.querySelector("#kind-list [aria-pressed=true]").value));
  }
}

function begin(kind) {
  for (const each of document.querySelectorAll("#kind-list button")) {
    each.setAttribute("aria-pressed", String(each.value === kind));
  }
  by("kind-says").textContent = state.kinds[kind];
  remember("kind");
  request = { kind, metric: document.querySelector("[name=units]:checked").value === "metric" };
  replace(text);
  form.forget();
  look();
}

// ---- what no field of the file holds by itself: a weight laid low, and how tall all of it is

function tellBeside(what, words) {
  by(`${what}-wrong`).textContent = words;
  by(`${what}-wrong`).hidden = !words;
}

function give(what) {
  const typed = by(what).value.trim();
  by(what).value = "";
  tellBeside(what, "");
  if (typed) put({ [what]: typed });
}

for (const [what, form] of Object.entries(GIVEN)) {
  by(form).addEventListener("submit", (event) => {
    event.preventDefault();
    give(what);
  });
  by(what).addEventListener("change", () => give(what));
}

// ---- keys and buttons

async function undo() {
  await settled;
  const before = past.undo(text);
  if (before !== null) take(before, { step: false });
}

async function redo() {
  await settled;
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
  if (changed() && (state.file || past.back.length)) event.preventDefault();
});

kinds();
papers(by("papers"), by("paper-said"), by("draft"), () => text);
by("text").value = text;
adopt(state.answer, true);
