#!/usr/bin/env python3
"""Write faultless productions, drawn at random, that press on every rule of the rail.

    make_random.py SEED OUTDIR [--productions N] [--size S]

writes the folders OUTDIR/1, OUTDIR/2 ... for import in that order into one workroom, and the file OUTDIR/today, which holds
the day to reckon for.  S is about the number of costumes in each.  The same seed writes the same folders.

Days cluster round today and quantities come from short lists, so that ties, exact fits and limits met to the day are common.
Every invented name below stands for nobody.
"""
import argparse
import os
import random
import re
from datetime import date, timedelta

from reckon import MILLION, SHEETS, columns

KINDS = ("source", "draft", "cut", "tack", "machine", "press", "fit", "hand", "craft", "dye")
ORIGINS = ("make", "alter", "buy", "hire", "borrow", "stock", "")
DATE_KINDS = ("measuring", "fittings", "photo", "parade", "tech", "dress", "preview", "opening", "performance", "closing",
              "strike", "return")
WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
NUMBERS = {"on_hand", "quantity", "price", "cost"}  # never guarded: a minus sign here is arithmetic

PERFORMERS = ("Tamsin Wick", "Oona Brill, the younger", 'Barto "Bat" Quell', "Дарина Лозовик", "梅小舟", "Ægir Thorn",
              "שירה אלמגור", "ليان القمري", "Zoë Ñandell", "-Pip-", "@Jory", "O'Dell Marn", "Ame\u0301lie Vard", "=Sum")
HELPERS = ("Ida Loom", "Fenn, retired", "Богдана Нить", "Wilm \"Pins\" Oster", "+Lark", "Tamsin Wick", "Дарина Лозовик")
ROLES = ("Cook", "2nd Cook", "Erste Nymphe", "Ζέφυρος", "=Equal", "Ghost, of the well", "'Tis", "Page \"Left\"", "雨の子",
         "-shadow-", "10th Guard", "Miller's Wife")
PRODUCTIONS = ("Harbour 2", "Harbour 10", "The Salt Road", "Zwölf Laternen", "Лунный причал", "雨の子の庭", "=Nought, or Nothing")
MATERIALS = (("wool flannel", "m"), ("bone, 7 mm", "yd"), ("hooks \"size 2\"", "each"), ("лента", "m"), ("=elastic", "m"),
             ("buttons", "each"), ("silk", "yd"))
EQUIPMENT = ("cutting table", "=machine", "машинка, 2", "Dampf \"Tisch\"", "dye room")
WORKS = ("Smock", "Ruff, small", "=Cape", "Bluse \"weit\"", "Кафтан", "Apron", "Circle skirt")
READY_WORKS = ("Apron", "Circle skirt")  # of these the program brings its own, which the first to come replaces
NOTE_SOURCES = ("rehearsal", "fitting", "parade", "tech", "dress", "preview", "show", "workroom", "")
MEASURES = {"waist girth": (60, 110), "hip girth": (80, 120), "bust girth": (75, 120), "nape to waist": (36, 48),
            "inside leg": (65, 90), "head girth": (52, 62), "tail length": (20, 90), "длина рукава, согнув": (50, 70)}
WORDS = ("coat", "red", "the old", "Ärmel", "плащ", "裏地", "\"good\"", "1,5", "hem; turn", "and/or", "עליון", "قبعة",
         "e\u0301toile", "50%", "it's", "🪡", "half-mask", "2 x 3")
STARTS = ("=", "+", "-", "@", "'=", "'+", "'-", "'@", "'", "=1+1 ")
AMOUNTS = {"m": (1, 250_000, 333_333, 500_000, MILLION, 1_500_000, 2 * MILLION, 2_400_000),
           "yd": (125_000, 500_000, MILLION, 1_250_000, 3 * MILLION), "each": (MILLION, 2 * MILLION, 6 * MILLION)}


def number(millionths):
    """A quantity as a plain number with no more decimals than it needs."""
    sign, whole, part = "-" if millionths < 0 else "", *divmod(abs(millionths), MILLION)
    return sign + f"{whole}.{part:06d}".rstrip("0").rstrip(".")


