// Two channels, one converter: the timer starts the current's conversion to the clock tick, the
// interrupt at its end starts the voltage's at once, and the interrupt at that one's end has the pair.
//
//   timer 1 tick    0 us                  200 us
//   current         |====54 us====|       |====
//   voltage                       |====54 us====|
//   sampled         ^ 8 us         ^ 65 us
#include "converter.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/atomic.h>

#include "main.h"
#include "pins.h"

namespace boothlamp {

namespace {

static_assert(F_CPU % kPairsPerSecond == 0, "the rate in the hello frame must be the true one");
constexpr uint16_t kTimerTop = F_CPU / kPairsPerSecond - 1;

static_assert(kPairsPerSecond % 1000 == 0, "a millisecond must be a whole number of pairs");
constexpr uint8_t kPairsPerMilli = kPairsPerSecond / 1000;

/// Reference is the supply, as it is for the bias of both inputs.
constexpr uint8_t kReference = 1 << REFS0;
constexpr uint8_t kCurrentMux = kReference | kCurrentInput;
constexpr uint8_t kVoltageMux = kReference | kVoltageInput;

/// On, started by the timer, interrupt at the end, clock/64 = 250 kHz.
constexpr uint8_t kConverterMode =
    1 << ADEN | 1 << ADATE | 1 << ADIE | 1 << ADPS2 | 1 << ADPS1;

/// Trigger source: timer 1, compare match B.
constexpr uint8_t kTimerTrigger = 1 << ADTS2 | 1 << ADTS0;

volatile uint32_t millis = 0;
uint8_t pairsOfMilli = 0;
bool currentIsDone = false;
int16_t currentCount;

void countMillis() {
  if (++pairsOfMilli == kPairsPerMilli) {
    pairsOfMilli = 0;
    millis = millis + 1;
  }
}

int16_t readCount() { return static_cast<int16_t>(ADC) - kMidCount; }

void startTimer() {
  TCCR1A = 0;
  OCR1A = kTimerTop;
  OCR1B = kTimerTop;
  TCNT1 = 0;
  TIFR1 = 1 << OCF1B;
  TCCR1B = 1 << WGM12 | 1 << CS10;  // back to 0 at the top; full clock
}

}  // namespace

void converterStart() {
  DIDR0 = 1 << ADC0D | 1 << ADC1D;  // no digital input loads the two pins
  ADMUX = kCurrentMux;
  ADCSRB = kTimerTrigger;
  ADCSRA = kConverterMode;
  startTimer();
}

uint32_t millisNow() {
  uint32_t now;
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { now = millis; }
  return now;
}

}  // namespace boothlamp

using namespace boothlamp;

ISR(ADC_vect) {
  const int16_t count = readCount();
  if (!currentIsDone) {
    ADMUX = kVoltageMux;
    ADCSRA = kConverterMode | 1 << ADSC;
    currentCount = count;
    currentIsDone = true;
    return;
  }
  ADMUX = kCurrentMux;
  TIFR1 = 1 << OCF1B;  // only a flag that was down can start the next conversion by going up
  currentIsDone = false;
  onPair({currentCount, count});
  countMillis();
}
