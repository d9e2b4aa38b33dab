#ifndef BODKIN_WORK_EXPORT_H
#define BODKIN_WORK_EXPORT_H

#include "bodkin/store/store.h"
#include "bodkin/work/folder.h"

/// Gathers one production, its company, and the workroom's people, materials and orders into a folder of sheets, as the
/// maker sees them. `*folder` is the caller's (bk_folder_free).
bk_status bk_export_folder(bk_store *store, int64_t production, bk_folder **folder, bk_error *error)
    BK_MUST_USE;

#endif
