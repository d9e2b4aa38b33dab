#include "bodkin/ui/wall.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/work/productions.h"

static void want_forecast(bk_wall *wall)
{
    wall->readings++;
    if (wall->reckoning)
        bk_reckoning_want(wall->reckoning, wall->today, NULL, 0);
}

bk_status bk_wall_begin(bk_wall *wall, const bk_screens_options *options, bk_error *error)
{
    *wall = (bk_wall){.store = options->store, .who = options->who, .clock = options->clock};
    wall->today = wall->clock.today(wall->clock.self);
    wall->supposed = bk_alloc_clear(1, sizeof *wall->supposed);
    wall->reckons = (bk_reckoning_options){options->store_path, options->as, options->seed, options->tries};
    if (options->store_path)
        wall->reckoning = bk_reckoning_begin(&wall->reckons);
    want_forecast(wall);
    return bk_store_version(wall->store, &wall->version, error);
}

static void take_down(bk_wall *wall)
{
    bk_rail_free(wall->rail);
    free(wall->production);
    wall->rail = NULL;
    wall->production = NULL;
}

void bk_wall_free(bk_wall *wall)
{
    take_down(wall);
    bk_reckoning_end(wall->reckoning);
    bk_reckoning_end(wall->supposing);
    bk_supposed_clear(wall->supposed);
    free(wall->supposed);
    wall->reckoning = wall->supposing = NULL;
    wall->supposed = NULL;
}

bk_status bk_wall_show(bk_wall *wall, const char *name, bk_error *error)
{
    bk_production chosen = {0};
    bk_rail *rail = NULL;
    bk_arena *arena = bk_arena_new();
    bk_status status = bk_production_choose(wall->store, name, wall->today, arena, &chosen, error);
    if (!status)
        status = bk_rail_read(wall->store, chosen.id, wall->today, &rail, error);
    if (!status) {
        take_down(wall);
        wall->rail = rail;
        wall->production = bk_text_copy(chosen.name);
    }
    bk_arena_free(arena);
    return status;
}

bk_status bk_wall_look(bk_wall *wall, bool *changed, bk_error *error)
{
    int64_t version = 0;
    bk_day today = wall->clock.today(wall->clock.self);
    bk_status status = bk_store_version(wall->store, &version, error);
    if (status)
        return status;
    *changed = version != wall->version || today != wall->today;
    wall->version = version;
    wall->today = today;
    return BK_OK;
}

// The name of the production shown as it is now: another terminal may have renamed it.
static char *name_now(const bk_wall *wall)
{
    bk_error trouble;
    bool found = false;
    bk_production now = {.name = wall->production};
    bk_arena *arena = bk_arena_new();
    bk_status status = wall->rail ? bk_store_get(wall->store, BK_PRODUCTIONS, wall->rail->production.id,
                                                 arena, &now, &found, &trouble)
                                  : BK_OK;
    char *name = bk_text_copy(!status && found ? now.name : wall->production);
    bk_arena_free(arena);
    return name;
}

bk_status bk_wall_read(bk_wall *wall, bk_error *error)
{
    want_forecast(wall);
    if (!wall->production)
        return BK_OK;
    char *name = name_now(wall);
    bk_status status = bk_wall_show(wall, name, error);
    if (status == BK_REFUSED) {
        bk_arena *arena = bk_arena_new();
        take_down(wall);
        bk_wall_say(wall, "%s is no longer in this workroom.", bk_text_safe(arena, name, wall->ascii));
        bk_arena_free(arena);
        status = BK_OK;
    }
    free(name);
    return status;
}

// -------------------------------------------------------------------------------------------- the forecast

const bk_forecast *bk_wall_forecast(const bk_wall *wall)
{
    return wall->reckoning ? bk_reckoning_forecast(wall->reckoning) : NULL;
}

static void end_supposing(bk_wall *wall)
{
    bk_reckoning_end(wall->supposing);
    wall->supposing = NULL;
}

void bk_wall_suppose(bk_wall *wall)
{
    const bk_supposed *supposed = wall->supposed;
    const int64_t of[] = {wall->readings, supposed->changes};
    if (supposed->count == 0 || !wall->reckoning) {
        end_supposing(wall);
        return;
    }
    if (wall->supposing && memcmp(wall->supposing_of, of, sizeof of) == 0)
        return;
    if (!wall->supposing)
        wall->supposing = bk_reckoning_begin(&wall->reckons);
    memcpy(wall->supposing_of, of, sizeof of);
    bk_reckoning_want(wall->supposing, wall->today, supposed->items, supposed->count);
}

const bk_forecast *bk_wall_supposed_forecast(const bk_wall *wall)
{
    bool settled =
        wall->supposing && bk_reckoning_settled(wall->supposing) && bk_reckoning_settled(wall->reckoning);
    return settled ? bk_reckoning_forecast(wall->supposing) : NULL;
}

static bool listen_to(bk_reckoning *reckoning, bool *answered)
{
    if (!reckoning)
        return false;
    bool was_busy = bk_reckoning_busy(reckoning);
    int64_t before = bk_reckoning_answers(reckoning);
    bool news = bk_reckoning_look(reckoning);
    *answered |= bk_reckoning_answers(reckoning) != before || was_busy != bk_reckoning_busy(reckoning);
    return news;
}

bool bk_wall_listen(bk_wall *wall, bool *answered)
{
    *answered = false;
    bool news = listen_to(wall->reckoning, answered);
    return listen_to(wall->supposing, answered) || news;
}

bool bk_wall_busy(const bk_wall *wall)
{
    return (wall->reckoning && bk_reckoning_busy(wall->reckoning)) ||
           (wall->supposing && bk_reckoning_busy(wall->supposing));
}

const char *bk_reckoning_words(const bk_reckoning *reckoning, bk_arena *arena)
{
    enum { THOUSANDTHS_OF_PERCENT = 10 };
    if (reckoning && bk_reckoning_busy(reckoning))
        return bk_arena_print(arena, "reckoning %d %%",
                              bk_reckoning_done(reckoning) / THOUSANDTHS_OF_PERCENT);
    return reckoning && bk_reckoning_trouble(reckoning) ? "not reckoned" : NULL;
}

// ----------------------------------------------------------------------------------------- the bottom line

void bk_wall_say(bk_wall *wall, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    bk_error sentence;
    (void)!bk_fail_list(&sentence, BK_OK, format, arguments);
    va_end(arguments);
    memcpy(wall->message, sentence.text, sizeof wall->message);
    wall->offer_key = NULL;
}

void bk_wall_hush(bk_wall *wall)
{
    wall->message[0] = '\0';
    wall->offer_key = NULL;
    wall->saved_id = 0;
}

const bk_rail_costume *bk_wall_costume(const bk_wall *wall, const char *number)
{
    for (size_t i = 0; wall->rail && i < wall->rail->costume_count; i++)
        if (bk_same_text(wall->rail->costumes[i].record->number, number))
            return &wall->rail->costumes[i];
    return NULL;
}
