package org.boothlamp.acquisition;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import org.boothlamp.acquisition.SourceException.Reason;

/** Opens a serial port, or says why not and what to do about it. Immutable. */
final class PortOpener {

  /** The error numbers of Linux that have a next move of their own. */
  private static final int ENOENT = 2;

  private static final int EAGAIN = 11;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int ENOTTY = 25;

  /** The library's own number for a port that this program holds already; the file is there. */
  private static final int OPEN_ALREADY = ENOENT;

  private final String path;
  private final int baud;
  private final String device;

  PortOpener(String path, int baud, String device) {
    this.path = path;
    this.baud = baud;
    this.device = device;
  }

  @Override
  public String toString() {
    return "serial port " + path + " at " + baud + " baud";
  }

  /**
   * Opens the port with 8 data bits, no parity, one stop bit, no flow control, and reads that do
   * not wait. The library resolves links only when the port is asked for, so it is asked for again
   * each time.
   */
  SerialPort open() {
    SerialPort port = existingPort();
    port.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_NONBLOCKING, 0, 0);
    if (!port.openPort(0)) {
      throw refused(port.getLastErrorCode());
    }
    return port;
  }

  private SerialPort existingPort() {
    try {
      return SerialPort.getCommPort(path);
    } catch (SerialPortInvalidPortException notThere) {
      throw new SourceException(
          Reason.MISSING,
          path,
          "no such port",
          "plug the " + device + " in, or correct the port's path (ls /dev/serial/by-id)",
          notThere);
    }
  }

  private SourceException refused(int errorCode) {
    return switch (errorCode) {
      case OPEN_ALREADY, EAGAIN, EBUSY ->
          new SourceException(
              Reason.BUSY,
              path,
              "another program holds the port",
              "end that program (fuser " + path + " names it)");
      case EACCES ->
          new SourceException(
              Reason.NOT_PERMITTED,
              path,
              "this user may not open the port",
              "add the user to its group (usermod -aG " + group() + " USER) and log in again");
      case ENOTTY ->
          new SourceException(
              Reason.MALFORMED, path, "this is not a serial port", "correct the port's path");
      default ->
          new SourceException(
              Reason.FAILED,
              path,
              "the port would not open at " + baud + " baud (system error " + errorCode + ")",
              "unplug the " + device + " and plug it in again; check the baud rate");
    };
  }

  /** The group that may open the port; serial ports of most systems belong to dialout. */
  private String group() {
    try {
      return Files.readAttributes(Path.of(path), PosixFileAttributes.class).group().getName();
    } catch (IOException | UnsupportedOperationException unreadable) {
      return "dialout";
    }
  }
}