class Dice:
    """Chance with the day it turns on."""

    def __init__(self, seed):
        self.random = random.Random(seed)
        self.today = date(2026, 1, 1) + timedelta(days=self.random.randrange(3000))

    def chance(self, share):
        return self.random.random() < share

    def pick(self, among):
        return self.random.choice(list(among))

    def some(self, among, least, most):
        """Some of these, in a random order."""
        among = list(among)
        return self.random.sample(among, min(len(among), self.random.randint(least, most)))

    def whole(self, least, most):
        return self.random.randint(least, most)

    def day(self, *offsets):
        """One of these days, counted from today; None is no day."""
        offset = self.pick(offsets)
        return "" if offset is None else (self.today + timedelta(days=offset)).isoformat()

    def text(self, lines=True):
        """A text that a careless reader or writer of sheets would spoil."""
        said = self.pick((" ", ", ", " \"", " - ")).join(self.pick(WORDS) for _ in range(self.whole(1, 3)))
        if self.chance(0.15):
            said = self.pick(STARTS) + said
        if lines and self.chance(0.08):
            said += self.pick(("\n", "\r\n", "\n\n")) + self.pick(WORDS)
        return said

    def maybe(self, share, cell):
        """That cell, filled this often."""
        return cell() if self.chance(share) else ""

    def money(self):
        return f"{self.whole(0, 300)}.{self.whole(0, 99):02d}"

    def length(self, least, most):
        """A length between so many cm, in any of the units."""
        cm = self.whole(least * 10, most * 10) / 10
        inches = self.whole(int(least / 2.5), int(most / 2.6))
        return self.pick((f"{cm} cm", f"{round(cm)} cm", f"{round(cm * 10)} mm", f"{cm / 100:.3f} m", f"{inches} in",
                          f"{inches} {self.pick(('1/2', '3/8', '1/4', '5/16', '15/16'))} in"))

    def hours(self):
        return self.pick(("10:00-13:00", "09:30-17:00", "10:00-13:00;14:00-18:00", "19:15-21:45"))


# ----------------------------------------------------------------------------------------------------------------- writing

def guarded(column, text):
    """A cell in which no spreadsheet takes a text for a formula."""
    return "'" + text if column not in NUMBERS and re.match(r"'?[=+\-@]", text) else text


def cell_text(dice, column, text):
    """A cell as written: guarded, or now and then bare where that reads the same; quoted where it must be, or for fun."""
    if not (text[:1] in tuple("=+-@") and dice.chance(0.3)):
        text = guarded(column, text)
    if re.search(r'[",\r\n]', text) or dice.chance(0.05):
        return '"' + text.replace('"', '""') + '"'
    return text


def columns_written(dice, sheet, rows, always):
    """The columns of a sheet in a random order, some left out."""
    kept = []
    for column, needed in columns(sheet):
        empty = not any(row.get(column) for row in rows)
        left_out = dice.chance(0.5 if empty else 0.04)
        if needed or column in always or not left_out:
            kept.append(column)
    if dice.chance(0.5):
        dice.random.shuffle(kept)
    return kept


def write_sheet(dice, folder, sheet, rows, always=()):
    """Write a sheet; one without rows is a header alone or is not written."""
    if not rows and dice.chance(0.6):
        return
    kept = columns_written(dice, sheet, rows, always)
    end = dice.pick(("\r\n", "\n"))
    lines = [",".join(kept)]
    for row in rows:
        line = ",".join(cell_text(dice, column, row.get(column, "")) for column in kept)
        lines.append(line)
        if dice.chance(0.03):
            lines.append("")
    text = end.join(lines) + dice.pick((end, end, end, "", end + end))
    with open(os.path.join(folder, sheet + ".csv"), "w", encoding="utf-8", newline="") as file:
        file.write(dice.pick(("", "", "\ufeff")) + text)


# ---------------------------------------------------------------------------------------------------------------- workroom

