// Consistent Overhead Byte Stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2),
// 1999): takes the zeros out of a frame, so that a zero can divide frames.
#pragma once

#include <stdint.h>

namespace boothlamp {

/// Answer of `cobsDecode` to bytes that no encoder can have written.
constexpr uint16_t kMalformed = 0xFFFF;

/// Most bytes that `length` bytes become: one more, and one for every full group of 254.
constexpr uint16_t cobsLimit(uint16_t length) {
  return static_cast<uint16_t>(length + 1 + length / 254);
}

/// Encodes without the dividing zero. `to` takes `cobsLimit(length)` bytes, and may overlap `from`
/// if it starts at least `cobsLimit(length) - length` bytes before it.
/// Returns the bytes written.
uint16_t cobsEncode(const uint8_t* from, uint16_t length, uint8_t* to);

/// Decodes what stands between two zeros; `to` may be `from`. Returns the bytes written, fewer than
/// `length`, or `kMalformed`.
uint16_t cobsDecode(const uint8_t* from, uint16_t length, uint8_t* to);

}  // namespace boothlamp
