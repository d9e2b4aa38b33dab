#include "bodkin/sheet/wait_words.h"

#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"

// ------------------------------------------------------------------------------------------------ materials

const char *bk_quantity_words(const bk_material *material, bk_quantity quantity, bk_arena *arena)
{
    char digits[BK_AMOUNT_ROOM];
    bk_quantity_write(quantity, digits);
    if (material->unit == BK_EACH || material->unit == BK_NO_WORD) {
        return bk_arena_text(arena, digits);
    }
    return bk_arena_print(arena, "%s %s", digits, bk_word_text(&bk_material_unit_words, material->unit));
}

const char *bk_need_words(const bk_material *material, bk_quantity quantity, bk_arena *arena)
{
    return bk_arena_print(arena, "%s%s %s", bk_quantity_words(material, quantity, arena),
                          material->unit == BK_EACH ? "" : " of", material->name);
}

/// How the missing part comes: "not ordered", "due Tue 9 Mar" ...
static const char *supply_words(const bk_rail *rail, const bk_claim *claim, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    bk_day_words(claim->supply_day, rail->today, day);
    switch (claim->supply) {
    case BK_SUPPLY_DUE:
        return bk_arena_print(arena, "due %s", day);
    case BK_SUPPLY_LATE:
        return bk_arena_print(arena, "late, was due %s", day);
    case BK_SUPPLY_NO_DATE:
        return "ordered without a date";
    default:
        return "not ordered";
    }
}

// What orders meet of a part that they do not meet whole: "2 m on order, ".
static const char *partly_ordered(const bk_claim *claim, const bk_material *material, bk_arena *arena)
{
    if (claim->supply != BK_SUPPLY_NOT_ORDERED || claim->unmet <= 0 || claim->unmet >= claim->short_of)
        return "";
    return bk_arena_print(arena, "%s on order, ",
                          bk_quantity_words(material, claim->short_of - claim->unmet, arena));
}

const char *bk_claim_sentence(const bk_rail *rail, const bk_claim *claim, bk_arena *arena)
{
    const bk_material *material = &rail->materials[claim->material];
    const char *needed = bk_need_words(material, claim->quantity, arena);
    bk_quantity there = claim->quantity - claim->short_of;
    const char *shelf = there ? bk_quantity_words(material, there, arena) : "none";
    const char *ordered = partly_ordered(claim, material, arena);
    bk_quantity lacking = *ordered ? claim->unmet : claim->short_of;
    const char *missing = there || *ordered ? bk_quantity_words(material, lacking, arena) : "all of it";
    if (claim->supply == BK_SUPPLY_SHELF)
        return bk_arena_print(arena, "needs %s: on the shelf", needed);
    return bk_arena_print(arena, "needs %s: %s on the shelf, %s%s %s", needed, shelf, ordered, missing,
                          supply_words(rail, claim, arena));
}

// ----------------------------------------------------------------------------------------------- sentences

// The first of the step's measures that was never taken, or NULL.
static const char *never_taken(const bk_rail *rail, const bk_wait *wait)
{
    const bk_wait_step *step = &rail->rows.steps[wait->step];
    for (size_t i = 0; i < step->taking_count; i++)
        if (step->takings[i].newest == BK_NO_DAY)
            return step->takings[i].measure;
    return NULL;
}

static const char *measure_sentence(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    const char *missing = NULL;
    switch (wait->detail) {
    case BK_DETAIL_UNCAST:
        return "cannot be measured: nobody plays the role yet";
    case BK_DETAIL_NONE:
        return "needs measures: there is no measure sheet yet";
    case BK_DETAIL_PART:
        missing = never_taken(rail, wait);
        return missing ? bk_arena_print(arena, "needs measures: %s was never taken", missing)
                       : "needs measures: one it is made to was never taken";
    default:
        return "needs measures: the last ones are too old";
    }
}

static const char *fitting_sentence(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    switch (wait->detail) {
    case BK_DETAIL_BOOKED:
        return bk_arena_print(arena, "the fitting is booked for %s",
                              bk_day_words(wait->day, rail->today, day));
    case BK_DETAIL_MISSED:
        return "the fitting was missed: book another";
    default:
        return "the fitting is not booked";
    }
}

static const char *out_sentence(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    const bk_piece *piece = &rail->pieces[wait->piece];
    char day[BK_DAY_WORDS_ROOM];
    bk_day_words(piece->back_by, rail->today, day);
    switch (wait->detail) {
    case BK_DETAIL_BACK:
        return bk_arena_print(arena, "is out with %s, back %s", piece->out_with, day);
    case BK_DETAIL_OVERDUE:
        return bk_arena_print(arena, "is out with %s, was to be back %s", piece->out_with, day);
    default:
        return bk_arena_print(arena, "is out with %s, no day promised", piece->out_with);
    }
}

