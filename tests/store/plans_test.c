#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "workroom.h"

// Which statements may walk through a whole table, and why that does not grow too dear.
static const struct {
    const char *statement, *table, *reason;
} allowed[] = {
    {"read_productions", "production", "the list of all productions"},
    {"read_people", "person", "the list of all people"},
    {"read_aways", "away", "the absences of all people"},
    {"read_performers", "performer", "the list of all performers"},
    {"read_contacts", "performer_contact", "the contacts of all performers"},
    {"read_measure_names", "measure_name", "the names of all measures, some eighty"},
    {"read_measure_sheets", "measure_sheet", "the sheets of all performers, for an import"},
    {"read_materials", "material", "the list of all materials"},
    {"read_prices", "material_price", "the prices of all materials"},
    {"read_orders", "purchase", "the list of all orders"},
    {"read_order_costs", "purchase_cost", "the costs of all orders"},
    {"read_works", "work", "the list of all orders of work"},
    {"read_work_steps", "work", "the steps of all orders of work"},
    {"read_equipment", "equipment", "the list of all equipment, a handful"},
    {"places_equipment", "equipment", "the list of all equipment, a handful"},
    {"last_equipment", "equipment", "the list of all equipment, a handful"},
    {"read_runnings", "running", "a clock a person at most"},
    {"read_settings", "setting", "the settings of the workroom, a handful"},
    {"read_step_lacks", "shelf", "no table: what one step needs, by material"},
    {"places_works", "work", "the list of all orders of work"},
    {"last_work", "work", "the list of all orders of work"},
    {"rail_other_claims", "production", "an index of the productions in work only"},
    {"rail_other_pieces", "production", "an index of the productions in work only"},
    {"rail_usual_dues", "production", "an index of the productions in work only"},
    {"steps_taken", "step", "an index of the steps whose minutes taken are known only"},
    {"add_measure_name", "measure", "only where measures were added before their name, in the same change"},
    {"end_undo", "daybook", "at a migration only"},
    {"get_table_count", "sqlite_*", "of a new store only"},
    {"check_*", "*", "bodkin check looks at everything"},
    {"count_dangling", "*", "at a migration only"},
};

typedef struct watched_plan {
    const char *statement;
    char *line;
} watched_plan;

static bool fits(const char *pattern, const char *word, size_t length)
{
    size_t stars = strcspn(pattern, "*");
    if (pattern[stars] == '*')
        return strncmp(pattern, word, stars) == 0;
    return stars == length && strncmp(pattern, word, length) == 0;
}

static bool may_walk(const char *statement, const char *table, size_t length)
{
    for (size_t i = 0; i < sizeof allowed / sizeof allowed[0]; i++) {
        if (fits(allowed[i].statement, statement, strlen(statement)) && fits(allowed[i].table, table, length))
            return true;
    }
    return false;
}

static void take_plan_line(void *context, int columns, const char *const *values)
{
    static const char walk[] = "SCAN ";
    watched_plan *plan = context;
    const char *line = values[columns - 1];
    if (strncmp(line, walk, strlen(walk)) != 0)
        return;
    const char *table = line + strlen(walk);
    bool made_on_the_way = strncmp(table, "(", 1) == 0 || strstr(table, "CONSTANT ROW") != NULL;
    if (!made_on_the_way && !may_walk(plan->statement, table, strcspn(table, " "))) {
        free(plan->line);
        plan->line = strdup(line);
    }
}

static bool is_query(const char *text)
{
    static const char *const verbs[] = {"SELECT", "INSERT", "UPDATE", "DELETE"};
    text += strspn(text, " \n");
    for (size_t i = 0; i < sizeof verbs / sizeof verbs[0]; i++) {
        if (strncmp(text, verbs[i], strlen(verbs[i])) == 0)
            return true;
    }
    return false;
}

