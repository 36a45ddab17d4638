const longest = 40;

/** A foreign value as it may stand in a sentence: quoted, on one line, cut to a bearable length. */
export function quoted(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  if (typeof value === 'string') {
    const cut = value.length > longest ? `${value.slice(0, longest)}…` : value;
    return JSON.stringify(cut).replace(/[\u007f-\u009f\u2028\u2029]/g, ' ');
  }
  return String(value);
}
