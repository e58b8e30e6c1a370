"""Writes the rows of grade `other-implementation` of checks/published/odds.toml.

Run: python vectors.py > rows.toml, with numpy, scipy and statsmodels. It does not share a line with
the crate: stages are put into one dense multivariate Student t, no sums, no vehicles taken out.

y = ln(minutes / book) of n stages has, given the variance, the covariance
    variance * (I + X R X' + Z r Z')
with X the stages' rows (shop, age / 10 - 1, rust - 1, opened, kind, person), R their variance
ratios, Z the vehicles and r their ratio; the variance is inverse gamma (shape 1 + jobs / 2, scale
shape * ln(factor)^2). So y is multivariate t, and a new stage given them is a t.
"""

import itertools

import numpy as np
import scipy
import statsmodels
from scipy import stats
from scipy.special import betaln, logsumexp
from statsmodels.stats.proportion import proportion_confint

JOBS, FACTOR = 4.0, 1.6
GRID = dict(kind=[0.02, 0.1, 0.4], person=[0.02, 0.1, 0.4], condition=[0.02, 0.15],
            vehicle=[0.02, 0.1, 0.3, 0.9])
# vehicle, kind, person, age, rust, opened, book, minutes
PAST = [
    ("a", "out", "Ana", 9, 2, 0, 6, 9.5), ("a", "out", "Ana", 9, 2, 0, 12, 17),
    ("a", "on", "Ben", 9, 2, 0, 10, 11), ("b", "out", "Ben", 3, 0, 0, 30, 26),
    ("b", "on", "Ben", 3, 0, 0, 20, 19), ("c", "clean", "Ana", 17, 3, 1, 12, 31),
    ("c", "out", "Ana", 17, 3, 1, 5, 9), ("a", "on", "Ana", 9, 2, 1, 8, 10.5),
]
ASKED = [
    ("a", "out", "Ana", 9, 2, 1), (None, "out", "Ana", 9, 2, 0), (None, "clean", "Cem", 1, 0, 0),
    ("c", "on", "Ben", 17, 3, 1), (None, "weld", "Dora", 25, 3, 0),
]


def rows(stages, kinds, people):
    return np.array([[1, s[3] / 10 - 1, s[4] - 1, s[5]]
                     + [float(s[1] == k) for k in kinds] + [float(s[2] == p) for p in people]
                     for s in stages])


def chance(asked, times_book, past, points):
    everything = past + [asked + (1, 1)]
    kinds = sorted({s[1] for s in everything})
    people = sorted({s[2] for s in everything})
    x = rows(everything, kinds, people)
    same = np.array([[float(s[0] is not None and s[0] == t[0]) if i != j else 1.0
                      for j, t in enumerate(everything)] for i, s in enumerate(everything)])
    y = np.log([s[7] / s[6] for s in past])
    n, shape0 = len(past), 1 + JOBS / 2
    scale0 = shape0 * np.log(FACTOR) ** 2
    logs, chances = [], []
    for kind, person, condition, vehicle in points:
        ratios = np.diag([1 / JOBS] + [condition] * 3 + [kind] * len(kinds) + [person] * len(people))
        cov = np.eye(n + 1) + x @ ratios @ x.T + vehicle * same
        shape, scale, middle, var, log = shape0, scale0, 0.0, cov[n, n], 0.0
        if n:
            inner = np.linalg.inv(cov[:n, :n])
            log = stats.multivariate_t.logpdf(y, np.zeros(n), scale0 / shape0 * cov[:n, :n], 2 * shape0)
            shape, scale = shape0 + n / 2, scale0 + y @ inner @ y / 2
            middle = cov[n, :n] @ inner @ y
            var = cov[n, n] - cov[n, :n] @ inner @ cov[:n, n]
        logs.append(log)
        chances.append(stats.t.cdf(np.log(times_book), 2 * shape, middle, np.sqrt(scale / shape * var)))
    weights = np.exp(np.array(logs) - logsumexp(logs))
    return float(weights @ np.array(chances))


def show(kind, at, **fields):
    print(f"\n[[{kind}]]")
    for name, value in fields.items():
        if isinstance(value, bool):
            value = str(value).lower()
        elif isinstance(value, str):
            value = f'"{value}"'
        elif isinstance(value, (float, np.floating)):
            value = repr(float(value))
        print(f"{name} = {value}")
    print(f'source = "{at}"\ngrade = "other-implementation"')


