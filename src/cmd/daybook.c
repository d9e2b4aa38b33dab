#include "bodkin/store/daybook.h"

#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/daybook_sheet.h"

// The daybook: what was done, and undoing it.

enum { ENTRIES_SHOWN = 20 };

static bk_status print_entries(const bk_call *call, const bk_rows *entries, bk_error *error)
{
    bk_buffer text = {0};
    if (call->json) {
        bk_daybook_json(entries->items, entries->count, &text);
    } else {
        bk_daybook_text(entries->items, entries->count, bk_ascii_only(), &text);
    }
    bk_status status = bk_print_out(&text, error);
    bk_buffer_free(&text);
    return status;
}

bk_status bk_daybook_command(const bk_call *call, bk_error *error)
{
    bk_store *store;
    if (call->as != BK_AS_MAKER) {
        return bk_fail(error, BK_REFUSED, "Only the maker reads the daybook; leave out --as.");
    }
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    bk_arena *arena = bk_arena_new();
    bk_rows entries = {0};
    status = bk_daybook_read(store, 0, ENTRIES_SHOWN, arena, &entries, error);
    bk_store_close(store);
    if (!status) {
        status = print_entries(call, &entries, error);
    }
    bk_arena_free(arena);
    return status;
}

static bk_status turn(const bk_call *call, bool redo, bk_error *error)
{
    bk_store *store;
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    char now[BK_NOW_ROOM];
    bk_arena *arena = bk_arena_new();
    const char *sentence = NULL;
    status = redo ? bk_daybook_redo(store, bk_now(now), arena, &sentence, error)
                  : bk_daybook_undo(store, 0, bk_now(now), arena, &sentence, error);
    bk_store_close(store);
    if (!status) {
        status = bk_print_sentence(sentence, error);
    }
    bk_arena_free(arena);
    return status;
}

bk_status bk_undo_command(const bk_call *call, bk_error *error)
{
    return turn(call, false, error);
}

bk_status bk_redo_command(const bk_call *call, bk_error *error)
{
    return turn(call, true, error);
}
