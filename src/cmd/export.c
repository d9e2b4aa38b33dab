#include "bodkin/work/export.h"

#include "bodkin/cmd/command.h"
#include "bodkin/cmd/progress.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/folder_sheets.h"
#include "bodkin/work/productions.h"

static bk_status write_folder(const bk_call *call, bk_store *store, bk_arena *arena, bk_error *error)
{
    bk_production production;
    bk_folder *folder = NULL;
    bk_progress_line line = bk_progress_line_begin();
    bk_progress progress = {bk_progress_line_show, &line};
    bk_status status =
        bk_production_choose(store, call->production, bk_call_today(call), arena, &production, error);
    if (!status) {
        status = bk_export_folder(store, production.id, &folder, error);
    }
    if (!status) {
        status = bk_folder_write(call->arguments[0], folder, call->replace, &progress, error);
    }
    bk_progress_line_clear(&line);
    if (!status) {
        bool ascii = bk_ascii_only();
        bk_buffer text = {0};
        bk_buffer_print(&text, "Exported \"%s\" into %s.\n", bk_text_safe(arena, production.name, ascii),
                        bk_text_safe(arena, call->arguments[0], ascii));
        status = bk_print_out(&text, error);
        bk_buffer_free(&text);
    }
    bk_folder_free(folder);
    return status;
}

bk_status bk_export_command(const bk_call *call, bk_error *error)
{
    bk_store *store;
    if (call->as != BK_AS_MAKER) {
        return bk_fail(error, BK_REFUSED, "Only the maker exports; leave out --as.");
    }
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    bk_arena *arena = bk_arena_new();
    status = write_folder(call, store, arena, error);
    bk_arena_free(arena);
    bk_store_close(store);
    return status;
}
