#include <string.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/clock.h"
#include "work/filled.h"

static int64_t costume_id(const char *number)
{
    return id_of("costume", "number", number);
}

/// Taking it away is refused, and so is weighing; the sentence.
static const char *kept(bk_store *store, bk_family family, int64_t id)
{
    const char *sentence = NULL;
    const char *records = bk_records();
    bk_job job = job_in(store);
    ck_assert_int_eq(bk_record_weigh(&job, family, id, &sentence, &trouble), BK_REFUSED);
    ck_assert_int_eq(bk_record_take_away(&job, family, id, &sentence, &trouble), BK_REFUSED);
    ck_assert_ptr_null(sentence);
    ck_assert_str_eq(bk_records(), records);
    return trouble.text;
}

/// Everything that is in the store stands on something that is there.
static void check_sound(bk_store *store)
{
    bk_findings findings;
    MUST(bk_store_check(store, texts(), &findings, &trouble));
    ck_assert_msg(findings.count == 0, "%s", findings.count ? findings.items[0] : "");
}

/// Takes away, says so, leaves a sound store, and undo brings all of it back.
static void taken_away(bk_store *store, bk_family family, int64_t id, const char *goes_with,
                       const char *sentence)
{
    const char *records = bk_records();
    ck_assert_str_eq(weigh(store, family, id), goes_with);
    ck_assert_str_eq(take_away(store, family, id), sentence);
    check_sound(store);
    undo(store);
    ck_assert_str_eq(bk_records(), records);
}

START_TEST(a_costume_takes_the_pieces_along_that_are_worn_with_no_other)
{
    bk_store *store = store_with_salt_road();
    taken_away(store, BK_COSTUMES, costume_id("10A"), "1 piece and 1 step go with it",
               "Taken away: costume 10A Costume 10A with 1 piece and 1 step");
    take_away(store, BK_COSTUMES, costume_id("10A"));
    ck_assert_str_eq(bk_ask("SELECT group_concat(name) FROM piece"), "P2,P3");
    FILLED(bk_piece, shared, store, BK_PIECES, id_of("piece", "name", "P2"));
    ck_assert_str_eq(shared.costumes, "2B");
    taken_away(store, BK_COSTUMES, costume_id("2B"), "1 piece, 3 steps, 2 fittings and 3 needs go with it",
               "Taken away: costume 2B Costume 2B with 1 piece, 3 steps, 2 fittings and 3 needs");
    bk_store_close(store);
}
END_TEST

START_TEST(a_piece_takes_its_steps_along_and_a_step_what_hangs_on_it)
{
    bk_store *store = store_with_salt_road();
    const char *sentence = NULL;
    bk_job job = job_in(store);
    taken_away(store, BK_PIECES, id_of("piece", "name", "P3"), "-", "Taken away: piece P3 Piece P3");
    taken_away(store, BK_PIECES, id_of("piece", "name", "P1"), "1 step goes with it",
               "Taken away: piece P1 Cloak with 1 step");
    taken_away(store, BK_STEPS, id_of("step", "key", "fit"), "2 fittings go with it",
               "Taken away: step P2/fit Step fit with 2 fittings");
    MUST(bk_running_start(&job, id_of("step", "key", "press"), &sentence, &trouble));
    taken_away(store, BK_STEPS, id_of("step", "key", "press"), "1 running clock goes with it",
               "Taken away: step P1/press Step press with 1 running clock");
    bk_store_close(store);
}
END_TEST

START_TEST(notes_stay_and_refer_to_nothing)
{
    bk_store *store = store_with_salt_road();
    take_away(store, BK_COSTUMES, costume_id("2B"));
    take_away(store, BK_PIECES, id_of("piece", "name", "P2"));
    ck_assert_str_eq(bk_ask("SELECT count(*), count(costume_id), count(piece_id), count(step_id) FROM note"),
                     "3|1|0|0");
    bk_store_close(store);
}
END_TEST

START_TEST(a_performer_leaves_the_company_and_stays_in_the_workroom)
{
    bk_store *store = store_with_salt_road();
    int64_t tomas = id_of("performer", "name", "Tomas Lind");
    int64_t ines = id_of("performer", "name", "Ines Varga");
    taken_away(store, BK_PERFORMERS, tomas,
               "1 cover and 1 fitting will no longer name them; the measures stay in the workroom",
               "Left the company: performer Tomas Lind");
    take_away(store, BK_PERFORMERS, ines);
    FILLED(bk_role, role, store, BK_ROLES, id_of("role", "name", "The Miller"));
    ck_assert_ptr_null(role.performer);
    ck_assert_str_eq(role.cover, "Zoë Ngô;Tomas Lind");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM measure"), "3");
    ck_assert_str_eq(kept(store, BK_PERFORMERS, ines),
                     "Ines Varga is not in the company of this production.");
    bk_store_close(store);
}
END_TEST

