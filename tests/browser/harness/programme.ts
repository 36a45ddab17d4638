/** One second of a few sines below 1 kHz, each a whole number of hertz: a seamless loop with nothing above them. */
export function programme(
  sampleRate: number,
  frequencies = [110, 317, 523, 941],
  amplitude = 0.2
): Float32Array {
  return Float32Array.from({ length: sampleRate }, (_, n) =>
    frequencies.reduce((sum, f) => sum + amplitude * Math.sin((2 * Math.PI * f * n) / sampleRate), 0)
  );
}
