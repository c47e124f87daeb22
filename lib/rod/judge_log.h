// What the log says of itself, entry against entry, whatever is planned.
#ifndef WITHY_ROD_JUDGE_LOG_H_
#define WITHY_ROD_JUDGE_LOG_H_

#include <vector>

#include "resolver.h"

namespace withy {

// Entries that say nothing; what was glued on twice, or broken.
void JudgeLog(Resolver& r);

// Sections that broke, unless a repair of them was logged later. Needs the sections.
std::vector<Logged<v1::Breakage>> UnrepairedBreakages(const Resolver& r);
void JudgeBreakages(Resolver& r);

// Points of the rod that are not on it: where it is held, carries its reel, is to balance or was seen to balance. Takes a
// balance point off the rod, or below zero, out of Rod::wholes. Needs the rod's length.
void JudgePoints(Resolver& r);

}  // namespace withy

#endif  // WITHY_ROD_JUDGE_LOG_H_
