#include "bodkin/ui/history_forms.h"

#include "bodkin/base/text.h"
#include "bodkin/sheet/columns.h"
#include "bodkin/ui/form.h"
#include "bodkin/ui/length_words.h"

// --------------------------------------------------------------------------------------------- one value

typedef struct value_record {
    bk_length value;
    const char *over, *taken_by;
    int line;
    bk_history_view *view; // of the screen below, which knows what is corrected
} value_record;

static const bk_column value_columns[] = {
    {"value", true, BK_CELL_LENGTH, offsetof(value_record, value), .example = "92.5 cm"},
    {"over", false, BK_CELL_TEXT, offsetof(value_record, over), .example = "thin shirt"},
    {"taken_by", false, BK_CELL_TEXT, offsetof(value_record, taken_by), .example = "Ida"},
};

static const bk_sheet value_sheet = BK_FORM_SHEET(value_record, value_columns, "measure");

static const bk_form_field value_fields[] = {
    {.column = "value",
     .label = "value",
     .help = "as people say it: 92.5, 36 3/8, 5' 4\", 1m64",
     .example = "92.5 or 36 3/8 in"},
    {.column = "over", .label = "over", .help = "what was worn while measured, or empty"},
    {.column = "taken_by", .label = "taken by", .help = "who held the tape, or empty"},
};

// The sheet with what is typed in place of the value, and the one before it.
static const char *doubt_value(const bk_form *form, size_t field, const void *filled, bk_arena *arena)
{
    const value_record *record = filled;
    const bk_history *history = &record->view->history;
    size_t sheet = record->view->sheet, item = record->view->rows.at, count = history->row_count;
    (void)form;
    if (field != 0 || sheet >= history->sheet_count || item >= count)
        return NULL;
    bool has_before = sheet + 1 < history->sheet_count;
    bk_taken *items = bk_arena_clear(arena, count, sizeof *items);
    bk_taken *earlier = bk_arena_clear(arena, count, sizeof *earlier);
    for (size_t i = 0; i < count; i++) {
        items[i] = (bk_taken){history->rows[i].name, history->rows[i].cells[sheet].value};
        if (has_before)
            earlier[i] = (bk_taken){history->rows[i].name, history->rows[i].cells[sheet + 1].value};
    }
    items[item].value = record->value;
    bk_taken_sheet taken = {items, count, history->sheets[sheet].on}, before = {earlier, count, BK_NO_DAY};
    if (has_before)
        before.on = history->sheets[sheet + 1].on;
    return bk_doubt_of_value(&taken, item, has_before ? &before : NULL, record->view->unit, arena);
}

// What stands in that cell now; false where that cannot be read or the sheet is gone.
static bool stands_now(const bk_job *job, bk_history_view *view, bk_measure_mark *now)
{
    bk_error error;
    bk_history history = {0};
    bool found = false;
    *now = (bk_measure_mark){.value = BK_NO_AMOUNT};
    if (bk_history_read(job->store, view->performer, view->unit, view->about, &history, &error))
        return false;
    for (size_t s = 0; s < history.sheet_count; s++) {
        if (history.sheets[s].on != view->correction.on)
            continue;
        found = true;
        for (size_t i = 0; i < history.row_count; i++)
            if (bk_same_text(history.rows[i].name, view->correction.name))
                *now = (bk_measure_mark){history.rows[i].cells[s].value, history.rows[i].cells[s].over,
                                         history.rows[i].cells[s].taken_by};
    }
    return found;
}

static const char *mark_words(const bk_measure_mark *mark, bk_unit unit, bk_arena *arena)
{
    if (mark->value == BK_NO_AMOUNT)
        return "empty";
    return bk_arena_print(arena, "%s%s%s%s%s", bk_length_words(mark->value, unit, arena),
                          mark->over ? " over " : "", mark->over ? mark->over : "",
                          mark->taken_by ? " by " : "", mark->taken_by ? mark->taken_by : "");
}

// Where another terminal was faster both are told, and saving once more takes this one.
static bk_status tell_newer(const bk_job *job, bk_history_view *view, const bk_measure_mark *wanted,
                            bk_error *error)
{
    bk_measure_mark now;
    bk_history_correction *about = &view->correction;
    bool same = !stands_now(job, view, &now) ||
                (now.value == about->seen.value && bk_same_text(now.over, about->seen.over) &&
                 bk_same_text(now.taken_by, about->seen.taken_by));
    if (same)
        return error->status;
    about->seen = now;
    return bk_fail(
        error, BK_REFUSED,
        "Another terminal has made it %s meanwhile; yours is %s. Save again to keep yours, or leave "
        "with Escape to keep theirs.",
        bk_text_safe(job->arena, mark_words(&now, view->unit, job->arena), false),
        bk_text_safe(job->arena, mark_words(wanted, view->unit, job->arena), false));
}

