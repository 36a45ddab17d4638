/** A bench file that cannot be read (or written); the message is one plain sentence on one line. */
export class BenchFileError extends Error {
  override name = 'BenchFileError';
}
