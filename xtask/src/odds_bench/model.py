"""The same model drawn with NumPy, all draws of a line at once: one array operation a stage."""

import json
import sys
import time

import numpy as np

model = json.load(sys.stdin)
draws, seed, rounds = (int(word) for word in sys.argv[1:4])


def ranged(rng, one, size):
    if one["beta"] is None:
        return np.full(size, one["low"])
    return one["low"] + one["width"] * rng.beta(*one["beta"], size=size)


def run(seed):
    rng = np.random.default_rng(seed)
    points = model["points"]
    weights = np.array([point["weight"] for point in points])
    at = rng.choice(len(points), size=draws, p=weights / weights.sum())
    scale = np.array([point["scale"] for point in points])[at]
    shape = np.array([point["shape"] for point in points])[at]
    deviation = np.sqrt(scale / rng.standard_gamma(shape))
    mean = np.array([point["mean"] for point in points])
    effects = len(mean[0])
    # A triangle's rows are as long as they need be.
    triangle = np.array([[row + [0.0] * (effects - len(row)) for row in point["triangle"]] for point in points])
    normals = rng.standard_normal((draws, effects))
    swing = np.empty((draws, effects))
    for point in range(len(points)):
        mine = at == point
        swing[mine] = normals[mine] @ triangle[point].T
    effect = mean[at] + deviation[:, None] * swing
    rows = [model["center"] + sum((x * effect[:, place] for place, x in row), np.zeros(draws)) for row in model["rows"]]
    past = sum((x * effect[:, place] for place, x in model["visits"]), np.zeros(draws))
    shrink = np.array([point["shrink"] for point in points])[at]
    own = np.array([point["vehicle"] for point in points])[at]
    vehicle = shrink * (model["visits_y"] - past) + deviation * own * rng.standard_normal(draws)
    factor = np.exp(model["vehicle_on_snags"] * vehicle)
    floor, cap = model["floor"], model["cap"]
    work, added, extra = np.zeros(draws), np.zeros(draws), np.zeros(draws)
    for line in model["lines"]:
        shared = rows[line["row"]] + vehicle
        for _ in range(line["times"]):
            y = shared + deviation * rng.standard_normal(draws)
            work += line["book"] * np.minimum(floor + (1.0 - floor) * np.exp(y), cap)
        snags = line["snags"]
        if snags is None:
            continue
        parts = np.array(snags["parts"])
        which = rng.choice(len(parts), size=draws, p=parts[:, 0] / parts[:, 0].sum())
        chance = rng.beta(parts[which, 1], parts[which, 2])
        chance = np.clip(chance * factor / (1.0 + chance * (factor - 1.0)), 0.0, 0.9999)
        count = rng.binomial(snags["count"], chance)
        hit = np.repeat(np.arange(draws), count)
        added += np.bincount(hit, ranged(rng, snags["minutes"], len(hit)), draws)
        extra += np.bincount(hit, ranged(rng, snags["price"], len(hit)), draws)
    for amount in model["amounts"]:
        extra += ranged(rng, amount, draws)
    hours = (work + added) / 60.0
    price = (model["rate"] * hours + extra) * (1.0 + model["tax_percent"] / 100.0)
    return np.quantile(hours, model["chances"]), np.quantile(price, model["chances"])


run(seed)
took = []
for nth in range(rounds):
    began = time.perf_counter()
    hours, price = run(seed + 1 + nth)
    took.append(time.perf_counter() - began)
took.sort()
print(json.dumps({"seconds": took[len(took) // 2], "hours": list(hours), "price": list(price), "numpy": np.__version__}))
