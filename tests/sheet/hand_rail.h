#ifndef BODKIN_TESTS_SHEET_HAND_RAIL_H
#define BODKIN_TESTS_SHEET_HAND_RAIL_H

#include "bodkin/work/rail.h"

/// A rail put together by hand, on Tue 2 Mar 2027, 17 days before "The Salt Road" opens: one costume, 1A, due
/// on Tue 16 Mar, of the pieces G1 and C1, with the steps G1/cut (cut), C1/hem (hand) and C1/fit (fit), and
/// the materials wool flannel (m) and hooks (each). A test changes what it looks at; everything lasts until
/// the next call.
typedef struct hand_rail {
    bk_rail rail;
    bk_rail_costume costume;
    bk_costume record;
    bk_costume_waits reckoned;
    bk_piece pieces[2];
    bk_step steps[3];
    bk_material materials[2];
    bk_wait_costume wait_costume;
    bk_wait_piece wait_pieces[2];
    bk_wait_step wait_steps[3];
} hand_rail;

enum { GOWN, CLOAK };
enum { GOWN_CUT, CLOAK_HEM, CLOAK_FIT };
enum { FLANNEL, HOOKS };

hand_rail *hand_rail_new(void);

/// Hangs these waits on the costume.
void hand_rail_wait(hand_rail *hand, bk_state state, const bk_wait *waits, size_t count);

/// A day of 2027.
#define DAY(month, day) bk_day_of(2027, (month), (day))

#endif
