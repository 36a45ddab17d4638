"""Integrated loudness of generated signals, measured with the ebur128 filter of ffmpeg.

Run: python3 tests/reference/loudness.py   (needs NumPy and ffmpeg; writes loudness.json beside itself)

Every signal is a sum of parts a channel, so that a test can make it again:
  sine  level·sin(2π·frequency·n/rate)
  noise level·(x/2³¹ − 1), x ← (1664525·x + 1013904223) mod 2³², first x from the seed
each between `from` and `to` seconds. Files are 32-bit float; values are read with three decimals.
"""

import json
import pathlib
import re
import subprocess
import tempfile

import numpy as np


def sine(frequency, level, start, end):
    return {"kind": "sine", "frequency": frequency, "level": level, "from": start, "to": end}


def noise(seed, level, start, end):
    return {"kind": "noise", "seed": seed, "level": level, "from": start, "to": end}


SIGNALS = [
    {"name": "sine 997 Hz", "rate": 48000, "seconds": 5, "channels": [[sine(997, 0.1, 0, 5)]]},
    {"name": "sine 60 Hz", "rate": 48000, "seconds": 5, "channels": [[sine(60, 0.3, 0, 5)]]},
    {"name": "sine 4 kHz at 44.1 kHz", "rate": 44100, "seconds": 5, "channels": [[sine(4000, 0.2, 0, 5)]]},
    {"name": "white noise", "rate": 48000, "seconds": 6, "channels": [[noise(1, 0.2, 0, 6)]]},
    {
        "name": "noise with quiet and silent stretches",
        "rate": 48000,
        "seconds": 12,
        "channels": [[noise(2, 0.2, 0, 4), noise(3, 0.02, 4, 7), noise(4, 0.0001, 7, 9), noise(5, 0.07, 9, 12)]],
    },
    {
        "name": "chord and noise in bursts",
        "rate": 48000,
        "seconds": 7.33,
        "channels": [
            [sine(220, 0.1, 0.3, 2.17), sine(331, 0.1, 1.1, 5.05), sine(2750, 0.05, 0, 7.33), noise(6, 0.5, 3.21, 3.4)]
        ],
    },
    {
        "name": "stereo",
        "rate": 48000,
        "seconds": 5,
        "layout": "stereo",
        "weights": [1, 1],
        "channels": [[noise(7, 0.1, 0, 5)], [sine(500, 0.2, 1, 5)]],
    },
    {
        "name": "five channels",
        "rate": 48000,
        "seconds": 5,
        "layout": "5.0(side)",
        "weights": [1, 1, 1, 1.41, 1.41],
        "channels": [[noise(10 + c, 0.05 * (c + 1), 0, 5)] for c in range(5)],
    },
]


def lcg(seed, count):
    x, out = seed, np.empty(count)
    for n in range(count):
        x = (1664525 * x + 1013904223) % 2**32
        out[n] = x / 2**31 - 1
    return out


def channel(parts, rate, seconds):
    samples = np.zeros(round(seconds * rate))
    for part in parts:
        first, last = round(part["from"] * rate), round(part["to"] * rate)
        if part["kind"] == "sine":
            n = np.arange(first, last)
            samples[first:last] += part["level"] * np.sin(2 * np.pi * part["frequency"] * n / rate)
        else:
            samples[first:last] += part["level"] * lcg(part["seed"], last - first)
    return samples


def measure(signal):
    data = np.stack([channel(c, signal["rate"], signal["seconds"]) for c in signal["channels"]], axis=1)
    with tempfile.TemporaryDirectory() as folder:
        raw = pathlib.Path(folder) / "signal.f32"
        raw.write_bytes(data.astype("<f4").tobytes())
        layout = signal.get("layout", "mono")
        out = subprocess.run(
            ["ffmpeg", "-hide_banner", "-nostdin", "-f", "f32le", "-ar", str(signal["rate"]),
             "-ac", str(data.shape[1]), "-channel_layout", layout, "-i", str(raw),
             "-af", "ebur128=metadata=1,ametadata=print:key=lavfi.r128.I:file=-", "-f", "null", "-"],
            check=True, capture_output=True, text=True)
    return float(re.findall(r"lavfi\.r128\.I=(\S+)", out.stdout)[-1])


def main():
    version = subprocess.run(["ffmpeg", "-version"], capture_output=True, text=True).stdout.split()[2]
    measured = [{**signal, "integrated": measure(signal)} for signal in SIGNALS]
    result = {
        "recipe": "loudness.py",
        "tool": f"ffmpeg {version}, filter ebur128",
        "unit": "LUFS",
        "digits": 3,
        "signals": measured,
    }
    path = pathlib.Path(__file__).with_suffix(".json")
    path.write_text(json.dumps(result, indent=2) + "\n")


main()
