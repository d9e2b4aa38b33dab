#include "bodkin/ui/measuring_save.h"

#include "bodkin/ui/acts.h"
#include "bodkin/ui/length_words.h"
#include "bodkin/ui/stack.h"

// The first line with something that cannot be saved, or `count`.
static size_t first_wrong(bk_measuring *sheet)
{
    for (size_t i = 0; i < sheet->count; i++) {
        bk_measuring_understand(sheet, i);
        if (sheet->lines[i].wrong)
            return i;
    }
    return sheet->count;
}

// -------------------------------------------------------------------------------------------- what is doubtful

// A value that stands on the sheet of that day already, and not as it is typed.
static const char *corrects(const bk_measuring *sheet, const bk_measuring_line *line)
{
    char day[BK_DAY_WORDS_ROOM];
    if (line->value == BK_NO_AMOUNT || line->last_on == BK_NO_DAY || line->last_on != sheet->day ||
        line->last == line->value)
        return NULL;
    return bk_arena_print(sheet->checked, "It stands as %s on the sheet of %s; saving makes it %s.",
                          bk_length_words(line->last, sheet->unit, sheet->checked),
                          bk_day_words(sheet->day, sheet->wall->today, day),
                          bk_length_words(line->value, sheet->unit, sheet->checked));
}

static void add_finding(bk_measuring *sheet, size_t line, const char *says)
{
    if (says)
        sheet->findings[sheet->finding.count++] = (bk_measuring_finding){line, says};
}

static void gather_findings(bk_measuring *sheet)
{
    enum { FOR_EACH_LINE = 2 };
    bk_arena_reset(sheet->checked);
    sheet->findings = bk_arena_clear(sheet->checked, FOR_EACH_LINE * sheet->count, sizeof *sheet->findings);
    sheet->finding = (bk_cursor){.seen = 1};
    bk_measuring_doubt(sheet);
    for (size_t i = BK_MEASURING_FIRST; i < sheet->count; i++) {
        add_finding(sheet, i, bk_arena_text(sheet->checked, sheet->lines[i].doubt));
        add_finding(sheet, i, corrects(sheet, &sheet->lines[i]));
    }
}

// ---------------------------------------------------------------------------------------------------- saving

static const char *text_or_none(const bk_measuring *sheet, bk_measuring_part part)
{
    const bk_measuring_line *line = &sheet->lines[part];
    return bk_measuring_is_typed(line) ? bk_form_line_text(&line->text) : NULL;
}

static size_t take_values(const bk_measuring *sheet, bk_taken *items)
{
    size_t count = 0;
    for (size_t i = BK_MEASURING_FIRST; i < sheet->count; i++)
        if (sheet->lines[i].value != BK_NO_AMOUNT)
            items[count++] = (bk_taken){sheet->lines[i].name, sheet->lines[i].value};
    return count;
}

static void saved(bk_screen *screen, const char *sentence)
{
    bk_measuring *sheet = screen->self;
    bk_wall *wall = sheet->wall;
    wall->saved_family = BK_PERFORMERS;
    wall->saved_id = sheet->performer;
    bk_act_did(screen, BK_OK, sentence, NULL);
    if (!sentence)
        bk_wall_say(wall, "Nothing was changed: all of it stands on that sheet already.");
    bk_stack_pop(screen->stack);
}

void bk_measuring_save(bk_screen *screen)
{
    bk_error error;
    bk_measuring *sheet = screen->self;
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(sheet->wall, arena);
    bk_taken *items = bk_arena_take(arena, sheet->count * sizeof *items);
    const bk_measures_saving saving = {
        .performer = sheet->performer,
        .on = sheet->day,
        .today = job.today,
        .taken_by = text_or_none(sheet, BK_MEASURING_BY),
        .over = text_or_none(sheet, BK_MEASURING_OVER),
        .items = items,
        .count = take_values(sheet, items),
    };
    bk_status status = bk_measures_save(job.store, &saving, job.made_at, arena, &sentence, &error);
    sheet->mode = BK_MEASURING_FILLING;
    if (status)
        bk_wall_say(sheet->wall, "%s", error.text);
    else
        saved(screen, sentence);
    bk_arena_free(arena);
}

void bk_measuring_finish(bk_screen *screen)
{
    bk_error error;
    bk_measuring *sheet = screen->self;
    size_t wrong = first_wrong(sheet);
    sheet->mode = BK_MEASURING_FILLING;
    sheet->left = sheet->count;
    if (wrong < sheet->count) {
        bk_measuring_arrive(sheet, wrong);
        sheet->lines[wrong].told = true;
        return;
    }
    if (bk_measuring_is_typed(&sheet->lines[sheet->count - 1])) {
        bk_measuring_begin_other(sheet);
        bk_wall_say(sheet->wall, "This measure has no value yet; type it, or save once more without it.");
        return;
    }
    if (bk_measuring_typed_count(sheet) == 0) {
        bk_wall_say(sheet->wall, "Nothing is typed yet; Escape leaves.");
        return;
    }
    if (bk_measuring_read(sheet, &error)) {
        bk_wall_say(sheet->wall, "%s", error.text);
        return;
    }
    gather_findings(sheet);
    if (sheet->finding.count > 0)
        sheet->mode = BK_MEASURING_CHECKING;
    else
        bk_measuring_save(screen);
}