static bk_status save_value(const bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                            bk_error *error)
{
    const value_record *record = filled;
    bk_history_view *view = record->view;
    const bk_measure_correcting correcting = {
        .performer = view->performer,
        .on = view->correction.on,
        .today = job->today,
        .name = view->correction.name,
        .seen = view->correction.seen,
        .wanted = {record->value, record->over, record->taken_by},
    };
    (void)form;
    bk_status status =
        bk_measure_correct(job->store, &correcting, job->made_at, job->arena, &saved->sentence, error);
    return status == BK_REFUSED ? tell_newer(job, view, &correcting.wanted, error) : status;
}

static const bk_form_kind value_form = {
    .name = "Measure",
    .sheet = &value_sheet,
    .fields = value_fields,
    .field_count = sizeof value_fields / sizeof value_fields[0],
    .family = BK_MEASURES,
    .save = save_value,
    .doubt = doubt_value,
};

void bk_history_open_value(bk_screen *screen)
{
    bk_history_view *view = screen->self;
    if (!bk_history_chosen_cell(view))
        return;
    char day[BK_DAY_WORDS_ROOM];
    bk_history_begin_correction(view);
    const bk_history_correction *about = &view->correction;
    const char *title = bk_arena_print(view->about, "%s of %s, %s", about->name, view->history.performer.name,
                                       bk_day_words(about->on, screen->wall->today, day));
    bk_form_open(screen, &value_form,
                 &(bk_form_start){.record = &(value_record){.value = about->seen.value,
                                                            .over = about->seen.over,
                                                            .taken_by = about->seen.taken_by,
                                                            .view = view},
                                  .title = title,
                                  .first = "value"});
}

// --------------------------------------------------------------------------------------- the day of a sheet

typedef struct day_record {
    bk_day on;
    int line;
    bk_history_view *view;
} day_record;

static const bk_column day_columns[] = {
    {"taken_on", true, BK_CELL_DAY, offsetof(day_record, on), .example = "2027-02-02"},
};

static const bk_sheet day_sheet = BK_FORM_SHEET(day_record, day_columns, "sheet");

static const bk_form_field day_fields[] = {
    {.column = "taken_on", .label = "taken on", .help = "the day this sheet was taken"},
};

static bk_status save_day(const bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                          bk_error *error)
{
    const day_record *record = filled;
    const bk_history_view *view = record->view;
    (void)form;
    saved->column = "taken_on";
    return bk_sheet_redate(job->store, view->performer, view->correction.on, record->on, job->today,
                           job->made_at, job->arena, &saved->sentence, error);
}

static const bk_form_kind day_form = {
    .name = "Day of a sheet",
    .sheet = &day_sheet,
    .fields = day_fields,
    .field_count = sizeof day_fields / sizeof day_fields[0],
    .family = BK_MEASURE_SHEETS,
    .save = save_day,
};

void bk_history_open_day(bk_screen *screen)
{
    bk_history_view *view = screen->self;
    const bk_history_sheet *sheet = bk_history_chosen_sheet(view);
    if (!sheet)
        return;
    char day[BK_DAY_WORDS_ROOM];
    bk_history_begin_correction(view);
    const char *title = bk_arena_print(view->about, "Sheet of %s, %s", view->history.performer.name,
                                       bk_day_words(sheet->on, screen->wall->today, day));
    bk_form_open(screen, &day_form,
                 &(bk_form_start){.record = &(day_record){.on = sheet->on, .view = view}, .title = title});
}

// ------------------------------------------------------------------------------------------ what is marked

typedef struct limit_record {
    bk_length length;
    bk_quantity percent;
    int line;
} limit_record;

static const bk_column limit_columns[] = {
    {"length", true, BK_CELL_LENGTH, offsetof(limit_record, length), .example = "2 cm"},
    {"percent", true, BK_CELL_QUANTITY, offsetof(limit_record, percent), .example = "3"},
};

static const bk_sheet limit_sheet = BK_FORM_SHEET(limit_record, limit_columns, "limit");

static const bk_form_field limit_fields[] = {
    {.column = "length",
     .label = "more than",
     .help = "changes of a measure that are smaller than this are not marked",
     .example = "2 cm"},
    {.column = "percent",
     .label = "and percent",
     .help = "of the earlier value; smaller changes are not marked either",
     .example = "3"},
};

static bk_status save_limit(const bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                            bk_error *error)
{
    const limit_record *record = filled;
    (void)form;
    return bk_change_limit_put(job->store, (bk_change_limit){record->length, record->percent}, job->made_at,
                               job->arena, &saved->sentence, error);
}

static const bk_form_kind limit_form = {
    .name = "Which changes of measures are marked",
    .sheet = &limit_sheet,
    .fields = limit_fields,
    .field_count = sizeof limit_fields / sizeof limit_fields[0],
    .family = BK_SETTINGS,
    .save = save_limit,
};

void bk_history_open_limit(bk_screen *screen)
{
    const bk_history_view *view = screen->self;
    bk_form_open(screen, &limit_form,
                 &(bk_form_start){.record = &(limit_record){.length = view->history.limit.length,
                                                            .percent = view->history.limit.percent}});
}
