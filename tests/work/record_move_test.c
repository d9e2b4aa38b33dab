#include <string.h>

#include "bodkin/trade/words.h"
#include "work/filled.h"

static const char *order_of(const char *table, const char *column)
{
    return bk_ask(bk_arena_print(texts(),
                                 "SELECT group_concat(%s) FROM (SELECT %s FROM %s ORDER BY position, id)",
                                 column, column, table));
}

static int64_t costume_id(const char *number)
{
    return id_of("costume", "number", number);
}

START_TEST(a_record_is_moved_earlier_and_later)
{
    bk_store *store = store_with_salt_road();
    const char *records = bk_records();
    ck_assert_str_eq(move(store, BK_COSTUMES, costume_id("2A"), -1), "Moved earlier: costume 2A Costume 2A");
    ck_assert_str_eq(order_of("costume", "number"), "10A,2A,2B");
    ck_assert_str_eq(move(store, BK_COSTUMES, costume_id("10A"), 2), "Moved later: costume 10A Costume 10A");
    ck_assert_str_eq(order_of("costume", "number"), "2A,2B,10A");
    undo(store);
    undo(store);
    ck_assert_str_eq(bk_records(), records);
    bk_store_close(store);
}
END_TEST

START_TEST(at_the_end_of_its_list_it_stays_and_no_entry_is_made)
{
    bk_store *store = store_with_salt_road();
    const char *entries = bk_ask("SELECT count(*) FROM daybook");
    ck_assert_str_eq(move(store, BK_COSTUMES, costume_id("2A"), 1), "-");
    ck_assert_str_eq(move(store, BK_COSTUMES, costume_id("10A"), -3), "-");
    ck_assert_str_eq(move(store, BK_COSTUMES, costume_id("2B"), 0), "-");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), entries);
    ck_assert_str_eq(move(store, BK_COSTUMES, costume_id("2A"), -100),
                     "Moved earlier: costume 2A Costume 2A");
    ck_assert_str_eq(order_of("costume", "number"), "2A,10A,2B");
    bk_store_close(store);
}
END_TEST

START_TEST(equal_places_are_told_apart_when_one_moves)
{
    bk_store *store = store_with_salt_road();
    bk_ask("UPDATE costume SET position = 0");
    move(store, BK_COSTUMES, costume_id("2A"), -1);
    ck_assert_str_eq(order_of("costume", "number"), "10A,2A,2B");
    move(store, BK_COSTUMES, costume_id("10A"), 2);
    ck_assert_str_eq(order_of("costume", "number"), "2A,2B,10A");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_moves_among_those_of_its_piece)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(move(store, BK_STEPS, id_of("step", "key", "press"), -1), "-");
    move(store, BK_STEPS, id_of("step", "key", "sew"), 1);
    ck_assert_str_eq(order_of("step", "key"), "cut,sew,fit,press");
    bk_store_close(store);
}
END_TEST

START_TEST(a_piece_moves_among_those_it_is_worn_with)
{
    bk_store *store = store_with_salt_road();
    bk_piece hat = PIECE("P4", "2A", BK_NO_WORD);
    save(store, BK_PIECES, NULL, &hat);
    bk_piece shoes = PIECE("P5", "10A", BK_NO_WORD);
    save(store, BK_PIECES, NULL, &shoes);
    ck_assert_str_eq(order_of("piece", "name"), "P2,P1,P3,P4,P5");
    move(store, BK_PIECES, id_of("piece", "name", "P5"), -1);
    ck_assert_str_eq(order_of("piece", "name"), "P2,P5,P3,P4,P1");
    move(store, BK_PIECES, id_of("piece", "name", "P3"), 5);
    ck_assert_str_eq(order_of("piece", "name"), "P2,P5,P4,P3,P1");
    bk_store_close(store);
}
END_TEST

START_TEST(performers_move_in_the_company)
{
    bk_store *store = store_with_salt_road();
    const char *company = "SELECT group_concat(name) FROM (SELECT name FROM company JOIN performer ON "
                          "performer.id = performer_id ORDER BY position)";
    ck_assert_str_eq(move(store, BK_PERFORMERS, id_of("performer", "name", "Zoë Ngô"), -2),
                     "Moved earlier: performer Zoë Ngô");
    ck_assert_str_eq(bk_ask(company), "Zoë Ngô,Tomas Lind,Ines Varga");
    undo(store);
    ck_assert_str_eq(bk_ask(company), "Tomas Lind,Ines Varga,Zoë Ngô");
    bk_store_close(store);
}
END_TEST