class Room:
    """What the productions of one workroom share, so that their sheets name the same things in the same way."""

    def __init__(self, dice, size):
        self.dice, self.size = dice, size
        self.currency = dice.pick(("EUR", "GBP", "NOK", "CAD", ""))  # empty: no money anywhere
        self.performers = dice.some(PERFORMERS, 2, 9) if dice.chance(0.95) else []
        self.lean = dice.chance(0.18)          # one helper for everything, who comes or leaves about when costumes are due
        helpers = dice.some(HELPERS, 1, 1 if self.lean else dice.pick((1, 2, 5)))
        self.helpers = helpers if self.lean or dice.chance(0.7) else []
        self.materials = dice.some(MATERIALS, 1, 5) if dice.chance(0.9) else []
        self.measures = dice.some(MEASURES, 2, 5)
        self.titles = list(PRODUCTIONS)
        if dice.chance(0.7):
            dice.random.shuffle(self.titles)
        self.near = (0, 1, 2, 3) if self.lean else (-1, 0, 1, 6, 7, 20, 20)  # when costumes are due
        self.opens = dice.day(1, 2, 3) if self.lean else dice.day(1, 5, 12, 20, 0, -3)
        self.orders = []                       # rows written so far
        self.works = []                        # names of the orders of work that were written so far
        self.pivot = {name: dice.pick((0, 1, 2) if self.lean else (-1, 0, 1, 2, 5, 6, 7)) for name in self.helpers}
        self.folders = 0

    def money(self, share):
        return self.dice.maybe(share if self.currency else 0, self.dice.money)


def write_folder(room, folder):
    """Write one production."""
    os.makedirs(folder)
    room.folders += 1
    show = Show(room)
    sheets = {
        "production": show.production_rows(), "dates": show.date_rows(), "performers": show.performer_rows(),
        "roles": show.role_rows(), "measures": show.measure_rows(), "costumes": show.costume_rows(),
        "pieces": show.piece_rows(), "steps": show.step_rows(), "fittings": show.fitting_rows(),
        "needs": show.need_rows(), "materials": show.material_rows(), "orders": show.order_rows(),
        "people": show.people_rows(), "away": show.away_rows(), "work_steps": show.work_step_rows(),
        "works": show.work_rows(), "notes": show.note_rows(), "equipment": show.equipment_rows(),
    }
    for sheet in SHEETS:
        write_sheet(room.dice, folder, sheet, sheets[sheet], ("currency", "piece"))


