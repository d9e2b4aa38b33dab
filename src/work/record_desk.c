#include "bodkin/work/record_desk.h"

#include <string.h>

#include "bodkin/base/text.h"

bk_desk bk_desk_lay(const bk_job *job, bk_error *error)
{
    return (bk_desk){.job = job, .error = error, .scratch = bk_arena_new(), .production = job->production};
}

void bk_desk_clear(bk_desk *desk)
{
    bk_arena_free(desk->scratch);
    desk->scratch = NULL;
}

bk_status bk_desk_rows(bk_desk *desk, bk_family family, bk_rows *rows)
{
    bk_status status = BK_OK;
    if (!desk->read[family]) {
        status = bk_store_read(desk->job->store, family, desk->production, desk->scratch, &desk->rows[family],
                               desk->error);
        desk->read[family] = status == BK_OK;
    }
    *rows = status ? (bk_rows){NULL, 0} : desk->rows[family];
    return status;
}

void bk_desk_forget(bk_desk *desk, bk_family family)
{
    desk->read[family] = false;
}

bk_status bk_desk_get(bk_desk *desk, bk_family family, int64_t id, void *record, bool *found)
{
    return bk_store_get(desk->job->store, family, id, desk->job->arena, record, found, desk->error);
}

bk_status bk_desk_refuse(bk_desk *desk, const char *column, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    bk_status status = bk_fail_list(desk->error, BK_REFUSED, format, arguments);
    va_end(arguments);
    desk->column = column;
    return status;
}

const char *bk_desk_safe(const bk_desk *desk, const char *text)
{
    return bk_text_safe(desk->scratch, text, false);
}

// ----------------------------------------------------------------------------------------------------
// names

enum { NO_PLACE = -1 };

/// Families whose records have a name, and what is said where a name is not
/// among them.
static const struct named_family {
    bk_family family;
    size_t size, name;
    long within; ///< offset of the id within which the name tells them apart, or
                 ///< NO_PLACE
    const char *column, *noun, *advice;
} named_families[] = {
    {BK_PRODUCTIONS, sizeof(bk_production), offsetof(bk_production, name), NO_PLACE, "production",
     "production", "Add productions under Productions (P)."},
    {BK_PEOPLE, sizeof(bk_person), offsetof(bk_person, name), NO_PLACE, "person", "person",
     "Add people under Hands (H)."},
    {BK_PERFORMERS, sizeof(bk_performer), offsetof(bk_performer, name), NO_PLACE, "performer", "performer",
     "Add performers under Cast (C)."},
    {BK_ROLES, sizeof(bk_role), offsetof(bk_role, name), NO_PLACE, "role", "role",
     "Add roles under Cast (C)."},
    {BK_COSTUMES, sizeof(bk_costume), offsetof(bk_costume, number), NO_PLACE, "costume", "costume",
     "Add costumes on the Rail (R)."},
    {BK_PIECES, sizeof(bk_piece), offsetof(bk_piece, name), NO_PLACE, "piece", "piece",
     "Add pieces to their costume."},
    {BK_STEPS, sizeof(bk_step), offsetof(bk_step, key), offsetof(bk_step, piece_id), "step",
     "step of that piece", "Add steps to their piece."},
    {BK_MATERIALS, sizeof(bk_material), offsetof(bk_material, name), NO_PLACE, "material", "material",
     "Add materials under Materials (M)."},
    {BK_WORKS, sizeof(bk_work), offsetof(bk_work, name), NO_PLACE, "work", "order of work",
     "Add orders of work under Orders of work (O)."},
    {BK_WORK_STEPS, sizeof(bk_work_step), offsetof(bk_work_step, key), offsetof(bk_work_step, work_id),
     "step", "step of that order of work", "Add steps to it first."},
    {BK_EQUIPMENT, sizeof(bk_equipment), offsetof(bk_equipment, name), NO_PLACE, "equipment",
     "piece of equipment", "Add equipment under Hands (H)."},
};

