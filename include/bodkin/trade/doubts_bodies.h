#ifndef BODKIN_TRADE_DOUBTS_BODIES_H
#define BODKIN_TRADE_DOUBTS_BODIES_H

#include <stddef.h>

/// How bodies are: the table that doubts about measures are reckoned from. Source of means and deviations: the 2012 U.S.
/// Army anthropometric survey (ANSUR II public data, NATICK/TR-15/007); where a row says so, common practice. The shares
/// reproduce the survey's correlations (height and inside leg .86, waist and chest .87, thigh and hip .94 ...) to about
/// .05; growth is set from common practice, so that it carries women's measures to those of a five-year-old.

/// What two measures can have in common beyond height and bulk.
typedef enum bk_share {
    BK_SHARE_CHEST,
    BK_SHARE_WAIST,
    BK_SHARE_HIP,
    BK_SHARE_TRUNK, ///< a long trunk on short legs
    BK_SHARE_ARM,
    BK_SHARE_SHOULDER,
    BK_SHARE_FRAME, ///< heavy or light bones
    BK_SHARE_MUSCLE,
    BK_SHARE_NECK,
    BK_SHARE_LOWER_LEG,
    BK_SHARES
} bk_share;

typedef struct bk_spread {
    double mean, deviation; ///< mm
} bk_spread;

typedef struct bk_body_measure {
    const char *name;     ///< as in bk_measure_terms
    bk_spread men, women; ///< the waist at the navel
    double least, most;   ///< mm: less or more no body has, from a child of 85 cm up
    double height, bulk;  ///< correlation with height and with body mass
    double growth;        ///< how it grows with height: it goes as height to this power
    double natural_waist; ///< change of its logarithm when the natural waist is taken instead of the navel
    double landmark;      ///< further deviation of its logarithm, as workrooms take it in more than one way
    double shares[BK_SHARES]; ///< of what height and bulk leave open: correlation with what is shared
} bk_body_measure;

extern const bk_body_measure bk_body_measures[];
extern const size_t bk_body_measure_count;

/// The row of that name, or NULL for a measure that bodies are not known by.
const bk_body_measure *bk_body_measure_find(const char *name);

#endif
