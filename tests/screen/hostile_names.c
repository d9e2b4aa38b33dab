#include "screen/hostile_names.h"

#include "support/testing.h"

const char *const bk_hostile_names[BK_HOSTILE_NAMES] = {
    "\033[2J\033[31mred\033]0:title\007",
    "\302\2335:5Hplaced",
    "a\rb\bc\177d\tE",
    "\342\200\256desrever\342\200\254 \342\201\246x",
    "\327\242\327\236\327\250\327\235 \327\244\327\252\327\231\327\234\327\220\327\231",
    "水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽",
    "e\314\201\314\202\314\203\314\204\314\205\314\206\314\207\314\210\314\211vil",
    "\314\201begins with a mark",
    "👩‍👩‍👧‍👦 family 👍🏽",
    "\357\273\277mark\342\200\250line\342\200\251paragraph",
    "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
    "%s%n%d {} <b>&amp",
};

// Characters that would turn the order of a whole row round.
static const char *const forbidden[] = {"\342\200\256", "\342\201\246", "\342\200\250", "\033"};

void bk_assert_nothing_forbidden(const bk_terminal *terminal, const char *name)
{
    for (size_t i = 0; i < sizeof forbidden / sizeof forbidden[0]; i++)
        if (bk_terminal_shows(terminal, forbidden[i]))
            ck_abort_msg("the name %s reached the terminal as it is", name);
}
