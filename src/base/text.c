#include "bodkin/base/text.h"

#include <string.h>

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

/// Compares the runs of digits at `*left` and `*right` as numbers of any size, and steps behind them.
static int number_order(const char **left, const char **right)
{
    const char *a = *left + strspn(*left, "0");
    const char *b = *right + strspn(*right, "0");
    size_t a_digits = strspn(a, "0123456789");
    size_t b_digits = strspn(b, "0123456789");
    *left = a + a_digits;
    *right = b + b_digits;
    if (a_digits != b_digits)
        return a_digits < b_digits ? -1 : 1;
    return memcmp(a, b, a_digits);
}

int bk_natural_order(const char *left, const char *right)
{
    if (left == NULL || right == NULL)
        return (left == NULL) - (right == NULL);
    const char *a = left;
    const char *b = right;
    while (*a != '\0' && *b != '\0') {
        int order = 0;
        if (is_digit(*a) && is_digit(*b))
            order = number_order(&a, &b);
        else
            order = (unsigned char)*a++ - (unsigned char)*b++;
        if (order != 0)
            return order;
    }
    if (*a != *b)
        return *a == '\0' ? -1 : 1;
    return strcmp(left, right);
}

char *bk_text_copy(const char *text)
{
    size_t size = strlen(text) + 1;
    return memcpy(bk_alloc(size), text, size);
}

bool bk_same_text(const char *left, const char *right)
{
    if (left == NULL || right == NULL)
        return left == right;
    return strcmp(left, right) == 0;
}

const char *bk_full_stop(const char *sentence)
{
    static const char *const ends[] = {".", "?", "!", "…"};
    size_t length = strlen(sentence);
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        size_t size = strlen(ends[i]);
        if (length >= size && memcmp(sentence + length - size, ends[i], size) == 0)
            return "";
    }
    return ".";
}

enum { LONGEST_WORD = 64, MOST_EDITS = 2 };

static size_t least(size_t a, size_t b)
{
    return a < b ? a : b;
}

/// A character, small where it is an ASCII letter, whatever the locale.
static char lower_letter(char c)
{
    return (char)(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
}

static bool same_letter(char a, char b)
{
    return lower_letter(a) == lower_letter(b);
}

/// Edits between two words of at most LONGEST_WORD bytes, upper and lower case alike: letters put in, left
/// out, changed, or swapped with their neighbour (optimal string alignment, three rows of the usual table).
static size_t edits(const char *left, const char *right)
{
    size_t rows[3][LONGEST_WORD + 1];
    size_t width = strlen(right);
    size_t *before = rows[0], *last = rows[1], *now = rows[2];
    for (size_t j = 0; j <= width; j++)
        last[j] = before[j] = j;
    for (size_t i = 1; left[i - 1] != '\0'; i++) {
        now[0] = i;
        for (size_t j = 1; j <= width; j++) {
            size_t changed = last[j - 1] + (same_letter(left[i - 1], right[j - 1]) ? 0 : 1);
            now[j] = least(changed, least(last[j], now[j - 1]) + 1);
            if (i > 1 && j > 1 && same_letter(left[i - 1], right[j - 2]) &&
                same_letter(left[i - 2], right[j - 1]))
                now[j] = least(now[j], before[j - 2] + 1);
        }
        size_t *spare = before;
        before = last;
        last = now;
        now = spare;
    }
    return last[width];
}

const char *bk_nearest(const char *word, const char *const *words, size_t count)
{
    size_t length = strlen(word);
    const char *nearest = NULL;
    size_t fewest = length > MOST_EDITS ? MOST_EDITS + 1 : length;
    for (size_t i = 0; i < count; i++) {
        if (length > LONGEST_WORD || strlen(words[i]) > LONGEST_WORD)
            continue;
        size_t needed = edits(word, words[i]);
        if (needed < fewest) {
            fewest = needed;
            nearest = words[i];
        }
    }
    return nearest;
}

bool bk_list_item(const char **rest, const char **item, size_t *length)
{
    const char *start = *rest;
    if (*start == '\0')
        return false;
    const char *end = start + strcspn(start, ";");
    *rest = *end == ';' ? end + 1 : end;
    while (start < end && is_blank(*start))
        start++;
    while (end > start && is_blank(end[-1]))
        end--;
    *item = start;
    *length = (size_t)(end - start);
    return true;
}
