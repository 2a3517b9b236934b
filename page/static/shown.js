// Puts what the server found in its place. Its markup is all escaped there, and holds no script.

const by = (id) => document.getElementById(id);
const PLACES = ["front", "plan", "strip", "verdict", "numbers", "rest", "cautions", "not_checked"];
const shownBefore = new Map();

export function show(seen) {
  const coming = Boolean(seen) && !seen.verdict;
  by("sheet").classList.toggle("stale", !seen);
  by("sheet").classList.toggle("coming", coming);
  by("coming").hidden = !coming;
  if (!seen) return;
  for (const place of PLACES) if (place in seen) put(place, seen[place]);
  by("name").textContent = seen.name;
  by("scale").textContent = seen.scale;
  by("faint").hidden = !seen.compared;
  const status = by("status");
  if (seen.spoken && status.textContent !== seen.spoken) status.textContent = seen.spoken;
}

function put(place, markup) {
  if (shownBefore.get(place) === markup) return;
  shownBefore.set(place, markup);
  const made = new DOMParser().parseFromString(markup, "text/html");
  by(place).replaceChildren(...made.body.childNodes);
}

export function showFaults(answer, list, { go, mend }) {
  list.hidden = answer.faults.length === 0;
  by("verdict").hidden = !list.hidden;
  by("rest").hidden = !list.hidden;
  if (list.hidden) return list.replaceChildren();
  const many = answer.faults.length === 1 ? "One thing" : `${answer.faults.length} things`;
  const head = document.createElement("p");
  head.className = "word";
  head.append(Object.assign(document.createElement("strong"), { textContent: `${many} to put right` }));
  head.append("Nothing was worked out: what is drawn below is as it was before.");
  const items = document.createElement("ul");
  for (const fault of answer.faults) items.append(one(fault, go, mend));
  list.replaceChildren(head, items);
  by("status").textContent = `${many} to put right. ${answer.faults[0].says}`;
}

function one(fault, go, mend) {
  const item = document.createElement("li");
  const where = [fault.line ? `line ${fault.line}` : "", fault.where].filter(Boolean).join(", ");
  if (fault.field) {
    const to = Object.assign(document.createElement("button"), { type: "button", textContent: where });
    to.addEventListener("click", () => go(fault.field));
    item.append(to, " ");
  } else if (where) item.append(`${where}: `);
  item.append(Object.assign(document.createElement("span"), { className: "wrong", textContent: fault.says }));
  if (fault.change) item.append(" ", mended(fault, mend));
  return item;
}

export function mended(fault, mend) {
  const button = Object.assign(document.createElement("button"), { type: "button", textContent: `Put in ${fault.change[2]}` });
  button.addEventListener("click", () => mend(fault.change));
  return button;
}
