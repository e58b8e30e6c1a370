"""Lengths, wraps and runs of random belts, found by minimising: the rubber band.

Each pulley has a point where the band meets it and one where it leaves it. The band's
length is that of the straight runs between these points and of the arcs between them.
SciPy's SLSQP makes it as short as can be while no run cuts into a pulley. No tangent is
ever worked out. Arms are moved from such a band: SciPy's fsolve makes the runs touch again.
Written for this project; run once: python3 rubber_band.py > rubber-band.toml
"""
import math
import random

import numpy as np
import scipy
from scipy.optimize import fsolve, minimize

random.seed(20210509)


def band(pulleys, near=None):
    """pulleys: (x, y, r, s); s = 1 counter-clockwise. Gives length, wraps in degrees, runs."""
    n = len(pulleys)
    c = np.array([[p[0], p[1]] for p in pulleys])
    r = np.array([p[2] for p in pulleys])
    s = np.array([p[3] for p in pulleys])
    # Start: points square to the lines of centres, turned outwards a little.
    meets, leaves = np.zeros(n), np.zeros(n)
    for i in range(n):
        d = c[(i + 1) % n] - c[i]
        f = math.atan2(d[1], d[0])
        leaves[i] = f - s[i] * math.pi / 2
        meets[(i + 1) % n] = f - s[(i + 1) % n] * math.pi / 2
    for i in range(n):
        turn = s[i] * (leaves[i] - meets[i])
        turn = (turn + math.pi / 2) % (2 * math.pi) - math.pi / 2
        leaves[i] = meets[i] + s[i] * turn

    def points(v):
        m, l = v[:n], v[n:]
        pm = c + r[:, None] * np.stack([np.cos(m), np.sin(m)], 1)
        pl = c + r[:, None] * np.stack([np.cos(l), np.sin(l)], 1)
        return pm, pl

    def length(v):
        pm, pl = points(v)
        runs = np.linalg.norm(np.roll(pm, -1, 0) - pl, axis=1)
        return runs.sum() + (r * s * (v[n:] - v[:n])).sum()

    def clear(v):
        pm, pl = points(v)
        to = np.roll(pm, -1, 0)
        out = ((to - pl) * (pl - c)).sum(1) / r
        back = ((pl - to) * (to - np.roll(c, -1, 0))).sum(1) / np.roll(r, -1)
        return np.concatenate([out, back])

    if near is not None:
        # A band that was minimised close by: its runs are made to touch again.
        best, _, done, _ = fsolve(clear, near, xtol=1e-12, full_output=True)
        if done != 1:
            return None
        return answer(best, length(best), points, s)
    start = np.concatenate([meets, leaves])
    # It stops short at times: then it is started again from near where it stopped.
    for _ in range(8):
        best = minimize(length, start, method="SLSQP",
                        constraints=[{"type": "ineq", "fun": clear}],
                        options={"ftol": 1e-13, "maxiter": 150})
        turn = math.degrees((best.x[n:] - best.x[:n]).sum())
        if np.min(clear(best.x)) > -1e-6 and abs(abs(turn) - 360) < 2e-3:
            break
        start = best.x + np.random.default_rng(len(pulleys)).normal(0, 1e-3, 2 * n)
    else:
        return None
    # The length hardly feels the last thousandth of a degree; the points do.
    touching_runs, _, done, _ = fsolve(clear, best.x, xtol=1e-12, full_output=True)
    if done != 1 or abs(length(touching_runs) - best.fun) > 5e-3:
        return None
    return answer(touching_runs, best.fun, points, s)


def answer(angles, length, points, s):
    pm, pl = points(angles)
    runs = np.linalg.norm(np.roll(pm, -1, 0) - pl, axis=1)
    n = len(s)
    wraps = np.degrees(s * (angles[n:] - angles[:n]))
    return length, wraps, runs, pl, np.roll(pm, -1, 0), angles


def sound(pulleys, found):
    if found is None:
        return False
    _, wraps, runs, a, b, _ = found
    if np.any(wraps < 12) or np.any(wraps > 300) or np.any(runs < 8):
        return False
    if abs(sum(p[3] * w for p, w in zip(pulleys, wraps)) - 360) > 2e-3:
        return False
    n = len(pulleys)
    for i in range(n):
        for j in range(i + 1, n):
            d = math.dist(pulleys[i][:2], pulleys[j][:2])
            if d < pulleys[i][2] + pulleys[j][2] + 2:
                return False
            if crossing(a[i], b[i], a[j], b[j]):
                return False
        for k in range(n):
            if k in (i, (i + 1) % n):
                continue
            q = np.array(pulleys[k][:2])
            t = np.clip(np.dot(q - a[i], b[i] - a[i]) / np.dot(b[i] - a[i], b[i] - a[i]), 0, 1)
            if np.linalg.norm(q - a[i] - t * (b[i] - a[i])) < pulleys[k][2] + 1:
                return False
    return True


