#include "bodkin/ui/measuring_screen.h"

#include "bodkin/store/performer_rows.h"
#include "bodkin/ui/leaving.h"
#include "bodkin/ui/measuring_draw.h"
#include "bodkin/ui/measuring_save.h"
#include "bodkin/ui/stack.h"

// --------------------------------------------------------------------------------------- from line to line

// Reads what is typed in the line at hand, and doubts it.
static void leave_line(bk_measuring *sheet)
{
    bk_measuring_understand(sheet, sheet->at);
    bk_measuring_doubt(sheet);
    sheet->left = sheet->at;
}

// Goes on from a line, or stays once where something is wrong with it.
static void go_on(bk_screen *screen, const bk_key_row *row)
{
    bk_measuring *sheet = screen->self;
    bk_measuring_line *line = bk_measuring_at_hand(sheet);
    leave_line(sheet);
    if (line->wrong && !line->told) {
        line->told = true;
        return;
    }
    bool other = line->part == BK_MEASURING_OTHER;
    if (other && bk_measuring_is_typed(line) && !line->wrong)
        bk_measuring_begin_other(sheet);
    else if (other && row->name == BK_KEY_ENTER)
        bk_measuring_finish(screen);
    else
        bk_measuring_arrive(sheet, bk_measuring_next(sheet, sheet->at, 1));
}

static void go_back(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_measuring *sheet = screen->self;
    leave_line(sheet);
    bk_measuring_arrive(sheet, bk_measuring_next(sheet, sheet->at, -1));
}

static void go_down(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_measuring *sheet = screen->self;
    leave_line(sheet);
    bk_measuring_arrive(sheet, bk_measuring_next(sheet, sheet->at, 1));
}

static void go_far(bk_screen *screen, const bk_key_row *row)
{
    bk_measuring *sheet = screen->self;
    int by = row->name == BK_KEY_PAGE_UP ? -1 : 1;
    leave_line(sheet);
    for (size_t i = 0; i < sheet->seen.seen; i++)
        sheet->at = bk_measuring_next(sheet, sheet->at, by);
    bk_measuring_arrive(sheet, sheet->at);
}

// ------------------------------------------------------------------------------------------------ typing

static void move_in_text(bk_screen *screen, const bk_key_row *row)
{
    bk_measuring *sheet = screen->self;
    bk_form_line *text = &bk_measuring_at_hand(sheet)->text;
    size_t length = text->text.length;
    bk_form_line_key(text, row->name);
    if (text->text.length != length)
        bk_measuring_touch(sheet);
}

static void empty(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_measuring *sheet = screen->self;
    bk_form_line_put(&bk_measuring_at_hand(sheet)->text, "");
    bk_measuring_touch(sheet);
}

static bool take(bk_screen *screen, const bk_key *key)
{
    bk_measuring *sheet = screen->self;
    if (sheet->mode == BK_MEASURING_FILLING && key->name == BK_KEY_TYPED) {
        bk_form_line_insert(&bk_measuring_at_hand(sheet)->text, key->text);
        bk_measuring_touch(sheet);
        return true;
    }
    return false;
}

// ------------------------------------------------------------------------------------- ending and leaving

static void finish(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_measuring_finish(screen);
}

static void save(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_measuring_save(screen);
}

static void leave(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_measuring *sheet = screen->self;
    if (bk_measuring_is_changed(sheet))
        bk_leaving_ask(screen, "back to the sheet", bk_measuring_finish);
    else
        bk_stack_pop(screen->stack);
}

static void mend(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_measuring *sheet = screen->self;
    bk_measuring_arrive(sheet, sheet->findings[sheet->finding.at].line);
    sheet->mode = BK_MEASURING_FILLING;
}

static void move_finding(bk_screen *screen, const bk_key_row *row)
{
    bk_cursor_key(&((bk_measuring *)screen->self)->finding, row->name);
}

// ---------------------------------------------------------------------------------------- its keys

static bool has_text(const bk_screen *screen)
{
    return bk_measuring_is_typed(bk_measuring_at_hand(screen->self));
}

static bool is_empty(const bk_screen *screen)
{
    const bk_measuring *sheet = screen->self;
    return !has_text(screen) && bk_measuring_at_hand(sheet)->part != BK_MEASURING_OTHER;
}

static bool is_at_end(const bk_screen *screen)
{
    const bk_measuring *sheet = screen->self;
    return !has_text(screen) && bk_measuring_at_hand(sheet)->part == BK_MEASURING_OTHER;
}

static bool has_several(const bk_screen *screen)
{
    return ((const bk_measuring *)screen->self)->finding.count > 1;
}

