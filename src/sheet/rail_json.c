#include <stdio.h>

#include "bodkin/sheet/json.h"
#include "bodkin/sheet/rail_sheet.h"
#include "bodkin/work/rail_order.h"

/// The object under way.
typedef struct json_rail {
    bk_json *json;
    const bk_rail *rail;
    const bk_forecast *forecast; ///< NULL: not reckoned
    bk_arena *scratch;
} json_rail;

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

static void write_wait(const json_rail *writing, const bk_costume_forecast *forecast, const bk_wait *wait)
{
    const bk_rail *rail = writing->rail;
    bk_json *json = writing->json;
    bool out = wait->step == BK_NO_INDEX;
    bk_json_object(json, NULL);
    bk_json_text(json, "on", bk_word_text(&bk_wait_words, (int)wait->on));
    bk_json_text(json, "piece", rail->pieces[wait->piece].name);
    bk_json_text(json, "step", out ? NULL : rail->steps[wait->step].key);
    bk_json_text(json, "detail", bk_wait_detail_text(&rail->rows, wait, writing->scratch));
    write_day(
        json, "wanted_by",
        bk_forecast_wanted(forecast, rail->pieces[wait->piece].id, out ? 0 : rail->steps[wait->step].id));
    if (wait->on == BK_WAIT_MATERIALS) {
        char digits[BK_AMOUNT_ROOM];
        bk_json_text(json, "material", rail->materials[wait->claim->material].name);
        bk_json_digits(json, "short", bk_quantity_write(wait->claim->short_of, digits));
    }
    bk_json_object_end(json);
}

/// Thousandths as a number with three decimals; null below 0.
static void write_thousandths(bk_json *json, const char *key, int32_t thousandths)
{
    enum { ONE = 1000, ROOM = 16 };
    char digits[ROOM];
    if (thousandths < 0) {
        bk_json_null(json, key);
        return;
    }
    snprintf(digits, sizeof digits, "%d.%03d", thousandths / ONE, thousandths % ONE);
    bk_json_digits(json, key, digits);
}

/// What was not reckoned (NULL) is null.
static void write_outlook(bk_json *json, const bk_outlook_days *days)
{
    write_day(json, "finish", days ? days->finish : BK_NO_DAY);
    if (days && days->days_known && days->finish != BK_NO_DAY) {
        bk_json_whole(json, "days_in_hand", days->days_in_hand);
    } else {
        bk_json_null(json, "days_in_hand");
    }
    write_thousandths(json, "chance", days ? days->chance : -1);
}

static void write_facts(bk_json *json, const bk_rail_costume *costume)
{
    const bk_costume_waits *reckoned = costume->reckoned;
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
}

static void write_costume(const json_rail *writing, const bk_rail_costume *costume)
{
    const bk_costume_waits *reckoned = costume->reckoned;
    const bk_costume_forecast *forecast = bk_forecast_costume(writing->forecast, costume->record->id);
    const bk_outlook_days *days = forecast ? &forecast->days : NULL;
    bk_json_object(writing->json, NULL);
    write_facts(writing->json, costume);
    write_outlook(writing->json, days);
    bk_json_array(writing->json, "waits");
    for (size_t i = 0; i < reckoned->wait_count; i++) {
        write_wait(writing, forecast, &reckoned->waits[i]);
        bk_arena_reset(writing->scratch);
    }
    bk_json_array_end(writing->json);
    write_thousandths(writing->json, "chance_error", days && days->chance >= 0 ? days->chance_error : -1);
    bk_json_object_end(writing->json);
}

void bk_rail_json(const bk_rail *rail, const bk_forecast *forecast, bk_buffer *out)
{
    bk_json json = {.out = out};
    json_rail writing = {.json = &json, .rail = rail, .forecast = forecast, .scratch = bk_arena_new()};
    bk_arena *arena = bk_arena_new();
    const bk_rail_costume *const *costumes = bk_rail_most_urgent(rail, forecast, arena);
    bk_json_object(&json, NULL);
    bk_json_text(&json, "production", rail->production.name);
    write_day(&json, "today", rail->today);
    write_day(&json, "opens", rail->production.opens);
    bk_json_whole(&json, "days_left", rail->days_left);
    bk_json_whole(&json, "minutes_left", rail->minutes_left);
    write_counts(&json, &rail->counts);
    bk_json_array(&json, "costumes");
    for (size_t i = 0; i < rail->costume_count; i++) {
        write_costume(&writing, costumes[i]);
    }
    bk_json_array_end(&json);
    bk_json_object_end(&json);
    bk_arena_free(writing.scratch);
    bk_arena_free(arena);
}
