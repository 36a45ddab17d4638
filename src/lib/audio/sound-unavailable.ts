/** No sound can be made here and now; the message is one plain sentence that says what to do. */
export class SoundUnavailable extends Error {
  override readonly name = 'SoundUnavailable';
}
