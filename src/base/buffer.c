#include "bodkin/base/buffer.h"

#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"

enum { FIRST_ROOM = 64 };

/// Makes room for `length` bytes more and a NUL.
static void reserve(bk_buffer *buffer, size_t length)
{
    size_t wanted = 0;
    if (__builtin_add_overflow(buffer->length, length, &wanted) || wanted > SIZE_MAX / 4)
        wanted = SIZE_MAX / 4; // more than can be had: ends in bk_on_exhausted
    if (wanted < buffer->room)
        return;
    size_t room = buffer->room == 0 ? FIRST_ROOM : buffer->room;
    while (room <= wanted)
        room *= 2;
    buffer->bytes = bk_realloc(buffer->bytes, room);
    buffer->room = room;
}

void bk_buffer_add(bk_buffer *buffer, const char *bytes, size_t length)
{
    reserve(buffer, length);
    if (length > 0)
        memcpy(buffer->bytes + buffer->length, bytes, length);
    buffer->length += length;
    buffer->bytes[buffer->length] = '\0';
}

void bk_buffer_text(bk_buffer *buffer, const char *text)
{
    bk_buffer_add(buffer, text, strlen(text));
}

void bk_buffer_char(bk_buffer *buffer, char c)
{
    bk_buffer_add(buffer, &c, 1);
}

void bk_buffer_print(bk_buffer *buffer, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(NULL, 0, format, arguments);
    va_end(arguments);
    if (length < 0)
        return;
    reserve(buffer, (size_t)length);
    va_start(arguments, format);
    vsnprintf(buffer->bytes + buffer->length, (size_t)length + 1, format, arguments);
    va_end(arguments);
    buffer->length += (size_t)length;
}

void bk_buffer_free(bk_buffer *buffer)
{
    free(buffer->bytes);
    *buffer = (bk_buffer){0};
}
