// Lamp frames as a host sends them, for tests.
#pragma once

#include "../cobs.h"
#include "../crc16.h"
#include "../frames.h"

/// A lamp frame with the zero that ends it.
struct LampWire {
  static constexpr uint16_t kBytes = boothlamp::kLampBytes + 2;
  uint8_t at[kBytes];
  uint16_t length;
};

inline LampWire lampWire(uint8_t counter, uint8_t signalCode) {
  uint8_t plain[boothlamp::kLampBytes] = {boothlamp::kTypeLamp, counter, signalCode, 0, 0};
  const uint16_t crc = boothlamp::crc16(plain, 3);
  plain[3] = static_cast<uint8_t>(crc);
  plain[4] = static_cast<uint8_t>(crc >> 8);
  LampWire wire{};
  wire.length = boothlamp::cobsEncode(plain, boothlamp::kLampBytes, wire.at);
  wire.at[wire.length++] = boothlamp::kDelimiter;
  return wire;
}
