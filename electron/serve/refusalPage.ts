const ESCAPED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (letter) => ESCAPED[letter] ?? letter);

/** Whether a browser wants a page to show to a person, by what it says it accepts. */
export const wantsPage = (accept: string | undefined): boolean => (accept ?? '').includes('text/html');

/** A refusal for a person: what it is, and what to do. No script, and no style of its own: the content policy forbids both. */
export const refusalPage = (reason: string): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Jounce: not opened</title>
</head>
<body>
<main>
<h1>Jounce did not open here</h1>
<p>${escaped(reason)}</p>
<p>Open the address that <code>npm start</code> printed, whole as it stands there. It is good for one window and one time: if it was used, type <code>npm start</code> again in the folder of Jounce. Nothing that you saved is lost, and what was not saved is offered when it opens.</p>
</main>
</body>
</html>
`;
