#!/usr/bin/python3
"""All states of a circuit solved by vectorised NumPy, against the program's circuit without faults.

Usage: circuit.py OURS.json
OURS.json is what the benchmark program writes with compare-json: a timer of 40 outputs with 2, 4, 6 and 8 inputs as numbered nodes, which contacts each
interval of the turn closes, and what must come out. For every interval and input position: closed contacts and inputs merge nodes, sources hold them,
loads are impedances, and each load is on, off or undecided by its voltage. No loop in Python goes over states. It is done twice:
- plainly: one matrix of all nodes a state, in batches, equal states once (np.unique), solved by LAPACK;
- with care: first the circuit is taken apart where a source holds it whatever the contacts do, then each part is solved once for every
  distinct set of its own contacts, as the program does it too.
The program solves more than is asked here: orders of contacts that only tolerances bring about, which states can be reached, and where the wheel stops.
Compared are the states of all loads and their voltages to a millivolt.
"""
import base64
import json
import sys

import numpy as np

from measuring import Findings, least_ms

BATCH = 2000
SAME_V = 1e-3
NOTHING = 1e-12


def closed_switches(given):
    """Rows of states, columns of contacts and inputs: intervals first, input positions within each."""
    contacts = np.array([[c == "1" for c in row] for row in given["closed"]])
    positions = np.arange(1 << len(given["inputs"]))
    inputs = (positions[:, None] >> np.arange(len(given["inputs"]))) & 1 == 1
    return np.hstack([np.repeat(contacts, len(positions), axis=0), np.tile(inputs, (len(contacts), 1))])


def merged(states, nodes, pairs, closed):
    """The least node of each node's group: labels lowered until nothing changes."""
    labels = np.tile(np.arange(nodes), (states, 1))
    while True:
        before = labels.copy()
        for (a, b), row in zip(pairs, closed):
            low = np.minimum(labels[row, a], labels[row, b])
            labels[row, a] = low
            labels[row, b] = low
        labels = np.take_along_axis(labels, labels, axis=1)
        if np.array_equal(labels, before):
            return labels


def solve(labels, loads, held):
    """Potentials of merged nodes; rows with two sources in one group are shorts and come out as not a number."""
    count, nodes = labels.shape
    at = np.arange(count)
    matrix = np.zeros((count, nodes, nodes), dtype=complex)
    right = np.zeros((count, nodes), dtype=complex)
    for a, b, admittance in loads:
        i, j = labels[:, a], labels[:, b]
        matrix[at, i, i] += admittance
        matrix[at, j, j] += admittance
        matrix[at, i, j] -= admittance
        matrix[at, j, i] -= admittance
    is_held = np.zeros((count, nodes), dtype=bool)
    short = np.zeros(count, dtype=bool)
    for node, volts in held:
        root = labels[:, node]
        short |= is_held[at, root] & (np.abs(right[at, root] - volts) > NOTHING)
        is_held[at, root] = True
        right[at, root] = volts
    # What no source leads to has no potential: its loads are off, whatever number stands there.
    load_pairs = [(a, b) for a, b, _ in loads]
    fed = is_held.copy()
    while True:
        before = fed.sum()
        for a, b in load_pairs:
            i, j = labels[:, a], labels[:, b]
            either = fed[at, i] | fed[at, j]
            fed[at, i] |= either
            fed[at, j] |= either
        if fed.sum() == before:
            break
    alone = is_held | ~fed | (labels != np.arange(nodes))
    matrix[alone] = 0
    matrix[:, np.arange(nodes), np.arange(nodes)] += alone
    potentials = np.linalg.solve(matrix, right[:, :, None])[:, :, 0]
    potentials[short] = np.nan
    return potentials


def volts_over(loads, held, labels):
    """Voltage over each load, in batches, so that the matrices take little memory."""
    found = np.empty((len(labels), len(loads)))
    ends = np.array([(a, b) for a, b, _ in loads])
    for from_row in range(0, len(labels), BATCH):
        rows = labels[from_row:from_row + BATCH]
        potentials = solve(rows, loads, held)
        first, second = (np.take_along_axis(potentials, rows[:, ends[:, k]], axis=1) for k in (0, 1))
        found[from_row:from_row + BATCH] = np.abs(first - second)
    return found


def once_each(keys, rows, work):
    """Does the work once for each distinct key and hands the results back to all; rows are what the work is given."""
    _, first, back = np.unique(keys, return_index=True, return_inverse=True)
    return work(rows[first])[back]


def numbered(closed):
    """The closed switches of each state as one number."""
    return closed @ (1 << np.arange(closed.shape[1], dtype=np.int64))


