package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.boothlamp.testing.PairStream;

/**
 * The files of an industrial-I/O device and its trigger below a root, laid out like sysfs of kernel
 * 6, and the scans it would deliver: two channels of 12 bits, big-endian, and a time stamp.
 */
final class FakeIioTree {

  static final int SCAN_BYTES = 16;

  private final Path root;
  private final Path device;
  private final Path trigger;

  FakeIioTree(Path root) throws IOException {
    this.root = root;
    Path devices = root.resolve("sys/bus/iio/devices");
    Path other = Files.createDirectories(devices.resolve("iio:device0"));
    Files.writeString(other.resolve("name"), "thermometer\n");
    device = devices.resolve("iio:device1");
    trigger = Files.createDirectories(devices.resolve("trigger0"));
    for (String folder : new String[] {"buffer", "scan_elements", "trigger"}) {
      Files.createDirectories(device.resolve(folder));
    }
    Files.createDirectories(root.resolve("dev"));
    put(
        Map.of(
            "name", "mcp3208\n",
            "current_timestamp_clock", "realtime\n",
            "trigger/current_trigger", "\n",
            "buffer/length", "2\n",
            "buffer/watermark", "1\n",
            "buffer/enable", "0\n"));
    for (int channel = 0; channel < 4; channel++) {
      putElement("in_voltage" + channel, channel, "be:u12/16>>0");
    }
    putElement("in_timestamp", 8, "le:s64/64>>0");
    put("scan_elements/in_voltage3_en", "1\n");
    Files.writeString(trigger.resolve("name"), "booth-timer\n");
    Files.writeString(trigger.resolve("sampling_frequency"), "100.000\n");
  }

  private void put(Map<String, String> files) throws IOException {
    for (Map.Entry<String, String> file : files.entrySet()) {
      put(file.getKey(), file.getValue());
    }
  }

  void putElement(String channel, int index, String type) throws IOException {
    put("scan_elements/" + channel + "_en", "0\n");
    put("scan_elements/" + channel + "_index", index + "\n");
    put("scan_elements/" + channel + "_type", type + "\n");
  }

  void put(String file, String text) throws IOException {
    Files.writeString(device.resolve(file), text);
  }

  void remove(String file) throws IOException {
    Files.delete(device.resolve(file));
  }

  String read(String file) throws IOException {
    return Files.readString(device.resolve(file)).trim();
  }

  String readTrigger(String file) throws IOException {
    return Files.readString(trigger.resolve(file)).trim();
  }

  IioAddress address() {
    return new IioAddress(root, "mcp3208", "booth-timer");
  }

  Path deviceFile() {
    return root.resolve("dev/iio:device1");
  }

  /** Scans of the pairs from {@code first} on, one after the other. */
  static byte[] scans(PairStream pairs, long first, int count, long startNanos, int perSecond) {
    ByteBuffer bytes = ByteBuffer.allocate(count * SCAN_BYTES);
    for (long pair = first; pair < first + count; pair++) {
      long stamp = startNanos + pair * 1_000_000_000L / perSecond;
      bytes.putShort(pairs.current(pair)).putShort(pairs.voltage(pair)).putInt(0xA5A5A5A5);
      bytes.putLong(Long.reverseBytes(stamp));
    }
    return bytes.array();
  }
}
