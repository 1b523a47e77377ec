#include "chip.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

extern "C" {
#include <simavr/avr_adc.h>
#include <simavr/avr_uart.h>
#include <simavr/sim_elf.h>
}

namespace {

// Addresses and bits of the ATmega328P in data memory.
constexpr int kDdrd = 0x2A;
constexpr int kPortd = 0x2B;
constexpr int kTifr1 = 0x36;
constexpr int kOcf1b = 1 << 2;
constexpr int kAdcsra = 0x7A;
constexpr int kAden = 1 << 7;
constexpr int kAdsc = 1 << 6;
constexpr int kAdate = 1 << 5;
constexpr int kAdcsrb = 0x7B;
constexpr int kTriggerMask = 7;
constexpr int kTriggerTimer1B = 5;
constexpr int kFirstIoAddress = 32;

constexpr uint32_t kSupplyMillivolts = 5000;
constexpr uint8_t kLightPins = 0x1C;


uint8_t inputOf(uint32_t word) {
  avr_adc_mux_t mux = {};
  memcpy(&mux, &word, sizeof word);
  return static_cast<uint8_t>(mux.src);
}

}  // namespace

Chip::Chip(const char* elfPath) {
  elf_firmware_t program;
  memset(&program, 0, sizeof program);
  chip_ = avr_make_mcu_by_name("atmega328p");
  if (chip_ == nullptr || elf_read_firmware(elfPath, &program) != 0) {
    fprintf(stderr, "%s is no program that can be simulated\n", elfPath);
    exit(1);
  }
  program.frequency = 16000000;
  program.vcc = program.avcc = program.aref = kSupplyMillivolts;
  avr_init(chip_);
  chip_->log = 0;
  avr_load_firmware(chip_, &program);

  uint32_t flags = 0;
  avr_ioctl(chip_, AVR_IOCTL_UART_GET_FLAGS('0'), &flags);
  flags &= ~static_cast<uint32_t>(AVR_UART_FLAG_STDIO);
  avr_ioctl(chip_, AVR_IOCTL_UART_SET_FLAGS('0'), &flags);
  avr_irq_register_notify(
      avr_io_getirq(chip_, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUTPUT),
      [](avr_irq_t*, uint32_t byte, void* chip) {
        static_cast<Chip*>(chip)->onSend(static_cast<uint8_t>(byte));
      },
      this);
  avr_irq_register_notify(
      avr_io_getirq(chip_, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_OUT_TRIGGER),
      [](avr_irq_t*, uint32_t word, void* chip) {
        static_cast<Chip*>(chip)->onConversion(inputOf(word));
      },
      this);
}

Chip::~Chip() { avr_terminate(chip_); }

void Chip::run(uint64_t millis) {
  const uint64_t end = chip_->cycle + millis * kCyclesPerMilli;
  while (chip_->cycle < end) {
    step();
  }
}

void Chip::step() {
  const int state = avr_run(chip_);
  if (state == cpu_Done || state == cpu_Crashed) {
    fprintf(stderr, "the program crashed at cycle %llu\n",
            static_cast<unsigned long long>(chip_->cycle));
    exit(1);
  }
  const bool flagIsUp = (chip_->data[kTifr1] & kOcf1b) != 0;
  const uint8_t mode = chip_->data[kAdcsra];
  const bool waits = (mode & (kAden | kAdsc | kAdate)) == (kAden | kAdate);
  const bool byTimer = (chip_->data[kAdcsrb] & kTriggerMask) == kTriggerTimer1B;
  if (flagIsUp && !flagWasUp_ && waits && byTimer && !converterStalls_) {
    const auto& io = chip_->io[kAdcsra - kFirstIoAddress].w;
    io.c(chip_, kAdcsra, static_cast<uint8_t>(mode | kAdsc), io.param);
  }
  flagWasUp_ = flagIsUp;
}

void Chip::onConversion(uint8_t input) {
  const bool isCurrent = input == 0;
  std::vector<uint64_t>& starts = isCurrent ? currentStarts : voltageStarts;
  const Inputs inputs = inputsOf(starts.size());
  starts.push_back(chip_->cycle);
  hold(input, isCurrent ? inputs.current : inputs.voltage);
}

/// The simulator takes millivolts, and makes counts of 1023 steps of them, rounded down.
void Chip::hold(int input, uint16_t count) {
  const uint32_t millivolts = (count * kSupplyMillivolts + 1022) / 1023;
  avr_raise_irq(avr_io_getirq(chip_, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_ADC0 + input), millivolts);
}

void Chip::receive(uint8_t byte) {
  avr_raise_irq(avr_io_getirq(chip_, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT), byte);
}

uint8_t Chip::lights() const {
  return chip_->data[kDdrd] & chip_->data[kPortd] & kLightPins;
}
