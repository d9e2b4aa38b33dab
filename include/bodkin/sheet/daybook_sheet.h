#ifndef BODKIN_SHEET_DAYBOOK_SHEET_H
#define BODKIN_SHEET_DAYBOOK_SHEET_H

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"

/// Entries of the daybook outside the screens.

/// For people: a line each, in the order given, with day, time, who and what, and whether it was undone or
/// redone since; texts made safe, plain ASCII when asked. Appended to `out`.
void bk_daybook_text(const bk_entry *entries, size_t count, bool ascii, bk_buffer *out);

/// One JSON list, each entry an object: `entry`, `made_at`, `made_by`, `sentence`, `undone`, `undoes` (the
/// entry that it undoes or redoes, or null), `ended` (it can no longer be undone). Appended.
void bk_daybook_json(const bk_entry *entries, size_t count, bk_buffer *out);

#endif
