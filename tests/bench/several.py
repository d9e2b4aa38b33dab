"""Several programs in one store, measured with the real program.

    several.py ticks BODKIN    eight programs tick 500 steps each at the same time
    several.py kills BODKIN    programs that tick and save forms are killed at 300 random moments, with others beside
"""

import itertools
import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import threading
import time

from kills import kill_all

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
    write(folder, "performers.csv", ["performer", "Player"])
    write(folder, "roles.csv", ["role,performer", "The Weaver,Player"])
    write(folder, "costumes.csv", ["costume,role,title", "1A,The Weaver,Apron"])
    write(folder, "materials.csv", ["material,unit,on_hand", "linen,m,1000", "thread,m,1000"])
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

    def number(self, sql, *values):
        with sqlite3.connect(self.path) as connection:
            return connection.execute(sql, values).fetchone()[0]


def run_timed(workroom, words, troubles, times):
    begun = time.perf_counter()
    end = subprocess.run(workroom.command(*words), capture_output=True, text=True)
    times.append(time.perf_counter() - begun)
    if end.returncode:
        troubles.append(end.stderr)


def tick_all(piece, workroom, steps, troubles, times):
    for step in range(steps):
        run_timed(workroom, ("tick", "P%d/s%d" % (piece, step), "--name", "hand %d" % piece), troubles, times)


def tick_until(piece, workroom, steps, troubles, times, ended):
    """Ticks all steps, then opens all of them again, and so on."""
    for job, step in itertools.cycle(itertools.product(("tick", "untick"), range(steps))):
        if ended.is_set():
            return
        run_timed(workroom, (job, "P%d/s%d" % (piece, step), "--name", "hand %d" % piece), troubles, times)


def start_hands(work, pieces, *arguments):
    hands = [threading.Thread(target=work, args=(piece, *arguments)) for piece in pieces]
    for hand in hands:
        hand.start()
    return hands


def ticks(program, work):
    workroom = Workroom(program, work, HANDS, STEPS)
    troubles, times = [], []
    begun = time.perf_counter()
    for hand in start_hands(tick_all, range(HANDS), workroom, STEPS, troubles, times):
        hand.join()
    spent = time.perf_counter() - begun
    done = workroom.number("SELECT count(*) FROM step WHERE done_on IS NOT NULL")
    used = workroom.number("SELECT count(*) FROM movement WHERE kind = 'use'")
    back = workroom.number("SELECT count(*) FROM daybook AS one JOIN daybook AS next ON next.id = one.id + 1 "
                           "WHERE julianday(next.made_at) < julianday(one.made_at)")
    entries = workroom.number("SELECT count(*) FROM daybook")
    print("%d programs, %d ticks in %.1f s (slowest %.2f s): "
          "%d errors, %d done, %d uses, %d entries, %d out of order" %
          (HANDS, HANDS * STEPS, spent, max(times), len(troubles), done, used, entries, back))
    print(workroom.run("check").strip())
    for trouble in troubles[:5]:
        print(trouble.strip())


def records(workroom):
    """Everything in the store but the daybook, as SQL."""
    with sqlite3.connect(workroom.path) as connection:
        return [line for line in connection.iterdump()
                if not line.startswith(('INSERT INTO "daybook', 'INSERT INTO "sqlite_sequence"'))]


def undo_all(workroom, name, terminal=subprocess.DEVNULL):
    """What was changed under that name at that terminal, or at none; gives how many changes."""
    count = 0
    command = workroom.command("undo", "--name", name)
    while subprocess.run(command, stdin=terminal, capture_output=True).returncode == 0:
        count += 1
    return count


def is_lost(workroom, end):
    written = "SELECT count(*) FROM daybook WHERE instr(sentence, ?) > 0"
    return end.told and not (end.there and workroom.number(written, end.sentence.rstrip(".")))


def tell_kills(workroom, what, killed):
    last = [ends[-1] for ends in killed]
    every = [end for ends in killed for end in ends]
    print("%d killed %s: the change under way was confirmed in %d and there in %d; %d confirmed in all, %d lost" %
          (len(killed), what, sum(end.told for end in last), sum(end.there for end in last),
           sum(end.told for end in every), sum(is_lost(workroom, end) for end in every)))


def kills(program, work):
    workroom = Workroom(program, work, 4, KILLS + 20)
    before = records(workroom)
    troubles, times, ended = [], [], threading.Event()
    beside = start_hands(tick_until, (2, 3), workroom, KILLS, troubles, times, ended)
    try:
        killed, terminal = kill_all(workroom, KILLS)
    finally:
        ended.set()
    for hand in beside:
        hand.join()
    tell_kills(workroom, "on the command line", killed[0::2])
    tell_kills(workroom, "full-screen", killed[1::2])
    print("beside them %d jobs, %d errors; %s" % (len(times), len(troubles), workroom.run("check").strip()))
    undone = undo_all(workroom, "killed", terminal)
    undone += sum(undo_all(workroom, name) for name in ("killed", "hand 2", "hand 3"))
    same = records(workroom) == before
    print("undone afterwards: %d; the records are %sas they were; %s" %
          (undone, "" if same else "NOT ", workroom.run("check").strip()))


def main():
    what, program = sys.argv[1:3]
    work = tempfile.mkdtemp()
    try:
        {"ticks": ticks, "kills": kills}[what](os.path.abspath(program), work)
    finally:
        shutil.rmtree(work)


if __name__ == "__main__":
    main()
