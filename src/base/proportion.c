#include "bodkin/base/proportion.h"

#include <assert.h>

enum { DIGITS = 63 }; ///< binary digits of a number that is not below zero

/// Adds to what is left over and takes the divisor out of it, at most once: both are below it.
static uint64_t take_out(uint64_t *rest, uint64_t more, uint64_t divisor)
{
    *rest += more;
    uint64_t taken = *rest >= divisor;
    *rest -= taken * divisor;
    return taken;
}

/// The product as quotient and rest of `whole`, one binary digit of `part` after the other, so that nothing overflows.
int64_t bk_in_proportion(int64_t amount, int64_t part, int64_t whole)
{
    assert(amount >= 0 && part >= 0 && whole > 0);
    const uint64_t most = INT64_MAX;
    uint64_t divisor = (uint64_t)whole;
    uint64_t quotient = 0;
    uint64_t rest = 0;
    for (int digit = DIGITS - 1; digit >= 0; digit--) {
        uint64_t times = ((uint64_t)part >> digit) & 1;
        uint64_t step = times * ((uint64_t)amount / divisor) + take_out(&rest, rest, divisor);
        step += take_out(&rest, times * ((uint64_t)amount % divisor), divisor);
        if (quotient > (most - step) / 2) {
            return INT64_MAX;
        }
        quotient = 2 * quotient + step;
    }
    quotient += rest >= divisor - rest;
    return quotient > most ? INT64_MAX : (int64_t)quotient;
}
