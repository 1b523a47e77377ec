// The board's core on a PC, at the far end of a serial line or pseudo-terminal: plays pairs in real
// time and prints what the lamp does, a line a change.
//
//   front-end-pc DEVICE [--rate PAIRS_PER_SECOND] [--frame-pairs N] [--clock-start MILLIS]
//                       [--pairs FILE]
//
// FILE holds raw pairs, i16 current and i16 voltage, little-endian, and is played round and round;
// without it pairs are made up from their index. Each line printed is the board's clock in
// milliseconds, this computer's monotonic clock in microseconds, and the lights: red, amber, green,
// as letters or dots. It ends when the line is gone or standard input is closed.
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include <vector>

#include "../core/front_end.h"
#include "serial_port.h"

using namespace boothlamp;

namespace {

struct Options {
  const char* device = nullptr;
  const char* pairsFile = nullptr;
  uint32_t pairsPerSecond = 5000;
  uint8_t framePairs = 25;
  uint32_t clockStartMillis = 0;
};

uint64_t monotonicMicros() {
  timespec now{};
  clock_gettime(CLOCK_MONOTONIC, &now);
  return static_cast<uint64_t>(now.tv_sec) * 1000000u + static_cast<uint64_t>(now.tv_nsec) / 1000u;
}

/// Pairs by their index.
class PairSource {
 public:
  bool load(const char* path) {
    FILE* file = fopen(path, "rb");
    if (file == nullptr) {
      perror(path);
      return false;
    }
    Pair pair{};
    while (fread(&pair, sizeof pair, 1, file) == 1) {
      pairs_.push_back(pair);
    }
    fclose(file);
    if (pairs_.empty()) {
      fprintf(stderr, "%s holds no pair; give a file of 4 bytes a pair\n", path);
    }
    return !pairs_.empty();
  }

  /// Pairs made up take every value a byte can have, and repeat only after long.
  Pair at(uint64_t index) const {
    if (!pairs_.empty()) {
      return pairs_[index % pairs_.size()];
    }
    return {static_cast<int16_t>(index * 31 + (index >> 9)),
            static_cast<int16_t>(index % 5 == 0 ? 0 : index * 257)};
  }

 private:
  std::vector<Pair> pairs_;
};

/// What main loop and interrupt do on the board, with a step of about a millisecond.
class Player {
 public:
  Player(const Options& options, const PairSource& source, SerialPort& port)
      : options_(options),
        source_(source),
        port_(port),
        frontEnd_({options.pairsPerSecond, -32768, 32767, "pc"}, storage_, options.framePairs),
        startMicros_(monotonicMicros()) {}

  /// One turn of the main loop; false if the line is gone.
  bool step() {
    port_.wait(1);
    takePairs();
    const bool lineIsThere = receive();
    showLights();
    send();
    return lineIsThere;
  }

 private:
  uint64_t ageMicros() const { return monotonicMicros() - startMicros_; }

  uint32_t nowMillis() const {
    return options_.clockStartMillis + static_cast<uint32_t>(ageMicros() / 1000);
  }

  /// Samples what is due. Between two frames the line gets its turn, as on the board, where the
  /// main loop runs on between two interrupts.
  void takePairs() {
    const uint64_t due = ageMicros() * options_.pairsPerSecond / 1000000u;
    while (nextPair_ < due) {
      frontEnd_.add(source_.at(nextPair_++));
      if (nextPair_ % options_.framePairs == 0) {
        send();
      }
    }
  }

  bool receive() {
    uint8_t bytes[256];
    const long count = port_.read(bytes, sizeof bytes);
    for (long i = 0; i < count; i++) {
      frontEnd_.receive(bytes[i], nowMillis());
    }
    return count >= 0;
  }

  void send() {
    while (!port_.isBusy()) {
      const WireBytes wire = frontEnd_.nextFrame(nowMillis());
      if (wire.length == 0) {
        return;
      }
      port_.send(wire.bytes, wire.length);
    }
  }

  void showLights() {
    const uint32_t now = nowMillis();
    const uint8_t lights = frontEnd_.lights(now);
    if (begun_ && lights == shown_) {
      return;
    }
    begun_ = true;
    shown_ = lights;
    printf("%u %llu %c%c%c\n", now, static_cast<unsigned long long>(monotonicMicros()),
           lights & kRedLight ? 'R' : '.', lights & kAmberLight ? 'A' : '.',
           lights & kGreenLight ? 'G' : '.');
    fflush(stdout);
  }

  const Options options_;
  const PairSource& source_;
  SerialPort& port_;
  Pair storage_[2 * kMostPairs];
  FrontEnd frontEnd_;
  const uint64_t startMicros_;
  uint64_t nextPair_ = 0;
  bool begun_ = false;
  uint8_t shown_ = 0;
};

bool readNumber(const char* text, unsigned long least, unsigned long most, unsigned long& value) {
  char* end = nullptr;
  value = strtoul(text, &end, 10);
  return end != text && *end == '\0' && value >= least && value <= most;
}

/// Takes one option and its value.
bool readOption(const char* name, const char* text, Options& options) {
  unsigned long value = 0;
  if (strcmp(name, "--pairs") == 0) {
    options.pairsFile = text;
  } else if (strcmp(name, "--rate") == 0 && readNumber(text, 1, 20000, value)) {
    options.pairsPerSecond = static_cast<uint32_t>(value);
  } else if (strcmp(name, "--frame-pairs") == 0 && readNumber(text, 1, kMostPairs, value)) {
    options.framePairs = static_cast<uint8_t>(value);
  } else if (strcmp(name, "--clock-start") == 0 && readNumber(text, 0, 0xFFFFFFFFu, value)) {
    options.clockStartMillis = static_cast<uint32_t>(value);
  } else {
    fprintf(stderr, "%s %s is not understood\n", name, text);
    return false;
  }
  return true;
}

bool readOptions(int count, char** words, Options& options) {
  if (count < 2 || count % 2 != 0) {
    fprintf(stderr,
            "usage: %s DEVICE [--rate PAIRS_PER_SECOND (1 to 20000)] [--frame-pairs N (1 to 100)] "
            "[--clock-start MILLIS] [--pairs FILE]\n",
            words[0]);
    return false;
  }
  options.device = words[1];
  for (int i = 2; i < count; i += 2) {
    if (!readOption(words[i], words[i + 1], options)) {
      return false;
    }
  }
  return true;
}

/// True once whoever started the program has closed its input, or has ended.
bool inputIsClosed() {
  pollfd input{STDIN_FILENO, POLLIN, 0};
  char byte;
  return poll(&input, 1, 0) > 0 && read(STDIN_FILENO, &byte, 1) <= 0;
}

}  // namespace

int main(int count, char** words) {
  Options options;
  PairSource source;
  SerialPort port;
  if (!readOptions(count, words, options)) {
    return 2;
  }
  if ((options.pairsFile != nullptr && !source.load(options.pairsFile)) ||
      !port.open(options.device)) {
    return 1;
  }
  Player player(options, source, port);
  while (player.step() && !inputIsClosed()) {
  }
  return 0;
}
