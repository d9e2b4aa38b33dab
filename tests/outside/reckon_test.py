#!/usr/bin/env python3
"""Small productions whose rail was worked out by hand from the rules, one test a rule.

    python3 reckon_test.py                    the reckoning gives these answers
    PROGRAM=.../bodkin python3 reckon_test.py the program itself does
"""
import os
import sys
import tempfile
import unittest

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import compare  # noqa: E402
import reckon  # noqa: E402

TODAY = "2027-03-10"  # a Wednesday
SHOW = {
    "production": "production,opens\nThe Salt Road,2027-03-20\n",
    "performers": "performer\nOona\nPip\n",
    "roles": "role,performer\nCook,Oona\nPage,Pip\nGhost,\n",
    "costumes": "costume,role,title\n1A,Cook,Kitchen\n2A,Page,Court\n",
}


def show(**sheets):
    """The sheets of a production: those of SHOW, with others added or put in their place; None leaves one out."""
    return {name: text for name, text in {**SHOW, **sheets}.items() if text is not None}


def written(folder, sheets):
    os.makedirs(folder)
    for name, text in sheets.items():
        with open(os.path.join(folder, name + ".csv"), "w", encoding="utf-8", newline="") as sheet:
            sheet.write(text)
    return folder


def rail(*productions, name="The Salt Road", today=TODAY):
    """The rail of one of some productions taken in one after another."""
    with tempfile.TemporaryDirectory() as scratch:
        folders = [written(os.path.join(scratch, str(number)), sheets) for number, sheets in enumerate(productions)]
        if "PROGRAM" not in os.environ:
            return reckon.rail(reckon.workroom_of(folders), name, today)
        program, store = compare.Program(os.environ["PROGRAM"], scratch), os.path.join(scratch, "workroom.db")
        for folder in folders:
            program.run("--store", store, "import", folder)
        return program.rail(store, name, today)


def costumes(shown):
    return {costume["costume"]: costume for costume in shown["costumes"]}


def waits(shown, costume="1A"):
    """The waits of a costume as `piece/step on detail`, with the shortage behind materials."""
    told = []
    for wait in costumes(shown)[costume]["waits"]:
        place = wait["piece"] + "/" + (wait["step"] or "-")
        short = " " + wait["material"] + " " + reckon.to_json(wait["short"]) if wait["on"] == "materials" else ""
        told.append(f"{place} {wait['on']} {wait['detail']}{short}")
    return told


def states(shown):
    return {number: costume["state"] for number, costume in costumes(shown).items()}


