#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/bench_sheet.h"
#include "bodkin/work/productions.h"

/// What a bench is made from.
typedef struct bench_call {
    const bk_call *call;
    bk_forecast *forecast;
    bk_rows runnings;
    int64_t production; ///< its id; 0: of all
    bk_arena *arena;
} bench_call;

static bool is_known(const bk_forecast *forecast, const char *name)
{
    for (size_t i = 0; i < forecast->person_count; i++) {
        if (bk_same_text(forecast->people[i].name, name)) {
            return true;
        }
    }
    return false;
}

/// Refuses a person whom the workroom does not know, with the names there are.
static bk_status check_person(const bench_call *bench, bk_error *error)
{
    const bk_forecast *forecast = bench->forecast;
    const char *person = bench->call->person;
    const char *names = "";
    if (!person || is_known(forecast, person)) {
        return BK_OK;
    }
    if (!forecast->person_count) {
        return bk_fail(error, BK_REFUSED, "Nobody is in the workroom yet, so there is no \"%s\".", person);
    }
    for (size_t i = 0; i < forecast->person_count; i++) {
        names = bk_arena_print(bench->arena, "%s%s%s", names, i ? ", " : "", forecast->people[i].name);
    }
    return bk_fail(error, BK_REFUSED, "Nobody in the workroom is called \"%s\"; there are: %s.", person,
                   names);
}

static bk_status read_bench(bench_call *bench, bk_store *store, bk_error *error)
{
    const bk_call *call = bench->call;
    bk_production production = {0};
    bk_day today = bk_call_today(call);
    bk_status status = BK_OK;
    if (call->production) {
        status = bk_production_choose(store, call->production, today, bench->arena, &production, error);
    }
    bench->production = production.id;
    if (!status) {
        status = bk_store_read(store, BK_RUNNINGS, 0, bench->arena, &bench->runnings, error);
    }
    if (!status) {
        status = bk_forecast_read(store, today, call->seed, call->tries, &bench->forecast, error);
    }
    return status ? status : check_person(bench, error);
}

static bk_status print_bench(const bench_call *bench, bk_error *error)
{
    char now[BK_NOW_ROOM];
    bk_buffer text = {0};
    const bk_call *call = bench->call;
    int64_t minutes = call->minutes == BK_NOT_KNOWN ? 0 : call->minutes;
    bk_bench_list list =
        bk_bench_list_make(bench->forecast, call->person ? call->person : call->name, minutes,
                           bench->runnings.items, bench->runnings.count, bk_now(now), bench->arena);
    if (bench->production) {
        list = bk_bench_list_of(list, bench->production, bench->arena);
    }
    if (call->json) {
        bk_bench_json(bench->forecast, &list, minutes, &text);
    } else {
        bk_bench_text(bench->forecast, &list, minutes, bk_ascii_only(), &text);
    }
    bk_status status = bk_print_out(&text, error);
    bk_buffer_free(&text);
    return status;
}

bk_status bk_bench_command(const bk_call *call, bk_error *error)
{
    bk_store *store;
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    bench_call bench = {.call = call, .arena = bk_arena_new()};
    status = read_bench(&bench, store, error);
    bk_store_close(store);
    if (!status) {
        status = print_bench(&bench, error);
    }
    bk_forecast_free(bench.forecast);
    bk_arena_free(bench.arena);
    return status;
}
