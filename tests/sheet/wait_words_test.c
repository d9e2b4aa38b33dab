// Waits, states and the seam in words and marks, as every screen and sheet shows them.

#include "bodkin/sheet/wait_words.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "sheet/hand_rail.h"
#include "support/testing.h"

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (arena == NULL)
        arena = bk_arena_new();
    return arena;
}

// ----------------------------------------------------------------------------------------------------- waits

/// A claim of 2.4, of which `short_of` millionths are short, and when the rest comes.
static bk_claim claim_of(size_t material, bk_quantity short_of, bk_supply supply, bk_day comes)
{
    return (bk_claim){.material = material,
                      .quantity = 2400000,
                      .short_of = short_of,
                      .supply = supply,
                      .supply_day = comes};
}

static void expect_told(const bk_wait *wait, const char *brief, const char *sentence)
{
    hand_rail *hand = hand_rail_new();
    ck_assert_str_eq(bk_wait_brief(&hand->rail, wait, texts()), brief);
    ck_assert_str_eq(bk_wait_sentence(&hand->rail, wait, texts()), sentence);
}

START_TEST(measures)
{
    static const struct {
        bk_wait_detail detail;
        const char *brief, *sentence;
    } rows[] = {
        {BK_DETAIL_UNCAST, "not cast", "cannot be measured: nobody plays the role yet"},
        {BK_DETAIL_NONE, "no measures", "needs measures: there is no measure sheet yet"},
        {BK_DETAIL_PART, "a measure missing", "needs measures: one it is made to was never taken"},
        {BK_DETAIL_OLD, "measures too old", "needs measures: the last ones are too old"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        expect_told(
            &(bk_wait){.on = BK_WAIT_MEASURES, .piece = GOWN, .step = GOWN_CUT, .detail = rows[i].detail},
            rows[i].brief, rows[i].sentence);
}
END_TEST

START_TEST(the_measure_that_was_never_taken_is_named)
{
    hand_rail *hand = hand_rail_new();
    const bk_wait_taking takings[] = {{0, DAY(2, 3), "waist girth"}, {0, BK_NO_DAY, "waist to floor"}};
    bk_wait wait = {.on = BK_WAIT_MEASURES, .piece = GOWN, .step = GOWN_CUT, .detail = BK_DETAIL_PART};
    hand->wait_steps[GOWN_CUT].takings = takings;
    hand->wait_steps[GOWN_CUT].taking_count = sizeof takings / sizeof *takings;
    ck_assert_str_eq(bk_wait_sentence(&hand->rail, &wait, texts()),
                     "needs measures: waist to floor was never taken");
}
END_TEST

typedef struct material_row {
    bk_wait_detail detail;
    bk_supply supply;
    size_t material;
    bk_quantity short_of;
    bk_day comes;
    const char *brief, *sentence;
} material_row;

START_TEST(materials)
{
    const material_row rows[] = {
        {BK_DETAIL_NOT_ORDERED, BK_SUPPLY_NOT_ORDERED, FLANNEL, 2400000, BK_NO_DAY,
         "wool flannel not ordered", "needs 2.4 m of wool flannel: none on the shelf, all of it not ordered"},
        {BK_DETAIL_DUE, BK_SUPPLY_DUE, FLANNEL, 1400000, DAY(3, 9), "wool flannel due Tue 9 Mar",
         "needs 2.4 m of wool flannel: 1 m on the shelf, 1.4 m due Tue 9 Mar"},
        {BK_DETAIL_DUE, BK_SUPPLY_DUE, FLANNEL, 1400000, bk_day_of(2028, 1, 5),
         "wool flannel due Wed 5 Jan 2028",
         "needs 2.4 m of wool flannel: 1 m on the shelf, 1.4 m due Wed 5 Jan 2028"},
        {BK_DETAIL_LATE, BK_SUPPLY_LATE, FLANNEL, 400000, DAY(2, 22), "wool flannel late",
         "needs 2.4 m of wool flannel: 2 m on the shelf, 0.4 m late, was due Mon 22 Feb"},
        {BK_DETAIL_NO_DATE, BK_SUPPLY_NO_DATE, HOOKS, 400000, BK_NO_DAY, "no date for hooks",
         "needs 2.4 hooks: 2 on the shelf, 0.4 ordered without a date"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        bk_claim claim = claim_of(rows[i].material, rows[i].short_of, rows[i].supply, rows[i].comes);
        expect_told(&(bk_wait){.on = BK_WAIT_MATERIALS,
                               .piece = GOWN,
                               .step = GOWN_CUT,
                               .detail = rows[i].detail,
                               .day = rows[i].comes,
                               .claim = &claim},
                    rows[i].brief, rows[i].sentence);
    }
}
END_TEST

START_TEST(a_need_that_the_shelf_meets_says_so_also_while_its_step_is_not_next)
{
    hand_rail *hand = hand_rail_new();
    bk_claim met = claim_of(FLANNEL, 0, BK_SUPPLY_SHELF, BK_NO_DAY);
    bk_claim none = claim_of(HOOKS, 2400000, BK_SUPPLY_NOT_ORDERED, BK_NO_DAY);
    ck_assert_str_eq(bk_claim_sentence(&hand->rail, &met, texts()),
                     "needs 2.4 m of wool flannel: on the shelf");
    ck_assert_str_eq(bk_claim_sentence(&hand->rail, &none, texts()),
                     "needs 2.4 hooks: none on the shelf, all of it not ordered");
}
END_TEST

START_TEST(what_orders_meet_in_part_is_told_beside_what_is_not_ordered)
{
    hand_rail *hand = hand_rail_new();
    bk_claim claim = claim_of(FLANNEL, 1400000, BK_SUPPLY_NOT_ORDERED, BK_NO_DAY);
    claim.unmet = 900000;
    ck_assert_str_eq(bk_claim_sentence(&hand->rail, &claim, texts()),
                     "needs 2.4 m of wool flannel: 1 m on the shelf, 0.5 m on order, 0.9 m not ordered");
}
END_TEST

START_TEST(fittings_and_hand_sewing)
{
    bk_wait wait = {.on = BK_WAIT_FITTING, .piece = CLOAK, .step = CLOAK_FIT, .detail = BK_DETAIL_UNBOOKED};
    expect_told(&wait, "fitting not booked", "the fitting is not booked");
    wait.detail = BK_DETAIL_MISSED;
    expect_told(&wait, "fitting missed", "the fitting was missed: book another");
    wait.detail = BK_DETAIL_BOOKED;
    wait.day = DAY(3, 6);
    expect_told(&wait, "fitting Sat 6 Mar", "the fitting is booked for Sat 6 Mar");
    wait = (bk_wait){.on = BK_WAIT_HAND, .piece = CLOAK, .step = CLOAK_HEM, .detail = BK_DETAIL_OPEN};
    expect_told(&wait, "hand sewing", "waits for the hand-sewing table");
}
END_TEST

START_TEST(people)
{
    static const char *const briefs[BK_KINDS] = {
        "nobody to find things", "nobody to draft", "nobody to cut", "nobody to tack",
        "nobody to machine",     "nobody to press", "nobody to fit", "nobody to sew by hand",
        "nobody for craft work", "nobody to dye"};
    hand_rail *hand = hand_rail_new();
    bk_wait wait = {.on = BK_WAIT_PEOPLE, .piece = GOWN, .step = GOWN_CUT, .detail = BK_DETAIL_NOBODY};
    for (int kind = 0; kind < BK_KINDS; kind++) {
        hand->wait_steps[GOWN_CUT].kind = kind;
        ck_assert_str_eq(bk_wait_brief(&hand->rail, &wait, texts()), briefs[kind]);
    }
    ck_assert_str_eq(bk_wait_sentence(&hand->rail, &wait, texts()),
                     "nobody who can do the dye step has hours by Tue 16 Mar");
    hand->wait_pieces[GOWN].costumes.count = 0;
    ck_assert_str_eq(bk_wait_sentence(&hand->rail, &wait, texts()),
                     "nobody who can do the dye step has hours");
}
END_TEST

START_TEST(pieces_that_are_out)
{
    hand_rail *hand = hand_rail_new();
    bk_wait wait = {.on = BK_WAIT_OUT, .piece = GOWN, .step = BK_NO_INDEX, .detail = BK_DETAIL_NO_DATE};
    ck_assert_str_eq(bk_wait_brief(&hand->rail, &wait, texts()), "out, no day promised");
    ck_assert_str_eq(bk_wait_sentence(&hand->rail, &wait, texts()),
                     "is out with the dye house, no day promised");
    wait.detail = BK_DETAIL_BACK;
    wait.day = hand->pieces[GOWN].back_by = DAY(3, 6);
    ck_assert_str_eq(bk_wait_brief(&hand->rail, &wait, texts()), "out, back Sat 6 Mar");
    ck_assert_str_eq(bk_wait_sentence(&hand->rail, &wait, texts()),
                     "is out with the dye house, back Sat 6 Mar");
    wait.detail = BK_DETAIL_OVERDUE;
    hand->pieces[GOWN].back_by = DAY(2, 26);
    ck_assert_str_eq(bk_wait_brief(&hand->rail, &wait, texts()), "out, overdue");
    ck_assert_str_eq(bk_wait_sentence(&hand->rail, &wait, texts()),
                     "is out with the dye house, was to be back Fri 26 Feb");
}
END_TEST

START_TEST(steps_of_other_costumes)
{
    static const size_t steps[] = {GOWN_CUT, CLOAK_HEM, CLOAK_FIT};
    static const char *const words[] = {"G1/cut", "G1/cut and C1/hem", "G1/cut, C1/hem and C1/fit"};
    for (size_t count = 1; count <= sizeof steps / sizeof *steps; count++)
        expect_told(&(bk_wait){.on = BK_WAIT_ORDER,
                               .piece = CLOAK,
                               .step = CLOAK_FIT,
                               .detail = BK_DETAIL_STEPS,
                               .steps = {steps, count}},
                    bk_arena_print(texts(), "after %s", words[count - 1]),
                    bk_arena_print(texts(), "comes after %s, not part of this costume", words[count - 1]));
}
END_TEST

START_TEST(in_brief_what_somebody_must_act_on_comes_first_and_each_is_said_once)
{
    static const bk_wait waits[] = {
        {.on = BK_WAIT_HAND, .piece = CLOAK, .step = CLOAK_HEM, .detail = BK_DETAIL_OPEN},
        {.on = BK_WAIT_FITTING, .piece = CLOAK, .step = CLOAK_FIT, .detail = BK_DETAIL_MISSED, .acts = true},
        {.on = BK_WAIT_HAND, .piece = GOWN, .step = GOWN_CUT, .detail = BK_DETAIL_OPEN},
        {.on = BK_WAIT_MEASURES, .piece = GOWN, .step = GOWN_CUT, .detail = BK_DETAIL_NONE, .acts = true},
        {.on = BK_WAIT_FITTING, .piece = GOWN, .step = GOWN_CUT, .detail = BK_DETAIL_MISSED, .acts = true},
    };
    hand_rail *hand = hand_rail_new();
    ck_assert_str_eq(bk_costume_waits_brief(&hand->rail, &hand->costume, SIZE_MAX, texts()), "");
    hand_rail_wait(hand, BK_HELD, waits, sizeof waits / sizeof *waits);
    ck_assert_str_eq(bk_costume_waits_brief(&hand->rail, &hand->costume, SIZE_MAX, texts()),
                     "fitting missed; no measures; hand sewing");
}
END_TEST

// -------------------------------------------------------------------------------- states, urgency, countdown

START_TEST(states_and_urgencies_are_words)
{
    static const char *const states[BK_STATES] = {"ready",   "in work", "finishing",
                                                  "waiting", "held",    "unlisted"};
    static const char *const urgencies[BK_URGENCIES] = {"late", "tight", "in time", ""};
    for (int i = 0; i < BK_STATES; i++)
        ck_assert_str_eq(bk_state_word((bk_state)i), states[i]);
    for (int i = 0; i < BK_URGENCIES; i++)
        ck_assert_str_eq(bk_urgency_word((bk_urgency)i), urgencies[i]);
}
END_TEST

START_TEST(a_costume_is_late_past_its_day_and_tight_within_seven_days_or_four_weeks_when_held)
{
    static const struct {
        int days;
        bk_state state;
        bk_urgency urgency;
    } rows[] = {
        {-1, BK_IN_WORK, BK_LATE},      {-1, BK_HELD, BK_LATE},      {-1, BK_READY, BK_IN_TIME},
        {0, BK_IN_WORK, BK_TIGHT},      {7, BK_WAITING, BK_TIGHT},   {8, BK_WAITING, BK_NOT_SAID},
        {28, BK_HELD, BK_TIGHT},        {29, BK_HELD, BK_NOT_SAID},  {0, BK_READY, BK_IN_TIME},
        {60, BK_UNLISTED, BK_NOT_SAID}, {3, BK_FINISHING, BK_TIGHT},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        hand_rail *hand = hand_rail_new();
        hand->reckoned.state = rows[i].state;
        hand->costume.due = hand->rail.today + rows[i].days;
        ck_assert_msg(bk_costume_urgency(&hand->rail, &hand->costume) == rows[i].urgency, "row %zu", i);
    }
}
END_TEST

START_TEST(the_countdown_is_told_in_whole_days)
{
    static const struct {
        int64_t days;
        const char *words;
    } rows[] = {{17, "17 days to opening"},
                {1, "1 day to opening"},
                {0, "opens today"},
                {-1, "opened 1 day ago"},
                {-3, "opened 3 days ago"}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        hand_rail *hand = hand_rail_new();
        hand->rail.days_left = rows[i].days;
        ck_assert_str_eq(bk_countdown(&hand->rail, texts()), rows[i].words);
    }
}
END_TEST

// -------------------------------------------------------------------------------------------------- the seam

typedef struct seam_row {
    bk_seam seam;
    size_t columns;
    const char *marks;
} seam_row;

static const seam_row seams[] = {
    {{0, 0, false}, 12, "            "},
    {{50, 50, false}, 12, "- - - . . . "},
    {{50, 50, true}, 12, "- - - |. . ."},
    {{100, 0, false}, 12, "- - - - - - "},
    {{100, 0, true}, 12, "- - - - - - "},
    {{0, 100, false}, 12, ". . . . . . "},
    {{0, 100, true}, 12, "|. . . . . ."},
    {{999, 1, false}, 12, "- - - - - . "}, // never all sewn while something is open
    {{1, 999, false}, 12, "- . . . . . "}, // nor none once something is done
    {{1, 999, true}, 4, "- |."},
    {{1, 1, true}, 2, "|."},
    {{1, 1, false}, 3, ".  "},
    {{1, 1, true}, 1, " "},
    {{1, 1, true}, 0, ""},
};

START_TEST(the_seam_is_sewn_in_proportion_and_takes_exactly_its_columns)
{
    for (size_t i = 0; i < sizeof seams / sizeof *seams; i++) {
        const char *plain = bk_seam_text(seams[i].seam, seams[i].columns, true, texts());
        ck_assert_msg(strcmp(plain, seams[i].marks) == 0, "row %zu: \"%s\" instead of \"%s\"", i, plain,
                      seams[i].marks);
        ck_assert_uint_eq(bk_text_columns(bk_seam_text(seams[i].seam, seams[i].columns, false, texts())),
                          seams[i].columns);
    }
    ck_assert_str_eq(bk_seam_text((bk_seam){50, 50, true}, 12, false, texts()), "━ ━ ━ ┃· · ·");
}
END_TEST

START_TEST(a_seam_of_any_width_and_any_minutes_keeps_its_rules)
{
    enum { WIDEST = 40, MINUTES = 60 };
    for (size_t columns = 2; columns <= WIDEST; columns++)
        for (int64_t done = 0; done <= MINUTES; done++) {
            bk_seam seam = {done, MINUTES - done, done % 2 == 0};
            const char *marks = bk_seam_text(seam, columns, true, texts());
            ck_assert_uint_eq(strlen(marks), columns);
            ck_assert((strchr(marks, '.') != NULL) == (seam.open > 0));
            ck_assert((strchr(marks, '|') != NULL) == (seam.open > 0 && seam.waits));
            ck_assert(columns < 4 || (strchr(marks, '-') != NULL) == (seam.done > 0));
            bk_arena_reset(texts());
        }
}
END_TEST

BK_TEST_MAIN("wait words", measures, the_measure_that_was_never_taken_is_named, materials,
             a_need_that_the_shelf_meets_says_so_also_while_its_step_is_not_next,
             what_orders_meet_in_part_is_told_beside_what_is_not_ordered, fittings_and_hand_sewing, people,
             pieces_that_are_out, steps_of_other_costumes,
             in_brief_what_somebody_must_act_on_comes_first_and_each_is_said_once,
             states_and_urgencies_are_words,
             a_costume_is_late_past_its_day_and_tight_within_seven_days_or_four_weeks_when_held,
             the_countdown_is_told_in_whole_days,
             the_seam_is_sewn_in_proportion_and_takes_exactly_its_columns,
             a_seam_of_any_width_and_any_minutes_keeps_its_rules)