class Show:
    """One production being made up; the sheets are asked for in the order in which they lean on each other."""

    def __init__(self, room):
        self.room, self.dice = room, room.dice
        dice = self.dice
        self.trouble = dice.pick((0.1, 0.4, 1.0))        # how much of it goes wrong
        self.title = room.titles[room.folders - 1]
        self.opens = room.opens if dice.chance(0.8 if room.lean else 0.4) else dice.day(-10, -1, 0, 1, 4, 9, 15, 22, 30)
        self.good_for = dice.pick(("", "", "30", "90", "200", "1"))
        self.performers = dice.some(room.performers, 1, len(room.performers)) if room.performers else []
        self.limits = {name: dice.maybe(0.35, lambda: dice.pick(("7", "30", "365"))) for name in self.performers}
        self.helpers = room.helpers if room.folders == 1 or dice.chance(0.4) else []
        self.materials = dice.some(room.materials, 1, 4) if room.materials and dice.chance(0.9) else []
        self.used = {}                                   # material to millionths its steps need

    def troubled(self, share):
        return self.dice.chance(share * self.trouble)

    def production_rows(self):
        return [{"production": self.title, "opens": self.opens, "currency": self.room.currency,
                 "unit": self.dice.pick(("cm", "in", "")), "measures_good_for": self.good_for,
                 "sheets": self.dice.pick(("1", ""))}]

    def date_rows(self):
        dice = self.dice
        worn = [{"what": what, "on": dice.day(-2, 0, 3, 6, 10, 18)} for what in dice.some(("parade", "dress", "dress"), 0, 3)]
        other = [{"what": dice.pick(DATE_KINDS), "on": dice.day(-40, 1, 2, 5, 11, 25)} for _ in range(dice.whole(0, 3))]
        rows = (worn if dice.chance(0.5) else []) + [row for row in other if row["what"] not in ("parade", "dress")]
        for row in rows:
            row["at"], row["note"] = dice.maybe(0.4, lambda: "19:30"), dice.maybe(0.3, dice.text)
        dice.random.shuffle(rows)
        return rows

    def performer_rows(self):
        dice = self.dice
        return [{"performer": name, "contact": dice.maybe(0.3, dice.text), "note": dice.maybe(0.2, dice.text),
                 "measures_good_for": self.limits[name]} for name in self.performers]

    def role_rows(self):
        dice = self.dice
        self.roles = dice.some(ROLES, 1, max(1, self.room.size))
        rows = []
        for role in self.roles:
            player = "" if not self.performers or self.troubled(0.12) else dice.pick(self.performers)
            covers = [name for name in self.performers if name != player]
            rows.append({"role": role, "performer": player, "note": dice.maybe(0.1, dice.text),
                         "cover": ";".join(dice.some(covers, 0, 2)) if dice.chance(0.2) else ""})
        return rows

    def measure_rows(self):
        dice, rows = self.dice, []
        for name in self.performers:
            if self.troubled(0.15):
                continue
            for age in self.ages(int(self.limits[name] or self.good_for or 180)):
                rows += self.sheet(name, age)
        if dice.chance(0.5):
            dice.random.shuffle(rows)
        return rows

    def ages(self, limit):
        """How many days ago the sheets of a performer were taken: mostly at the limit to the day, and some before."""
        dice = self.dice
        newest = limit + dice.pick((-1, 0, 1)) if dice.chance(0.7) else dice.pick((0, 3, 170, 370))
        found = {newest}
        if dice.chance(0.5):
            found.add(newest + dice.whole(1, 60))
        if dice.chance(0.1):
            found.add(-4)
        return sorted(found, reverse=dice.chance(0.5))

    def sheet(self, name, age):
        dice = self.dice
        taken = self.room.measures if dice.chance(0.6) else dice.some(self.room.measures, 1, len(self.room.measures))
        over, taken_by = dice.maybe(0.2, dice.text), dice.maybe(0.3, lambda: dice.pick(HELPERS))
        return [{"performer": name, "taken_on": dice.day(-age), "measure": measure,
                 "value": dice.length(*MEASURES[measure]), "over": over, "taken_by": taken_by} for measure in taken]

    def costume_rows(self):
        dice = self.dice
        if dice.chance(0.02):
            self.costumes = []
            return []
        count = dice.whole(max(1, self.room.size // 2), self.room.size * 3 // 2)
        numbers = [str(head) + tail for head in (1, 2, 3, 9, 10, 11, 20) for tail in ("", "A", "B", "C", "A2", "A10")]
        self.costumes = dice.some(numbers, count, count)
        return [{"costume": number, "role": dice.pick(self.roles), "title": dice.text(),
                 "note": dice.maybe(0.1, dice.text),
                 "due": dice.maybe(0.4, lambda: dice.day(*self.room.near))} for number in self.costumes]

    def piece_rows(self):
        dice = self.dice
        count = dice.whole(len(self.costumes) * 4 // 5, len(self.costumes) * 2)
        keys = [head + str(tail) for head in ("p", "coat ", "шуба") for tail in (1, 2, 3, 9, 10, 11, 12, 20, 21, 100)]
        keys += ["hat", "=cape", "-mitts, pair", "p", "p1b", "p1b3", "p1b20"]
        self.pieces = {key: dice.some(self.costumes, 1, dice.pick((1, 1, 2, 4))) for key in dice.some(keys, count, count)}
        return [self.piece_row(key) for key in self.pieces] if self.costumes else []

    def piece_row(self, key):
        dice = self.dice
        out = self.troubled(0.2)
        return {
            "piece": key, "costumes": ";".join(self.pieces[key]), "title": dice.text(), "note": dice.maybe(0.1, dice.text),
            "origin": dice.pick(("make", "alter") + ORIGINS), "place": dice.maybe(0.2, dice.text),
            "out_with": dice.text(lines=False) if out else "",
            "out_since": dice.maybe(0.5 if out else 0.02, lambda: dice.day(-9, -2)),
            "back_by": dice.maybe(0.75 if out else 0.03, lambda: dice.day(-1, 0, 1, 8)),
            "from": dice.maybe(0.1, dice.text), "cost": self.room.money(0.1), "due_back": dice.maybe(0.1, lambda: dice.day(40)),
            "returned_on": dice.maybe(0.05, lambda: dice.day(-1, 2)),
        }

    def step_rows(self):
        """Steps are made up in an order they could be done in, then written in that or another."""
        dice = self.dice
        slots = [key for key in self.pieces for _ in range(0 if dice.chance(0.04) else dice.whole(1, 6))]
        dice.random.shuffle(slots)
        done_share = {key: dice.pick((0.1, 0.4, 0.8, 2.0)) for key in self.pieces}
        can_wait = dice.pick((0.1, 0.9))
        self.steps = []
        for place, piece in enumerate(slots):
            done = dice.chance(done_share[piece] * (1.2 - place / len(slots)))
            self.steps.append(self.step_row(piece, done, can_wait))
        rows = list(self.steps)
        shape = dice.pick(("made", "by piece", "any"))
        if shape == "by piece":
            rows.sort(key=lambda row: list(self.pieces).index(row["piece"]))
        elif shape == "any":
            dice.random.shuffle(rows)
        return rows

    def step_row(self, piece, done, can_wait):
        dice = self.dice
        mine = [row["step"] for row in self.steps if row["piece"] == piece]
        words = ("cut", "seams", "fit1", "fit10", "fit2", "hem", "=off", "'tis", "клей")
        key = dice.pick([word for word in words if word not in mine])
        minutes = dice.whole(1, 200)
        row = {
            "piece": piece, "step": key, "title": dice.text(), "kind": self.kind(mine), "minutes": str(minutes),
            "quickest": dice.maybe(0.4, lambda: str(dice.whole((minutes + 1) // 2, minutes))),
            "longest": dice.maybe(0.4, lambda: str(dice.whole(minutes, minutes * 2))),
            "after": self.after(piece, mine), "hands": dice.pick(("", "", "1", "2")),
            "level": dice.pick(("", "", "1", "2", "3")), "rest": dice.pick(("", "", "", "24", "1")),
            "can_wait": "yes" if dice.chance(can_wait) else "", "note": dice.maybe(0.1, dice.text),
            "measures": ";".join(dice.some(self.room.measures, 1, 2)) if dice.chance(0.2) else "",
        }
        if done:
            row.update(done_on=dice.day(-20, -1, 0, 3), done_by=dice.maybe(0.4, lambda: dice.pick(HELPERS)),
                       took=dice.maybe(0.4, lambda: str(dice.whole(1, 300))))
        return row

    def kind(self, mine):
        """The later a step in its piece, the likelier it is hand sewing."""
        return "hand" if self.dice.chance(0.15 * len(mine)) else self.dice.pick(KINDS + ("fit", "cut", "press"))

    def after(self, piece, mine):
        """What a step comes after, as written: its own piece's steps by their key, others as PIECE/KEY."""
        dice = self.dice
        names = dice.some(mine, 1, 2) if mine and dice.chance(0.7) else []
        others = [row for row in self.steps if row["piece"] != piece]
        if others and dice.chance(0.2):
            names += [row["piece"] + "/" + row["step"] for row in dice.some(others, 1, 3)]
        dice.random.shuffle(names)
        if names and dice.chance(0.03):
            names[0] = names[0] if "/" in names[0] else piece + "/" + names[0]
        return ";".join(names)

    def fitting_rows(self):
        dice, rows = self.dice, []
        for step in self.steps:
            if step["kind"] != "fit" or self.troubled(0.3):
                continue
            days = dice.some((-8, -1, 0, 1, 6), 1, 2)
            for _ in range(dice.whole(1, 3)):
                booked = dice.day(*days) + dice.maybe(0.5, lambda: dice.pick(("T00:00", "T10:30", "T18:05")))
                rows.append({
                    "piece": step["piece"], "step": step["step"], "booked_at": booked,
                    "performer": dice.pick(self.performers) if self.performers and dice.chance(0.2) else "",
                    "minutes": dice.maybe(0.3, lambda: "20"), "held_on": dice.maybe(0.15, lambda: dice.day(-8, 0, 5)),
                    "outcome": dice.pick(("", "", "", "again", "missed", dice.pick(("", "fits")))),
                    "note": dice.maybe(0.2, dice.text)})
        if dice.chance(0.5):
            dice.random.shuffle(rows)
        return rows

    def need_rows(self):
        dice, rows = self.dice, []
        for step in self.steps if self.materials else []:
            for material, unit in dice.some(self.materials, 1, 3) if dice.chance(0.35) else []:
                quantity = dice.pick(AMOUNTS[unit])
                if not step.get("done_on"):
                    self.used[material] = self.used.get(material, 0) + quantity
                rows.append({"piece": step["piece"], "step": step["step"], "material": material,
                             "quantity": number(quantity)})
        if dice.chance(0.5):
            dice.random.shuffle(rows)
        return rows

    def material_rows(self):
        dice = self.dice
        repeated = self.room.folders > 1
        return [{"material": material, "unit": unit, "supplier": dice.maybe(0.2, dice.text),
                 "on_hand": "" if repeated and dice.chance(0.7) else self.on_hand(material, unit),
                 "width": "" if unit == "each" else dice.pick(("", "", "150 cm", "60 in", "1.4 m", "915 mm", "2 yd")),
                 "price": self.room.money(0.3), "note": dice.maybe(0.1, dice.text)}
                for material, unit in self.materials]

    def on_hand(self, material, unit):
        """The shelf: all that is needed, or some, or a little more, or nothing, or less."""
        dice, used = self.dice, self.used.get(material, 0)
        part = used * dice.whole(0, 4) // 4
        if unit == "each":
            part -= part % MILLION
        if not self.troubled(1):
            return number(used + MILLION)
        return dice.pick((number(part), number(part), number(used), "0", "", number(-2 * MILLION)))

    def order_rows(self):
        dice = self.dice
        rows = []
        for material, unit in self.materials:
            for _ in range(dice.whole(0, 4)):
                quantity = dice.pick(AMOUNTS[unit]) * dice.whole(1, 3)
                rows.append(self.order_row(material, quantity, dice.day(-9, -9, -4)))
        named = {material for material, _ in self.materials}
        for known in self.room.orders:
            if known["material"] in named and dice.chance(0.6):
                again = {column: known[column] for column in ("material", "quantity", "ordered_on")}
                rows.append({**self.order_row("", 0, ""), **again})
        dice.random.shuffle(rows)
        self.room.orders += rows
        return rows

    def order_row(self, material, quantity, ordered_on):
        dice = self.dice
        return {"material": material, "quantity": number(quantity), "ordered_on": ordered_on,
                "due_on": dice.day(-3, -1, 0, 1, 1, 7, 7, None),
                "arrived_on": dice.maybe(0.25, lambda: dice.day(-2, 0, 2)),
                "from": dice.maybe(0.2, dice.text), "cost": self.room.money(0.3)}

    def people_rows(self):
        dice, rows = self.dice, []
        for name in self.helpers:
            row = {"person": name, "note": dice.maybe(0.1, dice.text)}
            if self.room.lean or not self.troubled(0.2):
                row["skills"] = ";".join(dice.some(KINDS, 10 if self.room.lean else dice.pick((2, 10)), 10))
            for day in dice.some(WEEK, *((7, 7) if self.room.lean else dice.pick(((0, 3), (5, 7))))):
                row[day] = dice.hours()
            pivot = self.room.pivot[name]
            row["from"] = dice.maybe(0.3, lambda: dice.day(pivot, pivot - 1, pivot - 60))
            row["until"] = dice.maybe(0.3, lambda: dice.day(pivot, pivot + 1, pivot + 60))
            rows.append(row)
        return rows

    def away_rows(self):
        dice, rows = self.dice, []
        unlisted = set(self.room.helpers) - set(self.helpers)  # a namesake absence of theirs could be read two ways
        for who in sorted((set(self.helpers) | set(self.performers)) - unlisted):
            absent = self.troubled(0.4) or (self.room.lean and dice.chance(0.4))
            for start in dice.some((-30, -2, 0, 1, 2, 4), 1, 3) if absent else []:
                last = dice.pick([day for day in self.room.near + (60,) if day >= start])
                rows.append({"who": who, "from": dice.day(start), "to": dice.day(last),
                             "reason": dice.maybe(0.4, dice.text)})
        dice.random.shuffle(rows)
        return rows


    def equipment_rows(self):
        dice = self.dice
        return [{"equipment": name, "kinds": ";".join(dice.some(KINDS, 1, 3)), "count": dice.pick(("", "", "1", "2", "3"))}
                for name in dice.some(EQUIPMENT, 0, 4)]

    def work_step_rows(self):
        """Steps of some orders of work, those of several among each other; what one comes after is written before it."""
        dice, rows = self.dice, []
        self.works = dice.some(WORKS, 0, 3)
        fresh = set(READY_WORKS) - set(self.room.works)
        stepped = [work for work in self.works if work in fresh or dice.chance(0.7)]
        for work in [work for work in stepped for _ in range(dice.whole(1, 4))]:
            mine = [row["step"] for row in rows if row["work"] == work]
            minutes = dice.whole(0, 200)
            rows.append({
                "work": work, "step": f"{dice.pick(('cut', '=sew', 'клей', 'hem'))}{len(mine)}", "title": dice.text(),
                "kind": dice.pick(KINDS), "minutes": str(minutes), "after": ";".join(dice.some(mine, 0, 2)),
                "quickest": dice.maybe(0.4, lambda: str(minutes // 2)), "longest": dice.maybe(0.4, lambda: str(minutes * 2)),
                "hands": dice.pick(("", "", "1", "2")), "level": dice.pick(("", "", "1", "2", "3")),
                "rest": dice.pick(("", "", "24", "0.5")), "can_wait": "yes" if dice.chance(0.3) else "",
                "measures": ";".join(dice.some(self.room.measures, 1, 2)) if dice.chance(0.2) else "",
                "note": dice.maybe(0.2, dice.text)})
        if dice.chance(0.5):
            dice.random.shuffle(rows)
        return rows

    def work_rows(self):
        """Now and then the folder is silent about an order of work that the workroom knows, and gives its steps alone."""
        dice = self.dice
        listed = [work for work in self.works if work not in self.room.works or dice.chance(0.7)]
        self.room.works += [work for work in listed if work not in self.room.works]
        return [{"work": work, "note": dice.maybe(0.4, dice.text)} for work in listed]

    def note_rows(self):
        dice, rows = self.dice, []
        for _ in range(dice.whole(0, 6)):
            row = {"noted_on": dice.day(-9, -3, -1, 0), "from": dice.pick(NOTE_SOURCES), "who": dice.maybe(0.5, dice.text),
                   "what": dice.text(), "done_on": dice.maybe(0.4, lambda: dice.day(-1, 0)),
                   "costume": dice.pick(self.costumes) if self.costumes and dice.chance(0.6) else ""}
            if self.steps and dice.chance(0.4):
                step = dice.pick(self.steps)
                row.update(piece=step["piece"], step=dice.maybe(0.6, lambda found=step: found["step"]))
            rows.append(row)
        return rows


def make(seed, outdir, productions=2, size=6):
    """Write the folders of a seed; returns their paths in the order of import, and the day to reckon for."""
    dice = Dice(seed)
    room = Room(dice, size)
    folders = [os.path.join(outdir, str(count + 1)) for count in range(productions)]
    for folder in folders:
        write_folder(room, folder)
    today = dice.today.isoformat()
    with open(os.path.join(outdir, "today"), "w", encoding="utf-8") as file:
        file.write(today + "\n")
    return folders, today


def main():
    parser = argparse.ArgumentParser(description="Write random faultless productions.")
    parser.add_argument("seed", type=int)
    parser.add_argument("outdir")
    parser.add_argument("--productions", type=int, default=2, choices=range(1, len(PRODUCTIONS) + 1), metavar="N")
    parser.add_argument("--size", type=int, default=6, metavar="S")
    given = parser.parse_args()
    make(given.seed, given.outdir, given.productions, max(1, given.size))


if __name__ == "__main__":
    main()
