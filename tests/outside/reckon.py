#!/usr/bin/env python3
"""Reckon the rail of a production from its sheets, apart from the program.

    reckon.py --today YYYY-MM-DD [--production NAME] DIR [DIR...]

Each DIR is a production as a folder of sheets (see bodkin.5). They are taken into one workroom in the order given, and the
object that `bodkin rail --json` must print for one of them is printed. Nothing here is shared with the program: it was
written from the rules alone, so that the two can be held against each other. The sheets are taken to be faultless.

Days are ISO text, which sorts as days do; quantities are whole millionths of the material's unit.
"""
import argparse
import csv
import json
import os
import re
import sys
from datetime import date, timedelta
from decimal import Decimal

MILLION = 1_000_000
DAY = timedelta(days=1)
WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
STATES = ("ready", "in-work", "finishing", "waiting", "held", "unlisted")
WAITS = ("measures", "materials", "fitting", "hand", "people", "out", "order")
NO_DAY = "9999-99-99"  # sorts after every day

# The columns of every sheet; `*` marks those that may not be left out.
SHEETS = {
    "production": "production* opens* currency unit measures_good_for sheets",
    "dates": "what* on* at note",
    "people": "person* skills mon tue wed thu fri sat sun from until note",
    "away": "who* from* to* reason",
    "equipment": "equipment* kinds* count",
    "performers": "performer* contact measures_good_for note",
    "measures": "performer* taken_on* measure* value* over taken_by",
    "roles": "role* performer cover note",
    "costumes": "costume* role* title* due note",
    "pieces": "piece* costumes* title* origin place out_with out_since back_by from cost due_back returned_on note",
    "steps": "piece* step* title* kind* minutes* quickest longest after hands level rest can_wait measures note "
             "done_on done_by took",
    "materials": "material* unit* on_hand width supplier price note",
    "needs": "piece* step* material* quantity*",
    "orders": "material* quantity* ordered_on* due_on arrived_on from cost",
    "fittings": "piece* step* booked_at* performer minutes held_on outcome note",
    "works": "work* note",
    "work_steps": "work* step* title* kind* minutes* quickest longest after hands level rest can_wait measures note",
    "notes": "noted_on* from who costume piece step what* done_on",
}


def columns(sheet):
    """The columns of a sheet as (name, may not be left out), in the order of the manual."""
    return [(word.rstrip("*"), word.endswith("*")) for word in SHEETS[sheet].split()]


# ---------------------------------------------------------------------------------------------------------------- reading

def unguarded(cell):
    """A cell without the `'` that keeps a spreadsheet from taking it for a formula."""
    return cell[1:] if re.match(r"'+[=+\-@]", cell) else cell


def read_sheet(path):
    """The rows of one CSV file, each a dictionary of its filled-in header."""
    csv.field_size_limit(1 << 30)
    with open(path, encoding="utf-8-sig", newline="") as lines:
        records = [record for record in csv.reader(lines, strict=True) if record]
    header = records[0]
    return [dict(zip(header, map(unguarded, record))) for record in records[1:]]


def read_folder(folder):
    """All sheets of a folder by name; a sheet or column that is not there reads as empty."""
    sheets = {}
    for name in SHEETS:
        path = os.path.join(folder, name + ".csv")
        rows = read_sheet(path) if os.path.exists(path) else []
        sheets[name] = [{column: row.get(column, "") for column, _ in columns(name)} for row in rows]
    return sheets


def listed(cell):
    """The items of a list cell."""
    return cell.split(";") if cell else []


def millionths(cell):
    """A quantity of material as whole millionths; an empty cell is none."""
    return int(Decimal(cell or "0") * MILLION)


def natural(text):
    """A sorting key in which runs of digits count as numbers: 2A before 10A."""
    runs = re.findall(r"[0-9]+|[^0-9]", text)
    return [(ord("0"), int(run)) if run[0] in "0123456789" else (ord(run), 0) for run in runs], text


# --------------------------------------------------------------------------------------------------------------- workroom

