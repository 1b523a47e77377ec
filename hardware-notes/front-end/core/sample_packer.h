#pragma once

#include "frames.h"

namespace boothlamp {

/// Gathers pairs into frames in two halves of a buffer: one is filled while the other waits for the
/// line.
///
///   converter interrupt: add -> [half being filled] --full--> [half that waits] -> main loop: take
///
/// If a half fills up while the other still waits, the line is congested: the frame just filled is
/// dropped whole, and the index of the next one shows it. Pairs that wait stay in order.
///
/// `add` is for the interrupt; everything else for the main loop, which the interrupt may interrupt
/// at any place.
class SamplePacker {
 public:
  /// A packer that keeps its pairs in `storage`, which holds twice `pairsPerFrame`, 1 to 100.
  SamplePacker(Pair* storage, uint8_t pairsPerFrame);

  /// Takes the next pair; a few steps, never waits.
  void add(Pair pair);

  /// True if a frame waits; then `pairs` and `firstIndex` tell it until `release`.
  bool isReady() const;
  const Pair* pairs() const { return waiting_; }
  uint32_t firstIndex() const { return waitingIndex_; }
  uint8_t pairsPerFrame() const { return pairsPerFrame_; }

  /// Gives the half back once its pairs are copied.
  void release();

 private:
  void finishFrame();
  Pair* otherHalf(const Pair* half) const;

  Pair* const storage_;
  const uint8_t pairsPerFrame_;

  Pair* filling_;
  uint8_t filled_ = 0;
  /// Index of the next pair: every pair counts, dropped or not.
  uint32_t nextIndex_ = 0;

  Pair* waiting_;
  uint32_t waitingIndex_ = 0;
  volatile bool ready_ = false;
};

}  // namespace boothlamp
