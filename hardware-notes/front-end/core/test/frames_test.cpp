// CRC, byte stuffing, layout of what the board sends.
#include <string.h>

#include "../cobs.h"
#include "../crc16.h"
#include "../front_end.h"
#include "check.h"

using namespace boothlamp;

namespace {

constexpr uint16_t kLongest = 600;

/// How often a byte is zero, from always to hardly ever.
constexpr uint32_t kZerosOneIn[] = {1, 2, 60, 300, 100000};

struct Bytes {
  uint8_t at[kLongest + 8];
  uint16_t length;
};

bool encodesTo(const Bytes& plain, const Bytes& expected) {
  uint8_t encoded[kLongest + 8];
  const uint16_t length = cobsEncode(plain.at, plain.length, encoded);
  return length == expected.length && memcmp(encoded, expected.at, length) == 0;
}

Bytes run(uint8_t from, uint16_t count) {
  Bytes bytes{{}, count};
  for (uint16_t i = 0; i < count; i++) {
    bytes.at[i] = static_cast<uint8_t>(from + i);
  }
  return bytes;
}

Bytes behind(uint8_t first, const Bytes& rest) {
  Bytes bytes{{first}, static_cast<uint16_t>(rest.length + 1)};
  memcpy(bytes.at + 1, rest.at, rest.length);
  return bytes;
}

uint16_t decode(const Bytes& encoded) {
  uint8_t plain[kLongest + 8];
  return cobsDecode(encoded.at, encoded.length, plain);
}

void roundTrip(const Bytes& plain) {
  uint8_t inPlace[kLongest + 8];
  const uint16_t lead = static_cast<uint16_t>(cobsLimit(plain.length) - plain.length);
  memcpy(inPlace + lead, plain.at, plain.length);
  const uint16_t length = cobsEncode(inPlace + lead, plain.length, inPlace);
  CHECK(length <= cobsLimit(plain.length));
  CHECK(memchr(inPlace, 0, length) == nullptr);
  CHECK(cobsDecode(inPlace, length, inPlace) == plain.length);
  CHECK(memcmp(inPlace, plain.at, plain.length) == 0);
}

uint16_t get16(const uint8_t* bytes) { return static_cast<uint16_t>(bytes[0] | bytes[1] << 8); }

/// Decodes a frame off the line and checks its end; gives back its length without the CRC.
uint16_t open(WireBytes wire, uint8_t* plain) {
  CHECK(wire.bytes[wire.length - 1] == kDelimiter);
  CHECK(memchr(wire.bytes, 0, wire.length) == wire.bytes + wire.length - 1);
  const uint16_t length = cobsDecode(wire.bytes, static_cast<uint16_t>(wire.length - 1), plain);
  CHECK(length != kMalformed && length > kCrcBytes);
  const uint16_t covered = static_cast<uint16_t>(length - kCrcBytes);
  CHECK(get16(plain + covered) == crc16(plain, covered));
  return covered;
}

}  // namespace

void crcHasThePublishedCheckValue() {
  // reveng.sourceforge.io/crc-catalogue: CRC-16/IBM-3740, check 0x29b1
  const char* text = "123456789";
  CHECK(crc16(reinterpret_cast<const uint8_t*>(text), 9) == 0x29B1);
  CHECK(crc16(nullptr, 0) == 0xFFFF);
}

void cobsEncodesThePublishedExamples() {
  // Examples as in Wikipedia's "Consistent Overhead Byte Stuffing", from memory; with 254 and 255
  // bytes encoders differ.
  CHECK(encodesTo({{0}, 1}, {{1, 1}, 2}));
  CHECK(encodesTo({{0, 0}, 2}, {{1, 1, 1}, 3}));
  CHECK(encodesTo({{0, 0x11, 0}, 3}, {{1, 2, 0x11, 1}, 4}));
  CHECK(encodesTo({{0x11, 0x22, 0, 0x33}, 4}, {{3, 0x11, 0x22, 2, 0x33}, 5}));
  CHECK(encodesTo({{0x11, 0, 0, 0}, 4}, {{2, 0x11, 1, 1, 1}, 5}));
  CHECK(encodesTo(run(1, 254), behind(0xFF, run(1, 254))));
  Bytes full = behind(0xFF, run(1, 254));
  full.at[255] = 2;
  full.at[256] = 0xFF;
  full.length = 257;
  CHECK(encodesTo(run(1, 255), full));
}

void cobsGivesBackWhatWentIn() {
  Random random(1);
  for (uint16_t length = 0; length <= 506; length++) {
    for (uint32_t zerosOneIn : kZerosOneIn) {
      Bytes plain{{}, length};
      for (uint16_t i = 0; i < length; i++) {
        const uint8_t value = static_cast<uint8_t>(1 + random.below(255));
        plain.at[i] = random.oneIn(zerosOneIn) ? uint8_t{0} : value;
      }
      roundTrip(plain);
    }
  }
}

void cobsRefusesWhatNoEncoderWrites() {
  CHECK(decode({{}, 0}) == kMalformed);
  CHECK(decode({{0}, 1}) == kMalformed);
  CHECK(decode({{3, 1}, 2}) == kMalformed);
  CHECK(decode({{3, 0, 1}, 3}) == kMalformed);
  // an empty group after a full one, as some encoders write it
  Bytes longForm = behind(0xFF, run(1, 254));
  longForm.at[longForm.length++] = 1;
  CHECK(decode(longForm) == 254);
}

void writerLaysFramesOutAsTheContractSays() {
  FrameWriter writer;
  uint8_t plain[kLongestBytes + 2];
  Pair pairs[kMostPairs];
  for (uint8_t i = 0; i < kMostPairs; i++) {
    pairs[i] = {static_cast<int16_t>(-300 * i), static_cast<int16_t>(i * 257)};
  }
  for (uint16_t frame = 0; frame < 300; frame++) {
    const uint8_t count = static_cast<uint8_t>(1 + frame % kMostPairs);
    CHECK(open(writer.samples(0xFFFFFF00u + frame, pairs, count), plain) == 7 + 4 * count);
    CHECK(plain[0] == 0x01 && plain[1] == frame % 256 && plain[6] == count);
    CHECK((get16(plain + 2) | static_cast<uint32_t>(get16(plain + 4)) << 16) ==
          0xFFFFFF00u + frame);
    for (uint8_t i = 0; i < count; i++) {
      CHECK(static_cast<int16_t>(get16(plain + 7 + 4 * i)) == pairs[i].current);
      CHECK(static_cast<int16_t>(get16(plain + 9 + 4 * i)) == pairs[i].voltage);
    }
  }
  CHECK(open(writer.hello({0x01020304, -512, 511, "bench"}), plain) == 26);
  const uint8_t head[] = {0x02, 1, 4, 3, 2, 1, 0x00, 0xFE, 0xFF, 0x01};
  CHECK(memcmp(plain, head, sizeof head) == 0);
  CHECK(memcmp(plain + 10, "bench\0\0\0\0\0\0\0\0\0\0\0", 16) == 0);
  CHECK(open(writer.hello({1, 0, 1, "a name that is too long"}), plain) == 26);
  CHECK(memcmp(plain + 10, "a name that is t", 16) == 0);
}