START_TEST(orders_of_work_their_steps_needs_and_notes_move)
{
    bk_store *store = store_with_salt_road();
    move(store, BK_WORKS, id_of("work", "name", "Neck cloth"), -1);
    ck_assert_int_lt(id_by("SELECT position FROM work WHERE name = 'Neck cloth'"),
                     id_by("SELECT position FROM work WHERE name = 'Smock'"));
    bk_ask("UPDATE work SET ready = 1");
    move(store, BK_WORK_STEPS, smock_step("cut"), -1);
    ck_assert_str_eq(bk_ask("SELECT ready FROM work WHERE name = 'Smock'"), "0");
    ck_assert_str_eq(move(store, BK_NEEDS, id_by("SELECT min(id) FROM need"), 1),
                     "Moved later: need of P2/sew for wool");
    move(store, BK_NOTES, id_by("SELECT max(id) FROM note"), -2);
    ck_assert_str_eq(bk_ask("SELECT what FROM note ORDER BY position LIMIT 1"), "flour on everything");
    bk_store_close(store);
}
END_TEST

START_TEST(equipment_moves_in_its_list_and_back)
{
    bk_store *store = store_with_salt_road();
    int64_t table = id_of("equipment", "name", "cutting table");
    ck_assert_str_eq(move(store, BK_EQUIPMENT, table, -1), "Moved earlier: equipment cutting table");
    ck_assert_str_eq(order_of("equipment", "name"), "cutting table,machine");
    ck_assert_str_eq(move(store, BK_EQUIPMENT, table, -1), "-");
    undo(store);
    ck_assert_str_eq(order_of("equipment", "name"), "machine,cutting table");
    bk_store_close(store);
}
END_TEST

START_TEST(what_has_an_order_of_its_own_is_not_moved)
{
    bk_store *store = store_with_salt_road();
    const char *sentence = NULL;
    bk_job job = job_in(store);
    REFUSED(bk_record_move(&job, BK_DATES, 1, 1, &sentence, &trouble), BK_REFUSED, "order of their own");
    REFUSED(bk_record_move(&job, BK_ROLES, 999, 1, &sentence, &trouble), BK_REFUSED, "no longer there");
    bk_store_close(store);
}
END_TEST

START_TEST(a_new_record_of_a_list_that_is_not_moved_stands_last_whatever_it_was_added_behind)
{
    bk_store *store = store_with_salt_road();
    bk_job job = job_in(store);
    bk_record_saved saved;
    bk_person person = PERSON("Bo Strand", "hand");
    bk_record_saving saving = {
        .family = BK_PEOPLE, .after = &person, .behind = id_of("person", "name", "Zoë Ngô")};
    MUST(bk_record_save(&job, &saving, &saved, &trouble));
    ck_assert_str_eq(bk_ask("SELECT group_concat(name) FROM (SELECT name FROM person ORDER BY id)"),
                     "Zoë Ngô,Ada Pell,Bo Strand");
    bk_store_close(store);
}
END_TEST

START_TEST(a_new_record_follows_the_one_it_was_added_behind)
{
    bk_store *store = store_with_salt_road();
    bk_job job = job_in(store);
    bk_record_saved saved;
    bk_step step = step_of("P2", "mark", NULL);
    bk_record_saving saving = {.family = BK_STEPS, .after = &step, .behind = id_of("step", "key", "sew")};
    MUST(bk_record_save(&job, &saving, &saved, &trouble));
    ck_assert_str_eq(order_of("step", "key"), "sew,mark,cut,press,fit");
    bk_costume costume = COSTUME("1C", "The Boy", BK_NO_DAY);
    saving = (bk_record_saving){.family = BK_COSTUMES, .after = &costume, .behind = costume_id("2A")};
    MUST(bk_record_save(&job, &saving, &saved, &trouble));
    ck_assert_str_eq(order_of("costume", "number"), "10A,2B,2A,1C");
    bk_performer performer = PERFORMER("Vera Holm", NULL, NULL);
    saving = (bk_record_saving){
        .family = BK_PERFORMERS, .after = &performer, .behind = id_of("performer", "name", "Tomas Lind")};
    MUST(bk_record_save(&job, &saving, &saved, &trouble));
    ck_assert_str_eq(bk_ask("SELECT name FROM company JOIN performer ON performer.id = performer_id ORDER BY "
                            "position LIMIT 1 OFFSET 1"),
                     "Vera Holm");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("record_move", a_record_is_moved_earlier_and_later,
             at_the_end_of_its_list_it_stays_and_no_entry_is_made, equal_places_are_told_apart_when_one_moves,
             a_step_moves_among_those_of_its_piece, a_piece_moves_among_those_it_is_worn_with,
             performers_move_in_the_company, orders_of_work_their_steps_needs_and_notes_move,
             equipment_moves_in_its_list_and_back, what_has_an_order_of_its_own_is_not_moved,
             a_new_record_of_a_list_that_is_not_moved_stands_last_whatever_it_was_added_behind,
             a_new_record_follows_the_one_it_was_added_behind)
