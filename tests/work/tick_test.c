#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/productions.h"
#include "bodkin/work/tick.h"
#include "work/show.h"

// The Salt Road has wool and linen counted (1.0 and 2.5), hooks never. P2/sew needs wool 2.4 and hooks 12;
// P2/cut came in done and needs linen 1.2; P2/fit has fittings, none of which fits.

#define MADE_AT "2027-03-02T09:30:00+01:00"

static bk_store *store_with_show(void)
{
    bk_store *store = open_store();
    bk_folder *folder = salt_road();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    return store;
}

static int64_t step_named(bk_store *store, const char *name)
{
    bk_production production;
    int64_t step = 0;
    MUST(bk_production_choose(store, NULL, today(), texts(), &production, &trouble));
    MUST(bk_step_find(store, &production, name, &step, &trouble));
    return step;
}

static bk_status tick_as(bk_store *store, const char *name, bk_tick tick, const char **sentence)
{
    return bk_step_tick(store, step_named(store, name), &tick, MADE_AT, texts(), sentence, &trouble);
}

static const bk_tick by_ada = {.done_by = "Ada", .took = BK_NOT_KNOWN};

static const char *tick(bk_store *store, const char *name)
{
    const char *sentence = NULL;
    bk_tick done = by_ada;
    done.done_on = today();
    MUST(tick_as(store, name, done, &sentence));
    return sentence;
}

static bk_status untick_as(bk_store *store, const char *name, const char **sentence)
{
    return bk_step_untick(store, step_named(store, name), DAY(3, 4), MADE_AT, texts(), sentence, &trouble);
}

static const char *untick(bk_store *store, const char *name)
{
    const char *sentence = NULL;
    MUST(untick_as(store, name, &sentence));
    return sentence;
}

/// What lies on the shelf, in words; "-" where it was never counted.
static const char *on_shelf(bk_store *store, const char *name)
{
    bk_rows rows;
    MUST(bk_store_read(store, BK_MATERIALS, 0, texts(), &rows, &trouble));
    for (size_t i = 0; i < rows.count; i++) {
        const bk_material *material = (const bk_material *)rows.items + i;
        char text[BK_AMOUNT_ROOM];
        if (strcmp(material->name, name) == 0)
            return material->on_hand == BK_NO_AMOUNT
                       ? "-"
                       : bk_arena_text(texts(), bk_quantity_write(material->on_hand, text));
    }
    return "no such material";
}

/// Day, hand and minutes of a step.
static const char *marks_of(const char *key)
{
    return bk_ask(
        bk_arena_print(texts(),
                       "SELECT coalesce(done_on, '-'), coalesce(done_by, '-'), coalesce(took, '-') FROM step "
                       "WHERE key = '%s'",
                       key));
}

static const char *movements(void)
{
    return bk_ask(
        "SELECT material.name, movement.kind, quantity, moved_on, key FROM movement JOIN material ON "
        "material.id = material_id JOIN step ON step.id = step_id ORDER BY movement.id");
}

/// Counts a material as a form would.
static void count_shelf(bk_store *store, const char *name, bk_quantity change)
{
    int64_t id =
        strtoll(bk_ask(bk_arena_print(texts(), "SELECT id FROM material WHERE name = '%s'", name)), NULL, 10);
    bk_movement count = {.material_id = id, .kind = BK_MOVED_COUNT, .quantity = change, .moved_on = today()};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_MOVEMENTS, &count, 0, NULL, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Counted", NULL, &trouble));
}

static void add_need(bk_store *store, const char *step, const char *material, bk_quantity quantity)
{
    bk_need need = {.step_id = step_named(store, step), .quantity = quantity};
    need.material_id = strtoll(
        bk_ask(bk_arena_print(texts(), "SELECT id FROM material WHERE name = '%s'", material)), NULL, 10);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_NEEDS, &need, 9, NULL, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Needs more", NULL, &trouble));
}

static void undo(bk_store *store)
{
    const char *sentence = NULL;
    MUST(bk_daybook_undo(store, 0, MADE_AT, texts(), &sentence, &trouble));
}

// ------------------------------------------------------------------------------------------------ the step
// itself

START_TEST(a_step_marked_done_says_when_by_whom_and_how_fast)
{
    bk_store *store = store_with_show();
    const char *sentence = NULL;
    MUST(tick_as(store, "P1/press", (bk_tick){DAY(3, 1), "Bo", 12}, &sentence));
    ck_assert_str_eq(sentence, "Done: P1 Step press");
    ck_assert_str_eq(marks_of("press"), "2027-03-01|Bo|12");
    ck_assert_str_eq(bk_ask("SELECT made_by, sentence FROM daybook ORDER BY id DESC LIMIT 1"),
                     "Ada|Done: P1 Step press");
    bk_store_close(store);
}
END_TEST

