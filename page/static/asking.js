// Asks the server that handed out this page, at its own address and no other.

const ENDED =
  "The page's server does not answer: it has ended. Start yardfast page again; what you changed still stands here.";

export async function ask(what, sent) {
  return (await asked(what, sent)).json();
}

// Yields what is answered, a line for each thing, as it comes.
export async function* askLines(what, sent, signal) {
  const answer = await asked(what, sent, signal);
  if (!answer.body) return;
  const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = "";
  for (;;) {
    const { done, value } = await reader.read();
    const lines = (rest + (value ?? "")).split("\n");
    rest = lines.pop();
    for (const line of lines) yield JSON.parse(line);
    if (done) return;
  }
}

export async function askFile(what, sent) {
  const answer = await asked(what, sent);
  const name = /filename="([^"]+)"/.exec(answer.headers.get("content-disposition") ?? "")?.[1] ?? "piece";
  return { name, content: await answer.blob() };
}

async function asked(what, sent, signal) {
  let answer;
  try {
    answer = await fetch(what, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(sent),
      signal,
    });
  } catch (wrong) {
    throw wrong.name === "AbortError" ? wrong : new Error(ENDED);
  }
  if (answer.ok) return answer;
  const kind = answer.headers.get("content-type") ?? "";
  const wrong = new Error("The server could not answer that.");
  if (kind.startsWith("application/json")) {
    wrong.answer = await answer.json();
    wrong.message = wrong.answer.why ?? wrong.message;
  } else wrong.message = (await answer.text()).trim() || wrong.message;
  throw wrong;
}
