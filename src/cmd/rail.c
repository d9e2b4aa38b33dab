#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/rail_sheet.h"
#include "bodkin/work/forecast.h"
#include "bodkin/work/productions.h"

/// What the rail is printed from, read at one moment.
typedef struct rail_read {
    bk_workroom *room;
    const bk_rail *rail;   ///< the room's, or `apart`
    bk_rail *apart;        ///< of a production that is put away, and so is not in the room; else NULL
    bk_forecast *forecast; ///< NULL with `apart`
} rail_read;

static void free_read(rail_read *read)
{
    bk_forecast_free(read->forecast);
    bk_rail_free(read->apart);
    bk_workroom_free(read->room);
}

static const bk_rail *find_rail(const bk_workroom *room, int64_t production)
{
    for (size_t i = 0; i < room->rail_count; i++) {
        if (room->rails[i]->production.id == production) {
            return room->rails[i];
        }
    }
    return NULL;
}

static bk_status read_rail(const bk_call *call, bk_store *store, rail_read *read, bk_error *error)
{
    bk_arena *arena = bk_arena_new();
    bk_production production;
    bk_day today = bk_call_today(call);
    bk_status status = bk_production_choose(store, call->production, today, arena, &production, error);
    bk_arena_free(arena);
    if (!status) {
        status = bk_workroom_read(store, today, &read->room, error);
    }
    if (status) {
        return status;
    }
    read->rail = find_rail(read->room, production.id);
    if (!read->rail) {
        status = bk_rail_read(store, production.id, today, &read->apart, error);
        read->rail = read->apart;
        return status;
    }
    bk_effort effort = bk_effort_usual(bk_workroom_open_steps(read->room), call->seed, call->tries);
    bk_forecast_reckon(read->room, NULL, 0, effort, NULL, NULL, &read->forecast);
    return BK_OK;
}

bk_status bk_rail_command(const bk_call *call, bk_error *error)
{
    bk_store *store;
    rail_read read = {0};
    bk_buffer text = {0};
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    status = read_rail(call, store, &read, error);
    if (!status && call->json) {
        bk_rail_json(read.rail, read.forecast, &text);
    } else if (!status) {
        bk_rail_text(read.rail, read.forecast, bk_ascii_only(), &text);
    }
    if (!status) {
        status = bk_print_out(&text, error);
    }
    bk_buffer_free(&text);
    free_read(&read);
    bk_store_close(store);
    return status;
}
