// Pairs on their way into frames.
#include "../front_end.h"
#include "../sample_packer.h"
#include "check.h"

using namespace boothlamp;

namespace {

Pair pairAt(uint32_t index) {
  return {static_cast<int16_t>(index * 31), static_cast<int16_t>(index * 257)};
}

/// Takes the frame that waits, checks every pair of it, and gives back its first index.
uint32_t take(SamplePacker& packer) {
  CHECK(packer.isReady());
  const uint32_t first = packer.firstIndex();
  for (uint8_t i = 0; i < packer.pairsPerFrame(); i++) {
    CHECK(packer.pairs()[i].current == pairAt(first + i).current);
    CHECK(packer.pairs()[i].voltage == pairAt(first + i).voltage);
  }
  packer.release();
  return first;
}

}  // namespace

void packerHandsPairsOverInOrder() {
  for (uint8_t size = 1; size <= kMostPairs; size++) {
    Pair storage[2 * kMostPairs];
    SamplePacker packer(storage, size);
    uint32_t next = 0;
    for (uint32_t index = 0; index < 10u * size; index++) {
      packer.add(pairAt(index));
      CHECK(packer.isReady() == ((index + 1) % size == 0));
      if (packer.isReady()) {
        CHECK(take(packer) == next);
        next += size;
      }
    }
    CHECK(next == 10u * size);
  }
}

void packerDropsWholeFramesWhenTheLineIsCongested() {
  Random random(2);
  Pair storage[2 * 25];
  SamplePacker packer(storage, 25);
  uint32_t taken = 0;
  uint32_t nextIndex = 0;
  uint32_t dropped = 0;
  uint32_t busyUntil = 0;
  constexpr uint32_t kPairs = 200000;
  for (uint32_t index = 0; index < kPairs; index++) {
    packer.add(pairAt(index));
    if (packer.isReady() && index >= busyUntil) {
      const uint32_t first = take(packer);
      CHECK(first >= nextIndex && first % 25 == 0);
      dropped += first - nextIndex;
      nextIndex = first + 25;
      taken += 25;
      busyUntil = index + random.below(120);
    }
  }
  // nothing is lost but what was dropped, and what waits or is being filled at the end
  CHECK(dropped > 1000 && taken > 1000);
  CHECK(taken + dropped == nextIndex && kPairs - nextIndex < 150);
}

void helloComesFirstAndEverySecond() {
  Pair storage[2 * 10];
  FrontEnd frontEnd({10000, -2048, 2047, "bench"}, storage, 10);
  constexpr uint32_t kStart = 0xFFFFFFFFu - 2500;  // the count of milliseconds wraps on the way
  uint32_t hellos = 0;
  uint32_t samples = 0;
  for (uint32_t millis = 0; millis < 5000; millis++) {
    for (int pair = 0; pair < 10; pair++) {
      frontEnd.add({1, 2});
    }
    WireBytes wire = frontEnd.nextFrame(kStart + millis);
    while (wire.length > 0) {
      uint8_t plain[64];
      CHECK(cobsDecode(wire.bytes, static_cast<uint16_t>(wire.length - 1), plain) != kMalformed);
      const bool hello = plain[0] == kTypeHello;
      CHECK(!hello || millis % 1000 == 0);
      hellos += hello;
      samples += !hello;
      wire = frontEnd.nextFrame(kStart + millis);
    }
  }
  CHECK(hellos == 5 && samples == 5000);
}
