#ifndef BODKIN_BASE_UTF8_H
#define BODKIN_BASE_UTF8_H

#include <stddef.h>
#include <stdint.h>

enum { BK_UTF8_MOST = 4, BK_UTF8_FAULT = 0xFFFD };

/// Reads one code point from the `length` bytes at `bytes` into `*code`. Returns how many bytes it takes; 0
/// where they do not begin with a well-formed one (RFC 3629).
size_t bk_utf8_read(const char *bytes, size_t length, int32_t *code);

/// The same in a NUL-terminated text that is not at its end; a byte that is not well-formed is one step of
/// BK_UTF8_FAULT (U+FFFD). Returns the bytes to step on, at least 1.
size_t bk_utf8_next(const char *text, int32_t *code);

/// Writes a code point (0 to U+10FFFF, no surrogate) as UTF-8, without a NUL; returns how many bytes.
size_t bk_utf8_write(int32_t code, char out[BK_UTF8_MOST]);

/// Where the first byte stands that is not well-formed UTF-8 (RFC 3629: no surrogates, no overlong forms,
/// nothing above U+10FFFF); `length` when all is well.
size_t bk_text_fault(const char *bytes, size_t length);

#endif
