#!/usr/bin/env python3
"""Hold the planner against an exact solver, over many small random networks with limited hands.

    limited_hands.py PSPLIB [COUNT] [FIRSTSEED] [--also PSPLIB]

Each network is written as an .sm file for PSPLIB (the program of tests/bench), and as an integer program in which task j begins
at moment t or not (Pritsker, Watters and Wolfe 1969), which glpsol of the GNU Linear Programming Kit solves to the end.  The
finish that the planner finds must be the least there is.  What another compiler made of the program must print the same, but for
the seconds.  The last line says how many networks passed and failed; the exit
status is 1 if one failed.
"""
import argparse
import os
import random
import re
import subprocess
import sys
import tempfile

SCHEDULES = 300
PATIENCE = 120  # seconds for one network


class Network:
    """Tasks 0 to n + 1, of which the first and the last have no length; `after` holds pairs (earlier, later)."""

    def __init__(self, seed):
        chance = random.Random(seed)
        count = chance.randint(3, 8)
        self.tasks = range(count + 2)
        self.last = count + 1
        self.length = [0] + [chance.randint(1, 5) for _ in range(count)] + [0]
        self.capacity = [chance.randint(2, 5) for _ in range(chance.randint(1, 3))]
        self.need = [[0 if task in (0, self.last) or chance.random() < 0.25 else chance.randint(1, most)
                      for most in self.capacity] for task in self.tasks]
        self.after = {(earlier, later) for later in range(1, count + 1) for earlier in range(1, later)
                      if chance.random() < 0.2}
        self.after |= {(0, task) for task in range(1, count + 1)} | {(task, self.last) for task in range(1, count + 1)}

    def critical_path(self):
        end = [0] * len(self.tasks)
        for task in self.tasks:
            end[task] = self.length[task] + max((end[earlier] for earlier, later in self.after if later == task), default=0)
        return end[self.last]

    def sm(self):
        lines = [f"jobs (incl. supersource/sink ):  {len(self.tasks)}", f"  - renewable : {len(self.capacity)} R",
                 "  - nonrenewable : 0 N", "PRECEDENCE RELATIONS:", "jobnr. #modes #successors successors"]
        for task in self.tasks:
            later = sorted(later + 1 for earlier, later in self.after if earlier == task)
            lines.append(" ".join(map(str, [task + 1, 1, len(later), *later])))
        lines += ["REQUESTS/DURATIONS:", "jobnr. mode duration R", "----"]
        lines += [" ".join(map(str, [task + 1, 1, self.length[task], *self.need[task]])) for task in self.tasks]
        lines += ["RESOURCEAVAILABILITIES:", " R", " ".join(map(str, self.capacity))]
        return "\n".join(lines) + "\n"

    def program(self):
        """The integer program in the LP form that glpsol reads."""
        moments = range(sum(self.length) + 1)
        terms = lambda task, factor=1: " + ".join(f"{factor * moment} x{task}_{moment}" for moment in moments)
        lines = ["Minimize", " finish: " + terms(self.last), "Subject To"]
        for task in self.tasks:
            lines.append(" " + " + ".join(f"x{task}_{moment}" for moment in moments) + " = 1")
        for earlier, later in sorted(self.after):
            lines.append(f" {terms(later)} - " + " - ".join(f"{moment} x{earlier}_{moment}" for moment in moments) +
                         f" >= {self.length[earlier]}")
        for kind, most in enumerate(self.capacity):
            for moment in moments:
                used = [f"{self.need[task][kind]} x{task}_{begin}" for task in self.tasks if self.need[task][kind] > 0
                        for begin in range(max(0, moment - self.length[task] + 1), moment + 1)]
                if used:
                    lines.append(" " + " + ".join(used) + f" <= {most}")
        names = [f" x{task}_{moment}" for task in self.tasks for moment in moments]
        return "\n".join(lines + ["Binary", *names, "End"]) + "\n"

    def least_finish(self, folder):
        path, answer = os.path.join(folder, "network.lp"), os.path.join(folder, "network.txt")
        with open(path, "w", encoding="ascii") as file:
            file.write(self.program())
        subprocess.run(["glpsol", "--lp", path, "--cuts", "-o", answer], stdout=subprocess.DEVNULL, timeout=PATIENCE,
                       check=True)
        with open(answer, encoding="ascii") as file:
            text = file.read()
        if "INTEGER OPTIMAL" not in text:
            raise RuntimeError("glpsol found no best answer")
        return int(re.search(r"^Objective: +finish = (\d+)", text, re.MULTILINE).group(1))


def solve_all(folder, seeds):
    """Writes every network and the table of their least finishes; returns name to finish."""
    least = {}
    with open(os.path.join(folder, "table.csv"), "w", encoding="ascii") as table:
        table.write("instance,cpm_lb,best_ub\n")
        for seed in seeds:
            network, name = Network(seed), f"network{seed}"
            with open(os.path.join(folder, name + ".sm"), "w", encoding="ascii") as file:
                file.write(network.sm())
            least[name] = network.least_finish(folder)
            table.write(f"{name},{network.critical_path()},{least[name]}\n")
    return least


def run(program, folder):
    """What the program prints, without the seconds it took."""
    done = subprocess.run([program, folder, os.path.join(folder, "table.csv"), str(SCHEDULES)], capture_output=True, text=True,
                          timeout=PATIENCE, check=False)
    sys.stderr.write(done.stderr)
    return re.sub(r", [0-9.]+ s$", "", done.stdout, flags=re.MULTILINE)


def main():
    parser = argparse.ArgumentParser(description="Hold the planner against an exact solver.")
    parser.add_argument("psplib")
    parser.add_argument("count", type=int, nargs="?", default=200)
    parser.add_argument("first", type=int, nargs="?", default=1)
    parser.add_argument("--also")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        least = solve_all(folder, range(asked.first, asked.first + asked.count))
        said = run(asked.psplib, folder)
        differs = asked.also is not None and run(asked.also, folder) != said
    found = dict(re.findall(r"^(network\d+): finish (\d+),", said, re.MULTILINE))
    failed = [name for name in least if found.get(name) != str(least[name])]
    for name in failed:
        print(f"{name}: the planner found {found.get(name, 'nothing')}, the least finish is {least[name]}")
    if differs:
        print(f"{asked.psplib} and {asked.also} print different things")
    print(f"{len(least) - len(failed)} passed, {len(failed) + differs} failed")
    return 1 if failed or differs else 0


if __name__ == "__main__":
    sys.exit(main())
