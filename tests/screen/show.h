#ifndef BODKIN_TESTS_SCREEN_SHOW_H
#define BODKIN_TESTS_SCREEN_SHOW_H

#include <stddef.h>

/// Productions that the tests bring into their store, with the real program.

/// "The Salt Road", which opens on Fri 19 Mar 2027, with eight costumes in every state; on Tue 2 Mar 2027 they are:
///
///     1A Salt Queen   Coronation gown   waiting    wool flannel due Tue 9 Mar; also a hand step done
///     1B Salt Queen   Travelling cloak  in work    two steps, one done
///     2A Ferryman     Oilskin           held       a piece out and overdue; its fitting is not booked
///     2B Ferryman     Linen shirt       finishing  its hem
///     2C Ferryman     Boots             ready
///     3A Clerk        Inky suit         held       Chidi Okoro has no measure sheet
///     3B Clerk        Sunday coat       unlisted
///     4A Ghost        Shroud            held       not cast
void bk_show_import(void);

/// Changes one of its files; nothing is brought in yet.
void bk_show_rewrite(const char *name, const char *text);

/// The same again in its place (--replace), with the file `name` holding `text` instead of its own.
void bk_show_replace(const char *name, const char *text);

/// Its folder, made by bk_show_import.
const char *bk_show_folder(void);

/// "A Hundred Coats": `count` costumes numbered from 1, "Coat 1" and so on, each with one piece and two steps to do.
void bk_long_show_import(size_t count);

/// "Odd Names": two costumes; the first one's role, title, performer and piece are `name`, the second is plain.
/// It takes the place of the one brought in before.
void bk_odd_show_import(const char *name);

#endif