class Workroom:
    """What all productions share: performers, measures, people, absences, equipment, materials, orders, orders of work."""

    def __init__(self):
        self.performers, self.people, self.materials = {}, {}, {}
        self.measures = {}     # (performer, day, measure) to row
        self.shelf = {}        # material to millionths, may be below zero
        self.away, self.orders, self.productions = [], [], []
        self.equipment = {}    # name to row
        self.works = {}        # own orders of work: name to row
        self.work_steps = {}   # name to the list of its steps

    def take_in(self, sheets):
        """Import one folder: what is known by name stays the same, and its filled cells replace."""
        for row in sheets["performers"]:
            merge(self.performers, row["performer"], row)
        for row in sheets["measures"]:
            merge(self.measures, (row["performer"], row["taken_on"], row["measure"]), row)
        for row in sheets["people"]:
            merge(self.people, row["person"], row)
        self.away += sheets["away"]
        for row in sheets["equipment"]:
            merge(self.equipment, row["equipment"], row)
        counted = set()
        for row in sheets["materials"]:
            merge(self.materials, row["material"], row)
            if row["on_hand"]:
                counted.add(row["material"])
                self.shelf[row["material"]] = millionths(row["on_hand"])
        self.take_in_orders(sheets["orders"], counted)
        self.take_in_works(sheets)
        self.productions.append(Production(sheets))

    def take_in_orders(self, rows, counted):
        """Each row is a known order of the same material, quantity and day that no row before it was, else a new one.

        A known order that arrives by this is laid on the shelf, unless the folder itself counted that material.
        """
        unmatched = list(self.orders)
        for row in rows:
            known = next((order for order in unmatched if same_order(order, row)), None)
            if known is None:
                self.orders.append(dict(row))
                continue
            unmatched = [order for order in unmatched if order is not known]
            if row["arrived_on"] and not known["arrived_on"] and row["material"] not in counted:
                self.shelf[row["material"]] = self.shelf.get(row["material"], 0) + millionths(row["quantity"])
            known.update((column, cell) for column, cell in row.items() if cell)

    def take_in_works(self, sheets):
        """An order of work whose steps a folder gives has these and no others from then on."""
        for row in sheets["works"]:
            merge(self.works, row["work"], row)
        for work in {row["work"]: None for row in sheets["work_steps"]}:
            self.work_steps[work] = [row for row in sheets["work_steps"] if row["work"] == work]

    def production(self, name, today):
        """The production of that name; without one: the only one, else the next to open, else the latest."""
        if name is not None:
            return next(production for production in self.productions if production.name == name)
        coming = [production for production in self.productions if production.opens >= today]
        if coming:
            return min(coming, key=lambda production: production.opens)
        return max(self.productions, key=lambda production: production.opens)

    def is_away(self, name, day):
        return any(row["who"] == name and row["from"] <= day <= row["to"] for row in self.away)

    def newest(self, performer, measure=None):
        """The latest day that performer was measured (that one measure of theirs), or None."""
        return max((day for who, day, what in self.measures
                    if who == performer and measure in (None, what)), default=None)


def merge(known, key, row):
    """Add a row, or replace the cells of the known one by those that are filled."""
    known.setdefault(key, dict.fromkeys(row, "")).update((column, cell) for column, cell in row.items() if cell)


def same_order(order, row):
    return (order["material"] == row["material"] and order["ordered_on"] == row["ordered_on"]
            and millionths(order["quantity"]) == millionths(row["quantity"]))


# -------------------------------------------------------------------------------------------------------------- production

class Piece:
    """One row of pieces.csv, with its steps in the order of steps.csv."""

    def __init__(self, row):
        self.row, self.key, self.costumes = row, row["piece"], listed(row["costumes"])
        self.out = row["out_with"] != ""
        self.steps, self.fittings, self.due = [], [], None

    def lowest_costume(self):
        return min(map(natural, self.costumes))


class Step:
    """One row of steps.csv; `place` is its row's number, `needs` its materials in the order of needs.csv."""

    def __init__(self, piece, row, place):
        self.piece, self.row, self.place = piece, row, place
        self.key, self.kind, self.minutes = row["step"], row["kind"], int(row["minutes"])
        self.needs, self.fittings = [], []
        self.after = []        # steps, in the order written

    @property
    def done(self):
        return self.row["done_on"] != "" or any(fitting["outcome"] == "fits" for fitting in self.fittings)

    @property
    def next(self):
        return not self.done and all(before.done for before in self.after)

    def name(self):
        return self.piece.key + "/" + self.key


