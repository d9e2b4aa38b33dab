#include "bodkin/ui/work_copy_form.h"

#include "bodkin/sheet/columns.h"
#include "bodkin/ui/form.h"
#include "bodkin/work/use_work.h"

typedef struct copy_form {
    const char *name;
    int line;
} copy_form;

static const bk_column columns[] = {
    {.name = "work",
     .required = true,
     .type = BK_CELL_NAME,
     .offset = offsetof(copy_form, name),
     .example = "Lined bodice for dancers"},
};

static const bk_sheet sheet = BK_FORM_SHEET(copy_form, columns, "order of work");

static const bk_form_field fields[] = {
    {.column = "work",
     .label = "its name",
     .help = "what your own one is called; the other one stays as it is"},
};

static bk_status save(const bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                      bk_error *error)
{
    const copy_form *copy = filled;
    saved->column = "work";
    return bk_work_copy(job, bk_form_about(form), copy->name, &saved->id, &saved->sentence, error);
}

static const bk_form_kind kind = {
    .name = "Copy of an order of work",
    .sheet = &sheet,
    .fields = fields,
    .field_count = sizeof fields / sizeof fields[0],
    .family = BK_WORKS,
    .save = save,
};

void bk_work_copy_form_open(bk_screen *screen, int64_t work, const char *name)
{
    bk_arena *arena = bk_arena_new();
    const copy_form copy = {.name = name};
    const bk_form_start start = {
        .record = &copy, .about = work, .title = bk_arena_print(arena, "Copy of %s", name)};
    bk_form_open(screen, &kind, &start);
    bk_arena_free(arena);
}
