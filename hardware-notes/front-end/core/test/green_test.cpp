// The property that matters most: no green light without a whole frame that asked for one, less
// than a second ago. The judge here keeps its own 64-bit time and sees the bytes, not the lamp.
#include <string.h>

#include "../front_end.h"
#include "check.h"
#include "wire.h"

using namespace boothlamp;

namespace {

bool asksForGreen(uint8_t code) {
  return code == static_cast<uint8_t>(Signal::Idle) ||
         code == static_cast<uint8_t>(Signal::Settling) ||
         code == static_cast<uint8_t>(Signal::Green);
}

/// What an untiring observer knows: which whole frame was sent last, and when.
struct Observer {
  bool anyFrame = false;
  uint8_t lastCode = 0;
  uint64_t lastMillis = 0;

  void onWholeFrame(uint8_t code, uint64_t millis) {
    anyFrame = true;
    lastCode = code;
    lastMillis = millis;
  }

  void judge(uint8_t lights, uint64_t millis) const {
    if (!anyFrame) {
      CHECK(lights == 0);
    }
    if ((lights & kGreenLight) == 0) {
      return;
    }
    CHECK(anyFrame && asksForGreen(lastCode));
    CHECK(millis - lastMillis < Lamp::kLongestSilenceMillis);
    if (lastCode == static_cast<uint8_t>(Signal::Settling)) {
      CHECK((lights & kAmberLight) != 0);
    }
  }
};

enum class Damage { None, Flip, Drop, Insert, CutShort };

/// One booth: a front end, a line that may do damage, an observer, and a clock of 64 bits of which
/// the front end sees 32.
class Booth {
 public:
  Booth(uint64_t seed, uint64_t startMillis)
      : random_(seed), frontEnd_({5000, -512, 511, "test"}, storage_, 25), millis_(startMillis) {}

  void run(uint32_t steps) {
    for (uint32_t step = 0; step < steps; step++) {
      act();
      const uint8_t lights = frontEnd_.lights(static_cast<uint32_t>(millis_));
      observer_.judge(lights, millis_);
      greenSteps += (lights & kGreenLight) != 0;
    }
  }

  uint64_t greenSteps = 0;

 private:
  void act() {
    switch (random_.below(8)) {
      case 0:
      case 1:
      case 2:
        sendFrame(Damage::None);
        break;
      case 3:
        sendFrame(static_cast<Damage>(1 + random_.below(4)));
        break;
      case 4:
        sendNoise();
        break;
      case 5:
        millis_ += random_.below(3);
        break;
      case 6:
        millis_ += random_.below(400);
        break;
      default:
        fallSilent();
        break;
    }
  }

  /// Mostly around the time-out; now and then for most of a turn of the 32-bit count, and then on to
  /// just where the count comes round to the last frame's time again.
  void fallSilent() {
    if (!random_.oneIn(20)) {
      millis_ += 900 + random_.below(200);
      return;
    }
    const uint64_t comesRound = observer_.lastMillis + (uint64_t{1} << 32);
    millis_ += 1000 + random_.below(0x7FFFFFFF);
    observer_.judge(frontEnd_.lights(static_cast<uint32_t>(millis_)), millis_);
    if (millis_ < comesRound) {
      millis_ = comesRound + random_.below(1500);
    }
  }

  /// Half of all frames ask for green, so that there is something to get wrong.
  uint8_t anyCode() {
    const uint8_t green = static_cast<uint8_t>(Signal::Green);
    return random_.oneIn(2) ? green
                            : static_cast<uint8_t>(random_.below(random_.oneIn(4) ? 256 : 7));
  }

  void sendFrame(Damage damage) {
    lastCode_ = anyCode();
    lastWire_ = lampWire(random_.byte(), lastCode_);
    const uint16_t at = static_cast<uint16_t>(random_.below(lastWire_.length - 1u));
    for (uint16_t i = 0; i < lastWire_.length; i++) {
      put(lastWire_.at[i], i == at ? damage : Damage::None);
      if (damage == Damage::CutShort && i == at) {
        return;
      }
      millis_ += random_.oneIn(10);
    }
  }

  void put(uint8_t byte, Damage damage) {
    switch (damage) {
      case Damage::Flip:
        receive(static_cast<uint8_t>(byte ^ (1u << random_.below(8))));
        break;
      case Damage::Drop:
        break;
      case Damage::Insert:
        receive(static_cast<uint8_t>(1 + random_.below(255)));
        receive(byte);
        break;
      default:
        receive(byte);
        break;
    }
  }

  /// Random bytes; four in five times with a zero after them.
  void sendNoise() {
    for (uint32_t left = random_.below(6); left > 0; left--) {
      receive(random_.byte());
    }
    if (!random_.oneIn(5)) {
      receive(kDelimiter);
    }
  }

  void receive(uint8_t byte) {
    observe(byte);
    frontEnd_.receive(byte, static_cast<uint32_t>(millis_));
  }

  /// A frame is whole if exactly its bytes stand between two zeros, however they got there.
  void observe(uint8_t byte) {
    if (sinceZero_ < sizeof seen_) {
      seen_[sinceZero_] = byte;
    }
    sinceZero_++;
    if (byte != kDelimiter) {
      return;
    }
    if (sinceZero_ == lastWire_.length && memcmp(seen_, lastWire_.at, sinceZero_) == 0) {
      observer_.onWholeFrame(lastCode_, millis_);
    }
    sinceZero_ = 0;
  }

  Random random_;
  Pair storage_[2 * 25];
  FrontEnd frontEnd_;
  Observer observer_;
  uint64_t millis_;
  LampWire lastWire_ = {};
  uint8_t lastCode_ = 0;
  uint8_t seen_[16] = {};
  uint32_t sinceZero_ = 0;
};

}  // namespace

void greenIsNeverOlderThanASecond() {
  uint64_t greenSteps = 0;
  for (uint64_t seed = 0; seed < 2000; seed++) {
    const uint64_t start = seed % 2 == 0 ? seed * 7919 : 0xFFFFFFFFULL - seed;
    Booth booth(seed, start);
    booth.run(1000);
    greenSteps += booth.greenSteps;
  }
  CHECK(greenSteps > 100000);  // or nothing was tested
}

/// Every pair of signals, the second after every gap up to past the time-out, every millisecond.
void greenIsNeverOlderThanASecondAtAnyMillisecondOfAnySignalPair() {
  for (uint8_t first = 0; first <= kSignals; first++) {
    for (uint8_t second = 0; second <= kSignals; second++) {
      for (uint32_t gap = 0; gap <= 1100; gap += 11) {
        Lamp lamp;
        Observer observer;
        const uint64_t start = 0xFFFFFFFFULL - 700;
        for (uint64_t millis = start; millis < start + gap + 1500; millis++) {
          if (millis == start || millis == start + gap) {
            const uint8_t code = millis == start + gap ? second : first;
            lamp.onFrame(code, static_cast<uint32_t>(millis));
            observer.onWholeFrame(code, millis);
          }
          observer.judge(lamp.lights(static_cast<uint32_t>(millis)), millis);
        }
      }
    }
  }
}
