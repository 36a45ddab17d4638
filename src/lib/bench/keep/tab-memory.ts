const KEY = 'backwave bench';

/** What this very tab had on its bench, so that a reload brings back its own and not another tab's. */
export class TabMemory {
  #id: string | null = null;

  get bench(): string | null {
    try {
      return this.#id ?? sessionStorage.getItem(KEY);
    } catch {
      return this.#id;
    }
  }

  set bench(id: string | null) {
    this.#id = id;
    try {
      if (id === null) sessionStorage.removeItem(KEY);
      else sessionStorage.setItem(KEY, id);
    } catch {
      // Then the bench that was on last in any tab comes back.
    }
  }
}
