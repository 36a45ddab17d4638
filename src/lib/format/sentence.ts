/** What an error says to the user: its own sentence. */
export function sentence(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
