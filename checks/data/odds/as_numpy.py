"""The last order of crates/odds/benches/quote.rs, drawn in NumPy: 80 stages of one sort, no past.

Run: python as_numpy.py, with numpy. Prints the best time of five, and quantiles that have to agree
with the crate's within their errors.
"""

import time

import numpy as np

DRAWS, STAGES, BOOK = 100_000, 80, 5.0
JOBS, FACTOR, KIND, PERSON, VEHICLE = 4.0, 1.6, 0.1, 0.1, 0.3


def draw(seed):
    chance = np.random.default_rng(seed)
    shape = 1 + JOBS / 2
    deviation = np.sqrt(shape * np.log(FACTOR) ** 2 / chance.standard_gamma(shape, DRAWS))
    shared = deviation * np.sqrt(1 / JOBS + KIND + PERSON + VEHICLE) * chance.standard_normal(DRAWS)
    y = chance.standard_normal((STAGES, DRAWS))
    y *= deviation
    y += shared
    np.exp(y, out=y)
    np.minimum(y, 8.0, out=y)
    hours = BOOK * y.sum(axis=0) / 60
    price = 120 * hours
    chances = [0.05, 0.1, 0.25, 0.5, 0.6, 0.75, 0.8, 0.9, 0.95]
    return np.quantile(hours, chances), np.quantile(price, chances)


best = min((lambda start: (draw(1), time.perf_counter() - start)[1])(time.perf_counter()) for _ in range(5))
print(f"numpy {np.__version__}: {best * 1e3:.1f} ms")
print(np.round(draw(2)[0], 4))
