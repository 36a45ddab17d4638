/** A mark that no other tab has ever made: 96 random bits. Works without a secure context, too. */
export function newStamp(): string {
  const parts = crypto.getRandomValues(new Uint32Array(3));
  return Array.from(parts, (part) => part.toString(36).padStart(7, '0')).join('');
}
