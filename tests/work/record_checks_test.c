#include <string.h>

#include "bodkin/trade/words.h"
#include "work/filled.h"

/// A new step is refused because of that column, with these words.
static void step_refused(bk_store *store, const bk_step *step, const char *column, const char *words)
{
    ck_assert_str_eq(refused(store, BK_STEPS, NULL, step), column);
    ck_assert_msg(strstr(trouble.text, words) != NULL, "\"%s\" lacks \"%s\"", trouble.text, words);
}

START_TEST(what_must_be_filled_in_is_asked_for)
{
    bk_store *store = store_with_salt_road();
    bk_step step = step_of("P2", "hem", NULL);
    step.title = NULL;
    step_refused(store, &step, "title", "Fill in \"title\": a step needs it.");
    step = step_of("P2", "", NULL);
    step_refused(store, &step, "step", "Fill in \"key\"");
    step = step_of("P2", "hem", NULL);
    step.kind = BK_NO_WORD;
    step_refused(store, &step, "kind", "kind");
    step = step_of("P2", "hem", NULL);
    step.minutes = BK_NOT_KNOWN;
    step_refused(store, &step, "minutes", "minutes");
    bk_date date = {.what = BK_ON_DRESS, .on = BK_NO_DAY, .at = BK_NO_TIME};
    ck_assert_str_eq(refused(store, BK_DATES, NULL, &date), "on");
    bk_fitting fitting = FITTING("P2", "fit", BK_NO_DAY);
    ck_assert_str_eq(refused(store, BK_FITTINGS, NULL, &fitting), "booked_at");
    bk_production production = {.name = "Spring", .opens = BK_NO_DAY, .unit = BK_NO_WORD};
    ck_assert_str_eq(refused(store, BK_PRODUCTIONS, NULL, &production), "opens");
    bk_store_close(store);
}
END_TEST

START_TEST(names_hold_no_semicolon_no_slash_and_no_space_at_an_end)
{
    bk_store *store = store_with_salt_road();
    bk_step step = step_of("P2", "hem;cuff", NULL);
    step_refused(store, &step, "step", "names hold no ; and no /");
    step = step_of("P2", "hem/cuff", NULL);
    step_refused(store, &step, "step", "names hold no ; and no /");
    step = step_of("P2", " hem", NULL);
    step_refused(store, &step, "step", "space");
    bk_store_close(store);
}
END_TEST

START_TEST(a_name_has_no_tab_and_no_new_line_at_an_end)
{
    bk_store *store = store_with_salt_road();
    static const char *const keys[] = {"hem\t", "hem\n", "\them", "\r\nhem"};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        bk_step step = step_of("P2", keys[i], NULL);
        step_refused(store, &step, "step", "space");
    }
    bk_store_close(store);
}
END_TEST

START_TEST(a_text_of_blanks_alone_is_no_text)
{
    bk_store *store = store_with_salt_road();
    bk_step step = step_of("P2", "hem", NULL);
    step.title = " \n";
    step_refused(store, &step, "title", "Fill in");
    step = step_of("P2", "\n", NULL);
    step_refused(store, &step, "step", "Fill in");
    step = step_of("P2", "hem", NULL);
    step.note = "\t ";
    bk_record_saved saved = save(store, BK_STEPS, NULL, &step);
    FILLED(bk_step, kept, store, BK_STEPS, saved.id);
    ck_assert_ptr_null(kept.note);
    bk_store_close(store);
}
END_TEST

START_TEST(numbers_have_bounds)
{
    bk_store *store = store_with_salt_road();
    bk_step step = step_of("P2", "hem", NULL);
    step.level = 4;
    step_refused(store, &step, "level", "much");
    step = step_of("P2", "hem", NULL);
    step.minutes = -1;
    step_refused(store, &step, "minutes", "little");
    bk_order order = ORDER("wool", -TENTHS(5), DAY(3, 1), BK_NO_DAY, BK_NO_DAY);
    ck_assert_str_eq(refused(store, BK_ORDERS, NULL, &order), "quantity");
    bk_store_close(store);
}
END_TEST

