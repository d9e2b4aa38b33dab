#include <string.h>

#include "bodkin/sheet/forecast_words.h"
#include "bodkin/sheet/rail_sheet.h"
#include "bodkin/work/rail_order.h"

// The rail as text of 80 columns: a head, then each costume with its days in hand, who wears it and what it waits on beneath, and
// what stands in the way of it.

// The columns of a costume's line.
enum { SHEET_COLUMNS = 80, NUMBER_COLUMNS = 5, TITLE_COLUMNS = 23, SEAM_COLUMNS = 8, STATE_COLUMNS = 9 };
enum { DAY_COLUMNS = 10 };
enum { LONGEST_NUMBER = 20, INDENT = 6 };

typedef struct text_sheet {
    const bk_rail *rail;
    const bk_forecast *forecast; ///< NULL: not reckoned
    bk_buffer *out;
    bk_arena *arena; ///< for the line under way
    bool ascii;
} text_sheet;

/// Text made safe, cut and filled up to `columns`, and a space behind it.
static void write_cell(text_sheet *writing, const char *text, size_t columns)
{
    const char *safe = bk_text_safe(writing->arena, text, writing->ascii);
    const char *cut = bk_text_cut(writing->arena, safe, columns, writing->ascii);
    bk_buffer_text(writing->out, cut);
    bk_buffer_print(writing->out, "%*s", (int)(columns - bk_text_columns(cut)) + 1, "");
}

/// Ends a line without spaces at its end.
static void end_line(text_sheet *writing)
{
    bk_buffer *out = writing->out;
    while (out->length && out->bytes[out->length - 1] == ' ') {
        out->bytes[--out->length] = '\0';
    }
    bk_buffer_char(out, '\n');
}

/// Text broken at words over lines of the sheet, each with an indent.
static void write_lines(text_sheet *writing, const char *text, int indent)
{
    size_t count;
    const char *safe = bk_text_safe(writing->arena, text, writing->ascii);
    char **lines = bk_text_wrap(writing->arena, safe, (size_t)(SHEET_COLUMNS - indent), &count);
    for (size_t i = 0; i < count; i++) {
        bk_buffer_print(writing->out, "%*s%s", indent, "", lines[i]);
        end_line(writing);
    }
}

static void write_head(text_sheet *writing)
{
    char day[BK_DAY_WORDS_ROOM];
    const bk_rail *rail = writing->rail;
    const char *right = bk_arena_print(writing->arena, "%s, %s", bk_countdown(rail, writing->arena),
                                       bk_day_words(rail->production.opens, rail->today, day));
    write_cell(writing, rail->production.name, SHEET_COLUMNS - strlen(right) - 1);
    bk_buffer_text(writing->out, right);
    end_line(writing);
}

/// "20 costumes: 2 ready, 6 in work, ...; 5 can go on": only what there is.
static void write_states(text_sheet *writing)
{
    const bk_rail_counts *counts = &writing->rail->counts;
    const char *text = bk_arena_print(writing->arena, "%lld costume%s", (long long)counts->costumes,
                                      counts->costumes == 1 ? "" : "s");
    const char *joint = ": ";
    for (int state = 0; state < BK_STATES; state++) {
        if (counts->states[state]) {
            text = bk_arena_print(writing->arena, "%s%s%lld %s", text, joint,
                                  (long long)counts->states[state], bk_state_word((bk_state)state));
            joint = ", ";
        }
    }
    if (counts->can_go_on) {
        text = bk_arena_print(writing->arena, "%s; %lld can go on as %s", text, (long long)counts->can_go_on,
                              counts->can_go_on == 1 ? "it is" : "they are");
    }
    write_lines(writing, text, 0);
}

static void write_waits(text_sheet *writing)
{
    static const char *const names[BK_WAITS_ON] = {
        "measures",
        "materials",
        "a fitting",
        "hand sewing",
        "people",
        "a piece that is out",
        "other costumes' steps",
    };
    const char *text = "";
    for (int on = 0; on < BK_WAITS_ON; on++) {
        if (writing->rail->counts.waits[on]) {
            text =
                bk_arena_print(writing->arena, "%s%s%s %lld", text, *text ? ", " : "Waiting on: ", names[on],
                               (long long)writing->rail->counts.waits[on]);
        }
    }
    if (*text) {
        write_lines(writing, text, 0);
    }
}

