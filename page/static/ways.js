// The ways to hold the piece, told one after the other as they are worked out.

import { askLines } from "./asking.js";

const REST = 700; // ms without a change before they are asked for

export class Ways {
  constructor(list, wait, press) {
    this.list = list;
    this.wait = wait;
    this.press = press;
    this.of = null;
  }

  // Asks for the ways of a text once it has stood still for a while.
  look(text, seen) {
    if (text === this.of) return;
    this.of = text;
    this.stop?.abort();
    clearTimeout(this.timer);
    this.list.classList.add("old");
    for (const button of this.list.querySelectorAll("button")) button.disabled = true;
    if (!seen || seen.unheld) {
      this.list.replaceChildren();
      this.wait.textContent = seen ? seen.unheld : "";
      return;
    }
    this.wait.textContent = "Working out the ways to hold it …";
    this.timer = setTimeout(() => this.ask(text), REST);
  }

  async ask(text) {
    const stop = new AbortController();
    this.stop = stop;
    let first = true;
    try {
      for await (const way of askLines("hold", { text }, stop.signal)) {
        if (stop.signal.aborted) return;
        if (first) this.list.replaceChildren();
        first = false;
        this.list.append(this.row(way));
      }
      this.wait.textContent = "";
    } catch (wrong) {
      if (!stop.signal.aborted) this.wait.textContent = wrong.message;
    }
  }

  row(way) {
    const item = document.createElement("li");
    const name = Object.assign(document.createElement("strong"), { textContent: way.name });
    const says = Object.assign(document.createElement("span"), { textContent: way.says });
    item.append(name, says);
    if (!way.possible) {
      item.className = "none";
      return item;
    }
    const button = Object.assign(document.createElement("button"), { type: "button", textContent: "Put it in" });
    button.setAttribute("aria-label", `Put it in: ${way.name}`);
    button.addEventListener("click", () => this.press(way.kind));
    item.append(button);
    return item;
  }
}