static const bk_key_row filling_rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "next",
     .help = "to the next measure; where nothing is typed the measure is passed over",
     .act = go_on,
     .matters = has_text},
    {.name = BK_KEY_ENTER, .written = "Enter", .bottom = "pass over", .act = go_on, .matters = is_empty},
    {.name = BK_KEY_ENTER, .written = "Enter", .bottom = "save", .act = go_on, .matters = is_at_end},
    {.name = BK_KEY_UP,
     .written = "Up, Down",
     .bottom = "back",
     .help = "to the measure above or below; above the first are the day, who measures, and over what",
     .act = go_back},
    {.name = BK_KEY_DOWN, .act = go_down},
    {.name = BK_KEY_TAB, .written = "Tab, Shift-Tab", .help = "the same", .act = go_on},
    {.name = BK_KEY_BACK_TAB, .act = go_back},
    {.name = BK_KEY_PAGE_UP, .written = "PgUp, PgDn", .help = "a page up or down", .act = go_far},
    {.name = BK_KEY_PAGE_DOWN, .act = go_far},
    {.name = BK_KEY_SAVE,
     .written = "Ctrl-S",
     .bottom = "save",
     .help = "the sheet is at its end: tells what is doubtful on it, then saves",
     .act = finish},
    {.name = BK_KEY_EMPTY, .written = "Ctrl-U", .help = "empty the line", .act = empty},
    {.name = BK_KEY_LEFT, .act = move_in_text},
    {.name = BK_KEY_RIGHT, .act = move_in_text},
    {.name = BK_KEY_HOME, .act = move_in_text},
    {.name = BK_KEY_END, .act = move_in_text},
    {.name = BK_KEY_BACKSPACE, .act = move_in_text},
    {.name = BK_KEY_DELETE, .act = move_in_text},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "leave",
     .help = "leave without saving; it asks where something was typed",
     .act = leave},
};

static const bk_key_row checking_rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "save it as it is",
     .help = "save the sheet as it is",
     .act = save},
    {.name = BK_KEY_SAVE, .act = save},
    {.name = BK_KEY_UP,
     .written = "Up, Down",
     .bottom = "choose",
     .help = "another of the measures",
     .act = move_finding,
     .matters = has_several},
    {.name = BK_KEY_DOWN, .act = move_finding},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "back to mend it",
     .help = "back to the measure, to mend it",
     .act = mend},
};

#define TABLE(heading, all) \
    { \
        .title = heading, .rows = all, .count = sizeof(all) / sizeof *(all), .alone = true \
    }

static const bk_key_table tables[] = {
    [BK_MEASURING_FILLING] = TABLE("While a sheet is taken", filling_rows),
    [BK_MEASURING_CHECKING] = TABLE("Before it is saved", checking_rows),
};

static size_t table_of(const bk_screen *screen)
{
    return (size_t)((const bk_measuring *)screen->self)->mode;
}

// ------------------------------------------------------------------------------------------ the screen

static void close_sheet(bk_screen *screen)
{
    bk_measuring_free(screen->self);
}

// What is typed stays, whatever another terminal does.
static bk_status read_sheet(bk_screen *screen, bk_error *error)
{
    bk_measuring *sheet = screen->self;
    bk_status status = bk_measuring_read(sheet, error);
    if (status != BK_REFUSED)
        return status;
    bk_wall_say(sheet->wall, "%s", error->text);
    if (sheet->count == 0)
        bk_stack_pop(screen->stack);
    return BK_OK;
}

static void draw(bk_screen *screen, const bk_paint *paint)
{
    bk_measuring *sheet = screen->self;
    if (sheet->mode == BK_MEASURING_CHECKING)
        bk_measuring_draw_findings(sheet, paint);
    else
        bk_measuring_draw(sheet, paint);
}

static const bk_meaning meanings[] = {
    {"asked for", "open steps need it, and it was never taken or too long ago"},
    {"doubtful", "it can hardly be true; below stands why"},
    {"last", "the newest value up to the day of the sheet"},
};

static const bk_screen_kind measuring_screen = {
    .name = "Measuring",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = close_sheet,
    .read = read_sheet,
    .draw = draw,
    .table = table_of,
    .take = take,
};

void bk_measuring_open(bk_screen *from, int64_t performer)
{
    if (bk_store_sees_measures(from->wall->store))
        bk_stack_push(from->stack, &measuring_screen, bk_measuring_new(from->wall, performer));
    else
        bk_wall_say(from->wall, "Measures are the maker's alone.");
}
