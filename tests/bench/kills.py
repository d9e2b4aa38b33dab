"""Kills programs with SIGKILL at random moments, for several.py.

Every other one ticks a step from the command line; the rest are full-screen and tick, jot notes, change steps, count
the shelf or enter performers.
"""

import collections
import random
import re
import statistics
import subprocess
import time

from screen import EMPTY, ENTER, SAVE, Screen, Terminal

NAME = "killed"
ROUNDS = 5  # of each kind of change, before the kills, to learn how long they take; the newest so many count
WINDOW = 1.5  # the kill comes somewhere between the first letter and so many times what the change usually takes
MOST_BEFORE = 2  # changes that a program makes before the one it is killed in

# A change made full-screen: the keys from the Rail to where `text` is typed, the key that ends it, the sentence that
# then confirms it, and what the store says when it is there. In all of them %s is the number of the change, or for a
# tick the title of the step that the program asks for.
Change = collections.namedtuple("Change", "before text end sentence there")

# Whether a change was confirmed, whether the store had it right after that, and the sentence that confirms it.
End = collections.namedtuple("End", "told there sentence")

ASKED = re.compile(r"Done: P0/\S+ (.*)\?")

CHANGES = {
    "tick": Change(["x"], "", ENTER, "Done: P0 %s.",
                   "SELECT count(*) FROM step JOIN piece ON piece.id = piece_id "
                   "WHERE piece.name = 'P0' AND step.title = '%s' AND done_on IS NOT NULL"),
    "note": Change(["j"], "note %s", SAVE, 'New: note "note %s".',
                   "SELECT count(*) FROM note WHERE what = 'note %s'"),
    "step": Change([ENTER, "e", EMPTY], "seam kept %s", SAVE, "seam kept %s: title.",
                   "SELECT count(*) FROM step WHERE title = 'seam kept %s'"),
    "count": Change(["M", "/", "thread", ENTER, "k"], "%s", ENTER, "Counted: thread, %s m (it was",
                    "SELECT sum(quantity) = %s * 1000000 FROM movement JOIN material ON material.id = material_id "
                    "WHERE material.name = 'thread'"),
    "performer": Change(["C", "+"], "Player %s", SAVE, "New: performer Player %s.",
                        "SELECT count(*) FROM performer WHERE name = 'Player %s'"),
}

KINDS = list(CHANGES)


def is_there(workroom, change, what):
    return bool(workroom.number(change.there % what))


def begin(screen, change, number):
    """Goes where the change is made; gives what stands for %s in it."""
    screen.press("R", *change.before)
    if change.text:
        return number
    screen.await_text("Done: P0/")
    return ASKED.search(screen.text()).group(1)


def finish(screen, change, what):
    screen.send((change.text % what if change.text else "") + change.end)


class Killer:
    """Kills full-screen programs, one after the other on one terminal."""

    def __init__(self, workroom):
        self.workroom = workroom
        self.terminal = Terminal()
        self.number = 0
        self.spent = {kind: collections.deque(maxlen=ROUNDS) for kind in CHANGES}  # seconds that changes took
        screen = Screen(self.terminal, workroom.command("--name", NAME))
        for kind in KINDS * ROUNDS:
            self.make(screen, kind)
        screen.kill()

    def next(self):
        self.number += 1
        return self.number

    def make(self, screen, kind):
        """Makes a change and waits until it is confirmed."""
        change = CHANGES[kind]
        what = begin(screen, change, self.next())
        begun = time.perf_counter()
        finish(screen, change, what)
        screen.await_text(change.sentence % what)
        self.spent[kind].append(time.perf_counter() - begun)
        return End(True, is_there(self.workroom, change, what), change.sentence % what)

    def kill_full_screen(self):
        """Ends of the changes that one program had made, the last of them the one it was killed in."""
        screen = Screen(self.terminal, self.workroom.command("--name", NAME))
        ends = [self.make(screen, random.choice(KINDS)) for _ in range(random.randint(0, MOST_BEFORE))]
        kind = random.choice(KINDS)
        change = CHANGES[kind]
        what = begin(screen, change, self.next())
        finish(screen, change, what)
        time.sleep(random.uniform(0, WINDOW * statistics.median(self.spent[kind])))
        sentence = change.sentence % what
        told = sentence in screen.kill()
        return ends + [End(told, is_there(self.workroom, change, what), sentence)]


class Ticker:
    """Kills programs of the command line, with one step of the piece P1 after the other."""

    def __init__(self, workroom):
        self.workroom = workroom
        self.step = 0
        self.spent = [self.time_tick() for _ in range(ROUNDS)]

    def tick(self):
        self.step += 1
        return "tick", "P1/s%d" % (self.step - 1), "--name", NAME

    def time_tick(self):
        begun = time.perf_counter()
        self.workroom.run(*self.tick())
        return time.perf_counter() - begun

    def kill_ticking(self):
        child = subprocess.Popen(self.workroom.command(*self.tick()), stdout=subprocess.PIPE)
        time.sleep(random.uniform(0, WINDOW * statistics.median(self.spent)))
        child.kill()
        sentence = "Done: P1 seam %d." % (self.step - 1)
        told = child.communicate()[0].decode().strip() == sentence
        there = self.workroom.number("SELECT count(*) FROM step JOIN piece ON piece.id = piece_id "
                                     "WHERE piece.name = 'P1' AND key = 's%d' AND done_on NOTNULL" % (self.step - 1))
        return [End(told, bool(there), sentence)]


def kill_all(workroom, count):
    """Kills `count` programs, every other one full-screen. Gives a list of ends for each, and the terminal they had."""
    ticker, killer = Ticker(workroom), Killer(workroom)
    killed = [(killer.kill_full_screen if number % 2 else ticker.kill_ticking)() for number in range(count)]
    return killed, killer.terminal.slave
