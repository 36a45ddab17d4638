import { ListeningRoom } from '../../../src/lib/audio/listening-room.js';

async function outcome(timeout: number): Promise<object> {
  const began = performance.now();
  try {
    const room = await ListeningRoom.open({ timeout });
    const { state, sampleRate } = room;
    await room.close();
    return { state, sampleRate };
  } catch (error) {
    const { name, message } = error as Error;
    return { name, message, seconds: (performance.now() - began) / 1000 };
  }
}

/** Opens the room at once, and again at every click; the outcomes go to the console. */
export async function openAndTell(): Promise<void> {
  const tell = async () => console.warn(JSON.stringify(await outcome(1)));
  document.addEventListener('click', () => void tell());
  await tell();
}