START_TEST(no_statement_walks_through_a_table_that_grows)
{
    bk_store *store = open_workroom();
    for (int sql = 0; sql < BK_SQL_COUNT; sql++) {
        watched_plan plan = {.statement = bk_statements[sql].name};
        bk_buffer text = {0};
        if (!is_query(bk_statements[sql].text))
            continue;
        bk_buffer_print(&text, "EXPLAIN QUERY PLAN %s", bk_statements[sql].text);
        MUST(bk_db_script(store->db, text.bytes, take_plan_line, &plan, &trouble));
        ck_assert_msg(plan.line == NULL, "%s: %s", plan.statement, plan.line);
        bk_buffer_free(&text);
    }
    bk_store_close(store);
}
END_TEST

static void take_reason_line(void *context, int columns, const char *const *values)
{
    bk_buffer_text(context, values[columns - 1]);
    bk_buffer_char(context, '\n');
}

static const char *plan_of(bk_store *store, bk_sql sql, bk_buffer *lines)
{
    bk_buffer text = {0};
    lines->length = 0;
    bk_buffer_print(&text, "EXPLAIN QUERY PLAN %s", bk_statements[sql].text);
    MUST(bk_db_script(store->db, text.bytes, take_reason_line, lines, &trouble));
    bk_buffer_free(&text);
    return lines->bytes;
}

START_TEST(the_rail_looks_at_productions_in_work_by_their_index)
{
    static const bk_sql statements[] = {BK_SQL_RAIL_OTHER_CLAIMS, BK_SQL_RAIL_OTHER_PIECES,
                                        BK_SQL_RAIL_USUAL_DUES};
    bk_store *store = open_workroom();
    bk_buffer lines = {0};
    for (size_t i = 0; i < sizeof statements / sizeof statements[0]; i++)
        ck_assert_ptr_nonnull(
            strstr(plan_of(store, statements[i], &lines), "SCAN production USING INDEX production_in_work"));
    bk_buffer_free(&lines);
    bk_store_close(store);
}
END_TEST

START_TEST(the_shelf_is_summed_up_from_an_index_alone)
{
    bk_store *store = open_workroom();
    bk_buffer lines = {0};
    ck_assert_ptr_nonnull(strstr(plan_of(store, BK_SQL_RAIL_SHELF, &lines),
                                 "SEARCH movement USING COVERING INDEX movement_by_material"));
    ck_assert_ptr_nonnull(strstr(lines.bytes, "SEARCH step USING COVERING INDEX step_open"));
    bk_buffer_free(&lines);
    bk_store_close(store);
}
END_TEST

START_TEST(long_lists_come_in_order_without_being_sorted)
{
    static const bk_sql statements[] = {BK_SQL_READ_STEPS,  BK_SQL_READ_RAIL_STEPS, BK_SQL_READ_STEP_AFTERS,
                                        BK_SQL_READ_PIECES, BK_SQL_READ_COSTUMES,   BK_SQL_READ_ROLES,
                                        BK_SQL_READ_NOTES};
    bk_store *store = open_workroom();
    bk_buffer lines = {0};
    for (size_t i = 0; i < sizeof statements / sizeof statements[0]; i++)
        ck_assert_ptr_null(strstr(plan_of(store, statements[i], &lines), "TEMP B-TREE"));
    ck_assert_ptr_null(strstr(plan_of(store, BK_SQL_READ_MEASURES, &lines), "TEMP B-TREE FOR ORDER BY"));
    bk_buffer_free(&lines);
    bk_store_close(store);
}
END_TEST

START_TEST(every_statement_can_be_prepared)
{
    bk_store *store = open_workroom();
    for (int sql = 0; sql < BK_SQL_COUNT; sql++) {
        bk_query *query = NULL;
        MUST(bk_query_begin(&query, store->db, (bk_sql)sql, &trouble));
        bk_query_end(query);
    }
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("plans", no_statement_walks_through_a_table_that_grows,
             the_rail_looks_at_productions_in_work_by_their_index, the_shelf_is_summed_up_from_an_index_alone,
             long_lists_come_in_order_without_being_sorted, every_statement_can_be_prepared)
