#include "bodkin/base/text.h"
#include "bodkin/sheet/folder_check.h"

// What the steps of the orders of work come after.

/// The key of the same order of work that is most like `key`, or NULL.
static const char *nearest_key(const bk_folder_checking *checking, const char *work, const char *key)
{
    const bk_folder *folder = checking->reading->folder;
    const char **keys = bk_arena_take(checking->scratch, folder->work_steps.count * sizeof *keys);
    size_t count = 0;
    for (size_t i = 0; i < folder->work_steps.count; i++)
        if (folder->work_steps.items[i].work == work && folder->work_steps.items[i].key != NULL)
            keys[count++] = folder->work_steps.items[i].key;
    return bk_nearest(key, keys, count);
}

/// Notes that an order of work has no such step.
static void note_no_step(const bk_folder_checking *checking, const bk_work_step *step, const char *key)
{
    static const char column[] = "after";
    bk_sheet_reading *reading = checking->reading;
    const char *advice = "; write the key of one of its steps in work_steps.csv";
    if (reading->unreadable[BK_SHEET_WORK_STEPS])
        return;
    if (bk_faults_wanted(reading->faults, BK_SHEET_WORK_STEPS, step->line, column)) {
        const char *nearest = nearest_key(checking, step->work, key);
        if (nearest != NULL)
            advice = bk_arena_print(checking->scratch, "; did you mean %s?",
                                    bk_faults_quote(checking->scratch, nearest));
    }
    bk_faults_add(reading->faults, BK_SHEET_WORK_STEPS, bk_sheets[BK_SHEET_WORK_STEPS].file, step->line,
                  column, "the order of work %s has no step %s%s",
                  bk_faults_quote(checking->scratch, step->work), bk_faults_quote(checking->scratch, key),
                  advice);
}

/// Links a step with each that it comes after.
static void check_after(const bk_folder_checking *checking, size_t row, bk_step_links *links)
{
    const bk_work_step *step = &checking->reading->folder->work_steps.items[row];
    const char *rest = step->after, *item = NULL;
    size_t length = 0, from = 0;
    while (bk_list_item(&rest, &item, &length)) {
        const char *key = bk_names_keep(checking->reading->names, item, length);
        if (bk_keys_find(checking->keys[BK_SHEET_WORK_STEPS], step->work, key, &from))
            bk_list_add(links, ((bk_network_link){.from = from, .to = row}));
        else
            note_no_step(checking, step, key);
    }
}

bk_status bk_folder_check_works(const bk_folder_checking *checking, bk_error *error)
{
    const bk_folder *folder = checking->reading->folder;
    bk_status status = BK_OK;
    bk_step_links links = {0};
    for (size_t i = 0; i < folder->work_steps.count && status == BK_OK; i++) {
        if (folder->work_steps.items[i].work != NULL && folder->work_steps.items[i].after != NULL)
            check_after(checking, i, &links);
        status = bk_folder_check_progress(checking, BK_SHEET_WORK_STEPS, i, error);
    }
    bk_folder_check_circles(checking, BK_SHEET_WORK_STEPS, &links);
    bk_list_free(&links);
    return status;
}
