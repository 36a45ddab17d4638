"""Makes closed-forms.json: values of closed forms by SciPy, an implementation that shares no code with ours.

Run: python3 tests/reference/closed-forms.py > tests/reference/closed-forms.json
"""

import json

import numpy as np
import scipy
from scipy.signal import freqs
from scipy.special import ellipe

frequencies = [20.0, 50.0, 100.0, 215.3, 348.1, 500.0, 1000.0, 3150.0, 12000.0, 20000.0]
w = 2 * np.pi * np.array(frequencies)


def rows(b, a):
    _, h = freqs(b, a, worN=w)
    return {"re": [float(x) for x in h.real], "im": [float(x) for x in h.imag]}


def second_order(f0, q):
    w0 = 2 * np.pi * f0
    return {"f0": f0, "q": q, **rows([1, 0, 0], [1, w0 / q, w0**2])}


def first_order(corner):
    return {"corner": corner, **rows([1, 0], [1, 2 * np.pi * corner])}


def shelf(zero, pole):
    return {"zero": zero, "pole": pole, **rows([1, 2 * np.pi * zero], [1, 2 * np.pi * pole])}


parameters = [0, 1e-9, 1e-3, *[i / 20 for i in range(1, 20)], 0.99, 0.999, 0.999999, 1]
result = {
    "what": "Complete elliptic integral E(m) by scipy.special.ellipe; responses of analog sections by"
    " scipy.signal.freqs, H(j*2*pi*f), time factor e^{+j omega t}",
    "tool": f"SciPy {scipy.__version__}, NumPy {np.__version__}, double precision, all digits",
    "ellipticE": [{"m": m, "e": float(ellipe(m))} for m in parameters],
    "frequency": frequencies,
    "secondOrder": [second_order(*x) for x in [(350, 1.59), (488.8, 2.22), (100, 0.5), (660, 0.7071067811865476)]],
    "firstOrder": [first_order(x) for x in [57.2, 1351, 4290, 9000]],
    "shelf": [shelf(1800, 3600), shelf(54.6, 1351)],
}
print(json.dumps(result, indent=1))
