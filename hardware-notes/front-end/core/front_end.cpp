#include "front_end.h"

namespace boothlamp {

namespace {

constexpr uint32_t kHelloMillis = 1000;

}  // namespace

FrontEnd::FrontEnd(const BoardFacts& facts, Pair* storage, uint8_t pairsPerFrame)
    : facts_(facts), packer_(storage, pairsPerFrame) {}

void FrontEnd::receive(uint8_t byte, uint32_t nowMillis) {
  if (reader_.accept(byte)) {
    lamp_.onFrame(reader_.signalCode(), nowMillis);
  }
}

WireBytes FrontEnd::nextFrame(uint32_t nowMillis) {
  if (isHelloDue(nowMillis)) {
    saidHello_ = true;
    helloMillis_ = nowMillis;
    return writer_.hello(facts_);
  }
  if (!packer_.isReady()) {
    return {nullptr, 0};
  }
  const WireBytes wire =
      writer_.samples(packer_.firstIndex(), packer_.pairs(), packer_.pairsPerFrame());
  packer_.release();
  return wire;
}

bool FrontEnd::isHelloDue(uint32_t nowMillis) const {
  return !saidHello_ || nowMillis - helloMillis_ >= kHelloMillis;
}

}  // namespace boothlamp
