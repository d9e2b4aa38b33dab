#include <string.h>

#include "bodkin/sheet/rail_sheet.h"
#include "bodkin/sheet/wait_words.h"

// The rail as text of 80 columns: a head, then each costume with who wears it and what it waits on beneath.

// The columns of a costume's line; its due day has 15 where it is of another year.
enum { SHEET_COLUMNS = 80, NUMBER_COLUMNS = 5, TITLE_COLUMNS = 35, SEAM_COLUMNS = 12, STATE_COLUMNS = 9 };
enum { LONGEST_NUMBER = 20, INDENT = 6 };

typedef struct text_sheet {
    const bk_rail *rail;
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

static void write_verdict(text_sheet *writing)
{
    write_lines(writing, bk_rail_verdict(writing->rail, writing->arena), 0);
}

static void write_columns(text_sheet *writing)
{
    write_cell(writing, "No", NUMBER_COLUMNS);
    write_cell(writing, "Costume, who wears it, waiting on", TITLE_COLUMNS);
    write_cell(writing, "Seam", SEAM_COLUMNS);
    write_cell(writing, "State", STATE_COLUMNS);
    bk_buffer_text(writing->out, "Due");
    end_line(writing);
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

static void write_costume(text_sheet *writing, const bk_rail_costume *costume)
{
    char day[BK_DAY_WORDS_ROOM];
    const char *seam = bk_seam_text(bk_rail_seam(costume), SEAM_COLUMNS, writing->ascii, writing->arena);
    size_t number = number_columns(writing, costume->record->number);
    write_cell(writing, costume->record->number, number);
    write_cell(writing, costume->record->title, NUMBER_COLUMNS + TITLE_COLUMNS - number);
    bk_buffer_print(writing->out, "%s ", seam);
    write_cell(writing, bk_state_word(costume->reckoned->state), STATE_COLUMNS);
    bk_day_words(costume->due, writing->rail->today, day);
    bk_buffer_text(writing->out, day);
    end_line(writing);
    write_lines(writing, wearer_and_waits(writing, costume), INDENT);
}

void bk_rail_text(const bk_rail *rail, bool ascii, bk_buffer *out)
{
    text_sheet writing = {.rail = rail, .out = out, .arena = bk_arena_new(), .ascii = ascii};
    write_head(&writing);
    if (rail->costume_count) {
        write_verdict(&writing);
    }
    write_states(&writing);
    write_waits(&writing);
    if (rail->costume_count) {
        bk_buffer_char(out, '\n');
        write_columns(&writing);
    }
    for (size_t i = 0; i < rail->costume_count; i++) {
        write_costume(&writing, &rail->costumes[i]);
        bk_arena_reset(writing.arena);
    }
    bk_arena_free(writing.arena);
}
