#ifndef BODKIN_SHEET_JSON_H
#define BODKIN_SHEET_JSON_H

#include <stdbool.h>
#include <stdint.h>

#include "bodkin/base/text.h"

/// Writing JSON (RFC 8259), indented by two spaces a level. It is only ever written here, never read.

enum { BK_JSON_DEEPEST = 16 };

typedef struct bk_json {
    bk_buffer *out; ///< stays the caller's
    int depth;
    bool filled[BK_JSON_DEEPEST]; ///< whether that level has a member already
} bk_json;

/// `key` is NULL within an array and for the outermost value.
void bk_json_object(bk_json *json, const char *key);
void bk_json_object_end(bk_json *json);
void bk_json_array(bk_json *json, const char *key);
void bk_json_array_end(bk_json *json);
/// NULL text is written as null. Text must be UTF-8.
void bk_json_text(bk_json *json, const char *key, const char *text);
void bk_json_whole(bk_json *json, const char *key, int64_t number);
/// A number already written in digits, such as a quantity.
void bk_json_digits(bk_json *json, const char *key, const char *digits);
void bk_json_truth(bk_json *json, const char *key, bool truth);
void bk_json_null(bk_json *json, const char *key);

#endif
