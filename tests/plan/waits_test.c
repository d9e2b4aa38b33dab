#include "bodkin/plan/waits.h"

#include "plan/scene.h"
#include "support/testing.h"

// The form of the scenes stands in scene.h. Today is Tuesday 2027-03-09.

#define COAT "who Ada | costume 1A Ada | piece coat 1A make | "
#define TWO_COSTUMES "who Ada | costume 1A Ada | costume 2A Ada | "

static const scene_row measures[] = {
    {"a cut waits on measures when nobody measured the performer",
     "who Ada measured never | costume 1A Ada | piece coat 1A make | step coat/cut cut",
     "held: measures coat/cut none!"},
    {"a draft waits on measures too",
     "who Ada measured never | costume 1A Ada | piece coat 1A make | step coat/draft draft",
     "held: measures coat/draft none!"},
    {"so does the cut of an altered piece",
     "who Ada measured never | costume 1A Ada | piece coat 1A alter | step coat/cut cut",
     "held: measures coat/cut none!"},
    {"the cut of a bought piece needs no measures",
     "who Ada measured never | costume 1A Ada | piece coat 1A buy | step coat/cut cut", "in-work"},
    {"nor does that of a hired one",
     "who Ada measured never | costume 1A Ada | piece coat 1A hire | step coat/cut cut", "in-work"},
    {"nor that of a borrowed one",
     "who Ada measured never | costume 1A Ada | piece coat 1A borrow | step coat/draft draft", "in-work"},
    {"nor that of one from stock",
     "who Ada measured never | costume 1A Ada | piece coat 1A stock | step coat/cut cut", "in-work"},
    {"a piece of unknown origin is not made",
     "who Ada measured never | costume 1A Ada | piece coat 1A | step coat/cut cut", "in-work"},
    {"machining a made piece needs no measures",
     "who Ada measured never | costume 1A Ada | piece coat 1A make | step coat/sew machine", "in-work"},
    {"a step that lists measures needs them whatever its kind and the piece's origin",
     "who Ada measured never | costume 1A Ada | piece hat 1A buy | step hat/size craft lists Ada:never",
     "held: measures hat/size none!"},
    {"nobody to measure while the role is not cast",
     "costume 1A nobody | piece coat 1A make | step coat/cut cut", "held: measures coat/cut uncast!"},
    {"a step that lists measures of nobody is uncast",
     "costume 1A nobody | piece coat 1A buy | step coat/hang press lists nothing",
     "held: measures coat/hang uncast!"},
    {"a piece worn with two costumes is uncast when one of them is",
     "who Ada measured never | costume 1A Ada | costume 2A nobody | piece coat 1A,2A make | step coat/cut "
     "cut",
     "held: measures coat/cut uncast!"},
    {"a listed measure never taken is a part", COAT "step coat/cut cut lists Ada:0,Ada:never",
     "held: measures coat/cut part!"},
    {"a measure never taken comes before an old one", COAT "step coat/cut cut lists Ada:-181,Ada:never",
     "held: measures coat/cut part!"},
    {"no sheet of one performer comes before a missing measure of another",
     "who Ada | who Ben measured never | costume 1A Ada | costume 2A Ben | piece coat 1A,2A make | "
     "step coat/cut cut lists Ada:never,Ben:never",
     "held: measures coat/cut none!"},
    {"no sheet of one performer comes before an old sheet of another",
     "who Ada measured -181 | who Ben measured never | costume 1A Ada | costume 2A Ben | "
     "piece coat 1A,2A make | step coat/cut cut",
     "held: measures coat/cut none!"},
    {"whichever of them is cast first",
     "who Ada measured -181 | who Ben measured never | costume 1A Ben | costume 2A Ada | "
     "piece coat 1A,2A make | step coat/cut cut",
     "held: measures coat/cut none!"},
    {"a sheet of 180 days ago is still good",
     "who Ada measured -180 | costume 1A Ada | piece coat 1A make | step coat/cut cut", "in-work"},
    {"a sheet of 181 days ago is old",
     "who Ada measured -181 | costume 1A Ada | piece coat 1A make | step coat/cut cut",
     "held: measures coat/cut old!"},
    {"a sheet dated after today counts",
     "who Ada measured 5 | costume 1A Ada | piece coat 1A make | step coat/cut cut", "in-work"},
    {"a growing performer's measures are good for less long",
     "who Ada measured -31 good 30 | costume 1A Ada | piece coat 1A make | step coat/cut cut",
     "held: measures coat/cut old!"},
    {"and still good on the last of those days",
     "who Ada measured -30 good 30 | costume 1A Ada | piece coat 1A make | step coat/cut cut", "in-work"},
    {"measures good for no day are good on the day itself",
     "who Ada measured 0 good 0 | costume 1A Ada | piece coat 1A make | step coat/cut cut", "in-work"},
    {"each performer has a limit of their own",
     "who Ada measured -50 | who Ben measured -50 good 49 | costume 1A Ada | costume 2A Ben | "
     "piece coat 1A,2A make | step coat/cut cut",
     "held: measures coat/cut old!"},
    {"a listed measure is old although the newest sheet is not",
     COAT "step coat/cut cut lists Ada:0,Ada:-181", "held: measures coat/cut old!"},
    {"listed measures taken 180 days ago are still good", COAT "step coat/cut cut lists Ada:0,Ada:-180",
     "in-work"},
    {"where measures are listed the sheet's own day does not matter",
     "who Ada measured -181 | costume 1A Ada | piece coat 1A make | step coat/cut cut lists Ada:-180",
     "in-work"},
    {"after a fitting of the piece was held no measures are needed",
     "who Ada measured never | costume 1A Ada | piece coat 1A make held | "
     "step coat/cut cut | step coat/line draft lists Ada:never",
     "in-work"},
};

