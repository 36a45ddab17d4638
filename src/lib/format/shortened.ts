/** A text of at most so many characters, the middle left out: what tells two names apart often stands at the end. */
export function shortened(text: string, most: number): string {
  const characters = [...text];
  if (characters.length <= most) return text;
  const head = Math.ceil((most - 1) * 0.6);
  const tail = most - 1 - head;
  return `${characters.slice(0, head).join('').trimEnd()}…${characters
    .slice(characters.length - tail)
    .join('')
    .trimStart()}`;
}
