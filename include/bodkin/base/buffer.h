#ifndef BODKIN_BASE_BUFFER_H
#define BODKIN_BASE_BUFFER_H

#include <stddef.h>

#include "bodkin/base/error.h"

/// A growing string; `bytes` is NUL-terminated once anything was added, owned by the buffer, freed by
/// bk_buffer_free.
typedef struct bk_buffer {
    char *bytes;
    size_t length;
    size_t room;
} bk_buffer;

/// Appends `length` bytes; length 0 makes an empty buffer a string all the same.
void bk_buffer_add(bk_buffer *buffer, const char *bytes, size_t length);
void bk_buffer_text(bk_buffer *buffer, const char *text);
void bk_buffer_char(bk_buffer *buffer, char c);
void bk_buffer_print(bk_buffer *buffer, const char *format, ...) BK_PRINTF(2, 3);
/// Frees the memory and leaves an empty buffer that can be used again.
void bk_buffer_free(bk_buffer *buffer);

#endif
