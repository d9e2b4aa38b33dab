#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/suppose.h"
#include "work/filled.h"
#include "work/planned.h"

// What was supposed is kept. The day is Tuesday, 2 March 2027; The Salt Road opens on Friday, 4 June.

static bk_supposition helper_on(const char *name, unsigned skills, bk_day day, bk_minute from, bk_minute to)
{
    return (bk_supposition){
        .what = BK_SUPPOSE_HELPER, .person = name, .skills = skills, .day = day, .hours = {from, to}};
}

#define EVENING(name, day) helper_on(name, 1U << BK_HAND, (day), 18 * 60, 21 * 60)

static bk_supposition date_moved(int64_t date, bk_day day)
{
    return (bk_supposition){.what = BK_SUPPOSE_DATE,
                            .production_id = id_of("production", "name", "The Salt Road"),
                            .date_id = date,
                            .day = day};
}

static int64_t costume_id(const char *number)
{
    return id_of("costume", "number", number);
}

static bk_supposition due_on(const char *number, bk_day day)
{
    return (bk_supposition){.what = BK_SUPPOSE_DUE, .costume_id = costume_id(number), .day = day};
}

static bk_supposition dropped(const char *number)
{
    return (bk_supposition){.what = BK_SUPPOSE_DROP, .costume_id = costume_id(number)};
}

#define KEEP(store, ...) \
    keep((store), (const bk_supposition[]){__VA_ARGS__}, \
         sizeof((const bk_supposition[]){__VA_ARGS__}) / sizeof(bk_supposition))

/// The sentence, "-" where nothing was written.
static const char *keep(bk_store *store, const bk_supposition *supposed, size_t count)
{
    const char *sentence = NULL;
    bk_job job = job_in(store);
    MUST(bk_suppose_keep(&job, supposed, count, &sentence, &trouble));
    return sentence ? sentence : "-";
}

/// They are refused and nothing is changed; the sentence.
static const char *not_kept(bk_store *store, const bk_supposition *supposed, size_t count)
{
    const char *sentence = NULL;
    const char *records = bk_records();
    const char *entries = bk_ask("SELECT count(*) FROM daybook");
    bk_job job = job_in(store);
    ck_assert_int_eq(bk_suppose_keep(&job, supposed, count, &sentence, &trouble), BK_REFUSED);
    ck_assert_ptr_null(sentence);
    ck_assert_str_eq(bk_records(), records);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), entries);
    return trouble.text;
}

#define NOT_KEPT(store, ...) \
    not_kept((store), (const bk_supposition[]){__VA_ARGS__}, \
             sizeof((const bk_supposition[]){__VA_ARGS__}) / sizeof(bk_supposition))

static void check_sound(bk_store *store)
{
    bk_findings findings;
    MUST(bk_store_check(store, texts(), &findings, &trouble));
    ck_assert_msg(findings.count == 0, "%s", findings.count ? findings.items[0] : "");
}

static void redo(bk_store *store)
{
    const char *sentence = NULL;
    MUST(bk_daybook_redo(store, MADE_AT, texts(), &sentence, &trouble));
}

// ------------------------------------------------------------------------------------------------- helpers

START_TEST(a_helper_becomes_a_person_with_hours_on_that_one_day)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(
        KEEP(store, helper_on("Bo Lind", 1U << BK_HAND | 1U << BK_CUT, DAY(3, 4), 18 * 60, 24 * 60)),
        "Kept what was supposed: Bo Lind helps Thu 4 Mar 18:00 to 24:00");
    FILLED(bk_person, person, store, BK_PEOPLE, id_of("person", "name", "Bo Lind"));
    ck_assert_str_eq(person.skills, "cut;hand");
    ck_assert_str_eq(person.hours[3], "18:00-24:00");
    ck_assert_ptr_null(person.hours[2]);
    ck_assert_int_eq(person.from, DAY(3, 4));
    ck_assert_int_eq(person.until, DAY(3, 4));
    bk_store_close(store);
}
END_TEST

START_TEST(a_helper_who_comes_several_times_is_one_person_and_away_on_the_days_between)
{
    bk_store *store = store_with_salt_road();
    KEEP(store, EVENING("Bo Lind", DAY(3, 18)), EVENING("Bo Lind", DAY(3, 4)),
         helper_on("Bo Lind", 1U << BK_CUT, DAY(3, 9), 9 * 60, 12 * 60));
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM person WHERE name = 'Bo Lind'"), "1");
    FILLED(bk_person, person, store, BK_PEOPLE, id_of("person", "name", "Bo Lind"));
    ck_assert_str_eq(person.skills, "cut;hand");
    ck_assert_str_eq(person.hours[3], "18:00-21:00");
    ck_assert_str_eq(person.hours[1], "09:00-12:00");
    ck_assert_int_eq(person.from, DAY(3, 4));
    ck_assert_int_eq(person.until, DAY(3, 18));
    const char *away = bk_arena_print(
        texts(), "SELECT count(*), min(id) > 0 FROM away WHERE person_id = %lld", (long long)person.id);
    ck_assert_str_eq(bk_ask(away), "2|1");
    check_sound(store);
    bk_store_close(store);
}
END_TEST

