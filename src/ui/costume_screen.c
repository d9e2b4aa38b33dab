#include "bodkin/ui/costume_screen.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/costume_lines.h"
#include "bodkin/ui/rail_detail.h"
#include "bodkin/ui/stack.h"

// Rows: name, wearer, progress, perhaps the note, an empty one, the lines, an empty one, the detail of a step, the bottom
// line.
enum {
    NAME_ROW,
    WEARER_ROW,
    PROGRESS_ROW,
    NOTE_ROW,
    NOTE_ROWS = 2,
    DETAIL_ROWS = 3,
    GAP = 3,
    SEAM_COLUMNS = 20
};

typedef struct costume_screen {
    char *number;
    bk_arena *arena; // of the lines
    bk_costume_lines lines;
    size_t columns;     // that the lines were broken for; 0: not yet
    size_t at;          // the chosen one of lines.steps
    size_t top;         // the first line seen
    size_t seen;        // how many lines are seen at once
    char *piece, *step; // names of the chosen step, which a reading may move; NULL: none yet
} costume_screen;

static char *copy_of(const char *text)
{
    size_t size = strlen(text) + 1;
    return memcpy(bk_alloc(size), text, size);
}

void *bk_costume_screen_new(const char *number)
{
    costume_screen *costume = bk_alloc_clear(1, sizeof *costume);
    costume->number = copy_of(number);
    costume->arena = bk_arena_new();
    return costume;
}

static void close_costume(bk_screen *screen)
{
    costume_screen *self = screen->self;
    bk_arena_free(self->arena);
    free(self->number);
    free(self->piece);
    free(self->step);
    free(self);
}

static bk_status read_costume(bk_screen *screen, bk_error *error)
{
    (void)error;
    costume_screen *self = screen->self;
    self->columns = 0;
    if (bk_wall_costume(screen->wall, self->number))
        return BK_OK;
    if (screen->wall->rail) {
        bk_arena *arena = bk_arena_new();
        bk_wall_say(screen->wall, "%s no longer hangs on the rail.",
                    bk_text_safe(arena, self->number, screen->wall->ascii));
        bk_arena_free(arena);
    }
    bk_stack_pop(screen->stack);
    return BK_OK;
}

// ------------------------------------------------------------------------------------------------ the cursor

static void remember_chosen(const bk_screen *screen)
{
    costume_screen *self = screen->self;
    if (self->lines.step_count == 0)
        return;
    const bk_costume_line *line = &self->lines.items[self->lines.steps[self->at]];
    free(self->piece);
    free(self->step);
    self->piece = copy_of(screen->wall->rail->pieces[line->piece].name);
    self->step = copy_of(screen->wall->rail->steps[line->step].key);
}

// The first step that is next, where one comes to look at a costume for the first time.
static bool is_wanted(const bk_screen *screen, const bk_costume_line *line)
{
    const costume_screen *self = screen->self;
    const bk_rail *rail = screen->wall->rail;
    if (!self->step)
        return bk_step_next(&rail->rows, line->step);
    return bk_same_text(rail->pieces[line->piece].name, self->piece) &&
           bk_same_text(rail->steps[line->step].key, self->step);
}

static void find_chosen(const bk_screen *screen)
{
    costume_screen *self = screen->self;
    for (size_t i = 0; i < self->lines.step_count; i++)
        if (is_wanted(screen, &self->lines.items[self->lines.steps[i]])) {
            self->at = i;
            return;
        }
    if (self->at >= self->lines.step_count)
        self->at = self->lines.step_count > 0 ? self->lines.step_count - 1 : 0;
}

// Lines that belong to a step: what is told of its piece before the first one, and its waits after it.
static bool tells_of_piece(const bk_costume_line *line)
{
    return line->kind == BK_LINE_PIECE || line->kind == BK_LINE_TEXT ||
           (line->kind == BK_LINE_WAIT && line->step == BK_NO_INDEX);
}

static size_t first_line_of(const bk_costume_lines *lines, size_t at)
{
    size_t line = lines->steps[at];
    while (line > 0 && tells_of_piece(&lines->items[line - 1]))
        line--;
    return at == 0 ? 0 : line;
}

static size_t end_line_of(const bk_costume_lines *lines, size_t at)
{
    size_t line = lines->steps[at] + 1;
    while (line < lines->count && lines->items[line].kind == BK_LINE_WAIT)
        line++;
    return at + 1 == lines->step_count ? lines->count : line;
}

// Where one comes to look at a costume for the first time, the piece of the chosen step begins at the top.
static void begin_with_piece(costume_screen *self)
{
    size_t line = self->lines.step_count > 0 ? self->lines.steps[self->at] : 0;
    while (line > 0 && self->lines.items[line].kind != BK_LINE_PIECE)
        line--;
    self->top = line;
}

