"""The cheapest way out and back on a map, as a model for CP-SAT.

Reads one map a line, prints one answer a line. A move is made once out and once
back, or not at all. One circuit runs through the moves that have a place, one through
those that take a tool, each first out and then back; a step of a circuit costs what
the change costs. Ranks keep the two circuits to one sequence and hold the needs.
"""

import json
import sys
import time

from ortools.sat.python import cp_model

WAYS = ("out", "back")


def asked(need, into):
    """Adds every move that a need or one of its alternatives asks for."""
    if isinstance(need, int):
        into.add(need)
        return
    for parts in need.values():
        for part in parts:
            asked(part, into)


def relevant(a_map):
    """The moves that the goal, or what is needed on the way to it, may ask for."""
    found = set()
    asked(a_map["goal"], found)
    while True:
        more = set(found)
        for index in found:
            asked(a_map["moves"][index]["need"], more)
        if more == found:
            return sorted(found)
        found = more


class Model:
    def __init__(self, a_map):
        self.model = cp_model.CpModel()
        self.moves = {index: a_map["moves"][index] for index in relevant(a_map)}
        self.made = {index: self.yes_or_no() for index in self.moves}
        self.ranks = {
            way: {
                index: self.model.new_int_var(0, len(self.moves) - 1, "")
                for index in self.moves
            }
            for way in WAYS
        }
        self.costs = [move["cost"] * self.made[at] for at, move in self.moves.items()]
        always = self.model.new_constant(1)
        self.hold(a_map["goal"], always, None, "out")
        for index, move in self.moves.items():
            for way in WAYS:
                self.hold(move["need"], self.made[index], index, way)
        self.add_circuit("place", a_map["start"], a_map["place_change"])
        self.add_circuit("tool", -1, a_map["tool_change"])
        self.model.minimize(sum(self.costs))

    def yes_or_no(self):
        return self.model.new_bool_var("")

    def hold(self, need, when, of, way):
        """If `when` is true, the need is met at the move `of`; if that is none, at the end."""
        if isinstance(need, int):
            self.model.add_implication(when, self.made[need])
            if of is not None:
                first, second = (need, of) if way == "out" else (of, need)
                rank = self.ranks[way]
                self.model.add(rank[first] < rank[second]).only_enforce_if(when)
        elif "all" in need:
            for part in need["all"]:
                self.hold(part, when, of, way)
        else:
            ways = [self.yes_or_no() for _ in need["any"]]
            self.model.add_bool_or([*ways, when.negated()])
            for literal, part in zip(ways, need["any"]):
                self.hold(part, literal, of, way)

    def add_circuit(self, key, start, change):
        """One circuit through all moves that have this, first out and then back."""
        nodes = [
            (way, index)
            for way in WAYS
            for index, move in self.moves.items()
            if move[key] >= 0
        ]
        if not nodes:
            return
        nobody = self.yes_or_no()
        arcs = [(0, 0, nobody)]
        kind = [start] + [self.moves[index][key] for _, index in nodes]
        for at, (way, index) in enumerate(nodes, 1):
            arcs.append((at, at, self.made[index].negated()))
            self.model.add_implication(nobody, self.made[index].negated())
            arcs.append((0, at, self.yes_or_no()) if way == "out" else (at, 0, self.yes_or_no()))
            for to, (next_way, next_index) in enumerate(nodes, 1):
                if at == to or (way, next_way) == ("back", "out"):
                    continue
                step = self.yes_or_no()
                arcs.append((at, to, step))
                if way == next_way:
                    rank = self.ranks[way]
                    self.model.add(rank[index] < rank[next_index]).only_enforce_if(step)
        self.model.add_circuit(arcs)
        for at, to, step in arcs:
            # The end is free, and so is the start if it is not stated.
            if to != 0 and kind[at] != kind[to] and not (at == 0 and start < 0):
                self.costs.append(change * step)
        self.add_entries(nodes, arcs, kind)

    def add_entries(self, nodes, arcs, kind):
        """Says what the circuit implies: a class with a move made is entered on the way
        out, and left on the way back. It raises the bound of the relaxation."""
        for at, (way, index) in enumerate(nodes, 1):
            inside = {
                n for n, node in enumerate(nodes, 1) if node[0] == way and kind[n] == kind[at]
            }
            if way == "out":
                steps = [step for a, b, step in arcs if b in inside and a not in inside]
            else:
                steps = [step for a, b, step in arcs if a in inside and b not in inside]
            self.model.add(sum(steps) >= self.made[index])


def solve(a_map, effort):
    model = Model(a_map).model
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    # Its own measure of work: what else the machine does takes nothing from it.
    solver.parameters.max_deterministic_time = effort
    began = time.process_time()
    status = solver.solve(model)
    took = time.process_time() - began
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return {
        "cost": round(solver.objective_value) if found else None,
        "bound": solver.best_objective_bound,
        "proven": status == cp_model.OPTIMAL,
        "seconds": took,
    }


for line in sys.stdin:
    print(json.dumps(solve(json.loads(line), float(sys.argv[1]))), flush=True)
