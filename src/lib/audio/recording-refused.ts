/** A file that cannot be opened as a recording; the message is one plain sentence that says why and what to do. */
export class RecordingRefused extends Error {
  override readonly name = 'RecordingRefused';
}
