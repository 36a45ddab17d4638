"""Binomial tails, exact intervals, shows of hands and Bradley–Terry worths by SciPy.

Run: python3 tests/reference/trials.py   (needs NumPy and SciPy; writes trials.json beside itself)

tails       P(X >= k), X ~ B(n, p): scipy.stats.binom.sf(k - 1, n, p)
intervals   scipy.stats.binomtest(k, n).proportion_ci(0.95, 'exact') (Clopper and Pearson)
hands       for hands by thing: m·binom.sf(most - 1, n, 1/m); P(one or another gets as many) summed over every outcome by
            scipy.stats.multinomial; binomtest(k, n).proportion_ci(1 - 0.05/m, 'exact') of each
worths      the maximum of the log-likelihood of Bradley and Terry, by scipy.optimize.minimize over log-worths
"""

import itertools
import json
import pathlib

import numpy as np
import scipy
from scipy.optimize import minimize
from scipy.stats import binom, binomtest, multinomial

TAILS = [
    (7, 8, 0.5), (12, 16, 0.5), (17, 24, 0.5), (12, 16, 0.8), (17, 24, 0.8), (12, 16, 0.6), (5, 5, 0.5), (0, 7, 0.3),
    (1, 40, 0.01), (60, 60, 0.95), (38, 60, 0.5), (530, 1000, 0.5), (9000, 10000, 0.9),
]
INTERVALS = [(0, 5), (5, 5), (7, 8), (8, 16), (12, 16), (13, 16), (17, 24), (31, 60), (1, 60), (60, 60)]
HANDS = [(12, 8), (15, 5), (10, 10), (9, 6, 5), (14, 4, 2), (3, 11, 4, 2), (20, 6, 3, 1), (5, 4, 3, 3, 2), (9, 2, 2, 1, 1, 1), (13, 6, 5, 4), (20, 11, 11)]
WINS = [
    [[0, 7], [3, 0]],
    [[0, 4, 5], [2, 0, 4], [1, 2, 0]],
    [[0, 3, 4, 5], [2, 0, 3, 4], [1, 2, 0, 3], [0, 1, 2, 0]],
]


def worth(wins):
    wins = np.array(wins, float)

    def minus_likelihood(logs):
        logs = np.concatenate([[0.0], logs])
        return sum(
            wins[i, j] * (np.logaddexp(logs[i], logs[j]) - logs[i])
            for i in range(len(wins))
            for j in range(len(wins))
            if i != j
        )

    found = minimize(minus_likelihood, np.zeros(len(wins) - 1), method="BFGS", options={"gtol": 1e-10})
    worths = np.exp(np.concatenate([[0.0], found.x]))
    return (worths / worths.sum()).tolist()


def exactly(hands):
    """How often one or another gets as many as the most, each hand for any of them alike."""
    n, m, most = sum(hands), len(hands), max(hands)
    outcomes = (
        (*first, n - sum(first)) for first in itertools.product(range(n + 1), repeat=m - 1) if sum(first) <= n
    )
    alike = multinomial(n, [1 / m] * m)
    return float(sum(alike.pmf(one) for one in outcomes if max(one) >= most))


def show_of(hands):
    n, m, most = sum(hands), len(hands), max(hands)
    intervals = [binomtest(k, n).proportion_ci(1 - 0.05 / m, "exact") for k in hands]
    return {
        "hands": list(hands),
        "bound": float(min(1, m * binom.sf(most - 1, n, 1 / m))),
        "exactly": exactly(hands) if (n + 1) ** (m - 1) < 1e5 else None,
        "intervals": [[float(ci.low), float(ci.high)] for ci in intervals],
    }


def main():
    made = {
        "scipy": scipy.__version__,
        "tails": [{"k": k, "n": n, "p": p, "tail": float(binom.sf(k - 1, n, p))} for k, n, p in TAILS],
        "intervals": [
            {"k": k, "n": n, "low": float(ci.low), "high": float(ci.high)}
            for k, n in INTERVALS
            for ci in [binomtest(k, n).proportion_ci(0.95, "exact")]
        ],
        "hands": [show_of(hands) for hands in HANDS],
        "worths": [{"wins": wins, "worth": worth(wins)} for wins in WINS],
    }
    path = pathlib.Path(__file__).with_suffix(".json")
    path.write_text(json.dumps(made, indent=2) + "\n", encoding="utf-8")


main()
