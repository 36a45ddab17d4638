/**
 * Gives an empty window of this page what makes it look like the page: its sheets as they were written, in one of the window's own. The
 * page fetches them, which has them without a network, too.
 */
export async function dressLike(beside: Window, page: Document): Promise<void> {
  beside.document.documentElement.lang = page.documentElement.lang;
  // Nothing waits for its faces there (typefaces.css).
  beside.document.documentElement.classList.add('seen');
  beside.document.title = 'Backwave: the presenter’s window';
  const texts = await Promise.all([...page.styleSheets].map((sheet) => textOf(sheet, page.baseURI)));
  const sheet = new (beside as Window & typeof globalThis).CSSStyleSheet();
  sheet.replaceSync(texts.join('\n'));
  beside.document.adoptedStyleSheets = [sheet];
}

/** The text of a sheet; what its rules fetch stands beside the file that they are from, and is named by its whole address. */
async function textOf({ href, ownerNode }: CSSStyleSheet, page: string): Promise<string> {
  // What browsers give of a rule is not always what was written: a shorthand with a variable in it is lost.
  const text = href ? await (await fetch(href)).text() : (ownerNode?.textContent ?? '');
  return text.replace(
    /url\((["']?)(?!data:)([^"')]+)\1\)/g,
    (_, quote: string, address: string) => `url(${quote}${new URL(address, href ?? page).href}${quote})`
  );
}