def keys_of(labels):
    """One key for each row of labels."""
    packed = np.ascontiguousarray(labels.astype(np.uint8))
    return packed.view(np.dtype((np.void, packed.shape[1]))).ravel()


def prepared(given):
    joined = [tuple(map(int, p)) for p in given["always_joined"]]
    low = {max(p): min(p) for p in joined}
    node = lambda n: low.get(int(n), int(n))
    switches = [(node(a), node(b)) for a, b in given["contacts"] + given["inputs"]]
    loads = [(node(a), node(b), 1 / complex(re, im)) for a, b, re, im, _, _ in given["loads"]]
    held = [(node(n), complex(re, im)) for n, re, im in given["held"]]
    return switches, loads, held


def plain(given, switches, loads, held, closed):
    def work(states):
        labels = merged(len(states), given["nodes"], switches, states.T)
        return once_each(keys_of(labels), labels, lambda rows: volts_over(loads, held, rows))

    return once_each(numbered(closed), closed, work)


def taken_apart(nodes, switches, loads, held):
    """Parts of the circuit that meet in sources alone: the switches and loads of each."""
    sources = {n for n, _ in held}
    parents = list(range(nodes))

    def root(n):
        while parents[n] != n:
            n = parents[n]
        return n

    elements = switches + [(a, b) for a, b, _ in loads]
    for a, b in elements:
        if a not in sources and b not in sources:
            parents[root(a)] = root(b)
    part_of = [root(a if a not in sources else b) for a, b in elements]
    return [([s for s in range(len(switches)) if part_of[s] == p], [l for l in range(len(loads)) if part_of[len(switches) + l] == p]) for p in dict.fromkeys(part_of)]


def with_care(given, switches, loads, held, closed):
    found = np.zeros((len(closed), len(loads)))
    shorts = np.zeros(len(closed), dtype=bool)
    for its_switches, its_loads in taken_apart(given["nodes"], switches, loads, held):
        ends = [n for s in its_switches for n in switches[s]] + [n for l in its_loads for n in loads[l][:2]]
        number = {n: k for k, n in enumerate(dict.fromkeys([n for n, _ in held] + ends))}
        pairs = [tuple(number[n] for n in switches[s]) for s in its_switches]
        inner = [(number[loads[l][0]], number[loads[l][1]], loads[l][2]) for l in its_loads]
        sources = [(number[n], volts) for n, volts in held]

        def work(states):
            labels = merged(len(states), len(number), pairs, states.T)
            # A short is told by its sources, where the part has no load at all.
            return volts_over(inner + [(k, 0, 0) for k, _ in sources], sources, labels)

        own = closed[:, its_switches]
        volts = once_each(numbered(own), own, work)
        found[:, its_loads] = volts[:, :len(its_loads)]
        shorts |= np.isnan(volts).any(axis=1)
    found[shorts] = np.nan
    return found


def states_of(volts, given):
    """0 off, 1 on, 2 undecided."""
    on, off = (np.array([l[k] for l in given["loads"]]) for k in (4, 5))
    return np.select([np.isnan(volts), volts >= on, volts <= off], [0, 1, 0], 2).astype(np.uint8)


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        circuits = json.load(file)["circuit"]
    findings = Findings()
    for given in circuits:
        ready = prepared(given)
        wanted = np.frombuffer(given["load_states"].encode(), dtype=np.uint8).reshape(given["states"], -1) - ord("0")
        wanted_v = np.frombuffer(base64.b64decode(given["volts"]), dtype="<f4").reshape(wanted.shape)
        for name, way in (("plainly", plain), ("with care", with_care)):
            work = lambda: states_of(way(given, *ready, closed_switches(given)), given)
            volts = way(given, *ready, closed_switches(given))
            wrong = int((states_of(volts, given) != wanted).sum())
            findings.expect(wrong == 0, f"{given['states']} states {name}: {wrong} loads differ")
            far = ~np.isclose(volts, wanted_v, rtol=1e-6, atol=SAME_V, equal_nan=True)
            findings.expect(not far.any(), f"{given['states']} states {name}: {int(far.sum())} voltages differ")
            findings.tell(f"circuit: {given['states']:,} states of {len(given['contacts'])} outputs and {len(given['inputs'])} inputs, {name}", given["processor_ms"], least_ms(work, 3), f"NumPy {np.__version__}", "processor time in the process; ours solves each independent part once, at its own inputs, and finds which states are reached", curve="circuit", series=f"NumPy, {name}", size=given["states"])
    findings.exit()


main()