class Reckoned(unittest.TestCase):
    maxDiff = None

    def test_a_costume_is_due_on_its_own_day_else_on_the_first_parade_or_dress_else_when_it_opens(self):
        own = "costume,role,title,due\n1A,Cook,Kitchen,2027-03-25\n2A,Page,Court,\n"
        dates = "what,on\ntech,2027-03-12\ndress,2027-03-18\nparade,2027-03-16\ndress,2027-03-15\n"
        due = {number: costume["due"] for number, costume in costumes(rail(show(costumes=own, dates=dates))).items()}
        self.assertEqual(due, {"1A": "2027-03-25", "2A": "2027-03-15"})
        late_dress = rail(show(dates="what,on\ndress,2027-03-21\n"))
        self.assertEqual(costumes(late_dress)["1A"]["due"], "2027-03-20")
        self.assertEqual(late_dress["days_left"], 10)

    def test_costumes_hang_by_due_day_and_then_by_number_in_natural_order(self):
        rows = "costume,role,title,due\n10A,Cook,a,\n2B,Cook,b,\n2A,Cook,c,\n2,Cook,d,\n30A,Page,e,2027-03-19\n"
        hung = [costume["costume"] for costume in rail(show(costumes=rows))["costumes"]]
        self.assertEqual(hung, ["30A", "2", "2A", "2B", "10A"])

    def test_an_open_step_is_next_when_all_it_comes_after_is_done_and_may_be_done_before_them(self):
        shown = rail(show(
            pieces="piece,costumes,title\ncoat,1A,Coat\n",
            steps="piece,step,title,kind,minutes,after,done_on\n"
                  "coat,hem,Hem,hand,30,fit;seams,\ncoat,fit,Fitting,fit,20,,\ncoat,seams,Seams,machine,60,,2027-03-01\n"
                  "coat,hook,Hooks,hand,10,hem,2027-03-02\ncoat,tag,Name tape,hand,5,hook,\n",
            fittings="piece,step,booked_at,outcome\ncoat,fit,2027-03-01,fits\ncoat,fit,2027-03-12,again\n"))
        self.assertEqual(waits(shown), ["coat/hem hand open", "coat/tag hand open"])
        one = costumes(shown)["1A"]
        self.assertEqual((one["steps"], one["steps_done"], one["minutes_left"]), (5, 3, 35))

    def test_a_sheet_is_old_only_when_older_than_it_is_good_for_by_the_performer_else_the_production(self):
        # 2027-03-10 less 30 days is 2027-02-08; less 7 days 2027-03-03.
        def detail(taken, production="30", performer=""):
            shown = rail(show(
                production="production,opens,measures_good_for\nThe Salt Road,2027-03-20," + production + "\n",
                performers="performer,measures_good_for\nOona," + performer + "\nPip,\n",
                measures="performer,taken_on,measure,value\nOona,2026-01-01,hip girth,99 cm\nOona," + taken +
                         ",waist girth,70 cm\n",
                pieces="piece,costumes,title,origin\ncoat,1A,Coat,make\n",
                steps="piece,step,title,kind,minutes\ncoat,cut,Cut,cut,60\n"))
            return waits(shown)
        old = ["coat/cut measures old"]
        self.assertEqual(detail("2027-02-08"), [])
        self.assertEqual(detail("2027-02-07"), old)
        self.assertEqual(detail("2027-03-03", performer="7"), [])
        self.assertEqual(detail("2027-03-02", performer="7"), old)
        self.assertEqual(detail("2026-09-11", production=""), [])      # 180 days
        self.assertEqual(detail("2026-09-10", production=""), old)
        self.assertEqual(detail("2027-06-01"), [])                     # dated after today counts all the same

    def test_measures_are_asked_of_every_wearer_and_the_first_lack_is_told(self):
        def detail(measures, rows, costume="1A;2A", kind="machine", origin=""):
            shown = rail(show(
                costumes=SHOW["costumes"] + "3A,Ghost,Sheet\n",
                measures="performer,taken_on,measure,value\n" + rows,
                pieces="piece,costumes,title,origin\ncoat," + costume + ",Coat," + origin + "\n",
                steps="piece,step,title,kind,minutes,measures\ncoat,make,Make," + kind + ",60," + measures + "\n"))
            return [told.split(" ", 1)[1] for told in waits(shown)]
        both = "Oona,2027-03-01,waist girth,70 cm\nPip,2027-03-01,waist girth,80 cm\n"
        self.assertEqual(detail("waist girth", both), [])
        self.assertEqual(detail("waist girth", both, "1A;3A"), ["measures uncast"])
        self.assertEqual(detail("waist girth", "", "1A;3A"), ["measures uncast"])
        self.assertEqual(detail("waist girth", "Oona,2027-03-01,hip girth,1 m\n"), ["measures none"])
        self.assertEqual(detail("waist girth;hip girth", both + "Oona,2026-01-01,hip girth,1 m\n"), ["measures part"])
        # Pip's hip girth is the old one: the newest taking of each listed measure counts, not the newest sheet.
        hips = "Oona,2027-03-01,hip girth,1 m\nPip,2026-01-01,hip girth,1 m\n"
        self.assertEqual(detail("waist girth;hip girth", both + hips), ["measures old"])
        self.assertEqual(detail("waist girth", both + hips), [])
        self.assertEqual(detail("", "", kind="draft", origin="alter"), ["measures none"])
        self.assertEqual(detail("", "", kind="draft", origin="hire"), [])
        self.assertEqual(detail("", "", kind="cut"), [])               # an unknown origin is not made
        self.assertEqual(detail("", "", kind="machine", origin="make"), [])

    def test_a_fitting_held_on_any_step_of_the_piece_ends_the_wait_for_measures(self):
        def told(held_on):
            return waits(rail(show(
                pieces="piece,costumes,title,origin\ncoat,1A,Coat,make\n",
                steps="piece,step,title,kind,minutes,after\ncoat,toile,Toile,fit,20,\ncoat,cut,Cut,cut,60,\n",
                fittings="piece,step,booked_at,held_on,outcome\ncoat,toile,2027-03-11," + held_on + ",again\n")))
        self.assertEqual(told(""), ["coat/toile fitting unbooked", "coat/cut measures none"])
        self.assertEqual(told("2027-03-11"), ["coat/toile fitting unbooked"])

    def test_the_shelf_is_shared_out_most_urgent_first_in_natural_order(self):
        # Due 18th: p2 of 2A, then p10 of 2A, then p1 of 10A; then p3 by its second costume; p0 of 1A is due last.
        shown = rail(show(
            costumes="costume,role,title,due\n10A,Cook,a,2027-03-18\n2A,Cook,b,2027-03-18\n1A,Cook,c,2027-03-20\n",
            pieces="piece,costumes,title\np0,1A,a\np1,10A,a\np3,10A;1A,a\np10,2A,a\np2,2A,a\n",
            steps="piece,step,title,kind,minutes,after,done_on\np0,a,a,machine,1,,\np1,a,a,machine,1,,\n"
                  "p3,b,b,machine,1,a,\np3,a,a,machine,1,,\np10,a,a,machine,1,,\np2,a,a,machine,1,,\n"
                  "p2,was,a,machine,1,,2027-03-01\n",
            materials="material,unit,on_hand\nwool,m,6.5\nsilk,m,1\n",
            needs="piece,step,material,quantity\np3,a,silk,1\np3,b,silk,1\np2,was,wool,6\n" + "".join(
                f"{piece},{step},wool,2\n" for piece, step in
                (("p0", "a"), ("p1", "a"), ("p3", "a"), ("p3", "b"), ("p10", "a"), ("p2", "a")))))
        # The order of taking is p3 (lowest costume 1A; b stands before a), p2, p10, p1, p0: 2 + 2 + 2 + 0.5.  A done step
        # takes nothing; p3/b is not next, yet takes the silk before p3/a.
        self.assertEqual(waits(shown, "2A"), ["p10/a materials not ordered wool 1.5"])
        self.assertEqual(waits(shown, "10A"), ["p1/a materials not ordered wool 2",
                                               "p3/a materials not ordered silk 1"])
        self.assertEqual(waits(shown, "1A"), ["p0/a materials not ordered wool 2", "p3/a materials not ordered silk 1"])

    def test_a_shortage_draws_on_orders_by_due_day_and_is_told_by_the_last_it_draws_on(self):
        orders = ("material,quantity,ordered_on,due_on,arrived_on\nwool,9,2027-03-01,2027-03-01,2027-03-02\n"
                  "wool,1,2027-03-01,,\nwool,1,2027-03-01,2027-03-12,\nwool,1,2027-03-01,2027-03-09,\n"
                  "wool,1,2027-03-01,2027-03-10,\n")
        shown = rail(show(
            costumes="costume,role,title\n1A,Cook,a\n",
            pieces="piece,costumes,title\n" + "".join(f"p{number},1A,a\n" for number in range(1, 7)),
            steps="piece,step,title,kind,minutes\n" + "".join(f"p{number},a,a,cut,1\n" for number in range(1, 7)),
            materials="material,unit,on_hand\nwool,m,-3\nzips,each,\n",
            needs="piece,step,material,quantity\np1,a,zips,2\np1,a,wool,0.5\np2,a,wool,0.75\np3,a,wool,1\n"
                  "p4,a,wool,1.5\np5,a,wool,0.5\np6,a,wool,0.000001\n", orders=orders))
        self.assertEqual(waits(shown), [
            "p1/a materials not ordered zips 2",
            "p1/a materials late wool 0.5",                # half of the 9th
            "p2/a materials due 2027-03-10 wool 0.75",     # the rest of the 9th, a quarter of the 10th
            "p3/a materials due 2027-03-12 wool 1",        # the rest of the 10th, a quarter of the 12th
            "p4/a materials no date wool 1.5",             # the rest of the 12th, three quarters of the undated
            "p5/a materials not ordered wool 0.5",         # takes the last quarter, which does not suffice
            "p6/a materials not ordered wool 0.000001"])

    def test_the_newest_fitting_decides_a_bare_day_before_its_times_and_the_later_row_at_a_tie(self):
        def told(*rows):
            return waits(rail(show(
                pieces="piece,costumes,title\ncoat,1A,Coat\n",
                steps="piece,step,title,kind,minutes\ncoat,fit,Fitting,fit,20\n",
                fittings="piece,step,booked_at,held_on,outcome\n" + "".join(f"coat,fit,{row}\n" for row in rows))))
        self.assertEqual(told(), ["coat/fit fitting unbooked"])
        self.assertEqual(told("2027-03-10,,"), ["coat/fit fitting booked 2027-03-10"])
        self.assertEqual(told("2027-03-09T23:59,,"), ["coat/fit fitting missed"])
        self.assertEqual(told("2027-03-09,2027-03-09,"), ["coat/fit fitting missed"])
        self.assertEqual(told("2027-03-15T00:00,,again", "2027-03-15,,"), ["coat/fit fitting unbooked"])
        self.assertEqual(told("2027-03-15T10:30,,", "2027-03-15T09:30,,missed"), ["coat/fit fitting booked 2027-03-15"])
        self.assertEqual(told("2027-03-15,,", "2027-03-15,,missed"), ["coat/fit fitting missed"])
        self.assertEqual(told("2027-03-15,,missed", "2027-03-15,,"), ["coat/fit fitting booked 2027-03-15"])

    def test_people_lack_when_none_of_that_skill_has_hours_from_today_to_the_due_day(self):
        def told(person, away="", due="2027-03-15", kind="hand"):  # the 15th is a Monday
            return waits(rail(show(
                costumes=f"costume,role,title,due\n1A,Cook,a,{due}\n",
                people="person,skills,mon,wed,from,until\n" + person, away="who,from,to\n" + away,
                pieces="piece,costumes,title\ncoat,1A,Coat\n",
                steps=f"piece,step,title,kind,minutes\ncoat,hem,Hem,{kind},20\n")))
        nobody = ["coat/hem hand open", "coat/hem people nobody"]
        enough = ["coat/hem hand open"]
        self.assertEqual(told(""), enough)                                                 # no people at all
        self.assertEqual(told("Ida,press,10:00-12:00,10:00-12:00,,\n"), nobody)
        self.assertEqual(told("Ida,,10:00-12:00,10:00-12:00,,\n"), nobody)
        self.assertEqual(told("Ida,cut;hand,10:00-12:00,,,\n"), enough)
        self.assertEqual(told("Ida,cut;hand,10:00-12:00,,,\n", due="2027-03-14"), nobody)
        self.assertEqual(told("Ida,hand,,10:00-12:00,,\n", due=TODAY), enough)
        self.assertEqual(told("Ida,hand,,10:00-12:00,,\n", due="2027-03-09"), nobody)      # past: none left
        self.assertEqual(told("Ida,hand,10:00-12:00,,2027-03-15,2027-03-15\n"), enough)
        self.assertEqual(told("Ida,hand,10:00-12:00,,2027-03-16,\n"), nobody)
        self.assertEqual(told("Ida,hand,10:00-12:00,,,2027-03-14\n"), nobody)
        self.assertEqual(told("Ida,hand,10:00-12:00,,,\n", "Ida,2027-03-15,2027-03-15\n"), nobody)
        self.assertEqual(told("Ida,hand,10:00-12:00,,,\n", "Ida,2027-03-16,2027-03-20\nOona,2027-03-01,2027-04-01\n"),
                         enough)
        self.assertEqual(told("Ida,hand,,,,\n", kind="press"), ["coat/hem people nobody"])

    def test_a_piece_that_is_out_is_told_once_without_a_step_before_its_steps(self):
        def told(back, done=""):
            shown = rail(show(
                pieces="piece,costumes,title,out_with,back_by\nhat,1A,Hat,,2027-03-01\ncoat,1A,Coat,the dyer," + back +
                       "\n",
                steps=f"piece,step,title,kind,minutes,done_on\nhat,a,a,press,1,2027-03-01\ncoat,a,a,press,1,{done}\n"
                      f"coat,b,b,hand,1,{done}\n"))
            return waits(shown), states(shown)["1A"]
        self.assertEqual(told("2027-03-10"),
                         (["coat/- out back 2027-03-10", "coat/b hand open"], "waiting"))  # press does not make it in-work
        self.assertEqual(told("2027-03-09"), (["coat/- out overdue", "coat/b hand open"], "held"))
        self.assertEqual(told(""), (["coat/- out no date", "coat/b hand open"], "held"))
        self.assertEqual(told("2027-03-10", "2027-03-01"), (["coat/- out back 2027-03-10"], "waiting"))
        self.assertEqual(told("", "2027-03-01"), (["coat/- out no date"], "held"))
        self.assertEqual(told("2027-03-09", "2027-03-01"), (["coat/- out overdue"], "held"))

    def test_another_costume_s_step_is_told_as_order_only_where_its_piece_is_not_worn(self):
        shown = rail(show(
            costumes=SHOW["costumes"] + "3A,Page,Road\n",
            pieces="piece,costumes,title\nshirt,1A;3A,Shirt\nboots,2A,Boots\nbelt,2A;3A,Belt\n",
            steps="piece,step,title,kind,minutes,after,done_on\nboots,b,b,craft,1,,\nboots,done,c,craft,1,,2027-03-01\n"
                  "belt,x,x,craft,1,,\nshirt,a,a,dye,1,was;belt/x;boots/b;boots/done,\nshirt,c,c,dye,1,a,\n"
                  "shirt,was,w,dye,1,,2027-03-01\n"))
        self.assertEqual(waits(shown, "1A"), ["shirt/a order belt/x;boots/b"])
        self.assertEqual(waits(shown, "2A"), [])
        self.assertEqual(waits(shown, "3A"), [])
        self.assertEqual(states(shown), {"1A": "waiting", "2A": "in-work", "3A": "in-work"})

    def test_the_state_is_the_first_that_is_true(self):
        pieces = "piece,costumes,title,out_with,back_by\n"
        steps = "piece,step,title,kind,minutes,done_on\n"
        fittings = "piece,step,booked_at,outcome\nq,fit,2027-03-12,\n"

        def state(pieces_rows, steps_rows):
            return states(rail(show(pieces=pieces + pieces_rows, steps=steps + steps_rows,
                                    fittings=fittings if "q,fit" in steps_rows else None)))["1A"]
        done, hand, free = "p,a,a,press,1,2027-03-01\n", "p,b,b,hand,1,\n", "p,c,c,press,1,\n"
        booked, elsewhere = "q,fit,f,fit,1,\n", "q,1A,q,,\n"
        self.assertEqual(state("", ""), "unlisted")
        self.assertEqual(state("p,1A,p,,\n" + elsewhere, done), "unlisted")
        self.assertEqual(state("p,1A,p,the tanner,\n", ""), "unlisted")
        self.assertEqual(state("p,1A,p,,\n" + elsewhere, done + hand), "finishing")
        self.assertEqual(state("p,1A,p,,\n", done), "ready")
        self.assertEqual(state("p,1A,p,,\n", hand + free), "in-work")
        self.assertEqual(state("p,1A,p,,\n" + elsewhere, hand + booked), "waiting")
        self.assertEqual(state("p,1A,p,,\nq,1A,q,the tanner,\n", hand + "q,d,d,cut,1,2027-03-01\n"), "finishing")
        self.assertEqual(state("p,1A,p,,\nq,1A,q,the tanner,\n", hand + "q,d,d,hand,1,\n"), "held")

    def test_a_costume_is_held_only_by_a_wait_that_somebody_must_act_on(self):
        made = dict(pieces="piece,costumes,title\np,1A,p\n")
        fit = dict(made, steps="piece,step,title,kind,minutes\np,a,a,fit,1\n")
        cloth = dict(made, steps="piece,step,title,kind,minutes\np,a,a,press,1\n",
                     materials="material,unit\nwool,m\n", needs="piece,step,material,quantity\np,a,wool,1\n")
        measured = dict(made, steps="piece,step,title,kind,minutes,measures\np,a,a,press,1,hip girth\n")
        helped = dict(made, steps="piece,step,title,kind,minutes\np,a,a,press,1\n", people="person\nIda\n")

        def state(sheets, **more):
            return states(rail(show(**sheets, **more)))["1A"]

        def fitting(day, outcome):
            return f"piece,step,booked_at,outcome\np,a,{day},{outcome}\n"

        def order(day):
            return f"material,quantity,ordered_on,due_on\nwool,1,2027-03-01,{day}\n"
        self.assertEqual(state(fit), "held")
        self.assertEqual(state(fit, fittings=fitting(TODAY, "missed")), "held")
        self.assertEqual(state(fit, fittings=fitting(TODAY, "")), "waiting")
        self.assertEqual(state(cloth), "held")
        self.assertEqual(state(cloth, orders=order("2027-03-09")), "held")
        self.assertEqual(state(cloth, orders=order("")), "held")
        self.assertEqual(state(cloth, orders=order(TODAY)), "waiting")
        self.assertEqual(state(measured), "held")
        self.assertEqual(state(helped), "held")

    def test_a_costume_can_go_on_when_all_that_is_open_can_wait(self):
        def can(pieces_rows, steps_rows):
            shown = rail(show(pieces="piece,costumes,title,out_with,back_by\n" + pieces_rows,
                              steps="piece,step,title,kind,minutes,can_wait,done_on\n" + steps_rows))
            self.assertEqual(shown["counts"]["can_go_on"], costumes(shown)["1A"]["can_go_on"])
            return costumes(shown)["1A"]["can_go_on"]
        self.assertTrue(can("p,1A,p,,\n", "p,a,a,press,1,,2027-03-01\np,b,b,hand,1,yes,\n"))
        self.assertFalse(can("p,1A,p,,\n", "p,a,a,press,1,,\np,b,b,hand,1,yes,\n"))
        self.assertFalse(can("p,1A,p,the dyer,2027-03-12\n", "p,b,b,hand,1,yes,\n"))
        self.assertFalse(can("p,1A,p,,\nq,1A,q,,\n", "p,b,b,hand,1,yes,\n"))
        self.assertFalse(can("", ""))

    def test_a_shared_piece_counts_once_for_the_production_and_for_each_costume(self):
        shown = rail(show(
            pieces="piece,costumes,title\nshirt,1A;2A,Shirt\nhat,2A,Hat\n",
            steps="piece,step,title,kind,minutes,done_on\nshirt,a,a,press,40,\nshirt,b,b,press,9,2027-03-01\n"
                  "hat,a,a,hand,5,\nhat,b,b,hand,1,\n"))
        self.assertEqual(shown["minutes_left"], 46)
        self.assertEqual([costume["minutes_left"] for costume in shown["costumes"]], [40, 46])
        self.assertEqual(shown["counts"]["waits"],
                         {"measures": 0, "materials": 0, "fitting": 0, "hand": 1, "people": 0, "out": 0, "order": 0})
        self.assertEqual(shown["counts"]["in-work"], 2)
        self.assertEqual([costume["performer"] for costume in shown["costumes"]], ["Oona", "Pip"])

    def test_two_productions_share_a_shelf_by_due_day_then_opening_then_name(self):
        def another(name, opens, due):
            return show(
                production=f"production,opens\n{name},{opens}\n", costumes=f"costume,role,title,due\n9Z,Cook,a,{due}\n",
                pieces="piece,costumes,title\nz,9Z,a\n", steps="piece,step,title,kind,minutes\nz,a,a,press,1\n",
                materials="material,unit,on_hand\nwool,m,\n", needs="piece,step,material,quantity\nz,a,wool,2\n")
        ours = show(
            costumes="costume,role,title,due\n1A,Cook,a,2027-03-18\n", pieces="piece,costumes,title\na,1A,a\n",
            steps="piece,step,title,kind,minutes\na,a,a,press,1\n", materials="material,unit,on_hand\nwool,m,2\n",
            needs="piece,step,material,quantity\na,a,wool,2\n")
        short = ["a/a materials not ordered wool 2"]
        self.assertEqual(waits(rail(ours, another("A", "2027-03-01", "2027-03-19"))), [])
        self.assertEqual(waits(rail(ours, another("Z", "2027-03-30", "2027-03-17"))), short)
        self.assertEqual(waits(rail(ours, another("Z", "2027-03-19", "2027-03-18"))), short)
        self.assertEqual(waits(rail(ours, another("A", "2027-03-21", "2027-03-18"))), [])
        self.assertEqual(waits(rail(ours, another("A", "2027-03-20", "2027-03-18"))), short)
        self.assertEqual(waits(rail(ours, another("Z", "2027-03-20", "2027-03-18"))), [])
        # The name is compared letter by letter: "10" before "2".
        ours["production"] = "production,opens\nRoad 2,2027-03-20\n"
        self.assertEqual(waits(rail(ours, another("Road 10", "2027-03-20", "2027-03-18"), name="Road 2")), short)

    def test_what_is_known_by_name_stays_and_only_filled_cells_replace(self):
        first = show(
            people="person,skills,mon,until\nIda,hand,10:00-12:00,2027-03-14\n",
            materials="material,unit,on_hand\nwool,m,5\nsilk,m,5\n",
            measures="performer,taken_on,measure,value\nOona,2027-03-01,hip girth,1 m\n", performers="performer\nOona\nPip\n")
        second = show(
            production="production,opens\nLater,2027-03-20\n", performers="performer,measures_good_for\nPip,\nOona,7\n",
            people="person,skills,mon,until\nIda,,,2027-03-15\n",
            materials="material,unit,on_hand\nsilk,m,1\nwool,m,\n",
            measures="performer,taken_on,measure,value\nOona,2027-03-02,waist girth,1 m\n",
            pieces="piece,costumes,title\np,1A,p\n",
            steps="piece,step,title,kind,minutes,measures\np,a,a,hand,1,\np,b,b,hand,1,hip girth\n"
                  "p,c,c,hand,1,waist girth\n",
            needs="piece,step,material,quantity\np,a,wool,5\np,a,silk,5\n")
        told = [line for line in waits(rail(first, second, name="Later")) if " hand " not in line]
        self.assertEqual(told, ["p/a materials not ordered silk 4", "p/b measures old", "p/c measures old"])

    def test_a_known_order_is_matched_once_and_its_arrival_is_laid_on_a_shelf_not_counted(self):
        orders = "material,quantity,ordered_on,due_on,arrived_on\n"
        need = dict(pieces="piece,costumes,title\np,1A,p\n", steps="piece,step,title,kind,minutes\np,a,a,press,1\n",
                    needs="piece,step,material,quantity\np,a,wool,10\n")

        def told(known, rows, on_hand=""):
            first = show(materials="material,unit,on_hand\nwool,m,1\n", orders=orders + known)
            second = show(production="production,opens\nLater,2027-03-20\n",
                          materials=f"material,unit,on_hand\nwool,m,{on_hand}\n", orders=orders + rows, **need)
            return [line.removeprefix("p/a materials ") for line in waits(rail(first, second, name="Later"))]
        open_order = "wool,9,2027-03-01,2027-03-12,\n"
        self.assertEqual(told(open_order, "wool,9.0,2027-03-01,,\n"), ["due 2027-03-12 wool 9"])
        self.assertEqual(told(open_order, "wool,9,2027-03-01,2027-03-14,\n"), ["due 2027-03-14 wool 9"])
        self.assertEqual(told(open_order, "wool,9,2027-03-01,,2027-03-09\n"), [])
        self.assertEqual(told(open_order, "wool,9,2027-03-01,,2027-03-09\n", "2"), ["not ordered wool 8"])
        self.assertEqual(told(open_order, "wool,9,2027-03-02,,2027-03-09\n"), ["due 2027-03-12 wool 9"])
        self.assertEqual(told(open_order, "wool,8,2027-03-01,,2027-03-09\n"), ["due 2027-03-12 wool 9"])
        small = "wool,5,2027-03-01,2027-03-12,\n"
        self.assertEqual(told(small, small + "wool,5,2027-03-01,2027-03-13,\n"), ["due 2027-03-13 wool 9"])
        self.assertEqual(told(small, ""), ["not ordered wool 9"])
        self.assertEqual(told("wool,9,2027-03-01,,2027-03-09\n", "wool,9,2027-03-01,,2027-03-08\n"),
                         ["not ordered wool 9"])

    def test_sheets_are_read_with_marks_blank_lines_quotes_and_guards(self):
        shown = rail(show(
            production="\ufeffopens,production\r\n\r\n2027-03-20,The Salt Road\r\n",
            roles="role,performer\nCook,Oona\n",
            costumes="title,costume,role\r\n\"'=\"\"Red\"\", or\nblue\",1A,Cook\r\n\n'tis,2A,Cook\r\n"
                     "''=x,3A,Cook\n'-x,4A,Cook\n+x,5A,Cook"))
        self.assertEqual([costume["title"] for costume in shown["costumes"]],
                         ["=\"Red\", or\nblue", "'tis", "'=x", "-x", "+x"])

    def test_a_quantity_is_printed_as_a_plain_number(self):
        for millionths, text in ((1, "0.000001"), (1500000, "1.5"), (100000000, "100"), (12345678901234, "12345678.901234")):
            self.assertEqual(reckon.to_json({"short": reckon.Decimal(millionths) / 1000000}), '{"short": ' + text + "}")


if __name__ == "__main__":
    unittest.main()
