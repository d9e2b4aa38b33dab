#include <stdio.h>
#include <string.h>

#include "workroom.h"

START_TEST(a_sound_store_has_no_findings)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_findings findings;
    record_ids ids;
    MUST(bk_store_check(store, arena, &findings, &trouble));
    ck_assert_uint_eq(findings.count, 0);
    import_one_of_each(store, &ids);
    MUST(bk_store_check(store, arena, &findings, &trouble));
    ck_assert_msg(findings.count == 0, "%s", findings.count > 0 ? findings.items[0] : "");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

typedef struct harm {
    const char *sql, *finding;
} harm;

// A second production beside The Salt Road, with a role, a costume, a piece and a step of its own.
#define SECOND_SHOW \
    "INSERT INTO production (id, name, opens) VALUES (5, 'Chalk', '2027-06-01');" \
    "INSERT INTO role (id, production_id, position, name) VALUES (5, 5, 1, 'Cook');" \
    "INSERT INTO costume (id, production_id, position, number, role_id, title) VALUES (5, 5, 1, '1A', 5, " \
    "'apron');" \
    "INSERT INTO piece (id, production_id, position, name, title) VALUES (5, 5, 1, '1A-1', 'apron');" \
    "INSERT INTO step (id, production_id, piece_id, position, key, title, kind, minutes) " \
    "VALUES (5, 5, 5, 1, 'cut', 'cut', 'cut', 10);"

static const harm harms[] = {
    {"PRAGMA foreign_keys = OFF; DELETE FROM role",
     "1 rows of \"costume\" refer to a row of \"role\" that is not there."},
    {"INSERT INTO production (name, opens) VALUES ('The Salt Road', '2027-06-01')",
     "2 productions are called \"The Salt Road\"."},
    {"UPDATE performer SET name = 'Zoë Marsh'", "2 performers are called \"Zoë Marsh\"."},
    {"INSERT INTO person (name) VALUES ('Ivo Lund')", "2 people are called \"Ivo Lund\"."},
    {"INSERT INTO equipment (position, name, kinds) VALUES (1, 'machine', 'machine')",
     "2 pieces of equipment are called \"machine\"."},
    {"INSERT INTO material (name, unit) VALUES ('wool flannel', 'm')",
     "2 materials are called \"wool flannel\"."},
    {"INSERT INTO measure_name (name) VALUES ('waist girth')", "2 measures are called \"waist girth\"."},
    {"INSERT INTO measure_sheet (performer_id, taken_on) VALUES (1, '2027-01-09')",
     "2 measure sheets of \"Zoë Marsh\" are of one day, 2027-01-09."},
    {"INSERT INTO role (production_id, position, name) VALUES (1, 2, 'The Widow')",
     "The Salt Road: 2 roles are called \"The Widow\"."},
    {"INSERT INTO costume (production_id, position, number, role_id, title) VALUES (1, 2, '1A', 1, 'x')",
     "The Salt Road: 2 costumes have the number 1A."},
    {"INSERT INTO piece (production_id, position, name, title) VALUES (1, 2, '1A-1', 'x')",
     "The Salt Road: 2 pieces are called \"1A-1\"."},
    {"UPDATE step SET key = 'cut'", "The Salt Road: 2 steps are called \"1A-1/cut\"."},
    {SECOND_SHOW "UPDATE costume SET role_id = 1 WHERE id = 5",
     "Chalk: the costume 1A is of a role of another production."},
    {SECOND_SHOW "INSERT INTO piece_costume VALUES (5, 1, 1)",
     "Chalk: the piece \"1A-1\" is of a costume of another production."},
    {SECOND_SHOW "UPDATE step SET piece_id = 1, key = 'sew' WHERE id = 5",
     "Chalk: the step \"sew\" is of a piece of another production."},
    {SECOND_SHOW "INSERT INTO step_after VALUES (5, 1, 1)",
     "Chalk: the step \"cut\" comes after a step of another production."},
    {SECOND_SHOW "UPDATE fitting SET step_id = 5",
     "The Salt Road: a fitting is of a step of another production, \"cut\"."},
    {"INSERT INTO work (position, name) VALUES (1, 'bodice with bones')",
     "2 orders of work are called \"bodice with bones\"."},
    {"INSERT INTO work_step (work_id, position, key, title, kind, minutes) "
     "SELECT id, 1, 'bones', 'x', 'craft', 1 FROM work WHERE name = 'bodice with bones'",
     "2 steps of the order of work \"bodice with bones\" are called \"bones\"."},
    {SECOND_SHOW "UPDATE note SET costume_id = 5",
     "The Salt Road: a note is about a costume of another production, 1A."},
    {SECOND_SHOW "UPDATE note SET piece_id = 5",
     "The Salt Road: a note is about a piece of another production, \"1A-1\"."},
    {SECOND_SHOW "UPDATE note SET step_id = 5",
     "The Salt Road: a note became a step of another production, \"cut\"."},
    {"INSERT INTO running (who, step_id, started_at) VALUES ('Ivo Lund', 1, '2027-03-02T09:00:00+01:00')",
     "2 clocks run for \"Ivo Lund\" at one time."},
    {"INSERT INTO setting (name, value) VALUES ('marked change', 'x')",
     "2 settings are called \"marked change\"."},
    {"UPDATE note SET source = 'the bus'",
     "The Salt Road: The note number 1 in the workroom has a source of a note that is none."},
    {"UPDATE work_step SET kind = 'glue' WHERE key = 'bones'",
     "in the workroom has a kind of step that is none."},
    {"INSERT INTO step_after VALUES (1, 2, 1)",
     "These steps come after each other in a circle: 1A-1/cut, 1A-1/fit."},
    {"UPDATE step SET kind = 'glue' WHERE id = 2",
     "The Salt Road: The step number 2 in the workroom has a kind of step that is none."},
    {"UPDATE material SET unit = 'ell'", "The material number 1 in the workroom has a unit"},
    {"UPDATE movement SET kind = 'lost'",
     "The movement number 1 in the workroom has a kind of movement that is none."},
    {"UPDATE person SET from_day = '2027-02-30'",
     "The person number 1 in the workroom has a day or time that is none."},
    {"UPDATE fitting SET booked_at = 'soon'",
     "The Salt Road: The fitting number 1 in the workroom has a day or time that is none."},
};

