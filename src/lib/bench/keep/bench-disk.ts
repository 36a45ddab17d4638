import { download } from '../download.js';
import { BenchFileError } from '../../file/bench-file-error.js';
import { BENCH_FILE_LIMITS } from '../../file/bench-file-limits.js';

/** A file that the user has let the page write to. */
export interface FileHandle {
  readonly name: string;
  getFile(): Promise<File>;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
}

/** A file that was picked, and where the browser allows it the way back to it. */
export interface Picked {
  file: File;
  handle: FileHandle | null;
}

/** Where benches are opened from and saved to. */
export interface BenchDisk {
  /** Lets the user pick a bench file; null where nothing was picked. Must be called from a click or a key. */
  pick(): Promise<Picked | null>;
  /**
   * Saves text to a file: to the one of `handle`, else to one the user picks, else as a download.
   * @returns what it is called and the handle to it where there is one; null where the user has changed their mind.
   */
  save(
    text: string,
    fileName: string,
    handle: FileHandle | null
  ): Promise<{ name: string; handle: FileHandle | null } | null>;
}

/** The pickers of browsers that let a page write to a file; TypeScript does not know them yet. */
interface Pickers {
  showOpenFilePicker?(options: object): Promise<FileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileHandle>;
}

const TYPES = [{ description: 'Backwave bench', accept: { 'application/json': ['.json'] } }];

/** Whether "save" can write to the same file again. */
export function canWriteToFiles(): boolean {
  return typeof (globalThis as Pickers).showSaveFilePicker === 'function';
}

/** The disk of whoever uses this browser. */
export const browserDisk: BenchDisk = { pick: pickBench, save: saveText };

async function pickBench(): Promise<Picked | null> {
  const { showOpenFilePicker } = globalThis as Pickers;
  if (showOpenFilePicker) {
    const handle = await unlessCancelled(() => showOpenFilePicker({ types: TYPES }));
    return handle && { file: await handle[0].getFile(), handle: handle[0] };
  }
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,.backwave,application/json';
    input.hidden = true;
    const answer = (picked: Picked | null): void => {
      input.remove();
      resolve(picked);
    };
    input.onchange = () => answer(input.files?.[0] ? { file: input.files[0], handle: null } : null);
    input.oncancel = () => answer(null);
    // In the page as long as the browser asks: what nobody holds may be swept away meanwhile, and the answer with it.
    document.body.append(input);
    input.click();
  });
}

async function saveText(
  text: string,
  fileName: string,
  handle: FileHandle | null
): Promise<{ name: string; handle: FileHandle | null } | null> {
  const { showSaveFilePicker } = globalThis as Pickers;
  const to =
    handle ??
    (showSaveFilePicker
      ? await unlessCancelled(() => showSaveFilePicker({ suggestedName: fileName, types: TYPES }))
      : undefined);
  if (to === null) return null;
  if (to === undefined) {
    download(text, 'application/json', fileName);
    return { name: fileName, handle: null };
  }
  const writing = await to.createWritable();
  await writing.write(text);
  await writing.close();
  return { name: to.name, handle: to };
}

/**
 * The text of a file that is said to be a bench.
 * @throws BenchFileError where it is so large that it cannot be one, or cannot be read at all.
 */
export async function textOfBench(file: File): Promise<string> {
  // A sign takes at most four bytes: whatever is larger has too many signs for certain.
  if (file.size > 4 * BENCH_FILE_LIMITS.characters)
    throw new BenchFileError(
      `the file is ${(file.size / 1e6).toFixed(0)} megabytes large; no bench is, and it was not read`
    );
  try {
    return await file.text();
  } catch (error) {
    throw new BenchFileError('the file cannot be read; perhaps it was moved or deleted', { cause: error });
  }
}

/** What a picker gives; null where the user closed it. */
async function unlessCancelled<T>(pick: () => Promise<T>): Promise<T | null> {
  try {
    return await pick();
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
