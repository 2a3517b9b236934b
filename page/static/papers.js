// What is handed out of the design, as files that the browser keeps.

import { askFile } from "./asking.js";

export function papers(list, said, draft, text) {
  let what = "";

  async function hand(asDraft) {
    draft.hidden = true;
    said.textContent = "Making it …";
    try {
      const { name, content } = await askFile("paper", { text: text(), what, draft: asDraft });
      const link = Object.assign(document.createElement("a"), { href: URL.createObjectURL(content), download: name });
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
      said.textContent = `${name} is handed to your browser.`;
    } catch (wrong) {
      said.textContent = wrong.answer?.why ?? wrong.message;
      draft.hidden = !wrong.answer?.draft;
    }
  }

  for (const button of list.querySelectorAll("button")) {
    button.addEventListener("click", () => {
      what = button.value;
      hand(false);
    });
  }
  draft.addEventListener("click", () => hand(true));
}