static void bring_in_sight(costume_screen *self)
{
    size_t last_top = self->lines.count > self->seen ? self->lines.count - self->seen : 0;
    if (self->lines.step_count > 0) {
        size_t first = first_line_of(&self->lines, self->at), end = end_line_of(&self->lines, self->at);
        if (end > self->top + self->seen)
            self->top = end - self->seen;
        if (first < self->top)
            self->top = first;
        if (self->lines.steps[self->at] >= self->top + self->seen)
            self->top = self->lines.steps[self->at];
    }
    if (self->top > last_top)
        self->top = last_top;
}

// The lines are made anew after a reading and for another width.
static void make_lines(bk_screen *screen, const bk_rail_costume *costume, const bk_paint *paint)
{
    costume_screen *self = screen->self;
    if (self->columns == paint->columns)
        return;
    bk_arena_reset(self->arena);
    self->columns = paint->columns;
    self->lines =
        bk_costume_lines_make(screen->wall->rail, costume, paint->columns, paint->ascii, self->arena);
    find_chosen(screen);
}

// --------------------------------------------------------------------------------------------------- drawing

static void draw_name(const bk_screen *screen, const bk_paint *paint, const bk_rail_costume *costume)
{
    char day[BK_DAY_WORDS_ROOM];
    const bk_rail *rail = screen->wall->rail;
    bk_urgency urgency = bk_costume_urgency(rail, costume);
    bk_spot spot = bk_paint_row(paint, NAME_ROW);
    const char *due = bk_arena_print(paint->arena, "due %s%s%s", bk_day_words(costume->due, rail->today, day),
                                     *bk_urgency_word(urgency) ? ", " : "", bk_urgency_word(urgency));
    spot.width -= bk_paint_right(paint, spot, bk_urgency_style(urgency), due) + GAP;
    bk_paint_text(paint, spot, BK_STYLE_BOLD,
                  bk_arena_print(paint->arena, "%s  %s", costume->record->number, costume->record->title));
}

static void draw_wearer(const bk_screen *screen, const bk_paint *paint, const bk_rail_costume *costume)
{
    bk_spot spot = bk_paint_row(paint, WEARER_ROW);
    size_t used = bk_paint_text(paint, spot, BK_STYLE_PLAIN, bk_costume_wearer(costume, paint->arena)) + GAP;
    spot.column += used;
    spot.width -= used < spot.width ? used : spot.width;
    bk_paint_right(paint, spot, BK_STYLE_DIM, screen->wall->rail->production.name);
}

static void draw_progress(const bk_paint *paint, const bk_rail_costume *costume)
{
    bk_spot spot = bk_paint_row(paint, PROGRESS_ROW);
    bk_spot seam = {spot.row, spot.column, SEAM_COLUMNS};
    bk_spot words = {spot.row, spot.column + SEAM_COLUMNS + GAP, spot.width - SEAM_COLUMNS - GAP};
    bk_paint_seam(paint, seam, false, bk_rail_seam(costume));
    const char *goes_on = bk_costume_goes_on(costume);
    bk_paint_text(paint, words, BK_STYLE_PLAIN,
                  bk_arena_print(paint->arena, "%s; %s%s%s", bk_state_word(costume->reckoned->state),
                                 bk_costume_progress(costume, paint->arena), goes_on ? "; " : "",
                                 goes_on ? goes_on : ""));
}

static size_t draw_head(const bk_screen *screen, const bk_paint *paint, const bk_rail_costume *costume)
{
    draw_name(screen, paint, costume);
    draw_wearer(screen, paint, costume);
    draw_progress(paint, costume);
    size_t note = costume->record->note ? bk_paint_whole(paint, bk_paint_row(paint, NOTE_ROW), NOTE_ROWS,
                                                         BK_STYLE_DIM, costume->record->note)
                                        : 0;
    return NOTE_ROW + note + 1;
}

static void draw_detail(const bk_screen *screen, const bk_paint *paint, size_t row)
{
    const costume_screen *self = screen->self;
    const bk_rail *rail = screen->wall->rail;
    if (self->lines.step_count == 0)
        return;
    const bk_costume_line *line = &self->lines.items[self->lines.steps[self->at]];
    bk_spot spot = bk_paint_row(paint, row);
    const char *key =
        bk_arena_print(paint->arena, "%s/%s", rail->pieces[line->piece].name, rail->steps[line->step].key);
    spot.width -= bk_paint_right(paint, spot, BK_STYLE_DIM, key) + GAP;
    size_t used = bk_paint_whole(paint, spot, DETAIL_ROWS - 1, BK_STYLE_BOLD, rail->steps[line->step].title);
    bk_spot facts = bk_paint_row(paint, row + used);
    bk_paint_whole(paint, facts, DETAIL_ROWS - used, BK_STYLE_DIM,
                   bk_step_facts(rail, line->step, paint->arena));
}

