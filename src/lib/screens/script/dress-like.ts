/**
 * Gives an empty window of this page what makes it look like the page: its rules in sheets of their own, which need neither the network
 * nor a style in the document.
 */
export function dressLike(beside: Window, page: Document): void {
  const { CSSStyleSheet: Sheet } = beside as Window & typeof globalThis;
  beside.document.adoptedStyleSheets = [...page.styleSheets].map(({ cssRules, href }) => {
    // What a rule fetches stands beside the file that the rule is from.
    const sheet = new Sheet({ baseURL: href ?? page.baseURI });
    sheet.replaceSync([...cssRules].map(({ cssText }) => cssText).join('\n'));
    return sheet;
  });
  beside.document.documentElement.lang = page.documentElement.lang;
  beside.document.title = 'Backwave: the presenter’s window';
}
