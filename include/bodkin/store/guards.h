#ifndef BODKIN_STORE_GUARDS_H
#define BODKIN_STORE_GUARDS_H

#include <stdbool.h>
#include <stdint.h>

#include "bodkin/store/statements.h"

/// Watches the use of one statement in builds with BK_GUARDS: what is wrong ends the program with a message.
/// Without BK_GUARDS nothing is watched and nothing is spent.
typedef struct bk_guard {
    bk_sql sql;
    int parameters, columns; ///< how many the statement has
    uint64_t given, asked;   ///< which were given and asked for, a bit each
    bool open, on_row, any_row;
} bk_guard;

#ifdef BK_GUARDS

/// The statement is taken into use: it must not be in use already.
void bk_guard_begin(bk_guard *guard, bk_sql sql, int parameters, int columns);
/// A parameter (from 1) is given: there must be one of that number.
void bk_guard_given(bk_guard *guard, int parameter);
/// It is run: all parameters must have been given.
void bk_guard_step(bk_guard *guard);
/// It gave a row, or no more.
void bk_guard_row(bk_guard *guard, bool row);
/// A column (from 0) is asked for: there must be a row and such a column.
void bk_guard_asked(bk_guard *guard, int column);
/// The use ends: of a statement that gave a row every column must have been asked for.
void bk_guard_end(bk_guard *guard);
/// A transaction or the store ends: the statement must not be in use.
void bk_guard_closed(const bk_guard *guard);

#else

static inline void bk_guard_begin(bk_guard *guard, bk_sql sql, int parameters, int columns)
{
    (void)guard, (void)sql, (void)parameters, (void)columns;
}

static inline void bk_guard_given(bk_guard *guard, int parameter)
{
    (void)guard, (void)parameter;
}

static inline void bk_guard_step(bk_guard *guard)
{
    (void)guard;
}

static inline void bk_guard_row(bk_guard *guard, bool row)
{
    (void)guard, (void)row;
}

static inline void bk_guard_asked(bk_guard *guard, int column)
{
    (void)guard, (void)column;
}

static inline void bk_guard_end(bk_guard *guard)
{
    (void)guard;
}

static inline void bk_guard_closed(const bk_guard *guard)
{
    (void)guard;
}

#endif

#endif
