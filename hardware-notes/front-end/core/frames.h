// Layout of the frames between board and host; hardware-notes/serial-frames.md is the contract.
#pragma once

#include <stdint.h>

namespace boothlamp {

/// One current count and the voltage count taken with it.
struct Pair {
  int16_t current;
  int16_t voltage;
};

/// What the host wants the lamp to show, by its number in the lamp frame.
enum class Signal : uint8_t { Dark, Idle, Settling, Green, Amber, Red, Fault };

/// Number of signals: a code at or above it is none.
constexpr uint8_t kSignals = 7;

constexpr uint8_t kTypeSamples = 0x01;
constexpr uint8_t kTypeHello = 0x02;
constexpr uint8_t kTypeLamp = 0x10;

/// Version of the frames that the hello frame names.
constexpr uint8_t kVersion = 1;

/// The byte between frames; it is nowhere else on the line.
constexpr uint8_t kDelimiter = 0;

constexpr uint16_t kCrcBytes = 2;
constexpr uint16_t kPairBytes = 4;

/// Most pairs in a samples frame.
constexpr uint8_t kMostPairs = 100;

/// Bytes of a samples frame before its first pair.
constexpr uint16_t kSamplesHeadBytes = 7;

constexpr uint16_t kBoardIdBytes = 16;
constexpr uint16_t kHelloBytes = 10 + kBoardIdBytes + kCrcBytes;
constexpr uint16_t kLampBytes = 3 + kCrcBytes;
constexpr uint16_t kLongestBytes = kSamplesHeadBytes + kMostPairs * kPairBytes + kCrcBytes;

}  // namespace boothlamp
