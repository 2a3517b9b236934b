// A tape that slides under a mark: a range whose ticks stand where a tape has them.

const KINDS = {
  length: [{ unit: "in", step: 0.5, fine: 0.125, short: 1, long: 6 }, { unit: "mm", step: 10, fine: 1, short: 20, long: 100 }],
  mass: [{ unit: "lb", step: 1, fine: 0.25, short: 5, long: 25 }, { unit: "kg", step: 1, fine: 0.1, short: 2, long: 10 }],
  speed: [{ unit: "mph", step: 1, fine: 1, short: 2, long: 10 }, { unit: "km/h", step: 1, fine: 1, short: 5, long: 20 }],
};
const SMALL = 6; // below so many steps of the long ticks the fine step is taken

export class Tape {
  constructor(field, metric, called, moved) {
    this.kind = KINDS[field.kind][Number(metric)];
    const fine = field.size < this.kind.long / 2 && this.kind.fine < this.kind.step;
    this.step = fine ? this.kind.fine : this.kind.step;
    this.short = fine ? this.kind.step / 2 : this.kind.short;
    this.long = fine ? this.kind.step * 2 : this.kind.long;
    this.element = Object.assign(document.createElement("input"), { type: "range", className: "tape" });
    this.element.setAttribute("aria-label", `${called}, tape`);
    this.element.step = this.step;
    this.stretch(field.size);
    this.held = false;
    this.element.addEventListener("pointerdown", () => { this.held = true; });
    addEventListener("pointerup", () => { this.held = false; });
    this.element.addEventListener("input", () => {
      const typed = this.text(Number(this.element.value));
      this.element.setAttribute("aria-valuetext", typed);
      moved(typed);
    });
    this.show(field);
  }

  stretch(size) {
    const { element, long, step } = this;
    const most = Math.max(long * 2, Math.ceil((size * 1.9) / long) * long);
    element.min = step;
    element.max = most;
    const share = (each) => `${((each / (most - step)) * 100).toFixed(3)}%`;
    const short = most / this.short > 90 ? this.short * 5 : this.short;
    element.style.setProperty("--short", share(short));
    element.style.setProperty("--long", share(long));
  }

  show(field) {
    if (field.size === null) return;
    if (field.size > Number(this.element.max)) this.stretch(field.size);
    if (!this.held) this.element.value = field.size;
    this.element.setAttribute("aria-valuetext", field.value[0]);
  }

  text(value) {
    const { unit } = this.kind;
    if (unit !== "in") return `${Number(value.toFixed(2))} ${unit}`;
    const eighths = Math.round(value * 8);
    const whole = Math.floor(eighths / 8);
    let rest = eighths % 8;
    let of = 8;
    while (rest && rest % 2 === 0) [rest, of] = [rest / 2, of / 2];
    const shown = [whole || !rest ? String(whole) : "", rest ? `${rest}/${of}` : ""].filter(Boolean);
    return `${shown.join(" ")} in`;
  }
}
