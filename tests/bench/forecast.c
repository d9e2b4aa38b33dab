#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "bodkin/work/forecast.h"

/// How long the days ahead take to reckon: the reading, a first answer, the settled one, and what the trials add.
///
///     bench_forecast STORE YYYY-MM-DD [TIMES]

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

static void measure(const bk_workroom *room, const char *what, bk_effort effort)
{
    double begin = seconds();
    bk_forecast *forecast = NULL;
    bk_forecast_reckon(room, NULL, 0, effort, NULL, NULL, &forecast);
    printf("%-28s %8.1f ms", what, 1000 * (seconds() - begin));
    printf("  (%lld schedules, %d trials, %zu stretches)\n", (long long)forecast->schedules, forecast->trials,
           forecast->stretch_count);
    bk_forecast_free(forecast);
}

static bk_status run(const char *path, bk_day day, bk_error *error)
{
    bk_store *store = NULL;
    bk_workroom *room = NULL;
    bk_store_options options = {.path = path, .as = BK_AS_DIRECTOR, .who = "bench"};
    bk_status status = bk_store_open(&store, &options, error);
    if (status) {
        return status;
    }
    double begin = seconds();
    status = bk_workroom_read(store, day, &room, error);
    if (!status) {
        printf("%-28s %8.1f ms  (%zu open steps)\n", "reading", 1000 * (seconds() - begin),
               bk_workroom_open_steps(room));
        bk_effort usual = bk_effort_usual(bk_workroom_open_steps(room), BK_USUAL_SEED, -1);
        bk_effort plan = usual;
        plan.trials = 0;
        bk_effort odds = usual;
        odds.schedules = 1;
        measure(room, "first answer", bk_effort_usual(bk_workroom_open_steps(room), BK_USUAL_SEED, 0));
        measure(room, "settled plan", plan);
        measure(room, "first answer and trials", odds);
        measure(room, "settled plan and trials", usual);
        bk_workroom_free(room);
    }
    bk_store_close(store);
    return status;
}

int main(int count, char **words)
{
    bk_day day;
    bk_error error = {0};
    if (count < 3 || !bk_day_read(words[2], &day)) {
        fprintf(stderr, "bench_forecast STORE YYYY-MM-DD [TIMES]\n");
        return BK_USAGE;
    }
    int times = count > 3 ? atoi(words[3]) : 1;
    for (int i = 0; i < times; i++) {
        if (run(words[1], day, &error)) {
            fprintf(stderr, "%s\n", error.text);
            return (int)error.status;
        }
    }
    return BK_OK;
}
