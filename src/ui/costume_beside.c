#include "bodkin/ui/costume_beside.h"

#include "bodkin/base/text.h"
#include "bodkin/sheet/wait_words.h"
#include "bodkin/trade/words.h"

bk_status bk_costume_beside_read(bk_store *store, int64_t production, bk_arena *arena,
                                 bk_costume_beside *beside, bk_error *error)
{
    bk_rows needs = {0}, materials = {0}, notes = {0};
    bk_status status = bk_store_read(store, BK_NEEDS, production, arena, &needs, error);
    if (!status)
        status = bk_store_read(store, BK_MATERIALS, 0, arena, &materials, error);
    if (!status)
        status = bk_store_read(store, BK_NOTES, production, arena, &notes, error);
    *beside = (bk_costume_beside){needs.items,     needs.count, materials.items,
                                  materials.count, notes.items, notes.count};
    return status;
}

const char *bk_costume_need_words(const bk_costume_beside *beside, size_t need, bk_arena *arena)
{
    const bk_need *record = &beside->needs[need];
    for (size_t i = 0; i < beside->material_count; i++)
        if (beside->materials[i].id == record->material_id)
            return bk_need_words(&beside->materials[i], record->quantity, arena);
    return "";
}

const char *bk_costume_used_words(const bk_costume_beside *beside, int64_t step, bk_arena *arena)
{
    const char *words = "";
    for (size_t i = 0; i < beside->need_count; i++)
        if (beside->needs[i].step_id == step)
            words = bk_arena_print(arena, "%s%s%s", words, *words ? ", " : "used ",
                                   bk_costume_need_words(beside, i, arena));
    return words;
}

static bool is_about(const bk_note *note, int64_t costume, int64_t piece, int64_t step)
{
    if (step != 0)
        return note->step_id == step;
    if (piece != 0)
        return note->piece_id == piece && note->step_id == 0;
    return note->costume_id == costume && note->piece_id == 0;
}

static const char *note_words(const bk_note *note, bk_day today, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    const char *words = bk_day_words(note->noted_on, today, day);
    if (note->source != BK_NO_WORD)
        words = bk_arena_print(arena, "%s, %s", words, bk_word_text(&bk_note_source_words, note->source));
    if (note->who)
        words = bk_arena_print(arena, "%s, %s", words, note->who);
    return bk_arena_print(arena, "%s: %s%s", words, note->what, note->done_on == BK_NO_DAY ? "" : " (done)");
}

const char *bk_costume_notes(const bk_costume_beside *beside, int64_t costume, int64_t piece, int64_t step,
                             bk_day today, bk_arena *arena)
{
    const char *all = "";
    for (size_t i = 0; i < beside->note_count; i++)
        if (is_about(&beside->notes[i], costume, piece, step))
            all = bk_arena_print(arena, "%s%s%s", all, *all ? "\n" : "",
                                 note_words(&beside->notes[i], today, arena));
    return all;
}
