"""Makes large workrooms for measuring: folders of sheets of productions that were never staged.

    workroom.py productions DIR COUNT COSTUMES STEPS_EACH [FIRST]   COUNT folders DIR/0001 ...
    workroom.py measures DIR PERFORMERS MEASURES                    one production with many measures
"""

import csv
import datetime
import os
import random
import sys

KINDS = ["source", "draft", "cut", "machine", "fit", "hand", "press"]
MATERIALS = 200
PEOPLE = 8
OPENS = datetime.date(2027, 3, 19)
STEPS_A_PIECE = len(KINDS)


def sheet(folder, name, header, rows):
    with open(os.path.join(folder, name + ".csv"), "w", newline="", encoding="utf-8") as out:
        writer = csv.writer(out)
        writer.writerow(header.split())
        writer.writerows(rows)


def day(base, offset):
    return (base + datetime.timedelta(days=offset)).isoformat()


def steps_of_piece(piece, count, done, draw):
    rows = []
    for index in range(count):
        kind = KINDS[index % len(KINDS)]
        after = "s%d" % (index - 1) if index else ""
        finished = day(OPENS, -40) if index < done else ""
        rows.append([piece, "s%d" % index, "%s the %s" % (kind, piece), kind, draw.randrange(5, 120), after, finished])
    return rows


def production(folder, name, costumes, steps_each, draw):
    os.makedirs(folder)
    performers = max(1, costumes // 2)
    cast = ["%s player %d" % (name, n) for n in range(performers)]
    sheet(folder, "production", "production opens currency unit sheets", [[name, OPENS.isoformat(), "EUR", "cm", 1]])
    sheet(folder, "dates", "what on", [["parade", day(OPENS, -6)], ["dress", day(OPENS, -1)]])
    sheet(folder, "people", "person skills mon tue wed thu fri",
          [["Hand %d" % n, "source;draft;cut;tack;machine;press;fit;hand"] + ["09:00-13:00;14:00-18:00"] * 5
           for n in range(PEOPLE)])
    sheet(folder, "performers", "performer", [[player] for player in cast])
    sheet(folder, "measures", "performer taken_on measure value",
          [[player, day(OPENS, -draw.randrange(20, 220)), "waist girth", "82 cm"] for player in cast])
    sheet(folder, "roles", "role performer", [["Role %d" % n, cast[n]] for n in range(performers)])
    numbers = ["%d%s" % (n // 2 + 1, "AB"[n % 2]) for n in range(costumes)]
    sheet(folder, "costumes", "costume role title",
          [[number, "Role %d" % (n // 2 % performers), "Costume of act %d" % (n % 5)] for n, number in enumerate(numbers)])
    pieces, steps, needs, fittings = [], [], [], []
    left = costumes * steps_each
    for n, number in enumerate(numbers):
        due = (n + 1) * steps_each - len(steps)
        index = 0
        while due > 0:
            piece, count = "%s-%d" % (number, index), min(due, STEPS_A_PIECE)
            worn = number if index or not n else number + ";" + numbers[n - 1]
            pieces.append([piece, worn, "Piece %s" % piece, "make"])
            rows = steps_of_piece(piece, count, draw.randrange(0, count + 1), draw)
            steps += rows
            for row in rows:
                if row[3] in ("cut", "machine") and draw.random() < 0.5:
                    needs.append([piece, row[1], "Material %d" % draw.randrange(MATERIALS), draw.randrange(1, 40) / 10])
                if row[3] == "fit":
                    fittings.append([piece, row[1], day(OPENS, draw.randrange(-30, -2))])
            due -= count
            index += 1
    assert len(steps) == left
    sheet(folder, "pieces", "piece costumes title origin", pieces)
    sheet(folder, "steps", "piece step title kind minutes after done_on", steps)
    sheet(folder, "needs", "piece step material quantity", needs)
    sheet(folder, "fittings", "piece step booked_at", fittings)
    sheet(folder, "materials", "material unit on_hand",
          [["Material %d" % n, "m", 40 + n % 60] for n in range(MATERIALS)])
    sheet(folder, "orders", "material quantity ordered_on due_on",
          [["Material %d" % n, 10, day(OPENS, -50), day(OPENS, -10)] for n in range(0, MATERIALS, 10)])


def measures(folder, performers, count):
    os.makedirs(folder)
    names = ["Player %05d" % n for n in range(performers)]
    sheet(folder, "production", "production opens unit", [["Great Census", OPENS.isoformat(), "cm"]])
    sheet(folder, "performers", "performer", [[name] for name in names])
    sheet(folder, "measures", "performer taken_on measure value taken_by",
          ([name, day(OPENS, -30), "measure %d" % n, "%.1f cm" % (20 + (index * 7 + n * 13) % 900 / 10), "Hand 1"]
           for index, name in enumerate(names) for n in range(count)))


def main():
    what, folder = sys.argv[1:3]
    numbers = [int(text) for text in sys.argv[3:]]
    if what == "measures":
        measures(folder, *numbers)
        return
    count, costumes, steps_each = numbers[:3]
    first = numbers[3] if len(numbers) > 3 else 1
    for index in range(first, first + count):
        production(os.path.join(folder, "%04d" % index), "Show %04d" % index, costumes, steps_each,
                   random.Random(index))


if __name__ == "__main__":
    main()
