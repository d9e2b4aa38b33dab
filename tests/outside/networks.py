#!/usr/bin/env python3
"""Hold the reckoning of networks against networkx, over many random networks.

    networks.py PROGRAM [COUNT] [FIRSTSEED]

PROGRAM is the one built of network.c.  Each seed makes a network without circles, with rests, releases, several ends and
steps of no duration.  A step becomes a node; one node more stands before all steps, one behind; an edge is as long as what lies
between the beginnings of its ends.  Then the longest paths of networkx (dag_longest_path_length) must be:

length  of the whole, the length that the program tells;
early   up to each step, its early start;
late    from each step to the end, the length without its late start;
chain   the chain told must be a path, and as long as the whole.

The last line says how many networks passed and failed; the exit status is 1 if one failed.
"""
import argparse
import random
import subprocess
import sys

import networkx

BEGIN, END = "begin", "end"
PATIENCE = 60   # seconds for one run of the program


class Network:
    """A network made from a seed."""

    def __init__(self, seed):
        chance = random.Random(seed)
        count = chance.randint(1, 40)
        self.durations = [chance.choice((0, chance.randint(1, 9), chance.randint(1, 480))) for _ in range(count)]
        self.releases = [chance.choice((0, 0, 0, chance.randint(1, 600))) for _ in range(count)]
        order = list(range(count))
        chance.shuffle(order)
        self.links = []     # earlier, later, rest
        for place in range(1, count):
            for _ in range(chance.choice((0, 1, 1, 2, 4))):
                rest = chance.choice((0, 0, chance.randint(1, 200)))
                self.links.append((order[chance.randrange(max(0, place - 12), place)], order[place], rest))
        chance.shuffle(self.links)

    def text(self):
        lines = [(len(self.durations), len(self.links)), *zip(self.durations, self.releases), *self.links]
        return "".join(" ".join(map(str, line)) + "\n" for line in lines)

    def graph(self):
        graph = networkx.DiGraph()
        for step, (duration, release) in enumerate(zip(self.durations, self.releases)):
            graph.add_edge(BEGIN, step, weight=release)
            graph.add_edge(step, END, weight=duration)
        for earlier, later, rest in self.links:
            least = self.durations[earlier] + rest
            if not graph.has_edge(earlier, later) or graph[earlier][later]["weight"] < least:
                graph.add_edge(earlier, later, weight=least)
        return graph


def longest(graph, nodes):
    return networkx.dag_longest_path_length(graph.subgraph(nodes), weight="weight")


def run(program, network):
    """What the program says: the length, the early and late starts, the chain."""
    done = subprocess.run([program], input=network.text(), capture_output=True, text=True, timeout=PATIENCE, check=True)
    lines = [[int(word) for word in line.split()] for line in done.stdout.splitlines()]
    return lines[0][0], lines[1:-1], lines[-1]


def differences(program, network):
    """Where the program and networkx do not say the same, one line each."""
    graph = network.graph()
    length, starts, chain = run(program, network)
    wanted = networkx.dag_longest_path_length(graph, weight="weight")
    if length != wanted:
        yield f"length {length}, expected {wanted}"
    if len(starts) != len(network.durations):
        yield f"{len(starts)} steps, expected {len(network.durations)}"
    for step, (early, late) in enumerate(starts):
        before = longest(graph, networkx.ancestors(graph, step) | {step})
        behind = longest(graph, networkx.descendants(graph, step) | {step})
        if (early, late) != (before, wanted - behind):
            yield f"step {step} begins from {early} to {late}, expected {before} to {wanted - behind}"
    path = [BEGIN, *chain, END]
    if not networkx.is_path(graph, path):
        yield f"the chain {chain} is no path"
    elif networkx.path_weight(graph, path, "weight") != wanted:
        yield f"the chain {chain} is {networkx.path_weight(graph, path, 'weight')} long, expected {wanted}"


def main():
    parser = argparse.ArgumentParser(description="Hold networks against networkx.")
    parser.add_argument("program")
    parser.add_argument("count", nargs="?", type=int, default=200)
    parser.add_argument("first_seed", nargs="?", type=int, default=1)
    given = parser.parse_args()
    passed = failed = 0
    for seed in range(given.first_seed, given.first_seed + given.count):
        try:
            troubles = list(differences(given.program, Network(seed)))
        except (subprocess.SubprocessError, ValueError, IndexError) as trouble:
            troubles = [f"{type(trouble).__name__}: {trouble}"]
        passed, failed = passed + (not troubles), failed + bool(troubles)
        if troubles:
            print(f"seed {seed} failed")
            print("".join(f"    {line}\n" for line in troubles), end="", flush=True)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
