/** Makes noise of a strength: of itself and of so much of another one, times noise. */
export function shaken(
  strength: Float32Array,
  other: Float32Array,
  share: number,
  noise: Float32Array
): Float32Array {
  for (let i = 0; i < strength.length; i++) strength[i] = (strength[i] + share * other[i]) * noise[i];
  return strength;
}
