#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"

// Keeping the store safe: checking it, copying it.

static bk_status print_findings(const bk_call *call, const bk_findings *findings, bk_arena *arena,
                                bk_error *error)
{
    bk_buffer text = {0};
    bool ascii = bk_ascii_only();
    for (size_t i = 0; i < findings->count; i++) {
        bk_buffer_print(&text, "%s\n", bk_text_safe(arena, findings->items[i], ascii));
    }
    if (!findings->count) {
        bk_buffer_print(&text, "%s is sound.\n", bk_text_safe(arena, call->store, ascii));
    }
    bk_status status = bk_print_out(&text, error);
    bk_buffer_free(&text);
    if (!status && findings->count) {
        status = bk_fail(error, BK_REFUSED,
                         "The store has %zu fault%s; restore a backup, or export and import anew.",
                         findings->count, findings->count == 1 ? "" : "s");
    }
    return status;
}

bk_status bk_check_command(const bk_call *call, bk_error *error)
{
    bk_store *store;
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    bk_arena *arena = bk_arena_new();
    bk_findings findings = {0};
    status = bk_store_check(store, arena, &findings, error);
    if (!status) {
        status = print_findings(call, &findings, arena, error);
    }
    bk_arena_free(arena);
    bk_store_close(store);
    return status;
}

static bk_status print_copied(const bk_call *call, bk_error *error)
{
    bk_arena *arena = bk_arena_new();
    bk_buffer text = {0};
    bk_buffer_print(&text, "The workroom is copied into %s.\n",
                    bk_text_safe(arena, call->arguments[0], bk_ascii_only()));
    bk_status status = bk_print_out(&text, error);
    bk_buffer_free(&text);
    bk_arena_free(arena);
    return status;
}

bk_status bk_backup_command(const bk_call *call, bk_error *error)
{
    bk_store *store;
    if (call->as != BK_AS_MAKER) {
        return bk_fail(error, BK_REFUSED, "Only the maker makes backups; leave out --as.");
    }
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    status = bk_store_backup(store, call->arguments[0], error);
    bk_store_close(store);
    return status ? status : print_copied(call, error);
}
