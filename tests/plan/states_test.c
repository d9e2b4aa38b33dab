#include "bodkin/plan/waits.h"

#include "plan/scene.h"
#include "support/testing.h"

// The form of the scenes stands in scene.h. Today is Tuesday 2027-03-09.

#define COSTUME "who Ada | costume 1A Ada | "
#define COAT COSTUME "piece coat 1A | "

static const scene_row states[] = {
    {"a costume without a piece is unlisted", "costume 1A nobody", "unlisted"},
    {"a piece without steps leaves it unlisted when nothing else is open",
     COAT "step coat/sew machine done | piece hat 1A", "unlisted"},
    {"even when that piece is out", COSTUME "piece hat 1A out back 1", "unlisted: out hat back 2027-03-10"},
    {"a piece without steps does not hide what is open", COAT "step coat/sew machine | piece hat 1A",
     "in-work"},
    {"nor what holds it", COAT "step coat/toile fit | piece hat 1A", "held: fitting coat/toile unbooked!"},
    {"all done and all here is ready", COAT "step coat/sew machine done", "ready (can go on)"},
    {"all done but a piece out is waiting",
     COAT "step coat/sew machine done | piece hat 1A out back 0 | step hat/x hand done",
     "waiting: out hat back 2027-03-09"},
    {"whichever piece that is",
     COSTUME "piece hat 1A out back 0 | step hat/x hand done | piece coat 1A | step coat/sew machine done",
     "waiting: out hat back 2027-03-09"},
    {"all done but a piece overdue is held", COSTUME "piece hat 1A out back -1 | step hat/x hand done",
     "held: out hat overdue!"},
    {"all done but a piece out with no day is held", COSTUME "piece hat 1A out | step hat/x hand done",
     "held: out hat no date!"},
    {"one piece back late is enough to hold it",
     COSTUME
     "piece hat 1A out back 3 | step hat/x hand done | piece fan 1A out back -3 | step fan/x hand done",
     "held: out hat back 2027-03-12, out fan overdue!"},
    {"one step that waits on nothing is work, whatever holds the others",
     COAT "step coat/sew machine | step coat/toile fit", "in-work: fitting coat/toile unbooked!"},
    {"a step of a piece that is out is no work", COSTUME "piece coat 1A out back 1 | step coat/sew machine",
     "waiting: out coat back 2027-03-10"},
    {"but a step of another piece is",
     COSTUME "piece hat 1A out | step hat/x craft | piece coat 1A | step coat/sew machine",
     "in-work: out hat no date!"},
    {"nothing left but hand sewing is finishing", COAT "step coat/hem hand | step coat/eyes hand",
     "finishing: hand coat/hem open, hand coat/eyes open"},
    {"finishing looks at next steps alone", COAT "step coat/hem hand | step coat/press press after coat/hem",
     "finishing: hand coat/hem open"},
    {"and so passes over what waits on another costume's step",
     COSTUME "costume 2A Ada | piece hat 2A | step hat/x craft | piece coat 1A | step coat/hem hand | "
             "step coat/trim craft after hat/x",
     "finishing: hand coat/hem open, order coat/trim hat/x"},
    {"a done piece that is overdue does not end finishing, as no next step waits on it",
     COAT "step coat/hem hand | piece hat 1A out back -1 | step hat/x craft done",
     "finishing: hand coat/hem open, out hat overdue!"},
    {"hand sewing on a piece that is out is not finishing",
     COSTUME "piece coat 1A out back 1 | step coat/hem hand",
     "waiting: out coat back 2027-03-10, hand coat/hem open"},
    {"hand sewing that waits on its trims is not finishing", COAT "step coat/hem hand cloth due 1",
     "waiting: materials coat/hem due 2027-03-10, hand coat/hem open"},
    {"hand sewing beside a fitting to come is not finishing",
     COAT "step coat/hem hand | step coat/last fit booked 1",
     "waiting: hand coat/hem open, fitting coat/last booked 2027-03-10"},
    {"whichever comes first", COAT "step coat/last fit booked 1 | step coat/hem hand",
     "waiting: fitting coat/last booked 2027-03-10, hand coat/hem open"},
    {"hand sewing with nobody to do it is held", COAT "step coat/hem hand | person cut tue",
     "held: hand coat/hem open, people coat/hem nobody!"},
    {"one wait for somebody to act holds it",
     COAT "step coat/first fit booked 1 | step coat/cut cut cloth due 2 | step coat/lace craft cloth late -1",
     "held: fitting coat/first booked 2027-03-10, materials coat/cut due 2027-03-11, materials coat/lace "
     "late!"},
    {"what comes by itself is waited for",
     COAT "step coat/first fit booked 1 | step coat/cut cut cloth due 2",
     "waiting: fitting coat/first booked 2027-03-10, materials coat/cut due 2027-03-11"},
    {"with no next step of its own it waits",
     COSTUME "costume 2A Ada | piece hat 2A | step hat/x fit | piece coat 1A | step coat/a cut after hat/x | "
             "step coat/b cut after coat/a",
     "waiting: order coat/a hat/x"},
    {"with no next step of its own and a piece overdue it is held",
     COSTUME "costume 2A Ada | piece hat 2A | step hat/x fit | piece coat 1A out back -1 | step coat/a cut "
             "after hat/x",
     "held: out coat overdue!, order coat/a hat/x"},
};