START_TEST(the_quickest_is_not_above_the_longest)
{
    bk_store *store = store_with_salt_road();
    bk_step step = step_of("P2", "hem", NULL);
    step.quickest = 90;
    step.longest = 60;
    step_refused(store, &step, "longest", "The longest, 1 h, is less than the quickest, 1 h 30.");
    bk_store_close(store);
}
END_TEST

START_TEST(a_last_day_is_not_before_the_first)
{
    bk_store *store = store_with_salt_road();
    bk_away away = {.who = "Ada Pell", .from = DAY(5, 3), .to = DAY(5, 1)};
    ck_assert_str_eq(refused(store, BK_AWAYS, NULL, &away), "to");
    bk_person person = PERSON("Bo Strand", NULL);
    person.from = DAY(5, 3);
    person.until = DAY(5, 1);
    ck_assert_str_eq(refused(store, BK_PEOPLE, NULL, &person), "until");
    bk_store_close(store);
}
END_TEST

START_TEST(skills_hours_and_currencies_are_what_they_are_called)
{
    bk_store *store = store_with_salt_road();
    bk_person person = PERSON("Bo Strand", "cut;juggle");
    ck_assert_str_eq(refused(store, BK_PEOPLE, NULL, &person), "skills");
    person.skills = "cut";
    person.hours[2] = "early";
    ck_assert_str_eq(refused(store, BK_PEOPLE, NULL, &person), "wed");
    person.hours[2] = "10:00-13:00";
    ck_assert_str_eq(save(store, BK_PEOPLE, NULL, &person).sentence, "New: person Bo Strand");
    bk_production production = {.name = "Spring",
                                .opens = DAY(4, 1),
                                .currency = "pounds",
                                .unit = BK_NO_WORD,
                                .measures_good_for = BK_NOT_KNOWN,
                                .put_away_on = BK_NO_DAY};
    ck_assert_str_eq(refused(store, BK_PRODUCTIONS, NULL, &production), "currency");
    bk_store_close(store);
}
END_TEST

START_TEST(equipment_is_named_once_is_of_some_kind_and_there_is_at_least_one)
{
    bk_store *store = store_with_salt_road();
    bk_equipment press = {.name = "machine", .kinds = "press; dye ", .count = BK_NOT_KNOWN};
    ck_assert_str_eq(refused(store, BK_EQUIPMENT, NULL, &press), "equipment");
    ck_assert_str_eq(trouble.text, "There is a piece of equipment called \"machine\" already.");
    press.name = "steam table";
    press.count = 0;
    ck_assert_str_eq(refused(store, BK_EQUIPMENT, NULL, &press), "count");
    ck_assert_str_eq(trouble.text, "The count of a piece of equipment cannot be that little.");
    press.count = 1000;
    ck_assert_str_eq(refused(store, BK_EQUIPMENT, NULL, &press), "count");
    press.count = BK_NOT_KNOWN;
    press.kinds = "press;juggle";
    ck_assert_str_eq(refused(store, BK_EQUIPMENT, NULL, &press), "kinds");
    press.kinds = NULL;
    ck_assert_str_eq(refused(store, BK_EQUIPMENT, NULL, &press), "kinds");
    ck_assert_str_eq(trouble.text, "Fill in \"kinds\": a piece of equipment needs it.");
    press.kinds = "press; dye ";
    ck_assert_str_eq(save(store, BK_EQUIPMENT, NULL, &press).sentence, "New: equipment steam table");
    ck_assert_str_eq(bk_ask("SELECT kinds, count FROM equipment WHERE name = 'steam table'"), "press;dye|");
    bk_store_close(store);
}
END_TEST

