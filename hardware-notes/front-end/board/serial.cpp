#include "serial.h"

#include <avr/interrupt.h>
#include <avr/io.h>

#include "pins.h"

namespace boothlamp {

namespace {

/// At double speed the divider counts eighths of the clock; 16 MHz gives 1,000,000 baud exactly.
static_assert(F_CPU % (8 * kBaud) == 0, "the baud rate must divide the clock");
constexpr uint16_t kBaudDivider = F_CPU / (8 * kBaud) - 1;

constexpr uint8_t kMode = 1 << RXEN0 | 1 << TXEN0 | 1 << RXCIE0;

const uint8_t* volatile sendNext = nullptr;
/// Written by the main loop only while the interrupt is off.
volatile uint16_t sendLeft = 0;
volatile bool sending = false;

constexpr uint8_t kReceivedBytes = 64;
static_assert((kReceivedBytes & (kReceivedBytes - 1)) == 0, "places are counted modulo this");
volatile uint8_t received[kReceivedBytes];
volatile uint8_t receivedTo = 0;
uint8_t receivedFrom = 0;

uint8_t after(uint8_t place) { return (place + 1) & (kReceivedBytes - 1); }

}  // namespace

void serialStart() {
  UBRR0 = kBaudDivider;
  UCSR0A = 1 << U2X0;
  UCSR0C = 1 << UCSZ01 | 1 << UCSZ00;
  UCSR0B = kMode;
}

bool serialIsBusy() { return sending; }

void serialSend(WireBytes wire) {
  sendNext = wire.bytes;
  sendLeft = wire.length;
  sending = true;
  UCSR0B = kMode | 1 << UDRIE0;
}

int16_t serialReceive() {
  if (receivedFrom == receivedTo) {
    return -1;
  }
  const uint8_t byte = received[receivedFrom];
  receivedFrom = after(receivedFrom);
  return byte;
}

}  // namespace boothlamp

using namespace boothlamp;

ISR(USART_UDRE_vect) {
  const uint8_t* next = sendNext;
  UDR0 = *next;
  sendNext = next + 1;
  const uint16_t left = sendLeft - 1;
  sendLeft = left;
  if (left == 0) {
    UCSR0B = kMode;
    sending = false;
  }
}

ISR(USART_RX_vect) {
  const uint8_t byte = UDR0;
  const uint8_t to = receivedTo;
  const uint8_t next = after(to);
  if (next != receivedFrom) {
    received[to] = byte;
    receivedTo = next;
  }
}
