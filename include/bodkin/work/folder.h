#ifndef BODKIN_WORK_FOLDER_H
#define BODKIN_WORK_FOLDER_H

#include "bodkin/base/arena.h"
#include "bodkin/base/list.h"
#include "bodkin/store/records.h"
#include "bodkin/store/records_bench.h"

/// A production as a folder of sheets, in memory: what the reader of sheets fills and `import` takes in, and what
/// `export` fills and the writer of sheets writes. Rows are in the order of the file, refer to each other by name, and
/// live with their texts in `arena`. An array is NULL where the file is missing.

#define BK_ROWS_OF(T) \
    struct { \
        T *items; \
        size_t count; \
    }

typedef struct bk_folder {
    bk_arena *arena;                      ///< owned by the folder
    BK_ROWS_OF(bk_production) production; ///< one row
    BK_ROWS_OF(bk_date) dates;
    BK_ROWS_OF(bk_person) people;
    BK_ROWS_OF(bk_away) away;
    BK_ROWS_OF(bk_equipment) equipment;
    BK_ROWS_OF(bk_performer) performers;
    BK_ROWS_OF(bk_measure) measures;
    BK_ROWS_OF(bk_role) roles;
    BK_ROWS_OF(bk_costume) costumes;
    BK_ROWS_OF(bk_piece) pieces;
    BK_ROWS_OF(bk_step) steps;
    BK_ROWS_OF(bk_material) materials;
    BK_ROWS_OF(bk_need) needs;
    BK_ROWS_OF(bk_order) orders;
    BK_ROWS_OF(bk_fitting) fittings;
    BK_ROWS_OF(bk_work) works;
    BK_ROWS_OF(bk_work_step) work_steps;
    BK_ROWS_OF(bk_note) notes;
} bk_folder;

/// An empty folder with its arena; freed by bk_folder_free (NULL allowed).
bk_folder *bk_folder_new(void);
void bk_folder_free(bk_folder *folder);

/// Names that the workroom knows already, against which a folder's references are checked. Keys live in `arena`.
typedef struct bk_known {
    bk_arena *arena;
    bk_index *performers;
    bk_index *people;
    bk_index *materials;
    bk_index *works;
} bk_known;

bk_known *bk_known_new(void);
void bk_known_free(bk_known *known);

#endif
