#pragma once

#include "frame_reader.h"
#include "frame_writer.h"
#include "lamp.h"
#include "sample_packer.h"

namespace boothlamp {

/// Everything a board does that needs no hardware; the layer around it moves bytes, pairs and pins.
///
///   converter interrupt -> add -> SamplePacker -> nextFrame -> the line
///   the line -> receive -> LampFrameReader -> Lamp -> lights -> the pins
///
/// `add` is for the interrupt, everything else for the main loop.
class FrontEnd {
 public:
  /// `storage` holds twice `pairsPerFrame` pairs.
  FrontEnd(const BoardFacts& facts, Pair* storage, uint8_t pairsPerFrame);

  void add(Pair pair) { packer_.add(pair); }

  void receive(uint8_t byte, uint32_t nowMillis);

  /// The next frame for a line that has sent the last one: hello at the start and every second,
  /// else samples if a frame is full. No bytes if there is nothing to send.
  WireBytes nextFrame(uint32_t nowMillis);

  uint8_t lights(uint32_t nowMillis) { return lamp_.lights(nowMillis); }

 private:
  bool isHelloDue(uint32_t nowMillis) const;

  const BoardFacts facts_;
  FrameWriter writer_;
  LampFrameReader reader_;
  SamplePacker packer_;
  Lamp lamp_;
  bool saidHello_ = false;
  uint32_t helloMillis_ = 0;
};

}  // namespace boothlamp
