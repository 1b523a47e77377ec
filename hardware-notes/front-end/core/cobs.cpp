#include "cobs.h"

namespace boothlamp {

namespace {

/// Code of a group of 254 bytes without a zero after it.
constexpr uint8_t kFullGroup = 0xFF;

}  // namespace

uint16_t cobsEncode(const uint8_t* from, uint16_t length, uint8_t* to) {
  uint16_t codeAt = 0;
  uint16_t out = 1;
  uint8_t code = 1;
  for (uint16_t in = 0; in < length; in++) {
    const uint8_t byte = from[in];
    if (byte != 0) {
      to[out++] = byte;
      code++;
    }
    // A full group at the very end needs no empty one after it.
    if (byte == 0 || (code == kFullGroup && in + 1 < length)) {
      to[codeAt] = code;
      codeAt = out++;
      code = 1;
    }
  }
  to[codeAt] = code;
  return out;
}

uint16_t cobsDecode(const uint8_t* from, uint16_t length, uint8_t* to) {
  if (length == 0) {
    return kMalformed;
  }
  uint16_t in = 0;
  uint16_t out = 0;
  while (in < length) {
    const uint8_t code = from[in++];
    const uint16_t groupEnd = static_cast<uint16_t>(in + code - 1);
    if (code == 0 || groupEnd > length) {
      return kMalformed;
    }
    while (in < groupEnd) {
      if (from[in] == 0) {
        return kMalformed;
      }
      to[out++] = from[in++];
    }
    if (code != kFullGroup && in < length) {
      to[out++] = 0;
    }
  }
  return out;
}

}  // namespace boothlamp