static const scene_row going_on[] = {
    {"it can go on when all that is open can wait",
     COAT "step coat/hem hand can-wait | step coat/sew machine done",
     "finishing (can go on): hand coat/hem open"},
    {"also when that is held up", COAT "step coat/trim craft can-wait cloth unordered",
     "held (can go on): materials coat/trim not ordered!"},
    {"also when that is not next", COAT "step coat/a cut can-wait | step coat/b cut can-wait after coat/a",
     "in-work (can go on)"},
    {"not while one open step cannot wait", COAT "step coat/hem hand can-wait | step coat/sew machine",
     "in-work: hand coat/hem open"},
    {"not while one open step of another piece cannot wait",
     COAT "step coat/hem hand can-wait | piece hat 1A | step hat/x machine", "in-work: hand coat/hem open"},
    {"whichever piece that is", COAT "step coat/sew machine | piece hat 1A | step hat/trim hand can-wait",
     "in-work: hand hat/trim open"},
    {"not while a piece is out, though all its steps are done",
     COAT "step coat/hem hand can-wait | piece hat 1A out back 1 | step hat/x craft done",
     "finishing: hand coat/hem open, out hat back 2027-03-10"},
    {"not while a piece has no steps", COAT "step coat/hem hand can-wait | piece hat 1A",
     "finishing: hand coat/hem open"},
    {"not without a piece", "costume 1A nobody", "unlisted"},
};

START_TEST(a_costume_has_the_first_state_that_is_true)
{
    SCENE_CHECK(states);
}
END_TEST

START_TEST(a_costume_can_go_on_when_all_that_is_open_can_wait)
{
    SCENE_CHECK(going_on);
}
END_TEST

START_TEST(steps_and_minutes_add_up_over_the_pieces_of_each_costume)
{
    static wait_scene scene;
    bk_arena *arena = bk_arena_new();
    scene_read(
        &scene,
        "costume 1A nobody | costume 2A nobody | costume 3A nobody | piece shirt 1A,2A | piece coat 1A | "
        "step shirt/a cut minutes 10 done | step shirt/b cut minutes 20 | step coat/a cut minutes 40",
        arena);
    static const int64_t expected[][4] = {{3, 1, 70, 60}, {2, 1, 30, 20}, {0, 0, 0, 0}};
    const bk_costume_waits *all = bk_waits_reckon(&scene.rows, arena);
    for (size_t i = 0; i < sizeof expected / sizeof expected[0]; i++) {
        ck_assert_int_eq(all[i].steps, expected[i][0]);
        ck_assert_int_eq(all[i].steps_done, expected[i][1]);
        ck_assert_int_eq(all[i].minutes, expected[i][2]);
        ck_assert_int_eq(all[i].minutes_left, expected[i][3]);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(an_empty_production_has_no_costume_to_reckon)
{
    bk_arena *arena = bk_arena_new();
    bk_wait_rows nothing = {.today = scene_today()};
    ck_assert_ptr_nonnull(bk_waits_reckon(&nothing, arena));
    bk_arena_free(arena);
}
END_TEST

START_TEST(states_and_waits_are_called_by_their_words)
{
    static const char *const state_words[] = {"ready", "in-work", "finishing", "waiting", "held", "unlisted"};
    static const char *const wait_words[] = {"measures", "materials", "fitting", "hand",
                                             "people",   "out",       "order"};
    ck_assert_uint_eq(bk_state_words.count, BK_STATES);
    for (int i = 0; i < BK_STATES; i++)
        ck_assert_str_eq(bk_word_text(&bk_state_words, i), state_words[i]);
    ck_assert_uint_eq(bk_wait_words.count, BK_WAITS_ON);
    for (int i = 0; i < BK_WAITS_ON; i++)
        ck_assert_str_eq(bk_word_text(&bk_wait_words, i), wait_words[i]);
}
END_TEST

BK_TEST_MAIN("states", a_costume_has_the_first_state_that_is_true,
             a_costume_can_go_on_when_all_that_is_open_can_wait,
             steps_and_minutes_add_up_over_the_pieces_of_each_costume,
             an_empty_production_has_no_costume_to_reckon, states_and_waits_are_called_by_their_words)