START_TEST(minutes_that_nobody_told_stay_not_known)
{
    bk_store *store = store_with_show();
    tick(store, "P1/press");
    ck_assert_str_eq(marks_of("press"), "2027-03-02|Ada|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_opened_again_forgets_all_of_it)
{
    bk_store *store = store_with_show();
    ck_assert_str_eq(untick(store, "P2/cut"), "Open again: P2 Cut it");
    ck_assert_str_eq(marks_of("cut"), "-|-|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_tick_is_one_entry_that_undo_takes_back)
{
    bk_store *store = store_with_show();
    const char *before = bk_records();
    tick(store, "P2/sew");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "2");
    undo(store);
    ck_assert_str_eq(bk_records(), before);
    untick(store, "P2/cut");
    undo(store);
    ck_assert_str_eq(bk_records(), before);
    bk_store_close(store);
}
END_TEST

/// A tick or its opposite is refused with these words, and nothing changes.
static void expect_refused(bk_store *store, bool done, const char *name, const char *words)
{
    const char *sentence = NULL;
    const char *before = bk_records();
    if (done)
        REFUSED(tick_as(store, name, (bk_tick){today(), "Ada", 5}, &sentence), BK_REFUSED, words);
    else
        REFUSED(untick_as(store, name, &sentence), BK_REFUSED, words);
    ck_assert_str_eq(bk_records(), before);
}

START_TEST(what_is_done_is_not_done_twice_and_what_is_open_not_opened)
{
    bk_store *store = store_with_show();
    expect_refused(store, true, "P2/cut", "P2/cut is done already, on Sun 28 Feb by Ada Pell.");
    expect_refused(store, false, "P2/sew", "P2/sew is open already.");
    tick(store, "P2/sew");
    expect_refused(store, true, "P2/sew", "P2/sew is done already, on Tue 2 Mar by Ada.");
    untick(store, "P2/sew");
    expect_refused(store, false, "P2/sew", "P2/sew is open already.");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_done_by_a_fitting_that_fits_is_neither_ticked_nor_opened)
{
    bk_store *store = store_with_show();
    bk_ask("UPDATE fitting SET outcome = 'fits' WHERE note IS NULL");
    expect_refused(store, true, "P2/fit", "P2/fit is done already: its fitting fits.");
    expect_refused(
        store, false, "P2/fit",
        "P2/fit is done because its fitting fits: to open it again, change what came of that fitting.");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_may_be_done_before_those_it_comes_after)
{
    bk_store *store = store_with_show();
    ck_assert_str_eq(tick(store, "P2/fit"), "Done: P2 Step fit");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_is_gone_is_told)
{
    bk_store *store = store_with_show();
    bk_tick done = {today(), "Ada", BK_NOT_KNOWN};
    const char *sentence = NULL;
    REFUSED(bk_step_tick(store, 99, &done, MADE_AT, texts(), &sentence, &trouble), BK_REFUSED,
            "This step is no longer in the workroom: somebody has removed it.");
    MUST(bk_store_change_begin(store, &trouble)); // nothing was left open
    bk_store_change_drop(store);
    bk_store_close(store);
}
END_TEST

// ----------------------------------------------------------------------------------------------------
// finding

typedef struct misnamed {
    const char *name;
    bk_status status;
    const char *words;
} misnamed;

static const misnamed names[] = {
    {"P2", BK_USAGE, "A step is named by its piece and its key, such as 4A-2/hem, not \"P2\"."},
    {"/cut", BK_USAGE, "not \"/cut\""},
    {"P2/", BK_USAGE, "not \"P2/\""},
    {"", BK_USAGE, "not \"\""},
    {"P2/cutt", BK_REFUSED, "The piece P2 has no step \"cutt\"; did you mean P2/cut?"},
    {"P2/CUT", BK_REFUSED, "did you mean P2/cut?"},
    {"P2/press", BK_REFUSED, "The piece P2 has no step \"press\"; it has these: sew, cut, fit."},
    {"P3/cut", BK_REFUSED, "The piece P3 has no step \"cut\"; it has no steps yet."},
    {"p2/cut", BK_REFUSED, "There is no piece \"p2\" in \"The Salt Road\"; did you mean P2?"},
    {"Bodice/cut", BK_REFUSED, "There is no piece \"Bodice\" in \"The Salt Road\"."},
    {"P\x1b/cut", BK_REFUSED, "There is no piece \"P·\""},
};

START_TEST(a_step_is_found_by_its_name_or_the_nearest_is_told)
{
    bk_store *store = store_with_show();
    bk_production production;
    int64_t step = 0;
    MUST(bk_production_choose(store, NULL, today(), texts(), &production, &trouble));
    MUST(bk_step_find(store, &production, "P2/cut", &step, &trouble));
    ck_assert_int_eq(step, strtoll(bk_ask("SELECT id FROM step WHERE key = 'cut'"), NULL, 10));
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        REFUSED(bk_step_find(store, &production, names[i].name, &step, &trouble), names[i].status,
                names[i].words);
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_of_another_production_is_not_meant)
{
    bk_store *store = store_with_show();
    bk_folder *other = bare_show("Chalk", DAY(9, 1));
    bk_production production;
    int64_t step = 0;
    take_in(store, other, false, NULL);
    bk_folder_free(other);
    MUST(bk_production_choose(store, "Chalk", today(), texts(), &production, &trouble));
    REFUSED(bk_step_find(store, &production, "P2/cut", &step, &trouble), BK_REFUSED,
            "no piece \"P2\" in \"Chalk\".");
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------------------- materials

START_TEST(the_needs_of_a_done_step_leave_the_shelf_and_come_back)
{
    bk_store *store = store_with_show();
    tick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "wool"), "-1.4");
    ck_assert_str_eq(movements(), "wool|use|-2400000|2027-03-02|sew");
    untick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "wool"), "1");
    ck_assert_str_eq(movements(), "wool|use|-2400000|2027-03-02|sew\nwool|return|2400000|2027-03-04|sew");
    bk_store_close(store);
}
END_TEST

