/** Runs `attempt`; returns the sentence of the RangeError with which it was refused, or null where it was not. */
export function refusal(attempt: () => void): string | null {
  try {
    attempt();
    return null;
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
}
