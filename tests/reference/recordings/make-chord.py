"""Makes the short recordings of a chord in this folder: our own synthesised sound in the formats that people have.

Made once with Python 3.11 and ffmpeg 5.1 (python3 make-chord.py); the tests need neither. The sound: a chord of 220, 330
and 550 Hz, the two ears of a stereo file differing in phase, that swells and fades within its length.
"""
import math
import struct
import subprocess
import wave
from pathlib import Path

HERE = Path(__file__).parent


def chord(seconds: float, rate: int, channels: int):
    frames = int(seconds * rate)
    for n in range(frames):
        swell = math.sin(math.pi * n / frames) ** 2
        yield [
            0.25 * swell * sum(math.sin(2 * math.pi * f * n / rate + 0.5 * c) for f in (220, 330, 550))
            for c in range(channels)
        ]


def wav(name: str, seconds: float, rate: int, channels: int, width: int):
    with wave.open(str(HERE / name), "wb") as out:
        out.setnchannels(channels)
        out.setsampwidth(width)
        out.setframerate(rate)
        data = bytearray()
        for frame in chord(seconds, rate, channels):
            for x in frame:
                if width == 1:
                    data.append(round(128 + 127 * x))
                elif width == 2:
                    data += struct.pack("<h", round(32767 * x))
                else:
                    data += struct.pack("<i", round(8388607 * x))[:3]
        out.writeframes(bytes(data))


wav("eight-bit-11025-mono.wav", 1, 11025, 1, 1)
wav("sixteen-bit-96000-mono.wav", 0.15, 96000, 1, 2)
wav("twenty-four-bit-44100-stereo.wav", 0.1, 44100, 2, 3)
wav("six-channels-48000.wav", 0.05, 48000, 6, 2)
wav("source.wav", 1, 44100, 2, 2)

# Format 3, 32-bit float: the standard library does not write it.
samples = b"".join(struct.pack("<f", x) for (x,) in chord(0.15, 48000, 1))
fmt = struct.pack("<HHIIHH", 3, 1, 48000, 4 * 48000, 4, 32)
chunks = b"WAVE" + b"fmt " + struct.pack("<I", 16) + fmt + b"data" + struct.pack("<I", len(samples)) + samples
(HERE / "float-48000-mono.wav").write_bytes(b"RIFF" + struct.pack("<I", len(chunks)) + chunks)


def ffmpeg(name: str, *options: str):
    command = ["ffmpeg", "-y", "-loglevel", "error", "-i", str(HERE / "source.wav"), "-map_metadata", "-1"]
    subprocess.run([*command, "-fflags", "+bitexact", *options, str(HERE / name)], check=True)


ffmpeg("chord.mp3", "-c:a", "libmp3lame", "-b:a", "64k")
ffmpeg("chord.flac", "-ac", "1", "-ar", "22050", "-c:a", "flac", "-sample_fmt", "s16")
ffmpeg("chord.ogg", "-c:a", "libvorbis", "-q:a", "1")
ffmpeg("chord.opus", "-c:a", "libopus", "-b:a", "48k")
ffmpeg("chord.m4a", "-c:a", "aac", "-b:a", "64k")
(HERE / "source.wav").unlink()
