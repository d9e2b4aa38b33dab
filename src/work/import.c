#include "bodkin/work/import.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/rail_rows.h"
#include "bodkin/work/import_parts.h"
#include "bodkin/work/record_words.h"

// ------------------------------------------------------------------------------------- for all of the import

enum { TELL_EVERY = 1024 };

static bk_status tell(bk_importing *importing, const char *sheet, int64_t done)
{
    if (bk_progress_tell(importing->options->progress, sheet, done, importing->rows)) {
        return BK_OK;
    }
    return bk_fail(importing->error, BK_REFUSED, "The import was stopped; nothing was changed.");
}

bk_status bk_import_told(bk_importing *importing, const char *sheet, size_t rows)
{
    importing->rows_done += (int64_t)rows;
    return tell(importing, sheet, importing->rows_done);
}

bk_status bk_import_row(bk_importing *importing, const char *sheet, size_t row)
{
    int64_t done = importing->rows_done + (int64_t)row + 1;
    return done % TELL_EVERY ? BK_OK : tell(importing, sheet, done);
}

int64_t bk_import_id(const bk_index *names, const char *name)
{
    const long long *id = name ? bk_index_find(names, name) : NULL;
    return id ? *id : 0;
}

bk_status bk_import_add(bk_importing *importing, bk_family family, const void *record, size_t position,
                        int64_t *id)
{
    return bk_store_add(importing->store, family, record, (int64_t)position, id, importing->error);
}

const bk_private *bk_import_private_of(const bk_id_index *at, const bk_rows *rows, int64_t id)
{
    const long long *found = bk_id_index_find(at, id);
    return found ? (const bk_private *)rows->items + *found : NULL;
}

static bool same_private(const bk_private *left, const bk_private *right)
{
    return bk_same_text(left->text, right->text) && left->amount == right->amount &&
           bk_same_text(left->currency, right->currency);
}

bk_status bk_import_private(bk_importing *importing, bk_family family, const bk_private *row,
                            const bk_private *known, const char *what, const char *column)
{
    bool filled = row->text || row->amount != BK_NO_AMOUNT;
    if (!filled || (known && same_private(row, known))) {
        return BK_OK;
    }
    if (known) {
        char was[BK_AMOUNT_ROOM] = "";
        char is[BK_AMOUNT_ROOM] = "";
        bool secret = row->text != NULL;
        if (!secret) {
            bk_money_write(known->amount, known->currency, importing->currency, was);
            bk_money_write(row->amount, row->currency, importing->currency, is);
        }
        bk_merge_note(&importing->notes, what, column, was, is, secret);
    }
    return bk_store_put(importing->store, family, row, importing->error);
}

// ---------------------------------------------------------------------------------------------------- known

static bk_status read_names(bk_store *store, bk_family family, size_t size, size_t name_offset,
                            bk_arena *arena, bk_index *names, bk_error *error)
{
    bk_rows rows = {0};
    bk_status status = bk_store_read(store, family, 0, arena, &rows, error);
    for (size_t i = 0; !status && i < rows.count; i++) {
        const char *name;
        memcpy(&name, (const char *)rows.items + i * size + name_offset, sizeof name);
        bk_index_put(names, name, (long long)i);
    }
    return status;
}

bk_status bk_import_known(bk_store *store, bk_known **known, bk_error *error)
{
    bk_known *built = bk_known_new();
    bk_status status = read_names(store, BK_PERFORMERS, sizeof(bk_performer), offsetof(bk_performer, name),
                                  built->arena, built->performers, error);
    if (!status) {
        status = read_names(store, BK_PEOPLE, sizeof(bk_person), offsetof(bk_person, name), built->arena,
                            built->people, error);
    }
    if (!status) {
        status = read_names(store, BK_MATERIALS, sizeof(bk_material), offsetof(bk_material, name),
                            built->arena, built->materials, error);
    }
    if (!status) {
        status = read_names(store, BK_WORKS, sizeof(bk_work), offsetof(bk_work, name), built->arena,
                            built->works, error);
    }
    if (status) {
        bk_known_free(built);
        built = NULL;
    }
    *known = built;
    return status;
}

// --------------------------------------------------------------------------------------------------- import

/// Counts what the former production has of what the folder has nothing of.
static bk_status count_gone(bk_importing *importing, int64_t old, const char **gone)
{
    const bk_folder *folder = importing->folder;
    const struct {
        bk_family family;
        size_t brought;
        bk_counted counted;
    } parts[] = {
        {BK_DATES, folder->dates.count, {0, "date", "dates"}},
        {BK_ROLES, folder->roles.count, {0, "role", "roles"}},
        {BK_COSTUMES, folder->costumes.count, {0, "costume", "costumes"}},
        {BK_PIECES, folder->pieces.count, {0, "piece", "pieces"}},
        {BK_STEPS, folder->steps.count, {0, "step", "steps"}},
        {BK_NEEDS, folder->needs.count, {0, "need", "needs"}},
        {BK_FITTINGS, folder->fittings.count, {0, "fitting", "fittings"}},
        {BK_NOTES, folder->notes.count, {0, "note", "notes"}},
    };
    enum { PARTS = sizeof parts / sizeof *parts };
    bk_counted counts[PARTS];
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < PARTS; i++) {
        bk_rows rows = {0};
        if (!parts[i].brought) {
            status = bk_store_read(importing->store, parts[i].family, old, importing->arena, &rows,
                                   importing->error);
        }
        counts[i] = parts[i].counted;
        counts[i].count = rows.count;
    }
    *gone = status ? NULL : bk_counted_words(importing->arena, counts, PARTS);
    return status;
}

