#include "bodkin/ui/suppose_forms.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/form_choices.h"
#include "bodkin/ui/suppose_words.h"
#include "bodkin/work/timetable.h"

// What the forms are about: the number of what is supposed in the wall's list and one more; 0: a new one.
static size_t place_of(const bk_form *form)
{
    return bk_form_about(form) > 0 ? (size_t)bk_form_about(form) - 1 : BK_SUPPOSED_NEW;
}

// What the forms of that sort fill in.
typedef struct filled {
    const char *person, *skills, *hours; ///< of a helper
    const char *date;                    ///< as it is picked
    const char *costume;                 ///< its number
    bk_day on;
    int line;
} filled;

// Puts it into the list, and says so.
static bk_status put(const bk_form *form, const bk_job *job, size_t at, const bk_supposition *one,
                     bk_form_saved *saved, bk_error *error)
{
    const bk_wall *wall = bk_form_wall(form);
    bk_supposed_told told;
    bk_status status = bk_supposed_tell(wall, one, job->arena, &told, error);
    if (status)
        return status;
    at = bk_supposed_put(wall->supposed, at, one);
    saved->id = (int64_t)at + 1;
    saved->sentence = bk_arena_print(job->arena, "Supposed: %s.", told.words);
    return BK_OK;
}

// -------------------------------------------------------------------------------------------------- a helper

static const bk_column helper_columns[] = {
    {"person", true, BK_CELL_NAME, offsetof(filled, person), .example = "Bo Lind"},
    {"on", true, BK_CELL_DAY, offsetof(filled, on), .example = "2027-03-04"},
    {"hours", true, BK_CELL_HOURS, offsetof(filled, hours), .example = "18:00-21:00"},
    {"skills", true, BK_CELL_WORDS, offsetof(filled, skills), .example = "hand", .words = &bk_kind_words},
};

static const bk_sheet helper_sheet = BK_FORM_SHEET(filled, helper_columns, "helper");

static const char *suggest_hours(const bk_form *form, bk_arena *arena)
{
    (void)form;
    return bk_arena_text(arena, "18:00-21:00");
}

static const char *suggest_skills(const bk_form *form, bk_arena *arena)
{
    (void)form;
    return bk_supposed_skills(1U << BK_HAND, arena);
}

static const bk_form_field helper_fields[] = {
    {.column = "person", .label = "helper", .help = "who would come: a name that nobody here bears yet"},
    {.column = "on", .label = "on", .help = "the day; for a second evening suppose the same name again"},
    {.column = "hours", .label = "hours", .help = "from when to when on that day", .suggests = suggest_hours},
    {.column = "skills",
     .label = "skills",
     .help = "kinds of step the helper can do, with ; between them",
     .choices = bk_choose_kinds,
     .suggests = suggest_skills},
};

static bk_status borne(const bk_form *form, const char *name, bk_arena *arena, bool *is, bk_error *error)
{
    bk_rows rows = {0};
    bk_status status = bk_store_read(bk_form_wall(form)->store, BK_PEOPLE, 0, arena, &rows, error);
    *is = false;
    for (size_t i = 0; !status && i < rows.count; i++)
        *is = *is || bk_same_text(((const bk_person *)rows.items)[i].name, name);
    return status;
}

static unsigned skills_of(const char *list)
{
    unsigned skills = 0;
    const char *rest = list, *item = NULL;
    size_t length = 0;
    while (bk_list_item(&rest, &item, &length))
        for (int kind = 0; kind < BK_KINDS; kind++) {
            const char *word = bk_word_text(&bk_kind_words, kind);
            if (strlen(word) == length && memcmp(word, item, length) == 0)
                skills |= 1U << kind;
        }
    return skills;
}

// Each stretch of hours is one supposition.
static bk_status put_helper(const bk_form *form, const bk_job *job, const filled *helper,
                            bk_form_saved *saved, bk_error *error)
{
    bk_stretch stretches[BK_STRETCHES];
    int count = bk_hours_read(helper->hours, stretches);
    bk_supposition one = {.what = BK_SUPPOSE_HELPER,
                          .person = helper->person,
                          .skills = skills_of(helper->skills),
                          .day = helper->on};
    bk_status status = BK_OK;
    for (int i = count; !status && i-- > 0;) {
        one.hours = stretches[i];
        status = put(form, job, i == 0 ? place_of(form) : BK_SUPPOSED_NEW, &one, saved, error);
    }
    return status;
}

