#include "bodkin/ui/acts.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/work/record.h"

// What changes the records of a ledger: their forms, taking away, moving.

void bk_ledger_open_form(bk_screen *screen, bk_family family, bool fresh)
{
    const bk_ledger *ledger = bk_ledger_of(screen);
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    const bk_form_kind *kind = bk_form_of(family);
    bk_form_start start = {0};
    if (!kind)
        return;
    if (!fresh)
        start.id = chosen->id;
    else if (ledger->kind->moves && chosen && chosen->id > 0 && chosen->family == family)
        start.behind = chosen->id;
    if (!ledger->kind->start || ledger->kind->start(screen, chosen, fresh, &start))
        bk_form_open(screen, kind, &start);
}

void bk_ledger_add_record(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_family family = bk_ledger_of(screen)->kind->family;
    if (family != BK_FAMILIES)
        bk_ledger_open_form(screen, family, true);
}

void bk_ledger_change(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (bk_ledger_has_line(screen))
        bk_ledger_open_form(screen, bk_ledger_chosen(screen)->family, false);
}

// -------------------------------------------------------------------------------------------- taking away

static void take_away(bk_screen *screen, int64_t id)
{
    bk_error error;
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_record_take_away(&job, bk_ledger_of(screen)->asked, id, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

static const char *name_of(const bk_ledger_line *line)
{
    return line->name ? line->name : line->cells[0] ? line->cells[0] : "this one";
}

static void ask_to_take_away(bk_screen *screen, const bk_ledger_line *line, const char *goes_with,
                             bk_arena *arena)
{
    const char *question = goes_with ? bk_arena_print(arena, "Take away %s? %s.", name_of(line), goes_with)
                                     : bk_arena_print(arena, "Take away %s?", name_of(line));
    bk_ledger_of(screen)->asked = line->family;
    bk_act_ask(screen, question, take_away, line->id);
}

void bk_ledger_take_away(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_error error;
    const char *goes_with = NULL;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (!bk_ledger_has_line(screen))
        return;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    if (bk_record_weigh(&job, line->family, line->id, &goes_with, &error))
        bk_wall_say(screen->wall, "%s", error.text);
    else
        ask_to_take_away(screen, line, goes_with, arena);
    bk_arena_free(arena);
}

// ------------------------------------------------------------------------------------------------ moving

void bk_ledger_shift(bk_screen *screen, const bk_key_row *row)
{
    bk_error error;
    const char *sentence = NULL;
    const bk_ledger *ledger = bk_ledger_of(screen);
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (!ledger->kind->moves || !bk_ledger_has_line(screen))
        return;
    if (ledger->query.length > 0) {
        bk_wall_say(screen->wall, "While the list is narrowed nothing is moved in it: end that with Escape.");
        return;
    }
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_record_move(&job, line->family, line->id, row->argument, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}
