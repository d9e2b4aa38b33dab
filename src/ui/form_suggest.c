#include "bodkin/ui/form_suggest.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/existing.h"
#include "bodkin/work/next_name.h"

static const bk_rail *rail_of(const bk_form *form)
{
    return bk_form_wall(form)->rail;
}

const char *bk_suggest_today(const bk_form *form, bk_arena *arena)
{
    char day[BK_DAY_ROOM];
    return bk_arena_text(arena, bk_day_write(bk_form_wall(form)->today, day));
}

const char *bk_suggest_unit(const bk_form *form, bk_arena *arena)
{
    (void)arena;
    const bk_rail *rail = rail_of(form);
    const char *word = rail ? bk_word_text(&bk_length_unit_words, rail->production.unit) : NULL;
    return word ? word : bk_word_text(&bk_length_unit_words, BK_CM);
}

const char *bk_suggest_currency(const bk_form *form, bk_arena *arena)
{
    const bk_rail *rail = rail_of(form);
    return rail ? bk_arena_text(arena, rail->production.currency) : NULL;
}

// ------------------------------------------------------------------------------------------------- names, keys

// The names of what is known, for those that take them so.
static const char **names_of(const bk_form *form, bk_existing_kind kind, const char *of, bk_arena *arena,
                             size_t *count)
{
    bk_error error;
    bk_existing_list known = {0};
    const bk_wall *wall = bk_form_wall(form);
    int64_t production = wall->rail ? wall->rail->production.id : 0;
    if (bk_existing_read(wall->store, production, kind, of, arena, &known, &error))
        known.count = 0; // nothing is suggested then
    const char **names = bk_arena_clear(arena, known.count, sizeof *names);
    for (size_t i = 0; i < known.count; i++)
        names[i] = known.items[i].name;
    *count = known.count;
    return names;
}

const char *bk_suggest_costume(const bk_form *form, bk_arena *arena)
{
    size_t count = 0;
    const char **roles = names_of(form, BK_EXISTING_ROLES, NULL, arena, &count);
    const bk_rail *rail = rail_of(form);
    return rail ? bk_next_costume(rail, bk_form_text(form, "role"), roles, count, arena) : NULL;
}

const char *bk_suggest_piece(const bk_form *form, bk_arena *arena)
{
    const char *rest = bk_form_text(form, "costumes"), *first = NULL;
    size_t length = 0;
    if (!rail_of(form) || !bk_list_item(&rest, &first, &length))
        return NULL;
    return bk_next_piece(rail_of(form), bk_arena_bytes(arena, first, length), arena);
}

static const char *key_from(const bk_form *form, bk_existing_kind kind, const char *of, bk_arena *arena)
{
    size_t count = 0;
    const char **taken = names_of(form, kind, of, arena, &count);
    return bk_next_key(bk_form_text(form, "title"), taken, count, arena);
}

const char *bk_suggest_key(const bk_form *form, bk_arena *arena)
{
    return key_from(form, BK_EXISTING_STEPS, bk_form_text(form, "piece"), arena);
}

const char *bk_suggest_work_key(const bk_form *form, bk_arena *arena)
{
    return key_from(form, BK_EXISTING_WORK_STEPS, bk_form_text(form, "work"), arena);
}

const char *bk_suggest_fit_step(const bk_form *form, bk_arena *arena)
{
    size_t count = 0;
    const char **steps = names_of(form, BK_EXISTING_FIT_STEPS, bk_form_text(form, "piece"), arena, &count);
    return count == 1 ? steps[0] : NULL;
}

// ------------------------------------------------------------------------------------------------------ others

const char *bk_suggest_minutes(const bk_form *form, bk_arena *arena)
{
    const bk_rail *rail = rail_of(form);
    int kind = bk_word_find(&bk_kind_words, bk_form_text(form, "kind"));
    int64_t minutes = rail && kind != BK_NO_WORD ? bk_usual_minutes(rail, kind) : BK_NOT_KNOWN;
    return minutes == BK_NOT_KNOWN ? NULL : bk_arena_print(arena, "%lld", (long long)minutes);
}

const char *bk_suggest_same_day(const bk_form *form, bk_arena *arena)
{
    bk_day day = BK_NO_DAY;
    const char *from = bk_form_text(form, "from");
    return bk_day_read(from, &day) ? bk_arena_text(arena, from) : NULL;
}

// The material in the field `material`, or NULL.
static const bk_material *material_of(const bk_form *form, bk_arena *arena)
{
    bk_error error;
    bk_rows rows = {0};
    if (bk_store_read(bk_form_wall(form)->store, BK_MATERIALS, 0, arena, &rows, &error))
        return NULL;
    const bk_material *material = rows.items;
    for (size_t i = 0; i < rows.count; i++, material++)
        if (bk_same_text(material->name, bk_form_text(form, "material")))
            return material;
    return NULL;
}

const char *bk_suggest_supplier(const bk_form *form, bk_arena *arena)
{
    const bk_material *material = material_of(form, arena);
    return material ? material->supplier : NULL;
}

// --------------------------------------------------------------------------------------------- what it is counted in

const char *bk_form_unit_words(int unit)
{
    if (unit == BK_NO_WORD)
        return NULL;
    return unit == BK_EACH ? "pieces" : bk_word_text(&bk_material_unit_words, unit);
}

const char *bk_unit_of_material(const bk_form *form, bk_arena *arena)
{
    const bk_material *material = material_of(form, arena);
    return material ? bk_form_unit_words(material->unit) : NULL;
}

const char *bk_unit_in_form(const bk_form *form, bk_arena *arena)
{
    (void)arena;
    return bk_form_unit_words(bk_word_find(&bk_material_unit_words, bk_form_text(form, "unit")));
}
