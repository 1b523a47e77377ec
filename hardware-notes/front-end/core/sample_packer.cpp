#include "sample_packer.h"

namespace boothlamp {

namespace {

/// Keeps the compiler from moving pairs across the flag that hands them over. The two sides run on
/// one processor, an interrupt and what it interrupts, so nothing else can reorder them.
inline void fence() { __atomic_signal_fence(__ATOMIC_SEQ_CST); }

}  // namespace

SamplePacker::SamplePacker(Pair* storage, uint8_t pairsPerFrame)
    : storage_(storage),
      pairsPerFrame_(pairsPerFrame),
      filling_(storage),
      waiting_(storage + pairsPerFrame) {}

void SamplePacker::add(Pair pair) {
  filling_[filled_++] = pair;
  nextIndex_++;
  if (filled_ == pairsPerFrame_) {
    finishFrame();
  }
}

void SamplePacker::finishFrame() {
  filled_ = 0;
  if (ready_) {
    return;  // congested: this half is filled again, and its pairs are lost
  }
  waiting_ = filling_;
  waitingIndex_ = nextIndex_ - pairsPerFrame_;
  filling_ = otherHalf(filling_);
  fence();
  ready_ = true;
}

Pair* SamplePacker::otherHalf(const Pair* half) const {
  return half == storage_ ? storage_ + pairsPerFrame_ : storage_;
}

bool SamplePacker::isReady() const {
  const bool ready = ready_;
  fence();
  return ready;
}

void SamplePacker::release() {
  fence();
  ready_ = false;
}

}  // namespace boothlamp
