#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/rail_sheet.h"
#include "bodkin/work/productions.h"

static bk_status read_rail(const bk_call *call, bk_store *store, bk_rail **rail, bk_error *error)
{
    bk_arena *arena = bk_arena_new();
    bk_production production;
    bk_day today = bk_call_today(call);
    bk_status status = bk_production_choose(store, call->production, today, arena, &production, error);
    if (!status) {
        status = bk_rail_read(store, production.id, today, rail, error);
    }
    bk_arena_free(arena);
    return status;
}

bk_status bk_rail_command(const bk_call *call, bk_error *error)
{
    bk_store *store;
    bk_rail *rail = NULL;
    bk_buffer text = {0};
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    status = read_rail(call, store, &rail, error);
    if (!status && call->json) {
        bk_rail_json(rail, &text);
    } else if (!status) {
        bk_rail_text(rail, bk_ascii_only(), &text);
    }
    if (!status) {
        status = bk_print_out(&text, error);
    }
    bk_buffer_free(&text);
    bk_rail_free(rail);
    bk_store_close(store);
    return status;
}
