#!/usr/bin/env python3
"""Hold the program against the reckoning, over many random productions.

    compare.py BODKIN [COUNT] [FIRSTSEED]

For each seed the productions that make_random.py makes of it are imported into a new store.  Then, for each of them:

rail   `bodkin rail --json` must be what reckon.py says of the same folders, but for days and odds;
days   days in hand must follow from finish, due day and hours, and the costumes come in the order that they give;
kept   the export must hold every row and cell that went in, in the order in which they count;
alone  the export, imported alone into an empty store, must give the rail that reckon.py says of that export;
bytes  exporting that again must give the same bytes.

And for each seed a workroom so plain (chain.py) that its days can be told without a plan must have these.

A seed that fails is named with the command that makes its folders and the first differences.  The exit status is 1 if one did.
"""
import argparse
import json
import os
import re
import subprocess
import sys
import tempfile
from datetime import date
from decimal import ROUND_FLOOR, Decimal
from fractions import Fraction

sys.dont_write_bytecode = True
import chain  # noqa: E402
import make_random  # noqa: E402
import reckon  # noqa: E402

PATIENCE = 300      # seconds for one run of the program
TOLD = 6            # differences shown for one check
TRIES = "12"        # plans and trials of a forecast
ORDERED = {"dates": (), "roles": (), "costumes": (), "pieces": (), "steps": ("piece",), "needs": ("piece", "step"),
           "fittings": ("piece", "step"), "orders": ("material",), "works": (), "work_steps": (),
           "equipment": (),
           "notes": ()}  # rows whose order must last, among those alike in these
MICROMETRES = {"mm": 1000, "cm": 10_000, "m": 1_000_000, "in": 25_400, "yd": 914_400}


class Trouble(Exception):
    """The program did not do what it was asked."""


class Program:
    """The program, with a home of its own and nothing of the caller's settings."""

    def __init__(self, path, home):
        self.path = os.path.abspath(path)
        self.surroundings = {name: value for name, value in os.environ.items() if not name.startswith(("BODKIN_", "XDG_"))}
        self.surroundings.update(HOME=home, LC_ALL="C.UTF-8")

    def run(self, *words):
        done = subprocess.run([self.path, *words], env=self.surroundings, stdin=subprocess.DEVNULL, capture_output=True,
                              timeout=PATIENCE, check=False)
        if done.returncode != 0:
            said = done.stderr.decode("utf-8", "replace").strip()
            raise Trouble(f"{' '.join(words)}: exit status {done.returncode}: {said[:1500]}")
        return done.stdout

    def rail(self, store, name, today):
        text = self.run("--store", store, "--production", name, "--today", today, "--tries", TRIES, "rail", "--json")
        return json.loads(text.decode("utf-8"), parse_float=Decimal)


# ---------------------------------------------------------------------------------------------------------------- differences

def shown(value):
    text = reckon.to_json(value)
    return text if len(text) <= 200 else text[:200] + "..."


def differences(got, wanted, place="rail"):
    """Where two JSON values differ, one line each; the order of keys does not matter, that of lists does."""
    if isinstance(got, dict) and isinstance(wanted, dict):
        for key in [*wanted, *(key for key in got if key not in wanted)]:
            if key not in got or key not in wanted:
                yield f"{place}.{key}: {'missing' if key in wanted else 'not expected'}"
            else:
                yield from differences(got[key], wanted[key], f"{place}.{key}")
    elif isinstance(got, list) and isinstance(wanted, list):
        if len(got) != len(wanted):
            yield f"{place}: {len(got)} items, expected {len(wanted)}: {shown(got)}, expected {shown(wanted)}"
            return
        for index, pair in enumerate(zip(got, wanted)):
            yield from differences(*pair, f"{place}[{index}]")
    elif got != wanted or is_number(got) != is_number(wanted):
        yield f"{place}: {shown(got)}, expected {shown(wanted)}"


def is_number(value):
    return isinstance(value, (int, Decimal)) and not isinstance(value, bool)


