#include "bodkin/ui/suppose_turn.h"

#include "bodkin/sheet/forecast_words.h"

static bool never(const bk_outlook_days *days)
{
    return days->finish == BK_NO_DAY;
}

// Below zero: `then` is less likely; 0: no difference that means anything.
static int by_chance(const bk_outlook_days *now, const bk_outlook_days *then)
{
    enum { TWO_ERRORS_SQUARED = 4 };
    if (now->chance < 0 || then->chance < 0)
        return 0;
    int64_t more = (int64_t)then->chance - now->chance;
    int64_t wavers =
        (int64_t)now->chance_error * now->chance_error + (int64_t)then->chance_error * then->chance_error;
    if (more * more <= TWO_ERRORS_SQUARED * wavers)
        return 0;
    return (more > 0) - (more < 0);
}

static int by_days(const bk_outlook_days *now, const bk_outlook_days *then)
{
    if (never(now) || never(then))
        return never(now) - never(then);
    return (then->days_in_hand > now->days_in_hand) - (then->days_in_hand < now->days_in_hand);
}

static bk_turn turn(int better)
{
    return better > 0 ? BK_TURN_BETTER : better < 0 ? BK_TURN_WORSE : BK_TURN_SAME;
}

bk_turn bk_turn_of(const bk_costume_forecast *now, const bk_costume_forecast *then)
{
    // From the least urgent on.
    static const int ranks[] = {[BK_IN_TIME] = 0, [BK_TIGHT] = 1, [BK_LATE] = 2};
    if (now && !then)
        return BK_TURN_DROPPED;
    if (!now || !now->open || !then->open || !now->days.days_known || !then->days.days_known)
        return BK_TURN_SAME;
    bk_urgency before = bk_outlook_urgency(&now->days), after = bk_outlook_urgency(&then->days);
    if (before == BK_LATE && after != BK_LATE)
        return BK_TURN_RIGHT;
    if (before != after)
        return turn(ranks[before] - ranks[after]);
    int likelier = by_chance(&now->days, &then->days);
    if (likelier != 0 || before == BK_IN_TIME)
        return turn(likelier);
    return turn(by_days(&now->days, &then->days));
}
