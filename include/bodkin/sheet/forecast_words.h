#ifndef BODKIN_SHEET_FORECAST_WORDS_H
#define BODKIN_SHEET_FORECAST_WORDS_H

#include "bodkin/sheet/snag_words.h"
#include "bodkin/sheet/wait_words.h"
#include "bodkin/work/bench_list.h"
#include "bodkin/work/forecast.h"

/// The words of a forecast, the same on every screen, in the text of the command line and on sheets. All texts in `arena`, as the
/// store has them (not yet made safe for a terminal), and without a full stop.

/// The days in hand of a costume in a few words: "3 days in hand", "just in time", "1 day late", "never"; "" where not known.
const char *bk_days_in_hand_words(const bk_outlook_days *days, bk_arena *arena);

/// The same for a column that is headed "In hand", at most seven columns wide for up to 999 days: "3 days", "0 days", "1 late", "never".
const char *bk_days_in_hand_brief(const bk_outlook_days *days, bk_arena *arena);

/// The chance: "92 %", "over 99 %", "under 1 %"; "" where it was not reckoned.
const char *bk_chance_words(const bk_outlook_days *days, bk_arena *arena);

/// How urgent a costume is by its forecast. Late: it never comes about, is finished after its due day, or is more likely late than not.
/// Tight: at most one day in hand, or a chance below 85 %. Else in time; BK_NOT_SAID where the days are not known. Common practice.
bk_urgency bk_outlook_urgency(const bk_outlook_days *days);

/// The urgency every view shows: a costume that is ready, or can go on as it is, is in time; another as its forecast says, or, where
/// there is none (NULL) or it is not known, as bk_costume_urgency says by the due day alone.
bk_urgency bk_urgency_of(const bk_rail *rail, const bk_rail_costume *costume,
                         const bk_costume_forecast *forecast);

/// "late: 4A; tight: 3B, 7B and 9 more; 174 h of work left", by bk_urgency_of, in the order of the rail; `forecast` may be NULL.
const char *bk_forecast_verdict(const bk_rail *rail, const bk_forecast *forecast, bk_arena *arena);

/// One sentence about a costume: "Expected Thu 11 Mar, 1 working day in hand; 84 % (give or take 2) to be ready by Fri 12 Mar; half
/// the trials are done by Wed 10 Mar, nine in ten by Mon 15 Mar".
const char *bk_costume_forecast_sentence(const bk_costume_forecast *costume, bk_day today, bk_arena *arena);

/// The same about the whole production.
const char *bk_production_forecast_sentence(const bk_production_forecast *production, bk_day today,
                                            bk_arena *arena);

/// Why a step of the bench stands where it does: "4A is due in 3 days, 6 h behind it".
const char *bk_bench_why_sentence(const bk_bench_line *line, bk_day today, bk_arena *arena);

/// What a link of a chain waited for: "after 4A-1/cut", "Joaquim is free then", "what it needs is there then", "nobody works before".
const char *bk_link_words(const bk_forecast *forecast, const bk_planned_link *links, size_t index,
                          bk_arena *arena);

#endif
