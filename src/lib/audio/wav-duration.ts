import type { Seconds } from '../units.js';

const MOST_CHUNKS = 1000;

/**
 * How long a RIFF/WAVE file lasts, by its headers alone; null if it is no such file or its headers are broken.
 * A `data` chunk of unknown size (0 or 0xFFFFFFFF, as written by programs that stream) reaches to the file's end.
 */
export async function wavDuration(file: Blob): Promise<Seconds | null> {
  const head = await view(file, 0, 12);
  if (!head || !['RIFF', 'RF64'].includes(tag(head, 0)) || tag(head, 8) !== 'WAVE') return null;
  let bytesPerSecond = 0;
  let position = 12;
  for (let i = 0; i < MOST_CHUNKS; i++) {
    const chunk = await view(file, position, 8);
    if (!chunk) return null;
    const size = chunk.getUint32(4, true);
    if (tag(chunk, 0) === 'fmt ') {
      const format = await view(file, position + 8, 16);
      if (!format) return null;
      const isPlain = [1, 3, 0xfffe].includes(format.getUint16(0, true));
      const blocksPerSecond = format.getUint32(4, true);
      // For plain samples the size of a block is a surer word than the announced bytes per second.
      bytesPerSecond = isPlain ? blocksPerSecond * format.getUint16(12, true) : format.getUint32(8, true);
    } else if (tag(chunk, 0) === 'data') {
      if (bytesPerSecond === 0) return null;
      const rest = file.size - position - 8;
      return Math.min(rest, size === 0 ? rest : size) / bytesPerSecond;
    }
    position += 8 + size + (size % 2);
  }
  return null;
}

async function view(file: Blob, start: number, length: number): Promise<DataView | null> {
  if (start + length > file.size) return null;
  return new DataView(await file.slice(start, start + length).arrayBuffer());
}

function tag(bytes: DataView, offset: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => bytes.getUint8(offset + i)));
}