def bytes_of(folder):
    found = {}
    for name in sorted(os.listdir(folder)):
        with open(os.path.join(folder, name), "rb") as file:
            found[name] = file.read()
    return found


def byte_differences(first, second):
    """Where two exported folders differ, one line a file."""
    for name in sorted(set(first) | set(second)):
        if name not in first or name not in second:
            yield f"{name}: only in the {'first' if name in first else 'second'} export"
        elif first[name] != second[name]:
            before, after = first[name].splitlines(True), second[name].splitlines(True)
            line = next((number for number, pair in enumerate(zip(before, after)) if pair[0] != pair[1]),
                        min(len(before), len(after)))
            yield f"{name}:{line + 1}: {before[line:line + 1]} became {after[line:line + 1]}"


# -------------------------------------------------------------------------------------------------- what the export must hold

def micrometres(cell):
    """A length as whole micrometres, rounded half up."""
    words = cell.split()
    length = sum(map(Fraction, words[:-1])) * MICROMETRES[words[-1]]
    return int((Decimal(length.numerator) / Decimal(length.denominator) + Decimal("0.5")).to_integral_value(ROUND_FLOOR))


def same_step(row, name):
    """A step named in `after`, without its piece where that is the step's own."""
    piece, slash, key = name.rpartition("/")
    return key if slash and piece == row["piece"] else name


def plain(sheet, row):
    """A row in which what may be written in several ways is written in one; a default counts as written."""
    plain_row = dict(row)
    for column, read in (("value", micrometres), ("width", micrometres), ("quantity", Decimal), ("price", Decimal),
                         ("cost", Decimal), ("on_hand", Decimal)):
        if row.get(column):
            plain_row[column] = str(read(row[column]).normalize() if read is Decimal else read(row[column]))
    for column in ("skills", "cover", "costumes", "measures"):
        if row.get(column):
            plain_row[column] = ";".join(sorted(reckon.listed(row[column])))    # lists whose order says nothing
    if sheet == "production":
        plain_row.update(measures_good_for=row["measures_good_for"] or "180", sheets="1", unit=row["unit"] or "cm")
    if sheet == "steps":
        plain_row.update(hands=row["hands"] or "1", level=row["level"] or ("2" if row["kind"] == "hand" else "3"),
                         after=";".join(same_step(row, name) for name in reckon.listed(row["after"])))
    if sheet == "fittings":
        del plain_row["performer"]          # a default may be written out
    if sheet == "away":
        del plain_row["reason"]             # the same days may have been told twice
    if sheet == "measures":
        del plain_row["over"], plain_row["taken_by"]    # of two productions, either may hold
    return tuple(f"{column}={cell}" for column, cell in plain_row.items() if cell)


def expected_rows(room, production):
    """The rows that the export of a production must hold, whatever their order."""
    rows = dict(production.sheets)
    company = {row["performer"] for row in rows["performers"]}
    rows["performers"] = [row for name, row in room.performers.items() if name in company]
    rows["measures"] = [row for (name, _, _), row in room.measures.items() if name in company]
    rows["people"] = list(room.people.values())
    rows["away"] = [row for row in room.away if row["who"] in company or row["who"] in room.people]
    rows["equipment"] = list(room.equipment.values())
    rows["orders"] = room.orders
    rows["works"] = list(room.works.values())
    rows["work_steps"] = [row for work in room.works for row in room.work_steps.get(work, [])]
    rows["materials"] = []
    for name, row in room.materials.items():
        on_hand = room.shelf.get(name)
        rows["materials"].append({**row, "on_hand": "" if on_hand is None else make_random.number(on_hand)})
    return rows


def in_order(sheet, rows):
    """The rows of a sheet, sorted only as far as their order does not matter."""
    return sorted(rows, key=lambda row: [row[column] for column in ORDERED.get(sheet, ())])


