import type { decodeRecording } from '../../audio/decode-recording.js';
import type { ListeningRoom } from '../../audio/listening-room.js';

/** What the page needs to be heard, and not to be seen and measured. */
interface Audio {
  decodeRecording: typeof decodeRecording;
  ListeningRoom: typeof ListeningRoom;
}

/**
 * The audio graph, which comes after the first sound is prepared, or when it is asked for.
 * @throws Error with one plain sentence where the host does not give it.
 */
export async function audioLater(): Promise<Audio> {
  try {
    const [room, decoding] = await Promise.all([
      import('../../audio/listening-room.js'),
      import('../../audio/decode-recording.js')
    ]);
    return { ListeningRoom: room.ListeningRoom, decodeRecording: decoding.decodeRecording };
  } catch {
    throw new Error(
      'The part of this page that plays sound could not be fetched; nothing is lost. Look whether there is a network, and try again.'
    );
  }
}
