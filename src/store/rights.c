#include "bodkin/store/rights.h"

#include <stddef.h>
#include <string.h>

enum { MAKER = 1 << BK_AS_MAKER, DIRECTOR = 1 << BK_AS_DIRECTOR, VOLUNTEER = 1 << BK_AS_VOLUNTEER };
enum { ALL = MAKER | DIRECTOR | VOLUNTEER };

// Who may read, insert, update and delete in a table, or, where a column is named, in that column of it. A
// table that is not listed is the maker's alone.
typedef struct held_right {
    const char *table, *column;
    unsigned read, insert, update, delete;
} held_right;

static const held_right rights[] = {
    {"away", NULL, ALL, MAKER, MAKER, MAKER},
    {"company", NULL, ALL, MAKER, MAKER, MAKER},
    {"costume", NULL, ALL, MAKER, MAKER, MAKER},
    {"daybook", NULL, ALL, MAKER, MAKER, MAKER},
    {"daybook", "sentence", MAKER, MAKER, MAKER, MAKER},
    {"daybook_changes", NULL, MAKER, MAKER, MAKER, MAKER},
    {"equipment", NULL, ALL, MAKER, MAKER, MAKER},
    {"fitting", NULL, ALL, MAKER, MAKER, MAKER},
    {"material", NULL, ALL, MAKER, MAKER, MAKER},
    {"material_price", NULL, MAKER, MAKER, MAKER, MAKER},
    {"measure", NULL, ALL, MAKER, MAKER, MAKER},
    {"measure", "value", MAKER, MAKER, MAKER, MAKER},
    {"measure_name", NULL, ALL, MAKER, MAKER, MAKER},
    {"measure_sheet", NULL, ALL, MAKER, MAKER, MAKER},
    {"movement", NULL, ALL, MAKER, MAKER, MAKER},
    {"need", NULL, ALL, MAKER, MAKER, MAKER},
    {"note", NULL, ALL, MAKER, MAKER, MAKER},
    {"performer", NULL, ALL, MAKER, MAKER, MAKER},
    {"performer_contact", NULL, MAKER, MAKER, MAKER, MAKER},
    {"person", NULL, ALL, MAKER, MAKER, MAKER},
    {"piece", NULL, ALL, MAKER, MAKER, MAKER},
    {"piece_cost", NULL, MAKER, MAKER, MAKER, MAKER},
    {"piece_costume", NULL, ALL, MAKER, MAKER, MAKER},
    {"production", NULL, ALL, MAKER, MAKER, MAKER},
    {"purchase", NULL, ALL, MAKER, MAKER, MAKER},
    {"purchase_cost", NULL, MAKER, MAKER, MAKER, MAKER},
    {"role", NULL, ALL, MAKER, MAKER, MAKER},
    {"role_cover", NULL, ALL, MAKER, MAKER, MAKER},
    {"running", NULL, ALL, MAKER, MAKER, MAKER},
    {"setting", NULL, ALL, MAKER, MAKER, MAKER},
    {"show_date", NULL, ALL, MAKER, MAKER, MAKER},
    {"step", NULL, ALL, MAKER, MAKER, MAKER},
    {"step_after", NULL, ALL, MAKER, MAKER, MAKER},
    {"work", NULL, ALL, MAKER, MAKER, MAKER},
    {"work_step", NULL, ALL, MAKER, MAKER, MAKER},
};

static const held_right none = {"", NULL, MAKER, MAKER, MAKER, MAKER};

// What may be asked of the store itself, with no value to be set.
static const char *const questions[] = {"data_version", "user_version"};

static const held_right *right_of(const char *table, const char *column)
{
    const held_right *found = &none;
    for (size_t i = 0; i < sizeof rights / sizeof rights[0]; i++) {
        if (strcmp(rights[i].table, table) != 0)
            continue;
        if (rights[i].column == NULL)
            found = &rights[i];
        else if (column != NULL && strcmp(rights[i].column, column) == 0)
            return &rights[i];
    }
    return found;
}

static bool may_ask(const char *question, const char *value)
{
    for (size_t i = 0; i < sizeof questions / sizeof questions[0]; i++) {
        if (value == NULL && strcmp(questions[i], question) == 0)
            return true;
    }
    return false;
}

bool bk_rights_allow(bk_as as, bk_doing doing, const char *table, const char *column)
{
    unsigned who = 1U << as;
    const held_right *held = doing <= BK_DOING_DELETE ? right_of(table, column) : &none;
    switch (doing) {
    case BK_DOING_READ:
        return (held->read & who) != 0;
    case BK_DOING_INSERT:
        return (held->insert & who) != 0;
    case BK_DOING_UPDATE:
        return (held->update & who) != 0;
    case BK_DOING_DELETE:
        return (held->delete &who) != 0;
    case BK_DOING_ASK:
        return as == BK_AS_MAKER || may_ask(table, column);
    case BK_DOING_ORDINARY:
        return true;
    case BK_DOING_OTHER:
        return as == BK_AS_MAKER;
    }
    return false;
}
