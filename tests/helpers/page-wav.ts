export interface WavFormat {
  sampleRate: number;
  bits?: 8 | 16;
}

/** A plain RIFF/WAVE file of whole-number samples; one array a channel, full scale ±1. */
export function wav(channels: number[][], { sampleRate, bits = 16 }: WavFormat): Buffer {
  const frames = channels[0].length;
  const block = (channels.length * bits) / 8;
  const bytes = Buffer.alloc(44 + frames * block);
  wavHeader({ channels: channels.length, sampleRate, bits, dataBytes: frames * block }).copy(bytes);
  let at = 44;
  for (let frame = 0; frame < frames; frame++)
    for (const channel of channels) {
      const value = Math.max(-1, Math.min(1, channel[frame]));
      if (bits === 8) bytes.writeUInt8(Math.round(128 + value * 127), at);
      else bytes.writeInt16LE(Math.round(value * 32767), at);
      at += bits / 8;
    }
  return bytes;
}

/** The 44 bytes before the samples. */
export function wavHeader(of: {
  channels: number;
  sampleRate: number;
  bits: number;
  dataBytes: number;
}): Buffer {
  const header = Buffer.alloc(44);
  const block = (of.channels * of.bits) / 8;
  header.write('RIFF', 0);
  header.writeUInt32LE(36 + of.dataBytes, 4);
  header.write('WAVEfmt ', 8);
  header.writeUInt32LE(16, 16);
  header.writeUInt16LE(1, 20);
  header.writeUInt16LE(of.channels, 22);
  header.writeUInt32LE(of.sampleRate, 24);
  header.writeUInt32LE(of.sampleRate * block, 28);
  header.writeUInt16LE(block, 32);
  header.writeUInt16LE(of.bits, 34);
  header.write('data', 36);
  header.writeUInt32LE(of.dataBytes, 40);
  return header;
}

/** A tone with overtones, so that it has something in many bands. */
export function tone(frequency: number, seconds: number, sampleRate: number): number[] {
  return Array.from({ length: Math.round(seconds * sampleRate) }, (_, i) => {
    const phase = (2 * Math.PI * frequency * i) / sampleRate;
    return 0.3 * Math.sin(phase) + 0.2 * Math.sin(3 * phase) + 0.1 * Math.sin(9 * phase);
  });
}
