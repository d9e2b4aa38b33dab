// Lengths: whatever is read is written, in either unit, so that it is read again as the same micrometres, and
// what is not read changes nothing. The first bytes are taken as a length to write, too.

#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/length.h"

#define KILOMETRE INT64_C(1000000000)

enum { UNTOUCHED = -77 };

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/// Ends the run where something does not hold; the fuzzer then keeps the input.
static void hold(bool it)
{
    if (!it)
        abort();
}

static void check_comes_back(bk_length length)
{
    for (bk_unit unit = BK_CM; unit <= BK_INCH; unit++) {
        char text[BK_AMOUNT_ROOM], text_again[BK_AMOUNT_ROOM];
        bk_length again = UNTOUCHED;
        hold(bk_length_read(bk_length_write(length, unit, text), &again) == BK_READ_OK);
        hold(again == length);
        hold(strcmp(bk_length_write(again, unit, text_again), text) == 0);
    }
}

static void check_text(const char *text)
{
    bk_length length = UNTOUCHED, spaced = UNTOUCHED;
    bk_reading reading = bk_length_read(text, &length);
    if (reading == BK_READ_OK) {
        hold(length >= 0 && length <= KILOMETRE);
        check_comes_back(length);
    } else {
        hold(length == UNTOUCHED);
    }
    bk_arena *arena = bk_arena_new();
    hold(bk_length_read(bk_arena_print(arena, "  %s\t", text), &spaced) == reading && spaced == length);
    hold(reading != BK_READ_OK || bk_length_read(bk_arena_print(arena, "%s.", text), &spaced) != BK_READ_OK);
    bk_arena_free(arena);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = bk_alloc(size + 1);
    if (size > 0)
        memcpy(text, data, size);
    text[size] = '\0';
    check_text(text);
    uint32_t length = 0;
    memcpy(&length, data, size < sizeof length ? size : sizeof length);
    check_comes_back((bk_length)length % (KILOMETRE + 1));
    free(text);
    return 0;
}
