#include "bodkin/ui/person_pick.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/cursor.h"
#include "bodkin/ui/narrow.h"
#include "bodkin/ui/query_line.h"
#include "bodkin/ui/stack.h"

enum {
    MOST_ROWS = 12, // of people, above the line that is typed
    BELOW = 2,      // an empty row, and the line that is typed
    MOST_NAME_COLUMNS = 30,
    GAP = 2
};

typedef struct choice {
    const char *name; // NULL: everybody
    const char *skills;
} choice;

typedef struct pick {
    bk_arena *arena;
    const char *prompt;
    bk_person_picked *picked;
    choice *choices; // everybody first
    size_t count;
    size_t *shown;
    bk_cursor cursor; // in `shown`
    bk_query query;
    bk_findable *findable;
} pick;

static const char *name_of(const choice *one)
{
    return one->name ? one->name : "everybody";
}

static const char *choice_text(const void *context, size_t index, bk_arena *arena)
{
    const pick *self = context;
    const choice *one = &self->choices[index];
    return bk_arena_print(arena, "%s\n%s", name_of(one), one->skills);
}

static void show_matching(pick *self)
{
    bool *found = bk_alloc(self->count * sizeof *found);
    size_t count = 0;
    bk_findable_match(self->findable, &self->query, found);
    for (size_t i = 0; i < self->count; i++)
        if (found[i])
            self->shown[count++] = i;
    free(found);
    bk_cursor_fit(&self->cursor, count, MOST_ROWS);
}

static const char *skill_words(unsigned skills, bk_arena *arena)
{
    const char *words = "";
    for (int kind = 0; kind < BK_KINDS; kind++)
        if (skills & 1U << kind) {
            const char *word = bk_word_text(&bk_kind_words, kind);
            words = *words ? bk_arena_print(arena, "%s, %s", words, word) : word;
        }
    return words;
}

static void gather(pick *self, const bk_forecast *forecast)
{
    self->count = forecast->person_count + 1;
    self->choices = bk_arena_clear(self->arena, self->count, sizeof *self->choices);
    self->shown = bk_arena_clear(self->arena, self->count, sizeof *self->shown);
    self->choices[0].skills = "";
    for (size_t i = 0; i < forecast->person_count; i++)
        self->choices[i + 1] = (choice){bk_arena_text(self->arena, forecast->people[i].name),
                                        skill_words(forecast->people[i].skills, self->arena)};
    self->findable = bk_findable_of(self->count, choice_text, self);
}

void bk_person_pick_open(bk_screen *screen, const char *prompt, const bk_forecast *forecast,
                         const char *chosen, bk_person_picked *picked)
{
    if (!forecast || forecast->person_count == 0) {
        bk_wall_say(screen->wall, forecast ? "Nobody is in this workroom yet: H and + enter somebody."
                                           : "Who is there is still being read; ask again in a moment.");
        return;
    }
    pick *self = bk_alloc_clear(1, sizeof *self);
    self->arena = bk_arena_new();
    self->prompt = prompt;
    self->picked = picked;
    gather(self, forecast);
    show_matching(self);
    for (size_t i = 1; i < self->count; i++)
        if (bk_same_text(self->choices[i].name, chosen))
            bk_cursor_put(&self->cursor, i);
    bk_stack_push(screen->stack, &bk_person_pick_screen, self);
}

static void close_pick(bk_screen *screen)
{
    pick *self = screen->self;
    bk_findable_free(self->findable);
    bk_arena_free(self->arena);
    free(self);
}

// --------------------------------------------------------------------------------------------------- drawing

static size_t name_columns(const pick *self, const bk_paint *paint)
{
    size_t wide = 0;
    for (size_t i = 0; i < self->count; i++) {
        size_t columns =
            bk_text_columns(bk_text_safe(paint->arena, name_of(&self->choices[i]), paint->ascii));
        wide = columns > wide ? columns : wide;
    }
    return wide < MOST_NAME_COLUMNS ? wide : MOST_NAME_COLUMNS;
}

