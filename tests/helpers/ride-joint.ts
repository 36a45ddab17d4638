/**
 * How rough a ride is where it comes to its loop (and where the loop comes round): the step in value and in slope there, as
 * shares of what 99.9 % of all places within half a second before and behind stay below.
 */
export function rideJoint(
  { samples, loopFrom }: { samples: Float32Array; loopFrom: number },
  sampleRate: number
): { step: number; slope: number } {
  const near = Math.min(Math.round(sampleRate / 2), loopFrom - 2, samples.length - loopFrom - 2);
  const step = (i: number) => Math.abs(samples[i] - samples[i - 1]);
  const slope = (i: number) => Math.abs(samples[i + 1] - 2 * samples[i] + samples[i - 1]);
  const usual = (size: (i: number) => number) => {
    const sizes = Float64Array.from({ length: 2 * near }, (_, n) => size(loopFrom - near + n)).sort();
    return sizes[Math.floor(0.999 * sizes.length)];
  };
  return {
    step: step(loopFrom) / usual(step),
    slope: Math.max(slope(loopFrom), slope(loopFrom - 1)) / usual(slope)
  };
}
