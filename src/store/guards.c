#include "bodkin/store/guards.h"

#ifdef BK_GUARDS

#include <stdio.h>
#include <stdlib.h>

enum { BITS = 64 };

static void hold(bool holds, const bk_guard *guard, const char *what)
{
    if (holds)
        return;
    fprintf(stderr, "statement %s: %s\n", bk_statements[guard->sql].name, what);
    abort();
}

static uint64_t all_of(int count)
{
    return count == 0 ? 0 : UINT64_MAX >> (BITS - count);
}

void bk_guard_begin(bk_guard *guard, bk_sql sql, int parameters, int columns)
{
    hold(!guard->open, guard, "begun while it is in use");
    hold(parameters <= BITS && columns <= BITS, guard, "has more parameters or columns than are watched");
    *guard = (bk_guard){.sql = sql, .parameters = parameters, .columns = columns, .open = true};
}

void bk_guard_given(bk_guard *guard, int parameter)
{
    hold(guard->open, guard, "a parameter was given outside its use");
    hold(parameter > 0 && parameter <= guard->parameters, guard, "has no such parameter");
    guard->given |= UINT64_C(1) << (parameter - 1);
}

void bk_guard_step(bk_guard *guard)
{
    hold(guard->open, guard, "run outside its use");
    hold(guard->given == all_of(guard->parameters), guard, "a parameter was not given");
}

void bk_guard_row(bk_guard *guard, bool row)
{
    guard->on_row = row;
    guard->any_row = guard->any_row || row;
}

void bk_guard_asked(bk_guard *guard, int column)
{
    hold(guard->on_row, guard, "a column was asked for where there is no row");
    hold(column >= 0 && column < guard->columns, guard, "has no such column");
    guard->asked |= UINT64_C(1) << column;
}

void bk_guard_end(bk_guard *guard)
{
    hold(guard->open, guard, "ended twice");
    hold(!guard->any_row || guard->asked == all_of(guard->columns), guard, "a column was never asked for");
    guard->open = false;
}

void bk_guard_closed(const bk_guard *guard)
{
    hold(!guard->open, guard, "left in use");
}

#endif
