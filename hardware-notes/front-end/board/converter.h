#pragma once

#include <stdint.h>

namespace boothlamp {

/// Starts the timer and the converter: from now on an interrupt gives each pair to `onPair`.
void converterStart();

/// Milliseconds since the start, modulo 2^32, counted in pairs: if pairs stop, so does this clock.
uint32_t millisNow();

}  // namespace boothlamp