START_TEST(a_role_that_wears_costumes_is_kept)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(kept(store, BK_ROLES, id_of("role", "name", "The Miller")),
                     "\"The Miller\" wears 10A, 2B: take that away first, or give it to another role.");
    take_away(store, BK_COSTUMES, costume_id("2A"));
    taken_away(store, BK_ROLES, id_of("role", "name", "The Boy"), "-", "Taken away: role The Boy");
    bk_store_close(store);
}
END_TEST

START_TEST(a_material_that_steps_need_is_kept)
{
    bk_store *store = store_with_salt_road();
    int64_t wool = id_of("material", "name", "wool");
    ck_assert_str_eq(kept(store, BK_MATERIALS, wool), "1 step needs \"wool\": change what they need first.");
    take_away(store, BK_STEPS, id_of("step", "key", "sew"));
    taken_away(store, BK_MATERIALS, wool, "2 orders go with it", "Taken away: material wool with 2 orders");
    bk_store_close(store);
}
END_TEST

START_TEST(a_production_is_put_away_and_not_taken_away)
{
    bk_store *store = store_with_salt_road();
    ck_assert_ptr_nonnull(strstr(kept(store, BK_PRODUCTIONS, job_in(store).production), "put it away"));
    bk_store_close(store);
}
END_TEST

START_TEST(a_person_takes_absences_along_that_are_of_nobody_else)
{
    bk_store *store = store_with_salt_road();
    taken_away(store, BK_PEOPLE, id_of("person", "name", "Ada Pell"), "1 absence goes with it",
               "Taken away: person Ada Pell with 1 absence");
    take_away(store, BK_PEOPLE, id_of("person", "name", "Zoë Ngô"));
    ck_assert_str_eq(bk_ask("SELECT count(*), count(person_id) FROM away"), "3|1");
    take_away(store, BK_PEOPLE, id_of("person", "name", "Ada Pell"));
    ck_assert_str_eq(bk_ask("SELECT count(*), count(person_id) FROM away"), "2|0");
    bk_store_close(store);
}
END_TEST

START_TEST(the_rest_is_taken_away_by_itself)
{
    bk_store *store = store_with_salt_road();
    taken_away(store, BK_DATES, id_of("show_date", "what", "parade"), "-",
               "Taken away: date parade, Sun 30 May");
    taken_away(store, BK_AWAYS, id_by("SELECT max(id) FROM away"), "-",
               "Taken away: absence of Ines Varga, Tue 9 Mar to Tue 9 Mar");
    taken_away(store, BK_NEEDS, id_by("SELECT min(id) FROM need"), "-",
               "Taken away: need of P2/sew for wool");
    taken_away(store, BK_NOTES, id_by("SELECT max(id) FROM note"), "-",
               "Taken away: note \"flour on everything\"");
    taken_away(store, BK_EQUIPMENT, id_of("equipment", "name", "machine"), "-",
               "Taken away: equipment machine");
    taken_away(store, BK_WORKS, id_of("work", "name", "Smock"), "2 steps go with it",
               "Taken away: order of work Smock with 2 steps");
    taken_away(store, BK_ORDERS, id_by("SELECT id FROM purchase WHERE arrived_on IS NOT NULL"), "-",
               "Taken away: order of 5 yd of linen");
    bk_store_close(store);
}
END_TEST

START_TEST(what_is_gone_already_is_told)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(kept(store, BK_PIECES, 999), "It is no longer there: somebody has taken it away.");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("record_remove", a_costume_takes_the_pieces_along_that_are_worn_with_no_other,
             a_piece_takes_its_steps_along_and_a_step_what_hangs_on_it, notes_stay_and_refer_to_nothing,
             a_performer_leaves_the_company_and_stays_in_the_workroom, a_role_that_wears_costumes_is_kept,
             a_material_that_steps_need_is_kept, a_production_is_put_away_and_not_taken_away,
             a_person_takes_absences_along_that_are_of_nobody_else, the_rest_is_taken_away_by_itself,
             what_is_gone_already_is_told)
