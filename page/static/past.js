// What the text was: back and on again. Moves of one field close on each other are one step.

const MOST = 300;
const CLOSE = 1200; // ms

export class Past {
  constructor() {
    this.back = [];
    this.on = [];
    this.last = { what: "", at: 0 };
  }

  keep(text, what) {
    const now = performance.now();
    const same = what === this.last.what && now - this.last.at < CLOSE && this.back.length > 0;
    this.last = { what, at: now };
    this.on = [];
    if (same || this.back.at(-1) === text) return;
    this.back.push(text);
    if (this.back.length > MOST) this.back.shift();
  }

  undo(text) {
    return this.step(this.back, this.on, text);
  }

  redo(text) {
    return this.step(this.on, this.back, text);
  }

  step(from, to, text) {
    this.last = { what: "", at: 0 };
    while (from.length && from.at(-1) === text) from.pop();
    if (!from.length) return null;
    to.push(text);
    return from.pop();
  }
}
