#ifndef BODKIN_WORK_IMPORT_PARTS_H
#define BODKIN_WORK_IMPORT_PARTS_H

#include "bodkin/base/list.h"
#include "bodkin/work/import.h"
#include "bodkin/work/merge.h"

/// An import under way, shared by the files of the import only.

typedef struct bk_importing {
    bk_store *store;
    const bk_folder *folder;
    const bk_import_options *options;
    bk_arena *arena;
    bk_error *error;
    bk_merge_notes notes;
    const char *currency; ///< of the production
    int64_t production;
    int64_t rows_done, rows;
    bk_index *performers, *people, *materials, *roles, *costumes, *pieces, *steps; ///< name to id
    bk_id_index *counted; ///< materials whose on_hand the folder gives
    bk_id_index *shelf;   ///< material to what lies on the shelf by now, in millionths of its unit
} bk_importing;

/// Merges performers, people and absences into the workroom.
bk_status bk_import_people(bk_importing *importing) BK_MUST_USE;
/// Merges what the workroom shares.
bk_status bk_import_equipment(bk_importing *importing) BK_MUST_USE;
/// Merges measure sheets.
bk_status bk_import_measures(bk_importing *importing) BK_MUST_USE;
/// Merges materials with what lies on the shelf, and orders.
bk_status bk_import_materials(bk_importing *importing) BK_MUST_USE;
/// Merges orders of work with their steps.
bk_status bk_import_works(bk_importing *importing) BK_MUST_USE;
/// Adds the company, roles, costumes, pieces, steps, needs, fittings, notes and dates of the production.
bk_status bk_import_show(bk_importing *importing) BK_MUST_USE;

/// Counts `rows` more as done under the name of `sheet` and tells it; BK_REFUSED when the person stopped it.
bk_status bk_import_told(bk_importing *importing, const char *sheet, size_t rows) BK_MUST_USE;

/// Tells now and then how far it is while the rows of `sheet` are taken in: call it behind each, the first is `row` 0.
/// They are counted by bk_import_told at their end. BK_REFUSED when the person stopped it.
bk_status bk_import_row(bk_importing *importing, const char *sheet, size_t row) BK_MUST_USE;

/// The row of that id, by bk_id_index_of of the rows, or NULL.
const bk_private *bk_import_private_of(const bk_id_index *at, const bk_rows *rows, int64_t id);

/// The id behind a name, or 0 for NULL.
int64_t bk_import_id(const bk_index *names, const char *name);

/// Adds a record; its id goes to `*id` unless NULL.
bk_status bk_import_add(bk_importing *importing, bk_family family, const void *record, size_t position,
                        int64_t *id) BK_MUST_USE;

/// Puts an amount or a contact beside a record, unless it is unknown, noting a change of one that was known.
bk_status bk_import_private(bk_importing *importing, bk_family family, const bk_private *row,
                            const bk_private *known, const char *what, const char *column) BK_MUST_USE;

#endif
