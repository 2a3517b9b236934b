// Asks the server that handed out this page, at its own address and no other.

export async function ask(what, sent) {
  let answer;
  try {
    answer = await fetch(what, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(sent),
    });
  } catch {
    throw new Error("The page's server does not answer: it has ended. Start yardfast page again; what you typed still stands here.");
  }
  if (answer.ok) return answer.json();
  const kind = answer.headers.get("content-type") ?? "";
  const wrong = new Error("The server could not answer that.");
  if (kind.startsWith("application/json")) wrong.answer = await answer.json();
  else wrong.message = (await answer.text()).trim() || wrong.message;
  throw wrong;
}
