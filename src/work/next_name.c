#include "bodkin/work/next_name.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/records.h"

enum { FIRST_LETTER = 'A', LAST_LETTER = 'Z', KEY_MOST = 8, FEWEST = 3, DECIMAL = 10, DIGITS_MOST = 6 };

// ------------------------------------------------------------------------------------------------- costumes

// The digits before a number's letter and the letter, 0 where it is another kind of number.
static int split_number(const char *number, char *letter)
{
    size_t digits = strspn(number, "0123456789");
    *letter = number[digits];
    bool plain = digits > 0 && digits <= DIGITS_MOST && *letter >= FIRST_LETTER && *letter <= LAST_LETTER &&
                 number[digits + 1] == '\0';
    return plain ? (int)strtol(number, NULL, DECIMAL) : 0;
}

static bool number_taken(const bk_rail *rail, int wanted)
{
    char letter = 0;
    for (size_t i = 0; i < rail->costume_count; i++)
        if (split_number(rail->costumes[i].record->number, &letter) == wanted)
            return true;
    return false;
}

static int first_number(const bk_rail *rail, const char *role, const char *const *roles, size_t count)
{
    size_t place = 0;
    while (place < count && !bk_same_text(roles[place], role))
        place++;
    int number = (int)place + 1;
    while (number_taken(rail, number))
        number++;
    return number;
}

const char *bk_next_costume(const bk_rail *rail, const char *role, const char *const *roles, size_t count,
                            bk_arena *arena)
{
    int number = 0;
    char last = 0;
    if (!role || !*role)
        return NULL;
    for (size_t i = 0; i < rail->costume_count; i++) {
        char letter = 0;
        int own = split_number(rail->costumes[i].record->number, &letter);
        if (own == 0 || !bk_same_text(rail->costumes[i].role, role))
            continue;
        number = own;
        last = letter > last ? letter : last;
    }
    if (number == 0)
        return bk_arena_print(arena, "%d%c", first_number(rail, role, roles, count), FIRST_LETTER);
    return last < LAST_LETTER ? bk_arena_print(arena, "%d%c", number, last + 1) : NULL;
}

// ------------------------------------------------------------------------------------------- pieces and steps

const char *bk_next_piece(const bk_rail *rail, const char *costume, bk_arena *arena)
{
    long most = 0;
    if (!costume || !*costume)
        return NULL;
    size_t length = strlen(costume);
    for (size_t i = 0; i < rail->rows.piece_count; i++) {
        const char *name = rail->pieces[i].name;
        if (strncmp(name, costume, length) != 0 || name[length] != '-')
            continue;
        const char *behind = name + length + 1;
        size_t digits = strspn(behind, "0123456789"); // many are no count of pieces
        long number = digits > 0 && digits <= DIGITS_MOST ? strtol(behind, NULL, DECIMAL) : 0;
        most = number > most ? number : most;
    }
    return bk_arena_print(arena, "%s-%ld", costume, most + 1);
}

static bool key_taken(const char *key, const char *const *taken, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (bk_same_text(taken[i], key))
            return true;
    return false;
}

const char *bk_next_key(const char *title, const char *const *taken, size_t count, bk_arena *arena)
{
    char word[KEY_MOST + 1] = "";
    size_t length = 0;
    const char *plain = bk_text_safe(arena, title, true);
    while (*plain && !isalnum((unsigned char)*plain))
        plain++;
    for (; isalnum((unsigned char)*plain) && length < KEY_MOST; plain++)
        word[length++] = (char)tolower((unsigned char)*plain);
    if (length == 0)
        return NULL;
    const char *key = bk_arena_text(arena, word);
    for (int number = 2; key_taken(key, taken, count); number++)
        key = bk_arena_print(arena, "%s%d", word, number);
    return key;
}

static int by_minutes(const void *left, const void *right)
{
    int64_t one = *(const int64_t *)left, other = *(const int64_t *)right;
    return (one > other) - (one < other);
}

int64_t bk_usual_minutes(const bk_rail *rail, int kind)
{
    size_t count = 0;
    int64_t *minutes = bk_alloc_clear(rail->rows.step_count + 1, sizeof *minutes);
    for (size_t i = 0; i < rail->rows.step_count; i++)
        if (rail->rows.steps[i].kind == kind)
            minutes[count++] = rail->rows.steps[i].minutes;
    qsort(minutes, count, sizeof *minutes, by_minutes);
    int64_t usual = count < FEWEST ? BK_NOT_KNOWN : minutes[count / 2];
    free(minutes);
    return usual;
}
