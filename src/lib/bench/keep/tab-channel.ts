/** What a tab tells the others: it has written (or, with null, deleted) this bench. */
export interface Told {
  id: string;
  stamp: string | null;
}

/** A line to the other tabs. */
export interface TabChannel {
  /** Hears what other tabs tell, until the function that is returned is called. */
  open(onTold: (told: Told) => void): () => void;
  tell(told: Told): void;
}

/** The line to the other tabs of this browser; where there is none, nothing is said and nothing heard. */
export class BrowserChannel implements TabChannel {
  #channel: BroadcastChannel | null = null;

  open(onTold: (told: Told) => void): () => void {
    if (typeof BroadcastChannel === 'undefined') return () => undefined;
    try {
      this.#channel = new BroadcastChannel('backwave benches');
      this.#channel.onmessage = ({ data }) => onTold(data as Told);
    } catch {
      // Without the line the stamp in the store still tells, only later.
    }
    return () => {
      this.#channel?.close();
      this.#channel = null;
    };
  }

  tell(told: Told): void {
    this.#channel?.postMessage(told);
  }
}
