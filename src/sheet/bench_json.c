#include "bodkin/sheet/bench_sheet.h"
#include "bodkin/sheet/forecast_words.h"
#include "bodkin/sheet/json.h"

/// Indices are bk_bench_why.
static const char *const whys[] = {"running", "late", "tight", "planned", "others", "time", "can_wait"};

static void write_day(bk_json *json, const char *key, bk_day day)
{
    char text[BK_DAY_ROOM];
    bk_json_text(json, key, day == BK_NO_DAY ? NULL : bk_day_write(day, text));
}

static void write_whole(bk_json *json, const char *key, bool known, int64_t number)
{
    if (known) {
        bk_json_whole(json, key, number);
    } else {
        bk_json_null(json, key);
    }
}

static void write_latest(bk_json *json, bk_moment latest)
{
    char text[BK_MOMENT_ROOM];
    bk_json_text(json, "latest", latest.day == BK_NO_DAY ? NULL : bk_moment_write(latest, text));
}

static void write_step(bk_json *json, const bk_planned_step *step)
{
    bk_json_text(json, "production", step->production);
    bk_json_text(json, "piece", step->piece);
    bk_json_text(json, "step", step->key);
    bk_json_text(json, "title", step->title);
    bk_json_text(json, "kind", bk_word_text(&bk_kind_words, step->kind));
    bk_json_text(json, "costume", step->costume);
    bk_json_text(json, "role", step->costume ? step->role : NULL);
}

static void write_line(bk_json *json, const bk_bench_line *line, bk_day today, bk_arena *scratch)
{
    bk_json_object(json, NULL);
    write_step(json, line->step);
    bk_json_whole(json, "minutes", line->minutes);
    bk_json_truth(json, "fits", line->fits);
    write_day(json, "due", line->step->due);
    write_whole(json, "days_left", line->days_left != INT64_MIN, line->days_left);
    bk_json_whole(json, "behind", line->behind);
    write_latest(json, line->step->latest);
    bk_json_text(json, "why", whys[line->why]);
    bk_json_text(json, "says", bk_bench_why_sentence(line, today, scratch));
    write_whole(json, "together", line->together != 0, (int64_t)line->together);
    bk_json_text(json, "material", line->shared);
    write_whole(json, "running", line->ran >= 0, line->ran);
    bk_json_object_end(json);
}

void bk_bench_json(const bk_forecast *forecast, const bk_bench_list *list, int64_t minutes, bk_buffer *out)
{
    bk_json json = {.out = out};
    bk_arena *scratch = bk_arena_new();
    char time[BK_TIME_ROOM];
    bool until = list->free_until.day != BK_NO_DAY;
    bk_json_object(&json, NULL);
    write_day(&json, "today", forecast->today);
    bk_json_text(&json, "person", list->person ? list->person->name : NULL);
    bk_json_text(&json, "free_until", until ? bk_time_write(list->free_until.time, time) : NULL);
    write_whole(&json, "minutes", minutes > 0, minutes);
    bk_json_array(&json, "steps");
    for (size_t i = 0; i < list->count; i++) {
        write_line(&json, &list->lines[i], forecast->today, scratch);
        bk_arena_reset(scratch);
    }
    bk_json_array_end(&json);
    bk_json_object_end(&json);
    bk_arena_free(scratch);
}
