#ifndef BODKIN_BASE_LENGTH_H
#define BODKIN_BASE_LENGTH_H

#include <stdint.h>

#include "bodkin/base/number.h"

typedef int64_t bk_length; ///< micrometres

enum { BK_MICROMETRES_PER_MM = 1000, BK_MICROMETRES_PER_CM = 10000, BK_MICROMETRES_PER_INCH = 25400 };

/// In which unit lengths are shown.
typedef enum bk_unit { BK_CM, BK_INCH } bk_unit;

/// Reads a length with its unit: `92.5 cm`, `36 3/8 in`, `36-3/8 in`, `925 mm`, `1.4 m`, `2 yd`, `5 ft`; the
/// space before the unit may be left out. Fractions are halves to sixty-fourths, of inches only. Micrometres,
/// rounded half up whatever the number of decimals (1 in = 25.4 mm exactly, international yard and pound
/// agreement 1959). At most 1 km; zero is allowed, below zero is not.
bk_reading bk_length_read(const char *text, bk_length *length);

/// Writes a length so that bk_length_read gives the same micrometres again: in inches as whole and eighths or
/// sixteenths (`36 3/8 in`), in lowest terms, where the value is one, else in centimetres with as many
/// decimals as needed (`92.5 cm`). The empty string for BK_NO_AMOUNT. Returns `out`.
char *bk_length_write(bk_length length, bk_unit unit, char out[BK_AMOUNT_ROOM]);

#endif
