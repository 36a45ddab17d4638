/** Why a part may not come, behind its name. */
export const NOT_FETCHED =
  'could not be fetched: the network is gone, or a newer version has taken its place.';

/** A part of the page that comes later: it is fetched once, and again only where it did not come. */
export class LaterPart<Part> {
  part = $state.raw<Part | null>(null);
  /** It was asked for and could not be fetched. */
  lost = $state(false);

  #fetch: () => Promise<{ default: Part }>;
  #coming = false;

  constructor(fetch: () => Promise<{ default: Part }>) {
    this.#fetch = fetch;
  }

  async bring(): Promise<void> {
    if (this.part || this.#coming) return;
    this.#coming = true;
    this.lost = false;
    try {
      this.part = (await this.#fetch()).default;
    } catch {
      this.lost = true;
    } finally {
      this.#coming = false;
    }
  }
}