static const scene_row materials[] = {
    {"cloth on the shelf is not waited on", COAT "step coat/sew machine cloth shelf", "in-work"},
    {"cloth that nobody ordered holds the costume", COAT "step coat/sew machine cloth unordered",
     "held: materials coat/sew not ordered!"},
    {"cloth on its way comes by itself", COAT "step coat/sew machine cloth due 5",
     "waiting: materials coat/sew due 2027-03-14"},
    {"cloth that should have come holds the costume", COAT "step coat/sew machine cloth late -1",
     "held: materials coat/sew late!"},
    {"an order without a day holds the costume", COAT "step coat/sew machine cloth undated",
     "held: materials coat/sew no date!"},
    {"each material that is short is told, in the order of the needs",
     COAT "step coat/sew machine cloth undated cloth shelf cloth due 1 cloth unordered",
     "held: materials coat/sew no date!, materials coat/sew due 2027-03-10, materials coat/sew not ordered!"},
};

static const scene_row fittings[] = {
    {"a fitting that nobody booked holds the costume", COAT "step coat/toile fit",
     "held: fitting coat/toile unbooked!"},
    {"a fitting to be done again is unbooked until it is booked anew",
     COAT "step coat/toile fit booked 3 again", "held: fitting coat/toile unbooked!"},
    {"a missed fitting holds the costume, whatever its day", COAT "step coat/toile fit booked 3 missed",
     "held: fitting coat/toile missed!"},
    {"a fitting of yesterday without an outcome was missed", COAT "step coat/toile fit booked -1",
     "held: fitting coat/toile missed!"},
    {"a fitting of today is booked", COAT "step coat/toile fit booked 0",
     "waiting: fitting coat/toile booked 2027-03-09"},
    {"a fitting to come is booked", COAT "step coat/toile fit booked 30",
     "waiting: fitting coat/toile booked 2027-04-08"},
    {"only a step of kind fit waits on a fitting", COAT "step coat/sew machine booked -1", "in-work"},
};

static const scene_row hand_sewing[] = {
    {"hand sewing waits for the hand-sewing table", COAT "step coat/hem hand",
     "finishing: hand coat/hem open"},
    {"it waits on its trims too", COAT "step coat/trim hand cloth unordered",
     "held: materials coat/trim not ordered!, hand coat/trim open"},
};

#define DUE_ON(day) "who Ada | costume 1A Ada due " day " | piece coat 1A make | step coat/sew machine | "

