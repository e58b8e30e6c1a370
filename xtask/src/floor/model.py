"""Lays one shop day with CP-SAT: read as JSON, answered as JSON. Times are open minutes.

Asked for with the seconds it has, how many threads, and `clock` or `processor`: by which time.

Only lower bounds of times are stated (an end is not before ..., a wait is not over before ...):
what is minimised makes them equal.
"""

import json
import sys
import threading
import time

from ortools.sat.python import cp_model

day = json.load(sys.stdin)
# Spans of opening hours: first open minute, minutes, first minute of the clock.
spans = day["spans"]
firsts = [span[0] for span in spans]
lasts = [span[0] + span[1] for span in spans]
shifts = [span[2] - span[0] for span in spans]
clock_ends = [span[2] + span[1] for span in spans]
last = lasts[-1]
model = cp_model.CpModel()
by_person = [[] for _ in range(day["people"])]
by_stall = [[] for _ in day["lifts"]]
points = []


def clock_of(end):
    """The minute of the clock at which work is over that ends after so many open minutes."""
    span = model.new_int_var(0, len(spans) - 1, "")
    latest = model.new_int_var(0, last, "")
    model.add_element(span, lasts, latest)
    model.add(end <= latest)
    shift = model.new_int_var(min(shifts), max(shifts), "")
    model.add_element(span, shifts, shift)
    found = model.new_int_var(0, clock_ends[-1], "")
    model.add(found >= end + shift)
    return found


def open_from(clock):
    """The first open minute that is not before this one of the clock."""
    span = model.new_int_var(0, len(spans) - 1, "")
    latest = model.new_int_var(0, clock_ends[-1], "")
    model.add_element(span, clock_ends, latest)
    model.add(clock + 1 <= latest)
    first = model.new_int_var(0, last, "")
    model.add_element(span, firsts, first)
    shift = model.new_int_var(min(shifts), max(shifts), "")
    model.add_element(span, shifts, shift)
    found = model.new_int_var(0, last, "")
    model.add(found >= first)
    model.add(found >= clock - shift)
    return found


for order in day["orders"]:
    ready = order["from"]
    clock = None
    for stretch in order["stretches"]:
        begun = None
        work = 0
        for phase in stretch["phases"]:
            if "comes" in phase:
                later = model.new_int_var(0, last, "")
                model.add(later >= ready)
                model.add(later >= phase["comes"])
                ready, clock = later, None
                continue
            if "wait" in phase:
                ready, clock = open_from(clock_of(ready) + phase["wait"]), None
                continue
            minutes = phase["work"]
            start = model.new_int_var(0, last, "")
            end = model.new_int_var(0, last, "")
            model.add(end == start + minutes)
            model.add(start >= ready)
            model.add_hint(start, phase["hint"])
            model.add_hint(end, phase["hint"] + minutes)
            who = []
            for person in phase["able"]:
                is_it = model.new_bool_var("")
                who.append(is_it)
                model.add_hint(is_it, person == phase["hinted"])
                by_person[person].append(
                    model.new_optional_interval_var(start, minutes, end, is_it, "")
                )
            model.add_exactly_one(who)
            begun = start if begun is None else begun
            work += minutes
            ready = end
        if stretch["stalls"] is None:
            continue
        points.append(day["moved"])
        held = model.new_int_var(0, last, "")
        model.add(held == ready - begun)
        on_lift = []
        where = []
        for stall in stretch["stalls"]:
            is_it = model.new_bool_var("")
            where.append(is_it)
            model.add_hint(is_it, stall == stretch["hinted"])
            by_stall[stall].append(
                model.new_optional_interval_var(begun, held, ready, is_it, "")
            )
            if day["lifts"][stall]:
                on_lift.append(is_it)
        model.add_exactly_one(where)
        if on_lift:
            idle = model.new_int_var(0, last, "")
            model.add(idle >= held - work - last * (1 - sum(on_lift)))
            points.append(day["idle_lift_minute"] * idle)
    if order["promise"] is not None:
        late = model.new_int_var(0, clock_ends[-1], "")
        model.add(late >= clock_of(ready) - order["promise"])
        is_late = model.new_bool_var("")
        model.add(late == 0).only_enforce_if(is_late.negated())
        points.append(order["weight"] * (day["broken"] * is_late + day["late_minute"] * late))

for intervals in by_person + by_stall:
    model.add_no_overlap(intervals)
model.minimize(sum(points))
solver = cp_model.CpSolver()
seconds, threads, by = float(sys.argv[1]), int(sys.argv[2]), sys.argv[3]
solver.parameters.num_workers = threads
if by == "clock":
    solver.parameters.max_time_in_seconds = seconds
else:

    def watch():
        before = time.process_time()
        while time.process_time() - before < seconds * threads:
            time.sleep(0.1)
        solver.stop_search()

    threading.Thread(target=watch, daemon=True).start()
status = solver.solve(model)
found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
print(
    json.dumps(
        {
            "points": round(solver.objective_value) if found else None,
            # A sum of whole points: what is above a bound by a fraction is above it by one.
            "bound": int(-(-(solver.best_objective_bound - 1e-4) // 1)),
        }
    )
)
