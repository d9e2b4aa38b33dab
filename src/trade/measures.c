#include "bodkin/trade/measures.h"

#include <string.h>

// Terms and clauses are those of ISO 8559-1:2017, left out where no source gives them. How each measure is taken is
// common practice.
const bk_measure_term bk_measure_terms[] = {
    {"height", "stature", "5.1.1", "barefoot, heels to the wall, from the crown straight down to the floor"},
    {"head girth", NULL, NULL, "level with mid-forehead, above the ears, over the fullest part behind"},
    {"neck girth", "neck girth", "5.3.2",
     "just below the Adam's apple or at mid-neck, one finger inside the tape"},
    {"neck base girth", NULL, NULL,
     "round the root of the neck: nape bone, sides of the neck, pit of the throat"},
    {"shoulder length", NULL, NULL,
     "from the side of the neck, where a necklace lies, to the bony shoulder point"},
    {"shoulder width", "shoulder width", "5.4.2",
     "across the back from shoulder point to shoulder point, over the nape"},
    {"back width", NULL, NULL, "arms hanging, across the back between the arm creases, midway nape-underarm"},
    {"chest width", NULL, NULL, "arms hanging, across the front between the arm creases, midway throat-bust"},
    {"bust girth", "bust girth", "5.3.4",
     "level over the fullest part of bust and back, in the bra that will be worn"},
    {"chest girth", "chest girth", "5.3.4",
     "level under the arms over the fullest part of the chest, breathing quietly"},
    {"under-bust girth", "under-bust girth", "5.3.6", "level round the ribs directly below the bust"},
    {"waist girth", "waist girth", "5.3.10",
     "level midway between lowest rib and hip bone; tie a tape there and leave it"},
    {"high hip girth", NULL, NULL, "level round the body over the top of the hip bones and the stomach"},
    {"hip girth", "hip girth", "5.3.13",
     "feet together, level round the body over the fullest part of the seat"},
    {"armhole girth", NULL, NULL,
     "over the shoulder point and under the armpit, arm down, two fingers inside"},
    {"upper arm girth", "upper arm girth", "5.3.16",
     "round the fullest part of the upper arm, the arm hanging slack"},
    {"elbow girth", NULL, NULL, "round the bone of the elbow, the arm bent to a right angle"},
    {"wrist girth", "wrist girth", "5.3.19",
     "round the wrist over the knob of bone on the little-finger side"},
    {"hand girth", "hand girth", "5.5.1",
     "round the knuckles of the four fingers, hand flat, thumb left out"},
    {"arm length", NULL, NULL,
     "shoulder point, over the point of the slightly bent elbow, to the wrist bone"},
    {"nape to wrist", NULL, NULL,
     "nape bone, shoulder point, over the slightly bent elbow, to the wrist bone"},
    {"nape to waist", "back neck point to waist", "5.4.5",
     "from the nape bone, found by bending the head, down the spine to the waist"},
    {"neck to waist front", NULL, NULL,
     "from the side of the neck over the fullest part of the chest to the waist"},
    {"shoulder to bust point", NULL, NULL,
     "from the side of the neck, where the shoulder begins, to the bust point"},
    {"bust point width", NULL, NULL,
     "straight from one bust point to the other, the tape not dipping between"},
    {"waist to hip", NULL, NULL, "down the side from the waist tape to the fullest level of the seat"},
    {"waist to knee", NULL, NULL, "down the side from the waist tape to the middle of the kneecap"},
    {"waist to floor", NULL, NULL, "centre back, barefoot: from the waist over the seat, then straight down"},
    {"nape to floor", NULL, NULL, "barefoot: from the nape bone in to the waist, then straight to the floor"},
    {"outside leg", NULL, NULL, "down the side from the waist tape over the hip to the floor, barefoot"},
    {"inside leg", "inside leg height", "5.1.15",
     "barefoot, legs a little apart: from the crotch straight down to the floor"},
    {"body rise", NULL, NULL, "sitting upright on a hard chair: at the side, from the waist to the seat"},
    {"crotch length", "total crotch length", "5.4.18",
     "from the front waist between the legs to the back waist, not drawn tight"},
    {"trunk girth", NULL, NULL, "from mid-shoulder down the front, between the legs and up the back again"},
    {"thigh girth", "thigh girth", "5.3.20",
     "level round the fullest part of the thigh, close below the seat"},
    {"knee girth", "knee girth", "5.3.22", "level round the middle of the kneecap, the leg straight"},
    {"calf girth", "calf girth", "5.3.24", "level round the fullest part of the calf, weight on both feet"},
    {"ankle girth", NULL, NULL, "round the leg over the knobs of the ankle, barefoot"},
    {"foot length", NULL, NULL,
     "standing, from the heel to the tip of the longest toe; take the longer foot"},
    {"foot girth", NULL, NULL, "standing, round the ball of the foot over the joints of big and little toe"},
};

const size_t bk_measure_term_count = sizeof bk_measure_terms / sizeof bk_measure_terms[0];

const bk_measure_term *bk_measure_term_find(const char *name)
{
    if (name == NULL)
        return NULL;
    for (size_t i = 0; i < bk_measure_term_count; i++)
        if (strcmp(bk_measure_terms[i].name, name) == 0)
            return &bk_measure_terms[i];
    return NULL;
}