static bool found(const bk_findings *findings, const char *words)
{
    for (size_t i = 0; i < findings->count; i++) {
        if (strstr(findings->items[i], words) != NULL)
            return true;
    }
    return false;
}

START_TEST(every_harm_is_found)
{
    for (size_t i = 0; i < sizeof harms / sizeof harms[0]; i++) {
        bk_store *store = open_workroom();
        bk_arena *arena = bk_arena_new();
        bk_findings findings;
        record_ids ids;
        import_one_of_each(store, &ids);
        run_sql(store, harms[i].sql);
        MUST(bk_store_check(store, arena, &findings, &trouble));
        ck_assert_msg(found(&findings, harms[i].finding), "not found: %s (but: %s)", harms[i].finding,
                      findings.count > 0 ? findings.items[0] : "nothing");
        for (size_t j = 0; j < findings.count; j++)
            ck_assert(strstr(findings.items[j], "712000") == NULL &&
                      strstr(findings.items[j], "zoe@") == NULL);
        bk_arena_free(arena);
        bk_store_close(store);
        ck_assert_int_eq(remove(bk_test_path("workroom.db")), 0);
    }
}
END_TEST

START_TEST(a_damaged_page_of_an_index_is_found)
{
    enum { PAGE = 4096 };
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_findings findings;
    record_ids ids;
    size_t length = 0;
    import_one_of_each(store, &ids);
    int64_t page = ask_number(store, "SELECT rootpage FROM sqlite_schema WHERE name = 'person_by_name'");
    bk_store_close(store);
    char *bytes = bk_test_read(bk_test_path("workroom.db"), &length);
    memset(bytes + page * PAGE - 8, 'x', 8); // the end of the page, where its one entry stands
    bk_test_write(bk_test_path("workroom.db"), bytes, length);
    store = open_workroom();
    MUST(bk_store_check(store, arena, &findings, &trouble));
    ck_assert_uint_gt(findings.count, 0);
    ck_assert_ptr_nonnull(strstr(findings.items[0], "person_by_name"));
    bk_store_close(store);
    bk_arena_free(arena);
}
END_TEST

START_TEST(only_the_maker_checks)
{
    bk_store_close(open_workroom());
    bk_store *store = open_workroom_as(BK_AS_DIRECTOR);
    bk_arena *arena = bk_arena_new();
    bk_findings findings;
    REFUSED(bk_store_check(store, arena, &findings, &trouble), BK_REFUSED, "maker alone");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("check", a_sound_store_has_no_findings, every_harm_is_found, a_damaged_page_of_an_index_is_found,
             only_the_maker_checks)
