#pragma once

#include "cobs.h"
#include "frames.h"

namespace boothlamp {

/// Finds lamp frames in the bytes that the host sends.
///
/// Damage costs the frame it touches and no other: the next zero starts afresh. What stands before
/// the first zero may be the end of a frame whose start was sent before the board listened, so if
/// that is bad it is not counted.
class LampFrameReader {
 public:
  /// Takes one byte; true if it completed a lamp frame whose CRC is right.
  bool accept(uint8_t byte);

  /// Signal code of the frame last completed, 0 to 255: what it means is not judged here.
  uint8_t signalCode() const { return bytes_[2]; }

  /// Frames thrown away so far, modulo 65536.
  uint16_t badFrames() const { return badFrames_; }

 private:
  /// The encoded frame, with room for an encoder that ends on an empty group.
  static constexpr uint8_t kLongestEncoded = cobsLimit(kLampBytes) + 1;

  void hold(uint8_t byte);
  bool parse(uint8_t encodedLength);

  uint8_t bytes_[kLongestEncoded] = {};
  /// Bytes since the last zero; one more than the buffer holds stands for any number too many.
  uint8_t held_ = 0;
  bool synchronised_ = false;
  uint16_t badFrames_ = 0;
};

}  // namespace boothlamp
