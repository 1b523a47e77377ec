// The reference board: an ATmega328P at 16 MHz. Everything that needs no hardware is in ../core.
#include "main.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/wdt.h>

#include "../core/front_end.h"
#include "converter.h"
#include "pins.h"
#include "serial.h"

namespace boothlamp {

namespace {

constexpr BoardFacts kFacts = {kPairsPerSecond, kLowestCount, kHighestCount, "m328p-ref-1"};

Pair storage[2 * kPairsPerFrame];
FrontEnd frontEnd(kFacts, storage, kPairsPerFrame);

void receive(uint32_t nowMillis) {
  for (int16_t byte = serialReceive(); byte >= 0; byte = serialReceive()) {
    frontEnd.receive(static_cast<uint8_t>(byte), nowMillis);
  }
}

void send(uint32_t nowMillis) {
  if (serialIsBusy()) {
    return;
  }
  const WireBytes wire = frontEnd.nextFrame(nowMillis);
  if (wire.length > 0) {
    serialSend(wire);
  }
}

void showLights(uint8_t lights) {
  uint8_t pins = 0;
  pins |= lights & kGreenLight ? kGreenPin : 0;
  pins |= lights & kAmberLight ? kAmberPin : 0;
  pins |= lights & kRedLight ? kRedPin : 0;
  PORTD = static_cast<uint8_t>((PORTD & ~kLightPins) | pins);
}

void startLights() {
  PORTD &= static_cast<uint8_t>(~kLightPins);
  DDRD |= kLightPins;
}

/// Feeds the watchdog only as time goes on. The clock counts pairs and the lamp's time-out counts
/// with that clock: a converter that stands still would keep an old green lit. The watchdog runs on
/// an oscillator of its own and ends that in a reset, after which the lamp is dark.
void feedWatchdog(uint32_t nowMillis) {
  static uint32_t fedMillis = 0;
  if (nowMillis != fedMillis) {
    fedMillis = nowMillis;
    wdt_reset();
  }
}

[[noreturn]] void run() {
  for (;;) {
    const uint32_t nowMillis = millisNow();
    receive(nowMillis);
    showLights(frontEnd.lights(nowMillis));
    send(nowMillis);
    feedWatchdog(nowMillis);
  }
}

}  // namespace

void onPair(Pair pair) { frontEnd.add(pair); }

}  // namespace boothlamp

/// After a reset by the watchdog it is still on, at its shortest time: it must be set anew before
/// anything that takes long.
extern "C" void setWatchdogEarly() __attribute__((naked, used, section(".init3")));

extern "C" void setWatchdogEarly() {
  MCUSR = 0;
  wdt_enable(WDTO_250MS);
}

int main() {
  boothlamp::startLights();
  boothlamp::serialStart();
  boothlamp::converterStart();
  sei();
  boothlamp::run();
}
