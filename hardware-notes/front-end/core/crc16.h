#pragma once

#include <stdint.h>

namespace boothlamp {

/// CRC-16/IBM-3740 of `length` bytes: polynomial 0x1021, start 0xFFFF, not reflected, no final xor.
/// The name is that of the CRC catalogue (reveng.sourceforge.io/crc-catalogue).
uint16_t crc16(const uint8_t* bytes, uint16_t length);

}  // namespace boothlamp
