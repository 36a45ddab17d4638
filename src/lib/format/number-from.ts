/** A number as a person types it, with a comma or a point and either minus; NaN where it is none. */
export function numberFrom(text: string): number {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  return plain === '' ? NaN : Number(plain);
}
