// The lamp's patterns and its own time-out.
#include "../lamp.h"
#include "check.h"

using namespace boothlamp;

namespace {

constexpr uint8_t kOff = 0;

/// Starts of the clock to test with: a fresh board, and shortly before the count wraps.
constexpr uint32_t kStarts[] = {0, 12345, 0x7FFFFFFFu - 900, 0xFFFFFFFFu - 2300};

uint8_t code(Signal signal) { return static_cast<uint8_t>(signal); }

/// The same patterns again, written down as a table of times.
uint8_t expected(Signal signal, uint32_t millis) {
  const uint8_t faultLight = millis % 1000 < 500 ? kRedLight : kAmberLight;
  const uint8_t idleLight = millis % 4000 < 100 ? kGreenLight : kOff;
  const uint8_t lights[] = {kOff,
                            idleLight,
                            kAmberLight | kGreenLight,
                            kGreenLight,
                            kAmberLight,
                            kRedLight,
                            faultLight};
  return lights[code(signal)];
}

}  // namespace

void lampIsDarkUntilTheFirstFrame() {
  for (uint32_t start : kStarts) {
    Lamp lamp;
    for (uint32_t millis = 0; millis < 10000; millis++) {
      CHECK(lamp.lights(start + millis) == kOff);
    }
    lamp.onFrame(code(Signal::Red), start + 10000);
    CHECK(lamp.lights(start + 10000) == kRedLight);
  }
}

void lampShowsThePatternOfEverySignal() {
  for (uint32_t start : kStarts) {
    for (uint8_t signal = 0; signal < kSignals; signal++) {
      Lamp lamp;
      for (uint32_t millis = 0; millis < 20000; millis++) {
        if (millis % 250 == 0) {
          lamp.onFrame(signal, start + millis);
        }
        CHECK(lamp.lights(start + millis) == expected(static_cast<Signal>(signal), millis));
      }
    }
  }
}

void lampShowsFaultAfterASecondOfSilence() {
  for (uint32_t start : kStarts) {
    for (uint8_t signal = 0; signal < kSignals; signal++) {
      Lamp lamp;
      lamp.onFrame(signal, start);
      CHECK(lamp.lights(start + 999) == expected(static_cast<Signal>(signal), 999));
      // A fault that the host asked for goes on with its pattern; one of the board's own starts it.
      for (uint32_t millis = 1000; millis < 9000; millis++) {
        CHECK(lamp.lights(start + millis) == expected(Signal::Fault, millis));
      }
      lamp.onFrame(code(Signal::Amber), start + 9000);
      CHECK(lamp.lights(start + 9000) == kAmberLight);
    }
  }
}

void lampShowsFaultForACodeThatIsNoSignal() {
  for (uint32_t wrong = kSignals; wrong < 256; wrong++) {
    Lamp lamp;
    lamp.onFrame(code(Signal::Green), 0);
    lamp.onFrame(static_cast<uint8_t>(wrong), 10);
    CHECK(lamp.lights(10) == kRedLight);
    CHECK(lamp.lights(510) == kAmberLight);
  }
}

/// Two turns of the count with a silent host: no wrap makes the old frame look young.
void lampStaysInFaultWhenTheClockWraps() {
  Lamp lamp;
  lamp.onFrame(code(Signal::Green), 500);
  uint64_t millis = 600;
  CHECK(lamp.lights(600) == kGreenLight);
  while (millis < 0x200000000ULL + 5000) {
    millis += 9973;  // a prime: it meets every phase, and the first second after each wrap
    CHECK((lamp.lights(static_cast<uint32_t>(millis)) & kGreenLight) == 0);
  }
  for (uint32_t each = 0; each < 3000; each++) {
    CHECK((lamp.lights(each) & kGreenLight) == 0);
  }
}

/// An idle booth over a long holiday: 49.7 days after the pattern began, its age wraps.
void lampKeepsItsPatternWhenItsAgeWraps() {
  Lamp lamp;
  for (uint64_t millis = 0; millis < 0x100000000ULL + 60000; millis += 997) {
    lamp.onFrame(code(Signal::Idle), static_cast<uint32_t>(millis));
    const uint32_t phase = static_cast<uint32_t>(millis % 4000);
    CHECK(lamp.lights(static_cast<uint32_t>(millis)) == expected(Signal::Idle, phase));
  }
}

/// WCAG 2.x, success criterion 2.3.1. A flash is a light that goes on; the board's own patterns
/// are counted, with the clock's wrap among them.
void lampFlashesAtMostThreeTimesASecond() {
  for (uint8_t signal = 0; signal < kSignals; signal++) {
    Lamp lamp;
    const uint32_t start = 0xFFFFFFFFu - 30000;
    uint32_t flashMillis[3] = {};
    uint32_t flashes = 0;
    uint8_t before = 0;
    for (uint32_t millis = 0; millis < 60000; millis++) {
      if (millis % 250 == 0) {
        lamp.onFrame(signal, start + millis);
      }
      const uint8_t now = lamp.lights(start + millis);
      if ((now & ~before) != 0) {
        CHECK(flashes < 3 || millis - flashMillis[flashes % 3] >= 1000);
        flashMillis[flashes++ % 3] = millis;
      }
      before = now;
    }
  }
}
