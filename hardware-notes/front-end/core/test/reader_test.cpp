// Finding lamp frames among damage.
#include "../frame_reader.h"
#include "check.h"
#include "wire.h"

using namespace boothlamp;

namespace {

/// Feeds bytes and counts the frames they complete.
uint32_t feed(LampFrameReader& reader, const uint8_t* bytes, uint16_t length) {
  uint32_t frames = 0;
  for (uint16_t i = 0; i < length; i++) {
    frames += reader.accept(bytes[i]);
  }
  return frames;
}

uint32_t feed(LampFrameReader& reader, const LampWire& wire) {
  return feed(reader, wire.at, wire.length);
}

}  // namespace

void readerFindsEveryFrameThatIsWhole() {
  LampFrameReader reader;
  for (uint32_t counter = 0; counter < 256; counter++) {
    for (uint32_t code = 0; code < 256; code++) {
      const LampWire wire = lampWire(static_cast<uint8_t>(counter), static_cast<uint8_t>(code));
      CHECK(feed(reader, wire) == 1);
      CHECK(reader.signalCode() == code);
    }
  }
  CHECK(reader.badFrames() == 0);
}

void readerIsInStepAgainAfterTheNextZero() {
  Random random(3);
  LampFrameReader reader;
  const uint8_t zero[] = {0};
  for (int round = 0; round < 20000; round++) {
    uint8_t noise[300];
    const uint16_t length = static_cast<uint16_t>(random.below(sizeof noise));
    for (uint16_t i = 0; i < length; i++) {
      noise[i] = random.byte();
    }
    feed(reader, noise, length);
    feed(reader, zero, 1);
    CHECK(feed(reader, lampWire(random.byte(), 4)) == 1);
    CHECK(reader.signalCode() == 4);
  }
}

/// One flipped bit, one changed, lost or added byte, at every place of every signal's frame.
void readerTakesNoFrameThatWasDamaged() {
  for (uint8_t code = 0; code < kSignals; code++) {
    for (uint32_t counter = 0; counter < 256; counter++) {
      const LampWire wire = lampWire(static_cast<uint8_t>(counter), code);
      for (uint16_t at = 0; at + 1 < wire.length; at++) {
        for (uint32_t change = 1; change < 256; change++) {
          LampWire changed = wire;
          changed.at[at] = static_cast<uint8_t>(changed.at[at] ^ change);
          LampFrameReader reader;
          CHECK(feed(reader, changed) == 0);
        }
        LampFrameReader reader;
        CHECK(feed(reader, wire.at, at) == 0);
        CHECK(feed(reader, wire.at + at + 1, static_cast<uint16_t>(wire.length - at - 1)) == 0);
        CHECK(reader.badFrames() == 0);  // the line's first frame may be half a frame
        feed(reader, wire.at, at);
        CHECK(feed(reader, wire.at + at + 1, static_cast<uint16_t>(wire.length - at - 1)) == 0);
        CHECK(reader.badFrames() == 1);
      }
    }
  }
}
