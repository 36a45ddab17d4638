/** Why nothing can be compared yet. `pending` is what stands where levels will be. */
export function pendingWords(isThereASound: boolean, pending: string): string {
  return isThereASound
    ? 'What is compared is being worked out …'
    : `There is no sound to compare on: ${pending}.`;
}
