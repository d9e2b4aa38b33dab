#include "bodkin/sheet/snag_words.h"

#include "bodkin/base/text.h"

/// A snag, or several that say the same of several steps.
typedef struct snag_told {
    const bk_snag *snag;
    const char *steps; ///< "4A-1/cut, 4A-2/cut: "; "" for what is of no step
    bk_day today;
    bk_arena *arena;
} snag_told;

/// What a kind of step is called as something that somebody can do.
static const char *doing(const snag_told *told)
{
    static const char *const words[BK_KINDS] = {
        [BK_SOURCE] = "find and buy things",
        [BK_DRAFT] = "draft",
        [BK_CUT] = "cut",
        [BK_TACK] = "tack",
        [BK_MACHINE] = "machine",
        [BK_PRESS] = "press",
        [BK_FIT] = "fit",
        [BK_HAND] = "sew by hand",
        [BK_CRAFT] = "do craft work",
        [BK_DYE] = "dye",
    };
    int kind = told->snag->step_kind;
    return kind >= 0 && kind < BK_KINDS ? words[kind] : "do it";
}

/// "by Fri 12 Mar" with what stands before it, or "" without a day.
static const char *on_day(const snag_told *told, const char *before)
{
    char text[BK_DAY_WORDS_ROOM];
    bk_day day = told->snag->day;
    return day == BK_NO_DAY
               ? ""
               : bk_arena_print(told->arena, "%s%s", before,
                                day == told->today ? "today" : bk_day_words(day, told->today, text));
}

static const char *nobody(const snag_told *told)
{
    (void)told;
    return "nobody is in the workroom yet, so no day can be told: add who works, and when (Hands)";
}

static const char *no_skill(const snag_told *told)
{
    if (told->snag->hands > 1)
        return bk_arena_print(told->arena, "needs %lld people at once who can %s; there are fewer (Hands)",
                              (long long)told->snag->hands, doing(told));
    return bk_arena_print(told->arena, "nobody can %s; give somebody the skill, or ask for help (Hands)",
                          doing(told));
}

static const char *no_hours(const snag_told *told)
{
    return bk_arena_print(
        told->arena,
        "who can %s has no hours left%s; find more hours (Hands), or give the costume a later day",
        doing(told), on_day(told, " by "));
}

static const char *away(const snag_told *told)
{
    return bk_arena_print(told->arena,
                          "%s is away until after the opening%s; fit before, or on somebody of that size",
                          told->snag->who ? told->snag->who : "the performer", on_day(told, ", to "));
}

static const char *no_minutes(const snag_told *told)
{
    (void)told;
    return "no minutes, so it counts as no work: say how long it takes";
}

static const char *past(const snag_told *told)
{
    const char *day = on_day(told, ", ");
    return bk_arena_print(told->arena,
                          "the due day%s%s is past; do what is left at once, or give it a new day", day,
                          *day ? "," : "");
}

static const char *uncast(const snag_told *told)
{
    (void)told;
    return "nobody plays the role yet; planned as if somebody did (Cast)";
}

static const char *no_date(const snag_told *told)
{
    (void)told;
    return "no day is known for what it waits on; planned as if that came today";
}

typedef const char *snag_words(const snag_told *told);

static const char *sentence_of(const snag_told *told)
{
    static snag_words *const words[BK_SNAGS] = {
        [BK_SNAG_NOBODY] = nobody, [BK_SNAG_NO_SKILL] = no_skill,     [BK_SNAG_NO_HOURS] = no_hours,
        [BK_SNAG_AWAY] = away,     [BK_SNAG_NO_MINUTES] = no_minutes, [BK_SNAG_PAST] = past,
        [BK_SNAG_UNCAST] = uncast, [BK_SNAG_NO_DATE] = no_date,
    };
    const char *says = told->snag->kind < BK_SNAGS ? words[told->snag->kind](told) : "";
    if (*told->steps)
        return bk_arena_print(told->arena, "%s: %s", told->steps, says);
    return bk_arena_print(told->arena, "%c%s", *says >= 'a' && *says <= 'z' ? *says - 'a' + 'A' : *says,
                          *says ? says + 1 : "");
}

static const char *with_step(const char *steps, const bk_snag *snag, bk_arena *arena)
{
    if (!snag->piece || !snag->step)
        return steps;
    return bk_arena_print(arena, "%s%s%s/%s", steps, *steps ? ", " : "", snag->piece, snag->step);
}

const char *bk_snag_sentence(const bk_snag *snag, bk_day today, bk_arena *arena)
{
    return sentence_of(&(snag_told){snag, with_step("", snag, arena), today, arena});
}

/// Whether two snags would be told in the same words, but for their steps.
static bool say_the_same(const bk_snag *left, const bk_snag *right)
{
    bool kinds = left->step_kind == right->step_kind || left->kind >= BK_SNAG_NO_MINUTES;
    return left->kind == right->kind && kinds && bk_same_text(left->who, right->who) &&
           left->day == right->day && left->hands == right->hands;
}

size_t bk_snag_sentences(const bk_snag *snags, size_t count, bk_day today, bk_arena *arena,
                         const char *const **sentences)
{
    const char **all = bk_arena_clear(arena, count, sizeof *all);
    bool *told = bk_arena_clear(arena, count, sizeof *told);
    size_t number = 0;
    for (size_t i = 0; i < count; i++) {
        const char *steps = "";
        if (told[i])
            continue;
        for (size_t j = i; j < count; j++)
            if (!told[j] && say_the_same(&snags[i], &snags[j])) {
                told[j] = true;
                steps = with_step(steps, &snags[j], arena);
            }
        all[number++] = sentence_of(&(snag_told){&snags[i], steps, today, arena});
    }
    *sentences = all;
    return number;
}
