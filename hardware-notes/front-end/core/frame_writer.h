#pragma once

#include "cobs.h"
#include "frames.h"

namespace boothlamp {

/// What a board says of itself.
struct BoardFacts {
  uint32_t pairsPerSecond;
  int16_t lowestCount;
  int16_t highestCount;
  /// ASCII, at most 16 characters; what is longer is cut off.
  const char* boardId;
};

/// Bytes on their way to the line; valid until the writer writes again.
struct WireBytes {
  const uint8_t* bytes;
  uint16_t length;
};

/// Writes frames as they go over the line, each with the zero that ends it. Holds one frame of up to
/// 412 bytes and encodes it where it stands.
class FrameWriter {
 public:
  /// A samples frame of 1 to 100 pairs; numbers it.
  WireBytes samples(uint32_t firstIndex, const Pair* pairs, uint8_t count);

  WireBytes hello(const BoardFacts& facts);

 private:
  /// Bytes by which the encoded frame outgrows the plain one; the plain one starts behind them, so
  /// that encoding never writes over what it has not read.
  static constexpr uint16_t kLead = cobsLimit(kLongestBytes) - kLongestBytes;

  void put8(uint8_t value);
  void put16(uint16_t value);
  void put32(uint32_t value);
  WireBytes finish();

  uint8_t bytes_[kLead + kLongestBytes + 1];
  uint16_t end_ = kLead;
  uint8_t counter_ = 0;
};

}  // namespace boothlamp
