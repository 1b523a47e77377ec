#include "frame_reader.h"

#include "crc16.h"

namespace boothlamp {

bool LampFrameReader::accept(uint8_t byte) {
  if (byte != kDelimiter) {
    hold(byte);
    return false;
  }
  const uint8_t length = held_;
  const bool wholeFrame = synchronised_;
  held_ = 0;
  synchronised_ = true;
  if (length == 0) {
    return false;
  }
  const bool good = length <= kLongestEncoded && parse(length);
  if (!good && wholeFrame) {
    badFrames_++;
  }
  return good;
}

void LampFrameReader::hold(uint8_t byte) {
  if (held_ < kLongestEncoded) {
    bytes_[held_] = byte;
  }
  if (held_ <= kLongestEncoded) {
    held_++;
  }
}

bool LampFrameReader::parse(uint8_t encodedLength) {
  if (cobsDecode(bytes_, encodedLength, bytes_) != kLampBytes || bytes_[0] != kTypeLamp) {
    return false;
  }
  const uint16_t sent = static_cast<uint16_t>(bytes_[kLampBytes - 2] | bytes_[kLampBytes - 1] << 8);
  return crc16(bytes_, kLampBytes - kCrcBytes) == sent;
}

}  // namespace boothlamp