START_TEST(a_helper_with_a_name_that_somebody_bears_is_refused)
{
    bk_store *store = store_with_salt_road();
    const char *borne = bk_ask("SELECT name FROM person LIMIT 1");
    const char *sentence = bk_arena_print(texts(), "There is a person called \"%s\" already.", borne);
    ck_assert_str_eq(NOT_KEPT(store, dropped("10A"), EVENING(borne, DAY(3, 4))), sentence);
    bk_store_close(store);
}
END_TEST

START_TEST(a_helper_may_come_twice_on_a_day)
{
    bk_store *store = store_with_salt_road();
    KEEP(store, EVENING("Bo Lind", DAY(3, 4)),
         helper_on("Bo Lind", 1U << BK_HAND, DAY(3, 4), 9 * 60, 12 * 60));
    FILLED(bk_person, person, store, BK_PEOPLE, id_of("person", "name", "Bo Lind"));
    ck_assert_str_eq(person.hours[3], "18:00-21:00;09:00-12:00");
    bk_store_close(store);
}
END_TEST

START_TEST(hours_that_no_week_can_hold_are_refused)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(NOT_KEPT(store, EVENING("Bo", DAY(3, 4)), EVENING("Bo", DAY(3, 4))),
                     "Bo comes twice at the same time on Thu 4 Mar: change one of the two.");
    ck_assert_str_eq(NOT_KEPT(store, EVENING("Bo", DAY(3, 4)),
                              helper_on("Bo", 1U << BK_HAND, DAY(3, 11), 9 * 60, 12 * 60)),
                     "Bo has other hours on Thu 11 Mar than on that weekday in another week: give one of the "
                     "two another name.");
    bk_store_close(store);
}
END_TEST

// --------------------------------------------------------------------------------------------------- dates

START_TEST(a_moved_date_is_changed)
{
    bk_store *store = store_with_salt_road();
    int64_t dress = id_of("show_date", "what", "dress");
    ck_assert_str_eq(KEEP(store, date_moved(dress, DAY(6, 3))),
                     "Kept what was supposed: dress moved from Wed 2 Jun to Thu 3 Jun");
    FILLED(bk_date, date, store, BK_DATES, dress);
    ck_assert_int_eq(date.on, DAY(6, 3));
    bk_store_close(store);
}
END_TEST

START_TEST(a_moved_opening_takes_along_the_date_that_tells_of_it)
{
    bk_store *store = store_with_salt_road();
    const bk_date told = {.what = BK_ON_OPENING, .on = DAY(6, 4), .at = 19 * 60};
    const bk_date other = {.what = BK_ON_OPENING, .on = DAY(6, 20), .at = BK_NO_TIME};
    int64_t first = save(store, BK_DATES, NULL, &told).id;
    int64_t second = save(store, BK_DATES, NULL, &other).id;
    ck_assert_str_eq(KEEP(store, date_moved(0, DAY(6, 11))),
                     "Kept what was supposed: opening moved from Fri 4 Jun to Fri 11 Jun");
    FILLED(bk_production, production, store, BK_PRODUCTIONS, job_in(store).production);
    ck_assert_int_eq(production.opens, DAY(6, 11));
    FILLED(bk_date, date, store, BK_DATES, first);
    ck_assert_int_eq(date.on, DAY(6, 11));
    ck_assert_int_eq(date.at, 19 * 60);
    FILLED(bk_date, again, store, BK_DATES, second);
    ck_assert_int_eq(again.on, DAY(6, 20));
    bk_store_close(store);
}
END_TEST

START_TEST(a_date_or_a_production_that_is_gone_is_refused)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(NOT_KEPT(store, EVENING("Bo", DAY(3, 4)), date_moved(999, DAY(6, 3))),
                     "A date that was to move to Thu 3 Jun is no longer there: take that off first.");
    ck_assert_str_eq(
        NOT_KEPT(store, (bk_supposition){.what = BK_SUPPOSE_DATE, .production_id = 99, .day = DAY(6, 3)}),
        "The production whose opening was to move is no longer there: take that off first.");
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------------------ costumes

START_TEST(a_costume_gets_another_due_day_or_is_dropped)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(KEEP(store, dropped("10A"), due_on("2B", DAY(6, 1))),
                     "Kept what was supposed: 2B Costume 2B due Tue 1 Jun; 10A Costume 10A dropped");
    FILLED(bk_costume, costume, store, BK_COSTUMES, costume_id("2B"));
    ck_assert_int_eq(costume.due, DAY(6, 1));
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM costume WHERE number = '10A'"), "0");
    ck_assert_str_eq(bk_ask("SELECT group_concat(name) FROM piece"), "P2,P3");
    check_sound(store);
    bk_store_close(store);
}
END_TEST

START_TEST(a_costume_that_is_gone_is_refused)
{
    bk_store *store = store_with_salt_road();
    bk_supposition due = due_on("10A", DAY(6, 1));
    bk_supposition drop = dropped("10A");
    take_away(store, BK_COSTUMES, costume_id("10A"));
    ck_assert_str_eq(NOT_KEPT(store, EVENING("Bo", DAY(3, 4)), due),
                     "A costume that was to be due on another day is no longer there: take that off first.");
    ck_assert_str_eq(NOT_KEPT(store, EVENING("Bo", DAY(3, 4)), drop),
                     "A costume that was to be dropped is no longer there: take that off first.");
    bk_store_close(store);
}
END_TEST