static const char *people_sentence(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    const char *kind = bk_word_text(&bk_kind_words, rail->rows.steps[wait->step].kind);
    bk_day due = bk_piece_due(&rail->rows, wait->piece);
    char day[BK_DAY_WORDS_ROOM];
    if (due == BK_NO_DAY) {
        return bk_arena_print(arena, "nobody who can do the %s step has hours", kind);
    }
    if (due < rail->today) {
        return bk_arena_print(
            arena,
            "was due %s, so no hours are left for the %s step: do it all the same, or give it a new day",
            bk_day_words(due, rail->today, day), kind);
    }
    return bk_arena_print(arena, "nobody who can do the %s step has hours by %s", kind,
                          bk_day_words(due, rail->today, day));
}

/// "2A-1/cut and 2A-1/sew": the steps of other costumes that come first.
static const char *steps_words(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    const char *words = "";
    for (size_t i = 0; i < wait->steps.count; i++) {
        size_t step = wait->steps.items[i];
        const char *joint = i == 0 ? "" : (i + 1 == wait->steps.count ? " and " : ", ");
        words = bk_arena_print(arena, "%s%s%s/%s", words, joint,
                               rail->pieces[rail->rows.steps[step].piece].name, rail->steps[step].key);
    }
    return words;
}

const char *bk_wait_sentence(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    switch (wait->on) {
    case BK_WAIT_MEASURES:
        return measure_sentence(rail, wait, arena);
    case BK_WAIT_MATERIALS:
        return bk_claim_sentence(rail, wait->claim, arena);
    case BK_WAIT_FITTING:
        return fitting_sentence(rail, wait, arena);
    case BK_WAIT_HAND:
        return "waits for the hand-sewing table";
    case BK_WAIT_PEOPLE:
        return people_sentence(rail, wait, arena);
    case BK_WAIT_OUT:
        return out_sentence(rail, wait, arena);
    default:
        return bk_arena_print(arena, "comes after %s, not part of this costume",
                              steps_words(rail, wait, arena));
    }
}

// --------------------------------------------------------------------------------------------------- briefs

static const char *day_brief(const char *words, bk_day day, const bk_rail *rail, bk_arena *arena)
{
    char text[BK_DAY_WORDS_ROOM];
    return bk_arena_print(arena, "%s %s", words, bk_day_words(day, rail->today, text));
}

static const char *material_brief(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    const char *name = rail->materials[wait->claim->material].name;
    switch (wait->detail) {
    case BK_DETAIL_DUE:
        return day_brief(bk_arena_print(arena, "%s due", name), wait->day, rail, arena);
    case BK_DETAIL_LATE:
        return bk_arena_print(arena, "%s late", name);
    case BK_DETAIL_NO_DATE:
        return bk_arena_print(arena, "no date for %s", name);
    default:
        return bk_arena_print(arena, "%s not ordered", name);
    }
}

static const char *nobody_brief(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    static const char *const doing[BK_KINDS] = {
        [BK_SOURCE] = "to find things",
        [BK_DRAFT] = "to draft",
        [BK_CUT] = "to cut",
        [BK_TACK] = "to tack",
        [BK_MACHINE] = "to machine",
        [BK_PRESS] = "to press",
        [BK_FIT] = "to fit",
        [BK_HAND] = "to sew by hand",
        [BK_CRAFT] = "for craft work",
        [BK_DYE] = "to dye",
    };
    return bk_arena_print(arena, "nobody %s", doing[rail->rows.steps[wait->step].kind]);
}

static const char *detail_brief(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    switch (wait->detail) {
    case BK_DETAIL_UNCAST:
        return "not cast";
    case BK_DETAIL_NONE:
        return "no measures";
    case BK_DETAIL_PART:
        return "a measure missing";
    case BK_DETAIL_OLD:
        return "measures too old";
    case BK_DETAIL_BOOKED:
        return day_brief("fitting", wait->day, rail, arena);
    case BK_DETAIL_MISSED:
        return "fitting missed";
    case BK_DETAIL_UNBOOKED:
        return "fitting not booked";
    case BK_DETAIL_NOBODY:
        if (bk_piece_due(&rail->rows, wait->piece) < rail->today) {
            return "due day past";
        }
        return nobody_brief(rail, wait, arena);
    case BK_DETAIL_BACK:
        return day_brief("out, back", wait->day, rail, arena);
    case BK_DETAIL_OVERDUE:
        return "out, overdue";
    case BK_DETAIL_STEPS:
        return bk_arena_print(arena, "after %s", steps_words(rail, wait, arena));
    default:
        return "hand sewing";
    }
}

const char *bk_wait_brief(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    if (wait->on == BK_WAIT_MATERIALS) {
        return material_brief(rail, wait, arena);
    }
    if (wait->on == BK_WAIT_OUT && wait->detail == BK_DETAIL_NO_DATE) {
        return "out, no day promised";
    }
    return detail_brief(rail, wait, arena);
}