START_TEST(equipment_is_changed_renamed_and_undone)
{
    bk_store *store = store_with_salt_road();
    const char *records = bk_records();
    FILLED(bk_equipment, before, store, BK_EQUIPMENT, id_of("equipment", "name", "machine"));
    bk_equipment after = before;
    after.count = 4;
    ck_assert_str_eq(save(store, BK_EQUIPMENT, &before, &after).sentence,
                     "Changed: equipment machine: count");
    bk_equipment renamed = after;
    renamed.name = "sewing machine";
    ck_assert_str_eq(save(store, BK_EQUIPMENT, &after, &renamed).sentence,
                     "Renamed: equipment machine, now sewing machine");
    ck_assert_ptr_null(save(store, BK_EQUIPMENT, &renamed, &renamed).sentence);
    undo(store);
    undo(store);
    ck_assert_str_eq(bk_records(), records);
    bk_store_close(store);
}
END_TEST

START_TEST(lists_are_kept_without_spaces_and_empty_items_are_refused)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, sew, store, BK_STEPS, id_of("step", "key", "sew"));
    bk_step after = sew;
    after.measures = "waist girth ; hip girth;";
    save(store, BK_STEPS, &sew, &after);
    ck_assert_str_eq(bk_ask("SELECT measures FROM step WHERE key = 'sew'"), "waist girth;hip girth");
    FILLED(bk_step, read, store, BK_STEPS, sew.id);
    ck_assert_ptr_null(save(store, BK_STEPS, &read, &after).sentence);
    after.measures = "waist girth;;hip girth";
    ck_assert_str_eq(refused(store, BK_STEPS, &read, &after), "measures");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_has_fittings_stays_a_fit)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, before, store, BK_STEPS, id_of("step", "key", "fit"));
    bk_step after = before;
    after.kind = BK_PRESS;
    ck_assert_str_eq(refused(store, BK_STEPS, &before, &after), "kind");
    bk_store_close(store);
}
END_TEST

START_TEST(a_ready_order_of_work_that_is_changed_is_the_workrooms_own)
{
    bk_store *store = store_with_salt_road();
    bk_ask("UPDATE work SET ready = 1");
    FILLED(bk_work, before, store, BK_WORKS, id_of("work", "name", "Smock"));
    ck_assert_int_eq(before.ready, 1);
    bk_work after = before;
    after.note = "ours is longer";
    save(store, BK_WORKS, &before, &after);
    ck_assert_str_eq(bk_ask("SELECT ready FROM work WHERE name = 'Smock'"), "0");
    bk_ask("UPDATE work SET ready = 1");
    FILLED(bk_work_step, sew, store, BK_WORK_STEPS, smock_step("sew"));
    bk_work_step longer = sew;
    longer.minutes = 45;
    save(store, BK_WORK_STEPS, &sew, &longer);
    ck_assert_str_eq(bk_ask("SELECT ready FROM work WHERE name = 'Smock'"), "0");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_of_an_order_of_work_stays_in_it)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_work_step, before, store, BK_WORK_STEPS, smock_step("sew"));
    bk_work_step after = before;
    after.work = "Neck cloth";
    ck_assert_str_eq(refused(store, BK_WORK_STEPS, &before, &after), "work");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("record_checks", what_must_be_filled_in_is_asked_for,
             names_hold_no_semicolon_no_slash_and_no_space_at_an_end,
             a_name_has_no_tab_and_no_new_line_at_an_end, a_text_of_blanks_alone_is_no_text,
             numbers_have_bounds, equipment_is_named_once_is_of_some_kind_and_there_is_at_least_one,
             equipment_is_changed_renamed_and_undone, the_quickest_is_not_above_the_longest,
             a_last_day_is_not_before_the_first, skills_hours_and_currencies_are_what_they_are_called,
             a_step_that_has_fittings_stays_a_fit, lists_are_kept_without_spaces_and_empty_items_are_refused,
             a_ready_order_of_work_that_is_changed_is_the_workrooms_own,
             a_step_of_an_order_of_work_stays_in_it)
