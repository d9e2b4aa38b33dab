#include "bodkin/ui/form_choices.h"
#include "bodkin/ui/form_suggest.h"
#include "bodkin/ui/forms.h"

// The show: a production, its dates, its roles and its costumes.

static const bk_form_field production_fields[] = {
    {.column = "production", .label = "production", .help = "what is staged, by the name everybody uses"},
    {.column = "opens",
     .label = "opens",
     .help = "the day of the opening; costumes are counted back from it"},
    {.column = "unit",
     .label = "lengths in",
     .help = "how lengths are written in this production",
     .choices = bk_choose_units,
     .suggests = bk_suggest_unit},
    {.column = "currency",
     .label = "money in",
     .help = "three capital letters (ISO 4217) for prices where none is written",
     .suggests = bk_suggest_currency},
    {.column = "measures_good_for",
     .label = "measures good for",
     .help = "days after which measures count as old; empty is 180"},
};

static const bk_form_field date_fields[] = {
    {.column = "what", .label = "what", .help = "what takes place", .choices = bk_choose_occasions},
    {.column = "on", .label = "on", .help = "the day"},
    {.column = "at", .label = "at", .help = "when it begins, or empty"},
    {.column = "note", .label = "note", .help = "where, who must be there, what to bring", .whole = true},
};

static const bk_form_field role_fields[] = {
    {.column = "role", .label = "role", .help = "what is played, as in the programme"},
    {.column = "performer",
     .label = "played by",
     .help = "who plays it; empty while it is not cast",
     .choices = bk_choose_performers,
     .makes = {&bk_performer_form}},
    {.column = "cover",
     .label = "covered by",
     .help = "who may stand in, with ; between them",
     .choices = bk_choose_performers,
     .makes = {&bk_performer_form}},
    {.column = "note",
     .label = "note",
     .help = "what the costumes must allow: dances, fights, quick changes",
     .whole = true},
};

static const bk_form_field costume_fields[] = {
    {.column = "role",
     .label = "role",
     .help = "who wears it",
     .choices = bk_choose_roles,
     .makes = {&bk_role_form}},
    {.column = "costume",
     .label = "number",
     .help = "short, for labels: 4A is the fourth role's first costume",
     .suggests = bk_suggest_costume},
    {.column = "title", .label = "title", .help = "what it is, in a few words"},
    {.column = "due",
     .label = "due",
     .help = "the first day it is worn; empty is the first of parade, dress and opening"},
    {.column = "note",
     .label = "note",
     .help = "what happens to it on stage, and what to mind",
     .whole = true},
};

const bk_form_kind bk_production_form =
    BK_RECORD_FORM("Production", BK_SHEET_PRODUCTION, BK_PRODUCTIONS, production_fields);
const bk_form_kind bk_date_form = BK_RECORD_FORM("Date", BK_SHEET_DATES, BK_DATES, date_fields);
const bk_form_kind bk_role_form = BK_RECORD_FORM("Role", BK_SHEET_ROLES, BK_ROLES, role_fields);
const bk_form_kind bk_costume_form =
    BK_RECORD_FORM("Costume", BK_SHEET_COSTUMES, BK_COSTUMES, costume_fields);
