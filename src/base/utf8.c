#include "bodkin/base/utf8.h"

#include <string.h>

enum { ASCII_END = 0x80, TRAIL_FIRST = 0x80, TRAIL_LAST = 0xBF, TRAIL_BITS = 6, TRAIL_MASK = 0x3F };

/// The well-formed sequences of more than one byte, by their first byte (RFC 3629, section 4).
static const struct sequence {
    unsigned char first, last; ///< range of the lead byte
    unsigned char low, high;   ///< range of the second byte
    unsigned char length;
    unsigned char mask; ///< bits of the lead byte that belong to the code point
} sequences[] = {
    {0xC2, 0xDF, 0x80, 0xBF, 2, 0x1F}, {0xE0, 0xE0, 0xA0, 0xBF, 3, 0x0F}, {0xE1, 0xEC, 0x80, 0xBF, 3, 0x0F},
    {0xED, 0xED, 0x80, 0x9F, 3, 0x0F}, {0xEE, 0xEF, 0x80, 0xBF, 3, 0x0F}, {0xF0, 0xF0, 0x90, 0xBF, 4, 0x07},
    {0xF1, 0xF3, 0x80, 0xBF, 4, 0x07}, {0xF4, 0xF4, 0x80, 0x8F, 4, 0x07},
};

static const struct sequence *sequence_of(unsigned char lead)
{
    for (size_t i = 0; i < sizeof sequences / sizeof *sequences; i++)
        if (lead <= sequences[i].last)
            return lead >= sequences[i].first ? &sequences[i] : NULL;
    return NULL;
}

size_t bk_utf8_read(const char *bytes, size_t length, int32_t *code)
{
    const unsigned char *byte = (const unsigned char *)bytes;
    if (length == 0)
        return 0;
    if (byte[0] < ASCII_END) {
        *code = byte[0];
        return 1;
    }
    const struct sequence *sequence = sequence_of(byte[0]);
    if (sequence == NULL || length < 2 || byte[1] < sequence->low || byte[1] > sequence->high)
        return 0;
    int32_t value = (byte[0] & sequence->mask) << TRAIL_BITS | (byte[1] & TRAIL_MASK);
    for (size_t i = 2; i < sequence->length; i++) {
        if (i >= length || byte[i] < TRAIL_FIRST || byte[i] > TRAIL_LAST)
            return 0;
        value = value << TRAIL_BITS | (byte[i] & TRAIL_MASK);
    }
    *code = value;
    return sequence->length;
}

size_t bk_utf8_next(const char *text, int32_t *code)
{
    // A NUL is no trail byte, so a sequence that is cut off at the end is never read past it.
    size_t length = bk_utf8_read(text, BK_UTF8_MOST, code);
    if (length > 0)
        return length;
    *code = BK_UTF8_FAULT;
    return 1;
}

size_t bk_utf8_write(int32_t code, char out[BK_UTF8_MOST])
{
    static const struct {
        int32_t end;
        int lead;
        size_t trail;
    } forms[] = {{0x80, 0x00, 0}, {0x800, 0xC0, 1}, {0x10000, 0xE0, 2}, {0x110000, 0xF0, 3}};
    size_t form = 0;
    while (code >= forms[form].end && form + 1 < sizeof forms / sizeof *forms)
        form++;
    for (size_t i = forms[form].trail; i > 0; i--) {
        out[i] = (char)(TRAIL_FIRST | (code & TRAIL_MASK));
        code >>= TRAIL_BITS;
    }
    out[0] = (char)(forms[form].lead | code);
    return forms[form].trail + 1;
}

/// How many of the bytes are plain ASCII before another comes; looked at eight at a time.
static size_t ascii_run(const char *bytes, size_t length)
{
    const uint64_t high_bits = UINT64_C(0x8080808080808080);
    size_t at = 0;
    for (uint64_t eight = 0; at + sizeof eight <= length; at += sizeof eight) {
        memcpy(&eight, bytes + at, sizeof eight);
        if ((eight & high_bits) != 0)
            break;
    }
    while (at < length && (unsigned char)bytes[at] < ASCII_END)
        at++;
    return at;
}

size_t bk_text_fault(const char *bytes, size_t length)
{
    size_t at = 0;
    while (at < length) {
        at += ascii_run(bytes + at, length - at);
        if (at == length)
            break;
        int32_t code = 0;
        size_t step = bk_utf8_read(bytes + at, length - at, &code);
        if (step == 0)
            return at;
        at += step;
    }
    return length;
}