class Production:
    """The rows of one folder that belong to the production, tied together."""

    def __init__(self, sheets):
        head = sheets["production"][0]
        self.sheets, self.name, self.opens = sheets, head["production"], head["opens"]
        self.good_for = int(head["measures_good_for"] or 180)
        self.player = {row["role"]: row["performer"] for row in sheets["roles"]}
        self.costumes = sheets["costumes"]
        first_worn = min([self.opens] + [row["on"] for row in sheets["dates"] if row["what"] in ("parade", "dress")])
        self.due = {row["costume"]: row["due"] or first_worn for row in self.costumes}
        self.role = {row["costume"]: row["role"] for row in self.costumes}
        self.pieces = {row["piece"]: Piece(row) for row in sheets["pieces"]}
        for piece in self.pieces.values():
            piece.due = min(self.due[costume] for costume in piece.costumes)
        self.tie_steps(sheets)

    def tie_steps(self, sheets):
        steps = {}
        for place, row in enumerate(sheets["steps"]):
            step = Step(self.pieces[row["piece"]], row, place)
            step.piece.steps.append(step)
            steps[row["piece"], row["step"]] = step
        for step in steps.values():
            for name in listed(step.row["after"]):
                piece, slash, key = name.rpartition("/")
                step.after.append(steps[piece if slash else step.piece.key, key])
        for row in sheets["needs"]:
            steps[row["piece"], row["step"]].needs.append((row["material"], millionths(row["quantity"])))
        for row in sheets["fittings"]:
            step = steps[row["piece"], row["step"]]
            step.fittings.append(row)
            step.piece.fittings.append(row)
        self.steps = list(steps.values())

    def worn_with(self, costume):
        """The pieces of a costume, in the order of pieces.csv."""
        return [piece for piece in self.pieces.values() if costume in piece.costumes]


# ------------------------------------------------------------------------------------------------------------------- waits

class Wait:
    """One thing waited on; `act` when somebody must act."""

    def __init__(self, on, piece, step, detail, act, material=None, short=0):
        self.on, self.piece, self.step, self.detail, self.act = on, piece, step, detail, act
        self.material, self.short = material, short

    def as_object(self):
        told = {"on": self.on, "piece": self.piece.key, "step": self.step.key if self.step else None,
                "detail": self.detail, "wanted_by": None}
        if self.on == "materials":
            told["material"] = self.material
            told["short"] = Decimal(self.short) / MILLION
        return told


