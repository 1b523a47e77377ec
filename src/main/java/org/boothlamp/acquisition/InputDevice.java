package org.boothlamp.acquisition;

import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.boothlamp.acquisition.SourceException.Reason;

/**
 * An input device of the kernel, opened for reading. By system calls, because a read of Java's own
 * could not be ended. Confined to one thread.
 */
final class InputDevice implements AutoCloseable {

  /** The C library, as far as it is needed; numbers are Linux's on ARM and x86. */
  interface CLibrary extends Library {

    int open(String path, int flags);

    int ioctl(int file, NativeLong request, NativeLong argument);

    int poll(Pointer files, NativeLong count, int timeoutMillis);

    NativeLong read(int file, Pointer buffer, NativeLong length);

    int close(int file);
  }

  /** O_RDONLY, O_NONBLOCK, O_CLOEXEC. */
  private static final int OPEN_FLAGS = 0x800 | 0x80000;

  /** Keeps events from everybody else: EVIOCGRAB, linux/input.h. */
  private static final long GRAB = 0x40044590;

  private static final short POLLIN = 1;
  private static final int ENOENT = 2;
  private static final int EINTR = 4;
  private static final int EAGAIN = 11;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int EVENTS = 64;

  /** Loaded at the first use, on the reader's thread: that takes a moment. */
  private static final class C {
    private static final CLibrary LIBRARY = Native.load("c", CLibrary.class);
  }

  private final String path;
  private final int file;
  private final Memory poll = new Memory(8);
  private final Memory events;

  private InputDevice(String path, int file, int eventBytes) {
    this.path = path;
    this.file = file;
    events = new Memory((long) EVENTS * eventBytes);
    poll.setInt(0, file);
    poll.setShort(4, POLLIN);
  }

  /**
   * Opens a device.
   *
   * @param eventBytes length of an event
   * @throws SourceException if it cannot be, with the next move
   */
  static InputDevice open(String path, int eventBytes) {
    try {
      int file = C.LIBRARY.open(path, OPEN_FLAGS);
      if (file < 0) {
        throw refused(path, Native.getLastError());
      }
      return new InputDevice(path, file, eventBytes);
    } catch (LinkageError notHere) {
      throw new SourceException(
          Reason.FAILED,
          path,
          "input devices cannot be read on this computer (" + notHere.getMessage() + ")",
          "use a reader on a serial line: badge.kind = \"serial\"",
          notHere);
    }
  }

  private static SourceException refused(String path, int errorCode) {
    return switch (errorCode) {
      case ENOENT ->
          new SourceException(
              Reason.MISSING,
              path,
              "no such input device",
              "plug the badge reader in, or correct badge.device (ls /dev/input/by-id)");
      case EACCES ->
          new SourceException(
              Reason.NOT_PERMITTED,
              path,
              "this user may not read the input device",
              "add the user to the group input (usermod -aG input USER) and log in again");
      default ->
          new SourceException(
              Reason.FAILED,
              path,
              "the input device would not open (system error " + errorCode + ")",
              "unplug the badge reader and plug it in again");
    };
  }

  /**
   * Keeps the device's keys from consoles and other programs.
   *
   * @throws SourceException if another program keeps them already
   */
  void grab() {
    int done = C.LIBRARY.ioctl(file, new NativeLong(GRAB), new NativeLong(1));
    if (done < 0 && Native.getLastError() == EBUSY) {
      throw new SourceException(
          Reason.BUSY,
          path,
          "another program keeps the badge reader for itself",
          "end that program (fuser " + path + " names it)");
    }
    // What is no input device, such as a file, has nobody to keep the keys from.
  }

  /**
   * Waits for events.
   *
   * @return the bytes of whole events, in the machine's order; empty if none came; null if the
   *     device is gone
   */
  ByteBuffer read(int waitMillis) {
    int ready = C.LIBRARY.poll(poll, new NativeLong(1), waitMillis);
    if (ready == 0 || ready < 0 && Native.getLastError() == EINTR) {
      return bytes(0);
    }
    long count = C.LIBRARY.read(file, events, new NativeLong(events.size())).longValue();
    int error = count < 0 ? Native.getLastError() : 0;
    if (count <= 0 && error != EAGAIN && error != EINTR) {
      return null;
    }
    return bytes(Math.max(0, count));
  }

  private ByteBuffer bytes(long count) {
    return events.getByteBuffer(0, count).order(ByteOrder.nativeOrder());
  }

  @Override
  public void close() {
    C.LIBRARY.close(file);
  }
}
