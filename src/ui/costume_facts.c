#include "bodkin/ui/costume_facts.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/cells.h"

// ------------------------------------------------------------------------------------------------------ pieces

static const char *const origin_phrases[BK_ORIGINS] = {
    [BK_MAKE] = "made here", [BK_ALTER] = "altered",   [BK_BUY] = "bought",
    [BK_HIRE] = "hired",     [BK_BORROW] = "borrowed", [BK_STOCK] = "from stock",
};

const char *bk_piece_other_costumes(const bk_rail *rail, const bk_rail_costume *costume, size_t piece,
                                    bk_arena *arena)
{
    const bk_indices *costumes = &rail->rows.pieces[piece].costumes;
    const char *others = "";
    for (size_t i = 0; i < costumes->count; i++)
        if (costumes->items[i] != costume->index)
            others = bk_cell_joined(arena, others, ", ", rail->rows.costumes[costumes->items[i]].number);
    return others;
}

const char *bk_piece_facts(const bk_rail *rail, const bk_rail_costume *costume, size_t piece, bk_arena *arena)
{
    const bk_piece *record = &rail->pieces[piece];
    const char *facts = record->origin == BK_NO_WORD ? "origin not known" : origin_phrases[record->origin];
    const char *others = bk_piece_other_costumes(rail, costume, piece, arena);
    if (record->place)
        facts = bk_cell_joined(arena, facts, "; ", record->place);
    if (*others)
        facts = bk_cell_joined(arena, facts, "; ", bk_arena_print(arena, "also worn with %s", others));
    return facts;
}

static const char *with_day(const char *facts, const char *what, bk_day day, bk_day today, bk_arena *arena)
{
    char words[BK_DAY_WORDS_ROOM];
    if (day == BK_NO_DAY)
        return facts;
    return bk_cell_joined(arena, facts, "; ",
                          bk_arena_print(arena, "%s %s", what, bk_day_words(day, today, words)));
}

const char *bk_piece_more(const bk_rail *rail, const bk_rail_costume *costume, size_t piece, bk_arena *arena)
{
    const bk_piece *record = &rail->pieces[piece];
    const char *facts = bk_piece_facts(rail, costume, piece, arena);
    if (record->out_with) {
        facts = bk_cell_joined(arena, facts, "; ", bk_arena_print(arena, "out with %s", record->out_with));
        facts = with_day(facts, "since", record->out_since, rail->today, arena);
        facts = with_day(facts, "back by", record->back_by, rail->today, arena);
    }
    if (record->from)
        facts = bk_cell_joined(arena, facts, "; ", bk_arena_print(arena, "from %s", record->from));
    facts = with_day(facts, "goes back by", record->due_back, rail->today, arena);
    return with_day(facts, "went back on", record->returned_on, rail->today, arena);
}

// ------------------------------------------------------------------------------------------------------- steps

// The titles of the steps it comes after, with the piece's name where that is another one.
static const char *after_words(const bk_rail *rail, size_t step, bk_arena *arena)
{
    const bk_wait_step *row = &rail->rows.steps[step];
    const char *words = "";
    for (size_t i = 0; i < row->after.count; i++) {
        size_t earlier = row->after.items[i];
        size_t piece = rail->rows.steps[earlier].piece;
        const char *title = rail->steps[earlier].title;
        if (piece != row->piece)
            title = bk_arena_print(arena, "%s (%s)", title, rail->pieces[piece].name);
        words = bk_cell_joined(arena, words, ", ", title);
    }
    return words;
}

static const char *rest_words(const bk_step *step, bk_arena *arena)
{
    char time[BK_AMOUNT_ROOM];
    return bk_arena_print(arena, "rests %s before what follows", bk_minutes_words(step->rest_minutes, time));
}

static const char *took_words(const bk_step *step, bk_arena *arena)
{
    char time[BK_AMOUNT_ROOM];
    return bk_arena_print(arena, "took %s", bk_minutes_words(step->took, time));
}

const char *bk_step_facts(const bk_rail *rail, size_t step, bk_arena *arena)
{
    const bk_step *record = &rail->steps[step];
    const char *after = after_words(rail, step, arena);
    const char *measures = bk_cell_list(record->measures, arena);
    const char *facts = "";
    if (*after)
        facts = bk_cell_joined(arena, facts, "; ", bk_arena_print(arena, "comes after: %s", after));
    if (measures)
        facts = bk_cell_joined(arena, facts, "; ", bk_arena_print(arena, "measures: %s", measures));
    if (record->hands != BK_NOT_KNOWN && record->hands > 1)
        facts = bk_cell_joined(arena, facts, "; ",
                               bk_arena_print(arena, "%lld people at once", (long long)record->hands));
    if (record->rest_minutes != BK_NOT_KNOWN && record->rest_minutes > 0)
        facts = bk_cell_joined(arena, facts, "; ", rest_words(record, arena));
    if (record->took != BK_NOT_KNOWN)
        facts = bk_cell_joined(arena, facts, "; ", took_words(record, arena));
    return record->note ? bk_cell_joined(arena, facts, "; ", record->note) : facts;
}