def times():
    whole = list(itertools.product(GRID["kind"], GRID["person"], GRID["condition"], GRID["vehicle"]))
    for past in (0, 3, 8):
        for asked in ASKED if past == 8 else ASKED[:2]:
            for times_book in (0.8, 1.5, 2.5) if past == 8 else (1.5,):
                for name, points in (("all", whole), ("one", [(0.1, 0.1, 0.15, 0.3)])):
                    if name == "one" and times_book != 1.5:
                        continue
                    show("chance", "scipy", past=past, grid=name, vehicle=asked[0] or "", of=asked[1],
                         person=asked[2], age_years=float(asked[3]), rust=asked[4],
                         opened=bool(asked[5]), times_book=times_book,
                         expected=chance(asked, times_book, PAST[:past], points), tolerance=1e-9)


SNAGS = [(("2", "False", "aluminium", "M8"), 40, 3), (("2", "False", "steel", "M8"), 55, 1),
         (("2", "True", "aluminium", "M6"), 12, 0), (("3", "False", "aluminium", "M8"), 20, 4),
         (("0", "False", "aluminium", "M8"), 150, 0), (("3", "False", "steel", "M10"), 33, 2)]
S = np.array([2, 5, 15, 50, 150, 500, 1500.0])


def snag(asked, mean0=0.01, pieces0=50.0):
    """The class's chance: each class starts from its wider one, the weight by likelihood."""
    def cell(path):
        hits = [s for s in SNAGS if s[0][:len(path)] == path]
        return sum(s[1] for s in hits), sum(s[2] for s in hits)

    weights = {}

    def mean(path):
        n, x = cell(path)
        if not path:
            return (mean0 * pieces0 + x) / (pieces0 + n)
        return float(weights[len(path)] @ ((mean(path[:-1]) * S + x) / (S + n)))

    for level in range(1, 5):
        logs = np.zeros(len(S))
        for path in sorted({s[0][:level] for s in SNAGS}):
            n, x = cell(path)
            m = mean(path[:-1])
            logs += betaln(m * S + x, (1 - m) * S + n - x) - betaln(m * S, (1 - m) * S)
        weights[level] = np.exp(logs - logsumexp(logs))
    return mean(asked)


def snags():
    for asked in (("2", "False", "aluminium", "M8"), ("3", "False", "aluminium", "M8"),
                  ("3", "True", "steel", "M12"), ("1", "False", "steel", "M8"),
                  ("0", "False", "aluminium", "M8"), ("2", "True", "aluminium", "M6")):
        show("snag", "scipy", rust=int(asked[0]), opened=asked[1] == "True", material=asked[2],
             size=asked[3], expected=snag(asked), tolerance=1e-10)


def ranges():
    for low, likely, high in ((40, 55, 90), (0, 1, 10), (5, 8, 14), (10, 10, 20)):
        a = 1 + 4 * (likely - low) / (high - low)
        b = 1 + 4 * (high - likely) / (high - low)
        mean, var = stats.beta.stats(a, b, low, high - low, moments="mv")
        show("range", "scipy", low=float(low), likely=float(likely), high=float(high),
             expected=float(mean), expected_deviation=float(np.sqrt(var)), tolerance=1e-9)


def intervals():
    for found, of in ((8, 10), (16, 20), (90, 100), (0, 12), (12, 12), (401, 500)):
        low, high = proportion_confint(found, of, 0.05, "wilson")
        show("interval", "statsmodels", found=found, of=of, expected_low=float(low),
             expected_high=float(high), tolerance=1e-12)


def sums():
    """Mean and deviation of sums of log-normal times that share one log-normal factor."""
    for n, sigma, tau in ((1, 0.3, 0.2), (5, 0.25, 0.15), (20, 0.2, 0.1)):
        one = stats.lognorm(sigma)
        shared = stats.lognorm(tau)
        mean = n * one.mean() * shared.mean()
        square = (n * one.var() + (n * one.mean()) ** 2) * (shared.var() + shared.mean() ** 2)
        show("sum", "scipy", times=n, sigma=sigma, shared=tau, expected=float(mean),
             expected_deviation=float(np.sqrt(square - mean**2)), tolerance=0.01)


if __name__ == "__main__":
    print(f"# numpy {np.__version__}, scipy {scipy.__version__}, statsmodels {statsmodels.__version__}")
    times()
    snags()
    ranges()
    intervals()
    sums()
