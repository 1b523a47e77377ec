#pragma once

#include "../core/frame_writer.h"

namespace boothlamp {

/// Sets the line up: 8 data bits, no parity, 1 stop bit.
void serialStart();

/// True while bytes of the last `serialSend` are still to go.
bool serialIsBusy();

/// Sends by interrupt; the bytes must stay until the line is no longer busy.
void serialSend(WireBytes wire);

/// The next byte received, 0 to 255, or -1 if there is none. Bytes that come faster than they are
/// fetched are lost; the frames they belong to fail their CRC.
int16_t serialReceive();

}  // namespace boothlamp