static const scene_row people[] = {
    {"with nobody in the workroom nobody is missed", COAT "step coat/sew machine", "in-work"},
    {"nobody there can machine", COAT "step coat/sew machine | person hand,press tue",
     "held: people coat/sew nobody!"},
    {"somebody there can", COAT "step coat/sew machine | person hand,machine tue", "in-work"},
    {"one of two is enough", COAT "step coat/sew machine | person cut mon | person machine fri", "in-work"},
    {"a person without hours helps nobody", COAT "step coat/sew machine | person machine never",
     "held: people coat/sew nobody!"},
    {"today counts", DUE_ON("0") "person machine tue", "in-work"},
    {"the due day counts", DUE_ON("3") "person machine fri", "in-work"},
    {"the day after the due day does not", DUE_ON("3") "person machine sat", "held: people coat/sew nobody!"},
    {"yesterday's weekday comes in six days", DUE_ON("6") "person machine mon", "in-work"},
    {"and not in five", DUE_ON("5") "person machine mon", "held: people coat/sew nobody!"},
    {"a due day that is past leaves nobody", DUE_ON("-1") "person machine mon,tue,wed,thu,fri,sat,sun",
     "held: people coat/sew nobody!"},
    {"a person who comes on the due day is there", DUE_ON("3") "person machine fri from 3", "in-work"},
    {"a person who comes after it is not", DUE_ON("3") "person machine fri,sat from 4",
     "held: people coat/sew nobody!"},
    {"a person's last day counts", DUE_ON("9") "person machine fri until 3", "in-work"},
    {"a person who left before the next working day is gone", DUE_ON("9") "person machine fri until 2",
     "held: people coat/sew nobody!"},
    {"absences are taken off, both days included", DUE_ON("9") "person machine tue,wed,thu away 0 9",
     "held: people coat/sew nobody!"},
    {"the day after an absence is enough", DUE_ON("3") "person machine tue,wed,thu,fri away 0 2", "in-work"},
    {"absences in any order are taken off", DUE_ON("3") "person machine tue,fri away 3 3 away 0 1",
     "held: people coat/sew nobody!"},
    {"two persons away at different times still leave nobody",
     DUE_ON("1") "person machine tue away 0 0 | person machine wed away 1 4",
     "held: people coat/sew nobody!"},
    {"where there is no due day any day will do", DUE_ON("never") "person machine mon from 4000", "in-work"},
    {"hand sewing needs people as well", COAT "step coat/hem hand | person machine tue",
     "held: hand coat/hem open, people coat/hem nobody!"},
    {"a fitting needs people as well", COAT "step coat/toile fit booked 1 | person machine tue",
     "held: fitting coat/toile booked 2027-03-10, people coat/toile nobody!"},
    {"the first of a piece's costumes decides by when",
     "who Ada | costume 1A Ada due 9 | costume 2A Ada due 2 | piece coat 1A,2A | step coat/sew machine | "
     "person machine fri",
     "held: people coat/sew nobody!"},
};

static const scene_row pieces_out[] = {
    {"a piece that is out is waited for",
     COAT "step coat/sew machine done | piece hat 1A out back 2 | step hat/wire craft",
     "waiting: out hat back 2027-03-11"},
    {"back today is not overdue",
     "who Ada | costume 1A Ada | piece coat 1A out back 0 | step coat/sew machine",
     "waiting: out coat back 2027-03-09"},
    {"back yesterday is", "who Ada | costume 1A Ada | piece coat 1A out back -1 | step coat/sew machine",
     "held: out coat overdue!"},
    {"out with no day holds the costume",
     "who Ada | costume 1A Ada | piece coat 1A out | step coat/sew machine", "held: out coat no date!"},
    {"it is told once for the piece, before the waits of its steps",
     "who Ada | costume 1A Ada | piece coat 1A out back 1 | step coat/hem hand | step coat/sew machine | "
     "step coat/eyes hand",
     "waiting: out coat back 2027-03-10, hand coat/hem open, hand coat/eyes open"},
    {"it is told also when no step is open",
     "who Ada | costume 1A Ada | piece coat 1A out back 1 | step coat/hem hand done",
     "waiting: out coat back 2027-03-10"},
    {"a day to be back means nothing while the piece is here",
     "who Ada | costume 1A Ada | piece coat 1A back -1 | step coat/sew machine", "in-work"},
};

