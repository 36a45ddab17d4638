"""Makes narrow-openings.json: pressure over volume velocity of slits and round holes with friction, by NumPy and SciPy.

    python3 tests/reference/narrow-openings.py > tests/reference/narrow-openings.json
"""

import json

import numpy as np
import scipy
from scipy.special import jv

RHO, ETA = 1.204, 1.81e-5


def slit(g, length, t, f):
    w = 2 * np.pi * f
    x = g / 2 * np.sqrt(1j * w * RHO / ETA)
    return 1j * w * RHO * t / (g * length * (1 - np.tanh(x) / x))


def hole(d, t, f):
    w = 2 * np.pi * f
    s = d / 2 * np.sqrt(-1j * w * RHO / ETA)
    return 1j * w * RHO * t / (np.pi * (d / 2) ** 2 * (1 - 2 * jv(1, s) / (s * jv(0, s))))


FREQUENCY = [50.0, 300.0, 1000.0, 5000.0, 10000.0]
slits = [(5e-5, 0.1, 0.001), (1e-4, 0.12, 0.001), (3e-4, 0.3, 0.0005), (1e-3, 0.2, 0.002), (4e-3, 0.05, 0.002)]
holes = [(2e-4, 0.001), (5e-4, 0.002), (1.5e-3, 0.001), (4e-3, 0.002), (1e-2, 0.001)]
pair = lambda z: [float(z.real), float(z.imag)]
print(
    json.dumps(
        {
            "source": "tests/reference/narrow-openings.py",
            "tool": f"NumPy {np.__version__}, SciPy {scipy.__version__}",
            "density": RHO,
            "frequency": FREQUENCY,
            "slits": [{"gap": g, "length": l, "depth": t, "z": [pair(slit(g, l, t, f)) for f in FREQUENCY]} for g, l, t in slits],
            "holes": [{"diameter": d, "depth": t, "z": [pair(hole(d, t, f)) for f in FREQUENCY]} for d, t in holes],
        },
        indent=1,
    )
)
