/**
 * One sentence for text that is no JSON, with line and column where the engine's own message tells them
 * (the wording of those messages differs from engine to engine and may span lines, so it is not passed on).
 */
export function jsonSyntaxSentence(text: string, error: unknown): string {
  const message = error instanceof Error ? error.message : '';
  const lineColumn = /line (\d+) column (\d+)/.exec(message);
  if (lineColumn) return sentence(Number(lineColumn[1]), Number(lineColumn[2]));
  const position = /at position (\d+)/.exec(message);
  if (position) {
    const before = text.slice(0, Number(position[1])).split('\n');
    return sentence(before.length, before[before.length - 1].length + 1);
  }
  return /end of JSON|Unexpected EOF/i.test(message)
    ? 'the bench file is not JSON: it ends too early'
    : 'the bench file is not JSON';
}

function sentence(line: number, column: number): string {
  return `the bench file is not JSON: line ${line}, column ${column} cannot be read`;
}