static const struct named_family *named_family(bk_family family)
{
    for (size_t i = 0; i < sizeof named_families / sizeof *named_families; i++) {
        if (named_families[i].family == family) {
            return &named_families[i];
        }
    }
    return NULL;
}

static const char *name_in(const struct named_family *named, const void *record)
{
    const char *name;
    memcpy(&name, (const char *)record + named->name, sizeof name);
    return name;
}

static bool is_within(const struct named_family *named, const void *record, int64_t within)
{
    int64_t id = within;
    if (named->within != NO_PLACE) {
        memcpy(&id, (const char *)record + named->within, sizeof id);
    }
    return id == within;
}

const char *bk_desk_name_of(bk_family family, const void *record)
{
    const struct named_family *named = named_family(family);
    return named ? name_in(named, record) : NULL;
}

bk_status bk_desk_find(bk_desk *desk, bk_family family, int64_t within, const char *name, int64_t *id)
{
    bk_rows rows;
    const struct named_family *named = named_family(family);
    bk_status status = bk_desk_rows(desk, family, &rows);
    *id = 0;
    for (size_t i = 0; i < rows.count && !*id; i++) {
        const char *row = (const char *)rows.items + i * named->size;
        if (is_within(named, row, within) && bk_same_text(name_in(named, row), name)) {
            memcpy(id, row, sizeof *id);
        }
    }
    return status;
}

bk_status bk_desk_refuse_name(bk_desk *desk, const char *column, bk_family family, int64_t within,
                              const char *name)
{
    bk_rows rows;
    const struct named_family *named = named_family(family);
    bk_status status = bk_desk_rows(desk, family, &rows);
    if (status) {
        return status;
    }
    const char **names = bk_arena_clear(desk->scratch, rows.count, sizeof *names);
    size_t count = 0;
    for (size_t i = 0; i < rows.count; i++) {
        const char *row = (const char *)rows.items + i * named->size;
        if (is_within(named, row, within)) {
            names[count++] = name_in(named, row);
        }
    }
    const char *near = bk_nearest(name, names, count);
    return bk_desk_refuse(desk, column, "No %s is called \"%s\"%s%s%s %s", named->noun,
                          bk_desk_safe(desk, name), near ? ": did you mean " : ".",
                          near ? bk_desk_safe(desk, near) : "", near ? "?" : "", named->advice);
}

bk_status bk_desk_check_name(bk_desk *desk, bk_family family, const void *now, const void *record)
{
    bk_rows rows;
    int64_t within = 0;
    int64_t was_within = 0;
    const struct named_family *named = named_family(family);
    if (!named) {
        return BK_OK;
    }
    if (named->within != NO_PLACE) {
        memcpy(&within, (const char *)record + named->within, sizeof within);
        memcpy(&was_within, (const char *)(now ? now : record) + named->within, sizeof was_within);
    }
    const char *name = name_in(named, record);
    if (now && bk_same_text(name, name_in(named, now)) && within == was_within) {
        return BK_OK;
    }
    bk_status status = bk_desk_rows(desk, family, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        const char *row = (const char *)rows.items + i * named->size;
        if (memcmp(row, record, sizeof(int64_t)) != 0 && is_within(named, row, within) &&
            bk_same_text(name_in(named, row), name)) {
            status = bk_desk_refuse(desk, named->column, "There is %s %s called \"%s\" already.",
                                    strchr("aeiou", named->noun[0]) ? "an" : "a", named->noun,
                                    bk_desk_safe(desk, name));
        }
    }
    return status;
}

bk_status bk_desk_step_name(bk_desk *desk, int64_t step, const char **name)
{
    bk_step row;
    bk_piece piece;
    bool found = false;
    *name = NULL;
    bk_status status = bk_desk_get(desk, BK_STEPS, step, &row, &found);
    if (!status && found) {
        status = bk_desk_get(desk, BK_PIECES, row.piece_id, &piece, &found);
    }
    if (!status && found) {
        *name = bk_arena_print(desk->job->arena, "%s/%s", piece.name, row.key);
    }
    return status;
}
