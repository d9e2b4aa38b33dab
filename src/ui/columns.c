#include "bodkin/ui/columns.h"

static size_t least_width(const bk_list_column *const *columns, size_t count)
{
    size_t all = 0;
    for (size_t i = 0; i < count; i++)
        all += columns[i]->least + (i + 1 < count ? columns[i]->gap : 0);
    return all;
}

static bool grows(const bk_list_column *column, size_t wanted, size_t width)
{
    return width < wanted && width < column->most;
}

void bk_columns_share(const bk_list_column *const *columns, const size_t *wanted, size_t count, size_t width,
                      size_t *widths)
{
    size_t least = least_width(columns, count), left = width > least ? width - least : 0;
    bool grown = true;
    for (size_t i = 0; i < count; i++)
        widths[i] = columns[i]->least;
    while (grown) {
        grown = false;
        for (size_t i = 0; i < count && left > 0; i++) {
            if (!grows(columns[i], wanted[i], widths[i]))
                continue;
            widths[i]++;
            left--;
            grown = true;
        }
    }
    for (size_t i = 0; i < count; i++)
        if (columns[i]->fills) {
            widths[i] += left;
            left = 0;
        }
}
