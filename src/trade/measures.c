#include "bodkin/trade/measures.h"

#include <string.h>

// Terms and clauses are those of ISO 8559-1:2017, left out where no source gives them. How each measure is taken is
// common practice.
const bk_measure_term bk_measure_terms[] = {
    {"height", "stature", "5.1.1",
     "barefoot, heels to the wall, from the crown of the head straight down to the floor"},
    {"head girth", NULL, NULL,
     "round the head level with the middle of the forehead, above the ears and over the fullest part behind"},
    {"neck girth", "neck girth", "5.3.2",
     "round the neck, just below the Adam's apple or at mid-neck, one finger inside the tape"},
    {"neck base girth", NULL, NULL,
     "round the root of the neck: over the nape bone, the sides where neck meets shoulder, and the pit of "
     "the throat"},
    {"shoulder length", NULL, NULL,
     "from the side of the neck, where a necklace lies, along the shoulder to the bony shoulder point"},
    {"shoulder width", "shoulder width", "5.4.2",
     "across the back from shoulder point to shoulder point, the tape passing over the nape"},
    {"back width", NULL, NULL,
     "arms hanging, across the back from arm crease to arm crease, halfway between nape and underarm"},
    {"chest width", NULL, NULL,
     "arms hanging, across the front from arm crease to arm crease, halfway between throat pit and bust "
     "line"},
    {"bust girth", "bust girth", "5.3.4",
     "level round the body over the fullest part of the bust and the shoulder blades, in the bra to be worn"},
    {"chest girth", "chest girth", "5.3.4",
     "level round the body under the arms, over the fullest part of the chest, breathing quietly"},
    {"under-bust girth", "under-bust girth", "5.3.6", "level round the ribs directly below the bust"},
    {"waist girth", "waist girth", "5.3.10",
     "level round the body midway between the lowest rib and the hip bone, breathing quietly; tie a tape "
     "there"},
    {"high hip girth", NULL, NULL, "level round the body over the top of the hip bones and the stomach"},
    {"hip girth", "hip girth", "5.3.13",
     "feet together, level round the body over the fullest part of the seat"},
    {"armhole girth", NULL, NULL,
     "over the shoulder point and round under the armpit, arm hanging, two fingers inside the tape"},
    {"upper arm girth", "upper arm girth", "5.3.16",
     "round the fullest part of the upper arm, the arm hanging slack"},
    {"elbow girth", NULL, NULL, "round the bone of the elbow, the arm bent to a right angle"},
    {"wrist girth", "wrist girth", "5.3.19",
     "round the wrist over the knob of bone on the little-finger side"},
    {"hand girth", "hand girth", "5.5.1",
     "round the knuckles of the four fingers, hand flat, thumb left out"},
    {"arm length", NULL, NULL,
     "from the shoulder point over the point of the slightly bent elbow to the knob of the wrist bone"},
    {"nape to wrist", NULL, NULL,
     "from the nape bone over the shoulder point and the slightly bent elbow to the knob of the wrist bone"},
    {"nape to waist", "back neck point to waist", "5.4.5",
     "from the nape bone, which stands out when the head bends, down the spine to the tape at the waist"},
    {"neck to waist front", NULL, NULL,
     "from the side of the neck, where a necklace lies, over the fullest part of the chest to the waist "
     "tape"},
    {"shoulder to bust point", NULL, NULL,
     "from the side of the neck, where the shoulder seam begins, down to the bust point"},
    {"bust point width", NULL, NULL,
     "straight across from one bust point to the other, the tape not dipping between"},
    {"waist to hip", NULL, NULL, "down the side from the waist tape to the fullest level of the seat"},
    {"waist to knee", NULL, NULL, "down the side from the waist tape to the middle of the kneecap"},
    {"waist to floor", NULL, NULL,
     "at the centre back from the waist tape over the seat, then straight down to the floor, barefoot"},
    {"nape to floor", NULL, NULL,
     "from the nape bone down the back, in to the waist, then straight down to the floor, barefoot"},
    {"outside leg", NULL, NULL, "down the side from the waist tape over the hip to the floor, barefoot"},
    {"inside leg", "inside leg height", "5.1.15",
     "legs slightly apart, from the crotch straight down the inside of the leg to the floor, barefoot"},
    {"body rise", NULL, NULL,
     "sitting upright on a flat, hard chair, at the side from the waist tape down over the hip to the seat"},
    {"crotch length", "total crotch length", "5.4.18",
     "from the waist tape in front, between the legs, up to the waist tape behind, not drawn tight"},
    {"trunk girth", NULL, NULL,
     "from the middle of one shoulder down the front, between the legs and up the back to where it began"},
    {"thigh girth", "thigh girth", "5.3.20",
     "level round the fullest part of the thigh, close below the seat"},
    {"knee girth", "knee girth", "5.3.22", "level round the middle of the kneecap, the leg straight"},
    {"calf girth", "calf girth", "5.3.24", "level round the fullest part of the calf, weight on both feet"},
    {"ankle girth", NULL, NULL, "round the leg over the knobs of the ankle, barefoot"},
    {"foot length", NULL, NULL,
     "standing, from the back of the heel to the tip of the longest toe; take the longer foot"},
    {"foot girth", NULL, NULL,
     "standing, round the ball of the foot over the joints of the big and the little toe"},
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
