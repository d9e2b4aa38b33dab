#include "bodkin/base/error.h"

#include <stdio.h>
#include <string.h>

enum { ASCII_END = 0x80, LEAD_BYTE = 0xC0 };

/// Cuts a character off the end that the cut has split. `text` holds at least one byte.
static void drop_split_character(char *text)
{
    size_t start = strlen(text);
    do {
        start--;
    } while (start > 0 && (unsigned char)text[start] >= ASCII_END && (unsigned char)text[start] < LEAD_BYTE);
    unsigned char lead = (unsigned char)text[start];
    size_t wanted = lead < LEAD_BYTE ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    if (strlen(text + start) < wanted)
        text[start] = '\0';
}

bk_status bk_fail_list(bk_error *error, bk_status status, const char *format, va_list arguments)
{
    if (error == NULL)
        return status;
    char text[BK_ERROR_ROOM]; // the arguments may lie in error->text itself
    int length = vsnprintf(text, sizeof text, format, arguments);
    if (length < 0)
        text[0] = '\0';
    else if ((size_t)length >= sizeof text)
        drop_split_character(text);
    error->status = status;
    memcpy(error->text, text, sizeof text);
    return status;
}

bk_status bk_fail(bk_error *error, bk_status status, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    bk_fail_list(error, status, format, arguments);
    va_end(arguments);
    return status;
}
