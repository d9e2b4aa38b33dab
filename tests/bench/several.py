"""Several programs in one store, measured with the real program.

    several.py ticks BODKIN    eight programs tick 500 steps each at the same time
    several.py kills BODKIN    a program that ticks is killed at 300 random moments, with others ticking beside it
"""

import os
import random
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import threading
import time

HANDS = 8
STEPS = 500
KILLS = 300


def write(folder, name, lines):
    with open(os.path.join(folder, name), "w") as sheet:
        sheet.write("\n".join(lines) + "\n")


def make_show(folder, pieces, steps):
    os.mkdir(folder)
    pairs = [(piece, step) for piece in range(pieces) for step in range(steps)]
    write(folder, "production.csv", ["production,opens", "The Loom,2027-06-04"])
    write(folder, "roles.csv", ["role", "The Weaver"])
    write(folder, "costumes.csv", ["costume,role,title", "1A,The Weaver,Apron"])
    write(folder, "materials.csv", ["material,unit,on_hand", "linen,m,1000"])
    write(folder, "pieces.csv", ["piece,costumes,title,origin"] + ["P%d,1A,Apron,make" % p for p in range(pieces)])
    write(folder, "steps.csv", ["piece,step,title,kind,minutes"] + ["P%d,s%d,seam %d,hand,5" % (p, s, s) for p, s in pairs])
    write(folder, "needs.csv", ["piece,step,material,quantity"] + ["P%d,s%d,linen,0.01" % pair for pair in pairs])


class Workroom:
    def __init__(self, program, work, pieces, steps):
        self.program = program
        self.path = os.path.join(work, "workroom.db")
        folder = os.path.join(work, "show")
        make_show(folder, pieces, steps)
        self.run("import", folder)

    def command(self, *words):
        return [self.program, "--store", self.path, "--today", "2027-03-02", *words]

    def run(self, *words):
        return subprocess.run(self.command(*words), capture_output=True, text=True, check=True).stdout

    def number(self, sql):
        with sqlite3.connect(self.path) as connection:
            return connection.execute(sql).fetchone()[0]


def tick_all(workroom, piece, steps, troubles, times):
    for step in range(steps):
        begun = time.perf_counter()
        end = subprocess.run(workroom.command("tick", "P%d/s%d" % (piece, step), "--name", "hand %d" % piece),
                             capture_output=True, text=True)
        times.append(time.perf_counter() - begun)
        if end.returncode:
            troubles.append(end.stderr)


def start_hands(workroom, pieces, steps, troubles, times):
    hands = [threading.Thread(target=tick_all, args=(workroom, piece, steps, troubles, times)) for piece in pieces]
    for hand in hands:
        hand.start()
    return hands


def ticks(program, work):
    workroom = Workroom(program, work, HANDS, STEPS)
    troubles, times = [], []
    begun = time.perf_counter()
    for hand in start_hands(workroom, range(HANDS), STEPS, troubles, times):
        hand.join()
    spent = time.perf_counter() - begun
    done = workroom.number("SELECT count(*) FROM step WHERE done_on IS NOT NULL")
    used = workroom.number("SELECT count(*) FROM movement WHERE kind = 'use'")
    back = workroom.number("SELECT count(*) FROM daybook AS one JOIN daybook AS next ON next.id = one.id + 1 "
                           "WHERE julianday(next.made_at) < julianday(one.made_at)")
    entries = workroom.number("SELECT count(*) FROM daybook")
    print("%d programs, %d ticks in %.1f s (slowest %.2f s): %d errors, %d done, %d uses, %d entries, %d out of order" %
          (HANDS, HANDS * STEPS, spent, max(times), len(troubles), done, used, entries, back))
    print(workroom.run("check").strip())
    for trouble in troubles[:5]:
        print(trouble.strip())


def kill_one(workroom, step, whole):
    """Whether the tick was confirmed, and whether it is there."""
    child = subprocess.Popen(workroom.command("tick", "P0/s%d" % step, "--name", "killed"), stdout=subprocess.PIPE)
    try:
        child.wait(random.uniform(0, whole))
    except subprocess.TimeoutExpired:
        child.kill()
    told = child.communicate()[0].startswith(b"Done: ")
    there = workroom.number("SELECT count(*) FROM step JOIN piece ON piece.id = piece_id WHERE piece.name = 'P0' "
                            "AND key = 's%d' AND done_on IS NOT NULL" % step)
    return told, bool(there)


def kills(program, work):
    workroom = Workroom(program, work, 3, KILLS + 20)
    spent = []
    for step in range(KILLS, KILLS + 20):
        begun = time.perf_counter()
        workroom.run("tick", "P0/s%d" % step)
        spent.append(time.perf_counter() - begun)
    troubles = []
    beside = start_hands(workroom, (1, 2), KILLS, troubles, [])
    ends = [kill_one(workroom, step, 2 * max(spent)) for step in range(KILLS)]
    for hand in beside:
        hand.join()
    confirmed = sum(told for told, _ in ends)
    lost = sum(told and not there for told, there in ends)
    there = sum(there for _, there in ends)
    print("%d kills: %d confirmed before it, %d there, %d confirmed and lost; beside it %d errors" %
          (KILLS, confirmed, there, lost, len(troubles)))
    print(workroom.run("check").strip())
    undone = 0
    while subprocess.run(workroom.command("undo", "--name", "killed"), capture_output=True).returncode == 0:
        undone += 1
    print("undone afterwards: %d; %s" % (undone, workroom.run("check").strip()))


def main():
    what, program = sys.argv[1:3]
    work = tempfile.mkdtemp()
    try:
        {"ticks": ticks, "kills": kills}[what](os.path.abspath(program), work)
    finally:
        shutil.rmtree(work)


if __name__ == "__main__":
    main()