START_TEST(a_material_that_was_never_counted_stays_not_known)
{
    bk_store *store = store_with_show();
    tick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "hooks"), "-");
    untick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "hooks"), "-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_material_counted_after_the_tick_comes_back_from_a_count_without_it)
{
    bk_store *store = store_with_show();
    tick(store, "P2/sew");
    count_shelf(store, "hooks", TENTHS(300));
    untick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "hooks"), "42");
    tick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "hooks"), "30");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_came_in_done_gives_its_needs_back_each_time)
{
    bk_store *store = store_with_show();
    for (int i = 0; i < 3; i++) {
        untick(store, "P2/cut");
        ck_assert_str_eq(on_shelf(store, "linen"), "3.7");
        tick(store, "P2/cut");
        ck_assert_str_eq(on_shelf(store, "linen"), "2.5");
    }
    bk_store_close(store);
}
END_TEST

START_TEST(what_left_comes_back_whatever_the_needs_are_by_now)
{
    bk_store *store = store_with_show();
    tick(store, "P2/sew");
    bk_ask("UPDATE need SET quantity = 9000000");
    untick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "wool"), "1");
    tick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "wool"), "-8");
    bk_ask("DELETE FROM need");
    untick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "wool"), "1");
    bk_store_close(store);
}
END_TEST

START_TEST(two_needs_of_one_material_move_as_one)
{
    bk_store *store = store_with_show();
    add_need(store, "P2/sew", "wool", TENTHS(6));
    tick(store, "P2/sew");
    ck_assert_str_eq(movements(), "wool|use|-3000000|2027-03-02|sew");
    untick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "wool"), "1");
    bk_store_close(store);
}
END_TEST

START_TEST(a_count_between_tick_and_untick_is_kept)
{
    bk_store *store = store_with_show();
    tick(store, "P2/sew");
    count_shelf(store, "wool", TENTHS(20)); // 0.6 lies there
    untick(store, "P2/sew");
    ck_assert_str_eq(on_shelf(store, "wool"), "3");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("tick", a_step_marked_done_says_when_by_whom_and_how_fast,
             minutes_that_nobody_told_stay_not_known, a_step_opened_again_forgets_all_of_it,
             a_tick_is_one_entry_that_undo_takes_back,
             what_is_done_is_not_done_twice_and_what_is_open_not_opened,
             a_step_done_by_a_fitting_that_fits_is_neither_ticked_nor_opened,
             a_step_may_be_done_before_those_it_comes_after, a_step_that_is_gone_is_told,
             a_step_is_found_by_its_name_or_the_nearest_is_told, a_step_of_another_production_is_not_meant,
             the_needs_of_a_done_step_leave_the_shelf_and_come_back,
             a_material_that_was_never_counted_stays_not_known,
             a_material_counted_after_the_tick_comes_back_from_a_count_without_it,
             a_step_that_came_in_done_gives_its_needs_back_each_time,
             what_left_comes_back_whatever_the_needs_are_by_now, two_needs_of_one_material_move_as_one,
             a_count_between_tick_and_untick_is_kept)
