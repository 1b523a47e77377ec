#include "crc16.h"

namespace boothlamp {

namespace {

constexpr uint16_t kStart = 0xFFFF;

/// Divides a byte at a time without a table: x^16 + x^12 + x^5 + 1 is sparse enough that eight steps
/// of the shift register come down to four xors. A table would take a quarter of a small chip's RAM.
uint16_t add(uint16_t crc, uint8_t byte) {
  uint8_t fold = static_cast<uint8_t>((crc >> 8) ^ byte);
  fold = static_cast<uint8_t>(fold ^ (fold >> 4));
  const uint16_t wide = fold;
  return static_cast<uint16_t>((crc << 8) ^ (wide << 12) ^ (wide << 5) ^ wide);
}

}  // namespace

uint16_t crc16(const uint8_t* bytes, uint16_t length) {
  uint16_t crc = kStart;
  for (uint16_t i = 0; i < length; i++) {
    crc = add(crc, bytes[i]);
  }
  return crc;
}

}  // namespace boothlamp