static bk_status save_helper(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                             bk_error *error)
{
    bool is = false;
    const filled *helper = record;
    bk_status status = borne(form, helper->person, job->arena, &is, error);
    if (status)
        return status;
    if (is) {
        saved->column = "person";
        return bk_fail(error, BK_REFUSED,
                       "%s is one of the workroom's people: write another name, or change their hours there "
                       "(H).",
                       bk_text_safe(job->arena, helper->person, bk_form_wall(form)->ascii));
    }
    if (helper->on < job->today) {
        saved->column = "on";
        return bk_fail(error, BK_REFUSED, "That day is past: choose today or a later one.");
    }
    return put_helper(form, job, helper, saved, error);
}

// ---------------------------------------------------------------------------------------------------- a date

static const bk_column date_columns[] = {
    {"date", true, BK_CELL_NAME, offsetof(filled, date), .example = "dress Wed 17 Mar 19:00"},
    {"on", true, BK_CELL_DAY, offsetof(filled, on), .example = "2027-03-18"},
};

static const bk_sheet date_sheet = BK_FORM_SHEET(filled, date_columns, "date");

static bk_status timetable_of(const bk_wall *wall, bk_arena *arena, bk_timetable *table, bk_error *error)
{
    *table = (bk_timetable){0};
    return wall->rail ? bk_timetable_read(wall->store, &wall->rail->production, arena, table, error) : BK_OK;
}

// The first of these is when costumes are due.
static bool counts(const bk_date *date)
{
    return date->what == BK_ON_PARADE || date->what == BK_ON_DRESS || date->what == BK_ON_OPENING;
}

static bool is_other(const bk_date *date, bk_day today)
{
    return !counts(date) && date->on >= today;
}

static const char *date_tells(const bk_date *date, const bk_wall *wall, bk_arena *arena)
{
    const char *away = bk_days_away(date->on, wall->today, arena);
    return counts(date) ? bk_arena_print(arena, "%s; costumes are due then", away) : away;
}

// Those first by which costumes are due, then the others that are to come.
static bk_status choose_dates(const bk_form *form, bk_arena *arena, bk_form_choices *choices, bk_error *error)
{
    bk_timetable table;
    const bk_wall *wall = bk_form_wall(form);
    bk_status status = timetable_of(wall, arena, &table, error);
    if (status)
        return status;
    bk_form_choice *items = bk_arena_clear(arena, table.count, sizeof *items);
    size_t count = 0;
    for (int others = 0; others <= 1; others++)
        for (size_t i = 0; i < table.count; i++)
            if (others == 0 ? counts(&table.items[i]) : is_other(&table.items[i], wall->today))
                items[count++] = (bk_form_choice){bk_supposed_date_words(&table.items[i], wall->today, arena),
                                                  date_tells(&table.items[i], wall, arena)};
    *choices = (bk_form_choices){items, count};
    return BK_OK;
}

static const bk_form_field date_fields[] = {
    {.column = "date", .label = "date", .help = "which date would move", .choices = choose_dates},
    {.column = "on", .label = "moves to", .help = "the day on which it would be"},
};

// The opening is the production's own, also where a date tells of it.
static void take_date(const bk_wall *wall, const bk_date *date, bk_supposition *one)
{
    bool opening = date->what == BK_ON_OPENING && date->on == wall->rail->production.opens;
    one->date_id = opening ? 0 : date->id;
    one->production_id = date->production_id;
}

static bk_status save_date(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                           bk_error *error)
{
    bk_timetable table;
    const filled *date = record;
    const bk_wall *wall = bk_form_wall(form);
    bk_supposition one = {.what = BK_SUPPOSE_DATE, .day = date->on};
    bk_status status = timetable_of(wall, job->arena, &table, error);
    for (size_t i = 0; !status && i < table.count && one.production_id == 0; i++)
        if (bk_same_text(bk_supposed_date_words(&table.items[i], wall->today, job->arena), date->date))
            take_date(wall, &table.items[i], &one);
    if (!status && one.production_id == 0) {
        saved->column = "date";
        return bk_fail(error, BK_REFUSED, "No date of this production is called so: pick it from the list.");
    }
    return status ? status : put(form, job, place_of(form), &one, saved, error);
}

// ------------------------------------------------------------------------------------------------- a costume

static const bk_column costume_columns[] = {
    {"costume", true, BK_CELL_NAME, offsetof(filled, costume), .example = "4A"},
    {"on", true, BK_CELL_DAY, offsetof(filled, on), .example = "2027-03-18"},
};

static const bk_sheet due_sheet = BK_FORM_SHEET(filled, costume_columns, "costume");

static const bk_sheet drop_sheet = {
    .file = "",
    .noun = "costume",
    .columns = costume_columns,
    .column_count = 1,
    .record_size = sizeof(filled),
    .line = offsetof(filled, line),
};

