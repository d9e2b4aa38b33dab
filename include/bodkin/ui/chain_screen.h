#ifndef BODKIN_UI_CHAIN_SCREEN_H
#define BODKIN_UI_CHAIN_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Chain screen: which steps in which order decide the day a costume is finished, when and by whom, and what each of them waited
/// for; and which decide it most often when the times of the steps vary.
extern const bk_screen_kind bk_chain_screen;

/// What it remembers, for bk_stack_push: the costume, by id.
void *bk_chain_screen_new(int64_t costume);

#endif
