#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"
#include "bodkin/store/inside.h"
#include "work/filled.h"
#include "work/hour.h"

// An hour of changes of every kind at random, undone one by one to the start and redone one by one to the end.

enum { CHANGES = 500, LOOKED_AT = 50, SEED = 20270302, TABLES_MOST = 64, SQL_ROOM = 128 };

// -------------------------------------------------------------------------------------------------- dumping

typedef struct table_names {
    char *names[TABLES_MOST];
    int count;
} table_names;

static void take_table(void *context, int columns, const char *const *values)
{
    table_names *tables = context;
    ck_assert(columns == 1 && tables->count < TABLES_MOST);
    tables->names[tables->count++] = strdup(values[0]);
}

static void take_line(void *context, int columns, const char *const *values)
{
    bk_buffer *text = context;
    for (int i = 0; i < columns; i++) {
        bk_buffer_text(text, i ? "|" : "");
        bk_buffer_text(text, values[i] ? values[i] : "-");
    }
    bk_buffer_char(text, '\n');
}

/// All tables but the daybook, row by row; freed by the test.
static char *dump(bk_store *store)
{
    table_names tables = {.count = 0};
    bk_buffer text = {0};
    MUST(bk_db_script(store->db,
                      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND "
                      "name NOT LIKE 'daybook%' ORDER BY name",
                      take_table, &tables, &trouble));
    for (int i = 0; i < tables.count; i++) {
        char sql[SQL_ROOM];
        snprintf(sql, sizeof sql, "SELECT * FROM %s ORDER BY 1, 2", tables.names[i]);
        bk_buffer_print(&text, "%s:\n", tables.names[i]);
        MUST(bk_db_script(store->db, sql, take_line, &text, &trouble));
        free(tables.names[i]);
    }
    return text.bytes;
}

/// The same as one number (FNV-1a), for the states between.
static uint64_t state_of(bk_store *store)
{
    char *all = dump(store);
    uint64_t state = UINT64_C(14695981039346656037);
    for (const char *at = all; *at; at++)
        state = (state ^ (unsigned char)*at) * UINT64_C(1099511628211);
    free(all);
    return state;
}

// ----------------------------------------------------------------------------------------------------- tests

static hour begin(bk_store *store)
{
    hour at = {.job = job_in(store), .dice = SEED};
    at.job.arena = bk_arena_new();
    return at;
}

static void check_sound(bk_store *store, bk_arena *arena)
{
    bk_findings findings;
    MUST(bk_store_check(store, arena, &findings, &trouble));
    ck_assert_msg(findings.count == 0, "%s", findings.count ? findings.items[0] : "");
}

START_TEST(every_kind_of_change_can_be_made_and_is_undone)
{
    enum { TRIES = 400 };
    bk_store *store = store_with_salt_road();
    hour at = begin(store);
    uint64_t before = state_of(store);
    const char *sentence = NULL;
    for (size_t kind = 0; kind < hour_kinds(); kind++) {
        int tries = 0;
        while (!hour_change(&at, kind))
            ck_assert_msg(++tries < TRIES, "kind %zu: %s", kind, trouble.text);
        MUST(bk_daybook_undo(store, 0, MADE_AT, at.job.arena, &sentence, &trouble));
        ck_assert_msg(state_of(store) == before, "kind %zu: %s", kind, sentence);
    }
    bk_arena_free(at.job.arena);
    bk_store_close(store);
}
END_TEST

START_TEST(an_hour_of_changes_is_undone_to_the_start_and_redone_to_the_end)
{
    bk_store *store = store_with_salt_road();
    hour at = begin(store);
    const char *sentence = NULL;
    uint64_t states[CHANGES + 1];
    char *start = dump(store);
    states[0] = state_of(store);
    for (int i = 0; i < CHANGES; i++) {
        hour_change_any(&at);
        states[i + 1] = state_of(store);
        if (i % LOOKED_AT == 0)
            check_sound(store, at.job.arena);
    }
    check_sound(store, at.job.arena);
    char *end = dump(store);
    for (int i = CHANGES; i > 0; i--) {
        MUST(bk_daybook_undo(store, 0, MADE_AT, at.job.arena, &sentence, &trouble));
        ck_assert_msg(state_of(store) == states[i - 1], "change %d: %s", i, sentence);
    }
    char *undone = dump(store);
    ck_assert_str_eq(undone, start);
    for (int i = 0; i < CHANGES; i++) {
        MUST(bk_daybook_redo(store, MADE_AT, at.job.arena, &sentence, &trouble));
        ck_assert_msg(state_of(store) == states[i + 1], "change %d: %s", i + 1, sentence);
    }
    char *redone = dump(store);
    ck_assert_str_eq(redone, end);
    check_sound(store, at.job.arena);
    free(start);
    free(end);
    free(undone);
    free(redone);
    bk_arena_free(at.job.arena);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("undo_hour", every_kind_of_change_can_be_made_and_is_undone,
             an_hour_of_changes_is_undone_to_the_start_and_redone_to_the_end)
