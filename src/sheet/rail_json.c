#include "bodkin/sheet/json.h"
#include "bodkin/sheet/rail_sheet.h"

static void write_day(bk_json *json, const char *key, bk_day day)
{
    char text[BK_DAY_ROOM];
    bk_json_text(json, key, day == BK_NO_DAY ? NULL : bk_day_write(day, text));
}

static void write_words(bk_json *json, const bk_words *words, const int64_t *counts)
{
    for (size_t i = 0; i < words->count; i++) {
        bk_json_whole(json, words->items[i], counts[i]);
    }
}

static void write_counts(bk_json *json, const bk_rail_counts *counts)
{
    bk_json_object(json, "counts");
    bk_json_whole(json, "costumes", counts->costumes);
    write_words(json, &bk_state_words, counts->states);
    bk_json_whole(json, "can_go_on", counts->can_go_on);
    bk_json_object(json, "waits");
    write_words(json, &bk_wait_words, counts->waits);
    bk_json_object_end(json);
    bk_json_object_end(json);
}

static void write_wait(bk_json *json, const bk_rail *rail, const bk_wait *wait, bk_arena *scratch)
{
    bk_json_object(json, NULL);
    bk_json_text(json, "on", bk_word_text(&bk_wait_words, (int)wait->on));
    bk_json_text(json, "piece", rail->pieces[wait->piece].name);
    bk_json_text(json, "step", wait->step == BK_NO_INDEX ? NULL : rail->steps[wait->step].key);
    bk_json_text(json, "detail", bk_wait_detail_text(&rail->rows, wait, scratch));
    bk_json_null(json, "wanted_by");
    if (wait->on == BK_WAIT_MATERIALS) {
        char digits[BK_AMOUNT_ROOM];
        bk_json_text(json, "material", rail->materials[wait->claim->material].name);
        bk_json_digits(json, "short", bk_quantity_write(wait->claim->short_of, digits));
    }
    bk_json_object_end(json);
}

static void write_costume(bk_json *json, const bk_rail *rail, const bk_rail_costume *costume,
                          bk_arena *scratch)
{
    const bk_costume_waits *reckoned = costume->reckoned;
    bk_json_object(json, NULL);
    bk_json_text(json, "costume", costume->record->number);
    bk_json_text(json, "role", costume->role);
    bk_json_text(json, "performer", costume->performer);
    bk_json_text(json, "title", costume->record->title);
    bk_json_text(json, "state", bk_word_text(&bk_state_words, (int)reckoned->state));
    bk_json_truth(json, "can_go_on", reckoned->can_go_on);
    write_day(json, "due", costume->due);
    bk_json_whole(json, "steps", reckoned->steps);
    bk_json_whole(json, "steps_done", reckoned->steps_done);
    bk_json_whole(json, "minutes_left", reckoned->minutes_left);
    bk_json_null(json, "finish");
    bk_json_null(json, "days_in_hand");
    bk_json_null(json, "chance");
    bk_json_array(json, "waits");
    for (size_t i = 0; i < reckoned->wait_count; i++) {
        write_wait(json, rail, &reckoned->waits[i], scratch);
        bk_arena_reset(scratch);
    }
    bk_json_array_end(json);
    bk_json_object_end(json);
}

void bk_rail_json(const bk_rail *rail, bk_buffer *out)
{
    bk_json json = {.out = out};
    bk_arena *scratch = bk_arena_new();
    bk_json_object(&json, NULL);
    bk_json_text(&json, "production", rail->production.name);
    write_day(&json, "today", rail->today);
    write_day(&json, "opens", rail->production.opens);
    bk_json_whole(&json, "days_left", rail->days_left);
    bk_json_whole(&json, "minutes_left", rail->minutes_left);
    write_counts(&json, &rail->counts);
    bk_json_array(&json, "costumes");
    for (size_t i = 0; i < rail->costume_count; i++) {
        write_costume(&json, rail, &rail->costumes[i], scratch);
    }
    bk_json_array_end(&json);
    bk_json_object_end(&json);
    bk_arena_free(scratch);
}