def lost(room, production, exported):
    """What an exported folder lacks, has too much or holds in another order, one line a row."""
    wanted, got = expected_rows(room, production), reckon.read_folder(exported)
    for sheet in reckon.SHEETS:
        before = [plain(sheet, row) for row in in_order(sheet, wanted[sheet])]
        after = [plain(sheet, row) for row in in_order(sheet, got[sheet])]
        if sheet in ORDERED and before != after and sorted(before) == sorted(after):
            row = next(pair[1] for pair in zip(before, after) if pair[0] != pair[1])
            yield f"{sheet}.csv has in another place {', '.join(row)}"
        if sheet == "away":
            before, after = list(set(before)), list(set(after))
        for row in list(after):
            if row in before:
                before.remove(row)
                after.remove(row)
        yield from (f"{sheet}.csv lacks {', '.join(row)}" for row in sorted(before))
        yield from (f"{sheet}.csv has {', '.join(row)}" for row in sorted(after))


# ----------------------------------------------------------------------------------------------------------------- comparing

def without_days(rail):
    """A rail as the reckoning tells it: nothing of days and odds, the costumes by due day and number."""
    costumes = []
    for costume in sorted(rail["costumes"], key=lambda told: (told["due"], reckon.natural(told["costume"]))):
        bare = {**costume, "finish": None, "days_in_hand": None, "chance": None,
                "waits": [{**wait, "wanted_by": None} for wait in costume["waits"]]}
        del bare["chance_error"]
        costumes.append(bare)
    return {**rail, "costumes": costumes}


def working_days(room, first, last):
    """Days after `first` up to `last` on which anybody of the workroom has hours."""
    days = [date.fromisoformat(first) + reckon.DAY * number
            for number in range(1, (date.fromisoformat(last) - date.fromisoformat(first)).days + 1)]
    return sum(any(works(room, person, day) for person in room.people.values()) for day in days)


def works(room, person, day):
    written = day.isoformat()
    return bool((person["from"] or written) <= written <= (person["until"] or written)
                and person[reckon.WEEK[day.weekday()]] and not room.is_away(person["person"], written))


def urgency(costume):
    """The most urgent first: never done, then what has days, what has none known, what is ready."""
    if costume["state"] == "ready":
        return 3, 0, 0, costume["due"], reckon.natural(costume["costume"])
    if costume["days_in_hand"] is None:
        never = costume["finish"] is None and costume["chance"] is not None
        chance = costume["chance"] if never else 0
        return 0 if never else 2, 0, chance, costume["due"], reckon.natural(costume["costume"])
    return 1, costume["days_in_hand"], costume["chance"], costume["due"], reckon.natural(costume["costume"])


def all_can_wait(production, number):
    """Whether nothing is out of a costume, and all open steps can wait until after the opening: that makes nothing late."""
    pieces = production.worn_with(number)
    return (not any(piece.out for piece in pieces)
            and all(step.done or step.row["can_wait"] for piece in pieces for step in piece.steps))


def day_troubles(room, rail):
    """What is wrong with the days and odds of a rail, whatever the plan, a line each."""
    if sorted(rail["costumes"], key=urgency) != rail["costumes"]:
        yield "order: " + " ".join(costume["costume"] for costume in rail["costumes"])
    production = room.production(rail["production"], rail["today"])
    for costume in rail["costumes"]:
        name, finish, due = costume["costume"], costume["finish"], costume["due"]
        ahead = costume["steps"] > costume["steps_done"]
        if finish and ahead and finish < rail["today"]:
            yield f"{name}: finish {finish} is past"
        if finish and ahead:
            hand = working_days(room, finish, due) if finish <= due else -working_days(room, due, finish)
            hand = max(0, hand) if all_can_wait(production, name) else hand
            if costume["days_in_hand"] != hand:
                yield f"{name}: days_in_hand {costume['days_in_hand']}, expected {hand} from {finish} to {due}"
        if finish is None and costume["days_in_hand"] is not None:
            yield f"{name}: days_in_hand without finish"
        if costume["chance"] is not None and not 0 <= costume["chance"] <= 1:
            yield f"{name}: chance {costume['chance']}"
        if (costume["chance"] is None) != (costume["chance_error"] is None):
            yield f"{name}: chance_error {costume['chance_error']}"
        yield from (f"{name}: wanted_by {wait['wanted_by']} is after {due}" for wait in costume["waits"]
                    if (wait["wanted_by"] or due) > due)