static void draw_choice(const bk_paint *paint, const choice *one, size_t names, size_t row, bool chosen)
{
    int style = chosen ? BK_STYLE_CHOSEN : BK_STYLE_PLAIN;
    if (chosen)
        bk_paint_chosen(paint, row);
    bk_spot spot = bk_paint_row(paint, row);
    size_t end = spot.column + spot.width;
    spot.width = names;
    bk_paint_text(paint, spot, style, name_of(one));
    spot.column += names + GAP;
    spot.width = end - spot.column;
    bk_paint_text(paint, spot, chosen ? style : BK_STYLE_DIM, one->skills);
}

static const char *summary(const pick *self, const bk_paint *paint)
{
    if (self->cursor.count == 0)
        return "Nobody is called so, or does that";
    if (self->cursor.count <= self->cursor.seen)
        return "Type to find one: a name, or a kind of step";
    return bk_arena_print(paint->arena, "%zu people, %zu to %zu shown: type to find one", self->cursor.count,
                          self->cursor.top + 1, self->cursor.top + self->cursor.seen);
}

static void draw_pick(bk_screen *screen, const bk_paint *paint)
{
    pick *self = screen->self;
    size_t count = self->cursor.count < MOST_ROWS ? self->cursor.count : MOST_ROWS;
    size_t first = paint->rows - BELOW - count - 1; // the row that says what to do
    for (size_t row = first - 1; row < paint->rows; row++)
        bk_term_fill(row, 0, paint->columns, BK_STYLE_PLAIN);
    bk_paint_text(paint, bk_paint_row(paint, first), BK_STYLE_DIM, summary(self, paint));
    size_t names = name_columns(self, paint);
    for (size_t i = 0; i < count; i++) {
        size_t at = self->cursor.top + i;
        draw_choice(paint, &self->choices[self->shown[at]], names, first + 1 + i, at == self->cursor.at);
    }
}

static size_t draw_typed(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const pick *self = screen->self;
    return bk_query_prompt_draw(&self->query, paint, spot, self->prompt);
}

// ------------------------------------------------------------------------------------------------- its keys

static bool take_typed(bk_screen *screen, const bk_key *key)
{
    pick *self = screen->self;
    bool typing = true; // Backspace on an empty line ends nothing
    if (!bk_query_line_take(&self->query, &typing, key, screen->wall))
        return false;
    show_matching(self);
    bk_cursor_put(&self->cursor, 0);
    return true;
}

static void move(bk_screen *screen, const bk_key_row *row)
{
    pick *self = screen->self;
    bk_cursor_key(&self->cursor, row->name);
}

static void take(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    pick *self = screen->self;
    bk_stack *stack = screen->stack;
    if (self->cursor.count == 0)
        return;
    bk_person_picked *picked = self->picked;
    char *name = NULL;
    const choice *chosen = &self->choices[self->shown[self->cursor.at]];
    if (chosen->name)
        name = bk_text_copy(chosen->name);
    bk_stack_pop(stack);
    picked(bk_stack_top(stack), name);
    free(name);
}

static bool has_choice(const bk_screen *screen)
{
    return ((const pick *)screen->self)->cursor.count > 0;
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "this one",
     .help = "take the one under the cursor",
     .act = take,
     .matters = has_choice},
    {.name = BK_KEY_UP,
     .written = "Up, Down",
     .bottom = "choose",
     .help = "to the one above or below",
     .act = move,
     .matters = has_choice},
    {.name = BK_KEY_DOWN, .act = move},
    {.name = BK_KEY_PAGE_UP, .act = move},
    {.name = BK_KEY_PAGE_DOWN, .act = move},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "back",
     .help = "leave it as it is",
     .act = bk_screen_back},
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0], .alone = true}};

const bk_screen_kind bk_person_pick_screen = {
    .name = "Whose work",
    .over = true,
    .tables = tables,
    .table_count = 1,
    .close = close_pick,
    .draw = draw_pick,
    .take = take_typed,
    .draw_bottom = draw_typed,
};