static const scene_row order[] = {
    {"a step waits on another costume's step",
     TWO_COSTUMES
     "piece block 2A | step block/draft draft | piece coat 1A | step coat/cut cut after block/draft",
     "waiting: order coat/cut block/draft"},
    {"also when that costume comes first",
     "costume 2A nobody | costume 1A nobody | piece block 2A | step block/draft draft | piece coat 1A | "
     "step coat/cut cut after block/draft",
     "waiting: order coat/cut block/draft"},
    {"nothing is told where the step before is in the same piece",
     COAT
     "step coat/draft draft done | step coat/cut cut after coat/draft | step coat/sew machine after coat/cut",
     "in-work"},
    {"nor where it is in another piece of this costume",
     "who Ada | costume 1A Ada | piece hat 1A | step hat/block craft cloth due 1 | piece coat 1A | "
     "step coat/cut cut after hat/block",
     "waiting: materials hat/block due 2027-03-10"},
    {"nor where one of the open steps before is of this costume",
     TWO_COSTUMES
     "piece block 2A | step block/draft draft | piece coat 1A | step coat/sew machine cloth due 1 | "
     "step coat/cut cut after block/draft,coat/sew",
     "waiting: materials coat/sew due 2027-03-10"},
    {"a done step before does not count",
     TWO_COSTUMES "piece block 2A | step block/draft draft | piece coat 1A | step coat/sew machine done | "
                  "step coat/cut cut after coat/sew,block/draft",
     "waiting: order coat/cut block/draft"},
    {"the open steps before are told in the order written",
     TWO_COSTUMES "piece block 2A | step block/a draft | step block/b draft done | step block/c draft | "
                  "piece coat 1A | step coat/cut cut after block/c,block/b,block/a",
     "waiting: order coat/cut block/c;block/a"},
    {"a step is next when all before it are done",
     TWO_COSTUMES "piece block 2A | step block/draft draft done | piece coat 1A | "
                  "step coat/cut cut after block/draft",
     "in-work"},
    {"a step done before its time waits on nothing",
     TWO_COSTUMES "piece block 2A | step block/draft draft | piece coat 1A | "
                  "step coat/cut cut after block/draft done | step coat/sew machine after coat/cut",
     "in-work"},
    {"a step that is not next waits on nothing but the order",
     "who Ada measured never | costume 1A Ada | costume 2A Ada | piece block 2A | step block/draft draft | "
     "piece coat 1A make | step coat/cut cut after block/draft cloth unordered",
     "waiting: order coat/cut block/draft"},
    {"waits stand in the order of pieces, then of steps, then of kinds",
     "who Ada measured never | costume 1A Ada | costume 2A Ada | piece block 2A | piece hat 1A | piece coat "
     "1A make | "
     "step block/a draft | step coat/cut cut cloth unordered | step hat/trim hand after block/a | "
     "step coat/hem hand cloth due 1 | step hat/wire hand | person machine tue",
     "held: order hat/trim block/a, hand hat/wire open, people hat/wire nobody!, measures coat/cut none!, "
     "materials coat/cut not ordered!, people coat/cut nobody!, materials coat/hem due 2027-03-10, "
     "hand coat/hem open, people coat/hem nobody!"},
};

START_TEST(a_step_waits_on_measures_of_those_who_wear_the_piece)
{
    SCENE_CHECK(measures);
}
END_TEST

START_TEST(a_step_waits_on_each_material_it_is_short_of)
{
    SCENE_CHECK(materials);
}
END_TEST

START_TEST(a_fitting_waits_until_it_was_held)
{
    SCENE_CHECK(fittings);
}
END_TEST

START_TEST(hand_sewing_waits_for_the_table)
{
    SCENE_CHECK(hand_sewing);
}
END_TEST

START_TEST(a_step_waits_on_people_who_can_do_it_in_time)
{
    SCENE_CHECK(people);
}
END_TEST

START_TEST(a_piece_that_is_out_is_waited_for)
{
    SCENE_CHECK(pieces_out);
}
END_TEST

START_TEST(a_step_waits_on_steps_of_other_costumes)
{
    SCENE_CHECK(order);
}
END_TEST

