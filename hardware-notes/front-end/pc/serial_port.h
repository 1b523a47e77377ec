#pragma once

#include <stddef.h>
#include <stdint.h>

/// A serial device or pseudo-terminal as a byte line that never makes its user wait.
class SerialPort {
 public:
  ~SerialPort();

  /// Opens the device for raw bytes; false, with words on standard error, if that fails.
  bool open(const char* path);

  /// Reads what has arrived; 0 if nothing has, -1 if the line is gone.
  long read(uint8_t* bytes, size_t most);

  /// Starts to send; the bytes must stay until `isBusy` is false.
  void send(const uint8_t* bytes, uint16_t length);

  /// Sends what the line takes now; true while bytes of the last `send` are still to go.
  bool isBusy();

  /// Waits until something arrives, at most this long.
  void wait(int mostMillis);

 private:
  int file_ = -1;
  const uint8_t* sendNext_ = nullptr;
  uint16_t sendLeft_ = 0;
};
