#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/json.h"
#include "bodkin/work/measures_check.h"

// `bodkin measures --check`: the measures of the workroom that can hardly be true.

static void write_json(const bk_measure_doubts *doubts, bk_buffer *out)
{
    bk_json json = {.out = out};
    char day[BK_DAY_ROOM];
    bk_json_array(&json, NULL);
    for (size_t i = 0; i < doubts->count; i++) {
        const bk_measure_doubt *doubt = &doubts->items[i];
        bk_json_object(&json, NULL);
        bk_json_text(&json, "performer", doubt->performer);
        bk_json_text(&json, "taken_on", bk_day_write(doubt->taken_on, day));
        bk_json_text(&json, "measure", doubt->measure);
        bk_json_text(&json, "says", doubt->says);
        bk_json_object_end(&json);
    }
    bk_json_array_end(&json);
}

static void write_text(const bk_measure_doubts *doubts, bk_arena *arena, bk_buffer *out)
{
    char day[BK_DAY_ROOM];
    for (size_t i = 0; i < doubts->count; i++) {
        const bk_measure_doubt *doubt = &doubts->items[i];
        const char *line = bk_arena_print(arena, "%s, %s: %s: %s", doubt->performer,
                                          bk_day_write(doubt->taken_on, day), doubt->measure, doubt->says);
        bk_buffer_print(out, "%s\n", bk_text_safe(arena, line, bk_ascii_only()));
    }
    if (!doubts->count) {
        bk_buffer_text(out, "No measure looks wrong.\n");
    }
}

static bk_status print_doubts(const bk_call *call, bk_store *store, bk_error *error)
{
    bk_arena *arena = bk_arena_new();
    bk_buffer text = {0};
    bk_measure_doubts doubts = {0};
    bk_status status = bk_measures_check(store, arena, &doubts, error);
    if (!status && call->json) {
        write_json(&doubts, &text);
    } else if (!status) {
        write_text(&doubts, arena, &text);
    }
    if (!status) {
        status = bk_print_out(&text, error);
    }
    bk_buffer_free(&text);
    bk_arena_free(arena);
    return status;
}

bk_status bk_measures_command(const bk_call *call, bk_error *error)
{
    bk_store *store;
    if (!call->check) {
        return bk_fail(error, BK_USAGE, "It is called so: bodkin measures --check");
    }
    if (call->as != BK_AS_MAKER) {
        return bk_fail(error, BK_REFUSED, "Only the maker sees measures; leave out --as.");
    }
    bk_status status = bk_call_open(call, false, &store, error);
    if (!status) {
        status = print_doubts(call, store, error);
        bk_store_close(store);
    }
    return status;
}
