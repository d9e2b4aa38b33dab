#include "bodkin/ui/record_acts.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/form.h"
#include "bodkin/work/record.h"

// Where the cursor begins when a record is changed: what it belongs to is rarely another.
static const char *const changed_first[BK_FAMILIES] = {
    [BK_COSTUMES] = "title",
    [BK_PIECES] = "title",
    [BK_STEPS] = "title",
    [BK_NEEDS] = "quantity",
};

void bk_act_change_record(bk_screen *screen, bk_family family, int64_t id)
{
    bk_form_open(screen, bk_form_of(family), &(bk_form_start){.id = id, .first = changed_first[family]});
}

void bk_act_add_record(bk_screen *screen, bk_family family, const void *record, int64_t behind,
                       const char *first)
{
    bk_form_open(screen, bk_form_of(family),
                 &(bk_form_start){.record = record, .behind = behind, .first = first});
}

void bk_act_add_note(bk_screen *screen, const char *costume, const char *piece, const char *step)
{
    bk_note note;
    bk_sheet_clear(&bk_sheets[BK_SHEET_NOTES], &note);
    note.noted_on = screen->wall->today;
    note.costume = costume;
    note.piece = piece;
    note.step = step;
    bk_act_add_record(screen, BK_NOTES, &note, 0, "what");
}

// -------------------------------------------------------------------------------------------- taking away

static void take_away(bk_screen *screen, bk_family family, int64_t id)
{
    bk_error error;
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_record_take_away(&job, family, id, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

static void take_costume_away(bk_screen *screen, int64_t id)
{
    take_away(screen, BK_COSTUMES, id);
}

static void take_piece_away(bk_screen *screen, int64_t id)
{
    take_away(screen, BK_PIECES, id);
}

static void take_step_away(bk_screen *screen, int64_t id)
{
    take_away(screen, BK_STEPS, id);
}

static void take_need_away(bk_screen *screen, int64_t id)
{
    take_away(screen, BK_NEEDS, id);
}

typedef void answered(bk_screen *screen, int64_t id);

static answered *const takers[BK_FAMILIES] = {
    [BK_COSTUMES] = take_costume_away,
    [BK_PIECES] = take_piece_away,
    [BK_STEPS] = take_step_away,
    [BK_NEEDS] = take_need_away,
};

static const char *sentence_of(const char *text, bk_arena *arena)
{
    return text ? bk_arena_print(arena, " %s.", text) : "";
}

void bk_act_take_away_record(bk_screen *screen, bk_family family, int64_t id, const char *name,
                             const char *besides)
{
    bk_error error;
    const char *goes_with = NULL;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    if (bk_record_weigh(&job, family, id, &goes_with, &error))
        bk_wall_say(screen->wall, "%s", error.text);
    else
        bk_act_ask(screen,
                   bk_arena_print(arena, "Take away %s?%s%s", name, sentence_of(besides, arena),
                                  sentence_of(goes_with, arena)),
                   takers[family], id);
    bk_arena_free(arena);
}

// -------------------------------------------------------------------------------------------------- moving

void bk_act_move_record(bk_screen *screen, bk_family family, int64_t id, int by)
{
    bk_error error;
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_record_move(&job, family, id, by, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}
