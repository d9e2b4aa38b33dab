#include "bodkin/base/text.h"
#include "bodkin/sheet/folder_check.h"

enum { CIRCLE_NAMED = 40 }; ///< steps of a circle that are named; of a longer one the rest is counted

const char *bk_folder_check_step_name(const bk_folder_checking *checking, bk_sheet_number number, size_t row)
{
    const bk_sheet *sheet = &bk_sheets[number];
    const void *record = bk_sheet_row(sheet, bk_sheet_rows_get(checking->reading->folder, sheet), row);
    const char *key = bk_sheet_text(record, sheet->columns[1].offset);
    if (number !=
        BK_SHEET_STEPS) // the steps of an order of work come after no others, so their keys tell them
        return key;
    return bk_arena_print(checking->scratch, "%s/%s", bk_sheet_text(record, sheet->columns[0].offset), key);
}

static void note_circle(const bk_folder_checking *checking, bk_sheet_number number, const size_t *circle,
                        size_t length)
{
    const bk_sheet *sheet = &bk_sheets[number];
    bk_sheet_rows rows = bk_sheet_rows_get(checking->reading->folder, sheet);
    bk_buffer text = {0};
    if (length == 1)
        bk_buffer_text(&text, "this step comes after itself: ");
    else
        bk_buffer_text(&text, "these steps come after one another in a circle: ");
    for (size_t i = 0; i < length && i < CIRCLE_NAMED; i++)
        bk_buffer_print(&text, "%s -> ", bk_folder_check_step_name(checking, number, circle[i]));
    if (length > CIRCLE_NAMED)
        bk_buffer_print(&text, "(%zu more) -> ", length - CIRCLE_NAMED);
    bk_buffer_print(&text, "%s; take %s", bk_folder_check_step_name(checking, number, circle[0]),
                    length == 1 ? "it out of its own after" : "one of them out of the after of the next");
    bk_faults_add(checking->reading->faults, number, sheet->file,
                  bk_sheet_line(sheet, bk_sheet_row(sheet, rows, circle[0])), "after", "%s", text.bytes);
    bk_buffer_free(&text);
}

/// Takes out all links of the steps of a circle, so that the next circle shares no step with it.
static void take_out(bk_step_links *links, const size_t *circle, size_t length, bool *gone)
{
    for (size_t i = 0; i < length; i++)
        gone[circle[i]] = true;
    size_t kept = 0;
    for (size_t i = 0; i < links->count; i++)
        if (!gone[links->items[i].from] && !gone[links->items[i].to])
            links->items[kept++] = links->items[i];
    links->count = kept;
}

void bk_folder_check_circles(const bk_folder_checking *checking, bk_sheet_number sheet, bk_step_links *links)
{
    size_t steps = bk_sheet_rows_get(checking->reading->folder, &bk_sheets[sheet]).count;
    bool *gone = bk_arena_clear(checking->scratch, steps, sizeof *gone);
    size_t *circle = NULL;
    size_t length = 0;
    for (size_t told = 0; told < BK_FAULTS_TOLD; told++) {
        if (!bk_network_circle(steps, links->items, links->count, checking->scratch, &circle, &length))
            return;
        note_circle(checking, sheet, circle, length);
        take_out(links, circle, length, gone);
    }
}
