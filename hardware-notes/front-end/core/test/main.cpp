// Tests of the core on a PC: prints one line a test, ends at the first check that does not hold.
#include "check.h"

namespace {

struct TestCase {
  const char* name;
  void (*run)();
};

#define TEST(name) {#name, name}

constexpr TestCase kTests[] = {
    TEST(crcHasThePublishedCheckValue),
    TEST(cobsEncodesThePublishedExamples),
    TEST(cobsGivesBackWhatWentIn),
    TEST(cobsRefusesWhatNoEncoderWrites),
    TEST(writerLaysFramesOutAsTheContractSays),
    TEST(packerHandsPairsOverInOrder),
    TEST(packerDropsWholeFramesWhenTheLineIsCongested),
    TEST(helloComesFirstAndEverySecond),
    TEST(readerFindsEveryFrameThatIsWhole),
    TEST(readerIsInStepAgainAfterTheNextZero),
    TEST(readerTakesNoFrameThatWasDamaged),
    TEST(lampIsDarkUntilTheFirstFrame),
    TEST(lampShowsThePatternOfEverySignal),
    TEST(lampShowsFaultAfterASecondOfSilence),
    TEST(lampShowsFaultForACodeThatIsNoSignal),
    TEST(lampStaysInFaultWhenTheClockWraps),
    TEST(lampKeepsItsPatternWhenItsAgeWraps),
    TEST(lampFlashesAtMostThreeTimesASecond),
    TEST(greenIsNeverOlderThanASecond),
    TEST(greenIsNeverOlderThanASecondAtAnyMillisecondOfAnySignalPair),
};

}  // namespace

int main() {
  for (const TestCase& test : kTests) {
    printf("%s\n", test.name);
    fflush(stdout);
    test.run();
  }
  printf("%zu tests passed\n", sizeof kTests / sizeof kTests[0]);
  return 0;
}