START_TEST(an_order_wait_is_told_only_to_the_costume_that_cannot_see_the_step_before)
{
    static wait_scene scene;
    bk_arena *arena = bk_arena_new();
    scene_read(&scene,
               TWO_COSTUMES "piece block 2A | step block/draft machine | piece coat 1A,2A | "
                            "step coat/cut cut after block/draft",
               arena);
    ck_assert_str_eq(scene_told(&scene, "1A"), "waiting: order coat/cut block/draft");
    ck_assert_str_eq(scene_told(&scene, "2A"), "in-work");
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_shared_piece_is_told_to_each_of_its_costumes)
{
    static wait_scene scene;
    bk_arena *arena = bk_arena_new();
    scene_read(&scene, TWO_COSTUMES "piece shirt 1A,2A out | step shirt/hem hand cloth unordered", arena);
    const char *told = "held: out shirt no date!, materials shirt/hem not ordered!, hand shirt/hem open";
    ck_assert_str_eq(scene_told(&scene, "1A"), told);
    ck_assert_str_eq(scene_told(&scene, "2A"), told);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_wait_keeps_its_claim_and_its_day_after_the_rows_are_gone)
{
    static wait_scene scene;
    bk_arena *arena = bk_arena_new();
    scene_read(&scene, COAT "step coat/sew machine cloth shelf cloth late -4 | piece hat 1A out back -2",
               arena);
    scene.claims[0][1].short_of = 2 * BK_QUANTITY_ONE;
    const bk_costume_waits *all = bk_waits_reckon(&scene.rows, arena);
    scene.claims[0][1].short_of = 0;
    ck_assert_uint_eq(all[0].wait_count, 2);
    ck_assert_int_eq(all[0].waits[0].claim->short_of, 2 * BK_QUANTITY_ONE);
    ck_assert_int_eq(all[0].waits[0].day, scene_today() - 4);
    ck_assert_ptr_null(all[0].waits[1].claim);
    ck_assert_int_eq(all[0].waits[1].day, scene_today() - 2);
    ck_assert(all[0].waits[1].step == BK_NO_INDEX);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_piece_is_due_when_the_first_of_its_costumes_is)
{
    static wait_scene scene;
    bk_arena *arena = bk_arena_new();
    scene_read(&scene,
               "costume 1A nobody due 9 | costume 2A nobody due 4 | costume 3A nobody due never | "
               "piece coat 1A,2A,3A | piece hat 1A | piece fan 3A",
               arena);
    ck_assert_int_eq(bk_piece_due(&scene.rows, 0), scene_today() + 4);
    ck_assert_int_eq(bk_piece_due(&scene.rows, 1), scene_today() + 9);
    ck_assert_int_eq(bk_piece_due(&scene.rows, 2), BK_NO_DAY);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_step_is_next_when_it_is_open_and_all_before_it_are_done)
{
    static wait_scene scene;
    bk_arena *arena = bk_arena_new();
    scene_read(&scene,
               COAT
               "step coat/a cut done | step coat/b cut after coat/a | step coat/c cut after coat/a,coat/b | "
               "step coat/d cut done after coat/c",
               arena);
    ck_assert(!bk_step_next(&scene.rows, 0));
    ck_assert(bk_step_next(&scene.rows, 1));
    ck_assert(!bk_step_next(&scene.rows, 2));
    ck_assert(!bk_step_next(&scene.rows, 3));
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("waits", a_step_waits_on_measures_of_those_who_wear_the_piece,
             a_step_waits_on_each_material_it_is_short_of, a_fitting_waits_until_it_was_held,
             hand_sewing_waits_for_the_table, a_step_waits_on_people_who_can_do_it_in_time,
             a_piece_that_is_out_is_waited_for, a_step_waits_on_steps_of_other_costumes,
             an_order_wait_is_told_only_to_the_costume_that_cannot_see_the_step_before,
             a_shared_piece_is_told_to_each_of_its_costumes,
             a_wait_keeps_its_claim_and_its_day_after_the_rows_are_gone,
             a_piece_is_due_when_the_first_of_its_costumes_is,
             a_step_is_next_when_it_is_open_and_all_before_it_are_done)
