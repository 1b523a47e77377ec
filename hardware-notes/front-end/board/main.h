#pragma once

#include "../core/frames.h"

namespace boothlamp {

/// Called by the converter's interrupt with every pair.
void onPair(Pair pair);

}  // namespace boothlamp
