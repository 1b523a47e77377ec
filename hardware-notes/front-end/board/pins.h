// What is soldered where, and the board's numbers. The rest of the layer reads them from here.
#pragma once

#include <avr/io.h>
#include <stdint.h>

namespace boothlamp {

/// Converter inputs: clamp on ADC0, voltage tap on ADC1.
constexpr uint8_t kCurrentInput = 0;
constexpr uint8_t kVoltageInput = 1;

/// The lights are bits 2, 3 and 4 of port D, lit when high. Each driver needs a pull-down of its own:
/// no pin is driven while the chip is in reset.
constexpr uint8_t kGreenPin = 1 << PD2;
constexpr uint8_t kAmberPin = 1 << PD3;
constexpr uint8_t kRedPin = 1 << PD4;
constexpr uint8_t kLightPins = kGreenPin | kAmberPin | kRedPin;

/// Both must divide without a rest: see `kTimerTop` and `kBaudDivider`.
constexpr uint32_t kPairsPerSecond = 5000;
constexpr uint32_t kBaud = 1000000;

/// 5 ms of pairs: 111 bytes on the line with the frame around them, 1.1 ms.
constexpr uint8_t kPairsPerFrame = 25;

/// A 10-bit converter; half of its range is taken off, so that an input at half of the supply reads 0.
constexpr int16_t kMidCount = 512;
constexpr int16_t kLowestCount = -kMidCount;
constexpr int16_t kHighestCount = 1023 - kMidCount;

}  // namespace boothlamp
