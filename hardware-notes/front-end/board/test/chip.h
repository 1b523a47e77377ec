// The chip, simulated instruction by instruction (libsimavr), with what it is wired to.
#pragma once

#include <stdint.h>

#include <vector>

extern "C" {
#include <simavr/sim_avr.h>
}

/// Counts at which the two inputs are held for a pair, 0 to 1023.
struct Inputs {
  uint16_t current;
  uint16_t voltage;
};

/// Inputs that differ from pair to pair.
inline Inputs inputsOf(uint64_t pair) {
  return {static_cast<uint16_t>(pair * 37 % 1024), static_cast<uint16_t>(pair * 101 % 1024)};
}

/// An ATmega328P at 16 MHz that runs a program. Time is the chip's own, counted in cycles.
///
/// The simulator knows no trigger of the converter by a timer; `step` starts the conversion where
/// the data sheet says the chip does: when the flag of compare match B goes up, if converter and
/// trigger source are set so.
class Chip {
 public:
  static constexpr uint64_t kCyclesPerMilli = 16000;

  explicit Chip(const char* elfPath);
  ~Chip();

  /// Runs this long.
  void run(uint64_t millis);

  /// Puts a byte on the line to the chip.
  void receive(uint8_t byte);

  /// The light pins that are driven high now: bits of port D.
  uint8_t lights() const;

  /// Lets the timer start no more conversions, as if converter or timer had died.
  void stallConverter() { converterStalls_ = true; }

  uint64_t cycle() const { return chip_->cycle; }

  /// All bytes the chip has sent.
  std::vector<uint8_t> sent;

  /// Cycles at which conversions of the current and of the voltage began.
  std::vector<uint64_t> currentStarts;
  std::vector<uint64_t> voltageStarts;

 private:
  void step();
  void onSend(uint8_t byte) { sent.push_back(byte); }
  void onConversion(uint8_t input);
  void hold(int input, uint16_t count);

  avr_t* chip_;
  bool flagWasUp_ = false;
  bool converterStalls_ = false;
};
