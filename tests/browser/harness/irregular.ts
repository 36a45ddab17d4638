/** Pseudo-random numbers between `least` and `most`, the same in every run (Park and Miller's generator). */
export function irregular(seed: number): (least: number, most: number) => number {
  let state = seed;
  return (least, most) => {
    state = (state * 48271) % 2147483647;
    return least + ((most - least) * state) / 2147483647;
  };
}