def touching(pulleys):
    return any(math.dist(p[:2], q[:2]) < p[2] + q[2] + 2
               for i, p in enumerate(pulleys) for q in pulleys[i + 1:])


def crossing(p, q, u, v):
    def side(a, b, z):
        return (b[0] - a[0]) * (z[1] - a[1]) - (b[1] - a[1]) * (z[0] - a[0])
    return side(p, q, u) * side(p, q, v) < 0 and side(u, v, p) * side(u, v, q) < 0


def layout():
    """Ribbed pulleys round a ring, with some idlers on the back between them."""
    count = random.randint(2, 6)
    ring = sorted(random.uniform(0, 2 * math.pi) for _ in range(count))
    pulleys = []
    for at, angle in enumerate(ring):
        far = random.uniform(120, 280)
        pulleys.append((round(far * math.cos(angle), 1), round(far * math.sin(angle), 1),
                        round(random.uniform(22, 90), 1), 1))
        if random.random() < 0.45:
            after = ring[(at + 1) % count] + (2 * math.pi if at + 1 == count else 0)
            middle = (angle + after) / 2
            near = random.uniform(20, 200)
            pulleys.append((round(near * math.cos(middle), 1), round(near * math.sin(middle), 1),
                            round(random.uniform(20, 45), 1), -1))
    return pulleys


def show(values, digits=5):
    return "[" + ", ".join(f"{v:.{digits}f}" for v in values) + "]"


def main():
    print("# Random belts, worked out by minimising with SciPy", scipy.__version__, "(SLSQP) by rubber_band.py.")
    print("# Pulleys are met in this sequence, counter-clockwise: x, y, radius in mm, 1 ribs or -1 back.")
    print("# These figures are our own, found in another way: they show that two ways agree.")
    kept = []
    while len(kept) < 60:
        pulleys = layout()
        if len(pulleys) < 2 or touching(pulleys):
            continue
        found = band(pulleys)
        if not sound(pulleys, found):
            continue
        kept.append((pulleys, found[5]))
        print("\n[[belt]]")
        print("pulleys = [" + ", ".join(f"[{x:.1f}, {y:.1f}, {r:.1f}, {s:.1f}]" for x, y, r, s in pulleys) + "]")
        print(f"length_mm = {found[0]:.5f}")
        print("wraps_deg =", show(found[1], 4))
        print("runs_mm =", show(found[2], 4))
    arms = 0
    while arms < 12:
        pulleys, near = random.choice(kept)
        backs = [i for i, p in enumerate(pulleys) if p[3] < 0]
        if len(pulleys) < 3 or not backs:
            continue
        i = backs[0]
        x, y, r, s = pulleys[i]
        arm, angle = random.uniform(40, 90), random.uniform(0, 2 * math.pi)
        px, py = round(x - arm * math.cos(angle), 1), round(y - arm * math.sin(angle), 1)
        arm = math.hypot(x - px, y - py)
        angle = math.degrees(math.atan2(y - py, x - px))
        low, high = round(angle - random.uniform(3, 8), 1), round(angle + random.uniform(3, 8), 1)

        def at(deg):
            moved = list(pulleys)
            moved[i] = (px + arm * math.cos(math.radians(deg)), py + arm * math.sin(math.radians(deg)), r, s)
            found = band(moved, near)
            return found if sound(moved, found) else None

        steps = [at(d) for d in np.linspace(low, high, 5)]
        if any(step is None for step in steps):
            continue
        lengths = [step[0] for step in steps]
        rises = np.diff(lengths)
        if not (np.all(rises > 0.02) or np.all(rises < -0.02)):
            continue
        deg = round(low + 0.37 * (high - low), 2)
        there = at(deg)
        if there is None:
            continue
        arms += 1
        print("\n[[arm]]")
        print("pulleys = [" + ", ".join(f"[{x:.1f}, {y:.1f}, {r:.1f}, {s:.1f}]" for x, y, r, s in pulleys) + "]")
        print(f"moves = {i}")
        print(f"pivot = [{px:.1f}, {py:.1f}]")
        print(f"stops_deg = [{low:.1f}, {high:.1f}]")
        print(f"window_mm = {show(sorted([lengths[0], lengths[-1]]))}")
        print(f"length_mm = {there[0]:.5f}")
        print(f"arm_deg = {deg:.2f}")


main()
