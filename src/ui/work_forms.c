#include "bodkin/ui/work_forms.h"

#include "bodkin/base/text.h"
#include "bodkin/store/records_bench.h"
#include "bodkin/ui/form.h"
#include "bodkin/work/use_work.h"

// What is filled in: an order of work by name, and, of a new one, a note.
typedef struct named_work {
    const char *name, *note;
    int line;
} named_work;

static const bk_column columns[] = {
    {"work", true, BK_CELL_NAME, offsetof(named_work, name), .example = "Shirt, full cut"},
    {"note", false, BK_CELL_TEXT, offsetof(named_work, note), .example = "without the frills"},
};

static const bk_sheet sheet = BK_FORM_SHEET(named_work, columns, "order of work");

// ---------------------------------------------------------------------------------------------- using one

typedef struct work_sum {
    int64_t minutes;
    size_t steps, fittings;
} work_sum;

static work_sum sum_up(int64_t work, const bk_work_step *steps, size_t count)
{
    work_sum sum = {0};
    for (size_t i = 0; i < count; i++) {
        if (steps[i].work_id != work)
            continue;
        sum.minutes += steps[i].minutes;
        sum.steps++;
        sum.fittings += steps[i].kind == BK_FIT;
    }
    return sum;
}

// "8 h 45, 11 steps, 1 fitting".
static const char *sum_words(work_sum sum, bk_arena *arena)
{
    char minutes[BK_AMOUNT_ROOM];
    const char *words = bk_arena_print(arena, "%s, %zu step%s", bk_minutes_words(sum.minutes, minutes),
                                       sum.steps, sum.steps == 1 ? "" : "s");
    if (sum.fittings == 0)
        return words;
    return bk_arena_print(arena, "%s, %zu fitting%s", words, sum.fittings, sum.fittings == 1 ? "" : "s");
}

static bk_status choose_works(const bk_form *form, bk_arena *arena, bk_form_choices *choices, bk_error *error)
{
    bk_store *store = bk_form_wall(form)->store;
    bk_rows works = {0}, steps = {0};
    bk_status status = bk_store_read(store, BK_WORKS, 0, arena, &works, error);
    if (!status)
        status = bk_store_read(store, BK_WORK_STEPS, 0, arena, &steps, error);
    const bk_work *items = works.items;
    bk_form_choice *all = bk_arena_clear(arena, works.count, sizeof *all);
    for (size_t i = 0; i < works.count; i++)
        all[i] =
            (bk_form_choice){items[i].name, sum_words(sum_up(items[i].id, steps.items, steps.count), arena)};
    *choices = (bk_form_choices){all, works.count};
    return status;
}

static bk_status use(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                     bk_error *error)
{
    const named_work *filled = record;
    bk_rows works = {0};
    bk_status status = bk_store_read(job->store, BK_WORKS, 0, job->arena, &works, error);
    const bk_work *items = works.items;
    for (size_t i = 0; i < works.count; i++)
        if (bk_same_text(items[i].name, filled->name))
            return bk_work_use(job, items[i].id, bk_form_about(form), &saved->sentence, error);
    return status ? status
                  : bk_fail(error, BK_REFUSED, "There is no order of work of that name; O shows them.");
}

static const bk_form_field use_fields[] = {
    {.column = "work",
     .label = "order of work",
     .help = "its steps are added to the piece; afterwards change them as you like",
     .choices = choose_works},
};

static const bk_form_kind use_form = {.name = "Order of work",
                                      .sheet = &sheet,
                                      .fields = use_fields,
                                      .field_count = sizeof use_fields / sizeof use_fields[0],
                                      .family = BK_PIECES,
                                      .save = use};

// ---------------------------------------------------------------------------------------------- keeping one

static bk_status keep(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                      bk_error *error)
{
    const named_work *filled = record;
    saved->column = "work";
    return bk_work_keep(job, bk_form_about(form), filled->name, filled->note, &saved->id, &saved->sentence,
                        error);
}

static const bk_form_field keep_fields[] = {
    {.column = "work", .label = "name", .help = "the kind of garment that these steps make"},
    {.column = "note", .label = "note", .help = "when to use it, and what it leaves out", .whole = true},
};

static const bk_form_kind keep_form = {.name = "Order of work",
                                       .sheet = &sheet,
                                       .fields = keep_fields,
                                       .field_count = sizeof keep_fields / sizeof keep_fields[0],
                                       .family = BK_WORKS,
                                       .save = keep};

// --------------------------------------------------------------------------------------------------- opening

static void open_form(bk_screen *from, const bk_form_kind *kind, const char *does, size_t piece)
{
    const bk_piece *record = &from->wall->rail->pieces[piece];
    bk_arena *arena = bk_arena_new();
    const char *title = bk_arena_print(arena, "%s %s %s", does, record->name, record->title);
    bk_form_open(from, kind, &(bk_form_start){.about = record->id, .title = title});
    bk_arena_free(arena);
}

void bk_work_use_open(bk_screen *from, size_t piece)
{
    open_form(from, &use_form, "Order of work for", piece);
}

void bk_work_keep_open(bk_screen *from, size_t piece)
{
    open_form(from, &keep_form, "Keep as an order of work: the steps of", piece);
}
