// The little that these tests need of a test library.
#pragma once

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

/// Ends the program with the place and the words if the condition does not hold.
#define CHECK(condition) \
  ((condition) ? (void)0 : checkFailed(__FILE__, __LINE__, #condition))

[[noreturn]] inline void checkFailed(const char* file, int line, const char* condition) {
  fprintf(stderr, "%s:%d: does not hold: %s\n", file, line, condition);
  exit(1);
}

/// Random numbers that are the same in every run: xorshift64* (Vigna, ACM Transactions on
/// Mathematical Software 42(4), 2016).
class Random {
 public:
  explicit Random(uint64_t seed) : state_(seed * 2 + 1) {}

  /// 0 to `bound` - 1.
  uint32_t below(uint32_t bound) {
    state_ ^= state_ >> 12;
    state_ ^= state_ << 25;
    state_ ^= state_ >> 27;
    return static_cast<uint32_t>((state_ * 0x2545F4914F6CDD1DULL) >> 32) % bound;
  }

  uint8_t byte() { return static_cast<uint8_t>(below(256)); }

  bool oneIn(uint32_t n) { return below(n) == 0; }

 private:
  uint64_t state_;
};

void crcHasThePublishedCheckValue();
void cobsEncodesThePublishedExamples();
void cobsGivesBackWhatWentIn();
void cobsRefusesWhatNoEncoderWrites();
void writerLaysFramesOutAsTheContractSays();
void packerHandsPairsOverInOrder();
void packerDropsWholeFramesWhenTheLineIsCongested();
void helloComesFirstAndEverySecond();
void readerFindsEveryFrameThatIsWhole();
void readerIsInStepAgainAfterTheNextZero();
void readerTakesNoFrameThatWasDamaged();
void lampIsDarkUntilTheFirstFrame();
void lampShowsThePatternOfEverySignal();
void lampShowsFaultAfterASecondOfSilence();
void lampShowsFaultForACodeThatIsNoSignal();
void lampStaysInFaultWhenTheClockWraps();
void lampKeepsItsPatternWhenItsAgeWraps();
void lampFlashesAtMostThreeTimesASecond();
void greenIsNeverOlderThanASecond();
void greenIsNeverOlderThanASecondAtAnyMillisecondOfAnySignalPair();
