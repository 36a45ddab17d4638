/** What a tab tells the others: it has written (or, with null, deleted) this bench. */
export interface Told {
  id: string;
  stamp: string | null;
}

/** A line to the other tabs of this browser; where there is none, nothing is said and nothing heard. */
export class OtherTabs {
  #channel: BroadcastChannel | null = null;

  constructor(onTold: (told: Told) => void) {
    if (typeof BroadcastChannel === 'undefined') return;
    try {
      this.#channel = new BroadcastChannel('backwave benches');
      this.#channel.onmessage = ({ data }) => onTold(data as Told);
    } catch {
      // Without the line the stamp in the store still tells, only later.
    }
  }

  tell(told: Told): void {
    this.#channel?.postMessage(told);
  }

  close(): void {
    this.#channel?.close();
  }
}
