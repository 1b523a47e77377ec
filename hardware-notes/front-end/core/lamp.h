#pragma once

#include "frames.h"

namespace boothlamp {

/// Bits of the three lights.
constexpr uint8_t kGreenLight = 1;
constexpr uint8_t kAmberLight = 2;
constexpr uint8_t kRedLight = 4;

/// What the three lights do for the signal that the host last asked for.
///
/// Dark until the first lamp frame. After it, no frame for 1 s is a fault, and only a new frame ends
/// it: a green light is never lit without a frame that asked for one less than 1 s ago. Time is a
/// count of milliseconds that may wrap; nothing here depends on where it starts. `lights` must be
/// asked at least once in the 49 days that the count takes to wrap.
class Lamp {
 public:
  /// The host's silence after which the lamp shows fault.
  static constexpr uint32_t kLongestSilenceMillis = 1000;

  /// A lamp frame arrived. A code that is no signal shows fault: host and board do not belong
  /// together, and the lamp cannot be trusted.
  void onFrame(uint8_t signalCode, uint32_t nowMillis);

  /// The lights that are to be lit now.
  uint8_t lights(uint32_t nowMillis);

 private:
  void show(Signal signal, uint32_t nowMillis);
  void watchSilence(uint32_t nowMillis);
  uint32_t phaseMillis(uint32_t nowMillis);

  Signal shown_ = Signal::Dark;
  /// False until the first frame: nothing is overdue before it.
  bool heardHost_ = false;
  uint32_t frameMillis_ = 0;
  uint32_t patternStartMillis_ = 0;
};

}  // namespace boothlamp