class Reckoning:
    """The waits of all steps of a workroom on one day."""

    def __init__(self, room, today):
        self.room, self.today = room, today
        self.shortages = share_out(room, today)

    def step_waits(self, production, step):
        """What a next step waits on, without its piece being out."""
        found = [self.on_measures(production, step)]
        found += self.shortages.get(step, [])
        found += [self.on_fitting(step), self.on_hand_sewing(step), self.on_people(step)]
        return [wait for wait in found if wait is not None]

    def on_measures(self, production, step):
        measures = listed(step.row["measures"])
        cut_to_body = step.kind in ("draft", "cut") and step.piece.row["origin"] in ("make", "alter")
        if not (measures or cut_to_body) or any(fitting["held_on"] for fitting in step.piece.fittings):
            return None
        wearers = [production.player[production.role[costume]] for costume in step.piece.costumes]
        tests = (
            ("uncast", lambda who: who == ""),
            ("none", lambda who: self.room.newest(who) is None),
            ("part", lambda who: any(self.room.newest(who, measure) is None for measure in measures)),
            ("old", lambda who: self.measures_old(production, who, measures)),
        )
        for detail, fails in tests:
            if any(fails(who) for who in wearers):
                return Wait("measures", step.piece, step, detail, True)
        return None

    def measures_old(self, production, who, measures):
        limit = int(self.room.performers[who]["measures_good_for"] or production.good_for)
        taken = [self.room.newest(who, measure) for measure in measures] or [self.room.newest(who)]
        today = date.fromisoformat(self.today)
        return any((today - date.fromisoformat(day)).days > limit for day in taken)

    def on_fitting(self, step):
        if step.kind != "fit":
            return None
        newest = None
        for fitting in step.fittings:  # the bare day is a prefix of its times, so text sorts as the rule asks
            if newest is None or fitting["booked_at"] >= newest["booked_at"]:
                newest = fitting
        if newest is None or newest["outcome"] == "again":
            return Wait("fitting", step.piece, step, "unbooked", True)
        day = newest["booked_at"][:len("YYYY-MM-DD")]
        if newest["outcome"] == "missed" or day < self.today:
            return Wait("fitting", step.piece, step, "missed", True)
        return Wait("fitting", step.piece, step, "booked " + day, False)

    def on_hand_sewing(self, step):
        return Wait("hand", step.piece, step, "open", False) if step.kind == "hand" else None

    def on_people(self, step):
        if not self.room.people:
            return None
        if any(self.has_hours(person, step.piece.due) for person in self.room.people.values()
               if step.kind in listed(person["skills"])):
            return None
        return Wait("people", step.piece, step, "nobody", True)

    def has_hours(self, person, until):
        """Whether a person is there for any hours from today to a day, both included."""
        day, last = date.fromisoformat(self.today), date.fromisoformat(until)
        while day <= last:
            written = day.isoformat()
            in_term = (person["from"] or written) <= written <= (person["until"] or written)
            if in_term and person[WEEK[day.weekday()]] and not self.room.is_away(person["person"], written):
                return True
            day += DAY
        return False

    def on_return(self, piece):
        if not piece.out:
            return None
        back = piece.row["back_by"]
        if not back:
            return Wait("out", piece, None, "no date", True)
        if back < self.today:
            return Wait("out", piece, None, "overdue", True)
        return Wait("out", piece, None, "back " + back, False)


def on_order(step, pieces):
    """What an open step that is not next waits on outside the pieces of a costume."""
    before = [other for other in step.after if not other.done]
    if any(other.piece in pieces for other in before):
        return None
    return Wait("order", step.piece, step, ";".join(other.name() for other in before), False)


# ------------------------------------------------------------------------------------------------------------------ sharing

def share_out(room, today):
    """The shortages of every open step, from the shelf and then from the orders, most urgent step first."""
    queue = [(urgency(production, step), step) for production in room.productions
             for step in production.steps if not step.done]
    queue = [step for _, step in sorted(queue, key=lambda pair: pair[0])]
    shelf = {material: max(0, room.shelf.get(material, 0)) for material in room.materials}
    orders = {material: coming(room, material) for material in room.materials}
    lacking = []
    for step in queue:
        for material, needed in step.needs:
            taken = min(needed, shelf[material])
            shelf[material] -= taken
            if taken < needed:
                lacking.append((step, material, needed - taken))
    shortages = {}
    for step, material, short in lacking:
        detail, act = draw(orders[material], short, today)
        shortages.setdefault(step, []).append(Wait("materials", step.piece, step, detail, act, material, short))
    return shortages


def urgency(production, step):
    return (step.piece.due, production.opens, production.name, step.piece.lowest_costume(), natural(step.piece.key),
            step.place)


def coming(room, material):
    """The orders of a material not arrived, as [due day, what is left of it], earliest due first."""
    open_orders = [[order["due_on"] or NO_DAY, millionths(order["quantity"])] for order in room.orders
                   if order["material"] == material and not order["arrived_on"]]
    return sorted(open_orders, key=lambda order: order[0])


def draw(orders, short, today):
    """Take a shortage from the orders; the detail it leaves and whether somebody must act."""
    due = None
    for order in orders:
        if short:
            taken = min(short, order[1])
            short, order[1], due = short - taken, order[1] - taken, order[0]
    if short:
        return "not ordered", True
    if due == NO_DAY:
        return "no date", True
    if due < today:
        return "late", True
    return "due " + due, False


# ------------------------------------------------------------------------------------------------------------------ the rail

