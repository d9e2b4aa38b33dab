#include "bodkin/trade/doubts_bodies.h"

#include <string.h>

#define CHEST [BK_SHARE_CHEST]
#define WAIST [BK_SHARE_WAIST]
#define HIP [BK_SHARE_HIP]
#define TRUNK [BK_SHARE_TRUNK]
#define ARM [BK_SHARE_ARM]
#define SHOULDER [BK_SHARE_SHOULDER]
#define FRAME [BK_SHARE_FRAME]
#define MUSCLE [BK_SHARE_MUSCLE]
#define NECK [BK_SHARE_NECK]
#define LEG [BK_SHARE_LOWER_LEG]

// A row: name; men; women; least and most; height, bulk; growth, natural waist, landmark; shares. What the survey calls the
// measures, in order: stature, headcircumference, neckcircumference, neckcircumferencebase, shoulderlength,
// biacromialbreadth (between the bones; over the nape with a tape it is longer), interscyei (twice: no chest width is
// published), chestcircumference (twice), -, waistcircumference, -, buttockcircumference, -, bicepscircumferenceflexed
// (hanging slack the arm is about a twentieth thinner), -, wristcircumference, handcircumference, sleeveoutseam,
// sleevelengthspinewrist, waistbacklength, waistfrontlengthsitting (from the pit of the throat; workrooms begin at the side
// of the neck), -, -, -, -, waistheightomphalion, -, waistheightomphalion, crotchheight, -, crotchlengthomphalion,
// verticaltrunkcircumferenceusa, thighcircumference, lowerthighcircumference (above the kneecap), calfcircumference,
// anklecircumference, footlength, -. Where a dash stands the row is common practice, with no source.
const bk_body_measure bk_body_measures[] = {
    {"height", {1756, 69}, {1628, 64}, 700, 2400, 1, .50, 1, 0, .005, {0}},
    {"head girth", {574, 16}, {561, 19}, 400, 720, .34, .43, .24, 0, .01, {FRAME = .15}},
    {"neck girth", {398, 26}, {330, 19}, 180, 620, .28, .78, .61, 0, .015, {WAIST = .15, NECK = .8}},
    {"neck base girth", {435, 26}, {371, 20}, 200, 700, .36, .75, .7, 0, .02, {WAIST = .1, NECK = .8}},
    {"shoulder length", {150, 10.5}, {135, 10.3}, 50, 230, .38, .27, .95, 0, .04, {SHOULDER = .6}},
    {"shoulder width", {425, 20}, {375, 19}, 180, 640, .53, .50, .91, 0, .035, {SHOULDER = .6, FRAME = .2}},
    {"back width", {420, 35}, {366, 30}, 150, 640, .28, .60, 1, 0, .04, {CHEST = .35, SHOULDER = .15}},
    {"chest width", {405, 36}, {352, 31}, 150, 640, .30, .62, 1, 0, .07, {CHEST = .4, SHOULDER = .15}},
    {"bust girth", {1059, 87}, {947, 83}, 400, 1900, .27, .88, 1.29, 0, .02, {CHEST = .7, WAIST = .35}},
    {"chest girth", {1059, 87}, {940, 83}, 400, 1900, .27, .88, 1.29, 0, .025, {CHEST = .7, WAIST = .35}},
    {"under-bust girth", {985, 90}, {815, 76}, 380, 1800, .27, .87, 1.1, 0, .03, {CHEST = .6, WAIST = .45}},
    {"waist girth", {941, 112}, {861, 100}, 360, 2000, .23, .87, 1.18, -.06, .02, {CHEST = .2, WAIST = .8}},
    {"high hip girth", {975, 90}, {945, 88}, 380, 2000, .28, .89, 1.25, 0, .03, {WAIST = .75, HIP = .25}},
    {"hip girth", {1020, 77}, {1021, 76}, 400, 2000, .36, .93, 1.35, 0, .015, {WAIST = .15, HIP = .75}},
    {"armhole girth", {450, 40}, {400, 38}, 180, 800, .33, .78, 1.1, 0, .06, {CHEST = .3, MUSCLE = .3}},
    {"upper arm girth", {348, 34}, {299, 30}, 120, 700, .18, .84, 1.28, 0, .025, {CHEST = .25, MUSCLE = .75}},
    {"elbow girth", {295, 21}, {258, 20}, 110, 500, .33, .77, 1, 0, .04, {FRAME = .4, MUSCLE = .4}},
    {"wrist girth", {176, 9}, {155, 8}, 90, 270, .42, .70, .55, 0, .015, {FRAME = .65, MUSCLE = .2}},
    {"hand girth", {212, 10}, {187, 9}, 100, 330, .42, .60, .73, 0, .02, {FRAME = .6}},
    {"arm length", {593, 31}, {544, 29}, 220, 900, .80, .42, 1.1, 0, .015, {TRUNK = -.2, ARM = .8}},
    {"nape to wrist",
     {888, 40},
     {800, 38},
     330,
     1250,
     .785,
     .52,
     1.1,
     0,
     .015,
     {TRUNK = -.2, ARM = .75, SHOULDER = .25}},
    {"nape to waist", {478, 28}, {425, 26}, 180, 650, .52, .36, 1.1, -.08, .02, {TRUNK = .6}},
    {"neck to waist front", {413, 31}, {380, 27}, 170, 720, .48, .45, 1.1, -.06, .08, {TRUNK = .5}},
    {"shoulder to bust point",
     {250, 24},
     {262, 25},
     90,
     450,
     .35,
     .55,
     1.1,
     0,
     .07,
     {CHEST = .4, TRUNK = .2}},
    {"bust point width", {205, 22}, {190, 20}, 80, 380, .15, .60, 1.1, 0, .08, {CHEST = .4}},
    {"waist to hip", {190, 24}, {190, 24}, 60, 380, .35, .20, 1.1, .2, .15, {0}},
    {"waist to knee", {575, 34}, {560, 33}, 200, 900, .75, .35, 1.15, .07, .05, {TRUNK = -.4}},
    {"waist to floor", {1068, 52}, {990, 50}, 370, 1600, .91, .42, 1.15, .035, .015, {TRUNK = -.6}},
    {"nape to floor", {1528, 62}, {1414, 60}, 600, 2150, .97, .50, 1.05, 0, .02, {TRUNK = -.05}},
    {"outside leg", {1064, 52}, {986, 50}, 370, 1600, .91, .42, 1.15, .035, .02, {TRUNK = -.6}},
    {"inside leg", {846, 46.5}, {782, 45}, 270, 1250, .855, .35, 1.24, 0, .02, {TRUNK = -.7, ARM = .2}},
    {"body rise", {260, 26}, {260, 25}, 100, 450, .40, .30, 1.1, .12, .1, {TRUNK = .3}},
    {"crotch length", {622, 47}, {621, 42}, 250, 1200, .42, .66, 1.2, .1, .03, {WAIST = .2, TRUNK = .25}},
    {"trunk girth", {1665, 90}, {1559, 76}, 700, 2400, .68, .80, 1.1, 0, .015, {CHEST = .2, TRUNK = .7}},
    {"thigh girth",
     {625, 58},
     {616, 56},
     200,
     1150,
     .28,
     .90,
     1.5,
     0,
     .02,
     {WAIST = -.25, HIP = .75, LEG = .2}},
    {"knee girth", {400, 31}, {391, 33}, 160, 750, .38, .83, 1.2, 0, .03, {HIP = .3, LEG = .5}},
    {"calf girth",
     {392, 30},
     {373, 29},
     140,
     700,
     .33,
     .82,
     1.2,
     0,
     .015,
     {WAIST = -.2, FRAME = .1, LEG = .65}},
    {"ankle girth", {229, 15}, {216, 15}, 100, 420, .40, .73, .8, 0, .025, {FRAME = .35, LEG = .55}},
    {"foot length", {271, 13}, {246, 12}, 110, 400, .72, .50, .9, 0, .01, {ARM = .3, FRAME = .3}},
    {"foot girth", {252, 14}, {229, 13}, 110, 380, .48, .60, .85, 0, .03, {FRAME = .55, LEG = .15}},
};

const size_t bk_body_measure_count = sizeof bk_body_measures / sizeof *bk_body_measures;

const bk_body_measure *bk_body_measure_find(const char *name)
{
    for (size_t i = 0; name && i < bk_body_measure_count; i++) {
        if (!strcmp(bk_body_measures[i].name, name)) {
            return &bk_body_measures[i];
        }
    }
    return NULL;
}
