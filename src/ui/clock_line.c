#include "bodkin/ui/clock_line.h"

#include "bodkin/ui/acts.h"

void bk_clock_line_close(bk_clock_line *clock)
{
    bk_arena_free(clock->arena);
    *clock = (bk_clock_line){.runs = false};
}

bk_status bk_clock_line_read(bk_wall *wall, bk_clock_line *clock, bk_error *error)
{
    char now[BK_MADE_AT_ROOM];
    bk_clock_line_close(clock);
    clock->arena = bk_arena_new();
    wall->clock.now(wall->clock.self, now);
    return bk_running_read(wall->store, wall->who, now, clock->arena, &clock->line, &clock->runs, error);
}

bool bk_clock_line_moves(const bk_wall *wall, bk_clock_line *clock)
{
    char now[BK_MADE_AT_ROOM];
    if (!clock->runs)
        return false;
    wall->clock.now(wall->clock.self, now);
    int64_t minutes = bk_minutes_between(clock->line.record.started_at, now);
    bool moves = minutes != clock->line.minutes;
    clock->line.minutes = minutes;
    return moves;
}

int64_t bk_clock_line_step(const bk_clock_line *clock)
{
    return clock->runs ? clock->line.record.step_id : 0;
}

const char *bk_clock_line_words(const bk_clock_line *clock, bk_arena *arena)
{
    char minutes[BK_AMOUNT_ROOM];
    if (!clock->runs)
        return NULL;
    return bk_arena_print(arena, "clock %s: %s/%s", bk_minutes_words(clock->line.minutes, minutes),
                          clock->line.piece, clock->line.step);
}

void bk_clock_line_toggle(bk_screen *screen, const bk_clock_line *clock, int64_t step)
{
    bk_error error;
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_clock_line_step(clock) == step ? bk_running_stop(&job, NULL, &sentence, &error)
                                                         : bk_running_start(&job, step, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}
