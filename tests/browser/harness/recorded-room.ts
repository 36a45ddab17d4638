import { AudioContext, AudioWorkletNode, addAudioWorkletModule } from 'standardized-audio-context';
import { ListeningRoom } from '../../../src/lib/audio/listening-room.js';

/** A live listening room whose output is recorded, frame by frame, before it goes to the device. */
export interface RecordedRoom {
  room: ListeningRoom;
  frame(): number;
  wait(seconds: number): Promise<void>;
  /** Ends the recording: everything from the first frame of the context to now. */
  finish(): Promise<Float32Array>;
}

export async function openRecordedRoom(branches: number, sampleRate = 48000): Promise<RecordedRoom> {
  const context = new AudioContext({ sampleRate, latencyHint: 'interactive' });
  await context.resume();
  if (!addAudioWorkletModule) throw new Error('this browser has no audio worklet');
  await addAudioWorkletModule(context, new URL('./recorder.worklet.js', import.meta.url).href);
  if (!AudioWorkletNode) throw new Error('this browser has no audio worklet');
  const recorder = new AudioWorkletNode(context, 'recorder', {
    channelCount: 1,
    channelCountMode: 'explicit'
  });
  const blocks: { first: number; samples: Float32Array }[] = [];
  recorder.port.onmessage = ({ data }) => blocks.push(data);
  recorder.connect(context.destination);
  const room = new ListeningRoom(context, branches, { output: recorder });
  const wait = (seconds: number) => new Promise<void>((resolve) => setTimeout(resolve, seconds * 1000));
  return {
    room,
    frame: () => Math.round(context.currentTime * sampleRate),
    wait,
    finish: async () => {
      await wait(0.2);
      await room.close();
      const end = blocks.reduce((most, { first, samples }) => Math.max(most, first + samples.length), 0);
      const recording = new Float32Array(end);
      for (const { first, samples } of blocks) recording.set(samples, first);
      return recording;
    }
  };
}
