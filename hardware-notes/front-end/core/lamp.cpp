#include "lamp.h"

namespace boothlamp {

namespace {

/// An idle lamp blinks this often: seldom enough not to draw the eye.
constexpr uint32_t kIdlePeriodMillis = 4000;
constexpr uint32_t kIdleBlinkMillis = 100;

/// Half a period of 1 Hz. No flash exceeds 3 a second (WCAG 2.x, success criterion 2.3.1).
constexpr uint32_t kHalfPeriodMillis = 500;

/// Every pattern repeats within this: it is a multiple of both periods.
constexpr uint32_t kRepeatMillis = kIdlePeriodMillis;
static_assert(kRepeatMillis % (2 * kHalfPeriodMillis) == 0, "a pattern would jump");

uint8_t pattern(Signal signal, uint32_t phaseMillis) {
  switch (signal) {
    case Signal::Dark:
      return 0;
    case Signal::Idle:
      return phaseMillis < kIdleBlinkMillis ? kGreenLight : 0;
    case Signal::Settling:
      return kAmberLight | kGreenLight;
    case Signal::Green:
      return kGreenLight;
    case Signal::Amber:
      return kAmberLight;
    case Signal::Red:
      return kRedLight;
    case Signal::Fault:
      break;
  }
  return phaseMillis / kHalfPeriodMillis % 2 == 0 ? kRedLight : kAmberLight;
}

}  // namespace

void Lamp::onFrame(uint8_t signalCode, uint32_t nowMillis) {
  watchSilence(nowMillis);
  heardHost_ = true;
  frameMillis_ = nowMillis;
  show(signalCode < kSignals ? static_cast<Signal>(signalCode) : Signal::Fault, nowMillis);
}

uint8_t Lamp::lights(uint32_t nowMillis) {
  watchSilence(nowMillis);
  return pattern(shown_, phaseMillis(nowMillis));
}

/// A repeated signal goes on with its pattern; a new one starts its own.
void Lamp::show(Signal signal, uint32_t nowMillis) {
  if (signal != shown_) {
    shown_ = signal;
    patternStartMillis_ = nowMillis;
  }
}

/// Puts the fault in the place of what was shown, so that a count that wraps cannot bring it back.
void Lamp::watchSilence(uint32_t nowMillis) {
  if (heardHost_ && nowMillis - frameMillis_ >= kLongestSilenceMillis) {
    show(Signal::Fault, nowMillis);
  }
}

/// Takes whole repeats off the pattern's age, so that it never grows until it wraps.
uint32_t Lamp::phaseMillis(uint32_t nowMillis) {
  const uint32_t ageMillis = nowMillis - patternStartMillis_;
  const uint32_t phase = ageMillis % kRepeatMillis;
  patternStartMillis_ = nowMillis - phase;
  return phase;
}

}  // namespace boothlamp