def check_chain(program, seed, scratch):
    """What is wrong with the forecast of the plain workroom of a seed."""
    known, folder, store = chain.Chain(seed), os.path.join(scratch, "chain"), os.path.join(scratch, "chain.db")
    known.write(folder)
    program.run("--store", store, "import", folder)
    return list(chain.troubles(known, program.rail(store, "Plain", chain.TODAY.isoformat())))


def size_of(seed):
    """How many productions a seed makes, and how large."""
    return 1 + seed % 3, 2 + seed * 7 % 9


def check_production(program, room, store, name, today, scratch):
    """The troubles of one production, as (check, lines)."""
    production = room.production(name, today)
    told = program.rail(store, name, today)
    yield "rail", list(differences(without_days(told), reckon.rail(room, name, today)))
    yield "days", list(day_troubles(room, told))
    once, twice, alone = (os.path.join(scratch, word) for word in ("once", "twice", "alone.db"))
    program.run("--store", store, "--production", name, "export", once)
    yield "kept", list(lost(room, production, once))
    program.run("--store", alone, "import", once)
    room_alone = reckon.workroom_of([once])
    yield "alone", list(differences(without_days(program.rail(alone, name, today)), reckon.rail(room_alone, name, today)))
    program.run("--store", alone, "--production", name, "export", twice)
    yield "bytes", list(byte_differences(bytes_of(once), bytes_of(twice)))


def check_seed(path, seed):
    """All that is wrong for one seed, as lines of text."""
    troubles = []
    with tempfile.TemporaryDirectory(prefix="bodkin-outside-") as scratch:
        program = Program(path, scratch)
        store = os.path.join(scratch, "workroom.db")
        folders, today = make_random.make(seed, scratch, *size_of(seed))
        room = reckon.workroom_of(folders)
        place = "import"
        try:
            for folder in folders:
                program.run("--store", store, "import", folder)
            for number, production in enumerate(room.productions):
                place = f"{production.name} (folder {number + 1})"
                own = os.path.join(scratch, f"of-{number + 1}")
                os.mkdir(own)
                for check, lines in check_production(program, room, store, production.name, today, own):
                    troubles += [f"{place}: {check}: {line}" for line in lines[:TOLD]]
                    troubles += [f"{place}: {check}: and {len(lines) - TOLD} more"] if len(lines) > TOLD else []
            place = "chain"
            troubles += [f"{place}: {line}" for line in check_chain(program, seed, scratch)]
        except Exception as trouble:  # whatever goes wrong here, in an export that cannot be read too, fails the seed
            troubles.append(f"{place}: {type(trouble).__name__}: {trouble}")
    return [re.sub(r"\S*bodkin-outside-[^/\s]*", "TMP", line.replace("\r", "\\r").replace("\n", "\\n"))
            for line in troubles]


def main():
    parser = argparse.ArgumentParser(description="Hold the program against the reckoning.")
    parser.add_argument("bodkin")
    parser.add_argument("count", nargs="?", type=int, default=50)
    parser.add_argument("first_seed", nargs="?", type=int, default=1)
    given = parser.parse_args()
    sys.stdout.reconfigure(encoding="utf-8", errors="backslashreplace")
    passed = failed = 0
    for seed in range(given.first_seed, given.first_seed + given.count):
        troubles = check_seed(given.bodkin, seed)
        passed, failed = passed + (not troubles), failed + bool(troubles)
        if troubles:
            productions, size = size_of(seed)
            print(f"seed {seed} failed (make_random.py {seed} DIR --productions {productions} --size {size})")
            print("".join(f"    {line}\n" for line in troubles), end="", flush=True)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
