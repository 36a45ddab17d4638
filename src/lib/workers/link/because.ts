/** The cause of a failure in brackets, where one is known. */
export function because(message: string | undefined): string {
  return message ? ` (${message})` : '';
}
