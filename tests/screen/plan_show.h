#ifndef BODKIN_TESTS_SCREEN_PLAN_SHOW_H
#define BODKIN_TESTS_SCREEN_PLAN_SHOW_H

/// The Salt Road with hands for it, brought into the test's store with the real program. On Tue 2 Mar 2027:
///
///     Ida   cut machine hand   Mon to Fri 10:00 to 13:00
///     Mo    hand               Tue and Thu 14:00 to 17:00
///     Jo                       no hours, no skills
///
///     G1/cut   60 min  linen; then G1/sew, 200 min
///     H1/cut   30 min  linen; then H1/hem, by hand, which can wait
///     C1/sew   90 min
///     C1/line  45 min  by hand
///     S1/cut           waits on measures
///
/// The dress rehearsal is on Tue 16 Mar, the opening on Fri 19 Mar.
void bk_plan_show_import(void);

/// The same, with Ida called like who is at this terminal.
void bk_plan_show_import_mine(void);

/// Who is at this terminal, as the program takes it.
const char *bk_plan_show_login(void);

#endif
