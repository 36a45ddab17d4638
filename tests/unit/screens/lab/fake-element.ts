/** Stands in for an element of the page: it is found by the selectors given. */
export class FakeElement {
  constructor(private readonly matches: string[] = []) {}
  closest(selectors: string): FakeElement | null {
    return selectors.split(', ').some((one) => this.matches.includes(one)) ? this : null;
  }
}

/** A key press as the browser tells of it; `on` are the selectors of what has the focus. */
export function keyPress(code: string, more: Partial<KeyboardEvent> & { on?: string[] } = {}): KeyboardEvent {
  const { on = [], ...rest } = more;
  return { code, key: '', target: new FakeElement(on), ...rest } as unknown as KeyboardEvent;
}
