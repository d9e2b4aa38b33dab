#include "bodkin/sheet/outlook_words.h"

#include "bodkin/sheet/wait_words.h"

const char *bk_outlook_before(const bk_step_outlook *outlook, bk_arena *arena)
{
    const char *names = NULL;
    for (size_t i = 0; i < outlook->before_count; i++) {
        names = bk_arena_print(arena, "%s%s%s/%s", names ? names : "", names ? ", " : "",
                               outlook->before[i].piece, outlook->before[i].key);
    }
    return names ? bk_arena_print(arena, "it comes after what is still open: %s", names) : NULL;
}

const char *bk_outlook_out(const bk_step_outlook *outlook, bk_day today, bk_arena *arena)
{
    const bk_piece *piece = &outlook->piece;
    char day[BK_DAY_WORDS_ROOM];
    if (!piece->out_with) {
        return NULL;
    }
    if (piece->back_by == BK_NO_DAY) {
        return bk_arena_print(arena, "%s is out with %s", piece->name, piece->out_with);
    }
    return bk_arena_print(arena, "%s is out with %s, %s %s", piece->name, piece->out_with,
                          piece->back_by < today ? "was to be back" : "back",
                          bk_day_words(piece->back_by, today, day));
}

const char *bk_outlook_lacks(const bk_step_outlook *outlook, bool done, bk_arena *arena)
{
    const char *words = NULL;
    for (size_t i = 0; i < outlook->lack_count; i++) {
        const bk_lack *lack = &outlook->lacks[i];
        words = bk_arena_print(arena, "%s%s%s", words ? words : "", words ? "; " : "",
                               bk_need_words(&lack->material, lack->quantity, arena));
    }
    return words ? bk_arena_print(arena, "the shelf %s %s", done ? "lacked" : "lacks", words) : NULL;
}

size_t bk_outlook_remarks(const bk_step_outlook *outlook, bk_day today, bk_arena *arena,
                          const char *remarks[BK_OUTLOOK_REMARKS])
{
    const char *const all[BK_OUTLOOK_REMARKS] = {bk_outlook_before(outlook, arena),
                                                 bk_outlook_out(outlook, today, arena),
                                                 bk_outlook_lacks(outlook, false, arena)};
    size_t count = 0;
    for (size_t i = 0; i < BK_OUTLOOK_REMARKS; i++) {
        if (all[i]) {
            remarks[count++] = all[i];
        }
    }
    return count;
}