static const bk_form_field due_fields[] = {
    {.column = "costume",
     .label = "costume",
     .help = "which costume would be due on another day",
     .choices = bk_choose_costumes},
    {.column = "on", .label = "due", .help = "the day by which it would have to be ready"},
};

static const bk_form_field drop_fields[] = {
    {.column = "costume",
     .label = "costume",
     .help = "which costume would not be made; pieces worn with no other go with it",
     .choices = bk_choose_costumes},
};

static bk_status save_costume(const bk_form *form, const bk_job *job, bk_supposition one, const char *number,
                              bk_form_saved *saved, bk_error *error)
{
    const bk_rail_costume *costume = bk_wall_costume(bk_form_wall(form), number);
    if (!costume) {
        saved->column = "costume";
        return bk_fail(error, BK_REFUSED,
                       "No costume of this production has that number: pick it from the list.");
    }
    one.costume_id = costume->record->id;
    return put(form, job, place_of(form), &one, saved, error);
}

static bk_status save_due(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                          bk_error *error)
{
    const filled *due = record;
    const bk_supposition one = {.what = BK_SUPPOSE_DUE, .day = due->on};
    return save_costume(form, job, one, due->costume, saved, error);
}

static bk_status save_drop(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                           bk_error *error)
{
    const filled *drop = record;
    const bk_supposition one = {.what = BK_SUPPOSE_DROP, .day = BK_NO_DAY};
    return save_costume(form, job, one, drop->costume, saved, error);
}

// ----------------------------------------------------------------------------------------------- opening them

#define FORM(title, columns, table, job) \
    { \
        .name = title, .sheet = &(columns), .fields = table, .field_count = sizeof(table) / sizeof *(table), \
        .family = BK_FAMILIES, .save = job, .apart = true \
    }

static const bk_form_kind forms[BK_SUPPOSINGS] = {
    [BK_SUPPOSE_HELPER] = FORM("Suppose a helper comes", helper_sheet, helper_fields, save_helper),
    [BK_SUPPOSE_DATE] = FORM("Suppose a date moves", date_sheet, date_fields, save_date),
    [BK_SUPPOSE_DUE] = FORM("Suppose another due day", due_sheet, due_fields, save_due),
    [BK_SUPPOSE_DROP] = FORM("Suppose a costume is dropped", drop_sheet, drop_fields, save_drop),
};

void bk_suppose_open_new(bk_screen *from, bk_supposing what, const char *number)
{
    const filled nothing = {.costume = number, .on = BK_NO_DAY};
    bk_form_open(from, &forms[what], &(bk_form_start){.record = &nothing});
}

// The date as it would be picked; NULL where it is not of the production shown, or gone.
static const char *picked_date(const bk_wall *wall, const bk_supposition *one, bk_arena *arena)
{
    bk_error error;
    bk_timetable table = {0};
    if (timetable_of(wall, arena, &table, &error))
        return NULL;
    for (size_t i = 0; i < table.count; i++) {
        bk_supposition its = {.date_id = -1};
        take_date(wall, &table.items[i], &its);
        if (its.date_id == one->date_id && its.production_id == one->production_id)
            return bk_supposed_date_words(&table.items[i], wall->today, arena);
    }
    return NULL;
}

void bk_suppose_open(bk_screen *from, size_t at)
{
    bk_error error;
    bk_supposed_told told = {0};
    const bk_wall *wall = from->wall;
    const bk_supposition *one = &wall->supposed->items[at];
    bk_arena *arena = bk_arena_new();
    if (bk_supposed_tell(wall, one, arena, &told, &error))
        bk_wall_say(from->wall, "%s", error.text);
    else if (told.gone)
        bk_wall_say(from->wall, "What it is about is no longer there: take it off with -.");
    else if (told.production)
        bk_wall_say(from->wall, "It is of %s: open that production first, or take it off with -.",
                    bk_text_safe(arena, told.production, wall->ascii));
    else {
        const filled now = {
            .person = one->person,
            .skills = bk_supposed_skills(one->skills, arena),
            .hours = one->what == BK_SUPPOSE_HELPER ? bk_supposed_hours(&one->hours, arena) : NULL,
            .date = one->what == BK_SUPPOSE_DATE ? picked_date(wall, one, arena) : NULL,
            .costume = told.number,
            .on = one->day,
        };
        bk_form_open(from, &forms[one->what], &(bk_form_start){.record = &now, .about = (int64_t)at + 1});
    }
    bk_arena_free(arena);
}
