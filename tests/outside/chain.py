#!/usr/bin/env python3
"""Random workrooms so plain that their forecast can be told without a plan, and what it must be.

    chain.py SEED DIR

One person does all there is, one step after the other, so that there is nothing to choose: the days follow from the hours
alone.  Written from the rules, apart from the program; `compare.py` holds the two against each other.

Time is told in minutes since midnight before the first day that matters.
"""
import csv
import os
import random
import sys
from datetime import date, timedelta

FIRST = date(2027, 1, 4)        # a Monday; the calendar begins here
TODAY = date(2027, 3, 2)
DAYS = 500
DAY_MINUTES = 1440
WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
HOURS = ("", "", "10:00-13:00", "10:00-13:00;14:00-18:00", "18:00-24:00", "09:15-09:50", "14:00-17:30;18:00-19:00")
KINDS = ("source", "tack", "machine", "press", "hand", "craft", "dye")


def minute_of(time):
    hours, minutes = time.split(":")
    return int(hours) * 60 + int(minutes)


def start_of(day):
    return (day - FIRST).days * DAY_MINUTES


def day_of(minute):
    return FIRST + timedelta(days=minute // DAY_MINUTES)


class Chain:
    """One costume of a chain of steps, and the person who does them."""

    def __init__(self, seed):
        dice = self.dice = random.Random(seed)
        self.week = [dice.choice(HOURS) for _ in WEEK]
        self.since = dice.choice((None, None, TODAY + timedelta(days=dice.randint(-9, 9))))
        self.until = dice.choice((None, None, None, (self.since or TODAY) + timedelta(days=dice.randint(0, 60))))
        self.away = [(start, start + timedelta(days=dice.randint(0, 9)))
                     for start in (TODAY + timedelta(days=dice.randint(-5, 60)) for _ in range(dice.randint(0, 4)))]
        self.due = TODAY + timedelta(days=dice.randint(0, 60))
        count = dice.randint(1, 12)
        self.pieces = [f"1A-{dice.randint(1, 3)}" for _ in range(count)]
        self.minutes = [dice.choice((dice.randint(1, 60), dice.randint(1, 600))) for _ in range(count)]
        self.kinds = [dice.choice(KINDS) for _ in range(count)]
        self.rests = [dice.choice((0, 0, 0, 0.5, 12, 48)) for _ in range(count)]
        self.done = dice.randint(0, count - 1) if dice.random() < 0.3 else 0
        self.waiting = dice.randint(self.done + 1, count) if dice.random() < 0.3 else count     # from here on it can wait
        self.comes = TODAY + timedelta(days=dice.randint(1, 20)) if dice.random() < 0.5 else None   # what the first open one needs

    # ---------------------------------------------------------------------------------------------------------- sheets

    def write(self, folder):
        os.makedirs(folder)
        steps = [{"piece": self.pieces[at], "step": f"s{at}", "title": f"step {at}", "kind": self.kinds[at],
                  "minutes": self.minutes[at], "after": f"{self.pieces[at - 1]}/s{at - 1}" if at else "",
                  "rest": self.rests[at] or "", "can_wait": "yes" if at >= self.waiting else "",
                  "done_on": "2027-02-01" if at < self.done else ""} for at in range(len(self.pieces))]
        put = {
            "production": [{"production": "Plain", "opens": self.due.isoformat()}],
            "people": [{"person": "Ada", "skills": ";".join(KINDS), "from": self.since or "", "until": self.until or "",
                        **dict(zip(WEEK, self.week))}],
            "roles": [{"role": "Cook"}], "costumes": [{"costume": "1A", "role": "Cook", "title": "Apron"}],
            "pieces": [{"piece": piece, "costumes": "1A", "title": piece} for piece in sorted(set(self.pieces))],
            "steps": steps,
            "away": [{"who": "Ada", "from": first, "to": last} for first, last in self.away],
        }
        if self.comes:
            put["materials"] = [{"material": "linen", "unit": "m"}]
            put["needs"] = [{"piece": self.pieces[self.done], "step": f"s{self.done}", "material": "linen", "quantity": 1}]
            put["orders"] = [{"material": "linen", "quantity": 1, "ordered_on": TODAY, "due_on": self.comes}]
        for name, rows in put.items():
            if rows:
                with open(os.path.join(folder, name + ".csv"), "w", encoding="utf-8", newline="") as file:
                    writer = csv.DictWriter(file, list(rows[0]))
                    writer.writeheader()
                    writer.writerows(rows)

    # -------------------------------------------------------------------------------------------------------- reckoning

    def stretches(self, day):
        """The hours of a day as (from, to), absences taken off."""
        there = (self.since or day) <= day <= (self.until or day)
        if not there or any(first <= day <= last for first, last in self.away):
            return []
        parts = [part.split("-") for part in self.week[day.weekday()].split(";") if part]
        return [(start_of(day) + minute_of(first), start_of(day) + minute_of(last)) for first, last in parts]

    def all_stretches(self):
        return [stretch for number in range(DAYS) for stretch in self.stretches(FIRST + timedelta(days=number))]

    def forward(self, begin, minutes):
        """The minute after the last of so many minutes of work from `begin` on, or None."""
        for first, last in self.all_stretches():
            there = max(0, last - max(first, begin))
            if minutes <= there:
                return max(first, begin) + minutes
            minutes -= there
        return None

    def backward(self, end, minutes):
        """The latest minute at which so many minutes of work begin, to be done at `end`, or None."""
        for first, last in reversed(self.all_stretches()):
            there = max(0, min(last, end) - first)
            if minutes <= there:
                return min(last, end) - minutes
            minutes -= there
        return None

    def finish(self):
        """The day on which all that cannot wait is done (or all, where only what can wait is open); None: never."""
        moment, end = start_of(TODAY), None
        for at in range(self.done, len(self.pieces)):
            if at == self.done and self.comes:
                moment = max(moment, start_of(self.comes))
            moment = self.forward(moment, self.minutes[at])
            if moment is None:
                return None
            if at < self.waiting or self.waiting <= self.done:
                end = moment
            moment += int(self.rests[at] * 60)
        return day_of(end - 1)

    def days_in_hand(self, finish):
        """Days with any hours after `finish` up to the due day, or those after the due day up to `finish`, below zero."""
        first, last = min(finish, self.due), max(finish, self.due)
        count = sum(bool(self.stretches(first + timedelta(days=number))) for number in range(1, (last - first).days + 1))
        return -count if finish > self.due else count

    def wanted_by(self):
        """The latest day on which the first open step can begin, so that all that cannot wait is done by the due day."""
        end = start_of(self.due + timedelta(days=1))
        for at in reversed(range(self.done, self.waiting)):
            begin = self.backward(end, self.minutes[at])
            if begin is None:
                return None
            end = begin - int(self.rests[at - 1] * 60 if at > self.done else 0)
        return day_of(begin)


def troubles(chain, rail):
    """What a rail (as JSON) of a plain workroom has wrong, a line each."""
    costume, = rail["costumes"]
    finish = chain.finish()
    wanted = {"finish": finish and finish.isoformat(), "days_in_hand": chain.days_in_hand(finish) if finish else None}
    for key, value in wanted.items():
        if costume[key] != value:
            yield f"{key}: {costume[key]}, expected {value}"
    by = chain.wanted_by() if chain.waiting > chain.done and finish else None
    for wait in costume["waits"]:
        if by and by >= TODAY and wait["on"] == "materials" and wait["wanted_by"] != by.isoformat():
            yield f"wanted_by: {wait['wanted_by']}, expected {by}"


if __name__ == "__main__":
    Chain(int(sys.argv[1])).write(sys.argv[2])
