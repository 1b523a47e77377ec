#include "serial_port.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <stdio.h>
#include <string.h>
#include <termios.h>
#include <unistd.h>

SerialPort::~SerialPort() {
  if (file_ >= 0) {
    close(file_);
  }
}

bool SerialPort::open(const char* path) {
  file_ = ::open(path, O_RDWR | O_NOCTTY | O_NONBLOCK);
  termios mode{};
  if (file_ < 0 || tcgetattr(file_, &mode) != 0) {
    fprintf(stderr, "%s is no serial device that can be opened: %s; name one that exists\n", path,
            strerror(errno));
    return false;
  }
  cfmakeraw(&mode);
  cfsetspeed(&mode, B1000000);
  if (tcsetattr(file_, TCSANOW, &mode) != 0) {
    fprintf(stderr, "%s does not take 1000000 baud: %s; use another adapter\n", path,
            strerror(errno));
    return false;
  }
  return true;
}

long SerialPort::read(uint8_t* bytes, size_t most) {
  const ssize_t count = ::read(file_, bytes, most);
  const bool nothingYet = count < 0 && (errno == EAGAIN || errno == EINTR);
  return nothingYet ? 0 : count <= 0 ? -1 : count;
}

void SerialPort::send(const uint8_t* bytes, uint16_t length) {
  sendNext_ = bytes;
  sendLeft_ = length;
  isBusy();
}

bool SerialPort::isBusy() {
  if (sendLeft_ > 0) {
    const ssize_t count = ::write(file_, sendNext_, sendLeft_);
    if (count > 0) {
      sendNext_ += count;
      sendLeft_ = static_cast<uint16_t>(sendLeft_ - count);
    }
  }
  return sendLeft_ > 0;
}

void SerialPort::wait(int mostMillis) {
  pollfd port{file_, POLLIN, 0};
  poll(&port, 1, mostMillis);
}
