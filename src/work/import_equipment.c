#include <stddef.h>

#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/work/import_parts.h"

// What the workroom shares, known by name; what is new comes behind what stands there.

static const bk_merge_field equipment_fields[] = {
    {"kinds", BK_MERGE_TEXT, offsetof(bk_equipment, kinds), false},
    {"count", BK_MERGE_NUMBER, offsetof(bk_equipment, count), false},
};

static bk_status one_equipment(bk_importing *importing, const bk_equipment *row, bk_equipment *known,
                               int64_t *last)
{
    if (!known) {
        return bk_import_add(importing, BK_EQUIPMENT, row, (size_t)(*last)++, NULL);
    }
    size_t count = sizeof equipment_fields / sizeof *equipment_fields;
    const char *what = bk_arena_print(importing->arena, "equipment.csv: %s", row->name);
    if (bk_merge(equipment_fields, count, row, known, what, &importing->notes)) {
        return bk_store_put(importing->store, BK_EQUIPMENT, known, importing->error);
    }
    return BK_OK;
}

bk_status bk_import_equipment(bk_importing *importing)
{
    bk_rows known = {0};
    int64_t last = 0;
    bk_status status =
        bk_store_read(importing->store, BK_EQUIPMENT, 0, importing->arena, &known, importing->error);
    if (!status) {
        status = bk_store_last_place(importing->store, BK_EQUIPMENT, 0, &last, importing->error);
    }
    bk_equipment *equipment = known.items;
    bk_index *at = bk_index_new();
    for (size_t i = 0; i < known.count; i++) {
        bk_index_put(at, equipment[i].name, (long long)i);
    }
    size_t count = importing->folder->equipment.count;
    for (size_t i = 0; !status && i < count; i++) {
        const bk_equipment *row = &importing->folder->equipment.items[i];
        const long long *found = bk_index_find(at, row->name);
        status = one_equipment(importing, row, found ? &equipment[*found] : NULL, &last);
        if (!status) {
            status = bk_import_row(importing, "equipment.csv", i);
        }
    }
    bk_index_free(at);
    return status ? status : bk_import_told(importing, "equipment.csv", count);
}
