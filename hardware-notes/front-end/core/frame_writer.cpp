#include "frame_writer.h"

#include "crc16.h"

namespace boothlamp {

WireBytes FrameWriter::samples(uint32_t firstIndex, const Pair* pairs, uint8_t count) {
  put8(kTypeSamples);
  put8(counter_++);
  put32(firstIndex);
  put8(count);
  for (uint8_t i = 0; i < count; i++) {
    put16(static_cast<uint16_t>(pairs[i].current));
    put16(static_cast<uint16_t>(pairs[i].voltage));
  }
  return finish();
}

WireBytes FrameWriter::hello(const BoardFacts& facts) {
  put8(kTypeHello);
  put8(kVersion);
  put32(facts.pairsPerSecond);
  put16(static_cast<uint16_t>(facts.lowestCount));
  put16(static_cast<uint16_t>(facts.highestCount));
  const char* next = facts.boardId;
  for (uint16_t i = 0; i < kBoardIdBytes; i++) {
    put8(static_cast<uint8_t>(*next == '\0' ? 0 : *next++));
  }
  return finish();
}

void FrameWriter::put8(uint8_t value) { bytes_[end_++] = value; }

void FrameWriter::put16(uint16_t value) {
  put8(static_cast<uint8_t>(value));
  put8(static_cast<uint8_t>(value >> 8));
}

void FrameWriter::put32(uint32_t value) {
  put16(static_cast<uint16_t>(value));
  put16(static_cast<uint16_t>(value >> 16));
}

WireBytes FrameWriter::finish() {
  put16(crc16(bytes_ + kLead, static_cast<uint16_t>(end_ - kLead)));
  const uint16_t encoded = cobsEncode(bytes_ + kLead, static_cast<uint16_t>(end_ - kLead), bytes_);
  bytes_[encoded] = kDelimiter;
  end_ = kLead;
  return {bytes_, static_cast<uint16_t>(encoded + 1)};
}

}  // namespace boothlamp
