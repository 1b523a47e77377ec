// The board's program on a simulated chip: what leaves the line and the pins, and when.
//
//   board-test FRONT_END_ELF
#include <string.h>

#include "../../core/cobs.h"
#include "../../core/crc16.h"
#include "../../core/frames.h"
#include "../../core/test/check.h"
#include "../../core/test/wire.h"
#include "chip.h"

using namespace boothlamp;

namespace {

constexpr uint8_t kGreen = 1 << 2;
constexpr uint8_t kAmber = 1 << 3;
constexpr uint8_t kRed = 1 << 4;

constexpr uint64_t kCyclesPerPair = 16000000 / 5000;

/// Counts what it is given and checks every frame on the way.
struct FrameChecker {
  uint8_t encoded[512];
  uint16_t held = 0;
  uint32_t hellos = 0;
  uint32_t pairs = 0;

  void take(const std::vector<uint8_t>& bytes) {
    for (uint8_t byte : bytes) {
      CHECK(held < sizeof encoded);
      encoded[held++] = byte;
      if (byte == kDelimiter) {
        check(static_cast<uint16_t>(held - 1));
        held = 0;
      }
    }
  }

  void check(uint16_t encodedLength) {
    uint8_t plain[512];
    const uint16_t length = cobsDecode(encoded, encodedLength, plain);
    CHECK(length != kMalformed && length > kCrcBytes);
    const uint16_t covered = static_cast<uint16_t>(length - kCrcBytes);
    CHECK(crc16(plain, covered) == get16(plain + covered));
    if (plain[0] == kTypeHello) {
      CHECK(get16(plain + 2) == 5000 && get16(plain + 4) == 0);
      hellos++;
    } else {
      CHECK(hellos > 0);
      checkPairs(plain);
    }
  }

  void checkPairs(const uint8_t* plain) {
    CHECK(plain[0] == kTypeSamples);
    CHECK((get16(plain + 2) | static_cast<uint32_t>(get16(plain + 4)) << 16) == pairs);
    for (uint8_t i = 0; i < plain[6]; i++) {
      const Inputs inputs = inputsOf(pairs++);
      CHECK(static_cast<int16_t>(get16(plain + 7 + 4 * i)) == inputs.current - 512);
      CHECK(static_cast<int16_t>(get16(plain + 9 + 4 * i)) == inputs.voltage - 512);
    }
  }

  static uint16_t get16(const uint8_t* bytes) {
    return static_cast<uint16_t>(bytes[0] | bytes[1] << 8);
  }
};

void sendLamp(Chip& chip, Signal signal) {
  static uint8_t counter = 0;
  const LampWire wire = lampWire(counter++, static_cast<uint8_t>(signal));
  for (uint16_t i = 0; i < wire.length; i++) {
    chip.receive(wire.at[i]);
  }
}

/// Milliseconds until the lights are so, at most 2000.
uint64_t millisUntil(Chip& chip, uint8_t lights) {
  uint64_t millis = 0;
  while (chip.lights() != lights && millis < 2000) {
    chip.run(1);
    millis++;
  }
  return millis;
}

void pairsLeaveTheLineInOrderAndOnTime(Chip& chip) {
  chip.run(1200);
  CHECK(chip.lights() == 0);
  FrameChecker frames;
  frames.take(chip.sent);
  CHECK(frames.hellos == 2);
  CHECK(frames.pairs >= 5950);
  for (size_t pair = 2; pair < chip.currentStarts.size(); pair++) {
    const uint64_t cycles = chip.currentStarts[pair] - chip.currentStarts[pair - 1];
    // the simulator sees the timer only between instructions and interrupts
    CHECK(cycles > kCyclesPerPair - 200 && cycles < kCyclesPerPair + 200);
  }
}

/// From the start of one conversion to the start of the other.
void voltageFollowsTheCurrentClosely(const Chip& chip) {
  uint64_t least = ~uint64_t{0};
  uint64_t most = 0;
  for (size_t pair = 1; pair < chip.voltageStarts.size(); pair++) {
    const uint64_t cycles = chip.voltageStarts[pair] - chip.currentStarts[pair];
    least = cycles < least ? cycles : least;
    most = cycles > most ? cycles : most;
  }
  printf("voltage begins %.1f to %.1f us after current\n", static_cast<double>(least) / 16,
         static_cast<double>(most) / 16);
  CHECK(most < 70 * 16);
}

void lampFollowsTheHostAndEndsGreenByItself(Chip& chip) {
  for (int i = 0; i < 5; i++) {
    sendLamp(chip, Signal::Green);
    CHECK(millisUntil(chip, kGreen) <= 2);
    chip.run(250);
    CHECK(chip.lights() == kGreen);
  }
  const uint64_t silent = 250 + millisUntil(chip, kRed);
  printf("fault %llu ms after the last frame\n", static_cast<unsigned long long>(silent));
  CHECK(silent >= 995 && silent <= 1003);
  CHECK(millisUntil(chip, kAmber) <= 501);
  sendLamp(chip, Signal::Settling);
  CHECK(millisUntil(chip, kAmber | kGreen) <= 2);
}

void aStandstillOfTheConverterEndsDark(Chip& chip) {
  sendLamp(chip, Signal::Green);
  CHECK(millisUntil(chip, kGreen) <= 2);
  chip.stallConverter();
  const size_t sentBefore = chip.sent.size();
  const uint64_t millis = millisUntil(chip, 0);
  printf("dark %llu ms after the converter stood still\n",
         static_cast<unsigned long long>(millis));
  CHECK(millis <= 300);
  chip.run(100);
  CHECK(chip.lights() == 0);
  // it has started again: hello is the first thing a board says
  CHECK(chip.sent.size() >= sentBefore + 30);
}

}  // namespace

int main(int count, char** words) {
  CHECK(count == 2);
  Chip chip(words[1]);
  pairsLeaveTheLineInOrderAndOnTime(chip);
  voltageFollowsTheCurrentClosely(chip);
  lampFollowsTheHostAndEndsGreenByItself(chip);
  aStandstillOfTheConverterEndsDark(chip);
  printf("4 tests passed\n");
  return 0;
}
