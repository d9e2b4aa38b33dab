"""Measures the command line against the sqlite3 command, in one run on one machine, and prints ratios.

    ratios.py rail BODKIN      `bodkin rail` in a store of 200 productions against reading the same rows with sqlite3
    ratios.py growth BODKIN    time of `bodkin rail` as the steps of a production grow
    ratios.py import BODKIN    importing 6,000 performers with 90 measures each against sqlite3's .import

`bodkin rail` reads and makes one plan here (--tries 0); beside it stands, for information, what the usual effort takes.
"""

import os
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

HERE = os.path.dirname(os.path.abspath(__file__))
TODAY = "2027-03-02"
ROUNDS = 40


def make(*arguments):
    subprocess.run([sys.executable, os.path.join(HERE, "workroom.py"), *map(str, arguments)], check=True)


def run(command, **more):
    begun = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, **more)
    return time.perf_counter() - begun


def medians(first, second, rounds=ROUNDS):
    """Turn about, so that a busy moment of the machine falls on both."""
    times = [(run(first), run(second)) for _ in range(rounds)]
    return statistics.median(t[0] for t in times), statistics.median(t[1] for t in times)


def bodkin(program, store, *arguments):
    return [program, "--store", store, "--today", TODAY, *arguments]


def import_all(program, store, folder):
    for name in sorted(os.listdir(folder)):
        run(bodkin(program, store, "import", os.path.join(folder, name)))


def usual_effort(program, store, *arguments):
    """Seconds of one rail with days and odds; counted in plans and trials, it is about the same for every store."""
    return run(bodkin(program, store, *arguments, "rail"))


OF_PRODUCTION = """
SELECT * FROM production WHERE id = {id};
SELECT * FROM show_date WHERE production_id = {id};
SELECT performer.* FROM company JOIN performer ON performer.id = performer_id WHERE production_id = {id};
SELECT * FROM role WHERE production_id = {id} ORDER BY position;
SELECT * FROM costume WHERE production_id = {id} ORDER BY position;
SELECT * FROM piece WHERE production_id = {id} ORDER BY position;
SELECT piece_costume.* FROM piece JOIN piece_costume ON piece_id = piece.id WHERE production_id = {id};
SELECT * FROM step WHERE production_id = {id} ORDER BY position;
SELECT step_after.* FROM step JOIN step_after ON step_id = step.id WHERE production_id = {id};
SELECT need.* FROM step JOIN need ON need.step_id = step.id WHERE production_id = {id};
SELECT * FROM fitting WHERE production_id = {id} ORDER BY position;
"""


def rail(program, work):
    store = os.path.join(work, "workroom.db")
    make("productions", os.path.join(work, "large"), 1, 100, 20)
    make("productions", os.path.join(work, "small"), 100, 25, 20, 2)
    make("productions", os.path.join(work, "smaller"), 99, 24, 20, 102)
    for folder in ("large", "small", "smaller"):
        import_all(program, store, os.path.join(work, folder))
    sql = "UPDATE production SET put_away_on = '2027-01-01' WHERE id > 3;"
    subprocess.run(["sqlite3", store, sql], check=True)
    counts = subprocess.run(["sqlite3", store, "SELECT count(*), (SELECT count(*) FROM costume), "
                             "(SELECT count(*) FROM step) FROM production"], check=True, capture_output=True, text=True)
    print("store: productions|costumes|steps", counts.stdout.strip())
    ours = bodkin(program, store, "--production", "Show 0001", "--tries", "0", "rail")
    theirs = ["sqlite3", "-readonly", store, OF_PRODUCTION.format(id=1)]
    first, second = medians(ours, theirs)
    print("bodkin rail %.1f ms, sqlite3 reading its rows %.1f ms, ratio %.2f (at most 2)" %
          (first * 1e3, second * 1e3, first / second))
    print("with the usual effort: %.2f s" % usual_effort(program, store, "--production", "Show 0001"))


def growth(program, work):
    previous = None
    for costumes in (50, 100, 200, 400, 800, 1600):
        store = os.path.join(work, "%d.db" % costumes)
        folder = os.path.join(work, "of%d" % costumes)
        make("productions", folder, 1, costumes, 20)
        import_all(program, store, folder)
        command = bodkin(program, store, "--tries", "0", "rail")
        spent = statistics.median(run(command) for _ in range(15))
        more = "" if previous is None else ", %.2f times the one before for twice the steps" % (spent / previous)
        print("%6d steps: %7.1f ms%s; with the usual effort %.2f s" %
              (costumes * 20, spent * 1e3, more, usual_effort(program, store)))
        previous = spent


def importing(program, work):
    folder = os.path.join(work, "census")
    make("measures", folder, 6000, 90)
    ours, theirs, memory = [], [], 0
    for number in range(5):
        store = os.path.join(work, "ours%d.db" % number)
        ours.append(run(bodkin(program, store, "import", folder)))
        memory = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
        plain = os.path.join(work, "plain%d.db" % number)
        script = ("CREATE TABLE measures(performer, taken_on, measure, value, taken_by);\n.mode csv\n"
                  ".import --skip 1 %s measures\n" % os.path.join(folder, "measures.csv"))
        theirs.append(run(["sqlite3", plain], input=script.encode()))
    first, second = statistics.median(ours), statistics.median(theirs)
    print("import of 540,000 measures %.2f s, sqlite3 .import %.2f s, ratio %.2f (at most 4); most memory %.0f MB "
          "(under 300)" % (first, second, first / second, memory / 1024))


def main():
    what, program = sys.argv[1:3]
    work = tempfile.mkdtemp()
    try:
        {"rail": rail, "growth": growth, "import": importing}[what](os.path.abspath(program), work)
    finally:
        shutil.rmtree(work)


if __name__ == "__main__":
    main()
