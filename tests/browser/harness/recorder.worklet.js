/* global AudioWorkletProcessor, currentFrame, registerProcessor */

/** Sends everything that it hears, as blocks of 4096 frames with the frame of their first sample. */
class Recorder extends AudioWorkletProcessor {
  constructor() {
    super();
    this.block = new Float32Array(4096);
    this.filled = 0;
    this.first = currentFrame;
  }

  process([input]) {
    if (this.filled === 0) this.first = currentFrame;
    if (input[0]) this.block.set(input[0], this.filled);
    else this.block.fill(0, this.filled, this.filled + 128);
    this.filled += 128;
    if (this.filled === this.block.length) {
      this.port.postMessage({ first: this.first, samples: this.block });
      this.block = new Float32Array(4096);
      this.filled = 0;
    }
    return true;
  }
}

registerProcessor('recorder', Recorder);
