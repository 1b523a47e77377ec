package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.boothlamp.acquisition.SourceException.Reason;
import org.tinylog.Logger;

/**
 * Sets up an industrial-I/O device's buffer through its files in sysfs, and switches it on and off.
 * The files are those of Documentation/ABI/testing/sysfs-bus-iio: {@code name}, {@code
 * scan_elements/*_en}, {@code *_index}, {@code *_type}, {@code trigger/current_trigger}, {@code
 * buffer/length}, {@code watermark}, {@code enable}; since kernel 5.11 the first two folders are
 * kept for the first buffer. Confined to one thread.
 */
final class IioBuffer {

  private static final String STAMP = "in_timestamp";
  private static final int BLOCKS_PER_SECOND = 200;
  private static final double RATE_TOLERANCE = 0.01;

  private final IioAddress address;
  private final ChannelPair channels;
  private final int pairsPerSecond;
  private Path folder;

  IioBuffer(IioAddress address, ChannelPair channels, int pairsPerSecond) {
    this.address = address;
    this.channels = channels;
    this.pairsPerSecond = pairsPerSecond;
  }

  /**
   * Finds the device, enables its two channels and the time stamp, and starts the buffer.
   *
   * @return where things lie in a scan
   * @throws SourceException if something is missing or refused, with the next move
   */
  ScanLayout start() {
    folder = find("iio:device", address.name(), "name");
    Path elements = folder.resolve("scan_elements");
    if (!Files.isDirectory(elements)) {
      throw new SourceException(
          Reason.MALFORMED,
          elements.toString(),
          "is missing: the device's driver offers no buffer",
          "use a driver that does, or kind \"spi\" or \"i2c\"");
    }
    write(folder.resolve("buffer/enable"), "0");
    disableAll(elements);
    ScanElement current = enable(elements, "in_voltage" + channels.current());
    ScanElement voltage = enable(elements, "in_voltage" + channels.voltage());
    ScanElement stamp = enable(elements, STAMP);
    ScanLayout layout = new ScanLayout(count(current), count(voltage), stamp);
    useMonotonicClock();
    setTrigger();
    setRate();
    write(folder.resolve("buffer/length"), Integer.toString(2 * pairsPerSecond));
    writeIfThere(folder.resolve("buffer/watermark"), Integer.toString(readScans()));
    write(folder.resolve("buffer/enable"), "1");
    return layout;
  }

  /** Scans that the device is to wait for: 5 ms of them. */
  int readScans() {
    return Math.max(1, pairsPerSecond / BLOCKS_PER_SECOND);
  }

  /** The file that scans are read from. */
  Path deviceFile() {
    return address.root().resolve("dev").resolve(folder.getFileName());
  }

  private Path find(String kind, String name, String key) {
    List<String> found = new ArrayList<>();
    for (Path candidate : list(address.devices())) {
      if (candidate.getFileName().toString().startsWith(kind)
          && Files.isReadable(candidate.resolve("name"))) {
        found.add(read(candidate.resolve("name")));
        if (found.get(found.size() - 1).equals(name)) {
          return candidate;
        }
      }
    }
    throw new SourceException(
        Reason.MISSING,
        address.devices().toString(),
        "there is no " + kind + " named \"" + name + "\"; found: " + found,
        "see that its driver is loaded, and that source." + key + " is one of those names");
  }

  private void disableAll(Path elements) {
    for (Path file : list(elements)) {
      if (file.getFileName().toString().endsWith("_en")) {
        write(file, "0");
      }
    }
  }

  private ScanElement enable(Path elements, String channel) {
    Path file = elements.resolve(channel + "_en");
    if (!Files.exists(file)) {
      throw new SourceException(
          Reason.MALFORMED,
          file.toString(),
          "is missing: the device does not buffer " + channel,
          channel.equals(STAMP)
              ? "use a device with time stamps: gaps could not be seen without"
              : "give an input that the device has");
    }
    write(file, "1");
    Path type = elements.resolve(channel + "_type");
    int index = (int) number(elements.resolve(channel + "_index"));
    return ScanElement.parse(type.toString(), index, read(type));
  }

  private ScanElement count(ScanElement element) {
    if (element.isCount()) {
      return element;
    }
    throw new SourceException(
        Reason.MALFORMED,
        folder.toString(),
        "counts must lie between -32768 and 32767, and these reach " + element.highest(),
        "use a converter of 16 bits with sign, or 15 without, or fewer");
  }

  /** The default is the time of day, which jumps. */
  private void useMonotonicClock() {
    writeIfThere(folder.resolve("current_timestamp_clock"), "monotonic");
  }

  private void setTrigger() {
    if (!address.trigger().isEmpty()) {
      write(folder.resolve("trigger/current_trigger"), address.trigger());
    }
  }

  /** The rate is the trigger's, or the device's own; whoever has none is believed. */
  private void setRate() {
    Path owner =
        address.trigger().isEmpty() ? folder : find("trigger", address.trigger(), "trigger");
    Path rate = owner.resolve("sampling_frequency");
    if (!Files.exists(rate)) {
      return;
    }
    write(rate, Integer.toString(pairsPerSecond));
    double given = number(rate);
    if (Math.abs(given - pairsPerSecond) > RATE_TOLERANCE * pairsPerSecond) {
      throw new SourceException(
          Reason.MALFORMED,
          rate.toString(),
          String.format(Locale.ROOT, "asked for %d pairs/s, it gives %.6g", pairsPerSecond, given),
          String.format(Locale.ROOT, "write source.pairs_per_second = %.0f", given));
    }
  }

  private List<Path> list(Path of) {
    try (Stream<Path> files = Files.list(of)) {
      return files.sorted().toList();
    } catch (IOException failure) {
      throw refused(of, failure);
    }
  }

  private String read(Path file) {
    try {
      return Files.readString(file).trim();
    } catch (IOException failure) {
      throw refused(file, failure);
    }
  }

  private double number(Path file) {
    String text = read(file);
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException notOne) {
      throw new SourceException(
          Reason.MALFORMED,
          file.toString(),
          "must hold a number, and holds \"" + text + "\"",
          "use another device");
    }
  }

  private void write(Path file, String value) {
    try {
      Files.writeString(
          file, value, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING);
    } catch (IOException failure) {
      throw refused(file, failure);
    }
  }

  private void writeIfThere(Path file, String value) {
    if (Files.exists(file)) {
      write(file, value);
    }
  }

  private static SourceException refused(Path file, IOException failure) {
    boolean missing = failure instanceof NoSuchFileException;
    return new SourceException(
        missing ? Reason.MISSING : Reason.FAILED,
        file.toString(),
        missing ? "there is no such file" : "cannot be used: " + Causes.words(failure),
        missing
            ? "see that the device's driver is loaded and that source.root is right"
            : "see that the user may write there, and that no other program uses the device",
        failure);
  }

  /** Switches the buffer off whatever its state; does not throw. */
  void stop() {
    if (folder == null) {
      return;
    }
    try {
      write(folder.resolve("buffer/enable"), "0");
    } catch (SourceException failure) {
      // A device that is gone cannot be switched off, and need not be.
      Logger.debug(failure, "the buffer was not switched off");
    }
  }
}