static void write_sentence(text_sheet *writing, const char *sentence, int indent)
{
    const char *text = bk_arena_print(writing->arena, "%s%s", sentence, bk_full_stop(sentence));
    write_lines(writing, text, indent);
}

/// The whole production in one sentence, or why nothing can be told.
static void write_outlook(text_sheet *writing)
{
    const bk_rail *rail = writing->rail;
    const bk_production_forecast *own = bk_forecast_production(writing->forecast, rail->production.id);
    if (own && writing->forecast->room_snag.kind != BK_SNAGS) {
        write_sentence(writing, bk_snag_sentence(&writing->forecast->room_snag, rail->today, writing->arena),
                       0);
    } else if (own && rail->costume_count) {
        write_sentence(writing, bk_production_forecast_sentence(own, rail->today, writing->arena), 0);
    }
}

static void write_verdict(text_sheet *writing)
{
    write_lines(writing, bk_forecast_verdict(writing->rail, writing->forecast, writing->arena), 0);
}

static void write_columns(text_sheet *writing)
{
    write_cell(writing, "No", NUMBER_COLUMNS);
    write_cell(writing, "Costume", TITLE_COLUMNS);
    write_cell(writing, "Seam", SEAM_COLUMNS);
    write_cell(writing, "State", STATE_COLUMNS);
    write_cell(writing, "Due", DAY_COLUMNS);
    write_cell(writing, "Expected", DAY_COLUMNS);
    bk_buffer_text(writing->out, "Chance");
    end_line(writing);
}

/// "tight, 1 day in hand; " where its days are known and something of it is open; "2 days late; " says it all, and what is late by its
/// chance alone is "likely late".
static const char *urgency_words(const text_sheet *writing, const bk_rail_costume *costume,
                                 const bk_costume_forecast *forecast)
{
    if (!forecast || !forecast->open || !forecast->days.days_known) {
        return "";
    }
    if (costume->reckoned->can_go_on) {
        return "in time; ";
    }
    if (forecast->days.finish == BK_NO_DAY) {
        return "never done as things are; ";
    }
    bool past = forecast->days.days_in_hand < 0;
    bk_urgency urgency = bk_urgency_of(writing->rail, costume, forecast);
    const char *word = past ? "" : urgency == BK_LATE ? "likely late" : bk_urgency_word(urgency);
    return bk_arena_print(writing->arena, "%s%s%s; ", word, *word ? ", " : "",
                          bk_days_in_hand_words(&forecast->days, writing->arena));
}

/// "Ada Berg, the Miller: can go on as it is; fitting missed"
static const char *wearer_and_waits(const text_sheet *writing, const bk_rail_costume *costume)
{
    const char *waits = bk_costume_waits_brief(writing->rail, costume, SIZE_MAX, writing->arena);
    bool goes_on = costume->reckoned->can_go_on && costume->reckoned->state != BK_READY;
    return bk_arena_print(writing->arena, "%s, %s%s%s%s%s",
                          costume->performer ? costume->performer : "not cast", costume->role,
                          goes_on || *waits ? ": " : "", goes_on ? "can go on as it is" : "",
                          goes_on && *waits ? "; " : "", waits);
}

/// A long number takes its room from the title.
static size_t number_columns(const text_sheet *writing, const char *number)
{
    size_t columns = bk_text_columns(bk_text_safe(writing->arena, number, writing->ascii));
    if (columns < NUMBER_COLUMNS) {
        return NUMBER_COLUMNS;
    }
    return columns < LONGEST_NUMBER ? columns : LONGEST_NUMBER;
}