START_TEST(of_another_production_it_is_told)
{
    bk_store *store = store_with_salt_road();
    bk_job job = job_in(store);
    const char *sentence = NULL;
    bk_supposition supposed[] = {due_on("2B", DAY(6, 1)), date_moved(0, DAY(6, 11))};
    job.production = 0;
    MUST(bk_suppose_keep(&job, supposed, 2, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Kept what was supposed: opening of The Salt Road moved from Fri 4 Jun to "
                               "Fri 11 Jun; 2B Costume 2B of The Salt Road due Tue 1 Jun");
    bk_store_close(store);
}
END_TEST

// ---------------------------------------------------------------------------------------------- all of them

START_TEST(all_is_one_entry_that_one_undo_takes_back_and_one_redo_brings_again)
{
    bk_store *store = store_with_salt_road();
    const char *before = bk_records();
    int64_t entries = id_by("SELECT count(*) FROM daybook");
    const char *sentence = KEEP(store, EVENING("Bo", DAY(3, 4)), EVENING("Bo", DAY(3, 18)),
                                date_moved(0, DAY(6, 11)), due_on("2B", DAY(6, 1)), dropped("10A"));
    ck_assert_str_eq(sentence, "Kept what was supposed: Bo helps Thu 4 Mar 18:00 to 21:00; Bo helps Thu 18 "
                               "Mar 18:00 to 21:00; opening moved from Fri 4 Jun to Fri 11 Jun; 2B Costume "
                               "2B due Tue 1 Jun and 1 more");
    ck_assert_str_eq(bk_ask("SELECT sentence FROM daybook ORDER BY id DESC LIMIT 1"), sentence);
    ck_assert_int_eq(id_by("SELECT count(*) FROM daybook"), entries + 1);
    const char *after = bk_records();
    undo(store);
    ck_assert_str_eq(bk_records(), before);
    redo(store);
    ck_assert_str_eq(bk_records(), after);
    check_sound(store);
    bk_store_close(store);
}
END_TEST

START_TEST(what_is_so_already_writes_nothing)
{
    bk_store *store = store_with_salt_road();
    const char *entries = bk_ask("SELECT count(*) FROM daybook");
    ck_assert_str_eq(
        KEEP(store, date_moved(0, DAY(6, 4)), date_moved(id_of("show_date", "what", "dress"), DAY(6, 2))),
        "-");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), entries);
    bk_store_close(store);
}
END_TEST

/// 1A takes fourteen hours and is due tomorrow; Ada alone has them by then, with a helper's evening it is ready.
START_TEST(what_is_kept_is_planned_as_it_was_supposed)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 3));
    ROWS(folder, steps, bk_step, STEP("P1", "hem", BK_HAND, 840, NULL),
         STEP("P1", "cuffs", BK_HAND, 90, NULL));
    bk_forecast_free(forecast_of(folder, 0));
    bk_store *store = open_store();
    bk_workroom *room = NULL;
    bk_forecast *forecast = NULL;
    const bk_supposition evening = EVENING("Bo", DAY(3, 3));
    MUST(bk_workroom_read(store, today(), &room, &trouble));
    bk_forecast_reckon(room, &evening, 1, bk_effort_usual(0, 1, 50), NULL, NULL, &forecast);
    const char *supposed = days_told(forecast);
    int32_t chance = planned_costume(forecast, "1A")->days.chance;
    bk_forecast_free(forecast);
    bk_workroom_free(room);
    bk_job job = {.store = store, .today = today(), .made_at = MADE_AT, .who = "Ada", .arena = texts()};
    const char *sentence = NULL;
    MUST(bk_suppose_keep(&job, &evening, 1, &sentence, &trouble));
    bk_store_close(store);
    forecast = forecast_again(50);
    ck_assert_str_eq(days_told(forecast), supposed);
    ck_assert_int_eq(planned_costume(forecast, "1A")->days.chance, chance);
    ck_assert_str_eq(supposed, "1A Wed 3 Mar, 0 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

BK_TEST_MAIN("suppose", a_helper_becomes_a_person_with_hours_on_that_one_day,
             a_helper_who_comes_several_times_is_one_person_and_away_on_the_days_between,
             a_helper_with_a_name_that_somebody_bears_is_refused, a_helper_may_come_twice_on_a_day,
             hours_that_no_week_can_hold_are_refused, a_moved_date_is_changed,
             a_moved_opening_takes_along_the_date_that_tells_of_it,
             a_date_or_a_production_that_is_gone_is_refused, a_costume_gets_another_due_day_or_is_dropped,
             a_costume_that_is_gone_is_refused, of_another_production_it_is_told,
             all_is_one_entry_that_one_undo_takes_back_and_one_redo_brings_again,
             what_is_so_already_writes_nothing, what_is_kept_is_planned_as_it_was_supposed)