static void draw_costume(bk_screen *screen, const bk_paint *paint)
{
    costume_screen *self = screen->self;
    const bk_rail_costume *costume = bk_wall_costume(screen->wall, self->number);
    make_lines(screen, costume, paint);
    bk_term_cursor(0, 0, false);
    size_t row = draw_head(screen, paint, costume);
    size_t detail_row = paint->rows - 1 - DETAIL_ROWS;
    self->seen = detail_row - 1 - row;
    if (!self->step)
        begin_with_piece(self);
    bring_in_sight(self);
    remember_chosen(screen);
    for (size_t i = self->top; i < self->lines.count && i < self->top + self->seen; i++, row++) {
        bool chosen = self->lines.step_count > 0 && self->lines.steps[self->at] == i;
        bk_costume_line_draw(paint, screen->wall->rail, costume, &self->lines, i, row, chosen);
    }
    draw_detail(screen, paint, detail_row);
}

// ------------------------------------------------------------------------------------------------- its keys

static void put_at(costume_screen *self, size_t at)
{
    size_t last = self->lines.step_count > 0 ? self->lines.step_count - 1 : 0;
    self->at = at < last ? at : last;
}

// The step nearest to a page away.
static void page_down(costume_screen *self)
{
    size_t wanted = self->lines.step_count > 0 ? self->lines.steps[self->at] + self->seen : 0;
    size_t at = self->at;
    while (at + 1 < self->lines.step_count && self->lines.steps[at + 1] <= wanted)
        at++;
    put_at(self, at > self->at ? at : at + 1);
    self->top += self->seen;
}

static void page_up(costume_screen *self)
{
    size_t from = self->lines.step_count > 0 ? self->lines.steps[self->at] : 0;
    size_t at = self->at;
    while (at > 0 && self->lines.steps[at - 1] + self->seen >= from)
        at--;
    put_at(self, at < self->at || at == 0 ? at : at - 1);
    self->top = self->top > self->seen ? self->top - self->seen : 0;
}

// Where there is no step, the lines themselves move.
static void scroll(costume_screen *self, const bk_key_row *row)
{
    bool back = row->name == BK_KEY_UP || row->name == BK_KEY_PAGE_UP || row->name == BK_KEY_HOME;
    self->top = back ? (self->top > 0 ? self->top - 1 : 0) : self->top + 1;
}

static void move(bk_screen *screen, const bk_key_row *row)
{
    costume_screen *self = screen->self;
    if (self->lines.step_count == 0)
        scroll(self, row);
    else if (row->name == BK_KEY_PAGE_DOWN)
        page_down(self);
    else if (row->name == BK_KEY_PAGE_UP)
        page_up(self);
    else if (row->name == BK_KEY_HOME)
        put_at(self, 0);
    else if (row->name == BK_KEY_END)
        put_at(self, self->lines.step_count);
    else if (row->name == BK_KEY_DOWN)
        put_at(self, self->at + 1);
    else if (self->at > 0)
        put_at(self, self->at - 1);
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_UP,
     .written = "Up, Down",
     .bottom = "step",
     .help = "to the step above or below",
     .act = move},
    {.name = BK_KEY_DOWN, .act = move},
    {.name = BK_KEY_PAGE_UP, .written = "PgUp, PgDn", .help = "a page up or down", .act = move},
    {.name = BK_KEY_PAGE_DOWN, .act = move},
    {.name = BK_KEY_HOME, .written = "Home, End", .help = "to the first or the last step", .act = move},
    {.name = BK_KEY_END, .act = move},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "back to the rail",
     .help = "back to the rail, at the same place",
     .act = bk_screen_back},
    {.name = BK_KEY_TYPED,
     .typed = "?",
     .written = "?",
     .bottom = "keys",
     .help = "these keys",
     .act = bk_screen_help},
    {.name = BK_KEY_TYPED,
     .typed = "q",
     .written = "q",
     .bottom = "leave",
     .help = "leave the program",
     .act = bk_screen_leave},
};

static const bk_key_table tables[] = {{NULL, rows, sizeof rows / sizeof rows[0]}};

static const bk_meaning meanings[] = {
    {"done", "the step is done, or a fitting of it fits"},
    {"next", "every step it comes after is done: it can be begun unless it waits"},
    {"fits", "done because its fitting fits"},
    {"can wait", "it can be done after the opening"},
};

const bk_screen_kind bk_costume_screen = {
    .name = "Costume",
    .tables = tables,
    .table_count = 1,
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = close_costume,
    .read = read_costume,
    .draw = draw_costume,
};