/// "Tue 16 Mar", or 2028-03-14 where the year must be told and that is too long.
static void write_day(text_sheet *writing, bk_day day)
{
    char words[BK_DAY_WORDS_ROOM];
    char plain[BK_DAY_ROOM];
    const char *text = day == BK_NO_DAY ? "" : bk_day_words(day, writing->rail->today, words);
    write_cell(writing, strlen(text) > DAY_COLUMNS ? bk_day_write(day, plain) : text, DAY_COLUMNS);
}

/// Nothing is planned while nobody is in the workroom: then what was planned as if it were otherwise is not told.
static bool told(const text_sheet *writing, const bk_snag *snag)
{
    bool as_if = snag->kind == BK_SNAG_UNCAST || snag->kind == BK_SNAG_NO_DATE;
    return !as_if || writing->forecast->room_snag.kind == BK_SNAGS;
}

static void write_snags(text_sheet *writing, const bk_costume_forecast *forecast)
{
    const char *const *sentences;
    bk_snag *snags = bk_arena_clear(writing->arena, forecast->snag_count, sizeof *snags);
    size_t count = 0;
    for (size_t i = 0; i < forecast->snag_count; i++) {
        if (told(writing, &forecast->snags[i])) {
            snags[count++] = forecast->snags[i];
        }
    }
    count = bk_snag_sentences(snags, count, writing->rail->today, writing->arena, &sentences);
    for (size_t i = 0; i < count; i++) {
        write_sentence(writing, sentences[i], INDENT);
    }
}

/// Beneath a costume's line: its title where that was cut, its days in hand, and who wears it.
static void write_detail(text_sheet *writing, const bk_rail_costume *costume,
                         const bk_costume_forecast *forecast, bool cut)
{
    const char *title = cut ? bk_arena_print(writing->arena, "%s; ", costume->record->title) : "";
    write_lines(writing,
                bk_arena_print(writing->arena, "%s%s%s", title, urgency_words(writing, costume, forecast),
                               wearer_and_waits(writing, costume)),
                INDENT);
    if (forecast) {
        write_snags(writing, forecast);
    }
}

static void write_costume(text_sheet *writing, const bk_rail_costume *costume)
{
    const bk_costume_forecast *forecast = bk_forecast_costume(writing->forecast, costume->record->id);
    bool open = forecast && forecast->open;
    const char *seam = bk_seam_text(bk_rail_seam(costume), SEAM_COLUMNS, writing->ascii, writing->arena);
    size_t number = number_columns(writing, costume->record->number);
    size_t room = NUMBER_COLUMNS + TITLE_COLUMNS - number;
    const char *title = bk_text_safe(writing->arena, costume->record->title, writing->ascii);
    write_cell(writing, costume->record->number, number);
    write_cell(writing, costume->record->title, room);
    bk_buffer_print(writing->out, "%s ", seam);
    write_cell(writing, bk_state_word(costume->reckoned->state), STATE_COLUMNS);
    write_day(writing, costume->due);
    write_day(writing, open ? forecast->days.finish : BK_NO_DAY);
    bk_buffer_text(writing->out, open ? bk_chance_words(&forecast->days, writing->arena) : "");
    end_line(writing);
    write_detail(writing, costume, forecast, bk_text_columns(title) > room);
}

static void write_costumes(text_sheet *writing)
{
    bk_arena *arena = bk_arena_new();
    const bk_rail_costume *const *costumes = bk_rail_most_urgent(writing->rail, writing->forecast, arena);
    bk_buffer_char(writing->out, '\n');
    write_columns(writing);
    for (size_t i = 0; i < writing->rail->costume_count; i++) {
        write_costume(writing, costumes[i]);
        bk_arena_reset(writing->arena);
    }
    bk_arena_free(arena);
}

void bk_rail_text(const bk_rail *rail, const bk_forecast *forecast, bool ascii, bk_buffer *out)
{
    text_sheet writing = {
        .rail = rail, .forecast = forecast, .out = out, .arena = bk_arena_new(), .ascii = ascii};
    write_head(&writing);
    write_outlook(&writing);
    if (rail->costume_count) {
        write_verdict(&writing);
    }
    write_states(&writing);
    write_waits(&writing);
    if (rail->costume_count) {
        write_costumes(&writing);
    }
    bk_arena_free(writing.arena);
}