/// Makes room for the production: one of its name is there only to be replaced. `*gone` as in the report.
static bk_status make_room(bk_importing *importing, const bk_production *row, bool *replaced,
                           const char **gone)
{
    int64_t old = 0;
    bk_status status = bk_store_find_production(importing->store, row->name, &old, importing->error);
    *replaced = old != 0;
    if (status || !old) {
        return status;
    }
    if (!importing->options->replace) {
        return bk_fail(
            importing->error, BK_REFUSED,
            "There is already a production \"%s\" in this workroom; to put this one in its place, import "
            "with --replace.",
            bk_text_safe(importing->arena, row->name, false));
    }
    status = count_gone(importing, old, gone);
    return status ? status : bk_store_remove_production(importing->store, old, importing->error);
}

static const char *sentence_of(const bk_importing *importing, bool replaced)
{
    const bk_folder *folder = importing->folder;
    return bk_arena_print(
        importing->arena, "%s \"%s\": %zu costume%s, %zu piece%s, %zu step%s",
        replaced ? "Imported in place of the former" : "Imported", folder->production.items[0].name,
        folder->costumes.count, folder->costumes.count == 1 ? "" : "s", folder->pieces.count,
        folder->pieces.count == 1 ? "" : "s", folder->steps.count, folder->steps.count == 1 ? "" : "s");
}

/// The steps twice: once for themselves, once for what they come after.
static int64_t rows_of(const bk_folder *folder)
{
    return (int64_t)(folder->dates.count + folder->people.count + folder->away.count +
                     folder->equipment.count + folder->performers.count + folder->measures.count +
                     folder->roles.count + folder->costumes.count + folder->pieces.count +
                     2 * folder->steps.count + folder->materials.count + folder->needs.count +
                     folder->orders.count + folder->fittings.count + folder->works.count +
                     folder->work_steps.count + folder->notes.count);
}

static bk_status run(bk_importing *importing, bool *replaced, const char **gone)
{
    bk_production production = importing->folder->production.items[0];
    bk_status status = make_room(importing, &production, replaced, gone);
    if (!status) {
        production.id = 0;
        production.put_away_on = BK_NO_DAY;
        status = bk_import_add(importing, BK_PRODUCTIONS, &production, 0, &importing->production);
    }
    static bk_status (*const parts[])(bk_importing *) = {
        bk_import_people,    bk_import_equipment, bk_import_measures,
        bk_import_materials, bk_import_works,     bk_import_show,
    };
    for (size_t i = 0; !status && i < sizeof parts / sizeof *parts; i++) {
        status = parts[i](importing);
    }
    return status;
}

static void importing_free(bk_importing *importing)
{
    bk_index *const tables[] = {importing->performers, importing->people,   importing->materials,
                                importing->roles,      importing->costumes, importing->pieces,
                                importing->steps};
    for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
        bk_index_free(tables[i]);
    }
    bk_id_index_free(importing->counted);
    bk_id_index_free(importing->shelf);
    bk_list_free(&importing->notes.items);
}

static const char **keep_notes(bk_importing *importing)
{
    size_t count = importing->notes.items.count;
    const char **kept = bk_arena_clear(importing->arena, count, sizeof *kept);
    if (count) {
        memcpy(kept, importing->notes.items.items, count * sizeof *kept);
    }
    return kept;
}

bk_status bk_import_folder(bk_store *store, const bk_folder *folder, const bk_import_options *options,
                           bk_arena *arena, bk_import_report *report, bk_error *error)
{
    int unit = folder->production.items[0].unit;
    bk_importing importing = {
        .store = store,
        .folder = folder,
        .options = options,
        .arena = arena,
        .error = error,
        .notes = {.arena = arena, .unit = unit == BK_INCH ? BK_INCH : BK_CM},
        .currency = folder->production.items[0].currency,
        .rows = rows_of(folder),
        .performers = bk_index_new(),
        .people = bk_index_new(),
        .materials = bk_index_new(),
        .roles = bk_index_new(),
        .costumes = bk_index_new(),
        .pieces = bk_index_new(),
        .steps = bk_index_new(),
        .counted = bk_id_index_new(),
        .shelf = bk_id_index_new(),
    };
    bool replaced = false;
    const char *gone = NULL;
    bk_status status = run(&importing, &replaced, &gone);
    if (!status) {
        report->sentence = sentence_of(&importing, replaced);
        report->replaced = keep_notes(&importing);
        report->replaced_count = importing.notes.items.count;
        report->gone = gone;
    }
    importing_free(&importing);
    return status;
}
