/** A repeatable stream of numbers from a seed (mulberry32, public domain, from memory): same seed, same plans, on every machine. */
export interface SeededRandom {
  /** From 0 up to but not including 1. */
  next(): number;
  /** A whole number from low to high, both included. */
  whole(low: number, high: number): number;
  pick<T>(choices: readonly T[]): T;
  chance(probability: number): boolean;
}

export function seededRandom(seed: number): SeededRandom {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return { next, whole, pick: (choices) => choices[whole(0, choices.length - 1)]!, chance: (probability) => next() < probability };
}