const char *bk_costume_waits_brief(const bk_rail *rail, const bk_rail_costume *costume, size_t enough,
                                   bk_arena *arena)
{
    const bk_costume_waits *reckoned = costume->reckoned;
    bk_index *said = bk_index_new();
    bk_buffer text = {0};
    long long count = 0;
    for (int acts = 1; acts >= 0; acts--) {
        for (size_t i = 0; i < reckoned->wait_count && text.length < enough; i++) {
            if (reckoned->waits[i].acts != (acts == 1)) {
                continue;
            }
            const char *brief = bk_wait_brief(rail, &reckoned->waits[i], arena);
            if (*bk_index_put(said, brief, count) == count) {
                bk_buffer_print(&text, "%s%s", count ? "; " : "", brief);
                count++;
            }
        }
    }
    const char *kept = bk_arena_text(arena, text.bytes ? text.bytes : "");
    bk_buffer_free(&text);
    bk_index_free(said);
    return kept;
}

// ------------------------------------------------------------------------------- states, urgency, countdown

const char *bk_state_word(bk_state state)
{
    static const char *const words[BK_STATES] = {"ready",   "in work", "finishing",
                                                 "waiting", "held",    "unlisted"};
    return words[state];
}

const char *bk_urgency_word(bk_urgency urgency)
{
    static const char *const words[BK_URGENCIES] = {"late", "tight", "in time", ""};
    return words[urgency];
}

bk_urgency bk_costume_urgency(const bk_rail *rail, const bk_rail_costume *costume)
{
    enum { TIGHT_DAYS = 7, HELD_TIGHT_DAYS = 28 };
    bk_state state = costume->reckoned->state;
    if (state == BK_READY) {
        return BK_IN_TIME;
    }
    if (costume->due < rail->today) {
        return BK_LATE;
    }
    int near = state == BK_HELD ? HELD_TIGHT_DAYS : TIGHT_DAYS;
    return costume->due - rail->today <= near ? BK_TIGHT : BK_NOT_SAID;
}

const char *bk_countdown(const bk_rail *rail, bk_arena *arena)
{
    int64_t days = rail->days_left;
    if (days > 0) {
        return bk_arena_print(arena, "%lld day%s to opening", (long long)days, days == 1 ? "" : "s");
    }
    if (days == 0) {
        return "opens today";
    }
    return bk_arena_print(arena, "opened %lld day%s ago", (long long)-days, days == -1 ? "" : "s");
}

// ----------------------------------------------------------------------------------------------------- seam

typedef struct seam_marks {
    const char *stitch, *pin, *dot;
} seam_marks;

/// How many of `marks` are sewn: in proportion, but never all while something is open, nor none once something is done.
static size_t stitches(bk_seam seam, size_t marks)
{
    if (!seam.open || !marks) {
        return marks;
    }
    double part = (double)seam.done / (double)(seam.done + seam.open);
    size_t sewn = (size_t)(part * (double)marks + 0.5);
    if (sewn >= marks) {
        sewn = marks - 1;
    }
    return sewn == 0 && seam.done && marks > 1 ? 1 : sewn;
}

const char *bk_seam_text(bk_seam seam, size_t columns, bool ascii, bk_arena *arena)
{
    static const seam_marks plain = {"-", "|", "."};
    static const seam_marks drawn = {"━", "┃", "·"};
    const seam_marks *marks = ascii ? &plain : &drawn;
    size_t places = seam.done || seam.open ? columns / 2 : 0;
    size_t sewn = stitches(seam, places);
    size_t used = 0;
    bk_buffer text = {0};
    for (size_t i = 0; i < places; i++) {
        bool pin = i == sewn && seam.waits && seam.open;
        bool last = i + 1 == places;
        bk_buffer_print(&text, "%s%s%s", pin ? marks->pin : "", i < sewn ? marks->stitch : marks->dot,
                        last ? "" : " ");
        used += (pin ? 1U : 0U) + 1U + (last ? 0U : 1U);
    }
    bk_buffer_print(&text, "%*s", (int)(columns - used), "");
    const char *kept = bk_arena_text(arena, text.bytes ? text.bytes : "");
    bk_buffer_free(&text);
    return kept;
}

// "late: none; " or "tight: 3B, 7B and 9 more; ", behind what there is.
static const char *named_as(const bk_rail *rail, bk_urgency urgency, const char *before, bk_arena *arena)
{
    enum { NAMED_MOST = 12 };
    size_t count = 0;
    const char *text = bk_arena_print(arena, "%s%s: ", before, bk_urgency_word(urgency));
    for (size_t i = 0; i < rail->costume_count; i++) {
        const bk_rail_costume *costume = &rail->costumes[i];
        if (bk_costume_urgency(rail, costume) == urgency && count++ < NAMED_MOST)
            text = bk_arena_print(arena, "%s%s%s", text, count > 1 ? ", " : "", costume->record->number);
    }
    if (count > NAMED_MOST)
        text = bk_arena_print(arena, "%s and %zu more", text, count - NAMED_MOST);
    return bk_arena_print(arena, "%s%s", text, count ? "; " : "none; ");
}

const char *bk_rail_verdict(const bk_rail *rail, bk_arena *arena)
{
    char left[BK_AMOUNT_ROOM];
    const char *text = named_as(rail, BK_TIGHT, named_as(rail, BK_LATE, "", arena), arena);
    return bk_arena_print(arena, "%s%s of work left", text, bk_minutes_words(rail->minutes_left, left));
}
