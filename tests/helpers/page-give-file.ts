import type { Page } from '@playwright/test';

export interface GivenFile {
  name: string;
  /** The first bytes of the file, base64. */
  head: string;
  /** Then so many megabytes (2²⁰ bytes) of zeros, which take no memory: the same part over and over. */
  megabytes?: number;
}

/** Drags a file from outside over the page and lets it go there. */
export async function dropFile(page: Page, file: GivenFile, letGo = true): Promise<void> {
  await page.evaluate(
    ({ name, head, megabytes = 0, letGo }) => {
      const letters = atob(head);
      const bytes = new Uint8Array(letters.length);
      for (let i = 0; i < bytes.length; i++) bytes[i] = letters.charCodeAt(i);
      const part = new Blob([new Uint8Array(2 ** 20)]);
      const carried = new DataTransfer();
      carried.items.add(new File([bytes, ...Array<Blob>(megabytes).fill(part)], name));
      for (const kind of letGo ? ['dragover', 'drop'] : ['dragover'])
        document.body.dispatchEvent(
          new DragEvent(kind, { dataTransfer: carried, bubbles: true, cancelable: true })
        );
    },
    { ...file, letGo }
  );
}