def costume_waits(reckoning, production, pieces):
    """All waits of a costume in the order told, and for each of its next steps the set of what it waits on."""
    told, held_back = [], []
    for piece in pieces:
        back = reckoning.on_return(piece)
        told += [back] if back else []
        for step in piece.steps:
            if step.next:
                waits = reckoning.step_waits(production, step)
                told += waits
                held_back.append({wait.on for wait in waits} | ({"out"} if back else set()))
            elif not step.done:
                told += filter(None, [on_order(step, pieces)])
    return told, held_back


def state_of(pieces, waits, held_back):
    """The state of a costume, the first that is true."""
    any_open = any(not step.done for piece in pieces for step in piece.steps)
    if not pieces or (not any_open and any(not piece.steps for piece in pieces)):
        return "unlisted"
    must_act = any(wait.act for wait in waits)
    if not any_open:
        if not any(piece.out for piece in pieces):
            return "ready"
        return "held" if must_act else "waiting"
    if set() in held_back:
        return "in-work"
    if held_back and all(on == {"hand"} for on in held_back):
        return "finishing"
    return "held" if must_act else "waiting"


def can_go_on(pieces):
    return bool(pieces) and all(
        piece.steps and not piece.out and all(step.done or step.row["can_wait"] for step in piece.steps)
        for piece in pieces)


def costume_object(reckoning, production, row):
    pieces = production.worn_with(row["costume"])
    steps = [step for piece in pieces for step in piece.steps]
    waits, held_back = costume_waits(reckoning, production, pieces)
    return {
        "costume": row["costume"], "role": row["role"], "performer": production.player[row["role"]] or None,
        "title": row["title"], "state": state_of(pieces, waits, held_back), "can_go_on": can_go_on(pieces),
        "due": production.due[row["costume"]], "steps": len(steps), "steps_done": sum(step.done for step in steps),
        "minutes_left": sum(step.minutes for step in steps if not step.done),
        "finish": None, "days_in_hand": None, "chance": None, "waits": [wait.as_object() for wait in waits],
    }


def counts_of(costumes):
    counts = {"costumes": len(costumes)}
    for state in STATES:
        counts[state] = sum(costume["state"] == state for costume in costumes)
    counts["can_go_on"] = sum(costume["can_go_on"] for costume in costumes)
    counts["waits"] = {on: sum(any(wait["on"] == on for wait in costume["waits"]) for costume in costumes)
                       for on in WAITS}
    return counts


def rail(room, name, today):
    """The object of `bodkin rail --json` for one production of a workroom."""
    production = room.production(name, today)
    reckoning = Reckoning(room, today)
    rows = sorted(production.costumes, key=lambda row: (production.due[row["costume"]], natural(row["costume"])))
    costumes = [costume_object(reckoning, production, row) for row in rows]
    return {
        "production": production.name, "today": today, "opens": production.opens,
        "days_left": (date.fromisoformat(production.opens) - date.fromisoformat(today)).days,
        "minutes_left": sum(step.minutes for step in production.steps if not step.done),
        "counts": counts_of(costumes), "costumes": costumes,
    }


def workroom_of(folders):
    """A workroom into which these folders were imported in this order."""
    room = Workroom()
    for folder in folders:
        room.take_in(read_folder(folder))
    return room


def to_json(value):
    """JSON text in which a quantity is a plain number, without exponent or trailing zeros."""
    if isinstance(value, dict):
        return "{" + ", ".join(json.dumps(key) + ": " + to_json(held) for key, held in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(to_json, value)) + "]"
    if isinstance(value, Decimal):
        return f"{value.normalize():f}"
    return json.dumps(value, ensure_ascii=False)


def main():
    parser = argparse.ArgumentParser(description="Reckon the rail of a production from folders of sheets.")
    parser.add_argument("--today", required=True, metavar="YYYY-MM-DD")
    parser.add_argument("--production", metavar="NAME")
    parser.add_argument("folders", nargs="+", metavar="DIR")
    given = parser.parse_args()
    for folder in given.folders:
        if not os.path.exists(os.path.join(folder, "production.csv")):
            parser.error(f"{folder} holds no production.csv")
    room = workroom_of(given.folders)
    if given.production not in (None, *(production.name for production in room.productions)):
        parser.error(f"no production is named {given.production}")
    sys.stdout.reconfigure(encoding="utf-8")
    print(to_json(rail(room, given.production, given.today)))


if __name__ == "__main__":
    main()
